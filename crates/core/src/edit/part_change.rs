//! Changes of one part as its fields offer them: sizes typed over, another form, another bend, another size that follows.

use super::{Gave, HoleMove, Refusal, ViaChange, ties};
use crate::balance::{SegmentBalance, balance};
use crate::first_sizes::FirstSizes;
use crate::new_segment::{change_form, first_bend};
use crate::plan::{BendKind, Chain, FormKind, Plan, Segment, SizeName, SocketAxis, Via};

/// What becomes of a part.
#[derive(Clone, Debug, PartialEq)]
pub enum PartChange {
    /// Another size across it, as it is typed or dragged on a drawing.
    Across {
        /// Which one.
        across: super::Across,
        /// The size.
        size: fh_measure::WrittenLength,
    },
    /// Another place of one of its holes.
    Hole(HoleMove),
    /// Its sizes, words and choices as they were typed over. Where a size that followed was typed, another one follows.
    Typed(Box<Segment>),
    /// Another form, that keeps what it can.
    Form(FormKind),
    /// Another bend, with sizes to be typed over; or none.
    Bend(Option<BendKind>),
    /// Another size that follows from those that its bend ties together.
    Follows(SizeName),
    /// Another way for the axis of its socket to lie.
    Axis(SocketAxis),
    /// Its shapes on the way.
    Via(ViaChange),
}

impl PartChange {
    /// The part after the change, and the size that follows then where another one was typed.
    pub(super) fn changed(&self, plan: &Plan, bar: usize, at: usize) -> Result<(Segment, Vec<Gave>), Refusal> {
        let before = plan.segment(bar, at).ok_or(Refusal::NoSuchPlace)?;
        let balance = balance(plan);
        let bar_balance = balance.bars.get(bar);
        let settled = bar_balance.and_then(|bar| bar.segments.get(at));
        let (chain, place) = plan.bars.get(bar).and_then(|bar| bar.place_of(at)).unwrap_or((Chain::Bar, at));
        let sizes = FirstSizes::within(plan.units, bar_balance, chain);
        let mut next = before.clone();
        match self {
            Self::Across { across, size } => next = across.written(before, size)?,
            Self::Hole(hole) => next = hole.moved(before)?,
            Self::Typed(typed) => {
                next = (**typed).clone();
                let follows = ties::give_way(before, &mut next, &sizes);
                let gave = follows.map(|size| Gave { segment: at, size, text: String::new() });
                return Ok((next, gave.into_iter().collect()));
            }
            Self::Form(kind) => {
                next = change_form(before, *kind, &sizes).ok_or_else(no_sizes)?;
                next.dressed.retain(|_| FormKind::DRESSED.contains(kind));
                next.via.retain(|via| kind.has_via() && (*kind != FormKind::Plain || is_plain(via)));
            }
            Self::Bend(kind) => bend(&mut next, *kind, settled, &sizes, place == 0),
            Self::Follows(size) => ties::choose(&mut next, *size, settled, &sizes),
            Self::Axis(axis) => ties::turn_axis(&mut next, *axis, settled, &sizes),
            Self::Via(change) => next = change.changed(before, &sizes)?,
        }
        Ok((next, Vec::new()))
    }
}

/// Whether a shape on the way is one that a plain part can have.
fn is_plain(via: &Via) -> bool {
    via.form.as_ref().is_none_or(|form| form.kind() == FormKind::Plain)
}

fn no_sizes() -> Refusal {
    Refusal::CannotBe("its first sizes cannot be written in the plan's unit".to_owned())
}

/// Bends a part another way; a length that followed from the bend before it is kept.
fn bend(
    segment: &mut Segment,
    kind: Option<BendKind>,
    settled: Option<&SegmentBalance>,
    sizes: &FirstSizes,
    first: bool,
) {
    ties::keep_form(segment, settled, sizes);
    let shape = settled.and_then(|settled| settled.shape.as_ref());
    segment.bend = kind.and_then(|kind| first_bend(kind, segment, shape, sizes, first));
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::edit::Edit;
    use crate::file;
    use crate::plan::{Bend, Form};
    use fh_measure::{LengthRange, WrittenLength};

    fn plan(segment: &str) -> Plan {
        let plan = format!(
            r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{{ "name": "bar",
            "stock": {{ "square": "10 mm" }}, "segments": [{segment}] }}] }}"#
        );
        file::read(plan.as_bytes()).unwrap()
    }

    fn changed(plan: &Plan, change: PartChange) -> (Plan, Vec<Gave>) {
        Edit::ChangePart { bar: 0, at: 0, change }.applied(plan).unwrap()
    }

    const RING: &str =
        r#"{ "name": "eye", "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "40 mm" } } }"#;

    #[test]
    fn typing_a_size_that_followed_lets_another_one_follow() {
        let plan = plan(RING);
        let mut typed = plan.bars[0].segments[0].clone();
        let Form::Plain(plain) = &mut typed.form else { panic!("{typed:?}") };
        plain.length = WrittenLength::parse("150 mm", None, LengthRange::AboveZero).ok();
        let (next, gave) = changed(&plan, PartChange::Typed(Box::new(typed)));
        assert_eq!(gave[0].size, SizeName::InsideDiameter);
        assert!(matches!(next.bars[0].segments[0].bend, Some(Bend::Ring { inside_diameter: None, .. })));
    }

    #[test]
    fn a_length_that_followed_is_written_down_where_its_bend_is_taken_away() {
        let (next, _) = changed(&plan(RING), PartChange::Bend(None));
        let segment = &next.bars[0].segments[0];
        assert_eq!(segment.bend, None);
        // (40 + 10) pi = 157.08 mm.
        let length = segment.form.length().unwrap().mm();
        assert!((length - 157.08).abs() < 0.01, "{length}");
    }

    #[test]
    fn another_form_keeps_name_and_length() {
        let before = plan(r#"{ "name": "stem", "form": { "plain": { "length": "70 mm" } } }"#);
        let (next, _) = changed(&before, PartChange::Form(FormKind::Taper));
        let segment = &next.bars[0].segments[0];
        assert_eq!((segment.name.as_str(), segment.form.kind()), ("stem", FormKind::Taper));
        assert_eq!(segment.form.length().map(WrittenLength::text), Some("70 mm"));
    }

    #[test]
    fn nothing_moves_where_another_size_is_let_follow() {
        let before = plan(RING);
        let (next, _) = changed(&before, PartChange::Follows(SizeName::InsideDiameter));
        let marks = |plan: &Plan| balance(plan).bars[0].last_mark().get::<uom::si::length::millimeter>();
        assert!((marks(&before) - marks(&next)).abs() < 0.01);
        assert_eq!(ties::follows(&next.bars[0].segments[0]), Some(SizeName::InsideDiameter));
    }

    #[test]
    fn a_part_that_is_not_there_is_not_changed() {
        let edit = Edit::ChangePart { bar: 0, at: 3, change: PartChange::Bend(None) };
        assert_eq!(edit.applied(&plan(RING)).err(), Some(Refusal::NoSuchPlace));
    }
}
