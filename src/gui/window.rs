//! One frame of the window: what came in, the panels, what was asked for.

use super::command::Command;
use super::filing::Next;
use super::state::State;
use super::theme::tokens;
use super::{cards, dialogs, drawing, editor, headline, menu, status, views};
use egui::{Frame, Margin, Panel, Ui, UiBuilder};

/// Widths of the scenario cards and of the editor.
const SIDES: [f32; 2] = [216.0, 312.0];
/// The same in a window narrower than `NARROW`, where the results need the room more.
const NARROW_SIDES: [f32; 2] = [164.0, 300.0];
const NARROW: f32 = 1090.0;
/// Room that the results need; a little less than they have in the smallest window.
const LEAST: egui::Vec2 = egui::vec2(500.0, 560.0);

/// The whole window; the application and the tests call nothing else.
pub fn window_ui(ui: &mut Ui, state: &mut State) {
    let ctx = ui.ctx().clone();
    take_in(state, &ctx);
    let before = state.document.draft.clone();
    panels_ui(ui, state);
    dialogs::dialogs_ui(&ctx, state);
    if let Some(text) = state.pasted.take() {
        state.paste_scenarios(&text, &ctx);
    }
    let commands = std::mem::take(&mut state.queue);
    for command in &commands {
        state.edit_by(*command, &ctx);
    }
    let mut edits = std::mem::take(&mut state.edits);
    state.carry_changes(&before, &mut edits);
    let busy = ctx.input(|i| i.pointer.any_down()) || ctx.text_edit_focused();
    state.document.settle(before, edits, busy);
    state.prefs.started |= state.document.history.undo_name().is_some();
    for command in commands {
        state.act(command, &ctx);
    }
    state.refresh();
    state.look_further(&ctx);
    state.tend(&ctx);
    title(state, &ctx);
}

fn take_in(state: &mut State, ctx: &egui::Context) {
    state.refresh();
    state.poll_filing(ctx);
    state.poll_export(ctx);
    state.poll_import();
    state.poll_saving(ctx);
    // On a slow machine several chords can fall into one frame.
    while let Some(command) = Command::pressed(ctx) {
        state.queue.push(command);
    }
    if !ctx.text_edit_focused() {
        state.pasted = ctx.input(|i| {
            let pasted = i.events.iter().rev();
            pasted.filter_map(|e| if let egui::Event::Paste(text) = e { Some(text.clone()) } else { None }).next()
        });
    }
    let dropped = ctx.input(|i| i.raw.dropped_files.clone());
    if let Some(file) = dropped.first() {
        state.begin(Next::Open(file.path().to_path_buf()), ctx);
    }
    let closing = ctx.input(|i| i.viewport().close_requested());
    if closing && !state.may_close && state.document.changed_since_save() {
        ctx.send_viewport_cmd(egui::ViewportCommand::CancelClose);
        if state.filing.saving() {
            state.filing.after_save = Some(Next::Quit);
        } else {
            state.filing.question = Some(Next::Quit);
        }
    }
}

fn panels_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    ui.painter().rect_filled(ui.max_rect(), 0.0, t.paper);
    let bare = Frame::new().fill(t.paper);
    Panel::top("menu bar").frame(bare.inner_margin(Margin::symmetric(12, 4))).show(ui, |ui| menu::menu_ui(ui, state));
    let line = Panel::bottom("status").frame(bare.inner_margin(Margin::symmetric(16, 4))).show(ui, |ui| {
        ui.set_height(status::HEIGHT);
        ui.max_rect()
    });
    let [cards, editor] = if ui.max_rect().width() < NARROW { NARROW_SIDES } else { SIDES };
    Panel::left("scenarios").exact_size(cards).resizable(false).frame(bare).show(ui, |ui| cards::cards_ui(ui, state));
    Panel::left("editor").exact_size(editor).resizable(false).frame(bare).show(ui, |ui| editor::editor_ui(ui, state));
    egui::CentralPanel::default()
        .frame(bare.inner_margin(Margin::symmetric(16, 8)))
        .show(ui, |ui| roomy_ui(ui, |ui| results_ui(ui, state)));
    // The keys come to the lowest line last.
    status::status_ui(&mut ui.new_child(UiBuilder::new().max_rect(line.inner)), state);
}

/// Figures, drawing and view of the chosen scenario.
fn results_ui(ui: &mut Ui, state: &mut State) {
    headline::headline_ui(ui, state);
    views::tabs_ui(ui, state);
    state.view_rect = ui.available_rect_before_wrap().intersect(ui.clip_rect());
    ui.add_space(6.0);
    if state.view.has_drawing() {
        drawing::drawing_ui(ui, state);
    }
    views::views_ui(ui, state);
}

/// Gives the content at least the room that it needs: in a smaller window, or one that is zoomed in, it scrolls.
fn roomy_ui(ui: &mut Ui, content: impl FnOnce(&mut Ui)) {
    let room = ui.available_size();
    if room.x >= LEAST.x && room.y >= LEAST.y {
        return content(ui);
    }
    egui::ScrollArea::both().id_salt("small window").auto_shrink([false, false]).show(ui, |ui| {
        let (rect, _) = ui.allocate_exact_size(room.max(LEAST), egui::Sense::hover());
        content(&mut ui.new_child(UiBuilder::new().max_rect(rect)));
    });
}

/// Gives the window the name of the file, with a dot while it is unsaved.
fn title(state: &mut State, ctx: &egui::Context) {
    let dot = if state.document.changed_since_save() { "• " } else { "" };
    let title = format!("{dot}{} – Warmfold", state.document.name());
    if title != state.title {
        state.title.clone_from(&title);
        ctx.send_viewport_cmd(egui::ViewportCommand::Title(title));
    }
}
