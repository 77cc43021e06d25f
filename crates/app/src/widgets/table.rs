//! A table of lines to choose from. Tab comes to the chosen line, the arrows go through the others.

use super::line;
use crate::theme::{Text, Theme, space};
use egui::{Color32, Id, Key, Modifiers, Rect, Response, Role, Sense, Ui, WidgetInfo, pos2, vec2};

/// A column: its head, its share of the width, and whether figures stand in it, at its right edge.
#[derive(Clone, Copy)]
pub(crate) struct Column {
    head: &'static str,
    share: f32,
    is_figure: bool,
}

impl Column {
    /// A column of words.
    pub(crate) const fn words(head: &'static str, share: f32) -> Self {
        Self { head, share, is_figure: false }
    }

    /// A column of figures.
    pub(crate) const fn figures(head: &'static str, share: f32) -> Self {
        Self { head, share, is_figure: true }
    }
}

/// A line: what stands in its columns, what it is called, and how it looks.
pub(crate) struct Line<'a> {
    pub(crate) cells: &'a [String],
    pub(crate) name: &'a str,
    pub(crate) is_chosen: bool,
    /// The color of its words.
    pub(crate) ink: Color32,
    /// Whether its first column stands out.
    pub(crate) is_strong: bool,
}

/// The height of a line.
fn height(theme: &Theme) -> f32 {
    theme.scaled(space::TARGET)
}

/// Shows the heads of the columns.
pub(crate) fn head(ui: &mut Ui, theme: &Theme, columns: &[Column]) {
    let size = vec2(ui.available_width(), ui.text_style_height(&Text::Small.style()) + 2.0 * space::TIGHT);
    let (mut rect, _) = ui.allocate_exact_size(size, Sense::hover());
    // Over lines that a scroll bar makes narrower the heads stand where the lines' columns do.
    if let Some(width) = ui.data(|data| data.get_temp::<f32>(width_of_lines(columns))) {
        rect.set_width(width.min(rect.width()));
    }
    for (column, place) in columns.iter().zip(places(rect, columns)) {
        put(ui, column.head, column.is_figure, place, theme.font(Text::Small), theme.ink_quiet);
    }
    ui.painter().hline(rect.x_range(), rect.bottom(), (theme.hairline(), theme.rule));
}

/// Where the width of a table's lines is kept, as they were last shown.
fn width_of_lines(columns: &[Column]) -> Id {
    Id::unique(("width of lines", columns.first().map(|column| column.head), columns.len()))
}

fn remember_width(ui: &Ui, columns: &[Column], width: f32) {
    let id = width_of_lines(columns);
    let before = ui.data_mut(|data| {
        let before = data.get_temp::<f32>(id);
        data.insert_temp(id, width);
        before
    });
    if before != Some(width) {
        ui.ctx().request_repaint();
    }
}

/// Shows a line.
pub(crate) fn show(ui: &mut Ui, theme: &Theme, columns: &[Column], line: &Line<'_>) -> Response {
    let sense = if line.is_chosen { Sense::click() } else { Sense::CLICK };
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), height(theme)), sense);
    remember_width(ui, columns, rect.width());
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, line.is_chosen, line.name));
    if line.is_chosen {
        ui.painter().rect_filled(rect, space::CORNER, theme.chosen);
    } else if response.hovered() {
        ui.painter().rect_filled(rect, space::CORNER, theme.panel_raised);
    }
    if response.has_focus() {
        ui.painter().rect_stroke(rect, space::CORNER, (space::LINE, theme.focus), egui::StrokeKind::Inside);
    }
    cells(ui, theme, columns, line, rect, |at| at == 0 && line.is_strong);
    response
}

/// Shows a line that is only read; all of it stands out where it is strong.
pub(crate) fn read_only(ui: &mut Ui, theme: &Theme, columns: &[Column], line: &Line<'_>) {
    let height = ui.text_style_height(&Text::Body.style()) + 2.0 * space::TIGHT;
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, line.name));
    cells(ui, theme, columns, line, rect, |_| line.is_strong);
}

fn cells(ui: &Ui, theme: &Theme, columns: &[Column], line: &Line<'_>, rect: Rect, is_strong: impl Fn(usize) -> bool) {
    let cells = line.cells.iter().zip(columns).zip(places(rect, columns)).enumerate();
    for (at, ((words, column), place)) in cells {
        let text = if is_strong(at) { Text::Strong } else { Text::Body };
        put(ui, words, column.is_figure, place, theme.font(text), line.ink);
    }
}

/// The line that an arrow, Home or End leads to, where the chosen line has the keyboard.
pub(crate) fn step(ui: &Ui, response: &Response, at: usize, count: usize) -> Option<usize> {
    if !response.has_focus() {
        return None;
    }
    let arrows = egui::EventFilter { vertical_arrows: true, ..egui::EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, arrows));
    let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
    let last = count.saturating_sub(1);
    let to = if pressed(Key::ArrowDown) {
        at.saturating_add(1).min(last)
    } else if pressed(Key::ArrowUp) {
        at.saturating_sub(1)
    } else if pressed(Key::Home) {
        0
    } else if pressed(Key::End) {
        last
    } else {
        return None;
    };
    (to != at).then_some(to)
}

/// The keyboard goes along to the line that is chosen next.
pub(crate) fn keep_keyboard(ui: &Ui) {
    ui.data_mut(|data| data.insert_temp(Id::unique("the chosen line gets the keyboard"), ()));
}

/// Whether the chosen line is to have the keyboard now.
pub(crate) fn take_keyboard(ui: &Ui) -> bool {
    ui.data_mut(|data| data.remove_temp::<()>(Id::unique("the chosen line gets the keyboard"))).is_some()
}

/// Where each column stands in a line.
fn places(rect: Rect, columns: &[Column]) -> Vec<Rect> {
    let whole: f32 = columns.iter().map(|column| column.share).sum();
    let mut left = rect.left();
    let place = |column: &Column| {
        let width = rect.width() * column.share / whole;
        let place = Rect::from_min_size(pos2(left, rect.top()), vec2(width, rect.height()));
        left += width;
        place.shrink2(vec2(space::GAP, 0.0))
    };
    columns.iter().map(place).collect()
}

fn put(ui: &Ui, words: &str, at_right: bool, place: Rect, font: egui::FontId, ink: Color32) {
    let galley = line::lay(ui, words, font, ink, place.width());
    let left = if at_right { place.right() - galley.size().x } else { place.left() };
    ui.painter().galley(pos2(left, place.center().y - galley.size().y / 2.0), galley, ink);
}
