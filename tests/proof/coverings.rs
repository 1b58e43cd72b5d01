//! Published coverings: what catalogue sheets and screens lose alone and together.

use serde::Deserialize;
use warmfold::model::bundled_catalogue;
use warmfold::physics::skin::{resistance_in_wind, stack_resistance};

use super::figure::{Figure, hold};
use super::sheet::told_figures;
use super::surfaces::radiative_at_5_c;

/// Sheets of the catalogue, outermost first, and a screen drawn behind them.
#[derive(Deserialize)]
struct Stack(Vec<String>, Option<String>);

impl Stack {
    /// In the handbook's wind, m²·K/W.
    fn m2k_per_w(&self) -> f64 {
        let catalogue = bundled_catalogue();
        let sheets = stack_resistance(self.0.iter().map(|key| catalogue.sheet(key).expect("a known sheet")));
        let screen = self.1.as_ref().map(|key| catalogue.screen(key).expect("a known screen"));
        sheets + screen.map_or(0.0, |screen| screen.added_resistance_m2k_per_w)
    }

    fn calm_u(&self) -> f64 {
        1.0 / resistance_in_wind(self.m2k_per_w(), 0.0, radiative_at_5_c())
    }
}

#[derive(Deserialize)]
enum Setting {
    /// U in the handbook's wind, W/(m²·K).
    U(Stack),
    /// Share of the first stack's U that the second leaves, %, in the handbook's wind.
    Left(Stack, Stack),
    /// The same in still air.
    LeftCalm(Stack, Stack),
}

fn compute(setting: &Setting) -> f64 {
    match setting {
        Setting::U(stack) => 1.0 / stack.m2k_per_w(),
        Setting::Left(before, after) => 100.0 * before.m2k_per_w() / after.m2k_per_w(),
        Setting::LeftCalm(before, after) => 100.0 * after.calm_u() / before.calm_u(),
    }
}

pub fn figures() -> Vec<Figure> {
    told_figures("coverings", compute)
}

#[test]
fn coverings_agree() {
    hold(&figures());
}
