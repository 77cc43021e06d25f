//! What is said of an entry: beside the panel that the field stands in, so that nothing in the panel moves.

use crate::theme::{Text, Theme, space};
use egui::{Align2, Area, Color32, Frame, Id, Margin, Order, Pos2, Rect, RichText, Shape, Stroke, Ui, pos2, vec2};

/// The most that a note is wide, in points at normal text size.
const WIDTH: f32 = 232.0;
/// The least room beside the panel; with less the note lies below its field.
const LEAST: f32 = 150.0;
/// How far the tip reaches toward the field, and half its height.
const TIP: f32 = 6.0;

/// Shows a note on a field. Nothing happens where the field is scrolled out of sight.
pub(super) fn show(ui: &Ui, theme: &Theme, field: Rect, id: Id, words: &str, color: Color32) {
    if !ui.clip_rect().contains(field.center()) {
        return;
    }
    // It gives way to a pointer that wants to see what is below it.
    let area = id.with("note");
    let is_under = |at: Pos2| ui.memory(|memory| memory.area_rect(area)).is_some_and(|rect| rect.contains(at));
    if ui.ctx().pointer_hover_pos().is_some_and(is_under) {
        return;
    }
    let screen = ui.ctx().content_rect();
    let edge = left_edge(ui);
    let beside = edge - TIP - screen.left() > theme.scaled(LEAST);
    let width = if beside { theme.scaled(WIDTH).min(edge - TIP - screen.left()) } else { field.width() };
    let top = free_below(ui, field.top());
    let (at, pivot) = if beside {
        (pos2(edge - TIP, top), Align2::RIGHT_TOP)
    } else {
        (field.left_bottom() + vec2(0.0, space::TIGHT / 2.0), Align2::LEFT_TOP)
    };
    let area = Area::new(area).order(Order::Foreground).fixed_pos(at).pivot(pivot).interactable(false);
    let stroke = Stroke::new(space::LINE, color);
    let shown = area.show(ui.ctx(), |ui| {
        let frame = Frame::new().fill(theme.panel_raised).stroke(stroke).corner_radius(space::CORNER);
        frame.inner_margin(Margin::symmetric(8, 5)).show(ui, |ui| {
            ui.set_max_width(width - 2.0 * space::GAP);
            let words = RichText::new(words).text_style(Text::Small.style()).color(color);
            ui.add(egui::Label::new(words).wrap().selectable(false));
            if beside {
                tip(ui, pos2(edge - TIP, top + field.height() / 2.0), theme.panel_raised, stroke);
            }
        });
    });
    note_bottom(ui, shown.response.rect.bottom());
}

/// The left edge of the panel or dialog that a field stands in.
fn left_edge(ui: &Ui) -> f32 {
    let layer = ui.layer_id();
    let dialog = if layer.order == Order::Background { None } else { ui.memory(|memory| memory.area_rect(layer.id)) };
    dialog.map_or(ui.clip_rect().left() - space::PAD, |dialog| dialog.left())
}

/// The tip that points at the field.
fn tip(ui: &Ui, at: Pos2, fill: Color32, stroke: Stroke) {
    let corners = [at + vec2(0.0, -TIP), at + vec2(TIP, 0.0), at + vec2(0.0, TIP)];
    let painter = ui.ctx().layer_painter(ui.layer_id());
    painter.add(Shape::convex_polygon(
        corners.map(|corner| corner - vec2(space::LINE, 0.0)).into(),
        fill,
        Stroke::NONE,
    ));
    painter.line_segment([corners[0], corners[1]], stroke);
    painter.line_segment([corners[1], corners[2]], stroke);
}

/// The first height at or below this one where no other note of this frame lies.
fn free_below(ui: &Ui, top: f32) -> f32 {
    let now = ui.ctx().cumulative_frame_nr();
    let last = ui.data(|data| data.get_temp::<(u64, f32)>(bottom_id()));
    last.filter(|(frame, _)| *frame == now).map_or(top, |(_, bottom)| top.max(bottom + space::TIGHT))
}

fn note_bottom(ui: &Ui, bottom: f32) {
    let now = ui.ctx().cumulative_frame_nr();
    ui.data_mut(|data| data.insert_temp(bottom_id(), (now, bottom)));
}

fn bottom_id() -> Id {
    Id::unique("the bottom of the lowest note")
}
