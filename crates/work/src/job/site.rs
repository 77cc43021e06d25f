//! One bar of a plan, looked at from every side that the order of work asks for.

use fh_core::balance::{Balance, BarBalance, SegmentBalance};
use fh_core::describe::short_name;
use fh_core::metal::{FreeEnd, SectionSize, Shape, SplitSize};
use fh_core::plan::{Bar, Chain, Flat, Operation, Plan, Segment};
use std::cell::OnceCell;
use std::f64::consts::FRAC_PI_2;

pub(crate) use fh_measure::{in_mm, in_mm2, in_mm3, mm};

pub(crate) fn least([width, thickness]: [f64; 2]) -> f64 {
    width.min(thickness)
}

/// A bar with its balance and its chains.
pub(crate) struct Site<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) index: usize,
    pub(crate) bar: &'a Bar,
    pub(crate) balance: &'a BarBalance,
    pub(crate) flat: Vec<Flat<'a>>,
    /// The bar itself, then every branch, each with its segments counted through the bar.
    pub(crate) chains: Vec<(Chain, Vec<usize>)>,
    /// Which of the chains each segment lies in, and its place there.
    pub(crate) place: Vec<(usize, usize)>,
    /// What has to be done to each segment, once it was asked for.
    pub(crate) operations: Vec<OnceCell<Vec<Operation>>>,
    /// The same for each of its shapes on the way.
    pub(crate) on_the_way: Vec<OnceCell<Vec<Vec<Operation>>>>,
    /// What the parts are begun from that are looked at on the way to one of their shapes.
    begun: Vec<Begun>,
    paths: OnceCell<Vec<String>>,
}

/// What a shape is made from, where that is another one on the way.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Begun {
    pub(crate) part: usize,
    /// The section in the middle of the shape before it; none of the first, which is made from the bar.
    pub(crate) raw: Option<SectionSize>,
    /// Whether it is the first, made from the bar.
    pub(crate) is_first: bool,
    /// Whether its form is that of the shape before it.
    pub(crate) keeps_form: bool,
    /// Whether that one is bent.
    pub(crate) was_bent: bool,
    /// Whether it is bent as that one is, or both are straight.
    pub(crate) keeps_bend: bool,
    /// Whether it has the finished form already.
    pub(crate) is_finished_form: bool,
    /// Whether its bend is opened again for the shape after it.
    pub(crate) opens_again: bool,
}

/// A segment of it.
#[derive(Clone, Copy)]
pub(crate) struct Part<'a> {
    pub(crate) at: usize,
    pub(crate) segment: &'a Segment,
    pub(crate) balance: &'a SegmentBalance,
}

impl<'a> Site<'a> {
    /// Every bar of a plan.
    pub(crate) fn all(plan: &'a Plan, balance: &'a Balance) -> Vec<Self> {
        let bars = plan.bars.iter().zip(&balance.bars).enumerate();
        bars.map(|(index, (bar, balance))| Self::new(plan, index, bar, balance)).collect()
    }

    fn new(plan: &'a Plan, index: usize, bar: &'a Bar, balance: &'a BarBalance) -> Self {
        let flat = bar.flat();
        let mut chains: Vec<(Chain, Vec<usize>)> = vec![(Chain::Bar, Vec::new())];
        let mut place = Vec::with_capacity(flat.len());
        // Only branches of the split that was met last are still being filled; looking from the end finds them at once.
        for (at, flat) in flat.iter().enumerate() {
            let of = match chains.iter().rposition(|(chain, _)| *chain == flat.chain) {
                Some(of) => of,
                None => {
                    chains.push((flat.chain, Vec::new()));
                    chains.len() - 1
                }
            };
            place.push((of, chains[of].1.len()));
            chains[of].1.push(at);
        }
        let operations = vec![OnceCell::new(); flat.len()];
        let on_the_way = vec![OnceCell::new(); flat.len()];
        let begun = Vec::new();
        Self { plan, index, bar, balance, flat, chains, place, operations, on_the_way, begun, paths: OnceCell::new() }
    }

    /// A bar on which some parts are looked at on the way to one of their shapes.
    pub(crate) fn staged(
        plan: &'a Plan,
        index: usize,
        (bar, balance): (&'a Bar, &'a BarBalance),
        begun: Vec<Begun>,
    ) -> Self {
        Self { begun, ..Self::new(plan, index, bar, balance) }
    }

    /// What a part is begun from that is looked at on the way to one of its shapes.
    pub(crate) fn begun(&self, at: usize) -> Option<&Begun> {
        self.begun.iter().find(|begun| begun.part == at)
    }

    /// Whether a part is made through shapes on the way.
    pub(crate) fn passes_through(&self, at: usize) -> bool {
        self.begun(at).is_some() || self.flat.get(at).is_some_and(|flat| !flat.segment.via.is_empty())
    }

    /// How long a part is before it is forged, in mm.
    pub(crate) fn raw_mm(&self, part: Part<'_>) -> f64 {
        match self.begun(part.at) {
            Some(begun) if !begun.is_first => in_mm(part.balance.stock_length),
            _ => in_mm(part.balance.mark_end - part.balance.mark_start),
        }
    }

    /// A segment, counted through the bar.
    pub(crate) fn part(&self, at: usize) -> Option<Part<'a>> {
        Some(Part { at, segment: self.flat.get(at)?.segment, balance: self.balance.segments.get(at)? })
    }

    /// Every segment, counted through the bar.
    pub(crate) fn parts(&self) -> impl Iterator<Item = Part<'a>> + '_ {
        (0..self.flat.len()).filter_map(|at| self.part(at))
    }

    /// The segments beside one in its chain: before it, and behind it.
    pub(crate) fn beside(&self, at: usize) -> [Option<usize>; 2] {
        let Some((of, place)) = self.place.get(at).copied() else { return [None, None] };
        let chain = &self.chains[of].1;
        [place.checked_sub(1).and_then(|before| chain.get(before).copied()), chain.get(place + 1).copied()]
    }

    /// Whether the bend that a part has on the way is opened again.
    pub(crate) fn opens_again(&self, at: usize) -> bool {
        self.begun(at).is_some_and(|begun| begun.opens_again)
    }

    /// The split that a segment lies in, and on which of its branches.
    pub(crate) fn split_of(&self, at: usize) -> Option<(usize, usize)> {
        match self.flat.get(at)?.chain {
            Chain::Bar => None,
            Chain::Branch { split, branch } => Some((split, branch)),
        }
    }

    /// Whether a segment is a slit that is closed at both ends, and no branch of it leaves the bar.
    pub(crate) fn is_closed_slit(&self, at: usize) -> bool {
        self.split_size(at).is_some_and(|size| size.opens() == FreeEnd::Neither)
    }

    /// Whether a segment is a slit of which one branch leaves the bar while another runs on.
    pub(crate) fn has_leaving_branch(&self, at: usize) -> bool {
        self.split_size(at).is_some_and(|size| size.free == FreeEnd::Neither && size.opens() != FreeEnd::Neither)
    }

    /// What a split comes to; none of any other part.
    pub(crate) fn split_size(&self, at: usize) -> Option<&'a SplitSize> {
        match self.part(at)?.balance.shape.as_ref()? {
            Shape::Split(size) => Some(size),
            _ => None,
        }
    }

    /// At which end the branch is free that a part lies on; none of a part of the bar itself.
    pub(crate) fn branch_free(&self, at: usize) -> Option<FreeEnd> {
        let (split, branch) = self.split_of(at)?;
        let size = self.split_size(split)?;
        Some(size.branches.get(branch).map_or(size.free, |branch| branch.free))
    }

    /// The section that a segment is forged from: the bar's, or a branch as it is cut.
    pub(crate) fn raw_section(&self, at: usize) -> SectionSize {
        if let Some(raw) = self.begun(at).and_then(|begun| begun.raw) {
            return raw;
        }
        let Some((split, branch)) = self.split_of(at) else { return self.balance.stock };
        let whole = self.raw_section(split);
        let shape = self.balance.segments.get(split).and_then(|split| split.shape.as_ref());
        let Some(Shape::Split(size)) = shape else { return whole };
        let Some(part) = size.branches.get(branch) else { return whole };
        let area = in_mm2(whole.area()) * part.share;
        let raw = in_mm(part.raw_width);
        if raw <= 0.0 || area <= 0.0 {
            return whole;
        }
        // Cut from above the branches lie side by side; cut from the side, over each other.
        if size.side.sin().abs() > size.side.cos().abs() {
            SectionSize::flat(mm(raw), mm(area / raw))
        } else {
            SectionSize::flat(mm(area / raw), mm(raw))
        }
    }

    /// The path of a segment; see [`Bar::path`].
    pub(crate) fn path(&self, at: usize) -> &str {
        self.paths.get_or_init(|| self.bar.paths()).get(at).map_or("", String::as_str)
    }

    /// A segment's name, or its path where it has none; on a branch with the branch's name before it.
    pub(crate) fn name(&self, at: usize) -> String {
        let name = self.flat.get(at).map_or("", |flat| flat.segment.name.trim());
        let name = if name.is_empty() { format!("part {}", self.path(at)) } else { short_name(name) };
        let branch = self
            .split_of(at)
            .and_then(|(split, branch)| Some(self.flat.get(split)?.segment.form.branches().get(branch)?.title(branch)));
        branch.filter(|branch| *branch != name).map_or(name.clone(), |branch| format!("{branch}, {name}"))
    }
}

/// A section's size from side to side and from top to bottom, in mm.
pub(crate) fn extents(section: &SectionSize) -> [f64; 2] {
    section.extents_mm()
}

/// A section's size across a bend toward a side, in mm.
pub(crate) fn thickness_toward(section: &SectionSize, side: f64) -> f64 {
    in_mm(section.section().extent(FRAC_PI_2 - side))
}
