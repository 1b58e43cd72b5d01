//! The window drawn without a display.

use egui_kittest::Harness;
use warmfold::gui::prefs::Prefs;
use warmfold::gui::{self, State};
use warmfold::model::Study;

/// The window.
pub type Window = Harness<'static, State>;

/// The window on a study, with the in-app path dialog only; `frame` draws it.
pub fn drawn_by(size: [f32; 2], study: Study, mut frame: impl FnMut(&mut egui::Ui, &mut State) + 'static) -> Window {
    let ctx = egui::Context::default();
    let mut state = State::new(&ctx, study, None, Prefs::default());
    state.filing.in_app_only = true;
    let builder =
        Harness::builder().with_size(size).with_theme(egui::Theme::Light).with_max_steps(64).with_step_dt(1.0 / 60.0);
    // Fonts hold from the second frame on.
    let mut dressed = false;
    let ui = move |ui: &mut egui::Ui, state: &mut State| {
        if dressed {
            frame(ui, state)
        } else {
            gui::dress(ui.ctx())
        }
        dressed = true;
    };
    builder.build_ui_state(ui, state)
}
