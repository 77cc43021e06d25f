//! Peak: metal left standing for a sharp outside corner.

use super::forging::Block;
use super::one::{About, OneForm};
use super::surroundings::{Surroundings, section_size};
use crate::file::{Checked, KeyPath, SectionPlace, check_section, refuse};
use crate::metal::{CornerSize, Shape, Standing, mm};
use crate::plan::{Gives, InBoth, Looking, Operation, PlanUnit, SectionSpec, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Metal left standing on one side for a sharp outside corner; its length follows from the bend `corner`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Peak {
    /// The section of the legs that meet in the corner.
    pub section: SectionSpec,
    /// That its metal is left as the bar is while both sides of it are set down; upset where this is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub left: Option<LeftPeak>,
    /// That it is bent round first, and its metal driven up into the corner after that; upset before where this is left out.
    #[serde(default, skip_serializing_if = "is_false")]
    pub driven: bool,
}

fn is_false(written: &bool) -> bool {
    !*written
}

/// How a peak is left between two set-downs: nothing is done to the peak itself.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LeftPeak {
    /// The section of the bar there before its sides are set down: the stock where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<SectionSpec>,
    /// The radius of the anvil's edge for the set-down at its start; 3 mm or 1/8 in where it is left out, may be 0.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub near_edge: Option<WrittenLength>,
    /// The same at its end; as at its start where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub far_edge: Option<WrittenLength>,
    /// From foot to foot of the two set-downs; as near as the corner allows where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub base: Option<WrittenLength>,
}

/// The radius of an anvil's edge that a bar is set down over (common practice, no source).
const EDGE: InBoth = InBoth { mm: 3.0, inches: 1.0 / 8.0 };

impl Peak {
    pub(crate) const ABOUT: About = About { name: "peak", summary: "Metal left standing for a sharp outside corner." };

    /// What is left standing for its corner; none where its metal is upset.
    pub(crate) fn standing(&self, corner: CornerSize, around: Surroundings, unit: PlanUnit) -> Option<Standing> {
        let left = self.left.as_ref()?;
        let of = left.of.as_ref().map_or(around.stock, |of| section_size(of, around));
        let [height, width] = corner.across(&of);
        let near = left.near_edge.as_ref().map_or(mm(EDGE.in_unit(unit)), WrittenLength::length);
        let far = left.far_edge.as_ref().map_or(near, WrittenLength::length);
        let base = left.base.as_ref().map(WrittenLength::length);
        Some(Standing { corner, height, width, edges: [near, far], base })
    }
}

impl OneForm for Peak {
    fn words(&self, _drawn: &str) -> String {
        let made = match (&self.left, self.driven) {
            (Some(_), _) => ", its metal left",
            (None, true) => ", driven up once it is bent",
            (None, false) => "",
        };
        format!("peak on {}{made}", self.section.describe())
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.section.sizes(visit);
        let Some(left) = &self.left else { return };
        left.of.iter().for_each(|of| of.sizes(visit));
        left.near_edge.iter().for_each(|edge| visit(SizeName::NearEdge, edge));
        left.far_edge.iter().for_each(|edge| visit(SizeName::FarEdge, edge));
        left.base.iter().for_each(|base| visit(SizeName::Base, base));
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.section.sizes_mut(visit);
        let Some(left) = &mut self.left else { return };
        left.of.iter_mut().for_each(|of| of.sizes_mut(visit));
        left.near_edge.iter_mut().for_each(|edge| visit(SizeName::NearEdge, edge));
        left.far_edge.iter_mut().for_each(|edge| visit(SizeName::FarEdge, edge));
        left.base.iter_mut().for_each(|base| visit(SizeName::Base, base));
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        (Shape::Peak { section: section_size(&self.section, around), corner: CornerSize::default() }, false)
    }

    fn check(&self, first: bool, at: &KeyPath) -> Checked {
        check_section(&self.section, first, SectionPlace::Along, &at.key("section"))?;
        if self.left.is_some() && self.driven {
            return refuse(at.key("driven"), "what is left between set-downs is not driven up; leave one of them out");
        }
        let of = self.left.as_ref().and_then(|left| left.of.as_ref());
        of.map_or(Ok(()), |of| check_section(of, first, SectionPlace::Along, &at.key("left").key("of")))
    }

    fn section_after(&self) -> Option<SectionSpec> {
        Some(self.section.clone())
    }

    fn sections_mut(&mut self) -> Vec<&mut SectionSpec> {
        let of = self.left.as_mut().and_then(|left| left.of.as_mut());
        std::iter::once(&mut self.section).chain(of).collect()
    }

    fn default_gives(&self) -> Gives {
        Gives::Nothing
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        match block.shape {
            // Only its sides are set down.
            Shape::Peak { .. } if self.left.is_some() => vec![Operation::SetDown],
            // It is as thick as its legs until it is bent.
            Shape::Peak { section, .. } if self.driven => block.drawn_to(section),
            Shape::Peak { .. } if block.is_more_than_raw(block.mean_mm2()) => vec![Operation::Upset],
            Shape::Peak { .. } => vec![Operation::Isolate, Operation::Draw],
            _ => Vec::new(),
        }
    }
}
