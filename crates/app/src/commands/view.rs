//! The commands that change how the plan is shown, and in which unit.

use super::row::Row;
use crate::state::{Command, Views};
use egui::{Key, KeyboardShortcut, Modifiers};
use fh_core::plan::PlanUnit;

const CTRL: Modifiers = Modifiers::COMMAND;

pub(super) const ROWS: [Row; 14] = [
    Row::new(Command::ZoomIn, "Zoom in", "Show the bar larger.").keys(KeyboardShortcut::new(CTRL, Key::Plus)),
    Row::new(Command::ZoomOut, "Zoom out", "Show more of the bar.").keys(KeyboardShortcut::new(CTRL, Key::Minus)),
    Row::new(Command::ZoomFit, "Fit", "Show the whole bar.").keys(KeyboardShortcut::new(CTRL, Key::Num0)),
    Row::new(Command::ViewSide, "Side view", "See the bar from the side, where the smith stands.")
        .keys(KeyboardShortcut::new(CTRL, Key::Num1))
        .chosen(|desk| desk.views == Views::Side),
    Row::new(Command::ViewTop, "Top view", "See the bar from above.")
        .keys(KeyboardShortcut::new(CTRL, Key::Num2))
        .chosen(|desk| desk.views == Views::Top),
    Row::new(Command::ViewBoth, "Both views", "See the bar from the side and from above.")
        .keys(KeyboardShortcut::new(CTRL, Key::Num3))
        .chosen(|desk| desk.views == Views::Both),
    Row::new(Command::TrueThickness, "True thickness", "Draw thickness to the scale of length.")
        .chosen(|desk| desk.exaggeration < 1.5),
    Row::new(Command::DoubleThickness, "Thickness × 2", "Draw thickness at twice its size; a note says so.")
        .chosen(|desk| (1.5..3.0).contains(&desk.exaggeration)),
    Row::new(Command::FourfoldThickness, "Thickness × 4", "Draw thickness at four times its size; a note says so.")
        .chosen(|desk| desk.exaggeration >= 3.0),
    Row::new(Command::Inches, "Inches", "Show lengths in inches; sizes stay as they were typed.")
        .chosen(|desk| desk.document.plan().units.length == PlanUnit::Inch),
    Row::new(Command::Millimeters, "Millimetres", "Show lengths in millimetres; sizes stay as they were typed.")
        .chosen(|desk| desk.document.plan().units.length == PlanUnit::Millimeter),
    Row::new(Command::LargerText, "Larger text", "Make all text a step larger.")
        .keys(KeyboardShortcut::new(CTRL, Key::CloseBracket)),
    Row::new(Command::SmallerText, "Smaller text", "Make all text a step smaller.")
        .keys(KeyboardShortcut::new(CTRL, Key::OpenBracket)),
    Row::new(Command::NextFinding, "Next finding", "Go to the next finding.")
        .keys(KeyboardShortcut::new(Modifiers::NONE, Key::F6)),
];
