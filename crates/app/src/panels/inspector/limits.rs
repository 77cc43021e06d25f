//! The limits that the plan is held against, each with its usual value.

use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields};
use egui::{CollapsingHeader, Ui};
use fh_core::plan::{InBoth, Limits};
use fh_measure::{LengthRange, WrittenLength, format_decimal};

/// Shows the limits.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, limits: &mut Limits) {
    let numbers: [(&str, &mut Option<f64>, f64); 4] = [
        ("Step to radius", &mut limits.step_to_radius, Limits::STEP_TO_RADIUS),
        ("Upset likely to buckle", &mut limits.upset_likely, Limits::UPSET_LIKELY),
        ("Upset will buckle", &mut limits.upset_sure, Limits::UPSET_SURE),
        ("Upset in stages", &mut limits.upset_stage, Limits::UPSET_STAGE),
    ];
    let lengths: [(&str, &mut Option<WrittenLength>, InBoth); 4] = [
        ("Room for tools", &mut limits.tool_room, Limits::TOOL_ROOM),
        ("Least to hold", &mut limits.hold, Limits::HOLD),
        ("Play in holes", &mut limits.play, Limits::PLAY),
        ("Depth of the fire", &mut limits.reach, Limits::REACH),
    ];
    CollapsingHeader::new("Limits of the findings").show(ui, |ui| {
        for (label, now, usual) in numbers {
            let hint = format!("{usual}, as usual");
            if let Some(typed) = fields::optional_number(ui, sizing, &Entry::new(label).hint(&hint), *now) {
                *now = typed;
            }
        }
        for (label, now, usual) in lengths {
            let usual = usual.in_unit(sizing.first.units.length);
            let hint = format!("{}, as usual", format_decimal(usual, sizing.first.units.length.length_unit(), 2));
            let entry = Entry::new(label).hint(&hint);
            let typed = fields::optional_length(ui, sizing, &entry, now.as_ref(), LengthRange::AboveZero, Some(usual));
            if let Some(typed) = typed {
                *now = typed;
            }
        }
    });
}
