//! What the metal stands: its range, where it is spoilt, where it is brittle, and what never to do with it.

use crate::theme::{Text, Theme};
use crate::widgets::{heading, row};
use egui::{RichText, Ui};
use fh_work::heat::materials::Forging;

/// Shows the card.
pub(super) fn show(ui: &mut Ui, theme: &Theme, forging: &Forging) {
    heading::show(ui, theme, &format!("{} in the fire", capital(forging.name)));
    let range = format!("{:.0} and {:.0} °C", forging.start_celsius, forging.finish_celsius);
    row::fact(ui, theme, "Forge between", &range);
    row::fact(ui, theme, "Spoilt from", &format!("{:.0} °C", forging.spoilt_celsius));
    if !forging.glows {
        ui.label(RichText::new("▲ It shows no color before it melts.").color(theme.ink));
    }
    for brittle in forging.brittle {
        let words = format!("▲ {:.0} to {:.0} °C: {}.", brittle.from_celsius, brittle.to_celsius, brittle.why);
        ui.label(RichText::new(words).color(theme.ink));
    }
    for never in forging.never {
        ui.label(RichText::new(format!("■ {never}")).text_style(Text::Strong.style()).color(theme.ink));
    }
    let source = format!("Figures: {}.", forging.source);
    ui.label(RichText::new(source).text_style(Text::Small.style()).color(theme.ink_quiet));
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
