//! Taking a size on a bar that is settled and bent.

use super::SizeMissed;
use super::overall::extreme_mm;
use super::spot::{Spot, spot};
use super::wanted::{How, What};
use crate::balance::{BarBalance, SegmentBalance, Settled};
use crate::metal::{FreeEnd, Shape, in_mm};
use crate::plan::{Bar, Chain, Direction, FeatureAt, Flat};
use crate::space::vector::{Vector, dot, length, minus, times};
use crate::space::{Formed, Frame, Run, runs};

/// A bar in space.
pub(super) struct Measured<'a> {
    flat: Vec<Flat<'a>>,
    formed: Vec<Formed<'a>>,
    runs: Vec<Option<Run>>,
}

impl<'a> Measured<'a> {
    /// A bar that is balanced.
    pub(super) fn of_balance(bar: &'a Bar, balance: &'a BarBalance) -> Self {
        Self::new(bar, balance.segments.iter().map(SegmentBalance::formed).collect())
    }

    /// A bar whose segments are settled.
    pub(super) fn of_settled(bar: &'a Bar, settled: &'a [Settled]) -> Self {
        Self::new(bar, settled.iter().map(Settled::formed).collect())
    }

    fn new(bar: &'a Bar, formed: Vec<Formed<'a>>) -> Self {
        Self { flat: bar.flat(), runs: runs(&bar.segments, &formed), formed }
    }

    /// What a size is, in mm.
    ///
    /// # Errors
    /// Where a part is not settled, or has no such place.
    pub(super) fn value_mm(&self, what: &What) -> Result<f64, SizeMissed> {
        match what {
            What::Overall { direction, of } => self.overall(*direction, *of),
            What::Between { from, to, taken: How::OnStraightBar } => {
                Ok((self.on_straight_bar(*to)? - self.on_straight_bar(*from)?).abs())
            }
            What::Between { from, to, taken } => {
                let (from, to) = (self.spot(*from)?, self.spot(*to)?);
                let across = minus(to.at, from.at);
                let middles = match taken {
                    How::Along(part) => dot(across, self.start(*part)?.along).abs(),
                    _ => length(across),
                };
                Ok(middles + from.beyond + to.beyond)
            }
        }
    }

    fn spot(&self, (part, at): (usize, FeatureAt)) -> Result<Spot, SizeMissed> {
        let (formed, shape) = self.settled(part)?;
        let run = self.run(part)?;
        spot(run, shape, formed, (at, self.tip_is_start(part)))
            .ok_or_else(|| SizeMissed::NoPlace { part: String::new(), at })
    }

    fn settled(&self, part: usize) -> Result<(&Formed<'a>, &'a Shape), SizeMissed> {
        let formed = self.formed.get(part).ok_or(SizeMissed::NotSettled)?;
        Ok((formed, formed.shape.ok_or(SizeMissed::NotSettled)?))
    }

    fn run(&self, part: usize) -> Result<&Run, SizeMissed> {
        self.runs.get(part).and_then(Option::as_ref).ok_or(SizeMissed::NotSettled)
    }

    fn start(&self, part: usize) -> Result<Frame, SizeMissed> {
        Ok(self.run(part)?.start)
    }

    /// Whether a part's free end is its start: of the first on the bar, and of what is read from its other end.
    fn tip_is_start(&self, part: usize) -> bool {
        let is_reversed = self.formed.get(part).is_some_and(|formed| formed.reversed);
        let is_first = self.runs.iter().position(Option::is_some) == Some(part);
        let is_last = self.runs.iter().rposition(Option::is_some) == Some(part);
        is_reversed || (is_first && !is_last)
    }

    /// Over all of the bar's metal in a direction.
    fn overall(&self, direction: Direction, of: Option<usize>) -> Result<f64, SizeMissed> {
        let frame = of.map_or(Ok(Frame::START), |part| self.start(part))?;
        let direction = match direction {
            Direction::Along => frame.along,
            Direction::Up => frame.up,
            Direction::Across => frame.toward,
        };
        let reach = |direction: Vector| {
            let parts = self.runs.iter().zip(&self.formed).filter_map(|(run, formed)| Some((run.as_ref()?, formed)));
            parts.map(|(run, formed)| extreme_mm(run, formed, direction)).fold(f64::NEG_INFINITY, f64::max)
        };
        let (far, near) = (reach(direction), reach(times(direction, -1.0)));
        let over = far + near;
        if over.is_finite() { Ok(over) } else { Err(SizeMissed::NotSettled) }
    }

    /// Where a place of a part lies along the bar while it is forged and still straight, in mm from the datum end.
    fn on_straight_bar(&self, (part, at): (usize, FeatureAt)) -> Result<f64, SizeMissed> {
        let (formed, shape) = self.settled(part)?;
        let long = in_mm(shape.length());
        let within = match (at, shape) {
            (FeatureAt::Start, _) => 0.0,
            (FeatureAt::End, _) => long,
            (FeatureAt::Tip, _) if self.tip_is_start(part) => 0.0,
            (FeatureAt::Tip, _) => long,
            (_, Shape::Hole { at, .. }) if formed.reversed => long - in_mm(*at),
            (_, Shape::Hole { at, .. }) => in_mm(*at),
            _ => long / 2.0,
        };
        Ok(self.forged_start(part)? + within)
    }

    /// Where a part starts on the straight forged bar, in mm.
    fn forged_start(&self, part: usize) -> Result<f64, SizeMissed> {
        let chain = self.flat.get(part).ok_or(SizeMissed::NotSettled)?.chain;
        let long = |at: usize| self.formed.get(at).and_then(|it| it.shape).map_or(0.0, |shape| in_mm(shape.length()));
        let own = self.flat.iter().enumerate().filter(|(at, flat)| flat.chain == chain && *at < part);
        let before: f64 = own.map(|(at, _)| long(at)).sum();
        let Chain::Branch { split, branch } = chain else { return Ok(before) };
        let hangs_back = match self.settled(split)?.1 {
            Shape::Split(size) => match size.branches.get(branch) {
                Some(of) if of.free == FreeEnd::Datum => in_mm(size.length - of.forged_length),
                _ => 0.0,
            },
            _ => 0.0,
        };
        Ok(self.forged_start(split)? + hangs_back + before)
    }
}
