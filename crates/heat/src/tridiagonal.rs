//! Equations in which every unknown knows only its two neighbors.

/// Rows `below x[i-1] + diagonal x[i] + above x[i+1] = right`, reused from step to step.
#[derive(Default)]
pub(super) struct Rows {
    pub(super) below: Vec<f64>,
    pub(super) diagonal: Vec<f64>,
    pub(super) above: Vec<f64>,
    pub(super) right: Vec<f64>,
}

impl Rows {
    pub(super) fn of(count: usize) -> Self {
        let zeros = || vec![0.0; count];
        Self { below: zeros(), diagonal: zeros(), above: zeros(), right: zeros() }
    }

    /// Solves in place by elimination without pivots, which rows with a heavy diagonal need not; `right` holds the answer.
    pub(super) fn solve(&mut self) {
        let mut last = (0.0, 0.0);
        let rows = self.below.iter().zip(&self.diagonal).zip(self.above.iter_mut().zip(&mut self.right));
        for ((below, diagonal), (above, right)) in rows {
            let pivot = 1.0 / (diagonal - below * last.0);
            *above *= pivot;
            *right = (*right - below * last.1) * pivot;
            last = (*above, *right);
        }
        let mut next = 0.0;
        for (above, right) in self.above.iter().zip(&mut self.right).rev() {
            *right -= above * next;
            next = *right;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_rows_are_solved() {
        let mut rows = Rows {
            below: vec![0.0, -1.0, -1.0],
            diagonal: vec![2.0, 2.0, 2.0],
            above: vec![-1.0, -1.0, 0.0],
            right: vec![0.0, 0.0, 4.0],
        };
        rows.solve();
        for (found, wanted) in rows.right.iter().zip([1.0, 2.0, 3.0]) {
            assert!((found - wanted).abs() < 1e-12);
        }
    }
}
