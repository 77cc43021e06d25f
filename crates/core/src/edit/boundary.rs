//! Moving a boundary: from the bar to the piece. A mark is moved, and one size of the segment gives until the volume fits.

use super::gave::Gave;
use super::refusal::Refusal;
use super::rewrite::{rewrite, size_words};
use crate::balance::{Draft, Settled, Trouble, Walk, laid, scaled, settled_on_cut_bar, surroundings};
use crate::forms::{Pen, Surroundings};
use crate::metal::{in_mm, mm};
use crate::plan::{Chain, Form, Gives, Plan, Segment, SizeName};
use fh_measure::{LengthRange, LengthUnit, WrittenLength, format_decimal};
use uom::si::f64::Length;

/// A wish to move the boundary at the end of a segment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoundaryMove {
    /// The bar.
    pub bar: usize,
    /// The segment whose end is moved.
    pub segment: usize,
    /// Where it is to come.
    pub to: BoundaryTarget,
    /// What becomes of the segment after it.
    pub neighbor: Neighbor,
}

/// Where a boundary is to come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoundaryTarget {
    /// The mark on the starting bar, from the datum end.
    Mark(Length),
    /// The end on the forged bar, from the datum end.
    Forged(Length),
}

/// What becomes of the segment after a moved boundary.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Neighbor {
    /// It keeps its metal, and the bar gets longer or shorter.
    KeepsMetal,
    /// It trades metal: what the one gains it loses.
    TradesMetal,
}

/// A plan after a boundary was moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// The plan.
    pub plan: Plan,
    /// What gave way.
    pub gave: Vec<Gave>,
}

/// Moves a boundary.
///
/// # Errors
/// Where there is no such boundary, nothing may give, no size fits, or the boundary would come elsewhere; the refusal says
/// so in words and numbers.
pub fn move_boundary(plan: &Plan, wish: &BoundaryMove) -> Result<Moved, Refusal> {
    let change = changed(plan, wish)?;
    change.has_come(wish)?;
    Ok(Moved { plan: change.plan, gave: change.gave })
}

/// The change of a plan that moves a boundary.
fn changed(plan: &Plan, wish: &BoundaryMove) -> Result<Change, Refusal> {
    let bar = plan.bars.get(wish.bar).ok_or(Refusal::NoSuchPlace)?;
    let walk = Walk::new(plan, bar);
    let flat = bar.flat();
    let segment = flat.get(wish.segment).ok_or(Refusal::NoSuchPlace)?.segment;
    let fitted = settled_on_cut_bar(&walk);
    let takes_up = fitted.as_ref().map(|(at, _)| *at);
    let settled = fitted.map_or_else(|| walk.settle(None), |(_, settled)| settled);
    let lengths: Vec<f64> =
        flat.iter().zip(&settled).map(|(flat, settled)| walk.stock_length(flat.segment, settled)).collect();
    let mut change = Change { plan: plan.clone(), bar: wish.bar, gave: Vec::new() };
    let is_plain = flat.iter().all(|flat| flat.depth == 0);
    if let (Some(at), true) = (takes_up, is_plain) {
        change.move_on_cut_bar(wish, at, &lengths, &settled)?;
        return Ok(change);
    }
    let gives = segment.giving();
    let grown = match wish.to {
        BoundaryTarget::Mark(mark) => {
            change.fit_mark(wish, gives, in_mm(mark), &lengths)?;
            change.stock_length(wish.segment) - lengths[wish.segment]
        }
        BoundaryTarget::Forged(end) => {
            let forged = |index: usize| settled[index].shape.as_ref().map_or(0.0, |shape| in_mm(shape.length()));
            let start = forged_start(&walk, wish, forged);
            change.stretch(wish.segment, in_mm(end) - start, forged(wish.segment))?;
            change.stock_length(wish.segment) - lengths[wish.segment]
        }
    };
    if let (Neighbor::TradesMetal, Some(next)) = (wish.neighbor, bar.next_in_chain(wish.segment)) {
        change.fit(next, flat[next].segment.giving(), lengths[next] - grown)?;
    }
    Ok(change)
}

/// Where the segment starts on the forged bar, in mm.
fn forged_start(walk: &Walk<'_>, wish: &BoundaryMove, forged: impl Fn(usize) -> f64) -> f64 {
    match walk.bar.place_of(wish.segment) {
        Some((Chain::Bar, _)) => walk.bar.before_in_chain(wish.segment).into_iter().map(forged).sum(),
        // A branch hangs where its split puts it.
        _ => laid(walk).get(wish.segment).map_or(0.0, |segment| in_mm(segment.forged_start)),
    }
}

/// A mark comes to lie this close to where it was wished, in mm.
const CLOSE_MM: f64 = 0.001;
/// A boundary that comes no closer than this to its wish has not come there, in mm of bar.
const THERE_MM: f64 = 0.01;
/// The most decimals that a size is written with beyond the usual ones.
const FINEST: usize = 8;

/// A plan on its way to the next one.
pub(super) struct Change {
    pub(super) plan: Plan,
    pub(super) bar: usize,
    pub(super) gave: Vec<Gave>,
}

impl Change {
    pub(super) fn walk(&self) -> Walk<'_> {
        Walk::new(&self.plan, &self.plan.bars[self.bar])
    }

    /// The length of bar that a segment takes now, in mm.
    fn stock_length(&self, index: usize) -> f64 {
        let walk = self.walk();
        let Some(segment) = walk.bar.segment(index) else { return 0.0 };
        walk.stock_length(segment, &Draft::new(segment, walk.surroundings(index)).settle())
    }

    /// Lets a segment give until the mark at its end comes to a place, in mm. In a branch the slit grows with it.
    fn fit_mark(&mut self, wish: &BoundaryMove, gives: Gives, mark: f64, lengths: &[f64]) -> Result<(), Refusal> {
        let at = wish.segment;
        let bar = &self.plan.bars[self.bar];
        let before: f64 = bar.before_in_chain(at).iter().map(|before| lengths[*before]).sum();
        if let Some((Chain::Bar, _)) = bar.place_of(at) {
            return self.fit(at, gives, mark - before);
        }
        let laid = self.walk().marks(None);
        let (start, end) = laid.get(at).copied().ok_or(Refusal::NoSuchPlace)?;
        if mark <= start || lengths[at] <= 0.0 {
            return Err(self.refusal(at, "no bar would be left for it"));
        }
        if wish.neighbor == Neighbor::TradesMetal && bar.next_in_chain(at).is_some() {
            // What is traded within a branch leaves the slit as long as it is.
            return self.fit(at, gives, lengths[at] * (mark - start) / (end - start));
        }
        let mark_at = |factor: f64| self.walk().marks(Some((at, gives, factor))).get(at).map_or(0.0, |(_, end)| *end);
        let guess = if self.walk().bar.segment(at).is_some_and(|segment| segment.form.length().is_some()) {
            1.0
        } else {
            lengths[at]
        };
        let factor = crate::balance::solve(mark_at, mark, guess)
            .ok_or_else(|| self.no_fit(at, Trouble::CannotFit, lengths[at]))?;
        self.write(at, gives, factor)
    }

    /// Moves a boundary of a bar already cut, whose segment `takes_up` makes good for what the others gain or lose.
    ///
    /// Before it the marks are reckoned from the datum; from it on they are reckoned from the end of the bar, which stays.
    fn move_on_cut_bar(
        &mut self,
        wish: &BoundaryMove,
        takes_up: usize,
        lengths: &[f64],
        settled: &[Settled],
    ) -> Result<(), Refusal> {
        let (at, next) = (wish.segment, wish.segment + 1);
        let gives = |change: &Self, index: usize| change.plan.bars[change.bar].segments[index].giving();
        let forged = |index: usize| settled[index].shape.as_ref().map_or(0.0, |shape| in_mm(shape.length()));
        let from_end = at >= takes_up;
        if from_end && next >= lengths.len() {
            return Err(self.refusal(at, "the bar is already cut, so its end stays where it is"));
        }
        let grown = match wish.to {
            BoundaryTarget::Mark(mark) => in_mm(mark) - lengths[..=at].iter().sum::<f64>(),
            BoundaryTarget::Forged(end) => {
                let target = in_mm(end) - (0..at).map(forged).sum::<f64>();
                if at == takes_up {
                    if gives(self, at) != Gives::Length || forged(at) <= 0.0 {
                        return Err(self.refusal(at, "it takes up what is left of the bar, but not by its length"));
                    }
                    self.stock_length_forged(at, target)? - lengths[at]
                } else {
                    self.stretch(at, target, forged(at))?;
                    self.stock_length(at) - lengths[at]
                }
            }
        };
        let is_stretched = matches!(wish.to, BoundaryTarget::Forged(_));
        let trades = wish.neighbor == Neighbor::TradesMetal || (is_stretched && from_end);
        if at != takes_up && !is_stretched && (trades || !from_end) {
            self.fit(at, gives(self, at), lengths[at] + grown)?;
        }
        if next != takes_up && next < lengths.len() && (trades || from_end) {
            self.fit(next, gives(self, next), lengths[next] - grown)?;
        }
        match settled_on_cut_bar(&self.walk()) {
            Some(_) => Ok(()),
            None => Err(self.refusal(takes_up, "no bar would be left for it to take up")),
        }
    }

    /// The length of bar that a segment takes where its length gives until it is this long, forged, in mm.
    fn stock_length_forged(&self, index: usize, target: f64) -> Result<f64, Refusal> {
        let walk = self.walk();
        let segment = walk.bar.segment(index).ok_or(Refusal::NoSuchPlace)?;
        let draft = Draft::new(segment, walk.surroundings(index));
        let settled = |factor: f64| scaled(&draft, Gives::Length, factor);
        let long = |factor: f64| settled(factor).shape.map_or(0.0, |shape| in_mm(shape.length()));
        let guess = target / long(1.0);
        let guess = if guess.is_finite() && guess > 0.0 { guess } else { 1.0 };
        let factor = crate::balance::solve(long, target, guess)
            .ok_or_else(|| self.refusal(index, &format!("no size of it makes it {} long", self.words(target))))?;
        Ok(walk.stock_length(segment, &settled(factor)))
    }

    /// Lets one size of a segment give until it takes this length of bar, in mm.
    fn fit(&mut self, index: usize, gives: Gives, target: f64) -> Result<(), Refusal> {
        if target <= 0.0 || !target.is_finite() {
            return Err(self.refusal(index, &format!("no bar would be left for it ({})", self.words(target))));
        }
        let factor =
            self.walk().factor_for(index, gives, mm(target)).map_err(|trouble| self.no_fit(index, trouble, target))?;
        self.write(index, gives, factor)
    }

    /// Makes a segment this long, forged, in mm.
    fn stretch(&mut self, index: usize, target: f64, now: f64) -> Result<(), Refusal> {
        if target <= 0.0 || !target.is_finite() {
            return Err(self.refusal(index, &format!("it would be {} long", self.words(target))));
        }
        if now <= 0.0 {
            return Err(self.refusal(index, "its length is not settled yet"));
        }
        self.write(index, Gives::Length, target / now)
    }

    /// What a segment finds, after all before it.
    fn around(&self, index: usize) -> Surroundings {
        let walk = self.walk();
        let filled = walk.bar.has_fixed_marks().then(|| surroundings(&walk, index)).flatten();
        filled.unwrap_or_else(|| walk.surroundings(index))
    }

    /// Writes the size that gave into the plan.
    pub(super) fn write(&mut self, index: usize, gives: Gives, factor: f64) -> Result<(), Refusal> {
        let walk = self.walk();
        let Some(segment) = walk.bar.segment(index) else { return Err(Refusal::NoSuchPlace) };
        if matches!(&segment.form, Form::Split(split) if split.cut.is_some()) && gives == Gives::Length {
            return self.write_slit(index, factor);
        }
        let around = self.around(index);
        let draft = Draft::new(segment, around);
        let scaled = draft.scaled(gives, factor).map_err(|trouble| self.no_fit(index, trouble, 0.0))?;
        let settled = scaled.settle();
        if let Some(trouble) = settled.trouble {
            return Err(self.no_fit(index, trouble, 0.0));
        }
        let wanted = walk.stock_length(segment, &settled);
        let (segment, written) = self
            .written(segment, around, (gives, &settled, wanted))
            .ok_or_else(|| self.refusal(index, "the size would be out of range"))?;
        let as_written = Draft::new(&segment, around).settle();
        if let Some(trouble) = as_written.trouble {
            return Err(self.no_fit(index, trouble, wanted));
        }
        for size in written {
            let text = size_words(&segment, size);
            self.gave.push(Gave { segment: index, size, text });
        }
        if let Some(place) = self.plan.bars[self.bar].segment_mut(index) {
            *place = segment;
        }
        Ok(())
    }

    /// Writes how long the slit of a written cut is, in mm.
    fn write_slit(&mut self, index: usize, long: f64) -> Result<(), Refusal> {
        let unit = self.plan.units.length.length_unit();
        let written = WrittenLength::from_mm(long, unit, LengthRange::AboveZero);
        let slit = written.map_err(|error| Refusal::CannotBe(error.to_string()))?;
        let place = self.plan.bars.get_mut(self.bar).and_then(|bar| bar.segment_mut(index));
        let Some(Form::Split(split)) = place.map(|segment| &mut segment.form) else { return Err(Refusal::NoSuchPlace) };
        self.gave.push(Gave { segment: index, size: SizeName::SlitLength, text: slit.text().to_owned() });
        split.slit = Some(slit);
        Ok(())
    }

    /// A segment with the size that gave, written as finely as the mark needs: until it takes the wanted length of bar.
    fn written(
        &self,
        before: &Segment,
        around: Surroundings,
        (gives, settled, wanted): (Gives, &Settled, f64),
    ) -> Option<(Segment, Vec<SizeName>)> {
        let walk = self.walk();
        let mut best = None;
        for finer in 0..=FINEST {
            let mut segment = before.clone();
            let pen = Pen { unit: self.plan.units.length.length_unit(), finer };
            let Some(written) = rewrite(&mut segment, gives, settled, pen) else { continue };
            let got = walk.stock_length(&segment, &Draft::new(&segment, around).settle());
            best = Some((segment, written));
            if (got - wanted).abs() <= CLOSE_MM {
                break;
            }
        }
        best
    }

    /// Makes sure that the boundary has come to where it was wished: what gave may have changed what lies before it, and with
    /// what takes up on a bar already cut.
    pub(super) fn has_come(&self, wish: &BoundaryMove) -> Result<(), Refusal> {
        let laid = laid(&self.walk());
        let segment = laid.get(wish.segment).ok_or(Refusal::NoSuchPlace)?;
        let (wished, come, there) = match wish.to {
            BoundaryTarget::Mark(mark) => (in_mm(mark), in_mm(segment.mark_end), THERE_MM),
            // The end of a branch hangs where its split puts it.
            BoundaryTarget::Forged(_) if segment.chain != Chain::Bar => return Ok(()),
            BoundaryTarget::Forged(end) => {
                // A hair of a thick bar is an inch of wire.
                let stretch = in_mm(segment.forged_length) / in_mm(segment.stock_length);
                let come = in_mm(segment.forged_start + segment.forged_length);
                (in_mm(end), come, THERE_MM * if stretch.is_finite() { stretch.max(1.0) } else { 1.0 })
            }
        };
        if (come - wished).abs() <= there + 1e-9 * wished.abs() {
            return Ok(());
        }
        let words = format!("its end would come to {}, not there: other sizes go with it", self.words(come));
        Err(self.refusal(wish.segment, &words))
    }

    fn no_fit(&self, index: usize, trouble: Trouble, target: f64) -> Refusal {
        let words = match trouble {
            Trouble::NothingGives => "its sizes follow or hold, so nothing in it gives".to_owned(),
            Trouble::RadiusBelowZero(radius) => {
                format!("its bend would need an inside radius of {}, below 0", self.words(in_mm(radius)))
            }
            Trouble::CannotFit => format!("no size of it fits {} of bar", self.words(target)),
            Trouble::HoleTooLarge => "its hole would break out of it".to_owned(),
            _ => "its own sizes are not settled yet".to_owned(),
        };
        self.refusal(index, &words)
    }

    pub(super) fn refusal(&self, index: usize, words: &str) -> Refusal {
        let name = crate::describe::segment_name(&self.plan.bars[self.bar], index);
        Refusal::CannotBe(format!("“{name}”: {words}"))
    }

    pub(super) fn words(&self, mm: f64) -> String {
        match self.plan.units.length.length_unit() {
            LengthUnit::Inch => format_decimal(mm, LengthUnit::Inch, 3),
            unit => format_decimal(mm, unit, 1),
        }
    }
}
