//! Applying an edit: a plan in, the next one out.

use super::boundary::move_boundary;
use super::headers::{set_bar, set_plan};
use super::round_size::to_round_size;
use super::{Edit, Gave, Refusal, asked_names, between_marks, joint_names, kept, marks, work_parts};
use crate::forms;
use crate::plan::{Bar, Chain, Form, Plan, SectionSpec, Segment};

impl Edit {
    /// The plan after this edit, and what gave way in it.
    ///
    /// # Errors
    /// Where the edit names a place that is not there, or asks for what cannot be.
    pub fn applied(&self, plan: &Plan) -> Result<(Plan, Vec<Gave>), Refusal> {
        let (next, mut gave) = self.as_asked(plan)?;
        let (next, kept) = kept::written(next, self.bar());
        gave.extend(kept);
        Ok((next, gave))
    }

    /// The plan after this edit, before asked sizes are kept.
    fn as_asked(&self, plan: &Plan) -> Result<(Plan, Vec<Gave>), Refusal> {
        if let Self::Several(edits) = self {
            let step = |(plan, mut all): (Plan, Vec<Gave>), edit: &Self| {
                let (next, gave) = edit.as_asked(&plan)?;
                all.extend(gave);
                Ok((next, all))
            };
            return edits.iter().try_fold((plan.clone(), Vec::new()), step);
        }
        if let Self::MoveToRound(wish) = self {
            return Self::MoveBoundary(to_round_size(plan, wish)).as_asked(plan);
        }
        if let Self::MoveBoundary(wish) = self {
            let is_fixed = plan.bars.get(wish.bar).is_some_and(Bar::has_fixed_marks);
            let moved = if is_fixed { between_marks::move_boundary(plan, wish) } else { move_boundary(plan, wish) }?;
            crate::file::check(&moved.plan).map_err(|error| Refusal::CannotBe(error.message))?;
            return Ok((moved.plan, moved.gave));
        }
        if let Self::Mark(wish) = self {
            let moved = wish.applied(plan)?;
            crate::file::check(&moved.plan).map_err(|error| Refusal::CannotBe(error.message))?;
            return Ok((moved.plan, moved.gave));
        }
        if let Some((edit, gave)) = self.wished(plan)? {
            return Ok((edit.as_asked(plan)?.0, gave));
        }
        let mut next = plan.clone();
        self.change(&mut next)?;
        work_parts::follow(self, plan, &mut next);
        next.bars.iter_mut().for_each(mend_first_segment);
        // What could not be read back from a file must not come into a plan.
        crate::file::check(&next).map_err(|error| Refusal::CannotBe(error.message))?;
        Ok((next, Vec::new()))
    }

    /// The bar that is changed; none where it is the plan.
    fn bar(&self) -> Option<usize> {
        match self {
            Self::SetBar { bar, .. }
            | Self::InsertSegment { bar, .. }
            | Self::InsertInto { bar, .. }
            | Self::InsertSegments { bar, .. }
            | Self::ReplaceSegment { bar, .. }
            | Self::RemoveSegment { bar, .. }
            | Self::MoveSegment { bar, .. }
            | Self::ChangePart { bar, .. } => Some(*bar),
            Self::MoveBoundary(wish) | Self::MoveToRound(wish) => Some(wish.bar),
            Self::DragBend(wish) => Some(wish.bar),
            Self::Several(edits) => edits.first()?.bar(),
            _ => None,
        }
    }

    /// The plain edit that a wish comes to, and what gave way; none where it is a plain one.
    fn wished(&self, plan: &Plan) -> Result<Option<(Self, Vec<Gave>)>, Refusal> {
        let replaced = |bar, at, segment| Self::ReplaceSegment { bar, at, segment: Box::new(segment) };
        Ok(match self {
            Self::DragBend(drag) => {
                let (segment, gave) = drag.bent(plan)?;
                Some((replaced(drag.bar, drag.at, segment), vec![gave]))
            }
            Self::ChangePart { bar, at, change } => {
                let (segment, gave) = change.changed(plan, *bar, *at)?;
                Some((replaced(*bar, *at, segment), gave))
            }
            Self::Whole(change) => Some((Self::ReplacePlan(Box::new(change.changed(plan)?)), Vec::new())),
            Self::ChangeSteps { change, proposed } => {
                Some((Self::SetWork(Box::new(change.work(plan, proposed)?)), Vec::new()))
            }
            _ => None,
        })
    }

    fn change(&self, plan: &mut Plan) -> Result<(), Refusal> {
        match self {
            Self::ReplacePlan(other) => *plan = (**other).clone(),
            Self::SetPlan(header) => set_plan(plan, header),
            Self::SetJoints(joints) => plan.joints.clone_from(joints),
            Self::SetSizes(sizes) => plan.sizes.clone_from(sizes),
            Self::SetWork(work) => plan.work = (**work).clone(),
            Self::AddBar { at, bar } => plan.bars.insert((*at).min(plan.bars.len()), (**bar).clone()),
            Self::RemoveBar { bar } => {
                bar_at(plan, *bar)?;
                if plan.bars.len() < 2 {
                    return Err(Refusal::LastBar);
                }
                plan.bars.remove(*bar);
            }
            Self::SetBar { bar, header } => {
                joint_names::rename_bar(plan, *bar, &header.name);
                asked_names::rename_bar(plan, *bar, &header.name);
                set_bar(bar_at(plan, *bar)?, header);
            }
            Self::InsertSegment { bar, at, segment } => {
                let bar = bar_at(plan, *bar)?;
                let (chain, place) = bar.place_of(*at).unwrap_or((Chain::Bar, bar.segments.len()));
                insert_into(bar, chain, place, segment)?;
            }
            Self::InsertInto { bar, chain, place, segment } => {
                insert_into(bar_at(plan, *bar)?, *chain, *place, segment)?;
            }
            Self::InsertSegments { bar, chain, place, segments } => {
                let bar = bar_at(plan, *bar)?;
                for (offset, segment) in segments.iter().enumerate() {
                    insert_into(bar, *chain, place.saturating_add(offset), segment)?;
                }
            }
            Self::ReplaceSegment { bar, at, segment } => {
                joint_names::rename_segment(plan, *bar, *at, &segment.name);
                asked_names::rename_segment(plan, *bar, *at, &segment.name);
                replace_segment(bar_at(plan, *bar)?, *at, segment)?;
            }
            Self::RemoveSegment { bar, at } => {
                let bar = bar_at(plan, *bar)?;
                let (chain, place) = bar.place_of(*at).ok_or(Refusal::NoSuchPlace)?;
                marks::hand_back(bar, *at);
                bar.chain_mut(chain).ok_or(Refusal::NoSuchPlace)?.remove(place);
            }
            Self::MoveSegment { bar, from, to } => {
                move_segment(bar_at(plan, *bar)?, *from, *to)?;
            }
            // What they come to is a plain edit.
            Self::Whole(_)
            | Self::MoveBoundary(_)
            | Self::MoveToRound(_)
            | Self::Mark(_)
            | Self::DragBend(_)
            | Self::ChangePart { .. }
            | Self::ChangeSteps { .. }
            | Self::Several(_) => {}
        }
        Ok(())
    }
}

fn bar_at(plan: &mut Plan, bar: usize) -> Result<&mut Bar, Refusal> {
    plan.bars.get_mut(bar).ok_or(Refusal::NoSuchPlace)
}

fn insert_into(bar: &mut Bar, chain: Chain, place: usize, segment: &Segment) -> Result<(), Refusal> {
    let inserted = marks::fitting(bar, chain, place, segment);
    let segments = bar.chain_mut(chain).ok_or(Refusal::NoSuchPlace)?;
    segments.insert(place.min(segments.len()), inserted);
    Ok(())
}

/// A segment stays in its chain: beyond the end it comes to be the last.
fn move_segment(bar: &mut Bar, from: usize, to: usize) -> Result<(), Refusal> {
    let (chain, place) = bar.place_of(from).ok_or(Refusal::NoSuchPlace)?;
    let end = bar.chain(chain).map_or(0, Vec::len);
    let wanted = match bar.place_of(to) {
        Some((other, wanted)) if other == chain => wanted,
        Some(_) => return Err(Refusal::NoSuchPlace),
        None => end,
    };
    marks::hand_back(bar, from);
    let segments = bar.chain_mut(chain).ok_or(Refusal::NoSuchPlace)?;
    let moved = segments.remove(place);
    segments.insert(wanted.min(segments.len()), moved);
    Ok(())
}

/// A segment that is renamed stays the one that takes up.
fn replace_segment(bar: &mut Bar, at: usize, segment: &Segment) -> Result<(), Refusal> {
    let takes_up = bar.flat().iter().position(|flat| Some(&flat.segment.name) == bar.takes_up.as_ref());
    if takes_up == Some(at) {
        bar.takes_up = Some(segment.name.clone());
    }
    *bar.segment_mut(at).ok_or(Refusal::NoSuchPlace)? = segment.clone();
    Ok(())
}

/// Before the first segment of a chain there is none whose section it could have: it has the stock's.
fn mend_first_segment(bar: &mut Bar) {
    mend_first_of(&mut bar.segments);
}

fn mend_first_of(segments: &mut [Segment]) {
    for segment in segments.iter_mut() {
        if let Form::Split(forms::Split { branches, .. }) = &mut segment.form {
            branches.iter_mut().for_each(|branch| mend_first_of(&mut branch.segments));
        }
    }
    let Some(first) = segments.first_mut() else { return };
    mend_form(&mut first.form);
    first.via.iter_mut().filter_map(|via| via.form.as_mut()).for_each(mend_form);
}

fn mend_form(form: &mut Form) {
    let section = match form {
        Form::Taper(forms::Taper { from, to, .. }) => {
            from.take_if(|from| *from == SectionSpec::Same);
            to
        }
        Form::Drawn(forms::Drawn { section, .. })
        | Form::Peak(forms::Peak { section, .. })
        | Form::Tenon(forms::Tenon { section, .. })
        | Form::Collar(forms::Collar { section, .. })
        | Form::Shoulder(forms::Shoulder { to: section, .. }) => section,
        _ => return,
    };
    let section = section.named_mut();
    if *section == SectionSpec::Same {
        *section = SectionSpec::Stock;
    }
}
