//! What is asked of every form.

use super::forging::Block;
use super::pen::Pen;
use super::rolled::Rolled;
use super::surroundings::Surroundings;
use crate::file::{Checked, KeyPath};
use crate::metal::{SectionSize, Shape, mm};
use crate::plan::{Gives, Looking, Operation, OutlineSpec, SectionSpec, SizeName, Visiting};
use fh_measure::WrittenLength;
use uom::si::f64::Length;

/// What every form answers.
pub(crate) trait OneForm {
    /// It with its sizes: `taper 2 1/2 in to a point`. A length that is drawn is `drawn`, or where it is gathered `upset`.
    fn words(&self, drawn: &str) -> String;

    /// Looks at every length that is written in it, with its name.
    fn sizes(&self, visit: Looking<'_>);

    /// Changes every length that is written in it; in the order of [`Self::sizes`].
    fn sizes_mut(&mut self, visit: Visiting<'_>);

    /// Its shape with numbers, and whether its length is given.
    fn draft(&self, around: Surroundings) -> (Shape, bool);

    /// Writes the size that gave; none where it has no such size, or where it cannot be written.
    fn rewrite(&mut self, _gives: Gives, _shape: &Shape, _pen: Pen) -> Option<()> {
        None
    }

    /// Makes sure that a file says what can be a plan. `first` tells that nothing lies before it.
    fn check(&self, _first: bool, _at: &KeyPath) -> Checked {
        Ok(())
    }

    /// What the hammer does to it while the bar is straight, in the order in which it has to be done.
    fn forging(&self, _block: &Block<'_>) -> Vec<Operation> {
        Vec::new()
    }

    /// The length as written, where it has one of its own and it is given.
    fn length(&self) -> Option<&WrittenLength> {
        None
    }

    /// Whether it has no length of its own: it follows from the bend.
    fn length_follows(&self) -> bool {
        false
    }

    /// Its outline, seen from above.
    fn outline(&self) -> Option<&OutlineSpec> {
        None
    }

    /// Which sizes of its outline are left out.
    fn rolled(&self) -> Rolled {
        self.outline().map_or(Rolled::Given, Rolled::of)
    }

    /// The section that the bar has after it, as written; none where that is not told.
    fn section_after(&self) -> Option<SectionSpec> {
        None
    }

    /// The sections that may be given as those of the segment before.
    fn sections_mut(&mut self) -> Vec<&mut SectionSpec> {
        Vec::new()
    }

    /// The size that gives where the plan does not say.
    fn default_gives(&self) -> Gives {
        Gives::Length
    }

    /// What the size that gives is called.
    fn given_name(&self, gives: Gives) -> Option<SizeName> {
        gives.size()
    }

    /// A size that gave, as it is written now.
    fn given_words(&self, _name: SizeName) -> String {
        self.length().map_or_else(String::new, |length| length.text().to_owned())
    }

    /// Whether none of its sizes may give.
    fn holds(&self) -> bool {
        false
    }

    /// Whether the bar stays as it is: its section is not its own, and no scale is reckoned.
    fn is_as_stock(&self) -> bool {
        false
    }

    /// Whether its tip is the free end of the bar where it lies at the datum end: there it is read from its other end.
    fn has_free_end(&self) -> bool {
        false
    }

    /// Whether it is one plate with the part before it, without a neck between them.
    fn joins_before(&self) -> bool {
        false
    }

    /// The metal that is cut away of it, in mm³: what is trimmed off, and what a hole loses.
    fn trimmed_mm3(&self, _volume_mm3: f64, _shape: &Shape) -> f64 {
        0.0
    }

    /// Whether it is metal of the finished piece.
    fn is_finished(&self) -> bool {
        true
    }
}

/// What lists say of a kind of form.
pub(crate) struct About {
    /// The word for it.
    pub(crate) name: &'static str,
    /// One line that tells a smith what it is.
    pub(crate) summary: &'static str,
}

/// One section all along; and whether its length is given.
pub(super) fn prism(section: SectionSize, length: Option<&WrittenLength>) -> (Shape, bool) {
    (Shape::Prism { section, length: or_zero(length) }, length.is_some())
}

pub(super) fn or_zero(length: Option<&WrittenLength>) -> Length {
    length.map_or(mm(0.0), WrittenLength::length)
}

/// A length in words after the name of a form: ` 2 1/2 in`; nothing where it is left out.
pub(super) fn length_words(length: Option<&WrittenLength>) -> String {
    length.map_or_else(String::new, |length| format!(" {}", length.text()))
}
