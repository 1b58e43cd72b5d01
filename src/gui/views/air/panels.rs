//! The plots of the view, under their names, with what they hand out.

use crate::figures::{self, Named};
use crate::gui::board::Season;
use crate::gui::handout::{Make, handout_ui};
use crate::gui::plots::axis::Look;
use crate::gui::plots::{air_days, air_months};
use crate::gui::state::State;
use crate::gui::theme::{SMALL, semibold};
use crate::gui::views::choice;
use crate::model::Zone;
use crate::season::plan::actual_zone;
use egui::{RichText, Ui};
use std::ops::Range;

/// What is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum AirPlot {
    /// Hours by month; where there is room they always stand beside the days.
    #[default]
    Months,
    /// The sunniest mild day with the days round it.
    SunnyDays,
    /// The day of the time cursor with the days round it.
    CursorDays,
}

impl AirPlot {
    /// Name on screen.
    fn name(self) -> &'static str {
        match self {
            Self::Months => "By month",
            Self::SunnyDays => "Sunniest mild day",
            Self::CursorDays => "At the cursor",
        }
    }
}

/// Height of a title over a figure.
const TITLE: f32 = 20.0;

/// What the plots draw.
pub struct Scene<'a> {
    /// Name of the scenario.
    pub name: &'a str,
    /// Its season.
    pub season: &'a Season,
    /// How they are drawn.
    pub look: Look,
}

impl Scene<'_> {
    fn crop_in_tent(&self) -> bool {
        let scenario = &self.season.inputs.scenario;
        actual_zone(scenario.crop.zone, scenario) == Zone::Tent
    }

    /// Makes a table away from the window.
    fn table(&self, of: impl FnOnce(Named) -> figures::Figures + Send + 'static) -> Make {
        let (name, season) = (self.name.to_owned(), self.season.clone());
        Box::new(move || of(Named { name: &name, run: &season.run, climate: &season.climate }))
    }

    /// The bars under what `title` draws.
    pub fn months_ui(&self, ui: &mut Ui, state: &mut State, title: impl FnOnce(&mut Ui, &mut State)) {
        let figures = || self.table(|named| figures::air_months(&[named]));
        handout_ui(ui, state, "hours by month", None, figures, |ui, state| {
            title(ui, state);
            air_months::months_ui(ui, self.season, &self.look);
        });
    }

    /// The days under what `title` draws.
    fn days_ui(&self, ui: &mut Ui, state: &mut State, window: &Range<usize>, title: impl FnOnce(&mut Ui, &mut State)) {
        let (crop_in_tent, units, hours) = (self.crop_in_tent(), self.look.units, window.clone());
        let figures = || self.table(move |named| figures::air_days(named, hours, crop_in_tent, units));
        handout_ui(ui, state, "days of air", None, figures, |ui, state| {
            title(ui, state);
            // Another window is another plot, so that a zoom into one does not outlive it.
            let plots = |ui: &mut Ui| air_days::days_ui(ui, self.season, window, crop_in_tent, &self.look);
            if let Some(hour) = ui.push_id(window.start, plots).inner {
                state.hour = Some(hour);
            }
        });
    }

    /// The plot that was chosen of these, under their names.
    pub fn chosen_ui(&self, ui: &mut Ui, state: &mut State, offered: &[AirPlot]) {
        let advice = self.season.run.summary.air_advice.as_ref();
        let there = |plot: &AirPlot| *plot != AirPlot::SunnyDays || advice.is_some();
        let offered: Vec<AirPlot> = offered.iter().copied().filter(there).collect();
        let chosen = Some(state.air_plot).filter(|plot| offered.contains(plot));
        let shown = chosen.or(offered.first().copied()).unwrap_or_default();
        let title = |ui: &mut Ui, state: &mut State| choices_ui(ui, state, &offered, shown);
        match (shown, advice) {
            (AirPlot::Months, _) => self.months_ui(ui, state, title),
            (AirPlot::SunnyDays, Some(advice)) => {
                self.days_ui(ui, state, &air_days::window(self.season, advice.hour), title);
            }
            _ => self.days_ui(ui, state, &air_days::window(self.season, self.look.cursor), title),
        }
    }
}

/// The title of the bars where they stand alone.
pub fn months_title_ui(ui: &mut Ui) {
    ui.horizontal(|ui| {
        ui.set_height(TITLE);
        ui.label(RichText::new("Hours by month").font(semibold(SMALL + 0.5)));
    });
}

fn choices_ui(ui: &mut Ui, state: &mut State, offered: &[AirPlot], shown: AirPlot) {
    ui.horizontal(|ui| {
        ui.set_height(TITLE);
        ui.spacing_mut().item_spacing.x = 8.0;
        ui.spacing_mut().button_padding.x = 0.0;
        for plot in offered {
            if choice(ui, plot.name(), *plot == shown, SMALL + 0.5) {
                state.air_plot = *plot;
            }
        }
    });
}
