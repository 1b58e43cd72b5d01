//! Dialogs for a decision, explanations, and the toast.

use super::command::Command;
use super::evidence;
use super::figures_table;
use super::filing::{Ask, Next};
use super::guide;
use super::marks::{self, Icon};
use super::rescue;
use super::state::{Leaflet, State};
use super::theme::{HEADING, semibold, tokens};
use super::workings::workings_ui;
use crate::safety::cautions::{CAUTIONS, LAST_WORD};
use egui::{Context, Id, Key, Modal, RichText, Ui, vec2};
use std::path::PathBuf;

/// All of them.
pub fn dialogs_ui(ctx: &Context, state: &mut State) {
    path_ui(ctx, state);
    question_ui(ctx, state);
    rescue::conflict_ui(ctx, state);
    rescue::left_ui(ctx, state);
    waiting_ui(ctx, state);
    importing_ui(ctx, state);
    error_ui(ctx, state);
    workings_ui(ctx, state);
    leaflet_ui(ctx, state);
    figures_table::table_ui(ctx, state);
    toast_ui(ctx, state);
}

/// A dialog with room round its content.
pub fn modal(ctx: &Context, id: Id) -> Modal {
    Modal::new(id).frame(egui::Frame::window(&ctx.global_style()))
}

/// Gives a dialog its width, less in a window that is narrower: a list in it must not reach out of the window.
pub fn set_width(ui: &mut Ui, width: f32) {
    ui.set_width(width.min(ui.ctx().content_rect().width() - 60.0).max(100.0));
}

/// The title of a dialog.
pub fn heading(ui: &mut Ui, text: &str) {
    ui.label(RichText::new(text).font(semibold(HEADING)));
    ui.add_space(8.0);
}

fn path_ui(ctx: &Context, state: &mut State) {
    let Some(mut dialog) = state.filing.dialog.take() else { return };
    let (title, verb) = match dialog.ask {
        Ask::Open => ("Open a study", "Open"),
        Ask::Save => ("Save the study", "Save"),
        Ask::Weather => ("Open a weather file", "Open"),
        Ask::Report => ("Export the report", "Write"),
        Ask::Picture => ("Save a picture of the view", "Write"),
        Ask::Handout => ("Save what the plot shows", "Write"),
    };
    let mut chosen = None;
    let mut stay = true;
    let response = modal(ctx, Id::unique("path dialog")).show(ctx, |ui| {
        set_width(ui, 520.0);
        heading(ui, title);
        let label = ui.label("File path");
        let edit =
            ui.add(egui::TextEdit::singleline(&mut dialog.text).desired_width(f32::INFINITY)).labelled_by(label.id);
        if edit.changed() {
            dialog.replace = false;
            dialog.notice.clear();
        } else if !edit.has_focus() && !edit.lost_focus() && ui.memory(|m| m.focused().is_none()) {
            edit.request_focus();
        }
        let enter = edit.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
        if !dialog.ask.writes() {
            listing_ui(ui, &mut dialog.text, dialog.ask);
        }
        ui.set_min_height(28.0);
        ui.label(RichText::new(&dialog.notice).color(tokens(ui).warn));
        ui.add_space(4.0);
        ui.horizontal(|ui| {
            let verb = if dialog.replace { "Replace the file" } else { verb };
            if ui.button(verb).clicked() || enter {
                chosen = Some(PathBuf::from(dialog.text.trim()));
            }
            if ui.button("Cancel").clicked() {
                stay = false;
            }
        });
    });
    if let Some(path) = chosen {
        let path = if path.as_os_str().is_empty() { path } else { state.with_ending(dialog.ask, path) };
        match refusal(&path, dialog.ask, dialog.replace) {
            None => return state.take_path(dialog.ask, path, ctx),
            Some((notice, may_replace)) => {
                dialog.notice = notice;
                dialog.replace = may_replace;
            }
        }
    }
    if stay && !response.should_close() {
        state.filing.dialog = Some(dialog);
    }
}

/// Why a path cannot be taken; true where replacing the file is the way out.
fn refusal(path: &std::path::Path, ask: Ask, replace: bool) -> Option<(String, bool)> {
    if path.as_os_str().is_empty() {
        return Some(("Type a path, such as /home/me/house.ron".to_owned(), false));
    }
    match ask {
        _ if ask.writes() => {
            let folder = path.parent().filter(|p| !p.as_os_str().is_empty());
            if folder.is_some_and(|f| !f.is_dir()) {
                return Some(("There is no such folder. Choose another or make it first".to_owned(), false));
            }
            if path.is_dir() {
                return Some(("That is a folder. Add a file name".to_owned(), false));
            }
            (path.exists() && !replace).then(|| ("A file of that name is there already".to_owned(), true))
        }
        _ if !path.is_file() => Some(("There is no such file. Look at the spelling".to_owned(), false)),
        _ => None,
    }
}

/// Lists the folder of the typed path.
fn listing_ui(ui: &mut Ui, text: &mut String, ask: Ask) {
    let typed = PathBuf::from(text.as_str());
    let folder = if typed.is_dir() { typed } else { typed.parent().map(PathBuf::from).unwrap_or_default() };
    let wanted: &[&str] = if ask == Ask::Weather { &["epw", "csv"] } else { &["ron"] };
    let mut entries: Vec<(bool, PathBuf)> = std::fs::read_dir(&folder)
        .map(|read| read.flatten().map(|e| e.path()).map(|p| (p.is_dir(), p)).collect())
        .unwrap_or_default();
    entries.retain(|(is_folder, path)| {
        let hidden = path.file_name().is_some_and(|n| n.to_string_lossy().starts_with('.'));
        let fits = path.extension().is_some_and(|e| wanted.contains(&e.to_string_lossy().to_lowercase().as_str()));
        !hidden && (*is_folder || fits)
    });
    entries.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
    if let Some(up) = folder.parent().filter(|_| folder.is_dir()) {
        entries.insert(0, (true, up.to_owned()));
    }
    egui::ScrollArea::vertical().max_height(220.0).min_scrolled_height(220.0).auto_shrink([false, true]).show(
        ui,
        |ui| {
            for (index, (is_folder, path)) in entries.iter().enumerate() {
                let name = path.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default();
                let up = index == 0 && folder.parent() == Some(path.as_path());
                let shown = match (up, *is_folder) {
                    (true, _) => "Folder above".to_owned(),
                    (_, true) => format!("{name}{}", std::path::MAIN_SEPARATOR),
                    _ => name,
                };
                if ui.selectable_label(false, shown).clicked() {
                    let tail = if *is_folder { std::path::MAIN_SEPARATOR_STR } else { "" };
                    *text = format!("{}{tail}", path.display().to_string().trim_end_matches(std::path::MAIN_SEPARATOR));
                }
            }
        },
    );
}

fn question_ui(ctx: &Context, state: &mut State) {
    let Some(next) = state.filing.question.clone() else { return };
    let mut answer = None;
    let response = modal(ctx, Id::unique("unsaved changes")).show(ctx, |ui| {
        set_width(ui, 400.0);
        heading(ui, "Keep your changes?");
        ui.label(format!("“{}” has changes that are not saved.", state.document.name()));
        ui.add_space(12.0);
        ui.horizontal(|ui| {
            for (index, text) in ["Save", "Discard changes", "Keep editing"].into_iter().enumerate() {
                if ui.button(text).clicked() {
                    answer = Some(index);
                }
            }
        });
    });
    if answer.is_some() || response.should_close() {
        state.filing.question = None;
    }
    match answer {
        Some(0) => state.save(Some(next), ctx),
        Some(1) => {
            if next == Next::Quit {
                state.may_close = true;
            }
            state.go_on(next, ctx);
        }
        _ => {}
    }
}

fn waiting_ui(ctx: &Context, state: &mut State) {
    if !state.filing.waiting() {
        return;
    }
    egui::Area::new(Id::unique("waiting")).anchor(egui::Align2::CENTER_BOTTOM, vec2(0.0, -48.0)).show(ctx, |ui| {
        egui::Frame::popup(ui.style()).show(ui, |ui| {
            ui.horizontal(|ui| {
                ui.label("Waiting for the file window");
                if ui.button("Stop waiting").clicked() {
                    state.filing.forget_pending();
                }
            });
        });
    });
}

fn importing_ui(ctx: &Context, state: &mut State) {
    let Some(import) = &state.import else { return };
    let text = format!("Reading {}, {} %", import.name(), import.percent());
    egui::Area::new(Id::unique("importing")).anchor(egui::Align2::CENTER_BOTTOM, vec2(0.0, -48.0)).show(ctx, |ui| {
        egui::Frame::popup(ui.style()).show(ui, |ui| {
            ui.horizontal(|ui| {
                ui.label(text);
                if ui.button("Cancel").clicked() {
                    state.import = None;
                }
            });
        });
    });
}

fn error_ui(ctx: &Context, state: &mut State) {
    let Some(error) = state.filing.error.clone() else { return };
    let mut close = false;
    let response = modal(ctx, Id::unique("error")).show(ctx, |ui| {
        set_width(ui, 480.0);
        heading(ui, "That did not work");
        ui.label(error);
        ui.add_space(12.0);
        close = ui.button("Close").clicked();
    });
    if close || response.should_close() {
        state.filing.error = None;
    }
}

fn leaflet_ui(ctx: &Context, state: &mut State) {
    let Some(leaflet) = state.leaflet else { return };
    let mut close = false;
    let response = modal(ctx, Id::unique("leaflet")).show(ctx, |ui| {
        let width = match leaflet {
            Leaflet::Evidence => 900.0,
            Leaflet::Guide => 680.0,
            _ => 520.0,
        };
        set_width(ui, width);
        match leaflet {
            Leaflet::Guide => guide::guide_ui(ui),
            Leaflet::About => about_ui(ui),
            Leaflet::Cautions => cautions_ui(ui),
            Leaflet::Evidence => evidence::evidence_ui(ui),
            Leaflet::Shortcuts => shortcuts_ui(ui),
        }
        ui.add_space(12.0);
        close = ui.button("Close").clicked();
    });
    if close || response.should_close() {
        state.leaflet = None;
    }
}

fn about_ui(ui: &mut Ui) {
    heading(ui, "About Warmfold");
    ui.label(format!("Version {}", env!("CARGO_PKG_VERSION")));
    ui.add_space(4.0);
    ui.label("What a winter costs in a small heated plant house, worked out hour by hour from measured or typical weather, scenario beside scenario.");
    ui.add_space(4.0);
    ui.label("The heat model and its sources are described in the README. Figures are estimates: weather, workmanship and habits decide the rest.");
    ui.add_space(4.0);
    ui.label(RichText::new("Type: Source Sans 3, SIL Open Font License 1.1").color(tokens(ui).soft));
}

fn cautions_ui(ui: &mut Ui) {
    heading(ui, "Cautions");
    for caution in CAUTIONS {
        ui.label(caution);
        ui.add_space(4.0);
    }
    ui.label(RichText::new(LAST_WORD).color(tokens(ui).soft));
}

fn shortcuts_ui(ui: &mut Ui) {
    heading(ui, "Keyboard");
    egui::Grid::new("shortcuts").num_columns(2).spacing(vec2(32.0, 2.0)).show(ui, |ui| {
        for command in Command::ALL {
            if let Some(shortcut) = command.shortcut() {
                ui.label(command.text());
                ui.label(RichText::new(ui.ctx().format_shortcut(&shortcut)).color(tokens(ui).soft));
                ui.end_row();
            }
        }
    });
    ui.add_space(4.0);
    ui.label(
        RichText::new("Plots: drag to zoom, double-click for the whole season, click to set the hour.")
            .color(tokens(ui).soft),
    );
}

fn toast_ui(ctx: &Context, state: &mut State) {
    let Some(toast) = state.toast.clone() else { return };
    let now = ctx.input(|i| i.time);
    if now >= toast.until_s {
        state.toast = None;
        return;
    }
    ctx.request_repaint_after(std::time::Duration::from_secs_f64(toast.until_s - now));
    let t = super::theme::tokens_of(ctx.theme());
    egui::Area::new(Id::unique("toast")).anchor(egui::Align2::CENTER_BOTTOM, vec2(0.0, -40.0)).show(ctx, |ui| {
        egui::Frame::new().fill(t.ink).corner_radius(4.0).inner_margin(egui::Margin::symmetric(12, 6)).show(ui, |ui| {
            ui.horizontal(|ui| {
                ui.label(RichText::new(&toast.text).color(t.paper));
                if toast.offers_undo {
                    let undo = egui::Button::new(RichText::new("Undo").color(t.paper).underline()).frame(false);
                    if ui.add(undo).clicked() {
                        state.queue.push(Command::Undo);
                        state.toast = None;
                    }
                }
                let (rect, response) = ui.allocate_exact_size(vec2(16.0, 16.0), egui::Sense::click());
                response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, "Dismiss"));
                marks::paint_icon(ui.painter(), Icon::Cross, rect.center(), t.paper);
                if response.clicked() {
                    state.toast = None;
                }
            });
        });
    });
}
