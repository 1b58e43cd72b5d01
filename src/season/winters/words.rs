//! Many winters in sentences.

use super::WinterFigures;
use crate::format;

/// Fewest winters of which one in ten is worth a sentence.
const FEWEST: usize = 20;

impl WinterFigures {
    /// Cost, crop and fuel, a sentence each; while fewer than twenty winters are known, none.
    pub(super) fn sentences_with(&self, currency: &str) -> Vec<String> {
        if self.winters < FEWEST {
            return Vec::new();
        }
        let cost = self.cost.map(|cost| {
            let money = |amount| format::money(amount, currency);
            format!(
                "One winter in ten costs more than {}, one in ten less than {}; half cost less than {}.",
                money(cost.p90),
                money(cost.p10),
                money(cost.p50)
            )
        });
        let fuels = [
            (self.fuel_to_stock, &self.fuel_name, &self.fuel_unit),
            (self.standby_fuel_to_stock, &self.standby_fuel_name, &self.standby_fuel_unit),
        ];
        let stocks = fuels.into_iter().filter_map(|(stock, name, unit)| {
            let stock = stock.filter(|stock| *stock > 0.0)?;
            Some(format!("{name}: {} last nine winters in ten.", format::bought(&format::number(stock, 0), unit)))
        });
        cost.into_iter().chain([self.crop_sentence()]).chain(stocks).collect()
    }

    fn crop_sentence(&self) -> String {
        match self.winters_below_crop_limit {
            0 => format!("The crop keeps its limit in all of {} winters.", self.winters),
            broken if broken == self.winters => {
                format!("The crop falls below its limit in every one of {broken} winters.")
            }
            broken => format!("The crop falls below its limit in {broken} of {} winters.", self.winters),
        }
    }
}
