//! Where the weather comes from, what became of it, and cold on top.

use super::months::months_ui;
use crate::gui::fields::{Form, row};
use crate::gui::theme::{SMALL, tokens};
use crate::model::{ClimateTable, Colder, DateOrder, LogUnit, Site, ThermometerLog, WeatherChoice};
use crate::units::UnitSystem;
use crate::weather::Note;
use egui::{RichText, Ui};

/// The kinds of weather that can be chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Listed,
    Months,
    Log,
}

impl Kind {
    fn of(choice: &WeatherChoice) -> Self {
        match choice {
            WeatherChoice::Station(_) | WeatherChoice::File(_) => Self::Listed,
            WeatherChoice::Normals(_) => Self::Months,
            WeatherChoice::Log(_) => Self::Log,
        }
    }

    fn first(self) -> WeatherChoice {
        match self {
            Self::Listed => Site::default().weather,
            Self::Months => WeatherChoice::Normals(ClimateTable::default()),
            Self::Log => WeatherChoice::Log(ThermometerLog::default()),
        }
    }
}

/// The kind of weather, and what is to be said of a climate table or a log.
pub fn source_ui(ui: &mut Ui, form: &mut Form<'_>, site: &mut Site) {
    let mut kind = Kind::of(&site.weather);
    let options = [
        (Kind::Listed, "Station or weather file".to_owned()),
        (Kind::Months, "Monthly means".to_owned()),
        (Kind::Log, "Thermometer log".to_owned()),
    ];
    if form.choice(ui, &Site::weather, &mut kind, &options, None) {
        site.weather = kind.first();
        site.weather_fingerprint.clear();
    }
    if site.weather.needs_place() {
        for input in Site::NUMBERS {
            form.number(ui, input, site, None);
        }
    }
    match &mut site.weather {
        WeatherChoice::Normals(table) => months_ui(ui, form, table),
        WeatherChoice::Log(log) => log_ui(ui, form, log),
        WeatherChoice::Station(_) | WeatherChoice::File(_) => {}
    }
}

fn log_ui(ui: &mut Ui, form: &mut Form<'_>, log: &mut ThermometerLog) {
    let t = tokens(ui);
    let text = if log.file.is_empty() { "No log chosen yet".to_owned() } else { format!("From log {}", log.file) };
    row(ui, false, |ui| {
        ui.add(egui::Label::new(RichText::new(text).color(t.accent)).truncate());
    });
    let units =
        [(LogUnit::AsTitled, "As its titles say, else °C"), (LogUnit::Celsius, "°C"), (LogUnit::Fahrenheit, "°F")];
    form.choice(ui, &ThermometerLog::unit, &mut log.unit, &units.map(|(u, name)| (u, name.to_owned())), None);
    let orders = [
        (DateOrder::AsShown, "As the log shows"),
        (DateOrder::DayFirst, "Day first"),
        (DateOrder::MonthFirst, "Month first"),
    ];
    form.choice(ui, &ThermometerLog::dates, &mut log.dates, &orders.map(|(o, name)| (o, name.to_owned())), None);
    form.switch(ui, &ThermometerLog::coast, &mut log.coast, None);
}

/// Text and help of the button that opens a file, where there is one.
pub fn file_button(choice: &WeatherChoice) -> Option<(&'static str, &'static str)> {
    match choice {
        WeatherChoice::Normals(_) => None,
        WeatherChoice::Log(_) => {
            Some(("Open a thermometer log…", "A CSV file of daily minima and maxima, or of readings"))
        }
        WeatherChoice::Station(_) | WeatherChoice::File(_) => Some(("Open a weather file…", "An EPW or TMY3 file")),
    }
}

/// How the year came about.
pub fn notes_ui(ui: &mut Ui, notes: &[Note], units: UnitSystem) {
    for note in notes {
        row(ui, false, |ui| {
            ui.add(egui::Label::new(RichText::new(note.text(units)).size(SMALL).color(tokens(ui).soft)).wrap());
        });
    }
}

/// Cold on top of any weather.
pub fn colder_ui(ui: &mut Ui, form: &mut Form<'_>, colder: &mut Colder) {
    let snap = colder.snap_depth_k != 0.0;
    for input in Colder::NUMBERS {
        let shown = snap || matches!(input.key, "shift_k" | "snap_depth_k");
        if shown {
            form.number(ui, input, colder, None);
        }
    }
}
