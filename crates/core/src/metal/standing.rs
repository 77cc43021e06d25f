//! Metal left for a sharp corner: how high and how long it stands between the two set-downs beside it.
//!
//! A corner asks for two things of the metal that is left: that it is as high as the corner is deep along its bisector, and
//! that there is enough of it. Both are derived here from plane geometry, and held against a polygon library and quadratures.

use super::{CornerSize, in_mm, mm, mm3};
use std::f64::consts::FRAC_PI_4;
use uom::si::f64::{Length, Volume};

/// So many halvings leave no figure of a length open.
const STEPS: usize = 100;

/// What is left standing for a corner, before its sides are bent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// The corner that is made of it.
    pub corner: CornerSize,
    /// How high the bar is there before its sides are set down, in the plane of the bend.
    pub height: Length,
    /// How wide it is there, across the bend.
    pub width: Length,
    /// The radii of the anvil's edges that its sides are set down over: at its start and at its end.
    pub edges: [Length; 2],
    /// How far apart the feet of the two set-downs are, where that is chosen; else as near as the corner allows.
    pub base: Option<Length>,
}

/// Where the two set-downs go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetDowns {
    /// From wall to wall, where the anvil's edges stand; none where the two fillets meet in a ridge lower than the bar.
    pub top: Option<Length>,
    /// From foot to foot, fillets and all.
    pub base: Length,
    /// How high the metal between them stands above the legs.
    pub height: Length,
    /// The metal between them above the legs.
    pub volume: Volume,
}

impl Standing {
    /// The metal that the corner takes beyond a plain bend: [`CornerSize::peak_volume`].
    pub fn needed(&self) -> Volume {
        self.corner.peak_volume()
    }

    /// How deep the corner is along its bisector: `(rᵢ + t) / cos(θ/2) - rᵢ`. The bar must be as high.
    pub fn depth(&self) -> Length {
        mm(self.outside_mm() / self.half().cos() - self.inside_mm())
    }

    /// By how much the bar is too low; 0 where it is high enough.
    pub fn too_low(&self) -> Length {
        (self.depth() - self.height).max(mm(0.0))
    }

    /// The largest inside radius that this height allows: `(H cos a - t) / (1 - cos a)`, a half the angle; none where even
    /// an inside without a radius is too deep.
    pub fn largest_inside_radius(&self) -> Option<Length> {
        let cos = self.half().cos();
        let radius = (in_mm(self.height) * cos - in_mm(self.corner.thickness)) / (1.0 - cos);
        (radius >= 0.0).then(|| mm(radius))
    }

    /// The largest angle that this height allows, in radians from straight; 0 where the bar is no higher than its legs.
    pub fn largest_turn(&self) -> f64 {
        let cos = self.outside_mm() / (self.inside_mm() + in_mm(self.height));
        2.0 * cos.clamp(0.0, 1.0).acos()
    }

    /// The thickest legs that this height allows; none where even the thinnest are too thick.
    pub fn thickest_legs(&self) -> Option<Length> {
        let inside = self.inside_mm();
        let thickness = (in_mm(self.height) + inside) * self.half().cos() - inside;
        (thickness > 0.0).then(|| mm(thickness))
    }

    /// The radius that the outside keeps where the bar is too low to fill it: `short / (1 / cos a - 1)`; 0 where it fills.
    pub fn outside_left_round(&self) -> Length {
        self.too_low() / (1.0 / self.half().cos() - 1.0)
    }

    /// Where the set-downs go: at the base that is chosen, else as near to each other as the metal and the height allow.
    pub fn set_downs(&self) -> Option<SetDowns> {
        let height = self.above_legs_mm();
        if height <= 0.0 {
            return None;
        }
        let fillets = self.fillets_mm2(height);
        let runs = self.runs_mm(height);
        let top = match self.base {
            Some(base) => in_mm(base) - runs,
            None => (self.needed_mm2() - fillets) / height,
        };
        if top >= 0.0 {
            return Some(self.between(Some(top), runs + top, height, height * top + fillets));
        }
        let ridge = match self.base {
            Some(base) => bisect(height, |ridge| self.runs_mm(ridge) - in_mm(base)),
            None => bisect(height, |ridge| self.fillets_mm2(ridge) - self.needed_mm2()).max(self.least_ridge_mm()),
        };
        Some(self.between(None, self.runs_mm(ridge), ridge, self.fillets_mm2(ridge)))
    }

    /// The metal that stands above the legs: nothing where the bar is no higher.
    pub fn volume(&self) -> Volume {
        self.set_downs().map_or(mm3(0.0), |found| found.volume)
    }

    fn between(&self, top: Option<f64>, base: f64, height: f64, area: f64) -> SetDowns {
        SetDowns { top: top.map(mm), base: mm(base), height: mm(height), volume: mm3(in_mm(self.width) * area) }
    }

    /// The area of standing metal that holds what the corner takes, in mm²: less where it is wider than the legs.
    fn needed_mm2(&self) -> f64 {
        (self.needed() / mm3(1.0)).value / in_mm(self.width)
    }

    /// The area under both fillets up to a height, in mm².
    fn fillets_mm2(&self, height: f64) -> f64 {
        self.edges.iter().map(|edge| fillet_mm2(in_mm(*edge), height)).sum()
    }

    /// How far both fillets run along the bar up to a height, in mm.
    fn runs_mm(&self, height: f64) -> f64 {
        self.edges.iter().map(|edge| run_mm(in_mm(*edge), height)).sum()
    }

    /// A ridge must be as high as the corner is deep, as far as the bar is.
    fn least_ridge_mm(&self) -> f64 {
        in_mm(self.depth() - self.corner.thickness).min(self.above_legs_mm())
    }

    fn above_legs_mm(&self) -> f64 {
        in_mm(self.height - self.corner.thickness)
    }

    fn half(&self) -> f64 {
        self.corner.turn / 2.0
    }

    fn inside_mm(&self) -> f64 {
        in_mm(self.corner.inside_radius)
    }

    fn outside_mm(&self) -> f64 {
        in_mm(self.corner.inside_radius + self.corner.thickness)
    }
}

/// How far a fillet of a quarter arc runs along the bar until it is so high: `√(r² - (r - h)²)`, all of r where h is more.
fn run_mm(radius: f64, height: f64) -> f64 {
    let left = (radius - height).max(0.0);
    (radius * radius - left * left).max(0.0).sqrt()
}

/// The area under a fillet of a quarter arc up to a height: `r² (1 - π/4)` where the height is no less than r.
fn fillet_mm2(radius: f64, height: f64) -> f64 {
    if height >= radius {
        return radius * radius * (1.0 - FRAC_PI_4);
    }
    let run = run_mm(radius, height);
    radius * run - (run * (radius - height) + radius * radius * (run / radius).asin()) / 2.0
}

/// Where a rising function passes 0 between 0 and `most`; `most` where it stays below.
fn bisect(most: f64, rising: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (0.0, most);
    for _ in 0..STEPS {
        let middle = (low + high) / 2.0;
        if rising(middle) < 0.0 { low = middle } else { high = middle }
    }
    high
}
