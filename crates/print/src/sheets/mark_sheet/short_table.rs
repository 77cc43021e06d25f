//! The table of marks where there is little room: number, total, part, how it is struck, and what it becomes where that fits.

use super::marks::table_rows;
use super::words::TableRow;
use crate::drawing::{Item, Text, at};
use crate::fonts::{CAP_HEIGHT, Weight};
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph::lines;
use crate::sheets::steps::cell::lines_block;
use crate::sheets::type_sizes::{BELOW_STEP, BODY, CAPTION, LINE_PITCH};
use crate::typeset;
use fh_core::balance::BarBalance;
use fh_core::describe::{dressed_lines, repeat_lines, segment_name};
use fh_core::plan::{Bar, Plan};

/// The em of a total, and the same where rows are close.
const TOTALS: [f64; 2] = [5.0, BODY];
/// Above and below the words of a row, and the same where rows are close.
const PADS_MM: [f64; 2] = [0.9, 0.75];
/// Between two columns.
const GUTTER_MM: f64 = 2.2;
/// Between two columns of rows.
const BETWEEN_MM: f64 = 5.0;
/// The height of the heads of the columns.
const HEAD_MM: f64 = 5.4;
/// The lines of one cell at most.
const MOST_LINES: usize = 6;

/// How much the table tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::sheets) enum ShortTable {
    /// Everything that a part becomes, with its notes.
    Whole,
    /// What a part becomes.
    Becomes,
    /// The marks alone, in two columns.
    Marks,
    /// The same in smaller letters.
    Close,
}

/// The rows of a bar's marks under their heads, row by row, so that they may run over a page.
pub(in crate::sheets) fn short_table(
    plan: &Plan,
    bar: &Bar,
    worked: &BarBalance,
    width: f64,
    tells: ShortTable,
) -> Vec<Block> {
    let rows: Vec<TableRow> = table_rows(plan, bar, worked, None).into_iter().skip(1).collect();
    if rows.is_empty() {
        return Vec::new();
    }
    let count = match tells {
        ShortTable::Whole | ShortTable::Becomes => 1,
        ShortTable::Marks | ShortTable::Close => 2,
    };
    if count == 1 {
        let columns = Columns::fill(&rows, width, tells);
        let most = if tells == ShortTable::Whole { usize::MAX } else { 1 };
        let row = |row: &TableRow| columns.row(row, &row.becomes[..most.min(row.becomes.len())]);
        let mut blocks = vec![columns.head()];
        blocks.extend(rows.iter().map(row));
        blocks.extend(if most == 1 { repeats(plan, bar, worked, width) } else { Vec::new() });
        return blocks;
    }
    // The number of a part tells its branch.
    let rows: Vec<TableRow> = rows.into_iter().filter(|row| count == 1 || !row.number.is_empty()).collect();
    let own = (width - BETWEEN_MM * (count as f64 - 1.0)) / count as f64;
    let columns = Columns::fill(&rows, own, tells);
    let parts: Vec<&[TableRow]> = rows.chunks(rows.len().div_ceil(count)).collect();
    let mut blocks = vec![beside(parts.iter().map(|_| columns.head()), own)];
    let longest = parts.iter().map(|part| part.len()).max().unwrap_or(0);
    blocks.extend((0..longest).map(|at| {
        beside(parts.iter().map(|part| part.get(at).map_or_else(Block::default, |row| columns.row(row, &[]))), own)
    }));
    blocks.extend(repeats(plan, bar, worked, width));
    blocks
}

/// What is dressed in dies, and laid off at equal steps, along the parts.
fn repeats(plan: &Plan, bar: &Bar, worked: &BarBalance, width: f64) -> Vec<Block> {
    let of = |at: usize| {
        let unit = plan.units.length;
        let told = [dressed_lines(unit, bar, worked, at), repeat_lines(unit, bar, worked, at)].concat().join("; ");
        let words = format!("“{}”: {told}", segment_name(bar, at));
        let lines = lines(&words, BELOW_STEP, Weight::Regular, width, MOST_LINES);
        (!told.is_empty()).then(|| lines_block(&lines, BELOW_STEP, Weight::Regular).then_free(1.0))
    };
    (0..worked.segments.len()).filter_map(of).collect()
}

/// Blocks so wide in a line, as tall as the tallest.
fn beside(blocks: impl Iterator<Item = Block>, width: f64) -> Block {
    blocks.enumerate().fold(Block::default(), |mut all, (index, block)| {
        all.height = all.height.max(block.height);
        all.items.extend(block.indented(index as f64 * (width + BETWEEN_MM)).items);
        all
    })
}

/// Where the columns start, and how wide each is.
struct Columns {
    width: f64,
    /// The em of a total.
    total: f64,
    /// Above and below the words of a row.
    pad: f64,
    number: f64,
    /// Where the totals end.
    totals: f64,
    name: [f64; 2],
    becomes: [f64; 2],
    strike: [f64; 2],
}

impl Columns {
    fn fill(rows: &[TableRow], width: f64, tells: ShortTable) -> Self {
        let has_becomes = matches!(tells, ShortTable::Whole | ShortTable::Becomes);
        let close = usize::from(tells == ShortTable::Close);
        let [total_em, pad] = [TOTALS[close], PADS_MM[close]];
        let widest = |of: fn(&TableRow) -> &str, size: f64, weight: Weight| {
            let wide = |row: &TableRow| typeset::width_mm(&typeset::printable(of(row)), size, weight);
            rows.iter().map(wide).fold(0.0, f64::max)
        };
        let number = widest(|row| &row.number, BODY, Weight::SemiBold) + 2.4;
        let total = number + GUTTER_MM + widest(|row| &row.total, total_em, Weight::SemiBold).max(16.0);
        let strike = widest(|row| &row.strike, CAPTION, Weight::Regular).clamp(10.0, 24.0);
        let left = total + GUTTER_MM;
        let rest = (width - left - strike - GUTTER_MM).max(10.0);
        let asked = widest(|row| &row.block, BODY, Weight::SemiBold) + 0.5;
        let name = if has_becomes { asked.min(rest * 0.34) } else { rest };
        Self {
            width,
            total: total_em,
            pad,
            number,
            totals: total,
            name: [left, name],
            becomes: [left + name + GUTTER_MM, if has_becomes { rest - name - GUTTER_MM } else { 0.0 }],
            strike: [width - strike, strike],
        }
    }

    fn head(&self) -> Block {
        let baseline = HEAD_MM - 1.6;
        let words = |x: f64, words: &str| Text::new(at(x, baseline), CAPTION, words).gray(Gray::DARK);
        let becomes = if self.becomes[1] > 0.0 { "becomes" } else { "" };
        let mut items: Vec<Item> = vec![
            words(0.0, "no.").into(),
            words(self.totals, "from datum").right().into(),
            words(self.name[0], "part").into(),
            words(self.becomes[0], becomes).into(),
            words(self.strike[0], "strike").into(),
        ];
        items.retain(|item| !matches!(item, Item::Text(text) if text.content().is_empty()));
        items.push(Item::line(at(0.0, HEAD_MM), at(self.width, HEAD_MM), Pen::Frame));
        Block { height: HEAD_MM, items }
    }

    /// From the top of a row to its first baseline.
    fn baseline(&self) -> f64 {
        self.pad + self.total * CAP_HEIGHT
    }

    fn row(&self, row: &TableRow, becomes: &[String]) -> Block {
        let baseline = self.baseline();
        let mut items = self.number_box(row);
        let total = Text::new(at(self.totals, baseline), self.total, &row.total).bold().right();
        items.extend(Some(total).filter(|text| !text.content().is_empty()).map(Item::from));
        let strike = lines(&row.strike, CAPTION, Weight::Regular, self.strike[1] + 0.1, 2);
        let name = lines(&row.block, BODY, Weight::SemiBold, self.name[1], MOST_LINES);
        let told = |words: &String| lines(words, BELOW_STEP, Weight::Regular, self.becomes[1], MOST_LINES);
        let becomes: Vec<String> =
            if self.becomes[1] > 0.0 { becomes.iter().flat_map(told).collect() } else { Vec::new() };
        let cells = [
            (set_at(&name, BODY, Weight::SemiBold, baseline), self.name[0]),
            (set_at(&becomes, BELOW_STEP, Weight::Regular, baseline), self.becomes[0]),
            (set_at(&strike, CAPTION, Weight::Regular, baseline), self.strike[0]),
        ];
        let below = cells.iter().map(|(cell, _)| cell.height).fold(0.0, f64::max);
        items.extend(cells.into_iter().flat_map(|(cell, left)| cell.indented(left).items));
        let height = baseline + below + self.pad + 0.5;
        items.push(Item::line(at(0.0, height), at(self.width, height), Pen::Hairline));
        Block { height, items }
    }

    /// The number of a mark in its box, as on the strip: black, or a frame for a mark on a branch and for a hole.
    fn number_box(&self, row: &TableRow) -> Vec<Item> {
        if row.number.is_empty() {
            return Vec::new();
        }
        let number = Text::new(at(self.number / 2.0, self.baseline() - 0.3), BODY, &row.number).centered().bold();
        let (corner, opposite) =
            (at(0.0, self.baseline() - BODY * CAP_HEIGHT - 1.0), at(self.number, self.baseline() + 0.5));
        let (fill, pen, ink) = match (row.depth, row.is_hole) {
            (0, false) => (Gray::BLACK, None, Gray::WHITE),
            _ => (Gray::WHITE, Some(Pen::Leader), Gray::BLACK),
        };
        vec![Item::rectangle(corner, opposite, Some(fill), pen), number.gray(ink).into()]
    }
}

/// Lines of a cell from the first baseline on; its height is what hangs below that.
fn set_at(lines: &[String], size: f64, weight: Weight, baseline: f64) -> Block {
    let pitch = size * LINE_PITCH;
    let one = |(index, line): (usize, &String)| {
        Text::new(at(0.0, baseline + pitch * index as f64), size, line).weight(weight).into()
    };
    let height = pitch * lines.len().saturating_sub(1) as f64;
    Block { height, items: lines.iter().enumerate().map(one).collect() }
}
