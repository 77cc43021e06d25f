//! A page of a sheet on the screen: what the writers of PDF and SVG write, painted at any size.

use super::fill::filled;
use crate::theme::{paper, paper_font};
use egui::{Painter, Pos2, Rect, Shape, Stroke, StrokeKind, epaint::TextShape, vec2};
use fh_print::drawing::{Item, Page, Point, Text, Turn};
use fh_print::pen::{Gray, Pen};
use std::f32::consts::FRAC_PI_2;

/// Words smaller than this, in points, are too small to be read: a bar stands for them.
const LEAST_WORDS: f32 = 3.5;
/// How tall such a bar is, as a share of the words' em.
const BAR: f32 = 0.4;
/// A line is never thinner than this, in points, so that none is lost.
const LEAST_LINE: f32 = 0.5;

/// Paints a page that is so wide in mm into a rectangle of the paper's shape.
pub(crate) fn paint(painter: &Painter, page: &Page, width_mm: f64, rect: Rect) {
    let painter = painter.with_clip_rect(rect.intersect(painter.clip_rect()));
    painter.rect(rect, 0, paper(Gray::WHITE), (1.0, paper(Gray::MIDDLE)), StrokeKind::Inside);
    let sheet = Sheet { painter: &painter, origin: rect.min, scale: rect.width() / width_mm.max(1.0) as f32 };
    page.items.iter().for_each(|item| sheet.item(item));
}

/// Where the page lies on the screen, and how large a millimetre is there.
struct Sheet<'a> {
    painter: &'a Painter,
    origin: Pos2,
    scale: f32,
}

impl Sheet<'_> {
    fn at(&self, point: &Point) -> Pos2 {
        self.origin + vec2(point.x as f32, point.y as f32) * self.scale
    }

    fn points(&self, points: &[Point]) -> Vec<Pos2> {
        points.iter().map(|point| self.at(point)).collect()
    }

    fn item(&self, item: &Item) {
        match item {
            Item::Line { from, to, pen } => self.line(vec![self.at(from), self.at(to)], *pen),
            Item::Polyline { points, pen } => self.line(self.points(points), *pen),
            Item::Polygon { points, fill, pen } => {
                let mut corners = self.points(points);
                if let Some(fill) = fill {
                    self.painter.add(Shape::mesh(filled(&corners, paper(*fill))));
                }
                if let Some(pen) = pen {
                    corners.extend(corners.first().copied());
                    self.line(corners, *pen);
                }
            }
            Item::Text(text) => self.words(text),
        }
    }

    fn line(&self, points: Vec<Pos2>, pen: Pen) {
        let width = (pen.width_mm() as f32 * self.scale).max(LEAST_LINE);
        let stroke = Stroke::new(width, paper(pen.gray()));
        let dashes: Vec<f32> = pen.dashes_mm().iter().map(|mm| *mm as f32 * self.scale).collect();
        if dashes.is_empty() {
            self.painter.add(Shape::line(points, stroke));
            return;
        }
        let (dashes, gaps): (Vec<_>, Vec<_>) =
            dashes.chunks(2).filter_map(|two| Some((*two.first()?, *two.get(1)?))).unzip();
        self.painter.extend(Shape::dashed_line_with_offset(&points, stroke, &dashes, &gaps, 0.0));
    }

    fn words(&self, text: &Text) {
        let (size, color) = (text.size_mm as f32 * self.scale, paper(text.gray));
        let lead = text.lead_mm() as f32 * self.scale;
        let place = self.at(&text.at);
        let (start, along, up) = match text.turn {
            Turn::Level => (place - vec2(lead, 0.0), vec2(1.0, 0.0), vec2(0.0, -1.0)),
            Turn::Upward => (place + vec2(0.0, lead), vec2(0.0, -1.0), vec2(-1.0, 0.0)),
        };
        if size < LEAST_WORDS {
            let end = start + along * (text.width_mm() as f32 * self.scale);
            let bar = Rect::from_two_pos(start, end + up * size * BAR);
            self.painter.rect_filled(bar, 0, paper(Gray::LIGHT));
            return;
        }
        let galley = self.painter.layout_no_wrap(text.content().to_owned(), paper_font(size, text.weight), color);
        let row = galley.rows.first();
        let baseline = row.and_then(|row| Some(row.pos.y + row.row.glyphs.first()?.pos.y)).unwrap_or(size);
        let shape = TextShape::new(start + up * baseline, galley, color);
        let angle = if text.turn == Turn::Upward { -FRAC_PI_2 } else { 0.0 };
        self.painter.add(shape.with_angle(angle));
    }
}
