//! The heat to work at, and tools and gauges to lay ready, in a few lines.

use super::runs::{Run, runs_block};
use super::words::bare;
use crate::sheets::flow::Block;
use crate::sheets::steps::Job;
use crate::sheets::steps::usual_heat::usual_heat;
use crate::sheets::type_sizes::BELOW_STEP;
use fh_core::plan::{AnvilPlace, PlanUnit};

/// The heat, the tools and the gauges, each kind after its word; nothing where none is asked for.
pub(super) fn ready(job: &Job<'_>, width: f64) -> Block {
    let (worked, unit) = (job.worked, job.plan.units.length);
    let [notches, calipered] = [false, true].map(|caliper| {
        let gauges = worked.gauges.iter().filter(|gauge| gauge.caliper == caliper);
        named(gauges.map(|gauge| ("", bare(&gauge.words, unit))))
    });
    let at = |place: AnvilPlace| worked.steps.iter().any(|step| step.place == place);
    let places = [(AnvilPlace::SwageBlock, "swage block"), (AnvilPlace::Vice, "vice")];
    let places = places.into_iter().filter(|(place, _)| at(*place)).map(|(_, words)| (words, String::new()));
    let tools = named(worked.tools.iter().map(|tool| tool_words(&tool.words, unit)).chain(places));
    let lists = [
        ("Fire:", usual_heat(job.plan, &worked.steps).unwrap_or_default()),
        ("Have ready:", tools),
        ("Gauges:", notches),
        ("Caliper:", calipered),
    ];
    let lists = lists.into_iter().filter(|(_, words)| !words.is_empty());
    let runs = lists.flat_map(|(head, words)| [Run::bold(head), Run::plain(&(words + "."))]);
    runs_block(&runs.collect::<Vec<_>>(), BELOW_STEP, width, 0.0)
}

/// A tool by its name, and its size: `swage`, `13.2`. Which way it has that size is told on the cards.
fn tool_words(words: &str, unit: PlanUnit) -> (&str, String) {
    let words = words.split(", or ").next().unwrap_or(words);
    match words.find(|letter: char| letter.is_ascii_digit()) {
        Some(digit) => {
            let name = words[..digit].split(", ").next().unwrap_or_default().trim();
            (name, bare(&words[digit..], unit))
        }
        None => (words.split(", ").next().unwrap_or(words), String::new()),
    }
}

/// Each name once, with its sizes: `hammer, swage 8.1 and 9.1`.
fn named<'a>(all: impl Iterator<Item = (&'a str, String)>) -> String {
    let mut told: Vec<(&str, Vec<String>)> = Vec::new();
    for (name, size) in all {
        match told.iter_mut().find(|(known, _)| *known == name) {
            Some((_, sizes)) if sizes.contains(&size) => {}
            Some((_, sizes)) => sizes.push(size),
            None => told.push((name, vec![size])),
        }
    }
    let one = |(name, sizes): &(&str, Vec<String>)| {
        let sizes = sizes.iter().filter(|size| !size.is_empty()).cloned().collect::<Vec<_>>().join(" and ");
        format!("{name} {sizes}").trim().to_owned()
    };
    if let [("", sizes)] = &told[..] {
        return sizes.join(" · ");
    }
    told.iter().map(one).collect::<Vec<_>>().join(" · ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tools_of_one_name_are_told_together() {
        let tools = [
            "hammer",
            "swage, groove for 8.1 mm",
            "mandrel 26.0 mm, or the horn",
            "mandrel, 26.0 mm",
            "swage, half-round groove for 9.0 mm",
        ];
        let told = named(tools.iter().map(|tool| tool_words(tool, PlanUnit::Millimeter)));
        assert_eq!(told, "hammer · swage 8.1 and 9 · mandrel 26");
        assert_eq!(named(["3/8", "1/4"].iter().map(|size| ("", (*size).to_owned()))), "3/8 · 1/4");
    }
}
