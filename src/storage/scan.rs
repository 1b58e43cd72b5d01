//! Finds places in the text of a study: where a field of a path stands, and which field stands at a place.
//!
//! Works on tokens alone, so that it also serves texts that cannot be read as a study.

use super::fault::Place;

/// A token with its first character's place.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Token<'a> {
    place: Place,
    kind: Kind<'a>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Kind<'a> {
    Open {
        list: bool,
    },
    Close,
    Comma,
    Colon,
    /// A name, number or text, as written.
    Word(&'a str),
}

/// Splits a text into tokens; comments and blanks are skipped.
struct Tokens<'a> {
    rest: &'a str,
    place: Place,
}

impl<'a> Tokens<'a> {
    fn new(text: &'a str) -> Self {
        Self { rest: text, place: Place { line: 1, column: 1 } }
    }

    /// Takes the first `bytes` of the rest, which must end on a character.
    fn take(&mut self, bytes: usize) -> &'a str {
        let (taken, rest) = self.rest.split_at_checked(bytes).unwrap_or((self.rest, ""));
        for character in taken.chars() {
            if character == '\n' {
                self.place = Place { line: self.place.line + 1, column: 1 };
            } else {
                self.place.column += 1;
            }
        }
        self.rest = rest;
        taken
    }

    fn skip_blanks_and_comments(&mut self) {
        loop {
            let blanks = self.rest.len() - self.rest.trim_start().len();
            if blanks > 0 {
                self.take(blanks);
            } else if self.rest.starts_with("//") {
                self.take(self.rest.find('\n').unwrap_or(self.rest.len()));
            } else if self.rest.starts_with("/*") {
                self.take(self.rest.find("*/").map_or(self.rest.len(), |end| end + 2));
            } else {
                return;
            }
        }
    }

    /// Bytes of a quoted text at the start of the rest, quotes included.
    fn quoted_bytes(&self) -> usize {
        let mut escaped = false;
        for (at, character) in self.rest.char_indices().skip(1) {
            match character {
                '"' if !escaped => return at + 1,
                '\\' => escaped = !escaped,
                _ => escaped = false,
            }
        }
        self.rest.len()
    }
}

impl<'a> Iterator for Tokens<'a> {
    type Item = Token<'a>;

    fn next(&mut self) -> Option<Token<'a>> {
        self.skip_blanks_and_comments();
        let place = self.place;
        let first = self.rest.chars().next()?;
        let kind = match first {
            '(' | '{' | '[' => Kind::Open { list: first == '[' },
            ')' | '}' | ']' => Kind::Close,
            ',' => Kind::Comma,
            ':' => Kind::Colon,
            '"' => return Some(Token { place, kind: Kind::Word(self.take(self.quoted_bytes())) }),
            _ => {
                let ends = |c: char| c.is_whitespace() || "()[]{},:\"".contains(c);
                let end = self.rest.char_indices().skip(1).find(|(_, c)| ends(*c)).map(|(at, _)| at);
                return Some(Token { place, kind: Kind::Word(self.take(end.unwrap_or(self.rest.len()))) });
            }
        };
        self.take(first.len_utf8());
        Some(Token { place, kind })
    }
}

/// One step of a path.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Step<'a> {
    Field(&'a str),
    Element(usize),
}

/// An open bracket: a list with the index that it has come to, or a struct with its current field.
#[derive(Debug, Clone, Copy)]
enum Frame<'a> {
    List(usize),
    Struct(Option<&'a str>),
}

impl<'a> Frame<'a> {
    fn step(&self) -> Option<Step<'a>> {
        match self {
            Self::List(index) => Some(Step::Element(*index)),
            Self::Struct(field) => field.map(Step::Field),
        }
    }
}

/// Walks over the tokens and keeps the open brackets.
struct Walk<'a> {
    tokens: std::iter::Peekable<Tokens<'a>>,
    frames: Vec<Frame<'a>>,
}

impl<'a> Walk<'a> {
    fn new(text: &'a str) -> Self {
        Self { tokens: Tokens::new(text).peekable(), frames: Vec::new() }
    }

    /// The next token; afterwards the frames say where the token after it stands. `true` for the name of a field.
    fn advance(&mut self) -> Option<(Token<'a>, bool)> {
        let token = self.tokens.next()?;
        let mut names_field = false;
        match (token.kind, self.frames.last_mut()) {
            (Kind::Open { list: true }, _) => self.frames.push(Frame::List(0)),
            (Kind::Open { list: false }, _) => self.frames.push(Frame::Struct(None)),
            (Kind::Close, _) => drop(self.frames.pop()),
            (Kind::Comma, Some(Frame::List(index))) => *index += 1,
            (Kind::Comma, Some(Frame::Struct(field))) => *field = None,
            (Kind::Word(name), Some(Frame::Struct(field)))
                if self.tokens.peek().is_some_and(|next| next.kind == Kind::Colon) =>
            {
                *field = Some(name);
                names_field = true;
            }
            _ => {}
        }
        Some((token, names_field))
    }

    fn steps(&self) -> impl Iterator<Item = Step<'a>> {
        self.frames.iter().filter_map(Frame::step)
    }
}

/// `scenarios[1].tent.height_m` in steps.
fn steps_of(path: &str) -> Vec<Step<'_>> {
    let mut steps = Vec::new();
    for part in path.split('.') {
        let mut pieces = part.split('[');
        steps.extend(pieces.next().filter(|name| !name.is_empty()).map(Step::Field));
        steps.extend(pieces.filter_map(|piece| piece.trim_end_matches(']').parse().ok()).map(Step::Element));
    }
    steps
}

/// Place of a path's field in the text, or of the nearest part round it that is written down.
#[must_use]
pub fn place_of(text: &str, path: &str) -> Option<Place> {
    let wanted = steps_of(path);
    let mut best: Option<(usize, Place)> = None;
    let mut walk = Walk::new(text);
    loop {
        // Where the coming token stands: it is known before the token is taken.
        let deep = walk.steps().count();
        let on_the_way = deep <= wanted.len() && walk.steps().zip(&wanted).all(|(here, there)| here == *there);
        let Some((token, names_field)) = walk.advance() else { break };
        let opens_value = !matches!(token.kind, Kind::Comma | Kind::Colon | Kind::Close) && !names_field;
        if opens_value && on_the_way && best.is_none_or(|(depth, _)| depth < deep) {
            best = Some((deep, token.place));
        }
    }
    best.map(|(_, place)| place)
}

/// The first character of the token that a place lies in or before; the place itself after the last token.
pub(super) fn start_of_token(text: &str, place: Place) -> Place {
    let mut tokens = Tokens::new(text);
    while let Some(token) = tokens.next() {
        // The walk now stands behind the token.
        if place < tokens.place {
            return token.place;
        }
    }
    place
}

/// Path of the field whose name or value stands at a place; empty at the top.
#[must_use]
pub fn path_at(text: &str, place: Place) -> String {
    let mut walk = Walk::new(text);
    let mut path = written(walk.steps());
    while let Some(next) = walk.tokens.peek() {
        if place < next.place {
            break;
        }
        let before = written(walk.steps());
        let Some((token, names_field)) = walk.advance() else { break };
        path = if names_field || token.kind == Kind::Colon { written(walk.steps()) } else { before };
    }
    path
}

fn written<'a>(steps: impl Iterator<Item = Step<'a>>) -> String {
    let mut path = String::new();
    for step in steps {
        match step {
            Step::Element(index) => path.push_str(&format!("[{index}]")),
            Step::Field(name) if path.is_empty() => path.push_str(name),
            Step::Field(name) => path.push_str(&format!(".{name}")),
        }
    }
    path
}

/// The word of a top-level field, with its place, such as that of `format`.
pub(super) fn top_level_word<'a>(text: &'a str, field: &str) -> Option<(&'a str, Place)> {
    let mut walk = Walk::new(text);
    loop {
        let here = matches!(walk.frames.as_slice(), [Frame::Struct(Some(name))] if *name == field);
        let (token, _) = walk.advance()?;
        if let (true, Kind::Word(word)) = (here, token.kind) {
            return Some((word, token.place));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "// a study: (x: 1)\n(\n  format: 1, title: \"a, (b: \\\"c\\\")\",\n  scenarios: [\n    (name: \"one\"),\n    (tent: (height_m: 0.9, sheets: [\"film\", \"fleece\"]), heater: Some((fuel: \"x\"))),\n  ],\n)\n";

    fn at(path: &str) -> (usize, usize) {
        place_of(TEXT, path).map_or((0, 0), |p| (p.line, p.column))
    }

    #[test]
    fn paths_are_found_or_the_part_round_them() {
        assert_eq!(at("format"), (3, 11));
        assert_eq!(at("scenarios[0].name"), (5, 12));
        assert_eq!(at("scenarios[1].tent.height_m"), (6, 23));
        assert_eq!(at("scenarios[1].tent.sheets[1]"), (6, 45));
        assert_eq!(at("scenarios[1].heater.fuel"), (6, 77));
        // Not written down: the part that would hold it.
        assert_eq!(at("scenarios[1].tent.width_m"), (6, 12));
        assert_eq!(at("scenarios[0].house.length_m"), (5, 5));
        assert_eq!(at("season.from_day"), (2, 1));
    }

    #[test]
    fn places_lead_back_to_their_path() {
        let path = |line, column| path_at(TEXT, Place { line, column });
        assert_eq!(path(3, 11), "format");
        assert_eq!(path(3, 3), "format");
        assert_eq!(path(6, 23), "scenarios[1].tent.height_m");
        assert_eq!(path(6, 12), "scenarios[1].tent");
        assert_eq!(path(6, 45), "scenarios[1].tent.sheets[1]");
    }

    #[test]
    fn torn_texts_do_no_harm() {
        for text in ["", "(", "((((", "\"", "/*", "(a:", ")]}", "[,,,", "(a: \"\\"] {
            let _ = (place_of(text, "a.b[3]"), path_at(text, Place { line: 9, column: 9 }));
        }
        assert_eq!(top_level_word("(a: 2, format: 7)", "format").map(|(word, _)| word), Some("7"));
        assert_eq!(top_level_word("(a: (format: 7))", "format"), None);
    }
}
