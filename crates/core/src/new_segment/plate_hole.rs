//! A hole as it is first put through a plate: where it has the most metal round it.

use crate::first_sizes::FirstSizes;
use crate::forms::Flag;
use crate::metal::{HoleInPlate, Shape, in_mm};
use crate::plan::{HoleSpec, MOST_HOLES, Made, PlateHole};
use fh_measure::{LengthRange, WrittenLength};

/// Across a first hole, against the width of its plate.
const WIDE: f64 = 0.2;
/// And no more than so many mm: that of a screw.
const MOST_MM: f64 = 6.0;
/// Places along the plate that are tried.
const PLACES: usize = 16;

impl Flag {
    /// Puts one more hole through a plate, as the last one is where there is one, at the place on its middle line where the most metal
    /// is left round it; none where the plate has all that it may have, or no room.
    pub fn add_hole(&mut self, shape: Option<&Shape>, sizes: &FirstSizes) -> Option<()> {
        let shape = shape.filter(|_| self.holes.len() < MOST_HOLES)?;
        let outline = match shape {
            Shape::Flag { outline, .. } => outline,
            _ => return None,
        };
        let wide = in_mm(outline.width()).min(in_mm(outline.length()));
        let unit = sizes.units.length.length_unit();
        let first = || {
            let hole = HoleSpec::Round(sizes.size((WIDE * wide).min(MOST_MM))?);
            let at = sizes.size(in_mm(outline.length()) / 2.0)?;
            Some(PlateHole { hole, made: Made::Drilled, slug: None, at, across: None })
        };
        let like = self.holes.last().cloned().map_or_else(first, Some)?;
        let [low, high] = outline.across_mm();
        let middle = WrittenLength::from_mm(f64::midpoint(low, high), unit, LengthRange::Any).ok();
        let across =
            if self.holes.is_empty() { middle.filter(|across| across.mm().abs() > 0.01) } else { like.across.clone() };
        let place = |step: usize| {
            let at = sizes.size(in_mm(outline.length()) * step as f64 / PLACES as f64)?;
            Some(PlateHole { at, across: across.clone(), ..like.clone() })
        };
        // Held against the metal to a thousandth: of places alike the one nearest to the root.
        let room = |hole: &PlateHole| {
            let holes: Vec<_> = self.holes.iter().chain([hole]).map(HoleInPlate::from).collect();
            let pierced = shape.clone().with_holes(holes);
            let walls = pierced.walls();
            let least = walls.iter().map(|wall| in_mm(wall.left)).fold(f64::INFINITY, f64::min);
            pierced.holds_its_holes().then_some((least * 1000.0).round())
        };
        let all = (1..PLACES).filter_map(place).filter_map(|hole| Some((room(&hole)?, hole)));
        let best = all.reduce(|best, other| if other.0 > best.0 { other } else { best });
        self.holes.push(best.map(|(_, hole)| hole)?);
        Some(())
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::metal::{Outline, mm};
    use crate::plan::{OutlineSpec, ThicknessSpec, Units};

    #[test]
    fn new_holes_lie_where_the_most_metal_is_left_round_them() {
        let size =
            |mm: f64| WrittenLength::from_mm(mm, fh_measure::LengthUnit::Millimeter, LengthRange::AboveZero).unwrap();
        let outline = OutlineSpec::Rectangle { length: Some(size(80.0)), width: Some(size(30.0)) };
        let thickness = ThicknessSpec::Even(size(4.0));
        let mut plate =
            Flag { outline, blank: None, base_line: None, thickness, trim: None, joined: false, holes: Vec::new() };
        let sizes = FirstSizes::without_stock(Units::default());
        for _ in 0..3 {
            let shape = Shape::plate(Outline::from(&plate.outline), mm(4.0), mm(4.0));
            plate.add_hole(Some(&shape), &sizes).unwrap();
            let holes: Vec<_> = plate.holes.iter().map(HoleInPlate::from).collect();
            let shape = shape.with_holes(holes);
            assert!(shape.holds_its_holes());
            assert!(shape.walls().iter().all(|wall| in_mm(wall.left) > 5.0), "{:?}", plate.holes);
        }
    }
}
