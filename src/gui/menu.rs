//! The menu bar, with the switches for units and theme at its right end.

use super::command::Command;
use super::filing::Next;
use super::prefs::ThemeChoice;
use super::state::{State, View};
use super::theme::{BODY, SMALL, regular, semibold, tokens};
use crate::units::UnitSystem;
use egui::{Button, RichText, Ui};

/// Room between the switches for units and for the theme.
const BETWEEN: f32 = 16.0;

/// The bar.
pub fn menu_ui(ui: &mut Ui, state: &mut State) {
    egui::MenuBar::new().ui(ui, |ui| {
        ui.add_space(4.0);
        ui.label(RichText::new("Warmfold").font(semibold(BODY)).color(tokens(ui).accent));
        ui.add_space(8.0);
        ui.menu_button("File", |ui| file_ui(ui, state));
        ui.menu_button("Edit", |ui| edit_ui(ui, state));
        ui.menu_button("View", |ui| view_ui(ui, state));
        ui.menu_button("Help", |ui| {
            for command in [
                Command::Guide,
                Command::Shortcuts,
                Command::Workings,
                Command::Evidence,
                Command::Cautions,
                Command::About,
            ] {
                entry(ui, state, command, false);
            }
        });
        switches_ui(ui, state);
    });
}

fn file_ui(ui: &mut Ui, state: &mut State) {
    entry(ui, state, Command::New, false);
    entry(ui, state, Command::Open, false);
    ui.menu_button("Recent", |ui| {
        ui.set_min_width(220.0);
        if state.prefs.recent.is_empty() {
            ui.add_enabled(false, Button::new("No file opened yet"));
        }
        for path in state.prefs.recent.clone() {
            let name =
                path.file_name().map_or_else(|| path.display().to_string(), |n| n.to_string_lossy().into_owned());
            let there = path.exists();
            let text = if there { name } else { format!("{name} (not found)") };
            let button = ui.add_enabled(there, Button::new(text)).on_hover_text(path.display().to_string());
            if button.clicked() {
                state.begin(Next::Open(path), &ui.ctx().clone());
                ui.close();
            }
        }
    });
    entry(ui, state, Command::OpenDemo, false);
    ui.separator();
    entry(ui, state, Command::Save, false);
    entry(ui, state, Command::SaveAs, false);
    entry(ui, state, Command::ExportReport, false);
    entry(ui, state, Command::SavePicture, false);
    ui.separator();
    entry(ui, state, Command::Quit, false);
}

fn edit_ui(ui: &mut Ui, state: &mut State) {
    entry(ui, state, Command::Undo, false);
    entry(ui, state, Command::Redo, false);
    ui.separator();
    for command in [
        Command::AddScenario,
        Command::DuplicateScenario,
        Command::CopyScenario,
        Command::PasteScenario,
        Command::DeleteScenario,
    ] {
        entry(ui, state, command, false);
    }
    ui.separator();
    entry(ui, state, Command::ChangeAll, state.to_all);
    ui.separator();
    for command in
        [Command::MakeReference, Command::MoveUp, Command::MoveDown, Command::PreviousScenario, Command::NextScenario]
    {
        entry(ui, state, command, false);
    }
}

fn view_ui(ui: &mut Ui, state: &mut State) {
    entry(ui, state, Command::WinterView, state.view == View::Winter);
    entry(ui, state, Command::ColdestView, state.view == View::Coldest);
    entry(ui, state, Command::SideView, state.view == View::Side);
    entry(ui, state, Command::AirView, state.view == View::Air);
    entry(ui, state, Command::ChecksView, state.view == View::Checks);
    entry(ui, state, Command::WintersView, state.view == View::Winters);
    entry(ui, state, Command::MattersView, state.view == View::Matters);
    entry(ui, state, Command::SweepView, state.view == View::Sweep);
    entry(ui, state, Command::BuyView, state.view == View::Buy);
    ui.separator();
    entry(ui, state, Command::Play, state.playback.is_some());
    ui.separator();
    entry(ui, state, Command::Metric, state.prefs.units == UnitSystem::Metric);
    entry(ui, state, Command::Imperial, state.prefs.units == UnitSystem::Imperial);
    ui.separator();
    entry(ui, state, Command::Light, state.prefs.theme == ThemeChoice::Light);
    entry(ui, state, Command::Dark, state.prefs.theme == ThemeChoice::Dark);
    entry(ui, state, Command::SystemTheme, state.prefs.theme == ThemeChoice::System);
}

/// One entry of a menu; `on` marks the choice in force.
pub fn entry(ui: &mut Ui, state: &mut State, command: Command, on: bool) {
    let mut button = Button::new(state.command_text(command)).selected(on);
    if let Some(shortcut) = command.shortcut() {
        button = button.shortcut_text(ui.ctx().format_shortcut(&shortcut));
    }
    let refusal = state.refusal(command);
    ui.set_min_width(230.0);
    let response = ui.add_enabled(refusal.is_none(), button).accessible_name(state.command_text(command));
    let response = match refusal {
        Some(why) => response.on_disabled_hover_text(why),
        None => response,
    };
    if response.clicked() {
        state.queue.push(command);
        ui.close();
    }
}

fn switches_ui(ui: &mut Ui, state: &mut State) {
    let (units, theme) = (state.prefs.units, state.prefs.theme);
    let of_units = [
        ("°C · m", units == UnitSystem::Metric, Command::Metric),
        ("°F · ft", units == UnitSystem::Imperial, Command::Imperial),
    ];
    let of_theme = [
        ("Light", theme == ThemeChoice::Light, Command::Light),
        ("Dark", theme == ThemeChoice::Dark, Command::Dark),
        ("Auto", theme == ThemeChoice::System, Command::SystemTheme),
    ];
    ui.spacing_mut().item_spacing.x = 2.0;
    // From the left, so that the keys come to them as they are read.
    let width = |(name, ..): &(&str, bool, Command)| {
        let text = ui.painter().layout_no_wrap((*name).to_owned(), regular(SMALL), tokens(ui).ink);
        text.size().x + 2.0 * (ui.spacing().button_padding.x + 1.0)
    };
    let whole: f32 = of_units.iter().chain(&of_theme).map(width).sum();
    ui.add_space((ui.available_width() - whole - BETWEEN).max(0.0));
    for (name, on, command) in of_units {
        switch_entry(ui, state, name, on, command);
    }
    ui.add_space(BETWEEN);
    for (name, on, command) in of_theme {
        switch_entry(ui, state, name, on, command);
    }
}

fn switch_entry(ui: &mut Ui, state: &mut State, name: &str, on: bool, command: Command) {
    let t = tokens(ui);
    let text = RichText::new(name).size(SMALL).color(if on { t.accent } else { t.soft });
    let response = ui.add(Button::new(text).frame_when_inactive(false).selected(false));
    response.widget_info(|| egui::WidgetInfo::selected(egui::Role::RadioButton, true, on, name));
    if on {
        let rect = response.rect.shrink2(egui::vec2(8.0, 2.0));
        ui.painter().hline(rect.x_range(), rect.bottom(), egui::Stroke::new(1.5, t.accent));
    }
    if response.on_hover_text(command.text()).clicked() {
        state.queue.push(command);
    }
}
