//! A plan offered for opening: the small picture of its forged bar, and what it is called.

use super::{line, motif_picture};
use crate::theme::{Text, Theme, space};
use egui::{Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use fh_core::balance::BarBalance;

/// The height of the picture, in points at normal text size.
const PICTURE: f32 = 34.0;

/// Shows a tile of a width; `below` stands in small letters under the name.
pub(crate) fn show(
    ui: &mut Ui,
    theme: &Theme,
    wide: f32,
    (name, below): (&str, &str),
    bar: Option<&BarBalance>,
) -> Response {
    let inner = wide - 2.0 * space::GAP;
    let words = line::lay(ui, name, theme.font(Text::Strong), theme.ink, inner);
    let small = line::lay(ui, below, theme.font(Text::Small), theme.ink_quiet, inner);
    let picture = theme.scaled(PICTURE);
    let high = picture + words.size().y + small.size().y + 3.0 * space::GAP;
    let (rect, response) = ui.allocate_exact_size(vec2(wide, high), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name));
    let visuals = ui.style().interact(&response);
    let edge = if response.has_focus() {
        Stroke::new(space::HEAVY, theme.focus)
    } else {
        Stroke::new(theme.hairline(), theme.edge)
    };
    ui.painter().rect(rect, visuals.corner_radius, visuals.weak_bg_fill, edge, StrokeKind::Inside);
    let left = rect.left() + space::GAP;
    let top = rect.top() + space::GAP;
    if let Some(bar) = bar {
        let place = Rect::from_min_size(pos2(left, top), vec2(inner, picture));
        motif_picture::paint(ui.painter(), theme, place, bar);
    }
    let below = pos2(left, top + picture + space::GAP);
    let under = below + vec2(0.0, words.size().y);
    ui.painter().galley(below, words, theme.ink);
    ui.painter().galley(under, small, theme.ink_quiet);
    response
}
