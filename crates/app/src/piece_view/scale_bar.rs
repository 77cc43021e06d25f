//! The scale bar: a round length as large as it is in the picture.

use super::stage::Stage;
use crate::figures::finished as figure;
use crate::theme::{Text, space};
use egui::{Align2, Stroke, pos2, vec2};
use fh_core::plan::PlanUnit;

/// The longest that it may be, in points at normal text size.
const MOST: f32 = 120.0;

impl Stage<'_> {
    /// Paints it at the lower left.
    pub(super) fn paint_scale_bar(&self) {
        let (theme, scale) = (self.theme, self.camera.points_per_mm());
        let unit = self.plan.units.length;
        let Some(mm) = round_length(f64::from(theme.scaled(MOST)) / scale, unit) else { return };
        let long = (mm * scale) as f32;
        let start = self.rect.left_bottom() + vec2(space::PAD, -space::PAD);
        let stroke = Stroke::new(space::LINE, theme.ink);
        self.painter.hline(start.x..=start.x + long, start.y, stroke);
        for x in [start.x, start.x + long] {
            self.painter.vline(x, start.y - space::TIGHT..=start.y + space::TIGHT, stroke);
        }
        let words = figure(mm, unit);
        let above = pos2(start.x, start.y - space::TIGHT);
        self.painter.text(above, Align2::LEFT_BOTTOM, words, theme.font(Text::Small), theme.ink);
    }
}

/// The greatest round length that is no longer than so many mm.
fn round_length(most_mm: f64, unit: PlanUnit) -> Option<f64> {
    let unit_mm = unit.length_unit().mm();
    let most = most_mm / unit_mm;
    if !most.is_finite() || most <= 0.0 {
        return None;
    }
    // Below an inch a rule is halved and halved again.
    let halves = (0..=6).map(|halvings| 0.5_f64.powi(halvings));
    if unit == PlanUnit::Inch && most < 1.0 {
        return halves.into_iter().find(|inches| *inches <= most).map(|inches| inches * unit_mm);
    }
    let power = 10.0_f64.powf(most.log10().floor());
    [5.0, 2.0, 1.0].into_iter().map(|nice| nice * power).find(|nice| *nice <= most).map(|nice| nice * unit_mm)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::float_cmp, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_round_in_the_plans_own_unit() {
        for (most, round) in [(7.3, 5.0), (104.0, 100.0), (260.0, 200.0), (0.4, 0.2)] {
            assert!((round_length(most, PlanUnit::Millimeter).unwrap() - round).abs() < 1e-9);
        }
        for (most, inches) in [(0.9, 0.5), (0.3, 0.25), (2.5, 2.0), (14.0, 10.0)] {
            assert!((round_length(most * 25.4, PlanUnit::Inch).unwrap() - inches * 25.4).abs() < 1e-9);
        }
        assert_eq!(round_length(0.0, PlanUnit::Inch), None);
    }
}
