//! Escape leaves a number as it was.

use egui::response::Flags;
use egui::{Key, Response};

/// Undoes what a number field makes of Escape; whether it was left by it. The field passes its entry over in the frame of the
/// key, but takes it in the next one, in which it counts as just left still.
pub fn left_by_escape(response: &mut Response) -> bool {
    let ctx = response.ctx.clone();
    let key = response.id.with("left by Escape");
    let now = response.lost_focus() && ctx.input(|i| i.key_pressed(Key::Escape));
    let before = ctx.data_mut(|data| data.remove_temp::<bool>(key)).is_some();
    if now {
        ctx.data_mut(|data| data.insert_temp(key, true));
    }
    if before {
        response.flags.remove(Flags::CHANGED);
    }
    now || before
}
