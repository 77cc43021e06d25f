//! Blocks between fixed marks: with metal over, or short of it.

use super::scene::{Rule, Scene, volume};
use super::{Check, Finding, Severity};
use crate::balance::Block;
use crate::describe::lower_first;
use crate::metal::in_mm;
use fh_measure::in_mm3;

pub(super) const CHECK: Check = Check {
    ids: &["block-over", "block-short"],
    summary: "Whether the parts between two fixed marks take just the bar that lies there.",
    run,
};

const OVER: Rule = Rule {
    id: "block-over",
    severity: Severity::Warning,
    reason: "What is over belongs to no part, and would be left between two of them.",
};

const SHORT: Rule = Rule {
    id: "block-short",
    severity: Severity::Stop,
    reason: "The parts would run past the mark, into metal that others need.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    if !scene.is_bar() || !scene.bar.has_fixed_marks() {
        return;
    }
    let step = scene.plan.units.marks.step_mm();
    for block in scene.balance.blocks.iter().filter(|block| block.is_uneven(step)) {
        let over = in_mm(block.over_length);
        let metal = volume(in_mm3(block.over).abs(), scene.plan.units.length);
        let bar = scene.millimeters(over.abs());
        let (from, to) = ends(scene, block);
        let place = scene.place(last_part(scene, block));
        if over > 0.0 {
            let all = if block.gives.is_empty() { String::new() } else { gives_all(scene, block) };
            let message = format!("From {from} to {to}, {bar} of bar is over ({metal}){all}.");
            found.push(OVER.at(place, message, remedy(scene, block, "Move the mark back")));
        } else {
            let all = if block.gives.is_empty() { String::new() } else { gives_all(scene, block) };
            let message = format!("From {from} to {to}, {bar} of bar is missing ({metal}){all}.");
            found.push(SHORT.at(place, message, remedy(scene, block, "Move the mark on")));
        }
    }
}

/// The last part of a block, counted through the bar.
fn last_part(scene: &Scene<'_>, block: &Block) -> Option<usize> {
    let last = block.places.end.checked_sub(1)?;
    scene.balance.whole().nth(last).map(|(at, _)| at)
}

/// The marks that a block lies between, in words.
fn ends(scene: &Scene<'_>, block: &Block) -> (String, String) {
    let mark = |place: usize| scene.bar.segments.get(place)?.ends_at.as_ref().map(|mark| mark.text().to_owned());
    let from = block.places.start.checked_sub(1).and_then(mark).unwrap_or_else(|| "the datum".to_owned());
    let to = block.places.end.checked_sub(1).and_then(mark);
    (from, to.unwrap_or_else(|| format!("the end at {}", scene.length(block.mark_end))))
}

/// That what gives has given all that it can.
fn gives_all(scene: &Scene<'_>, block: &Block) -> String {
    let names: Vec<String> = block.gives.iter().map(|at| format!("“{}”", scene.name(*at))).collect();
    let (last, first) = match names.split_last() {
        Some((last, first)) => (last.clone(), first.join(", ")),
        None => return String::new(),
    };
    let all = if first.is_empty() { last } else { format!("{first} and {last}") };
    format!(", though {all} can give no more")
}

fn remedy(scene: &Scene<'_>, block: &Block, movement: &str) -> String {
    let even = scene.length(block.mark_end - block.over_length);
    let is_mark =
        block.places.end.checked_sub(1).and_then(|last| scene.bar.segments.get(last)?.ends_at.as_ref()).is_some();
    let moved = if is_mark { format!("{movement} to {even}") } else { format!("Cut the bar to {even}") };
    if block.gives.is_empty() {
        format!("Let a part of it give, or: {}.", lower_first(&moved))
    } else {
        format!("{moved}, or change the parts that hold.")
    }
}
