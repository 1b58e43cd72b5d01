//! What a scenario costs to buy, and when the saving has paid for it.

use super::plan::Plan;
use crate::model::{CostLine, Measure, Scenario};
use serde::Serialize;

/// One line of the list, with the quantity that the drawing gives.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BuyingLine {
    /// What it is for.
    pub name: &'static str,
    /// The user's note.
    pub note: String,
    /// How many, or m².
    pub quantity: f64,
    /// Whether the quantity is an area, m².
    pub by_area: bool,
    /// Price of one.
    pub price: f64,
    /// Years that it lasts.
    pub life_years: f64,
}

impl BuyingLine {
    /// What it costs once.
    #[must_use]
    pub fn cost(&self) -> f64 {
        self.quantity * self.price
    }

    /// What it costs in so many winters, bought anew each time its life is over.
    #[must_use]
    pub fn cost_over(&self, winters: f64) -> f64 {
        // A hair less than a whole life must not buy once more.
        self.cost() * (winters / self.life_years - 1e-9).ceil().max(1.0)
    }
}

/// The list of a scenario.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Buying {
    /// Its lines; those that the scenario does not have are left out.
    pub lines: Vec<BuyingLine>,
}

impl Buying {
    /// The lines of a scenario with their quantities.
    #[must_use]
    pub fn of(scenario: &Scenario, plan: &Plan) -> Self {
        let line = |line: &CostLine| {
            let quantity = quantity(line.measure, scenario, plan);
            (quantity > 0.0).then(|| BuyingLine {
                name: line.measure.name(),
                note: line.note.clone(),
                quantity,
                by_area: line.measure.by_area(),
                price: line.price,
                life_years: line.life_years,
            })
        };
        Self { lines: scenario.costs.iter().filter_map(line).collect() }
    }

    /// Everything once.
    #[must_use]
    pub fn cost(&self) -> f64 {
        self.lines.iter().map(BuyingLine::cost).sum()
    }

    /// Everything by the year of its life.
    #[must_use]
    pub fn cost_per_year(&self) -> f64 {
        self.lines.iter().map(|line| line.cost() / line.life_years).sum()
    }

    /// Everything over so many winters, with what must be bought again.
    #[must_use]
    pub fn cost_over(&self, winters: f64) -> f64 {
        self.lines.iter().map(|line| line.cost_over(winters)).sum()
    }
}

/// How much of a measure the scenario has: m², or a number.
#[must_use]
pub fn quantity(measure: Measure, scenario: &Scenario, plan: &Plan) -> f64 {
    let if_present = |present: bool| if present { 1.0 } else { 0.0 };
    let tent_m2 = plan.tent.as_ref().map_or(0.0, |tent| tent.measures.wall_and_top_m2);
    match measure {
        Measure::Covering => plan.light.iter().map(|facet| facet.area_m2).sum(),
        Measure::Tent => tent_m2,
        Measure::NightCover if scenario.night_cover.present => {
            let covered = |part| scenario.night_cover.parts.contains(&part);
            plan.shell.facets.iter().filter(|facet| covered(facet.part)).map(|facet| facet.area_m2).sum()
        }
        Measure::TentNightCover if scenario.tent.night_cover.present => tent_m2,
        Measure::NightCover | Measure::TentNightCover => 0.0,
        Measure::Vessel if scenario.water.present => {
            scenario.water.vessels.iter().map(|vessels| f64::from(vessels.count)).sum()
        }
        Measure::Vessel => 0.0,
        Measure::Heater => if_present(scenario.heater.present),
        Measure::StandbyHeater => if_present(scenario.standby.present),
        Measure::Vents => if_present(scenario.vents.present || scenario.vents.fan_present),
        Measure::Other => 1.0,
    }
}

/// When the lower running cost has paid for the higher buying cost, against the reference.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub enum Payback {
    /// After this many winters: simple payback, extra buying cost over yearly saving.
    Winters(f64),
    /// It costs no more to buy and less to run.
    AtOnce,
    /// It costs more to buy or to run and saves nothing on the other side.
    Never,
    /// It is cheaper to buy and dearer to run: that many winters eat the difference.
    EatenAfter(f64),
    /// It costs the same.
    Same,
}

/// Smallest amount of money that makes a difference.
pub const NO_MONEY: f64 = 0.005;

impl Payback {
    /// From the extra buying cost and the saving of each winter, both against the reference.
    #[must_use]
    pub fn of(extra_buying: f64, saving_per_winter: f64) -> Self {
        let sign = |amount: f64| {
            if amount > NO_MONEY {
                1
            } else if amount < -NO_MONEY {
                -1
            } else {
                0
            }
        };
        match (sign(extra_buying), sign(saving_per_winter)) {
            (0, 0) => Self::Same,
            (1, 1) => Self::Winters(extra_buying / saving_per_winter),
            (-1, -1) => Self::EatenAfter(extra_buying / saving_per_winter),
            (0 | -1, 0 | 1) => Self::AtOnce,
            _ => Self::Never,
        }
    }

    /// In words, never a negative or endless number.
    #[must_use]
    pub fn words(self) -> String {
        let winters = |n: f64| if n < 10.0 { format!("{n:.1} winters") } else { format!("{n:.0} winters") };
        match self {
            Self::Winters(n) if n > LONGEST_WINTERS => "more than 100 winters".to_owned(),
            Self::Winters(n) if n < 1.0 => "in the first winter".to_owned(),
            Self::Winters(n) => winters(n),
            Self::AtOnce => "at once".to_owned(),
            Self::Never => "never".to_owned(),
            Self::EatenAfter(n) if n > LONGEST_WINTERS => "cheaper for more than 100 winters".to_owned(),
            Self::EatenAfter(n) => format!("cheaper for {}", winters(n)),
            Self::Same => "no difference".to_owned(),
        }
    }
}

/// Nobody plans further ahead.
const LONGEST_WINTERS: f64 = 100.0;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn payback_is_a_number_only_where_it_means_something() {
        assert_eq!(Payback::of(200.0, 80.0), Payback::Winters(2.5));
        assert_eq!(Payback::of(0.0, 80.0), Payback::AtOnce);
        assert_eq!(Payback::of(-50.0, 80.0), Payback::AtOnce);
        assert_eq!(Payback::of(200.0, 0.0), Payback::Never);
        assert_eq!(Payback::of(200.0, -10.0), Payback::Never);
        assert_eq!(Payback::of(0.0, -10.0), Payback::Never);
        assert_eq!(Payback::of(-200.0, -10.0), Payback::EatenAfter(20.0));
        assert_eq!(Payback::of(0.0, 0.0), Payback::Same);
        assert_eq!(Payback::of(-200.0, 0.0), Payback::AtOnce);
        for payback in [Payback::of(1e9, 0.01), Payback::of(-1e9, -0.01)] {
            assert!(payback.words().contains("more than 100"), "{payback:?}");
        }
        assert_eq!(Payback::of(10.0, 80.0).words(), "in the first winter");
        assert_eq!(Payback::of(200.0, 80.0).words(), "2.5 winters");
    }

    #[test]
    fn a_film_of_four_years_is_bought_twice_in_five_winters() {
        let film = BuyingLine {
            name: "Inner tent",
            note: String::new(),
            quantity: 10.0,
            by_area: true,
            price: 2.0,
            life_years: 4.0,
        };
        let costs = [1.0, 4.0, 5.0, 8.0, 9.0].map(|winters| film.cost_over(winters));
        assert_eq!(costs, [20.0, 20.0, 40.0, 40.0, 60.0]);
    }
}
