//! Twenty thousand random events: nothing panics, nothing on screen is not a number, no frame takes 100 ms.
//!
//! The events come from a generator with a fixed seed, or with that of `WARMFOLD_MONKEY_SEED` to look further by hand. A
//! frame's time is the processor time of the window's own thread for layout: what other programs or the seasons take from
//! this machine is not the window's doing. Painting by the graphics driver, and waiting for the disk, are outside of it.
//! Layout is built with light optimisation here and is faster in a release, so that the bar is on the safe side. The first
//! frames load fonts and are left out.

#[path = "common/settled.rs"]
mod window;

use egui::{Event, Key, Modifiers, MouseWheelUnit, PointerButton, Pos2, pos2, vec2};
use egui_kittest::kittest::NodeT;
use fastrand::Rng;
use std::cell::Cell;
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::sync::Arc;
use warmfold::gui::command::Command;
use warmfold::gui::thread_time::thread_time;
use warmfold::gui::window_ui;
use warmfold::model::Study;
use warmfold::storage;
use window::Window;

const EVENTS: usize = 20_000;
/// Frames are looked through for what is not a number, and for widgets to aim at, so often.
const EVERY: usize = 10;
/// Pastes add four scenarios at a time; beyond so many the study is opened anew.
const MOST_SCENARIOS: usize = 12;
/// A person notices a delay from a tenth of a second on (Nielsen, Response Times: The 3 Important Limits, 1993).
const LONGEST_S: f64 = 0.1;
/// Texts for fields that ask for a number, a name, a path. None of them is the word for what is no number: as the name of a
/// scenario it would rightly stay on screen.
const TEXTS: [&str; 18] = [
    "0",
    "-1",
    "1e300",
    "1e-300",
    "1e999",
    "12,5 ft 3",
    "1/0",
    "99999999999",
    "2*3",
    "5 °F",
    "",
    " ",
    "naïve 🌱",
    "\u{202e}abc",
    "((((",
    "\"",
    "a very long name that does not fit anywhere at all, and goes on",
    "7",
];

/// Where the chain of events begins.
fn seed() -> u64 {
    std::env::var("WARMFOLD_MONKEY_SEED").map_or(20_000, |text| text.parse().expect("a whole number"))
}

#[derive(Debug)]
struct Dropped(PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|error| error.to_string())
    }
}

/// The demo with three weeks of winter, so that figures come between the events and not behind them.
fn short() -> Study {
    let mut study = storage::demo().unwrap();
    (study.season.from_month, study.season.from_day) = (1, 1);
    (study.season.to_month, study.season.to_day) = (1, 21);
    study.many_winters.count = 20;
    study
}

/// Files to drop on the window: whole ones, broken ones, and one that is not there.
fn files(folder: &Path) -> Vec<PathBuf> {
    let whole = storage::write_study(&short());
    let cases: [(&str, Vec<u8>); 6] = [
        ("whole.ron", whole.clone().into_bytes()),
        ("half.ron", whole.as_bytes()[..whole.len() / 2].to_vec()),
        ("empty.ron", Vec::new()),
        ("bytes.ron", (0..=255).cycle().take(4096).collect()),
        ("words.ron", b"(format: 1, scenarios: [(house: (length_m: -5))])".to_vec()),
        ("weather.epw", b"LOCATION,Nowhere\n1,2,3\n".to_vec()),
    ];
    let mut paths: Vec<PathBuf> = cases.iter().map(|(name, _)| folder.join(name)).collect();
    for (path, (_, bytes)) in paths.iter().zip(&cases) {
        std::fs::write(path, bytes).unwrap();
    }
    paths.push(folder.join("nowhere.ron"));
    paths.push(folder.to_owned());
    paths
}

/// Something that presses keys and buttons without a thought.
struct Monkey {
    rng: Rng,
    folder: PathBuf,
    files: Vec<PathBuf>,
    pointer: Pos2,
    down: Option<PointerButton>,
    /// Middles of widgets that answer to the pointer.
    aims: Vec<Pos2>,
    told: Vec<String>,
}

impl Monkey {
    /// Chooses an event and puts it into the next frame.
    fn act(&mut self, h: &mut Window) {
        // Nothing is written outside the folder of the test.
        let folder = self.folder.clone();
        if let Some(dialog) = h.state_mut().filing.dialog.as_mut().filter(|dialog| dialog.ask.writes()) {
            dialog.text = folder.join(format!("{}.ron", self.rng.u8(..))).display().to_string();
        }
        let size = h.ctx.content_rect().size();
        let event = match self.rng.u32(0..1000) {
            0..350 => return self.point(h, size),
            350..620 => self.press(),
            620..700 => return self.scroll(h),
            700..800 => return self.command(h),
            800..880 => return self.key(h),
            880..960 => Event::Text(self.text()),
            960..970 => Event::Paste(self.pasted()),
            970..974 => return self.resize(h),
            974..978 => return self.drop_file(h),
            978..985 => Event::Ime(egui::ImeEvent::Commit(self.text())),
            985..990 => Event::WindowFocused(self.rng.bool()),
            990..994 => Event::PointerGone,
            994..997 => Event::Copy,
            _ => Event::Cut,
        };
        self.push(h, event);
    }

    fn push(&mut self, h: &mut Window, event: Event) {
        self.told.push(format!("{event:?}"));
        h.input_mut().events.push(event);
    }

    fn point(&mut self, h: &mut Window, size: egui::Vec2) {
        let at = match self.rng.u32(0..10) {
            0..6 if !self.aims.is_empty() => self.aims[self.rng.usize(..self.aims.len())],
            6..8 => self.pointer + vec2(self.rng.f32() * 80.0 - 40.0, self.rng.f32() * 40.0 - 20.0),
            _ => pos2(self.rng.f32() * size.x, self.rng.f32() * size.y),
        };
        self.pointer = at;
        self.push(h, Event::PointerMoved(at));
    }

    /// Presses a button, or lets it go.
    fn press(&mut self) -> Event {
        let pressed = self.down.is_none();
        let button = self.down.take().unwrap_or(match self.rng.u32(0..20) {
            0 => PointerButton::Secondary,
            1 => PointerButton::Middle,
            _ => PointerButton::Primary,
        });
        self.down = pressed.then_some(button);
        Event::PointerButton { pos: self.pointer, button, pressed, modifiers: self.modifiers() }
    }

    fn modifiers(&mut self) -> Modifiers {
        let held = [Modifiers::NONE, Modifiers::SHIFT, Modifiers::COMMAND, Modifiers::ALT];
        held[if self.rng.u32(0..5) == 0 { self.rng.usize(..held.len()) } else { 0 }]
    }

    fn scroll(&mut self, h: &mut Window) {
        let delta = vec2(self.rng.f32() * 40.0 - 20.0, self.rng.f32() * 400.0 - 200.0);
        let modifiers = self.modifiers();
        let (phase, source) = (egui::TouchPhase::Move, egui::MouseWheelSource::Wheel);
        self.push(h, Event::MouseWheel { unit: MouseWheelUnit::Point, delta, phase, source, modifiers });
    }

    /// The keys of a command, or the command itself where it has none.
    fn command(&mut self, h: &mut Window) {
        let command = Command::ALL[self.rng.usize(..Command::ALL.len())];
        match command.shortcut() {
            Some(keys) => self.stroke(h, keys.logical_key, keys.modifiers),
            None => {
                self.told.push(format!("{command:?}"));
                h.state_mut().queue.push(command);
            }
        }
    }

    fn key(&mut self, h: &mut Window) {
        let often = [Key::Tab, Key::Enter, Key::Escape, Key::Space, Key::ArrowUp, Key::ArrowDown, Key::Backspace];
        let keys = if self.rng.u32(0..4) == 0 { Key::ALL } else { &often };
        let (key, modifiers) = (keys[self.rng.usize(..keys.len())], self.modifiers());
        self.stroke(h, key, modifiers);
    }

    fn stroke(&mut self, h: &mut Window, key: Key, modifiers: Modifiers) {
        for pressed in [true, false] {
            self.push(h, Event::Key { key, physical_key: None, pressed, repeat: false, modifiers });
        }
    }

    fn text(&mut self) -> String {
        TEXTS[self.rng.usize(..TEXTS.len())].to_owned()
    }

    /// A text of another window: a study, part of one, or rubbish.
    fn pasted(&mut self) -> String {
        let whole = storage::write_study(&short());
        match self.rng.u32(0..3) {
            0 => whole,
            1 => whole.lines().take(self.rng.usize(..whole.lines().count())).collect(),
            _ => self.text(),
        }
    }

    fn resize(&mut self, h: &mut Window) {
        let sizes = [[1024.0, 768.0], [1280.0, 800.0], [1920.0, 1080.0], [800.0, 500.0], [300.0, 200.0]];
        let size = sizes[self.rng.usize(..sizes.len())];
        self.told.push(format!("{size:?}"));
        h.set_size(size.into());
    }

    fn drop_file(&mut self, h: &mut Window) {
        let path = self.files[self.rng.usize(..self.files.len())].clone();
        self.told.push(format!("dropped {path:?}"));
        h.input_mut().dropped_files.push(Arc::new(Dropped(path)));
    }

    /// Looks where the widgets are now.
    fn look(&mut self, h: &Window) {
        let answers = |node: &egui_kittest::Node<'_>| {
            node.accesskit_node().data().supports_action(egui::accesskit::Action::Click)
        };
        let root = h.root();
        let boxes =
            root.children_recursive().filter(answers).filter(|node| node.accesskit_node().raw_bounds().is_some());
        self.aims = boxes.map(|node| node.rect().center()).filter(|at| h.ctx.content_rect().contains(*at)).collect();
    }
}

/// A word that says that a number is none, as it would be written out.
fn is_no_number(text: &str) -> bool {
    text.split(|c: char| !c.is_alphanumeric()).any(|word| ["NaN", "inf"].contains(&word))
}

/// What is wrong with a shape: a text that is no number, or a place that is none.
fn painted(shape: &egui::Shape, wrong: &mut Vec<String>) {
    match shape {
        egui::Shape::Vec(shapes) => shapes.iter().for_each(|shape| painted(shape, wrong)),
        egui::Shape::Text(text) => {
            // An empty text paints nothing, wherever it is; egui_plot puts some before it knows its bounds.
            let text_itself = text.galley.text();
            if is_no_number(text_itself) || !(text_itself.is_empty() || text.pos.is_finite()) {
                wrong.push(format!("painted “{}” at {:?}", text.galley.text(), text.pos));
            }
        }
        other => {
            if other.visual_bounding_rect().any_nan() {
                wrong.push(format!("a shape at no place: {other:?}"));
            }
        }
    }
}

/// What is on screen, painted or read out, and no number; and shapes at no place.
fn no_numbers(h: &Window) -> Vec<String> {
    let mut wrong = Vec::new();
    h.output().shapes.iter().for_each(|clipped| painted(&clipped.shape, &mut wrong));
    for node in h.root().children_recursive() {
        let node = node.accesskit_node();
        wrong.extend([node.label(), node.value()].into_iter().flatten().filter(|text| is_no_number(text)));
        wrong.extend(
            node.numeric_value().filter(|v| !v.is_finite()).map(|v| format!("value {v} of {:?}", node.label())),
        );
    }
    wrong
}

#[test]
fn twenty_thousand_random_events_do_no_harm() {
    let folder = tempfile::tempdir().unwrap();
    // Paths that are suggested begin here, and not in the sources.
    std::env::set_current_dir(folder.path()).unwrap();
    let frame_s = Rc::new(Cell::new(0.0));
    let measured = Rc::clone(&frame_s);
    let mut h = window::drawn_by([1100.0, 720.0], move |ui, state| {
        let began = thread_time();
        window_ui(ui, state);
        measured.set((thread_time() - began).as_secs_f64());
    });
    h.state_mut().open(short(), None);
    h.state_mut().keep_in(folder.path().join("data"));
    let mut monkey = Monkey {
        rng: Rng::with_seed(seed()),
        folder: folder.path().to_owned(),
        files: files(folder.path()),
        pointer: pos2(400.0, 400.0),
        down: None,
        aims: Vec::new(),
        told: Vec::new(),
    };
    let (mut longest_s, mut sum_s, mut frames) = (0.0_f64, 0.0, 0_u32);
    let (mut edits, mut views, mut revision) = (0_u32, Vec::new(), 0);
    for event in 0..EVENTS {
        if event % EVERY == 0 {
            if h.state().document.draft.study.scenarios.len() > MOST_SCENARIOS {
                h.state_mut().open(short(), None);
            }
            monkey.look(&h);
            let wrong = no_numbers(&h);
            assert!(wrong.is_empty(), "event {event}: {wrong:?} after {:#?}", monkey.last());
        }
        monkey.act(&mut h);
        // Some events come in the same frame as the ones before.
        if monkey.rng.u32(0..4) < 3 {
            continue;
        }
        h.step();
        sum_s += frame_s.get();
        frames += 1;
        edits += u32::from(h.state().document.revision != revision);
        revision = h.state().document.revision;
        if !views.contains(&h.state().view) {
            views.push(h.state().view);
        }
        if frame_s.get() > longest_s {
            longest_s = frame_s.get();
            println!("event {event}: a frame of {:.1} ms after {:?}", 1e3 * longest_s, monkey.told.last());
        }
        assert!(longest_s < LONGEST_S, "event {event}: a frame of {longest_s:.3} s after {:#?}", monkey.last());
    }
    let mean_ms = 1e3 * sum_s / f64::from(frames);
    println!("{EVENTS} events in {frames} frames: mean {mean_ms:.1} ms, longest {:.1} ms", 1e3 * longest_s);
    println!("{edits} edits, {} views", views.len());
    // It has done more than press dead keys.
    let all_views = Command::ALL.into_iter().filter(|command| format!("{command:?}").ends_with("View")).count();
    assert!(edits > 200 && views.len() == all_views, "{edits} edits, {views:?}");
}

impl Monkey {
    fn last(&self) -> &[String] {
        &self.told[self.told.len().saturating_sub(12)..]
    }
}
