//! What the plots draw, made once per season and kept with it.

use crate::gui::board::Season;
use crate::gui::document::ScenarioId;
use crate::season::ScenarioRun;
use crate::season::sums::{self, Day, Month};
use egui_plot::PlotPoint;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Hours between the points of a running sum.
const THIN_H: usize = 6;
/// The same for the baseline, whose dashes need room between the points.
const THIN_BASELINE_H: usize = 48;
/// Data of one season.
#[derive(Debug, Clone, Default)]
pub struct Curves {
    /// Running cost.
    pub cost: Vec<PlotPoint>,
    /// Running heat, kWh.
    pub heat: Vec<PlotPoint>,
    /// Running cost of the baseline.
    pub baseline_cost: Vec<PlotPoint>,
    /// Running heat of the baseline, kWh.
    pub baseline_heat: Vec<PlotPoint>,
    /// Day by day.
    pub days: Vec<Day>,
    /// Month by month.
    pub months: Vec<Month>,
}

impl Curves {
    fn of(season: &Season) -> Self {
        let h = &season.run.hours;
        Self {
            cost: running(&h.cost, THIN_H),
            heat: running(&h.heat_kwh(), THIN_H),
            baseline_cost: running(&h.baseline_cost, THIN_BASELINE_H),
            baseline_heat: running(&h.baseline_kwh(), THIN_BASELINE_H),
            days: sums::days(&season.run, &season.climate),
            months: sums::months(&season.run, &season.climate),
        }
    }
}

fn running(column: &[f64], every_h: usize) -> Vec<PlotPoint> {
    sums::running(column, every_h).into_iter().map(|[x, y]| PlotPoint::new(x, y)).collect()
}

/// Curves by scenario, made anew when its season changes.
#[derive(Default)]
pub struct PlotShelf {
    held: BTreeMap<ScenarioId, (Arc<ScenarioRun>, Arc<Curves>)>,
}

impl PlotShelf {
    /// The curves of a season.
    pub fn curves(&mut self, id: ScenarioId, season: &Season) -> Arc<Curves> {
        if let Some((run, curves)) = self.held.get(&id)
            && Arc::ptr_eq(run, &season.run)
        {
            return Arc::clone(curves);
        }
        let curves = Arc::new(Curves::of(season));
        self.held.insert(id, (Arc::clone(&season.run), Arc::clone(&curves)));
        curves
    }
}
