//! How a picture lies in its view: which place of the piece each of its pixels stands for.

use fh_core::plan::{Underlay, UnderlayView};

/// A picture to its true scale. Places in its view go to the right and up from where the piece begins, in mm; places on the
/// picture are shares of its width and height from its top left corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Lay {
    view: UnderlayView,
    /// Width and height in pixels.
    size: [f64; 2],
    from: [f64; 2],
    /// Where the first point lies.
    at: [f64; 2],
    pub(super) mm_per_pixel: f64,
}

impl Lay {
    /// A picture of so many pixels; none where its two points do not give a scale.
    pub(super) fn of(underlay: &Underlay, size: [f64; 2]) -> Option<Self> {
        let mm_per_pixel = underlay.mm_per_pixel(size).filter(|scale| scale.is_finite() && *scale > 0.0)?;
        let at = underlay.at.as_ref().map_or([0.0; 2], |at| [at.right.mm(), at.up.mm()]);
        Some(Self { view: underlay.view, size, from: underlay.from, at, mm_per_pixel })
    }

    /// Where a place on the picture lies in the view.
    pub(super) fn place(&self, share: [f64; 2]) -> [f64; 2] {
        let way = |axis: usize| (share[axis] - self.from[axis]) * self.size[axis] * self.mm_per_pixel;
        [self.at[0] + way(0), self.at[1] - way(1)]
    }

    /// Which place on the picture lies at a place in the view.
    pub(super) fn share(&self, place: [f64; 2]) -> [f64; 2] {
        let way = |axis: usize, mm: f64| self.from[axis] + mm / (self.size[axis] * self.mm_per_pixel);
        [way(0, place[0] - self.at[0]), way(1, self.at[1] - place[1])]
    }

    /// Where a place on the picture lies in space.
    pub(super) fn in_space(&self, share: [f64; 2]) -> [f64; 3] {
        let [right, up] = self.place(share);
        match self.view {
            UnderlayView::Front => [right, 0.0, up],
            UnderlayView::Side => [0.0, right, up],
            UnderlayView::Top => [right, up, 0.0],
        }
    }

    /// The corners of the picture, in space.
    pub(super) fn corners(&self) -> [[f64; 3]; 4] {
        [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [1.0, 1.0]].map(|share| self.in_space(share))
    }

    /// How many pixels two places on the picture lie apart.
    pub(super) fn pixels_apart(&self, a: [f64; 2], b: [f64; 2]) -> f64 {
        ((a[0] - b[0]) * self.size[0]).hypot((a[1] - b[1]) * self.size[1])
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use fh_core::plan::Place;
    use fh_measure::{LengthRange, WrittenLength};

    fn mm(mm: f64) -> WrittenLength {
        WrittenLength::from_mm(mm, fh_measure::LengthUnit::Millimeter, LengthRange::Any).unwrap()
    }

    /// Two points 100 pixels apart that are 50 mm apart, on a picture of 400 by 200 pixels.
    fn half_a_mm(view: UnderlayView, at: Option<Place>) -> Lay {
        let underlay = Underlay {
            file: "hook.png".to_owned(),
            view,
            from: [0.25, 0.5],
            to: [0.5, 0.5],
            distance: mm(50.0),
            at,
            strength: None,
        };
        Lay::of(&underlay, [400.0, 200.0]).unwrap()
    }

    fn close(a: &[f64], b: &[f64]) {
        assert!(a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-9), "{a:?} is not {b:?}");
    }

    #[test]
    fn a_hundred_pixels_for_fifty_mm_are_half_a_mm_each() {
        let lay = half_a_mm(UnderlayView::Front, None);
        close(&[lay.mm_per_pixel], &[0.5]);
        close(&lay.place([0.25, 0.5]), &[0.0, 0.0]);
        close(&lay.place([0.5, 0.5]), &[50.0, 0.0]);
        close(&lay.place([0.25, 0.0]), &[0.0, 50.0]);
        close(&lay.place([0.0, 1.0]), &[-50.0, -50.0]);
    }

    #[test]
    fn the_scale_is_the_same_along_and_up_whatever_the_points_lie_on() {
        let mut underlay = Underlay {
            file: "hook.png".to_owned(),
            view: UnderlayView::Front,
            from: [0.1, 0.2],
            to: [0.1 + 30.0 / 400.0, 0.2 + 40.0 / 200.0],
            distance: mm(100.0),
            at: None,
            strength: None,
        };
        close(&[Lay::of(&underlay, [400.0, 200.0]).unwrap().mm_per_pixel], &[2.0]);
        underlay.to = underlay.from;
        assert_eq!(Lay::of(&underlay, [400.0, 200.0]), None);
    }

    #[test]
    fn the_first_point_lies_where_it_is_told() {
        let lay = half_a_mm(UnderlayView::Top, Some(Place { right: mm(12.0), up: mm(-7.0) }));
        close(&lay.place([0.25, 0.5]), &[12.0, -7.0]);
        close(&lay.share([12.0, -7.0]), &[0.25, 0.5]);
        for place in [[3.0, 4.0], [-20.0, 90.0]] {
            close(&lay.place(lay.share(place)), &place);
        }
    }

    #[test]
    fn each_view_has_its_own_plane() {
        let lies = |view| half_a_mm(view, None).in_space([0.5, 0.0]);
        close(&lies(UnderlayView::Front), &[50.0, 0.0, 50.0]);
        close(&lies(UnderlayView::Side), &[0.0, 50.0, 50.0]);
        close(&lies(UnderlayView::Top), &[50.0, 50.0, 0.0]);
    }
}
