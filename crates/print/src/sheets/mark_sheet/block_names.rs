//! The names of the blocks under a row of the strip: in one line or two where they have room, else the block's number.

use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::Pen;
use crate::sheets::spread::spread;
use crate::sheets::type_sizes::BODY;
use crate::typeset;

/// The height of one line of names.
const LINE_MM: f64 = 4.7;
/// Free above the names and below them.
const PAD_MM: f64 = 1.3;
/// Between two of them.
const GAP_MM: f64 = 1.4;
/// The room for lines to names that were moved aside.
const LEADER_MM: f64 = 2.4;
/// What is moved aside by less needs no line to its block.
const MOVED_MM: f64 = 0.6;
/// Beyond this a number would tell of another block; the table tells it.
const FARTHEST_MM: f64 = 12.0;

/// A block that wants its name under it.
pub(super) struct Block<'a> {
    /// What the smith calls it.
    pub(super) name: &'a str,
    /// Its running number.
    pub(super) number: &'a str,
    /// From where to where it is seen on paper, in mm.
    pub(super) span: [f64; 2],
}

/// Names with their places.
pub(super) struct BlockNames {
    names: Vec<Name>,
    lines: usize,
    has_leaders: bool,
}

struct Name {
    lines: Vec<String>,
    weight: Weight,
    /// The middle of its block on paper, and where it stands.
    block: f64,
    at: f64,
}

impl Name {
    fn of(block: &Block<'_>) -> Self {
        let [start, end] = block.span;
        let room = end - start - GAP_MM;
        let whole = typeset::printable(block.name);
        let wide = |words: &str, weight| typeset::width_mm(words, BODY, weight);
        let broken = || {
            // A word that is cut in two is no name.
            let fits = whole.split_whitespace().all(|word| wide(word, Weight::Regular) <= room);
            let lines = if fits { typeset::wrap(&whole, BODY, Weight::Regular, room) } else { Vec::new() };
            (lines.len() == 2).then_some(lines)
        };
        let (lines, weight) = if wide(&whole, Weight::Regular) <= room {
            (vec![whole], Weight::Regular)
        } else {
            broken().map_or_else(|| (vec![block.number.to_owned()], Weight::SemiBold), |two| (two, Weight::Regular))
        };
        let middle = f64::midpoint(start, end);
        Self { lines, weight, block: middle, at: middle }
    }

    fn width_mm(&self) -> f64 {
        self.lines.iter().map(|line| typeset::width_mm(line, BODY, self.weight)).fold(0.0, f64::max)
    }

    fn is_moved(&self) -> bool {
        (self.at - self.block).abs() > MOVED_MM
    }
}

impl BlockNames {
    /// Places the names between `low` and `high`; the blocks stand in order along the bar. What finds no room near its block is
    /// left to the table.
    pub(super) fn place(blocks: &[Block<'_>], low: f64, high: f64) -> Self {
        let mut names: Vec<Name> = blocks.iter().map(Name::of).collect();
        while let Some(crowded) = spread_out(&mut names, low, high) {
            names.remove(crowded);
        }
        let lines = names.iter().map(|name| name.lines.len()).max().unwrap_or(0);
        let has_leaders = names.iter().any(Name::is_moved);
        Self { names, lines, has_leaders }
    }

    /// The height of the names with what is free around them.
    pub(super) fn height_mm(&self) -> f64 {
        let leaders = if self.has_leaders { LEADER_MM } else { 0.0 };
        leaders + LINE_MM * self.lines.max(1) as f64 + PAD_MM
    }

    /// The names, from the height `top` on.
    pub(super) fn items(&self, top: f64) -> Vec<Item> {
        let first = top + if self.has_leaders { LEADER_MM } else { 0.0 };
        let of = |name: &Name| {
            let line = |(index, words): (usize, &String)| {
                let place = at(name.at, first + LINE_MM * index as f64 + LINE_MM - 0.5);
                Item::from(Text::new(place, BODY, words).weight(name.weight).centered())
            };
            let mut items: Vec<Item> = name.lines.iter().enumerate().map(line).collect();
            if name.is_moved() {
                items.push(Item::line(at(name.block, top + 0.3), at(name.at, first + 0.6), Pen::Leader));
            }
            items
        };
        self.names.iter().flat_map(of).collect()
    }
}

/// Moves names apart; answers which has to go before the others find room.
fn spread_out(names: &mut [Name], low: f64, high: f64) -> Option<usize> {
    let widths: Vec<f64> = names.iter().map(Name::width_mm).collect();
    let (Some(first), Some(last)) = (widths.first(), widths.last()) else { return None };
    let apart: Vec<f64> = widths.windows(2).map(|pair| f64::midpoint(pair[0], pair[1]) + GAP_MM).collect();
    let wanted: Vec<f64> = names.iter().map(|name| name.block).collect();
    let Some(places) = spread(&wanted, &apart, low + first / 2.0, high - last / 2.0) else {
        return Some(names.len() / 2);
    };
    for (name, place) in names.iter_mut().zip(places) {
        name.at = place;
    }
    let moved = |name: &Name| (name.at - name.block).abs();
    let farthest = names.iter().enumerate().max_by(|one, other| moved(one.1).total_cmp(&moved(other.1)));
    farthest.filter(|(_, name)| moved(name) > FARTHEST_MM).map(|(index, _)| index)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(names: &BlockNames) -> Vec<String> {
        names.names.iter().map(|name| name.lines.join(" / ")).collect()
    }

    #[test]
    fn a_name_breaks_into_two_lines_before_it_gives_way_to_its_number() {
        let block = |name, number, span| Block { name, number, span };
        let names = BlockNames::place(
            &[
                block("wall leg", "1", [0.0, 60.0]),
                block("left corner", "2", [60.0, 76.0]),
                block("lower screw boss", "3", [76.0, 86.0]),
                block("stem", "4", [86.0, 87.0]),
            ],
            0.0,
            200.0,
        );
        assert_eq!(words(&names), ["wall leg", "left / corner", "3", "4"]);
        assert!(names.height_mm() > 2.0 * LINE_MM);
    }

    #[test]
    fn numbers_of_narrow_blocks_stand_beside_each_other() {
        let numbers: Vec<String> = (1..=5).map(|number| format!("1{number}")).collect();
        let span = |index: usize| [50.0 + index as f64, 51.0 + index as f64];
        let block = |(index, number): (usize, &String)| (span(index), number.clone());
        let all: Vec<([f64; 2], String)> = numbers.iter().enumerate().map(block).collect();
        let blocks: Vec<Block<'_>> =
            all.iter().map(|(span, number)| Block { name: "a long name", number, span: *span }).collect();
        let names = BlockNames::place(&blocks, 0.0, 100.0);
        assert_eq!(names.names.len(), 5);
        for pair in names.names.windows(2) {
            assert!(pair[1].at - pair[0].at >= f64::midpoint(pair[0].width_mm(), pair[1].width_mm()) + GAP_MM - 1e-9);
        }
    }

    #[test]
    fn what_has_no_room_near_its_block_is_left_to_the_table() {
        let numbers: Vec<String> = (1..=40).map(|number| number.to_string()).collect();
        let blocks: Vec<Block<'_>> = numbers
            .iter()
            .enumerate()
            .map(|(index, number)| Block { name: "name", number, span: [index as f64, index as f64 + 1.0] })
            .collect();
        let names = BlockNames::place(&blocks, 0.0, 40.0);
        assert!(!names.names.is_empty() && names.names.len() < 40, "{}", names.names.len());
    }
}
