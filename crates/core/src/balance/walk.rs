//! The walk along a bar from its datum end: each segment settled after the one before it, branches within their split.

use super::{Derived, Draft, Settled, Trouble};
use crate::forms::{Surroundings, section_size};
use crate::metal::{FreeEnd, SectionSize, Shape, Standing, in_mm, mm};
use crate::plan::{Bar, CollarRule, Form, Gives, Plan, Segment, SizeName};
use uom::si::f64::Length;

/// One bar of a plan as it is walked along.
#[derive(Clone, Copy)]
pub(crate) struct Walk<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) bar: &'a Bar,
    pub(crate) stock: SectionSize,
    /// The area of the stock in mm².
    pub(crate) stock_area: f64,
}

/// The size that gives of one segment, and the factor on it.
pub(crate) type Give = (usize, Gives, f64);

/// One walk along the bar: what is asked of it, and what it has found so far.
pub(super) struct Pass {
    /// The size of one segment that is multiplied.
    give: Option<Give>,
    /// The segment whose surroundings are wanted.
    seek: Option<usize>,
    found: Option<Surroundings>,
    /// The segments settled so far, counted through the bar.
    pub(super) all: Vec<Settled>,
}

/// Which ends of a chain hang on nothing.
#[derive(Clone, Copy)]
pub(super) struct Free {
    pub(super) datum: bool,
    pub(super) far: bool,
}

impl<'a> Walk<'a> {
    /// A walk along a bar.
    pub(crate) fn new(plan: &'a Plan, bar: &'a Bar) -> Self {
        let collar = CollarRule::Butted;
        let none = Surroundings { stock: SectionSize::Point, before: SectionSize::Point, collar };
        let stock = section_size(&bar.stock, none);
        let stock_area = stock.area().get::<uom::si::area::square_millimeter>();
        Self { plan, bar, stock, stock_area }
    }

    /// What the first segment finds.
    pub(crate) fn start(&self) -> Surroundings {
        let collar = self.plan.practice.collar.unwrap_or(CollarRule::Butted);
        Surroundings { stock: self.stock, before: self.stock, collar }
    }

    /// The segments settled one after the other, counted through the bar; `give` multiplies a size of one of them.
    pub(crate) fn settle(&self, give: Option<Give>) -> Vec<Settled> {
        self.walk(give, None).all
    }

    /// What a segment finds, after all before it.
    pub(crate) fn surroundings(&self, index: usize) -> Surroundings {
        self.walk(None, Some(index)).found.unwrap_or(self.start())
    }

    fn walk(&self, give: Option<Give>, seek: Option<usize>) -> Pass {
        let mut pass = Pass { give, seek, found: None, all: Vec::with_capacity(self.bar.segments.len()) };
        self.walk_chain(&self.bar.segments, self.start(), Free { datum: true, far: true }, &mut pass);
        pass
    }

    /// Settles the segments of a chain.
    pub(super) fn walk_chain(&self, segments: &[Segment], mut around: Surroundings, free: Free, pass: &mut Pass) {
        let mut at_free_end = free.datum;
        for (place, segment) in segments.iter().enumerate() {
            let index = pass.all.len();
            if pass.seek == Some(index) {
                pass.found = Some(around);
            }
            if let Form::Split(_) = segment.form {
                pass.all.push(Settled::default());
                let rest = segments.get(place + 1..).unwrap_or_default();
                let open = free_end(at_free_end, free.far, rest);
                let mut settled = self.settle_split(segment, around, open, pass);
                if at_free_end && free.far && rest.iter().all(|after| matches!(after.form, Form::Trim(_))) {
                    settled.trouble = Some(Trouble::SplitAtBothEnds);
                }
                pass.all[index] = settled;
            } else {
                let settled = self.settle_one(segment, index, around, at_free_end, pass.give);
                if let Some(shape) = &settled.shape {
                    around.before = shape.end(settled.reversed, around.stock);
                }
                pass.all.push(settled);
            }
            // What is trimmed away before it does not count.
            at_free_end &= matches!(segment.form, Form::Trim(_));
        }
    }

    fn settle_one(
        &self,
        segment: &Segment,
        index: usize,
        around: Surroundings,
        at_free_end: bool,
        give: Option<Give>,
    ) -> Settled {
        let draft = Draft::new(segment, around);
        let mut settled = match give {
            Some((at, gives, factor)) if at == index => scaled(&draft, gives, factor),
            _ => draft.settle(),
        };
        settled.reversed = at_free_end && segment.form.one().has_free_end();
        if let (Form::Peak(peak), Some(Shape::Peak { corner, .. })) = (&segment.form, &settled.shape) {
            settled.standing = peak.standing(*corner, around, self.plan.units.length);
            settled.derived.extend(settled.standing.iter().flat_map(standing_sizes));
        }
        settled
    }

    /// The share of metal lost to scale in a segment: none in plain, trim and hold; in a split, that of its branches.
    pub(crate) fn scale_share(&self, segment: &Segment) -> f64 {
        if segment.form.is_as_stock() || matches!(segment.form, Form::Split(_)) {
            return 0.0;
        }
        let scale = segment.scale.as_ref().or(self.bar.scale.as_ref()).or(self.plan.scale.as_ref());
        scale.map_or(0.0, fh_measure::WrittenShare::ratio)
    }

    /// The length of bar that a settled segment takes, in mm: `(V_finished + V_trimmed) / (1 - s) / A_stock`.
    ///
    /// In a branch, the length of whole bar that holds its metal.
    pub(crate) fn stock_length(&self, segment: &Segment, settled: &Settled) -> f64 {
        match &settled.shape {
            None => return 0.0,
            Some(Shape::Split(split)) => return in_mm(split.stock_length),
            Some(Shape::Prism { length, section }) if segment.form.is_as_stock() && *section == self.stock => {
                return in_mm(*length) * settled.swell.unwrap_or(1.0);
            }
            Some(_) => {}
        }
        let metal = settled.volume_mm3() + trimmed_mm3(segment, settled);
        metal / (1.0 - self.scale_share(segment)) / self.stock_area
    }

    /// The length of bar that all segments need, in mm.
    pub(crate) fn total(&self, settled: &[Settled]) -> f64 {
        let mut index = 0;
        let mut sum = 0.0;
        for segment in &self.bar.segments {
            sum += settled.get(index).map_or(0.0, |settled| self.stock_length(segment, settled));
            index += segment.count();
        }
        sum
    }

    /// The factor on the size that gives at which a segment takes this length of bar.
    pub(crate) fn factor_for(&self, index: usize, gives: Gives, stock_length: Length) -> Result<f64, Trouble> {
        let segment = self.bar.segment(index).ok_or(Trouble::NothingGives)?;
        let draft = Draft::new(segment, self.surroundings(index));
        let now = draft.scaled(gives, 1.0)?.settle();
        if let Some(trouble) = now.trouble {
            return Err(trouble);
        }
        let length = |factor: f64| self.stock_length(segment, &scaled(&draft, gives, factor));
        let guess = in_mm(stock_length) / self.stock_length(segment, &now);
        let guess = if gives == Gives::Length && guess.is_finite() && guess > 0.0 { guess } else { 1.0 };
        super::solve(length, in_mm(stock_length), guess).ok_or(Trouble::CannotFit)
    }
}

/// At which end the branches of a split are free: what follows it, and what goes before, holds them together.
fn free_end(at_free_datum: bool, far_is_free: bool, rest: &[Segment]) -> FreeEnd {
    if at_free_datum {
        FreeEnd::Datum
    } else if far_is_free && rest.iter().all(|after| !after.form.is_finished()) {
        FreeEnd::Far
    } else {
        FreeEnd::Neither
    }
}

/// How far apart the set-downs beside what is left for a corner are.
fn standing_sizes(standing: &Standing) -> Vec<Derived> {
    const BECAUSE: &str = "follows from the corner";
    let Some(set_downs) = standing.set_downs() else { return Vec::new() };
    let base = standing.base.is_none().then_some((SizeName::Base, set_downs.base));
    let walls = set_downs.top.map(|top| (SizeName::BetweenWalls, top));
    walls.into_iter().chain(base).map(|(name, length)| Derived::length(name, length, BECAUSE)).collect()
}

/// A draft with the size that gives multiplied, settled.
pub(crate) fn scaled(draft: &Draft, gives: Gives, factor: f64) -> Settled {
    match draft.scaled(gives, factor) {
        Ok(draft) => draft.settle(),
        Err(trouble) => Settled { trouble: Some(trouble), ..draft.settle() },
    }
}

/// The metal of a settled segment that is cut away, in mm³: what is trimmed off a flag, and what a hole loses.
pub(crate) fn trimmed_mm3(segment: &Segment, settled: &Settled) -> f64 {
    let lost = |shape| segment.form.one().trimmed_mm3(settled.volume_mm3(), shape);
    settled.shape.as_ref().map_or(0.0, lost)
}

/// A length that is not below 0 and not without end.
pub(crate) fn sane(length: f64) -> Length {
    mm(if length.is_finite() { length.max(0.0) } else { 0.0 })
}
