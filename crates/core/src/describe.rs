//! A segment in the smith's words: what the block becomes, and on which side.

mod asked;
mod contents;
mod dressed;
mod face;
mod ladder;
mod laid_off;
mod letter_case;
mod made;
mod plain_line;
mod repeats;
mod scale;
mod short_name;
mod via;

pub use asked::{asked_size_state, asked_size_words};
pub use contents::{answer_words, section_words};
pub use dressed::{
    die_words, dressed_lines, dressed_longer_words, dressed_place_words, dressed_side_words, dressed_words,
};
pub use face::Face;
pub use ladder::{ladder_size_words, rung_change_words, rung_size_words};
pub use laid_off::{
    LaidCuts, hole_words, laid_cuts, laid_cuts_words, laid_from_to_words, marked_side_words, slit_line_words,
};
pub use letter_case::{lower_first, upper_first};
pub use made::{FollowingSize, MadeWords, made_words};
pub use plain_line::plain_line;
pub use repeats::{
    repeat_count_words, repeat_first_words, repeat_free_words, repeat_lines, repeat_places_words, segment_end_words,
};
pub use short_name::{LONGEST_NAME, short_name};

pub use scale::scale_words;
pub use via::via_words;

use crate::balance::Derived;
use crate::forms;
use crate::plan::{Bar, Bend, Chain, Flat, Form, PlanUnit, Segment, Sides, SizeName, path_in};
use fh_measure::{WrittenAngle, WrittenLength, format_length};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// What is rolled less far round than this, in radians, is open: three quarters of a turn.
const OPEN: f64 = 1.5 * std::f64::consts::PI;

/// What a segment becomes, with its target sizes: `taper 2 1/2 in, 3/8 in square to a point`.
pub fn form_words(segment: &Segment) -> String {
    segment.form.one().words("drawn")
}

/// How a segment is bent: `curve 180°, inside radius 1 in, upward`; none where it is left straight.
///
/// A radius or a diameter that gave to fit the bar is left out: `derived` tells it.
pub fn bend_words(segment: &Segment, derived: &[Derived]) -> Option<String> {
    let written = |size: &Option<WrittenLength>, name: SizeName| {
        let gave = derived.iter().any(|derived| derived.gave.is_some() && derived.name == name);
        size.clone().filter(|_| !gave)
    };
    let angle =
        |angle: &Option<WrittenAngle>| angle.as_ref().map_or(String::new(), |a| format!(" {}", written_angle(a)));
    let bend = segment.bend.as_ref()?;
    let words = match bend {
        Bend::Curve { angle: a, inside_radius, .. } => {
            let radius = written(inside_radius, SizeName::InsideRadius)
                .map_or(String::new(), |r| format!(", inside radius {}", r.text()));
            format!("curve{}{radius}", angle(a))
        }
        Bend::Ring { inside_diameter, sweep, .. } => {
            let diameter = written(inside_diameter, SizeName::InsideDiameter)
                .map_or(String::new(), |d| format!(" Ø {} inside", d.text()));
            let sweep = sweep.as_ref().map_or(String::new(), |s| format!(", {}", written_angle(s)));
            format!("ring{diameter}{sweep}")
        }
        Bend::Corner { angle, inside_radius, .. } => {
            format!("corner {}, inside radius {}", written_angle(angle), inside_radius.text())
        }
        Bend::Scroll { inner_radius, outer_radius, turns, run, .. } => {
            let size = |size: &Option<WrittenLength>, name: SizeName| {
                written(size, name).map_or_else(|| "…".to_owned(), |size| size.text().to_owned())
            };
            let (inner, outer) = (size(inner_radius, SizeName::InnerRadius), size(outer_radius, SizeName::OuterRadius));
            let turns = turns.map_or(String::new(), |turns| format!(", {}", turns_words(turns)));
            format!("{} scroll, radius {inner} to {outer}{turns}", run.name())
        }
        Bend::Socket { mandrel, sweep, axis, .. } => {
            let mandrel =
                written(mandrel, SizeName::Mandrel).map_or(String::new(), |size| format!(" round Ø {}", size.text()));
            // What does not close is no socket.
            let is_open = sweep.as_ref().is_some_and(|sweep| sweep.radians() < OPEN);
            let word = if is_open { "rolled" } else { "socket" };
            let sweep = sweep.as_ref().map_or(String::new(), |sweep| format!(", {}", written_angle(sweep)));
            format!("{word}{mandrel}{sweep}, {}", axis.name())
        }
        Bend::Twist { turns, shortening } => {
            let shorter = shortening.as_ref().map_or(String::new(), |share| format!(", {} shorter", share.text()));
            let way = if *turns < 0.0 { ", left-handed" } else { "" };
            return Some(format!("twist, {}{way}{shorter}", turns_words(turns.abs())));
        }
    };
    Some(format!("{words}, {}", Face::at_radians(bend.side_radians()).toward()))
}

/// A count of turns: `1 turn`, `1.25 turns`.
fn turns_words(turns: f64) -> String {
    let count = plain_number(turns);
    let turns = if count == "1" { "turn" } else { "turns" };
    format!("{count} {turns}")
}

/// A count without needless figures: `1.25`, `2`.
fn plain_number(value: f64) -> String {
    let text = format!("{value:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A size that was not written but follows: `inside radius 1 5/64 in`, `length 234.9 mm, to fit the bar`.
pub fn derived_words(size: &Derived, unit: PlanUnit) -> Option<String> {
    let value = match (size.length, size.radians, size.count) {
        (Some(length), _, _) => fine_length(length, unit),
        (None, Some(radians), _) => angle_words(radians),
        (None, None, Some(count)) => plain_number(count),
        (None, None, None) => return None,
    };
    let to_fit = size.gave.map_or_else(String::new, |reason| format!(", {}", reason.words()));
    Some(format!("{} {value}{to_fit}", size.name.words()))
}

/// An angle to half a degree: `90°`, `22.5°`.
pub fn angle_words(radians: f64) -> String {
    format!("{}°", plain_number((radians.to_degrees() * 2.0).round() / 2.0))
}

/// An angle as it was written, degrees by their sign alone.
fn written_angle(angle: &WrittenAngle) -> String {
    if angle.text().contains("turn") {
        return angle.text().to_owned();
    }
    format!("{}°", plain_number(angle.radians().to_degrees()))
}

/// A length that the smith forges to, finer than the marks.
pub fn fine_length(length: Length, unit: PlanUnit) -> String {
    format_length(length.get::<millimeter>(), unit.length_unit(), unit.finest())
}

/// The side that a set-down or a peak is on; none where the form has no side.
pub fn side_words(segment: &Segment) -> Option<String> {
    match (&segment.form, &segment.bend) {
        (Form::Shoulder(forms::Shoulder { sides: Sides::All, .. }), _) => Some(Sides::All.describe()),
        (Form::Shoulder(forms::Shoulder { sides: Sides::Some(sides), .. }), _) => {
            let faces: Vec<_> = sides.iter().map(|side| Face::at(f64::from(*side)).name()).collect();
            Some(faces.join(" and "))
        }
        // The peak stands on the outside, opposite to the side that the corner is bent toward.
        (Form::Peak(peak), Some(bend @ Bend::Corner { .. })) if !peak.driven => {
            Some(Face::at_radians(bend.side_radians() + std::f64::consts::PI).name())
        }
        _ => None,
    }
}

/// A segment's name, or its path where it has none; `at` counts through the bar.
pub fn segment_name(bar: &Bar, at: usize) -> String {
    name_in(&bar.flat(), at)
}

/// A segment's name as [`segment_name`] gives it; on a branch with the branch's name before it, for branches have parts
/// of one name.
pub fn part_name(bar: &Bar, at: usize) -> String {
    part_name_in(&bar.flat(), at)
}

/// The same, on a bar whose segments are counted already.
pub(crate) fn part_name_in(flat: &[Flat<'_>], at: usize) -> String {
    let name = name_in(flat, at);
    let branch = match flat.get(at).map(|flat| flat.chain) {
        Some(Chain::Branch { split, branch }) => flat
            .get(split)
            .and_then(|split| split.segment.form.branches().get(branch))
            .map(|it| it.title(branch))
            .filter(|title| *title != name),
        _ => None,
    };
    branch.map_or(name.clone(), |branch| format!("{branch}, {name}"))
}

fn name_in(flat: &[Flat<'_>], at: usize) -> String {
    let name = flat.get(at).map_or("", |flat| flat.segment.name.trim());
    if name.is_empty() { format!("part {}", path_in(flat, at)) } else { short_name(name) }
}
