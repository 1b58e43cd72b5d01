//! Where the saving comes from, what is bought, and when the fuel runs out: books that must add up.

#[path = "common/opening.rs"]
mod opening;
#[path = "common/seasons.rs"]
mod seasons;

use opening::{opened, runs};
use seasons::{climate, run};
use warmfold::compare::{Cell, Comparison, Row};
use warmfold::model::{
    CostLine, Covering, HeatTarget, House, Measure, Scenario, Season, Shape, Study, WeatherChoice, bundled_catalogue,
};
use warmfold::season::RunOptions;
use warmfold::season::saving::{Change, saving_steps};

#[test]
fn the_steps_begin_at_the_baseline_and_end_at_the_scenario() {
    let (study, climate) = opened();
    for scenario in &study.scenarios {
        let whole = run(&study, scenario, &climate, RunOptions::default()).summary;
        let heard = std::cell::Cell::new(0);
        let steps = saving_steps(&study, scenario, &climate, bundled_catalogue(), &whole, &|n| heard.set(n), &|| false)
            .expect("runs");
        assert_eq!(steps.iter().map(|s| s.change).collect::<Vec<_>>(), Change::ALL);
        assert_eq!(heard.get(), warmfold::season::saving::RUNS);
        assert_eq!(steps[0].heat_kwh, whole.baseline_heat_kwh);
        // The last step is the scenario itself, bit for bit, and the bars between telescope to it.
        let last = steps.last().expect("eight steps");
        assert!((last.heat_kwh - whole.heat_delivered_kwh).abs() < 1e-9, "{}", scenario.name);
        let fans_and_standing = whole.cost.expect("priced") - last.cost.expect("priced");
        assert!((fans_and_standing - whole.standing_charges).abs() < 1e-9 + whole.fan_kwh, "{}", scenario.name);
        let bars: f64 = steps.windows(2).map(|pair| pair[1].heat_kwh - pair[0].heat_kwh).sum();
        assert!((steps[0].heat_kwh + bars - whole.heat_delivered_kwh).abs() < 1e-6);
    }
}

#[test]
fn what_a_scenario_lacks_changes_nothing() {
    let (study, climate) = opened();
    let whole_tunnel = &study.scenarios[0];
    assert!(
        !whole_tunnel.tent.present && !whole_tunnel.water.present,
        "the demo's first scenario holds the whole house"
    );
    let whole = run(&study, whole_tunnel, &climate, RunOptions::default()).summary;
    let steps =
        saving_steps(&study, whole_tunnel, &climate, bundled_catalogue(), &whole, &|_| (), &|| false).expect("runs");
    let heat = |change: Change| steps.iter().find(|s| s.change == change).expect("all steps").heat_kwh;
    assert_eq!(heat(Change::Tent), heat(Change::Covering));
    assert_eq!(heat(Change::Water), heat(Change::NightCovers));
    // A small tent round the bench saves most of the heat: its own bar is the largest one.
    let tent = study.scenarios.iter().find(|s| s.tent.present).expect("a scenario with a tent");
    let whole = run(&study, tent, &climate, RunOptions::default()).summary;
    let steps = saving_steps(&study, tent, &climate, bundled_catalogue(), &whole, &|_| (), &|| false).expect("runs");
    let bars: Vec<(Change, f64)> = steps.windows(2).map(|p| (p[1].change, p[1].heat_kwh - p[0].heat_kwh)).collect();
    let largest = bars.iter().min_by(|a, b| a.1.total_cmp(&b.1)).expect("seven bars");
    assert_eq!(largest.0, Change::Tent, "{bars:?}");
}

/// Every part enters at its own step: a scenario with one part alone has one bar, and the other parts' bars are empty.
#[test]
fn each_part_counts_at_its_own_step() {
    let (mut study, climate) = opened();
    study.season = Season { from_month: 1, from_day: 1, to_month: 1, to_day: 7 };
    let mut plain = study.scenarios[0].clone();
    plain.covering.sheets.truncate(1);
    (plain.tent.present, plain.night_cover.present, plain.water.present) = (false, false, false);
    type Add = fn(&mut Scenario);
    let parts: [(Change, Add); 4] = [
        (Change::Covering, |s| s.covering.sheets.push("film".to_owned())),
        (Change::Tent, |s| s.tent.present = true),
        (Change::NightCovers, |s| s.night_cover.present = true),
        (Change::Water, |s| s.water.present = true),
    ];
    for (own, add) in parts {
        let mut one = plain.clone();
        add(&mut one);
        let whole = run(&study, &one, &climate, RunOptions::default()).summary;
        let steps = saving_steps(&study, &one, &climate, bundled_catalogue(), &whole, &|_| (), &|| false);
        for pair in steps.expect("runs").windows(2) {
            if let Some((change, _)) = parts.iter().find(|(change, _)| *change == pair[1].change) {
                assert_eq!(pair[1].heat_kwh != pair[0].heat_kwh, *change == own, "{change:?} with {own:?} alone");
            }
        }
    }
}

#[test]
fn night_heat_into_water_can_cost_heat_and_save_money() {
    // The chart must carry a bar that points up in heat and down in money.
    let text = include_str!("../scenarios/glass-night-tariff.ron");
    let mut study: Study = warmfold::storage::read_bytes(text.as_bytes()).expect("a bundled study");
    // Made plain: day current is dear, and the water is kept hot through the night.
    study.prices.electricity.price_per_kwh = 1.0;
    let WeatherChoice::Station(station) = &study.site.weather else { unreachable!() };
    let climate = climate(station);
    let found = study.scenarios.iter().find(|s| s.heater.target == HeatTarget::Water);
    let mut immersed = found.expect("an immersion heater").clone();
    immersed.heater.setpoint_night_c = Some(30.0);
    let immersed = &immersed;
    let whole = run(&study, immersed, &climate, RunOptions::default()).summary;
    let steps =
        saving_steps(&study, immersed, &climate, bundled_catalogue(), &whole, &|_| (), &|| false).expect("runs");
    let at = |change: Change| steps.iter().find(|s| s.change == change).expect("all steps");
    let (before, after) = (at(Change::Water), at(Change::Setpoints));
    assert!(after.heat_kwh > before.heat_kwh, "{} {}", before.heat_kwh, after.heat_kwh);
    assert!(after.cost.expect("priced") < before.cost.expect("priced"));
}

#[test]
fn a_cancelled_request_gives_no_steps() {
    let (study, climate) = opened();
    let whole = run(&study, &study.scenarios[0], &climate, RunOptions::default()).summary;
    assert!(
        saving_steps(&study, &study.scenarios[0], &climate, bundled_catalogue(), &whole, &|_| (), &|| true).is_err()
    );
}

#[test]
fn the_calendar_of_fuel_adds_up_to_what_is_bought() {
    let (study, climate) = opened();
    let propane = study.scenarios.iter().find(|s| s.heater.fuel == "propane").expect("a propane scenario");
    let done = run(&study, propane, &climate, RunOptions::default());
    let calendar = done.fuel_calendar.expect("propane is stored");
    assert_eq!(calendar.unit, done.summary.fuel_unit);
    let used: f64 = calendar.months.iter().map(|m| m.used).sum();
    assert!((used - done.summary.fuel_quantity).abs() < 1e-9 * used);
    assert_eq!(calendar.months.last().expect("months").needed_by_end, done.summary.fuel_quantity.ceil());
    assert_eq!(calendar.runs_out.len(), (done.summary.fuel_quantity.floor() as usize).min(120));
    // The first unit ends in the first hour by which its heat has been given: counted anew from the hours.
    let given_kwh = |hours: &[f64]| hours.iter().sum::<f64>() / 1000.0;
    let heat_per_unit_kwh = given_kwh(&done.hours.heater_w) / done.summary.fuel_quantity;
    let mut sum_kwh = 0.0;
    let first = done.hours.heater_w.iter().position(|w| {
        sum_kwh += w / 1000.0;
        sum_kwh >= heat_per_unit_kwh
    });
    let hour = &climate.hours[done.hours.record[first.expect("a unit is used up")]];
    let end = calendar.runs_out[0];
    assert_eq!((end.month, end.day, end.hour), (hour.month, hour.day, hour.hour));
    // The hardest fortnight is the largest of all sums over 336 hours on end, each added up anew; rounding apart.
    let hardest_kwh = done.hours.heater_w.windows(14 * 24).map(given_kwh).fold(0.0, f64::max);
    assert!((calendar.hardest_fortnight * heat_per_unit_kwh / hardest_kwh - 1.0).abs() < 1e-9);
    let electric = run(&study, &study.scenarios[0], &climate, RunOptions::default());
    assert!(electric.fuel_calendar.is_none(), "nobody stores electricity");
}

/// A box of 4 × 3 m, 2 m high: 12 m² roof, 28 m² walls.
fn boxed(lines: Vec<CostLine>) -> Scenario {
    Scenario {
        house: House {
            shape: Shape::FlatBox,
            length_m: 4.0,
            width_m: 3.0,
            eaves_height_m: 2.0,
            ridge_height_m: 2.0,
            ..House::default()
        },
        covering: Covering::default(),
        costs: lines,
        ..Scenario::default()
    }
}

fn line(measure: Measure, price: f64, life_years: f64) -> CostLine {
    CostLine { measure, price, life_years, ..CostLine::default() }
}

#[test]
fn buying_costs_follow_the_drawing_and_the_table_compares_them() {
    // By hand: 40 m² of film at 2.50 and one heater at 90: 190; a year of their lives 100/4 + 90/10 = 34.
    let (mut study, climate) = opened();
    let film = line(Measure::Covering, 2.5, 4.0);
    let bare = boxed(vec![]);
    let bought = boxed(vec![film, line(Measure::Heater, 90.0, 10.0), line(Measure::Tent, 5.0, 3.0)]);
    study.scenarios = vec![bare, bought];
    study.reference = 0;
    let runs = runs(&study, &climate);
    assert!((runs[1].buying.cost() - 190.0).abs() < 1e-9, "no tent is put up, so none is paid");
    assert!((runs[1].buying.cost_per_year() - 34.0).abs() < 1e-9);
    // Five winters: the film is bought twice, the heater once.
    assert!((runs[1].buying.cost_over(5.0) - 290.0).abs() < 1e-9);
    let table = Comparison::of(&study, bundled_catalogue(), &runs.iter().map(Some).collect::<Vec<_>>());
    let row = |key: &str| -> &Row { table.rows.iter().find(|row| row.key == key).expect("a row") };
    assert_eq!(row("buying").best_columns(), [0]);
    assert_eq!(row("buying").difference(1, 0), Some((190.0, None)), "no share of nothing");
    assert_eq!(row("payback").cells[1], Cell::Text("never".to_owned()), "the same house costs the same to run");
    assert_eq!(row("net-saving").cells[1], Cell::Number(-290.0));
    assert!(matches!(row("net-saving").cells[0], Cell::Empty(_)));
    assert!(row("running").best_columns().is_empty(), "equal costs have no best");
    assert!(table.rows.iter().all(|row| row.key != "house.length_m"), "equal inputs are left out");
}

#[test]
fn the_table_names_each_input_that_differs() {
    let (study, climate) = opened();
    let runs = runs(&study, &climate);
    let table = Comparison::of(&study, bundled_catalogue(), &runs.iter().map(Some).collect::<Vec<_>>());
    for key in ["tent-sheets", "fuel-name", "heater.rated_w"] {
        assert!(table.rows.iter().any(|row| row.key == key), "{key}");
    }
    let tents_alike = table.rows.iter().all(|row| row.key != "tent.length_m");
    assert!(tents_alike, "both tents are as long; that two scenarios have none is told once");
    let mut keys: Vec<_> = table.rows.iter().map(|row| row.key.clone()).collect();
    keys.sort();
    keys.dedup();
    assert_eq!(keys.len(), table.rows.len(), "each row has a name of its own");
    assert!(table.rows.iter().all(|row| row.cells.len() == study.scenarios.len() && !row.label.is_empty()));
}

#[test]
fn the_table_as_csv_has_plain_numbers_in_the_units_asked_for() {
    use warmfold::units::UnitSystem;
    let (study, climate) = opened();
    let runs = runs(&study, &climate);
    let table = Comparison::of(&study, bundled_catalogue(), &runs.iter().map(Some).collect::<Vec<_>>());
    let read = |units| -> Vec<Vec<String>> {
        let text = table.figures(units, "$").csv().expect("written");
        let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
        reader.records().map(|r| r.expect("a record").iter().map(str::to_owned).collect()).collect()
    };
    let (metric, imperial) = (read(UnitSystem::Metric), read(UnitSystem::Imperial));
    assert_eq!(metric.len(), table.rows.len() + 1);
    let find =
        |table: &[Vec<String>]| table.iter().find(|line| line[1] == "Lowest at the crop").expect("a row").clone();
    let number = |text: &str| text.parse::<f64>().expect("a plain number");
    let (c, f) = (find(&metric), find(&imperial));
    assert!((number(&f[3]) - (number(&c[3]) * 1.8 + 32.0)).abs() < 0.15, "{c:?} {f:?}");
    // The differences follow the values; a difference of temperatures is not shifted by 32.
    let width = study.scenarios.len();
    assert!((number(&c[3 + width]) - (number(&c[4]) - number(&c[3]))).abs() < 0.11);
    assert!((number(&f[3 + width]) - 1.8 * number(&c[3 + width])).abs() < 0.2);
}

#[test]
fn a_net_efficiency_buys_more_gross_heat() {
    // Propane, 46.35 MJ/kg net of 50.35 gross (property table): 90 % on the net basis is 82.85 % on the gross one.
    use warmfold::model::HeatBasis;
    let (study, climate) = opened();
    let mut gross = study.scenarios.iter().find(|s| s.heater.fuel == "propane").expect("a propane scenario").clone();
    gross.heater.efficiency = 0.9;
    let mut net = gross.clone();
    net.heater.basis = HeatBasis::Net;
    let bought = |s: &Scenario| run(&study, s, &climate, RunOptions::default()).summary.fuel_quantity;
    assert!((bought(&net) / bought(&gross) - 50.35 / 46.35).abs() < 1e-4);
}
