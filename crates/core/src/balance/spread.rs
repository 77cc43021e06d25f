//! What the tolerances of a plan do to its lengths and marks: the lowest and the highest each of them can come out.
//!
//! Method: each size that is a range is put alone at its low and at its high end. That tells for every result which of
//! the sizes make it greater and which smaller. Then all sizes are put at once at the ends that make a result smallest,
//! and at those that make it greatest; results that grow by the same sizes share this. The lowest and the highest that
//! came out anywhere count.
//!
//! Where each size alone only ever makes a result greater or only ever smaller, whatever the others are, this is the
//! exact worst case over all sizes: it lies in a corner, and in this one. Volumes, lengths and marks are of that kind.
//! Adding up the changes of the single sizes instead would miss what two sizes do together (a longer leg that is also
//! fatter), and putting all sizes high at once would miss that a fatter bar makes the marks shorter.

use super::asked;
use super::bar::balance_bar;
use super::walk::Give;
use super::{BarBalance, Met, Walk};
use crate::metal::{in_mm, mm};
use crate::plan::{Bar, Form, Lean, Plan, Segment};
use fh_measure::{Rounding, WrittenLength};
use uom::si::f64::{Length, MassDensity};

/// What the tolerances of a plan do. A bar whose sizes are all single sizes has no spread.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Spread {
    bars: Vec<Option<BarSpread>>,
}

impl Spread {
    /// The spread of a bar; none where no size of it is a range.
    pub fn bar(&self, bar: usize) -> Option<&BarSpread> {
        self.bars.get(bar)?.as_ref()
    }

    /// The spread of a segment, counted through the bar; none where no size of its bar is a range.
    pub fn segment(&self, bar: usize, segment: usize) -> Option<&SegmentSpread> {
        self.bar(bar)?.segments.get(segment)
    }
}

/// What the tolerances do to one bar.
#[derive(Clone, Debug, PartialEq)]
pub struct BarSpread {
    /// One for each segment, counted through the bar.
    pub segments: Vec<SegmentSpread>,
    /// The length of bar to cut.
    pub stock_length: Between,
    /// The overall size: the length of the whole bar forged and still straight.
    pub forged_length: Between,
    /// Whether some size cannot stand at an end of its range, because the plan cannot be met there. Such an end is left
    /// out of the spread.
    pub unmet: bool,
}

/// What the tolerances do to one segment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SegmentSpread {
    /// Its length of starting bar.
    pub stock_length: Between,
    /// The mark at its end.
    pub mark_end: Between,
    /// Its length forged and still straight.
    pub forged_length: Between,
}

/// The lowest and the highest that a length can come out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Between {
    /// The lowest.
    pub lowest: Length,
    /// The highest.
    pub highest: Length,
}

impl Between {
    /// Whether both differ by more than a thousandth of a millimetre.
    pub fn is_range(self) -> bool {
        in_mm(self.highest - self.lowest) > LEAST_MM
    }

    /// Both in the shop's figures: `1 13/16 to 1 15/16 in`; none where they come to the same figure.
    pub fn words(self, marks: Rounding) -> Option<String> {
        let [low, high] = [self.lowest, self.highest].map(in_mm);
        let is_told = self.is_range() && marks.round(low) != marks.round(high);
        is_told.then(|| marks.between_text(low, high))
    }
}

/// Changes below this many millimetres are those of the arithmetic.
const LEAST_MM: f64 = 1e-3;

/// Works out what the tolerances of a plan do. A plan without ranges costs one look at its sizes.
pub fn spread(plan: &Plan) -> Spread {
    if !plan.bars.iter().any(has_range) {
        return Spread::default();
    }
    let density = plan.material().density();
    let spread_of = |index| has_range(&plan.bars[index]).then(|| Trials::new(plan, index, density).spread());
    Spread { bars: (0..plan.bars.len()).map(spread_of).collect() }
}

fn has_range(bar: &Bar) -> bool {
    count_ranges(bar) > 0
}

/// How many sizes of a bar can come out at a lower or a higher end: those written as a range, then sections left as they grow, and
/// what goes sideways under a fuller.
fn count_ranges(bar: &Bar) -> usize {
    let mut ranges = 0;
    bar.lengths(&mut |length| ranges += usize::from(length.is_range()));
    let mut grown = 0;
    for flat in bar.flat() {
        grown += usize::from(flat.segment.form.grown().is_some());
        grown += flat.segment.dressed.iter().filter(|dressed| dressed.is_doubtful()).count();
    }
    ranges + grown
}

/// Where a size stands: at its middle, its low or its high end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum End {
    Middle,
    Low,
    High,
}

impl End {
    fn other(self) -> Self {
        match self {
            Self::Middle => Self::Middle,
            Self::Low => Self::High,
            Self::High => Self::Low,
        }
    }

    fn lean(self) -> Lean {
        match self {
            Self::Low => Lean::Least,
            Self::Middle => Lean::Likely,
            Self::High => Lean::Most,
        }
    }

    fn of(self, length: &WrittenLength) -> WrittenLength {
        match self {
            Self::Middle => length.clone(),
            Self::Low => length.at_lowest(),
            Self::High => length.at_highest(),
        }
    }
}

/// One bar worked out with its sizes at one end or the other.
struct Trials<'a> {
    plan: &'a Plan,
    index: usize,
    density: MassDensity,
    /// What gives so that asked sizes are kept.
    kept: Vec<Give>,
    /// How many sizes of the bar are ranges.
    ranges: usize,
    /// How much is in trouble as the plan stands.
    troubles: usize,
    lowest: Vec<f64>,
    highest: Vec<f64>,
    unmet: bool,
}

impl<'a> Trials<'a> {
    fn new(plan: &'a Plan, index: usize, density: MassDensity) -> Self {
        let ranges = count_ranges(&plan.bars[index]);
        let mut met = Vec::new();
        let walk = Walk::new(plan, &plan.bars[index]);
        // The marks are struck for the sizes that are kept; then the tolerances do what they do.
        let kept = asked::gives(&asked::keep(&walk, index));
        let balance = balance_bar(&Walk { kept: &kept, ..walk }, index, density, &mut met);
        let results = results(&balance);
        let highest = results.clone();
        Self { plan, index, density, kept, ranges, troubles: met.len(), lowest: results, highest, unmet: false }
    }

    fn spread(mut self) -> BarSpread {
        let singles: Vec<_> = (0..self.ranges).map(|range| self.single(range)).collect();
        for corner in corners(&singles, self.lowest.len()) {
            self.at(&corner.iter().copied().map(End::other).collect::<Vec<_>>());
            self.at(&corner);
        }
        self.read_off()
    }

    /// One size alone at its ends: the end at which each result is greatest.
    fn single(&mut self, range: usize) -> Vec<End> {
        let alone = |end| (0..self.ranges).map(|at| if at == range { end } else { End::Middle }).collect::<Vec<_>>();
        let (low, high) = (alone(End::Low), alone(End::High));
        match (self.at(&low), self.at(&high)) {
            (Some(low), Some(high)) => low.iter().zip(&high).map(|(low, high)| greatest_at(*low, *high)).collect(),
            _ => vec![End::Middle; self.lowest.len()],
        }
    }

    /// The results with each size at its end, noted; none where the plan cannot be met there.
    fn at(&mut self, ends: &[End]) -> Option<Vec<f64>> {
        let mut bar = self.plan.bars[self.index].clone();
        let mut next = ends.iter();
        bar.lengths_mut(&mut |length| {
            if length.is_range()
                && let Some(end) = next.next()
            {
                *length = end.of(length);
            }
        });
        lean_all(&mut bar.segments, &mut next);
        let mut met: Vec<Met> = Vec::new();
        let walk = Walk { kept: &self.kept, ..Walk::new(self.plan, &bar) };
        let balance = balance_bar(&walk, self.index, self.density, &mut met);
        if met.len() > self.troubles {
            self.unmet = true;
            return None;
        }
        let results = results(&balance);
        for ((lowest, highest), result) in self.lowest.iter_mut().zip(&mut self.highest).zip(&results) {
            *lowest = lowest.min(*result);
            *highest = highest.max(*result);
        }
        Some(results)
    }

    fn read_off(self) -> BarSpread {
        let all: Vec<_> = self.lowest.iter().zip(&self.highest).map(|(low, high)| between(*low, *high)).collect();
        let (whole, segments) = all.split_at(2.min(all.len()));
        let segment = |of: &[Between]| match of {
            [stock_length, mark_end, forged_length] => {
                Some(SegmentSpread { stock_length: *stock_length, mark_end: *mark_end, forged_length: *forged_length })
            }
            _ => None,
        };
        let at = |index: usize| whole.get(index).copied().unwrap_or(between(0.0, 0.0));
        BarSpread {
            segments: segments.chunks(3).filter_map(segment).collect(),
            stock_length: at(0),
            forged_length: at(1),
            unmet: self.unmet,
        }
    }
}

/// Puts every section that is left as it grows at its end, in the order of the segments through the bar.
fn lean_all<'a>(segments: &mut [Segment], next: &mut impl Iterator<Item = &'a End>) {
    for segment in segments {
        if let Some(grown) = segment.form.grown_mut()
            && let Some(end) = next.next()
        {
            grown.lean = end.lean();
        }
        for dressed in segment.dressed.iter_mut().filter(|dressed| dressed.is_doubtful()) {
            dressed.lean = next.next().map_or(Lean::Likely, |end| end.lean());
        }
        if let Form::Split(split) = &mut segment.form {
            split.branches.iter_mut().for_each(|branch| lean_all(&mut branch.segments, next));
        }
    }
}

fn between(lowest: f64, highest: f64) -> Between {
    Between { lowest: mm(lowest), highest: mm(highest) }
}

/// The results of a bar in mm, one after the other: two of the whole, then three of each segment.
fn results(balance: &BarBalance) -> Vec<f64> {
    let whole = [in_mm(balance.stock_length), in_mm(balance.forged_length)];
    let segments = balance
        .segments
        .iter()
        .flat_map(|segment| [in_mm(segment.stock_length), in_mm(segment.mark_end), in_mm(segment.forged_length)]);
    whole.into_iter().chain(segments).collect()
}

fn greatest_at(low: f64, high: f64) -> End {
    match high - low {
        change if change > LEAST_MM * 1e-3 => End::High,
        change if change < LEAST_MM * -1e-3 => End::Low,
        _ => End::Middle,
    }
}

/// The ends at which the results are greatest, as few sets of them as will do. `singles` says it of each size for each
/// result; where a size does nothing to a result, it may stand at either end.
fn corners(singles: &[Vec<End>], results: usize) -> Vec<Vec<End>> {
    let mut corners: Vec<Vec<End>> = Vec::new();
    for result in 0..results {
        let wished: Vec<End> = singles.iter().map(|single| single[result]).collect();
        if wished.iter().filter(|end| **end != End::Middle).count() < 2 {
            // One size alone has been tried already.
            continue;
        }
        let fits = |corner: &&mut Vec<End>| corner.iter().zip(&wished).all(|(end, wish)| agree(*end, *wish));
        match corners.iter_mut().find(fits) {
            Some(corner) => corner.iter_mut().zip(wished).for_each(|(end, wish)| *end = stricter(*end, wish)),
            None => corners.push(wished),
        }
    }
    corners
}

fn agree(end: End, wish: End) -> bool {
    end == wish || end == End::Middle || wish == End::Middle
}

fn stricter(end: End, wish: End) -> End {
    if end == End::Middle { wish } else { end }
}
