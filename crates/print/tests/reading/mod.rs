//! What a drawing says, and where.

use fh_print::drawing::{Drawing, Item, Page, Point, Text, Turn};
use fh_print::fonts::CAP_HEIGHT;
use fh_print::paper::Area;

/// The texts of a page.
pub(crate) fn texts(page: &Page) -> Vec<&Text> {
    page.items.iter().filter_map(|item| if let Item::Text(text) = item { Some(text) } else { None }).collect()
}

/// Everything a drawing says, one text to a line.
pub(crate) fn words(drawing: &Drawing) -> String {
    drawing.pages.iter().flat_map(texts).map(|text| text.content().to_owned() + "\n").collect()
}

/// The space that the capitals of a text take.
pub(crate) fn extent(text: &Text) -> Area {
    let (Point { x, y }, cap) = (text.at, text.size_mm * CAP_HEIGHT);
    let (start, end) = (-text.lead_mm(), text.width_mm() - text.lead_mm());
    match text.turn {
        Turn::Level => Area { left: x + start, top: y - cap, right: x + end, bottom: y },
        Turn::Upward => Area { left: x - cap, top: y - end, right: x, bottom: y - start },
    }
}
