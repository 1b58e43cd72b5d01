//! The checks of each scenario's season, kept until season or units change.

use super::board::Season;
use super::document::ScenarioId;
use crate::checks::{Case, Check, Grade, checks, count};
use crate::model::Catalogue;
use crate::season::ScenarioRun;
use crate::units::UnitSystem;
use std::collections::BTreeMap;
use std::sync::Arc;

struct Kept {
    run: Arc<ScenarioRun>,
    units: UnitSystem,
    checks: Arc<Vec<Check>>,
}

/// Checks by scenario.
#[derive(Default)]
pub struct Verdicts {
    kept: BTreeMap<ScenarioId, Kept>,
}

impl Verdicts {
    /// Checks the seasons that are new, and forgets those that are gone.
    pub fn settle<'a>(
        &mut self,
        seasons: impl Iterator<Item = (ScenarioId, &'a Season)>,
        catalogue: &Catalogue,
        units: UnitSystem,
    ) {
        let mut kept = BTreeMap::new();
        for (id, season) in seasons {
            let known = self.kept.remove(&id).filter(|k| Arc::ptr_eq(&k.run, &season.run) && k.units == units);
            kept.insert(id, known.unwrap_or_else(|| Kept::of(season, catalogue, units)));
        }
        self.kept = kept;
    }

    /// The checks of a scenario, the worst first; none before its first season.
    #[must_use]
    pub fn of(&self, id: ScenarioId) -> Option<&Arc<Vec<Check>>> {
        self.kept.get(&id).map(|kept| &kept.checks)
    }

    /// How many checks of a scenario say stop.
    #[must_use]
    pub fn stops(&self, id: ScenarioId) -> usize {
        self.of(id).map_or(0, |checks| count(checks, Grade::Stop))
    }
}

impl Kept {
    fn of(season: &Season, catalogue: &Catalogue, units: UnitSystem) -> Self {
        let inputs = &season.inputs;
        let run = Arc::clone(&season.run);
        let case = Case { study: &inputs.study, scenario: &inputs.scenario, catalogue, run: &run, units };
        let checks = Arc::new(if season.is_empty() { Vec::new() } else { checks(&case) });
        Self { run, units, checks }
    }
}
