//! The page has its reader's units alone.

use super::opening::runs;
use super::{DEMOS, page, parsed, saving};
use roxmltree::{Document, Node};
use warmfold::model::{Study, WeatherChoice, bundled_catalogue};
use warmfold::storage;
use warmfold::units::UnitSystem;

/// Words of a page without its sources and without what the study and the catalogue write themselves.
fn own_words(document: &Document, study: &Study) -> String {
    let in_sources = |node: Node| node.ancestors().any(|above| above.attribute("class") == Some("sources"));
    let texts = document.descendants().filter(|node| node.is_text() && !in_sources(*node));
    let outside_style = texts.filter(|node| !node.ancestors().any(|above| above.has_tag_name("style")));
    let mut text = outside_style.filter_map(|node| node.text()).collect::<Vec<_>>().join(" ");
    let catalogue = bundled_catalogue();
    let mut quoted: Vec<String> = study.scenarios.iter().map(|s| s.name.clone()).collect();
    quoted.extend(study.scenarios.iter().flat_map(|s| s.costs.iter().map(|line| line.note.clone())));
    quoted.extend(study.scenarios.iter().flat_map(|s| [s.heater.name.clone(), s.notes.clone()]));
    quoted.extend([study.title.clone(), study.notes.clone(), study.site.name.clone()]);
    quoted.extend(catalogue.sheets.iter().map(|row| row.name.clone()));
    quoted.extend(catalogue.screens.iter().map(|row| row.name.clone()));
    quoted.extend(catalogue.trays.iter().map(|row| row.name.clone()));
    quoted.extend(study.prices.fuels.iter().flat_map(|fuel| [fuel.origin.clone(), fuel.unit.clone()]));
    quoted.push(study.prices.electricity.origin.clone());
    quoted.extend(study.candidates.iter().flat_map(|measure| [measure.name.clone(), measure.note.clone()]));
    quoted.sort_by_key(|words| std::cmp::Reverse(words.len()));
    for words in quoted.iter().filter(|words| !words.trim().is_empty()) {
        text = text.replace(words.as_str(), " ").replace(&words.replace(' ', "\u{a0}"), " ");
    }
    text
}

#[test]
fn a_page_has_the_units_of_its_reader_alone() {
    let metric = [
        "°C", "K", "m", "m²", "m³", "cm", "mm", "km", "kg", "g", "L", "K·h", "K·d", "m/s", "m³/h", "W/K", "W/m²K",
        "W/mK", "m²K/W", "kJ/m²K", "g/m²", "litre", "litres", "metre", "metres", "kelvin",
    ];
    // "in" is a word too.
    let imperial = [
        "°F",
        "ft",
        "ft²",
        "ft³",
        "lb",
        "oz",
        "oz/ft²",
        "gal",
        "mph",
        "cfm",
        "cfm/ft²",
        "°F·h",
        "°F·d",
        "Btu/h·°F",
        "Btu/h·ft²·°F",
        "Btu/h·ft·°F",
        "h·ft²·°F/Btu",
        "Btu/ft²·°F",
        "foot",
        "feet",
        "inch",
        "inches",
        "pound",
        "pounds",
    ];
    for (place, file) in DEMOS.into_iter().enumerate() {
        let study = storage::read_study(&std::fs::read_to_string(file).expect("a study")).expect("it reads");
        let WeatherChoice::Station(station) = &study.site.weather else { unreachable!("{file} names a station") };
        let climate = super::seasons::climate(station);
        let runs = runs(&study, &climate);
        for (units, foreign) in [(UnitSystem::Metric, &imperial[..]), (UnitSystem::Imperial, &metric[..])] {
            let saving = if place == 0 { saving(&study, &climate, &runs) } else { Vec::new() };
            let page = page(&study, &climate, units, &runs, saving);
            let text = own_words(&parsed(&page), &study);
            let is_edge = |c: char| c.is_whitespace() || ",;:.()\"“”–".contains(c);
            let words: Vec<&str> = text.split(is_edge).filter(|word| !word.is_empty()).collect();
            let odd = words.iter().enumerate().filter(|(_, word)| foreign.contains(word));
            let odd: Vec<String> =
                odd.map(|(at, _)| words[at.saturating_sub(8)..(at + 4).min(words.len())].join(" ")).collect();
            assert!(odd.is_empty(), "{file}, {units:?}: {odd:#?}");
            // What this looks through has numbers with units of the reader's own.
            let own = if units == UnitSystem::Metric { &metric[..] } else { &imperial[..] };
            assert!(words.iter().filter(|word| own.contains(word)).count() > 50, "{file}, {units:?}");
        }
    }
}
