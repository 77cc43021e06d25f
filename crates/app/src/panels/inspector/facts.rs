//! The selected segment's section over the stock's, and its figures.

use crate::figures;
use crate::state::Desk;
use crate::widgets::section_picture::{Drawn, show as section_picture};
use crate::widgets::{heading, row};
use egui::Ui;
use fh_core::balance::{BarBalance, Between, SegmentBalance, SegmentSpread};
use fh_core::describe::{laid_cuts_words, laid_from_to_words};
use fh_core::metal::{Section, Shape};
use fh_core::plan::Chain;
use uom::si::f64::Length;

/// What stands before the ends of a range that follows from tolerances, below the figure itself.
const BETWEEN: &str = "– with the tolerances";

/// Shows the picture and the figures.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, at: usize) {
    let Some(bar) = desk.document.balance().bars.get(desk.selection.bar) else { return };
    let Some(segment) = bar.segments.get(at) else { return };
    heading::show(ui, desk.theme, "Section against the stock");
    picture(ui, desk, bar, segment);
    heading::show(ui, desk.theme, "Figures");
    figures_of(ui, desk, bar, segment, at);
}

fn picture(ui: &mut Ui, desk: &Desk<'_>, bar: &BarBalance, segment: &SegmentBalance) {
    let stock = desk.document.plan().bars.get(desk.selection.bar).map(|bar| bar.stock.describe()).unwrap_or_default();
    let ends = segment.shape.as_ref().map_or_else(Vec::new, |shape| sections(shape, bar));
    let drawn: Vec<_> = ends.iter().map(|(words, section)| Drawn { section, words }).collect();
    section_picture(ui, desk.theme, &Drawn { section: &bar.stock_section, words: &stock }, &drawn);
}

/// The sections that a shape is made of, the larger first.
fn sections(shape: &Shape, bar: &BarBalance) -> Vec<(&'static str, Section)> {
    let both = |from: Section, to: Section| {
        let mut both = vec![("start", from), ("end", to)];
        both.sort_by(|first, second| second.1.area().value.total_cmp(&first.1.area().value));
        both
    };
    match shape {
        Shape::Prism { section, .. } | Shape::Peak { section, .. } => vec![("all along", section.section())],
        Shape::Taper { from, to, .. } | Shape::Shoulder { from, to, .. } => both(from.section(), to.section()),
        _ => vec![("end", shape.end(false, bar.stock).section())],
    }
}

fn figures_of(ui: &mut Ui, desk: &Desk<'_>, bar: &BarBalance, segment: &SegmentBalance, at: usize) {
    let plan = desk.document.plan();
    let unit = plan.units.length;
    let mut fact = |label: &str, value: String| row::fact(ui, desk.theme, label, &value);
    let spread = desk.document.spread().segment(desk.selection.bar, at);
    let between = |of: fn(&SegmentSpread) -> Between| spread.and_then(|spread| of(spread).words(plan.units.marks));
    fact("Length of bar", bar.step_shop(at).map_or_else(String::new, |step| step.text()));
    if let Some(words) = between(|spread| spread.stock_length) {
        fact(BETWEEN, words);
    }
    fact("Forged length", figures::finished(figures::mm(segment.forged_length), unit));
    if let Some(words) = between(|spread| spread.forged_length) {
        fact(BETWEEN, words);
    }
    for (label, length) in leg_of(bar, at) {
        fact(label, figures::finished(figures::mm(length), unit));
    }
    fact("Share of the bar", figures::percent(segment.stock_length.value / bar.last_mark().value));
    let metal = segment.finished_volume + segment.trimmed_volume;
    fact("Volume", figures::volume(metal, unit));
    fact("Mass", figures::mass(segment.finished_mass, unit));
    let (draw, ratio) = draw_ratio(bar, segment);
    fact(draw, ratio);
    let [start, end] = mark_words(desk, segment, at);
    fact(&start, bar.block_shop(at).map_or(segment.mark_start_shop, |[start, _]| start).text());
    fact(&end, bar.mark_text(at).unwrap_or_default());
    if let Some(words) = between(|spread| spread.mark_end) {
        fact(BETWEEN, words);
    }
    laid_off(desk, bar, at, &mut fact);
}

/// The holes and the slit of a segment, as they are laid off on the cold bar.
fn laid_off(desk: &Desk<'_>, balance: &BarBalance, at: usize, fact: &mut impl FnMut(&str, String)) {
    let plan = desk.document.plan();
    let Some(bar) = plan.bars.get(desk.selection.bar) else { return };
    let laid = balance.laid_off();
    for hole in laid.holes.iter().filter(|hole| hole.segment == at) {
        let what = if hole.root.is_some() { "Middle of the root hole" } else { "Middle of the hole" };
        fact(what, format!("{} from the datum", hole.shop.text()));
    }
    for slit in laid.slits.iter().filter(|slit| slit.segment == at) {
        fact("Slit line", laid_cuts_words(slit, plan.units.length));
        fact("– along the bar", laid_from_to_words(bar, balance, slit));
    }
}

/// What a rule reads on the leg of the bent piece that a segment belongs to; nothing where it is bent itself.
fn leg_of(bar: &BarBalance, at: usize) -> Vec<(&'static str, Length)> {
    let is_of_bar = bar.segments.get(at).is_some_and(|segment| segment.chain == Chain::Bar);
    let legs = if is_of_bar { fh_core::balance::legs(bar) } else { Vec::new() };
    let leg = legs.into_iter().find(|leg| (leg.segments.0..=leg.segments.1).contains(&at));
    leg.map_or_else(Vec::new, |leg| vec![("Leg, inside to inside", leg.inside), ("Outside to outside", leg.outside)])
}

/// What the marks at its two ends are called. Along the slit of a split there are none on the bar itself.
fn mark_words(desk: &Desk<'_>, segment: &SegmentBalance, at: usize) -> [String; 2] {
    let place = desk.document.plan().bars.get(desk.selection.bar).and_then(|bar| bar.place_of(at));
    match (segment.chain, place) {
        (Chain::Bar, Some((_, place))) => {
            [format!("Mark {place}, at its start"), format!("Mark {}, at its end", place + 1)]
        }
        _ => ["Start, along the slit".to_owned(), "End, along the slit".to_owned()],
    }
}

/// How many times smaller or larger the smaller end's section is than the stock's.
fn draw_ratio(bar: &BarBalance, segment: &SegmentBalance) -> (&'static str, String) {
    let (start, end) = (segment.area_at(0.0), segment.area_at(1.0));
    let area = if start < end { start } else { end };
    let ratio = (bar.stock_area / area).value;
    if !ratio.is_finite() {
        ("Drawn out", "to nothing".to_owned())
    } else if ratio < 0.995 {
        ("Upset", format!("1 : {}", figures::three_digits(1.0 / ratio)))
    } else {
        ("Drawn out", format!("{} : 1", figures::three_digits(ratio)))
    }
}
