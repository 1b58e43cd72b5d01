//! Dialogs where work could be lost: a file changed elsewhere, and changes that were never saved.

use super::dialogs::{heading, modal, set_width};
use super::filing::Ask;
use super::state::State;
use super::theme::ROW;
use egui::{Context, Id};

/// The file was changed by another hand since it was read here.
pub fn conflict_ui(ctx: &Context, state: &mut State) {
    let Some(path) = state.filing.conflict.clone() else { return };
    let mut answer = None;
    let response = modal(ctx, Id::unique("changed elsewhere")).show(ctx, |ui| {
        set_width(ui, 460.0);
        heading(ui, "The file was changed elsewhere");
        ui.label(format!(
            "“{}” holds something else than when it was opened or saved here. Saving would replace it.",
            state.document.name()
        ));
        ui.add_space(12.0);
        ui.horizontal(|ui| {
            for (index, text) in ["Save under another name…", "Replace it", "Keep editing"].into_iter().enumerate() {
                if ui.button(text).clicked() {
                    answer = Some(index);
                }
            }
        });
    });
    if answer.is_some() || response.should_close() {
        state.filing.conflict = None;
    }
    match answer {
        Some(0) => state.ask_path(Ask::Save, ctx),
        Some(1) => {
            state.document.on_disk = super::engine::fingerprint(&path);
            state.save_to(&path, ctx);
        }
        _ => {}
    }
}

/// Studies with changes that were not saved when the program last ended.
pub fn left_ui(ctx: &Context, state: &mut State) {
    if state.left.is_empty() {
        return;
    }
    let (mut open, mut discard, mut later) = (None, None, false);
    let response = modal(ctx, Id::unique("left behind")).show(ctx, |ui| {
        set_width(ui, 520.0);
        heading(ui, "Changes that were not saved");
        ui.label("The program ended before these were saved. Nothing is lost.");
        ui.add_space(8.0);
        for (index, left) in state.left.iter().enumerate() {
            let title = if left.study.title.trim().is_empty() { "New study" } else { left.study.title.trim() };
            let file = left.of.as_deref().map_or_else(|| "never saved".to_owned(), |path| path.display().to_string());
            let age = left.written.and_then(|at| at.elapsed().ok()).map(age).unwrap_or_default();
            ui.horizontal(|ui| {
                let size = egui::vec2(ui.available_width() - 200.0, ROW);
                ui.allocate_ui_with_layout(size, egui::Layout::left_to_right(egui::Align::Center), |ui| {
                    ui.set_min_width(size.x);
                    ui.add(egui::Label::new(format!("{title}{age}")).truncate()).on_hover_text(file);
                });
                if ui.button("Open").clicked() {
                    open = Some(index);
                }
                // No undo brings a draft back: the second click counts.
                let key = Id::unique(("discard draft", index));
                let sure = ui.data(|data| data.get_temp(key).unwrap_or(false));
                if ui.button(if sure { "Discard for good" } else { "Discard" }).clicked() {
                    ui.data_mut(|data| data.insert_temp(key, !sure));
                    discard = sure.then_some(index);
                }
            });
        }
        ui.add_space(12.0);
        later = ui.button("Decide at the next start").clicked();
    });
    if let Some(index) = open {
        let left = state.left.remove(index);
        state.recover(left, ctx);
    } else if let Some(index) = discard {
        if let Err(error) = state.left.remove(index).discard() {
            state.filing.error = Some(format!("The draft could not be removed ({error}); it comes up again"));
        }
    } else if later || response.should_close() {
        state.left.clear();
    }
}

/// How long ago something was, after its name.
fn age(passed: std::time::Duration) -> String {
    let minutes = passed.as_secs() / 60;
    match minutes {
        0 => ", just now".to_owned(),
        1..60 => format!(", {minutes} min ago"),
        60..1440 => format!(", {} h ago", minutes / 60),
        _ => format!(", {} days ago", minutes / 1440),
    }
}
