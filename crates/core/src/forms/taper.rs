//! Taper: one section running into another, or into a point or an edge.

use super::forging::Block;
use super::one::{About, OneForm, length_words, or_zero};
use super::pen::Pen;
use super::surroundings::{Surroundings, section_size};
use crate::file::{Checked, KeyPath, SectionPlace, check_section, refuse};
use crate::metal::{Runout, Shape};
use crate::plan::{Gives, Looking, Operation, RunoutSpec, SectionSpec, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One section running into another, or into a point or an edge.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Taper {
    /// Its forged length.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<WrittenLength>,
    /// Where it starts; as the segment before ends where it is left out (on the first segment: the stock).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<SectionSpec>,
    /// Where it ends.
    pub to: SectionSpec,
    /// How it runs out; straight where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub runout: Option<RunoutSpec>,
}

impl Taper {
    pub(crate) const ABOUT: About =
        About { name: "taper", summary: "One section running into another, a point or an edge." };
}

impl OneForm for Taper {
    fn words(&self, _drawn: &str) -> String {
        let from = self.from.as_ref().map_or(String::new(), |from| format!(", {}", from.describe()));
        let length = length_words(self.length());
        format!("taper{length}{from} to {}{}", self.to.describe(), runout_words(self.runout))
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.length.iter().for_each(|length| visit(SizeName::Length, length));
        self.from.iter().for_each(|from| from.sizes(visit));
        self.to.sizes(visit);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.length.iter_mut().for_each(|length| visit(SizeName::Length, length));
        self.from.iter_mut().for_each(|from| from.sizes_mut(visit));
        self.to.sizes_mut(visit);
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        let from = self.from.as_ref().map_or(around.before, |from| section_size(from, around));
        let runout = self.runout.map_or(Runout::Straight, Runout::from);
        let to = section_size(&self.to, around);
        (Shape::Taper { from, to, runout, length: or_zero(self.length()) }, self.length.is_some())
    }

    fn rewrite(&mut self, gives: Gives, shape: &Shape, pen: Pen) -> Option<()> {
        let Shape::Taper { to, .. } = shape else { return None };
        match gives {
            Gives::Length => self.length = Some(pen.write(shape.length())?),
            _ => self.to = pen.section(*to)?,
        }
        Some(())
    }

    fn check(&self, first: bool, at: &KeyPath) -> Checked {
        if let Some(from) = &self.from {
            check_section(from, first, SectionPlace::EndOfTaper, &at.key("from"))?;
        }
        check_section(&self.to, first, SectionPlace::EndOfTaper, &at.key("to"))?;
        match self.runout {
            Some(RunoutSpec::Power(power)) if !(0.1..=10.0).contains(&power) => {
                let message = format!("the power {power} was found; it runs from 0.1 to 10");
                refuse(at.key("runout").key("power"), message)
            }
            _ => Ok(()),
        }
    }

    fn length(&self) -> Option<&WrittenLength> {
        self.length.as_ref()
    }

    fn length_follows(&self) -> bool {
        self.length.is_none()
    }

    fn section_after(&self) -> Option<SectionSpec> {
        Some(self.to.clone())
    }

    fn sections_mut(&mut self) -> Vec<&mut SectionSpec> {
        // What is left out is as the segment before ends.
        vec![self.from.get_or_insert(SectionSpec::Same), &mut self.to]
    }

    fn given_words(&self, name: SizeName) -> String {
        match name {
            SizeName::Width | SizeName::Thickness => self.to.describe(),
            _ => self.length().map_or_else(String::new, |length| length.text().to_owned()),
        }
    }

    fn has_free_end(&self) -> bool {
        matches!(self.to, SectionSpec::Point | SectionSpec::Edge(_))
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        let Shape::Taper { from, to, .. } = block.shape else { return Vec::new() };
        match () {
            () if block.is_as_raw(from) && block.is_as_raw(to) => Vec::new(),
            () if block.is_more_than_raw(block.mean_mm2()) => vec![Operation::Upset],
            () => vec![Operation::Taper],
        }
    }
}

fn runout_words(runout: Option<RunoutSpec>) -> String {
    match runout {
        None | Some(RunoutSpec::Straight) => String::new(),
        Some(RunoutSpec::Eased) => ", eased".to_owned(),
        Some(RunoutSpec::Power(power)) if power > 1.0 => format!(", full ({power})"),
        Some(RunoutSpec::Power(power)) => format!(", hollow ({power})"),
    }
}
