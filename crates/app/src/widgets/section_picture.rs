//! The segment's section over the stock's section, to one scale.

use crate::theme::{Text, Theme, space};
use egui::{Align2, Pos2, Rect, Role, Sense, Shape, Stroke, Ui, WidgetInfo, pos2, vec2};
use fh_core::metal::Section;

/// The height of the picture, in points at normal text size.
const HEIGHT: f32 = 132.0;
/// Points along a full turn of a round outline.
const TURN_POINTS: usize = 96;
/// The dashes of the stock's edge.
const DASH: f32 = 4.0;

/// A section and what it is called.
pub(crate) struct Drawn<'a> {
    pub(crate) section: &'a Section,
    pub(crate) words: &'a str,
}

/// Shows the sections one over the other: the stock dashed, the others filled, the first of them below.
pub(crate) fn show(ui: &mut Ui, theme: &Theme, stock: &Drawn<'_>, sections: &[Drawn<'_>]) {
    let words = legend(stock, sections);
    let size = vec2(ui.available_width(), theme.scaled(HEIGHT));
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &words));
    ui.painter().rect_filled(rect, space::CORNER, theme.ground);
    let room = rect.shrink(space::PAD);
    let outlines: Vec<_> = sections.iter().map(|drawn| outline(drawn.section)).collect();
    let stock_outline = outline(stock.section);
    let Some(place) = fit(room, outlines.iter().chain([&stock_outline]).flatten()) else { return };
    let painter = ui.painter_at(rect);
    for points in &outlines {
        let points: Vec<Pos2> = points.iter().map(|point| place(*point)).collect();
        if points.len() > 2 {
            let fill = theme.forged_fill.gamma_multiply(0.75);
            painter.add(Shape::convex_polygon(points, fill, Stroke::new(space::LINE, theme.forged_edge)));
        }
    }
    let mut ring: Vec<Pos2> = stock_outline.iter().map(|point| place(*point)).collect();
    ring.extend(ring.first().copied());
    painter.extend(Shape::dashed_line(&ring, Stroke::new(space::LINE, theme.stock_edge), DASH, DASH));
    let corner = rect.left_top() + vec2(space::GAP, space::TIGHT);
    painter.text(corner, Align2::LEFT_TOP, "- - stock", theme.font(Text::Small), theme.ink_quiet);
}

fn legend(stock: &Drawn<'_>, sections: &[Drawn<'_>]) -> String {
    let all = sections.iter().map(|drawn| drawn.words).collect::<Vec<_>>().join(", ");
    format!("Section: {all}, over the stock, {}", stock.words)
}

fn outline(section: &Section) -> Vec<[f64; 2]> {
    let points = section.outline_mm(TURN_POINTS);
    if points.iter().flatten().all(|value| value.is_finite()) { points } else { Vec::new() }
}

/// The map from mm to the screen at which all points are seen; none where there is nothing to see.
fn fit<'a>(room: Rect, points: impl Iterator<Item = &'a [f64; 2]>) -> Option<impl Fn([f64; 2]) -> Pos2> {
    let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for point in points {
        for axis in 0..2 {
            low[axis] = low[axis].min(point[axis]);
            high[axis] = high[axis].max(point[axis]);
        }
    }
    let size = [high[0] - low[0], high[1] - low[1]];
    let scale = (f64::from(room.width()) / size[0]).min(f64::from(room.height()) / size[1]);
    let center = room.center();
    let middle = [f64::midpoint(low[0], high[0]), f64::midpoint(low[1], high[1])];
    (scale.is_finite() && scale > 0.0).then_some(move |[x, y]: [f64; 2]| {
        pos2(center.x + ((x - middle[0]) * scale) as f32, center.y - ((y - middle[1]) * scale) as f32)
    })
}
