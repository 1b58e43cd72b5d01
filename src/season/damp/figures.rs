//! A season's damp: its series, and the figures that a grower asks for.

use super::DampSeries;
use super::balance::{Balance, DampHour, DampInputs};
use crate::model::Zone;
use crate::season::plan::actual_zone;
use serde::Serialize;

/// Condensation above which an hour counts as wet, g/(m²·h). A modelling choice: less is a haze that does not run.
pub const WET_HOUR_G_PER_M2: f64 = 1.0;
/// Relative humidity from which an hour counts as humid at the crop (common practice: grey mould and mildew spread
/// from about 90 %).
pub const HUMID_SHARE: f64 = 0.9;

/// The season's damp. Field names are JSON keys.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct DampFigures {
    /// Hours in which more than 1 g/m² condenses on the skin, mean over its area.
    pub hours_skin_wet: usize,
    /// The same on the tent's wall and top; none without a tent.
    pub hours_tent_wall_wet: Option<usize>,
    /// Hours with at least 90 % relative humidity in the crop's zone.
    pub hours_crop_humidity_90: usize,
    /// Vapour of plants and wet ground, kg.
    pub evaporated_kg: f64,
    /// Water of flames without a flue, kg.
    pub burner_water_kg: f64,
    /// Vapour that air took outdoors, less what it brought in, kg.
    pub vapour_carried_out_kg: f64,
    /// Water condensed on the skin, kg.
    pub skin_condensed_kg: f64,
    /// Water condensed on the tent's wall and top, kg.
    pub tent_wall_condensed_kg: f64,
    /// Mist: vapour above saturation, which falls on plants and floor, kg.
    pub mist_kg: f64,
    /// Vapour left in the air, kg.
    pub vapour_store_change_kg: f64,
    /// Residual of the books of vapour per all that came in.
    pub moisture_books_closure: f64,
}

/// Vapour of a season.
#[derive(Debug, Clone, PartialEq)]
pub struct DampRun {
    /// Hour by hour.
    pub series: DampSeries,
    /// The season in figures.
    pub figures: DampFigures,
}

/// Steps the vapour through a season.
#[must_use]
pub fn damp_season(inputs: DampInputs) -> DampRun {
    let (plan, hours) = (inputs.plan, inputs.series.record.len());
    let mut balance = Balance::new(inputs);
    let start_kg = balance.stored_kg();
    let mut writer = Writer {
        skin_m2: plan.skin.iter().map(|group| group.area_m2).sum(),
        tent_wall_m2: plan.tent.as_ref().map(|tent| tent.measures.wall_and_top_m2),
        crop_in_tent: actual_zone(inputs.scenario.crop.zone, inputs.scenario) == Zone::Tent,
        series: DampSeries::with_room(hours, plan.tent.is_some()),
        sums: Sums::default(),
    };
    for k in 0..hours {
        writer.push(&balance.advance(k));
    }
    let store_change_kg = balance.stored_kg() - start_kg;
    let figures = writer.sums.figures(plan.tent.is_some(), store_change_kg);
    DampRun { series: writer.series, figures }
}

struct Writer {
    skin_m2: f64,
    /// None without a tent.
    tent_wall_m2: Option<f64>,
    crop_in_tent: bool,
    series: DampSeries,
    sums: Sums,
}

/// What adds up over a season, kg.
#[derive(Default)]
struct Sums {
    hours_skin_wet: usize,
    hours_tent_wall_wet: usize,
    hours_crop_humid: usize,
    evaporated: f64,
    burnt: f64,
    carried_in: f64,
    carried_out: f64,
    skin: f64,
    tent_wall: f64,
    mist: f64,
}

impl Writer {
    fn push(&mut self, hour: &DampHour) {
        let (s, sums) = (&mut self.series, &mut self.sums);
        let humidity = hour.house.mean_kg_per_m3 / hour.house_saturated;
        let wet_g = hour.house.condensed_kg * 1000.0 / self.skin_m2;
        s.house_humidity.push(humidity);
        s.skin_condensation_g_per_m2h.push(wet_g);
        s.house_mist_g_per_h.push(hour.house.mist_kg * 1000.0);
        sums.hours_skin_wet += usize::from(wet_g > WET_HOUR_G_PER_M2);
        let mut crop_humidity = humidity;
        if let Some(wall_m2) = self.tent_wall_m2 {
            let humidity = hour.tent.mean_kg_per_m3 / hour.tent_saturated;
            let wet_g = hour.tent.condensed_kg * 1000.0 / wall_m2;
            s.tent_humidity.push(humidity);
            s.tent_wall_condensation_g_per_m2h.push(wet_g);
            s.tent_mist_g_per_h.push(hour.tent.mist_kg * 1000.0);
            sums.hours_tent_wall_wet += usize::from(wet_g > WET_HOUR_G_PER_M2);
            if self.crop_in_tent {
                crop_humidity = humidity;
            }
        }
        sums.hours_crop_humid += usize::from(crop_humidity >= HUMID_SHARE);
        sums.add(hour);
    }
}

impl Sums {
    fn add(&mut self, hour: &DampHour) {
        self.evaporated += hour.evaporated_kg;
        self.burnt += hour.burnt_kg;
        self.carried_in += hour.carried_in_kg;
        self.carried_out += hour.carried_out_kg;
        self.skin += hour.house.condensed_kg;
        self.tent_wall += hour.tent.condensed_kg;
        self.mist += hour.house.mist_kg + hour.tent.mist_kg;
    }

    fn figures(&self, tent: bool, store_change_kg: f64) -> DampFigures {
        let came = self.evaporated + self.burnt + self.carried_in;
        let left = self.carried_out + self.skin + self.tent_wall + self.mist + store_change_kg;
        DampFigures {
            hours_skin_wet: self.hours_skin_wet,
            hours_tent_wall_wet: tent.then_some(self.hours_tent_wall_wet),
            hours_crop_humidity_90: self.hours_crop_humid,
            evaporated_kg: self.evaporated,
            burner_water_kg: self.burnt,
            vapour_carried_out_kg: self.carried_out - self.carried_in,
            skin_condensed_kg: self.skin,
            tent_wall_condensed_kg: self.tent_wall,
            mist_kg: self.mist,
            vapour_store_change_kg: store_change_kg,
            moisture_books_closure: if came > 0.0 { (came - left).abs() / came } else { 0.0 },
        }
    }
}
