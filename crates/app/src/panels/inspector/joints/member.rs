//! One member of a joint: its bar and segment by name, its place and its side.

use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::plan::{Bar, Form, JointSide, Member, Plan, Sides};
use fh_measure::{LengthRange, WrittenAngle};

/// Shows a member; `of` names it for screen readers, and only what is moved can be turned.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, plan: &Plan, member: &mut Member, (of, moved): (&str, bool)) {
    let name = |what: &str| format!("{what} {of}");
    let bars: Vec<&str> = plan.bars.iter().map(|bar| bar.name.as_str()).collect();
    if let Some(chosen) = chooser::by_name(ui, sizing.theme, ("Bar", &name("Bar")), &bars, &member.bar) {
        member.bar = chosen;
        member.copy = None;
    }
    let bar = plan.bars.iter().find(|bar| bar.name == member.bar);
    if bar.is_some_and(|bar| bar.pieces() > 1) || member.copy.is_some() {
        let name = name("Number");
        let entry = Entry::named("Number", &name).hint("the first");
        if let Some(copy) = fields::count(ui, sizing, &entry, member.copy) {
            member.copy = copy;
        }
    }
    let flat = bar.map(Bar::flat).unwrap_or_default();
    let segments: Vec<&str> = flat.iter().map(|flat| flat.segment.name.as_str()).collect();
    if let Some(chosen) = chooser::by_name(ui, sizing.theme, ("Part", &name("Part")), &segments, &member.segment) {
        member.segment = chosen;
    }
    let segment = flat.iter().find(|flat| flat.segment.name == member.segment);
    if !segment.is_some_and(|flat| matches!(flat.segment.form, Form::Tenon(_))) {
        place(ui, sizing, member, &name("Place"));
        side(ui, sizing, member, &name("Side"));
    }
    let name = name("Turn");
    let entry = Entry::named("Turned", &name).hint("not at all");
    if moved && let Some(turn) = fields::optional_angle(ui, sizing, &entry, member.turn.as_ref(), Some(0.0)) {
        member.turn = turn;
    }
}

fn place(ui: &mut Ui, sizing: &Sizing<'_>, member: &mut Member, name: &str) {
    let entry = Entry::named("At", name).hint("its middle");
    let typed = fields::optional_length(ui, sizing, &entry, member.at.as_ref(), LengthRange::ZeroOrMore, Some(0.0));
    if let Some(at) = typed {
        member.at = at;
    }
}

/// The side by its word; an angle between the sides stays as it is written.
fn side(ui: &mut Ui, sizing: &Sizing<'_>, member: &mut Member, name: &str) {
    let mut choices: Vec<(Option<Side>, String)> =
        Sides::DEGREES.map(|degrees| (Some(Side::Around(degrees)), Sides::name_of(degrees).to_owned())).into();
    choices.push((Some(Side::Start), "its start".to_owned()));
    choices.push((Some(Side::End), "its end".to_owned()));
    let now = side_of(member.side.as_ref());
    if let (None, Some(side)) = (now, &member.side) {
        choices.push((None, side.text().to_owned()));
    }
    if let Some(Some(chosen)) = chooser::show(ui, sizing.theme, "Side", name, now, &choices) {
        member.side = written(chosen);
    }
}

/// A side that the list offers.
#[derive(Clone, Copy, PartialEq)]
enum Side {
    Around(u16),
    Start,
    End,
}

fn side_of(side: Option<&JointSide>) -> Option<Side> {
    match side {
        None => Some(Side::Around(0)),
        Some(JointSide::Start) => Some(Side::Start),
        Some(JointSide::End) => Some(Side::End),
        Some(JointSide::Around(angle)) => {
            let degrees = angle.radians().to_degrees().rem_euclid(360.0);
            Sides::DEGREES.into_iter().find(|side| (degrees - f64::from(*side)).abs() < 1e-6).map(Side::Around)
        }
    }
}

/// A side as it is written; up is left out.
fn written(side: Side) -> Option<JointSide> {
    match side {
        Side::Around(0) => None,
        Side::Around(degrees) => WrittenAngle::from_degrees(f64::from(degrees)).ok().map(JointSide::Around),
        Side::Start => Some(JointSide::Start),
        Side::End => Some(JointSide::End),
    }
}
