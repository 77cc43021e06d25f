//! The rack: one line to put bars on it as they are said, and the table of what lies there.

use super::{empty, in_the_middle, rack_line, side};
use crate::figures;
use crate::state::steel::Stocked;
use crate::state::{Desk, RackAsk, Request, SteelAsk};
use crate::theme::{Text, Theme, space};
use crate::widgets::table::{self, Column, Line, keep_keyboard, take_keyboard};
use egui::{Button, Id, Key, Panel, RichText, ScrollArea, TextEdit, Ui};
use fh_core::material;
use fh_measure::counted;
use fh_rack::kept::rack::RackBar;
use fh_rack::list::source::mass_kg;
use fh_rack::said::bar::SaidBar;
use fh_rack::said::written::Said;
use uom::si::f64::Mass;
use uom::si::mass::kilogram;

/// The first width of the panel beside it, in points at normal text size, and its share of the window at most.
const BESIDE: f32 = 320.0;
const MOST_OF_WIDTH: f32 = 0.34;
/// The widths of the fields of a new bar.
const BAR: f32 = 300.0;
const LIES: f32 = 160.0;
/// The most letters of a bar as it is said.
const MOST_LETTERS: usize = 200;

const COLUMNS: [Column; 7] = [
    Column::figures("Bars", 0.5),
    Column::words("Section", 1.7),
    Column::figures("Length", 1.0),
    Column::words("Material", 1.3),
    Column::words("Where", 1.3),
    Column::figures("Weight", 0.9),
    Column::words("Note", 1.6),
];

/// What was typed of a bar that is put on next; its material and its place stay for the one after.
#[derive(Clone)]
struct New {
    text: String,
    material: &'static str,
    lies: String,
    mistake: Option<String>,
}

impl Default for New {
    fn default() -> Self {
        Self { text: String::new(), material: material::DEFAULT.name, lies: String::new(), mistake: None }
    }
}

/// Shows the rack.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(stock) = &desk.steel.stock else { return };
    let theme = desk.theme;
    if let Some(why) = &stock.rack.broken {
        in_the_middle(ui, theme, |ui| {
            let words = format!(
                "■ The rack cannot be read, and is left as it is: {why} Correct the file; it is then read again."
            );
            ui.label(RichText::new(words).color(theme.stop));
        });
        return;
    }
    let width = theme.scaled(BESIDE).min((ui.available_width() * MOST_OF_WIDTH).round());
    if !stock.rack.now.bars.is_empty() || !stock.rack.now.booked.is_empty() {
        let panel = Panel::right("rack line").resizable(false).exact_size(width).frame(side(theme));
        panel.show(ui, |ui| rack_line::show(ui, desk, stock, out));
    }
    in_the_middle(ui, theme, |ui| {
        new_bar(ui, desk, out);
        if stock.rack.now.bars.is_empty() {
            empty(
                ui,
                theme,
                "The rack is empty. Say a bar as you would to a mate, for example 3 x 12 mm square, 2.4 m, and press Enter.",
            );
        } else {
            lines(ui, desk, stock, out);
        }
    });
}

/// The fields of a bar that is put on the rack. Enter puts it there and waits for the next.
fn new_bar(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let (theme, id) = (desk.theme, Id::unique("a new bar on the rack"));
    let mut new = ui.data(|data| data.get_temp::<New>(id)).unwrap_or_default();
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Put on").color(theme.ink_quiet));
        let hint = RichText::new(SaidBar::EXAMPLE).color(theme.ink_quiet);
        let field = field(ui, theme, &mut new.text, BAR, hint, "Bar to put on the rack");
        if field.changed() {
            new.mistake = None;
        }
        let wants_keyboard = is_newly_shown(ui, id);
        let entered = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        materials(ui, &mut new.material);
        let hint = RichText::new("where it lies").color(theme.ink_quiet);
        let place = self::field(ui, theme, &mut new.lies, LIES, hint, "Where the bar to put on is");
        let entered = entered || (place.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter)));
        let pressed = ui.add_enabled(!new.text.trim().is_empty(), Button::new("Put it on")).clicked();
        if entered || pressed {
            put(&mut new, out);
        }
        if entered || pressed || wants_keyboard {
            field.request_focus();
        }
    });
    // The line for mistakes is always there, so that the table does not move.
    let words = new.mistake.as_ref().map_or_else(String::new, |why| format!("■ {why}"));
    ui.label(RichText::new(words).text_style(Text::Small.style()).color(theme.stop));
    ui.data_mut(|data| data.insert_temp(id, new));
}

/// Whether it was not shown in the frame before: then it gets the keyboard.
fn is_newly_shown(ui: &Ui, id: Id) -> bool {
    let now = ui.ctx().cumulative_frame_nr();
    let before = ui.data(|data| data.get_temp::<u64>(id));
    ui.data_mut(|data| data.insert_temp(id, now));
    before.is_none_or(|before| before + 1 < now)
}

fn field(ui: &mut Ui, theme: &Theme, text: &mut String, width: f32, hint: RichText, name: &str) -> egui::Response {
    // An id of its own: panels come and go beside it.
    let field = TextEdit::singleline(text).id(Id::unique(name)).hint_text(hint).char_limit(MOST_LETTERS);
    let field = field.desired_width(theme.scaled(width).min(ui.available_width()));
    let field = field.min_size(egui::vec2(0.0, theme.scaled(space::TARGET))).align(egui::Align2::LEFT_CENTER);
    ui.add(field).accessible_name(name)
}

fn materials(ui: &mut Ui, now: &mut &'static str) {
    let combo = egui::ComboBox::from_id_salt("the material of a new bar").selected_text(*now);
    let shown = combo.show_ui(ui, |ui| {
        for one in &material::ALL {
            ui.selectable_value(now, one.name, one.name);
        }
    });
    shown.response.accessible_name("Material of the bar to put on");
}

fn put(new: &mut New, out: &mut Vec<Request>) {
    match SaidBar::parse(&new.text) {
        Ok(said) => {
            let material = (new.material != material::DEFAULT.name).then(|| new.material.to_owned());
            let lies = Some(new.lies.trim().to_owned()).filter(|lies| !lies.is_empty());
            let bar = RackBar { lies, ..RackBar::new(said, material) };
            out.push(Request::Steel(SteelAsk::Rack(RackAsk::Put(Box::new(bar)))));
            new.text.clear();
            new.mistake = None;
        }
        Err(why) => new.mistake = Some(why),
    }
}

fn lines(ui: &mut Ui, desk: &Desk<'_>, stock: &Stocked, out: &mut Vec<Request>) {
    let (theme, bars) = (desk.theme, &stock.rack.now.bars);
    let unit = desk.document.plan().units.length;
    let kg: f64 = bars.iter().map(weight).sum();
    let all = figures::mass(Mass::new::<kilogram>(kg), unit);
    let count = stock.rack.now.count();
    let words = format!("{} on the rack, {all} by their sizes", counted(count, "bar"));
    ui.label(RichText::new(words).color(theme.ink_quiet));
    table::head(ui, theme, &COLUMNS);
    ui.spacing_mut().item_spacing.y = 0.0;
    ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
        for (index, bar) in bars.iter().enumerate() {
            let is_chosen = desk.steel.line.map_or(index == 0, |line| line == index);
            let cells = cells(bar, figures::mass(Mass::new::<kilogram>(weight(bar)), unit));
            let name = bar.words();
            let line = Line { cells: &cells, name: &name, is_chosen, ink: theme.ink, is_strong: false };
            let response = table::show(ui, theme, &COLUMNS, &line);
            if is_chosen && take_keyboard(ui) {
                response.request_focus();
                response.scroll_to_me(None);
            }
            let choose = |line| Request::Steel(SteelAsk::Rack(RackAsk::Choose(Some(line))));
            if response.clicked() {
                response.request_focus();
                out.push(choose(index));
            }
            if let Some(to) = table::step(ui, &response, index, bars.len()) {
                keep_keyboard(ui);
                out.push(choose(to));
            }
            if response.has_focus() && ui.input_mut(|input| input.consume_key(egui::Modifiers::NONE, Key::Delete)) {
                keep_keyboard(ui);
                out.push(Request::Steel(SteelAsk::Rack(RackAsk::Take(Box::new(bar.clone())))));
            }
        }
    });
}

/// What all bars of a line weigh, in kg.
fn weight(bar: &RackBar) -> f64 {
    mass_kg(bar.material.as_deref(), &bar.bar.section, bar.length_nm()) * f64::from(bar.bar.count)
}

fn cells(bar: &RackBar, weigh: String) -> [String; 7] {
    let length = bar.measured.as_ref().unwrap_or(&bar.bar.length);
    let end = bar.end.as_ref().map(|end| format!("less {} of end", end.text()));
    let note = [end, bar.note.clone()].into_iter().flatten().collect::<Vec<_>>().join("; ");
    [
        bar.bar.count.to_string(),
        bar.bar.section.describe(),
        length.text().to_owned(),
        bar.material.clone().unwrap_or_else(|| material::DEFAULT.name.to_owned()),
        bar.lies.clone().unwrap_or_default(),
        weigh,
        note,
    ]
}
