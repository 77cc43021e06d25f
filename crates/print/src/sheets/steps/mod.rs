//! The step sheets: the order of work, sheet in hand. A card for each step, or the whole job in a table.

mod anchor;
mod anvil;
mod at_hand;
mod bar_scale;
mod bend_notes;
mod bent;
mod card;
mod card_body;
pub(super) mod cell;
mod detail;
mod faces;
mod hatch;
mod label_tries;
mod mark_numbers;
mod mark_table;
mod metal_grid;
pub(super) mod opening;
mod outline;
mod parts_table;
mod piece_labels;
mod piece_page;
pub(super) mod piece_picture;
mod piece_view;
mod said_before;
mod short_rows;
mod size_table;
mod slim_card;
mod strip;
mod strip_bar;
pub(super) mod words;

use self::bar_scale::BarScale;
use self::bent::Now;
use self::cell::{fitted, in_white};
use self::said_before::SaidBefore;
use self::short_rows::ShortColumns;
use self::strip::Strip;
use self::strip_bar::StripBar;
use self::words::card_words;
use crate::drawing::{Align, Item, at};
use crate::fonts::Weight;
use crate::pen::Gray;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::names::{bar_name, title};
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{CAPTION, FACT};
use crate::typeset;
use fh_core::balance::Balance;
use fh_core::cautions::Cautions;
use fh_core::joints::{MemberPlace, joined};
use fh_core::plan::{Bar, Operation, Plan};
use fh_piece::Line;
use fh_work::{Worked, WorkedStep, after, bar_states, hot_note, joined_after};
use std::collections::BTreeSet;

/// What is worked is told apart without color.
const HATCHED: &str = "hatched: what the step works";
/// Between two cards.
const BETWEEN_MM: f64 = 1.8;
/// The height of the band over the steps of a bar.
const BAND_MM: f64 = 7.5;

/// A picture of the finished piece with its overall sizes, no taller than so many mm; none where it cannot be drawn.
pub(super) fn piece_block(plan: &Plan, balance: &Balance, width: f64, tallest: f64) -> Option<Block> {
    piece_picture::Picture::new(plan, balance, piece_picture::Named::Nothing, [width, tallest])
        .map(|picture| picture.drawn(width, tallest).block)
}

/// A plan with its order of work.
pub(super) struct Job<'a> {
    pub(super) plan: &'a Plan,
    pub(super) balance: &'a Balance,
    pub(super) worked: &'a Worked,
    /// What the plan asks to beware of.
    pub(super) warned: &'a Cautions,
}

impl Job<'_> {
    /// Puts a card for each step on the flow, after a page with the job and what is laid ready.
    pub(super) fn put_cards(&self, flow: &mut Flow) {
        if !self.start(flow, "STEPS") {
            return;
        }
        piece_page::put_piece(flow, self.plan, self.balance);
        opening::put_ready(flow, self.plan, self.worked);
        opening::put_heat_notes(flow, self.plan, self.worked);
        let states = self.states(flow.width() - 2.0 * card::PAD_MM - strip::NAMES_MM);
        let (mut last, mut before) = (None, SaidBefore::default());
        for (number, step) in self.worked.steps.iter().enumerate() {
            let words = before.shorten(card_words(self.plan, number, step), number + 1);
            let scale = step.bar.and_then(|bar| states.get(bar)?.scale);
            let head = (last != Some(step.bar)).then(|| self.band(step.bar, scale, flow.width()));
            last = Some(step.bar);
            let card = if words.is_slim {
                slim_card::slim_card(&words, flow.width())
            } else {
                let strip = self.strip(&states, number, step, flow.width() - 2.0 * card::PAD_MM);
                let head_mm = head.as_ref().map_or(0.0, |head| head.height);
                card::card(&words, &strip, flow.width(), flow.page_room() - head_mm)
            };
            flow.put(match head {
                Some(head) => head.over(card),
                None => card,
            });
            flow.skip(BETWEEN_MM);
        }
        opening::put_reasons(flow, self.worked);
    }

    /// Puts the whole job on the flow as a table.
    pub(super) fn put_table(&self, flow: &mut Flow) {
        if !self.start(flow, "STEPS, SHORT") {
            return;
        }
        let columns = ShortColumns::fill(flow.width(), self.plan.units.length);
        let (mut last, mut heat) = (None, 0);
        for (number, step) in self.worked.steps.iter().enumerate() {
            let row = columns.row(&card_words(self.plan, number, step), step, step.is_hot() && step.heat != heat);
            heat = if step.is_hot() { step.heat + step.needs - 1 } else { heat };
            // What is done to the whole piece says so itself.
            let is_begun = last != Some(step.bar) && (step.bar.is_some() || number == 0);
            let band = is_begun.then(|| self.band(step.bar, None, flow.width()));
            last = Some(step.bar);
            // On the same page the heads are not written again.
            let is_first = number == 0;
            let top = band.map(|band| if is_first { band.over(columns.head()) } else { band });
            match top {
                Some(top) => flow.put(top.over(row)),
                None if row.height > flow.room() => flow.put(columns.head().over(row)),
                None => flow.put(row),
            }
        }
        let losses = self.worked.scale.iter().map(|loss| loss.reason.clone());
        let notes: Vec<String> = hot_note(self.plan).into_iter().chain(losses).collect();
        if !notes.is_empty() {
            flow.skip(1.0);
            flow.put(paragraph(&notes.join(" "), CAPTION, Weight::Regular, flow.width()));
        }
    }

    /// The title, the facts and the findings; whether there are any steps.
    fn start(&self, flow: &mut Flow, kind: &str) -> bool {
        flow.start_part(format!("{} · {}", title(self.plan), kind.to_lowercase()));
        opening::put_head(flow, self, kind);
        let width = flow.width();
        let any = !self.worked.steps.is_empty();
        if !any {
            let words =
                if self.plan.bars.is_empty() { "This plan has no bar yet." } else { "This plan has no steps yet." };
            flow.put(paragraph(words, FACT, Weight::SemiBold, width));
        }
        any
    }

    /// A band over the steps of a bar, or of the whole piece.
    fn band(&self, bar: Option<usize>, scale: Option<BarScale>, width: f64) -> Block {
        let words = match bar.and_then(|index| Some((index, self.plan.bars.get(index)?))) {
            Some((index, bar)) => {
                format!("{}: {}, make {}", bar_name(self.plan, index, bar), bar.stock.describe(), bar.pieces())
            }
            None => "The whole piece".to_owned(),
        };
        let mut items = vec![Item::rectangle(at(0.0, 0.0), at(width, BAND_MM), Some(Gray::DARK), None)];
        let words = fitted(&words, FACT, Weight::SemiBold, width - 6.0, at(3.0, 5.4), Align::Left);
        items.extend(words.map(in_white));
        let band = Block { height: BAND_MM, items };
        let Some(scale) = scale else { return band.then_free(1.5) };
        let datum = bar.and_then(|bar| self.plan.bars.get(bar)).map_or("datum end", Bar::datum_name);
        let datum = typeset::shorten(datum, CAPTION, Weight::SemiBold, width * 0.4);
        let thicker = scale.explained().map_or_else(String::new, |how| format!("; from the side, {how}"));
        let legend = format!("at the left: {datum}; {HATCHED}{thicker}");
        let legend = fitted(&legend, CAPTION, Weight::Regular, width - 6.0, at(3.0, 3.6), Align::Left);
        band.over(Block { height: 4.8, items: legend.into_iter().collect() })
    }

    /// The bars after each of their steps: for each bar the number of its step and the bar, and the scale of all of them.
    fn states(&self, width: f64) -> Vec<BarStates> {
        let of_bar = |bar: usize| {
            let states = bar_states(self.plan, self.balance, self.worked, bar).into_iter();
            let states = states.map(|(count, state)| (count, StripBar::new(self.plan, bar, state)));
            let (counts, bars): (Vec<usize>, Vec<StripBar>) = states.unzip();
            BarStates { scale: BarScale::fitting(&bars, width), counts, bars }
        };
        (0..self.plan.bars.len()).map(of_bar).collect()
    }

    fn strip(&self, states: &[BarStates], number: usize, step: &WorkedStep, width: f64) -> Block {
        // Brush and wax change nothing that is seen.
        let is_seen = step.tasks.iter().any(|task| !matches!(task.operation, Operation::Brush | Operation::Wax));
        let bent = if is_seen { self.bent(states, number, step, width) } else { Block::default() };
        let shown_bent = bent.height > 0.0;
        let drawn = || {
            let states = states.get(step.bar?)?;
            let [before, after] = states.around(number)?;
            Some(Strip { before, after, step, scale: states.scale?, plan: self.plan, shown_bent }.block(width))
        };
        drawn().unwrap_or_default().over(bent)
    }

    /// The bar as it is after a step; what is put together so far where the step is on the whole piece. Nothing where nothing is bent.
    fn bent(&self, states: &[BarStates], number: usize, step: &WorkedStep, width: f64) -> Block {
        let Some(bar) = step.bar else {
            let of_piece = after(self.plan, self.balance, self.worked, number + 1);
            return self.put_together(number, step, &of_piece, width);
        };
        let now = states.get(bar).and_then(|states| states.around(number));
        let (Some(own), Some([_, state])) = (self.plan.bars.get(bar), now) else { return Block::default() };
        let mut own = own.clone();
        own.count = None;
        let plan = Plan { bars: vec![own], joints: Vec::new(), underlay: None, ..self.plan.clone() };
        let balance = Balance::of_bars(vec![state.bar.clone()]);
        let now = Now::new(&plan, &balance);
        let parts = step.parts();
        let is_worked = |line: &Line| parts.contains(&line.segment);
        if now.is_bent() { now.block(&is_worked, strip::NAMES_MM, width) } else { Block::default() }
    }

    /// What a step on the whole piece leaves put together: what hangs together with the joint that it makes; of other steps all.
    fn put_together(&self, number: usize, step: &WorkedStep, balance: &Balance, width: f64) -> Block {
        let plan = joined_after(self.plan, self.worked, number + 1);
        let Some(joint) = step.tasks.iter().find_map(|task| task.joint) else {
            // Bars that nothing joins have no place beside each other.
            let now = Now::new(&plan, balance);
            let is_apart = plan.bars.len() > 1 && plan.joints.is_empty();
            let shown = !is_apart && now.is_bent();
            return if shown { now.block(&|_| false, strip::NAMES_MM, width) } else { Block::default() };
        };
        let members = joined(self.plan).into_iter().find(|joined| joined.joint == joint).map(|joined| joined.members);
        let members = members.unwrap_or_default();
        let is_worked = |line: &Line| {
            members
                .iter()
                .any(|member| (member.bar, member.copy, member.segment) == (line.bar, line.copy, line.segment))
        };
        Now::new(&plan, balance).only(&together(&plan, &members)).block(&is_worked, strip::NAMES_MM, width)
    }
}

/// The copies of bars that hang together with the members of a joint: each by its bar and its number among the copies.
fn together(plan: &Plan, members: &[MemberPlace]) -> BTreeSet<(usize, u32)> {
    let copies = |members: &[MemberPlace]| members.iter().map(|one| (one.bar, one.copy)).collect::<BTreeSet<_>>();
    let joints: Vec<BTreeSet<(usize, u32)>> = joined(plan).iter().map(|joined| copies(&joined.members)).collect();
    let mut group = copies(members);
    loop {
        let met = joints.iter().filter(|joint| !joint.is_disjoint(&group));
        let more: BTreeSet<(usize, u32)> = met.flatten().copied().chain(group.iter().copied()).collect();
        if more.len() == group.len() {
            return group;
        }
        group = more;
    }
}

/// A bar as it is cut, and after each of its steps.
struct BarStates {
    scale: Option<BarScale>,
    counts: Vec<usize>,
    bars: Vec<StripBar>,
}

impl BarStates {
    /// The bar before and after one of its steps; none where the step is another bar's.
    fn around(&self, step: usize) -> Option<[&StripBar; 2]> {
        let at = self.counts.binary_search(&(step + 1)).ok()?;
        Some([self.bars.get(at.checked_sub(1)?)?, self.bars.get(at)?])
    }
}

#[cfg(test)]
mod tests;
