//! The cautions of the steps in a place of their own, each told once with the steps that it is for.

use super::rows::sign;
use super::runs::{Run, runs_block};
use crate::drawing::{Item, at};
use crate::pen::Pen;
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::BELOW_STEP;
use fh_work::WorkedStep;

/// Free inside the frame.
const PAD_MM: f64 = 1.2;
/// The room of the sign.
const SIGN_MM: f64 = 6.0;
/// What is told at most.
const MOST: usize = 14;

/// The cautions of some steps, each with its number counted from 0; nothing where there is none. Each in lines of its own, or
/// closer one after the other.
pub(super) fn beware<'a>(steps: impl Iterator<Item = (usize, &'a WorkedStep)>, width: f64, is_close: bool) -> Block {
    let told = grouped(steps);
    if told.is_empty() {
        return Block::default();
    }
    let room = width - SIGN_MM - 2.0 * PAD_MM;
    let lines = told.iter().take(MOST).map(|(words, steps)| {
        let numbers = steps.iter().map(|step| (step + 1).to_string()).collect::<Vec<_>>().join(", ");
        [Run::bold(&format!("{numbers}:")), Run::plain(words)]
    });
    let inside = if is_close {
        runs_block(&lines.flatten().collect::<Vec<_>>(), BELOW_STEP, room, 0.0)
    } else {
        lines.fold(Block::default(), |all, runs| all.over(runs_block(&runs, BELOW_STEP, room, 0.0)))
    };
    let height = inside.height + 2.0 * PAD_MM;
    let mut items = vec![Item::rectangle(at(0.0, 0.0), at(width, height), None, Some(Pen::Outline))];
    items.extend(sign(BELOW_STEP).map(|item| item.shifted(PAD_MM, PAD_MM)));
    items.extend(inside.items.into_iter().map(|item| item.shifted(PAD_MM + SIGN_MM, PAD_MM)));
    Block { height, items }
}

/// Each sentence of the cautions once, with the steps that it is told at.
fn grouped<'a>(steps: impl Iterator<Item = (usize, &'a WorkedStep)>) -> Vec<(&'a str, Vec<usize>)> {
    let mut told: Vec<(&str, Vec<usize>)> = Vec::new();
    for (number, step) in steps {
        let Some(words) = step.caution.as_deref().map(str::trim).filter(|words| !words.is_empty()) else { continue };
        match told.iter_mut().find(|(known, _)| *known == words) {
            Some((_, steps)) => steps.push(number),
            None => told.push((words, vec![number])),
        }
    }
    told
}
