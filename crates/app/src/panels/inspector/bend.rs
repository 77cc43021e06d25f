//! The bend of a segment and its sizes.

use super::form::derived;
use super::sides;
use crate::figures;
use crate::new_segment::corner;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::plan::{Bend, BendKind, Form, Segment};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};

/// Shows the bend.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, segment: &mut Segment, balance: Option<&SegmentBalance>) {
    let now = segment.bend.as_ref().map(Bend::kind);
    let choices: Vec<_> = std::iter::once((None, "none".to_owned()))
        .chain(
            BendKind::ALL
                .into_iter()
                .filter(|kind| suits(segment, *kind))
                .map(|kind| (Some(kind), kind.name().to_owned())),
        )
        .collect();
    if let Some(kind) = chooser::show(ui, sizing.theme, "Bend", "Bend", now, &choices) {
        segment.bend = kind.and_then(|kind| first(kind, segment, sizing));
    }
    match &mut segment.bend {
        None => {}
        Some(Bend::Curve { angle, inside_radius, side }) => {
            optional_angle(ui, sizing, "Angle", "angle", angle, balance);
            optional_length(
                ui,
                sizing,
                "Inside radius",
                "inside radius",
                inside_radius,
                LengthRange::ZeroOrMore,
                balance,
            );
            sides::toward(ui, sizing, side);
        }
        Some(Bend::Ring { inside_diameter, sweep, side }) => {
            optional_length(
                ui,
                sizing,
                "Inside diameter",
                "inside diameter",
                inside_diameter,
                LengthRange::AboveZero,
                balance,
            );
            let entry = Entry::named("Goes round", "How far round it goes").hint("one turn");
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
        _ => {}
    }
}

/// Whether a bend can be made of a form. One that is there already is always shown.
fn suits(segment: &Segment, kind: BendKind) -> bool {
    let fits = match segment.form {
        Form::Peak { .. } => kind == BendKind::Corner,
        Form::Plain { .. } | Form::Drawn { .. } | Form::Taper { .. } => kind != BendKind::Corner,
        _ => false,
    };
    fits || segment.bend.as_ref().map(Bend::kind) == Some(kind)
}

/// A first bend. Where the form has its length, the radius or diameter is left to follow from it.
fn first(kind: BendKind, segment: &Segment, sizing: &Sizing<'_>) -> Option<Bend> {
    let right_angle = WrittenAngle::from_degrees(90.0).ok();
    let free = segment.form.length().is_none();
    let size = if free { sizing.size(2.0 * sizing.stock_mm[0]) } else { None };
    match kind {
        BendKind::Curve => Some(Bend::Curve { angle: right_angle, inside_radius: size, side: None }),
        BendKind::Ring => Some(Bend::Ring { inside_diameter: size, sweep: None, side: None }),
        BendKind::Corner => corner(sizing),
        _ => None,
    }
}

fn optional_length(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    label: &str,
    size: &str,
    now: &mut Option<WrittenLength>,
    range: LengthRange,
    balance: Option<&SegmentBalance>,
) {
    let follows = derived(balance, size);
    let length = follows.and_then(|derived| derived.length);
    let hint = length.map_or_else(String::new, |length| sizing.words(length));
    let entry = Entry::new(label).hint(&hint).because(follows.map(|derived| derived.because));
    let typed = fields::optional_length(ui, sizing, &entry, now.as_ref(), range, length.map(figures::mm));
    if let Some(typed) = typed {
        *now = typed;
    }
}

fn optional_angle(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    label: &str,
    size: &str,
    now: &mut Option<WrittenAngle>,
    balance: Option<&SegmentBalance>,
) {
    let follows = derived(balance, size);
    let radians = follows.and_then(|derived| derived.radians);
    let hint = radians.map_or_else(String::new, |radians| format!("{:.1}°", radians.to_degrees()));
    let entry = Entry::named(label, "Angle of the curve").hint(&hint).because(follows.map(|derived| derived.because));
    if let Some(typed) = fields::optional_angle(ui, sizing, &entry, now.as_ref(), radians) {
        *now = typed;
    }
}
