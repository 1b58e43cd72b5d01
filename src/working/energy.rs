//! Heat from the books of the season, energy from heat, money from energy.

use super::account::{Account, Factor, Number, Row, decimals, shared_decimals};
use super::ink::Ink;
use super::{Case, Panel, Topic};
use crate::model::Heater;
use crate::season::money::Purchase;
use crate::season::record::{Portion, Taker};
use crate::season::{ScenarioRun, Summary};
use crate::units::HOURS_PER_DAY;

/// A flow of the season: its name, its kWh, and whether it is a gain.
pub(super) type Flow = (&'static str, fn(&Summary) -> f64, bool);

/// Losses and gains of a season as rows of a sum, heat from the heaters being what is left; gains are taken away.
pub(super) const FLOWS: [Flow; 8] = [
    ("Out through the skin", |s| s.skin_loss_kwh, false),
    ("Out with air that leaks", |s| s.leakage_loss_kwh, false),
    ("Out through vents and fan", |s| s.vent_loss_kwh, false),
    ("Into the ground", |s| s.ground_kwh, false),
    ("Through the party wall", |s| s.party_wall_kwh, false),
    ("Sun that left as vapour", |s| s.vapour_loss_kwh, false),
    ("Left in floor, benches and water", |s| s.store_change_kwh, false),
    ("Sun that stayed in the house", |s| s.sun_kept_kwh, true),
];

/// Decimals that the flows of a season share.
pub(super) fn flow_decimals(s: &Summary) -> usize {
    shared_decimals(FLOWS.iter().map(|(_, of, _)| of(s)))
}

/// One of the scenario's heaters with what it gave and took.
struct Burner<'a> {
    name: &'static str,
    heater: &'a Heater,
    purchase: &'a Purchase,
    heat_kwh: f64,
    energy_kwh: f64,
}

/// Heaters that gave heat.
fn burners<'a>(case: &Case<'a>) -> Vec<Burner<'a>> {
    let run = case.run;
    let heat = [&run.hours.heater_w, &run.hours.standby_w].map(|w| w.iter().sum::<f64>() / 1000.0);
    let heaters = [&case.scenario.heater, &case.scenario.standby];
    let mut burners = Vec::new();
    for (i, name) in ["Heater", "Standby heater"].into_iter().enumerate() {
        if let Some(purchase) = run.money.purchases[i].as_ref().filter(|_| heat[i] > 0.0) {
            let energy_kwh = run.money.energy_kwh[i];
            burners.push(Burner { name, heater: heaters[i], purchase, heat_kwh: heat[i], energy_kwh });
        }
    }
    burners
}

/// The panel of the winter's cost.
pub(super) fn cost(case: &Case, ink: Ink) -> Panel {
    let burners = burners(case);
    let mut accounts = vec![books(case.run, ink)];
    if burners.len() > 1 {
        accounts.push(shared_heat(case.run, &burners, ink));
    }
    accounts.extend(energy(&burners, ink));
    accounts.push(bill(case, ink));
    Panel {
        topic: Topic::Cost,
        formula: "Heat is what went out less what the sun gave. Heat divided by the efficiency is energy, energy times its \
            price is money; fans and the standing charge are added.",
        accounts,
        source: "Books of the season, hour by hour; prices and efficiency as given in the study. A heat pump's COP follows \
            the outdoor air: Staffell et al. 2012, A review of domestic heat pumps.",
    }
}

/// The panel of the fuel; none where no heater gave heat.
pub(super) fn fuel(case: &Case, ink: Ink) -> Option<Panel> {
    let burners = burners(case);
    if burners.is_empty() {
        return None;
    }
    let mut accounts: Vec<_> = energy(&burners, ink).into_iter().collect();
    let bought = |burner: &Burner| {
        let purchase = burner.purchase;
        let units = burner.energy_kwh / purchase.kwh_per_unit;
        let per_unit =
            Number::new(purchase.kwh_per_unit, decimals(purchase.kwh_per_unit), format!("kWh per {}", purchase.unit));
        let energy = ink.kwh(burner.energy_kwh, decimals(burner.energy_kwh));
        Row::product(
            format!("{}, {}", burner.name, purchase.fuel_name),
            vec![Factor::Times(energy), Factor::Over(per_unit)],
            Number::new(units, decimals(units).min(2), purchase.unit.clone()),
        )
    };
    let in_units: Vec<_> = burners.iter().filter(|b| b.purchase.unit != "kWh").map(bought).collect();
    if !in_units.is_empty() {
        accounts.push(Account::list("In the unit it is bought in", in_units));
    }
    Some(Panel {
        topic: Topic::Fuel,
        formula: "Heat of the season divided by the efficiency, and by the gross heat in one unit of the fuel.",
        accounts,
        source: "Heat contents and their sources: catalogue of fuels, or the study's own rows.",
    })
}

fn books(run: &ScenarioRun, ink: Ink) -> Account {
    let s = &run.summary;
    let decimals = flow_decimals(s);
    let rows = FLOWS.iter().filter(|(_, of, _)| of(s) != 0.0).map(|(name, of, gain)| {
        let row = Row::given(*name, ink.kwh(of(s), decimals));
        if *gain { row.taken_away() } else { row }
    });
    let total = ink.kwh(s.heat_delivered_kwh, decimals);
    Account::sum("Heat, from the books of the season", rows.collect(), "Heat from the heaters", total)
}

fn shared_heat(run: &ScenarioRun, burners: &[Burner], ink: Ink) -> Account {
    let heat_kwh = run.summary.heat_delivered_kwh;
    let decimals = shared_decimals([heat_kwh]);
    let rows = burners.iter().map(|b| Row::given(b.name, ink.kwh(b.heat_kwh, decimals))).collect();
    Account::sum("Who gave it", rows, "Heat from the heaters", ink.kwh(heat_kwh, decimals))
}

/// Energy from heat; none where no heater gave heat.
fn energy(burners: &[Burner], ink: Ink) -> Option<Account> {
    let row = |burner: &Burner| {
        let ratio = burner.heat_kwh / burner.energy_kwh;
        let by = if burner.heater.heat_pump { "of COP in the mean" } else { "of efficiency" };
        let factors = vec![
            Factor::Times(ink.kwh(burner.heat_kwh, decimals(burner.heat_kwh))),
            Factor::Over(Number::new(ratio, decimals(ratio), by)),
        ];
        Row::product(burner.name, factors, ink.kwh(burner.energy_kwh, decimals(burner.energy_kwh)))
    };
    (!burners.is_empty()).then(|| Account::list("Energy, gross", burners.iter().map(row).collect()))
}

/// Money of all energy.
fn bill(case: &Case, ink: Ink) -> Account {
    let (money, s) = (&case.run.money, &case.run.summary);
    let mut rows: Vec<Row> = money.portions.iter().filter_map(|p| portion(case, p, ink)).collect();
    if s.standing_charges > 0.0 {
        let days = s.season_hours as f64 / HOURS_PER_DAY as f64;
        let per_day = case.study.prices.electricity.standing_charge_per_day;
        let factors = vec![Factor::Times(Number::exact(days, 0, "days")), Factor::Times(ink.price(per_day))];
        rows.push(Row::product("Standing charge", factors, ink.money(s.standing_charges)));
    }
    let heading = "Money";
    match s.cost {
        Some(cost) if rows.is_empty() => {
            Account::sum(heading, rows, "Winter cost", ink.money(cost)).noting("Nothing is bought.")
        }
        Some(cost) => Account::sum(heading, rows, "Winter cost", ink.money(cost)),
        None => Account::list(heading, rows).noting("A price is missing: give it in the editor under Prices."),
    }
}

/// Energy at one price; none where that price is missing.
fn portion(case: &Case, portion: &Portion, ink: Ink) -> Option<Row> {
    let price = portion.price_per_kwh?;
    let (name, purchase) = match portion.taker {
        Taker::Heater => ("Heater", case.run.money.purchases[0].as_ref()),
        Taker::Standby => ("Standby heater", case.run.money.purchases[1].as_ref()),
        Taker::Fans => ("Fans and pumps", None),
    };
    let mut factors = vec![Factor::Times(ink.kwh(portion.energy_kwh, decimals(portion.energy_kwh)))];
    let by_unit = purchase.filter(|p| !p.is_electric() && p.unit != "kWh");
    match by_unit {
        Some(p) => {
            let per_unit = Number::new(p.kwh_per_unit, decimals(p.kwh_per_unit), format!("kWh per {}", p.unit));
            factors.extend([Factor::Over(per_unit), Factor::Times(ink.price(price * p.kwh_per_unit))]);
        }
        None => factors.push(Factor::Times(ink.price(price))),
    }
    Some(Row::product(name, factors, ink.money(portion.energy_kwh * price)))
}
