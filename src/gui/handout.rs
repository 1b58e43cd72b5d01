//! What a single plot or list hands out: its picture and its figures, from a small button and on a right-click.

use super::filing::Ask;
use super::marks::{self, Icon};
use super::state::State;
use crate::figures::Figures;
use egui::{Id, Popup, Rect, SetOpenCommand, Ui, UiBuilder, pos2, vec2};
use std::path::PathBuf;

/// Makes the figures of a plot, on another thread.
pub type Make = Box<dyn FnOnce() -> Figures + Send>;

/// What waits for the name of its file.
pub struct Handout {
    /// What the plot is called; the suggested file is named after it.
    pub name: String,
    content: Content,
}

enum Content {
    Picture(Id),
    Figures(Make),
}

impl Handout {
    /// Ending of its file.
    #[must_use]
    pub fn ending(&self) -> &'static str {
        match self.content {
            Content::Picture(_) => "png",
            Content::Figures(_) => "csv",
        }
    }
}

/// What was chosen from the menu.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Wish {
    ShowFigures,
    SavePicture,
    CopyPicture,
    SaveFigures,
    CopyFigures,
}

/// The entries of the menu.
const WISHES: [(Wish, &str); 5] = [
    (Wish::ShowFigures, "Show figures as table…"),
    (Wish::SavePicture, "Save picture…"),
    (Wish::CopyPicture, "Copy picture"),
    (Wish::SaveFigures, "Save figures as CSV…"),
    (Wish::CopyFigures, "Copy figures as CSV"),
];

/// Size of the button at the upper right corner; a title must leave this room.
pub const BUTTON: egui::Vec2 = vec2(22.0, 20.0);

/// Draws a plot or list that hands out its picture and its figures. `legend` is drawn elsewhere and belongs to the
/// picture; `figures` is asked only when they are wanted.
pub fn handout_ui<R>(
    ui: &mut Ui,
    state: &mut State,
    name: &str,
    legend: Option<Rect>,
    figures: impl FnOnce() -> Make,
    add: impl FnOnce(&mut Ui, &mut State) -> R,
) -> R {
    let inner = ui.scope(|ui| add(ui, state));
    let rect = inner.response.rect.intersect(ui.clip_rect());
    let id = Id::unique(("handout", name));
    ui.data_mut(|data| data.insert_temp(id, legend.into_iter().chain([rect]).collect::<Vec<Rect>>()));
    let at = Rect::from_min_size(pos2(rect.right() - BUTTON.x, rect.top()), BUTTON);
    let mut corner = ui.new_child(UiBuilder::new().max_rect(at).id_salt(id));
    if state.export.is_some() {
        // It is no part of the picture that is being taken.
        corner.set_opacity(0.0);
    }
    let button = marks::icon_button_sized(&mut corner, Icon::More, &format!("Save or copy {name}"), BUTTON);
    let mut wish = None;
    Popup::menu(&button).show(|ui| wish = menu_ui(ui));
    let pointed = ui.rect_contains_pointer(rect) && ui.input(|i| i.pointer.secondary_clicked());
    let opens = pointed.then_some(SetOpenCommand::Bool(true));
    let beside = Popup::menu(&button).id(id.with("beside the pointer")).open_memory(opens).at_pointer_fixed();
    beside.show(|ui| wish = wish.or(menu_ui(ui)));
    if let Some(wish) = wish {
        let ctx = ui.ctx().clone();
        state.hand_out(wish, name, id, figures, &ctx);
    }
    inner.inner
}

fn menu_ui(ui: &mut Ui) -> Option<Wish> {
    let mut wish = None;
    for (entry, text) in WISHES {
        if ui.button(text).clicked() {
            wish = Some(entry);
            ui.close();
        }
    }
    wish
}

impl State {
    fn hand_out(&mut self, wish: Wish, name: &str, id: Id, figures: impl FnOnce() -> Make, ctx: &egui::Context) {
        match wish {
            Wish::ShowFigures if self.export.is_some() => self.still_writing(ctx),
            Wish::ShowFigures => self.show_figures(name, figures(), ctx),
            Wish::SavePicture => self.ask_for_handout(name, Content::Picture(id), ctx),
            Wish::SaveFigures => self.save_figures(name, figures(), ctx),
            Wish::CopyPicture => self.take_handout(Content::Picture(id), None, ctx),
            Wish::CopyFigures => self.copy_figures(figures(), ctx),
        }
    }

    /// Asks where a table is to be written, and writes it.
    pub fn save_figures(&mut self, name: &str, make: Make, ctx: &egui::Context) {
        self.ask_for_handout(name, Content::Figures(make), ctx);
    }

    /// Puts a table on the clipboard.
    pub fn copy_figures(&mut self, make: Make, ctx: &egui::Context) {
        self.take_handout(Content::Figures(make), None, ctx);
    }

    fn still_writing(&mut self, ctx: &egui::Context) {
        self.say(ctx, "The last one is still being written", false);
    }

    fn ask_for_handout(&mut self, name: &str, content: Content, ctx: &egui::Context) {
        self.handout = Some(Handout { name: name.to_owned(), content });
        self.ask_path(Ask::Handout, ctx);
    }

    /// Writes what waited for the name of its file.
    pub fn write_handout(&mut self, path: PathBuf, ctx: &egui::Context) {
        if let Some(handout) = self.handout.take() {
            self.take_handout(handout.content, Some(path), ctx);
        }
    }

    fn take_handout(&mut self, content: Content, path: Option<PathBuf>, ctx: &egui::Context) {
        if self.export.is_some() {
            return self.still_writing(ctx);
        }
        match content {
            Content::Picture(id) => {
                let parts = ctx.data(|data| data.get_temp::<Vec<Rect>>(id)).unwrap_or_default();
                self.take_picture(parts, path, ctx);
            }
            Content::Figures(make) => {
                self.make_beside("figures", path, ctx, move || make().csv().map_err(|error| error.to_string()));
            }
        }
    }
}
