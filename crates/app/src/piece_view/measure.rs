//! Measuring: two points on the metal, and how far they lie from each other.

use super::figure::figure;
use super::image::Image;
use super::stage::Stage;
use crate::theme::{Text, space};
use egui::{Align2, Pos2, Rect, Stroke, StrokeKind, Ui, Vec2, vec2};
use fh_piece::vector::{length, minus};

/// How near the pointer must come to an end or a middle of a center line to be caught by it, in points.
const CATCH: f32 = 10.0;

/// The two points.
#[derive(Default)]
pub(super) struct Measure {
    pub(super) is_on: bool,
    points: Vec<[f64; 3]>,
}

/// A point that the pointer shows.
#[derive(Clone, Copy)]
pub(super) struct Caught {
    at: [f64; 3],
    /// Whether it is an end or a middle of a center line.
    on_line: bool,
}

impl Measure {
    /// Begins or ends measuring.
    pub(super) fn toggle(&mut self) {
        self.is_on = !self.is_on;
        self.points.clear();
    }

    /// Lets go of the points; whether there were any.
    pub(super) fn clear(&mut self) -> bool {
        let had_some = !self.points.is_empty();
        self.points.clear();
        had_some
    }

    /// Takes a point; a third one begins anew. What is to be done next, or what was measured.
    pub(super) fn take(&mut self, caught: Option<Caught>, stage: &Stage<'_>) -> String {
        let Some(caught) = caught else { return "Click on the metal to measure from there.".to_owned() };
        if self.points.len() >= 2 {
            self.points.clear();
        }
        self.points.push(caught.at);
        match self.points.as_slice() {
            [from, to] => words(*from, *to, stage),
            _ => "Click a second point on the metal. Esc cancels.".to_owned(),
        }
    }

    /// Paints what is measured, and the way to the pointer.
    pub(super) fn show(&self, ui: &mut Ui, stage: &Stage<'_>, pointer: Option<Caught>) {
        if !self.is_on {
            return;
        }
        if let Some(caught) = pointer {
            paint_catch(stage, caught);
        }
        let to = self.points.get(1).copied().or(pointer.map(|caught| caught.at));
        if let Some(from) = self.points.first() {
            paint_end(stage, stage.point(*from));
            if let Some(to) = to {
                paint_way(stage, *from, to);
                show_words(ui, stage, &words(*from, to, stage));
            }
        }
    }
}

/// The point of the metal under the pointer: an end or a middle of a center line where one is near.
pub(super) fn caught(stage: &Stage<'_>, image: &Image, at: Pos2, dense: f32) -> Option<Caught> {
    let near = stage.model.piece.lines.iter().flat_map(|line| {
        let middle = line.frames.get(line.frames.len() / 2);
        [line.frames.first(), middle, line.frames.last()].into_iter().flatten().map(|frame| frame.at)
    });
    let near = near.map(|place| (place, stage.point(place).distance(at))).filter(|(_, points)| *points <= CATCH);
    if let Some((place, _)) = near.min_by(|a, b| a.1.total_cmp(&b.1)) {
        return Some(Caught { at: place, on_line: true });
    }
    let from = at - stage.rect.left_top();
    let (_, depth) = image.seen_at([from.x, from.y], dense)?;
    let [x, y] = stage.off_middle(at);
    Some(Caught { at: stage.camera.sight().place([x, y, depth]), on_line: false })
}

/// The distance and its parts: `84.2 mm: along 80 mm, across 0 mm, up 26.3 mm`.
fn words(from: [f64; 3], to: [f64; 3], stage: &Stage<'_>) -> String {
    let unit = stage.plan.units.length;
    let tell = |mm: f64| figure(mm, unit);
    let way = minus(to, from);
    let [along, across, up] = way.map(|part| tell(part.abs()));
    format!("Measured {}: along {along}, across {across}, up {up}", tell(length(way)))
}

fn paint_end(stage: &Stage<'_>, at: Pos2) {
    stage.painter.circle(at, space::GRID, stage.theme.panel_raised, Stroke::new(space::LINE, stage.theme.focus));
}

fn paint_catch(stage: &Stage<'_>, caught: Caught) {
    let (at, stroke) = (stage.point(caught.at), Stroke::new(space::LINE, stage.theme.focus));
    if caught.on_line {
        let square = Rect::from_center_size(at, vec2(2.0 * space::GAP, 2.0 * space::GAP));
        stage.painter.rect_stroke(square, 0.0, stroke, StrokeKind::Middle);
    } else {
        stage.painter.circle_stroke(at, space::GAP, stroke);
    }
}

fn paint_way(stage: &Stage<'_>, from: [f64; 3], to: [f64; 3]) {
    let theme = stage.theme;
    let ends = [from, to].map(|end| stage.point(end));
    stage.painter.line_segment(ends, Stroke::new(space::HEAVY + 2.0 * space::LINE, theme.panel_raised));
    stage.painter.line_segment(ends, Stroke::new(space::HEAVY, theme.focus));
    ends.into_iter().for_each(|end| paint_end(stage, end));
    let unit = stage.plan.units.length;
    let figure = figure(length(minus(to, from)), unit);
    let figure = stage.painter.layout_no_wrap(figure, theme.font(Text::Strong), theme.ink);
    let size = figure.size() + vec2(2.0 * space::GAP, space::TIGHT);
    let middle = stage.within(beside(ends, size), size.x / 2.0);
    let card = Rect::from_center_size(middle, size);
    stage.painter.rect(
        card,
        space::CORNER,
        theme.panel_raised,
        Stroke::new(theme.hairline(), theme.focus),
        StrokeKind::Inside,
    );
    stage.painter.galley(card.center() - figure.size() / 2.0, figure, theme.ink);
}

/// Where the middle of a card lies beside the middle of a line, above it rather than below, so that it hides no end.
fn beside([from, to]: [Pos2; 2], card: Vec2) -> Pos2 {
    let along = (to - from).normalized();
    let aside = if along == Vec2::ZERO { vec2(0.0, -1.0) } else { along.rot90() };
    let aside = if aside.y > 0.0 { -aside } else { aside };
    let off = (aside.x.abs() * card.x + aside.y.abs() * card.y) / 2.0 + space::GAP;
    from + (to - from) / 2.0 + aside * off
}

/// The parts of the distance, in words at the top of the view.
fn show_words(ui: &mut Ui, stage: &Stage<'_>, words: &str) {
    super::captions::show_label(ui, stage, words, Align2::RIGHT_TOP);
}
