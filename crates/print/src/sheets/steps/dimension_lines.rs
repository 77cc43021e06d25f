//! Overall sizes beside a picture: lines with ticks and figures, and the space that items take.

use crate::drawing::{Item, Text, at};
use crate::fonts::CAP_HEIGHT;
use crate::paper::Area;
use crate::pen::Pen;
use crate::sheets::type_sizes::BODY;

/// Half the length of the tick at each end of a dimension.
const TICK_MM: f64 = 1.6;

/// The space that items take.
pub(super) fn space_of(items: &[Item]) -> Area {
    let mut area =
        Area { left: f64::INFINITY, top: f64::INFINITY, right: f64::NEG_INFINITY, bottom: f64::NEG_INFINITY };
    let mut with = |x: f64, y: f64| {
        area.left = area.left.min(x);
        area.top = area.top.min(y);
        area.right = area.right.max(x);
        area.bottom = area.bottom.max(y);
    };
    for item in items {
        match item {
            Item::Line { from, to, .. } => [from, to].iter().for_each(|point| with(point.x, point.y)),
            Item::Polyline { points, .. } | Item::Polygon { points, .. } => {
                points.iter().for_each(|point| with(point.x, point.y));
            }
            Item::Text(text) => {
                let left = text.at.x - text.lead_mm();
                with(left, text.at.y - text.size_mm * CAP_HEIGHT);
                with(left + text.width_mm(), text.at.y + text.size_mm * 0.2);
            }
        }
    }
    area
}

/// A level dimension with its figure in the line, or at its right where it is too short for that.
pub(super) fn level_dimension([left, right]: [f64; 2], y: f64, words: &str) -> Vec<Item> {
    let text = Text::new(at(0.0, y + BODY * CAP_HEIGHT / 2.0), BODY, words).bold();
    let half = text.width_mm() / 2.0 + 1.2;
    let tick = |x: f64| Item::line(at(x, y - TICK_MM), at(x, y + TICK_MM), Pen::Dimension);
    let middle = (left + right) / 2.0;
    let mut items = vec![tick(left), tick(right)];
    let baseline = text.at.y;
    if right - left > 2.0 * half + 6.0 {
        items.push(Item::line(at(left, y), at(middle - half, y), Pen::Dimension));
        items.push(Item::line(at(middle + half, y), at(right, y), Pen::Dimension));
        items.push(text.centered().moved_to(at(middle, baseline)).into());
    } else {
        items.push(Item::line(at(left, y), at(right, y), Pen::Dimension));
        items.push(text.moved_to(at(right + 2.0, baseline)).into());
    }
    items
}

/// An upright dimension with its figure in the line, read from the right.
pub(super) fn upright_dimension([top, bottom]: [f64; 2], x: f64, words: &str) -> Vec<Item> {
    let middle = (top + bottom) / 2.0;
    let text = Text::new(at(x + BODY * CAP_HEIGHT / 2.0, middle), BODY, words).centered().bold().upward();
    let half = text.width_mm() / 2.0 + 1.2;
    let tick = |y: f64| Item::line(at(x - TICK_MM, y), at(x + TICK_MM, y), Pen::Dimension);
    vec![
        tick(top),
        tick(bottom),
        Item::line(at(x, top), at(x, middle - half), Pen::Dimension),
        Item::line(at(x, middle + half), at(x, bottom), Pen::Dimension),
        text.into(),
    ]
}
