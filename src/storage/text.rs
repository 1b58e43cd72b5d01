//! A study as text and back.

use super::fault::{Fault, Place, StudyFileError};
use super::scan::{path_at, place_of, start_of_token, top_level_word};
use crate::model::{FORMAT, Problem, ProblemKind, Study, bundled_catalogue, problems, validate::nearest_name};
use crate::units::UnitSystem;
use ron::error::{Error as RonError, SpannedError};
use ron::extensions::Extensions;
use ron::ser::PrettyConfig;

/// Largest study file, bytes; the largest sensible study has a hundredth of it.
pub const LARGEST_FILE_BYTES: u64 = 5_000_000;

/// Head of every written study.
const HEADER: &str = "\
// A Warmfold study. Metric throughout: metres, °C, W, kWh; the unit is the last part of each name.
// Fields that are left out take their default. Comments are not kept when the program saves.
";

fn notation() -> ron::Options {
    ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME | Extensions::UNWRAP_VARIANT_NEWTYPES)
}

/// The study as text that [`read_study`] gives back exactly.
#[must_use]
pub fn write_study(study: &Study) -> String {
    let pretty = PrettyConfig::new().indentor("  ").new_line("\n").compact_arrays(false);
    // A study holds numbers, texts, lists and choices only: nothing that the notation lacks.
    let body = notation().to_string_pretty(study, pretty).unwrap_or_default();
    format!("{HEADER}{body}\n")
}

/// Reads a study from the bytes of a file.
///
/// # Errors
/// When the bytes are too many, not text or not a study.
pub fn read_bytes(bytes: &[u8]) -> Result<Study, StudyFileError> {
    if LARGEST_FILE_BYTES < bytes.len() as u64 {
        return Err(whole_file(Fault::TooLarge { bytes: bytes.len() as u64, most: LARGEST_FILE_BYTES }));
    }
    match std::str::from_utf8(bytes) {
        Ok(text) => read_study(text),
        Err(error) => {
            let good = bytes.get(..error.valid_up_to()).unwrap_or_default();
            let line = 1 + good.iter().filter(|byte| **byte == b'\n').count();
            Err(StudyFileError::new(Some(Place { line, column: 1 }), "", Fault::NotText))
        }
    }
}

/// Reads a study from text. What it says may still break rules: see [`problems`].
///
/// # Errors
/// When the text is not a study of this or an older format, or holds a number that cannot be computed with.
pub fn read_study(text: &str) -> Result<Study, StudyFileError> {
    if LARGEST_FILE_BYTES < text.len() as u64 {
        return Err(whole_file(Fault::TooLarge { bytes: text.len() as u64, most: LARGEST_FILE_BYTES }));
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(whole_file(Fault::Nothing));
    }
    check_format(text)?;
    // Format 1 is the first; a later format is migrated here from what this reads.
    let study = notation().from_str::<Study>(text).map_err(|error| explain(text, error))?;
    match problems(&study, bundled_catalogue()).iter().find(|p| matches!(p.kind, ProblemKind::NotANumber { .. })) {
        Some(problem) => Err(not_a_number(text, problem)),
        None => Ok(study),
    }
}

fn whole_file(fault: Fault) -> StudyFileError {
    StudyFileError::new(None, "", fault)
}

/// A missing format is 1.
fn check_format(text: &str) -> Result<(), StudyFileError> {
    let Some((word, place)) = top_level_word(text, "format") else { return Ok(()) };
    let fault = match word.parse::<u64>() {
        Ok(found) if found > u64::from(FORMAT) => Fault::NewerFormat { found },
        Ok(0) | Err(_) => Fault::NoSuchFormat { found: word.to_owned() },
        Ok(_) => return Ok(()),
    };
    Err(StudyFileError::new(Some(place), "format", fault))
}

fn not_a_number(text: &str, problem: &Problem) -> StudyFileError {
    let fault = Fault::NotANumber { problem: problem.text(UnitSystem::Metric) };
    StudyFileError::new(place_of(text, &problem.path), &problem.path, fault)
}

/// The reader's error in our words.
fn explain(text: &str, error: SpannedError) -> StudyFileError {
    let place = start_of_token(text, Place { line: error.span.start.line, column: error.span.start.col });
    let fault = fault_of(error.code);
    StudyFileError::new(Some(place), &path_at(text, place), fault)
}

fn fault_of(code: RonError) -> Fault {
    let within = |outer: Option<String>| outer.unwrap_or_else(|| "this part".to_owned());
    let owned = |names: &'static [&'static str]| names.iter().map(|n| (*n).to_owned()).collect();
    let nearest =
        |found: &str, names: &'static [&'static str]| nearest_name(found, names.iter().copied()).map(str::to_owned);
    match code {
        RonError::NoSuchStructField { expected, found, outer } => Fault::UnknownField {
            nearest: nearest(&found, expected),
            field: found,
            within: within(outer),
            known: owned(expected),
        },
        RonError::NoSuchEnumVariant { expected, found, outer } => Fault::UnknownChoice {
            nearest: nearest(&found, expected),
            choice: found,
            within: within(outer),
            known: owned(expected),
        },
        RonError::DuplicateStructField { field, .. } => Fault::Twice { field: field.to_owned() },
        RonError::MissingStructField { field, outer } => {
            Fault::Missing { field: field.to_owned(), within: within(outer) }
        }
        RonError::InvalidValueForType { expected, found } => Fault::WrongValue { expected, found },
        RonError::ExpectedDifferentStructName { expected, found } => {
            Fault::WrongValue { expected: format!("the fields of {expected} in ( and )"), found }
        }
        RonError::ExpectedFloat => wrong("a number", "something else"),
        RonError::ExpectedInteger | RonError::InvalidIntegerDigit { .. } => wrong("a whole number", "something else"),
        RonError::IntegerOutOfBounds => wrong("a smaller whole number that is not negative", "one that does not fit"),
        RonError::ExpectedBoolean => wrong("true or false", "something else"),
        RonError::ExpectedString => wrong("a text in double quotes", "something else"),
        RonError::ExpectedArray => wrong("a list in square brackets", "something else"),
        RonError::SuggestRawIdentifier(found) | RonError::InvalidIdentifier(found) => Fault::Notation {
            what: format!("expected the name of a field, but found \"{found}\""),
            remedy: "write decimals with a point, and names of fields with letters and underscores only",
        },
        other => Fault::Notation { remedy: remedy_of(&other), what: other.to_string() },
    }
}

fn wrong(expected: &str, found: &str) -> Fault {
    Fault::WrongValue { expected: expected.to_owned(), found: found.to_owned() }
}

fn remedy_of(code: &RonError) -> &'static str {
    match code {
        RonError::ExpectedComma => "put a comma between fields; whole numbers take no decimal point",
        RonError::ExpectedArrayEnd => "close the list with ] or put a comma between its entries",
        RonError::ExpectedStructLikeEnd | RonError::ExpectedOptionEnd => "close the bracket with )",
        RonError::ExpectedMapColon => "put a colon between the name of the field and its value",
        RonError::ExpectedStringEnd => "close the text with a double quote",
        RonError::ExpectedStructLike | RonError::ExpectedNamedStructLike(_) => "put the fields of this part in ( and )",
        RonError::ExpectedIdentifier => {
            "close the bracket before this with ), or write the name of a field without quotes"
        }
        RonError::TrailingCharacters => "remove what stands after the closing bracket of the study",
        RonError::UnclosedBlockComment => "close the comment with */",
        RonError::ExceededRecursionLimit => "remove the superfluous brackets",
        RonError::Eof => "the text ends too early: close all brackets, or fetch the whole file again",
        _ => "correct the text at this place",
    }
}
