//! Each command does what it says: from the menu, and by its keys.

use super::window::Window;
use super::{UNITS, demo};
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use warmfold::gui::command::Command;
use warmfold::gui::state::{Leaflet, View};
use warmfold::gui::{Ask, State};
use warmfold::model::Study;
use warmfold::storage;
use warmfold::units::UnitSystem;

/// Which menu has a command.
fn menu_of(command: Command) -> &'static str {
    let place = Command::ALL.iter().position(|c| *c == command).unwrap();
    let first = |command| Command::ALL.iter().position(|c| *c == command).unwrap();
    match place {
        p if p < first(Command::Undo) => "File",
        p if p < first(Command::Metric) => "Edit",
        p if p < first(Command::Guide) => "View",
        _ => "Help",
    }
}

/// The demo with three weeks of winter, so that its seasons are there at once.
fn short() -> Study {
    let mut study = storage::demo().unwrap();
    (study.season.from_month, study.season.from_day, study.season.to_month, study.season.to_day) = (1, 1, 1, 21);
    study.many_winters.count = 20;
    study
}

/// The study as it was opened, on its middle scenario, ready for the command to do something.
fn prepare(h: &mut Window, command: Command, units: UnitSystem) {
    let (study, ctx) = (short(), h.ctx.clone());
    let state = h.state_mut();
    state.open(study, None);
    state.document.draft.selected = 1;
    state.prefs.units = units;
    state.filing.dialog = None;
    (state.leaflet, state.toast, state.playback, state.renaming) = (None, None, None, None);
    state.view = if command == Command::WinterView { View::Checks } else { View::Winter };
    (state.may_close, state.to_all) = (false, false);
    state.workings.topic = None;
    if matches!(command, Command::Undo | Command::Redo) {
        state.queue.push(Command::DuplicateScenario);
    }
    h.run_steps(3);
    if command == Command::Redo {
        h.state_mut().queue.push(Command::Undo);
        h.run_steps(3);
    }
    // A theme that was chosen before is chosen anew.
    ctx.set_theme(egui::ThemePreference::System);
    // Commands need the seasons, and no more than them.
    let start = std::time::Instant::now();
    h.run_steps(2);
    while h.state().board.working() {
        assert!(start.elapsed() < std::time::Duration::from_secs(120), "the seasons did not come");
        std::thread::sleep(std::time::Duration::from_millis(5));
        h.step();
    }
}

fn by_menu(h: &mut Window, command: Command) {
    h.get_by_role_and_label(Role::Button, menu_of(command)).click();
    h.run_steps(3);
    let text = h.state().command_text(command);
    // A menu hangs from the top; another control of the same name stands below it.
    let entries = h.get_all_by_role_and_label(Role::Button, &text);
    entries.min_by(|a, b| a.rect().top().total_cmp(&b.rect().top())).unwrap().click();
}

/// What the scenarios are called, in their order.
fn names(study: &Study) -> Vec<String> {
    study.scenarios.iter().map(|s| s.name.clone()).collect()
}

/// Whether a command has done what it is for.
fn done(command: Command, before: &Study, h: &Window, units: UnitSystem) -> bool {
    let state: &State = h.state();
    let (draft, ctx) = (&state.document.draft, &h.ctx);
    let (old, new) = (names(before), names(&draft.study));
    let asks = |ask| state.filing.dialog.as_ref().is_some_and(|dialog| dialog.ask == ask);
    let moved = |place: usize| {
        new == {
            let mut turned = old.clone();
            turned.swap(1, place);
            turned
        }
    };
    let says = |text: &str| state.toast.as_ref().is_some_and(|toast| toast.text.contains(text));
    let theme = |theme| ctx.options(|o| o.theme_preference) == theme;
    let kept = matches!(command, Command::Metric | Command::Imperial) || state.prefs.units == units;
    let effect = match command {
        Command::New => new.len() == 1 && old.len() > 1,
        Command::OpenDemo => draft.study == storage::demo().unwrap() && draft.selected() == 0,
        Command::Open => asks(Ask::Open),
        // A study that has no file yet asks for one.
        Command::Save | Command::SaveAs => asks(Ask::Save),
        Command::ExportReport => asks(Ask::Report),
        Command::SavePicture => asks(Ask::Picture),
        Command::Quit => state.may_close,
        Command::Undo => new.len() == old.len() - 1 && says("Undone"),
        Command::Redo => new.len() == old.len() + 1 && says("Done again"),
        Command::AddScenario => new.len() == old.len() + 1 && new.last().unwrap() == "New scenario",
        Command::DuplicateScenario => new.len() == old.len() + 1 && draft.selected() == 2,
        Command::CopyScenario => new == old && says("as text"),
        Command::PasteScenario => new == old && state.refusal(command).is_none(),
        Command::DeleteScenario => new.len() == old.len() - 1 && !new.contains(&old[1]),
        Command::MakeReference => draft.study.reference == 1 && before.reference == 0,
        Command::ChangeAll => state.to_all,
        Command::MoveUp => moved(0) && draft.selected() == 0,
        Command::MoveDown => moved(2) && draft.selected() == 2,
        Command::PreviousScenario => new == old && draft.selected() == 0,
        Command::NextScenario => new == old && draft.selected() == 2,
        Command::Metric => state.prefs.units == UnitSystem::Metric,
        Command::Imperial => state.prefs.units == UnitSystem::Imperial,
        Command::Light => theme(egui::ThemePreference::Light),
        Command::Dark => theme(egui::ThemePreference::Dark),
        Command::SystemTheme => theme(egui::ThemePreference::System),
        Command::WinterView => state.view == View::Winter,
        Command::ColdestView => state.view == View::Coldest,
        Command::SideView => state.view == View::Side,
        Command::AirView => state.view == View::Air,
        Command::ChecksView => state.view == View::Checks,
        Command::WintersView => state.view == View::Winters,
        Command::MattersView => state.view == View::Matters,
        Command::SweepView => state.view == View::Sweep,
        Command::BuyView => state.view == View::Buy,
        Command::Play => state.playback.is_some(),
        Command::Guide => state.leaflet == Some(Leaflet::Guide),
        Command::Workings => state.workings.topic.is_some(),
        Command::About => state.leaflet == Some(Leaflet::About),
        Command::Cautions => state.leaflet == Some(Leaflet::Cautions),
        Command::Evidence => state.leaflet == Some(Leaflet::Evidence),
        Command::Shortcuts => state.leaflet == Some(Leaflet::Shortcuts),
    };
    kept && effect
}

#[test]
fn each_command_works_from_the_menu_and_by_its_keys_in_both_units() {
    let mut h = demo([1280.0, 1200.0]);
    for (units, switch) in [UnitSystem::Imperial, UnitSystem::Metric].into_iter().zip(UNITS) {
        for command in Command::ALL {
            prepare(&mut h, command, units);
            let before = h.state().document.draft.study.clone();
            by_menu(&mut h, command);
            h.run_steps(3);
            assert!(done(command, &before, &h, units), "{command:?} from the menu, {switch}");
            let Some(keys) = command.shortcut() else { continue };
            prepare(&mut h, command, units);
            let before = h.state().document.draft.study.clone();
            h.key_press_modifiers(keys.modifiers, keys.logical_key);
            h.run_steps(3);
            assert!(done(command, &before, &h, units), "{command:?} by its keys, {switch}");
        }
    }
}
