//! Lines across a plate, and the cells that lie between them.
//!
//! A line runs through every point of the loops and every place where two of them cross, and wherever the plate's way asks
//! for one. Between two lines the plate is a row of four-sided cells, whose ends share the points that lie on the lines.

/// An edge of a loop between two neighbouring lines: across on the near one and on the far one.
pub(super) type Edge = [f64; 2];

/// A cell between two neighbouring lines: its lower edge and its upper edge.
pub(super) type Cell = [Edge; 2];

/// The lines across a plate.
pub(super) struct Lines {
    /// Where they stand along.
    pub(super) at: Vec<f64>,
    /// The points on each, across, in order.
    pub(super) across: Vec<Vec<f64>>,
    /// The cells between each and the next.
    pub(super) cells: Vec<Vec<Cell>>,
    /// Places across closer than this are one.
    near: f64,
}

impl Lines {
    /// The lines through every point and every crossing of the loops, and at these places along.
    pub(super) fn new(loops: &[Vec<[f64; 2]>], cuts: &[f64]) -> Self {
        let along = || loops.iter().flatten().map(|point| point[0]);
        let (low, high) = along().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), x| (l.min(x), h.max(x)));
        let near = (high - low) * 1e-9;
        let mut at: Vec<f64> = along().chain(crossings(loops)).chain(cuts.iter().copied()).collect();
        at.retain(|at| (low..=high).contains(at));
        at.sort_by(f64::total_cmp);
        at.dedup_by(|next, before| *next - *before < near);
        let mut lines =
            Self { across: vec![Vec::new(); at.len()], cells: vec![Vec::new(); at.len().saturating_sub(1)], at, near };
        let mut edges: Vec<Vec<(usize, Edge)>> = vec![Vec::new(); lines.cells.len()];
        for (number, points) in loops.iter().enumerate() {
            for (index, a) in points.iter().enumerate() {
                lines.add_edge(number, [*a, points[(index + 1) % points.len()]], &mut edges);
            }
        }
        for across in &mut lines.across {
            across.sort_by(f64::total_cmp);
            across.dedup_by(|next, before| *next - *before < near);
        }
        for (index, edges) in edges.iter_mut().enumerate() {
            edges.sort_by(|(_, a), (_, b)| (a[0] + a[1]).total_cmp(&(b[0] + b[1])));
            lines.cells[index] = cells(edges, loops.len());
        }
        lines
    }

    /// The line that stands at a place along.
    fn line_at(&self, along: f64) -> usize {
        let after = self.at.partition_point(|at| *at < along - self.near);
        after.min(self.at.len().saturating_sub(1))
    }

    /// Cuts an edge of a loop at the lines.
    fn add_edge(&mut self, number: usize, [a, b]: [[f64; 2]; 2], edges: &mut [Vec<(usize, Edge)>]) {
        let (start, end) = if a[0] <= b[0] { (a, b) } else { (b, a) };
        let (first, last) = (self.line_at(start[0]), self.line_at(end[0]));
        let across = |line: usize| {
            let share = (self.at[line] - self.at[first]) / (self.at[last] - self.at[first]);
            if line == last { end[1] } else { start[1] + (end[1] - start[1]) * share }
        };
        let crossings: Vec<f64> =
            if first == last { vec![start[1], end[1]] } else { (first..=last).map(across).collect() };
        if first != last {
            for (offset, pair) in crossings.windows(2).enumerate() {
                edges[first + offset].push((number, [pair[0], pair[1]]));
            }
        }
        for (offset, place) in crossings.into_iter().enumerate() {
            self.across[if first == last { first } else { first + offset }].push(place);
        }
    }

    /// The number of a place on a line.
    pub(super) fn number(&self, line: usize, place: f64) -> usize {
        let across = &self.across[line];
        across.partition_point(|other| *other < place - self.near).min(across.len() - 1)
    }
}

/// The cells between edges in order across: within the first loop and outside the others.
fn cells(edges: &[(usize, Edge)], loops: usize) -> Vec<Cell> {
    let mut within = vec![false; loops];
    let mut cells = Vec::with_capacity(edges.len() / 2);
    let mut low = None;
    for (number, edge) in edges {
        if let Some(within) = within.get_mut(*number) {
            *within = !*within;
        }
        let is_plate = within.iter().enumerate().all(|(number, within)| *within == (number == 0));
        match (low, is_plate) {
            (None, true) => low = Some(*edge),
            (Some(from), false) => {
                cells.push([from, *edge]);
                low = None;
            }
            _ => {}
        }
    }
    cells
}

/// Where edges of different loops cross, along the bar.
fn crossings(loops: &[Vec<[f64; 2]>]) -> Vec<f64> {
    let edges = |points: &[[f64; 2]]| -> Vec<[[f64; 2]; 2]> {
        (0..points.len()).map(|index| [points[index], points[(index + 1) % points.len()]]).collect()
    };
    let mut places = Vec::new();
    for (number, first) in loops.iter().enumerate() {
        for second in loops.iter().skip(number + 1) {
            let second = edges(second);
            for a in edges(first) {
                places.extend(second.iter().filter_map(|b| crossing(a, *b)));
            }
        }
    }
    places
}

/// Where two edges cross, along the bar; none where they do not, or run side by side.
fn crossing([a, b]: [[f64; 2]; 2], [c, d]: [[f64; 2]; 2]) -> Option<f64> {
    let (along, across) = ([b[0] - a[0], d[0] - c[0]], [b[1] - a[1], d[1] - c[1]]);
    let turn = along[0] * across[1] - across[0] * along[1];
    if turn == 0.0 {
        return None;
    }
    let between = [c[0] - a[0], c[1] - a[1]];
    let first = (between[0] * across[1] - between[1] * along[1]) / turn;
    let second = (between[0] * across[0] - between[1] * along[0]) / turn;
    ((0.0..=1.0).contains(&first) && (0.0..=1.0).contains(&second)).then_some(a[0] + along[0] * first)
}
