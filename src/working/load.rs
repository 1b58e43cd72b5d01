//! The heater against the load of design weather.

use super::account::{Account, Factor, Number, Row, decimals, shared_decimals};
use super::ink::Ink;
use super::{Case, Panel, Topic};
use crate::model::Zone;
use crate::season::plan::{Plan, actual_zone};
use crate::season::sizing::SIZING_MARGIN;
use crate::units::Quantity;

/// A path of heat: name, W/K, from, to.
type Path = (&'static str, f64, f64, f64);

/// The panel.
pub(super) fn margin(case: &Case, plan: &Plan, ink: Ink) -> Panel {
    let load_w = case.run.design.load_w;
    let mut accounts = Vec::new();
    if load_w > 0.0 {
        accounts.push(out_of_the_house(case, plan, ink));
        accounts.extend(out_of_the_tent(case, plan, ink));
        accounts.push(ratio(case, ink));
    } else {
        accounts.push(Account { heading: "Design load".to_owned(), ..Account::default() }.noting(
            "There is no load: either no heater holds a temperature, or the design weather is warmer than what is held.",
        ));
    }
    Panel {
        topic: Topic::Margin,
        formula: "Steady loss in design weather, each path W per degree times its difference, night covers drawn, without \
            sun; the rated output divided by it is the margin.",
        accounts,
        source: "Outdoor air that 99.6 % of this weather year's hours exceed. U-values and air changes at handbook wind: \
            catalogue of sheets, tightness of the house. Edge: F × perimeter (US DOE engineering reference).",
    }
}

fn row(ink: Ink, (name, w_per_k, from_c, to_c): Path, decimals: usize) -> Row {
    let mut factors =
        vec![Factor::Times(ink.quantity(w_per_k, Quantity::HeatLossCoefficient)), ink.warmer(from_c, to_c)];
    factors.extend(ink.to_watts());
    Row::product(name, factors, ink.watts(w_per_k * (from_c - to_c), decimals))
}

fn sum(heading: &str, paths: &[Path], load_w: f64, ink: Ink) -> Account {
    let decimals = shared_decimals([load_w]).min(1);
    let rows = paths.iter().filter(|path| path.1 > 0.0).map(|path| row(ink, *path, decimals)).collect();
    Account::sum(heading, rows, "Design load", ink.watts(load_w, decimals))
}

fn out_of_the_house(case: &Case, plan: &Plan, ink: Ink) -> Account {
    let d = &case.run.design;
    let (house_c, floor_c, outdoor_c) = (d.house_air_c, d.house_floor_c, d.outdoor_c);
    let paths = [
        ("Skin", d.skin_w_per_k, house_c, outdoor_c),
        ("Air that leaks", d.leakage_w_per_k, house_c, outdoor_c),
        ("Edge of the floor", plan.edge_w_per_k, floor_c, outdoor_c),
        ("Core of the floor", plan.core_w_per_k, floor_c, d.deep_ground_c),
        ("Floor under the tent", plan.tent.as_ref().map_or(0.0, |t| t.core_w_per_k), d.tent_floor_c, d.deep_ground_c),
        ("Party wall", plan.party_w_per_k, house_c, d.behind_party_wall_c),
    ];
    let heading = format!(
        "House air {}, held at {} where the heater senses, outdoors {}",
        ink.temperature(house_c).text(),
        ink.temperature(d.held_c).text(),
        ink.temperature(outdoor_c).text(),
    );
    sum(&heading, &paths, d.load_w, ink)
}

/// The same load where it leaves the tent, if it is given there.
fn out_of_the_tent(case: &Case, plan: &Plan, ink: Ink) -> Option<Account> {
    let scenario = case.scenario;
    let zone = if scenario.heater.present { scenario.heater.zone } else { scenario.crop.zone };
    let (d, tent) = (&case.run.design, plan.tent.as_ref()?);
    if actual_zone(zone, scenario) != Zone::Tent {
        return None;
    }
    let paths = [
        ("Tent wall, top and its air", d.tent_wall_w_per_k, d.tent_air_c, d.house_air_c),
        ("Tent base", tent.base_w_per_k, d.tent_floor_c, d.house_air_c),
        ("Floor under the tent", tent.core_w_per_k, d.tent_floor_c, d.deep_ground_c),
    ];
    Some(sum("The same load where it leaves the tent: both sums agree at one house air only", &paths, d.load_w, ink))
}

fn ratio(case: &Case, ink: Ink) -> Account {
    let (load_w, rated_w) = (case.run.design.load_w, case.run.summary.rated_heater_w);
    let load = || ink.watts(load_w, shared_decimals([load_w]).min(1));
    let mut rows = Vec::new();
    if rated_w > 0.0 {
        let times = rated_w / load_w;
        let factors = vec![Factor::Times(ink.watts(rated_w, decimals(rated_w).min(1))), Factor::Over(load())];
        rows.push(Row::product("Rated output for each watt of load", factors, Number::new(times, 2, "×")));
    }
    if let Some(next_w) = case.run.summary.next_heater_w {
        let wanted = Number::exact(1.0 + SIZING_MARGIN, 1, "");
        let wanted_w = load_w * (1.0 + SIZING_MARGIN);
        rows.push(Row::product(
            "Load with a tenth over",
            vec![Factor::Times(load()), Factor::Times(wanted)],
            ink.watts(wanted_w, shared_decimals([wanted_w]).min(1)),
        ));
        rows.push(Row::given("Next size on sale", ink.watts(next_w, 0)));
    }
    let account = Account::list("Margin", rows);
    if rated_w > 0.0 { account } else { account.noting("There is no heater to compare the load with.") }
}
