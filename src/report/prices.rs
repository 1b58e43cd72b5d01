//! Prices with their dates and where they were read.

use super::content::Content;
use crate::format;
use crate::model::{BandDays, TariffBand};
use maud::{Markup, html};

/// The section.
pub(super) fn prices(content: &Content) -> Markup {
    let prices = &content.report.study.prices;
    let electricity = &prices.electricity;
    let currency = content.currency();
    html! {
        section {
            h2 { "Prices" }
            p { "All amounts are in " (currency) "; nothing is converted or adjusted for inflation." }
            table class="prices" {
                thead { tr { th { "Energy" } th class="n" { "Price, " (currency) } th { "Unit" } th { "Dated" } th { "Read where" } } }
                tbody {
                    tr {
                        td { "Electricity" @if !electricity.bands.is_empty() { ", other hours" } }
                        td class="n" { (price(electricity.price_per_kwh)) }
                        td { "kWh" }
                        td { (or_not_given(&electricity.dated)) }
                        td { (or_not_given(&electricity.origin)) }
                    }
                    @for band in &electricity.bands {
                        tr {
                            td { "Electricity, " (hours(band)) }
                            td class="n" { (price(band.price_per_kwh)) }
                            td { "kWh" }
                            td { (or_not_given(&electricity.dated)) }
                            td { (or_not_given(&electricity.origin)) }
                        }
                    }
                    @if electricity.standing_charge_per_day > 0.0 {
                        tr {
                            td { "Standing charge" }
                            td class="n" { (price(electricity.standing_charge_per_day)) }
                            td { "day" } td {} td { "paid by scenarios that buy electricity" }
                        }
                    }
                    @for fuel in &prices.fuels {
                        tr {
                            td { (content.catalogue.fuel(&fuel.fuel).map_or(fuel.fuel.as_str(), |row| row.name.as_str())) }
                            td class="n" { (price(fuel.price_per_unit)) }
                            td { (fuel.unit) }
                            td { (or_not_given(&fuel.dated)) }
                            td { (or_not_given(&fuel.origin)) }
                        }
                    }
                }
            }
        }
    }
}

/// A price: two decimals, four where it has them.
fn price(value: f64) -> String {
    let (two, four) = (format::number(value, 2), format::number(value, 4));
    if four.ends_with("00") { two } else { four.trim_end_matches('0').to_owned() }
}

fn or_not_given(text: &str) -> &str {
    if text.trim().is_empty() { "not given" } else { text }
}

/// "22:00 to 06:00, Monday to Friday".
fn hours(band: &TariffBand) -> String {
    let clock = |hour: f64| {
        let minutes = (hour * 60.0).round();
        format!("{:02.0}:{:02.0}", (minutes / 60.0).floor(), minutes % 60.0)
    };
    let days = match band.days {
        BandDays::All => "",
        BandDays::Weekdays => ", Monday to Friday",
        BandDays::Weekend => ", Saturday and Sunday",
    };
    format!("{} to {}{days}", clock(band.from_hour), clock(band.to_hour))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_price_keeps_the_decimals_it_has() {
        assert_eq!([price(0.18), price(0.1798), price(2.655), price(12.0)], ["0.18", "0.1798", "2.655", "12.00"]);
    }
}
