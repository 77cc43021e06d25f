//! A section changed into another, that keeps the sizes it can.

use crate::first_sizes::FirstSizes;
use crate::plan::{GrownSpec, SectionKind, SectionSpec, SquareSpec};
use fh_measure::WrittenLength;

/// How much thinner than wide a new flat is, and the like.
const FLATTER: f64 = 0.5;
/// How far a section that grows is struck down at first, as a share of the bar.
const STRUCK: f64 = 0.75;
/// The bite of a hammer's face at first, in mm: common practice, no source.
const BITE_MM: f64 = 25.0;

/// The sizes of a section as it is written: width and thickness, where it has its own.
fn written(section: &SectionSpec) -> Option<(&WrittenLength, &WrittenLength)> {
    match section {
        SectionSpec::Stock | SectionSpec::Same | SectionSpec::Point | SectionSpec::Grown(_) => None,
        SectionSpec::Square(square) => Some((&square.side, &square.side)),
        SectionSpec::Round(size)
        | SectionSpec::Hexagon(size)
        | SectionSpec::Octagon(size)
        | SectionSpec::Diamond(size)
        | SectionSpec::Edge(size) => Some((size, size)),
        SectionSpec::Flat { width, thickness, .. } | SectionSpec::Oval { width, thickness } => Some((width, thickness)),
        SectionSpec::HalfRound { width, height } => Some((width, height)),
    }
}

/// A section of another kind that keeps the sizes it can; none where no size can be written.
pub fn convert_section(now: &SectionSpec, kind: SectionKind, sizes: &FirstSizes) -> Option<SectionSpec> {
    let [stock_width, stock_thickness] = sizes.stock_mm;
    let (width, thickness) = match written(now) {
        Some((width, thickness)) => (width.clone(), thickness.clone()),
        None => (sizes.size(stock_width)?, sizes.size(stock_thickness)?),
    };
    let thin = if thickness.mm() < width.mm() { thickness.clone() } else { sizes.size(width.mm() * FLATTER)? };
    Some(match kind {
        SectionKind::Stock => SectionSpec::Stock,
        SectionKind::Same => SectionSpec::Same,
        SectionKind::Point => SectionSpec::Point,
        SectionKind::Square => SectionSpec::Square(SquareSpec { side: thickness, edge_radius: None }),
        SectionKind::Round => SectionSpec::Round(thickness),
        SectionKind::Hexagon => SectionSpec::Hexagon(thickness),
        SectionKind::Octagon => SectionSpec::Octagon(thickness),
        SectionKind::Diamond => SectionSpec::Diamond(thickness),
        SectionKind::Edge => SectionSpec::Edge(width),
        SectionKind::Flat => SectionSpec::Flat { width, thickness: thin, edge_radius: None },
        SectionKind::Oval => SectionSpec::Oval { width, thickness: thin },
        SectionKind::HalfRound => SectionSpec::HalfRound { width, height: thin },
        SectionKind::Grown => {
            SectionSpec::Grown(GrownSpec::to_thickness(sizes.size(stock_thickness * STRUCK)?, sizes.size(BITE_MM)?))
        }
    })
}
