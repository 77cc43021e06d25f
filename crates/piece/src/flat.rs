//! The flat outlines of a plan: leaves, plates and bosses with their holes, as they lie before they are bent.

use fh_core::balance::Balance;
use fh_core::describe::segment_name;
use fh_core::metal::Shape;
use fh_core::plan::Plan;
use uom::si::length::millimeter;

/// Points on a whole turn of a round hole.
const TURN_POINTS: usize = 96;

/// One flat outline, in mm: along the bar from its root, and across it.
#[derive(Clone, Debug, PartialEq)]
pub struct Flat {
    /// The bar.
    pub bar: usize,
    /// The segment, counted through the bar.
    pub segment: usize,
    /// What the smith calls it.
    pub name: String,
    /// Its outer edge, then its holes where it has some: each closed.
    pub loops: Vec<Vec<[f64; 2]>>,
}

impl Flat {
    /// The least and the greatest place along and across.
    pub fn bounds(&self) -> [[f64; 2]; 2] {
        let points = self.loops.iter().flatten();
        points.fold([[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]], |[low, high], point| {
            [[low[0].min(point[0]), low[1].min(point[1])], [high[0].max(point[0]), high[1].max(point[1])]]
        })
    }

    /// It moved along and across.
    pub fn moved(&self, by: [f64; 2]) -> Self {
        let moved = |points: &Vec<[f64; 2]>| points.iter().map(|point| [point[0] + by[0], point[1] + by[1]]).collect();
        Self { loops: self.loops.iter().map(moved).collect(), ..self.clone() }
    }
}

/// The flat outlines of a plan, bar by bar.
pub fn flats(plan: &Plan, balance: &Balance) -> Vec<Flat> {
    let bars = plan.bars.iter().zip(&balance.bars).enumerate();
    bars.flat_map(|(bar, (planned, balanced))| {
        let flat = planned.flat();
        let segments: Vec<_> = flat
            .iter()
            .zip(&balanced.segments)
            .enumerate()
            .filter_map(|(segment, (_, balance))| {
                let loops = loops(balance.shape.as_ref()?)?;
                Some(Flat { bar, segment, name: segment_name(planned, segment), loops })
            })
            .collect();
        segments
    })
    .collect()
}

fn loops(shape: &Shape) -> Option<Vec<Vec<[f64; 2]>>> {
    match shape {
        Shape::Flag { outline, holes, .. } => {
            let holes = holes.iter().map(|hole| hole.points_mm(TURN_POINTS));
            Some(std::iter::once(outline.points_mm()).chain(holes).collect())
        }
        Shape::Hole { outline, hole, at, .. } => {
            let middle = at.get::<millimeter>();
            let hole = hole.points_mm(TURN_POINTS).into_iter().map(|[along, across]| [along + middle, across]);
            Some(vec![outline.points_mm(), hole.collect()])
        }
        _ => None,
    }
}

/// The outlines side by side with a gap between them, so that none lies on another.
pub(crate) fn side_by_side(flats: &[Flat], gap: f64) -> Vec<Flat> {
    let mut edge = 0.0;
    flats
        .iter()
        .map(|flat| {
            let [low, high] = flat.bounds();
            let moved = flat.moved([-low[0], edge - low[1]]);
            edge += high[1] - low[1] + gap;
            moved
        })
        .collect()
}
