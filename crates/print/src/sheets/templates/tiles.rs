//! A template that is larger than the page, in parts that are laid together cross on cross.

use super::clip::{Piece, clipped, corners, holds, inward, pieces, space};
use super::figure::{Figure, overlap};
use crate::drawing::{Item, Point, Text, at};
use crate::fonts::CAP_HEIGHT;
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
/// Along a line it is asked so often on which parts it lies, in mm.
const STEP_MM: f64 = 1.0;
/// Where along the overlap of two parts their crosses are put: the first of these where they lie on no words.
const CROSSES_AT: [f64; 6] = [0.25, 0.2, 0.3, 0.15, 0.35, 0.1];
/// The size of a part's own letters.
const LETTER: f64 = FACT * 1.5;

/// So often along each side of a part a place for its letters is tried.
const LETTER_STEPS: u32 = 12;

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

/// A part's column and row.
type Place = [usize; 2];

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

    /// All parts, row by row.
    fn places(&self) -> Vec<Place> {
        (0..self.count[1]).flat_map(|row| (0..self.count[0]).map(move |column| [column, row])).collect()
    }

    fn is_one(&self) -> bool {
        self.count == [1, 1]
    }
}

/// How many tiles a drawing takes.
pub(super) fn tile_count(figure: &Figure, tile: [f64; 2]) -> usize {
    let grid = Grid::new(figure, tile);
    let all = grid.count[0].saturating_mul(grid.count[1]);
    if all > MOST_TILES { all } else { needed(&grid, &pieces(&figure.items)).len() }
}

/// The tiles of a drawing, each at most `tile` wide and high; none where there would be too many. Those that no line needs
/// are left out; the others hang together, edge on edge, and have their letters in order.
pub(super) fn tiles(figure: &Figure, tile: [f64; 2]) -> Option<Vec<Tile>> {
    let grid = Grid::new(figure, tile);
    if grid.count[0].saturating_mul(grid.count[1]) > MOST_TILES {
        return None;
    }
    let pieces = pieces(&figure.items);
    let kept = needed(&grid, &pieces);
    let cut = Cut { grid: &grid, kept: &kept, words: words(&pieces) };
    Some((0..kept.len()).map(|number| cut.tile(&pieces, number)).collect())
}

/// The space of all words.
fn words(pieces: &[Piece<'_>]) -> Vec<Area> {
    let of_words = |piece: &Piece<'_>| if let Piece::Words(items) = piece { space(items) } else { None };
    pieces.iter().filter_map(of_words).collect()
}

/// Places along every line, close together.
fn along_strokes(pieces: &[Piece<'_>]) -> Vec<Point> {
    let between = |pair: &[Point]| {
        let [a, b] = [pair[0], pair[1]];
        let steps = ((b.x - a.x).hypot(b.y - a.y) / STEP_MM).ceil().clamp(1.0, 1e4) as u32;
        (0..=steps).map(move |step| {
            let share = f64::from(step) / f64::from(steps);
            at(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
        })
    };
    let strokes =
        pieces.iter().filter_map(|piece| if let Piece::Stroke(item) = piece { Some(corners(item)) } else { None });
    strokes.flat_map(|points| points.windows(2).flat_map(between).collect::<Vec<_>>()).collect()
}

/// The parts on which every line lies, as few as that takes, each with another beside it.
fn needed(grid: &Grid, pieces: &[Piece<'_>]) -> Vec<Place> {
    let all = grid.places();
    if grid.is_one() {
        return all;
    }
    let points = along_strokes(pieces);
    let shown = |place: Place| {
        let area = grid.area(place);
        points.iter().enumerate().filter(|(_, point)| holds(area, **point)).map(|(index, _)| index).collect::<Vec<_>>()
    };
    let mut on: Vec<(Place, Vec<usize>)> = all.iter().map(|place| (*place, shown(*place))).collect();
    on.retain(|(_, shown)| !shown.is_empty());
    if !hangs_together(on.iter().map(|(place, _)| *place)) {
        return all;
    }
    let mut times = vec![0_usize; points.len()];
    on.iter().flat_map(|(_, shown)| shown).for_each(|index| times[*index] += 1);
    let mut least_first: Vec<usize> = (0..on.len()).collect();
    least_first.sort_by_key(|index| on[*index].1.len());
    let mut kept = vec![true; on.len()];
    for index in least_first {
        let elsewhere = on[index].1.iter().all(|point| times[*point] > 1);
        let others =
            || on.iter().enumerate().filter(|(other, _)| kept[*other] && *other != index).map(|(_, (place, _))| *place);
        if elsewhere && hangs_together(others()) {
            on[index].1.iter().for_each(|point| times[*point] -= 1);
            kept[index] = false;
        }
    }
    on.into_iter().zip(kept).filter(|(_, kept)| *kept).map(|((place, _), _)| place).collect()
}

/// Whether parts hang together edge on edge; none do not.
fn hangs_together(places: impl Iterator<Item = Place>) -> bool {
    let mut apart: Vec<Place> = places.collect();
    let Some(first) = apart.pop() else { return false };
    let mut joined = vec![first];
    while let Some(place) = joined.pop() {
        let near = |other: &Place| other[0].abs_diff(place[0]) + other[1].abs_diff(place[1]) == 1;
        let (beside, rest): (Vec<Place>, Vec<Place>) = apart.into_iter().partition(near);
        joined.extend(beside);
        apart = rest;
    }
    apart.is_empty()
}

/// A drawing being cut.
struct Cut<'a> {
    grid: &'a Grid,
    /// The parts that are printed, in the order of their letters.
    kept: &'a [Place],
    /// Where words stand on the whole drawing.
    words: Vec<Area>,
}

impl Cut<'_> {
    fn number(&self, place: Place) -> Option<usize> {
        self.kept.iter().position(|kept| *kept == place)
    }

    fn tile(&self, pieces: &[Piece<'_>], number: usize) -> Tile {
        let place = self.kept[number];
        let area = self.grid.area(place);
        let mut items: Vec<Item> = pieces.iter().flat_map(|piece| self.on_tile(piece, number)).collect();
        for axis in [0, 1] {
            if let Some(one_less) = place[axis].checked_sub(1) {
                let mut before = place;
                before[axis] = one_less;
                items.extend(self.join(before, place, axis));
            }
            let mut after = place;
            after[axis] += 1;
            items.extend(self.join(place, after, axis));
        }
        if !self.grid.is_one() {
            items.push(own_letters(&letters(number), area, &items));
        }
        let items = items.into_iter().map(|item| item.shifted(-area.left, -area.top)).collect();
        Tile { letters: letters(number), items, height: area.height() }
    }

    /// What of a piece stands on a part.
    fn on_tile(&self, piece: &Piece<'_>, number: usize) -> Vec<Item> {
        let area = self.grid.area(self.kept[number]);
        match piece {
            Piece::Stroke(item) => clipped(item, area),
            Piece::Cross(items) => {
                let whole = space(items).is_some_and(|space| inward(space, area) == [0.0, 0.0]);
                if whole { items.iter().map(|item| (*item).clone()).collect() } else { Vec::new() }
            }
            Piece::Words(items) => {
                let Some((_, [dx, dy])) =
                    space(items).and_then(|space| self.home(space)).filter(|(home, _)| *home == number)
                else {
                    return Vec::new();
                };
                items.iter().map(|item| (*item).clone().shifted(dx, dy)).collect()
            }
        }
    }

    /// The part that words stand on, and how far they are moved to lie within it: the one that they have to be moved least
    /// for, and of several the one whose own part of the drawing they lie on.
    fn home(&self, space: Area) -> Option<(usize, [f64; 2])> {
        let middle = at((space.left + space.right) / 2.0, (space.top + space.bottom) / 2.0);
        let moved =
            self.kept.iter().enumerate().map(|(number, place)| (number, inward(space, self.grid.area(*place)), *place));
        let best = moved.min_by(|(_, a, one), (_, b, other)| {
            let strange = |place: Place| !holds(self.grid.own(place), middle);
            a[0].hypot(a[1]).total_cmp(&b[0].hypot(b[1])).then(strange(*one).cmp(&strange(*other)))
        });
        best.map(|(number, by, _)| (number, by))
    }

    /// The crosses in the overlap of two parts, the same on both, and the letters of the two beside each; none where one of
    /// them is not printed.
    fn join(&self, before: Place, after: Place, axis: usize) -> Vec<Item> {
        let (Some(first), Some(second)) = (self.number(before), self.number(after)) else { return Vec::new() };
        let area = self.grid.area(after);
        let names = format!("{}{}", letters(first), letters(second));
        let place = |share: f64| match axis {
            0 => at(area.left + OVERLAP_MM / 2.0, area.top + share * area.height()),
            _ => at(area.left + share * area.width(), area.top + OVERLAP_MM / 2.0),
        };
        let both = |share: f64| [share, 1.0 - share].map(|share| join_cross(place(share), &names));
        let is_free = |share: &f64| {
            let crosses = both(*share).concat();
            let taken = space(&crosses.iter().take(3).collect::<Vec<_>>()).into_iter();
            let taken = taken.chain(space(&crosses.iter().skip(3).collect::<Vec<_>>()));
            let mut taken = taken.flat_map(|cross| self.words.iter().map(move |words| overlap(*words, cross)));
            !taken.any(|on_words| on_words)
        };
        let share = CROSSES_AT.into_iter().find(is_free).unwrap_or(CROSSES_AT[0]);
        both(share).concat()
    }
}

fn join_cross(middle: Point, names: &str) -> Vec<Item> {
    let Point { x, y } = middle;
    vec![
        Item::line(at(x - CROSS_MM, y), at(x + CROSS_MM, y), Pen::JoinCross),
        Item::line(at(x, y - CROSS_MM), at(x, y + CROSS_MM), Pen::JoinCross),
        Text::new(at(x, y + CROSS_MM + BODY * 0.75), BODY, names).centered().bold().into(),
    ]
}

/// A part's own letters, in a corner where nothing is drawn, or at least no words stand.
fn own_letters(letters: &str, area: Area, items: &[Item]) -> Item {
    let text = |at: Point| Text::new(at, LETTER, letters).bold();
    let (wide, inset) = (text(at(0.0, 0.0)).width_mm(), OVERLAP_MM + 2.0);
    let (left, top) = (area.left + inset, area.top + inset + LETTER * CAP_HEIGHT);
    let (right, bottom) = (area.right - inset - wide, area.bottom - inset);
    let corners = [top, bottom].into_iter().flat_map(|y| [left, right].map(|x| at(x, y)));
    // Then anywhere else, row by row.
    let share = |from: f64, to: f64, step: u32| from + (to - from) * f64::from(step) / f64::from(LETTER_STEPS);
    let anywhere = (0..=LETTER_STEPS)
        .flat_map(|row| (0..=LETTER_STEPS).map(move |column| (row, column)))
        .map(|(row, column)| at(share(left, right, column), share(top, bottom, row)));
    let places: Vec<Point> = corners.chain(anywhere).collect();
    let words: Vec<Area> = words(&pieces(items));
    let lines: Vec<Point> = along_strokes(&pieces(items));
    let taken = |place: &Point| Item::from(text(*place));
    let clear =
        |place: &&Point| space(&[&taken(place)]).is_some_and(|own| !words.iter().any(|other| overlap(*other, own)));
    let empty =
        |place: &&Point| space(&[&taken(place)]).is_some_and(|own| !lines.iter().any(|point| holds(own, *point)));
    let found = places.iter().find(|place| clear(place) && empty(place)).or_else(|| places.iter().find(clear));
    text(found.or(places.first()).copied().unwrap_or_default()).into()
}

#[cfg(test)]
mod tests;
