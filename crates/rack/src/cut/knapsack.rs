//! The most valuable cuts of one bar, in whole numbers: by branch and bound on value for width, as S. Martello and P. Toth,
//! *Knapsack Problems*, 1990, chapter 3, have it; where that takes too long, by a table over the room.

/// A piece that may be cut.
#[derive(Clone, Copy, Debug)]
pub(super) struct Thing {
    /// The item that it is.
    pub(super) item: usize,
    pub(super) width: i64,
    /// More than 0.
    pub(super) value: i64,
    /// The most of it, at least 1.
    pub(super) most: u64,
}

/// The best cuts that were found, and what none can be worth more than.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Best {
    pub(super) value: i64,
    /// Never below the best there is; the value itself where that is proven.
    pub(super) at_most: i64,
    /// Items and how many.
    pub(super) cuts: Vec<(usize, u64)>,
}

/// Steps of branch and bound before it is given up.
const STEPS: usize = 20_000;
/// The longest row of the table, and the most cells that it may have.
const LONGEST_ROW: i64 = 12_000;
const MOST_CELLS: usize = 20_000_000;

/// How long is looked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Care {
    /// Branch and bound alone; what is not proven has the bound of the best value for width.
    Quick,
    /// The table too, where branch and bound does not come to its end.
    Thorough,
}

/// The best cuts for this room.
pub(super) fn best(mut things: Vec<Thing>, room: i64, care: Care) -> Best {
    things.retain(|thing| thing.width <= room && thing.value > 0);
    things.sort_by(|a, b| {
        let (left, right) = (i128::from(a.value) * i128::from(b.width), i128::from(b.value) * i128::from(a.width));
        right.cmp(&left).then(a.width.cmp(&b.width))
    });
    let mut search = Search::new(&things);
    search.go(0, room, 0);
    let (value, counts, complete) = (search.best, search.best_counts, search.left > 0);
    let cuts = |counts: &[u64]| {
        let taken = things.iter().zip(counts).filter(|(_, count)| **count > 0);
        taken.map(|(thing, count)| (thing.item, *count)).collect()
    };
    if complete {
        return Best { value, at_most: value, cuts: cuts(&counts) };
    }
    if care == Care::Quick {
        return Best { value, at_most: by_the_rate(&things, room).max(value), cuts: cuts(&counts) };
    }
    let (unit, grid_room) = grid(&things, room);
    let (table_value, table_counts) = table(&things, unit, grid_room);
    let width: i64 =
        things.iter().zip(&table_counts).map(|(t, count)| t.width * i64::try_from(*count).unwrap_or(0)).sum();
    if width <= room && table_value >= value {
        Best { value: table_value, at_most: table_value, cuts: cuts(&table_counts) }
    } else {
        Best { value, at_most: table_value.max(value), cuts: cuts(&counts) }
    }
}

/// What the room would be worth if all of it could be cut at the best value for width.
fn by_the_rate(things: &[Thing], room: i64) -> i64 {
    let best = things.first().map_or(0, |thing| i128::from(room) * i128::from(thing.value) / i128::from(thing.width));
    i64::try_from(best).unwrap_or(i64::MAX)
}

struct Search<'a> {
    things: &'a [Thing],
    /// The narrowest of this and all later things.
    narrowest: Vec<i64>,
    counts: Vec<u64>,
    best: i64,
    best_counts: Vec<u64>,
    left: usize,
}

impl<'a> Search<'a> {
    fn new(things: &'a [Thing]) -> Self {
        let mut narrowest = vec![i64::MAX; things.len() + 1];
        for (at, thing) in things.iter().enumerate().rev() {
            narrowest[at] = narrowest[at + 1].min(thing.width);
        }
        let counts = vec![0; things.len()];
        Self { things, narrowest, best_counts: counts.clone(), counts, best: 0, left: STEPS }
    }

    /// Whether what is left of the room can still bring more than the best, at the rate of the thing `at`.
    fn promises(&self, at: usize, room: i64, value: i64) -> bool {
        let Some(thing) = self.things.get(at) else { return false };
        // Taken a little high, so that no rounding hides a better one.
        let more = room as f64 * (thing.value as f64 / thing.width as f64) * (1.0 + 1e-12);
        value as f64 + more >= self.best as f64 + 1.0 - 1e-9
    }

    fn go(&mut self, at: usize, room: i64, value: i64) {
        if value > self.best {
            self.best = value;
            self.best_counts.copy_from_slice(&self.counts);
        }
        if self.left == 0 || room < self.narrowest[at] || !self.promises(at, room, value) {
            return;
        }
        self.left -= 1;
        let thing = self.things[at];
        let most = u64::try_from(room / thing.width).unwrap_or(0).min(thing.most);
        for count in (0..=most).rev() {
            let taken = i64::try_from(count).unwrap_or(0);
            let (rest, worth) = (room - taken * thing.width, value + taken * thing.value);
            if count < most && !self.promises(at + 1, rest, worth) {
                break;
            }
            self.counts[at] = count;
            self.go(at + 1, rest, worth);
            if self.left == 0 {
                break;
            }
        }
        self.counts[at] = 0;
    }
}

/// The step of the table, and the room in such steps. Widths are rounded down to it, so that what fits the room fits the table:
/// its best is never less than the true one.
fn grid(things: &[Thing], room: i64) -> (i64, i64) {
    let divides = things.iter().fold(0, |all, thing| super::model::gcd(all, thing.width)).max(1);
    let copies: usize = things.iter().map(|thing| parts(thing, room).len()).sum();
    let row = LONGEST_ROW.min(i64::try_from(MOST_CELLS / copies.max(1)).unwrap_or(LONGEST_ROW)).max(1);
    let unit = if room / divides <= row { divides } else { room / row + 1 };
    (unit, room / unit)
}

/// A thing's copies in lots of 1, 2, 4 …, with which any number up to its most can be made.
fn parts(thing: &Thing, room: i64) -> Vec<u64> {
    let mut rest = thing.most.min(u64::try_from(room / thing.width.max(1)).unwrap_or(0));
    let mut lot = 1;
    let mut parts = Vec::new();
    while rest > 0 {
        let take = lot.min(rest);
        parts.push(take);
        rest -= take;
        lot *= 2;
    }
    parts
}

fn table(things: &[Thing], unit: i64, room: i64) -> (i64, Vec<u64>) {
    let room = usize::try_from(room).unwrap_or(0);
    let lots: Vec<(usize, u64)> = things
        .iter()
        .enumerate()
        .flat_map(|(at, thing)| {
            parts(thing, i64::try_from(room).unwrap_or(0) * unit + unit - 1).into_iter().map(move |lot| (at, lot))
        })
        .collect();
    let mut worth = vec![0_i64; room + 1];
    let mut taken = vec![false; lots.len() * (room + 1)];
    for (row, &(at, lot)) in lots.iter().enumerate() {
        let lot = i64::try_from(lot).unwrap_or(0);
        let width = usize::try_from(things[at].width / unit * lot).unwrap_or(usize::MAX);
        let value = things[at].value * lot;
        let marks = &mut taken[row * (room + 1)..(row + 1) * (room + 1)];
        for cell in (width..=room).rev() {
            let with = worth[cell - width] + value;
            if with > worth[cell] {
                worth[cell] = with;
                marks[cell] = true;
            }
        }
    }
    let mut counts = vec![0; things.len()];
    let mut cell = room;
    for (row, &(at, lot)) in lots.iter().enumerate().rev() {
        if taken[row * (room + 1) + cell] {
            counts[at] += lot;
            cell -= usize::try_from(things[at].width / unit * i64::try_from(lot).unwrap_or(0)).unwrap_or(0);
        }
    }
    (worth[room], counts)
}

#[cfg(test)]
mod tests {
    use super::{Care, Thing, best, grid, table};

    fn things(seed: u64) -> (Vec<Thing>, i64) {
        let mut state = seed;
        let mut next = |most: u64| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) % most + 1
        };
        let many = next(5) as usize;
        let things =
            (0..many).map(|item| Thing { item, width: next(30) as i64, value: next(50) as i64, most: next(4) });
        (things.collect(), next(80) as i64)
    }

    /// Every combination tried.
    fn slow(things: &[Thing], room: i64) -> i64 {
        let Some((thing, rest)) = things.split_first() else { return 0 };
        let counts = (0..=thing.most as i64).filter(|count| count * thing.width <= room);
        counts.map(|count| count * thing.value + slow(rest, room - count * thing.width)).max().unwrap_or(0)
    }

    #[test]
    fn the_best_is_that_of_trying_every_combination() {
        for seed in 0..500 {
            let (things, room) = things(seed);
            let found = best(things.clone(), room, Care::Thorough);
            assert_eq!(found.value, slow(&things, room), "{things:?} in {room}");
            assert_eq!(found.at_most, found.value);
            let width: i64 = found.cuts.iter().map(|(item, count)| things[*item].width * *count as i64).sum();
            assert!(width <= room);
        }
    }

    #[test]
    fn the_table_finds_the_same_and_on_a_coarse_grid_never_less() {
        for seed in 0..500 {
            let (things, room) = things(seed);
            let right = slow(&things, room);
            let (unit, cells) = grid(&things, room);
            assert_eq!(table(&things, unit, cells).0, right);
            assert!(table(&things, 3, room / 3).0 >= right);
        }
    }
}
