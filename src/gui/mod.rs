//! The window. Views read the state and note edits; only [`document`] and [`history`] change the study,
//! only [`worker`] runs seasons.

mod actions;
pub mod asked;
pub mod board;
mod cards;
mod clipboard;
pub mod command;
mod cut;
mod dialogs;
pub mod document;
mod drawing;
mod editor;
mod engine;
mod everywhere;
mod evidence;
mod exporting;
mod fields;
mod figures_table;
mod filing;
mod guide;
mod handout;
mod headline;
mod hint;
pub mod history;
mod icon;
mod importing;
pub mod insights;
mod keeping;
mod marks;
pub mod matters;
mod menu;
mod meter;
pub mod nights;
mod outlook;
mod palette;
mod picture;
mod plots;
pub mod prefs;
mod purchases;
mod rescue;
mod saving;
pub mod state;
mod status;
mod streamed;
mod sweeps;
mod theme;
pub mod thread_time;
pub mod verdicts;
mod views;
mod window;
mod worker;
mod workings;

pub use filing::{Ask, Next};
pub use state::State;
pub use window::window_ui;

use meter::Meter;
use prefs::Prefs;
use std::path::PathBuf;

/// Key of the preferences in eframe's storage.
const PREFS: &str = "preferences";

/// Why no window could be opened.
#[derive(Debug, thiserror::Error)]
pub enum GuiError {
    /// The system gave no window or no OpenGL.
    #[error(
        "No window can be opened here ({0}): to get it, start the program in a desktop session with OpenGL; on Debian it \
         needs libx11-6 libx11-xcb1 libxcursor1 libxi6 libxkbcommon-x11-0 libgl1."
    )]
    NoWindow(String),
}

/// Opens the window on a study file, or on the demo.
///
/// # Errors
/// When there is no display, no OpenGL, or a system library is missing.
pub fn run(path: Option<PathBuf>) -> Result<(), GuiError> {
    open(path, None)
}

/// Opens the window on the demo, drags setpoints for some hundred frames, prints what they cost, and closes.
///
/// # Errors
/// As [`run`].
pub fn measure() -> Result<(), GuiError> {
    open(None, Some(Meter::new()))
}

fn open(path: Option<PathBuf>, meter: Option<Meter>) -> Result<(), GuiError> {
    let viewport = egui::ViewportBuilder::default()
        .with_title("Warmfold")
        .with_app_id("warmfold")
        .with_icon(icon::icon())
        .with_inner_size([1280.0, 800.0])
        .with_min_inner_size([960.0, 640.0]);
    let options = eframe::NativeOptions { renderer: eframe::Renderer::Glow, viewport, ..Default::default() };
    eframe::run_native("warmfold", options, Box::new(|cc| Ok(Box::new(App::new(cc, path, meter)))))
        .map_err(|error| GuiError::NoWindow(last_clause(&error.to_string())))
}

/// The end of a chain of reasons: what went wrong in the end, without the places in source code before it.
fn last_clause(chain: &str) -> String {
    chain.rsplit(": ").next().unwrap_or(chain).trim_end_matches(['.', ')']).to_owned()
}

/// Prepares fonts and both themes; once per context.
pub fn dress(ctx: &egui::Context) {
    theme::install(ctx);
}

struct App {
    state: State,
    meter: Option<Meter>,
}

impl App {
    fn new(cc: &eframe::CreationContext<'_>, path: Option<PathBuf>, meter: Option<Meter>) -> Self {
        dress(&cc.egui_ctx);
        let prefs: Prefs = cc.storage.and_then(|s| eframe::get_value(s, PREFS)).unwrap_or_default();
        cc.egui_ctx.set_theme(prefs.theme.preference());
        let mut state = State::new(&cc.egui_ctx, engine::demo(), None, prefs);
        if let Some(folder) = eframe::storage_dir("warmfold").filter(|_| meter.is_none()) {
            state.keep_in(folder);
        }
        if let Some(path) = path {
            state.open_file(&path, &cc.egui_ctx);
        }
        Self { state, meter }
    }
}

impl eframe::App for App {
    fn ui(&mut self, ui: &mut egui::Ui, frame: &mut eframe::Frame) {
        let begun = (std::time::Instant::now(), thread_time::thread_time());
        window_ui(ui, &mut self.state);
        if let Some(meter) = &mut self.meter {
            ui.ctx().request_repaint();
            let layout = (begun.0.elapsed(), thread_time::thread_time().saturating_sub(begun.1));
            if meter.note(layout, frame.info().cpu_usage, &mut self.state) {
                print!("{}", meter.report());
                self.meter = None;
                self.state.may_close = true;
                ui.ctx().send_viewport_cmd(egui::ViewportCommand::Close);
            }
        }
    }

    fn save(&mut self, storage: &mut dyn eframe::Storage) {
        eframe::set_value(storage, PREFS, &self.state.prefs);
    }

    fn on_exit(&mut self, _gl: Option<&eframe::glow::Context>) {
        if let Some(keeping) = &mut self.state.keeping {
            keeping.end();
        }
    }
}
