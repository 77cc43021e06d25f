//! How flags and bosses are spread, pierced and trimmed.

use crate::job::beside::is_flat_on_a_block;
use crate::job::neck::{plate_zones, size_at, thicker_beside};
use crate::job::part::{is_drawn_in, is_filed};
use crate::job::site::{Part, Site};
use crate::says::notches;
use crate::says::words::{joined, length_words};
use fh_core::describe::{Face, lower_first};
use fh_core::metal::{Outline, Shape};
use fh_core::plan::Form;

/// How a block is spread.
pub(crate) fn spread(site: &Site<'_>, part: Part<'_>) -> String {
    if is_drawn_in(site, part) {
        return "Strike its two edges, and level the faces every few blows.".to_owned();
    }
    // Zones of one plate are struck from the same side.
    let zones = plate_zones(site, part.at);
    let flush = zones.iter().find_map(|at| flush_side(site, site.part(*at)?));
    let turned = match flush {
        Some(side) => {
            let down = if side == Face::Bottom { "" } else { ", turned over" };
            let side = side.name();
            format!(
                "Keep its {side} on the face{down}, and strike the other side only: it stays flush with the bar there."
            )
        }
        None => "Turn it over every few blows, to keep it in the middle of the bar's thickness.".to_owned(),
    };
    let aside = to_one_side(site, part);
    let lain = match thicker_beside(site, part) {
        [true, true] => Some("Lay it on the bottom block, the thicker bar on both sides clear of it."),
        [false, false] => None,
        _ => Some("Lay it on the face, the thicker bar beside it off the edge."),
    };
    let first = begun_whole(site, part).map(|(first, then)| format!("{first}{then}.")).map(|words| {
        if is_alone(site, part) { words } else { format!("“{}”: {}", site.name(part.at), lower_first(&words)) }
    });
    let zones: Vec<_> = zones.into_iter().map(|at| format!("“{}”", site.name(at))).collect();
    let together =
        (zones.len() > 1).then(|| format!("{} are one plate: forge it as one, with no neck in it.", joined(&zones)));
    let words = lain.map(str::to_owned).into_iter().chain(together).chain(first).chain(aside).chain([turned]);
    words.collect::<Vec<_>>().join(" ")
}

/// How a plate is spread that lies more to one side of the bar than to the other; none of one in its middle.
fn to_one_side(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    /// What is no more than this share of the width off the middle is in the middle: common practice, no source.
    const OFF: f64 = 0.05;
    let Some(Shape::Flag { outline, blank, .. }) = &part.balance.shape else { return None };
    let outline = blank.as_ref().map_or(outline, |blank| &blank.outline);
    let [near, far] = outline.across_mm().map(f64::abs);
    if (far - near).abs() <= OFF * (far + near) {
        return None;
    }
    let (wide, narrow) = if far > near { (Face::Far, Face::Near) } else { (Face::Near, Face::Far) };
    let [wide, narrow] = [wide.name(), narrow.name()];
    let [less, more] = [near.min(far), near.max(far)].map(|mm| length_words(site.plan, mm));
    Some(format!(
        "Spread it to its {wide}: {more} there from the bar's middle line, and {less} on its {narrow}. Set the peen on the half of the {wide}, and strike the edge of the {narrow} back straight every few blows."
    ))
}

/// What is done to a block before it is spread, or where it is spread first, and how it goes on; none where it matters nothing.
fn begun_whole(site: &Site<'_>, part: Part<'_>) -> Option<(String, &'static str)> {
    match &part.balance.shape {
        Some(Shape::Flag { blank: Some(blank), .. }) => first(site, part, blank.outline.bare()),
        Some(Shape::Flag { outline, .. }) => first(site, part, outline.bare()),
        _ => None,
    }
}

/// The same in a few words; a block that is spread without it never comes to its outline.
pub(crate) fn begun(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    if is_drawn_in(site, part) {
        return None;
    }
    begun_whole(site, part).map(|(first, _)| format!("{first}."))
}

/// Whether a part is a plate by itself, and no zone of a larger one.
fn is_alone(site: &Site<'_>, part: Part<'_>) -> bool {
    plate_zones(site, part.at).len() == 1
}

/// The side, top or bottom, on which a flattened part lies level with what is beside it, or beyond a step beside it; none where
/// it lies in the middle.
pub(crate) fn flush_side(site: &Site<'_>, part: Part<'_>) -> Option<Face> {
    /// What is no more than so much off level is level, in mm.
    const LEVEL: f64 = 0.2;
    let faces = |at: usize| {
        let up = site.balance.segments.get(at)?.offset_mm[1];
        let half = site.part(at).map(|part| size_at(site, part, false)[1] / 2.0)?;
        Some([up - half, up + half])
    };
    let is_shoulder = |at: &usize| matches!(site.flat[*at].segment.form, Form::Shoulder(_));
    // What stands beyond a step is what it is level with.
    let beyond = |(side, at): (usize, usize)| if is_shoulder(&at) { site.beside(at)[side] } else { Some(at) };
    let beside = site.beside(part.at).into_iter().enumerate().filter_map(|(side, at)| beyond((side, at?)));
    let beside: Vec<[f64; 2]> = beside.filter_map(faces).collect();
    let own = faces(part.at)?;
    let is_level = |way: usize| beside.iter().all(|other| (other[way] - own[way]).abs() < LEVEL);
    match (beside.is_empty(), is_level(0), is_level(1)) {
        (false, true, false) => Some(Face::Bottom),
        (false, false, true) => Some(Face::Top),
        _ => None,
    }
}

/// What is done to a block before it is spread, so that its outline can come of it, and how it goes on.
fn first(site: &Site<'_>, part: Part<'_>, outline: &Outline) -> Option<(String, &'static str)> {
    const FROM_THE_MIDDLE: &str = "; then spread it from the middle out";
    let (words, then) = match outline {
        Outline::Leaf { .. } => {
            let root = root_width(site, part).map_or_else(String::new, |wide| format!(" to {wide}"));
            let words = format!(
                "Draw its end to a short point first, and narrow its root{root}, where the template runs to a point"
            );
            return Some((words, FROM_THE_MIDDLE));
        }
        Outline::Ellipse { .. } | Outline::Disc { .. } | Outline::Stadium { .. } => {
            ("Knock its corners in first", FROM_THE_MIDDLE)
        }
        Outline::Trapezoid { root, tip, .. } if tip > root => {
            ("Spread it from its end, and less and less towards its root", "")
        }
        Outline::Trapezoid { root, tip, .. } if tip < root => {
            ("Narrow its tip first", "; then spread it, less and less towards the tip")
        }
        _ => return None,
    };
    Some((words.to_owned(), then))
}

/// To how much a root is narrowed, in words: to what it joins.
fn root_width(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    let [before, after] = site.beside(part.at);
    // A leaf's root lies toward the bar.
    let (beside, at_end) = if before.is_some() { (before, false) } else { (after, true) };
    let wide = beside.and_then(|at| site.part(at)).map(|beside| size_at(site, beside, !at_end)[0]);
    wide.map(|wide| length_words(site.plan, wide))
}

/// What a root joins, where that is much narrower than it; none of other roots.
fn wide_root(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    /// What is wider by more than this share stands out at both sides: common practice, no source.
    const WIDER: f64 = 1.2;
    let Some(Shape::Flag { .. }) = &part.balance.shape else { return None };
    let [before, after] = site.beside(part.at);
    let (beside, at_end) = if before.is_some() { (before?, false) } else { (after?, true) };
    let (own, other) = (size_at(site, part, at_end)[0], size_at(site, site.part(beside)?, !at_end)[0]);
    (own > WIDER * other).then(|| site.name(beside))
}

/// How a slit is cut.
pub(crate) fn slit(site: &Site<'_>, part: Part<'_>) -> String {
    let on = if is_flat_on_a_block(site, part) { "On the bottom block: set" } else { "Set" };
    let line = if matches!(part.segment.form, Form::Flag(_)) { "through the punch mark" } else { "on its middle line" };
    format!(
        "{on} the chisel along the bar, {line}, and drive it almost through; then turn it over, and cut along the dark line over a soft plate."
    )
}

/// How a hole is punched.
pub(crate) fn punched(site: &Site<'_>, part: Part<'_>) -> String {
    if is_flat_on_a_block(site, part) {
        return "On the bottom block, punch from one side until it rings; turn it over, and punch out on the dark spot, over a bolster with a hole.".to_owned();
    }
    "Punch from one side until it rings on the anvil; turn it over, and punch out on the dark spot, above the hole in the anvil."
        .to_owned()
}

/// How a slit is drifted.
pub(crate) fn drifted(site: &Site<'_>, part: Part<'_>) -> String {
    let over =
        if is_flat_on_a_block(site, part) { "a bolster with a hole" } else { "a hole in the anvil or a bolster" };
    let corners = match &part.balance.shape {
        Some(Shape::Hole { outline: Outline::Rectangle { .. } | Outline::Polygon(_), .. }) => {
            ", dress the bulge beside the hole back with the drift in it, and spread the corners out to the template"
        }
        _ => "",
    };
    format!(
        "Drive it through from both sides in turn, over {over} that is larger than the drift; then flatten the rim again{corners}."
    )
}

/// How an outline is trimmed.
pub(crate) fn trimmed(site: &Site<'_>, part: Part<'_>) -> String {
    let how = if is_filed(part) {
        "File it cold, in the vice, to the template; later, if the file still reaches it then."
    } else if matches!(part.balance.shape, Some(Shape::Flag { blank: Some(_), .. })) {
        "Lay the template on with its base line on the middle of the bar and its root on the bar's, scribe it, and cut along the line."
    } else {
        "Lay the template on, scribe round it, and cut along the line."
    };
    let root = match &part.balance.shape {
        Some(Shape::Flag { outline, .. }) if matches!(outline.bare(), Outline::Leaf { .. }) => root_width(site, part),
        _ => None,
    };
    let notched = notches::lay(site, part).map_or_else(String::new, |words| format!("{words} "));
    let how = format!("{how} {notched}");
    let how = how.trim_end();
    match root {
        Some(wide) => format!("{how} Not at the root, where the line runs to a point: leave that {wide} wide."),
        None => match wide_root(site, part) {
            Some(name) => format!(
                "{how} Its root is wider than “{name}”: leave a radius in both corners there, for a sharp one tears."
            ),
            None => format!("{how} Leave the root as wide as what it joins."),
        },
    }
}
