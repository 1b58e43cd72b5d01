//! The study: one file with site, season, prices and scenarios.

use super::candidate::Candidate;
use super::climate_table::{ClimateTable, Colder, ThermometerLog};
use super::costs::CostLine;
use super::covering::{Covering, NightCover};
use super::crop::{Bench, Crop};
use super::hard_night::HardNight;
use super::heater::Heater;
use super::house::House;
use super::input::inputs;
use super::mains::Mains;
use super::many_winters::ManyWinters;
use super::own::OwnRows;
use super::precautions::Precautions;
use super::prices::Prices;
use super::swept::Swept;
use super::tent::Tent;
use super::vents::Vents;
use super::water::WaterStore;
use serde::{Deserialize, Serialize};

/// The file format that this program writes.
pub const FORMAT: u32 = 1;

/// Where the hourly weather comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum WeatherChoice {
    /// A bundled station, by its key.
    Station(String),
    /// An EPW or TMY3 file; a relative path starts at the study's folder.
    File(String),
    /// An hourly year made from twelve monthly means at the site's latitude, longitude and elevation.
    Normals(ClimateTable),
    /// A thermometer's log at the site's latitude, longitude and elevation.
    Log(ThermometerLog),
}

impl WeatherChoice {
    /// The file on disk that it needs.
    #[must_use]
    pub fn file(&self) -> Option<&str> {
        match self {
            Self::File(file) => Some(file),
            Self::Log(log) => Some(&log.file),
            Self::Station(_) | Self::Normals(_) => None,
        }
    }

    /// Whether the site's latitude and longitude decide its sun.
    #[must_use]
    pub fn needs_place(&self) -> bool {
        matches!(self, Self::Normals(_) | Self::Log(_))
    }
}

inputs! {
    /// Where the house stands.
    pub struct Site {
        choices {
            name: String = String::new(), "Place", "Name of the place, as you like";
            weather: WeatherChoice = WeatherChoice::Station("duluth-mn".to_owned()), "Weather", "Hourly weather of a bundled station or of a file, or a year made from monthly means or a thermometer's log";
            weather_fingerprint: String = String::new(), "Weather fingerprint", "Tells whether the weather file is still the one that the study was made with; written by the program";
            latitude_deg: Option<f64> = None, "Latitude", "Where the sun stands of a climate table or log, and to find the nearest station; north is positive";
            longitude_deg: Option<f64> = None, "Longitude", "Where the sun stands of a climate table or log, and to find the nearest station; east is positive";
            mains: Mains = Mains::default(), "Mains", "The mains at the house";
            colder: Colder = Colder::default(), "Colder than usual", "Cold on top of the weather";
        }
        numbers {
            elevation_m: f64, Length, -450.0..=6000.0, 0.0, "Elevation", "Height above the sea, for the sun of a climate table or log", "";
        }
    }
}

inputs! {
    /// First and last day of the season, both included. It may run over New Year.
    pub struct Season {
        choices {}
        numbers {
            from_month: u32, Count, 1..=12, 10, "From month", "Month of the first day", "";
            from_day: u32, Count, 1..=31, 15, "From day", "First day", "";
            to_month: u32, Count, 1..=12, 4, "To month", "Month of the last day", "";
            to_day: u32, Count, 1..=31, 30, "To day", "Last day", "";
        }
    }
}

impl Season {
    /// Whether a day belongs to the season, first and last included.
    #[must_use]
    pub fn holds(&self, month: u32, day: u32) -> bool {
        let (from, to, at) = ((self.from_month, self.from_day), (self.to_month, self.to_day), (month, day));
        if from <= to { from <= at && at <= to } else { from <= at || at <= to }
    }
}

inputs! {
    /// One way to get through the winter.
    pub struct Scenario {
        choices {
            name: String = "Scenario".to_owned(), "Name", "Name of the scenario";
            shown: bool = true, "Shown", "Whether it is drawn in the plots";
            notes: String = String::new(), "Notes", "Anything worth remembering";
            house: House = House::default(), "House", "The plant house";
            covering: Covering = Covering::default(), "Covering", "What the house is covered with";
            night_cover: NightCover = NightCover::default(), "Night cover", "A cover drawn over the house at night";
            tent: Tent = Tent::default(), "Inner tent", "The tent round the bench";
            water: WaterStore = WaterStore::default(), "Water store", "Water that stores the day's warmth";
            heater: Heater = Heater::default(), "Heater", "The first heater";
            standby: Heater = Heater { present: false, name: "Standby heater".to_owned(), setpoint_day_c: Some(4.0), setpoint_night_c: Some(4.0), ..Heater::default() }, "Standby heater", "A second heater with a lower setpoint";
            crop: Crop = Crop::default(), "Crop", "What is grown";
            bench: Bench = Bench::default(), "Bench", "Benches and trays";
            vents: Vents = Vents::default(), "Vents", "Vents and fan";
            precautions: Precautions = Precautions::default(), "Precautions", "Alarms, cut-outs and the air of flames";
            costs: Vec<CostLine> = Vec::new(), "Buying costs", "What the scenario costs to buy, line by line";
        }
        numbers {}
    }
}

/// One file: site, season, prices, scenarios.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Study {
    /// Version of the file format.
    pub format: u32,
    /// Title of the study.
    pub title: String,
    /// What it is about, in the user's words.
    pub notes: String,
    /// Where the house stands.
    pub site: Site,
    /// First and last day.
    pub season: Season,
    /// What is asked about hard nights.
    pub hard_night: HardNight,
    /// Winters made up by chance.
    pub many_winters: ManyWinters,
    /// Prices, with their dates.
    pub prices: Prices,
    /// Sheets, screens and fuels that the catalogues lack.
    pub own: OwnRows,
    /// Measures that may be bought.
    pub candidates: Vec<Candidate>,
    /// Inputs that are swept.
    pub swept: Swept,
    /// Index of the scenario that the others are compared with.
    pub reference: usize,
    /// The scenarios, in the order of their cards.
    pub scenarios: Vec<Scenario>,
}

impl Default for Study {
    fn default() -> Self {
        Self {
            format: FORMAT,
            title: String::new(),
            notes: String::new(),
            site: Site::default(),
            season: Season::default(),
            hard_night: HardNight::default(),
            many_winters: ManyWinters::default(),
            prices: Prices::default(),
            own: OwnRows::default(),
            candidates: Vec::new(),
            swept: Swept::default(),
            reference: 0,
            scenarios: vec![Scenario::default()],
        }
    }
}
