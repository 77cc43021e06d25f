//! What is said of the notches in a plate that is cut to its outline: how large, where, and how they are made. Common practice, no
//! source.

use crate::job::site::Part;
use crate::job::site::Site;
use crate::says::shop::ToolKind;
use crate::says::size::{Measure, Size};
use crate::says::wanted::Wanted;
use crate::says::words::length_words;
use fh_core::metal::{Notch, Shape};

/// Two sizes that differ by less than this are one, in mm.
const ALIKE_MM: f64 = 0.05;

/// A notch no wider than this is sawn beside a drilled bottom, in mm; a wider one is cut with the chisel: common practice, no source.
const NARROW_MM: f64 = 30.0;

/// Notches of one size, and how many there are.
struct Alike {
    notch: Notch,
    all: Vec<Notch>,
}

/// The narrow notches of a plate's outline, those of one size together.
fn narrow(part: Part<'_>) -> Vec<Alike> {
    let Some(Shape::Flag { outline, .. }) = &part.balance.shape else { return Vec::new() };
    let mut all: Vec<Alike> = Vec::new();
    for notch in outline.bare().notches().into_iter().filter(|notch| notch.width_mm <= NARROW_MM) {
        let is_same = |other: &Notch| {
            (other.width_mm - notch.width_mm).abs() < ALIKE_MM
                && (other.depth_mm - notch.depth_mm).abs() < ALIKE_MM
                && other.is_round == notch.is_round
                && other.is_along == notch.is_along
        };
        match all.iter_mut().find(|alike| is_same(&alike.notch)) {
            Some(alike) => alike.all.push(notch),
            None => all.push(Alike { notch, all: vec![notch] }),
        }
    }
    all
}

/// What a number of them is called: `the notch`, `the 2 notches`.
fn name(alike: &Alike) -> String {
    match alike.all.len() {
        1 => "the notch".to_owned(),
        count => format!("the {count} notches"),
    }
}

/// How wide and how deep they are.
pub(crate) fn sizes(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let of = |alike: &Alike| {
        let name = name(alike);
        let size = |what: &str, mm: f64| {
            Size::inside(site.plan, &format!("{what} of {name}"), mm).of(Measure::Other).when(false)
        };
        [size("width", alike.notch.width_mm), size("depth", alike.notch.depth_mm)]
    };
    narrow(part).iter().flat_map(of).collect()
}

/// What they are made with, besides what cuts the outline.
pub(crate) fn tools(site: &Site<'_>, part: Part<'_>) -> Vec<Wanted> {
    let narrow = narrow(part);
    let mut all: Vec<Wanted> = Vec::new();
    for alike in narrow.iter().filter(|alike| alike.notch.is_round) {
        all.push(Wanted::sized(
            site,
            ToolKind::Drill,
            alike.notch.width_mm,
            "",
            "It leaves the round bottom of a notch.",
        ));
    }
    if !narrow.is_empty() {
        all.push(Wanted::plain(ToolKind::Saw, "It cuts the sides of a notch: a chisel spreads what stands beside it."));
        all.push(Wanted::plain(ToolKind::File, "It trues the sides and the bottom of a notch."));
    }
    all
}

/// Where they lie and how they are made, once the plate is cold; none where there are none.
pub(crate) fn lay(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    let words = |mm: f64| length_words(site.plan, mm);
    let of = |alike: &Alike| {
        let (notch, name) = (alike.notch, name(alike));
        let each = if alike.all.len() == 1 { "it" } else { "each" };
        let places = places(site, alike);
        let bottom = if notch.is_round {
            format!(
                "clamp it and drill {each} {} at its bottom, the middle {} in from its mouth, saw down both sides to that",
                words(notch.width_mm),
                words(notch.depth_mm - notch.width_mm / 2.0)
            )
        } else {
            format!("saw down both sides of {each}, break out what is between them over a row of drilled holes")
        };
        format!("Leave {name} until it is cold: {places}; {bottom}, and file to the line.")
    };
    let all: Vec<String> = narrow(part).iter().map(of).collect();
    (!all.is_empty()).then(|| all.join(" "))
}

/// Where the middles of alike notches lie.
fn places(site: &Site<'_>, alike: &Alike) -> String {
    let along = alike.notch.is_along;
    let mut at: Vec<f64> = alike.all.iter().map(|notch| notch.mouth_mm[usize::from(along)]).collect();
    at.sort_by(f64::total_cmp);
    let words = |mm: f64| length_words(site.plan, mm.abs());
    if !along {
        let all: Vec<String> = at.iter().map(|mm| words(*mm)).collect();
        return format!("{} from the root to the middle", all.join(" and "));
    }
    match at[..] {
        [one, other] if (one + other).abs() < ALIKE_MM => format!("{} to both sides of the base line", words(one)),
        _ => {
            let side = |mm: f64| match mm {
                mm if mm.abs() < ALIKE_MM => "on the base line".to_owned(),
                mm if mm > 0.0 => format!("{} away from you from the base line", words(mm)),
                mm => format!("{} towards you from the base line", words(mm)),
            };
            at.iter().map(|mm| side(*mm)).collect::<Vec<_>>().join(" and ")
        }
    }
}
