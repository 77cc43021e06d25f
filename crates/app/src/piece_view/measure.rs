//! Measuring: two points on the metal, and how far they lie from each other.

use super::image::Image;
use super::joined::{self, Part};
use super::spots::{self, Spot};
use super::stage::Stage;
use crate::figures::finished as figure;
use crate::state::{Request, WholeAsk};
use crate::theme::{Text, space};
use egui::{Align2, Button, Pos2, Rect, Stroke, StrokeKind, Ui, Vec2, vec2};
use fh_core::describe::asked_size_words;
use fh_core::plan::AskedSize;
use fh_piece::vector::{length, minus};

/// How near the pointer must come to a place of a part to be caught by it, in points.
const CATCH: f32 = 10.0;
/// How wide the button is that asks for what was measured, in points at normal text size.
const ASK_WIDE: f32 = 130.0;

/// The two points.
#[derive(Default)]
pub(super) struct Measure {
    pub(super) is_on: bool,
    points: Vec<Caught>,
}

/// A point that the pointer shows.
#[derive(Clone, Copy)]
pub(super) struct Caught {
    at: [f64; 3],
    /// The place of a part that it is, if it is one.
    spot: Option<Spot>,
    /// The part that it lies on.
    part: Option<Part>,
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
        self.points.push(caught);
        match self.points.as_slice() {
            [from, to] => words(from.at, to.at, stage),
            _ => "Click a second point on the metal. Esc cancels.".to_owned(),
        }
    }

    /// Paints what is measured, and the way to the pointer; with both points on places of parts, it can be asked for.
    pub(super) fn show(&self, ui: &mut Ui, stage: &Stage<'_>, pointer: Option<Caught>, out: &mut Vec<Request>) {
        if !self.is_on {
            return;
        }
        if let Some(caught) = pointer {
            paint_catch(stage, caught);
        }
        let to = self.points.get(1).copied().or(pointer);
        let Some(from) = self.points.first() else { return };
        paint_end(stage, stage.point(from.at));
        let Some(to) = to else { return };
        paint_way(stage, from.at, to.at);
        show_words(ui, stage, &words(from.at, to.at, stage));
        if self.join(ui, stage, out) {
            return;
        }
        match self.both_spots().map(|(from, to)| spots::asked(stage, from, to)) {
            Some(Ok(size)) => show_ask(ui, stage, size, out),
            Some(Err(why_not)) => super::captions::show_below(ui, stage, &why_not, Align2::RIGHT_TOP),
            None => {}
        }
    }

    /// Where the two points lie on two bars, offers to join them there; whether they do.
    fn join(&self, ui: &mut Ui, stage: &Stage<'_>, out: &mut Vec<Request>) -> bool {
        let [from, to] = self.points.as_slice() else { return false };
        let (Some(first), Some(second)) = (from.part, to.part) else { return false };
        if (first.0, first.1) == (second.0, second.1) {
            return false;
        }
        match joined::joint(stage, [(first, from.at), (second, to.at)]) {
            Ok(joint) => {
                let tip = format!("A joint, {}: the second part is placed by it.", joint.kind.name());
                if corner_button(ui, stage, "Join them here", &tip) {
                    out.push(Request::Whole(WholeAsk::Join(Box::new(joint))));
                }
            }
            Err(why_not) => super::captions::show_below(ui, stage, &why_not, Align2::RIGHT_TOP),
        }
        true
    }

    /// The two places of parts that were clicked, where both are ones.
    fn both_spots(&self) -> Option<(Spot, Spot)> {
        let [from, to] = self.points.as_slice() else { return None };
        from.spot.zip(to.spot)
    }
}

/// The point of the metal under the pointer: a place of the part that is seen there where one is near; off the metal, the
/// nearest place of any part.
pub(super) fn caught(stage: &Stage<'_>, image: &Image, at: Pos2, dense: f32) -> Option<Caught> {
    let from = at - stage.rect.left_top();
    let seen = image.seen_at([from.x, from.y], dense).and_then(|(solid, depth)| {
        let solid = stage.model.piece.solids.get(solid)?;
        Some(((solid.bar, solid.copy, solid.segment), depth))
    });
    let near = spots::spots(stage).map(|(spot, place)| (spot, place, stage.point(place).distance(at)));
    let near = near.filter(|(spot, _, points)| *points <= CATCH && seen.is_none_or(|(part, _)| spot.part() == part));
    if let Some((spot, place, _)) = near.min_by(|a, b| a.2.total_cmp(&b.2)) {
        return Some(Caught { at: place, spot: Some(spot), part: Some(spot.part()) });
    }
    let (part, depth) = seen?;
    let [x, y] = stage.off_middle(at);
    Some(Caught { at: stage.camera.sight().place([x, y, depth]), spot: None, part: Some(part) })
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
    if let Some(spot) = caught.spot {
        let square = Rect::from_center_size(at, vec2(2.0 * space::GAP, 2.0 * space::GAP));
        stage.painter.rect_stroke(square, 0.0, stroke, StrokeKind::Middle);
        stage.card(|size| at - vec2(0.0, size.y), spot.words(stage.plan));
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

/// A button under the words that asks for what was measured.
fn show_ask(ui: &mut Ui, stage: &Stage<'_>, size: AskedSize, out: &mut Vec<Request>) {
    let tip = format!("{}: checked from now on, or kept by a part that you choose.", asked_size_words(&size));
    if corner_button(ui, stage, "Ask for this size", &tip) {
        out.push(Request::AskSize(Box::new(size)));
    }
}

/// A button under the words; whether it was pressed.
fn corner_button(ui: &mut Ui, stage: &Stage<'_>, words: &str, tip: &str) -> bool {
    let theme = stage.theme;
    let room = stage.rect.shrink2(vec2(space::GAP, theme.scaled(space::TARGET)));
    let button = vec2(theme.scaled(ASK_WIDE), theme.scaled(space::TARGET)).min(room.size());
    let place = Align2::RIGHT_TOP.align_size_within_rect(button, room);
    ui.put(place, Button::new(words)).on_hover_text(tip).clicked()
}
