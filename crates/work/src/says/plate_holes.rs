//! What is said of the holes through a spread plate: which are made in a step, how large, and with what.

use crate::job::site::{Part, Site, in_mm};
use crate::says::shop::ToolKind;
use crate::says::size::{Measure, Size};
use crate::says::wanted::Wanted;
use crate::says::words::length_words;
use fh_core::metal::{HoleInPlate, HoleSize};
use fh_core::plan::{Made, Operation, SlitRule};

/// Holes of one size that are made in one way.
struct Alike<'a> {
    hole: &'a HoleInPlate,
    count: usize,
}

impl Alike<'_> {
    /// What they are called: `the hole`, `the 2 holes`.
    fn name(&self) -> String {
        if self.count == 1 { "the hole".to_owned() } else { format!("the {} holes", self.count) }
    }

    /// How long its slit is, in mm.
    fn slit_mm(&self, site: &Site<'_>) -> f64 {
        in_mm(match site.plan.practice.slit {
            Some(SlitRule::ThreeQuarters) => self.hole.hole.slit_three_quarters(),
            _ => self.hole.hole.slit_half_perimeter(),
        })
    }
}

/// The holes of a plate that an operation works on.
fn worked<'a>(part: Part<'a>, operation: Operation) -> Vec<Alike<'a>> {
    let is_worked = |hole: &&HoleInPlate| match operation {
        Operation::Drill => hole.made == Made::Drilled,
        Operation::Drift => hole.made == Made::Drifted,
        _ => hole.made != Made::Drilled,
    };
    let holes = part.balance.shape.as_ref().map_or(&[][..], |shape| shape.plate_holes());
    let mut all: Vec<Alike<'a>> = Vec::new();
    for hole in holes.iter().filter(is_worked) {
        let same = |other: &&mut Alike<'a>| {
            (other.hole.hole, other.hole.made, other.hole.lost) == (hole.hole, hole.made, hole.lost)
        };
        match all.iter_mut().find(same) {
            Some(alike) => alike.count += 1,
            None => all.push(Alike { hole, count: 1 }),
        }
    }
    all
}

/// How many holes of a plate an operation works on.
pub(crate) fn count(part: Part<'_>, operation: Operation) -> usize {
    worked(part, operation).iter().map(|alike| alike.count).sum()
}

/// The sizes that they are to reach.
pub(crate) fn sizes(site: &Site<'_>, part: Part<'_>, operation: Operation) -> Vec<Size> {
    let size = |what: String, mm: f64| Size::inside(site.plan, &what, mm);
    let of = |alike: &Alike<'_>| {
        let name = alike.name();
        if operation == Operation::Punch && alike.hole.made == Made::Drifted {
            return vec![size(format!("slit for {name}"), alike.slit_mm(site))];
        }
        match alike.hole.hole {
            HoleSize::Round { diameter } => vec![size(format!("diameter of {name}"), in_mm(diameter))],
            HoleSize::Square { side } => vec![size(format!("side of {name}"), in_mm(side))],
            HoleSize::Slot { length, width } => vec![
                size(format!("length of {name}"), in_mm(length)).of(Measure::Length),
                size(format!("width of {name}"), in_mm(width)),
            ],
        }
    };
    worked(part, operation).iter().flat_map(of).collect()
}

/// The tools that make them.
pub(crate) fn tools(site: &Site<'_>, part: Part<'_>, operation: Operation) -> Vec<Wanted> {
    use ToolKind as K;
    let sized = |kind, mm, before: &str, why| Wanted::sized(site, kind, mm, before, why);
    let of = |alike: &Alike<'_>| match (operation, alike.hole.made) {
        (Operation::Drill, _) => sized(K::Drill, in_mm(alike.hole.hole.width()), "", "As wide as the hole."),
        (Operation::Drift, _) => {
            let across = in_mm(alike.hole.hole.width());
            let drift = sized(K::Drift, across, "", "It has the shape of the hole, and a long taper to start it.");
            match alike.hole.hole {
                HoleSize::Slot { length, .. } => {
                    let [long, across] = [in_mm(length), across].map(|mm| length_words(site.plan, mm));
                    Wanted { words: format!("drift, {long} × {across}"), ..drift }
                }
                _ => drift,
            }
        }
        (_, Made::Drifted) => {
            sized(K::SlitChisel, alike.slit_mm(site), "edge ", "As long as the slit; it takes no metal out.")
        }
        _ => sized(K::Punch, in_mm(alike.hole.slug_width()), "", "As wide as the slug that it drives out."),
    };
    let mut all: Vec<Wanted> = worked(part, operation).iter().map(of).collect();
    if operation != Operation::Drift && !all.is_empty() {
        all.push(Wanted::plain(K::CenterPunch, "It marks the middles through the template."));
    }
    all
}

/// How their middles are found on the plate.
pub(crate) fn laid_off(part: Part<'_>, operation: Operation) -> String {
    match count(part, operation) {
        1 => "Lay the template on the flat plate and punch the middle of the hole through it.".to_owned(),
        2 => "Lay the template on the flat plate and punch the middles of both holes through it.".to_owned(),
        _ => "Lay the template on the flat plate and punch the middles of the holes through it.".to_owned(),
    }
}
