//! Where on a picture metal lies, cell by cell, so that words find room beside it.

use crate::drawing::Point;
use crate::paper::Area;

/// The side of a cell.
const CELL_MM: f64 = 0.5;
/// No picture has more cells a side.
const MOST_CELLS: f64 = 2_000.0;

/// The cells of an area, each with the number of the part that lies on it, counted from 1; 0 where none does.
#[derive(Clone)]
pub(super) struct MetalGrid {
    area: Area,
    columns: usize,
    rows: usize,
    part: Vec<u32>,
    /// How many cells above and to the left of each corner have metal.
    sums: Vec<u32>,
}

impl MetalGrid {
    /// The cells that some outlines take.
    pub(super) fn new(area: Area, outlines: &[Vec<Point>]) -> Self {
        let cells = |mm: f64| (mm / CELL_MM).ceil().clamp(1.0, MOST_CELLS) as usize;
        let (columns, rows) = (cells(area.width()), cells(area.height()));
        let mut grid = Self { area, columns, rows, part: vec![0; columns * rows], sums: Vec::new() };
        for (number, outline) in (1..).zip(outlines) {
            grid.fill(outline, number);
            grid.edge(outline, number);
        }
        grid.sums = grid.summed();
        grid
    }

    /// Whether no metal lies in a space.
    pub(super) fn is_free(&self, space: Area) -> bool {
        let column = |x: f64| cell(x - self.area.left).min(self.columns);
        let row = |y: f64| cell(y - self.area.top).min(self.rows);
        let (left, right) = (column(space.left), (column(space.right) + 1).min(self.columns));
        let (top, bottom) = (row(space.top), (row(space.bottom) + 1).min(self.rows));
        let sum = |column: usize, row: usize| i64::from(self.sums[row * (self.columns + 1) + column]);
        sum(right, bottom) + sum(left, top) == sum(left, bottom) + sum(right, top)
    }

    /// How far a line runs over other parts than one, in mm.
    pub(super) fn over_others(&self, [from, to]: [Point; 2], own: u32) -> f64 {
        let over = stations(from, to).filter(|place| {
            let part = self.index(*place).map_or(0, |index| self.part[index]);
            part != 0 && part != own
        });
        over.count() as f64 * CELL_MM
    }

    /// The part that lies uppermost at a place, counted from 1; 0 where none does.
    pub(super) fn part_at(&self, place: Point) -> u32 {
        self.index(place).map_or(0, |index| self.part[index])
    }

    /// The place nearest to the middle of what is seen of a part; none where it is hidden.
    pub(super) fn seen_place(&self, own: u32) -> Option<Point> {
        let place = |index: usize| {
            let (column, row) = (index % self.columns, index / self.columns);
            let middle = |cells: usize| (cells as f64 + 0.5) * CELL_MM;
            Point { x: self.area.left + middle(column), y: self.area.top + middle(row) }
        };
        let own = || (0..self.part.len()).filter(|index| self.part[*index] == own).map(place);
        let count = own().count().max(1) as f64;
        let [x, y] = own().fold([0.0, 0.0], |[x, y], place| [x + place.x / count, y + place.y / count]);
        own().min_by(|a, b| (a.x - x).hypot(a.y - y).total_cmp(&(b.x - x).hypot(b.y - y)))
    }

    fn index(&self, place: Point) -> Option<usize> {
        let (column, row) = (cell(place.x - self.area.left), cell(place.y - self.area.top));
        (column < self.columns && row < self.rows).then_some(row * self.columns + column)
    }

    /// Everything within an outline.
    fn fill(&mut self, outline: &[Point], number: u32) {
        for row in 0..self.rows {
            let y = self.area.top + (row as f64 + 0.5) * CELL_MM;
            let next = outline.iter().cycle().skip(1);
            let crossed = outline.iter().zip(next).filter(|(a, b)| (a.y > y) != (b.y > y));
            let mut crossings: Vec<f64> =
                crossed.map(|(a, b)| a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x) - self.area.left).collect();
            crossings.sort_by(f64::total_cmp);
            for pair in crossings.chunks_exact(2) {
                let (from, to) = (cell(pair[0]).min(self.columns), (cell(pair[1]) + 1).min(self.columns));
                self.part[row * self.columns + from..row * self.columns + to.max(from)].fill(number);
            }
        }
    }

    /// Its edge, which may be all there is of what is thin.
    fn edge(&mut self, outline: &[Point], number: u32) {
        for (from, to) in outline.iter().zip(outline.iter().cycle().skip(1)) {
            for place in stations(*from, *to) {
                if let Some(index) = self.index(place) {
                    self.part[index] = number;
                }
            }
        }
    }

    fn summed(&self) -> Vec<u32> {
        let wide = self.columns + 1;
        let mut sums = vec![0; wide * (self.rows + 1)];
        for row in 0..self.rows {
            let mut in_row = 0;
            for column in 0..self.columns {
                in_row += u32::from(self.part[row * self.columns + column] != 0);
                sums[(row + 1) * wide + column + 1] = sums[row * wide + column + 1] + in_row;
            }
        }
        sums
    }
}

/// The cell that so many mm from the edge lie in; the first for what lies before it.
fn cell(mm: f64) -> usize {
    (mm / CELL_MM).floor().clamp(0.0, 2.0 * MOST_CELLS) as usize
}

/// Places along a line, a cell apart.
fn stations(from: Point, to: Point) -> impl Iterator<Item = Point> {
    let steps = ((to.x - from.x).hypot(to.y - from.y) / CELL_MM).ceil().clamp(1.0, MOST_CELLS);
    (0..=steps as usize).map(move |step| {
        let share = step as f64 / steps;
        Point { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::drawing::at;

    const AREA: Area = Area { left: -10.0, top: -10.0, right: 50.0, bottom: 30.0 };

    fn bar() -> MetalGrid {
        let bar = |left: f64, right: f64| vec![at(left, 0.0), at(right, 0.0), at(right, 4.0), at(left, 4.0)];
        MetalGrid::new(AREA, &[bar(0.0, 20.0), bar(20.0, 40.0)])
    }

    #[test]
    fn metal_is_not_free_and_paper_is() {
        let space = |left, top, right, bottom| Area { left, top, right, bottom };
        assert!(!bar().is_free(space(5.0, 1.0, 8.0, 3.0)));
        assert!(!bar().is_free(space(5.0, -3.0, 8.0, 0.5)));
        assert!(bar().is_free(space(5.0, -8.0, 8.0, -1.0)));
        assert!(bar().is_free(space(42.0, 0.0, 48.0, 3.0)));
    }

    #[test]
    fn what_lies_under_another_part_is_pointed_at_where_it_is_seen() {
        let square = |left: f64, right: f64| vec![at(left, 0.0), at(right, 0.0), at(right, 4.0), at(left, 4.0)];
        let grid = MetalGrid::new(AREA, &[square(0.0, 20.0), square(4.0, 40.0), square(10.0, 12.0)]);
        assert_eq!(grid.part_at(at(15.0, 2.0)), 2);
        let seen = grid.seen_place(1).unwrap();
        assert!(seen.x < 4.0 && grid.part_at(seen) == 1, "{seen:?}");
        assert_eq!(grid.part_at(at(45.0, 2.0)), 0);
        assert!(grid.seen_place(9).is_none());
    }

    #[test]
    fn a_line_over_its_own_part_alone_crosses_nothing() {
        assert_eq!(bar().over_others([at(10.0, 2.0), at(10.0, -5.0)], 1), 0.0);
        assert!(bar().over_others([at(10.0, 2.0), at(30.0, 2.0)], 1) > 9.0);
    }
}
