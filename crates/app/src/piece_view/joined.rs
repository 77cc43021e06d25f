//! A joint by two places on the piece: which parts meet, how, where along them and on which sides.

use super::stage::Stage;
use fh_core::describe::part_name;
use fh_core::joints::kind_between;
use fh_core::plan::{Form, Joint, JointSide, Member, Plan};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};
use fh_piece::Frame;
use fh_piece::vector::{dot, length, minus};

/// A part of one of the copies of a bar: bar, copy, segment.
pub(super) type Part = (usize, u32, usize);

/// The joint of two places; the part of the first stays.
///
/// # Errors
/// Why it cannot be made: both lie on one bar, or a bar or a part has no name of its own.
pub(super) fn joint(stage: &Stage<'_>, places: [(Part, [f64; 3]); 2]) -> Result<Joint, String> {
    let [(first, _), (second, _)] = places;
    if (first.0, first.1) == (second.0, second.1) {
        return Err("Both places lie on one bar.".to_owned());
    }
    let segment = |part: Part| stage.plan.segment(part.0, part.2).ok_or("There is no such part any more.");
    let kind = kind_between(segment(first)?, segment(second)?);
    let [fixed, moved] = [member(stage, places[0])?, member(stage, places[1])?];
    Ok(Joint { name: String::new(), kind, fixed, moved: vec![moved] })
}

fn member(stage: &Stage<'_>, ((bar, copy, segment), at): (Part, [f64; 3])) -> Result<Member, String> {
    let (bar_name, name) = names(stage.plan, bar, segment)?;
    let mut member = Member::new(bar_name, name);
    member.copy = (copy > 0).then_some(copy + 1);
    let Some((frame, along_mm)) = met(stage, (bar, copy, segment), at) else { return Ok(member) };
    let form = stage.plan.segment(bar, segment).map(|segment| &segment.form);
    if !matches!(form, Some(Form::Hole(_) | Form::Tenon(_) | Form::Rivet(_) | Form::Collar(_))) {
        let units = stage.plan.units.marks;
        member.at = WrittenLength::from_mm(units.round(along_mm).mm(), units.unit(), LengthRange::ZeroOrMore).ok();
    }
    member.side = WrittenAngle::from_degrees(side_degrees(&frame, at)).ok().map(JointSide::Around);
    Ok(member)
}

/// The names of a bar and a part that are their own.
fn names(plan: &Plan, bar: usize, segment: usize) -> Result<(&str, &str), String> {
    let of = plan.bars.get(bar).ok_or("There is no such bar any more.")?;
    let part = of.segment(segment).map_or("", |segment| segment.name.as_str());
    let is_first_bar = plan.bars.iter().position(|other| other.name == of.name) == Some(bar);
    let is_first_part = of.flat().iter().position(|other| other.segment.name == part) == Some(segment);
    if of.name.trim().is_empty() || !is_first_bar {
        return Err(format!("Give bar {} a name of its own to join it.", bar + 1));
    }
    if part.trim().is_empty() || !is_first_part {
        return Err(format!("Give {} a name of its own to join it.", part_name(of, segment)));
    }
    Ok((of.name.as_str(), part))
}

/// The frame of a part that is nearest to a place, and how far along the part it lies, in mm.
fn met(stage: &Stage<'_>, (bar, copy, segment): Part, at: [f64; 3]) -> Option<(Frame, f64)> {
    let mut lines = stage.model.piece.lines.iter();
    let line = lines.find(|line| (line.bar, line.copy, line.segment) == (bar, copy, segment))?;
    let forged = stage.balance.bars.get(bar)?.segments.get(segment)?.forged_length;
    let long = fh_measure::in_mm(forged);
    let steps = 200;
    let places = (0..=steps).filter_map(|step| {
        let share = f64::from(step) / f64::from(steps);
        Some((line.frame_at(share, long)?, share * long))
    });
    let far = |frame: &Frame| length(minus(at, frame.at));
    places.min_by(|(a, _), (b, _)| far(a).total_cmp(&far(b)))
}

/// The side of a part on which a place lies, to a quarter: up 0, towards you 90, down 180, away 270.
fn side_degrees(frame: &Frame, at: [f64; 3]) -> f64 {
    let from = minus(at, frame.at);
    let around = dot(from, frame.toward).atan2(dot(from, frame.up));
    ((around.to_degrees() / 90.0).round() * 90.0).rem_euclid(360.0)
}
