//! A motif offered for choosing: its picture, its name, and what it takes of which bar.

use super::{line, motif_picture};
use crate::theme::{Text, Theme, space};
use egui::{Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use fh_core::balance::BarBalance;
use fh_core::describe::short_name;

/// The size of the picture, in points at normal text size.
const PICTURE: [f32; 2] = [220.0, 44.0];

/// What stands on a card.
pub(crate) struct MotifCard<'a> {
    pub(crate) name: &'a str,
    /// A line below it.
    pub(crate) below: &'a str,
    /// What it looks like.
    pub(crate) bar: Option<&'a BarBalance>,
}

/// Shows the card over the whole width.
pub(crate) fn show(ui: &mut Ui, theme: &Theme, card: &MotifCard<'_>, is_chosen: bool) -> Response {
    let picture = vec2(theme.scaled(PICTURE[0]), theme.scaled(PICTURE[1])).min(vec2(ui.available_width() / 2.0, 1e3));
    let size = vec2(ui.available_width(), picture.y + 2.0 * space::GAP);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let spoken = format!("{}: {}", short_name(card.name), card.below);
    response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, is_chosen, &spoken));
    paint_ground(ui, theme, rect, &response, is_chosen);
    let inside = rect.shrink(space::GAP);
    if let Some(bar) = card.bar {
        motif_picture::paint(ui.painter(), theme, Rect::from_min_size(inside.min, picture), bar);
    }
    let left = inside.left() + picture.x + space::PAD;
    let width = inside.right() - left;
    let name = line::lay(ui, card.name, theme.font(Text::Strong), theme.ink, width);
    let below = line::lay(ui, card.below, theme.font(Text::Small), theme.ink_quiet, width);
    let top = rect.center().y - (name.size().y + below.size().y) / 2.0;
    let middle = top + name.size().y;
    ui.painter().galley(pos2(left, top), name, theme.ink);
    ui.painter().galley(pos2(left, middle), below, theme.ink_quiet);
    response
}

fn paint_ground(ui: &Ui, theme: &Theme, rect: Rect, response: &Response, is_chosen: bool) {
    let visuals = ui.style().interact(response);
    let (fill, edge) = match (is_chosen, response.has_focus()) {
        (true, false) => (theme.band_selected, Stroke::new(space::LINE, theme.accent)),
        (true, true) => (theme.band_selected, Stroke::new(space::HEAVY, theme.focus)),
        (false, true) => (visuals.weak_bg_fill, Stroke::new(space::HEAVY, theme.focus)),
        (false, false) => (visuals.weak_bg_fill, Stroke::new(theme.hairline(), theme.edge)),
    };
    ui.painter().rect(rect, visuals.corner_radius, fill, edge, StrokeKind::Inside);
}
