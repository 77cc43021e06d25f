//! How necks are set, in words, and where they are still open.

use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::job::neck::{Faces, Groove, fuller_mm, grooves, pushed_mm};
use crate::job::site::{Part, Site};
use crate::says::words::length_words;

/// Where necks are that are not forged yet, in mm along the bar.
pub(crate) fn open_mm(site: &Site<'_>, progress: &Progress, lengths: &Lengths) -> Vec<f64> {
    let is_open = |part: &Part<'_>| {
        let stage = progress.stages[part.at];
        stage.isolated && !stage.forged && stage.on_the_way().is_none() && progress.is_there(site, part.at)
    };
    let of = |part: Part<'_>| {
        let start = lengths.starts[part.at];
        let end = start + lengths.lengths[part.at];
        grooves(site, part).into_iter().map(move |groove| if groove.at_end { end } else { start })
    };
    site.parts().filter(is_open).flat_map(of).collect()
}

/// A groove that is not forged over yet.
pub(crate) struct OpenGroove {
    /// Where its middle lies, in mm along the bar.
    at_mm: f64,
    /// How much longer the bar is by it, in mm.
    pushed_mm: f64,
    /// The part that it lies in.
    pub(crate) within: usize,
    /// The part whose end it is set at.
    pub(crate) of: usize,
    /// How wide it is, in mm.
    pub(crate) wide_mm: f64,
}

/// The grooves that are set, and lie in metal that is not forged yet: they have pushed the bar out.
pub(crate) fn open_grooves(site: &Site<'_>, progress: &Progress, lengths: &Lengths) -> Vec<OpenGroove> {
    let of = |part: Part<'_>| {
        let start = lengths.starts[part.at];
        let ends = [start, start + lengths.lengths[part.at]];
        let open = move |groove: Groove| {
            let beside = site.beside(part.at)[usize::from(groove.at_end)];
            let within = if groove.inside { part.at } else { beside? };
            let stage = progress.stages[within];
            let wide_mm = fuller_mm(site, part);
            // Inside of the end and outside of the start it lies toward the datum.
            let toward = if groove.at_end == groove.inside { -1.0 } else { 1.0 };
            let at_mm = ends[usize::from(groove.at_end)] + toward * wide_mm / 2.0;
            let is_open = !stage.forged && !stage.along && !stage.off;
            is_open.then(|| OpenGroove {
                at_mm,
                pushed_mm: pushed_mm(site, part, &groove),
                within,
                of: part.at,
                wide_mm,
            })
        };
        grooves(site, part).into_iter().filter_map(open).collect::<Vec<_>>()
    };
    let is_set = |part: &Part<'_>| progress.stages[part.at].isolated && progress.is_there(site, part.at);
    site.parts().filter(is_set).flat_map(of).collect()
}

/// By how much the grooves between two places have pushed them apart, in mm.
pub(crate) fn pushed_between(grooves: &[OpenGroove], one: f64, other: f64) -> f64 {
    let lies = |groove: &&OpenGroove| groove.at_mm > one.min(other) && groove.at_mm < one.max(other);
    grooves.iter().filter(lies).map(|groove| groove.pushed_mm).sum()
}

/// How the fuller is set, in words; at which of two marks, where only one is necked.
pub(crate) fn words(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    let grooves = grooves(site, part);
    let has_two_marks = site.beside(part.at).iter().all(Option::is_some);
    let alike = |one: &Groove, other: &Groove| one.inside == other.inside && one.faces == other.faces;
    let sentence = |place: &str, groove: &Groove| {
        let (side, keeps) = if groove.inside {
            ("inside of", "the bar beside it keeps its size")
        } else {
            ("outside of", "the block keeps all of its metal")
        };
        let how = match groove.faces {
            Faces::AllRound if groove.left_wide_mm.is_some() => {
                "all round, no deeper on either pair of sides than what is left there"
            }
            Faces::AllRound => "all round",
            Faces::TopAndBottom => "from top and bottom, turning it over",
            Faces::Edges => "from both edges, turning it over",
        };
        format!("Set the fuller {side} {place}, {how}: {keeps}.")
    };
    let place = |groove: &Groove| if groove.at_end { "the mark at its end" } else { "the mark at its start" };
    match grooves.as_slice() {
        [] => None,
        [one] if has_two_marks => {
            let other = if one.at_end { "start" } else { "end" };
            Some(format!("{} The mark at its {other} needs no neck.", sentence(place(one), one)))
        }
        [one] => Some(sentence("the mark", one)),
        [one, other] if alike(one, other) => Some(sentence("the marks", one)),
        all => Some(all.iter().map(|groove| sentence(place(groove), groove)).collect::<Vec<_>>().join(" ")),
    }
}

/// What has to be left in the necks: for each of them its name and its size in mm, once where both are alike; of one that is
/// flat its thickness and its width.
pub(crate) fn left(site: &Site<'_>, grooves: &[Groove]) -> Vec<(String, f64)> {
    let words = |groove: &Groove| {
        let of = |mm: f64| length_words(site.plan, mm);
        (of(groove.left_mm), groove.left_wide_mm.map(of))
    };
    let both = |place: &str, groove: &Groove| {
        let wide = groove.left_wide_mm.map(|mm| (format!("width {place}, at least"), mm));
        std::iter::once((format!("{place}, at least"), groove.left_mm)).chain(wide).collect::<Vec<_>>()
    };
    match grooves {
        [one] => both("left in the neck", one),
        [one, other] if words(one) == words(other) => both("left in the necks", one),
        all => {
            let place = |groove: &Groove| match groove.at_end {
                false => "left in the neck at its start",
                true => "left in the neck at its end",
            };
            all.iter().flat_map(|groove| both(place(groove), groove)).collect()
        }
    }
}
