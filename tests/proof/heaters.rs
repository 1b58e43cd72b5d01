//! Efficiency of heaters, heat pumps in the cold, and hours colder than a design temperature.

use serde::Deserialize;
use warmfold::model::bundled_catalogue;
use warmfold::season::money::heat_pump_cop;
use warmfold::weather::{Climate, bundled};

use super::figure::{Figure, hold, published};
use super::sheet::Sheets;

#[derive(Deserialize)]
struct Cases {
    efficiency: Sheets<String>,
    cop: Sheets<Pump>,
    colder_hours: Sheets<Design>,
}

#[derive(Deserialize)]
struct Pump {
    outdoor_c: f64,
    sink_c: f64,
}

#[derive(Deserialize)]
struct Design {
    station: String,
    percent: f64,
}

impl Design {
    fn hours(&self) -> f64 {
        let climate = Climate::from_year(&bundled::load(&self.station).expect("a bundled station"));
        let design_c = if self.percent > 99.5 { climate.outdoor.at_99_6_c } else { climate.outdoor.at_99_c };
        climate.hours.iter().filter(|hour| hour.outdoor_c < design_c).count() as f64
    }
}

fn efficiency(heater: &String) -> (String, f64) {
    let row = bundled_catalogue().heaters.iter().find(|row| row.name == *heater).expect("a heater of the catalogue");
    (format!("efficiency, {}", heater.to_lowercase()), 100.0 * row.efficiency)
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("heaters");
    [
        file.efficiency.figures(efficiency),
        file.cop.figures(|p| {
            let words = format!("heat pump at {} °C outdoors, warm side {} °C", p.outdoor_c, p.sink_c);
            (words, heat_pump_cop(p.outdoor_c, p.sink_c))
        }),
        file.colder_hours.figures(|d| {
            (format!("hours colder than the {} % design temperature, {}", d.percent, d.station), d.hours())
        }),
    ]
    .concat()
}

#[test]
fn heaters_agree() {
    hold(&figures());
}
