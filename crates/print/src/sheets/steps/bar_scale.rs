//! How large the bar is drawn: the same on every card of a bar, so that it is seen to grow.

use fh_core::balance::BarBalance;
use fh_core::metal::View;
use uom::si::length::millimeter;

/// The tallest strip, in mm on paper.
const TALLEST_MM: f64 = 46.0;
/// A strip thinner than this on paper is drawn thicker than it is.
const THINNEST_MM: f64 = 3.6;
/// What is longer than this, in mm, is not drawn.
const LONGEST_MM: f64 = 1e6;

/// How many mm on paper one mm of the bar takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct BarScale {
    pub(super) along: f64,
    pub(super) across: f64,
}

/// From where to where a bar reaches along its length and across, in mm; none where there is nothing.
pub(super) fn extent(bar: &BarBalance, view: View) -> Option<[[f64; 2]; 2]> {
    let points = bar.segments.iter().flat_map(|segment| segment.silhouette_mm(view));
    let mut all: Option<[[f64; 2]; 2]> = None;
    for [along, across] in points.filter(|point| point.iter().all(|mm| mm.is_finite())) {
        let [xs, ys] = all.get_or_insert([[along, along], [across, across]]);
        *xs = [xs[0].min(along), xs[1].max(along)];
        *ys = [ys[0].min(across), ys[1].max(across)];
    }
    all
}

impl BarScale {
    /// The scale at which all states of a bar fit a width; none where they cannot be drawn.
    pub(super) fn fitting(states: &[BarBalance], width: f64) -> Option<Self> {
        let (mut length, mut height) = (0.0_f64, 0.0_f64);
        for state in states {
            for view in [View::Side, View::Top] {
                let Some([xs, ys]) = extent(state, view) else { continue };
                length = length.max(xs[1] - xs[0].min(0.0));
                height = height.max(ys[1] - ys[0]);
            }
            length = length.max(state.forged_length.get::<millimeter>());
        }
        let thick = states.first().map_or(0.0, |bar| {
            let [low, high] = bar.stock_edges_mm(View::Side);
            high - low
        });
        if !(length > 1e-3 && length < LONGEST_MM && height > 1e-3 && height < LONGEST_MM && thick > 1e-3) {
            return None;
        }
        let along = (width / length).min(TALLEST_MM / height).min(1.0);
        let across = if thick * along < THINNEST_MM { (THINNEST_MM / thick).min(TALLEST_MM / height) } else { along };
        Some(Self { along, across: across.max(along).min(1.0).max(along) })
    }

    /// The scale in a few words.
    pub(super) fn words(self) -> String {
        if self.is_thicker() {
            "not to scale".to_owned()
        } else if self.along > 0.999 {
            "full size".to_owned()
        } else {
            format!("1 : {:.1}", 1.0 / self.along)
        }
    }

    /// What has to be known of it once: how far it is not to scale.
    pub(super) fn explained(self) -> Option<String> {
        let long = 1.0 / self.along;
        let thicker = self.across / self.along;
        self.is_thicker().then(|| format!("lengths drawn 1 : {long:.0}, thickness {thicker:.1} times larger"))
    }

    fn is_thicker(self) -> bool {
        self.across > self.along * 1.01
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_is_not_to_scale_says_so() {
        assert_eq!(BarScale { along: 1.0, across: 1.0 }.words(), "full size");
        assert_eq!(BarScale { along: 0.4, across: 0.4 }.words(), "1 : 2.5");
        let thick = BarScale { along: 0.1, across: 0.4 };
        assert_eq!(thick.words(), "not to scale");
        assert_eq!(thick.explained().as_deref(), Some("lengths drawn 1 : 10, thickness 4.0 times larger"));
    }
}
