//! A small drawing of each ready-made whole: the bar in its own color, what the hammer makes of it in another.

use crate::theme::Theme;
use egui::{Color32, Painter, Pos2, Rect, Shape, Stroke, vec2};
use fh_core::new_segment::Whole;
use std::f32::consts::{PI, TAU};

/// The drawing's own size, as that of the forms: places are from the left, and down from the middle.
const WIDTH: f32 = 40.0;
const HEIGHT: f32 = 24.0;

/// Something that is drawn.
enum Part {
    /// A length of bar along a line, so thick; as it was, or forged.
    Bent { is_forged: bool, thick: f32, line: Vec<[f32; 2]> },
    /// A filled outline.
    Flat(Vec<[f32; 2]>),
    /// A hole of a radius.
    Hole([f32; 2], f32),
    /// A line over the metal.
    Line([[f32; 2]; 2]),
}

/// Paints the drawing of a whole into a rectangle.
pub(crate) fn paint(painter: &Painter, theme: &Theme, rect: Rect, whole: Whole) {
    let scale = (rect.width() / WIDTH).min(rect.height() / HEIGHT);
    let origin = rect.center() - vec2(WIDTH / 2.0, 0.0) * scale;
    let place = |[x, y]: [f32; 2]| origin + vec2(x, y) * scale;
    let edge = Stroke::new(theme.hairline(), theme.forged_edge);
    for part in parts(whole) {
        match part {
            Part::Bent { is_forged, thick, line } => {
                let (fill, edge) = if is_forged {
                    (theme.forged_fill, theme.forged_edge)
                } else {
                    (theme.stock_fill, theme.stock_edge)
                };
                let line: Vec<Pos2> = line.into_iter().map(place).collect();
                bent(painter, &line, thick * scale, (fill, edge), theme.hairline());
            }
            Part::Flat(points) => {
                let points = points.into_iter().map(place).collect();
                painter.add(Shape::convex_polygon(points, theme.forged_fill, edge));
            }
            Part::Hole(at, radius) => {
                painter.circle(place(at), radius * scale, theme.panel, edge);
            }
            Part::Line(ends) => {
                painter.line_segment(ends.map(place), edge);
            }
        }
    }
}

/// A line as thick as a bar, with an edge.
fn bent(painter: &Painter, line: &[Pos2], thick: f32, (fill, edge): (Color32, Color32), hairline: f32) {
    painter.add(Shape::line(line.to_vec(), Stroke::new(thick, edge)));
    painter.add(Shape::line(line.to_vec(), Stroke::new((thick - 2.0 * hairline).max(1.0), fill)));
}

/// Places round a middle, from one angle to another, with a radius at each end; angles from the right, down.
fn arc([x, y]: [f32; 2], [from, to]: [f32; 2], [first, last]: [f32; 2]) -> Vec<[f32; 2]> {
    const STEPS: usize = 24;
    let at = |step: usize| {
        let share = step as f32 / STEPS as f32;
        let (angle, radius) = (from + (to - from) * share, first + (last - first) * share);
        [x + radius * angle.cos(), y + radius * angle.sin()]
    };
    (0..=STEPS).map(at).collect()
}

/// A straight length and what it runs into.
fn with_stem(stem: [f32; 2], mut rest: Vec<[f32; 2]>) -> Vec<[f32; 2]> {
    rest.insert(0, stem);
    rest
}

fn block(left: f32, right: f32, half: f32) -> Vec<[f32; 2]> {
    vec![[left, -half], [right, -half], [right, half], [left, half]]
}

fn leaf() -> Vec<[f32; 2]> {
    let arc = |i: i32| (i as f32 / 10.0, (i as f32 / 10.0 * PI).sin() * 7.0);
    let upper = (0..=10).map(arc).map(|(share, y)| [17.0 + 21.0 * share, -y]);
    let lower = (1..10).rev().map(arc).map(|(share, y)| [17.0 + 21.0 * share, y]);
    upper.chain(lower).collect()
}

fn parts(whole: Whole) -> Vec<Part> {
    let forged = |thick: f32, line: Vec<[f32; 2]>| Part::Bent { is_forged: true, thick, line };
    let stock =
        |left: f32, right: f32| Part::Bent { is_forged: false, thick: 6.0, line: vec![[left, 0.0], [right, 0.0]] };
    match whole {
        Whole::Curl => vec![forged(3.5, with_stem([2.0, 8.0], arc([25.0, -1.0], [PI / 2.0, -PI * 1.6], [9.0, 3.0])))],
        Whole::Hook => vec![forged(4.0, with_stem([2.0, 8.0], arc([27.0, 0.0], [PI / 2.0, -PI / 2.0], [8.0, 8.0])))],
        Whole::Eye => vec![forged(3.5, with_stem([2.0, 0.0], arc([30.0, 0.0], [PI, 3.0 * PI], [5.5, 5.5])))],
        Whole::Ring => vec![forged(4.5, arc([20.0, 0.0], [PI / 2.0, PI / 2.0 + TAU], [9.0, 9.0]))],
        Whole::Twist => {
            let lines = (0..5).map(|i| 8.0 + 5.0 * i as f32).map(|x| Part::Line([[x, 4.0], [x + 4.0, -4.0]]));
            std::iter::once(Part::Flat(block(2.0, 38.0, 4.0))).chain(lines).collect()
        }
        Whole::Corner => {
            vec![forged(5.0, vec![[3.0, 8.0], [31.0, 8.0]]), forged(5.0, vec![[31.0, 10.5], [31.0, -11.0]])]
        }
        Whole::ScrewPlate => vec![
            stock(2.0, 12.0),
            Part::Flat(block(12.0, 38.0, 8.0)),
            Part::Hole([19.0, 0.0], 2.2),
            Part::Hole([31.0, 0.0], 2.2),
        ],
        Whole::Leaf => vec![stock(2.0, 9.0), forged(3.0, vec![[9.0, 0.0], [19.0, 0.0]]), Part::Flat(leaf())],
        Whole::Tang => {
            vec![stock(2.0, 11.0), Part::Flat(vec![[11.0, -3.0], [38.0, -1.0], [38.0, 1.0], [11.0, 3.0]])]
        }
        Whole::Tines => {
            let tine = |way: f32| vec![[10.0, 2.0 * way], [15.0, 8.0 * way], [38.0, 8.0 * way]];
            vec![forged(2.5, tine(-1.0)), forged(2.5, tine(1.0)), stock(2.0, 12.0)]
        }
        Whole::Fishtail => {
            vec![stock(2.0, 16.0), Part::Flat(vec![[16.0, -3.0], [38.0, -10.0], [38.0, 10.0], [16.0, 3.0]])]
        }
    }
}
