//! Whole trays on a bench, and what they hold.

use serde::Deserialize;
use warmfold::geometry::trays::{TrayFit, trays_on};
use warmfold::model::{Bench, TrayKind, bundled_catalogue};
use warmfold::units::METRES_PER_FOOT;

use super::figure::{Figure, hold, published};
use super::sheet::Sheets;

#[derive(Deserialize)]
struct Cases {
    footprint: Sheets<String>,
    long_side_along: Sheets<Board>,
    long_side_across: Sheets<Board>,
    plants: Sheets<Board>,
    cell: Sheets<u32>,
}

#[derive(Deserialize)]
struct Board {
    width_ft: f64,
    length_ft: f64,
}

impl Board {
    fn fit(&self) -> TrayFit {
        TrayFit::of(self.length_ft * METRES_PER_FOOT, self.width_ft * METRES_PER_FOOT, tray())
    }

    fn words(&self) -> String {
        format!("on a bench of {} × {} ft", self.width_ft, self.length_ft)
    }

    fn plants(&self) -> (String, f64) {
        let bench = Bench {
            length_m: self.length_ft * METRES_PER_FOOT,
            width_m: self.width_ft * METRES_PER_FOOT,
            ..Bench::default()
        };
        let cells = tray().cells.iter().map(|cells| cells.count).find(|count| *count == 72).expect("72 cells");
        (format!("plants in trays of 72 cells {}", self.words()), f64::from(trays_on(&bench, tray()) * cells))
    }
}

fn tray() -> &'static TrayKind {
    bundled_catalogue().tray("1020").expect("a tray of the catalogue")
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("trays");
    [
        file.footprint.figures(|key| {
            let row = bundled_catalogue().tray(key).expect("a tray of the catalogue");
            (
                format!("footprint of a {}", row.name.to_lowercase()),
                row.length_m * row.width_m / METRES_PER_FOOT.powi(2),
            )
        }),
        file.long_side_along.figures(|b| (format!("trays along, {}", b.words()), f64::from(b.fit().along))),
        file.long_side_across.figures(|b| (format!("trays across, {}", b.words()), f64::from(b.fit().across))),
        file.plants.figures(Board::plants),
        file.cell.figures(|count| {
            let cells = tray().cells.iter().find(|cells| cells.count == *count).expect("a number of cells");
            (format!("mix in one cell of {count}"), cells.millilitres.expect("a volume"))
        }),
    ]
    .concat()
}

#[test]
fn trays_agree() {
    hold(&figures());
}
