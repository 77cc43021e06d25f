//! Whether a drawing can be read: nothing outside the margins, and no words on others.

use crate::reading::{extent, texts};
use fh_print::drawing::{Drawing, Item, Point, Text};
use fh_print::paper::Area;

/// Everything keeps inside the margins and no words lie on others.
pub(crate) fn assert_sound(drawing: &Drawing, what: &str) {
    assert!(!drawing.pages.is_empty(), "{what}");
    for page in &drawing.pages {
        let area = drawing.paper.printable(drawing.lies(page));
        let inside = |point: Point| {
            (area.left - 0.5..=area.right + 0.5).contains(&point.x)
                && (area.top - 0.5..=area.bottom + 0.5).contains(&point.y)
        };
        let places: Vec<(&Text, Area)> = texts(page).into_iter().map(|text| (text, extent(text))).collect();
        for (index, (text, place)) in places.iter().enumerate() {
            assert!(inside(Point { x: place.left, y: place.top }), "{what}: {text:?}");
            assert!(inside(Point { x: place.right, y: place.bottom }), "{what}: {text:?}");
            let clash = places[index + 1..].iter().find(|(_, other)| {
                place.left < other.right
                    && other.left < place.right
                    && place.top < other.bottom
                    && other.top < place.bottom
            });
            assert!(clash.is_none(), "{what}: {text:?} and {clash:?}");
        }
        for item in &page.items {
            assert!(item.is_finite(), "{what}: {item:?}");
            let points: &[Point] = match item {
                Item::Line { from, to, .. } => &[*from, *to],
                Item::Polyline { points, .. } | Item::Polygon { points, .. } => points,
                Item::Text(_) => &[],
            };
            assert!(points.iter().all(|point| inside(*point)), "{what}: {item:?}");
        }
    }
}
