//! Fixed marks: a mark is fixed where the smith wants it, moved, and loosened again.

use super::boundary::{Change, Moved};
use super::gave::Gave;
use super::refusal::Refusal;
use crate::balance::{Derived, balance, fill_blocks};
use crate::contents::Answer;
use crate::describe::fine_length;
use crate::forms::{self, Pen};
use crate::plan::{Bar, Chain, Form, Gives, OutlineSpec, Plan, Segment, ThicknessSpec};
use fh_measure::{LengthRange, WrittenLength};
use std::ops::Range;

/// An edit of a fixed mark.
#[derive(Clone, Debug, PartialEq)]
pub enum MarkEdit {
    /// Fixes the mark at a segment's end, there or elsewhere. Nothing else is changed: where the parts do not take just what
    /// lies before it, that is told.
    Fix {
        /// The bar.
        bar: usize,
        /// The segment, counted through the bar.
        segment: usize,
        /// Where the mark lies on the bar, from the datum end.
        at: WrittenLength,
    },
    /// Moves the mark at a segment's end, and fixes it there. It takes its neighbours' metal along: where nothing gives in the
    /// blocks beside it, the parts next to the mark do from now on.
    Move {
        /// The bar.
        bar: usize,
        /// The segment, counted through the bar.
        segment: usize,
        /// Where the mark comes to lie, from the datum end.
        to: WrittenLength,
    },
    /// Loosens a mark. The parts on both sides of it keep the sizes that they have.
    Loosen {
        /// The bar.
        bar: usize,
        /// The segment, counted through the bar.
        segment: usize,
    },
    /// Sets marks in a row on an empty bar, as they are typed: `2, 4 1/4, 6`. Each ends an open block.
    Row {
        /// The bar.
        bar: usize,
        /// The marks; a number without a unit takes the plan's.
        text: String,
    },
    /// Makes an open block into what it could be.
    Fill {
        /// The bar.
        bar: usize,
        /// The open segment, counted through the bar.
        segment: usize,
        /// What it becomes.
        with: Answer,
    },
}

impl MarkEdit {
    /// The plan after this edit, and what gave way in it.
    pub(super) fn applied(&self, plan: &Plan) -> Result<Moved, Refusal> {
        match self {
            Self::Fix { bar, segment, at } => fix(plan, (*bar, *segment), at),
            Self::Move { bar, segment, to } => move_mark(plan, (*bar, *segment), to),
            Self::Loosen { bar, segment } => loosen(plan, (*bar, *segment)),
            Self::Row { bar, text } => set_row(plan, *bar, text),
            Self::Fill { bar, segment, with } => fill(plan, (*bar, *segment), with),
        }
    }
}

fn fix(plan: &Plan, (bar, segment): (usize, usize), at: &WrittenLength) -> Result<Moved, Refusal> {
    let mut next = plan.clone();
    let of = next.bars.get_mut(bar).ok_or(Refusal::NoSuchPlace)?;
    let place = place_on_bar(of, segment)?;
    of.segments[place].ends_at = Some(at.clone());
    Ok(Moved { plan: next, gave: Vec::new() })
}

fn move_mark(plan: &Plan, (bar, segment): (usize, usize), to: &WrittenLength) -> Result<Moved, Refusal> {
    let mut moved = fix(plan, (bar, segment), to)?;
    let of = &mut moved.plan.bars[bar];
    let place = place_on_bar(of, segment)?;
    let blocks = of.block_places();
    let before = blocks.iter().find(|block| block.contains(&place)).cloned();
    let after = blocks.iter().find(|block| block.contains(&(place + 1))).cloned();
    if let Some(before) = before {
        let_one_give(of, before.rev());
    }
    // An open block has no end that its parts would have to reach.
    let is_closed =
        |block: &Range<usize>| block.end < of.segments.len() || of.length.is_some() || ends_fixed(of, block);
    if let Some(after) = after.filter(is_closed) {
        let_one_give(of, after);
    }
    moved.gave = what_gave(plan, &moved.plan, bar);
    Ok(moved)
}

fn ends_fixed(bar: &Bar, block: &Range<usize>) -> bool {
    block.end.checked_sub(1).and_then(|last| bar.segments.get(last)).is_some_and(|last| last.ends_at.is_some())
}

/// Lets the first of these segments give that can, where none of them gives.
fn let_one_give(bar: &mut Bar, places: impl Iterator<Item = usize> + Clone) {
    let gives = |segment: &Segment| match segment.gives {
        Some(gives) => gives != Gives::Nothing,
        None => bar.takes_up.as_ref() == Some(&segment.name) || any_below(segment),
    };
    if places.clone().any(|place| bar.segments.get(place).is_some_and(gives)) {
        return;
    }
    let can = |segment: &Segment| segment.gives.is_none() && segment.form.default_gives() != Gives::Nothing;
    let first = places.into_iter().find(|place| bar.segments.get(*place).is_some_and(can));
    if let Some(segment) = first.and_then(|place| bar.segments.get_mut(place)) {
        segment.gives = Some(segment.form.default_gives());
    }
}

/// Whether something in the branches of a split says that it gives.
fn any_below(segment: &Segment) -> bool {
    let mut below = segment.form.branches().iter().flat_map(|branch| &branch.segments);
    below.any(|part| part.gives.is_some_and(|gives| gives != Gives::Nothing) || any_below(part))
}

/// The sizes of a bar that are another now.
fn what_gave(before: &Plan, after: &Plan, bar: usize) -> Vec<Gave> {
    let (old, new) = (balance(before), balance(after));
    let Some((old, new)) = old.bars.get(bar).zip(new.bars.get(bar)) else { return Vec::new() };
    let mut gave = Vec::new();
    for (segment, (old, new)) in old.segments.iter().zip(&new.segments).enumerate() {
        let moved = |size: &&Derived| size.gave.is_some() && old.derived_length(size.name) != size.length;
        gave.extend(new.derived.iter().filter(moved).filter_map(|size| {
            Some(Gave { segment, size: size.name, text: fine_length(size.length?, after.units.length) })
        }));
    }
    gave
}

fn loosen(plan: &Plan, (bar, segment): (usize, usize)) -> Result<Moved, Refusal> {
    let of = plan.bars.get(bar).ok_or(Refusal::NoSuchPlace)?;
    let place = place_on_bar(of, segment)?;
    if of.segments[place].ends_at.is_none() {
        return Err(Refusal::CannotBe("this mark is not fixed".to_owned()));
    }
    let mut change = Change { plan: plan.clone(), bar, gave: Vec::new() };
    // From the datum outward: what gives by its section hands it on.
    for (block, fill) in of.block_places().iter().zip(fill_blocks(&change.walk(), None).fills) {
        let is_beside = block.contains(&place) || block.contains(&(place + 1));
        let Some(factor) = fill.factor.filter(|_| is_beside) else { continue };
        for at in fill.gives {
            let gives = change.walk().bar.segment(at).map_or(Gives::Nothing, Segment::giving);
            change.write(at, gives, factor)?;
        }
    }
    change.plan.bars[bar].segments[place].ends_at = None;
    Ok(Moved { plan: change.plan, gave: Vec::new() })
}

/// The place of a segment on the bar itself.
fn place_on_bar(bar: &Bar, segment: usize) -> Result<usize, Refusal> {
    match bar.place_of(segment).ok_or(Refusal::NoSuchPlace)? {
        (Chain::Bar, place) => Ok(place),
        _ => Err(Refusal::CannotBe("a fixed mark lies on the bar itself, not in a branch".to_owned())),
    }
}

/// A segment that is taken away leaves its fixed mark to the one before it in its block, so that the block stays.
pub(super) fn hand_back(bar: &mut Bar, segment: usize) {
    let Some((Chain::Bar, place)) = bar.place_of(segment) else { return };
    let Some(mark) = bar.segments.get_mut(place).and_then(|segment| segment.ends_at.take()) else { return };
    if let Some(before) = place.checked_sub(1).and_then(|before| bar.segments.get_mut(before))
        && before.ends_at.is_none()
    {
        before.ends_at = Some(mark);
    }
}

/// What is put into a chain from elsewhere: without a fixed mark that would not rise there.
pub(super) fn fitting(bar: &Bar, chain: Chain, place: usize, segment: &Segment) -> Segment {
    let mut segment = segment.clone();
    let (before, after) = bar.segments.split_at(place.min(bar.segments.len()));
    let mark = |segment: &Segment| segment.ends_at.as_ref().map(WrittenLength::mm);
    let lowest = before.iter().rev().find_map(mark).unwrap_or(0.0);
    let highest = after.iter().find_map(mark).unwrap_or(f64::INFINITY);
    let fits = |mark: &mut WrittenLength| chain == Chain::Bar && lowest < mark.mm() && mark.mm() < highest;
    segment.ends_at = segment.ends_at.take_if(fits);
    segment
}

/// An empty bar with marks as they are typed.
fn set_row(plan: &Plan, bar: usize, text: &str) -> Result<Moved, Refusal> {
    let mut next = plan.clone();
    let of = next.bars.get_mut(bar).ok_or(Refusal::NoSuchPlace)?;
    if !of.segments.is_empty() {
        return Err(Refusal::CannotBe("marks in a row are set on an empty bar, and this one has parts".to_owned()));
    }
    for (index, mark) in marks_in_row(text).enumerate() {
        let unit = Some(plan.units.length.length_unit());
        let at = WrittenLength::parse(mark, unit, LengthRange::AboveZero)
            .map_err(|error| Refusal::CannotBe(format!("“{mark}”: {error}")))?;
        let mut block = Segment::new(&format!("block {}", index + 1), Form::Open(forms::Open { length: None }));
        block.ends_at = Some(at);
        of.segments.push(block);
    }
    if of.segments.is_empty() {
        return Err(Refusal::CannotBe("no mark was found; type them like this: 2, 4 1/4, 6".to_owned()));
    }
    Ok(Moved { plan: next, gave: Vec::new() })
}

/// The marks of a row, parted by commas or semicolons; beside either a comma without a space behind it is a decimal comma.
pub fn marks_in_row(text: &str) -> impl Iterator<Item = &str> {
    let (has_semicolon, has_room) = (text.contains(';'), text.contains(", "));
    let parts = text.split(move |letter| letter == ';' || (letter == ',' && !has_room && !has_semicolon));
    let parts = parts.flat_map(|part| part.split(", "));
    parts.map(|part| part.trim().trim_end_matches(',')).filter(|part| !part.is_empty())
}

/// An open block made into something.
fn fill(plan: &Plan, (bar, segment): (usize, usize), with: &Answer) -> Result<Moved, Refusal> {
    let mut next = plan.clone();
    let pen = Pen { unit: plan.units.length.length_unit(), finer: 0 };
    let form = form_of(with, pen).ok_or_else(|| Refusal::CannotBe("the size would be out of range".to_owned()))?;
    let place = next.bars.get_mut(bar).and_then(|bar| bar.segment_mut(segment)).ok_or(Refusal::NoSuchPlace)?;
    if !matches!(place.form, Form::Open(_)) {
        return Err(Refusal::CannotBe("only an open block is filled".to_owned()));
    }
    place.form = form;
    place.gives = Some(Gives::Length);
    Ok(Moved { gave: what_gave(plan, &next, bar), plan: next })
}

fn form_of(with: &Answer, pen: Pen) -> Option<Form> {
    Some(match *with {
        Answer::Drawn { section, length } => {
            Form::Drawn(forms::Drawn { length: Some(pen.write(length)?), section: pen.section(section)? })
        }
        Answer::Leaf { thickness, length, width } => Form::Flag(forms::Flag {
            outline: OutlineSpec::Leaf { length: pen.write(length)?, width: pen.write(width)? },
            thickness: ThicknessSpec::Even(pen.write(thickness)?),
            trim: None,
            blank: None,
            base_line: None,
            joined: false,
            holes: Vec::new(),
        }),
        Answer::Disc { thickness, diameter } => Form::Flag(forms::Flag {
            outline: OutlineSpec::Disc { diameter: pen.write(diameter)? },
            thickness: ThicknessSpec::Even(pen.write(thickness)?),
            trim: None,
            blank: None,
            base_line: None,
            joined: false,
            holes: Vec::new(),
        }),
    })
}
