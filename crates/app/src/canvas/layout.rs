//! The layout: which strip lies at which height. From millimetres and points to places on the screen; it paints nothing.

use super::model::edges::Edges;
use super::strip::Strip;
use crate::state::Views;
use fh_core::metal::View;

/// A stretch from one height to another, in points, downward.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Stretch {
    pub(super) top: f32,
    pub(super) bottom: f32,
}

impl Stretch {
    /// Its middle.
    pub(super) fn middle(&self) -> f32 {
        (self.top + self.bottom) / 2.0
    }

    /// Its height.
    pub(super) fn height(&self) -> f32 {
        self.bottom - self.top
    }
}

/// One bar seen from one side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Row {
    pub(super) strip: Strip,
    pub(super) view: View,
    pub(super) stretch: Stretch,
    /// The height of the bar's middle.
    middle: f32,
    /// Points for one millimetre of thickness.
    scale: f64,
}

impl Row {
    /// The height of a place so many millimetres up from the bar's middle.
    pub(super) fn y(&self, up_mm: f64) -> f32 {
        const FAR: f64 = 1e6;
        self.middle - (up_mm * self.scale).clamp(-FAR, FAR) as f32
    }

    /// Millimetres of thickness for one point.
    pub(super) fn mm_per_point(&self) -> f64 {
        1.0 / self.scale
    }

    /// The place of a height, in millimetres up from the bar's middle.
    fn up_mm(&self, y: f32) -> f64 {
        f64::from(self.middle - y) / self.scale
    }
}

/// A place of the metal across the bars, to be found again in another layout.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Anchor {
    strip: Strip,
    view: View,
    up_mm: f64,
    /// How far beside the row it lies, in points.
    beside: f32,
}

/// The heights that do not follow from the metal, in points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Heights {
    /// The window.
    pub(super) window: f32,
    /// Above the bar: its marks.
    pub(super) marks: f32,
    /// Above the forged bar: names that fit nowhere else, and findings.
    pub(super) names: f32,
    /// Below the forged bar: its lengths.
    pub(super) lengths: f32,
    /// The least and the greatest height of the bands.
    pub(super) bands: [f32; 2],
    /// The least height of a row.
    pub(super) row: f32,
    /// Between rows, and around everything.
    pub(super) gap: f32,
}

impl Heights {
    /// All but the metal, at its least.
    pub(super) fn fixed(&self, views: Views) -> f32 {
        let between = if views == Views::Both { 2.0 * self.gap } else { 0.0 };
        self.marks + self.names + self.lengths + self.bands[0] + between + 3.0 * self.gap
    }
}

/// Where everything lies, from the top of the window down.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Layout {
    pub(super) rows: Vec<Row>,
    pub(super) marks: Stretch,
    pub(super) bands: Stretch,
    pub(super) names: Stretch,
    pub(super) lengths: Stretch,
    /// The height of all of it.
    pub(super) total: f32,
}

impl Layout {
    /// Lays the strips out one below the other, starting at `top`; `scale` is in points for one millimetre of thickness.
    pub(super) fn new(edges: &Edges, views: Views, scale: f64, heights: &Heights, top: f32) -> Self {
        let metal = |strip, view| row_height(edges.of(strip, view), scale, heights.row);
        let all = [Strip::Bar, Strip::Forged].iter().flat_map(|strip| views.shown().iter().map(move |v| (*strip, *v)));
        let content = heights.fixed(views) + all.map(|(strip, view)| metal(strip, view)).sum::<f32>();
        let slack = (heights.window - content).max(0.0);
        let bands = (heights.bands[0] + slack).min(heights.bands[1]);
        let rest = slack - (bands - heights.bands[0]);
        let mut at = top + heights.gap + rest / 3.0;
        let mut rows = Vec::with_capacity(4);
        let marks = take(&mut at, heights.marks);
        lay_rows(&mut rows, &mut at, Strip::Bar, edges, views, scale, heights);
        // The bands touch both bars; the names stand at their foot.
        let mut bands = take(&mut at, bands);
        let names = take(&mut at, heights.names);
        bands.bottom = names.bottom;
        lay_rows(&mut rows, &mut at, Strip::Forged, edges, views, scale, heights);
        at += heights.gap;
        let lengths = take(&mut at, heights.lengths);
        Self { rows, marks, bands, names, lengths, total: content }
    }

    /// What lies at a height.
    pub(super) fn anchor(&self, y: f32) -> Option<Anchor> {
        let away = |row: &Row| (y - y.clamp(row.stretch.top, row.stretch.bottom.max(row.stretch.top))).abs();
        let row = self.rows.iter().min_by(|a, b| away(a).total_cmp(&away(b)))?;
        let inside = y.clamp(row.stretch.top, row.stretch.bottom.max(row.stretch.top));
        Some(Anchor { strip: row.strip, view: row.view, up_mm: row.up_mm(inside), beside: y - inside })
    }

    /// The height at which something lies now.
    pub(super) fn y_of(&self, anchor: &Anchor) -> Option<f32> {
        let row = self.rows.iter().find(|row| row.strip == anchor.strip && row.view == anchor.view)?;
        Some(row.y(anchor.up_mm) + anchor.beside)
    }

    /// The rows of one bar.
    pub(super) fn rows_of(&self, strip: Strip) -> impl Iterator<Item = &Row> {
        self.rows.iter().filter(move |row| row.strip == strip)
    }

    /// Whether a height lies between two views of the same bar.
    pub(super) fn between_rows(&self, y: f32) -> bool {
        [Strip::Bar, Strip::Forged].into_iter().any(|strip| {
            let stretch = self.stretch_of(strip);
            (stretch.top..=stretch.bottom).contains(&y)
        })
    }

    /// All heights that a bar takes.
    pub(super) fn stretch_of(&self, strip: Strip) -> Stretch {
        let top = self.rows_of(strip).map(|row| row.stretch.top).fold(f32::INFINITY, f32::min);
        let bottom = self.rows_of(strip).map(|row| row.stretch.bottom).fold(f32::NEG_INFINITY, f32::max);
        Stretch { top, bottom }
    }
}

fn take(at: &mut f32, height: f32) -> Stretch {
    let top = *at;
    *at += height;
    Stretch { top, bottom: *at }
}

fn row_height([lower, upper]: [f64; 2], scale: f64, least: f32) -> f32 {
    ((upper - lower) * scale).clamp(f64::from(least), 1e6) as f32
}

fn lay_rows(
    rows: &mut Vec<Row>,
    at: &mut f32,
    strip: Strip,
    edges: &Edges,
    views: Views,
    scale: f64,
    heights: &Heights,
) {
    for (index, view) in views.shown().iter().enumerate() {
        if index > 0 {
            *at += heights.gap;
        }
        let [lower, upper] = edges.of(strip, *view);
        let stretch = take(at, row_height([lower, upper], scale, heights.row));
        let off = ((lower + upper) / 2.0 * scale).clamp(-1e6, 1e6) as f32;
        rows.push(Row { strip, view: *view, stretch, middle: stretch.middle() + off, scale });
    }
}

#[cfg(test)]
#[allow(clippy::indexing_slicing, reason = "tests")]
mod tests {
    use super::*;
    use crate::canvas::model::per_view::PerView;

    const HEIGHTS: Heights =
        Heights { window: 400.0, marks: 30.0, names: 16.0, lengths: 16.0, bands: [40.0, 120.0], row: 8.0, gap: 8.0 };

    fn edges() -> Edges {
        let bar = PerView { side: [-6.0, 6.0], top: [-6.0, 6.0] };
        let forged = PerView { side: [-6.0, 10.0], top: [-20.0, 20.0] };
        Edges { bar, forged }
    }

    #[test]
    fn thickness_is_drawn_to_the_scale_of_the_length() {
        let layout = Layout::new(&edges(), Views::Side, 2.0, &HEIGHTS, 0.0);
        let bar = &layout.rows[0];
        assert!((bar.y(-6.0) - bar.y(6.0) - 24.0).abs() < 1e-4);
        assert!((bar.y(6.0) - bar.stretch.top).abs() < 1e-4);
    }

    #[test]
    fn a_lopsided_silhouette_keeps_within_its_row() {
        let layout = Layout::new(&edges(), Views::Side, 2.0, &HEIGHTS, 0.0);
        let forged = &layout.rows[1];
        assert!((forged.y(10.0) - forged.stretch.top).abs() < 1e-4);
        assert!((forged.y(-6.0) - forged.stretch.bottom).abs() < 1e-4);
    }

    #[test]
    fn a_place_is_found_again_at_another_scale() {
        let at = |scale| Layout::new(&edges(), Views::Both, scale, &HEIGHTS, 0.0);
        let (near, far) = (at(8.0), at(2.0));
        for row in &far.rows {
            let anchor = far.anchor(row.y(3.0)).unwrap_or_else(|| unreachable!("there are rows"));
            let same = near.rows.iter().find(|other| other.strip == row.strip && other.view == row.view);
            let y = near.y_of(&anchor).unwrap_or_default();
            assert!(same.is_some_and(|same| (same.y(3.0) - y).abs() < 1e-2));
        }
    }

    #[test]
    fn nothing_overlaps_in_any_view() {
        for views in Views::ALL {
            for scale in [1e-9, 0.5, 8.0, 1e9] {
                let layout = Layout::new(&edges(), views, scale, &HEIGHTS, 10.0);
                let mut all = vec![layout.marks];
                all.extend(layout.rows_of(Strip::Bar).map(|row| row.stretch));
                all.extend([layout.bands]);
                assert!(layout.names.top >= layout.bands.top && layout.names.bottom <= layout.bands.bottom);
                all.extend(layout.rows_of(Strip::Forged).map(|row| row.stretch));
                all.push(layout.lengths);
                assert!(all.windows(2).all(|two| two[0].bottom <= two[1].top + 1e-2), "{views:?} {scale}: {all:?}");
                assert!(all[0].top >= 10.0);
            }
        }
    }

    #[test]
    fn room_to_spare_goes_to_the_bands_first() {
        let small = Layout::new(&edges(), Views::Side, 1.0, &HEIGHTS, 0.0);
        let large = Layout::new(&edges(), Views::Side, 1.0, &Heights { window: 4000.0, ..HEIGHTS }, 0.0);
        assert!(small.bands.height() > 56.0 && (large.bands.height() - 136.0).abs() < 1e-3);
    }
}
