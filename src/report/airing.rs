//! Air: vents and fan on the sunniest mild hour, the months, and what other air would change.

use super::content::{Content, Entry, kept_together};
use super::figure::named;
use crate::format;
use crate::model::vents::OPENERS_BEGIN_C;
use crate::physics::vent_sizing::FAN_M3_PER_S_M2;
use crate::season::airing::{AirAdvice, AirMonth, Difference};
use crate::season::drive::{MORNING_AIRING_HOUR, MORNING_AIRING_PER_H};
use crate::units::{Quantity, SECONDS_PER_HOUR};
use maud::{Markup, html};

/// The section.
pub(super) fn airing(content: &Content) -> Markup {
    if content.entries.is_empty() {
        return html! {};
    }
    html! {
        section {
            h2 { "Air" }
            (advice(content))
            (openers(content))
            (months(content))
            (changes(content))
        }
    }
}

fn advice(content: &Content) -> Markup {
    let floor = Quantity::Area.unit(content.units());
    let by_floor = content.quantity(FAN_M3_PER_S_M2 * SECONDS_PER_HOUR * floor.step(), Quantity::AirFlow, Some(0));
    let with_sun = content.entries.iter().filter_map(|e| Some((e, e.run.summary.air_advice?)));
    html! {
        p {
            "The sunniest mild hour: of the warmest tenth of the season's hours with sun, the one whose sun warms most. Were it "
            "to last, the house would be warmer than outdoors by so much, shut and as it is; and openings, low ones and as "
            "much high ones, in still air, or a fan would keep to the rise that is allowed. The trade's rules: openings of 15 "
            "to 20 % of the floor at the roof and again at the sides (ASABE, quoted in Greenhouse Management, 2015); a fan "
            "of one air change a minute, or of " (by_floor) " for each " (floor.symbol) " of floor (NGMA and ASABE, from memory)."
        }
        table class="air" {
            thead {
                tr {
                    th { "Scenario" } th { "Hour" } th class="n" { "Shut" } th class="n" { "As it is" } th class="n" { "Allowed" }
                    th class="n" { "Openings each" } th class="n" { "of the floor" } th class="n" { "Fan" } th class="n" { "Fan by rule" }
                }
            }
            tbody { @for (entry, advice) in with_sun { (advice_row(content, entry, &advice)) } }
        }
    }
}

fn advice_row(content: &Content, entry: &Entry, advice: &AirAdvice) -> Markup {
    let rise = |k| content.quantity(k, Quantity::TemperatureDifference, Some(1));
    let flow = |m3_per_h| content.quantity(m3_per_h, Quantity::AirFlow, Some(0));
    let area = |m2: Option<f64>| m2.map_or("–".to_owned(), |m2| content.quantity(m2, Quantity::Area, Some(1)));
    let of_floor = |m2: f64| format!("{} %", format::number(100.0 * m2 / entry.run.shell.floor_m2, 0));
    let [low, high] = advice.rule_fan_m3_per_h();
    let (low, high) = (content.number_of(low, Quantity::AirFlow), flow(high));
    html! {
        tr {
            td { (named(entry.mark, &entry.scenario.name)) }
            td { (kept_together(&format::stamp(advice.sunny_hour_at))) ", " (content.temperature(advice.outdoor_c)) }
            td class="n" { (rise(advice.rise_shut_k)) } td class="n" { (rise(advice.rise_as_it_is_k)) }
            td class="n" { (rise(advice.allowed_rise_k)) }
            td class="n" { (area(advice.openings_still_m2)) }
            td class="n" { (advice.openings_still_m2.map_or("–".to_owned(), of_floor)) }
            td class="n" { (flow(advice.flow_needed_m3_per_h)) } td class="n" { (low) " to " (high) }
        }
    }
}

/// Openers that begin outside the trade's range.
fn openers(content: &Content) -> Markup {
    let odd = content.entries.iter().filter(|entry| entry.scenario.vents.begin_outside_practice());
    let (from, to) = (content.temperature(*OPENERS_BEGIN_C.start()), content.temperature(*OPENERS_BEGIN_C.end()));
    html! {
        @for entry in odd {
            p {
                (named(entry.mark, &entry.scenario.name)) ": openers begin at " (content.temperature(entry.scenario.vents.opens_at_c))
                "; wax openers are made for " (from) " to " (to) " (common practice)."
            }
        }
    }
}

fn months(content: &Content) -> Markup {
    html! {
        table class="air" {
            caption { "Hours by month" }
            thead {
                tr { th { "Scenario" } th { "House above " (content.temperature(35.0)) } th { "Skin wet" } th { "Humid crop" } }
            }
            tbody {
                @for entry in &content.entries {
                    tr {
                        td { (named(entry.mark, &entry.scenario.name)) }
                        @for of in [
                            (|m| m.hours_above_35_c) as fn(&AirMonth) -> usize,
                            |m| m.hours_skin_wet,
                            |m| m.hours_crop_humidity_90,
                        ] {
                            td { (by_month(&entry.run.summary.air_by_month, of)) }
                        }
                    }
                }
            }
        }
    }
}

/// "Mar 3, Apr 12"; months without such an hour are left out.
fn by_month(months: &[AirMonth], of: fn(&AirMonth) -> usize) -> String {
    let some = months.iter().filter(|month| of(month) > 0);
    let list: Vec<String> = some.map(|m| kept_together(&format!("{} {}", format::month(m.month), of(m)))).collect();
    if list.is_empty() { "none".to_owned() } else { list.join(", ") }
}

fn changes(content: &Content) -> Markup {
    let known: Vec<_> = content.entries.iter().filter_map(|e| Some((e, e.air?))).collect();
    let airing =
        format!("Aired every morning, {} to {} o'clock", MORNING_AIRING_HOUR.saturating_sub(1), MORNING_AIRING_HOUR);
    let high = format!("Vents from {} on", content.temperature(*OPENERS_BEGIN_C.end()));
    html! {
        @if !known.is_empty() {
            p {
                "What other air would change, each the difference of two whole winters: vents and fan that start at the upper end "
                "of common practice, whose saving is the heat lost through vents set lower; an hour of airing by hand every "
                "morning, " (format::number(MORNING_AIRING_PER_H, 0)) " changes of the house's air; a flue for every flame without "
                "one, at 80 % efficiency."
            }
            table class="damp" {
                thead {
                    tr {
                        th { "Change" } th class="n" { "Money" } th class="n" { "Heat, kWh" } th class="n" { "Skin wet, h" }
                        th class="n" { "Tent wet, h" } th class="n" { "Humid crop, h" } th class="n" { "Too hot, h" }
                    }
                }
                tbody {
                    @for (entry, changes) in known {
                        tr { td colspan="7" { (named(entry.mark, &entry.scenario.name)) } }
                        @if let Some(d) = &changes.higher_openers { (change_row(content, &high, d)) }
                        (change_row(content, &airing, &changes.morning_airing))
                        @if let Some(d) = &changes.flue { (change_row(content, "A flue", d)) }
                    }
                }
            }
        }
    }
}

fn change_row(content: &Content, what: &str, d: &Difference) -> Markup {
    let money = d.cost.map_or("unknown".to_owned(), |cost| format::money_difference(cost, content.currency()));
    let hours = |hours: i64| format::signed(hours as f64, 0);
    html! {
        tr {
            td { (what) }
            td class="n" { (kept_together(&money)) } td class="n" { (format::signed(d.heat_kwh, 0)) }
            td class="n" { (hours(d.hours_skin_wet)) }
            td class="n" { (d.hours_tent_wall_wet.map_or("–".to_owned(), hours)) }
            td class="n" { (hours(d.hours_crop_humidity_90)) } td class="n" { (hours(d.hours_above_35_c)) }
        }
    }
}
