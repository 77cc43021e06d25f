//! How large the bar is drawn: the same on every card of a bar, so that it is seen to grow.

use super::strip_bar::StripBar;
use fh_core::metal::{Shape, View};
use uom::si::length::millimeter;

/// The tallest strip, in mm on paper.
const TALLEST_MM: f64 = 30.0;
/// A strip thinner than this on paper is drawn thicker than it is.
const THINNEST_MM: f64 = 3.6;
/// Thickness is drawn larger only by so much that it helps.
const SEEN_THICKER: f64 = 1.2;
/// What is longer than this, in mm, is not drawn.
const LONGEST_MM: f64 = 1e6;

/// How many mm on paper one mm of the bar takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct BarScale {
    pub(super) along: f64,
    pub(super) across: f64,
}

impl BarScale {
    /// The scale at which all states of a bar fit a width; none where they cannot be drawn.
    pub(super) fn fitting(states: &[StripBar], width: f64) -> Option<Self> {
        let (mut length, mut height) = (0.0_f64, 0.0_f64);
        for state in states {
            for view in [View::Side, View::Top] {
                let Some([xs, ys]) = state.extent(view) else { continue };
                length = length.max(xs[1] - xs[0].min(0.0));
                height = height.max(ys[1] - ys[0]);
            }
            length = length.max(state.bar.forged_length.get::<millimeter>());
        }
        let thick = states.first().map_or(0.0, |state| {
            let [low, high] = state.bar.stock_edges_mm(View::Side);
            high - low
        });
        if !(length > 1e-3 && length < LONGEST_MM && height > 1e-3 && height < LONGEST_MM && thick > 1e-3) {
            return None;
        }
        let along = (width / length).min(TALLEST_MM / height).min(1.0);
        let across = if thick * along < THINNEST_MM { (THINNEST_MM / thick).min(TALLEST_MM / height) } else { along };
        // A ball is as round from the side as from above.
        let is_round = |state: &StripBar| {
            let mut shapes = state.bar.segments.iter().filter_map(|segment| segment.shape.as_ref());
            shapes.any(|shape| matches!(shape, Shape::Ball { .. } | Shape::Cube { .. }))
        };
        let across = if states.iter().any(is_round) { along } else { across.max(along).min(1.0).max(along) };
        // So little is better drawn as it is.
        Some(Self { along, across: if across > SEEN_THICKER * along { across } else { along } })
    }

    /// The scale of a view: thickness is drawn larger from the side alone, so that what is seen from above keeps its shape.
    pub(super) fn seen_from(self, view: View) -> Self {
        if view == View::Side { self } else { self.even() }
    }

    /// The same scale along and across.
    pub(super) fn even(self) -> Self {
        Self { across: self.along, ..self }
    }

    /// The scale of the lengths: `1 : 4`, `full size`.
    pub(super) fn words(self) -> String {
        if self.along > 0.999 {
            return "full size".to_owned();
        }
        let times = format!("{:.1}", 1.0 / self.along);
        format!("1 : {}", times.strip_suffix(".0").unwrap_or(&times))
    }

    /// What has to be known of it once: how far the thickness is not to that scale.
    pub(super) fn explained(self) -> Option<String> {
        let thicker = self.across / self.along;
        (thicker > 1.01).then(|| format!("thickness drawn {thicker:.1} times larger"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_scale_names_its_lengths_and_says_where_thickness_is_larger() {
        assert_eq!(BarScale { along: 1.0, across: 1.0 }.words(), "full size");
        assert_eq!(BarScale { along: 0.4, across: 0.4 }.words(), "1 : 2.5");
        let thick = BarScale { along: 0.1, across: 0.4 };
        assert_eq!(thick.words(), "1 : 10");
        assert_eq!(thick.explained().as_deref(), Some("thickness drawn 4.0 times larger"));
        assert_eq!(BarScale { along: 0.4, across: 0.4 }.explained(), None);
        assert_eq!(thick.seen_from(View::Side), thick);
        assert_eq!(thick.seen_from(View::Top).explained(), None);
    }
}
