//! The handles of the selected bend: one turns its angle, the other changes its inside radius.

use super::PieceView;
use super::held::{Bend, Held};
use super::place::name_of;
use super::stage::Stage;
use crate::state::{Gesture, Request};
use crate::theme::space;
use crate::widgets::keys;
use egui::accesskit::Action;
use egui::{
    CursorIcon, EventFilter, Id, Key, Modifiers, PointerButton, Pos2, Rect, Response, Role, Sense, Shape, Stroke, Ui,
    Vec2, WidgetInfo, vec2,
};
use fh_core::edit::{BendDrag, BendTo, Edit, Knob};

impl PieceView {
    /// Shows the handles of the selected bend, and reads what is done to them.
    pub(super) fn touch_handles(&mut self, ui: &Ui, stage: &Stage<'_>, out: &mut Vec<Request>) {
        let bend = Bend::selected(stage).filter(|_| !self.measure.is_on && !self.under.is_adjusting());
        let is_same = |held: &Held, bend: &Bend| held.bend.place == bend.place;
        if self.held.as_ref().is_some_and(|held| !bend.as_ref().is_some_and(|bend| is_same(held, bend))) {
            self.let_go(out);
        }
        let Some(bend) = bend else { return };
        let mut last: Option<Rect> = None;
        for knob in [Knob::Radius, Knob::Angle] {
            let [foot, at] = bend.stand(knob, stage);
            let response = touch(ui, at, knob, &bend, stage);
            if response.drag_started_by(PointerButton::Primary) {
                self.begin_drag(ui, knob, &bend, stage, out);
            }
            if self.held.as_ref().is_some_and(|held| held.knob == knob) {
                self.go_on(ui, &response, stage, out);
            }
            if response.has_focus() {
                nudge_by_keys(ui, &response, knob, &bend, out);
            }
            let in_hand = response.hovered() || response.dragged() || response.has_focus();
            paint(stage, knob, [foot, at], in_hand, response.has_focus());
            let words = if in_hand { bend.words(knob, stage) } else { bend.figure(knob, stage) };
            let radius = stage.theme.scaled(1.5 * space::GRID);
            let card = stage.card(|size| beside(at + vec2(size.x / 2.0 + 2.0 * radius, 0.0), size, last), words);
            last = Some(card);
            touch_figure(ui, card, knob, &bend, stage, out);
        }
    }

    fn begin_drag(&mut self, ui: &Ui, knob: Knob, bend: &Bend, stage: &Stage<'_>, out: &mut Vec<Request>) {
        let Some(pressed) = ui.input(|input| input.pointer.press_origin()) else { return };
        let last = bend.arc.angle_at(&stage.camera.sight(), stage.off_middle(pressed));
        self.held = Some(Held { knob, bend: bend.clone(), pressed, last, turned: 0.0, sent: None });
        out.push(Request::Gesture(Gesture::Begin));
        out.push(Request::Say("Alt: move freely. Esc: cancel.".to_owned()));
    }

    fn go_on(&mut self, ui: &Ui, response: &Response, stage: &Stage<'_>, out: &mut Vec<Request>) {
        let Some(held) = &mut self.held else { return };
        if response.drag_stopped() || !response.dragged() {
            // The window library ends a drag on Escape as well as on release.
            let taken_back = ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape));
            out.push(Request::Gesture(if taken_back { Gesture::Cancel } else { Gesture::Commit }));
            if taken_back {
                out.push(Request::Say("Put back.".to_owned()));
            }
            self.held = None;
            return;
        }
        ui.set_cursor_icon(CursorIcon::Grabbing);
        let Some(pointer) = response.interact_pointer_pos() else { return };
        let to = BendTo::Size(held.wish(pointer, stage));
        let wish = held.bend.wish(held.knob, to, ui.input(|input| input.modifiers.alt));
        if held.sent != Some(wish) {
            held.sent = Some(wish);
            out.push(drag(wish));
            ui.request_repaint();
        }
    }
}

/// The middle of a figure at a place, moved up or down where it would lie over the one before.
fn beside(at: Pos2, size: Vec2, last: Option<Rect>) -> Pos2 {
    let Some(last) = last.filter(|last| last.intersects(Rect::from_center_size(at, size))) else { return at };
    let step = last.height() / 2.0 + size.y / 2.0 + space::TIGHT;
    let y = if at.y < last.center().y { last.center().y - step } else { last.center().y + step };
    Pos2::new(at.x, y)
}

/// A click on the figure beside a handle gives the keyboard to its field.
fn touch_figure(ui: &Ui, card: Rect, knob: Knob, bend: &Bend, stage: &Stage<'_>, out: &mut Vec<Request>) {
    let Some(field) = bend.field(knob, stage) else { return };
    let response = ui.interact(card, ui.make_persistent_id(("figure of a bend", knob)), Sense::CLICK);
    let name = format!("Figure: {} of {}", bend.name(knob), name_of(stage.plan, bend.place));
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    if response.hovered() {
        ui.set_cursor_icon(CursorIcon::Text);
    }
    if response.clicked() {
        out.push(Request::TypeField(field));
    }
}

fn nudge_by_keys(ui: &Ui, response: &Response, knob: Knob, bend: &Bend, out: &mut Vec<Request>) {
    let filter = EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    for (up, free) in taken_steps(ui, response.id) {
        out.push(Request::Gesture(Gesture::Begin));
        out.push(drag(bend.wish(knob, BendTo::Step { up }, free)));
        out.push(Request::Gesture(Gesture::Commit));
        ui.request_repaint();
    }
}

fn drag(wish: BendDrag) -> Request {
    Request::Gesture(Gesture::Drag(Box::new(Edit::DragBend(wish))))
}

fn touch(ui: &Ui, at: Pos2, knob: Knob, bend: &Bend, stage: &Stage<'_>) -> Response {
    let id = ui.make_persistent_id(("handle of a bend", knob));
    let size = Vec2::splat(stage.theme.scaled(space::TARGET) * 0.85);
    let response = ui.interact(Rect::from_center_size(at, size), id, Sense::click_and_drag());
    let of = name_of(stage.plan, bend.place);
    let name = format!("{} of {of}", bend.name(knob));
    response.widget_info(|| WidgetInfo::slider(true, bend.value(knob), &name));
    ui.accesskit_node_builder(id, |node| {
        node.add_action(Action::Increment);
        node.add_action(Action::Decrement);
    });
    if response.hovered() {
        ui.set_cursor_icon(CursorIcon::Grab);
    }
    if response.clicked() {
        response.request_focus();
    }
    response
}

/// The steps up and down that the keyboard or the screen reader asks for, and whether they are fine.
fn taken_steps(ui: &Ui, id: Id) -> Vec<(bool, bool)> {
    let asked = |key: Key, modifiers: Modifiers| {
        let up = match key {
            Key::ArrowUp | Key::ArrowRight | Key::Plus | Key::Equals => true,
            Key::ArrowDown | Key::ArrowLeft | Key::Minus => false,
            _ => return None,
        };
        (!modifiers.command && !modifiers.ctrl).then_some((up, modifiers.alt))
    };
    ui.input_mut(|input| {
        let mut found = keys::take(input, asked);
        for (action, up) in [(Action::Increment, true), (Action::Decrement, false)] {
            (0..input.num_accesskit_action_requests(id, action)).for_each(|_| found.push((up, false)));
        }
        found
    })
}

/// Paints a handle: round for the angle, a diamond for the radius; larger while it is in hand.
fn paint(stage: &Stage<'_>, knob: Knob, [foot, at]: [Pos2; 2], in_hand: bool, has_focus: bool) {
    let (theme, painter) = (stage.theme, &stage.painter);
    let radius = theme.scaled(1.5 * space::GRID) + if in_hand { space::LINE } else { 0.0 };
    painter.line_segment([foot, at], Stroke::new(space::LINE, theme.accent));
    let edge = Stroke::new(space::LINE, theme.on_accent);
    match knob {
        Knob::Angle => {
            painter.circle(at, radius, theme.accent, edge);
        }
        Knob::Radius => {
            let reach = radius * 1.25;
            let corners = [vec2(0.0, -reach), vec2(reach, 0.0), vec2(0.0, reach), vec2(-reach, 0.0)];
            painter.add(Shape::convex_polygon(corners.map(|off| at + off).to_vec(), theme.accent, edge));
        }
    }
    if has_focus {
        painter.circle_stroke(at, radius + space::TIGHT, Stroke::new(space::LINE, theme.focus));
    }
}
