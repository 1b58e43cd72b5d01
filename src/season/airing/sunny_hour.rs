//! Which hour of a season asks most of the vents.

use crate::physics::solar::DAY_THRESHOLD_W_PER_M2;
use crate::season::drive::HourDrive;
use crate::season::result::HourlySeries;
use crate::weather::Climate;

/// Share of the hours with sun that are mild: the warmest of them outdoors. A modelling choice; on a cold day a house may
/// be as warm as the sun makes it.
const MILD_SHARE: f64 = 0.1;

/// The season's sunniest mild hour: of the warmest tenth of its hours with sun, the one whose sun warms house and tent
/// most, vapour taken off; the first of equals. None in a season without sun.
#[must_use]
pub fn sunniest_mild_hour(series: &HourlySeries, drives: &[HourDrive], climate: &Climate) -> Option<usize> {
    let sunny = |k: &usize| {
        let weather = series.record.get(*k).and_then(|record| climate.hours.get(*record));
        weather.is_some_and(|hour| hour.global_w_per_m2 > DAY_THRESHOLD_W_PER_M2)
    };
    let hours: Vec<usize> = (0..drives.len()).filter(sunny).collect();
    let mut warmest: Vec<f64> = hours.iter().map(|k| drives[*k].outdoor_c).collect();
    warmest.sort_by(|a, b| b.total_cmp(a));
    let mild_c = *warmest.get((warmest.len() as f64 * MILD_SHARE) as usize)?;
    let mild = hours.into_iter().filter(|k| drives[*k].outdoor_c >= mild_c);
    mild.reduce(|best, k| if drives[k].warming_sun_w() > drives[best].warming_sun_w() { k } else { best })
}
