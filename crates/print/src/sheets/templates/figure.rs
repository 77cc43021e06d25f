//! What is drawn of a template at full scale, and the marks that all templates share.

use crate::drawing::{Item, Point, Text, Turn, at};
use crate::fonts::{CAP_HEIGHT, Weight};
use crate::paper::Area;
use crate::pen::{Gray, Pen};
use crate::sheets::type_sizes::{BODY, FACT};
use crate::typeset;
use std::f64::consts::TAU;

/// Half the width of the cross at a center.
const CROSS_MM: f64 = 3.0;
/// Half the length of the tick at each end of a dimension.
const TICK_MM: f64 = 1.6;
/// The size of a number in its box.
const NUMBER: f64 = BODY * 1.1;

/// A drawing at full scale, from its own top left corner.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Figure {
    /// What is drawn.
    pub(super) items: Vec<Item>,
    /// How wide it is, in mm.
    pub(super) width: f64,
    /// How high it is, in mm.
    pub(super) height: f64,
}

impl Figure {
    /// These items moved to the top left corner.
    pub(super) fn of(items: Vec<Item>) -> Self {
        let Some(area) = items.iter().map(bounds).reduce(union) else { return Self::default() };
        let items = items.into_iter().map(|item| item.shifted(-area.left, -area.top)).collect();
        Self { items, width: area.width(), height: area.height() }
    }
}

/// The space that an item takes.
pub(super) fn bounds(item: &Item) -> Area {
    match item {
        Item::Line { from, to, .. } => around(&[*from, *to]),
        Item::Polyline { points, .. } | Item::Polygon { points, .. } => around(points),
        Item::Text(text) => text_area(text),
    }
}

/// The space that words take, with a little below their baseline.
fn text_area(text: &Text) -> Area {
    let (Point { x, y }, cap, below) = (text.at, text.size_mm * CAP_HEIGHT, text.size_mm * 0.22);
    let (start, end) = (-text.lead_mm(), text.width_mm() - text.lead_mm());
    match text.turn {
        Turn::Level => Area { left: x + start, top: y - cap, right: x + end, bottom: y + below },
        Turn::Upward => Area { left: x - cap, top: y - end, right: x + below, bottom: y - start },
    }
}

/// The smallest space around some places.
pub(super) fn around(points: &[Point]) -> Area {
    let start = Area { left: f64::INFINITY, top: f64::INFINITY, right: f64::NEG_INFINITY, bottom: f64::NEG_INFINITY };
    points
        .iter()
        .fold(start, |area, point| union(area, Area { left: point.x, top: point.y, right: point.x, bottom: point.y }))
}

/// The smallest space around two.
pub(super) fn union(a: Area, b: Area) -> Area {
    Area {
        left: a.left.min(b.left),
        top: a.top.min(b.top),
        right: a.right.max(b.right),
        bottom: a.bottom.max(b.bottom),
    }
}

/// Whether two spaces have a part in common.
pub(super) fn overlap(a: Area, b: Area) -> bool {
    a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

/// A cross at a center.
pub(super) fn cross(middle: Point) -> [Item; 2] {
    let Point { x, y } = middle;
    [
        Item::line(at(x - CROSS_MM, y), at(x + CROSS_MM, y), Pen::JoinCross),
        Item::line(at(x, y - CROSS_MM), at(x, y + CROSS_MM), Pen::JoinCross),
    ]
}

/// A circle as a polygon.
pub(super) fn circle(middle: Point, radius: f64, pen: Pen) -> Item {
    const CORNERS: u32 = 96;
    let corner = |step: u32| {
        let (sin, cos) = (TAU * f64::from(step) / f64::from(CORNERS)).sin_cos();
        at(middle.x + radius * cos, middle.y + radius * sin)
    };
    Item::Polygon { points: (0..CORNERS).map(corner).collect(), fill: None, pen: Some(pen) }
}

/// A level dimension from `left` to `right` at a height, its figure above it, or at its right where it is too short for that.
pub(super) fn level_dimension([left, right]: [f64; 2], y: f64, words: &str) -> Vec<Item> {
    let tick = |x: f64| Item::line(at(x, y - TICK_MM), at(x, y + TICK_MM), Pen::Dimension);
    let text = Text::new(at((left + right) / 2.0, y - 1.2), FACT, words).bold();
    let text = if text.width_mm() + 2.0 > right - left {
        text.moved_to(at(right + 2.0, y + FACT * CAP_HEIGHT / 2.0))
    } else {
        text.centered()
    };
    vec![Item::line(at(left, y), at(right, y), Pen::Dimension), tick(left), tick(right), text.into()]
}

/// An upright dimension from `top` to `bottom`, its figure to the right of it.
pub(super) fn upright_dimension([top, bottom]: [f64; 2], x: f64, words: &str) -> Vec<Item> {
    let tick = |y: f64| Item::line(at(x - TICK_MM, y), at(x + TICK_MM, y), Pen::Dimension);
    let baseline = (top + bottom + FACT * CAP_HEIGHT) / 2.0;
    let text = Text::new(at(x + 2.0, baseline), FACT, words).bold();
    vec![Item::line(at(x, top), at(x, bottom), Pen::Dimension), tick(top), tick(bottom), text.into()]
}

/// The same with its figure along it, on its left: where the page ends beside it.
pub(super) fn upward_dimension([top, bottom]: [f64; 2], x: f64, words: &str) -> Vec<Item> {
    let text = Text::new(at(x - 1.2, (top + bottom) / 2.0), FACT, words).bold().centered().upward();
    let mut items = upright_dimension([top, bottom], x, "");
    items.pop();
    items.push(text.into());
    items
}

/// The width and height of a number's box.
pub(super) fn number_size(number: &str) -> [f64; 2] {
    [typeset::width_mm(number, NUMBER, Weight::SemiBold) + 2.2, NUMBER * CAP_HEIGHT + 1.8]
}

/// A segment's number in its black box with its middle at a place.
pub(super) fn number_box(middle: Point, number: &str) -> [Item; 2] {
    let [width, height] = number_size(number);
    let (corner, opposite) =
        (at(middle.x - width / 2.0, middle.y - height / 2.0), at(middle.x + width / 2.0, middle.y + height / 2.0));
    let text = Text::new(at(middle.x, middle.y + NUMBER * CAP_HEIGHT / 2.0), NUMBER, number);
    [Item::rectangle(corner, opposite, Some(Gray::BLACK), None), text.centered().bold().gray(Gray::WHITE).into()]
}
