//! A bar as a tree: the segments of a split's branches hang below it.
//!
//! Segments are **counted through the bar**: a split, then the segments of its first branch, of its second, and so on,
//! then what follows the split. On a bar without splits that is simply their order. One number names a segment at any
//! depth, and lists of the balance are in this order.

use super::{Bar, Segment};
use crate::forms;

/// One segment of a bar with its place in the tree.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flat<'a> {
    /// The segment.
    pub segment: &'a Segment,
    /// The chain it belongs to.
    pub chain: Chain,
    /// Its place in that chain, counted from 0.
    pub place: usize,
    /// How many splits it lies within.
    pub depth: usize,
}

/// A chain of segments: the bar itself, or a branch of a split.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Chain {
    /// The bar itself.
    Bar,
    /// A branch.
    Branch {
        /// The split, counted through the bar.
        split: usize,
        /// Which of its branches, counted from 0.
        branch: usize,
    },
}

impl Bar {
    /// Every segment, counted through the bar.
    pub fn flat(&self) -> Vec<Flat<'_>> {
        let mut all = Vec::with_capacity(self.segments.len());
        flatten(&self.segments, Chain::Bar, 0, &mut all);
        all
    }

    /// One segment, counted through the bar, without looking at what comes after it.
    fn find(&self, at: usize) -> Option<Flat<'_>> {
        find(&self.segments, (Chain::Bar, 0), 0, at)
    }

    /// How many segments there are, counted through the bar.
    pub fn count_segments(&self) -> usize {
        self.segments.iter().map(Segment::count).sum()
    }

    /// A segment, counted through the bar.
    pub fn segment(&self, at: usize) -> Option<&Segment> {
        self.find(at).map(|found| found.segment)
    }

    /// A segment to be changed, counted through the bar.
    pub fn segment_mut(&mut self, at: usize) -> Option<&mut Segment> {
        find_mut(&mut self.segments, at)
    }

    /// The segments of a chain.
    pub fn chain(&self, chain: Chain) -> Option<&Vec<Segment>> {
        match chain {
            Chain::Bar => Some(&self.segments),
            Chain::Branch { split, branch } => {
                self.segment(split)?.form.branches().get(branch).map(|branch| &branch.segments)
            }
        }
    }

    /// The segments of a chain, to be changed.
    pub fn chain_mut(&mut self, chain: Chain) -> Option<&mut Vec<Segment>> {
        match chain {
            Chain::Bar => Some(&mut self.segments),
            Chain::Branch { split, branch } => match &mut self.segment_mut(split)?.form {
                super::Form::Split(forms::Split { branches, .. }) => {
                    branches.get_mut(branch).map(|branch| &mut branch.segments)
                }
                _ => None,
            },
        }
    }

    /// Where a segment, counted through the bar, has its place: its chain, and the place in it.
    pub fn place_of(&self, at: usize) -> Option<(Chain, usize)> {
        self.find(at).map(|found| (found.chain, found.place))
    }

    /// The segment after one in its chain, both counted through the bar.
    pub fn next_in_chain(&self, at: usize) -> Option<usize> {
        let (chain, place) = self.place_of(at)?;
        (place + 1 < self.chain(chain)?.len()).then(|| self.number_of(chain, place + 1)).flatten()
    }

    /// The segments before one in its chain, all counted through the bar.
    pub fn before_in_chain(&self, at: usize) -> Vec<usize> {
        let Some((chain, place)) = self.place_of(at) else { return Vec::new() };
        (0..place).filter_map(|place| self.number_of(chain, place)).collect()
    }

    /// The number, counted through the bar, of a place in a chain; that of its end where the place lies beyond it.
    pub fn number_of(&self, chain: Chain, place: usize) -> Option<usize> {
        let before: usize = self.chain(chain)?.iter().take(place).map(Segment::count).sum();
        Some(before + self.start_of(chain)?)
    }

    /// The number of a chain's first segment.
    fn start_of(&self, chain: Chain) -> Option<usize> {
        match chain {
            Chain::Bar => Some(0),
            Chain::Branch { split, branch } => {
                let branches = self.segment(split)?.form.branches();
                let before = branches.iter().take(branch).flat_map(|branch| &branch.segments);
                Some(split + 1 + before.map(Segment::count).sum::<usize>())
            }
        }
    }

    /// A segment as files and reports write it: `4` for the fourth, `4.2.1` for the first segment of the second branch of
    /// the split at 4; empty where there is no such segment.
    pub fn path(&self, at: usize) -> String {
        path_in(&self.flat(), at)
    }
}

/// The path of a segment on a bar whose segments are counted already; see [`Bar::path`].
pub(crate) fn path_in(all: &[Flat<'_>], at: usize) -> String {
    let mut parts = Vec::new();
    let mut now = all.get(at);
    while let Some(flat) = now {
        parts.push((flat.place + 1).to_string());
        now = match flat.chain {
            Chain::Bar => None,
            Chain::Branch { split, branch } => {
                parts.push((branch + 1).to_string());
                all.get(split)
            }
        };
    }
    parts.reverse();
    parts.join(".")
}

impl Bar {
    /// The segment that a path names, counted through the bar; see [`Bar::path`].
    pub fn find_path(&self, path: &str) -> Option<usize> {
        let mut chain = Chain::Bar;
        let mut numbers = path.split('.').map(|part| part.parse::<usize>().ok()?.checked_sub(1));
        loop {
            let place = numbers.next()??;
            let segment = (place < self.chain(chain)?.len()).then(|| self.number_of(chain, place)).flatten()?;
            let Some(branch) = numbers.next() else { return Some(segment) };
            chain = Chain::Branch { split: segment, branch: branch? };
        }
    }

    /// The path of every segment, counted through the bar; see [`Bar::path`].
    pub fn paths(&self) -> Vec<String> {
        let all = self.flat();
        let mut paths: Vec<String> = Vec::with_capacity(all.len());
        for flat in &all {
            let place = flat.place + 1;
            paths.push(match flat.chain {
                Chain::Bar => place.to_string(),
                Chain::Branch { split, branch } => format!("{}.{}.{place}", paths[split], branch + 1),
            });
        }
        paths
    }
}

impl Segment {
    /// How many segments it is, with those of its branches.
    pub fn count(&self) -> usize {
        1 + self.form.branches().iter().flat_map(|branch| &branch.segments).map(Self::count).sum::<usize>()
    }
}

fn flatten<'a>(segments: &'a [Segment], chain: Chain, depth: usize, all: &mut Vec<Flat<'a>>) {
    for (place, segment) in segments.iter().enumerate() {
        let split = all.len();
        all.push(Flat { segment, chain, place, depth });
        for (branch, below) in segment.form.branches().iter().enumerate() {
            flatten(&below.segments, Chain::Branch { split, branch }, depth + 1, all);
        }
    }
}

/// The segment of a number in a chain whose first has the number `first`, or in the branches of its splits.
fn find(segments: &[Segment], (chain, depth): (Chain, usize), first: usize, at: usize) -> Option<Flat<'_>> {
    let mut number = first;
    for (place, segment) in segments.iter().enumerate() {
        if number == at {
            return Some(Flat { segment, chain, place, depth });
        }
        let end = number + segment.count();
        if at < end {
            return find_below(segment, number, depth, at);
        }
        number = end;
    }
    None
}

/// The segment of a number in the branches of a split.
fn find_below(segment: &Segment, split: usize, depth: usize, at: usize) -> Option<Flat<'_>> {
    let mut first = split + 1;
    for (branch, below) in segment.form.branches().iter().enumerate() {
        let count: usize = below.segments.iter().map(Segment::count).sum();
        if at < first + count {
            return find(&below.segments, (Chain::Branch { split, branch }, depth + 1), first, at);
        }
        first += count;
    }
    None
}

fn find_mut(segments: &mut [Segment], mut at: usize) -> Option<&mut Segment> {
    for segment in segments {
        let count = segment.count();
        if at == 0 {
            return Some(segment);
        }
        if at < count {
            at -= 1;
            let super::Form::Split(forms::Split { branches, .. }) = &mut segment.form else { return None };
            for branch in branches {
                let below: usize = branch.segments.iter().map(Segment::count).sum();
                if at < below {
                    return find_mut(&mut branch.segments, at);
                }
                at -= below;
            }
            return None;
        }
        at -= count;
    }
    None
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::plan::{Branch, Form, SectionSpec};

    fn leaf(name: &str) -> Segment {
        Segment::new(name, Form::Plain(forms::Plain { length: None }))
    }

    fn split(name: &str, branches: [Vec<Segment>; 2]) -> Segment {
        let branches = branches.map(|segments| Branch::new("", segments)).into();
        Segment::new(name, Form::Split(forms::Split { branches, ..forms::Split::default() }))
    }

    fn bar() -> Bar {
        let inner = split("inner", [vec![leaf("d")], vec![leaf("e"), leaf("f")]]);
        let outer = split("outer", [vec![leaf("b"), leaf("c")], vec![inner]]);
        let mut bar = Bar::new("bar", SectionSpec::Point);
        bar.segments = vec![leaf("a"), outer, leaf("g")];
        bar
    }

    #[test]
    fn one_number_names_a_segment_at_any_depth() {
        let mut bar = bar();
        let names: Vec<_> = bar.flat().iter().map(|flat| flat.segment.name.clone()).collect();
        assert_eq!(names, ["a", "outer", "b", "c", "inner", "d", "e", "f", "g"]);
        assert_eq!(bar.count_segments(), 9);
        for (at, name) in names.iter().enumerate() {
            assert_eq!(bar.segment(at).unwrap().name, *name);
            assert_eq!(bar.segment_mut(at).unwrap().name, *name);
            let (chain, place) = bar.place_of(at).unwrap();
            assert_eq!(bar.number_of(chain, place), Some(at));
            assert_eq!(bar.chain(chain).unwrap()[place].name, *name);
        }
        assert!(bar.segment(9).is_none() && bar.segment_mut(9).is_none());
        let paths: Vec<_> = (0..10).map(|at| bar.path(at)).collect();
        assert_eq!(paths[..9], bar.paths()[..]);
        for (at, path) in paths[..9].iter().enumerate() {
            assert_eq!(bar.find_path(path), Some(at), "{path}");
        }
        for wrong in ["", "0", "4", "2.0.1", "2.3.1", "2.1", "2.1.3", "1.1.1", "2.1.1.1.1", "a", "1.", "-1"] {
            assert_eq!(bar.find_path(wrong), None, "{wrong}");
        }
        assert_eq!(paths, ["1", "2", "2.1.1", "2.1.2", "2.2.1", "2.2.1.1.1", "2.2.1.2.1", "2.2.1.2.2", "3", ""]);
    }

    #[test]
    fn one_is_found_as_it_stands_in_the_list_of_all() {
        let bar = bar();
        let all = bar.flat();
        for (at, flat) in all.iter().enumerate() {
            let found = bar.find(at).unwrap();
            let place = (found.chain, found.place, found.depth);
            assert!(std::ptr::eq(found.segment, flat.segment) && place == (flat.chain, flat.place, flat.depth), "{at}");
            assert_eq!(bar.path(at), bar.paths()[at]);
        }
        assert!(bar.find(all.len()).is_none() && bar.path(all.len()).is_empty());
    }

    #[test]
    fn the_end_of_a_chain_has_a_number() {
        let bar = bar();
        assert_eq!(bar.number_of(Chain::Branch { split: 1, branch: 0 }, 2), Some(4));
        assert_eq!(bar.number_of(Chain::Bar, 7), Some(9));
        assert_eq!(bar.number_of(Chain::Branch { split: 0, branch: 0 }, 0), None);
    }
}
