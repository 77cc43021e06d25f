//! Places of a flat plate where they lie once it is bent or rolled: its blank too, which reaches beyond its outline.

use crate::Line;
use fh_core::balance::SegmentBalance;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::SocketAxis;
use fh_core::space::vector::Vector;
use fh_measure::in_mm;

/// Where a place in the middle of a plate's thickness comes to lie, in mm: so far along from its root, and so far away from the
/// smith. Beyond its outline's ends the plate runs straight on. None where the part is no plate or has no line.
pub fn place_on_plate(line: &Line, balance: &SegmentBalance, [along, away]: [f64; 2]) -> Option<Vector> {
    let Some(Shape::Flag { root, tip, .. }) = &balance.shape else { return None };
    let length = in_mm(balance.forged_length).max(1e-9);
    let share = along / length;
    let frame = line.frame_at(if balance.reversed { 1.0 - share } else { share }, length)?;
    let Some(Bent::Socket { mandrel, axis: SocketAxis::Along, side, .. }) = balance.bent else {
        return Some(frame.place([0.0, -away, 0.0]));
    };
    // As its surface is rolled: the middle of the bar stays, the metal lies round the mandrel over it, or under it.
    let radius = (in_mm(mandrel) + (in_mm(*root) + in_mm(*tip)) / 2.0) / 2.0;
    let (sin, cos) = (-away / radius).sin_cos();
    let up = if side.cos() < 0.0 { -1.0 } else { 1.0 };
    Some(frame.place([0.0, radius * sin, up * radius * (1.0 - cos)]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::{Quality, piece};
    use fh_core::balance::balance;
    use fh_core::file;

    /// A plate 60 × 40 mm, 4 mm thick, at the end of a bar, bent so; and the places of its blank's far corners.
    fn corners(bend: &str) -> [Vector; 2] {
        let text = format!(
            r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "12 mm" }}, "segments": [
            {{ "form": {{ "plain": {{ "length": "100 mm" }} }} }}, {{ "form": {{ "flag": {{ "thickness": "4 mm",
            "outline": {{ "rectangle": {{ "length": "60 mm", "width": "40 mm" }} }},
            "blank": {{ "rectangle": {{ "length": "70 mm", "width": "50 mm" }} }} }} }}, "bend": {bend} }} ] }}] }}"#
        );
        let plan = file::read(text.as_bytes()).unwrap();
        let balance = balance(&plan);
        let piece = piece(&plan, &balance, Quality::Print);
        let line = piece.lines.iter().find(|line| line.segment == 1).unwrap();
        [25.0, -25.0].map(|away| place_on_plate(line, &balance.bars[0].segments[1], [70.0, away]).unwrap())
    }

    fn near(got: Vector, want: Vector) {
        assert!(got.iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-3), "{got:?} where {want:?} is right");
    }

    #[test]
    fn beyond_a_bend_the_blank_runs_straight_on() {
        // A right angle of 60 mm along its middle: radius 60 / (π/2) = 38.197; 10 mm beyond it stand straight up.
        let radius = 60.0 / std::f64::consts::FRAC_PI_2;
        let [away, toward] = corners(r#"{ "curve": { "angle": "90 deg" } }"#);
        near(away, [100.0 + radius, 25.0, radius + 10.0]);
        near(toward, [100.0 + radius, -25.0, radius + 10.0]);
    }

    #[test]
    fn a_blank_is_rolled_as_its_plate_is() {
        // Half round: 40 mm of width over half a turn is a middle radius of 40 / π. 25 mm of it are 25 / radius of angle.
        let radius = 40.0 / std::f64::consts::PI;
        let [away, toward] = corners(r#"{ "socket": { "axis": "along", "sweep": "180 deg" } }"#);
        let (sin, cos) = (25.0 / radius).sin_cos();
        near(away, [170.0, radius * sin, radius * (1.0 - cos)]);
        near(toward, [170.0, -radius * sin, radius * (1.0 - cos)]);
    }
}
