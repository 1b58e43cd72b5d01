//! Whether global, direct and diffuse sun fit together at the sun's height: tells wrong stamps and time zones.

use super::raw::{RawRow, RawYear};
use super::sun::Sun;
use super::year::Place;
use crate::weather::Note;

/// Beams weaker than this say little, W/m² (the threshold of the published timing checks of such files).
const TELLING_BEAM_W_PER_M2: f64 = 50.0;
/// Misfit ‡ that is worth a note, W/m²: right files have 0.7 to 3, an error of 40 minutes makes 41.
const NOTABLE_MISFIT_W_PER_M2: f64 = 25.0;

/// Root mean square of global − diffuse − beam on the horizontal, W/m², with the sun taken at stamp + `sun_offset_h`;
/// `None` without hours to tell by.
pub(super) fn misfit_w_per_m2(place: &Place, rows: &[RawRow], sun_offset_h: f64) -> Option<f64> {
    let (mut sum, mut count) = (0.0, 0_u32);
    for row in rows {
        let (Some(global), Some(direct), Some(diffuse)) =
            (row.global_w_per_m2, row.direct_normal_w_per_m2, row.diffuse_w_per_m2)
        else {
            continue;
        };
        if direct > TELLING_BEAM_W_PER_M2 {
            let sun = Sun::at(place, row.year, row.month, row.day, f64::from(row.hour) + sun_offset_h);
            sum += (global - diffuse - direct * sun.direction[2].max(0.0)).powi(2);
            count += 1;
        }
    }
    (count > 0).then(|| (sum / f64::from(count)).sqrt())
}

/// The offset among several under which the sun fits best; the first where nothing tells.
pub(super) fn best_offset_h(place: &Place, rows: &[RawRow], offsets_h: &[f64]) -> Option<f64> {
    let misfit = |offset: f64| misfit_w_per_m2(place, rows, offset).unwrap_or(0.0);
    offsets_h.iter().copied().min_by(|a, b| misfit(*a).total_cmp(&misfit(*b)))
}

/// A note if the sun does not fit.
pub(super) fn note(raw: &RawYear) -> Option<Note> {
    let misfit = misfit_w_per_m2(&raw.place, &raw.rows, raw.sun_offset_h)?;
    (misfit > NOTABLE_MISFIT_W_PER_M2).then(|| {
        format!(
            "Global, direct and diffuse sun miss each other by {misfit:.0} W/m²: the time zone or the time stamps of the file may \
             be wrong."
        )
        .into()
    })
}
