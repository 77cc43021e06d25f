//! Sides of the bar: those that are set down, and the one that a bend goes toward.

use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, row};
use egui::Ui;
use fh_core::plan::Sides;
use fh_measure::WrittenAngle;

/// A first angle for a side that is none of the four, in degrees.
const ASKEW_DEGREES: f64 = 45.0;

/// Shows which sides a shoulder is set down on. One stays chosen at least.
pub(super) fn set_down(ui: &mut Ui, sizing: &Sizing<'_>, sides: &mut Sides) {
    let mut chosen: Vec<u16> = Sides::DEGREES.into_iter().filter(|side| sides.contains(*side)).collect();
    let before = chosen.len();
    row::show(ui, sizing.theme, "Set down on", |ui| {
        ui.horizontal_wrapped(|ui| {
            for side in Sides::DEGREES {
                let mut on = chosen.contains(&side);
                let response = ui.checkbox(&mut on, Sides::name_of(side));
                response.clone().accessible_name(format!("Set down on the side {}", Sides::name_of(side)));
                if response.changed() {
                    chosen.retain(|other| *other != side);
                    if on {
                        chosen.push(side);
                    }
                }
            }
        });
    });
    chosen.sort_unstable();
    if chosen.len() != before && !chosen.is_empty() {
        *sides = if chosen.len() == Sides::DEGREES.len() { Sides::All } else { Sides::Some(chosen) };
    }
}

/// Shows the side that a bend goes toward.
pub(super) fn toward(ui: &mut Ui, sizing: &Sizing<'_>, side: &mut Option<WrittenAngle>) {
    let degrees = side.as_ref().map_or(0.0, |side| side.radians().to_degrees().rem_euclid(360.0));
    let now = Sides::DEGREES.into_iter().find(|one| (f64::from(*one) - degrees).abs() < 1e-6);
    let choices: Vec<_> = Sides::DEGREES
        .into_iter()
        .map(|one| (Some(one), Sides::name_of(one).to_owned()))
        .chain([(None, "at another angle".to_owned())])
        .collect();
    if let Some(choice) = chooser::show(ui, sizing.theme, "Towards", "Side it is bent towards", now, &choices) {
        let degrees = choice.map_or(ASKEW_DEGREES, f64::from);
        *side = if choice == Some(0) { None } else { WrittenAngle::from_degrees(degrees).ok() };
    }
    if now.is_none()
        && let Some(angle) = side
        && let Some(typed) = fields::angle(ui, sizing, &Entry::named("Its angle", "Angle of the side, from up"), angle)
    {
        *side = Some(typed);
    }
}
