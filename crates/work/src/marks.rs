//! The marks that are laid off on the cold bar, and the slits that are cut into it later.

use crate::heating::Lengths;
use crate::progress::Progress;
use crate::site::{Part, Site, in_mm};
use crate::task::Task;
use fh_core::metal::Shape;
use fh_core::plan::{Form, Made, Operation};

/// One mark, at the end of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct MarkLine {
    /// Its number: that of the part which ends there.
    pub number: String,
    /// How far it is from the datum end, as it is laid off.
    pub at: String,
    /// The same in mm.
    pub at_mm: f64,
    /// The part that ends there.
    pub ends: String,
    /// The part that begins there; none at the end of the bar.
    pub begins: Option<String>,
}

impl MarkLine {
    /// It in words: `1: 26 mm, from “leaf” to “stalk”`.
    pub fn words(&self) -> String {
        let Self { number, at, ends, begins, .. } = self;
        match begins {
            Some(begins) => format!("{number}: {at}, from “{ends}” to “{begins}”"),
            None => format!("{number}: {at}, the end of “{ends}”, cut here"),
        }
    }
}

/// Whether a task lays off all the marks of a bar.
pub(crate) fn is_marking(task: &Task) -> bool {
    task.operation == Operation::Mark && task.part.is_none()
}

/// Marks nearer to each other than this cannot both be struck, in mm: common practice, no source.
const NEAREST: f64 = 3.0;

/// Whether the mark between two parts is struck: of the two beside a short shoulder only that on its thick side.
pub(crate) fn is_struck(site: &Site<'_>, before: usize, after: usize) -> bool {
    let thin_side = |at: usize, is_end: bool| {
        let Some(part) = site.part(at) else { return false };
        let Some(Shape::Shoulder { from, to, .. }) = &part.balance.shape else { return false };
        let is_thin = if is_end { to.area() < from.area() } else { from.area() < to.area() };
        is_thin && in_mm(part.balance.stock_length) < NEAREST
    };
    !thin_side(before, true) && !thin_side(after, false)
}

/// Whether some marks of a bar are not struck.
pub(crate) fn leaves_marks_out(site: &Site<'_>) -> bool {
    site.chains[0].1.windows(2).any(|pair| !is_struck(site, pair[0], pair[1]))
}

/// The marks of a bar from the datum end on; the last is where it is cut.
pub(crate) fn mark_lines(site: &Site<'_>) -> Vec<MarkLine> {
    let parts = &site.chains[0].1;
    let line = |(place, at): (usize, &usize)| {
        let balance = site.balance.segments.get(*at)?;
        if parts.get(place + 1).is_some_and(|next| !is_struck(site, *at, *next)) {
            return None;
        }
        Some(MarkLine {
            number: site.bar.path(*at),
            at: balance.mark_end_shop.text(),
            at_mm: balance.mark_end_shop.mm(),
            ends: site.name(*at),
            begins: parts.get(place + 1).map(|next| site.name(*next)),
        })
    };
    parts.iter().enumerate().filter_map(line).collect()
}

/// Slits that are cut and not opened yet, from where to where in mm along the bar.
pub(crate) fn slits_mm(site: &Site<'_>, progress: &Progress, lengths: &Lengths) -> Vec<[f64; 2]> {
    let slit = |part: Part<'_>| {
        let stage = progress.stages[part.at];
        let is_slit =
            stage.slit && !stage.pierced && matches!(part.segment.form, Form::Hole { made: Made::Drifted, .. });
        let half = in_mm(part.balance.derived.iter().find(|size| size.name == "slit")?.length?) / 2.0;
        let middle = lengths.starts[part.at] + middle_share(part)? * lengths.lengths[part.at];
        is_slit.then_some([middle - half, middle + half])
    };
    site.parts().filter_map(slit).collect()
}

/// Where the middle of a hole lies along its part, as a share of its length from the datum side.
pub(crate) fn middle_share(part: Part<'_>) -> Option<f64> {
    let Some(Shape::Hole { outline, at, .. }) = &part.balance.shape else { return None };
    let share = in_mm(*at) / in_mm(outline.length()).max(1e-9);
    Some(if part.balance.reversed { 1.0 - share } else { share })
}
