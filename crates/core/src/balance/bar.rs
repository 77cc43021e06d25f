//! The balance of one bar.

use super::walk::{sane, trim_share};
use super::{BarTrouble, Derived, Met, SegmentBalance, Settled, Trouble, Walk};
use crate::metal::{Section, SectionSize, Shape, View, in_mm, mm, mm3};
use crate::plan::{Bar, Gives, Plan};
use fh_measure::RoundedLength;
use uom::si::f64::{Area, Length, Mass, MassDensity, Volume};

/// Everything that follows for one bar.
#[derive(Clone, Debug, PartialEq)]
pub struct BarBalance {
    /// The sizes of the starting bar.
    pub stock: SectionSize,
    /// The starting bar's section.
    pub stock_section: Section,
    /// The area of the starting bar's section.
    pub stock_area: Area,
    /// One for each segment of the bar, in its order.
    pub segments: Vec<SegmentBalance>,
    /// The length of bar to cut: the last mark; for a bar already cut, its length.
    pub stock_length: Length,
    /// The length of the whole bar forged and still straight.
    pub forged_length: Length,
    /// The volume of the finished piece.
    pub finished_volume: Volume,
    /// The mass of the finished piece.
    pub finished_mass: Mass,
    /// The mass of the bar that is cut.
    pub stock_mass: Mass,
    /// The largest distance of a rounded mark from its true place.
    pub largest_rounding_error: Length,
}

impl BarBalance {
    /// The last mark: the length of bar that the segments need.
    pub fn last_mark(&self) -> Length {
        self.segments.last().map_or(mm(0.0), |segment| segment.mark_end)
    }

    /// The step from the mark before a segment to the mark at its end: the difference of the rounded totals.
    pub fn step_shop(&self, index: usize) -> Option<RoundedLength> {
        let end = self.segments.get(index)?.mark_end_shop;
        let before = match index.checked_sub(1) {
            Some(before) => self.segments.get(before)?.mark_end_shop,
            None => end.rounding().round(0.0),
        };
        Some(end - before)
    }

    /// The lower and the upper edge of the starting bar in mm from its middle, as it is seen.
    pub fn stock_edges_mm(&self, view: View) -> [f64; 2] {
        let half = self.stock_section.seen_mm(view) / 2.0;
        [-half, half]
    }

    /// Where a place on the starting bar comes to lie on the forged bar, both in mm from the datum end.
    pub fn forged_from_stock_mm(&self, stock_mm: f64) -> f64 {
        self.map_mm(
            stock_mm,
            |segment| (segment.mark_start, segment.stock_length),
            |segment| (segment.forged_start, segment.forged_length),
        )
    }

    /// Where a place on the forged bar was on the starting bar, both in mm from the datum end.
    pub fn stock_from_forged_mm(&self, forged_mm: f64) -> f64 {
        self.map_mm(
            forged_mm,
            |segment| (segment.forged_start, segment.forged_length),
            |segment| (segment.mark_start, segment.stock_length),
        )
    }

    /// Carries a place from one straight bar to the other, evenly within each segment.
    fn map_mm(
        &self,
        place: f64,
        from: impl Fn(&SegmentBalance) -> (Length, Length),
        to: impl Fn(&SegmentBalance) -> (Length, Length),
    ) -> f64 {
        let mut end = 0.0;
        for segment in &self.segments {
            let ((start, length), (to_start, to_length)) = (from(segment), to(segment));
            let (start, length) = (in_mm(start), in_mm(length));
            if place <= start + length && length > 0.0 {
                return in_mm(to_start) + (place - start) / length * in_mm(to_length);
            }
            end = in_mm(to_start + to_length) + place - start - length;
        }
        end
    }
}

/// Works out one bar of a plan.
pub(super) fn balance_bar(
    plan: &Plan,
    index: usize,
    bar: &Bar,
    density: MassDensity,
    met: &mut Vec<Met>,
) -> BarBalance {
    let walk = Walk::new(plan, bar);
    let settled = settle_to_fit(&walk, index, met);
    for (segment, settled) in settled.iter().enumerate() {
        if let Some(trouble) = settled.trouble {
            met.push(Met { bar: index, segment: Some(segment), trouble: BarTrouble::Segment(trouble) });
        }
    }
    let segments = lay_off(&walk, settled, density);
    let last = segments.last();
    let stock_length = match &bar.length {
        Some(length) => length.length(),
        None => last.map_or(mm(0.0), |segment| segment.mark_end),
    };
    let finished_volume = segments.iter().fold(mm3(0.0), |sum, segment| sum + segment.finished_volume);
    let stock_section = walk.stock.section();
    let stock_area = walk.stock.area();
    BarBalance {
        stock: walk.stock,
        stock_section,
        stock_area,
        stock_length,
        forged_length: last.map_or(mm(0.0), |segment| segment.forged_start + segment.forged_length),
        finished_volume,
        finished_mass: finished_volume * density,
        stock_mass: stock_area * stock_length * density,
        largest_rounding_error: segments.iter().map(SegmentBalance::rounding_error).fold(mm(0.0), Length::max),
        segments,
    }
}

/// The segments of a bar already cut, settled to fit it, and which of them takes up; none where that cannot be.
pub(crate) fn settled_on_cut_bar(walk: &Walk<'_>) -> Option<(usize, Vec<Settled>)> {
    walk.bar.length.as_ref()?;
    let name = walk.bar.takes_up.as_ref()?;
    let at = walk.bar.segments.iter().position(|segment| segment.name == *name)?;
    let mut met = Vec::new();
    let settled = settle_to_fit(walk, 0, &mut met);
    // What is in trouble by itself took nothing up, and says so elsewhere.
    let fits = met.is_empty() && settled[at].trouble.is_none();
    fits.then_some((at, settled))
}

/// The segments settled; on a bar already cut, the one that takes up gives until the sum fits.
fn settle_to_fit(walk: &Walk<'_>, index: usize, met: &mut Vec<Met>) -> Vec<Settled> {
    let Some(name) = &walk.bar.takes_up else { return walk.settle(None) };
    let mut report = |segment, trouble| met.push(Met { bar: index, segment, trouble });
    let Some(length) = &walk.bar.length else {
        report(None, BarTrouble::TakesUpWithoutLength);
        return walk.settle(None);
    };
    let Some(at) = walk.bar.segments.iter().position(|segment| segment.name == *name) else {
        report(None, BarTrouble::TakesUpUnknown);
        return walk.settle(None);
    };
    let gives = walk.bar.segments[at].giving();
    match factor_to_fit(walk, at, gives, length.mm()) {
        Ok(factor) => {
            let mut settled = walk.settle(Some((at, gives, factor)));
            note_what_gave(&mut settled[at], gives);
            settled
        }
        Err(trouble) => {
            let settled = walk.settle(None);
            // A segment that is in this trouble by itself says so once.
            if settled[at].trouble != Some(trouble) {
                report(Some(at), BarTrouble::Segment(trouble));
            }
            settled
        }
    }
}

/// The factor on the size that gives of one segment at which the whole bar needs `target` mm.
fn factor_to_fit(walk: &Walk<'_>, at: usize, gives: Gives, target: f64) -> Result<f64, Trouble> {
    let lengths = |settled: &[Settled]| -> Vec<f64> {
        let all = walk.bar.segments.iter().zip(settled);
        all.map(|(segment, settled)| walk.stock_length(segment, settled)).collect()
    };
    if gives == Gives::Length {
        // A length that gives leaves every section as it is, so the other segments keep their lengths of bar.
        let others: f64 = lengths(&walk.settle(Some((at, gives, 1.0))))
            .iter()
            .enumerate()
            .filter(|(i, _)| *i != at)
            .map(|(_, l)| l)
            .sum();
        return if target > others { walk.factor_for(at, gives, mm(target - others)) } else { Err(Trouble::CannotFit) };
    }
    if let Some(trouble) = walk.settle(Some((at, gives, 1.0)))[at].trouble {
        return Err(trouble);
    }
    let total = |factor: f64| lengths(&walk.settle(Some((at, gives, factor)))).iter().sum();
    super::solve(total, target, 1.0).ok_or(Trouble::CannotFit)
}

/// Names the sizes that gave.
fn note_what_gave(settled: &mut Settled, gives: Gives) {
    let Some(shape) = &settled.shape else { return };
    let sizes: Vec<(&'static str, Option<Length>)> = match (shape, gives) {
        (_, Gives::Nothing) => Vec::new(),
        (Shape::Ball { diameter }, _) => vec![("diameter", Some(*diameter))],
        (Shape::Cube { side }, _) => vec![("side", Some(*side))],
        (Shape::Flag { root, tip, .. }, Gives::Thickness) if root != tip => {
            vec![("thickness at the root", Some(*root)), ("at the tip", Some(*tip))]
        }
        (shape, Gives::Length) => vec![("length", Some(shape.length()))],
        (shape, Gives::Width) => vec![("width", shape.giving_width())],
        (shape, Gives::Thickness) => vec![("thickness", shape.giving_thickness())],
    };
    settled.derived.retain(|derived| !sizes.iter().any(|(name, _)| *name == derived.name));
    // A tied size that follows now was written, and gave with the length.
    for derived in settled.derived.iter_mut().filter(|derived| derived.length.is_some()) {
        derived.gave = true;
    }
    for (name, size) in sizes {
        let gave = size.map(|size| Derived { gave: true, ..Derived::length(name, size, "gives to fit the bar") });
        settled.derived.extend(gave);
    }
}

/// Lays the settled segments off one after the other: the running sums are the marks.
fn lay_off(walk: &Walk<'_>, settled: Vec<Settled>, density: MassDensity) -> Vec<SegmentBalance> {
    let marks = walk.plan.units.marks;
    let (mut mark, mut forged, mut offset) = (0.0, 0.0, [0.0, 0.0]);
    let mut laid = Vec::with_capacity(settled.len());
    for (index, (segment, settled)) in walk.bar.segments.iter().zip(settled).enumerate() {
        let stock_length = sane(walk.stock_length(segment, &settled));
        let volume = settled.shape.as_ref().map_or(mm3(0.0), |shape| shape.volume());
        let forged_length = settled.shape.as_ref().map_or(mm(0.0), |shape| shape.length());
        let (finished_volume, trimmed_volume) =
            if segment.form.is_finished() { (volume, volume * trim_share(segment)) } else { (mm3(0.0), volume) };
        let shift = settled.shape.as_ref().map_or([0.0, 0.0], |shape| shape.middle_shift());
        let mark_start = mark;
        mark += in_mm(stock_length);
        laid.push(SegmentBalance {
            reversed: walk.is_reversed(index, segment),
            finished_volume,
            trimmed_volume,
            scale_share: walk.scale_share(segment),
            finished_mass: finished_volume * density,
            forged_length,
            forged_start: mm(forged),
            stock_length,
            mark_start: mm(mark_start),
            mark_end: mm(mark),
            mark_end_shop: marks.round(mark),
            derived: settled.derived,
            offset_mm: offset,
            shape: settled.shape,
        });
        forged += in_mm(forged_length);
        offset = [offset[0] + shift[0], offset[1] + shift[1]];
    }
    laid
}
