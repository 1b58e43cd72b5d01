//! Site, weather and season: they belong to the study and reach all scenarios.

use super::{precautions, weather};
use crate::format;
use crate::gui::fields::{Form, Spec, row, warning};
use crate::gui::filing::Ask;
use crate::gui::state::State;
use crate::gui::theme::{SMALL, tokens};
use crate::model::{Season, Site, WeatherChoice};
use crate::units::{Quantity, UnitSystem};
use crate::weather::bundled::{Station, nearest, stations};
use egui::{Button, RichText, Ui};

/// Kilometres in a mile (international yard and pound, 1959).
const KM_PER_MILE: f64 = 1.609_344;

/// Place, weather and distance.
pub fn site_ui(ui: &mut Ui, state: &mut State) {
    let mut site = state.document.draft.study.site.clone();
    let (units, failure) =
        (state.prefs.units, state.document.draft.tags.first().and_then(|tag| state.board.failure(tag.id)));
    let failure = failure.map(str::to_owned).filter(|_| !matches!(site.weather, WeatherChoice::Station(_)));
    let notes = state.chosen_season().map(|(season, _)| season.climate.notes.clone()).unwrap_or_default();
    let mut form = Form::new(units, "", (&mut state.edits, &state.troubles), "site", "site");
    form.text(ui, &Site::name, &mut site.name, None);
    let angle = |input: &crate::model::ChoiceInput, key, limit: f64| Spec {
        key,
        label: input.label,
        quantity: Quantity::Angle,
        min: -limit,
        max: limit,
        help: input.help,
        source: "",
    };
    let (latitude, longitude) =
        (angle(&Site::latitude_deg, "latitude_deg", 90.0), angle(&Site::longitude_deg, "longitude_deg", 180.0));
    form.optional(ui, &latitude, &mut site.latitude_deg, 46.0, None);
    form.optional(ui, &longitude, &mut site.longitude_deg, -92.0, None);
    precautions::mains_ui(ui, &mut form, &mut site.mains);
    form.troubles_at(ui, "weather");
    if let Some(reason) = failure {
        warning(ui, &reason);
    }
    weather::source_ui(ui, &mut form, &mut site);
    let listed = !site.weather.needs_place();
    let chosen = if listed { stations_ui(ui, &site, &mut state.station_search, units) } else { None };
    if let Some(key) = chosen {
        site.weather = WeatherChoice::Station(key);
        site.weather_fingerprint.clear();
        let key = site.weather.clone();
        state.edits.note("weather", egui::Id::unique(("station", format!("{key:?}"))));
    }
    let opened = weather::file_button(&site.weather);
    let mut asked = false;
    if let Some((text, help)) = opened {
        row(ui, false, |ui| asked = ui.button(text).on_hover_text(help).clicked());
    }
    weather::notes_ui(ui, &notes, units);
    let mut form = Form::new(units, "", (&mut state.edits, &state.troubles), "site.colder", "cold");
    weather::colder_ui(ui, &mut form, &mut site.colder);
    state.document.draft.study.site = site;
    if asked {
        let ctx = ui.ctx().clone();
        state.ask_path(Ask::Weather, &ctx);
    }
}

/// The list of stations, nearest first where the place is known; gives the key that was taken.
fn stations_ui(ui: &mut Ui, site: &Site, search: &mut String, units: UnitSystem) -> Option<String> {
    let t = tokens(ui);
    row(ui, false, |ui| {
        let hint = RichText::new("Search stations").color(t.soft);
        let edit = egui::TextEdit::singleline(search).hint_text(hint).desired_width(ui.available_width() - 20.0);
        ui.add(edit.margin(egui::Margin::symmetric(6, 4))).accessible_name("Search stations");
    });
    if let WeatherChoice::File(path) = &site.weather {
        row(ui, false, |ui| {
            ui.add(egui::Label::new(RichText::new(format!("From file {path}")).color(t.accent)).truncate());
        });
    }
    let found: Vec<(&Station, Option<f64>)> = match (site.latitude_deg, site.longitude_deg) {
        (Some(lat), Some(lon)) => nearest(lat, lon).into_iter().map(|(s, km)| (s, Some(km))).collect(),
        _ => stations().iter().map(|s| (s, None)).collect(),
    };
    let words = search.trim().to_lowercase();
    let mut taken = None;
    let mut any = false;
    for (station, km) in found {
        if !station.name.to_lowercase().contains(&words) && !station.climate.to_lowercase().contains(&words) {
            continue;
        }
        any = true;
        row(ui, false, |ui| {
            let chosen = matches!(&site.weather, WeatherChoice::Station(key) if key == station.key);
            let distance = km.map_or_else(String::new, |km| distance(km, units));
            let text = RichText::new(station.name).color(if chosen { t.accent } else { t.ink });
            let button = Button::selectable(chosen, text)
                .right_text(RichText::new(distance).size(SMALL).color(t.soft))
                .truncate();
            let response = ui.add_sized([ui.available_width() - 20.0, 24.0], button);
            let response = response.on_hover_text(format!("{}\n{}", station.climate, station.credit));
            if response.clicked() && !chosen {
                taken = Some(station.key.to_owned());
            }
        });
    }
    if !any {
        row(ui, false, |ui| {
            ui.label(
                RichText::new("No built-in station of that name. Clear the search or open a weather file")
                    .size(SMALL)
                    .color(t.soft),
            );
        });
    }
    taken
}

fn distance(km: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Metric => format!("{} km", format::number(km, 0)),
        UnitSystem::Imperial => format!("{} mi", format::number(km / KM_PER_MILE, 0)),
    }
}

/// First and last day.
pub fn season_ui(ui: &mut Ui, state: &mut State) {
    let mut season = state.document.draft.study.season.clone();
    let mut form = Form::new(state.prefs.units, "", (&mut state.edits, &state.troubles), "season", "season");
    form.troubles_here(ui);
    for input in Season::NUMBERS {
        form.number(ui, input, &mut season, None);
    }
    let later = state.insights.alternatives().later;
    if let (Some(change), Some(scenario)) = (later, state.document.draft.scenario()) {
        let money = format::money_difference(change, &state.document.draft.study.prices.currency);
        let text = format!("Two weeks later: {money} for {}", format::short_name(&scenario.name));
        row(ui, false, |ui| {
            ui.add(egui::Label::new(RichText::new(text).size(SMALL).color(tokens(ui).accent)).wrap());
        });
    }
    state.document.draft.study.season = season;
}
