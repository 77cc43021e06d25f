//! A drawing as SVG in true millimetres: a file for each page, its letters drawn as lines, so that it needs no font and
//! looks the same in every program.

use crate::drawing::{Drawing, Item, Page, Point, Text, Turn};
use crate::glyph_lines::word_lines;
use crate::pen::{Gray, Pen};
use std::fmt::Write;

/// The pages of a drawing, each an SVG text of the paper's size. The same drawing gives the same texts.
pub fn svg(drawing: &Drawing) -> Vec<String> {
    let many = drawing.pages.len();
    let title = |number: usize| match many {
        1 => drawing.title.clone(),
        _ => format!("{}, page {number} of {many}", drawing.title),
    };
    (1..).zip(&drawing.pages).map(|(number, page)| svg_page(page, &title(number), drawing.size_mm())).collect()
}

fn svg_page(page: &Page, title: &str, (width, height): (f64, f64)) -> String {
    let (width, height, title) = (figure(width), figure(height), escaped(title));
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
         viewBox=\"0 0 {width} {height}\" xml:lang=\"en\">\n<title>{title}</title>\n\
         <rect width=\"{width}\" height=\"{height}\" fill=\"#ffffff\"/>\n"
    );
    for item in &page.items {
        write_item(&mut out, item);
    }
    out.push_str("</svg>\n");
    out
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

/// The words as the outlines of their letters; what they say stands in their label, to be found and to be read aloud.
fn write_text(out: &mut String, text: &Text) {
    let Some(lines) = word_lines(text.content(), text.weight) else { return };
    let scale = text.size_mm / lines.units_per_em;
    let (Point { x, y }, lead) = (text.at, text.lead_mm());
    let place = match text.turn {
        Turn::Level => format!("matrix({scale:.7} 0 0 {scale:.7} {} {})", figure(x - lead), figure(y)),
        Turn::Upward => format!("matrix(0 -{scale:.7} {scale:.7} 0 {} {})", figure(x), figure(y + lead)),
    };
    let (words, color) = (escaped(text.content()), color(text.gray));
    put(
        out,
        format_args!(
            "<path role=\"img\" aria-label=\"{words}\" fill=\"{color}\" transform=\"{place}\" d=\"{}\"/>\n",
            lines.path
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
        let pages = svg(&drawing(vec![Page::default()]));
        assert_eq!(pages.len(), 1);
        assert!(pages[0].contains("width=\"279.4mm\" height=\"215.9mm\" viewBox=\"0 0 279.4 215.9\""), "{pages:?}");
    }

    #[test]
    fn each_page_is_a_file_of_its_own() {
        let pages = svg(&drawing(vec![Page::default(), Page::default()]));
        assert_eq!(pages.len(), 2);
        for (number, page) in (1..).zip(&pages) {
            assert!(page.starts_with("<svg ") && page.ends_with("</svg>\n") && page.matches("<svg").count() == 1);
            assert!(page.contains("height=\"215.9mm\""), "{page}");
            assert!(page.contains(&format!("<title>Hook &amp; &lt;eye&gt;, page {number} of 2</title>")), "{page}");
        }
    }

    #[test]
    fn a_line_of_100_mm_measures_100_mm() {
        let svg = svg(&drawing(vec![page(Item::line(at(20.0, 30.0), at(120.0, 30.0), Pen::Dimension))])).concat();
        assert!(svg.contains("x1=\"20\" y1=\"30\" x2=\"120\" y2=\"30\""), "{svg}");
    }

    #[test]
    fn words_can_be_found_and_are_escaped() {
        let svg = svg(&drawing(vec![page(Text::new(at(1.0, 2.0), 6.0, "1/2 < 3/4 & \"more\"").into())])).concat();
        assert!(svg.contains(" aria-label=\"1⁄2 &lt; 3⁄4 &amp; &quot;more&quot;\""), "{svg}");
        assert!(svg.contains("<title>Hook &amp; &lt;eye&gt;</title>"), "{svg}");
    }

    #[test]
    fn no_font_is_asked_for() {
        let words = Text::new(at(1.0, 2.0), 6.0, "■ 1 9/16 in").upward().bold();
        let svg = svg(&drawing(vec![page(words.into())])).concat();
        assert!(!svg.contains("<text") && !svg.contains("font"), "{svg}");
    }

    #[test]
    fn figures_are_short_and_always_numbers() {
        assert_eq!(figure(1.5), "1.5");
        assert_eq!(figure(100.0), "100");
        assert_eq!(figure(-0.000_01), "0");
        assert_eq!(figure(f64::NAN), "0");
    }
}
