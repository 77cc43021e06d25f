//! The sizes of a socket: what it is rolled round, how far round it goes, and how its axis lies.

use super::sides;
use super::sizes::{optional_angle, optional_length};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::plan::{Bend, SizeName, SocketAxis};
use fh_measure::LengthRange;

/// Shows the sizes and changes those that were typed; answers how else its axis is to lie.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    bend: &mut Bend,
    balance: Option<&SegmentBalance>,
) -> Option<SocketAxis> {
    let Bend::Socket { mandrel, sweep, less, axis, side } = bend else { return None };
    optional_length(ui, sizing, SizeName::Mandrel, mandrel, LengthRange::AboveZero, balance);
    let entry = Entry::named("How far round", "How far round it goes").hint("one turn");
    optional_angle(ui, sizing, &entry, SizeName::HowFarRound, sweep, balance);
    let entry = Entry::named("Less, from another part", "Length that another part supplies").hint("nothing");
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, less.as_ref(), LengthRange::ZeroOrMore, Some(0.0))
    {
        *less = typed;
    }
    sides::toward(ui, sizing, side);
    let now = *axis;
    let choices: Vec<_> = SocketAxis::ALL.into_iter().map(|axis| (axis, axis.name().to_owned())).collect();
    chooser::show(ui, sizing.theme, "Axis", "Axis of the socket", now, &choices)
}
