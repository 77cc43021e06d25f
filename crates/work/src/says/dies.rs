//! What a step says that dresses a part in dies: how it is laid, with what, which side is up, what is measured. Common practice, no
//! source.

use crate::job::site::{Part, Site, in_mm};
use crate::says::shop::ToolKind;
use crate::says::size::{Measure, Size};
use crate::says::wanted::Wanted;
use crate::says::words::length_words;
use fh_core::describe::{
    angle_words, die_words, dressed_longer_words, dressed_place_words, dressed_side_words, segment_end_words,
};
use fh_core::metal::{Die, Dressing, SectionSize, Shape};
use fh_core::plan::{AnvilPlace, Dressed};

/// The dressed lengths of a part, each as it is written and as it is settled.
fn each<'a>(part: Part<'a>) -> impl Iterator<Item = (&'a Dressed, &'a Dressing)> {
    part.segment.dressed.iter().zip(&part.balance.dressed)
}

/// How the bar is laid and struck, die by die.
pub(crate) fn lay(site: &Site<'_>, part: Part<'_>) -> String {
    let start = segment_end_words(site.bar, site.balance, part.at)[0];
    let unit = site.plan.units.length;
    let mut all: Vec<String> = Vec::new();
    for (dressed, dressing) in each(part) {
        let side = dressed_side_words(dressed, dressing);
        let place = dressed_place_words(part.balance, dressing, unit, start);
        let deep = dressed.depth.text();
        all.push(match dressing.die {
            Die::Fuller { .. } => format!(
                "Lay it with {side} up: a groove {place}. Hold the fuller in line with the bar and set it once light from end to end for the line; then go down to {deep}, a little at every pass."
            ),
            Die::FullerAcross { .. } => format!(
                "Lay it with {side} up, the fuller square across, {place}; drive it down to {deep}, and look at it from both edges."
            ),
            Die::Swage { .. } => format!(
                "Lay {side} down in the swage, {place}; strike it from above and move it along, until it is {deep} in."
            ),
            Die::VBlock { .. } => format!(
                "Lay {side} down in the V, {place}; strike it square from above, so that it does not roll, and move it along until it is {deep} in."
            ),
        });
    }
    if lies_on_an_edge(part) {
        all.insert(0, "Bed its lower edge in a V-block on the face, so that it neither rolls nor bruises.".to_owned());
    }
    if each(part).any(|(dressed, _)| dressed.die.kind().is_open()) {
        all.push("True the edges that it pushes out, not the groove.".to_owned());
    }
    all.extend(dressed_longer_words(part.balance, unit).map(|words| format!("Mind the length: {words}.")));
    all.join(" ")
}

/// Whether a part is square on its corner and a fuller comes down on it: it lies on an edge.
fn lies_on_an_edge(part: Part<'_>) -> bool {
    let is_diamond = matches!(part.balance.shape, Some(Shape::Prism { section: SectionSize::Diamond { .. }, .. }));
    is_diamond && each(part).any(|(dressed, _)| dressed.die.kind().is_open())
}

/// The dies, each with its whole size.
pub(crate) fn tools(site: &Site<'_>, part: Part<'_>) -> Vec<Wanted> {
    let one = |dressing: &Dressing| match dressing.die {
        Die::Fuller { radius } | Die::FullerAcross { radius } => Wanted {
            other_way: "Sink it with a round-nosed chisel struck lightly; filed cold, its metal is lost and the part is shorter.",
            ..Wanted::sized(site, ToolKind::Fuller, 2.0 * in_mm(radius), "Ø ", "Its nose is as round as the groove.")
        },
        Die::Swage { radius } => Wanted {
            other_way: "Chamfer its two edges on the face, and round them with light blows to the gauge.",
            ..Wanted::sized(
                site,
                ToolKind::Swage,
                2.0 * in_mm(radius),
                "Ø ",
                "Its hollow is as round as the side that is dressed.",
            )
        },
        Die::VBlock { angle } => Wanted {
            words: format!("{}, {}", ToolKind::VBlock.name(), angle_words(angle)),
            other_way: "Set its two edges down on the face in turn, to a line.",
            ..Wanted::plain(ToolKind::VBlock, "Its faces leave the keel.")
        },
    };
    let mut all: Vec<Wanted> = Vec::new();
    for wanted in part.balance.dressed.iter().map(one) {
        if !all.iter().any(|other| other.words == wanted.words) {
            all.push(wanted);
        }
    }
    if lies_on_an_edge(part) {
        all.push(Wanted {
            other_way: "Lay it in the groove of a swage, or between two bars held side by side.",
            ..Wanted::plain(ToolKind::VBlock, "The edge that is below lies in it.")
        });
    }
    all
}

/// Where the first of them is done: under a top tool on the face, or down in the block.
pub(crate) fn place(part: Part<'_>) -> AnvilPlace {
    match part.balance.dressed.first().map(|dressing| dressing.die) {
        Some(Die::Swage { .. } | Die::VBlock { .. }) => AnvilPlace::SwageBlock,
        _ => AnvilPlace::Face,
    }
}

/// The side that is up for the first of them, in degrees around the bar: under a fuller its own, in a block the one across.
pub(crate) fn up_degrees(part: Part<'_>) -> Option<f64> {
    let first = part.balance.dressed.first()?;
    let own = first.side.to_degrees();
    Some(match first.die {
        Die::Fuller { .. } | Die::FullerAcross { .. } => own.rem_euclid(360.0),
        Die::Swage { .. } | Die::VBlock { .. } => (own + 180.0).rem_euclid(360.0),
    })
}

/// How deep each goes, and how wide a groove is by then.
pub(crate) fn sizes(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let plan = site.plan;
    let mut all: Vec<Size> = Vec::new();
    for (dressed, dressing) in each(part) {
        let what = dressed.die.kind().leaves();
        let side = dressed_side_words(dressed, dressing);
        let depth = if dressed.depth.is_range() {
            let ends = [dressed.depth.lowest_mm(), dressed.depth.highest_mm()];
            Size::between(plan, &format!("depth of the {what}, {side}"), dressed.depth.mm(), ends)
        } else {
            Size::inside(plan, &format!("depth of the {what}, {side}"), dressed.depth.mm())
        };
        all.push(depth.of(Measure::Other));
        if dressed.die.kind().is_open() {
            all.push(
                Size::inside(plan, &format!("width of the {what}, {side}"), dressing.chord_mm()).of(Measure::Other),
            );
        }
    }
    all
}

/// What to check, and with which gauge.
pub(crate) fn check(site: &Site<'_>, part: Part<'_>) -> String {
    let unit = site.plan.units.length;
    let gauges: Vec<String> = part
        .balance
        .dressed
        .iter()
        .map(|dressing| match dressing.die {
            Die::Fuller { radius } | Die::FullerAcross { radius } => {
                format!("a rod of Ø {}", length_words(site.plan, 2.0 * in_mm(radius)))
            }
            Die::Swage { .. } | Die::VBlock { .. } => format!("a sheet cut to the {}", die_words(dressing, unit)),
        })
        .fold(Vec::new(), |mut all, gauge| {
            if !all.contains(&gauge) {
                all.push(gauge);
            }
            all
        });
    format!(
        "Check it with {} laid in it: it has to touch all along. Depth from the face with a caliper's tail; sight along it: straight, and the bar too.",
        gauges.join(" and ")
    )
}
