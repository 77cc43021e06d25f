//! What a segment finds on the bar before it.

use crate::metal::{SectionSize, mm};
use crate::plan::{CollarRule, GrownSpec, Lean, SectionSpec};
use fh_heat::growth::{Share, grown_mm};
use fh_measure::WrittenLength;
use uom::si::f64::Length;

/// What a segment finds when it is worked out: the bar's stock and how the segment before ends.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Surroundings {
    /// The starting bar; in a branch, what the cut leaves of it.
    pub(crate) stock: SectionSize,
    /// How the segment before ends.
    pub(crate) before: SectionSize,
    /// Whether that is a plate: a boss or a flag, spread wider than the bar.
    pub(crate) after_a_plate: bool,
    /// Whether nothing lies before it but what is trimmed away, and its chain hangs on nothing there.
    pub(crate) at_free_end: bool,
    /// How collars are reckoned where the segment does not say.
    pub(crate) collar: CollarRule,
}

/// A section with `stock` and `same` replaced by what they stand for.
pub(crate) fn section_size(spec: &SectionSpec, around: Surroundings) -> SectionSize {
    match spec {
        SectionSpec::Stock => around.stock,
        SectionSpec::Same => around.before,
        SectionSpec::Point => SectionSize::Point,
        SectionSpec::Square(square) => {
            SectionSize::Square { side: square.side.length(), edge_radius: or_zero(square.edge_radius.as_ref()) }
        }
        SectionSpec::Round(diameter) => SectionSize::Round { diameter: diameter.length() },
        SectionSpec::Flat { width, thickness, edge_radius } => SectionSize::Flat {
            width: width.length(),
            thickness: thickness.length(),
            edge_radius: or_zero(edge_radius.as_ref()),
        },
        SectionSpec::Oval { width, thickness } => {
            SectionSize::Oval { width: width.length(), thickness: thickness.length() }
        }
        SectionSpec::Hexagon(size) => SectionSize::Hexagon { across_flats: size.length() },
        SectionSpec::Octagon(size) => SectionSize::Octagon { across_flats: size.length() },
        SectionSpec::Diamond(side) => SectionSize::Diamond { side: side.length() },
        SectionSpec::HalfRound { width, height } => {
            SectionSize::HalfRound { width: width.length(), height: height.length() }
        }
        SectionSpec::Edge(width) => SectionSize::Edge { width: width.length() },
        SectionSpec::Grown(grown) => {
            let of = section_size(&grown.of, around);
            grown_to(grown, &of, grown.lean)
                .map_or(of, |[width, thickness]| SectionSize::flat(mm(width), mm(thickness)))
        }
    }
}

/// The width and thickness in mm that a section grows to when it is struck; none where it is no thicker than it is struck to.
pub(crate) fn grown_to(grown: &GrownSpec, of: &SectionSize, lean: Lean) -> Option<[f64; 2]> {
    let (to, from_top) = grown.struck()?;
    let [width, thickness] = of.extents_mm();
    let before = if from_top { [width, thickness] } else { [thickness, width] };
    let share = match lean {
        Lean::Likely => Share::Likely,
        Lean::Least => Share::Low,
        Lean::Most => Share::High,
    };
    let grows = grown_mm(before, to.mm(), grown.bite.mm(), share)?;
    Some(if from_top { [grows, to.mm()] } else { [to.mm(), grows] })
}

fn or_zero(length: Option<&WrittenLength>) -> Length {
    length.map_or(mm(0.0), WrittenLength::length)
}
