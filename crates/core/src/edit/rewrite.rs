//! Writing a settled size back into the plan, in the plan's unit.

use crate::balance::Settled;
use crate::forms::{Pen, Rolled};
use crate::plan::{Bend, Form, Gives, Segment, SizeName};
use fh_measure::{LengthRange, WrittenLength};

/// Writes the sizes that gave into a segment; the names of the sizes that were written. None where one cannot be written.
///
/// A size that was a range keeps its tolerance about its new middle.
pub(super) fn rewrite(segment: &mut Segment, gives: Gives, settled: &Settled, pen: Pen) -> Option<Vec<SizeName>> {
    let before = ranges(segment);
    let names = rewrite_sizes(segment, gives, settled, pen)?;
    keep_tolerances(segment, &before);
    Some(names)
}

/// Every length of a segment where one of them is a range; else nothing.
fn ranges(segment: &Segment) -> Vec<WrittenLength> {
    let mut any = false;
    segment.lengths(&mut |length| any |= length.is_range());
    let mut all = Vec::new();
    if any {
        segment.lengths(&mut |length| all.push(length.clone()));
    }
    all
}

/// Gives the lengths that were ranges their tolerance back, and their text where they did not change.
fn keep_tolerances(segment: &mut Segment, before: &[WrittenLength]) {
    let mut count = 0;
    segment.lengths(&mut |_| count += 1);
    if count != before.len() {
        return;
    }
    let mut old = before.iter();
    segment.lengths_mut(&mut |length| {
        let Some(old) = old.next().filter(|old| old.is_range() && !length.is_range()) else { return };
        if (old.mm() - length.mm()).abs() < 1e-6 {
            *length = old.clone();
        } else if let Ok(range) = length.with_tolerance_mm(old.tolerance_mm(), LengthRange::AboveZero) {
            *length = range;
        }
    });
}

fn rewrite_sizes(segment: &mut Segment, gives: Gives, settled: &Settled, pen: Pen) -> Option<Vec<SizeName>> {
    let shape = settled.shape.as_ref()?;
    if follows_from_socket(segment, gives) || (gives == Gives::Length && segment.form.one().length_follows()) {
        return rewrite_bend(segment, settled, pen);
    }
    segment.form.one_mut().rewrite(gives, shape, pen)?;
    Some(vec![segment.form.one().given_name(gives)?])
}

/// Whether the size that gives is the one that follows from the socket.
fn follows_from_socket(segment: &Segment, gives: Gives) -> bool {
    if !matches!(segment.form, Form::Flag(_)) {
        return false;
    }
    match (segment.form.one().rolled(), gives) {
        (Rolled::LengthFollows, Gives::Length) | (Rolled::WidthFollows, Gives::Width) => true,
        (Rolled::Unknown, gives) => matches!(gives, Gives::Length | Gives::Width),
        _ => false,
    }
}

/// The bend's radius or diameter takes the place of the length that follows from it.
fn rewrite_bend(segment: &mut Segment, settled: &Settled, pen: Pen) -> Option<Vec<SizeName>> {
    let size = |name: SizeName| settled.derived.iter().find(|derived| derived.name == name)?.length;
    match segment.bend.as_mut()? {
        Bend::Curve { inside_radius, .. } => {
            *inside_radius = Some(pen.write_in(size(SizeName::InsideRadius)?, LengthRange::ZeroOrMore)?);
            Some(vec![SizeName::InsideRadius])
        }
        Bend::Ring { inside_diameter, .. } => {
            *inside_diameter = Some(pen.write(size(SizeName::InsideDiameter)?)?);
            Some(vec![SizeName::InsideDiameter])
        }
        Bend::Scroll { outer_radius, .. } => {
            *outer_radius = Some(pen.write(size(SizeName::OuterRadius)?)?);
            Some(vec![SizeName::OuterRadius])
        }
        Bend::Socket { mandrel, .. } => {
            *mandrel = Some(pen.write(size(SizeName::Mandrel)?)?);
            Some(vec![SizeName::Mandrel])
        }
        Bend::Corner { .. } | Bend::Twist { .. } => None,
    }
}

/// A size of a segment as it is written now, by its name.
pub(super) fn size_words(segment: &Segment, name: SizeName) -> String {
    let mut of_bend = None;
    if let Some(bend) = &segment.bend {
        bend.sizes(&mut |found, length| {
            if found == name {
                of_bend = Some(length.text().to_owned());
            }
        });
    }
    of_bend.unwrap_or_else(|| segment.form.one().given_words(name))
}
