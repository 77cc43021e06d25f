//! Split: the bar cut along its length, each branch forged on its own.

use super::forging::Block;
use super::one::{About, OneForm};
use super::surroundings::Surroundings;
use crate::file::{Checked, KeyPath, refuse};
use crate::metal::{Shape, mm};
use crate::plan::{Branch, Gives, Looking, Opening, Operation, RootSpec, SizeName, Visiting};
use fh_measure::{WrittenAngle, WrittenLength};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The bar cut along its length; each branch is forged on its own.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Split {
    /// The branches, from the side named first.
    pub branches: Vec<Branch>,
    /// The side of the bar on which the first branch lies; away from you where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<WrittenAngle>,
    /// Where the cut between two branches stands, from the face of the first; it follows from their metal where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cut: Option<WrittenLength>,
    /// How long the slit is on the bar, where the cut is written; it follows from a branch that holds where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slit: Option<WrittenLength>,
    /// How wide a saw cuts, beyond the cut: metal that is lost. A chisel loses none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kerf: Option<WrittenLength>,
    /// How the end of the slit is kept from cracking.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub root: Option<RootSpec>,
    /// How far a slit that is closed at both ends is opened.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub opening: Option<Opening>,
}

impl Split {
    /// Whether a branch leaves the bar while another runs on.
    pub fn has_free_branch(&self) -> bool {
        self.branches.iter().any(|branch| branch.free.is_some())
    }

    /// One branch at least runs on; a cut line lies between two branches.
    fn check_cut(&self, at: &KeyPath) -> Checked {
        let list = at.key("branches");
        if self.branches.iter().all(|branch| branch.free.is_some()) {
            return refuse(list, "every branch is free here; one at least runs on as the bar");
        }
        if self.has_free_branch() && self.opening.is_some() {
            return refuse(at.key("opening"), "a slit with a free branch is open by itself; leave \"opening\" out");
        }
        if self.cut.is_some() && self.branches.len() != 2 {
            return refuse(at.key("cut"), "one cut lies between two branches; leave it out where there are more");
        }
        for (key, size) in [("slit", &self.slit), ("kerf", &self.kerf)] {
            if size.is_some() && self.cut.is_none() {
                return refuse(at.key(key), "it belongs to a cut that is written; \"cut\" was not found");
            }
        }
        Ok(())
    }

    pub(crate) const ABOUT: About =
        About { name: "split", summary: "The bar cut along its length; each branch forged on its own." };
}

impl OneForm for Split {
    fn words(&self, _drawn: &str) -> String {
        let names: Vec<_> = self.branches.iter().enumerate().map(|(index, branch)| branch.title(index)).collect();
        let root = self.root.as_ref().map_or(String::new(), |root| format!(", {}", root.describe()));
        format!("split: {}{root}", names.join(", "))
    }

    fn sizes(&self, visit: Looking<'_>) {
        let cut = [(SizeName::CutLine, &self.cut), (SizeName::SlitLength, &self.slit), (SizeName::Kerf, &self.kerf)];
        cut.into_iter().for_each(|(name, size)| size.iter().for_each(|size| visit(name, size)));
        self.root.iter().for_each(|root| root.sizes(visit));
        self.opening.iter().for_each(|opening| visit(SizeName::Opening, &opening.width));
        let segments = self.branches.iter().flat_map(|branch| &branch.segments);
        segments.for_each(|segment| segment.sizes(visit));
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        let cut = [
            (SizeName::CutLine, &mut self.cut),
            (SizeName::SlitLength, &mut self.slit),
            (SizeName::Kerf, &mut self.kerf),
        ];
        cut.into_iter().for_each(|(name, size)| size.iter_mut().for_each(|size| visit(name, size)));
        self.root.iter_mut().for_each(|root| root.sizes_mut(visit));
        self.opening.iter_mut().for_each(|opening| visit(SizeName::Opening, &mut opening.width));
        let segments = self.branches.iter_mut().flat_map(|branch| &mut branch.segments);
        segments.for_each(|segment| segment.sizes_mut(visit));
    }

    /// The walk along the bar settles its branches.
    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        (Shape::Prism { section: around.stock, length: mm(0.0) }, true)
    }

    /// It is cut along one of the four sides; its branches are checked as chains of their own.
    fn check(&self, _first: bool, at: &KeyPath) -> Checked {
        let list = at.key("branches");
        if self.branches.len() < 2 {
            return refuse(list, format!("a split has two branches or more; this one has {}", self.branches.len()));
        }
        if let Some(side) = &self.side
            && (side.radians() / std::f64::consts::FRAC_PI_2).fract().abs() > 1e-9
        {
            return refuse(at.key("side"), format!("{} was found; the sides are 0, 90, 180 and 270 deg", side.text()));
        }
        self.check_cut(at)?;
        let turns = self.opening.as_ref().and_then(|opening| opening.turns);
        if let Some(turns) = turns.filter(|turns| !turns.is_finite()) {
            return refuse(at.key("opening").key("turns"), format!("{turns} isn't a count of turns"));
        }
        Ok(())
    }

    fn default_gives(&self) -> Gives {
        Gives::Nothing
    }

    fn holds(&self) -> bool {
        true
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        let Shape::Split(size) = block.shape else { return Vec::new() };
        let punch = matches!(self.root, Some(RootSpec::Hole(_))).then_some(Operation::Punch);
        let mut all: Vec<Operation> = punch.into_iter().chain([Operation::Split]).collect();
        if block.has_struck_branches {
            all.extend([Operation::BendAside, Operation::Straighten]);
        }
        if size.opening.is_some() {
            all.push(Operation::Open);
        }
        all
    }
}
