//! A template that is larger than the page, in parts that are laid together cross on cross.

use super::clip::clipped;
use super::figure::Figure;
use crate::drawing::{Item, Point, Text, at};
use crate::paper::Area;
use crate::pen::Pen;
use crate::sheets::letters::letters;
use crate::sheets::type_sizes::{BODY, FACT};

/// How much of the drawing two parts in a line both show, in mm.
const OVERLAP_MM: f64 = 10.0;
/// Half the width of a cross.
const CROSS_MM: f64 = 3.0;
/// The least size of a part.
const LEAST_MM: f64 = 34.0;
/// A template that would take more parts than this is not printed.
const MOST_TILES: usize = 40;

/// One part of a large template.
#[derive(Clone, Debug)]
pub(super) struct Tile {
    /// Its letters.
    pub(super) letters: String,
    /// What is drawn on it, from its own top left corner.
    pub(super) items: Vec<Item>,
    /// How high it is, in mm.
    pub(super) height: f64,
}

/// How a drawing is cut into columns and rows.
struct Grid {
    whole: [f64; 2],
    tile: [f64; 2],
    count: [usize; 2],
}

impl Grid {
    fn new(figure: &Figure, tile: [f64; 2]) -> Self {
        let many = |whole: f64, one: f64| ((whole - OVERLAP_MM) / (one - OVERLAP_MM)).ceil().clamp(1.0, 1e4) as usize;
        let whole = [figure.width, figure.height];
        Self { whole, tile, count: [many(figure.width, tile[0]), many(figure.height, tile[1])] }
    }

    /// The part of the drawing that a tile shows.
    fn area(&self, [column, row]: [usize; 2]) -> Area {
        let start = |index: usize, one: f64| index as f64 * (one - OVERLAP_MM);
        let (left, top) = (start(column, self.tile[0]), start(row, self.tile[1]));
        // The last ones are no larger than what is left, but large enough for their crosses.
        let [right, bottom] = [(left, 0), (top, 1)].map(|(start, axis)| {
            let least = start + LEAST_MM.min(self.tile[axis]);
            (start + self.tile[axis]).min(self.whole[axis].max(least))
        });
        Area { left, top, right, bottom }
    }

    /// The part of the drawing whose words stand on a tile: up to the middle of each overlap.
    fn own(&self, place: [usize; 2]) -> Area {
        let (area, half) = (self.area(place), OVERLAP_MM / 2.0);
        let last = |axis: usize| place[axis] + 1 == self.count[axis];
        Area {
            left: if place[0] == 0 { f64::NEG_INFINITY } else { area.left + half },
            top: if place[1] == 0 { f64::NEG_INFINITY } else { area.top + half },
            right: if last(0) { f64::INFINITY } else { area.right - half },
            bottom: if last(1) { f64::INFINITY } else { area.bottom - half },
        }
    }

    fn letters(&self, [column, row]: [usize; 2]) -> String {
        letters(row * self.count[0] + column)
    }
}

/// How many tiles a drawing takes.
pub(super) fn tile_count(figure: &Figure, tile: [f64; 2]) -> usize {
    let [columns, rows] = Grid::new(figure, tile).count;
    columns * rows
}

/// The tiles of a drawing, each at most `tile` wide and high; none where there would be too many. Blank ones are left out.
pub(super) fn tiles(figure: &Figure, tile: [f64; 2]) -> Option<Vec<Tile>> {
    let grid = Grid::new(figure, tile);
    if grid.count[0] * grid.count[1] > MOST_TILES {
        return None;
    }
    let places = (0..grid.count[1]).flat_map(|row| (0..grid.count[0]).map(move |column| [column, row]));
    Some(places.filter_map(|place| cut_out(figure, &grid, place)).collect())
}

fn cut_out(figure: &Figure, grid: &Grid, place: [usize; 2]) -> Option<Tile> {
    let (area, own) = (grid.area(place), grid.own(place));
    let mut items: Vec<Item> = figure.items.iter().flat_map(|item| clipped(item, area, own)).collect();
    if items.is_empty() {
        return None;
    }
    for axis in [0, 1] {
        if place[axis] > 0 {
            let mut before = place;
            before[axis] -= 1;
            items.extend(join(grid, before, place, axis));
        }
        if place[axis] + 1 < grid.count[axis] {
            let mut after = place;
            after[axis] += 1;
            items.extend(join(grid, place, after, axis));
        }
    }
    if grid.count != [1, 1] {
        items.push(corner_letters(grid, place, area));
    }
    let items = items.into_iter().map(|item| item.shifted(-area.left, -area.top)).collect();
    let height = area.height();
    Some(Tile { letters: grid.letters(place), items, height })
}

/// The crosses in the overlap of two tiles, the same on both, and the letters of the two beside each.
fn join(grid: &Grid, before: [usize; 2], after: [usize; 2], axis: usize) -> Vec<Item> {
    let area = grid.area(after);
    let names = format!("{}{}", grid.letters(before), grid.letters(after));
    let place = |share: f64| match axis {
        0 => at(area.left + OVERLAP_MM / 2.0, area.top + share * (area.bottom - area.top)),
        _ => at(area.left + share * (area.right - area.left), area.top + OVERLAP_MM / 2.0),
    };
    [0.25, 0.75].into_iter().flat_map(|share| join_cross(place(share), &names)).collect()
}

fn join_cross(middle: Point, names: &str) -> Vec<Item> {
    let Point { x, y } = middle;
    vec![
        Item::line(at(x - CROSS_MM, y), at(x + CROSS_MM, y), Pen::JoinCross),
        Item::line(at(x, y - CROSS_MM), at(x, y + CROSS_MM), Pen::JoinCross),
        Text::new(at(x, y + CROSS_MM + BODY * 0.75), BODY, names).centered().bold().into(),
    ]
}

/// The tile's own letters in its corner.
fn corner_letters(grid: &Grid, place: [usize; 2], area: Area) -> Item {
    let size = FACT * 1.5;
    Text::new(at(area.left + OVERLAP_MM + 2.0, area.top + OVERLAP_MM + size), size, &grid.letters(place)).bold().into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn crosses_of_neighbors_fall_on_each_other() {
        let line = Item::line(at(0.0, 20.0), at(250.0, 20.0), Pen::Outline);
        let figure = Figure { items: vec![line], width: 250.0, height: 40.0 };
        let tiles = tiles(&figure, [100.0, 50.0]).unwrap_or_default();
        assert_eq!(tiles.iter().map(|tile| tile.letters.as_str()).collect::<Vec<_>>(), ["A", "B", "C"]);
        let crosses = |tile: &Tile| -> Vec<f64> {
            let middles = tile.items.iter().filter_map(|item| match item {
                Item::Line { from, to, pen: Pen::JoinCross } if from.y == to.y => Some((from.x + to.x) / 2.0),
                _ => None,
            });
            middles.collect()
        };
        // 100 mm wide, 90 mm from one to the next.
        assert_eq!(crosses(&tiles[0]), [95.0, 95.0]);
        assert_eq!(crosses(&tiles[1]), [5.0, 5.0, 95.0, 95.0]);
        assert_eq!(crosses(&tiles[2]), [5.0, 5.0]);
    }

    #[test]
    fn an_absurd_template_is_refused() {
        let figure = Figure { items: Vec::new(), width: 1e7, height: 1e7 };
        assert!(tiles(&figure, [100.0, 50.0]).is_none());
    }
}
