//! Changes of which segments and bars there are.

use super::Editor;
use super::whole_added::WholeAdded;
use crate::dialogs::{AddPart, Dialog};
use crate::state::{Focus, Side};
use crate::widgets::Sizing;
use fh_core::balance::balance;
use fh_core::edit::{Edit, MarkEdit};
use fh_core::forms;
use fh_core::metal::{FreeEnd, Shape};
use fh_core::new_segment::{Around, Whole, new_segment, run_to_a_section};
use fh_core::plan::{Bar, Chain, Form, FormKind, SectionSpec, Segment};
use fh_measure::{LengthRange, WrittenLength};
use fh_work::{short_parts, work_out};

impl Editor {
    /// Asks what a new part is.
    pub(crate) fn ask_form(&mut self, side: Side) {
        self.dialog = Some(Dialog::AddSegment(AddPart::new(side)));
    }

    /// Adds a segment of a form.
    pub(crate) fn add_segment(&mut self, kind: FormKind, side: Side) {
        self.dialog = None;
        let plan = self.document.plan();
        let Some((chain, place)) = self.place_beside(side) else { return };
        let balance = self.document.balance().bars.get(self.selection.bar);
        let sizing = Sizing::within(&self.theme, plan.units, balance, chain);
        if let Some(mut segment) = new_segment(kind, &sizing.first) {
            if let Form::Shoulder(forms::Shoulder { to, .. }) = &mut segment.form
                && self.is_set_down_before(chain, place)
            {
                *to = SectionSpec::Stock;
            }
            if !self.is_free_end(chain, place) {
                run_to_a_section(&mut segment.form, &sizing.first);
            }
            self.insert_segment(segment, side);
        }
    }

    /// Adds a ready-made whole.
    pub(crate) fn add_whole(&mut self, whole: Whole, side: Side) {
        let plan = self.document.plan();
        let Some((chain, place)) = self.place_beside(side) else { return };
        let balance = self.document.balance().bars.get(self.selection.bar);
        let sizing = Sizing::within(&self.theme, plan.units, balance, chain);
        let stock = plan.bars.get(self.selection.bar).map(|bar| &bar.stock);
        let is_round = matches!(stock, Some(SectionSpec::Round(_)));
        let first = place == 0 && self.is_free_end(chain, place);
        let Some(mut parts) = whole.parts(&sizing.first, Around { first, is_round }) else { return };
        self.allow_for_scale(&mut parts, chain, place);
        let main = parts.iter().position(|part| part.name == whole.main_part()).unwrap_or_default();
        let before = self.document.revision();
        let count = parts.len();
        self.insert_motif(parts, side);
        let bar = self.document.plan().bars.get(self.selection.bar);
        let number = bar.and_then(|bar| bar.number_of(chain, place + main));
        if let Some(number) = number.filter(|_| self.document.revision() != before) {
            self.select_segment(number);
            let (bar, names) = (self.selection.bar, self.names_of(chain, place, count));
            self.whole_added = Some(WholeAdded { bar, chain, first: place, names, selected: number });
        }
    }

    /// The names of some parts of a chain.
    fn names_of(&self, chain: Chain, first: usize, count: usize) -> Vec<String> {
        let parts = self.document.plan().bars.get(self.selection.bar).and_then(|bar| bar.chain(chain));
        let parts = parts.and_then(|parts| parts.get(first..first.checked_add(count)?)).unwrap_or_default();
        parts.iter().map(|part| part.name.clone()).collect()
    }

    /// From which place to which the whole reaches that was put in last, while its part is still selected: what is added next
    /// goes beside all of it, and not between its parts.
    fn whole_just_added(&self) -> Option<(Chain, [usize; 2])> {
        let whole = self.whole_added.as_ref()?;
        let count = whole.names.len();
        let is_there = self.selection.bar == whole.bar
            && self.selection.segment() == Some(whole.selected)
            && self.names_of(whole.chain, whole.first, count) == whole.names;
        is_there.then_some((whole.chain, [whole.first, whole.first + count]))
    }

    /// Gives those of new parts a scale of their own that would be warned of: an offered whole breaks no rule.
    fn allow_for_scale(&self, parts: &mut Vec<Segment>, chain: Chain, place: usize) {
        let (plan, bar) = (self.document.plan(), self.selection.bar);
        let segments = parts.clone();
        let Ok((with, _)) = (Edit::InsertSegments { bar, chain, place, segments }).applied(plan) else { return };
        let worked = work_out(&with, &balance(&with), self.order.shop());
        let Some(first) = with.bars.get(bar).and_then(|bar| bar.number_of(chain, place)) else { return };
        let mut alone = Bar { segments: std::mem::take(parts), ..Bar::new("", SectionSpec::Stock) };
        for (at, share) in short_parts(&worked, bar) {
            let part = at.checked_sub(first).and_then(|at| alone.segment_mut(at));
            if let Some(part) = part {
                part.scale = Some(share);
            }
        }
        *parts = alone.segments;
    }

    /// Whether a segment that is put at a place has a free end: of the bar, or of a branch that is open there.
    fn is_free_end(&self, chain: Chain, place: usize) -> bool {
        let at = self.selection.bar;
        let Some(bar) = self.document.plan().bars.get(at) else { return true };
        let (first, last) = (place == 0, bar.chain(chain).is_none_or(|all| place >= all.len()));
        let Chain::Branch { split, .. } = chain else { return first || last };
        let balance = self.document.balance().bars.get(at).and_then(|bar| bar.segments.get(split));
        match balance.and_then(|split| split.shape.as_ref()) {
            Some(Shape::Split(split)) => match split.free {
                FreeEnd::Datum => first,
                FreeEnd::Far => last,
                FreeEnd::Neither => false,
            },
            _ => last,
        }
    }

    /// Whether the bar is no longer as bought where a segment would be put: a shoulder there steps back up.
    fn is_set_down_before(&self, chain: Chain, place: usize) -> bool {
        let at = self.selection.bar;
        let Some(bar) = self.document.plan().bars.get(at).filter(|_| chain == Chain::Bar) else { return false };
        let Some(balance) = self.document.balance().bars.get(at) else { return false };
        let before = place.checked_sub(1).and_then(|before| balance.segments.get(bar.number_of(chain, before)?));
        let end = before.and_then(|before| Some(before.shape.as_ref()?.end(before.reversed, balance.stock)));
        end.is_some_and(|end| end != balance.stock)
    }

    /// The place beside what is selected: in a branch where a branch or a segment of it is selected; else on the bar, at
    /// its end where no segment is selected, or at its datum end.
    pub(super) fn place_beside(&self, side: Side) -> Option<(Chain, usize)> {
        let bar = self.document.plan().bars.get(self.selection.bar)?;
        let after = usize::from(side == Side::After);
        let end_of = |chain| Some((chain, after * bar.chain(chain)?.len()));
        if let Some((chain, ends)) = self.whole_just_added() {
            return Some((chain, ends[after]));
        }
        match self.selection.focus {
            Focus::Segment(segment) => bar.place_of(segment).map(|(chain, place)| (chain, place + after)),
            Focus::Branch { split, branch } => end_of(Chain::Branch { split, branch }),
            Focus::Plan | Focus::Bar => end_of(Chain::Bar),
        }
    }

    /// Puts a segment beside the selected one.
    pub(crate) fn insert_segment(&mut self, mut segment: Segment, side: Side) {
        let at = self.selection.bar;
        let Some((chain, place)) = self.place_beside(side) else { return };
        let Some(bar) = self.document.plan().bars.get(at) else { return };
        let mut taken: Vec<Segment> = bar.flat().into_iter().map(|flat| flat.segment.clone()).collect();
        name_freely(&mut segment, &mut taken);
        let number = bar.number_of(chain, place);
        self.edit(&Edit::InsertInto { bar: at, chain, place, segment: Box::new(segment) });
        if let Some(number) = number {
            self.select_segment(number);
        }
    }

    /// Takes the selected segment out. Of a branch, the one before it is selected then, or the branch.
    pub(crate) fn remove_segment(&mut self) {
        let (at, bar) = (self.selection.segment(), self.selection.bar);
        let Some((at, plan)) = at.zip(self.document.plan().bars.get(bar)) else { return };
        let last = plan.next_in_chain(at).is_none();
        let (place, before) = (plan.place_of(at), plan.before_in_chain(at).pop());
        self.edit(&Edit::RemoveSegment { bar, at });
        if let Some((Chain::Branch { split, branch }, _)) = place.filter(|_| last) {
            self.selection.focus = before.map_or(Focus::Branch { split, branch }, Focus::Segment);
            self.selection.settle(&self.document);
        }
    }

    /// Moves a segment to the place of another one of its chain; it stays selected.
    pub(crate) fn move_segment(&mut self, from: usize, to: usize) {
        let bar = self.selection.bar;
        let place = self.document.plan().bars.get(bar).and_then(|bar| bar.place_of(to));
        self.edit(&Edit::MoveSegment { bar, from, to });
        let moved = place.and_then(|(chain, place)| self.document.plan().bars.get(bar)?.number_of(chain, place));
        self.select_segment(moved.unwrap_or(to));
    }

    /// Moves the selected segment.
    pub(super) fn move_selected(&mut self, to: usize) {
        if let Some(from) = self.selection.segment() {
            self.move_segment(from, to);
        }
    }

    /// Selects a segment of the bar, or the last one where there are fewer.
    pub(crate) fn select_segment(&mut self, at: usize) {
        self.also.clear();
        self.selection.focus = Focus::Segment(at);
        self.selection.settle(&self.document);
    }

    /// Selects a branch of a split.
    pub(super) fn select_branch(&mut self, bar: usize, split: usize, branch: usize) {
        self.selection.bar = bar;
        self.selection.focus = Focus::Branch { split, branch };
        self.selection.settle(&self.document);
    }

    /// Selects the line of the list of parts that stands so many below the selected one, on the same bar.
    pub(crate) fn select_line(&mut self, below: isize) {
        let Some(bar) = self.document.plan().bars.get(self.selection.bar) else { return };
        let lines = crate::state::lines(bar);
        let now = lines.iter().position(|line| line.focus() == self.selection.focus);
        let next = now.map_or(0, |now| now.saturating_add_signed(below).min(lines.len().saturating_sub(1)));
        if let Some(line) = lines.get(next) {
            self.selection.focus = line.focus();
        }
    }

    /// Fixes the mark at the selected segment's end as it is struck: on the rounding of the marks.
    pub(super) fn fix_mark(&mut self) {
        let (bar, unit) = (self.selection.bar, self.document.plan().units.length.length_unit());
        let Some(segment) = self.selection.segment() else { return };
        let balance = self.document.balance().bars.get(bar).and_then(|bar| bar.segments.get(segment));
        let at = balance.map(|balance| balance.mark_end_shop.text());
        let Some(at) = at.and_then(|at| WrittenLength::parse(&at, Some(unit), LengthRange::AboveZero).ok()) else {
            return self.say("This part has no mark yet: its sizes are not settled.");
        };
        let words = format!("The mark is fixed at {}. From now on the part that gives takes up any change.", at.text());
        if self.edit(&Edit::Mark(MarkEdit::Fix { bar, segment, at })) {
            self.say(words);
        }
    }

    /// Loosens the mark at the selected segment's end.
    pub(super) fn loosen_mark(&mut self) {
        let bar = self.selection.bar;
        let Some(segment) = self.selection.segment() else { return };
        if self.edit(&Edit::Mark(MarkEdit::Loosen { bar, segment })) {
            self.say("The mark is loose: it follows from the parts again.");
        }
    }

    /// Adds a bar of the same stock after the selected one.
    pub(crate) fn add_bar(&mut self) {
        let plan = self.document.plan();
        let Some(stock) = plan.bars.get(self.selection.bar).map(|bar| bar.stock.clone()) else { return };
        let at = self.selection.bar + 1;
        let bar = Bar::new(&format!("bar {}", plan.bars.len() + 1), stock);
        self.edit(&Edit::AddBar { at, bar: Box::new(bar) });
        self.selection.bar = at;
        self.selection.focus = Focus::Bar;
        self.selection.settle(&self.document);
    }

    /// Takes the selected bar out.
    pub(crate) fn remove_bar(&mut self) {
        self.edit(&Edit::RemoveBar { bar: self.selection.bar });
    }
}

/// Gives a segment, and those of its branches, names that none of the others has; they are then taken.
fn name_freely(segment: &mut Segment, taken: &mut Vec<Segment>) {
    segment.name = free_name(taken, &segment.name);
    taken.push(Segment::new(&segment.name, Form::Plain(forms::Plain { length: None })));
    if let Form::Split(forms::Split { branches, .. }) = &mut segment.form {
        for below in branches.iter_mut().flat_map(|branch| &mut branch.segments) {
            name_freely(below, taken);
        }
    }
}

/// A name that no segment of the bar has yet: `taper`, `taper 2`, …
pub(super) fn free_name(segments: &[Segment], wanted: &str) -> String {
    let is_taken = |name: &str| !name.is_empty() && segments.iter().any(|segment| segment.name == name);
    if !is_taken(wanted) {
        return wanted.to_owned();
    }
    let stem = wanted.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end();
    let numbered = (2..=segments.len() + 2).map(|number| format!("{stem} {number}"));
    numbered.into_iter().find(|name| !is_taken(name)).unwrap_or_else(|| wanted.to_owned())
}

#[cfg(test)]
mod tests;
