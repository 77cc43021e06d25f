//! Edges joined end to end: the loops of an outline, and lines between.

use super::edge::{Edge, Place, bounds};
use super::nodes::Nodes;
use std::collections::HashSet;

/// A loop round less than this, in mm², is not seen.
const UNSEEN_MM2: f64 = 1e-3;

/// The pieces of edges that have metal on one side only, as closed loops; the largest first. Metal is where the whole edges run
/// round a place.
pub(super) fn loops(pieces: &[Edge], edges: &[Edge]) -> Vec<Vec<Place>> {
    let Some([low, high]) = bounds(edges.iter().flatten()) else { return Vec::new() };
    let aside = 1e-6 * (high[0] - low[0]).max(high[1] - low[1]).max(1.0);
    let net = Net::new(pieces);
    let mut outer: Vec<usize> = Vec::new();
    for chain in net.chains() {
        let longest = chain.iter().copied().max_by(|a, b| net.length(*a).total_cmp(&net.length(*b)));
        if longest.is_some_and(|piece| net.is_outside(piece, aside, edges)) {
            outer.extend(chain);
        }
    }
    let mut loops = net.closed(&outer);
    let sized = |points: &Vec<Place>| twice_area(points).abs() / 2.0;
    loops.retain(|points| points.len() > 2 && sized(points) > UNSEEN_MM2);
    loops.sort_by(|a, b| twice_area(b).total_cmp(&twice_area(a)));
    loops
}

/// Edges as open lines, each as long as it goes on without a fork.
pub(super) fn runs(edges: &[Edge]) -> Vec<Vec<Place>> {
    let net = Net::new(edges);
    // An arris has no direction: each piece is turned to go on from the one before.
    let mut lines = Vec::new();
    let mut left: Vec<bool> = vec![true; net.pieces.len()];
    let ends = net.ends_first();
    for start in ends {
        if !left[start] {
            continue;
        }
        left[start] = false;
        let [from, to] = net.pieces[start];
        let from_end = net.degree(from) == 1 || net.degree(to) != 1;
        let (mut line, mut at) = if from_end { (vec![from, to], to) } else { (vec![to, from], from) };
        while net.degree(at) == 2
            && let Some(next) = net.at_node(at).find(|piece| left[*piece])
        {
            left[next] = false;
            let [a, b] = net.pieces[next];
            at = if a == at { b } else { a };
            line.push(at);
        }
        lines.push(line.into_iter().map(|node| net.nodes.places[node]).collect());
    }
    lines
}

fn twice_area(points: &[Place]) -> f64 {
    let next = points.iter().cycle().skip(1);
    points.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum()
}

/// Pieces between numbered places.
struct Net {
    nodes: Nodes,
    pieces: Vec<[usize; 2]>,
    /// The pieces that begin or end at each place.
    at: Vec<Vec<usize>>,
}

impl Net {
    /// Each piece once.
    fn new(edges: &[Edge]) -> Self {
        let mut nodes = Nodes::default();
        let mut known = HashSet::new();
        let mut pieces = Vec::with_capacity(edges.len());
        for [from, to] in edges {
            let piece = [nodes.number(*from), nodes.number(*to)];
            if piece[0] != piece[1] && known.insert(piece) {
                pieces.push(piece);
            }
        }
        let mut at = vec![Vec::new(); nodes.places.len()];
        for (number, piece) in pieces.iter().enumerate() {
            piece.iter().for_each(|node| at[*node].push(number));
        }
        Self { nodes, pieces, at }
    }

    fn degree(&self, node: usize) -> usize {
        self.at[node].len()
    }

    fn at_node(&self, node: usize) -> impl Iterator<Item = usize> + '_ {
        self.at[node].iter().copied()
    }

    /// All pieces, those that end somewhere before the others.
    fn ends_first(&self) -> Vec<usize> {
        let is_end = |piece: &usize| self.pieces[*piece].iter().any(|node| self.degree(*node) != 2);
        let (ends, rest): (Vec<usize>, Vec<usize>) = (0..self.pieces.len()).partition(is_end);
        [ends, rest].concat()
    }

    fn ends(&self, piece: usize) -> Edge {
        self.pieces[piece].map(|node| self.nodes.places[node])
    }

    fn length(&self, piece: usize) -> f64 {
        let [a, b] = self.ends(piece);
        (b[0] - a[0]).hypot(b[1] - a[1])
    }

    /// The piece that alone goes on from another one, where only those two meet.
    fn onward(&self, piece: usize) -> Option<usize> {
        let end = self.pieces[piece][1];
        let mut next = self.at_node(end).filter(|next| *next != piece);
        let next = next.next().filter(|_| self.degree(end) == 2)?;
        (self.pieces[next][0] == end).then_some(next)
    }

    /// Pieces that go on without a fork, together: all of a chain has metal on the same sides.
    fn chains(&self) -> Vec<Vec<usize>> {
        let mut follows = vec![false; self.pieces.len()];
        let onward: Vec<Option<usize>> = (0..self.pieces.len()).map(|piece| self.onward(piece)).collect();
        onward.iter().flatten().for_each(|next| follows[*next] = true);
        let (heads, rest): (Vec<usize>, Vec<usize>) = (0..self.pieces.len()).partition(|piece| !follows[*piece]);
        let mut left = vec![true; self.pieces.len()];
        let mut chains = Vec::new();
        for head in [heads, rest].concat() {
            let (mut chain, mut at) = (Vec::new(), Some(head));
            while let Some(piece) = at.filter(|piece| left[*piece]) {
                left[piece] = false;
                chain.push(piece);
                at = onward[piece];
            }
            if !chain.is_empty() {
                chains.push(chain);
            }
        }
        chains
    }

    /// Whether metal lies at the left of a piece and none at its right.
    fn is_outside(&self, piece: usize, aside: f64, edges: &[Edge]) -> bool {
        let [a, b] = self.ends(piece);
        let long = self.length(piece).max(1e-12);
        let left = [-(b[1] - a[1]) / long * aside, (b[0] - a[0]) / long * aside];
        let middle = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0];
        let at = |sign: f64| rounds(edges, [middle[0] + left[0] * sign, middle[1] + left[1] * sign]);
        at(1.0) > 0 && at(-1.0) == 0
    }

    /// Some pieces as closed loops; what does not close is left out.
    fn closed(&self, wanted: &[usize]) -> Vec<Vec<Place>> {
        let mut left = vec![false; self.pieces.len()];
        wanted.iter().for_each(|piece| left[*piece] = true);
        let mut loops = Vec::new();
        for start in wanted {
            let (mut walked, mut at) = (Vec::new(), Some(*start));
            while let Some(piece) = at.filter(|piece| left[*piece]) {
                left[piece] = false;
                walked.push(piece);
                at = self.next_round(piece, &left);
            }
            let ends = walked.first().zip(walked.last());
            if ends.is_some_and(|(first, last)| self.pieces[*first][0] == self.pieces[*last][1]) {
                loops.push(walked.iter().map(|piece| self.nodes.places[self.pieces[*piece][0]]).collect());
            }
        }
        loops
    }

    /// Of the pieces that go on from one, that which turns most to the left: it keeps to its own metal.
    fn next_round(&self, piece: usize, left: &[bool]) -> Option<usize> {
        let end = self.pieces[piece][1];
        let [a, b] = self.ends(piece);
        let way = [b[0] - a[0], b[1] - a[1]];
        let turn = |next: &usize| {
            let [from, to] = self.ends(*next);
            let on = [to[0] - from[0], to[1] - from[1]];
            (way[0] * on[1] - way[1] * on[0]).atan2(way[0] * on[0] + way[1] * on[1])
        };
        let onward = self.at_node(end).filter(|next| left[*next] && self.pieces[*next][0] == end);
        onward.max_by(|a, b| turn(a).total_cmp(&turn(b)))
    }
}

/// How often edges run round a place, counter-clockwise.
fn rounds(edges: &[Edge], [x, y]: Place) -> i32 {
    let round = |[a, b]: &Edge| {
        if (a[1] > y) == (b[1] > y) {
            return 0;
        }
        let at = a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]);
        match (at > x, b[1] > a[1]) {
            (false, _) => 0,
            (true, true) => 1,
            (true, false) => -1,
        }
    };
    edges.iter().map(round).sum()
}
