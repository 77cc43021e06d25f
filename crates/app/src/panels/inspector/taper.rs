//! The sizes of a taper: where it starts, where it ends, how it runs out.

use super::sizes::{BODIES, section};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::plan::{RunoutSpec, SectionKind, SectionSpec};

/// The powers that are offered by a word, and the limits of any.
const FULL: f64 = 2.0;
const HOLLOW: f64 = 0.5;
const LEAST_POWER: f64 = 0.1;
const MOST_POWER: f64 = 10.0;

/// A run-out as it is offered.
#[derive(Clone, Copy, PartialEq)]
enum Offered {
    Straight,
    Eased,
    Full,
    Hollow,
}

/// Shows the sizes.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    from: &mut Option<SectionSpec>,
    to: &mut SectionSpec,
    runout: &mut Option<RunoutSpec>,
    first: bool,
) {
    let ends: Vec<_> = [SectionKind::Point, SectionKind::Edge].into_iter().chain(BODIES).collect();
    run_out(ui, sizing, runout);
    // Before the first segment there is only the stock.
    let usual = if first { SectionSpec::Stock } else { SectionSpec::Same };
    let mut start = from.clone().unwrap_or_else(|| usual.clone());
    // A point or an edge of the first segment is the free end of the bar.
    let turned = first && matches!(to, SectionSpec::Point | SectionSpec::Edge(_));
    let head = if turned { "Section towards the bar" } else { "Section at its start" };
    section(ui, sizing, head, "section at its start", &mut start, &BODIES);
    if from.as_ref() != Some(&start) {
        *from = (start != usual).then_some(start);
    }
    let head = if turned { "Section at the free end" } else { "Section at its end" };
    section(ui, sizing, head, "section at its end", to, &ends);
}

fn run_out(ui: &mut Ui, sizing: &Sizing<'_>, runout: &mut Option<RunoutSpec>) {
    let now = match runout {
        None | Some(RunoutSpec::Straight) => Offered::Straight,
        Some(RunoutSpec::Eased) => Offered::Eased,
        Some(RunoutSpec::Power(power)) if *power < 1.0 => Offered::Hollow,
        Some(RunoutSpec::Power(_)) => Offered::Full,
    };
    let choices = [
        (Offered::Straight, "straight".to_owned()),
        (Offered::Eased, "eased at both ends".to_owned()),
        (Offered::Full, "full: falls away late".to_owned()),
        (Offered::Hollow, "hollow: falls away at once".to_owned()),
    ];
    if let Some(choice) = chooser::show(ui, sizing.theme, "Runs out", "How it runs out", now, &choices) {
        *runout = match choice {
            Offered::Straight => None,
            Offered::Eased => Some(RunoutSpec::Eased),
            Offered::Full => Some(RunoutSpec::Power(FULL)),
            Offered::Hollow => Some(RunoutSpec::Power(HOLLOW)),
        };
    }
    if let Some(RunoutSpec::Power(power)) = runout {
        let entry = Entry::named("Fullness", "Power of the run-out");
        if let Some(Some(typed)) = fields::optional_number(ui, sizing, &entry, Some(*power)) {
            *power = typed.clamp(LEAST_POWER, MOST_POWER);
        }
    }
}
