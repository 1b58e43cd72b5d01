//! The inner tent as a box.

use crate::model::{Tent, TentBase};

/// The measured tent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TentBox {
    /// Base and top, m².
    pub base_m2: f64,
    /// Four walls and top, m².
    pub wall_and_top_m2: f64,
    /// m³.
    pub volume_m3: f64,
    /// Whether its base is the floor of the house.
    pub stands_on_floor: bool,
}

impl TentBox {
    /// Measures a tent; `None` while it is not put up.
    #[must_use]
    pub fn of(tent: &Tent) -> Option<Self> {
        tent.present.then(|| {
            let base_m2 = tent.length_m * tent.width_m;
            Self {
                base_m2,
                wall_and_top_m2: base_m2 + 2.0 * (tent.length_m + tent.width_m) * tent.height_m,
                volume_m3: base_m2 * tent.height_m,
                stands_on_floor: tent.base == TentBase::Floor,
            }
        })
    }
}
