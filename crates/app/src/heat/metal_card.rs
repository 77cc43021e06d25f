//! What the metal stands: its range, where it is spoilt, where it is brittle, whether it welds, and what never to do with it.

use crate::theme::{Text, Theme};
use crate::widgets::{heading, row};
use egui::{RichText, Ui};
use fh_core::describe::upper_first;
use fh_core::material::{Forging, Material, Weld};

/// Shows the card.
pub(super) fn show(ui: &mut Ui, theme: &Theme, metal: &Material) {
    heading::show(ui, theme, &format!("{} in the fire", upper_first(metal.name)));
    for (name, words) in facts(metal) {
        row::fact(ui, theme, name, &words);
    }
    for words in warnings(metal) {
        ui.label(RichText::new(format!("▲ {words}")).color(theme.ink));
    }
    for never in metal.nevers() {
        ui.label(RichText::new(format!("■ {never}")).text_style(Text::Strong.style()).color(theme.ink));
    }
    let source = format!("Figures: {}. Welding heat, brittle ranges and the rest from memory.", metal.heats_source);
    ui.label(RichText::new(source).text_style(Text::Small.style()).color(theme.ink_quiet));
}

/// Its heats, and what comes of water.
fn facts(metal: &Material) -> Vec<(&'static str, String)> {
    let mut facts = Vec::new();
    if let Some(heat) = metal.forging {
        let Forging { usual_celsius, finish_celsius, light_celsius, most_celsius, spoilt_celsius } = heat;
        facts.push(("Forge between", format!("{:.0} and {finish_celsius:.0} °C", metal.no_hotter(usual_celsius))));
        facts.push(("Light work", format!("down to {light_celsius:.0} °C")));
        facts.push(("At the most", format!("{most_celsius:.0} °C, for quick work")));
        let but = if metal.weld.is_some() { ", except at a welding heat" } else { "" };
        facts.push(("Burns above", format!("{spoilt_celsius:.0} °C{but}")));
    }
    facts.push(("Welding heat", metal.weld.map_or_else(|| "none".to_owned(), weld_words)));
    let may = if metal.quench.may { "may be" } else { "no" };
    facts.push(("Quenching", format!("{may}: it {}", metal.quench.does)));
    facts
}

fn weld_words(weld: Weld) -> String {
    format!("{:.0} to {:.0} °C, {}", weld.from_celsius, weld.to_celsius, weld.looks)
}

fn warnings(metal: &Material) -> Vec<String> {
    let mut all = Vec::new();
    if metal.forging.is_none() {
        all.push("It is not forged hot.".to_owned());
    }
    if !metal.glows {
        all.push("It shows no colour before it melts.".to_owned());
    }
    for brittle in metal.brittle {
        all.push(format!("{:.0} to {:.0} °C: {}.", brittle.from_celsius, brittle.to_celsius, brittle.why));
    }
    match metal.weld {
        None => all.push(format!("It does not weld in the fire. {}", metal.instead_of_weld)),
        Some(weld) => all.extend(weld.hard.map(|hard| format!("Hard to weld: {hard}"))),
    }
    all.extend(metal.fume.map(str::to_owned));
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use fh_core::material::find;

    fn told(name: &str) -> String {
        let metal = find(name).map(|metal| (facts(metal), warnings(metal)));
        let (facts, warnings) = metal.unwrap_or_default();
        let facts = facts.into_iter().map(|(name, words)| format!("{name} {words}"));
        facts.chain(warnings).collect::<Vec<_>>().join("\n")
    }

    #[test]
    fn the_card_tells_the_smiths_figure_and_the_limit() {
        let mild = told("mild steel");
        assert!(mild.contains("Forge between 1200 and 850 °C") && mild.contains("At the most 1250 °C"), "{mild}");
        assert!(mild.contains("Burns above 1300 °C, except at a welding heat"), "{mild}");
        assert!(mild.contains("Welding heat 1260 to 1350 °C"), "{mild}");
    }

    #[test]
    fn the_card_of_a_metal_that_does_not_weld_says_what_to_do_instead() {
        let brass = told("brass");
        assert!(brass.contains("does not weld in the fire. Rivet it, braze it"), "{brass}");
        assert!(brass.contains("300 to 600 °C") && brass.contains("lead"), "{brass}");
        assert!(told("phosphor bronze").contains("not forged hot"));
    }
}
