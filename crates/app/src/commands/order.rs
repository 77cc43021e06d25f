//! The commands of the order of work.

use super::row::{Row, WhileTyping};
use crate::state::{Command, Desk};
use egui::{Key, KeyboardShortcut, Modifiers};
use fh_core::edit::{can_join, can_take_apart};

const ALT: Modifiers = Modifiers::ALT;
const NONE: Modifiers = Modifiers::NONE;

pub(super) const ROWS: [Row; 13] = [
    Row::new(
        Command::ShowOrder,
        "Order of work",
        "Show the steps, heat by heat, in place of the list of parts; or go back to the parts.",
    )
    .keys(KeyboardShortcut::new(NONE, Key::F9))
    .chosen(|desk| desk.order_open()),
    Row::new(Command::NextStep, "Step after", "Show the bar after the next step.")
        .keys(KeyboardShortcut::new(NONE, Key::PageDown))
        .while_typing(WhileTyping::NotWhileUnsettled)
        .when(has_steps),
    Row::new(Command::PreviousStep, "Step before", "Show the bar after the step before.")
        .keys(KeyboardShortcut::new(NONE, Key::PageUp))
        .while_typing(WhileTyping::NotWhileUnsettled)
        .when(has_steps),
    Row::new(Command::PlaySteps, "Run through the steps", "Show the piece growing step by step, or stop.")
        .keys(KeyboardShortcut::new(NONE, Key::F7))
        .when(has_steps)
        .chosen(|desk| desk.order.is_some_and(|order| order.plays)),
    Row::new(
        Command::AddStep,
        "Add a step…",
        "Put a step after the chosen one: an operation on some parts, or your own words.",
    )
    .keys(KeyboardShortcut::new(ALT, Key::Enter))
    .when(|desk| desk.order_open()),
    Row::new(Command::DuplicateStep, "Duplicate step", "Put a copy of the chosen step after it.")
        .keys(KeyboardShortcut::new(ALT, Key::D))
        .while_typing(WhileTyping::Not)
        .when(has_step),
    Row::new(Command::RemoveStep, "Remove step", "Take the chosen step out of the order.")
        .keys(KeyboardShortcut::new(ALT, Key::Delete))
        .while_typing(WhileTyping::Not)
        .when(has_step),
    Row::new(Command::MergeSteps, "Join to the next step", "Join the next step to this one.")
        .keys(KeyboardShortcut::new(ALT, Key::J))
        .while_typing(WhileTyping::Not)
        .when(can_join_steps),
    Row::new(Command::SplitStep, "Take the step apart", "Make a step of each thing that the chosen one does.")
        .keys(KeyboardShortcut::new(ALT, Key::S))
        .while_typing(WhileTyping::Not)
        .when(can_take_step_apart),
    Row::new(Command::StepUp, "Move the step up", "Do the chosen step before the one above it.")
        .keys(KeyboardShortcut::new(ALT, Key::ArrowUp))
        .while_typing(WhileTyping::Not)
        .when(|desk| has_step(desk) && at(desk) > Some(0)),
    Row::new(Command::StepDown, "Move the step down", "Do the chosen step after the one below it.")
        .keys(KeyboardShortcut::new(ALT, Key::ArrowDown))
        .while_typing(WhileTyping::Not)
        .when(|desk| {
            has_step(desk)
                && desk.order.is_some_and(|order| order.at.is_some_and(|at| at + 1 < order.worked.steps.len()))
        }),
    Row::new(Command::ProposeAgain, "Go back to the program's order…", "Drop your own order and use the program's.")
        .when(|desk| desk.order_open() && desk.document.plan().work.steps.is_some()),
    Row::new(
        Command::AtTheAnvil,
        "At the anvil",
        "Show one step at a time in letters large enough to read from the anvil, with a clock for the heat.",
    )
    .keys(KeyboardShortcut::new(NONE, Key::F11)),
];

fn has_steps(desk: &Desk<'_>) -> bool {
    desk.order_open() && desk.order.is_some_and(|order| !order.worked.steps.is_empty())
}

fn has_step(desk: &Desk<'_>) -> bool {
    desk.order_open() && desk.order.is_some_and(|order| order.chosen().is_some())
}

fn at(desk: &Desk<'_>) -> Option<usize> {
    desk.order.and_then(|order| order.at)
}

fn can_join_steps(desk: &Desk<'_>) -> bool {
    let Some((order, at)) = desk.order.filter(|_| desk.order_open()).and_then(|order| Some((order, order.at?))) else {
        return false;
    };
    let two: Vec<_> = order.worked.steps.iter().skip(at).take(2).map(|step| step.step.clone()).collect();
    can_join(&two, 0)
}

fn can_take_step_apart(desk: &Desk<'_>) -> bool {
    let chosen = desk.order.filter(|_| desk.order_open()).and_then(|order| order.chosen());
    chosen.is_some_and(|step| can_take_apart(&step.step))
}
