//! The camera: which stretch of the bar is on the screen, and how large. Numbers only; it knows no window.

/// How many points one millimetre may take at most, where the bar is not shorter than a window.
const MOST_POINTS_PER_MM: f64 = 400.0;
/// How many times smaller than fitted the bar may become.
const SMALLEST: f64 = 8.0;
/// The share of the window that a length must fill, or else a fitted camera fits anew.
const LEAST_FILLED: f64 = 0.55;
/// The share of the window's width that always keeps some of the bar in sight.
const KEEP_IN_SIGHT: f64 = 0.15;

/// Where the bar lies along the screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Axis {
    /// The screen's place of `left_mm`.
    pub(super) left: f32,
    /// The place on the bar at the left edge of the view.
    pub(super) left_mm: f64,
    /// Points for one millimetre.
    pub(super) scale: f64,
}

impl Axis {
    /// The screen's x of a place on the bar; far off the screen it stops growing.
    pub(super) fn x(&self, mm: f64) -> f32 {
        const FAR: f64 = 1e6;
        self.left + ((mm - self.left_mm) * self.scale).clamp(-FAR, FAR) as f32
    }

    /// The place on the bar at the screen's x.
    pub(super) fn mm(&self, x: f32) -> f64 {
        self.left_mm + f64::from(x - self.left) / self.scale
    }
}

/// What is to be shown, and the window it is shown in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Frame {
    /// The longer of the two bars in mm.
    pub(super) length_mm: f64,
    /// All thicknesses that lie one above the other, in mm, exaggeration counted.
    pub(super) across_mm: f64,
    /// The width of the window in points.
    pub(super) width: f32,
    /// The height that is left for the strips in points.
    pub(super) height: f32,
    /// What stays free at the left and the right end in points.
    pub(super) margins: [f32; 2],
}

impl Frame {
    /// Points for one millimetre at which all of it is seen.
    pub(super) fn fitted_scale(&self) -> f64 {
        let width = f64::from((self.width - self.margins[0] - self.margins[1]).max(1.0));
        let along = width / self.length_mm.max(f64::MIN_POSITIVE);
        let across = f64::from(self.height.max(1.0)) / self.across_mm.max(f64::MIN_POSITIVE);
        along.min(across).clamp(1e-12, 1e9)
    }

    /// The least and the greatest scale.
    fn limits(&self) -> [f64; 2] {
        let fitted = self.fitted_scale();
        let whole_window = f64::from(self.width.max(1.0)) / self.length_mm.max(1e-6);
        [fitted / SMALLEST, MOST_POINTS_PER_MM.max(whole_window).max(fitted)]
    }
}

/// Zoom and pan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Camera {
    scale: f64,
    left_mm: f64,
    /// How far the strips are scrolled down, in points.
    pub(super) scrolled: f32,
    fitted: bool,
    fresh: bool,
    /// The window that was fitted to.
    window: [f32; 2],
}

impl Default for Camera {
    fn default() -> Self {
        Self { scale: 1.0, left_mm: 0.0, scrolled: 0.0, fitted: true, fresh: true, window: [0.0; 2] }
    }
}

impl Camera {
    /// Shows all of the bar from now on, until it is zoomed or panned.
    pub(super) fn fit(&mut self) {
        (self.fitted, self.fresh) = (true, true);
    }

    /// The axis, for a view whose left edge is here on the screen.
    pub(super) fn axis(&self, left: f32) -> Axis {
        Axis { left, left_mm: self.left_mm, scale: self.scale }
    }

    /// Follows the bar and the window: fitted, it fills another window anew, and keeps its scale for a bar that grows or shrinks a
    /// little. While a boundary is `held` the scale stays, so that the metal does not run away
    /// from the pointer.
    pub(super) fn follow(&mut self, frame: &Frame, held: bool) {
        let fitted = frame.fitted_scale();
        let window = [frame.width, frame.height];
        self.fresh |= self.window != window && !held;
        let off = self.scale > fitted * 1.001 || self.scale < fitted * LEAST_FILLED;
        if self.fitted && (self.fresh || (off && !held)) {
            self.scale = fitted;
            self.left_mm = -f64::from(frame.margins[0]) / fitted;
            (self.scrolled, self.fresh, self.window) = (0.0, false, window);
        }
        self.stay_in_sight(frame);
    }

    /// Zooms about a point that lies so many points right of the view's left edge.
    pub(super) fn zoom_about(&mut self, factor: f32, at: f32, frame: &Frame) {
        if !factor.is_finite() || factor <= 0.0 || factor == 1.0 {
            return;
        }
        let [least, most] = frame.limits();
        let fixed = self.left_mm + f64::from(at) / self.scale;
        self.scale = (self.scale * f64::from(factor)).clamp(least, most);
        self.left_mm = fixed - f64::from(at) / self.scale;
        self.fitted = false;
        self.stay_in_sight(frame);
    }

    /// Moves the bar by so many points, as the hand moves.
    pub(super) fn pan(&mut self, along: f32, across: f32, frame: &Frame) {
        if along == 0.0 && across == 0.0 {
            return;
        }
        self.left_mm -= f64::from(along) / self.scale;
        self.scrolled -= across;
        self.fitted = false;
        self.stay_in_sight(frame);
    }

    /// Brings a place on the bar into the view where it lies outside.
    pub(super) fn reveal(&mut self, mm: f64, frame: &Frame) {
        let (width, margin) = (f64::from(frame.width) / self.scale, f64::from(frame.margins[0]) / self.scale);
        if mm < self.left_mm || mm > self.left_mm + width {
            self.left_mm = if mm < self.left_mm { mm - margin } else { mm - width + margin };
            self.fitted = false;
        }
    }

    fn stay_in_sight(&mut self, frame: &Frame) {
        let width = f64::from(frame.width.max(1.0)) / self.scale;
        let kept = width * KEEP_IN_SIGHT;
        self.left_mm = self.left_mm.clamp(kept - width, (frame.length_mm - kept).max(kept - width));
    }
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "tests")]
mod tests {
    use super::*;

    fn frame(length_mm: f64, across_mm: f64) -> Frame {
        Frame { length_mm, across_mm, width: 1000.0, height: 300.0, margins: [20.0, 20.0] }
    }

    #[test]
    fn fitted_the_whole_bar_lies_between_the_margins() {
        let (mut camera, frame) = (Camera::default(), frame(480.0, 50.0));
        camera.follow(&frame, false);
        let axis = camera.axis(100.0);
        assert!((axis.x(0.0) - 120.0).abs() < 0.01 && (axis.x(480.0) - 1080.0).abs() < 0.01);
    }

    #[test]
    fn what_lies_under_the_pointer_stays_there_when_zoomed() {
        let (mut camera, frame) = (Camera::default(), frame(480.0, 50.0));
        camera.follow(&frame, false);
        let before = camera.axis(0.0).mm(333.0);
        camera.zoom_about(2.5, 333.0, &frame);
        assert!((camera.axis(0.0).mm(333.0) - before).abs() < 1e-6);
    }

    #[test]
    fn absurd_lengths_give_finite_places() {
        for length in [0.0, 0.001, 12.0, 1e9, 1e12] {
            let (mut camera, frame) = (Camera::default(), frame(length, 1e-3));
            camera.follow(&frame, false);
            for factor in [1e-30, 1e30, f32::NAN, 0.0, -1.0, f32::INFINITY] {
                camera.zoom_about(factor, 500.0, &frame);
                camera.pan(1e20, -1e20, &frame);
                let axis = camera.axis(0.0);
                assert!(axis.x(0.0).is_finite() && axis.x(length).is_finite() && axis.mm(5.0).is_finite(), "{length}");
            }
        }
    }

    #[test]
    fn fitted_it_fills_another_window_and_zoomed_it_stays() {
        let (mut camera, frame) = (Camera::default(), frame(480.0, 50.0));
        camera.follow(&frame, false);
        let wider = Frame { width: 1200.0, ..frame };
        camera.follow(&wider, false);
        assert!((camera.axis(0.0).x(480.0) - 1180.0).abs() < 0.01);
        camera.zoom_about(2.0, 0.0, &wider);
        let scale = camera.axis(0.0).scale;
        camera.follow(&frame, false);
        assert_eq!(camera.axis(0.0).scale, scale);
    }

    #[test]
    fn a_held_boundary_keeps_the_scale() {
        let mut camera = Camera::default();
        camera.follow(&frame(480.0, 50.0), false);
        let scale = camera.axis(0.0).scale;
        camera.follow(&frame(900.0, 50.0), true);
        assert_eq!(camera.axis(0.0).scale, scale);
        camera.follow(&frame(900.0, 50.0), false);
        assert!(camera.axis(0.0).scale < scale);
    }

    #[test]
    fn panned_away_some_of_the_bar_stays_in_sight() {
        let (mut camera, frame) = (Camera::default(), frame(480.0, 50.0));
        camera.follow(&frame, false);
        camera.pan(-1e9, 0.0, &frame);
        assert!(camera.axis(0.0).x(480.0) > 0.0);
        camera.pan(1e9, 0.0, &frame);
        assert!(camera.axis(0.0).x(0.0) < 1000.0);
    }
}
