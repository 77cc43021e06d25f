//! Edges cut wherever they cross or lie on each other.

use super::edge::{Edge, Place};
use super::nodes::NEAR;

/// Edges cut at every place where another one crosses them or ends on them.
pub(super) fn split(edges: &[Edge]) -> Vec<Edge> {
    let mut cuts: Vec<Vec<f64>> = vec![Vec::new(); edges.len()];
    let mut order: Vec<usize> = (0..edges.len()).collect();
    let left = |at: usize| edges[at][0][0].min(edges[at][1][0]);
    let right = |at: usize| edges[at][0][0].max(edges[at][1][0]);
    order.sort_by(|a, b| left(*a).total_cmp(&left(*b)));
    for (index, one) in order.iter().copied().enumerate() {
        for other in order.iter().skip(index + 1).copied() {
            if left(other) > right(one) + NEAR {
                break;
            }
            if is_level(&edges[one], &edges[other]) {
                let [own, others] = crossings(&edges[one], &edges[other]);
                cuts[one].extend(own);
                cuts[other].extend(others);
            }
        }
    }
    edges.iter().zip(cuts).flat_map(|(edge, cuts)| pieces(edge, cuts)).collect()
}

/// Whether two edges come to the same height.
fn is_level([a, b]: &Edge, [c, d]: &Edge) -> bool {
    a[1].min(b[1]) <= c[1].max(d[1]) + NEAR && c[1].min(d[1]) <= a[1].max(b[1]) + NEAR
}

/// The shares of two edges at which each is cut by the other.
fn crossings(one: &Edge, other: &Edge) -> [Vec<f64>; 2] {
    let (way, across) = (run(one), run(other));
    let turn = way[0] * across[1] - across[0] * way[1];
    let (long, wide) = (way[0].hypot(way[1]), across[0].hypot(across[1]));
    if turn.abs() <= 1e-9 * long * wide {
        return [touched(one, other), touched(other, one)];
    }
    let between = [other[0][0] - one[0][0], other[0][1] - one[0][1]];
    let own = (between[0] * across[1] - between[1] * across[0]) / turn;
    let others = (between[0] * way[1] - between[1] * way[0]) / turn;
    let within = |share: f64, length: f64| share > -NEAR / length && share < 1.0 + NEAR / length;
    if within(own, long) && within(others, wide) { [vec![own], vec![others]] } else { [Vec::new(), Vec::new()] }
}

/// The shares of an edge at which an edge that runs along it ends on it.
fn touched(edge: &Edge, other: &Edge) -> Vec<f64> {
    let way = run(edge);
    let square = way[0] * way[0] + way[1] * way[1];
    let share = |end: &Place| {
        let out = [end[0] - edge[0][0], end[1] - edge[0][1]];
        let share = (out[0] * way[0] + out[1] * way[1]) / square;
        let aside = (out[0] * way[1] - out[1] * way[0]).abs() / square.sqrt();
        (aside < NEAR && (0.0..=1.0).contains(&share)).then_some(share)
    };
    if square > 0.0 { other.iter().filter_map(share).collect() } else { Vec::new() }
}

fn run([a, b]: &Edge) -> Place {
    [b[0] - a[0], b[1] - a[1]]
}

/// An edge in pieces, cut at some shares of it.
fn pieces(edge: &Edge, mut cuts: Vec<f64>) -> Vec<Edge> {
    let [from, to] = *edge;
    let way = run(edge);
    let long = way[0].hypot(way[1]);
    cuts.retain(|share| share * long > NEAR && (1.0 - share) * long > NEAR);
    cuts.sort_by(f64::total_cmp);
    let place = |share: f64| [from[0] + way[0] * share, from[1] + way[1] * share];
    let mut all = Vec::with_capacity(cuts.len() + 1);
    let mut start = from;
    for share in cuts {
        let end = place(share);
        if (end[0] - start[0]).hypot(end[1] - start[1]) > NEAR {
            all.push([start, end]);
            start = end;
        }
    }
    all.push([start, to]);
    all
}
