//! The bars of a piece put together: for every copy of a bar the frame that it stands in.
//!
//! The first bar stays where it is. From it the joints are walked as a tree; each places the members that it reaches. What no
//! joint reaches is laid beside the rest.

mod arrange;
mod closed_loop;
mod eye;
mod lay_out;
mod seat;

pub use closed_loop::ClosedLoop;

use crate::{Frame, Piece};
use arrange::arrange;
use fh_core::balance::Balance;
use fh_core::joints::{Joined, Link, joined, links};
use fh_core::plan::Plan;
use seat::Seats;
use std::collections::hash_map::{Entry, HashMap};

/// Where a copy of a bar stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement {
    /// The bar, counted from 0.
    pub bar: usize,
    /// Which of its copies, counted from 0.
    pub copy: u32,
    /// Where its start stands.
    pub frame: Frame,
}

/// Every copy that is shown, and the loops that joints close.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Placements {
    /// The copies, bar by bar.
    pub copies: Vec<Placement>,
    /// The joints that place nothing, for their members are placed already.
    pub loops: Vec<ClosedLoop>,
}

/// A copy of a bar.
type Copy = (usize, u32);

/// Puts a plan's bars together; `local` has each bar once, from the origin.
///
/// Of a bar of which several are made, the copies that joints name are shown, and one where none is named.
pub fn placements(plan: &Plan, balance: &Balance, local: &Piece) -> Placements {
    let joints = joined(plan);
    let seats = Seats::new(plan, balance, local);
    let arranged: Vec<Vec<Option<Frame>>> = joints.iter().map(|joint| arrange(joint, &seats)).collect();
    let copies = copies(plan, &joints);
    let walk = Walk::new(&joints, &arranged);
    let mut frames: HashMap<Copy, Frame> = HashMap::with_capacity(copies.len());
    let mut groups: Vec<Vec<Copy>> = Vec::new();
    for copy in &copies {
        if !frames.contains_key(copy) {
            groups.push(walk.from(*copy, &mut frames));
        }
    }
    lay_out::lay_out(&groups, local, &mut frames);
    let loops = walk.loops(&frames);
    let placed = copies.into_iter().filter_map(|(bar, copy)| {
        let frame = *frames.get(&(bar, copy))?;
        Some(Placement { bar, copy, frame })
    });
    Placements { copies: placed.collect(), loops }
}

/// The copies that are shown, bar by bar.
fn copies(plan: &Plan, joints: &[Joined]) -> Vec<Copy> {
    let named = joints.iter().flat_map(|joint| &joint.members).map(|member| (member.bar, member.copy));
    let mut all: Vec<Copy> = named.collect();
    let mut is_named = vec![false; plan.bars.len()];
    for (bar, _) in &all {
        is_named[*bar] = true;
    }
    all.extend(is_named.iter().enumerate().filter(|(_, named)| !**named).map(|(bar, _)| (bar, 0)));
    all.sort_unstable();
    all.dedup();
    all
}

/// The joints as they are walked.
struct Walk<'a> {
    joints: &'a [Joined],
    /// For each joint the frames of its members' bars, seen from one place of the joint.
    arranged: &'a [Vec<Option<Frame>>],
    links: Vec<Link>,
    /// For each copy the links that carry it or that it carries; whether it is the second of the two.
    at: HashMap<Copy, Vec<(usize, bool)>>,
}

impl<'a> Walk<'a> {
    fn new(joints: &'a [Joined], arranged: &'a [Vec<Option<Frame>>]) -> Self {
        let walk = Self { joints, arranged, links: links(joints), at: HashMap::new() };
        let mut at: HashMap<Copy, Vec<(usize, bool)>> = HashMap::new();
        for (index, link) in walk.links.iter().enumerate().filter(|(_, link)| !link.closes) {
            let Some(ends) = walk.ends(link) else { continue };
            for (copy, second) in ends.into_iter().zip([false, true]) {
                at.entry(copy).or_default().push((index, second));
            }
        }
        Self { at, ..walk }
    }

    /// Places everything that hangs together with a copy, which stays at the origin; what was placed.
    fn from(&self, start: Copy, frames: &mut HashMap<Copy, Frame>) -> Vec<Copy> {
        frames.insert(start, Frame::START);
        let mut group = vec![start];
        let mut next = 0;
        while let Some(here) = group.get(next).copied() {
            next += 1;
            let Some(frame) = frames.get(&here).copied() else { continue };
            for (index, second) in self.at.get(&here).into_iter().flatten() {
                let Some(link) = self.links.get(*index) else { continue };
                let (Some([a, b]), Some(step)) = (self.ends(link), self.step(link, *second)) else { continue };
                let there = if *second { a } else { b };
                if let Entry::Vacant(place) = frames.entry(there) {
                    place.insert(frame.carry(&step));
                    group.push(there);
                }
            }
        }
        group
    }

    /// The two copies of a link.
    fn ends(&self, link: &Link) -> Option<[Copy; 2]> {
        let members = &self.joints.get(link.joined)?.members;
        let copy = |at: usize| members.get(at).map(|member| (member.bar, member.copy));
        Some([copy(link.from)?, copy(link.to)?])
    }

    /// The frame of a link's one end, seen from its other.
    fn step(&self, link: &Link, backward: bool) -> Option<Frame> {
        let frames = self.arranged.get(link.joined)?;
        let frame = |at: usize| frames.get(at).copied().flatten();
        let (from, to) = (frame(link.from)?, frame(link.to)?);
        Some(if backward { to.inverse().carry(&from) } else { from.inverse().carry(&to) })
    }

    /// How far the joints that close a loop miss.
    fn loops(&self, frames: &HashMap<Copy, Frame>) -> Vec<ClosedLoop> {
        let gap = |link: &Link| {
            let [a, b] = self.ends(link)?;
            let wanted = frames.get(&a)?.carry(&self.step(link, false)?);
            let joint = self.joints.get(link.joined)?;
            // Measured where the joint is, not at the far end of the bar.
            let here = self.arranged.get(link.joined)?.get(link.to).copied().flatten()?.inverse();
            let [is, should] = [frames.get(&b)?, &wanted].map(|frame| frame.place(here.at));
            Some(ClosedLoop {
                joint: joint.joint,
                gap_mm: fh_core::space::vector::length(fh_core::space::vector::minus(is, should)),
            })
        };
        self.links.iter().filter(|link| link.closes).filter_map(gap).collect()
    }
}

#[cfg(test)]
mod tests;
