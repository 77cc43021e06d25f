//! The notches of one gauge, and what stands under them.

use crate::fonts::Weight;
use crate::sheets::sizes_in_words::mm_words;
use crate::sheets::type_sizes::{BODY, CAPTION};
use crate::typeset;
use fh_core::plan::Plan;
use fh_work::Gauge;

/// The metal at either end of a strip.
pub(super) const END_MM: f64 = 4.0;
/// The metal between two notches, and the least beside the words of one.
const WEB_MM: f64 = 6.0;
/// Free beside the words under a notch.
const WORDS_FREE_MM: f64 = 2.5;
/// The least room for what a gauge is for.
const LEAST_GROUP_MM: f64 = 38.0;
/// The least depth of a notch.
const SHALLOWEST_MM: f64 = 12.0;

/// One notch.
#[derive(Clone, Debug)]
pub(super) struct Notch {
    /// How wide it is, in mm.
    pub(super) mm: f64,
    /// `go`, `no go`, `hot`; of a least size `no go`, `hot no go`.
    pub(super) kind: &'static str,
    /// Its size in words.
    pub(super) words: String,
}

/// Notches that stand together, with what they are for.
#[derive(Clone, Debug)]
pub(super) struct Group {
    pub(super) notches: Vec<Notch>,
    /// The cold size in words.
    pub(super) size: String,
    /// What it is for.
    pub(super) what: String,
}

impl Notch {
    /// How much of the strip it takes, with the metal beside it.
    pub(super) fn cell_mm(&self) -> f64 {
        let words = typeset::width_mm(&typeset::printable(&self.words), CAPTION, Weight::SemiBold);
        let kind = typeset::width_mm(self.kind, BODY, Weight::SemiBold);
        (self.mm + WEB_MM).max(words.max(kind) + WORDS_FREE_MM)
    }
}

impl Group {
    /// How much of the strip it takes.
    pub(super) fn width_mm(&self) -> f64 {
        self.notches_mm().max(LEAST_GROUP_MM)
    }

    /// How much of the strip its notches take.
    pub(super) fn notches_mm(&self) -> f64 {
        self.notches.iter().map(Notch::cell_mm).sum()
    }

    /// How deep its deepest notch is: more than half of what it goes over, so that it holds a round bar at its thickest.
    pub(super) fn deepest_mm(&self) -> f64 {
        self.notches.iter().map(|notch| notch.mm * 0.6 + 2.0).fold(SHALLOWEST_MM, f64::max)
    }
}

/// The notches of a gauge: in one group, or in one for each notch where they are wider together than the page.
pub(super) fn group(plan: &Plan, gauge: &Gauge, width: f64) -> Vec<Group> {
    let notch = |kind, mm: f64| Notch { mm, kind, words: mm_words(plan.units.length, mm) };
    let hot = if gauge.go_mm.is_some() { "hot" } else { "hot no go" };
    let mut notches: Vec<Notch> = gauge.go_mm.map(|mm| notch("go", mm)).into_iter().collect();
    notches.push(notch("no go", gauge.no_go_mm));
    notches.extend(gauge.hot_mm.map(|mm| notch(hot, mm)));
    notches.retain(|notch| notch.mm.is_finite());
    let group = |notches| Group { notches, size: gauge.words.clone(), what: gauge.what.clone() };
    let together = group(notches.clone());
    if together.width_mm() <= width - 2.0 * END_MM {
        return vec![together];
    }
    notches.into_iter().map(|notch| group(vec![notch])).collect()
}
