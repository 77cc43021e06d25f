//! The marks that are laid off on the cold bar, and the slits that are cut into it later.

use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::job::site::{Part, Site, in_mm};
use crate::job::task::Task;
use fh_core::balance::{HoleMark, SlitMark};
use fh_core::describe::{hole_words, laid_cuts, laid_from_to_words};
use fh_core::forms;
use fh_core::plan::{Form, Made, Operation, SizeName};

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

/// Whether the mark between two parts is struck.
pub(crate) fn is_struck(site: &Site<'_>, before: usize, after: usize) -> bool {
    site.balance.is_struck(before, after)
}

/// Whether some marks of a bar are not struck.
pub(crate) fn leaves_marks_out(site: &Site<'_>) -> bool {
    site.chains[0].1.windows(2).any(|pair| !is_struck(site, pair[0], pair[1]))
}

/// The marks of a bar from the datum end on; the last is where it is cut.
pub(crate) fn mark_lines(site: &Site<'_>) -> Vec<MarkLine> {
    let parts = &site.chains[0].1;
    let line = |(place, at): (usize, &usize)| {
        if parts.get(place + 1).is_some_and(|next| !is_struck(site, *at, *next)) {
            return None;
        }
        Some(MarkLine {
            number: site.bar.path(*at),
            at: site.balance.mark_text(*at)?,
            at_mm: site.balance.struck_mm(*at)?,
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
        let is_slit = stage.slit
            && !stage.pierced
            && matches!(part.segment.form, Form::Hole(forms::Hole { made: Made::Drifted, .. }));
        let half = in_mm(part.balance.derived_length(SizeName::Slit)?) / 2.0;
        let middle = lengths.starts[part.at] + part.balance.hole_share()? * lengths.lengths[part.at];
        is_slit.then_some([middle - half, middle + half])
    };
    site.parts().filter_map(slit).collect()
}

/// A line or a cross that is laid off on the cold bar besides the marks.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidLine {
    /// What it is: `hole`, `slit`.
    pub what: &'static str,
    /// The figure that it is laid off by: how far a hole's middle is from the datum end, how far a slit is from the edge.
    pub at: String,
    /// What it is of, and for a slit from which edge and from where to where.
    pub words: String,
    /// Where it is drawn.
    pub place: LaidPlace,
}

/// Where a hole or a slit lies on the bar as it is seen for marking: along it from the datum end, and above its middle, in mm.
#[derive(Clone, Debug, PartialEq)]
pub enum LaidPlace {
    /// The middles of holes in a row across the bar.
    Hole {
        /// Along the bar.
        at_mm: f64,
        /// Above its middle.
        across_mm: Vec<f64>,
    },
    /// The lines of a slit.
    Slit {
        /// From where to where along the bar.
        ends_mm: [f64; 2],
        /// Above its middle.
        across_mm: Vec<f64>,
        /// Whether they are in sight, and not in an edge.
        is_seen: bool,
    },
}

impl LaidLine {
    /// It in words: `hole at 42 mm: …`.
    pub fn words(&self) -> String {
        format!("{} {}: {}", self.what, self.at, self.words)
    }
}

/// What is laid off on a bar besides its marks: holes, then slits.
pub(crate) fn laid_lines(site: &Site<'_>) -> Vec<LaidLine> {
    let laid = site.balance.laid_off();
    let unit = site.plan.units.length;
    let hole = |hole: &HoleMark| LaidLine {
        what: "hole",
        at: hole.shop.text(),
        words: format!(
            "{} in “{}”{}",
            hole_words(hole, unit),
            site.name(hole.segment),
            if hole.is_hammered { ", laid off again once that is flat" } else { "" }
        ),
        place: LaidPlace::Hole { at_mm: hole.shop.mm(), across_mm: hole.across_mm.clone() },
    };
    let slit = |slit: &SlitMark| {
        let (at, edge) = laid_cuts(slit, unit).map_or_else(
            || ("through".to_owned(), String::new()),
            |cuts| (cuts.far, format!("from the {}, ", cuts.edge)),
        );
        let along = laid_from_to_words(site.bar, site.balance, slit);
        LaidLine {
            what: "slit",
            at,
            words: format!("{edge}{along}: “{}”", site.name(slit.segment)),
            place: LaidPlace::Slit {
                ends_mm: slit.ends.map(|end| end.shop.mm()),
                across_mm: slit.across_mm.clone(),
                is_seen: slit.is_seen,
            },
        }
    };
    laid.holes.iter().map(hole).chain(laid.slits.iter().map(slit)).collect()
}
