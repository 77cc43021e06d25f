//! The one look of the program: its colors, its text sizes, its spacing. Nothing else in this crate names a color or a size.

mod fonts;
mod metal;
mod palette;
mod paper;
pub mod space;
mod style;
mod text;

pub use fonts::install as install_fonts;
pub(crate) use metal::{UNTINTED, own_colors, picture, see_through};
pub use palette::Look;
pub(crate) use paper::{paper, paper_font};
pub use text::Text;

use egui::{Color32, FontId};

/// The colors of a look and the size of its text.
#[derive(Clone, Debug, PartialEq)]
pub struct Theme {
    /// Behind everything: where the strips lie.
    pub ground: Color32,
    /// Panels beside the strips.
    pub panel: Color32,
    /// What stands out from a panel: fields, buttons, cards.
    pub panel_raised: Color32,
    /// Hairlines.
    pub rule: Color32,
    /// The edges of fields and buttons.
    pub edge: Color32,
    /// Text.
    pub ink: Color32,
    /// Text that stands back: units, hints, sizes that follow.
    pub ink_quiet: Color32,
    /// The starting bar.
    pub stock_fill: Color32,
    /// The edge of the starting bar.
    pub stock_edge: Color32,
    /// The forged bar.
    pub forged_fill: Color32,
    /// The edge of the forged bar.
    pub forged_edge: Color32,
    /// Parts that are not in the finished piece; hatched as well.
    pub hold_fill: Color32,
    /// The bands that join the bar to what it becomes.
    pub band: Color32,
    /// The band of the selected segment.
    pub band_selected: Color32,
    /// What is selected or being moved, and nothing else.
    pub accent: Color32,
    /// Text on the accent.
    pub on_accent: Color32,
    /// What is hot in a step of the order; said in words as well. No other thing is orange.
    pub hot: Color32,
    /// A bar too cold to glow, where it is shaded by its heat.
    pub heat_cold: Color32,
    /// A bar that glows red there.
    pub heat_red: Color32,
    /// The hottest bar there: pale yellow, as a welding heat is. The lighter a shade, the hotter, in every look.
    pub heat_pale: Color32,
    /// Marks on the bar.
    pub mark: Color32,
    /// Findings that stop the work.
    pub stop: Color32,
    /// Findings that warn.
    pub warning: Color32,
    /// Findings worth knowing.
    pub note: Color32,
    /// The ring around what has the keyboard.
    pub focus: Color32,
    /// A choice that is in force, such as the view that is shown.
    pub chosen: Color32,
    /// Whether light text stands on dark ground.
    pub dark: bool,
    /// Whether edges are drawn heavier so that nothing rests on a shade.
    pub high_contrast: bool,
    /// The size of text: 1 is 100 %.
    pub scale: f32,
}

impl Theme {
    /// A look with text of so many times its normal size.
    pub fn new(look: Look, scale: f32) -> Self {
        palette::theme(look, scale.clamp(1.0, 2.0))
    }

    /// The font of a kind of text.
    pub fn font(&self, text: Text) -> FontId {
        text.font(self.scale)
    }

    /// A length on the screen that grows with the text.
    pub fn scaled(&self, points: f32) -> f32 {
        (points * self.scale).round()
    }

    /// The width of an edge: a hairline, or more where contrast is asked for.
    pub fn hairline(&self) -> f32 {
        if self.high_contrast { space::LINE } else { space::HAIRLINE }
    }

    /// Makes the program look like this. The fonts must be installed.
    pub fn apply(&self, ctx: &egui::Context) {
        ctx.set_theme(if self.dark { egui::Theme::Dark } else { egui::Theme::Light });
        ctx.all_styles_mut(|style| style::set(style, self));
    }
}
