//! Tokens, fonts and text sizes: one place for every colour of the window.

use egui::{
    Color32, CornerRadius, FontData, FontDefinitions, FontFamily, FontId, Margin, Shadow, Stroke, Style, TextStyle,
    Theme, Vec2, style::Selection,
};
use std::sync::Arc;

/// The colours of one theme.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tokens {
    /// Background of the window.
    pub paper: Color32,
    /// Background of what lies on the paper: the chosen card, menus.
    pub raised: Color32,
    /// Background of an entry field.
    pub field: Color32,
    /// Text and drawing.
    pub ink: Color32,
    /// Labels and secondary text.
    pub soft: Color32,
    /// Hairlines.
    pub hairline: Color32,
    /// Edges of controls.
    pub outline: Color32,
    /// This scenario, this hour.
    pub accent: Color32,
    /// Background of a selection.
    pub accent_wash: Color32,
    /// What is wrong or falls short.
    pub warn: Color32,
}

const LIGHT: Tokens = Tokens {
    paper: Color32::from_rgb(0xFA, 0xF8, 0xF4),
    raised: Color32::from_rgb(0xF1, 0xED, 0xE4),
    field: Color32::from_rgb(0xFF, 0xFF, 0xFF),
    ink: Color32::from_rgb(0x1F, 0x2A, 0x30),
    soft: Color32::from_rgb(0x57, 0x62, 0x68),
    hairline: Color32::from_rgb(0xD9, 0xD3, 0xC6),
    outline: Color32::from_rgb(0x8A, 0x84, 0x77),
    accent: Color32::from_rgb(0xB5, 0x47, 0x1B),
    accent_wash: Color32::from_rgb(0xF3, 0xDF, 0xD2),
    warn: Color32::from_rgb(0x9B, 0x1B, 0x3A),
};

const DARK: Tokens = Tokens {
    paper: Color32::from_rgb(0x14, 0x1A, 0x1F),
    raised: Color32::from_rgb(0x1E, 0x26, 0x2D),
    field: Color32::from_rgb(0x23, 0x2C, 0x34),
    ink: Color32::from_rgb(0xE6, 0xE9, 0xEA),
    soft: Color32::from_rgb(0x9F, 0xAB, 0xB2),
    hairline: Color32::from_rgb(0x33, 0x3E, 0x47),
    outline: Color32::from_rgb(0x74, 0x80, 0x8A),
    accent: Color32::from_rgb(0xF0, 0x8A, 0x4B),
    accent_wash: Color32::from_rgb(0x4A, 0x31, 0x23),
    warn: Color32::from_rgb(0xFF, 0x8F, 0xA3),
};

/// The tokens of the theme in use.
#[must_use]
pub fn tokens(ui: &egui::Ui) -> Tokens {
    if ui.visuals().dark_mode { DARK } else { LIGHT }
}

/// The tokens of a theme.
#[must_use]
pub fn tokens_of(theme: Theme) -> Tokens {
    match theme {
        Theme::Light => LIGHT,
        Theme::Dark => DARK,
    }
}

/// Family name of the semibold weight.
const SEMIBOLD: &str = "semibold";

/// Text of hints, axes and units.
pub const SMALL: f32 = 12.5;
/// Text of the body.
pub const BODY: f32 = 14.5;
/// Text of headings.
pub const HEADING: f32 = 17.0;
/// The one large figure.
pub const FIGURE: f32 = 32.0;
/// Height of a row of controls.
pub const ROW: f32 = 26.0;

/// The semibold weight in a size.
#[must_use]
pub fn semibold(size: f32) -> FontId {
    FontId::new(size, FontFamily::Name(SEMIBOLD.into()))
}

/// The regular weight in a size.
#[must_use]
pub fn regular(size: f32) -> FontId {
    FontId::new(size, FontFamily::Proportional)
}

/// Installs fonts and both themes.
pub fn install(ctx: &egui::Context) {
    ctx.set_fonts(fonts());
    ctx.options_mut(|options| options.fallback_theme = Theme::Light);
    for theme in [Theme::Light, Theme::Dark] {
        ctx.style_mut_of(theme, |style| dress(style, &tokens_of(theme)));
    }
}

fn fonts() -> FontDefinitions {
    let mut fonts = FontDefinitions::default();
    let regular = include_bytes!("../../assets/fonts/SourceSans3-Regular.ttf");
    let semibold = include_bytes!("../../assets/fonts/SourceSans3-SemiBold.ttf");
    fonts.font_data.insert("regular".to_owned(), Arc::new(FontData::from_static(regular)));
    fonts.font_data.insert(SEMIBOLD.to_owned(), Arc::new(FontData::from_static(semibold)));
    let fallback = fonts.families.get(&FontFamily::Proportional).cloned().unwrap_or_default();
    let behind = |first: &str| std::iter::once(first.to_owned()).chain(fallback.iter().cloned()).collect::<Vec<_>>();
    fonts.families.insert(FontFamily::Name(SEMIBOLD.into()), behind(SEMIBOLD));
    fonts.families.insert(FontFamily::Proportional, behind("regular"));
    fonts.families.insert(FontFamily::Monospace, behind("regular"));
    fonts
}

fn dress(style: &mut Style, t: &Tokens) {
    style.text_styles = [
        (TextStyle::Small, regular(SMALL)),
        (TextStyle::Body, regular(BODY)),
        (TextStyle::Button, regular(BODY)),
        (TextStyle::Monospace, regular(BODY)),
        (TextStyle::Heading, semibold(HEADING)),
    ]
    .into();
    let spacing = &mut style.spacing;
    spacing.item_spacing = Vec2::new(8.0, 4.0);
    spacing.button_padding = Vec2::new(8.0, 3.0);
    spacing.interact_size = Vec2::new(32.0, ROW);
    spacing.indent = 12.0;
    spacing.menu_margin = Margin::same(8);
    spacing.window_margin = Margin::same(20);
    spacing.combo_width = 60.0;
    spacing.icon_width = 16.0;
    spacing.icon_width_inner = 10.0;
    spacing.tooltip_width = 340.0;
    spacing.scroll = egui::style::ScrollStyle { bar_width: 6.0, ..egui::style::ScrollStyle::floating() };
    style.interaction.tooltip_delay = 0.35;
    style.animation_time = 0.1;
    dress_visuals(&mut style.visuals, t);
}

fn dress_visuals(v: &mut egui::Visuals, t: &Tokens) {
    v.override_text_color = None;
    v.weak_text_color = Some(t.soft);
    v.panel_fill = t.paper;
    v.window_fill = t.paper;
    v.window_stroke = Stroke::new(1.0, t.hairline);
    v.extreme_bg_color = t.field;
    v.faint_bg_color = t.raised;
    v.code_bg_color = t.raised;
    v.warn_fg_color = t.warn;
    v.error_fg_color = t.warn;
    v.hyperlink_color = t.accent;
    v.selection = Selection { bg_fill: t.accent_wash, stroke: Stroke::new(1.0, t.ink) };
    v.window_corner_radius = CornerRadius::same(6);
    v.menu_corner_radius = CornerRadius::same(4);
    let shadow = Shadow { offset: [0, 4], blur: 16, spread: 0, color: Color32::from_black_alpha(40) };
    v.window_shadow = shadow;
    v.popup_shadow = shadow;
    v.indent_has_left_vline = false;
    v.slider_trailing_fill = true;
    v.handle_shape = egui::style::HandleShape::Circle;
    v.text_cursor.stroke = Stroke::new(1.5, t.accent);
    v.disabled_alpha = 0.45;
    let w = &mut v.widgets;
    for (state, fill, line, text) in [
        (&mut w.noninteractive, t.paper, t.hairline, t.ink),
        (&mut w.inactive, t.field, t.outline, t.ink),
        (&mut w.hovered, t.raised, t.soft, t.ink),
        (&mut w.active, t.raised, t.accent, t.ink),
        (&mut w.open, t.raised, t.soft, t.ink),
    ] {
        state.bg_fill = fill;
        state.weak_bg_fill = fill;
        state.bg_stroke = Stroke::new(1.0, line);
        state.fg_stroke = Stroke::new(1.0, text);
        state.corner_radius = CornerRadius::same(3);
        state.expansion = 0.0;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn contrast(a: Color32, b: Color32) -> f64 {
        let rgb = |c: Color32| [c.r(), c.g(), c.b()];
        crate::colours::contrast(rgb(a), rgb(b))
    }

    const THEMES: [Theme; 2] = [Theme::Light, Theme::Dark];

    #[test]
    fn text_is_readable_on_every_surface_of_both_themes() {
        // WCAG 2.2, criterion 1.4.3: 4.5:1 for text. A selection and the toast turn ink and paper round.
        for theme in THEMES {
            let t = tokens_of(theme);
            let on_surfaces = [t.paper, t.raised, t.field]
                .into_iter()
                .flat_map(|surface| [t.ink, t.soft, t.accent, t.warn].map(|text| (text, surface)));
            for (text, surface) in on_surfaces.chain([(t.ink, t.accent_wash), (t.paper, t.ink), (t.paper, t.warn)]) {
                let ratio = contrast(text, surface);
                assert!(ratio >= 4.5, "{theme:?}: {text:?} on {surface:?} is {ratio:.2}");
            }
        }
    }

    #[test]
    fn controls_and_marks_stand_out_in_both_themes() {
        // WCAG 2.2, criterion 1.4.11: 3:1 for what it takes to see a control, its focus and its state, and for graphics.
        for theme in THEMES {
            let t = tokens_of(theme);
            let lines = [t.outline, t.soft, t.accent, t.warn];
            let marks = (0..super::super::palette::MARKS).map(|slot| super::super::palette::scenario(theme, slot));
            for line in lines.into_iter().chain(marks) {
                for surface in [t.paper, t.raised] {
                    let ratio = contrast(line, surface);
                    assert!(ratio >= 3.0, "{theme:?}: {line:?} on {surface:?} is {ratio:.2}");
                }
            }
            assert!(contrast(t.outline, t.field) >= 3.0, "{theme:?}: the box of a switch");
        }
    }

    #[test]
    fn digits_have_one_width() {
        let ctx = egui::Context::default();
        install(&ctx);
        let mut output = ctx.run_ui(egui::RawInput::default(), |ui| {
            for font in [regular(BODY), semibold(FIGURE)] {
                let width = |c: char| ui.ctx().fonts_mut(|f| f.glyph_width(&font, c));
                let zero = width('0');
                assert!(('1'..='9').all(|c| (width(c) - zero).abs() < 1e-4));
            }
        });
        output.textures_delta.clear();
    }
}
