//! The page "How we know": every figure of this folder with its source, written by a test run.
//!
//! `WARMFOLD_WRITE_PAGE=1 cargo test --test proof page` writes it anew; without that the test fails when it is stale.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use serde::Serialize;

use super::figure::Figure;
use super::{
    air_for_the_house, coverings, cycles, damp_air, damp_house, degree_days, denver_season, fabric, flames, freezing,
    fuel_examples, heat_loss, heaters, layers, lumped, measured_years, night_sky, room, soil, stack_flow, stations,
    sun, surfaces, water, whole_houses,
};
use super::{coldframe, coverings_in_wind, glasshouse, season_use, small_house_coefficients, unheated};
use super::{crops, safety, trays};
use super::{fuels, tariffs, test_house};

/// A group of figures under one heading, as the page shows them.
#[derive(Serialize)]
struct Group {
    title: &'static str,
    rows: Vec<Row>,
}

/// One line of the page.
#[derive(Serialize)]
struct Row {
    what: String,
    source: String,
    expected: String,
    got: String,
    difference: String,
    tolerance: String,
}

impl Row {
    fn of(figure: Figure) -> Self {
        Self {
            expected: figure.expected_text(),
            got: figure.got_text(),
            difference: figure.difference_text(),
            what: figure.what,
            source: figure.source,
            tolerance: figure.tolerance_because,
        }
    }
}

/// The figures of one group.
type Figures = fn() -> Vec<Figure>;

/// The groups of this folder, in the order of the page.
const GROUPS: &[(&str, Figures)] = &[
    ("Vents", stack_flow::figures),
    ("Air for the house", air_for_the_house::figures),
    ("Damp air", damp_air::figures),
    ("Damp houses", damp_house::figures),
    ("Flames", flames::figures),
    ("Houses whose temperatures have an exact answer", lumped::figures),
    ("Outdoor waves and a thermostat's cycle", cycles::figures),
    ("Water that freezes", freezing::figures),
    ("Heat into deep soil", soil::figures),
    ("A season of degree-hours", denver_season::figures),
    ("Fuels and what heat costs", fuels::figures),
    ("Electricity by the hour", tariffs::figures),
    ("Heaters", heaters::figures),
    ("A room heated, cooled and left to itself", room::figures),
    ("A sunny house beside detailed programs", fabric::figures),
    ("A measured test house", test_house::figures),
    ("Nights without heat", unheated::figures),
    ("Measured glasshouse with night screens", glasshouse::figures),
    ("Measured cold frame", coldframe::figures),
    ("Coverings and curtains in wind", coverings_in_wind::figures),
    ("Water and leaks of plant houses", small_house_coefficients::figures),
    ("What a winter takes and what saves it", season_use::figures),
    ("Gas, wiring, air and weight", safety::figures),
    ("Trays", trays::figures),
    ("Crops", crops::figures),
    ("Coverings", coverings::figures),
    ("Walls in layers", layers::figures),
    ("Surfaces and soil", surfaces::figures),
    ("Heat loss", heat_loss::figures),
    ("Whole houses", whole_houses::figures),
    ("Fuel and money", fuel_examples::figures),
    ("Water", water::figures),
    ("Night sky", night_sky::figures),
    ("Sun", sun::figures),
    ("Degree-days", degree_days::figures),
    ("Bundled years", stations::figures),
    ("Measured years", measured_years::figures),
];

fn groups() -> Vec<Group> {
    GROUPS.iter().map(|(title, figures)| Group { title, rows: figures().into_iter().map(Row::of).collect() }).collect()
}

const HEAD: &str = "# How we know\n\n\
    Every figure below comes from outside Warmfold: a standard, a handbook, a worked example or a measurement. The \
    program computes the same case through the functions that price a winter. A test run writes this page; it fails \
    when a figure leaves its tolerance or when the page is stale.\n";

fn markdown(groups: &[Group]) -> String {
    let mut page = HEAD.to_owned();
    for group in groups {
        let _ = write!(page, "\n## {}\n\n", group.title);
        page.push_str("| case | source | expected | Warmfold | difference |\n|---|---|---|---|---|\n");
        for row in &group.rows {
            let cells = [&row.what, &row.source, &row.expected, &row.got, &row.difference];
            let _ = writeln!(page, "| {} |", cells.map(|cell| cell.replace('|', "/")).join(" | "));
        }
    }
    page
}

fn asset(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/proof").join(name)
}

fn keep_current(name: &str, text: &str) {
    let path = asset(name);
    if std::env::var_os("WARMFOLD_WRITE_PAGE").is_some() {
        std::fs::create_dir_all(asset("")).expect("a folder for the page");
        std::fs::write(&path, text).expect("the page is written");
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    if let Some((line, (kept, new))) = kept.lines().zip(text.lines()).enumerate().find(|(_, (a, b))| a != b) {
        panic!("{name} is stale at line {}:\n  kept {kept}\n  new  {new}", line + 1);
    }
    assert_eq!(kept.lines().count(), text.lines().count(), "{name} is stale");
}

#[test]
fn the_page_is_current() {
    let groups = groups();
    keep_current("how-we-know.md", &markdown(&groups));
    let pretty = ron::ser::PrettyConfig::new().depth_limit(3);
    keep_current("figures.ron", &(ron::ser::to_string_pretty(&groups, pretty).expect("rows are text") + "\n"));
}
