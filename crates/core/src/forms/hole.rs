//! Hole: a boss with a hole, punched, slit and drifted, or drilled.

use super::forging::Block;
use super::one::{About, OneForm};
use super::pen::Pen;
use super::surroundings::Surroundings;
use crate::file::{Checked, KeyPath, check_outline};
use crate::metal::{HoleSize, Outline, Shape, in_mm, mm3, slug_area};
use crate::plan::{Gives, HoleSpec, Looking, Made, Operation, OutlineSpec, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::f64::Length;

/// A boss with a hole through its thickness.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Hole {
    /// The outline of the boss.
    pub outline: OutlineSpec,
    /// Its thickness.
    pub thickness: WrittenLength,
    /// The hole.
    pub hole: HoleSpec,
    /// How the hole is made.
    pub made: Made,
    /// The diameter of the slug that a punch drives out, through the full thickness; the hole itself where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slug: Option<WrittenLength>,
    /// Where the hole's middle lies, from the boss's root; the middle of the boss where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<WrittenLength>,
}

impl Hole {
    pub(crate) const ABOUT: About =
        About { name: "hole", summary: "A boss with a hole: punched, slit and drifted, or drilled." };

    /// How wide the boss is before its hole is made: a drift pushes its own width of metal aside.
    pub fn width_before(&self, outline: &Outline, hole: &HoleSize) -> Length {
        if self.made == Made::Drifted { outline.width() - hole.width() } else { outline.width() }
    }
}

impl OneForm for Hole {
    fn words(&self, _drawn: &str) -> String {
        let boss = self.outline.describe();
        format!("{} {} in {boss}, {} thick", self.made.name(), self.hole.describe(), self.thickness.text())
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.outline.sizes(visit);
        visit(SizeName::Thickness, &self.thickness);
        self.hole.sizes(visit);
        self.slug.iter().for_each(|slug| visit(SizeName::Slug, slug));
        self.at.iter().for_each(|at| visit(SizeName::MiddleOfHole, at));
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.outline.sizes_mut(visit);
        visit(SizeName::Thickness, &mut self.thickness);
        self.hole.sizes_mut(visit);
        self.slug.iter_mut().for_each(|slug| visit(SizeName::Slug, slug));
        self.at.iter_mut().for_each(|at| visit(SizeName::MiddleOfHole, at));
    }

    fn draft(&self, _around: Surroundings) -> (Shape, bool) {
        let outline = Outline::from(&self.outline);
        let at = self.at.as_ref().map_or_else(|| outline.length() / 2.0, WrittenLength::length);
        let (thickness, hole) = (self.thickness.length(), HoleSize::from(&self.hole));
        (Shape::Hole { outline, thickness, hole, at }, true)
    }

    fn rewrite(&mut self, gives: Gives, shape: &Shape, pen: Pen) -> Option<()> {
        let Shape::Hole { outline, thickness, at, .. } = shape else { return None };
        match gives {
            Gives::Thickness => self.thickness = pen.write(*thickness)?,
            _ => self.outline = pen.outline(&self.outline, outline)?,
        }
        if let (Some(written), Gives::Length) = (&mut self.at, gives) {
            *written = pen.write(*at)?;
        }
        Some(())
    }

    fn check(&self, _first: bool, at: &KeyPath) -> Checked {
        check_outline(&self.outline, &at.key("outline"))
    }

    fn length(&self) -> Option<&WrittenLength> {
        self.outline.length()
    }

    fn outline(&self) -> Option<&OutlineSpec> {
        Some(&self.outline)
    }

    fn given_words(&self, name: SizeName) -> String {
        match name {
            SizeName::Thickness => self.thickness.text().to_owned(),
            SizeName::Width => self.outline.describe(),
            _ => self.length().map_or_else(String::new, |length| length.text().to_owned()),
        }
    }

    fn trimmed_mm3(&self, _volume_mm3: f64, shape: &Shape) -> f64 {
        let Shape::Hole { hole, thickness, .. } = shape else { return 0.0 };
        let lost = match (self.made, &self.slug) {
            (Made::Drifted, _) => return 0.0,
            (Made::Punched, Some(slug)) => slug_area(slug.length()),
            _ => hole.area(),
        };
        (lost * *thickness / mm3(1.0)).value
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        use Operation as O;
        let Shape::Hole { outline, thickness, hole, .. } = block.shape else { return Vec::new() };
        // Opened by its drift, or dressed back to the bar's own width afterwards.
        let as_raw = [self.width_before(outline, hole), outline.width()]
            .iter()
            .any(|width| block.is_plate_of_raw(in_mm(*width), in_mm(*thickness)));
        let mut all = if as_raw { Vec::new() } else { vec![O::Isolate, O::Flatten] };
        if block.is_gathered && !as_raw {
            all.insert(0, O::Upset);
        }
        match self.made {
            Made::Punched => all.push(O::Punch),
            Made::Drifted => all.extend([O::Punch, O::Drift]),
            Made::Drilled => all.push(O::Drill),
        }
        all
    }
}
