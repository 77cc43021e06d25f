//! The sizes of a form.

use super::sizes::{BODIES, caption, optional_length, section, size};
use super::{blank, flag, hole, outline, peak, pins, plate_holes, sides, taper};
use crate::widgets::{Sizing, heading};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::forms;
use fh_core::plan::{Bend, Form, Segment, SizeName};
use fh_measure::LengthRange;

/// Shows the sizes of a segment's form and changes those that were typed.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    segment: &mut Segment,
    balance: Option<&SegmentBalance>,
    first: bool,
) {
    let rolled = match &segment.bend {
        Some(Bend::Socket { axis, .. }) => Some(*axis),
        _ => None,
    };
    match &mut segment.form {
        Form::Plain(forms::Plain { length }) | Form::Open(forms::Open { length }) => {
            optional_length(ui, sizing, SizeName::Length, length, LengthRange::AboveZero, balance)
        }
        Form::Drawn(forms::Drawn { length, section: becomes }) => {
            optional_length(ui, sizing, SizeName::Length, length, LengthRange::AboveZero, balance);
            section(ui, sizing, "Section", "section", becomes, &BODIES);
        }
        Form::Taper(forms::Taper { length, from, to, runout }) => {
            optional_length(ui, sizing, SizeName::Length, length, LengthRange::AboveZero, balance);
            taper::show(ui, sizing, from, to, runout, first);
        }
        Form::Shoulder(forms::Shoulder { to, radius, sides }) => {
            size(ui, sizing, "Inside radius", radius);
            sides::set_down(ui, sizing, sides);
            section(ui, sizing, "Section after it", "section after it", to, &BODIES);
        }
        Form::Flag(plate) => {
            heading::show(ui, sizing.theme, "Outline, seen from above");
            outline::show(ui, sizing, &mut plate.outline, rolled, balance);
            blank::base_line(ui, sizing, plate);
            blank::show(ui, sizing, plate, balance);
            flag::show(ui, sizing, plate, first);
            plate_holes::show(ui, sizing, plate, balance);
        }
        Form::Peak(peak) => {
            section(ui, sizing, "Section of its legs", "section of its legs", &mut peak.section, &BODIES);
            peak::show(ui, sizing, peak, balance);
        }
        Form::Hole(forms::Hole { outline, thickness, hole, made, slug, at }) => {
            hole::way(ui, sizing, made, slug, hole::THE_HOLE);
            hole::shape(ui, sizing, hole, hole::THE_HOLE);
            hole::place(ui, sizing, at, balance);
            heading::show(ui, sizing.theme, "Boss, seen from above");
            outline::show(ui, sizing, outline, None, balance);
            size(ui, sizing, "Thickness", thickness);
        }
        pin @ (Form::Tenon(_) | Form::Rivet(_) | Form::Collar(_) | Form::Weld(_)) => {
            pins::show(ui, sizing, pin);
        }
        // Its branches need more of the plan than this form alone.
        Form::Split(_) => {}
        // A form of plain lengths: each under its own name.
        plain => plain.sizes_mut(&mut |name, length| size(ui, sizing, &caption(name), length)),
    }
}
