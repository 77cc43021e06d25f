//! The walk along a bar from its datum end: each segment settled after the one before it.

use super::{Draft, Settled, Surroundings, Trouble, section_size};
use crate::metal::{SectionSize, in_mm, mm};
use crate::plan::{Bar, Gives, Plan, SectionSpec, Segment};
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

impl<'a> Walk<'a> {
    /// A walk along a bar.
    pub(crate) fn new(plan: &'a Plan, bar: &'a Bar) -> Self {
        let none = Surroundings { stock: SectionSize::Point, before: SectionSize::Point };
        let stock = section_size(&bar.stock, none);
        let stock_area = stock.area().get::<uom::si::area::square_millimeter>();
        Self { plan, bar, stock, stock_area }
    }

    /// What the first segment finds.
    pub(crate) fn start(&self) -> Surroundings {
        Surroundings { stock: self.stock, before: self.stock }
    }

    /// The segments settled one after the other; `give` multiplies the size that gives of one of them.
    pub(crate) fn settle(&self, give: Option<(usize, Gives, f64)>) -> Vec<Settled> {
        let mut around = self.start();
        let mut all = Vec::with_capacity(self.bar.segments.len());
        for (index, segment) in self.bar.segments.iter().enumerate() {
            let draft = Draft::new(segment, around);
            let settled = match give {
                Some((at, gives, factor)) if at == index => scaled(&draft, gives, factor),
                _ => draft.settle(),
            };
            around.before = self.after(index, segment, &settled, around);
            all.push(settled);
        }
        all
    }

    /// What a segment finds, after all before it.
    pub(crate) fn surroundings(&self, index: usize) -> Surroundings {
        let mut around = self.start();
        for (at, segment) in self.bar.segments.iter().enumerate().take(index) {
            let settled = Draft::new(segment, around).settle();
            around.before = self.after(at, segment, &settled, around);
        }
        around
    }

    /// The section that a segment leaves for the next.
    fn after(&self, index: usize, segment: &Segment, settled: &Settled, around: Surroundings) -> SectionSize {
        match &settled.shape {
            Some(shape) => shape.end(self.is_reversed(index, segment), self.stock),
            None => around.before,
        }
    }

    /// Whether a segment is read from its other end.
    ///
    /// The first segment's free end is the datum end: a taper to a point or an edge, and a flag, have their tip there.
    /// What is trimmed away before it does not count.
    pub(crate) fn is_reversed(&self, index: usize, segment: &Segment) -> bool {
        use crate::plan::Form;
        let at_free_end = self.bar.segments.iter().take(index).all(|before| matches!(before.form, Form::Trim { .. }));
        at_free_end
            && match &segment.form {
                Form::Taper { to, .. } => matches!(to, SectionSpec::Point | SectionSpec::Edge(_)),
                Form::Flag { .. } => true,
                _ => false,
            }
    }

    /// The share of metal lost to scale in a segment: none in plain, trim and hold.
    pub(crate) fn scale_share(&self, segment: &Segment) -> f64 {
        if segment.form.is_as_stock() {
            return 0.0;
        }
        let scale = segment.scale.as_ref().or(self.bar.scale.as_ref()).or(self.plan.scale.as_ref());
        scale.map_or(0.0, fh_measure::WrittenShare::ratio)
    }

    /// The length of bar that a settled segment takes, in mm: `(V_finished + V_trimmed) / (1 - s) / A_stock`.
    pub(crate) fn stock_length(&self, segment: &Segment, settled: &Settled) -> f64 {
        let Some(shape) = &settled.shape else { return 0.0 };
        if let (crate::metal::Shape::Prism { length, .. }, true) = (shape, segment.form.is_as_stock()) {
            return in_mm(*length);
        }
        let volume = shape.volume().get::<uom::si::volume::cubic_millimeter>();
        volume * (1.0 + trim_share(segment)) / (1.0 - self.scale_share(segment)) / self.stock_area
    }

    /// The factor on the size that gives at which a segment takes this length of bar.
    pub(crate) fn factor_for(&self, index: usize, gives: Gives, stock_length: Length) -> Result<f64, Trouble> {
        let segment = self.bar.segments.get(index).ok_or(Trouble::NothingGives)?;
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

/// A draft with the size that gives multiplied, settled.
pub(crate) fn scaled(draft: &Draft, gives: Gives, factor: f64) -> Settled {
    match draft.scaled(gives, factor) {
        Ok(draft) => draft.settle(),
        Err(trouble) => Settled { trouble: Some(trouble), ..draft.settle() },
    }
}

/// Trimmed metal as a share of the finished volume.
pub(crate) fn trim_share(segment: &Segment) -> f64 {
    match &segment.form {
        crate::plan::Form::Flag { trim: Some(share), .. } => share.ratio(),
        _ => 0.0,
    }
}

/// A length that is not below 0 and not without end.
pub(crate) fn sane(length: f64) -> Length {
    mm(if length.is_finite() { length.max(0.0) } else { 0.0 })
}
