//! One size kept by one part: every size of the part that makes it, and of those the nearest to what it has.

use super::trial::Trial;
use crate::plan::Gives;

/// Places that are looked at from nothing to the most.
const PLACES: usize = 96;
/// How often a range is narrowed.
const NARROWINGS: usize = 120;
/// How close a size is kept, as a share of it.
const CLOSE: f64 = 1e-10;
/// A gap this small is closed, in mm: where a size is to be nothing it turns round there, and is met by no change of its sign.
const CLOSED: f64 = 1e-6;
/// A change below this many mm is none.
const NO_CHANGE: f64 = 1e-7;
/// The shortest that a part is made to keep a size, in mm: what is shorter is no part (common practice, no source).
const SHORTEST: f64 = 1.0;
/// The least and the most that a size other than a length is multiplied with.
const FACTORS: [f64; 2] = [0.02, 50.0];

/// What was found.
pub(super) enum Found {
    /// The part's size that keeps it.
    At(f64),
    /// No size of the part makes it; with the nearest that can be had, in mm.
    Nearest(f64),
    /// The part does not change it.
    NoEffect,
    /// It cannot be measured whatever the part has.
    Nothing,
}

/// Finds the size of the only part at which the only size is `goal` mm.
pub(super) fn solve_one(trial: &Trial<'_, '_>, goal: f64) -> Found {
    let Some(keeper) = trial.keepers.first() else { return Found::Nothing };
    let value = |size: f64| trial.values(&[size]).and_then(|values| values.first().copied());
    let off = |size: f64| value(size).map(|value| value - goal);
    let places: Vec<(f64, f64)> =
        places(keeper.gives, keeper.now, goal + trial.reach()).filter_map(|at| Some((at, off(at)?))).collect();
    let Some(first) = places.first().copied() else { return Found::Nothing };
    let (low, high) = places.iter().fold((first.1, first.1), |(low, high), (_, off)| (low.min(*off), high.max(*off)));
    if high - low < NO_CHANGE {
        return if off(keeper.now).is_some_and(|off| off.abs() < NO_CHANGE) {
            Found::At(keeper.now)
        } else {
            Found::NoEffect
        };
    }
    let turned = turning_places(&off, &places);
    let mut all: Vec<(f64, f64)> = places.into_iter().chain(turned).collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let crossings = all.windows(2).filter(|pair| (pair[0].1 <= 0.0) != (pair[1].1 <= 0.0) || pair[1].1 == 0.0);
    let roots = crossings.filter_map(|pair| narrowed(&off, pair[0], pair[1]));
    let closed = all.iter().copied().filter(|(_, off)| goal < CLOSED && off.abs() <= CLOSED);
    let close = |(_, off): &(f64, f64)| off.abs() <= if goal < CLOSED { CLOSED } else { CLOSE * goal };
    let best =
        roots.chain(closed).filter(close).min_by(|a, b| (a.0 - keeper.now).abs().total_cmp(&(b.0 - keeper.now).abs()));
    let nearest = all.iter().map(|(_, off)| *off).min_by(|a, b| a.abs().total_cmp(&b.abs())).unwrap_or(first.1);
    best.map_or(Found::Nearest(goal + nearest), |(at, _)| Found::At(at))
}

/// The places that are looked at: of a length from the shortest to where nothing more can come of it, of any other size from a small
/// share of it to many times as much. What it has now is one of them.
fn places(gives: Gives, now: f64, most: f64) -> impl Iterator<Item = f64> {
    let place = move |step: usize| {
        let share = step as f64 / PLACES as f64;
        match gives {
            // Closer together toward nothing.
            Gives::Length => SHORTEST.min(now) + (2.0 * most + now) * share * share,
            _ => now * FACTORS[0] * (FACTORS[1] / FACTORS[0]).powf(share),
        }
    };
    let mut all: Vec<f64> = (0..=PLACES).map(place).chain([now]).collect();
    all.sort_by(f64::total_cmp);
    all.into_iter()
}

/// Where the size turns round between the places: it may be reached there and nowhere else.
fn turning_places(off: &impl Fn(f64) -> Option<f64>, places: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let turns = |three: &&[(f64, f64)]| {
        let [before, here, after] = [three[0].1, three[1].1, three[2].1];
        // Only toward what is asked is it of use.
        (here > 0.0 && here <= before && here <= after) || (here < 0.0 && here >= before && here >= after)
    };
    places
        .windows(3)
        .filter(turns)
        .filter_map(|three| turned(off, [three[0].0, three[2].0], three[1].1 > 0.0))
        .collect()
}

/// The place between two where the size is least, or most where `is_over` is not so.
fn turned(off: &impl Fn(f64) -> Option<f64>, [mut low, mut high]: [f64; 2], is_over: bool) -> Option<(f64, f64)> {
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    let height = |at: f64| off(at).map(|off| if is_over { off } else { -off });
    let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_left, mut at_right) = (height(left)?, height(right)?);
    for _ in 0..NARROWINGS {
        // Beyond what is asked there are two crossings to be found.
        if at_left.min(at_right) < 0.0 || high - low < 1e-9 * high {
            break;
        }
        if at_left < at_right {
            (high, right, at_right) = (right, left, at_left);
            left = high - GOLDEN * (high - low);
            at_left = height(left)?;
        } else {
            (low, left, at_left) = (left, right, at_right);
            right = low + GOLDEN * (high - low);
            at_right = height(right)?;
        }
    }
    let at = if at_left < at_right { left } else { right };
    Some((at, off(at)?))
}

/// The place between two of different signs where the size is as asked, to the last figures: the Illinois form of false position.
fn narrowed(off: &impl Fn(f64) -> Option<f64>, low: (f64, f64), high: (f64, f64)) -> Option<(f64, f64)> {
    if let Some(exact) = [low, high].into_iter().find(|end| end.1 == 0.0) {
        return Some(exact);
    }
    let ((mut a, mut at_a), (mut b, mut at_b)) = (low, high);
    let mut best = if at_a.abs() < at_b.abs() { low } else { high };
    for step in 0..NARROWINGS {
        // Every third step halves, so that no end stays for long.
        let x = if step % 3 == 2 { (a + b) / 2.0 } else { (a * at_b - b * at_a) / (at_b - at_a) };
        let at_x = off(x)?;
        if at_x.abs() <= best.1.abs() {
            best = (x, at_x);
        }
        if at_x == 0.0 || (b - a).abs() <= 1e-15 * b.abs() {
            break;
        }
        if (at_x < 0.0) == (at_a < 0.0) {
            (a, at_a) = (x, at_x);
        } else {
            (b, at_b) = (x, at_x);
        }
    }
    Some(best)
}
