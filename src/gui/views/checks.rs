//! Checks: what could hurt someone or spoil the plan, the worst first, each with figure, rule, source and remedy.

use crate::checks::{Check, Grade, Mend, count};
use crate::format;
use crate::gui::board::Standing;
use crate::gui::editor::{SITE, Section};
use crate::gui::marks;
use crate::gui::state::State;
use crate::gui::theme::{BODY, SMALL, Tokens, regular, semibold, tokens};
use crate::safety::cautions::LAST_WORD;
use egui::{Align, Label, Layout, RichText, Sense, Stroke, Ui, pos2, vec2};

/// Width of the mark before a check.
const MARK: f32 = 24.0;
/// Widest that the rows grow: longer lines are hard to read.
const WIDEST: f32 = 980.0;

/// The view.
pub fn checks_ui(ui: &mut Ui, state: &mut State) {
    let t = tokens(ui);
    let Some((checks, standing)) = state.chosen_checks() else {
        ui.label(RichText::new("This scenario has no figures yet. Mend what is marked in the editor").color(t.soft));
        return;
    };
    let name = state.document.draft.scenario().map(|s| format::short_name(&s.name)).unwrap_or_default();
    ui.add(Label::new(finding(&name, &checks)).truncate());
    if standing == Standing::Stale {
        ui.set_opacity(0.6);
    }
    egui::ScrollArea::vertical().id_salt("checks").auto_shrink([false, false]).show(ui, |ui| {
        ui.set_max_width((ui.available_width() - 14.0).min(WIDEST));
        ui.spacing_mut().item_spacing.y = 1.0;
        for grade in Grade::ALL {
            let of_grade: Vec<&Check> = checks.iter().filter(|check| check.grade == grade).collect();
            if of_grade.is_empty() {
                continue;
            }
            heading_ui(ui, grade, of_grade.len(), &t);
            for check in of_grade {
                check_ui(ui, state, check, &t);
            }
        }
        ui.add_space(8.0);
        ui.label(RichText::new(LAST_WORD).size(SMALL).color(t.soft));
        ui.add_space(8.0);
    });
}

/// One sentence that says what there is to see.
fn finding(name: &str, checks: &[Check]) -> String {
    let of = |grade| count(checks, grade);
    let (stop, look, fine) = (of(Grade::Stop), of(Grade::Look), of(Grade::Fine));
    match stop {
        0 => format!("{name}: nothing to stop, {look} to look at, {fine} within their rules"),
        _ => format!("{name}: {stop} to stop for, {look} to look at, {fine} within their rules"),
    }
}

fn colour(grade: Grade, t: &Tokens) -> egui::Color32 {
    match grade {
        Grade::Stop => t.warn,
        Grade::Look => t.accent,
        Grade::Fine => t.soft,
    }
}

fn heading_ui(ui: &mut Ui, grade: Grade, count: usize, t: &Tokens) {
    ui.add_space(8.0);
    let text = format!("{} ({count})", grade.meaning());
    ui.add(Label::new(RichText::new(text).font(semibold(SMALL)).color(colour(grade, t))).truncate());
}

fn check_ui(ui: &mut Ui, state: &mut State, check: &Check, t: &Tokens) {
    ui.add_space(4.0);
    let width = ui.available_width();
    let top = ui.cursor().min;
    ui.painter().hline(top.x..=top.x + width, top.y, Stroke::new(1.0, t.hairline));
    ui.add_space(4.0);
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 0.0;
        let (rect, response) = ui.allocate_exact_size(vec2(MARK, 20.0), Sense::hover());
        let centre = pos2(rect.left() + 8.0, rect.center().y + 3.0);
        marks::paint_grade(ui.painter(), centre, check.grade, colour(check.grade, t));
        response.on_hover_text(check.grade.meaning());
        ui.vertical(|ui| {
            ui.spacing_mut().item_spacing.y = 1.0;
            title_ui(ui, check, t);
            let soft = |text: String| Label::new(RichText::new(text).size(SMALL).color(t.soft)).wrap();
            ui.add(soft(format!("{}. {}", check.rule, check.source)));
            remedy_ui(ui, state, check, t);
        });
    });
}

/// Name and figure; they share the line where both fit.
fn title_ui(ui: &mut Ui, check: &Check, t: &Tokens) {
    let name = format!("{}: {}", check.grade.name(), check.name);
    let measure = |text: &str, font| ui.painter().layout_no_wrap(text.to_owned(), font, t.ink).size().x;
    let both = measure(&name, semibold(BODY)) + measure(&check.figure, regular(BODY)) + 16.0;
    let name = Label::new(RichText::new(name).font(semibold(BODY)).color(t.ink));
    let figure = Label::new(RichText::new(&check.figure).font(regular(BODY)).color(t.ink));
    if both > ui.available_width() {
        ui.add(name.wrap());
        ui.add(figure.wrap());
        return;
    }
    ui.horizontal(|ui| {
        ui.add(name);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| ui.add(figure));
    });
}

/// What to do, and the way to where it is done.
fn remedy_ui(ui: &mut Ui, state: &mut State, check: &Check, t: &Tokens) {
    let section = section_of(check.mend);
    let title = section.map_or(SITE, Section::title);
    ui.horizontal_top(|ui| {
        let button = egui::Button::new(RichText::new(title).size(SMALL).color(t.accent)).small();
        let button_width = ui.painter().layout_no_wrap(title.to_owned(), regular(SMALL), t.ink).size().x + 24.0;
        let room = ui.available_width() - button_width;
        ui.allocate_ui_with_layout(vec2(room, 0.0), Layout::top_down(Align::Min), |ui| {
            ui.set_width(room);
            ui.add(Label::new(RichText::new(&check.remedy).size(SMALL).color(t.ink)).wrap());
        });
        ui.with_layout(Layout::right_to_left(Align::Min), |ui| {
            let response = ui.add(button).on_hover_text(format!("Open {title} in the editor"));
            let said = format!("Open {title} for {}", check.name);
            response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &said));
            if response.clicked() {
                state.sought = section;
                state.site_sought = section.is_none();
                ui.ctx().request_repaint();
            }
        });
    });
}

/// The editor's section in which a check is mended; none for that of the place, which belongs to the study.
fn section_of(mend: Mend) -> Option<Section> {
    match mend {
        Mend::Covering => Some(Section::Covering),
        Mend::Water => Some(Section::Water),
        Mend::Heater => Some(Section::Heater),
        Mend::Crop => Some(Section::Crop),
        Mend::Site => None,
    }
}
