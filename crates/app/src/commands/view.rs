//! The commands that change how the plan is shown, and in which unit.

use super::{Command, Row};
use crate::canvas::Views;
use crate::editor::Editor;
use crate::state::ViewsShown;
use egui::{Context, Key, KeyboardShortcut, Modifiers};
use fh_core::plan::PlanUnit;

const CTRL: Modifiers = Modifiers::COMMAND;

/// How much one step of zooming does.
const ZOOM_STEP: f32 = 1.25;
/// How much one step of the text's size does.
const TEXT_STEP: f32 = 0.25;

pub(super) const ROWS: [Row; 14] = [
    Row::new(Command::ZoomIn, "Zoom in", "Show the bar larger.", |editor, _| editor.canvas.zoom_by(ZOOM_STEP))
        .keys(KeyboardShortcut::new(CTRL, Key::Plus)),
    Row::new(Command::ZoomOut, "Zoom out", "Show more of the bar.", |editor, _| editor.canvas.zoom_by(1.0 / ZOOM_STEP))
        .keys(KeyboardShortcut::new(CTRL, Key::Minus)),
    Row::new(Command::ZoomFit, "Fit", "Show the whole bar.", |editor, _| editor.canvas.fit())
        .keys(KeyboardShortcut::new(CTRL, Key::Num0)),
    Row::new(Command::ViewSide, "Side view", "See the bar from the side, where the smith stands.", |editor, _| {
        editor.show_views(ViewsShown::Side);
    })
    .keys(KeyboardShortcut::new(CTRL, Key::Num1))
    .chosen(|desk| desk.views == Views::Side),
    Row::new(Command::ViewTop, "Top view", "See the bar from above.", |editor, _| editor.show_views(ViewsShown::Top))
        .keys(KeyboardShortcut::new(CTRL, Key::Num2))
        .chosen(|desk| desk.views == Views::Top),
    Row::new(Command::ViewBoth, "Both views", "See the bar from the side and from above.", |editor, _| {
        editor.show_views(ViewsShown::Both);
    })
    .keys(KeyboardShortcut::new(CTRL, Key::Num3))
    .chosen(|desk| desk.views == Views::Both),
    Row::new(Command::TrueThickness, "True thickness", "Draw thickness to the scale of length.", |editor, _| {
        editor.canvas.set_exaggeration(1.0);
    })
    .chosen(|desk| desk.exaggeration < 1.5),
    Row::new(
        Command::DoubleThickness,
        "Thickness × 2",
        "Draw thickness twice as large, with a note of it.",
        |editor, _| {
            editor.canvas.set_exaggeration(2.0);
        },
    )
    .chosen(|desk| (1.5..3.0).contains(&desk.exaggeration)),
    Row::new(
        Command::FourfoldThickness,
        "Thickness × 4",
        "Draw thickness four times as large, with a note of it.",
        |editor, _| {
            editor.canvas.set_exaggeration(4.0);
        },
    )
    .chosen(|desk| desk.exaggeration >= 3.0),
    Row::new(Command::Inches, "Inches", "Show lengths in inches; sizes stay as they were typed.", |editor, _| {
        editor.set_unit(PlanUnit::Inch);
    })
    .chosen(|desk| desk.document.plan().units.length == PlanUnit::Inch),
    Row::new(
        Command::Millimeters,
        "Millimetres",
        "Show lengths in millimetres; sizes stay as they were typed.",
        |editor, _| {
            editor.set_unit(PlanUnit::Millimeter);
        },
    )
    .chosen(|desk| desk.document.plan().units.length == PlanUnit::Millimeter),
    Row::new(Command::LargerText, "Larger text", "Make all text a step larger.", |editor, ctx| {
        resize_text(editor, ctx, TEXT_STEP)
    })
    .keys(KeyboardShortcut::new(CTRL, Key::CloseBracket)),
    Row::new(Command::SmallerText, "Smaller text", "Make all text a step smaller.", |editor, ctx| {
        resize_text(editor, ctx, -TEXT_STEP)
    })
    .keys(KeyboardShortcut::new(CTRL, Key::OpenBracket)),
    Row::new(Command::NextFinding, "Next finding", "Select the place that the next finding speaks of.", |editor, _| {
        editor.next_finding();
    })
    .keys(KeyboardShortcut::new(Modifiers::NONE, Key::F8)),
];

fn resize_text(editor: &mut Editor, ctx: &Context, by: f32) {
    let size = editor.settings.text_size + by;
    editor.set_text_size(size, ctx);
}
