//! An empty bar: it gets its first part, or first its marks, clicked on it or typed in a row.

use crate::state::{Command, Desk, Request};
use crate::theme::{Text, Theme, space};
use egui::{
    Align2, Button, Id, Key, Pos2, Rect, Response, RichText, Sense, Stroke, TextEdit, Ui, WidgetInfo, pos2, vec2,
};
use egui::{Role, StrokeKind};
use fh_core::edit::{Edit, MarkEdit, marks_in_row};
use fh_core::plan::PlanUnit;
use fh_measure::{LengthRange, LengthUnit, WrittenLength};

/// The width of the field and of the buttons, in points at normal text size.
const FIELD: f32 = 184.0;
/// How far the middle of the bar lies above that of the ground, and from its foot to the first button.
const ABOVE: f32 = 64.0;
const BELOW: f32 = 80.0;
/// The share of the ground's width that the bar is drawn on.
const WIDE: f32 = 0.7;
/// How long it is drawn where no mark lies farther out: 300 mm, or 12 in.
const USUAL_MM: [f64; 2] = [300.0, 12.0 * 25.4];
/// The ruler's numbers stand this far apart at least.
const NUMBERS_APART: f32 = 44.0;

/// Shows what to do on an empty bar, in the middle of the ground.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, ground: Rect, out: &mut Vec<Request>) {
    let theme = desk.theme;
    let id = Id::unique(("marks in a row", desk.document.serial(), desk.selection.bar));
    let mut text = ui.data(|data| data.get_temp::<String>(id)).unwrap_or_default();
    let bar = Bar::new(desk, ground, &text);
    bar.paint(ui, theme);
    if let Some(mark) = bar.clicked(ui) {
        text = bar.with(&mark);
    }
    let size = vec2(theme.scaled(FIELD), theme.scaled(space::TARGET));
    let middle = ground.center().x;
    let top = bar.rect.bottom() + theme.scaled(BELOW);
    let first = Rect::from_center_size(pos2(middle, top), size);
    if ui.put(first, Button::new("Add the first part…")).clicked() {
        out.push(Request::Run(Command::AddAfter));
    }
    let below = pos2(middle, first.bottom() + theme.scaled(space::GROUP));
    if row(ui, theme, below, &mut text, desk.document.plan().units.length) {
        let (bar, text) = (desk.selection.bar, text.clone());
        out.push(Request::Edit(Edit::Mark(MarkEdit::Row { bar, text })));
    }
    ui.data_mut(|data| data.insert_temp(id, text));
}

/// The field for marks in a row, and its button. Whether they are to be set.
fn row(ui: &mut Ui, theme: &Theme, top: Pos2, text: &mut String, unit: PlanUnit) -> bool {
    let size = vec2(theme.scaled(FIELD), theme.scaled(space::TARGET));
    let words = "Or set its marks first: click them on the bar, or type them in a row.";
    let color = theme.ink_quiet;
    ui.painter().text(top, Align2::CENTER_TOP, words, theme.font(Text::Body), color);
    let line = top.y + theme.scaled(space::GROUP + space::GAP) + size.y / 2.0;
    let [field_at, button_at] = [-1.0, 1.0].map(|side: f32| pos2(top.x + side * (size.x + space::GAP) / 2.0, line));
    let hint = match unit {
        PlanUnit::Inch => "2, 4 1/4, 6",
        PlanUnit::Millimeter => "50, 110, 155",
    };
    let field = TextEdit::singleline(text).hint_text(RichText::new(hint).color(color)).align(egui::Align2::LEFT_CENTER);
    let field = ui.put(Rect::from_center_size(field_at, size), field);
    let entered = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
    let field = field.on_hover_text("From the datum end, parted by commas.");
    field.accessible_name("Marks in a row");
    let button = ui.add_enabled_ui(!text.trim().is_empty(), |ui| {
        ui.put(Rect::from_center_size(button_at, size), Button::new("Set the marks"))
    });
    (entered && !text.trim().is_empty()) || button.inner.clicked()
}

/// The empty bar as it is drawn, with the marks that are typed so far.
struct Bar {
    rect: Rect,
    long_mm: f64,
    unit: LengthUnit,
    marks: Vec<WrittenLength>,
    rounding: fh_measure::Rounding,
}

impl Bar {
    fn new(desk: &Desk<'_>, ground: Rect, text: &str) -> Self {
        let units = desk.document.plan().units;
        let unit = units.length.length_unit();
        let read = |mark| WrittenLength::parse(mark, Some(unit), LengthRange::AboveZero).ok();
        let marks: Vec<_> = marks_in_row(text).filter_map(read).collect();
        let length = desk.document.plan().bars.get(desk.selection.bar).and_then(|bar| bar.length.as_ref());
        let usual = USUAL_MM[usize::from(units.length == PlanUnit::Inch)];
        let farthest = marks.iter().map(WrittenLength::mm).fold(0.0, f64::max);
        let long_mm = length.map_or(usual, WrittenLength::mm).max(farthest * 1.1);
        let size = vec2(ground.width() * WIDE, desk.theme.scaled(space::TARGET));
        let middle = ground.center() - vec2(0.0, desk.theme.scaled(ABOVE));
        Self { rect: Rect::from_center_size(middle, size), long_mm, unit, marks, rounding: units.marks }
    }

    fn x(&self, mm: f64) -> f32 {
        self.rect.left() + (mm / self.long_mm) as f32 * self.rect.width()
    }

    /// The mark that was clicked on it, on the rounding of the marks, as it would be typed.
    fn clicked(&self, ui: &Ui) -> Option<String> {
        let response = ui.interact(self.rect, ui.make_persistent_id("empty bar"), Sense::click());
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, "Set a mark on the empty bar"));
        self.show_where(ui, &response);
        let at = response.interact_pointer_pos().filter(|_| response.clicked())?;
        let mark = self.rounding.round(self.mm(at.x));
        (mark.mm() > 0.0).then(|| mark.bare_text())
    }

    fn mm(&self, x: f32) -> f64 {
        f64::from((x - self.rect.left()) / self.rect.width()) * self.long_mm
    }

    /// What is typed with another mark in its place.
    fn with(&self, mark: &str) -> String {
        let mut all = self.marks.clone();
        let added = WrittenLength::parse(mark, Some(self.unit), LengthRange::AboveZero).ok();
        all.extend(added.filter(|added| all.iter().all(|other| (other.mm() - added.mm()).abs() > 1e-6)));
        all.sort_by(|a, b| a.mm().total_cmp(&b.mm()));
        let symbol = format!(" {}", self.unit.symbol());
        let bare = |mark: &WrittenLength| mark.text().strip_suffix(&symbol).unwrap_or(mark.text()).to_owned();
        all.iter().map(bare).collect::<Vec<_>>().join(", ")
    }

    /// Where a click would set a mark.
    fn show_where(&self, ui: &Ui, response: &Response) {
        let Some(at) = response.hover_pos() else { return };
        let mark = self.rounding.round(self.mm(at.x));
        let place = pos2(self.x(mark.mm()), self.rect.top() - space::TIGHT);
        let visuals = ui.visuals();
        ui.painter().vline(place.x, self.rect.y_range(), Stroke::new(space::LINE, visuals.strong_text_color()));
        let font = egui::TextStyle::Body.resolve(ui.style());
        ui.painter().text(place, Align2::CENTER_BOTTOM, mark.text(), font, visuals.strong_text_color());
    }

    fn paint(&self, ui: &Ui, theme: &Theme) {
        let edge = Stroke::new(space::LINE, theme.ink_quiet);
        let corners = [
            self.rect.left_top(),
            self.rect.right_top(),
            self.rect.right_bottom(),
            self.rect.left_bottom(),
            self.rect.left_top(),
        ];
        ui.painter().extend(egui::Shape::dashed_line(&corners, edge, space::GAP, space::TIGHT));
        self.paint_ruler(ui, theme);
        for mark in &self.marks {
            let place = pos2(self.x(mark.mm()), self.rect.top());
            ui.painter().vline(place.x, self.rect.y_range(), Stroke::new(space::LINE, theme.ink));
            let square = Rect::from_center_size(place, egui::Vec2::splat(theme.scaled(space::GAP)));
            ui.painter().rect(square, 0.0, theme.ground, Stroke::new(space::LINE, theme.ink), StrokeKind::Middle);
            ui.painter().circle_filled(place, theme.scaled(space::GAP) / 5.0, theme.ink);
        }
    }

    /// Numbers under the bar, as far apart as they can be read.
    fn paint_ruler(&self, ui: &Ui, theme: &Theme) {
        let unit_mm = if self.unit == LengthUnit::Inch { self.unit.mm() } else { 10.0 };
        let per_unit = (unit_mm / self.long_mm) as f32 * self.rect.width();
        let least = theme.scaled(NUMBERS_APART);
        let steps = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 500.0, 1000.0];
        let step = steps.into_iter().find(|step| per_unit * step >= least).unwrap_or(10_000.0);
        let mut at = 0.0;
        while at * unit_mm <= self.long_mm + 1e-6 {
            let place = pos2(self.x(at * unit_mm), self.rect.bottom());
            ui.painter().vline(place.x, place.y..=place.y + space::GAP, Stroke::new(theme.hairline(), theme.ink_quiet));
            let shown = if self.unit == LengthUnit::Inch { at } else { at * unit_mm };
            let words = format!("{shown:.0}");
            let below = place + vec2(0.0, space::GAP + space::HAIRLINE);
            ui.painter().text(below, Align2::CENTER_TOP, words, theme.font(Text::Small), theme.ink_quiet);
            at += f64::from(step);
        }
    }
}
