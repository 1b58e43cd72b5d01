//! Electricity by the hour, across midnight, the weekend and New Year.

use serde::Deserialize;
use warmfold::model::{BandDays, ElectricityTariff, Heater, Scenario, Season, Study, TariffBand, bundled_catalogue};
use warmfold::season::hours::SeasonHours;
use warmfold::season::money::electricity_price;
use warmfold::season::run_scenario;
use warmfold::units::within_clock_span;
use warmfold::weather::{Climate, ClimateHour, bundled};

use super::figure::{Figure, hold, published};
use super::sheet::Sheets;

#[derive(Deserialize)]
struct Cases {
    bill: Sheets<Bill>,
    hours: Sheets<Hours>,
    mean_price: Sheets<Load>,
    whole_run: Sheets<Load>,
}

#[derive(Clone, Copy, Deserialize)]
enum Tariff {
    Flat,
    TwoPeriod,
    ThreePeriod,
    /// The same written from the night on: off-peak is a band over midnight and the whole weekend, mid the rest.
    ThreePeriodByNight,
    Ontario,
    EveningPeak,
}

impl Tariff {
    fn words(self) -> &'static str {
        match self {
            Self::Flat => "flat",
            Self::TwoPeriod => "two-period",
            Self::ThreePeriod => "three-period",
            Self::ThreePeriodByNight => "three-period, told from the night on",
            Self::Ontario => "Ontario",
            Self::EveningPeak => "evening peak",
        }
    }

    fn tariff(self) -> ElectricityTariff {
        use BandDays::{All, Weekdays, Weekend};
        let (rest, bands) = match self {
            Self::Flat => (0.1110, vec![]),
            Self::TwoPeriod => (0.0660, vec![band(Weekdays, 7.0, 19.0, 0.1910)]),
            Self::ThreePeriod => (
                0.08125,
                vec![
                    band(Weekdays, 16.0, 20.0, 0.32500),
                    band(Weekdays, 7.0, 16.0, 0.14305),
                    band(Weekdays, 20.0, 22.0, 0.14305),
                ],
            ),
            Self::ThreePeriodByNight => (
                0.14305,
                vec![
                    band(Weekend, 0.0, 24.0, 0.08125),
                    band(All, 22.0, 7.0, 0.08125),
                    band(Weekdays, 16.0, 20.0, 0.32500),
                ],
            ),
            Self::Ontario => (0.065, vec![band(Weekdays, 11.0, 17.0, 0.132), band(Weekdays, 7.0, 19.0, 0.094)]),
            Self::EveningPeak => (0.1, vec![band(Weekdays, 15.0, 19.0, 0.3)]),
        };
        ElectricityTariff { price_per_kwh: rest, bands, ..ElectricityTariff::default() }
    }
}

fn band(days: BandDays, from_hour: f64, to_hour: f64, price_per_kwh: f64) -> TariffBand {
    TariffBand { days, from_hour, to_hour, price_per_kwh }
}

#[derive(Clone, Copy, Deserialize)]
enum Week {
    SecondOfJanuary,
    OverNewYear,
    /// A measured year keeps its own weekdays: 4 January 2021 was a Monday.
    CalendarOf2021,
}

impl Week {
    fn words(self) -> &'static str {
        match self {
            Self::SecondOfJanuary => "8 to 14 January",
            Self::OverNewYear => "29 December to 4 January",
            Self::CalendarOf2021 => "4 to 10 January 2021",
        }
    }

    fn season(self) -> Season {
        let (from, to) = match self {
            Self::SecondOfJanuary => ((1, 8), (1, 14)),
            Self::OverNewYear => ((12, 29), (1, 4)),
            Self::CalendarOf2021 => ((1, 4), (1, 10)),
        };
        Season { from_month: from.0, from_day: from.1, to_month: to.0, to_day: to.1 }
    }

    fn climate(self) -> Climate {
        climate(if matches!(self, Self::CalendarOf2021) { "aachen-2021" } else { "duluth-mn" })
    }

    fn hours(self) -> Vec<ClimateHour> {
        hours_of(&self.season(), &self.climate())
    }
}

fn climate(station: &str) -> Climate {
    Climate::from_year(&bundled::load(station).expect("a bundled station"))
}

/// The hours of a season as a run takes them.
fn hours_of(season: &Season, climate: &Climate) -> Vec<ClimateHour> {
    let hours = SeasonHours::find(season, climate).expect("days of the year");
    (0..hours.len()).map(|k| climate.hours[hours.record(k)]).collect()
}

#[derive(Deserialize)]
struct Hours {
    tariff: Tariff,
    week: Week,
    price: f64,
}

impl Hours {
    fn figure(&self) -> (String, f64) {
        let tariff = self.tariff.tariff();
        let at = |hour: &&ClimateHour| (electricity_price(&tariff, hour) - self.price).abs() < 1e-9;
        let count = self.week.hours().iter().filter(at).count();
        (format!("{}, {}: hours at {}", self.tariff.words(), self.week.words(), self.price), count as f64)
    }
}

#[derive(Clone, Copy, Deserialize)]
enum When {
    Constant,
    ByNight,
}

#[derive(Deserialize)]
struct Load {
    tariff: Tariff,
    week: Week,
    load: When,
}

impl Load {
    fn figure(&self) -> (String, f64) {
        let tariff = self.tariff.tariff();
        let (words, from, to) = match self.load {
            When::Constant => ("a constant load", 0.0, 24.0),
            When::ByNight => ("a load from 18 to 8", 18.0, 8.0),
        };
        let drawn = |hour: &&ClimateHour| within_clock_span(f64::from(hour.hour) - 0.5, from, to);
        let hours = self.week.hours();
        let prices: Vec<f64> = hours.iter().filter(drawn).map(|hour| electricity_price(&tariff, hour)).collect();
        let mean = prices.iter().sum::<f64>() / prices.len() as f64;
        (format!("{}, {}: mean price of {words}", self.tariff.words(), self.week.words()), mean)
    }
}

impl Load {
    /// The same through a whole run: a heater too small for its setpoint draws the same all the time it is on.
    fn run_figure(&self) -> (String, f64) {
        let mut study = Study { season: self.week.season(), ..Study::default() };
        study.prices.electricity = self.tariff.tariff();
        let (words, setpoint_day_c) = match self.load {
            When::Constant => ("a heater that runs all the time", Some(35.0)),
            When::ByNight => ("a heater that runs from 18 to 8", None),
        };
        let hours = Heater { day_from_hour: 8.0, day_to_hour: 18.0, setpoint_day_c, ..Heater::default() };
        let heater = Heater { rated_w: 100.0, setpoint_night_c: Some(35.0), ..hours };
        let scenario = Scenario { heater, ..Scenario::default() };
        let run = run_scenario(&study, &scenario, &self.week.climate(), bundled_catalogue(), &|| false);
        let summary = run.expect("a season").summary;
        let mean = summary.cost.expect("a price") / summary.energy_bought_kwh;
        (format!("{}, {}: mean price of {words}, a whole run", self.tariff.words(), self.week.words()), mean)
    }
}

#[derive(Deserialize)]
struct Bill {
    tariff: Tariff,
    on_peak_share: f64,
}

impl Bill {
    /// The published month with its energy spread evenly within on-peak and off-peak hours.
    fn figure(&self) -> (String, f64) {
        let (month_kwh, fixed) = (675.54, 14.00);
        let tariff = self.tariff.tariff();
        let february = Season { from_month: 2, from_day: 1, to_month: 2, to_day: 28 };
        let hours = hours_of(&february, &climate("aachen-2021"));
        let on_peak = |hour: &&ClimateHour| hour.weekday < 5 && (8..=19).contains(&hour.hour);
        let on_peak_hours = hours.iter().filter(on_peak).count() as f64;
        let off_peak_hours = hours.len() as f64 - on_peak_hours;
        let kwh = |hour: &ClimateHour| {
            if on_peak(&hour) {
                month_kwh * self.on_peak_share / on_peak_hours
            } else {
                month_kwh * (1.0 - self.on_peak_share) / off_peak_hours
            }
        };
        let energy: f64 = hours.iter().map(|hour| kwh(hour) * electricity_price(&tariff, hour)).sum();
        let words = format!("bill of a month, {}, {:.0} % on peak", self.tariff.words(), 100.0 * self.on_peak_share);
        (words, energy + fixed)
    }
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("tariffs");
    [
        file.bill.figures(Bill::figure),
        file.hours.figures(Hours::figure),
        file.mean_price.figures(Load::figure),
        file.whole_run.figures(Load::run_figure),
    ]
    .concat()
}

#[test]
fn tariffs_agree() {
    hold(&figures());
}
