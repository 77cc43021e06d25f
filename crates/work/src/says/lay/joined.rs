//! How ends are scarfed and welded, and how parts are put together.

use crate::job::hung::{closed_there, closes_a_ring, hangs_in_a_ring, segment};
use crate::job::part::met;
use crate::job::scarf::{FULL, bar_mm2, is_drawn_along, metal_mm3};
use crate::job::site::{Part, Site, in_mm, in_mm2};
use crate::job::task::{Task, is_hot};
use crate::says::brief::edge_mm;
use crate::says::words::{length_words, side_up};
use fh_core::describe::upper_first;
use fh_core::material::Material;
use fh_core::metal::Bent;
use fh_core::plan::{Form, Joint, JointKind, JointSide, Member, Operation, Segment, SizeName};

/// How a lap is welded, `lap` being what of it is heated; of a metal that cannot be, what to do in its place.
pub(crate) fn weld(metal: &Material, lap: &str, blows: Blows) -> String {
    match &metal.weld {
        Some(weld) => format!(
            "Brush the lap and {}; heat {lap} slowly in a clean fire to {} ({:.0} to {:.0} °C), turning it, its thin lips away from the blast: they burn first. {}; then flux, a second welding heat, and dress it to size.",
            weld.flux,
            weld.looks,
            weld.from_celsius,
            weld.to_celsius,
            blows.words()
        ),
        None => no_weld(metal),
    }
}

/// On what a lap is struck: common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Blows {
    /// On the face.
    OnTheFace,
    /// In a ring, round the horn.
    RoundTheHorn,
}

impl Blows {
    fn words(self) -> &'static str {
        match self {
            Self::OnTheFace => "Light, quick blows from the middle of the lap outward",
            Self::RoundTheHorn => {
                "Hang the ring on the horn, the lap on top, and strike light, quick blows straight in towards the horn, from the middle of the lap outward, turning the ring as you go; its edges last, on the face"
            }
        }
    }
}

/// On what the lap of a joint is struck.
fn blows_at(joint: &Joint) -> Blows {
    if closes_a_ring(joint) { Blows::RoundTheHorn } else { Blows::OnTheFace }
}

/// What of the lap of a scarf is heated: all of it, and as much more on both sides as the bar is thick.
pub(crate) fn lap_words(site: &Site<'_>, part: Part<'_>) -> String {
    let Some(long) = part.balance.derived_length(SizeName::Scarf).map(in_mm) else { return "it".to_owned() };
    let thick = bar_mm2(site, part).sqrt();
    let [lap, beyond] = [long, thick].map(|mm| length_words(site.plan, mm));
    format!("the lap, {lap} long, and {beyond} more on both sides of it,")
}

/// The same of the scarf that a joint welds; of one without a scarf just the lap.
fn lap_at_joint(sites: &[Site<'_>], joint: &Joint) -> String {
    let lap = joint.members().find_map(|member| {
        let site = sites.iter().find(|site| site.bar.name == member.bar)?;
        let is_scarf =
            |part: &Part<'_>| part.segment.name == member.segment && matches!(part.segment.form, Form::Weld(_));
        Some(lap_words(site, site.parts().find(is_scarf)?))
    });
    lap.unwrap_or_else(|| "it".to_owned())
}

/// What is said in place of a weld.
pub(crate) fn no_weld(metal: &Material) -> String {
    format!("Not in the fire: {} does not weld there. {}", metal.name, metal.instead_of_weld)
}

/// How an end is scarfed.
pub(crate) fn scarf(site: &Site<'_>, part: Part<'_>) -> String {
    if !can_weld(site) {
        return no_weld(site.plan.material());
    }
    let long = part.balance.derived_length(SizeName::Scarf).map(in_mm);
    let over = long.map_or_else(String::new, |long| format!(" over {}", length_words(site.plan, long)));
    let met = met(site, part);
    let upset = made_ready(site, part, long.unwrap_or(0.0), met.is_some());
    let [own, opposite] = beveled(site, part, met.is_some());
    let bevel = format!("{upset} Then bevel {own}{over}, slightly crowned, to a thin lip.");
    match met {
        Some(other) => format!(
            "{bevel} In a heat of its own, bevel “{other}”, which it meets, on {}.",
            opposite.trim_end_matches(',')
        ),
        None if opposite.contains("the outside") => {
            format!("{bevel} {} goes against the bar it closes on.", upper_first(&opposite))
        }
        None => bevel,
    }
}

/// The side of a scarf that is beveled, away from what it is laid on, and the side of the end that it meets.
///
/// An end that meets another one is laid over it from outside the ring; one that meets its own bar comes to lie on it with its
/// outside: common practice, no source.
pub(crate) fn beveled(site: &Site<'_>, part: Part<'_>, meets_an_end: bool) -> [String; 2] {
    let beside = site.beside(part.at).into_iter().flatten().filter_map(|at| site.part(at)?.balance.bent);
    let toward = beside.filter_map(|bent| match bent {
        Bent::Ring { side, .. } | Bent::Curve { side, .. } => Some(side.to_degrees()),
        _ => None,
    });
    let Some(inside) = toward.into_iter().next() else {
        return ["one side".to_owned(), "the opposite side".to_owned()];
    };
    let side = |degrees: f64| side_up(degrees.rem_euclid(360.0));
    let [inner, outer] = [
        format!("its {}, the inside of the bend,", side(inside)),
        format!("its {}, the outside of the bend,", side(inside + 180.0)),
    ];
    if meets_an_end { [outer, inner] } else { [inner, outer] }
}

/// How an end gets the metal for a scarf so long, in mm: it is left thick, or upset; both ends where it meets another one.
pub(crate) fn made_ready(site: &Site<'_>, part: Part<'_>, long: f64, meets_an_end: bool) -> String {
    let raw = in_mm2(site.raw_section(part.at).area());
    let bar = bar_mm2(site, part);
    // A scarf is a wedge, and so much longer than its half as it stands fuller than the bar.
    let short = FULL * bar * long / 2.0 - metal_mm3(site, part);
    if short > 0.0 {
        let more = length_words(site.plan, short / bar);
        return format!("Upset the end first, {more} of the bar beside it with it: its own metal is too little.");
    }
    if bar < 0.8 * raw && !is_drawn_along(site, part) {
        return "The end is left thick for it: forge it down to a little over the bar beside it.".to_owned();
    }
    let by = length_words(site.plan, (FULL - 1.0) * long);
    let ends = if meets_an_end { "both ends" } else { "the end" };
    let beyond = match site.plan.material().quench.may {
        true => "with the bar beyond cooled",
        false => "in a short heat, nothing cooled in water",
    };
    format!("Upset {ends} by {by} first, {beyond}.")
}

/// A bar that hangs down from the jaws of a vice has so much room, in mm: common practice, no source.
const UNDER_THE_JAWS: f64 = 900.0;

const UPRIGHT: &str = "Hold it below its shoulder in the vice, with soft jaws.";

const LEVEL: &str = "The bar is too long to stand in the vice: lay it level on stands, clamp it just below its shoulder in soft jaws, back its other end with something heavy, and strike along it.";

/// Whether the bar of a tenon has room upright in the vice.
fn goes_upright(sites: &[Site<'_>], joint: &Joint) -> bool {
    let has_tenon =
        |member: &Member, site: &Site<'_>| site.bar.name == member.bar && is_tenon(segment(site.plan, member));
    let bars = joint.members().filter_map(|member| sites.iter().find(|site| has_tenon(member, site)));
    bars.map(|site| in_mm(site.balance.forged_length)).all(|mm| mm <= UNDER_THE_JAWS)
}

fn is_tenon(segment: Option<&Segment>) -> bool {
    segment.is_some_and(|segment| matches!(segment.form, Form::Tenon(_)))
}

/// How a joint is made; `sites` are the bars of the plan.
pub(crate) fn at_joint(sites: &[Site<'_>], task: &Task) -> Option<String> {
    let site = sites.first()?;
    let joint = site.plan.joints.get(task.joint?)?;
    let [torch, rivet] = if is_hot(site, task) {
        [
            "Heat the end alone, with a torch. ",
            "Heat the rivet before it goes in, and carry it in tongs; or heat its end with a torch. ",
        ]
    } else {
        ["", ""]
    };
    Some(match joint.kind {
        JointKind::Weld if can_weld(site) && joint.members().any(|member| has_hole(site, member)) => {
            format!(
                "{} A hole beside it is drifted true again.",
                weld(site.plan.material(), &lap_at_joint(sites, joint), blows_at(joint))
            )
        }
        JointKind::Weld => weld(site.plan.material(), &lap_at_joint(sites, joint), blows_at(joint)),
        JointKind::Tenon => {
            let held = if goes_upright(sites, joint) { UPRIGHT } else { LEVEL };
            format!(
                "{}Fit it dry first: its shoulder has to bear all round. {torch}{held} Head its end with the hammer first, then with the rivet set.",
                sunk(sites, joint)
            )
        }
        JointKind::Rivet => format!(
            "Fit it dry first: the parts have to lie close, and the rivet to go through by hand. {rivet}Its head on a bolster; swell its end with the hammer first, then round it with the rivet set."
        ),
        JointKind::Collar => format!(
            "{}Fit it dry first: clamp the bars together, and try the collar on them. Heat the collar alone to a bright red, carry it in tongs, and slip it over; close one leg, then the other, and tap it tight all round. It shrinks as it cools.",
            bound(site, joint)
        ),
        JointKind::Hook => {
            let ring = closed_there(site.plan, joint)?;
            let on = if hangs_in_a_ring(site.plan, joint) {
                "on the mandrel"
            } else {
                "round what it hangs on, with light blows"
            };
            format!("Put the open “{}” on, heat it to a dull red, and close it there {on}.", ring.segment)
        }
    })
}

/// Which sides of the bars lie on each other that a collar binds, with a space after it.
fn bound(site: &Site<'_>, joint: &Joint) -> String {
    let side = |member: &Member| match &member.side {
        Some(JointSide::Around(angle)) => Some(side_up(angle.radians().to_degrees().rem_euclid(360.0))),
        Some(_) => None,
        None => Some(side_up(0.0)),
    };
    let is_bar = |member: &&Member| !segment(site.plan, member).is_some_and(|it| matches!(it.form, Form::Collar(_)));
    let lies = |member: &Member| Some(format!("the {} of “{}”", side(member)?, member.segment));
    let bars: Vec<String> = joint.moved.iter().filter(is_bar).filter_map(lies).collect();
    match side(&joint.fixed) {
        Some(own) if !bars.is_empty() => {
            format!("Lay {} on the {own} of “{}”. ", crate::says::words::joined(&bars), joint.fixed.segment)
        }
        _ => String::new(),
    }
}

/// That the hole of a tenon is countersunk, as deep as the root of its step is round; empty where that is nothing.
fn sunk(sites: &[Site<'_>], joint: &Joint) -> String {
    let root = joint.members().find_map(|member| {
        let site = sites.iter().find(|site| site.bar.name == member.bar)?;
        let part = site.parts().find(|part| part.segment.name == member.segment && is_tenon(Some(part.segment)))?;
        Some(length_words(site.plan, edge_mm(site, &Task::on(site.index, Operation::SetDown, part.at))?))
    });
    root.map_or_else(String::new, |root| {
        format!("Countersink the hole {root} on the side of the shoulder, for the round root of the step. ")
    })
}

pub(crate) fn can_weld(site: &Site<'_>) -> bool {
    site.plan.material().weld.is_some()
}

fn has_hole(site: &Site<'_>, member: &Member) -> bool {
    segment(site.plan, member).is_some_and(|segment| matches!(segment.form, Form::Hole(_)))
}
