//! What has to be heated along with a step, because others follow in the same heat, and what is heated once more after the last.

use crate::job::site::Site;
use crate::says::words::joined;
use crate::step::WorkedStep;
use fh_core::describe::{lower_first, upper_first};
use fh_core::plan::{Operation, Plan};

/// For each step that begins a heat, which steps follow in it, and what else has to come hot out of the fire for them; none where none
/// follows.
pub(crate) fn heat_with(sites: &[Site<'_>], steps: &[WorkedStep]) -> Vec<Option<String>> {
    let mut heats = 0;
    let of = |(number, step): (usize, &WorkedStep)| {
        let last = last_heat(step)?;
        let begins = last > heats;
        heats = heats.max(last);
        if begins { words(sites, steps, number, last) } else { None }
    };
    steps.iter().enumerate().map(of).collect()
}

/// For each step, how the piece is normalised after it: after its last weld at a joint, where its steel hardens; none of other steps.
///
/// Common practice, no source; the heats are the material's.
pub(crate) fn normalised(plan: &Plan, steps: &[WorkedStep]) -> Vec<Option<String>> {
    let words = normalise_words(plan)
        .map(|words| format!("Then normalise the piece, in one heat more than is counted: {}", lower_first(&words)));
    let joins = |step: &WorkedStep| step.bar.is_none() && welds(step);
    let last = steps.iter().rposition(joins);
    (0..steps.len()).map(|step| words.clone().filter(|_| Some(step) == last)).collect()
}

/// How a steel that hardens is normalised; none of other metals.
pub(crate) fn normalise_words(plan: &Plan) -> Option<String> {
    plan.material().normalise.map(|normal| {
        format!(
            "Heat all of it evenly to {:.0} °C, {}; then hang it up to cool in still air. The steel maker's data sheet comes first.",
            normal.celsius, normal.looks
        )
    })
}

fn welds(step: &WorkedStep) -> bool {
    step.tasks.iter().any(|task| task.operation == Operation::Weld)
}

/// The last heat of a step; none where it is done cold.
fn last_heat(step: &WorkedStep) -> Option<usize> {
    step.is_hot().then(|| step.heat + step.needs - 1)
}

fn words(sites: &[Site<'_>], steps: &[WorkedStep], number: usize, heat: usize) -> Option<String> {
    let own = &steps[number];
    let site = sites.get(own.bar?)?;
    let follow: Vec<(usize, &WorkedStep)> = steps
        .iter()
        .enumerate()
        .skip(number + 1)
        .take_while(|(_, step)| !step.is_hot() || step.heat == heat)
        // The bar is trued in what is left of a heat.
        .filter(|(_, step)| step.is_hot() && step.bar == own.bar && !step.parts().is_empty())
        .collect();
    let mut names: Vec<String> = Vec::new();
    let mut numbers: Vec<String> = Vec::new();
    for (at, step) in follow {
        let elsewhere: Vec<usize> = step.parts().into_iter().filter(|part| !own.parts().contains(part)).collect();
        numbers.push((at + 1).to_string());
        for name in elsewhere.into_iter().map(|part| format!("“{}”", site.name(part))) {
            if !names.contains(&name) {
                names.push(name);
            }
        }
    }
    let follow = match numbers.len() {
        0 => return None,
        1 => format!("step {} follows", numbers[0]),
        _ => format!("steps {} follow", joined(&numbers)),
    };
    // Where one heat does, what is hot is told with all that follows in it.
    Some(match (own.needs > 1, names.is_empty()) {
        (false, true) => format!("{} in this heat.", upper_first(&follow)),
        (false, false) => format!("Heat {} too: {follow} in this heat.", joined(&names)),
        (true, true) => format!("{} in the last of these heats.", upper_first(&follow)),
        (true, false) => {
            let long = own.with_next_length(site.plan).map_or_else(String::new, |long| format!(", {long} altogether"));
            format!("In the last of these heats heat {} too{long}: {follow} in it.", joined(&names))
        }
    })
}
