//! A drawing as PDF. The only place that knows that a PDF counts in points, 72 to the inch.

use crate::drawing::{Drawing, Item, Page, Point, Text, Turn};
use crate::error::PrintError;
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::shaping::{Glyph, glyphs};
use fh_core::describe::plain_line;
use krilla::color::luma;
use krilla::geom::{Path, PathBuilder, Point as PdfPoint, Transform};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, LineCap, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};

/// Points to the millimetre: 72 points to the inch of 25.4 mm (ISO 32000-1, 8.3.2.3).
const POINTS_PER_MM: f64 = 72.0 / 25.4;

/// The drawing as the bytes of a PDF; the same drawing gives the same bytes.
///
/// # Errors
/// Where the paper has no size, an item stands at a place that is not a number, or a font cannot be read or embedded.
pub fn pdf(drawing: &Drawing) -> Result<Vec<u8>, PrintError> {
    written(drawing, SerializeSettings::default())
}

fn written(drawing: &Drawing, settings: SerializeSettings) -> Result<Vec<u8>, PrintError> {
    let fonts = Fonts::read()?;
    let mut document = Document::new_with(settings);
    document.set_metadata(metadata(drawing));
    for (number, page) in (1..).zip(&drawing.pages) {
        refuse_what_is_not_a_number(page, number)?;
        write_page(&mut document, drawing, page, &fonts)?;
    }
    document.finish().map_err(|error| PrintError::Pdf(error.to_string()))
}

fn metadata(drawing: &Drawing) -> Metadata {
    Metadata::new().title(plain_line(&drawing.title)).language("en".to_owned()).creator("First Heat".to_owned())
}

fn refuse_what_is_not_a_number(page: &Page, number: usize) -> Result<(), PrintError> {
    match page.items.iter().position(|item| !item.is_finite()) {
        Some(place) => Err(PrintError::NotANumber { page: number, item: place + 1 }),
        None => Ok(()),
    }
}

fn write_page(document: &mut Document, drawing: &Drawing, page: &Page, fonts: &Fonts) -> Result<(), PrintError> {
    let (width_mm, height_mm) = drawing.size_mm(page);
    let settings = PageSettings::from_wh(points(width_mm), points(height_mm))
        .ok_or(PrintError::PaperSize { width_mm, height_mm })?;
    let mut pdf_page = document.start_page_with(settings);
    let mut surface = pdf_page.surface();
    surface.push_transform(&Transform::from_scale(points(1.0), points(1.0)));
    for item in &page.items {
        draw(&mut surface, item, fonts);
    }
    surface.pop();
    surface.finish();
    pdf_page.finish();
    Ok(())
}

fn points(mm: f64) -> f32 {
    (mm * POINTS_PER_MM) as f32
}

/// The two fonts, ready to be embedded.
struct Fonts {
    regular: Font,
    semi_bold: Font,
}

impl Fonts {
    fn read() -> Result<Self, PrintError> {
        Ok(Self { regular: read_font(Weight::Regular)?, semi_bold: read_font(Weight::SemiBold)? })
    }

    fn of(&self, weight: Weight) -> Font {
        match weight {
            Weight::Regular => self.regular.clone(),
            Weight::SemiBold => self.semi_bold.clone(),
        }
    }
}

fn read_font(weight: Weight) -> Result<Font, PrintError> {
    Font::new(weight.bytes().into(), 0).ok_or(PrintError::Font { name: weight.font_name() })
}

fn draw(surface: &mut Surface<'_>, item: &Item, fonts: &Fonts) {
    match item {
        Item::Line { from, to, pen } => draw_lines(surface, &[*from, *to], false, None, Some(*pen)),
        Item::Polyline { points, pen } => draw_lines(surface, points, false, None, Some(*pen)),
        Item::Polygon { points, fill, pen } => draw_lines(surface, points, true, *fill, *pen),
        Item::Text(text) => draw_text(surface, text, fonts),
    }
}

fn draw_lines(surface: &mut Surface<'_>, points: &[Point], closed: bool, gray: Option<Gray>, pen: Option<Pen>) {
    if let Some(path) = path(points, closed) {
        surface.set_fill(gray.map(fill));
        surface.set_stroke(pen.map(stroke));
        surface.draw_path(&path);
    }
}

fn path(points: &[Point], closed: bool) -> Option<Path> {
    let (first, rest) = points.split_first()?;
    let mut path = PathBuilder::new();
    path.move_to(first.x as f32, first.y as f32);
    for point in rest {
        path.line_to(point.x as f32, point.y as f32);
    }
    if closed {
        path.close();
    }
    path.finish()
}

fn draw_text(surface: &mut Surface<'_>, text: &Text, fonts: &Fonts) {
    if text.content().is_empty() {
        return;
    }
    let glyphs = pdf_glyphs(text);
    let (x, y, lead) = (text.at.x as f32, text.at.y as f32, text.lead_mm() as f32);
    surface.push_transform(&match text.turn {
        Turn::Level => Transform::from_translate(x - lead, y),
        Turn::Upward => Transform::from_row(0.0, -1.0, 1.0, 0.0, x, y + lead),
    });
    surface.set_fill(Some(fill(text.gray)));
    surface.set_stroke(None);
    let (origin, font) = (PdfPoint::from_xy(0.0, 0.0), fonts.of(text.weight));
    surface.draw_glyphs(origin, &glyphs, font, text.content(), text.size_mm as f32, false);
    surface.pop();
}

fn pdf_glyphs(text: &Text) -> Vec<KrillaGlyph> {
    let glyph = |glyph: Glyph| {
        let ([x_advance, y_advance], [x_offset, y_offset]) =
            (glyph.advance.map(|a| a as f32), glyph.offset.map(|o| o as f32));
        KrillaGlyph::new(GlyphId::new(glyph.id), x_advance, x_offset, y_offset, y_advance, glyph.letters, None)
    };
    glyphs(text.content(), text.weight).into_iter().map(glyph).collect()
}

fn fill(gray: Gray) -> Fill {
    Fill { paint: luma::Color::new(gray.lightness()).into(), ..Fill::default() }
}

fn stroke(pen: Pen) -> Stroke {
    let dashes: Vec<f32> = pen.dashes_mm().iter().map(|length| *length as f32).collect();
    Stroke {
        paint: luma::Color::new(pen.gray().lightness()).into(),
        width: pen.width_mm() as f32,
        line_cap: LineCap::Butt,
        line_join: LineJoin::Miter,
        opacity: NormalizedF32::ONE,
        dash: if dashes.is_empty() { None } else { Some(StrokeDash { array: dashes, offset: 0.0 }) },
        ..Stroke::default()
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::drawing::at;
    use crate::paper::{Orientation, Paper};

    fn drawing(items: Vec<Item>) -> Drawing {
        let (paper, orientation) = (Paper::A4, Orientation::Landscape);
        Drawing { title: "Gate hook".to_owned(), paper, orientation, pages: vec![Page { items, ..Page::default() }] }
    }

    /// The PDF with its content streams left readable.
    fn readable(drawing: &Drawing) -> String {
        let settings =
            SerializeSettings { pretty: true, compress_content_streams: false, ..SerializeSettings::default() };
        String::from_utf8_lossy(&written(drawing, settings).unwrap()).into_owned()
    }

    /// The figures before an operator of a content stream, for each time it occurs.
    fn operands(content: &str, operator: &str) -> Vec<Vec<f64>> {
        let figures = |line: &str| line.split_whitespace().filter_map(|word| word.parse().ok()).collect();
        let suffix = format!(" {operator}");
        content.lines().filter(|line| line.ends_with(&suffix)).map(figures).collect()
    }

    #[test]
    fn the_page_is_the_paper_in_points() {
        let pdf = readable(&drawing(Vec::new()));
        let place = pdf.find("/MediaBox").expect("a page size");
        let size: Vec<f64> = pdf[place..]
            .split(['[', ']'])
            .nth(1)
            .unwrap()
            .split_whitespace()
            .map(|figure| figure.parse().unwrap())
            .collect();
        assert!((size[2] - 841.8898).abs() < 1e-3 && (size[3] - 595.2756).abs() < 1e-3, "{size:?}");
    }

    #[test]
    fn a_line_of_100_mm_measures_100_mm() {
        let line = Item::line(at(20.0, 30.0), at(120.0, 30.0), Pen::Dimension);
        let pdf = readable(&drawing(vec![line]));
        let scale: f64 = operands(&pdf, "cm").iter().map(|matrix| matrix[0]).product();
        let (start, end) = (operands(&pdf, "m")[0][0], operands(&pdf, "l")[0][0]);
        let length_mm = (end - start) * scale / POINTS_PER_MM;
        assert!((length_mm - 100.0).abs() < 1e-3, "{length_mm} mm in\n{pdf}");
    }

    #[test]
    fn the_same_drawing_gives_the_same_bytes() {
        let words = drawing(vec![Text::new(at(20.0, 20.0), 6.0, "1 13/16 in").into()]);
        assert_eq!(pdf(&words).unwrap(), pdf(&words).unwrap());
    }

    #[test]
    fn it_says_its_title_and_language() {
        let pdf = readable(&drawing(Vec::new()));
        assert!(pdf.contains("Gate hook") && pdf.contains("/Lang"), "{pdf}");
    }

    #[test]
    fn a_place_that_is_not_a_number_is_refused() {
        let broken = drawing(vec![Item::line(at(0.0, 0.0), at(f64::NAN, 0.0), Pen::Outline)]);
        let error = pdf(&broken).unwrap_err();
        assert_eq!(error.to_string(), "page 1, item 1 stands at a place that is not a number");
    }

    #[test]
    fn words_that_no_font_has_do_not_stop_it() {
        let items = ["", " ", "鉄", "שלום", "🔥", "e\u{301}"].map(|word| Text::new(at(20.0, 20.0), 6.0, word).into());
        assert!(pdf(&drawing(items.to_vec())).is_ok());
    }
}
