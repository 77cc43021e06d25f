//! The hands on the picture: two points that are put on it, and the picture itself, dragged to where it shall lie.

use super::grip::{Grip, Held, kept_lay};
use super::lay::Lay;
use super::{Under, edit, placed, seen};
use crate::piece_view::stage::Stage;
use crate::state::{Gesture, Request};
use crate::theme::space;
use crate::widgets::keys;
use egui::{
    CursorIcon, EventFilter, Id, Key, Modifiers, PointerButton, Pos2, Rect, Response, Role, Sense, Stroke, Ui, Vec2,
    WidgetInfo, vec2,
};
use fh_core::plan::{Place, Underlay};

/// How near each other the points may come, in pixels of the picture.
const LEAST_APART: f64 = 2.0;
/// The steps in which places on the picture are written: a hundred-thousandth of its width or height.
const SHARE_STEPS: f64 = 1e5;
/// How many steps one key makes with Shift.
const LARGE_STEP: f64 = 10.0;

impl Under {
    /// Shows the points, and reads what is done to them and to the picture.
    pub(in crate::piece_view) fn touch(
        &mut self,
        ui: &Ui,
        stage: &Stage<'_>,
        ground: &Response,
        out: &mut Vec<Request>,
    ) {
        let underlay = seen(stage).filter(|_| self.adjusting && self.shown);
        let Some((underlay, lay)) = underlay.and_then(|underlay| Some((underlay, self.lay(underlay)?))) else {
            self.let_go(out);
            return;
        };
        self.drag_ground(ui, stage, ground, underlay, lay, out);
        let shown = kept_lay(self.held.as_ref()).unwrap_or(lay);
        let ends = [underlay.from, underlay.to].map(|share| stage.point(shown.in_space(share)));
        paint_way(stage, ends, underlay.distance.text());
        for grip in Grip::ALL {
            let at = stage.within(stage.point(shown.in_space(grip.share(underlay))), space::GAP);
            let response = touch_grip(ui, stage, grip, at);
            if response.drag_started_by(PointerButton::Primary) {
                self.begin(ui, grip, underlay, lay, out);
            }
            let is_held = self.held.as_ref().is_some_and(|held| held.grip == grip);
            if is_held && !ground.dragged() && !ground.drag_stopped() {
                self.go_on(ui, &response, stage, out);
            }
            if response.has_focus() {
                nudge(ui, &response, grip, underlay, &lay, stage, out);
            }
            let in_hand = response.hovered() || response.dragged() || response.has_focus();
            paint_grip(stage, grip, at, in_hand, response.has_focus());
        }
    }

    /// Lets go of what is in hand.
    pub(in crate::piece_view) fn let_go(&mut self, out: &mut Vec<Request>) {
        if self.held.take().is_some() {
            out.push(Request::Gesture(Gesture::Commit));
        }
    }

    fn drag_ground(
        &mut self,
        ui: &Ui,
        stage: &Stage<'_>,
        ground: &Response,
        underlay: &Underlay,
        lay: Lay,
        out: &mut Vec<Request>,
    ) {
        let pans = ui.input(|input| input.modifiers.shift);
        if ground.drag_started_by(PointerButton::Primary) && !pans {
            self.begin(ui, Grip::Sheet, underlay, lay, out);
        }
        let is_held = self.held.as_ref().is_some_and(|held| held.grip == Grip::Sheet);
        if is_held && (ground.dragged() || ground.drag_stopped()) {
            self.go_on(ui, ground, stage, out);
        }
    }

    fn begin(&mut self, ui: &Ui, grip: Grip, underlay: &Underlay, lay: Lay, out: &mut Vec<Request>) {
        let Some(pressed) = ui.input(|input| input.pointer.press_origin()) else { return };
        self.held = Some(Held { grip, begun: underlay.clone(), lay, pressed, sent: None });
        out.push(Request::Gesture(Gesture::Begin));
        out.push(Request::Say(grip.words().to_owned()));
    }

    fn go_on(&mut self, ui: &Ui, response: &Response, stage: &Stage<'_>, out: &mut Vec<Request>) {
        let Some(held) = &mut self.held else { return };
        if response.drag_stopped() || !response.dragged() {
            // The window library ends a drag on Escape as well as on release.
            let taken_back = ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape));
            out.push(Request::Gesture(if taken_back { Gesture::Cancel } else { Gesture::Commit }));
            let words = if taken_back { "Put back." } else { "" };
            out.push(Request::Say(words.to_owned()));
            self.held = None;
            ui.request_repaint();
            return;
        }
        ui.set_cursor_icon(CursorIcon::Grabbing);
        let Some(pointer) = response.interact_pointer_pos() else { return };
        let Some(next) = wished(held, pointer, stage) else { return };
        if held.sent.as_ref() != Some(&next) {
            held.sent = Some(next.clone());
            out.push(Request::Gesture(Gesture::Drag(Box::new(edit(stage.plan, Some(next))))));
            ui.request_repaint();
        }
    }
}

/// The picture with what a grip stands for at another place of the view.
fn moved_to(grip: Grip, now: &Underlay, lay: &Lay, place: [f64; 2], stage: &Stage<'_>) -> Option<Underlay> {
    let unit = stage.plan.units.length;
    let lies_at = |[right, up]: [f64; 2]| Some(Place { right: placed(right, unit)?, up: placed(up, unit)? });
    let mut next = now.clone();
    if grip == Grip::Sheet {
        let [was, first] = [lay.place(grip.share(now)), lay.place(now.from)];
        next.at = Some(lies_at([first[0] + place[0] - was[0], first[1] + place[1] - was[1]])?);
        return Some(next);
    }
    let share = lay.share(place).map(|share| (share.clamp(0.0, 1.0) * SHARE_STEPS).round() / SHARE_STEPS);
    let other = if grip == Grip::From { now.to } else { now.from };
    if lay.pixels_apart(share, other) < LEAST_APART {
        return None;
    }
    if grip == Grip::To {
        next.to = share;
        return Some(next);
    }
    next.from = share;
    // Until the picture is laid by hand its first point is where the piece begins; then it stays where it was laid.
    if next.at.is_some() {
        next.at = Some(lies_at(lay.place(share))?);
    }
    Some(next)
}

/// Moves what has the keyboard by its arrows: a point by pixels, the picture by the marks' rounding; ten times so with Shift.
fn nudge(
    ui: &Ui,
    response: &Response,
    grip: Grip,
    now: &Underlay,
    lay: &Lay,
    stage: &Stage<'_>,
    out: &mut Vec<Request>,
) {
    let filter = EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    let mut steps = [0.0; 2];
    for step in taken_steps(ui) {
        steps = [steps[0] + step[0], steps[1] + step[1]];
    }
    if steps == [0.0; 2] {
        return;
    }
    let size = if grip == Grip::Sheet { stage.plan.units.marks.step_mm() } else { lay.mm_per_pixel };
    let [right, up] = lay.place(grip.share(now));
    let place = [right + steps[0] * size, up + steps[1] * size];
    if let Some(next) = moved_to(grip, now, lay, place, stage).filter(|next| next != now) {
        out.push(Request::Edit(edit(stage.plan, Some(next))));
    }
}

fn taken_steps(ui: &Ui) -> Vec<[f64; 2]> {
    let asked = |key: Key, modifiers: Modifiers| {
        let step = match key {
            Key::ArrowRight => [1.0, 0.0],
            Key::ArrowLeft => [-1.0, 0.0],
            Key::ArrowUp => [0.0, 1.0],
            Key::ArrowDown => [0.0, -1.0],
            _ => return None,
        };
        let times = if modifiers.shift { LARGE_STEP } else { 1.0 };
        let is_plain = !(modifiers.command || modifiers.ctrl || modifiers.alt);
        is_plain.then(|| step.map(|step: f64| step * times))
    };
    ui.input_mut(|input| keys::take(input, asked))
}

fn touch_grip(ui: &Ui, stage: &Stage<'_>, grip: Grip, at: Pos2) -> Response {
    let id: Id = ui.make_persistent_id(("grip of the picture", grip));
    let size = Vec2::splat(stage.theme.scaled(space::TARGET) * 0.85);
    let response = ui.interact(Rect::from_center_size(at, size), id, Sense::click_and_drag());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, grip.name()));
    if response.hovered() {
        ui.set_cursor_icon(CursorIcon::Grab);
    }
    if response.clicked() {
        response.request_focus();
    }
    response.on_hover_text(match grip {
        Grip::From => "First point: drag it onto the picture. Arrow keys move it by a pixel.",
        Grip::To => "Second point: drag it onto the picture. Arrow keys move it by a pixel.",
        Grip::Sheet => "Drag the picture to where it fits the piece.",
    })
}

/// Paints the way from point to point, and how far it is on the piece.
fn paint_way(stage: &Stage<'_>, ends: [Pos2; 2], distance: &str) {
    let (theme, painter) = (stage.theme, &stage.painter);
    painter.line_segment(ends, Stroke::new(space::HEAVY + 2.0 * space::LINE, theme.panel_raised));
    painter.line_segment(ends, Stroke::new(space::LINE, theme.accent));
    stage.card(|size| ends[0] + (ends[1] - ends[0]) / 2.0 - vec2(0.0, size.y), distance.to_owned());
}

/// Paints a grip: a cross in a ring that leaves the point itself free to be seen, or a square for the picture.
fn paint_grip(stage: &Stage<'_>, grip: Grip, at: Pos2, in_hand: bool, has_focus: bool) {
    let (theme, painter) = (stage.theme, &stage.painter);
    let reach = theme.scaled(2.0 * space::GRID) + if in_hand { space::LINE } else { 0.0 };
    let line = Stroke::new(space::LINE, theme.accent);
    let under = Stroke::new(space::HEAVY + space::LINE, theme.panel_raised);
    if grip == Grip::Sheet {
        let square = Rect::from_center_size(at, Vec2::splat(1.5 * reach));
        painter.rect(square, space::CORNER, theme.panel_raised, line, egui::StrokeKind::Inside);
        let arm = 0.5 * reach;
        painter.hline(at.x - arm..=at.x + arm, at.y, line);
        painter.vline(at.x, at.y - arm..=at.y + arm, line);
    } else {
        for stroke in [under, line] {
            painter.circle_stroke(at, reach, stroke);
            for way in [vec2(1.0, 0.0), vec2(-1.0, 0.0), vec2(0.0, 1.0), vec2(0.0, -1.0)] {
                painter.line_segment([at + way * space::TIGHT, at + way * reach], stroke);
            }
        }
    }
    if has_focus {
        painter.circle_stroke(at, reach + space::TIGHT, Stroke::new(space::LINE, theme.focus));
    }
}

/// The picture as the pointer wants it.
fn wished(held: &Held, pointer: Pos2, stage: &Stage<'_>) -> Option<Underlay> {
    let moved = pointer - held.pressed;
    let scale = stage.camera.points_per_mm();
    let by = [f64::from(moved.x) / scale, f64::from(-moved.y) / scale];
    let [right, up] = held.lay.place(held.grip.share(&held.begun));
    moved_to(held.grip, &held.begun, &held.lay, [right + by[0], up + by[1]], stage)
}
