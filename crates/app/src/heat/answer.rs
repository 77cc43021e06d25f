//! The answer in words: whether one heat is enough, how many it takes, why, and how far that can be trusted.

use crate::state::{Desk, OrderDesk, step_words};
use crate::theme::{Text, Theme};
use crate::widgets::heading;
use egui::{Color32, RichText, Ui};
use fh_core::describe::upper_first;
use fh_core::material::Material;
use fh_core::plan::Operation;
use fh_heat::estimate::Estimate;
use fh_work::{OneHeat, Verdict, WorkedStep};

/// Shows the answer for a step that is done hot.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, one: &OneHeat, metal: &Material) {
    let theme = desk.theme;
    title(ui, theme, order);
    let (sign, tint, word) = said(theme, one.verdict);
    let words = format!("{sign} In one heat? {word}.");
    ui.label(RichText::new(words).text_style(Text::Title.style()).color(tint));
    let heats = format!("Heats: {}", figure_words(one.heats));
    ui.label(RichText::new(heats).text_style(Text::Figure.style()).color(theme.ink));
    if let Some(words) = spoilt_words(order, one, metal) {
        ui.label(RichText::new(words).text_style(Text::Strong.style()).color(theme.stop));
    }
    for reason in &one.reasons {
        ui.label(RichText::new(reason).color(theme.ink));
    }
    if !one.doubts.is_empty() {
        heading::show(ui, theme, "How far to trust it");
        for doubt in &one.doubts {
            ui.label(RichText::new(doubt).text_style(Text::Small.style()).color(theme.ink_quiet));
        }
    }
}

/// What is said of a fire that spoils the metal; nothing of a welding heat for a weld.
fn spoilt_words(order: &OrderDesk<'_>, one: &OneHeat, metal: &Material) -> Option<String> {
    let stands = metal.forging?.spoilt_celsius;
    let is_weld = |step: &WorkedStep| step.tasks.iter().any(|task| task.operation == Operation::Weld);
    let weld = metal.weld.filter(|_| order.chosen().is_some_and(is_weld));
    let stands = weld.map_or(stands, |weld| weld.to_celsius.max(stands));
    let words = format!("■ A fire of {:.0} °C spoils this metal; {stands:.0} °C is its limit.", one.start_celsius);
    (one.start_celsius >= stands).then_some(words)
}

/// Shows why there is no answer.
pub(super) fn show_none(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, is_metal_known: bool) {
    title(ui, desk.theme, order);
    ui.label(RichText::new(why_none(desk, order.chosen(), is_metal_known)).color(desk.theme.ink));
}

fn title(ui: &mut Ui, theme: &Theme, order: &OrderDesk<'_>) {
    if let Some((at, step)) = order.at.zip(order.chosen()) {
        let words = step_words(at, step);
        ui.label(RichText::new(words).text_style(Text::Strong.style()).color(theme.ink_quiet));
    }
}

fn why_none(desk: &Desk<'_>, step: Option<&WorkedStep>, is_metal_known: bool) -> String {
    match step {
        None => "No step is chosen. Choose one in the list to see what one heat does for it.".to_owned(),
        Some(step) if !step.is_hot() => "This step is done cold: it needs no heat.".to_owned(),
        Some(_) if !is_metal_known => {
            format!(
                "{} is not forged hot. Its heats here follow the heat rules: do not work by them.",
                upper_first(metal(desk))
            )
        }
        Some(step) if step.bar.is_none() || step.zone_mm.is_none() => {
            "This step is not about one length of one bar: its heats follow the heat rules.".to_owned()
        }
        Some(_) => "Not all sizes of this part are known yet: nothing can be said of its heat.".to_owned(),
    }
}

fn metal<'a>(desk: &Desk<'a>) -> &'a str {
    desk.document.plan().material_name()
}

/// Sign, color and word of a verdict: none of them rests on the color.
fn said(theme: &Theme, verdict: Verdict) -> (&'static str, Color32, &'static str) {
    match verdict {
        Verdict::Yes => ("✓", theme.ink, "Yes"),
        Verdict::Likely => ("●", theme.note, "Likely"),
        Verdict::Hardly => ("▲", theme.warning, "Not likely"),
        Verdict::No => ("■", theme.stop, "No"),
    }
}

/// A whole figure and its doubt: `1 (1 to 2)`; alone where there is none.
fn figure_words(figure: Estimate) -> String {
    if figure.low.round() as i64 == figure.high.round() as i64 {
        return format!("{:.0}", figure.likely);
    }
    format!("{:.0} ({:.0} to {:.0})", figure.likely, figure.low, figure.high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_without_doubt_stands_alone() {
        assert_eq!(figure_words(Estimate { low: 1.0, likely: 1.0, high: 1.0 }), "1");
        assert_eq!(figure_words(Estimate { low: 1.0, likely: 1.0, high: 2.0 }), "1 (1 to 2)");
    }
}
