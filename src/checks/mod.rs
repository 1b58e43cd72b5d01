//! What could hurt someone or spoil the plan: each check graded, with its figure, rule, source and remedy.
//!
//! A check appears where it applies. What the grower has not looked up yet is graded [`Grade::Look`] at least. Local codes
//! and licensed trades have the last word, and no check says that anything is without danger.

mod case;
mod cylinder;
mod electric;
mod flames;
mod plan;
mod reminders;
mod room;
mod water;

pub use case::Case;

use crate::model::Answer;
use serde::Serialize;

/// How a check comes out, the worst first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Grade {
    /// Against a rule, or the plan will not work: mend it first.
    Stop,
    /// Not known, near its limit, or nothing that a program can see: go and look.
    Look,
    /// Within the rule that is named; local codes decide.
    Fine,
}

impl Grade {
    /// All of them, the worst first.
    pub const ALL: [Self; 3] = [Self::Stop, Self::Look, Self::Fine];

    /// Name on screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Stop => "Stop",
            Self::Look => "Look",
            Self::Fine => "Fine",
        }
    }

    /// What it means, as a heading.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Stop => "Stop: mend this first",
            Self::Look => "Look: not known, near its limit, or for your own eyes",
            Self::Fine => "Fine: within the rule named; local codes decide",
        }
    }
}

/// The part of the study in which a check is mended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Mend {
    /// Covering and night cover.
    Covering,
    /// Water store.
    Water,
    /// Heaters, alarms, air for flames.
    Heater,
    /// Crop and its alarm.
    Crop,
    /// Circuit and plug.
    Site,
}

/// One check.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Check {
    /// What is checked.
    pub name: &'static str,
    /// How it comes out.
    pub grade: Grade,
    /// What was found, beside its limit, in the units asked for.
    pub figure: String,
    /// The rule.
    pub rule: String,
    /// Whose rule it is.
    pub source: &'static str,
    /// What to do.
    pub remedy: String,
    /// Where to do it.
    #[serde(skip)]
    pub mend: Mend,
}

/// Every check that applies to a scenario, the worst first.
#[must_use]
pub fn checks(case: &Case) -> Vec<Check> {
    let mut all = electric::checks(case);
    all.extend(flames::checks(case));
    all.extend(room::checks(case));
    all.extend(cylinder::checks(case));
    all.extend(water::checks(case));
    all.extend(plan::checks(case));
    all.extend(reminders::checks(case));
    all.sort_by_key(|check| check.grade);
    all
}

/// How many checks come out with this grade.
#[must_use]
pub fn count(checks: &[Check], grade: Grade) -> usize {
    checks.iter().filter(|check| check.grade == grade).count()
}

/// What to do while a check is open, and what to keep to once it is fine.
fn remedy(grade: Grade, open: &str, fine: &str) -> String {
    if grade == Grade::Fine { fine } else { open }.to_owned()
}

/// What follows from an answer: there, not there, not known.
fn by_answer(answer: Answer, no: Grade) -> Grade {
    match answer {
        Answer::Yes => Grade::Fine,
        Answer::No => no,
        Answer::NotKnown => Grade::Look,
    }
}
