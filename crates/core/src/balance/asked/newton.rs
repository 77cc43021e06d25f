//! Several sizes kept by as many parts: damped Newton steps from what the parts have.

use super::trial::Trial;

/// The most steps.
const STEPS: usize = 60;
/// How often a step is halved that makes nothing better.
const HALVINGS: usize = 12;
/// How far a part is moved to see what it changes, as a share of its size.
const PROBE: f64 = 1e-6;
/// How close every size is kept, as a share of it; of less than a millimetre, as one of that.
const CLOSE: f64 = 1e-10;
/// A change below this, in mm for each mm, is none.
const NO_CHANGE: f64 = 1e-7;

/// The parts' sizes at which all sizes are as asked.
///
/// # Errors
/// What the sizes come to at the nearest that was found, in mm; nothing where they cannot be measured.
pub(super) fn solve_several(trial: &Trial<'_, '_>) -> Result<Vec<f64>, Vec<f64>> {
    let goals: Vec<f64> = trial.wanted.iter().map(|wanted| wanted.goal).collect();
    let now: Vec<f64> = trial.keepers.iter().map(|keeper| keeper.now).collect();
    let miss = |values: &[f64]| -> f64 {
        values.iter().zip(&goals).map(|(value, goal)| ((value - goal) / goal.max(1.0)).abs()).fold(0.0, f64::max)
    };
    let mut best: Option<(f64, Vec<f64>)> = None;
    // From other sizes too: overall sizes have kinks and flat stretches.
    for start in [1.0, 1.5, 0.6, 2.5, 0.3] {
        let mut at: Vec<f64> = now.iter().map(|size| size * start).collect();
        let Some(mut values) = trial.values(&at) else { continue };
        for _ in 0..STEPS {
            if miss(&values) <= CLOSE {
                return Ok(at);
            }
            let Some((next, found)) = stepped(trial, &at, &values, &goals, &miss) else { break };
            (at, values) = (next, found);
        }
        let off = miss(&values);
        if best.as_ref().is_none_or(|(least, _)| off < *least) {
            best = Some((off, values));
        }
    }
    Err(best.map_or_else(Vec::new, |(_, values)| values))
}

/// Which of the parts change none of the sizes.
pub(super) fn without_effect(trial: &Trial<'_, '_>) -> Vec<bool> {
    let now: Vec<f64> = trial.keepers.iter().map(|keeper| keeper.now).collect();
    let base = trial.values(&now);
    let changes = |index: usize, by: f64| {
        let mut at = now.clone();
        at[index] *= by;
        let found = trial.values(&at).zip(base.as_ref());
        found.is_none_or(|(found, base)| found.iter().zip(base).any(|(found, base)| (found - base).abs() > NO_CHANGE))
    };
    (0..now.len()).map(|index| base.is_some() && ![0.5, 1.001, 2.0].into_iter().any(|by| changes(index, by))).collect()
}

/// One step nearer, halved until it is; none where no step is.
fn stepped(
    trial: &Trial<'_, '_>,
    at: &[f64],
    values: &[f64],
    goals: &[f64],
    miss: &impl Fn(&[f64]) -> f64,
) -> Option<(Vec<f64>, Vec<f64>)> {
    let step = step(trial, at, values, goals)?;
    let off = miss(values);
    let mut share = 1.0;
    for _ in 0..HALVINGS {
        let next: Vec<f64> = at.iter().zip(&step).map(|(at, step)| at + share * step).collect();
        if let Some(found) = trial.values(&next)
            && miss(&found) < off
        {
            return Some((next, found));
        }
        share /= 2.0;
    }
    None
}

/// Newton's step: what each part would have to change by, were everything straight.
fn step(trial: &Trial<'_, '_>, at: &[f64], values: &[f64], goals: &[f64]) -> Option<Vec<f64>> {
    let count = at.len();
    let mut rows: Vec<Vec<f64>> = values
        .iter()
        .zip(goals)
        .map(|(value, goal)| {
            let mut row = vec![0.0; count + 1];
            row[count] = goal - value;
            row
        })
        .collect();
    for part in 0..count {
        let by = at[part] * PROBE;
        let moved = |by: f64| {
            let mut moved = at.to_vec();
            moved[part] += by;
            trial.values(&moved)
        };
        let (after, before) = (moved(by)?, moved(-by)?);
        for ((row, here), (after, before)) in rows.iter_mut().zip(values).zip(after.iter().zip(&before)) {
            row[part] = slope([*before, *here, *after], by);
        }
    }
    eliminated(rows)
}

/// How a size rises at the middle of three places so far apart. Where a gap closes between them it turns round; the steeper side
/// is the one that has no turn in it.
fn slope([before, here, after]: [f64; 3], by: f64) -> f64 {
    let sides = [(here - before) / by, (after - here) / by];
    if before > here && after > here {
        return if sides[0].abs() > sides[1].abs() { sides[0] } else { sides[1] };
    }
    (after - before) / (2.0 * by)
}

/// The answer of linear equations, each a row with its right side last, by elimination with the largest pivot; none where
/// they have none or many.
fn eliminated(mut rows: Vec<Vec<f64>>) -> Option<Vec<f64>> {
    let count = rows.len();
    for column in 0..count {
        let pivot = (column..count).max_by(|a, b| rows[*a][column].abs().total_cmp(&rows[*b][column].abs()))?;
        rows.swap(column, pivot);
        if rows[column][column].abs() < NO_CHANGE {
            return None;
        }
        let own = rows[column].clone();
        for (index, row) in rows.iter_mut().enumerate().filter(|(index, _)| *index != column) {
            let _ = index;
            let factor = row[column] / own[column];
            row.iter_mut().zip(&own).for_each(|(value, own)| *value -= factor * own);
        }
    }
    Some((0..count).map(|row| rows[row][count] / rows[row][row]).collect())
}

#[cfg(test)]
mod tests {
    use super::{eliminated, slope};

    #[test]
    fn a_gap_that_closes_rises_as_steeply_on_either_side() {
        // |x - 1| at 0.9999 and at 1.0001, looked at 0.001 to both sides.
        for (here, steep) in [(0.9999_f64, -1.0), (1.0001, 1.0)] {
            let places = [here - 0.001, here, here + 0.001].map(|at| (at - 1.0).abs());
            assert!((slope(places, 0.001) - steep).abs() < 1e-9, "{here}");
        }
        assert!((slope([1.0, 2.0, 4.0], 1.0) - 1.5).abs() < 1e-12);
    }

    #[test]
    fn linear_equations_are_solved_and_those_without_one_answer_are_told() {
        let answer = eliminated(vec![vec![0.0, 2.0, 4.0], vec![3.0, 1.0, 5.0]]);
        assert_eq!(answer, Some(vec![1.0, 2.0]));
        assert_eq!(eliminated(vec![vec![1.0, 2.0, 3.0], vec![2.0, 4.0, 6.0]]), None);
    }
}
