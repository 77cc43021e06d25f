//! The head of a group in a panel.

use crate::theme::{Text, Theme, space};
use egui::{RichText, Sense, Ui, vec2};

/// A hairline and the words below it.
pub(crate) fn show(ui: &mut Ui, theme: &Theme, words: &str) {
    ui.add_space(space::GAP);
    let (line, _) = ui.allocate_exact_size(vec2(ui.available_width(), 1.0), Sense::hover());
    ui.painter().hline(line.x_range(), line.center().y, (theme.hairline(), theme.rule));
    ui.add_space(space::TIGHT);
    ui.label(RichText::new(words).text_style(Text::Heading.style()).color(theme.ink));
}
