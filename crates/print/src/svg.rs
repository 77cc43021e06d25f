//! A drawing as one SVG in true millimetres: its pages one below the other, the words as real text.

use crate::drawing::{Align, Drawing, Item, Page, Point, Text, Turn};
use crate::fonts::FAMILY;
use crate::pen::{Gray, Pen};
use std::fmt::Write;

/// The space between two pages.
const PAGE_GAP_MM: f64 = 10.0;

/// The drawing as SVG text. One page has the size of the paper; more stand below each other, each in a frame.
pub fn svg(drawing: &Drawing) -> String {
    let (width, page_height) = drawing.size_mm();
    let pages = drawing.pages.len().max(1) as f64;
    let height = pages * page_height + (pages - 1.0) * PAGE_GAP_MM;
    let mut out = head(&drawing.title, width, height);
    for (number, page) in (1..).zip(&drawing.pages) {
        let top = f64::from(number - 1) * (page_height + PAGE_GAP_MM);
        write_page(&mut out, page, number, top, (width, page_height));
    }
    out.push_str("</svg>\n");
    out
}

fn head(title: &str, width: f64, height: f64) -> String {
    let (width, height, title) = (figure(width), figure(height), escaped(title));
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
         viewBox=\"0 0 {width} {height}\" font-family=\"'{FAMILY}', sans-serif\" xml:lang=\"en\">\n<title>{title}</title>\n"
    )
}

fn write_page(out: &mut String, page: &Page, number: u32, top: f64, (width, height): (f64, f64)) {
    let (top, width, height) = (figure(top), figure(width), figure(height));
    put(out, format_args!("<g id=\"page-{number}\" transform=\"translate(0 {top})\">\n"));
    put(
        out,
        format_args!(
            "<rect width=\"{width}\" height=\"{height}\" fill=\"#ffffff\" stroke=\"#8c8c8c\" stroke-width=\"0.1\"/>\n"
        ),
    );
    for item in &page.items {
        write_item(out, item);
    }
    out.push_str("</g>\n");
}

fn write_item(out: &mut String, item: &Item) {
    match item {
        Item::Line { from, to, pen } => put(
            out,
            format_args!(
                "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>\n",
                figure(from.x),
                figure(from.y),
                figure(to.x),
                figure(to.y),
                stroke(Some(*pen))
            ),
        ),
        Item::Polyline { points, pen } => {
            put(out, format_args!("<polyline points=\"{}\" fill=\"none\"{}/>\n", corners(points), stroke(Some(*pen))))
        }
        Item::Polygon { points, fill, pen } => {
            let fill = fill.map_or("none".to_owned(), color);
            put(out, format_args!("<polygon points=\"{}\" fill=\"{fill}\"{}/>\n", corners(points), stroke(*pen)));
        }
        Item::Text(text) => write_text(out, text),
    }
}

/// The words with their length, so that a program without the font still keeps them in their place.
fn write_text(out: &mut String, text: &Text) {
    if text.content().is_empty() {
        return;
    }
    let anchor = match text.align {
        Align::Left => "start",
        Align::Center => "middle",
        Align::Right => "end",
    };
    let (x, y) = (figure(text.at.x), figure(text.at.y));
    let place = match text.turn {
        Turn::Level => format!("x=\"{x}\" y=\"{y}\""),
        Turn::Upward => format!("transform=\"translate({x} {y}) rotate(-90)\""),
    };
    put(
        out,
        format_args!(
            "<text {place} font-size=\"{}\" font-weight=\"{}\" text-anchor=\"{anchor}\" fill=\"{}\" \
             textLength=\"{}\" lengthAdjust=\"spacingAndGlyphs\">{}</text>\n",
            figure(text.size_mm),
            text.weight.css(),
            color(text.gray),
            figure(text.width_mm()),
            escaped(text.content())
        ),
    );
}

fn corners(points: &[Point]) -> String {
    points.iter().map(|point| format!("{},{}", figure(point.x), figure(point.y))).collect::<Vec<_>>().join(" ")
}

fn stroke(pen: Option<Pen>) -> String {
    let Some(pen) = pen else { return String::new() };
    let mut stroke = format!(" stroke=\"{}\" stroke-width=\"{}\"", color(pen.gray()), figure(pen.width_mm()));
    let dashes: Vec<String> = pen.dashes_mm().iter().map(|length| figure(*length)).collect();
    if !dashes.is_empty() {
        put(&mut stroke, format_args!(" stroke-dasharray=\"{}\"", dashes.join(" ")));
    }
    stroke
}

fn color(gray: Gray) -> String {
    let level = gray.lightness();
    format!("#{level:02x}{level:02x}{level:02x}")
}

/// A length in mm to a tenth of a micrometre, without needless zeros; what is not a number is drawn at 0.
fn figure(mm: f64) -> String {
    if !mm.is_finite() {
        return "0".to_owned();
    }
    let text = format!("{mm:.4}");
    match text.trim_end_matches('0').trim_end_matches('.') {
        "-0" => "0".to_owned(),
        short => short.to_owned(),
    }
}

/// The words with the characters that mean something to XML, or that it does not allow, replaced.
fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => safe.push(' '),
            c => safe.push(c),
        }
    }
    safe
}

/// Adds to a text; writing to a text cannot fail.
fn put(out: &mut String, words: std::fmt::Arguments<'_>) {
    let _ = out.write_fmt(words);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::at;
    use crate::paper::{Orientation, Paper};

    fn drawing(pages: Vec<Page>) -> Drawing {
        let title = "Hook & <eye>".to_owned();
        Drawing { title, paper: Paper::Letter, orientation: Orientation::Landscape, pages }
    }

    fn page(item: Item) -> Page {
        Page { items: vec![item] }
    }

    #[test]
    fn one_page_has_the_size_of_the_paper() {
        let svg = svg(&drawing(vec![Page::default()]));
        assert!(svg.contains("width=\"279.4mm\" height=\"215.9mm\" viewBox=\"0 0 279.4 215.9\""), "{svg}");
    }

    #[test]
    fn pages_stand_below_each_other() {
        let svg = svg(&drawing(vec![Page::default(), Page::default()]));
        assert!(svg.contains("height=\"441.8mm\"") && svg.contains("translate(0 225.9)"), "{svg}");
    }

    #[test]
    fn a_line_of_100_mm_measures_100_mm() {
        let svg = svg(&drawing(vec![page(Item::line(at(20.0, 30.0), at(120.0, 30.0), Pen::Dimension))]));
        assert!(svg.contains("x1=\"20\" y1=\"30\" x2=\"120\" y2=\"30\""), "{svg}");
    }

    #[test]
    fn words_stay_words_and_are_escaped() {
        let svg = svg(&drawing(vec![page(Text::new(at(1.0, 2.0), 6.0, "1/2 < 3/4 & \"more\"").into())]));
        assert!(svg.contains(">1⁄2 &lt; 3⁄4 &amp; &quot;more&quot;</text>"), "{svg}");
        assert!(svg.contains("<title>Hook &amp; &lt;eye&gt;</title>"), "{svg}");
    }

    #[test]
    fn figures_are_short_and_always_numbers() {
        assert_eq!(figure(1.5), "1.5");
        assert_eq!(figure(100.0), "100");
        assert_eq!(figure(-0.000_01), "0");
        assert_eq!(figure(f64::NAN), "0");
    }
}
