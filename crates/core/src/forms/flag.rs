//! Flag: a block necked off, then spread to a leaf or a plate.

use super::forging::Block;
use super::one::{About, OneForm};
use super::pen::Pen;
use super::rolled::Rolled;
use super::surroundings::Surroundings;
use crate::file::{Checked, KeyPath, check_outline, refuse};
use crate::metal::{HoleInPlate, Outline, Shape, mm3};
use crate::plan::{
    BaseLine, Gives, Looking, MOST_HOLES, Made, Operation, OutlineSpec, PlateHole, SizeName, ThicknessSpec, Visiting,
    holes_words,
};
use fh_measure::{WrittenLength, WrittenShare};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::f64::Length;

/// A block necked off to be spread.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Flag {
    /// Its outline, seen from above.
    pub outline: OutlineSpec,
    /// What it is spread to before it is cut to its outline; in place of `trim`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blank: Option<OutlineSpec>,
    /// Where the base line lies that outline and blank have in common; in the middle of both where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub base_line: Option<BaseLine>,
    /// Its thickness.
    pub thickness: ThicknessSpec,
    /// What is trimmed off, as a share of the finished volume.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trim: Option<WrittenShare>,
    /// Whether it is one plate with the flag before it: no neck lies between them.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[schemars(extend("default" = false))]
    pub joined: bool,
    /// The holes through it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[schemars(length(max = 50))]
    pub holes: Vec<PlateHole>,
}

impl Flag {
    pub(crate) const ABOUT: About =
        About { name: "flag", summary: "A block necked off, then spread to a leaf or a plate." };

    /// Whether something is cut off it after it is spread: a share, or what its blank has beyond its outline.
    pub fn is_cut(&self) -> bool {
        self.trim.is_some() || self.blank.is_some()
    }

    /// Whether every hole that is not drilled is slit first, and drifted open afterwards.
    pub fn is_slit(&self) -> bool {
        let mut hot = self.holes.iter().filter(|hole| hole.made != Made::Drilled).peekable();
        hot.peek().is_some() && hot.all(|hole| hole.made == Made::Drifted)
    }

    /// Where the base line lies in the outline and in the blank, where that is said.
    fn base_lines(&self) -> [Option<Length>; 2] {
        let of = |written: &Option<WrittenLength>| written.as_ref().map(WrittenLength::length);
        self.base_line.as_ref().map_or([None, None], |base| [of(&base.outline), of(&base.blank)])
    }

    fn check_blank(&self, at: &KeyPath) -> Checked {
        if let Some(blank) = &self.blank {
            if self.trim.is_some() {
                return refuse(
                    at.key("trim"),
                    "what is cut off a plate with a \"blank\" follows from it; it has \"blank\" or \"trim\", one of the two",
                );
            }
            if Rolled::of(blank) != Rolled::Given {
                return refuse(
                    at.key("blank").key("rectangle"),
                    "a blank has both its sizes, \"length\" and \"width\"",
                );
            }
            check_outline(blank, &at.key("blank"))?;
        }
        let Some(base) = &self.base_line else { return Ok(()) };
        if base.blank.is_some() && self.blank.is_none() {
            return refuse(at.key("base_line").key("blank"), "this flag has no blank");
        }
        for (key, base, outline) in
            [("outline", &base.outline, Some(&self.outline)), ("blank", &base.blank, self.blank.as_ref())]
        {
            if base.is_some() && matches!(outline, Some(OutlineSpec::Polygon(_))) {
                return refuse(
                    at.key("base_line").key(key),
                    "the corners of a polygon are counted from the base line already",
                );
            }
        }
        Ok(())
    }
}

impl OneForm for Flag {
    fn words(&self, _drawn: &str) -> String {
        let mut thick = self.thickness.describe();
        if self.joined {
            thick.push_str(", one plate with what is before it");
        }
        let mut holes = holes_words(&self.holes);
        if !holes.is_empty() {
            holes.insert_str(0, "; ");
        }
        if let Some(blank) = &self.blank {
            return format!("{}, {thick}, cut to {}{holes}", blank.describe(), self.outline.describe());
        }
        let trim = self.trim.as_ref().map_or(String::new(), |share| format!(", {} trimmed", share.text()));
        format!("{}, {thick}{trim}{holes}", self.outline.describe())
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.outline.sizes(visit);
        if let Some(blank) = &self.blank {
            blank.sizes(&mut |name, size| visit(name.of_blank(), size));
        }
        if let Some(BaseLine { outline, blank }) = &self.base_line {
            outline.iter().for_each(|size| visit(SizeName::BaseLine, size));
            blank.iter().for_each(|size| visit(SizeName::BlankBaseLine, size));
        }
        self.thickness.sizes(visit);
        self.holes.iter().for_each(|hole| hole.sizes(visit));
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.outline.sizes_mut(visit);
        if let Some(blank) = &mut self.blank {
            blank.sizes_mut(&mut |name, size| visit(name.of_blank(), size));
        }
        if let Some(BaseLine { outline, blank }) = &mut self.base_line {
            outline.iter_mut().for_each(|size| visit(SizeName::BaseLine, size));
            blank.iter_mut().for_each(|size| visit(SizeName::BlankBaseLine, size));
        }
        self.thickness.sizes_mut(visit);
        self.holes.iter_mut().for_each(|hole| hole.sizes_mut(visit));
    }

    fn draft(&self, _around: Surroundings) -> (Shape, bool) {
        let (root, tip) = match &self.thickness {
            ThicknessSpec::Even(even) => (even.length(), even.length()),
            ThicknessSpec::Tapered { root, tip } => (root.length(), tip.length()),
        };
        let [of_outline, of_blank] = self.base_lines();
        let outline = Outline::from(&self.outline).on_base_line(of_outline);
        let blank = self.blank.as_ref().map(|blank| Outline::from(blank).on_base_line(of_blank));
        let holes = self.holes.iter().map(HoleInPlate::from).collect();
        (Shape::flag(outline, blank, root, tip).with_holes(holes), true)
    }

    fn rewrite(&mut self, gives: Gives, shape: &Shape, pen: Pen) -> Option<()> {
        let Shape::Flag { outline, root, tip, blank, .. } = shape else { return None };
        let tip = blank.as_ref().map_or(*tip, |blank| blank.tip);
        match (gives, &mut self.blank, blank) {
            (Gives::Thickness, ..) => self.thickness = pen.thickness(&self.thickness, *root, tip)?,
            (_, Some(written), Some(blank)) => *written = pen.outline(written, &blank.outline)?,
            _ => self.outline = pen.outline(&self.outline, outline)?,
        }
        Some(())
    }

    fn check(&self, _first: bool, at: &KeyPath) -> Checked {
        check_outline(&self.outline, &at.key("outline"))?;
        if self.holes.len() > MOST_HOLES {
            let found = self.holes.len();
            return refuse(at.key("holes"), format!("{found} holes were found; a plate has {MOST_HOLES} at the most"));
        }
        self.check_blank(at)
    }

    fn length(&self) -> Option<&WrittenLength> {
        self.outline.length()
    }

    fn outline(&self) -> Option<&OutlineSpec> {
        Some(&self.outline)
    }

    fn given_name(&self, gives: Gives) -> Option<SizeName> {
        let given = self.blank.as_ref().unwrap_or(&self.outline);
        let is_disc = matches!(given, OutlineSpec::Disc { .. }) && gives != Gives::Thickness;
        let name = if is_disc { Some(SizeName::Diameter) } else { gives.size() };
        if self.blank.is_some() { name.map(SizeName::of_blank) } else { name }
    }

    fn given_words(&self, name: SizeName) -> String {
        if let Some(blank) = self.blank.as_ref().filter(|_| name.of_blank() == name && name != SizeName::Thickness) {
            return match (name, blank.length()) {
                (SizeName::BlankLength | SizeName::BlankDiameter, Some(length)) => length.text().to_owned(),
                _ => blank.describe(),
            };
        }
        match (name, self.outline.length()) {
            (SizeName::Thickness, _) => self.thickness.describe(),
            (SizeName::Width, _) | (_, None) => self.outline.describe(),
            (_, Some(length)) => length.text().to_owned(),
        }
    }

    fn has_free_end(&self) -> bool {
        true
    }

    fn joins_before(&self) -> bool {
        self.joined
    }

    fn trimmed_mm3(&self, volume_mm3: f64, shape: &Shape) -> f64 {
        if let Some(blank) = shape.blank() {
            // Below 0 where the outline is larger than its blank: the bar still holds the blank.
            return volume_mm3 * ((blank.volume() / shape.volume()).value - 1.0);
        }
        let trimmed = self.trim.as_ref().map_or(0.0, |share| volume_mm3 * share.ratio());
        trimmed + (shape.lost_to_holes() / mm3(1.0)).value
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        use Operation as O;
        let has = |made: Made| self.holes.iter().any(|hole| hole.made == made);
        let wanted = [
            // Spreading lengthens: what has to become shorter is upset first.
            (block.is_gathered, O::Upset),
            (true, O::Isolate),
            (true, O::Spread),
            // A punch and a drift push the plate out of shape: its outline is cut after them.
            (has(Made::Punched) || has(Made::Drifted), O::Punch),
            (has(Made::Drifted), O::Drift),
            (self.is_cut(), O::Trim),
            (has(Made::Drilled), O::Drill),
        ];
        wanted.into_iter().filter(|(is_wanted, _)| *is_wanted).map(|(_, operation)| operation).collect()
    }
}
