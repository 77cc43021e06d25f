//! The scale of shades with its numbers, and on it what the metal is forged at.

use super::brackets::{self, Row};
use super::shades::Shades;
use crate::theme::{Text, Theme, space};
use egui::{Align2, Rect, Role, Sense, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use fh_work::OneHeat;

/// The height of the shades, in points at normal text size.
const HEIGHT: f32 = 12.0;
/// The room of one number, in points at normal text size.
const NUMBER: f32 = 34.0;

/// Shows the scale.
pub(super) fn show(ui: &mut Ui, theme: &Theme, one: &OneHeat, shades: &Shades) {
    let text = theme.font(Text::Small).size * 1.3;
    let size = vec2(ui.available_width(), theme.scaled(HEIGHT) + text + brackets::height(theme));
    let (all, response) = ui.allocate_exact_size(size, Sense::hover());
    // The last number stands around the end of the scale.
    let bar = Rect::from_min_size(all.min, vec2(all.width() - theme.scaled(NUMBER), theme.scaled(HEIGHT)));
    let x = |celsius: f64| bar.left() + bar.width() * (celsius / shades.high).clamp(0.0, 1.0) as f32;
    let painter = ui.painter();
    for step in 0..shades.count() {
        let (from, to) = (x(step as f64 * shades.step), x((step + 1) as f64 * shades.step));
        painter.rect_filled(Rect::from_x_y_ranges(from..=to, bar.y_range()), 0, shades.shade(step));
    }
    painter.rect_stroke(bar, 0, (theme.hairline(), theme.stock_edge), StrokeKind::Inside);
    for number in numbers(shades, bar.width() / theme.scaled(NUMBER)) {
        let at = pos2(x(number), bar.bottom() + 1.0);
        let anchor = if number == 0.0 { Align2::LEFT_TOP } else { Align2::CENTER_TOP };
        painter.text(at, anchor, format!("{number:.0}"), theme.font(Text::Small), theme.ink_quiet);
    }
    painter.text(all.right_top(), Align2::RIGHT_TOP, "°C", theme.font(Text::Small), theme.ink_quiet);
    let words = format!("worked from {:.0} down to {:.0} °C", one.start_celsius, one.stop_celsius);
    let row = Row { theme, painter, across: all, top: bar.bottom() + text };
    row.bracket([x(one.stop_celsius), x(one.start_celsius)], false, &words);
    let name = format!("Scale of shades: 0 to {:.0} °C, {words}", shades.high);
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &name));
    ui.add_space(space::TIGHT);
}

/// The numbers that are written: those of the steps, or of every second, fourth and so on where there is no room.
fn numbers(shades: &Shades, room: f32) -> impl Iterator<Item = f64> {
    let mut every = 1;
    while shades.count() / every > (room as usize).max(1) {
        every *= 2;
    }
    let step = shades.step * every as f64;
    (0..=shades.count() / every).map(move |number| number as f64 * step)
}
