//! Where along a bar a temperature is met, and which temperatures are written there.

/// Places in mm where a temperature is met. `along` are places in mm and °C.
pub(super) fn met(along: &[(f64, f64)], celsius: f64) -> Vec<f64> {
    let crossing = |pair: &[(f64, f64)]| match pair {
        [(x0, a), (x1, b)] if (*a < celsius) != (*b < celsius) => Some(x0 + (x1 - x0) * (celsius - a) / (b - a)),
        _ => None,
    };
    along.windows(2).filter_map(crossing).collect()
}

/// The hottest place in mm and its heat in °C.
pub(super) fn hottest(along: &[(f64, f64)]) -> Option<(f64, f64)> {
    along.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1))
}

/// The coldest heat in °C between two places in mm.
pub(super) fn coldest_between(along: &[(f64, f64)], [from, to]: [f64; 2]) -> Option<f64> {
    along.iter().filter(|(x, _)| *x >= from && *x <= to).map(|cell| cell.1).min_by(f64::total_cmp)
}

/// The temperatures worth a line, the weightiest first: where work stops, then every second step of the scale from the top.
pub(super) fn levels(stop: f64, step: f64, high: f64) -> Vec<f64> {
    let count = (high / step / 2.0) as usize;
    let others = (1..=count).rev().map(|number| number as f64 * step * 2.0);
    std::iter::once(stop).chain(others.filter(|level| (level - stop).abs() >= step / 2.0)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_heat_is_met_on_both_sides_of_the_hot_zone() {
        let along = [(0.0, 20.0), (10.0, 1020.0), (20.0, 1020.0), (30.0, 20.0)];
        assert_eq!(met(&along, 520.0), [5.0, 25.0]);
        assert!(met(&along, 1200.0).is_empty() && met(&[], 500.0).is_empty());
        assert_eq!(coldest_between(&along, [5.0, 25.0]), Some(1020.0));
    }

    #[test]
    fn the_stop_comes_first_and_crowds_no_other() {
        assert_eq!(levels(850.0, 100.0, 1200.0), [850.0, 1200.0, 1000.0, 800.0, 600.0, 400.0, 200.0]);
    }
}
