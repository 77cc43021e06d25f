//! Necks: the grooves that keep a block to itself, on which side of a mark each lies, and how deep it may be.

use crate::job::along::leader;
use crate::job::ends::is_cut_before;
use crate::job::site::{Part, Site, extents, in_mm, least};
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
    /// What has to be left in it, in mm: no less than what stands there in the end; of edges what is left from side to side.
    pub(crate) left_mm: f64,
    /// What has to be left of one that goes all round from side to side, in mm, where that is not the same.
    pub(crate) left_wide_mm: Option<f64>,
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
    let is_one_plate = are_one_plate(site, part, beside);
    if is_set_down(part) || is_set_down(beside) || is_cut_first || is_the_others || is_along || is_one_plate {
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
        [true, true] => (Faces::AllRound, size[1]),
        [true, false] => (Faces::Edges, size[0]),
        // What is spread from there needs metal for the corners of its outline: the groove goes half as deep.
        _ if size[0] > raw[0] => (Faces::TopAndBottom, f64::midpoint(size[1], raw[1])),
        _ => (Faces::TopAndBottom, size[1]),
    };
    let is_flat = faces == Faces::AllRound && (size[0] - size[1]).abs() > NOTHING;
    let left_wide_mm = is_flat.then_some(size[0]);
    // What runs out to nothing has nothing that could be left in a groove.
    (left_mm > NOTHING && size[0] > NOTHING).then_some(Groove { at_end, inside, faces, left_mm, left_wide_mm })
}

/// What a fuller has room for.
pub(crate) struct FullerRoom {
    /// Half as wide as the bar is thick, no less than 6 mm: common practice, no source.
    pub(crate) usual: f64,
    /// The gap between its neighbors, in mm.
    pub(crate) room: f64,
    /// Half the block, in mm: common practice, no source.
    pub(crate) block: f64,
}

/// What the fuller that necks a block has room for.
pub(crate) fn fuller_room(site: &Site<'_>, part: Part<'_>) -> FullerRoom {
    FullerRoom {
        usual: (least(extents(&site.raw_section(part.at))) / 2.0).max(6.0),
        room: gap(site, part.at).unwrap_or(f64::INFINITY),
        block: in_mm(part.balance.mark_end - part.balance.mark_start) / 2.0,
    }
}

/// How wide the fuller is that necks a block, in mm: as wide as the gap it works in, and no wider than it has room for.
pub(crate) fn fuller_mm(site: &Site<'_>, part: Part<'_>) -> f64 {
    let FullerRoom { usual, room, block } = fuller_room(site, part);
    usual.min(room).min(block).max(2.0)
}

/// The room between a part and the next shoulder, corner or neck on either side, in mm; none where there is none.
fn gap(site: &Site<'_>, at: usize) -> Option<f64> {
    let part = site.part(at)?;
    let near = site.beside(at).into_iter().flatten().filter_map(|beside| {
        let far = site.beside(beside).into_iter().flatten().find(|far| *far != at)?;
        let stepped =
            matches!(site.flat[far].segment.form, Form::Shoulder(_) | Form::Peak(_) | Form::Flag(_) | Form::Hole(_));
        let beside = site.part(beside)?;
        (stepped && beside.balance.chain == part.balance.chain).then(|| in_mm(beside.balance.stock_length))
    });
    near.min_by(f64::total_cmp)
}

/// How much longer a bar becomes by a groove that is set with a round-nosed fuller, in mm: what the groove pushes out, at the section
/// of the bar.
pub(crate) fn pushed_mm(site: &Site<'_>, part: Part<'_>, groove: &Groove) -> f64 {
    const PLACES: usize = 40;
    let [width, thickness] = extents(&site.raw_section(part.at));
    let across = if groove.faces == Faces::Edges { width } else { thickness };
    let deep_in = |side: f64, left: f64| ((side - left) / 2.0).max(0.0);
    let deep = deep_in(across, groove.left_mm);
    let deep_wide = deep_in(width, groove.left_wide_mm.unwrap_or(groove.left_mm));
    let nose = fuller_mm(site, part) / 2.0;
    // Down to its own radius it cuts a segment of a circle; deeper it goes in with straight sides.
    let deepest = if groove.faces == Faces::AllRound { deep.max(deep_wide) } else { deep };
    let half = if deepest < nose { (nose * nose - (nose - deepest).powi(2)).sqrt() } else { nose };
    let taken = |place: usize| {
        let x = half * (place as f64 + 0.5) / PLACES as f64;
        let left = |side: f64, deep: f64| {
            let depth = (deep - nose + (nose * nose - x * x).max(0.0).sqrt()).max(0.0);
            (side - 2.0 * depth).max(0.0)
        };
        let now = match groove.faces {
            Faces::AllRound => left(width, deep_wide) * left(thickness, deep),
            Faces::Edges => left(width, deep) * thickness,
            Faces::TopAndBottom => width * left(thickness, deep),
        };
        1.0 - now / (width * thickness).max(1e-9)
    };
    2.0 * half * (0..PLACES).map(taken).sum::<f64>() / PLACES as f64
}

/// On which sides a flattened part lies beside bar that is thicker, so that it does not lie on a flat face: toward the datum,
/// and away from it.
pub(crate) fn thicker_beside(site: &Site<'_>, part: Part<'_>) -> [bool; 2] {
    let plate = plate_zones(site, part.at);
    let is_thicker = |end: Option<&usize>, at_end: bool| {
        let Some(zone) = end.and_then(|at| site.part(*at)) else { return false };
        let own = size_at(site, zone, at_end)[1];
        let beside = site.beside(zone.at)[usize::from(at_end)].and_then(|at| site.part(at));
        beside.is_some_and(|beside| size_at(site, beside, !at_end)[1] > own + CLEAR)
    };
    [is_thicker(plate.first(), false), is_thicker(plate.last(), true)]
}

/// Whether a part is a block that is kept to itself until it is forged.
fn is_block(part: Part<'_>) -> bool {
    let form = &part.segment.form;
    matches!(form, Form::Flag(_) | Form::Hole(_) | Form::Ball(_) | Form::Cube(_) | Form::Peak(_))
}

/// Whether two parts side by side are zones of one plate: written so, or as wide and as thick as each other where they meet.
pub(crate) fn are_one_plate(site: &Site<'_>, one: Part<'_>, other: Part<'_>) -> bool {
    let (before, after) = if one.at < other.at { (one, other) } else { (other, one) };
    let is_plate = |part: Part<'_>| matches!(part.segment.form, Form::Flag(_) | Form::Hole(_));
    let is_alike = || {
        let [first, then] = [size_at(site, before, true), size_at(site, after, false)];
        [0, 1].into_iter().all(|way| (first[way] - then[way]).abs() < NOTHING && first[way] > NOTHING)
    };
    is_plate(before) && is_plate(after) && (after.segment.form.joins_before() || is_alike())
}

/// All zones of the plate that a part is of, from the datum on; the part alone where it is no plate, or one by itself.
pub(crate) fn plate_zones(site: &Site<'_>, at: usize) -> Vec<usize> {
    let joined = |one: usize, other: Option<usize>| {
        let pair = site.part(one).zip(other.and_then(|other| site.part(other)));
        pair.is_some_and(|(one, other)| are_one_plate(site, one, other))
    };
    let mut zones = vec![at];
    while let Some(first) = zones.first().copied().filter(|first| joined(*first, site.beside(*first)[0])) {
        zones.splice(0..0, site.beside(first)[0]);
    }
    while let Some(last) = zones.last().copied().filter(|last| joined(*last, site.beside(*last)[1])) {
        zones.extend(site.beside(last)[1]);
    }
    zones
}

/// The zones beside a part that are one plate with it.
pub(crate) fn same_plate(site: &Site<'_>, at: usize) -> Vec<usize> {
    let Some(part) = site.part(at) else { return Vec::new() };
    let beside = site.beside(at).into_iter().flatten();
    beside.filter(|other| site.part(*other).is_some_and(|other| are_one_plate(site, part, other))).collect()
}

/// Whether a part is set down to a shoulder, which keeps the metal on either side of it to itself.
fn is_set_down(part: Part<'_>) -> bool {
    matches!(part.segment.form, Form::Shoulder(_) | Form::Tenon(_))
}

/// How wide and how thick a forged part is at one of its ends, in mm; as the bar where it has no section there.
pub(crate) fn size_at(site: &Site<'_>, part: Part<'_>, at_end: bool) -> [f64; 2] {
    let (raw, far) = (site.raw_section(part.at), at_end != part.balance.reversed);
    part.balance.shape.as_ref().map_or_else(|| extents(&raw), |shape| shape.end_extents_mm(far, &raw))
}
