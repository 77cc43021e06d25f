//! A small drawing of each form: the bar in the bar's color, what the hammer makes of it in its own.

use crate::theme::Theme;
use egui::{Painter, Pos2, Rect, Shape, Stroke, pos2, vec2};
use fh_core::plan::FormKind;

/// The drawing's own size: all places below are in it, from the left, and down from the middle.
const WIDTH: f32 = 40.0;
const HEIGHT: f32 = 24.0;

/// How far apart hatch lines are.
const HATCH: f32 = 4.0;

/// How a part is filled.
#[derive(Clone, Copy, PartialEq)]
enum Fill {
    Stock,
    Forged,
    Hatched,
    /// A hole: what lies behind is seen.
    Open,
}

/// A part of the drawing: a convex polygon.
struct Part(Fill, Vec<[f32; 2]>);

/// The width of a drawing of this height.
pub(crate) fn width_for(height: f32) -> f32 {
    height * WIDTH / HEIGHT
}

/// Paints the drawing of a form into a rectangle.
pub(crate) fn paint(painter: &Painter, theme: &Theme, rect: Rect, kind: FormKind) {
    let scale = (rect.width() / WIDTH).min(rect.height() / HEIGHT);
    let origin = rect.center() - vec2(WIDTH / 2.0, 0.0) * scale;
    let place = |[x, y]: [f32; 2]| origin + vec2(x, y) * scale;
    for Part(fill, points) in parts(kind) {
        let points: Vec<Pos2> = points.into_iter().map(place).collect();
        paint_part(painter, theme, fill, points, scale);
    }
}

fn paint_part(painter: &Painter, theme: &Theme, fill: Fill, points: Vec<Pos2>, scale: f32) {
    let (color, edge) = match fill {
        Fill::Stock => (theme.stock_fill, theme.stock_edge),
        Fill::Forged => (theme.forged_fill, theme.forged_edge),
        Fill::Hatched => (theme.hold_fill, theme.stock_edge),
        Fill::Open => (theme.panel, theme.forged_edge),
    };
    let bounds = Rect::from_points(&points);
    painter.add(Shape::convex_polygon(points, color, Stroke::new(theme.hairline(), edge)));
    if fill == Fill::Hatched {
        hatch(painter, bounds, Stroke::new(theme.hairline(), edge), HATCH * scale);
    }
}

/// Slanting lines over a rectangle.
fn hatch(painter: &Painter, rect: Rect, stroke: Stroke, step: f32) {
    let mut x = rect.left() - rect.height();
    while x < rect.right() {
        let (from, to) = (x.max(rect.left()), (x + rect.height()).min(rect.right()));
        if to > from {
            painter.line_segment([pos2(from, rect.bottom() - (from - x)), pos2(to, rect.bottom() - (to - x))], stroke);
        }
        x += step.max(2.0);
    }
}

fn block(left: f32, right: f32, half: f32) -> Vec<[f32; 2]> {
    vec![[left, -half], [right, -half], [right, half], [left, half]]
}

fn round(center: f32, radius: f32) -> Vec<[f32; 2]> {
    (0..24)
        .map(|i| (i as f32 / 24.0 * std::f32::consts::TAU).sin_cos())
        .map(|(s, c)| [center + radius * c, radius * s])
        .collect()
}

/// A rivet's head on the end of its pin: half an ellipse, so far beyond `foot`.
fn dome(foot: f32, beyond: f32) -> Vec<[f32; 2]> {
    let points = (0..=12).map(|i| i as f32 / 12.0 * std::f32::consts::PI);
    points.map(|angle| [foot + beyond * angle.sin(), -8.0 * angle.cos()]).collect()
}

fn leaf() -> Vec<[f32; 2]> {
    let arc = |i: i32| (i as f32 / 10.0, (i as f32 / 10.0 * std::f32::consts::PI).sin() * 8.0);
    let upper = (0..=10).map(arc).map(|(share, y)| [14.0 + 24.0 * share, -y]);
    let lower = (1..10).rev().map(arc).map(|(share, y)| [14.0 + 24.0 * share, y]);
    upper.chain(lower).collect()
}

fn parts(kind: FormKind) -> Vec<Part> {
    use Fill::{Forged, Hatched, Open, Stock};
    let bar = |right| Part(Stock, block(2.0, right, 5.0));
    match kind {
        FormKind::Plain => vec![bar(38.0)],
        FormKind::Drawn => vec![bar(12.0), Part(Forged, block(12.0, 38.0, 3.0))],
        FormKind::Taper => vec![bar(10.0), Part(Forged, vec![[10.0, -5.0], [38.0, -0.4], [38.0, 0.4], [10.0, 5.0]])],
        FormKind::Shoulder => vec![
            bar(18.0),
            Part(Forged, vec![[18.0, -5.0], [21.0, -2.0], [21.0, 5.0], [18.0, 5.0]]),
            Part(Forged, vec![[21.0, -2.0], [38.0, -2.0], [38.0, 5.0], [21.0, 5.0]]),
        ],
        FormKind::Flag => vec![Part(Forged, leaf()), bar(15.0)],
        FormKind::Peak => vec![
            bar(12.0),
            Part(Stock, block(28.0, 38.0, 5.0)),
            Part(Forged, vec![[12.0, -5.0], [20.0, -11.0], [28.0, -5.0], [28.0, 5.0], [12.0, 5.0]]),
        ],
        FormKind::Ball => vec![Part(Stock, block(2.0, 24.0, 4.0)), Part(Forged, round(29.0, 8.5))],
        FormKind::Cube => vec![Part(Stock, block(2.0, 22.0, 4.0)), Part(Forged, block(22.0, 38.0, 8.0))],
        FormKind::Trim => vec![bar(22.0), Part(Hatched, block(26.0, 38.0, 5.0))],
        FormKind::Hold => vec![bar(14.0), Part(Hatched, block(14.0, 38.0, 5.0))],
        FormKind::Open => vec![bar(6.0), Part(Hatched, block(6.0, 34.0, 5.0)), Part(Stock, block(34.0, 38.0, 5.0))],
        FormKind::Hole => vec![
            Part(Stock, block(2.0, 12.0, 4.0)),
            Part(Stock, block(32.0, 38.0, 4.0)),
            Part(Forged, round(22.0, 11.0)),
            Part(Open, round(22.0, 4.5)),
        ],
        FormKind::Tenon => vec![bar(20.0), Part(Forged, block(20.0, 34.0, 2.5))],
        FormKind::Split => vec![
            Part(Forged, vec![[14.0, -5.0], [38.0, -11.0], [38.0, -9.0], [14.0, 0.0]]),
            Part(Forged, vec![[14.0, 0.0], [38.0, 9.0], [38.0, 11.0], [14.0, 5.0]]),
            bar(14.0),
        ],
        FormKind::Weld => vec![
            Part(Forged, vec![[2.0, -5.0], [15.0, -5.0], [27.0, 5.0], [2.0, 5.0]]),
            Part(Stock, vec![[17.0, -5.0], [38.0, -5.0], [38.0, 5.0], [29.0, 5.0]]),
        ],
        FormKind::Rivet => {
            vec![Part(Stock, block(10.0, 30.0, 3.0)), Part(Forged, dome(10.0, -6.0)), Part(Forged, dome(30.0, 6.0))]
        }
        FormKind::Collar => vec![
            Part(Stock, vec![[2.0, -6.0], [38.0, -6.0], [38.0, -0.4], [2.0, -0.4]]),
            Part(Stock, vec![[2.0, 0.4], [38.0, 0.4], [38.0, 6.0], [2.0, 6.0]]),
            Part(Forged, block(15.0, 25.0, 8.5)),
        ],
    }
}
