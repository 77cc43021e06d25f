//! Necks: the grooves that keep a block to itself, on which side of a mark each lies, and how deep it may be.

use crate::along::leader;
use crate::ends::is_cut_before;
use crate::heating::Lengths;
use crate::progress::Progress;
use crate::site::{Part, Site, extents, in_mm};
use crate::words::length_words;
use fh_core::metal::{SectionSize, Shape};
use fh_core::plan::Form;

/// What is thinner than this share of the bar is thinned: common practice, no source.
const THINNED: f64 = 0.9;

/// A bar thicker by more than this does not lie flat beside a flattened part, in mm: common practice, no source.
const CLEAR: f64 = 2.0;

/// The sides that a groove goes into: those that become smaller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Faces {
    TopAndBottom,
    Edges,
    AllRound,
}

/// What is no thicker than this is nothing, in mm.
const NOTHING: f64 = 0.05;

/// A groove at one end of a block.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Groove {
    /// Whether it is at the end of the block, away from the datum; at its start where not.
    pub(crate) at_end: bool,
    /// Whether it lies in the block; in the metal beside it where not.
    pub(crate) inside: bool,
    /// From which sides it goes.
    pub(crate) faces: Faces,
    /// What has to be left in it, in mm: no less than what stands there in the end.
    pub(crate) left_mm: f64,
}

/// The grooves of a block, from the datum end on; none at an end where nothing goes thin, where a shoulder
/// stands, or where what lies beside it is cut off first.
///
/// A groove lies in what becomes thinner there, so that the other side of the mark keeps its metal: common practice, no
/// source.
pub(crate) fn grooves(site: &Site<'_>, part: Part<'_>) -> Vec<Groove> {
    let beside = site.beside(part.at).into_iter().enumerate();
    beside.filter_map(|(side, beside)| groove(site, part, site.part(beside?)?, side == 1)).collect()
}

fn groove(site: &Site<'_>, part: Part<'_>, beside: Part<'_>, at_end: bool) -> Option<Groove> {
    let is_cut_first = is_cut_before(site, part.at, at_end);
    // Between two blocks one groove is enough: that of the block toward the datum; beside a block it is the block's.
    let is_the_others = is_block(beside) && !(at_end && is_block(part));
    // What is drawn out along with the other is one bar with it.
    let is_with = |one: Part<'_>, other: Part<'_>| leader(site, one.at).is_some_and(|leader| leader.part == other.at);
    let is_along = is_with(part, beside) || is_with(beside, part);
    if is_set_down(part) || is_set_down(beside) || is_cut_first || is_the_others || is_along {
        return None;
    }
    let raw = extents(&site.raw_section(part.at));
    let [own, other] = [size_at(site, part, at_end), size_at(site, beside, !at_end)];
    let thinned = |size: [f64; 2]| [0, 1].map(|way| size[way] < THINNED * raw[way]);
    let (inside, size) = match (thinned(other), thinned(own)) {
        ([false, false], [false, false]) => return None,
        ([false, false], _) => (true, own),
        _ => (false, other),
    };
    let (faces, left_mm) = match thinned(size) {
        [true, true] => (Faces::AllRound, least(size)),
        [true, false] => (Faces::Edges, size[0]),
        // What is spread from there needs metal for the corners of its outline: the groove goes half as deep.
        _ if inside && size[0] > raw[0] => (Faces::TopAndBottom, f64::midpoint(size[1], raw[1])),
        _ => (Faces::TopAndBottom, size[1]),
    };
    // What runs out to nothing has nothing that could be left in a groove.
    (left_mm > NOTHING).then_some(Groove { at_end, inside, faces, left_mm })
}

/// On which sides a flattened part lies beside bar that is thicker, so that it does not lie on a flat face: toward the datum,
/// and away from it.
pub(crate) fn thicker_beside(site: &Site<'_>, part: Part<'_>) -> [bool; 2] {
    let [before, after] = site.beside(part.at);
    let is_thicker = |beside: Option<usize>, at_end: bool| {
        let own = size_at(site, part, at_end)[1];
        beside.and_then(|at| site.part(at)).is_some_and(|beside| size_at(site, beside, !at_end)[1] > own + CLEAR)
    };
    [is_thicker(before, false), is_thicker(after, true)]
}

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

/// Whether a part is a block that is kept to itself until it is forged.
fn is_block(part: Part<'_>) -> bool {
    let form = &part.segment.form;
    matches!(form, Form::Flag(_) | Form::Hole(_) | Form::Ball(_) | Form::Cube(_) | Form::Peak(_))
}

/// Whether a part is set down to a shoulder, which keeps the metal on either side of it to itself.
fn is_set_down(part: Part<'_>) -> bool {
    matches!(part.segment.form, Form::Shoulder(_) | Form::Tenon(_))
}

pub(crate) fn least([width, thickness]: [f64; 2]) -> f64 {
    width.min(thickness)
}

/// How wide and how thick a forged part is at one of its ends, in mm; as the bar where it has no section there.
pub(crate) fn size_at(site: &Site<'_>, part: Part<'_>, at_end: bool) -> [f64; 2] {
    let raw = extents(&site.raw_section(part.at));
    let far = at_end != part.balance.reversed;
    let at_end_of = |from: &SectionSize, to: &SectionSize| extents(if far { to } else { from });
    match &part.balance.shape {
        Some(Shape::Prism { section, .. } | Shape::Peak { section, .. }) => extents(section),
        Some(Shape::Taper { from, to, .. } | Shape::Shoulder { from, to, .. }) => at_end_of(from, to),
        Some(Shape::Flag { outline, root, tip }) => {
            let width = outline.end_width(far).map_or(raw[0], in_mm);
            [width, in_mm(if far { *tip } else { *root })]
        }
        Some(Shape::Hole { outline, thickness, .. }) => [in_mm(outline.width()), in_mm(*thickness)],
        Some(Shape::Ball { diameter: size } | Shape::Cube { side: size }) => [in_mm(*size); 2],
        Some(Shape::Split(_)) | None => raw,
    }
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
