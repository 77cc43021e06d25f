//! Segments of the piece under the pointer: a click selects one, and each has a name that screen readers hear.

use super::place::{Place, name_of};
use super::stage::Stage;
use super::{PieceView, measure};
use crate::state::Request;
use crate::theme::{Text, space};
use egui::accesskit::Action;
use egui::{Pos2, Rect, Response, RichText, Role, Sense, Ui, Vec2, WidgetInfo};
use fh_core::plan::Segment;

impl PieceView {
    /// The segment that is seen at a place in the window.
    pub(super) fn place_at(&self, ui: &Ui, stage: &Stage<'_>, at: Pos2) -> Option<Place> {
        let from = at - stage.rect.left_top();
        let (solid, _) = self.image.seen_at([from.x, from.y], ui.ctx().pixels_per_point())?;
        stage.model.places.get(solid).copied()
    }

    /// Reads clicks, and tells what lies under the pointer.
    pub(super) fn touch_piece(&mut self, ui: &mut Ui, stage: &Stage<'_>, ground: &Response, out: &mut Vec<Request>) {
        let dense = ui.ctx().pixels_per_point();
        let pointer = ground.hover_pos().filter(|_| self.held.is_none() && !ground.dragged());
        self.pointed_at = pointer.and_then(|at| self.place_at(ui, stage, at));
        if ground.clicked() {
            ground.request_focus();
            if let Some(at) = ground.interact_pointer_pos() {
                self.click(ui, stage, at, out);
            }
        }
        if let Some((bar, segment)) = self.pointed_at.filter(|_| ground.secondary_clicked()) {
            out.push(Request::Select(bar, Some(segment)));
        }
        let caught = pointer.filter(|_| self.measure.is_on);
        let caught = caught.and_then(|at| measure::caught(stage, &self.image, at, dense));
        self.measure.show(ui, stage, caught, out);
        if let Some(place) = self.pointed_at.filter(|_| !self.measure.is_on) {
            tell(ground, stage, place);
        }
        self.name_segments(ui, stage, out);
    }

    fn click(&mut self, ui: &Ui, stage: &Stage<'_>, at: Pos2, out: &mut Vec<Request>) {
        if self.measure.is_on {
            let caught = measure::caught(stage, &self.image, at, ui.ctx().pixels_per_point());
            let words = self.measure.take(caught, stage);
            out.push(Request::Say(words));
        } else if let Some((bar, segment)) = self.place_at(ui, stage, at) {
            out.push(Request::Select(bar, Some(segment)));
        }
    }

    /// Gives each segment in sight its name. The pointer goes through to the metal.
    fn name_segments(&self, ui: &Ui, stage: &Stage<'_>, out: &mut Vec<Request>) {
        for line in &stage.model.piece.lines {
            let place = (line.bar, line.segment);
            // Of several alike the first is named.
            if stage.model.line(place).is_some_and(|first| first.copy != line.copy) {
                continue;
            }
            let Some(at) = self.shown_at(ui, stage, place) else { continue };
            let id = ui.make_persistent_id(("segment of the piece", place));
            let response = ui.interact(Rect::from_center_size(at, Vec2::splat(space::GRID)), id, Sense::HOVER);
            let name = format!("In the piece: {}", name_of(stage.plan, place));
            let is_selected = stage.selected == Some(place);
            response.widget_info(|| WidgetInfo::selected(Role::Button, true, is_selected, &name));
            ui.accesskit_node_builder(id, |node| node.add_action(Action::Click));
            if ui.input(|input| input.has_accesskit_action_request(id, Action::Click)) {
                out.push(Request::Select(place.0, Some(place.1)));
            }
        }
    }

    /// Where a segment is seen: on its center line, where nothing hides it if possible.
    fn shown_at(&self, ui: &Ui, stage: &Stage<'_>, place: Place) -> Option<Pos2> {
        let frames = &stage.model.line(place)?.frames;
        let shares = [4, 3, 5, 2, 6, 1, 7].map(|eighth| eighth * frames.len() / 8);
        let points = shares.into_iter().filter_map(|at| frames.get(at)).map(|frame| stage.point(frame.at));
        let points: Vec<Pos2> = points.filter(|at| stage.rect.contains(*at)).collect();
        let seen = points.iter().find(|at| self.place_at(ui, stage, **at) == Some(place));
        seen.or(points.first()).copied()
    }
}

/// Tells what a segment is, once the pointer rests on it.
fn tell(ground: &Response, stage: &Stage<'_>, place: Place) {
    ground.clone().on_hover_ui_at_pointer(|ui| {
        ui.label(RichText::new(name_of(stage.plan, place)).text_style(Text::Strong.style()));
        if let Some(segment) = stage.plan.segment(place.0, place.1) {
            ui.label(words(segment));
        }
    });
}

/// What a segment becomes, and how it is bent then.
fn words(segment: &Segment) -> String {
    let form = fh_core::describe::form_words(segment);
    match fh_core::describe::bend_words(segment, &[]) {
        Some(bend) => format!("{form}; {bend}"),
        None => form,
    }
}
