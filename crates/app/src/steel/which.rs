//! Which bar: every section that the bar in hand can be made from, the best first.

use super::moved::moved;
use super::{empty, in_the_middle, side, which_detail, which_plot};
use crate::figures;
use crate::state::{Desk, Request, SteelAsk};
use crate::theme::space;
use crate::widgets::severity_sign::sign;
use crate::widgets::table::{self, Column, Line, keep_keyboard, take_keyboard};
use egui::{Button, ComboBox, Panel, RichText, ScrollArea, Ui};
use fh_measure::counted;
use fh_rack::said::money::Currency;
use fh_rack::which::options::{BarOption, By};
use uom::si::f64::Mass;
use uom::si::mass::kilogram;

/// The first width of the panel beside it, in points at normal text size, and its share of the window at most.
const DETAIL: f32 = 380.0;
const MOST_OF_WIDTH: f32 = 0.34;

const COLUMNS: [Column; 9] = [
    Column::words("Section", 2.1),
    Column::words("", 1.5),
    Column::figures("Cut", 1.1),
    Column::figures("Weighs", 0.9),
    Column::figures("Draw out", 1.4),
    Column::figures("Upset", 1.4),
    Column::figures("Heats", 0.6),
    Column::figures("Minutes", 0.8),
    Column::figures("Cost", 1.0),
];

/// In a narrow window what is drawn and upset is told beside the table alone: these columns, and the places of their cells.
const FEW_COLUMNS: [Column; 5] = [
    Column::words("Section", 2.2),
    Column::words("", 1.6),
    Column::figures("Cut", 1.3),
    Column::figures("Minutes", 1.1),
    Column::figures("Cost", 1.0),
];
const FEW_CELLS: [usize; 5] = [0, 1, 2, 7, 8];
/// The width from which all columns are shown, in points at normal text size.
const LEAST_FOR_ALL: f32 = 700.0;

/// Shows the table, and beside it the plot and what is to be known of one option.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let theme = desk.theme;
    let which = &desk.steel.which;
    if !which.options.is_empty() {
        let width = theme.scaled(DETAIL).min((ui.available_width() * MOST_OF_WIDTH).round());
        let panel = Panel::right("which bar").resizable(false).exact_size(width).frame(side(theme));
        panel.show(ui, |ui| {
            ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
                which_plot::show(ui, desk, out);
                which_detail::show(ui, desk, out);
            });
        });
    }
    in_the_middle(ui, theme, |ui| {
        head(ui, desk, out);
        match &which.told {
            Some(why) => empty(ui, theme, &format!("■ {why}")),
            None if which.options.is_empty() && which.is_working() => empty(ui, theme, "Trying every bar…"),
            None if which.options.is_empty() => {
                empty(ui, theme, "Nothing is marked on this bar yet. Go back to the plan and add its first part.");
            }
            None => options(ui, desk, out),
        }
    });
}

fn head(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let (theme, which) = (desk.theme, &desk.steel.which);
    let plan = desk.document.plan();
    ui.horizontal_wrapped(|ui| {
        if plan.bars.len() > 1 {
            ui.label(RichText::new("Bar").color(theme.ink_quiet));
            for (index, bar) in plan.bars.iter().enumerate() {
                let name = if bar.name.trim().is_empty() { format!("bar {}", index + 1) } else { bar.name.clone() };
                let button = Button::new(fh_core::describe::short_name(&name));
                if ui.add(button.selected(desk.selection.bar == index)).clicked() {
                    out.push(Request::Select(index, None));
                }
            }
            ui.add_space(space::GAP);
        }
        ui.label(RichText::new("First").color(theme.ink_quiet));
        for (by, words) in [(By::Effort, "the least work"), (By::Cost, "the cheapest")] {
            if ui.add(Button::new(words).selected(which.by == by)).clicked() {
                out.push(Request::Steel(SteelAsk::SortBy(by)));
            }
        }
        ui.add_space(space::GAP);
        filters(ui, desk, out);
        if which.is_working() {
            let words = format!("Heats and minutes: {} of {}.", which.worked, counted(which.options.len(), "bar"));
            ui.label(RichText::new(words).color(theme.ink_quiet));
        } else if !which.options.is_empty() {
            let (shown, all) = (which.shown().len(), which.options.len());
            let of = if shown < all { format!("{shown} of ") } else { String::new() };
            let words = format!("{of}{}, from the rack and the merchant's list", counted(all, "bar"));
            ui.label(RichText::new(words).color(theme.ink_quiet));
        }
    });
    ui.add_space(space::TIGHT);
}

/// Which of them are shown.
fn filters(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let which = &desk.steel.which;
    let mut filter = which.filter;
    ui.label(RichText::new("Only").color(desk.theme.ink_quiet));
    let mut button = |is_on: &mut bool, words: &str, tip: &str| {
        if ui.add(Button::new(words).selected(*is_on)).on_hover_text(tip).clicked() {
            *is_on = !*is_on;
        }
    };
    button(&mut filter.on_rack, "on the rack", "Hides what has to be bought.");
    button(&mut filter.is_clean, "no findings", "Hides bars that have findings or are too short.");
    let combo = ComboBox::from_id_salt("kinds of section").selected_text(filter.kind.unwrap_or("any section"));
    let shown = combo.show_ui(ui, |ui| {
        ui.selectable_value(&mut filter.kind, None, "any section");
        for kind in which.kinds() {
            ui.selectable_value(&mut filter.kind, Some(kind), kind);
        }
    });
    shown.response.accessible_name("Sections that are shown");
    if filter != which.filter {
        out.push(Request::Steel(SteelAsk::Filter(filter)));
    }
}

fn options(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let (theme, which) = (desk.theme, &desk.steel.which);
    let money = desk.steel.stock.as_ref().map(|stock| stock.merchant.now.money()).unwrap_or_default();
    let has_room = ui.available_width() >= theme.scaled(LEAST_FOR_ALL);
    let columns: &[Column] = if has_room { &COLUMNS } else { &FEW_COLUMNS };
    table::head(ui, theme, columns);
    let at = which.at();
    ui.spacing_mut().item_spacing.y = 0.0;
    ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
        let shown = which.shown();
        for (place, index) in shown.iter().copied().enumerate() {
            let option = &which.options[index];
            let all = cells(desk, option, &money);
            let few = FEW_CELLS.map(|at| all[at].clone());
            let cells: &[String] = if has_room { &all } else { &few };
            let name = option.section.describe();
            let is_chosen = at == Some(index);
            let ink = if option.can_be_forged() && option.is_long_enough { theme.ink } else { theme.ink_quiet };
            let line = Line { cells, name: &name, is_chosen, ink, is_strong: true };
            let response = table::show(ui, theme, columns, &line);
            if is_chosen && take_keyboard(ui) {
                response.request_focus();
                response.scroll_to_me(None);
            }
            if response.double_clicked() && option.can_be_forged() {
                out.push(Request::Steel(SteelAsk::TakeBar(option.alike.clone())));
            } else if response.clicked() {
                response.request_focus();
                let ask = if is_chosen && !response.clicked_by(egui::PointerButton::Primary) {
                    SteelAsk::TakeBar(option.alike.clone())
                } else {
                    SteelAsk::Look(option.alike.clone())
                };
                out.push(Request::Steel(ask));
            }
            let next = table::step(ui, &response, place, shown.len());
            let next = next.and_then(|to| which.options.get(*shown.get(to)?));
            if let Some(next) = next {
                keep_keyboard(ui);
                out.push(Request::Steel(SteelAsk::Look(next.alike.clone())));
            }
        }
    });
}

fn cells(desk: &Desk<'_>, option: &BarOption, money: &Currency) -> [String; 9] {
    let unit = desk.document.plan().units.length;
    let worst = option.against.first().map(|against| sign(against.severity));
    let place = match (option.is_own, option.is_on_rack) {
        (true, true) => "now, on the rack",
        (true, false) => "now",
        (false, true) => "on the rack",
        (false, false) => "",
    };
    let worst = worst.or((!option.is_long_enough).then_some("▲"));
    let section = option.section.describe();
    [
        worst.map_or_else(|| section.clone(), |sign| format!("{sign} {section}")),
        place.to_owned(),
        option.words.clone(),
        figures::mass(Mass::new::<kilogram>(option.mass_kg), unit),
        moved(desk, option.drawn),
        moved(desk, option.upset),
        option.fire.map_or_else(String::new, |fire| fire.heats.to_string()),
        option.fire.map_or_else(String::new, |fire| format!("{:.0}", fire.all_minutes().ceil())),
        option.cost.map_or_else(String::new, |cost| money.figures(cost)),
    ]
}
