//! Collects problems while walking through the study.

use super::kind::ProblemKind;
use super::problem::Problem;
use crate::model::input::NumberInput;
use crate::units::Quantity;
use std::cell::RefCell;
use std::rc::Rc;

/// Where the walk stands, and what was found so far. Clones write to one list.
#[derive(Clone)]
pub(super) struct Check {
    scenario: Option<usize>,
    scenario_name: String,
    path: String,
    found: Rc<RefCell<Vec<Problem>>>,
}

impl Check {
    pub(super) fn new() -> Self {
        Self { scenario: None, scenario_name: String::new(), path: String::new(), found: Rc::default() }
    }

    /// The same list, inside a scenario.
    pub(super) fn within_scenario(&self, index: usize, name: &str) -> Self {
        Self {
            scenario: Some(index),
            scenario_name: name.to_owned(),
            path: format!("scenarios[{index}]"),
            found: Rc::clone(&self.found),
        }
    }

    /// The same list, one field or element further in: `"tent"` or `"sheets[2]"`.
    pub(super) fn within(&self, field: &str) -> Self {
        Self { path: self.path_of(field), ..self.clone() }
    }

    /// Writes down a problem of a field.
    pub(super) fn add(&mut self, field: &str, label: &str, kind: ProblemKind) {
        let problem = Problem {
            scenario: self.scenario,
            scenario_name: self.scenario_name.clone(),
            path: self.path_of(field),
            label: label.to_owned(),
            kind,
        };
        self.found.borrow_mut().push(problem);
    }

    /// Checks every number of a part against its range.
    pub(super) fn numbers<T>(&mut self, part: &T, inputs: &[NumberInput<T>]) {
        for input in inputs {
            let range = (input.min, input.max);
            self.number(input.key, input.label, (input.get)(part), range, input.quantity);
        }
    }

    /// Checks one number against a range.
    pub(super) fn number(&mut self, field: &str, label: &str, value: f64, range: (f64, f64), quantity: Quantity) {
        let (min, max) = range;
        if !value.is_finite() {
            self.add(field, label, ProblemKind::NotANumber { min, max, quantity });
        } else if value < min || max < value {
            self.add(field, label, ProblemKind::OutOfRange { value, min, max, quantity });
        }
    }

    /// All that was found.
    pub(super) fn found(&self) -> Vec<Problem> {
        self.found.borrow().clone()
    }

    fn path_of(&self, field: &str) -> String {
        match (self.path.is_empty(), field.is_empty()) {
            (_, true) => self.path.clone(),
            (true, false) => field.to_owned(),
            (false, false) => format!("{}.{field}", self.path),
        }
    }
}
