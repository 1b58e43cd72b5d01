//! The hours of one scenario as CSV: the weather used, every temperature, every flow of the books.

use super::evaluate::Opened;
use super::save;
use crate::season::{HourlySeries, ScenarioRun};
use crate::weather::Climate;
use std::path::Path;
use std::process::ExitCode;

/// A column: its title and its value at a row of the series; none is an empty cell.
struct Column<'a> {
    title: &'static str,
    value: Box<dyn Fn(usize) -> Option<f64> + 'a>,
}

/// Runs one scenario of a file and writes its hours.
pub(super) fn write(file: &Path, scenario: &str, out: &Path) -> ExitCode {
    save::write(file, out, "hours", |opened| hours_of(&opened, scenario))
}

fn hours_of(opened: &Opened, name: &str) -> Result<Vec<u8>, String> {
    let scenario = &opened.study.scenarios[opened.scenario(name)?];
    let run = opened.run(scenario)?;
    table(&run, &opened.weather.climate).map_err(|error| format!("{}: {error}", opened.file))
}

fn table(run: &ScenarioRun, climate: &Climate) -> Result<Vec<u8>, csv::Error> {
    let hours = &run.hours;
    let columns: Vec<Column> = weather_columns(hours, climate).into_iter().chain(series_columns(hours)).collect();
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(["month", "day", "hour"].into_iter().chain(columns.iter().map(|c| c.title)))?;
    for (row, record) in hours.record.iter().enumerate() {
        let Some(stamp) = climate.hours.get(*record) else { continue };
        let stamps = [stamp.month, stamp.day, stamp.hour].map(|number| number.to_string());
        let cells = columns.iter().map(|column| cell((column.value)(row)));
        writer.write_record(stamps.into_iter().chain(cells))?;
    }
    writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))
}

/// Four decimals: a tenth of a milliwatt, far below what the books close to.
fn cell(value: Option<f64>) -> String {
    match value {
        Some(value) => {
            let text = format!("{value:.4}");
            if text == "-0.0000" { "0.0000".to_owned() } else { text }
        }
        None => String::new(),
    }
}

fn weather_columns<'a>(hours: &'a HourlySeries, climate: &'a Climate) -> Vec<Column<'a>> {
    let of_hour = |title, pick: fn(&crate::weather::ClimateHour) -> f64| Column {
        title,
        value: Box::new(move |row| climate.hours.get(*hours.record.get(row)?).map(pick)),
    };
    vec![
        of_hour("dew_point_c", |h| h.dew_point_c),
        of_hour("wind_m_per_s", |h| h.wind_m_per_s),
        of_hour("sky_c", |h| h.sky_c),
        of_hour("global_w_per_m2", |h| h.global_w_per_m2),
        of_hour("diffuse_w_per_m2", |h| h.diffuse_w_per_m2),
        of_hour("beam_normal_w_per_m2", |h| h.beam_normal_w_per_m2),
        Column {
            title: "deep_ground_c",
            value: Box::new(|row| climate.deep_ground_c.get(*hours.record.get(row)?).copied()),
        },
    ]
}

fn series_columns(hours: &HourlySeries) -> Vec<Column<'_>> {
    let mut columns: Vec<Column> = numbers(hours)
        .into_iter()
        .map(|(title, series)| Column { title, value: Box::new(move |row| series.get(row).copied()) })
        .collect();
    columns.push(Column { title: "setpoint_c", value: Box::new(|row| hours.setpoint_c.get(row).copied().flatten()) });
    columns
}

/// Every series of numbers under the name of its field; an absent one gives empty cells.
fn numbers(hours: &HourlySeries) -> [(&'static str, &[f64]); 35] {
    [
        ("outdoor_c", &hours.outdoor_c),
        ("house_air_c", &hours.house_air_c),
        ("house_floor_c", &hours.house_floor_c),
        ("house_water_c", &hours.house_water_c),
        ("house_ice_share", &hours.house_ice_share),
        ("tent_air_c", &hours.tent_air_c),
        ("tent_floor_c", &hours.tent_floor_c),
        ("tent_water_c", &hours.tent_water_c),
        ("tent_ice_share", &hours.tent_ice_share),
        ("heater_w", &hours.heater_w),
        ("standby_w", &hours.standby_w),
        ("sun_w", &hours.sun_w),
        ("vapour_w", &hours.vapour_w),
        ("skin_loss_w", &hours.skin_loss_w),
        ("leakage_loss_w", &hours.leakage_loss_w),
        ("vent_loss_w", &hours.vent_loss_w),
        ("ground_loss_w", &hours.ground_loss_w),
        ("party_wall_loss_w", &hours.party_wall_loss_w),
        ("tent_loss_w", &hours.tent_loss_w),
        ("house_water_heat_w", &hours.house_water_heat_w),
        ("tent_water_heat_w", &hours.tent_water_heat_w),
        ("store_change_w", &hours.store_change_w),
        ("air_exchange_m3_per_h", &hours.air_exchange_m3_per_h),
        ("tent_exchange_m3_per_h", &hours.tent_exchange_m3_per_h),
        ("vent_opening", &hours.vent_opening),
        ("fan_share", &hours.fan_share),
        ("house_humidity", &hours.damp.house_humidity),
        ("tent_humidity", &hours.damp.tent_humidity),
        ("skin_condensation_g_per_m2h", &hours.damp.skin_condensation_g_per_m2h),
        ("tent_wall_condensation_g_per_m2h", &hours.damp.tent_wall_condensation_g_per_m2h),
        ("house_mist_g_per_h", &hours.damp.house_mist_g_per_h),
        ("tent_mist_g_per_h", &hours.damp.tent_mist_g_per_h),
        ("cost", &hours.cost),
        ("baseline_w", &hours.baseline_w),
        ("baseline_cost", &hours.baseline_cost),
    ]
}
