//! Moves labels apart that would overlap, each no farther from its mark than it must.

/// Places for labels that want to stand at `wanted` (in order), with `apart` between the middles of neighbours, the first
/// no lower than `low` and the last no higher than `high`. None where there is no room for them all.
///
/// The sum of the squares of the shifts is the least possible: neighbours that push each other share one shift
/// (pooling of neighbours that break the order, as in monotone regression).
pub(super) fn spread(wanted: &[f64], apart: &[f64], low: f64, high: f64) -> Option<Vec<f64>> {
    let offsets: Vec<f64> = std::iter::once(0.0)
        .chain(apart.iter().scan(0.0, |sum, step| {
            *sum += step;
            Some(*sum)
        }))
        .take(wanted.len())
        .collect();
    let highest = high - offsets.last().copied().unwrap_or(0.0);
    if highest < low {
        return None;
    }
    let mut pools: Vec<(f64, usize)> = Vec::new();
    for (want, offset) in wanted.iter().zip(&offsets) {
        pools.push((want - offset, 1));
        pool_while_out_of_order(&mut pools);
    }
    let starts = pools.iter().flat_map(|(mean, count)| std::iter::repeat_n(mean.clamp(low, highest), *count));
    Some(starts.zip(&offsets).map(|(start, offset)| start + offset).collect())
}

/// Joins the last pool to the one before it as long as it stands lower.
fn pool_while_out_of_order(pools: &mut Vec<(f64, usize)>) {
    while let [.., (before, many), (last, few)] = pools[..] {
        if before <= last {
            return;
        }
        let mean = (before * many as f64 + last * few as f64) / (many + few) as f64;
        pools.truncate(pools.len() - 2);
        pools.push((mean, many + few));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(got: Option<Vec<f64>>, want: &[f64]) {
        let got = got.unwrap_or_default();
        assert_eq!(got.len(), want.len(), "{got:?}");
        assert!(got.iter().zip(want).all(|(a, b)| (a - b).abs() < 1e-9), "{got:?} is not {want:?}");
    }

    #[test]
    fn labels_with_room_stay_at_their_marks() {
        close(spread(&[0.0, 20.0, 50.0], &[10.0, 10.0], -5.0, 60.0), &[0.0, 20.0, 50.0]);
    }

    #[test]
    fn two_that_overlap_move_equally() {
        close(spread(&[20.0, 22.0], &[10.0], 0.0, 60.0), &[16.0, 26.0]);
    }

    #[test]
    fn the_edge_pushes_back() {
        close(spread(&[0.0, 1.0, 2.0], &[10.0, 10.0], 0.0, 60.0), &[0.0, 10.0, 20.0]);
        close(spread(&[58.0, 59.0, 60.0], &[10.0, 10.0], 0.0, 60.0), &[40.0, 50.0, 60.0]);
    }

    #[test]
    fn too_many_are_refused() {
        assert_eq!(spread(&[0.0, 1.0, 2.0], &[10.0, 10.0], 0.0, 19.0), None);
        close(spread(&[], &[], 0.0, 10.0), &[]);
    }
}
