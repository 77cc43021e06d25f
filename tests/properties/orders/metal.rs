//! The metal of a bar after each step, counted by what the steps before it have taken.

use super::did::Did;
use fh_core::balance::{Balance, BarBalance, SegmentBalance};
use fh_core::metal::{Shape, View};
use fh_core::plan::{Bar, Chain, Flat, Form, Operation, Plan};
use fh_work::{Worked, after};
use proptest::prelude::*;
use tests::{mm, mm2, mm3};

/// Metal and lengths are kept to this share.
const KEPT: f64 = 1e-9;
/// What is so near to the bar that no hammer is lifted for it has its own size from the beginning.
const NO_HAMMER: f64 = 0.05;

/// Checks every state of an order: metal, lengths, the bar from the rack and the finished piece.
pub(crate) fn check(plan: &Plan, balance: &Balance, worked: &Worked, steps: &[Vec<Did>]) -> Result<(), TestCaseError> {
    let all: Vec<Did> = steps.iter().flatten().copied().collect();
    for n in 0..=steps.len() {
        let state = after(plan, balance, worked, n);
        prop_assert_eq!(state.bars.len(), plan.bars.len());
        let done: Vec<Did> = steps[..n].iter().flatten().copied().collect();
        for (index, (bar, now)) in plan.bars.iter().zip(&state.bars).enumerate() {
            sound(now)?;
            let count = Count { bar, balance: &balance.bars[index], index, all: &all, done: &done };
            count.metal(now, n)?;
            if n == 0 {
                count.as_cut(now)?;
            }
            if n == steps.len() {
                count.finished(now)?;
            }
        }
    }
    Ok(())
}

/// Nothing is below 0, without end or no number.
pub(crate) fn sound(bar: &BarBalance) -> Result<(), TestCaseError> {
    for segment in &bar.segments {
        let (length, metal) = (mm(segment.forged_length), mm3(segment.finished_volume));
        prop_assert!(length.is_finite() && length >= 0.0, "a length of {}", length);
        prop_assert!(metal.is_finite() && metal >= 0.0, "a volume of {}", metal);
        prop_assert!(mm(segment.forged_start).is_finite());
        prop_assert!(segment.offset_mm.iter().all(|value| value.is_finite()));
        for [along, across] in segment.silhouette_mm(View::Side).into_iter().chain(segment.silhouette_mm(View::Top)) {
            prop_assert!(along.is_finite() && across.is_finite());
        }
    }
    let length = mm(bar.forged_length);
    prop_assert!(length.is_finite() && length >= 0.0, "a bar of {}", length);
    Ok(())
}

fn close(got: f64, want: f64, whole: f64) -> bool {
    (got - want).abs() <= KEPT * whole.max(1e-6)
}

/// One bar, and what was done to it so far out of everything that will be.
struct Count<'a> {
    bar: &'a Bar,
    balance: &'a BarBalance,
    index: usize,
    all: &'a [Did],
    done: &'a [Did],
}

fn is_shaping(form: &Form, operation: Operation) -> bool {
    // A step, and what is left standing between two, are made by setting down.
    let is_set_down = matches!(form, Form::Shoulder(_) | Form::Peak(_)) && operation == Operation::SetDown;
    operation.is_shaping() || is_set_down
}

fn is_piercing(operation: Operation) -> bool {
    matches!(operation, Operation::Punch | Operation::Drift | Operation::Drill)
}

fn is_cut_off(form: &Form) -> bool {
    matches!(form, Form::Trim(_) | Form::Hold(_))
}

impl Count<'_> {
    fn of<'d>(&'d self, list: &'d [Did], at: usize) -> impl Iterator<Item = Operation> + 'd {
        self.each(list, at).map(|did| did.operation)
    }

    fn each<'d>(&'d self, list: &'d [Did], at: usize) -> impl Iterator<Item = Did> + 'd {
        list.iter().copied().filter(move |did| did.bar == self.index && did.part == Some(at))
    }

    fn was(&self, at: usize, operation: Operation) -> bool {
        self.of(self.done, at).any(|other| other == operation)
    }

    /// Whether everything of a sort that a part asks for is done; true where it asks for none.
    fn is_through(&self, at: usize, wanted: impl Fn(Operation) -> bool) -> bool {
        self.each(self.all, at).filter(|did| wanted(did.operation)).all(|did| self.done.contains(&did))
    }

    /// Whether a part has no more than a shape on the way: all of its metal, and the scale that it will lose, are still in it.
    fn is_on_the_way(&self, at: usize) -> bool {
        let makes_it = |did: &Did| did.to.is_none() && did.operation != Operation::Isolate;
        let (has_via, mut last) =
            (!self.bar.flat()[at].segment.via.is_empty(), self.each(self.all, at).filter(makes_it));
        let is_begun = match last.next() {
            Some(first) => self.done.contains(&first),
            None => self.is_through(at, |_| true),
        };
        has_via && !is_begun
    }

    /// Whether a part is there: all splits that it lies in are cut.
    fn is_there(&self, at: usize) -> bool {
        match self.balance.segments[at].chain {
            Chain::Bar => true,
            Chain::Branch { split, .. } => self.was(split, Operation::Split) && self.is_there(split),
        }
    }

    /// What is left of what a part has taken of the bar.
    fn left(&self, at: usize) -> f64 {
        let flat = self.bar.flat();
        let (form, own) = (&flat[at].segment.form, &self.balance.segments[at]);
        let (finished, trimmed) = (mm3(own.finished_volume), mm3(own.trimmed_volume));
        let taken = (finished + trimmed) / (1.0 - own.scale_share);
        let is_off = self.was(at, Operation::Trim) || self.was(at, Operation::PartOff);
        match form {
            _ if !self.is_there(at) => taken,
            _ if is_cut_off(form) => taken * f64::from(u8::from(!is_off)),
            _ if !self.is_through(at, |operation| is_shaping(form, operation)) || self.is_on_the_way(at) => taken,
            Form::Flag(_) => {
                // What is drilled or punched out of a plate falls apart from what is cut off round it.
                let holes = own.shape.as_ref().map_or(0.0, |shape| mm3(shape.lost_to_holes()));
                let is_cut = self.is_through(at, |operation| operation == Operation::Trim);
                let round = if is_cut { 0.0 } else { trimmed - holes };
                finished + round + if self.is_through(at, is_piercing) { 0.0 } else { holes }
            }
            Form::Hole(_) if self.is_through(at, is_piercing) => finished,
            Form::Hole(_) => finished + trimmed,
            _ => finished,
        }
    }

    /// What the bar holds is what it was cut with, less what has been taken.
    fn metal(&self, now: &BarBalance, n: usize) -> Result<(), TestCaseError> {
        let (mut least, mut most) = (0.0, 0.0);
        for (at, segment) in self.balance.segments.iter().enumerate() {
            if let Some(Shape::Split(split)) = &segment.shape {
                // The slug of a root hole falls with the punch, or is counted with the cut.
                let lost = mm3(split.lost);
                most += if self.was(at, Operation::Split) { 0.0 } else { lost };
                let punched = self.was(at, Operation::Split) || self.was(at, Operation::Punch);
                least += if punched { 0.0 } else { lost };
            } else if segment.shape.is_some() {
                (least, most) = (least + self.left(at), most + self.left(at));
            }
        }
        let on_bar = now.segments.iter().filter(|segment| segment.chain == Chain::Bar);
        let held: f64 = on_bar.map(|segment| mm3(segment.finished_volume)).sum();
        let whole = mm2(self.balance.stock_area) * mm(self.balance.last_mark());
        let slack = KEPT * whole;
        prop_assert!(
            held >= least - slack && held <= most + slack,
            "after {n} steps bar {} holds {held} where {least} to {most} of {whole} mm³ is left",
            self.index
        );
        prop_assert!(close(mm3(now.finished_volume), held, whole));
        Ok(())
    }

    /// Before the first step it is the bar as it is cut: one section, from mark to mark.
    fn as_cut(&self, now: &BarBalance) -> Result<(), TestCaseError> {
        let flat = self.bar.flat();
        let mut slack = 0.0;
        for (at, (segment, was)) in now.segments.iter().zip(&self.balance.segments).enumerate() {
            prop_assert!(segment.bent.is_none());
            let form = &flat[at].segment.form;
            let (length, raw) = (mm(segment.forged_length), mm(was.mark_end - was.mark_start));
            if segment.chain != Chain::Bar || was.shape.is_none() {
                prop_assert!(segment.shape.is_none());
                prop_assert!(segment.chain == Chain::Bar || length <= 0.0);
                continue;
            }
            let is_hammered = self.of(self.all, at).any(|operation| is_shaping(form, operation));
            if is_hammered || matches!(form, Form::Split(_)) {
                let is_bar = matches!(segment.shape, Some(Shape::Prism { section, .. }) if section == now.stock);
                prop_assert!(is_bar && close(length, raw, raw), "{:?} of {length} for {raw}", segment.shape);
            } else {
                let most = raw * (NO_HAMMER + was.scale_share) + trimmed_length(was);
                prop_assert!((length - raw).abs() <= most, "{length} for {raw}");
                slack += most;
            }
        }
        let (length, cut) = (mm(now.forged_length), mm(self.balance.last_mark()));
        prop_assert!((length - cut).abs() <= slack + KEPT * cut, "a bar of {length} where {cut} is cut");
        Ok(())
    }

    /// After the last step it is the piece that was planned.
    fn finished(&self, now: &BarBalance) -> Result<(), TestCaseError> {
        let flat = self.bar.flat();
        let mut off = 0.0;
        // How long a split is when one of its branches is cut shorter, and where it hangs then, is not held here.
        let in_branch = |flat: &Flat<'_>| flat.chain != Chain::Bar && is_cut_off(&flat.segment.form);
        let cuts_in_branches = flat.iter().any(in_branch);
        // What could not be worked out is a stop of the plan; nobody forges it.
        let worked_out = self.balance.segments.iter().all(|segment| segment.shape.is_some());
        for (at, (segment, planned)) in now.segments.iter().zip(&self.balance.segments).enumerate() {
            let count = flat[at].segment.count();
            let cuts_below = (at..at + count).any(|below| is_cut_off(&flat[below].segment.form));
            if is_cut_off(&flat[at].segment.form) {
                prop_assert!(segment.shape.is_none() && mm(segment.forged_length) <= 0.0);
                off += if segment.chain == Chain::Bar { mm(planned.forged_length) } else { 0.0 };
                continue;
            }
            if !cuts_below && worked_out {
                same_part(segment, planned, &self.bar.path(at))?;
            }
            let whole = mm(self.balance.forged_length);
            let start = mm(planned.forged_start) - off;
            prop_assert!(
                cuts_in_branches || !worked_out || close(mm(segment.forged_start), start, whole),
                "part {} starts at {} where {start} is planned",
                self.bar.path(at),
                mm(segment.forged_start)
            );
        }
        let (held, planned) = (mm3(now.finished_volume), mm3(self.balance.finished_volume));
        prop_assert!(close(held, planned, planned), "{held} mm³ where {planned} is planned");
        Ok(())
    }
}

/// What the slug or the trimmings of a part take of the bar.
fn trimmed_length(part: &SegmentBalance) -> f64 {
    let whole = mm3(part.finished_volume) + mm3(part.trimmed_volume);
    mm(part.stock_length) * mm3(part.trimmed_volume) / whole.max(1e-9)
}

/// A part as it is and as it was planned.
fn same_part(now: &SegmentBalance, planned: &SegmentBalance, path: &str) -> Result<(), TestCaseError> {
    let (length, wanted) = (mm(now.forged_length), mm(planned.forged_length));
    prop_assert!(close(length, wanted, wanted), "part {path} is {length} mm long where {wanted} is planned");
    prop_assert_eq!(now.bent, planned.bent, "the bend of part {}", path);
    let (metal, wanted) = (mm3(now.finished_volume), mm3(planned.finished_volume));
    prop_assert!(close(metal, wanted, wanted), "part {path} holds {metal} mm³ where {wanted} is planned");
    for axis in 0..2 {
        let (offset, wanted) = (now.offset_mm[axis], planned.offset_mm[axis]);
        prop_assert!((offset - wanted).abs() < 1e-6 * wanted.abs().max(1.0), "part {path} is shifted by {offset}");
    }
    match (&now.shape, &planned.shape) {
        (Some(Shape::Split(now)), Some(Shape::Split(planned))) => {
            prop_assert!(close(mm(now.length), mm(planned.length), mm(planned.length)), "the length of split {path}");
            prop_assert_eq!(&now.opening, &planned.opening);
            for (now, planned) in now.branches.iter().zip(&planned.branches) {
                let wanted = mm(planned.forged_length);
                prop_assert!(close(mm(now.forged_length), wanted, wanted), "a branch of split {path}");
            }
        }
        // What a plate was cut from is not there any more.
        (
            Some(Shape::Flag { outline, root, tip, .. }),
            Some(Shape::Flag { outline: wanted, root: wanted_root, tip: wanted_tip, .. }),
        ) => prop_assert_eq!((outline, root, tip), (wanted, wanted_root, wanted_tip), "the shape of part {}", path),
        (now, planned) => prop_assert_eq!(now, planned, "the shape of part {}", path),
    }
    Ok(())
}
