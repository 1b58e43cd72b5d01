//! What energy costs: the electricity tariff and the price of each fuel, with date and origin.

use super::input::{Doubt, Off, inputs};
use serde::{Deserialize, Serialize};

/// Days of the week on which a band of the tariff holds. 1 January of a typical year is a Monday (a choice of this program).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum BandDays {
    /// Every day.
    All,
    /// Monday to Friday.
    Weekdays,
    /// Saturday and Sunday.
    Weekend,
}

inputs! {
    /// Hours of the day with a price of their own. Where bands overlap the first in the list holds.
    pub struct TariffBand {
        choices {
            days: BandDays = BandDays::All, "Days", "Days on which the band holds; over midnight each hour goes by its own day";
        }
        numbers {
            from_hour: f64, HourOfDay, 0.0..=24.0, 0.0, "From", "Clock hour, standard time, at which the band begins", "";
            to_hour: f64, HourOfDay, 0.0..=24.0, 7.0, "To", "Clock hour at which it ends; over midnight if earlier than the start", "";
            price_per_kwh: f64, Money, 0.0..=100000.0, 0.1, "Price per kWh", "Price of a kilowatt-hour within the band", "";
        }
    }
}

inputs! {
    /// The electricity tariff.
    pub struct ElectricityTariff {
        choices {
            bands: Vec<TariffBand> = Vec::new(), "Bands", "Hours with a price of their own";
            dated: String = String::new(), "Dated", "When this price was read";
            origin: String = String::new(), "From", "Where this price was read";
        }
        numbers {
            price_per_kwh: f64, Money, 0.0..=100000.0, 0.18, "Price per kWh", "Price of a kilowatt-hour outside the bands", "US residential mean, October 2025: 0.1798 $/kWh (EIA, quoted)",
                doubt Doubt { off: Off::Share(0.20), reason: "What a season's fuel or power may move from one winter to the next (common practice)" };
            standing_charge_per_day: f64, Money, 0.0..=100000.0, 0.0, "Standing charge per day", "Paid every day of the season, if the meter is there for the house alone", "";
        }
    }
}

inputs! {
    /// The price of one fuel in the unit that it is bought in.
    pub struct FuelPrice {
        choices {
            fuel: String = "propane".to_owned(), "Fuel", "Fuel of the catalogue";
            unit: String = "kg".to_owned(), "Bought by the", "Unit that the price is for";
            dated: String = String::new(), "Dated", "When this price was read";
            origin: String = String::new(), "From", "Where this price was read";
        }
        numbers {
            price_per_unit: f64, Money, 0.0..=1000000.0, 1.4, "Price", "Price of one unit", "";
        }
    }
}

inputs! {
    /// All prices of the study, in one currency.
    pub struct Prices {
        choices {
            currency: String = "$".to_owned(), "Currency", "Symbol shown with every amount; nothing is converted";
            electricity: ElectricityTariff = ElectricityTariff::default(), "Electricity", "The electricity tariff";
            fuels: Vec<FuelPrice> = Vec::new(), "Fuels", "Prices of the other fuels";
            budget: Option<f64> = None, "Budget", "Most that may be spent at once on measures; off for no limit";
        }
        numbers {
            winters: u32, Count, 1..=50, 5, "Winters to plan for", "Winters over which the net saving of a purchase is added up", "";
        }
    }
}
