//! The walk along a bar from its datum end: each segment settled after the one before it, branches within their split.

use super::{Derived, Draft, Grown, Settled, Trouble};
use crate::forms::{Surroundings, grown_to, section_size};
use crate::metal::{FreeEnd, SectionSize, Shape, Standing, in_mm, mm, mm3};
use crate::plan::{Bar, CollarRule, Form, Gives, GrownSpec, Lean, Plan, Segment, SizeName};
use std::ops::Range;
use uom::si::f64::Length;

/// One bar of a plan as it is walked along.
#[derive(Clone, Copy)]
pub(crate) struct Walk<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) bar: &'a Bar,
    pub(crate) stock: SectionSize,
    /// The area of the stock in mm².
    pub(crate) stock_area: f64,
    /// The sizes that give so that asked sizes are kept, in the order of their segments.
    pub(crate) kept: &'a [Give],
}

/// The size that gives of one segment, and the factor on it.
pub(crate) type Give = (usize, Gives, f64);

/// One walk along the bar, or along a stretch of it: what is asked of it, and what it has found so far.
pub(super) struct Pass<'g> {
    /// The sizes that are multiplied, in the order of their segments; one segment's one after the other.
    give: &'g [Give],
    /// The segment whose surroundings are wanted.
    seek: Option<usize>,
    found: Option<Surroundings>,
    /// The segments whose sizes as numbers are wanted, in order, counted through the bar.
    wanted: &'g [usize],
    /// Those sizes.
    pub(super) drafts: Vec<Draft>,
    /// The number of the first segment that is walked, counted through the bar.
    first: usize,
    /// The segments settled so far, from the first.
    pub(super) all: Vec<Settled>,
}

impl<'g> Pass<'g> {
    /// A walk that begins at a segment, with these sizes multiplied, and these drafts wanted.
    pub(super) fn new(first: usize, give: &'g [Give], wanted: &'g [usize]) -> Self {
        Self { give, seek: None, found: None, wanted, drafts: Vec::new(), first, all: Vec::new() }
    }

    /// A walk that looks for what a segment finds.
    pub(super) fn seeking(first: usize, give: &'g [Give], seek: usize) -> Self {
        Self { seek: Some(seek), ..Self::new(first, give, &[]) }
    }

    /// What the segment finds that was sought.
    pub(super) fn found(&self) -> Option<Surroundings> {
        self.found
    }

    /// The number of the segment that is walked next, counted through the bar.
    pub(super) fn next(&self) -> usize {
        self.first + self.all.len()
    }

    /// A part of the walk with these sizes multiplied besides, in the order of their segments, all of them in that part.
    pub(super) fn walk_with(&mut self, gives: &[Give], walk: impl FnOnce(&mut Pass<'_>)) {
        let mut give: Vec<Give> = self.give.iter().chain(gives).copied().collect();
        give.sort_by_key(|give| give.0);
        let wanted = self.wanted.get(self.drafts.len()..).unwrap_or_default();
        let mut inner = Pass { seek: self.seek, ..Pass::new(self.next(), &give, wanted) };
        walk(&mut inner);
        self.found = self.found.or(inner.found);
        self.drafts.append(&mut inner.drafts);
        self.all.append(&mut inner.all);
    }

    /// What is multiplied in a segment.
    pub(super) fn given(&self, index: usize) -> &'g [Give] {
        let start = self.give.partition_point(|give| give.0 < index);
        let end = self.give.partition_point(|give| give.0 <= index);
        self.give.get(start..end).unwrap_or_default()
    }
}

/// Where a walk stands in a chain.
#[derive(Clone, Copy)]
pub(super) struct Stand {
    /// What the next segment finds.
    pub(super) around: Surroundings,
    /// Whether the chain hangs on nothing at its far end.
    pub(super) far_is_free: bool,
}

impl Stand {
    /// Where the walk stands after a segment of its chain.
    pub(super) fn after(mut self, segment: &Segment, settled: &Settled) -> Self {
        // Behind a split the bar goes on as it was.
        if let Some(shape) = settled.shape.as_ref().filter(|_| !matches!(segment.form, Form::Split(_))) {
            self.around.before = shape.end(settled.reversed, self.around.stock);
            self.around.after_a_plate = matches!(segment.form, Form::Flag(_) | Form::Hole(_));
        }
        // What is trimmed away before it does not count.
        self.around.at_free_end &= matches!(segment.form, Form::Trim(_));
        self
    }
}

impl<'a> Walk<'a> {
    /// A walk along a bar.
    pub(crate) fn new(plan: &'a Plan, bar: &'a Bar) -> Self {
        let collar = CollarRule::Butted;
        let none = Surroundings {
            stock: SectionSize::Point,
            before: SectionSize::Point,
            after_a_plate: false,
            at_free_end: true,
            collar,
        };
        let stock = section_size(&bar.stock, none);
        let stock_area = stock.area().get::<uom::si::area::square_millimeter>();
        Self { plan, bar, stock, stock_area, kept: &[] }
    }

    /// What the first segment finds.
    pub(crate) fn start(&self) -> Surroundings {
        let collar = self.plan.practice.collar.unwrap_or(CollarRule::Butted);
        Surroundings { stock: self.stock, before: self.stock, after_a_plate: false, at_free_end: true, collar }
    }

    /// The segments settled one after the other as they are written, counted through the bar; `give` multiplies a size of one
    /// of them. Blocks between fixed marks are not filled.
    pub(crate) fn settle(&self, give: Option<Give>) -> Vec<Settled> {
        self.walk(give, None).0
    }

    /// What a segment finds, after all before it as they are written.
    pub(crate) fn surroundings(&self, index: usize) -> Surroundings {
        self.walk(None, Some(index)).1.unwrap_or(self.start())
    }

    fn walk(&self, give: Option<Give>, seek: Option<usize>) -> (Vec<Settled>, Option<Surroundings>) {
        let mut pass = Pass::new(0, give.as_slice(), &[]);
        pass.seek = seek;
        pass.all.reserve(self.bar.segments.len());
        self.walk_chain(&self.bar.segments, 0..self.bar.segments.len(), self.stand(), &mut pass);
        (pass.all, pass.found)
    }

    /// Where a walk stands at the datum end.
    pub(super) fn stand(&self) -> Stand {
        Stand { around: self.start(), far_is_free: true }
    }

    /// Settles the segments of a stretch of a chain; where the walk stands after it.
    pub(super) fn walk_chain(
        &self,
        segments: &[Segment],
        places: Range<usize>,
        mut stand: Stand,
        pass: &mut Pass<'_>,
    ) -> Stand {
        for place in places {
            let Some(segment) = segments.get(place) else { break };
            let here = pass.all.len();
            let index = pass.first + here;
            if pass.seek == Some(index) {
                pass.found = Some(stand.around);
            }
            if let Form::Split(_) = segment.form {
                pass.all.push(Settled::default());
                let rest = segments.get(place + 1..).unwrap_or_default();
                let open = free_end(stand, rest);
                let mut settled = self.settle_split(segment, stand.around, open, pass);
                let runs_on = matches!(&segment.form, Form::Split(split) if split.has_free_branch());
                if stand.around.at_free_end
                    && stand.far_is_free
                    && !runs_on
                    && rest.iter().all(|after| matches!(after.form, Form::Trim(_)))
                {
                    settled.trouble = Some(Trouble::SplitAtBothEnds);
                }
                pass.all[here] = settled;
            } else {
                let settled = self.settle_one(segment, index, stand, pass);
                pass.all.push(settled);
            }
            stand = stand.after(segment, &pass.all[here]);
        }
        stand
    }

    fn settle_one(&self, segment: &Segment, index: usize, stand: Stand, pass: &mut Pass<'_>) -> Settled {
        let draft = self.kept_draft(index, Draft::new(segment, stand.around));
        let mut settled = match pass.given(index) {
            [] => draft.settle(),
            [(_, gives, factor)] => scaled(&draft, *gives, *factor),
            [given @ .., (_, gives, factor)] => {
                let before = given.iter().try_fold(draft.clone(), |draft, (_, gives, by)| draft.scaled(*gives, *by));
                before.map_or_else(
                    |trouble| Settled { trouble: Some(trouble), ..draft.settle() },
                    |draft| scaled(&draft, *gives, *factor),
                )
            }
        };
        settled.reversed = draft.reversed;
        settled.grown = segment.form.grown().and_then(|spec| what_grows(spec, stand.around));
        settled.derived.extend(settled.grown.iter().filter_map(grown_size));
        if let (Form::Peak(peak), Some(Shape::Peak { corner, .. })) = (&segment.form, &settled.shape) {
            settled.standing = peak.standing(*corner, stand.around, self.plan.units.length);
            settled.derived.extend(settled.standing.iter().flat_map(standing_sizes));
        }
        if !segment.via.is_empty() {
            settled.via = self.on_the_way(segment, &settled, stand.around);
        }
        if pass.wanted.get(pass.drafts.len()) == Some(&index) {
            pass.drafts.push(draft);
        }
        settled
    }

    /// A segment's sizes with the one multiplied that gives so that an asked size is kept.
    fn kept_draft(&self, index: usize, draft: Draft) -> Draft {
        match self.kept.iter().find(|kept| kept.0 == index) {
            Some((_, gives, by)) => draft.scaled(*gives, *by).unwrap_or(draft),
            None => draft,
        }
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
            Some(Shape::Prism { length, section })
                if segment.form.is_as_stock() && *section == self.stock && settled.dressed.is_empty() =>
            {
                return in_mm(*length) * settled.swell.unwrap_or(1.0);
            }
            Some(_) => {}
        }
        let blank = settled.shape.as_ref().and_then(Shape::blank);
        let metal = match blank {
            // Whatever is cut of it.
            Some(blank) => (blank.volume() / mm3(1.0)).value * settled.swell.unwrap_or(1.0),
            None => settled.volume_mm3() + trimmed_mm3(segment, settled),
        };
        metal / (1.0 - self.scale_share(segment)) / self.stock_area
    }

    /// The length of bar that all segments need, in mm.
    pub(crate) fn total(&self, settled: &[Settled]) -> f64 {
        self.total_of(&self.bar.segments, settled)
    }

    /// The length of bar that these segments of one chain need, in mm; `settled` is counted from the first of them.
    pub(super) fn total_of(&self, segments: &[Segment], settled: &[Settled]) -> f64 {
        let mut index = 0;
        let mut sum = 0.0;
        for segment in segments {
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
fn free_end(stand: Stand, rest: &[Segment]) -> FreeEnd {
    if stand.around.at_free_end {
        FreeEnd::Datum
    } else if stand.far_is_free && rest.iter().all(|after| !after.form.is_finished()) {
        FreeEnd::Far
    } else {
        FreeEnd::Neither
    }
}

/// What a section grows to, with the ends of the law's doubt.
fn what_grows(spec: &GrownSpec, around: Surroundings) -> Option<Grown> {
    let (struck_to, is_width) = spec.struck()?;
    let of = section_size(&spec.of, around);
    let [width, thickness] = of.extents_mm().map(mm);
    let before = if is_width { [width, thickness] } else { [thickness, width] };
    let grows = |lean| grown_to(spec, &of, lean).map(|[width, thickness]| mm(if is_width { width } else { thickness }));
    let size = (struck_to.length() < before[1])
        .then(|| Some([grows(Lean::Least)?, grows(Lean::Likely)?, grows(Lean::Most)?]))
        .flatten();
    Some(Grown { before, struck_to: struck_to.length(), bite: spec.bite.length(), is_width, size })
}

/// The size that follows where a section is left as it grows.
fn grown_size(grown: &Grown) -> Option<Derived> {
    let name = if grown.is_width { SizeName::Width } else { SizeName::Thickness };
    Some(Derived::length(name, grown.size?[1], "as it grows"))
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
