//! The cut list: the job at the left, its bars to one scale in the middle, and how good the list is known to be.

use super::bars::Lettered;
use super::{bars, empty, in_the_middle, job, side};
use crate::state::{Desk, Request, SteelAsk, SteelPaper};
use crate::theme::{Text, space};
use crate::widgets::heading;
use egui::{Button, Panel, RichText, ScrollArea, Ui};
use fh_measure::counted;
use fh_rack::list::make::{CutList, Group};
use fh_rack::list::words::{known, run, tenths, way};

/// The width of the panel with the job, in points at normal text size, and its share of the window at most.
const JOB: f32 = 290.0;
const MOST_OF_WIDTH: f32 = 0.3;

/// Shows it.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let theme = desk.theme;
    let width = theme.scaled(JOB).min((ui.available_width() * MOST_OF_WIDTH).round());
    let panel = Panel::left("the job").resizable(false).exact_size(width).frame(side(theme));
    panel.show(ui, |ui| {
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| job::show(ui, desk, out));
    });
    let cut = &desk.steel.cut;
    in_the_middle(ui, theme, |ui| match (&cut.list, &cut.told) {
        (_, Some(why)) => empty(ui, theme, &format!("■ {why}")),
        (None, _) => empty(ui, theme, "Making the cut list…"),
        (Some(list), _) if list.wanted.pieces.is_empty() => {
            empty(ui, theme, "Nothing is to be cut. Go back to the plan and add its first part.");
            notes(ui, desk, list);
        }
        (Some(list), _) => {
            head(ui, desk, out);
            let area = ScrollArea::vertical().auto_shrink([false, false]);
            area.show(ui, |ui| groups(ui, desk, list));
        }
    });
}

/// What can be done with the list, and how far the search has come.
fn head(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let (theme, cut) = (desk.theme, &desk.steel.cut);
    ui.horizontal_wrapped(|ui| {
        if ui.button("Print…").accessible_name("Print the cut list").clicked() {
            out.push(Request::Steel(SteelAsk::AskPaper(SteelPaper::Cut)));
        }
        match cut.booked {
            Some(number) => {
                ui.label(RichText::new(format!("✓ Booked as number {number}")).color(theme.ink));
                if ui.button(format!("Undo booking {number}")).clicked() {
                    out.push(Request::Steel(SteelAsk::Rack(crate::state::RackAsk::Unbook(number))));
                }
            }
            None => {
                let button = ui.add_enabled(cut.can_be_booked(ui.ctx()), Button::new("Book it"));
                let button = button
                    .on_hover_text("Take its bars off the rack, and put the offcuts that are kept on it.")
                    .on_disabled_hover_text("A list is booked once every piece finds a bar and the search is over.");
                if button.clicked() {
                    out.push(Request::Steel(SteelAsk::Book));
                }
            }
        }
        if cut.is_searching() {
            if ui.button("Stop the search").clicked() {
                out.push(Request::Steel(SteelAsk::StopSearch));
            }
            let words = cut.progress.map_or_else(
                || "Best fit so far; looking for a better list…".to_owned(),
                |progress| {
                    let (group, groups) = (progress.group + 1, progress.groups);
                    let bars = counted(progress.bars, "bar");
                    format!("Looking for a better list: group {group} of {groups}, {bars} so far…")
                },
            );
            ui.label(RichText::new(words).color(theme.ink_quiet));
        } else if cut.was_stopped {
            ui.label(RichText::new("Stopped: this is the best that was found.").color(theme.ink_quiet));
        }
    });
}

fn groups(ui: &mut Ui, desk: &Desk<'_>, list: &CutList) {
    let theme = desk.theme;
    let longest = list.groups.iter().flat_map(|group| &group.bars).filter_map(|bar| list.sources.get(bar.source));
    let longest = longest.map(|source| source.length_nm).max().unwrap_or(1);
    for group in &list.groups {
        let of = Lettered::of(group);
        heading::show(ui, theme, &format!("{}, {}", group.sections.join(" or "), group.material));
        if !group.bars.is_empty() {
            ui.label(RichText::new(known(list, group)).text_style(Text::Strong.style()).color(theme.ink));
            ui.label(RichText::new(pieces(list, &of)).color(theme.ink_quiet));
        }
        ui.add_space(space::TIGHT);
        for bar in &group.bars {
            bars::show(ui, theme, list, &of, bar, longest);
        }
        not_cut(ui, desk, list, group);
    }
    buy(ui, desk, list);
    notes(ui, desk, list);
    ui.add_space(space::GROUP);
}

/// The letters of the pieces, what they are called, and how they are cut.
fn pieces(list: &CutList, of: &Lettered<'_>) -> String {
    let words = of.pieces.iter().copied().filter_map(|at| {
        let piece = list.wanted.pieces.get(at)?;
        Some(format!("{} {}, {} × {}", of.letter(at), piece.name, piece.count, piece.words))
    });
    let all: Vec<String> = words.chain([way(of.group)]).collect();
    all.join("; ")
}

fn not_cut(ui: &mut Ui, desk: &Desk<'_>, list: &CutList, group: &Group) {
    for left in &group.left {
        let Some(piece) = list.wanted.pieces.get(left.piece) else { continue };
        let why = match left.too_long_nm {
            Some(nm) => format!("it is {} mm too long for every bar", tenths(nm as f64 / 1e6)),
            None if group.bars.is_empty() => "no such bar is on the rack or in the merchant's list".to_owned(),
            None => "there are no more bars".to_owned(),
        };
        let words = format!("■ {} of {} is not cut: {why}.", left.count, piece.name);
        ui.label(RichText::new(words).color(desk.theme.stop));
    }
}

fn buy(ui: &mut Ui, desk: &Desk<'_>, list: &CutList) {
    let bought = list.bought();
    if bought.is_empty() {
        return;
    }
    heading::show(ui, desk.theme, "To buy");
    for bought in bought {
        let source = bought.source;
        let price = bought.cost().map_or_else(String::new, |cost| format!(", {}", list.money.words(cost)));
        let used = format!(", {} of it is used", run(bought.used_nm, source));
        let lead = source.place.as_ref().map_or_else(String::new, |lead| format!(", {lead}"));
        let bars = format!("{} × {}, {}", bought.count, source.section.describe(), source.called.text());
        ui.label(format!("{bars}{price}{lead}{used}"));
    }
}

/// What is cut already, and what else has to be known.
fn notes(ui: &mut Ui, desk: &Desk<'_>, list: &CutList) {
    let already = list.wanted.cut_already.iter().map(|(name, count)| format!("{count} of {name} is cut already."));
    for words in already.chain(list.wanted.told.iter().cloned()) {
        ui.label(RichText::new(format!("● {words}")).color(desk.theme.note));
    }
}
