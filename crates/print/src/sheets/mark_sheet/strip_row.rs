//! One row of the strip: the bar's outline, the marks across it, the names under it, and how it joins its neighbours.

use super::block_names::{Block as NamedBlock, BlockNames};
use super::labels::{self, Label, PlacedLabels};
use super::rows::{OVERLAP_MM, Row};
use super::slit_lines::{OnRow, punch_spot};
use super::words::{BranchMark, Fate, MarkKind, Strip, StripBlock, StripMark};
use crate::drawing::{Item, Point, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::letters::letters;
use crate::sheets::type_sizes::BODY;
use crate::typeset;

/// Left free at both ends of a row, for the datum's arrow and the printer's edge.
pub(super) const SIDE_MM: f64 = 7.0;
/// How far a mark stands out above and below the bar.
const STAND_OUT_MM: f64 = 4.5;
/// The height of the line over a row.
const HEAD_MM: f64 = 6.0;
/// The height of the names under the bar.
const NAMES_MM: f64 = 6.0;
/// A bar higher than this is drawn this high; its length stays true.
const HIGHEST_MM: f64 = 50.0;
/// A bar lower than this is drawn this high.
const LOWEST_MM: f64 = 1.0;
/// The lowest and the highest where its length is reduced.
const REDUCED_MM: [f64; 2] = [5.0, 11.0];
/// Between a label and the line that the row is cut out by.
const CLEAR_MM: f64 = 1.0;
/// The room for the words where the bar is broken off.
const BREAK_WORDS_MM: f64 = 46.0;
/// Half the width of a cross.
const CROSS_MM: f64 = 2.0;
/// Between two hatch lines, along the bar.
const HATCH_MM: f64 = 3.0;
/// Half the side of the square round the dot of a fixed mark.
const FIXED_MM: f64 = 1.7;

/// The height of a row whose labels all stand level.
pub(super) fn level_row_mm(strip: &Strip) -> f64 {
    HEAD_MM + labels::LEVEL_MM + drawn_height(strip) + 2.0 * STAND_OUT_MM + NAMES_MM
}

/// The height that a bar is drawn at.
fn drawn_height(strip: &Strip) -> f64 {
    let [lowest, highest] = if strip.scale < 1.0 { REDUCED_MM } else { [LOWEST_MM, HIGHEST_MM] };
    strip.height_mm.clamp(lowest, highest)
}

/// One row, while it is drawn.
pub(super) struct StripRow<'a> {
    strip: &'a Strip,
    row: Row,
    index: usize,
    count: usize,
    labels: PlacedLabels,
    /// The labels of marks on branches that are told below the bar.
    below: PlacedLabels,
    names: BlockNames,
    top: f64,
    bottom: f64,
}

impl<'a> StripRow<'a> {
    /// Row `index` of `count`, of a strip that is drawn as far as `shown_mm`, on paper `width` mm wide; its upright labels no
    /// larger than `largest`.
    pub(super) fn new(
        strip: &'a Strip,
        row: Row,
        [index, count]: [usize; 2],
        shown_mm: f64,
        [width, largest]: [f64; 2],
    ) -> Self {
        let x = |place: f64| SIDE_MM + place - row.start;
        let datum = row.shows(0.0).then(|| Label::datum(x(0.0)));
        let marks = strip.marks.iter().filter(|mark| row.shows(mark.at_mm));
        let on_branches = |above: bool| {
            let shown = strip.branch_marks.iter().filter(move |mark| mark.above == above && row.shows(mark.at_mm));
            let holes = strip.holes.iter().filter(move |hole| hole.above == above && row.shows(hole.at_mm));
            let holes = holes.map(move |hole| Label::of_hole(hole, x(hole.at_mm)));
            shown.map(move |mark| Label::of_branch(mark, x(mark.at_mm))).chain(holes)
        };
        let labels = datum.into_iter().chain(marks.map(|mark| Label::of(mark, x(mark.at_mm)))).chain(on_branches(true));
        // Labels keep clear of where the row is cut out.
        let low = if row.joined_before { x(row.start) + CLEAR_MM } else { 0.0 };
        let high = if row.joined_after { x(row.end) - CLEAR_MM } else { width };
        let labels = PlacedLabels::place(labels.collect(), low, high, [strip.least, largest]);
        let below = PlacedLabels::place(on_branches(false).collect(), low, high, [strip.least, largest]);
        let top = HEAD_MM + labels.height_mm() + STAND_OUT_MM;
        let bottom = top + drawn_height(strip);
        let names = block_names(strip, row, shown_mm, [low, high]);
        Self { strip, row, index, count, labels, below, names, top, bottom }
    }

    fn x(&self, place: f64) -> f64 {
        SIDE_MM + place - self.row.start
    }

    /// The row as a block.
    pub(super) fn block(&self) -> Block {
        let mut items = self.scissor_frame();
        items.extend(self.head());
        items.extend(self.strip.blocks.iter().flat_map(|block| self.face(block)));
        items.extend(self.outline());
        items.extend(self.labels.items(self.top - STAND_OUT_MM));
        items.extend(self.below.items_below(self.bottom + STAND_OUT_MM));
        items.extend(self.datum());
        items.extend(self.cuts_and_holes());
        items
            .extend(self.strip.marks.iter().filter(|mark| self.row.shows(mark.at_mm)).flat_map(|mark| self.mark(mark)));
        items.extend(self.names.items(self.height() - self.names.height_mm()));
        items.extend(self.crosses());
        Block { height: self.height(), items }
    }

    fn height(&self) -> f64 {
        self.bottom + STAND_OUT_MM + self.below.height_if_any_mm() + self.names.height_mm()
    }

    /// Slits, marks on branches, and the middles of holes.
    fn cuts_and_holes(&self) -> Vec<Item> {
        let height_mm = self.strip.height_mm;
        let on = OnRow { row: self.row, zero: self.x(0.0), top: self.top, bottom: self.bottom, height_mm };
        let shown = |mark: &&BranchMark| self.row.shows(mark.at_mm);
        let mut items: Vec<Item> = self.strip.slits.iter().flat_map(|slit| on.slit(slit)).collect();
        items.extend(self.strip.branch_marks.iter().filter(shown).flat_map(|mark| on.branch_mark(mark)));
        items.extend(self.strip.holes.iter().filter(|hole| self.row.shows(hole.at_mm)).flat_map(|hole| on.hole(hole)));
        items
    }

    /// Where the row is cut out; only rows that are joined have to be.
    fn scissor_frame(&self) -> Vec<Item> {
        if self.count < 2 {
            return Vec::new();
        }
        let (left, right) = (self.x(self.row.start), self.x(self.row.end));
        let side = |x: f64| Item::line(at(x, HEAD_MM), at(x, self.height()), Pen::ScissorLine);
        let ends = [(self.row.joined_before, left), (self.row.joined_after, right)];
        ends.into_iter().filter(|(joined, _)| *joined).map(|(_, x)| side(x)).collect()
    }

    /// The line over the row: which end is the datum, which row it is.
    fn head(&self) -> Vec<Item> {
        let mut items = Vec::new();
        let right = self.x(self.row.end).max(100.0);
        if self.index == 0 {
            let words = format!("▼ {}", self.strip.datum);
            let words = typeset::shorten(&words, BODY, Weight::SemiBold, (right - 45.0).max(60.0));
            items.push(Text::new(at(self.x(0.0) - 1.4, BODY), BODY, &words).bold().into());
        }
        let mut words = Vec::new();
        if self.labels.gave_up() || self.below.gave_up() {
            words.push("marks too close to label: see the table".to_owned());
        }
        if self.strip.height_mm > HIGHEST_MM {
            words.push("bar drawn narrower than it is".to_owned());
        }
        if self.count > 1 {
            words.push(format!("row {} of {}", self.index + 1, self.count));
        }
        if !words.is_empty() {
            let words = words.join(" · ");
            items.push(Text::new(at(right, BODY), BODY, &words).right().gray(Gray::DARK).into());
        }
        items
    }

    /// The bar's edges, as far as there is bar: marks may lie beyond a bar that is too short. Its ends are open where it
    /// goes on.
    fn outline(&self) -> Vec<Item> {
        let bar_end = self.row.end.min(self.strip.length_mm);
        if bar_end < self.row.start {
            return Vec::new();
        }
        let (left, right) = (self.x(self.row.start), self.x(bar_end));
        let edge = |y: f64| Item::line(at(left, y), at(right, y), Pen::Outline);
        let mut items = vec![edge(self.top), edge(self.bottom)];
        if self.row.shows(self.strip.length_mm) {
            items.push(self.end_line(right));
        } else if !self.row.joined_after {
            items.extend(self.break_line(right));
        }
        items
    }

    fn end_line(&self, x: f64) -> Item {
        Item::line(at(x, self.top), at(x, self.bottom), Pen::Outline)
    }

    /// A zigzag where the rest of the bar is not drawn, and the words that say so.
    fn break_line(&self, x: f64) -> Vec<Item> {
        let corner = |step: u32| {
            let share = f64::from(step) / 6.0;
            let aside = if step.is_multiple_of(2) { -1.2 } else { 1.2 };
            at(x + aside, self.top - 1.5 + share * (self.bottom - self.top + 3.0))
        };
        let words = Text::new(at(x, self.height() - 1.5), BODY, &self.break_words()).right();
        vec![Item::Polyline { points: (0..=6).map(corner).collect(), pen: Pen::MarkLine }, words.into()]
    }

    /// What becomes of a block, drawn on its face: hatched where it is cut away, gray where it is held.
    fn face(&self, block: &StripBlock) -> Vec<Item> {
        let (start, end) = (block.start_mm.max(self.row.start), block.end_mm.min(self.row.end));
        if start >= end {
            return Vec::new();
        }
        match block.fate {
            Fate::Stays => Vec::new(),
            Fate::Held => {
                let (corner, opposite) = (at(self.x(start), self.top), at(self.x(end), self.bottom));
                vec![Item::rectangle(corner, opposite, Some(Gray::LIGHT), None)]
            }
            Fate::CutAway => self.hatch(self.x(start), self.x(end)),
            // Crossed: it is no waste.
            Fate::Open => {
                [self.hatch(self.x(start), self.x(end)), self.cross_hatch(self.x(start), self.x(end))].concat()
            }
        }
    }

    fn hatch(&self, left: f64, right: f64) -> Vec<Item> {
        let height = self.bottom - self.top;
        let lines = ((right - left + height) / HATCH_MM).floor() as u32;
        let line = |number: u32| {
            let foot = left + f64::from(number) * HATCH_MM;
            let (low, high) = ((foot - height).max(left), foot.min(right));
            let y = |x: f64| self.bottom - (foot - x);
            Item::line(at(low, y(low)), at(high, y(high)), Pen::Hairline)
        };
        (1..=lines).map(line).collect()
    }

    /// The same the other way.
    fn cross_hatch(&self, left: f64, right: f64) -> Vec<Item> {
        let mirrored = |point: Point| at(left + right - point.x, point.y);
        let turned = |item| match item {
            Item::Line { from, to, pen } => Item::line(mirrored(from), mirrored(to), pen),
            other => other,
        };
        self.hatch(left, right).into_iter().map(turned).collect()
    }

    /// The datum end: the heaviest line of the strip, with an arrow against it.
    fn datum(&self) -> Vec<Item> {
        if !self.row.shows(0.0) {
            return Vec::new();
        }
        let (x, middle) = (self.x(0.0), (self.top + self.bottom) / 2.0);
        let arrow = vec![at(x - 0.8, middle), at(x - 6.0, middle - 2.6), at(x - 6.0, middle + 2.6)];
        vec![self.across(x, Pen::DatumLine), Item::Polygon { points: arrow, fill: Some(Gray::BLACK), pen: None }]
    }

    fn across(&self, x: f64, pen: Pen) -> Item {
        Item::line(at(x, self.top - STAND_OUT_MM), at(x, self.bottom + STAND_OUT_MM), pen)
    }

    fn mark(&self, mark: &StripMark) -> Vec<Item> {
        let x = self.x(mark.at_mm);
        let middle = at(x, f64::midpoint(self.top, self.bottom));
        match mark.kind {
            // A dot in a square: the smith's own mark.
            _ if mark.is_fixed => {
                let pen = if mark.kind == MarkKind::Cut { Pen::CutLine } else { Pen::MarkLine };
                let [low, high] = [-FIXED_MM, FIXED_MM].map(|by| at(middle.x + by, middle.y + by));
                let square = Item::rectangle(low, high, Some(Gray::WHITE), Some(Pen::Outline));
                vec![self.across(x, pen), square, punch_spot(middle)]
            }
            MarkKind::Cut => vec![self.across(x, Pen::CutLine)],
            kind if kind.is_punched() => vec![self.across(x, Pen::MarkLine), punch_spot(middle)],
            _ => vec![self.across(x, Pen::MarkLine)],
        }
    }

    fn break_words(&self) -> String {
        let long = &self.strip.length;
        let tries = [format!("bar goes on to {long} →"), format!("to {long} →")];
        let fits = |words: &&String| typeset::width_mm(words, BODY, Weight::Regular) <= BREAK_WORDS_MM;
        let words = tries.iter().find(fits).unwrap_or(&tries[1]);
        typeset::shorten(words, BODY, Weight::Regular, BREAK_WORDS_MM)
    }

    /// The crosses that this row is joined to its neighbours by, each with its letters.
    fn crosses(&self) -> Vec<Item> {
        let before = self.row.cross_before().map(|place| (place, self.index.saturating_sub(1)));
        let after = self.row.cross_after().map(|place| (place, self.index));
        before.into_iter().chain(after).flat_map(|(place, join)| self.cross_pair(self.x(place), join)).collect()
    }

    fn cross_pair(&self, x: f64, join: usize) -> Vec<Item> {
        let (above, under) = (self.top - STAND_OUT_MM / 2.0, self.bottom + STAND_OUT_MM / 2.0);
        let mut items = cross(x, above);
        items.extend(cross(x, under));
        let words = Text::new(at(x, self.height() - 1.0), BODY, &letters(join));
        items.push(words.centered().bold().into());
        items
    }
}

/// The names of the blocks that a row shows, as far as they keep clear of its joins and of the words at a break.
fn block_names(strip: &Strip, row: Row, shown_mm: f64, [low, high]: [f64; 2]) -> BlockNames {
    let x = |place: f64| SIDE_MM + place - row.start;
    let is_broken_off = shown_mm < strip.length_mm;
    let names_end = shown_mm - if is_broken_off { BREAK_WORDS_MM + 2.0 } else { 0.0 };
    let first = row.start + if row.joined_before { OVERLAP_MM } else { 0.0 };
    let last = (row.end - if row.joined_after { OVERLAP_MM } else { 0.0 }).min(names_end);
    let shown = strip.blocks.iter().filter(|block| block.start_mm.max(first) < block.end_mm.min(last));
    let block = |block: &'_ StripBlock| {
        let span = [x(block.start_mm.max(first)), x(block.end_mm.min(last))];
        (span, block.name.clone(), block.number.clone())
    };
    let blocks: Vec<_> = shown.map(block).collect();
    let named: Vec<NamedBlock<'_>> =
        blocks.iter().map(|(span, name, number)| NamedBlock { name, number, span: *span }).collect();
    // The letters of a join stand in its overlap.
    let low = if row.joined_before { low.max(x(first)) } else { low };
    let high = if row.joined_after || is_broken_off { high.min(x(last)) } else { high };
    BlockNames::place(&named, low, high)
}

fn cross(x: f64, y: f64) -> Vec<Item> {
    vec![
        Item::line(at(x - CROSS_MM, y), at(x + CROSS_MM, y), Pen::JoinCross),
        Item::line(at(x, y - CROSS_MM), at(x, y + CROSS_MM), Pen::JoinCross),
    ]
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

    use super::*;
    use crate::sheets::mark_sheet::marks::strip;
    use fh_work::{Shop, work_out};

    #[test]
    fn a_mark_that_a_later_card_measures_from_is_punched() {
        let (mut edges, mut looked_at) = (0, 0);
        for entry in std::fs::read_dir(format!("{}/../../demo-plans", env!("CARGO_MANIFEST_DIR"))).unwrap() {
            let path = entry.unwrap().path();
            if path.extension().is_none_or(|ending| ending != "json") {
                continue;
            }
            let plan = fh_core::file::read(&std::fs::read(&path).unwrap()).unwrap();
            let balance = fh_core::balance::balance(&plan);
            let worked = work_out(&plan, &balance, &Shop::default());
            for (at, bar) in plan.bars.iter().enumerate() {
                let Some(strip) = strip(&plan, bar, &balance.bars[at]) else { continue };
                let own = worked.steps.iter().filter(|step| step.bar == Some(at));
                let measured: String = own.flat_map(|step| &step.measure).map(|line| format!("{line}\n")).collect();
                for mark in &strip.marks {
                    if measured.contains(&format!("mark {}, struck", mark.number)) {
                        assert!(mark.kind.is_punched(), "{}: mark {}", path.display(), mark.number);
                        looked_at += 1;
                        edges += usize::from(mark.kind == MarkKind::SetDownEdge);
                    }
                }
            }
        }
        assert!(edges > 0 && looked_at > 20, "{edges} of {looked_at}");
    }
}
