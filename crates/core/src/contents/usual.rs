//! The usual sizes that a block is answered in: the next smaller squares, rounds and flats, and thicknesses of plate.

use super::answer::{Answer, disc_diameter, length_as, twice_as_long_leaf};
use crate::metal::{SectionSize, View};
use crate::plan::PlanUnit;
use fh_measure::{LengthUnit, in_mm2, mm, mm3};

/// Sides of squares, diameters of rounds, and widths and thicknesses of flats that merchants keep, in mm (common practice, no
/// source).
const METRIC: [f64; 16] = [3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0];
/// The same in inches.
const INCHES: [f64; 16] =
    [0.125, 0.1875, 0.25, 0.3125, 0.375, 0.4375, 0.5, 0.5625, 0.625, 0.75, 0.875, 1.0, 1.25, 1.5, 1.75, 2.0];
/// Thicknesses that a leaf or a disc is spread to, in mm (common practice, no source).
const PLATE_METRIC: [f64; 5] = [6.0, 5.0, 4.0, 3.0, 2.0];
/// The same in inches.
const PLATE_INCHES: [f64; 5] = [0.25, 0.1875, 0.15625, 0.125, 0.09375];
/// How many of each kind are told.
const OF_A_KIND: usize = 3;
/// A flat out of a bar as wide as it is thick is at most this share of it thick.
const FLAT: f64 = 0.55;

/// What could be made of so much metal in mm³ of a bar.
pub(super) fn answers(metal: f64, stock: &SectionSize, unit: PlanUnit) -> Vec<Answer> {
    let drawn = sections(stock, unit).into_iter().map(|section| {
        let length = length_as(mm3(metal), &section);
        Answer::Drawn { section, length }
    });
    let plates: Vec<f64> = in_unit(unit, PLATE_METRIC, PLATE_INCHES);
    let least = stock.seen_mm(View::Side).min(stock.seen_mm(View::Top));
    let plates: Vec<f64> = plates.into_iter().filter(|thickness| *thickness < least).collect();
    let leaves = plates.iter().map(|thickness| {
        let [length, width] = twice_as_long_leaf(mm3(metal), mm(*thickness));
        Answer::Leaf { thickness: mm(*thickness), length, width }
    });
    let discs = plates.iter().map(|thickness| {
        let diameter = disc_diameter(mm3(metal), mm(*thickness));
        Answer::Disc { thickness: mm(*thickness), diameter }
    });
    drawn.chain(leaves).chain(discs).collect()
}

/// The next smaller usual sections.
fn sections(stock: &SectionSize, unit: PlanUnit) -> Vec<SectionSize> {
    let sizes = in_unit(unit, METRIC, INCHES);
    let [wide, thick] = [View::Top, View::Side].map(|view| stock.seen_mm(view));
    let is_smaller = |section: &SectionSize| in_mm2(section.area()) < in_mm2(stock.area()) * (1.0 - 1e-9);
    let next = |of: fn(f64) -> SectionSize| {
        let all = sizes.iter().rev().map(move |size| of(*size));
        all.filter(is_smaller).filter(|it| it.seen_mm(View::Side) <= wide.max(thick)).take(OF_A_KIND)
    };
    let squares = next(|size| SectionSize::Square { side: mm(size), edge_radius: mm(0.0) });
    let rounds = next(|size| SectionSize::Round { diameter: mm(size) });
    // A flat bar keeps its width; another gets somewhat wider.
    let is_flat = wide.min(thick) < 0.8 * wide.max(thick);
    let most = wide.max(thick);
    let width = if is_flat { Some(most) } else { sizes.iter().copied().find(|size| *size > 1.1 * most) };
    let thickest = if is_flat { wide.min(thick) - 1e-6 } else { FLAT * most };
    let flats = width.into_iter().flat_map(|width| {
        let thinner = sizes.iter().rev().filter(|size| **size <= thickest).take(OF_A_KIND);
        thinner.map(move |thickness| SectionSize::flat(mm(width), mm(*thickness))).collect::<Vec<_>>()
    });
    squares.chain(rounds).chain(flats).collect()
}

fn in_unit<const N: usize>(unit: PlanUnit, metric: [f64; N], inches: [f64; N]) -> Vec<f64> {
    match unit {
        PlanUnit::Inch => inches.iter().map(|inch| inch * LengthUnit::Inch.mm()).collect(),
        PlanUnit::Millimeter => metric.to_vec(),
    }
}
