//! The revised simplex method for a covering problem to which columns are added: the inverse of the basis is kept whole.

/// A column of the linear program.
#[derive(Clone, Debug)]
pub(super) struct Column {
    pub(super) cost: f64,
    /// Rows and what stands in them.
    pub(super) entries: Vec<(usize, f64)>,
    /// Place in the pool of patterns; none for a slack or what stands in for a missing piece.
    pub(super) pattern: Option<usize>,
    /// Whether it stands in for pieces that nothing cuts yet.
    pub(super) stand_in: bool,
}

/// A basis, its inverse and its solution.
#[derive(Debug)]
pub(super) struct Simplex {
    rows: usize,
    right: Vec<f64>,
    basis: Vec<Column>,
    inverse: Vec<f64>,
    solution: Vec<f64>,
    pivots: usize,
}

/// Below this a number is 0.
const ZERO: f64 = 1e-9;
/// After so many pivots the inverse is worked out afresh.
const REFRESH: usize = 120;

impl Simplex {
    /// Starts from columns each of which stands in one row alone, with a number above 0 there.
    pub(super) fn new(basis: Vec<Column>, right: Vec<f64>) -> Self {
        let rows = right.len();
        let mut inverse = vec![0.0; rows * rows];
        let mut solution = vec![0.0; rows];
        for (row, column) in basis.iter().enumerate() {
            let pivot = column.entries.first().map_or(1.0, |entry| entry.1);
            inverse[row * rows + row] = 1.0 / pivot;
            solution[row] = right[row] / pivot;
        }
        Self { rows, right, basis, inverse, solution, pivots: 0 }
    }

    /// The price of each row.
    pub(super) fn duals(&self) -> Vec<f64> {
        let mut duals = vec![0.0; self.rows];
        for (column, inverse) in self.basis.iter().zip(self.inverse.chunks_exact(self.rows)) {
            if column.cost != 0.0 {
                for (dual, cell) in duals.iter_mut().zip(inverse) {
                    *dual += column.cost * cell;
                }
            }
        }
        duals
    }

    /// The columns of the basis, and how often each is taken.
    pub(super) fn solution(&self) -> impl Iterator<Item = (&Column, f64)> {
        self.basis.iter().zip(self.solution.iter().map(|value| value.max(0.0)))
    }

    pub(super) fn value(&self) -> f64 {
        self.solution().map(|(column, times)| column.cost * times).sum()
    }

    /// Takes a column into the basis; `false` where no row holds it back, or it changes nothing that can be reckoned with.
    pub(super) fn enter(&mut self, column: Column) -> bool {
        let direction = self.direction(&column);
        let Some(leaving) = self.leaving(&direction) else { return false };
        let step = (self.solution[leaving] / direction[leaving]).max(0.0);
        for (value, change) in self.solution.iter_mut().zip(&direction) {
            *value -= step * change;
        }
        self.solution[leaving] = step;
        self.pivot(leaving, &direction);
        self.basis[leaving] = column;
        self.pivots += 1;
        if self.pivots.is_multiple_of(REFRESH) {
            self.refresh();
        }
        true
    }

    fn direction(&self, column: &Column) -> Vec<f64> {
        let cells = self.inverse.chunks_exact(self.rows);
        cells.map(|row| column.entries.iter().map(|&(at, value)| row[at] * value).sum()).collect()
    }

    /// The row that comes to 0 first; of equal ones that with the largest pivot.
    fn leaving(&self, direction: &[f64]) -> Option<usize> {
        let mut best: Option<(usize, f64)> = None;
        for (row, &pivot) in direction.iter().enumerate().filter(|(_, pivot)| **pivot > 1e-7) {
            let ratio = self.solution[row].max(0.0) / pivot;
            let better = best.is_none_or(|(known, least)| {
                ratio < least - ZERO || (ratio < least + ZERO && pivot > direction[known])
            });
            if better {
                best = Some((row, ratio));
            }
        }
        best.map(|(row, _)| row)
    }

    fn pivot(&mut self, leaving: usize, direction: &[f64]) {
        let rows = self.rows;
        let pivot = direction[leaving];
        let row: Vec<f64> =
            self.inverse[leaving * rows..(leaving + 1) * rows].iter().map(|cell| cell / pivot).collect();
        for (at, cells) in self.inverse.chunks_exact_mut(rows).enumerate() {
            if at == leaving {
                cells.copy_from_slice(&row);
            } else if direction[at].abs() > 1e-13 {
                for (cell, new) in cells.iter_mut().zip(&row) {
                    *cell -= direction[at] * new;
                }
            }
        }
    }

    /// Works the inverse out of the basis again, so that small errors do not add up.
    fn refresh(&mut self) {
        let rows = self.rows;
        let mut matrix = vec![0.0; rows * rows];
        for (at, column) in self.basis.iter().enumerate() {
            for &(row, value) in &column.entries {
                matrix[row * rows + at] = value;
            }
        }
        if let Some(inverse) = inverted(matrix, rows) {
            self.inverse = inverse;
            let cells = self.inverse.chunks_exact(rows);
            self.solution =
                cells.map(|row| row.iter().zip(&self.right).map(|(cell, right)| cell * right).sum()).collect();
        }
    }
}

/// Gauss and Jordan's way, with the largest pivot of each column.
fn inverted(mut matrix: Vec<f64>, rows: usize) -> Option<Vec<f64>> {
    let mut inverse = vec![0.0; rows * rows];
    for row in 0..rows {
        inverse[row * rows + row] = 1.0;
    }
    for column in 0..rows {
        let largest = (column..rows)
            .max_by(|&a, &b| matrix[a * rows + column].abs().total_cmp(&matrix[b * rows + column].abs()))?;
        let pivot = matrix[largest * rows + column];
        if pivot.abs() < 1e-12 {
            return None;
        }
        for cell in 0..rows {
            matrix.swap(column * rows + cell, largest * rows + cell);
            inverse.swap(column * rows + cell, largest * rows + cell);
        }
        for cell in 0..rows {
            matrix[column * rows + cell] /= pivot;
            inverse[column * rows + cell] /= pivot;
        }
        let (top, top_inverse) =
            (matrix[column * rows..(column + 1) * rows].to_vec(), inverse[column * rows..(column + 1) * rows].to_vec());
        for row in (0..rows).filter(|&row| row != column) {
            let factor = matrix[row * rows + column];
            if factor != 0.0 {
                for cell in 0..rows {
                    matrix[row * rows + cell] -= factor * top[cell];
                    inverse[row * rows + cell] -= factor * top_inverse[cell];
                }
            }
        }
    }
    Some(inverse)
}
