//! The top of the window: the menus, and the commands that are used most.

use crate::state::{Command, Desk, Request};
use crate::theme::{Look, space};
use crate::widgets::command_button::{bar_button, menu_line};
use egui::{Button, MenuBar, RichText, Ui};
use fh_store::demos::DEMOS;

/// The width from which the order of work has a button here too, in points at normal text size.
const WITH_ORDER: f32 = 570.0;
/// The sizes of text that are offered.
const TEXT_SIZES: [f32; 5] = [1.0, 1.25, 1.5, 1.75, 2.0];

/// Shows the menus and buttons.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    MenuBar::new().ui(ui, |ui| {
        ui.menu_button("File", |ui| file_menu(ui, desk, out));
        ui.menu_button("Edit", |ui| lines(ui, desk, &EDIT, out));
        ui.menu_button("Part", |ui| lines(ui, desk, &SEGMENT, out));
        ui.menu_button("Order", |ui| lines(ui, desk, &ORDER, out));
        ui.menu_button("Steel", |ui| lines(ui, desk, &STEEL, out));
        ui.menu_button("View", |ui| view_menu(ui, desk, out));
        ui.menu_button("Help", |ui| lines(ui, desk, &HELP, out));
        ui.separator();
        buttons(ui, desk, out);
    });
}

/// A group of lines; a rule stands between groups.
type Groups = [&'static [Command]];

const EDIT: [&[Command]; 4] = [
    &[Command::Undo, Command::Redo],
    &[Command::Cut, Command::Copy, Command::Paste],
    &[Command::OtherHand, Command::OtherBar, Command::ScalePiece],
    &[Command::Compare],
];
const SEGMENT: [&[Command]; 7] = [
    &[Command::AddAfter, Command::AddBefore],
    &[Command::InsertMotif, Command::SaveMotif],
    &[Command::Duplicate, Command::Remove],
    &[Command::MoveUp, Command::MoveDown],
    &[Command::NextSegment, Command::PreviousSegment, Command::TypeSize],
    &[Command::FixMark, Command::LoosenMark],
    &[Command::AddBar, Command::RemoveBar],
];
const VIEW: [&[Command]; 6] = [
    &[Command::ZoomIn, Command::ZoomOut, Command::ZoomFit],
    &[Command::ViewSide, Command::ViewTop, Command::ViewBoth],
    &[Command::TrueThickness, Command::DoubleThickness, Command::FourfoldThickness],
    &[
        Command::ShowPiece,
        Command::PieceFront,
        Command::PieceSide,
        Command::PieceTop,
        Command::PieceTurned,
        Command::PieceFit,
        Command::QuarterTurn,
        Command::HangAsSeen,
        Command::HangAsPlanned,
        Command::Measure,
        Command::LayPicture,
        Command::AdjustPicture,
    ],
    &[Command::Inches, Command::Millimeters],
    &[Command::NextFinding],
];
const ORDER: [&[Command]; 5] = [
    &[Command::ShowOrder, Command::AtTheAnvil],
    &[Command::NextStep, Command::PreviousStep, Command::PlaySteps],
    &[Command::AddStep, Command::DuplicateStep, Command::RemoveStep],
    &[Command::StepUp, Command::StepDown, Command::MergeSteps, Command::SplitStep],
    &[Command::ProposeAgain],
];
const STEEL: [&[Command]; 2] =
    [&[Command::ShowSteel], &[Command::WhichBar, Command::Rack, Command::CutList, Command::Quote]];
const HELP: [&[Command]; 3] =
    [&[Command::Find, Command::Handbook], &[Command::Tour, Command::KeyboardList], &[Command::About]];

fn lines(ui: &mut Ui, desk: &Desk<'_>, groups: &Groups, out: &mut Vec<Request>) {
    for (index, group) in groups.iter().enumerate() {
        if index > 0 {
            ui.separator();
        }
        for command in *group {
            menu_line(ui, desk, *command, out);
        }
    }
}

fn file_menu(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    lines(ui, desk, &[&[Command::New, Command::Open]], out);
    ui.menu_button("Open recent", |ui| recent(ui, desk, out));
    ui.menu_button("Demo plans", |ui| demos(ui, out));
    ui.separator();
    lines(
        ui,
        desk,
        &[&[Command::Save, Command::SaveAs], &[Command::PrintMarkSheet, Command::Export], &[Command::Quit]],
        out,
    );
}

fn recent(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    if desk.recent.paths().is_empty() {
        ui.add_enabled(false, Button::new("No plan was opened yet"));
    }
    for path in desk.recent.paths() {
        let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        if ui.button(name).on_hover_text(path.display().to_string()).clicked() {
            out.push(Request::Open(path.clone()));
            ui.close();
        }
    }
    ui.separator();
    let mut reopens = desk.settings.reopens_last;
    if ui.checkbox(&mut reopens, "Open the last plan at the start").changed() {
        out.push(Request::ReopenLast(reopens));
    }
}

fn demos(ui: &mut Ui, out: &mut Vec<Request>) {
    for (index, demo) in DEMOS.iter().enumerate() {
        if ui.button(demo.title).clicked() {
            out.push(Request::OpenDemo(index));
            ui.close();
        }
    }
}

fn view_menu(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    // First what large text makes most wanted: the end of a long menu may lie below the screen.
    ui.menu_button("Look", |ui| {
        for look in Look::ALL {
            if ui.radio(desk.settings.look == look, look.name()).clicked() {
                out.push(Request::Look(look));
            }
        }
    });
    ui.menu_button("Text size", |ui| {
        for size in TEXT_SIZES {
            let words = format!("{:.0} %", size * 100.0);
            if ui.radio((desk.settings.text_size - size).abs() < 0.01, words).clicked() {
                out.push(Request::TextSize(size));
            }
        }
        lines(ui, desk, &[&[Command::LargerText, Command::SmallerText]], out);
    });
    ui.separator();
    let room = ui.ctx().content_rect().bottom() - ui.cursor().top() - space::GAP;
    egui::ScrollArea::vertical().max_height(room).show(ui, |ui| lines(ui, desk, &VIEW, out));
}

fn buttons(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let has_room = ui.available_width() > desk.theme.scaled(WITH_ORDER);
    ui.horizontal_wrapped(|ui| {
        // Buttons are to look like buttons, not like menus.
        ui.set_style(ui.ctx().global_style());
        bar_button(ui, desk, Command::Save, "Save", out);
        bar_button(ui, desk, Command::Undo, "Undo", out);
        bar_button(ui, desk, Command::Redo, "Redo", out);
        bar_button(ui, desk, Command::PrintMarkSheet, "Print sheets…", out);
        if has_room {
            bar_button(ui, desk, Command::ShowOrder, "Order of work", out);
            bar_button(ui, desk, Command::ShowSteel, "Steel", out);
        }
        ui.add_space(space::GAP);
        ui.label(RichText::new("Units").color(desk.theme.ink_quiet));
        bar_button(ui, desk, Command::Inches, "in", out);
        bar_button(ui, desk, Command::Millimeters, "mm", out);
    });
}
