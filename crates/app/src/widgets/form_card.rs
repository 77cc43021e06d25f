//! A form offered for choosing: its drawing, its name, and a line of what it is.

use super::form_icon;
use crate::theme::{Text, Theme, space};
use egui::{FontId, Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use fh_core::plan::FormKind;

/// The height of the drawing, in points at normal text size.
const ICON: f32 = 28.0;

/// Shows the card of a form.
pub(crate) fn show(ui: &mut Ui, theme: &Theme, kind: FormKind, width: f32) -> Response {
    let icon = vec2(form_icon::width_for(theme.scaled(ICON)), theme.scaled(ICON));
    let wrap = (width - icon.x - 3.0 * space::GAP).max(theme.scaled(60.0));
    let lay = |text: &str, font: FontId, color| ui.painter().layout(text.to_owned(), font, color, wrap);
    let name = lay(&title(kind), theme.font(Text::Strong), theme.ink);
    let summary = lay(kind.summary(), theme.font(Text::Small), theme.ink_quiet);
    // Cards beside each other are of one height, whether the summary takes one line or two.
    let two_lines = 2.0 * ui.text_style_height(&Text::Small.style());
    let height = (name.size().y + summary.size().y.max(two_lines)).max(icon.y) + 2.0 * space::GAP;
    let (rect, response) = ui.allocate_exact_size(vec2(width, height), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, title(kind)));
    let visuals = ui.style().interact(&response);
    let edge = if response.has_focus() { Stroke::new(space::HEAVY, theme.focus) } else { visuals.bg_stroke };
    ui.painter().rect(rect, visuals.corner_radius, visuals.weak_bg_fill, edge, StrokeKind::Inside);
    let left = pos2(rect.left() + space::GAP, rect.center().y - icon.y / 2.0);
    form_icon::paint(ui.painter(), theme, Rect::from_min_size(left, icon), kind);
    let text = pos2(left.x + icon.x + space::GAP, rect.top() + space::GAP);
    let below = text + vec2(0.0, name.size().y);
    ui.painter().galley(text, name, theme.ink);
    ui.painter().galley(below, summary, theme.ink_quiet);
    response
}

/// The name of a form as it begins a line.
pub(crate) fn title(kind: FormKind) -> String {
    let mut letters = kind.name().chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
