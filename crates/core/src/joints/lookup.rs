//! Bars and segments by their names, read once from a plan.

use super::place::{MemberPlace, Missing, role, side};
use crate::plan::{Bar, Flat, Member, Plan};
use fh_measure::{WrittenAngle, WrittenLength};
use std::collections::HashSet;
use std::collections::hash_map::{Entry, HashMap};

/// The names of a plan's bars and segments. Where two have one name, the first is meant.
pub struct Lookup<'a> {
    bars: HashMap<&'a str, Names<'a>>,
    /// Names that two bars bear.
    doubles: HashSet<&'a str>,
}

/// A bar and its segments by name.
struct Names<'a> {
    index: usize,
    bar: &'a Bar,
    flat: Vec<Flat<'a>>,
    segments: HashMap<&'a str, usize>,
    /// Names that two segments of it bear.
    doubles: HashSet<&'a str>,
}

impl<'a> Lookup<'a> {
    /// Reads the names that the joints of a plan ask for.
    pub fn new(plan: &'a Plan) -> Self {
        let mut all = Self { bars: HashMap::new(), doubles: HashSet::new() };
        if plan.joints.is_empty() {
            return all;
        }
        for (index, bar) in plan.bars.iter().enumerate() {
            let name = bar.name.as_str();
            match all.bars.entry(name) {
                Entry::Vacant(place) => {
                    place.insert(Names::new(index, bar));
                }
                Entry::Occupied(_) => {
                    all.doubles.insert(name);
                }
            }
        }
        all
    }

    /// The bar of a name.
    pub fn bar(&self, name: &str) -> Option<usize> {
        self.bars.get(name).map(|names| names.index)
    }

    /// The name in a member that two bars, or two segments of its bar, bear.
    pub fn twice<'m>(&self, member: &'m Member) -> Option<&'m str> {
        let names = self.bars.get(member.bar.as_str())?;
        if self.doubles.contains(member.bar.as_str()) {
            return Some(&member.bar);
        }
        names.doubles.contains(member.segment.as_str()).then_some(member.segment.as_str())
    }

    /// Finds a member.
    ///
    /// # Errors
    /// What it names that is not there.
    pub fn find(&self, member: &Member) -> Result<MemberPlace, Missing> {
        let names = self.bars.get(member.bar.as_str()).ok_or(Missing::Bar)?;
        let segment = *names.segments.get(member.segment.as_str()).ok_or(Missing::Segment)?;
        let flat = names.flat.get(segment).ok_or(Missing::Segment)?;
        if member.copy_number() > names.bar.pieces() {
            return Err(Missing::Copy);
        }
        Ok(MemberPlace {
            bar: names.index,
            copy: member.copy_number().saturating_sub(1),
            segment,
            role: role(flat.segment),
            side: side(member.side.as_ref()),
            turn: member.turn.as_ref().map_or(0.0, WrittenAngle::radians),
            at_mm: member.at.as_ref().map(WrittenLength::mm),
        })
    }
}

impl<'a> Names<'a> {
    fn new(index: usize, bar: &'a Bar) -> Self {
        let flat = bar.flat();
        let (mut segments, mut doubles) = (HashMap::new(), HashSet::new());
        for (at, flat) in flat.iter().enumerate() {
            let name = flat.segment.name.as_str();
            if segments.contains_key(name) {
                doubles.insert(name);
            } else {
                segments.insert(name, at);
            }
        }
        Self { index, bar, flat, segments, doubles }
    }
}
