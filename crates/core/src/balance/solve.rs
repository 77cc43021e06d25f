//! Finding the size at which a growing quantity reaches a target.

/// The largest factor that is tried: beyond it a wish is taken as impossible.
const MOST: f64 = 1e9;

/// The x above 0 at which the increasing `f` reaches `target`, to the last figures; none where it cannot.
///
/// `guess` is where to start looking. Bracketing, then the Illinois form of false position: exact in one step where
/// `f` is a straight line.
pub(crate) fn solve(f: impl Fn(f64) -> f64, target: f64, guess: f64) -> Option<f64> {
    if !target.is_finite() || target <= 0.0 {
        return None;
    }
    let miss = |x: f64| f(x) - target;
    let (low, high) = bracket(&miss, guess)?;
    false_position(&miss, (low, high), target)
}

/// The x between two places at which the increasing `f` reaches `target`, to the last figures; none where it lies beyond them.
pub(crate) fn solve_between(f: impl Fn(f64) -> f64, target: f64, (low, high): (f64, f64)) -> Option<f64> {
    let miss = |x: f64| f(x) - target;
    (miss(low) <= 0.0 && miss(high) >= 0.0).then(|| false_position(&miss, (low, high), target)).flatten()
}

fn false_position(miss: &impl Fn(f64) -> f64, (mut low, mut high): (f64, f64), target: f64) -> Option<f64> {
    let (mut at_low, mut at_high) = (miss(low), miss(high));
    let mut last_below = None;
    for _ in 0..200 {
        if at_high == at_low {
            break;
        }
        let x = (low * at_high - high * at_low) / (at_high - at_low);
        let at_x = miss(x);
        if at_x.abs() <= 1e-14 * target || (high - low).abs() <= 1e-15 * high.abs() {
            return Some(x);
        }
        // The end that stays twice running is pulled in: the value there is halved.
        let below = at_x < 0.0;
        let stays = if last_below == Some(below) { 0.5 } else { 1.0 };
        if below {
            (low, at_low, at_high) = (x, at_x, at_high * stays);
        } else {
            (high, at_high, at_low) = (x, at_x, at_low * stays);
        }
        last_below = Some(below);
    }
    let x = (low + high) / 2.0;
    (miss(x).abs() <= 1e-9 * target).then_some(x)
}

/// Two places between which the miss changes sign.
fn bracket(miss: &impl Fn(f64) -> f64, guess: f64) -> Option<(f64, f64)> {
    if !guess.is_finite() || guess <= 0.0 {
        return None;
    }
    let (mut low, mut high) = (guess, guess);
    while miss(low) > 0.0 {
        low /= 4.0;
        // At least as far: so small a guess divides to 0 and stays there.
        if low <= guess / MOST {
            return None;
        }
    }
    while miss(high) < 0.0 {
        high *= 4.0;
        if high >= guess * MOST {
            return None;
        }
    }
    Some((low, high))
}

#[cfg(test)]
mod tests {
    use super::solve;

    #[test]
    fn a_straight_line_is_met_to_the_last_figures() {
        let x = solve(|x| 3.0 * x, 12.3, 1.0);
        assert!(x.is_some_and(|x| (x - 4.1).abs() < 1e-14));
    }

    #[test]
    fn a_curve_is_met() {
        let x = solve(|x| x * x * x + 2.0 * x, 33.0, 1.0);
        assert!(x.is_some_and(|x| (x - 3.0).abs() < 1e-12));
    }

    #[test]
    fn what_cannot_be_reached_is_none() {
        assert_eq!(solve(|x| x / (1.0 + x), 2.0, 1.0), None);
        assert_eq!(solve(|x| 1.0 + x, 0.5, 1.0), None);
        assert_eq!(solve(|x| x, f64::NAN, 1.0), None);
        assert_eq!(solve(|x| x, -1.0, 1.0), None);
    }

    #[test]
    fn the_search_ends_whatever_the_guess() {
        for guess in [0.0, 5e-324, 1e-300, 1e300, f64::MAX, f64::INFINITY, f64::NAN] {
            assert_eq!(solve(|x| 1.0 + x / (1.0 + x), 0.5, guess), None, "{guess} from above");
            assert_eq!(solve(|x| x.min(1.0), 2.0, guess), None, "{guess} from below");
        }
    }
}
