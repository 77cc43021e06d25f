//! A page in words, one line for each item, for tests to read.

use crate::drawing::{Align, Item, Page, Point, Text, Turn};
use crate::fonts::Weight;

/// The page as text, in drawing order, with lengths in mm to two decimals.
pub fn text_form(page: &Page) -> String {
    page.items.iter().map(|item| item_form(item) + "\n").collect()
}

fn item_form(item: &Item) -> String {
    match item {
        Item::Line { from, to, pen } => {
            format!("line {} to {}, {}", place(*from), place(*to), pen.name())
        }
        Item::Polyline { points, pen } => format!("polyline {}, {}", places(points), pen.name()),
        Item::Polygon { points, fill, pen } => {
            let fill = fill.map_or("open".to_owned(), |gray| format!("grey {}", gray.lightness()));
            format!("polygon {}, {fill}, {}", places(points), pen.map_or("no edge", |pen| pen.name()))
        }
        Item::Text(text) => words_form(text),
    }
}

fn words_form(text: &Text) -> String {
    let align = match text.align {
        Align::Left => "",
        Align::Center => ", centred",
        Align::Right => ", right",
    };
    let weight = if text.weight == Weight::SemiBold { ", bold" } else { "" };
    let turn = if text.turn == Turn::Upward { ", upward" } else { "" };
    format!("text {} em {:.2}{align}{weight}{turn}: {}", place(text.at), text.size_mm, text.content())
}

fn places(points: &[Point]) -> String {
    points.iter().map(|point| place(*point)).collect::<Vec<_>>().join(" ")
}

fn place(point: Point) -> String {
    format!("({:.2}, {:.2})", tidy(point.x), tidy(point.y))
}

/// The length rounded to two decimals, and never `-0`.
fn tidy(mm: f64) -> f64 {
    (mm * 100.0).round() / 100.0 + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::at;
    use crate::pen::Pen;

    #[test]
    fn a_page_reads_in_its_order() {
        let items = vec![
            Item::line(at(0.0, -0.001), at(100.004, 0.0), Pen::Dimension),
            Text::new(at(50.0, 4.0), 5.0, "1/2 in").centered().bold().into(),
        ];
        let form = text_form(&Page { items, ..Page::default() });
        assert_eq!(
            form,
            "line (0.00, 0.00) to (100.00, 0.00), dimension\n\
             text (50.00, 4.00) em 5.00, centred, bold: 1⁄2 in\n"
        );
    }
}
