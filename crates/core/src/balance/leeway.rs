//! How far the sizes of a forged part may be off, and what that makes of its length.
//!
//! The metal between the marks is kept, so a part that is left fat comes out short, and one that goes thin comes out long
//! (constancy of volume). Of section and length only one is the smith's to choose: the section, by the gauge, unless the
//! plan gives the length a range that is closer than what the section makes of it. The other follows.

use super::ladder::{fatter, thickness};
use super::solve;
use crate::metal::{Outline, SectionSize, Shape, View, in_mm, mm};
use crate::plan::{Form, Gives, HeatRules, Plan, PlanUnit};
use fh_measure::{LengthUnit, WrittenLength};
use uom::si::f64::Length;

/// A size is off by no more than this share of itself: of a tip of 1.5 mm, half a millimetre is no tolerance. Common
/// practice, no source.
const SHARE: f64 = 1.0 / 6.0;

/// A difference that is only the arithmetic's, as a share.
const HAIR: f64 = 1e-9;

/// How far a forged size may be off, in mm: what the heat rules say, of a thin part a share of the size in whole tenths of a
/// millimetre or 64ths of an inch, and one of these at least.
pub fn tolerance_mm(plan: &Plan, size_mm: f64) -> f64 {
    let unit = plan.units.length;
    let rule = plan.work.heats.tolerance.as_ref();
    let most = rule.map_or_else(|| HeatRules::TOLERANCE.in_unit(unit), WrittenLength::mm);
    let finest = match unit {
        PlanUnit::Inch => LengthUnit::Inch.mm() / 64.0,
        PlanUnit::Millimeter => 0.1,
    };
    let share = ((size_mm * SHARE / finest + HAIR).floor() * finest).max(finest);
    most.min(share).min(size_mm / 2.0).max(0.0)
}

/// How far a part may be off: its shape at both ends of what is allowed, each with the metal of the planned one.
#[derive(Clone, Debug, PartialEq)]
pub struct Leeway {
    /// As thin as it may be, and as long as it then is.
    pub thin: Shape,
    /// As fat as it may be, and as short as it then is.
    pub fat: Shape,
    /// Whether its length is kept and the section follows; else the length follows.
    pub length_binds: bool,
}

/// How far a part of this shape may be off, forged from a bar or a branch of the section `stock`; none where its length
/// does not follow from its section.
///
/// What stays as the bar is stays as it is, and what is drawn down is never left fatter than the bar. Sizes that the plan
/// gives as ranges are off by these.
pub fn leeway(plan: &Plan, form: &Form, shape: &Shape, stock: SectionSize) -> Option<Leeway> {
    // A plate that is cut to its outline is off where it is spread: in its blank.
    let blank = shape.blank();
    let shape = blank.as_ref().unwrap_or(shape);
    let part = Part { plan, form, shape, stock };
    let fattest = part.fattest_share()?;
    let length = |share: f64| part.at(share).map_or(in_mm(shape.length()), |shape| in_mm(shape.length()));
    let range = form.length().filter(|length| length.is_range() && !is_cut_from_blank(form));
    let (lowest, highest) = range.map_or((0.0, f64::INFINITY), |range| {
        // The same range about the length as it is by now: longer than at last before a twist, or before it is pierced.
        let now = in_mm(shape.length()) / range.mm().max(1e-9);
        (range.at_lowest().mm() * now, range.at_highest().mm() * now)
    });
    let thin = reached(-1.0, |share| length(share) <= highest * (1.0 + HAIR));
    let fat = reached(fattest, |share| length(share) >= lowest * (1.0 - HAIR));
    Some(Leeway { thin: part.at(thin)?, fat: part.at(fat)?, length_binds: thin > -1.0 + HAIR && fat < fattest - HAIR })
}

/// Whether its own length is cut, and the blank's is what is forged.
fn is_cut_from_blank(form: &Form) -> bool {
    matches!(form, Form::Flag(flag) if flag.blank.is_some())
}

/// The share nearest to `most` that still holds, between it and none.
fn reached(most: f64, holds: impl Fn(f64) -> bool) -> f64 {
    if holds(most) {
        return most;
    }
    let (mut low, mut high) = (0.0, most);
    for _ in 0..50 {
        let middle = f64::midpoint(low, high);
        if holds(middle) { low = middle } else { high = middle }
    }
    low
}

struct Part<'a> {
    plan: &'a Plan,
    form: &'a Form,
    shape: &'a Shape,
    stock: SectionSize,
}

impl Part<'_> {
    /// How far one of its sizes may be off, in mm: as the plan gives it, or by the rule.
    fn off_mm(&self, size: Length) -> f64 {
        self.written_mm(size).unwrap_or_else(|| tolerance_mm(self.plan, in_mm(size)))
    }

    /// How far the plan lets a size be off, in mm; none where it gives it no range.
    fn written_mm(&self, size: Length) -> Option<f64> {
        let own = self.form.length();
        let mut written = None;
        self.form.lengths(&mut |length: &WrittenLength| {
            let is_it = length.is_range() && own != Some(length) && (length.mm() - in_mm(size)).abs() < 1e-6;
            written = written.or(is_it.then(|| length.tolerance_mm()));
        });
        written
    }

    /// A size so much of what is allowed fatter; below 0 it is thinner.
    fn changed(&self, size: Length, share: f64) -> Length {
        size + mm(share * self.off_mm(size))
    }

    /// How fat it may be, as a share of what is allowed: what is drawn down stays within the bar that it is made of.
    fn fattest_share(&self) -> Option<f64> {
        self.at(1.0)?;
        if !matches!(self.shape, Shape::Prism { .. } | Shape::Taper { .. }) {
            return Some(1.0);
        }
        let most = self.stock.area() * (1.0 + HAIR);
        let largest = |shape: &Shape| shape.area_at(0.0).max(shape.area_at(1.0));
        if largest(self.shape) > most {
            return Some(1.0);
        }
        Some(reached(1.0, |share| self.at(share).is_some_and(|shape| largest(&shape) <= most)))
    }

    /// The shape with its sections so much of what is allowed fatter, and as long as its metal then is.
    fn at(&self, share: f64) -> Option<Shape> {
        let metal = self.shape.volume();
        match self.shape {
            Shape::Prism { section, length } => {
                let section = self.section(section, share)?;
                Some(Shape::Prism {
                    section,
                    length: *length * (self.shape.volume() / (section.area() * *length)).value,
                })
            }
            Shape::Taper { from, to, runout, length } => {
                let [from, to] = self.ends(from, to, share)?;
                let changed = Shape::Taper { from, to, runout: *runout, length: *length };
                changed.with_length(*length * (metal / changed.volume()).value)
            }
            Shape::Flag { outline, root, tip, holes, .. } => {
                let (root, tip) = (self.changed(*root, share), self.changed(*tip, share));
                let with = |outline: Outline| Shape::plate(outline, root, tip).with_holes(holes.clone());
                let width = outline.width();
                match self.written_mm(width) {
                    // Its own range binds the width, and the length follows.
                    Some(off) => {
                        let wider = outline.scaled(Gives::Width, 1.0 + share * off / in_mm(width))?;
                        lengthened(&wider, with, self.shape)
                    }
                    None => evened(outline, with, self.shape),
                }
            }
            Shape::Hole { outline, thickness, hole, at } => {
                let thickness = self.changed(*thickness, share);
                let whole = in_mm(outline.length());
                let with = |outline: Outline| {
                    let at = *at * (in_mm(outline.length()) / whole);
                    Shape::Hole { outline, thickness, hole: *hole, at }
                };
                evened(outline, with, self.shape)
            }
            _ => None,
        }
    }

    /// A section changed; none where it is the bar's own, or has no size to change.
    fn section(&self, section: &SectionSize, share: f64) -> Option<SectionSize> {
        if *section == self.stock {
            return None;
        }
        let more = |size: Length| self.changed(size, share);
        // One way as the bar is: that side is only kept true.
        let is_as_bar = |size: Length, view: View| (in_mm(size) - self.stock.seen_mm(view)).abs() < 1e-6;
        let two = |width: Length, thickness: Length| {
            let (wide, thick) = (is_as_bar(width, View::Top), is_as_bar(thickness, View::Side));
            (if wide { width } else { more(width) }, if thick && !wide { thickness } else { more(thickness) })
        };
        Some(match *section {
            SectionSize::Point | SectionSize::Edge { .. } => return None,
            SectionSize::Square { side, edge_radius } => SectionSize::Square { side: more(side), edge_radius },
            SectionSize::Round { diameter } => SectionSize::Round { diameter: more(diameter) },
            SectionSize::Diamond { side } => SectionSize::Diamond { side: more(side) },
            SectionSize::Hexagon { across_flats } => SectionSize::Hexagon { across_flats: more(across_flats) },
            SectionSize::Octagon { across_flats } => SectionSize::Octagon { across_flats: more(across_flats) },
            SectionSize::Flat { width, thickness, edge_radius } => {
                let (width, thickness) = two(width, thickness);
                SectionSize::Flat { width, thickness, edge_radius }
            }
            SectionSize::Oval { width, thickness } => {
                let (width, thickness) = two(width, thickness);
                SectionSize::Oval { width, thickness }
            }
            SectionSize::HalfRound { width, height } => {
                let (width, height) = two(width, height);
                SectionSize::HalfRound { width, height }
            }
        })
    }

    /// Both ends of a taper changed; where neither can be, what should run out is left blunt.
    fn ends(&self, from: &SectionSize, to: &SectionSize, share: f64) -> Option<[SectionSize; 2]> {
        match (self.section(from, share), self.section(to, share)) {
            (None, None) if to.is_end() => {
                let off = self.plan_tolerance(from);
                Some([*from, fatter(*to, *from, mm(off * share.max(0.0)))?])
            }
            (None, None) => None,
            (one, other) => Some([one.unwrap_or(*from), other.unwrap_or(*to)]),
        }
    }

    /// How blunt a tip may be left, in mm, where it should run out to nothing.
    fn plan_tolerance(&self, root: &SectionSize) -> f64 {
        tolerance_mm(self.plan, in_mm(thickness(*root)))
    }
}

/// How blunt the tip of a shape may be left, in mm; none where no tip has to run out to nothing.
pub fn blunt_tip_mm(plan: &Plan, shape: &Shape) -> Option<f64> {
    match shape {
        Shape::Taper { from, to, .. } if to.is_end() && !from.is_end() => {
            Some(tolerance_mm(plan, in_mm(thickness(*from))))
        }
        _ => None,
    }
}

/// A spread shape with as much metal as the planned one: as long as it takes.
fn lengthened(outline: &Outline, with: impl Fn(Outline) -> Shape, planned: &Shape) -> Option<Shape> {
    let longer = |factor: f64| outline.scaled(Gives::Length, factor).map(&with);
    let metal = |factor: f64| longer(factor).map_or(f64::NAN, |shape| (shape.volume() / planned.volume()).value);
    longer(solve(metal, 1.0, 1.0)?)
}

/// A spread shape with as much metal as the planned one: as much longer as it is wider.
fn evened(outline: &Outline, with: impl Fn(Outline) -> Shape, planned: &Shape) -> Option<Shape> {
    let larger = |factor: f64| {
        let wide = outline.scaled(Gives::Width, factor)?;
        match wide.bare() {
            // A disc grows both ways at once.
            Outline::Disc { .. } => Some(wide),
            _ => wide.scaled(Gives::Length, factor),
        }
    };
    let mut factor = 1.0;
    // A plate grows by the square of the factor; what is left is what a hole takes, and soon nothing.
    for _ in 0..30 {
        let metal = with(larger(factor)?).volume();
        let short = (planned.volume() / metal).value.sqrt();
        if !short.is_finite() {
            return None;
        }
        factor *= short;
        if (short - 1.0).abs() < 1e-12 {
            break;
        }
    }
    Some(with(larger(factor)?))
}
