//! A drawing as SVG in true millimetres: a file for each page, its letters drawn as lines, so that it needs no font and
//! looks the same in every program.

use crate::drawing::{Drawing, Item, Page, Point, Text, Turn};
use crate::glyph_lines::word_lines;
use crate::pen::{Gray, Pen};
use fh_piece::svg_text::{SvgText, escaped, figure};

/// The pages of a drawing, each an SVG text of the paper's size. The same drawing gives the same texts.
pub fn svg(drawing: &Drawing) -> Vec<String> {
    let many = drawing.pages.len();
    let title = |number: usize| match many {
        1 => drawing.title.clone(),
        _ => format!("{}, page {number} of {many}", drawing.title),
    };
    (1..).zip(&drawing.pages).map(|(number, page)| svg_page(page, &title(number), drawing.size_mm(page))).collect()
}

fn svg_page(page: &Page, title: &str, (width, height): (f64, f64)) -> String {
    let mut out = SvgText::new([width, height], title);
    let (width, height) = (figure(width), figure(height));
    out.put(format_args!("<rect width=\"{width}\" height=\"{height}\" fill=\"#ffffff\"/>\n"));
    for item in &page.items {
        write_item(&mut out, item);
    }
    out.finish()
}

fn write_item(out: &mut SvgText, item: &Item) {
    match item {
        Item::Line { from, to, pen } => out.put(format_args!(
            "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>\n",
            figure(from.x),
            figure(from.y),
            figure(to.x),
            figure(to.y),
            stroke(Some(*pen))
        )),
        Item::Polyline { points, pen } => {
            out.put(format_args!("<polyline points=\"{}\" fill=\"none\"{}/>\n", corners(points), stroke(Some(*pen))));
        }
        Item::Polygon { points, fill, pen } => {
            let fill = fill.map_or("none".to_owned(), color);
            out.put(format_args!("<polygon points=\"{}\" fill=\"{fill}\"{}/>\n", corners(points), stroke(*pen)));
        }
        Item::Text(text) => write_text(out, text),
    }
}

/// The words as the outlines of their letters; what they say stands in their label, to be found and to be read aloud.
fn write_text(out: &mut SvgText, text: &Text) {
    let Some(lines) = word_lines(text.content(), text.weight) else { return };
    let scale = text.size_mm / lines.units_per_em;
    let (Point { x, y }, lead) = (text.at, text.lead_mm());
    let place = match text.turn {
        Turn::Level => format!("matrix({scale:.7} 0 0 {scale:.7} {} {})", figure(x - lead), figure(y)),
        Turn::Upward => format!("matrix(0 -{scale:.7} {scale:.7} 0 {} {})", figure(x), figure(y + lead)),
    };
    let (words, color) = (escaped(text.content()), color(text.gray));
    out.put(format_args!(
        "<path role=\"img\" aria-label=\"{words}\" fill=\"{color}\" transform=\"{place}\" d=\"{}\"/>\n",
        lines.path
    ));
}

fn corners(points: &[Point]) -> String {
    points.iter().map(|point| format!("{},{}", figure(point.x), figure(point.y))).collect::<Vec<_>>().join(" ")
}

fn stroke(pen: Option<Pen>) -> String {
    let Some(pen) = pen else { return String::new() };
    let mut stroke = format!(" stroke=\"{}\" stroke-width=\"{}\"", color(pen.gray()), figure(pen.width_mm()));
    let dashes: Vec<String> = pen.dashes_mm().iter().map(|length| figure(*length)).collect();
    if !dashes.is_empty() {
        stroke.push_str(&format!(" stroke-dasharray=\"{}\"", dashes.join(" ")));
    }
    stroke
}

fn color(gray: Gray) -> String {
    let level = gray.lightness();
    format!("#{level:02x}{level:02x}{level:02x}")
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
        Page { items: vec![item], ..Page::default() }
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
