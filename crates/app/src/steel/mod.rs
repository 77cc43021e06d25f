//! Steel, in place of the plan: which bar, the rack, the cut list, the quote.

mod bars;
mod cut;
mod fields;
mod job;
mod job_file;
mod job_lines;
mod job_page;
mod merchant;
mod moved;
mod quote;
mod rack;
mod rack_line;
mod rate;
mod shop;
mod shop_lists;
mod sum;
mod today;
mod which;
mod which_detail;
mod which_plot;

use crate::state::{Command, Desk, Request, SteelTab};
use crate::theme::{Theme, space};
use crate::widgets::command_button::bar_button;
use egui::{CentralPanel, Frame, Label, Margin, Panel, RichText, Ui};

/// Shows the part of it that is chosen.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let frame = Frame::new().fill(desk.theme.panel).inner_margin(Margin::symmetric(12, 6));
    Panel::top("steel parts").frame(frame).show(ui, |ui| tabs(ui, desk, out));
    match desk.steel.tab {
        SteelTab::Which => which::show(ui, desk, out),
        SteelTab::Rack => rack::show(ui, desk, out),
        SteelTab::Cut => cut::show(ui, desk, out),
        SteelTab::Quote => quote::show(ui, desk, out),
        SteelTab::Job => job_page::show(ui, desk, out),
        SteelTab::Merchant => merchant::show(ui, desk, out),
        SteelTab::Shop => shop::show(ui, desk, out),
    }
}

fn tabs(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    const TABS: [Command; 7] = [
        Command::WhichBar,
        Command::Rack,
        Command::CutList,
        Command::Quote,
        Command::Job,
        Command::Merchant,
        Command::ShopFigures,
    ];
    ui.horizontal_wrapped(|ui| {
        for command in TABS {
            bar_button(ui, desk, command, command.row().text, out);
        }
        ui.add_space(space::GROUP);
        if ui.button("Back to the plan").on_hover_text("Go back to the plan (Esc).").clicked() {
            out.push(Request::Run(Command::ShowSteel));
        }
        ui.add_space(space::GROUP);
        ui.add(Label::new(RichText::new(desk.said).color(desk.theme.ink)).truncate());
    });
}

/// The ground that a part of it stands on.
fn ground(theme: &Theme) -> Frame {
    Frame::new().fill(theme.panel).inner_margin(Margin { left: 12, right: 12, top: 8, bottom: 0 })
}

/// A panel at the side of it.
fn side(theme: &Theme) -> Frame {
    Frame::new().fill(theme.panel).inner_margin(Margin { left: 12, right: 8, top: 8, bottom: 0 })
}

/// Shows a part in what the panels beside it leave.
fn in_the_middle(ui: &mut Ui, theme: &Theme, contents: impl FnOnce(&mut Ui)) {
    CentralPanel::default().frame(ground(theme)).show(ui, contents);
}

/// What is to be done where nothing is there yet.
fn empty(ui: &mut Ui, theme: &Theme, words: &str) {
    ui.add_space(space::GROUP);
    ui.label(RichText::new(words).color(theme.ink_quiet));
}
