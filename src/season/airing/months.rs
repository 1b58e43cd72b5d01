//! Heat and damp in excess, month by month.

use crate::season::damp::{DampSeries, HUMID_SHARE, WET_HOUR_G_PER_M2};
use crate::season::result::HourlySeries;
use crate::season::summary::OVERHEATED_C;
use crate::weather::Climate;
use serde::Serialize;

/// Hours of a month. Field names are JSON keys; each adds up to the season's figure of the same name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct AirMonth {
    /// 1 to 12.
    pub month: u32,
    /// Hours with house air above 35 °C.
    pub hours_above_35_c: usize,
    /// Hours in which the skin is wet.
    pub hours_skin_wet: usize,
    /// Hours in which the tent's wall is wet; none without a tent.
    pub hours_tent_wall_wet: Option<usize>,
    /// Hours with at least 90 % relative humidity at the crop.
    pub hours_crop_humidity_90: usize,
}

/// Month by month, in the order of the season. `crop_in_tent` tells whose humidity is the crop's.
#[must_use]
pub fn air_months(series: &HourlySeries, climate: &Climate, crop_in_tent: bool) -> Vec<AirMonth> {
    let mut months: Vec<AirMonth> = Vec::new();
    let damp = &series.damp;
    let tent = !damp.tent_humidity.is_empty();
    let crop = damp.crop_humidity(crop_in_tent);
    let above = |column: &[f64], k: usize, limit: f64| usize::from(column.get(k).is_some_and(|v| *v > limit));
    for k in 0..series.record.len() {
        let Some(at) = series.stamp(k, climate) else { continue };
        if months.last().is_none_or(|m| m.month != at.month) {
            let hours_tent_wall_wet = tent.then_some(0);
            months.push(AirMonth {
                month: at.month,
                hours_above_35_c: 0,
                hours_skin_wet: 0,
                hours_tent_wall_wet,
                hours_crop_humidity_90: 0,
            });
        }
        let Some(month) = months.last_mut() else { continue };
        month.hours_above_35_c += above(&series.house_air_c, k, OVERHEATED_C);
        month.hours_skin_wet += above(&damp.skin_condensation_g_per_m2h, k, WET_HOUR_G_PER_M2);
        if let Some(hours) = &mut month.hours_tent_wall_wet {
            *hours += above(&damp.tent_wall_condensation_g_per_m2h, k, WET_HOUR_G_PER_M2);
        }
        month.hours_crop_humidity_90 += usize::from(crop.get(k).is_some_and(|share| *share >= HUMID_SHARE));
    }
    months
}

impl DampSeries {
    /// Relative humidity in the crop's zone, share of one; the house's where there is no tent.
    #[must_use]
    pub fn crop_humidity(&self, crop_in_tent: bool) -> &[f64] {
        if crop_in_tent && !self.tent_humidity.is_empty() { &self.tent_humidity } else { &self.house_humidity }
    }
}
