//! What the figures rest on, in plain words.

use super::content::kept_together;
use crate::format;
use crate::units::{Quantity, UnitSystem};

/// Each assumption in a reader's units: what it is about, and what is assumed.
pub(super) fn assumptions(units: UnitSystem) -> Vec<(&'static str, String)> {
    let said = |value, quantity, decimals| kept_together(&format::quantity(value, quantity, units, Some(decimals)));
    let values = [
        ("{2 K}", said(2.0, Quantity::TemperatureDifference, 0)),
        ("{0.1 K}", said(0.1, Quantity::TemperatureDifference, 1)),
        ("{0 °C}", said(0.0, Quantity::Temperature, 0)),
        ("{1 m}", said(1.0, Quantity::Length, 0)),
    ];
    let filled = |words: &str| values.iter().fold(words.to_owned(), |text, (place, value)| text.replace(place, value));
    ASSUMPTIONS.iter().map(|(about, words)| (*about, filled(words))).collect()
}

/// What it is about, and what is assumed, with places for values that have a unit.
const ASSUMPTIONS: [(&str, &str); 17] = [
    (
        "One winter, hour by hour",
        "The weather named on the first page is taken as it is, in local standard time all year; summer time is not \
         applied. Every result is a mean over an hour. Thirty days before the season are run ahead, so that floor and \
         water begin at temperatures of their own.",
    ),
    (
        "House and tent",
        "Two rooms, one within the other. Each has one air, one floor with its benches, and one body of water. Edges and \
         corners can be {2 K} colder than this mean, leaves under a clear sky too.",
    ),
    (
        "Skin",
        "Sheets lie one behind the other with air between them. The outermost has a handbook value, which the wind of each \
         hour changes; under a clear sky the skin loses heat to it as well. Wet film inside a tent holds heat radiation \
         back. Snow on the skin is not counted.",
    ),
    (
        "Air leakage",
        "The house's air changes at design weather follow its condition; from hour to hour they rise with wind and with \
         the difference of temperatures. The tent leaks to the house at a fixed rate.",
    ),
    (
        "Ground",
        "Heat leaves through the floor's edge to the outdoor air, and from its middle to the soil {1 m} down, whose \
         temperature follows the year. Soil that freezes is not counted.",
    ),
    (
        "Sun",
        "Beam and sky light are worked out for every surface and hour. Frames and dirt take a tenth. What enters one side \
         of a small clear house leaves by the other unless it meets floor, plants or an opaque wall. Sun taken up by the \
         skin itself is left out.",
    ),
    (
        "Vapour",
        "A share of the sun on planted or wet ground leaves as vapour and does not warm the house; by night plants and wet \
         ground give off what the air takes. Covers below freezing gather frost. Water that has condensed does not evaporate again, and humidity does not act \
         back on the heat.",
    ),
    (
        "Water",
        "Each zone's water is well mixed. At {0 °C} it freezes and gives its heat of freezing before it gets colder.",
    ),
    (
        "Vents and fan",
        "Openers follow the house air. Warm air rises out, wind drives through, a fan adds its flow; a single opening \
         without a partner takes wind alone. The sunniest mild hour is reckoned as if it lasted: floor, benches and water take \
         nothing up.",
    ),
    (
        "Heaters",
        "A thermostat that gives just the heat that is needed, up to the rated output. Each efficiency is taken on its own \
         basis, gross or net; what is bought is billed by its gross heat. Fans are bought, but not counted as heat. A heat pump follows a published regression that is optimistic \
         in hard cold.",
    ),
    (
        "Baseline",
        "Heat-loss coefficient of the same house under its outermost sheet, with handbook leakage and floor edge, times the \
         degree-hours below the setpoint, over the heater's efficiency: no tent, no water, no night cover, no sun.",
    ),
    (
        "Steps of the saving",
        "The middle steps hold one temperature, the higher of the first heater's setpoints, with heat without limit; the \
         last two bring its hours and place, and the heater as it is.",
    ),
    (
        "Design load",
        "Steady heat at the outdoor temperature that is passed in 99 or 99.6 % of the year's hours, without sun, night \
         covers drawn and tent shut. The year's coldest hour lies several degrees below.",
    ),
    (
        "Power cut",
        "Trays cool with the air round them. A heater marked as needing no mains goes on. Followed for 120 hours. Water and \
         night covers are taken away in the moment of the failure; without its tent the house is run with its air held at \
         the heater's setpoint until then.",
    ),
    (
        "Colder than this year",
        "Three days are colder, as a whole: outdoor air, dew point and sky. The house enters them as the season leaves it \
         there and is followed for a day more.",
    ),
    (
        "Money",
        "Prices are those of this report for the whole season, without interest and inflation. The standing charge counts \
         for a scenario that buys electricity, not for the baseline.",
    ),
    (
        "Hours that are short",
        "Hours count as short of their setpoint by more than {0.1 K}, of the crop limit without tolerance.",
    ),
];

/// The published methods behind it.
pub(super) const METHODS: &str = "Surface films: ISO 6946. Sky: Clark and Allen, cloud after Walton, where the weather has no \
    infrared. Air leakage and wind shelter: ASHRAE Handbook Fundamentals. Sun on slopes: Hay and Davies; missing parts: Erbs. \
    Ground: Kusuda and Achenbach. Heat pump: Staffell et al. 2012. Values that no source settles are marked as choices of \
    their own in the program's code and guide.";
