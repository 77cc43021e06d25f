//! The bands between the bars: each joins a length of the starting bar to what it becomes. Drawing out fans one open,
//! upsetting narrows it.

use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::space;
use egui::epaint::{Mesh, Vertex, WHITE_UV};
use egui::{Color32, Pos2, Shape, Stroke, pos2};

/// Steps down a band.
pub(in crate::canvas) const STEPS: usize = 32;

/// A place on the way from the upper to the lower bar, at a share of the way; it leaves and arrives upright.
pub(in crate::canvas) fn between(upper: f32, lower: f32, share: f32) -> f32 {
    let eased = share * share * (3.0 - 2.0 * share);
    upper + (lower - upper) * eased
}

/// From where to where a band reaches at a share of the way down.
pub(in crate::canvas) fn at_share(stage: &Stage<'_>, segment: usize, share: f32) -> Option<[f32; 2]> {
    let (upper, lower) = (stage.span(segment, Strip::Bar)?, stage.span(segment, Strip::Forged)?);
    Some([between(upper[0], lower[0], share), between(upper[1], lower[1], share)])
}

impl Stage<'_> {
    /// Paints all bands, the selected one last. They lie side by side, so they are one ribbon with lines between.
    pub(in crate::canvas) fn paint_bands(&self) {
        let whole = |mm: f64| [self.axis.x(0.0), self.axis.x(mm)];
        let last_mark = self.model.last_mark_mm;
        self.paint_band(whole(last_mark), whole(self.model.forged_mm), self.theme.band);
        let stroke = Stroke::new(self.theme.hairline(), self.theme.stock_fill);
        let mut last = vec![[f32::NEG_INFINITY; 2]; self.model.lanes.len()];
        for block in &self.model.blocks {
            let [upper, lower] = [self.axis.x(block.stock[1]), self.axis.x(block.drawn[1])];
            let Some(last) = last.get_mut(block.lane) else { continue };
            let far = upper - last[0] >= space::TIGHT || lower - last[1] >= space::TIGHT;
            if far && self.sees([upper.min(lower), upper.max(lower)]) {
                *last = [upper, lower];
                self.paint_band_edge(upper, lower, stroke);
            }
        }
        for lit in self.lit() {
            let Some((upper, lower)) = self.span(lit, Strip::Bar).zip(self.span(lit, Strip::Forged)) else { continue };
            self.paint_band(upper, lower, self.theme.band_selected);
            for side in 0..2 {
                self.paint_band_edge(upper[side], lower[side], Stroke::new(space::LINE, self.theme.accent));
            }
        }
    }

    fn paint_band(&self, upper: [f32; 2], lower: [f32; 2], fill: Color32) {
        let mut mesh = Mesh::default();
        let mut corner = |at: Pos2| mesh.vertices.push(Vertex { pos: at, uv: WHITE_UV, color: fill });
        for (share, y) in self.band_steps() {
            corner(pos2(between(upper[0], lower[0], share), y));
            corner(pos2(between(upper[1], lower[1], share), y));
        }
        for step in 0..STEPS as u32 {
            let at = 2 * step;
            mesh.add_triangle(at, at + 1, at + 2);
            mesh.add_triangle(at + 1, at + 3, at + 2);
        }
        self.painter.add(Shape::mesh(mesh));
    }

    fn paint_band_edge(&self, upper: f32, lower: f32, stroke: Stroke) {
        let line = self.band_steps().map(|(share, y)| pos2(between(upper, lower, share), y)).collect();
        self.painter.add(Shape::line(line, stroke));
    }

    fn band_steps(&self) -> impl Iterator<Item = (f32, f32)> {
        let bands = self.layout.bands;
        (0..=STEPS).map(move |step| {
            let share = step as f32 / STEPS as f32;
            (share, bands.top + bands.height() * share)
        })
    }
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "tests")]
mod tests {
    use super::between;

    #[test]
    fn a_band_starts_above_and_ends_below() {
        assert_eq!(between(10.0, 50.0, 0.0), 10.0);
        assert_eq!(between(10.0, 50.0, 0.5), 30.0);
        assert_eq!(between(10.0, 50.0, 1.0), 50.0);
    }
}
