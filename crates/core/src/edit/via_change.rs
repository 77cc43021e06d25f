//! Changes of the shapes that a part has on the way: added, made another one, put earlier or later, taken out.

use super::Refusal;
use crate::first_sizes::FirstSizes;
use crate::forms;
use crate::new_segment::{change_form, new_segment, suits};
use crate::plan::{Bend, BendKind, Form, FormKind, ScrollEye, ScrollRun, Segment, SocketAxis, Via};
use fh_measure::WrittenAngle;

/// How far a first bend on the way turns, in degrees, and a first socket.
const TURNED: f64 = 60.0;
const ROLLED: f64 = 180.0;
/// How many turns of a scroll are begun.
const TURNS: f64 = 0.5;

/// What becomes of the shapes on the way. A shape is named by its place, counted from 0.
#[derive(Clone, Debug, PartialEq)]
pub enum ViaChange {
    /// Puts a shape before the one at a place, at the end where there is none; its sizes are to be typed over.
    Add(usize),
    /// Another form of a shape; none where it is to be that of the shape before it.
    Form(usize, Option<FormKind>),
    /// Another bend of a shape; or none.
    Bend(usize, Option<BendKind>),
    /// Lets a shape come at the place of another one.
    Move {
        /// Where it is.
        from: usize,
        /// Where it comes to be.
        to: usize,
    },
    /// Takes a shape out.
    Remove(usize),
}

impl ViaChange {
    /// The part after the change.
    pub(super) fn changed(&self, segment: &Segment, sizes: &FirstSizes) -> Result<Segment, Refusal> {
        let mut next = segment.clone();
        let there = |at: usize| if at < segment.via.len() { Ok(at) } else { Err(Refusal::NoSuchPlace) };
        match self {
            Self::Add(at) => next.via.insert((*at).min(segment.via.len()), first(segment, sizes)?),
            Self::Form(at, kind) => {
                let form = kind.map(|kind| form_of(segment, there(*at)?, kind, sizes)).transpose()?;
                let via = next.via.get_mut(*at).ok_or(Refusal::NoSuchPlace)?;
                via.gives = None;
                via.form = form;
                let own = effective(&next, *at).clone();
                let via = next.via.get_mut(*at).ok_or(Refusal::NoSuchPlace)?;
                via.bend.take_if(|bend| !suits(&own, bend.kind()));
                if via.form.is_none() && via.bend.is_none() {
                    via.bend = first_bend_of(&own, sizes);
                }
            }
            Self::Bend(at, kind) => {
                let bend = kind.and_then(|kind| bend(kind, sizes));
                let via = next.via.get_mut(*at).ok_or(Refusal::NoSuchPlace)?;
                via.bend = bend;
                if via.form.is_none() && via.bend.is_none() {
                    via.form = first(segment, sizes)?.form;
                }
            }
            Self::Move { from, to } => {
                let (from, to) = (there(*from)?, there(*to)?);
                let via = next.via.remove(from);
                next.via.insert(to, via);
            }
            Self::Remove(at) => drop(next.via.remove(there(*at)?)),
        }
        Ok(next)
    }
}

/// The form of a shape: its own, that of the shape before it, or the finished one.
pub fn effective(segment: &Segment, at: usize) -> &Form {
    let written = segment.via.iter().take(at + 1).rev().find_map(|via| via.form.as_ref());
    written.unwrap_or(&segment.form)
}

fn no_sizes() -> Refusal {
    Refusal::CannotBe("its first sizes cannot be written in the plan's unit".to_owned())
}

/// A first shape: drawn, its length left to follow; of a plain part a bend.
fn first(segment: &Segment, sizes: &FirstSizes) -> Result<Via, Refusal> {
    if let Form::Plain(_) = segment.form {
        let bend = bend(BendKind::Curve, sizes).ok_or_else(no_sizes)?;
        return Ok(Via { bend: Some(bend), ..Via::default() });
    }
    let mut form = new_segment(FormKind::Drawn, sizes).ok_or_else(no_sizes)?.form;
    without_length(&mut form);
    Ok(Via { form: Some(form), ..Via::default() })
}

/// A form of another kind that keeps what it can of the shape's own.
fn form_of(segment: &Segment, at: usize, kind: FormKind, sizes: &FirstSizes) -> Result<Form, Refusal> {
    let own = Segment::new("", effective(segment, at).clone());
    let mut form = change_form(&own, kind, sizes).ok_or_else(no_sizes)?.form;
    without_length(&mut form);
    Ok(form)
}

/// Leaves the length to follow from the metal; a shape on the way is not trimmed.
fn without_length(form: &mut Form) {
    match form {
        Form::Plain(forms::Plain { length })
        | Form::Drawn(forms::Drawn { length, .. })
        | Form::Taper(forms::Taper { length, .. }) => *length = None,
        Form::Flag(flag) => (flag.trim, flag.blank, flag.base_line, flag.joined) = (None, None, None, false),
        _ => {}
    }
}

fn first_bend_of(form: &Form, sizes: &FirstSizes) -> Option<Bend> {
    let kind = [BendKind::Curve, BendKind::Socket].into_iter().find(|kind| suits(form, *kind))?;
    bend(kind, sizes)
}

/// A first bend of a length that is known; none of a kind that is not made on the way.
fn bend(kind: BendKind, sizes: &FirstSizes) -> Option<Bend> {
    let angle = |degrees: f64| WrittenAngle::from_degrees(degrees).ok();
    match kind {
        BendKind::Curve => Some(Bend::Curve { angle: angle(TURNED), inside_radius: None, side: None }),
        BendKind::Ring => Some(Bend::Ring { inside_diameter: None, sweep: angle(ROLLED), side: None }),
        BendKind::Socket => {
            let (sweep, axis) = (angle(ROLLED), SocketAxis::Along);
            Some(Bend::Socket { mandrel: None, sweep, less: None, axis, side: None })
        }
        BendKind::Scroll => Some(Bend::Scroll {
            inner_radius: sizes.size(sizes.stock_mm[0]),
            outer_radius: None,
            turns: Some(TURNS),
            run: ScrollRun::Opening,
            eye: ScrollEye::Start,
            side: None,
        }),
        BendKind::Corner | BendKind::Twist => None,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::edit::{Edit, History, PartChange};
    use crate::file;
    use crate::plan::Plan;

    const PLAN: &str = r#"{ "firstheat": 1, "bars": [{ "stock": { "square": "12 mm" }, "segments": [
        { "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "64 mm", "width": "26 mm" } },
            "thickness": "3 mm", "trim": "8 %" } }, "via": [
            { "form": { "drawn": { "section": { "flat": { "width": "14 mm", "thickness": "6 mm" } } } } },
            { "form": { "drawn": { "section": { "flat": { "width": "18 mm", "thickness": "5 mm" } } } } } ] },
        { "form": { "plain": { "length": "100 mm" } } } ] }],
      "work": { "steps": [ { "work": [ { "operation": "draw", "parts": ["1"], "to": 1 } ] },
        { "work": [ { "operation": "spread", "parts": ["1"], "to": 2 } ] },
        { "work": [ { "operation": "spread", "parts": ["1"] } ] } ] } }"#;

    fn changed(plan: &Plan, change: ViaChange) -> Plan {
        Edit::ChangePart { bar: 0, at: 0, change: PartChange::Via(change) }.applied(plan).unwrap().0
    }

    /// Which shape each step makes.
    fn made(plan: &Plan) -> Vec<Option<u32>> {
        plan.work.steps.iter().flatten().flat_map(|step| &step.work).map(|deed| deed.to).collect()
    }

    #[test]
    fn steps_go_with_the_shapes_that_they_make() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        let moved = changed(&plan, ViaChange::Move { from: 0, to: 1 });
        assert_eq!(made(&moved), [Some(2), Some(1), None]);
        let removed = changed(&plan, ViaChange::Remove(0));
        assert_eq!(made(&removed), [Some(1), None]);
        let added = changed(&plan, ViaChange::Add(0));
        assert_eq!(made(&added), [Some(2), Some(3), None]);
        assert_eq!(added.bars[0].segments[0].via.len(), 3);
    }

    #[test]
    fn a_shape_becomes_another_one_and_keeps_what_it_can() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        let bent = changed(&plan, ViaChange::Bend(1, Some(BendKind::Curve)));
        let via = &bent.bars[0].segments[0].via[1];
        assert!(matches!(via.bend, Some(Bend::Curve { inside_radius: None, .. })) && via.form.is_some());
        let alone = changed(&bent, ViaChange::Form(1, None));
        let via = &alone.bars[0].segments[0].via[1];
        assert!(via.form.is_none() && via.bend.is_some());
        // Neither a form nor a bend is no shape: it is drawn again.
        let straight = changed(&alone, ViaChange::Bend(1, None));
        assert!(straight.bars[0].segments[0].via[1].form.is_some());
        let taper = changed(&plan, ViaChange::Form(0, Some(FormKind::Taper)));
        assert!(matches!(&taper.bars[0].segments[0].via[0].form, Some(Form::Taper(taper)) if taper.length.is_none()));
    }

    #[test]
    fn undo_is_the_identity() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        for change in [
            ViaChange::Add(1),
            ViaChange::Form(0, Some(FormKind::Flag)),
            ViaChange::Bend(0, Some(BendKind::Ring)),
            ViaChange::Move { from: 1, to: 0 },
            ViaChange::Remove(1),
        ] {
            let mut history = History::new(plan.clone());
            history.apply(&Edit::ChangePart { bar: 0, at: 0, change: PartChange::Via(change) }).unwrap();
            assert_ne!(*history.plan(), plan);
            history.undo();
            assert_eq!(*history.plan(), plan);
        }
    }

    #[test]
    fn a_shape_that_is_not_there_is_not_changed() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        for change in [ViaChange::Remove(2), ViaChange::Bend(7, None), ViaChange::Move { from: 0, to: 2 }] {
            let edit = Edit::ChangePart { bar: 0, at: 0, change: PartChange::Via(change) };
            assert_eq!(edit.applied(&plan).err(), Some(Refusal::NoSuchPlace));
        }
    }
}
