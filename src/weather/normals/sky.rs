//! Clouds and infrared of the sky under changed temperatures.

use super::brightness::Shares;
use crate::units::{HOURS_PER_DAY, kelvin_from_c};
use crate::weather::fill_sun::{clear_share, cloud_of_clear_ratio_tenths};
use crate::weather::sky::sky_emissivity;
use crate::weather::stats::mean;
use crate::weather::sun::Sun;
use crate::weather::year::{Record, WeatherYear};

/// Where nobody looked at the clouds, they follow from the day's sun, as where the sun itself is estimated.
pub(super) fn observed(mut year: WeatherYear) -> WeatherYear {
    if year.filled.cloud < year.records.len() {
        return year;
    }
    let clear = clear_share(year.place.elevation_m);
    for day in year.records.chunks_mut(HOURS_PER_DAY) {
        let above_air = |r: &Record| {
            let sun = Sun::at(&year.place, r.year, r.month, r.day, f64::from(r.hour) + year.sun_offset_h);
            sun.extraterrestrial_horizontal_w_per_m2()
        };
        let ceiling = clear * day.iter().map(above_air).sum::<f64>();
        let global: f64 = day.iter().map(|r| r.global_w_per_m2).sum();
        let tenths = cloud_of_clear_ratio_tenths(global / ceiling.max(1.0));
        day.iter_mut().for_each(|r| r.cloud_tenths = tenths);
    }
    year
}

/// Moves the mean cloud of each month to what is asked for, else by as much as its sunny share differs, inside 0 to 10
/// tenths.
pub(super) fn clouds(records: &mut [Record], shares: &[Option<Shares>; 12]) {
    for (m, shares) in (1..).zip(shares) {
        let Some(shares) = shares else { continue };
        let lent: Vec<f64> = records.iter().filter(|r| r.month == m).map(|r| r.cloud_tenths).collect();
        let lent_mean = mean(&lent);
        let by_share = lent_mean + 10.0 * (shares.lent - shares.wanted);
        let wanted = shares.cloud_tenths.unwrap_or(by_share).clamp(0.0, 10.0);
        for record in records.iter_mut().filter(|r| r.month == m) {
            record.cloud_tenths = moved(record.cloud_tenths, lent_mean, wanted);
        }
    }
}

/// Scales the cloud if there is to be less of it, the gaps between if there is to be more: the mean comes out as wanted.
fn moved(cloud: f64, mean: f64, wanted: f64) -> f64 {
    if wanted <= mean {
        if mean > 0.0 { cloud * wanted / mean } else { 0.0 }
    } else {
        10.0 - (10.0 - cloud) * (10.0 - wanted) / (10.0 - mean)
    }
}

/// Where the lender's sky was measured, its emissivity is kept, but for what dew point and cloud change in it.
pub(super) fn infrared(records: &mut [Record], lent: &[Record]) {
    for (record, from) in records.iter_mut().zip(lent) {
        let warmth = (kelvin_from_c(record.dry_bulb_c) / kelvin_from_c(from.dry_bulb_c)).powi(4);
        let emissivity = |r: &Record| sky_emissivity(r.dew_point_c, r.cloud_tenths);
        record.infrared_w_per_m2 = from.infrared_w_per_m2.map(|w| w * warmth * emissivity(record) / emissivity(from));
    }
}
