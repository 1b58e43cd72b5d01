# What the scripts share that drive the real window: sourced inside Xvfb, after `program`, `work`, `pictures`, and the window's
# size as `size_x` and `size_y` are set.

fail() { echo "real window: $1" >&2; exit 1; }

keys() { xdotool key --clearmodifiers "$@"; }

take() { # take PICTURE: a picture of the window, which must still be there
  kill -0 "$pid" 2>/dev/null || fail "the program has ended: $(cat "$work/log")"
  import -window "$window" "$pictures/$1.png"
  colours=$(identify -format '%k' "$pictures/$1.png")
}

start() { # start PICTURE STUDY: opens the study and waits until it is drawn
  local began=$(date +%s%N)
  XDG_DATA_HOME="$work/data" LIBGL_ALWAYS_SOFTWARE=1 "$program" "$2" 2>"$work/log" &
  pid=$!
  window=$(timeout 30 xdotool search --sync --onlyvisible --pid "$pid" | head -n 1)
  [ -n "$window" ] || fail "no window appeared: $(cat "$work/log")"
  xdotool windowmove "$window" 0 0 windowsize "$window" "$size_x" "$size_y" windowfocus "$window" \
    mousemove 2 $((size_y - 4)) # where nothing has a hint
  for _ in $(seq 40); do
    sleep 0.25
    take "$1"
    # Results bring the curves' colours: many more colours than an empty window has.
    [ "$colours" -gt 400 ] && break
  done
  [ "$colours" -gt 400 ] || fail "the window stayed empty ($colours colours)"
  echo "real window: $1 drawn $((($(date +%s%N) - began) / 1000000)) ms after start, pictures included"
}

finish() {
  sleep 0.5
  keys ctrl+q
  for _ in $(seq 40); do kill -0 "$pid" 2>/dev/null || return 0; sleep 0.25; done
  fail "the window did not close"
}
