//! How necks are set, in words, and where they are still open.

use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::job::neck::{Faces, Groove, grooves};
use crate::job::site::{Part, Site};
use crate::says::words::length_words;

/// Where necks are that are not forged yet, in mm along the bar.
pub(crate) fn open_mm(site: &Site<'_>, progress: &Progress, lengths: &Lengths) -> Vec<f64> {
    let is_open = |part: &Part<'_>| {
        let stage = progress.stages[part.at];
        stage.isolated && !stage.forged && progress.is_there(site, part.at)
    };
    let of = |part: Part<'_>| {
        let start = lengths.starts[part.at];
        let end = start + lengths.lengths[part.at];
        grooves(site, part).into_iter().map(move |groove| if groove.at_end { end } else { start })
    };
    site.parts().filter(is_open).flat_map(of).collect()
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

/// What has to be left in the necks: for each of them its name and its size in mm, once where both are alike.
pub(crate) fn left(site: &Site<'_>, grooves: &[Groove]) -> Vec<(&'static str, f64)> {
    let same =
        |one: &Groove, other: &Groove| length_words(site.plan, one.left_mm) == length_words(site.plan, other.left_mm);
    match grooves {
        [one] => vec![("left in the neck, at least", one.left_mm)],
        [one, other] if same(one, other) => vec![("left in the necks, at least", one.left_mm)],
        all => {
            let name = |groove: &Groove| match groove.at_end {
                false => "left in the neck at its start, at least",
                true => "left in the neck at its end, at least",
            };
            all.iter().map(|groove| (name(groove), groove.left_mm)).collect()
        }
    }
}
