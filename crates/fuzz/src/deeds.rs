//! Random edits as a hand makes them: marks fixed, moved and loosened, sizes typed across a part, other forms and bends, shapes on
//! the way, steps of the order, bends dragged, several at once.

use crate::wishes::Wishes;
use fh_core::balance::balance;
use fh_core::contents::contents;
use fh_core::edit::{Across, BendDrag, BendTo, Edit, HoleMove, Knob, MarkEdit, PartChange, StepChange, ViaChange};
use fh_core::plan::{BendKind, FormKind, Plan, SizeName, SocketAxis};
use fh_measure::{LengthRange, LengthUnit, WrittenLength};

/// The most edits that are made as one.
const SEVERAL: usize = 4;
/// Rows of marks as they may be typed.
const ROWS: [&str; 7] =
    ["2, 4 1/4, 6", "20; 45,5; 80", "10 mm, 1 in, 55", "", "5, 5", "30, 20", "1, 2, 3, 4, 5, 6, 7, 8, 9, 10 m"];

impl Wishes<'_> {
    /// What a hand does to a part, a mark or a step of a plan; none where what was picked makes nothing.
    pub(crate) fn deed(&mut self, plan: &Plan, bar: usize, at: usize) -> Option<Edit> {
        Some(match self.random.below(10) {
            0 | 1 => Edit::Mark(self.mark(plan, bar, at)?),
            2..6 => Edit::ChangePart { bar, at, change: self.change(plan, bar, at)? },
            6 => Edit::DragBend(self.bend(bar, at)),
            7 => Edit::ChangeSteps { change: self.step(plan)?, proposed: self.any("steps").unwrap_or_default() },
            8 => Edit::SetSizes(self.any("sizes")?),
            _ => {
                let count = 1 + self.random.below(SEVERAL);
                Edit::Several((0..count).filter_map(|_| self.edit(plan)).collect())
            }
        })
    }

    fn length(&mut self, most: f64) -> Option<WrittenLength> {
        let unit = if self.random.one_in(2) { LengthUnit::Millimeter } else { LengthUnit::Inch };
        let mm = if self.random.one_in(12) { 1e-3 } else { most * self.random.share() };
        WrittenLength::from_mm(mm, unit, LengthRange::AboveZero).ok()
    }

    fn mark(&mut self, plan: &Plan, bar: usize, segment: usize) -> Option<MarkEdit> {
        let balanced = balance(plan);
        let of = balanced.bars.get(bar);
        let now = of.and_then(|bar| bar.segments.get(segment)).map_or(100.0, |it| it.mark_end.value * 1000.0);
        Some(match self.random.below(8) {
            0 => MarkEdit::Row { bar, text: (*self.random.of(&ROWS)?).to_owned() },
            1 => MarkEdit::Loosen { bar, segment },
            2 | 3 => MarkEdit::Fix { bar, segment, at: self.length(1.5 * now)? },
            4 | 5 => MarkEdit::Move { bar, segment, to: self.length(1.5 * now)? },
            _ => {
                let open = contents(plan, plan.bars.get(bar)?, of?);
                let of = self.random.of(&open)?.clone();
                MarkEdit::Fill { bar, segment: of.segment, with: *self.random.of(&of.answers)? }
            }
        })
    }

    fn change(&mut self, plan: &Plan, bar: usize, at: usize) -> Option<PartChange> {
        let form = |it: &mut Self| it.random.of(&FormKind::ALL).copied();
        let bend = |it: &mut Self| if it.random.one_in(5) { None } else { it.random.of(&BendKind::ALL).copied() };
        Some(match self.random.below(9) {
            7 => PartChange::Hole(self.hole()?),
            0 | 1 => PartChange::Across { across: *self.random.of(&Across::ALL)?, size: self.length(60.0)? },
            2 => PartChange::Form(form(self)?),
            3 => PartChange::Bend(bend(self)),
            4 => PartChange::Follows(*self.random.of(&SizeName::ALL)?),
            5 => PartChange::Axis(*self.random.of(&SocketAxis::ALL)?),
            6 => PartChange::Typed(Box::new(self.any("segments[]")?)),
            _ => {
                let count = plan.segment(bar, at).map_or(0, |part| part.via.len());
                let via = self.random.place(count);
                PartChange::Via(match self.random.below(7) {
                    0..3 => ViaChange::Add(via),
                    3 => ViaChange::Form(via, form(self).filter(|_| via.is_multiple_of(2))),
                    4 => ViaChange::Bend(via, bend(self)),
                    5 => ViaChange::Move { from: via, to: self.random.place(count) },
                    _ => ViaChange::Remove(via),
                })
            }
        })
    }

    fn hole(&mut self) -> Option<HoleMove> {
        let (along, across) = (self.random.one_in(2), self.random.one_in(2));
        let across = match across {
            true => {
                let mm = 40.0 * (self.random.share() - 0.5);
                Some(WrittenLength::from_mm(mm, LengthUnit::Millimeter, LengthRange::Any).ok()?)
            }
            false => None,
        };
        let along = if along { Some(self.length(80.0)?) } else { None };
        Some(HoleMove { hole: self.random.below(3), along, across })
    }

    fn bend(&mut self, bar: usize, at: usize) -> BendDrag {
        let knob = if self.random.one_in(2) { Knob::Angle } else { Knob::Radius };
        let to = match self.random.below(8) {
            0 => BendTo::Size(*self.random.of(&[f64::NAN, f64::INFINITY, -1.0, 0.0, 1e12]).unwrap_or(&0.0)),
            1..4 => BendTo::Step { up: self.random.one_in(2) },
            _ if knob == Knob::Angle => BendTo::Size(7.0 * self.random.share()),
            _ => BendTo::Size(80.0 * self.random.share()),
        };
        BendDrag { bar, at, knob, to, free: self.random.one_in(2) }
    }

    fn step(&mut self, plan: &Plan) -> Option<StepChange> {
        let count = plan.work.steps.as_ref().map_or(6, Vec::len);
        let at = self.random.place(count);
        Some(match self.random.below(7) {
            0 => StepChange::Move { from: at, to: self.random.place(count) },
            1 => StepChange::Replace { at, step: Box::new(self.any("steps[]")?) },
            2 => StepChange::Insert { at, step: Box::new(self.any("steps[]")?) },
            3 => StepChange::Duplicate(at),
            4 => StepChange::Remove(at),
            5 => StepChange::Join(at),
            _ => StepChange::TakeApart(at),
        })
    }
}
