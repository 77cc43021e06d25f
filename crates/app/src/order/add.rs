//! A new step as it is added: one deed on some parts, or words alone.

use fh_core::plan::{Bar, Deed, Operation, Step};

/// A step on some segments of a bar. Of the smith's own it has its words alone.
pub(crate) fn step_on(bar: usize, bars: &[Bar], operation: Operation, parts: &[usize], words: &str) -> Step {
    let paths = bars.get(bar).map(|bar| parts.iter().map(|part| bar.path(*part)).collect()).unwrap_or_default();
    let words = words.trim();
    Step {
        bar: (bar > 0).then(|| u32::try_from(bar + 1).ok()).flatten(),
        work: vec![Deed::new(operation, paths)],
        title: (!words.is_empty()).then(|| words.to_owned()),
        ..Step::default()
    }
}
