//! What a step does: its deeds, each with the parts that it is done to.

use crate::state::Desk;
use crate::theme::Text;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::{RichText, Ui};
use fh_core::describe::segment_name;
use fh_core::plan::{Deed, Operation, Plan, Step};
use fh_work::WorkedStep;

/// Shows the deeds.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, sizing: &Sizing<'_>, worked: &WorkedStep, next: &mut Step) {
    let choices: Vec<(Operation, String)> =
        Operation::ALL.into_iter().map(|operation| (operation, operation.name().to_owned())).collect();
    let many = next.work.len() > 1;
    for (number, deed) in next.work.iter_mut().enumerate() {
        let counted = |words: &str| if many { format!("{words} {}", number + 1) } else { words.to_owned() };
        let name = counted("Operation");
        if let Some(operation) = chooser::show(ui, desk.theme, &name, &name, deed.operation, &choices) {
            deed.operation = operation;
        }
        if let Some(joint) = deed.joint {
            let words = desk.document.plan().joints.get(joint as usize - 1);
            let words = words.map_or_else(|| "no such joint".to_owned(), |found| found.title(joint as usize - 1));
            quiet(ui, desk, &words);
            continue;
        }
        let (name, now) = (counted("Parts"), deed.parts.join(", "));
        let entry = Entry::new(&name).hint("the whole bar");
        if let Some(typed) = fields::words(ui, sizing, &entry, &now) {
            deed.parts = typed.split([',', ' ']).filter(|part| !part.is_empty()).map(str::to_owned).collect();
        }
        quiet(ui, desk, &names(desk.document.plan(), worked.step.bar_index(), deed));
    }
}

fn quiet(ui: &mut Ui, desk: &Desk<'_>, words: &str) {
    if !words.is_empty() {
        ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    }
}

/// The names of the parts of a deed: `leaf, stalk`.
fn names(plan: &Plan, bar: usize, deed: &Deed) -> String {
    let Some(bar) = plan.bars.get(bar) else { return String::new() };
    let name = |path: &String| bar.find_path(path).map(|at| segment_name(bar, at));
    let all = deed.parts.iter().map(|path| name(path).unwrap_or_else(|| format!("no part {path}")));
    all.collect::<Vec<_>>().join(", ")
}
