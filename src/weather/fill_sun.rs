//! The sun of a raw year made whole: missing parts, short gaps, and days without any.

use super::fill::interpolate_short;
use super::irradiance::{SunParts, direct_normal_from, erbs};
use super::raw::{RawRow, RawYear, Setting};
use super::stats::{highest, lowest};
use super::sun::Sun;
use super::year::Filled;
use crate::units::HOURS_PER_DAY;
use crate::weather::Note;

/// Coefficients of Hargreaves and Samani (1985) as in FAO Irrigation and Drainage Paper 56.
const HARGREAVES_INLAND: f64 = 0.16;
const HARGREAVES_COAST: f64 = 0.19;
/// Clear-sky share of the extraterrestrial sum at sea level, and its rise per metre (FAO paper 56).
const CLEAR_SHARE: f64 = 0.75;
const CLEAR_SHARE_PER_M: f64 = 2.0e-5;

/// Share of the extraterrestrial sun that a clear day lets through at an elevation.
pub(super) fn clear_share(elevation_m: f64) -> f64 {
    CLEAR_SHARE + CLEAR_SHARE_PER_M * elevation_m.max(0.0)
}

/// Cloud ‡ that goes with a day's sun over that of a clear day, tenths.
pub(super) fn cloud_of_clear_ratio_tenths(ratio: f64) -> f64 {
    10.0 * (1.0 - ratio.min(1.0))
}

/// The whole sun of a year.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct WholeSun {
    /// One per row.
    pub parts: Vec<SunParts>,
    /// Daily global over its clear-sky ceiling, for hours whose sun was estimated from the temperatures.
    clear_ratio: Vec<Option<f64>>,
    /// What the user should know.
    pub notes: Vec<Note>,
}

/// Cloud that goes with an estimated sun.
pub(super) fn day_cloud_tenths(sun: &WholeSun) -> Vec<Option<f64>> {
    sun.clear_ratio.iter().map(|ratio| ratio.map(cloud_of_clear_ratio_tenths)).collect()
}

/// Completes the sun: missing parts by closure or Erbs, gaps up to six hours by interpolation, the rest from the day's
/// temperature swing.
pub(super) fn complete_sun(raw: &RawYear, dry_bulb: &[f64], filled: &mut Filled) -> WholeSun {
    let suns: Vec<Sun> = raw
        .rows
        .iter()
        .map(|r| Sun::at(&raw.place, r.year, r.month, r.day, f64::from(r.hour) + raw.sun_offset_h))
        .collect();
    let mut split_by_erbs = 0;
    let mut parts: Vec<Option<SunParts>> =
        raw.rows.iter().zip(&suns).map(|(row, sun)| parts_of_row(row, sun, &mut split_by_erbs)).collect();
    let missing = parts.iter().filter(|p| p.is_none()).count();
    interpolate_parts(&mut parts, &suns);
    let estimated = parts.iter().filter(|p| p.is_none()).count();
    let estimate = SwingEstimate { raw, dry_bulb, suns: &suns };
    let (parts, clear_ratio) = estimate.fill(&parts);
    filled.sun = missing + split_by_erbs;
    WholeSun { parts, clear_ratio, notes: notes(split_by_erbs, estimated) }
}

fn notes(split_by_erbs: usize, estimated: usize) -> Vec<Note> {
    let mut notes = Vec::new();
    if split_by_erbs > 0 {
        notes.push(format!("Beam and diffuse sun of {split_by_erbs} hours were split from the global sun.").into());
    }
    if estimated > 0 {
        notes.push(
            format!("The sun of {estimated} hours was estimated from the daily swing of the temperature.").into(),
        );
    }
    notes
}

/// What one row gives, whole; `None` if it gives nothing to go by. Counts what had to be split.
fn parts_of_row(row: &RawRow, sun: &Sun, split_by_erbs: &mut usize) -> Option<SunParts> {
    let above_zero = |value: Option<f64>| value.map(|v| v.max(0.0));
    let (global, direct_normal, diffuse) =
        (above_zero(row.global_w_per_m2), above_zero(row.direct_normal_w_per_m2), above_zero(row.diffuse_w_per_m2));
    let height = sun.direction[2].max(0.0);
    match (global, direct_normal, diffuse) {
        (Some(global), Some(direct_normal), Some(diffuse)) => Some(SunParts { global, direct_normal, diffuse }),
        (Some(global), None, Some(diffuse)) => {
            Some(SunParts { global, direct_normal: direct_normal_from(global, diffuse, sun), diffuse })
        }
        (Some(global), Some(direct_normal), None) => {
            Some(SunParts { global, direct_normal, diffuse: (global - direct_normal * height).max(0.0) })
        }
        (None, Some(direct_normal), Some(diffuse)) => {
            Some(SunParts { global: diffuse + direct_normal * height, direct_normal, diffuse })
        }
        (Some(global), None, None) => {
            *split_by_erbs += usize::from(global > 0.0);
            Some(erbs(global, sun))
        }
        _ => None,
    }
}

/// Interpolates short gaps part by part; nothing shines where the sun is down.
fn interpolate_parts(parts: &mut [Option<SunParts>], suns: &[Sun]) {
    let mut columns: [Vec<Option<f64>>; 3] = [
        parts.iter().map(|p| p.map(|p| p.global)).collect(),
        parts.iter().map(|p| p.map(|p| p.direct_normal)).collect(),
        parts.iter().map(|p| p.map(|p| p.diffuse)).collect(),
    ];
    columns.iter_mut().for_each(|column| {
        interpolate_short(column);
    });
    let [globals, directs, diffuses] = columns;
    let filled = globals.into_iter().zip(directs).zip(diffuses);
    for ((part, sun), ((global, direct), diffuse)) in parts.iter_mut().zip(suns).zip(filled) {
        if part.is_none()
            && let (Some(global), Some(direct_normal), Some(diffuse)) = (global, direct, diffuse)
        {
            let whole = SunParts { global, direct_normal, diffuse };
            *part = Some(if sun.is_up() { whole } else { SunParts::default() });
        }
    }
}

/// Daily global from the daily temperature swing, after Hargreaves and Samani, for what is still missing.
struct SwingEstimate<'a> {
    raw: &'a RawYear,
    dry_bulb: &'a [f64],
    suns: &'a [Sun],
}

impl SwingEstimate<'_> {
    fn fill(&self, parts: &[Option<SunParts>]) -> (Vec<SunParts>, Vec<Option<f64>>) {
        let (mut whole, mut ratios) = (Vec::with_capacity(parts.len()), Vec::with_capacity(parts.len()));
        let days = parts.chunks(HOURS_PER_DAY).zip(self.suns.chunks(HOURS_PER_DAY));
        for ((day_parts, day_suns), day_c) in days.zip(self.dry_bulb.chunks(HOURS_PER_DAY)) {
            let share = self.share_of_extraterrestrial(day_c);
            for (part, sun) in day_parts.iter().zip(day_suns) {
                whole.push(part.unwrap_or_else(|| erbs(share * sun.extraterrestrial_horizontal_w_per_m2(), sun)));
                ratios.push(part.is_none().then(|| share / self.clear_share()));
            }
        }
        (whole, ratios)
    }

    /// Share of the day's extraterrestrial sum that reaches the ground; the same share holds for each hour, so that the
    /// day is spread in proportion to the extraterrestrial horizontal irradiance.
    fn share_of_extraterrestrial(&self, day_c: &[f64]) -> f64 {
        let coefficient = match self.raw.setting {
            Setting::Inland => HARGREAVES_INLAND,
            Setting::Coast => HARGREAVES_COAST,
        };
        let swing_k = (highest(day_c) - lowest(day_c)).max(0.0);
        (coefficient * swing_k.sqrt()).min(self.clear_share())
    }

    fn clear_share(&self) -> f64 {
        clear_share(self.raw.place.elevation_m)
    }
}
