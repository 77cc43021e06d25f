//! The bend of a segment and its sizes.

use super::sizes::{optional_angle, optional_length};
use super::{sides, socket};
use crate::theme::Text;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::{RichText, Ui};
use fh_core::balance::SegmentBalance;
use fh_core::edit::{PartChange, ties};
use fh_core::new_segment::suits;
use fh_core::plan::{Bend, BendKind, ScrollEye, ScrollRun, Segment, SizeName, SocketAxis};
use fh_measure::{LengthRange, WrittenShare};

/// Whether the segment is bent, or its form can be.
pub(super) fn is_offered(segment: &Segment) -> bool {
    segment.bend.is_some() || BendKind::ALL.into_iter().any(|kind| suits(&segment.form, kind))
}

/// Shows the bend and changes the sizes that were typed; answers what else is chosen: another bend, or what follows.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    segment: &mut Segment,
    balance: Option<&SegmentBalance>,
) -> Option<PartChange> {
    let chosen = kind(ui, sizing, segment);
    let chosen = chosen.or(follows(ui, sizing, segment));
    chosen.or(sizes(ui, sizing, segment, balance).map(PartChange::Axis))
}

/// Shows the sizes of the bend and changes those that were typed; answers another way for the axis of its socket to lie.
pub(super) fn sizes(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    segment: &mut Segment,
    balance: Option<&SegmentBalance>,
) -> Option<SocketAxis> {
    let mut chosen = None;
    match &mut segment.bend {
        None => {}
        Some(Bend::Curve { angle, inside_radius, side }) => {
            optional_angle(ui, sizing, &Entry::named("Angle", "Angle of the curve"), SizeName::Angle, angle, balance);
            optional_length(ui, sizing, SizeName::InsideRadius, inside_radius, LengthRange::ZeroOrMore, balance);
            sides::toward(ui, sizing, side);
        }
        Some(Bend::Ring { inside_diameter, sweep, side }) => {
            optional_length(ui, sizing, SizeName::InsideDiameter, inside_diameter, LengthRange::AboveZero, balance);
            let entry = Entry::named("How far round", "How far round it goes").hint("one turn");
            let turn = std::f64::consts::TAU;
            if let Some(typed) = fields::optional_angle(ui, sizing, &entry, sweep.as_ref(), Some(turn)) {
                *sweep = typed;
            }
            sides::toward(ui, sizing, side);
        }
        Some(Bend::Corner { angle, inside_radius, side }) => {
            if let Some(typed) = fields::angle(ui, sizing, &Entry::named("Angle", "Angle of the corner"), angle) {
                *angle = typed;
            }
            let entry = Entry::new("Inside radius");
            if let Some(typed) = fields::length(ui, sizing, &entry, inside_radius, LengthRange::ZeroOrMore) {
                *inside_radius = typed;
            }
            sides::toward(ui, sizing, side);
        }
        Some(bend @ Bend::Scroll { .. }) => scroll(ui, sizing, bend, balance),
        Some(bend @ Bend::Socket { .. }) => {
            chosen = socket::show(ui, sizing, bend, balance);
        }
        Some(Bend::Twist { turns, shortening }) => twist(ui, sizing, turns, shortening),
    }
    chosen
}

/// Which bend it is.
fn kind(ui: &mut Ui, sizing: &Sizing<'_>, segment: &Segment) -> Option<PartChange> {
    let now = segment.bend.as_ref().map(Bend::kind);
    // One that is there already is always shown.
    let offered = |kind: &BendKind| suits(&segment.form, *kind) || now == Some(*kind);
    let choices: Vec<_> = std::iter::once((None, "none".to_owned()))
        .chain(BendKind::ALL.into_iter().filter(offered).map(|kind| (Some(kind), kind.name().to_owned())))
        .collect();
    chooser::show(ui, sizing.theme, "Bend", "Bend", now, &choices).map(PartChange::Bend)
}

/// Which of the tied sizes follows from the others.
fn follows(ui: &mut Ui, sizing: &Sizing<'_>, segment: &Segment) -> Option<PartChange> {
    let sizes = ties::tied(segment);
    if sizes.is_empty() {
        return None;
    }
    let now = ties::follows(segment);
    let mut choices: Vec<_> = sizes.into_iter().map(|size| (Some(size), ties::words(segment, size))).collect();
    if now.is_none() {
        let words =
            if ties::too_much(segment) { "nothing: too many sizes are given" } else { "too few sizes are given" };
        choices.push((None, words.to_owned()));
    }
    chooser::show(ui, sizing.theme, "Follows", "Size that follows", now, &choices).flatten().map(PartChange::Follows)
}

fn scroll(ui: &mut Ui, sizing: &Sizing<'_>, bend: &mut Bend, balance: Option<&SegmentBalance>) {
    let Bend::Scroll { inner_radius, outer_radius, turns, run, eye, side } = bend else { return };
    optional_length(ui, sizing, SizeName::InnerRadius, inner_radius, LengthRange::ZeroOrMore, balance);
    optional_length(ui, sizing, SizeName::OuterRadius, outer_radius, LengthRange::AboveZero, balance);
    let words = RichText::new("Radii to the middle of the bar.").text_style(Text::Small.style());
    ui.label(words.color(sizing.theme.ink_quiet));
    scroll_turns(ui, sizing, turns, balance);
    let choices = [
        (ScrollRun::Opening, "opening: wider every turn".to_owned()),
        (ScrollRun::Even, "even: the same gap every turn".to_owned()),
    ];
    if let Some(choice) = chooser::show(ui, sizing.theme, "Opens", "How the scroll opens", *run, &choices) {
        *run = choice;
    }
    let choices = [
        (ScrollEye::Start, "its start, towards the datum".to_owned()),
        (ScrollEye::End, "its end, away from it".to_owned()),
    ];
    if let Some(choice) = chooser::show(ui, sizing.theme, "Eye at", "End with the eye", *eye, &choices) {
        *eye = choice;
    }
    sides::toward(ui, sizing, side);
}

fn scroll_turns(ui: &mut Ui, sizing: &Sizing<'_>, turns: &mut Option<f64>, balance: Option<&SegmentBalance>) {
    let follows = balance.and_then(|balance| balance.derived(SizeName::Turns));
    let count = follows.and_then(|derived| derived.count);
    let hint = count.map_or_else(String::new, |count| format!("{count:.2}"));
    let entry = Entry::named("Turns", "Turns of the scroll").hint(&hint).because(follows.map(|size| size.because));
    if let Some(typed) = fields::optional_turns(ui, sizing, &entry, *turns, count) {
        *turns = typed;
    }
}

fn twist(ui: &mut Ui, sizing: &Sizing<'_>, turns: &mut f64, shortening: &mut Option<WrittenShare>) {
    let left = *turns < 0.0;
    let signed = |count: f64, left: bool| if left { -count } else { count };
    if let Some(typed) = fields::turns(ui, sizing, &Entry::named("Turns", "Turns of the twist"), turns.abs()) {
        *turns = signed(typed, left);
    }
    let choices = [(false, "right-handed".to_owned()), (true, "left-handed".to_owned())];
    if let Some(choice) = chooser::show(ui, sizing.theme, "Hand", "Hand of the twist", left, &choices) {
        *turns = signed(turns.abs(), choice);
    }
    let entry = Entry::named("Shorter by", "How much shorter it gets").hint("nothing");
    if let Some(share) = fields::optional_share(ui, sizing, &entry, shortening.as_ref()) {
        *shortening = share;
    }
}
