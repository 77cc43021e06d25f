//! Fixed marks: each is one place, and they rise along the bar.

use super::super::fault::{Checked, refuse};
use super::super::key_path::KeyPath;
use crate::plan::{Bar, Form, Segment};

/// Makes sure that the fixed marks of a bar rise along it.
pub(super) fn check_rising(bar: &Bar, segments: &KeyPath) -> Checked {
    let mut before: Option<&fh_measure::WrittenLength> = None;
    for (index, segment) in bar.segments.iter().enumerate() {
        let Some(mark) = &segment.ends_at else { continue };
        let at = segments.index(index).key("ends_at");
        if mark.is_range() {
            return refuse(at, format!("{} was found, but a fixed mark is one place, no range", mark.text()));
        }
        if let Some(before) = before.filter(|before| before.mm() >= mark.mm()) {
            let message = format!(
                "the fixed mark {} does not lie beyond the one before it, {}; fixed marks rise along the bar",
                mark.text(),
                before.text()
            );
            return refuse(at, message);
        }
        before = Some(mark);
    }
    Ok(())
}

/// Makes sure that no block has two open parts: of two, neither would know its metal.
pub(super) fn check_open(bar: &Bar, segments: &KeyPath) -> Checked {
    for places in bar.block_places() {
        let is_open = |place: &usize| bar.segments.get(*place).is_some_and(|it| matches!(it.form, Form::Open(_)));
        if let Some(second) = places.filter(is_open).nth(1) {
            let at = segments.index(second).key("form").key("open");
            return refuse(at, "a second open part was found; between two fixed marks one is left open at most");
        }
    }
    Ok(())
}

/// Refuses a fixed mark where there can be none.
pub(super) fn refuse_mark(segment: &Segment, why: &str, at: &KeyPath) -> Checked {
    match &segment.ends_at {
        Some(mark) => refuse(at.key("ends_at"), format!("{} was found, but {why}", mark.text())),
        None => Ok(()),
    }
}
