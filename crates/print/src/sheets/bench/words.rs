//! A step in one line, as one smith says it to another: what is done, to which part, to what size, where and with what.

use crate::sheets::steps::in_short::in_short;
use crate::sheets::steps::usual_heat::other_heat;
use crate::sheets::steps::words::{CardWords, card_words};
use fh_core::describe::{segment_name, upper_first};
use fh_core::plan::{Form, Operation, Plan, PlanUnit};
use fh_work::{Measure, Size, Warmth, WorkedStep};

/// How the name of a length begins where a step has several.
const LENGTH_OF: &str = "length of “";

/// How the name of a size ends that is measured on the way.
const FROM_START: &str = " from its start";

/// How much is told below the line of a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Below {
    /// Where the place is, what is to be left, and what was noted: done otherwise, it costs the bar.
    Place,
    /// Sizes as they measure hot as well.
    Hot,
    /// How the bar is laid and struck, and what is checked, as well.
    Ways,
}

/// One step in words.
pub(super) struct StepWords {
    /// Its number.
    pub(super) number: String,
    /// `3`, `4–7`, `cold`, `warm`.
    pub(super) heat: String,
    /// How long a heat is taken; empty where it is done cold or the whole bar is meant.
    pub(super) hot: String,
    /// What is done to which part.
    pub(super) title: String,
    /// The sizes to reach; may be empty.
    pub(super) sizes: String,
    /// Where and with what.
    pub(super) place: String,
    /// What is read besides.
    pub(super) below: String,
    /// Whether there is something to beware of.
    pub(super) is_careful: bool,
}

/// The words of step `number` of some steps, counted from 0.
pub(super) fn step_words(
    plan: &Plan,
    (number, steps): (usize, &[WorkedStep]),
    (below, usual): (Below, Option<&str>),
) -> Option<StepWords> {
    let step = steps.get(number)?;
    let (card, unit) = (card_words(plan, number, step), plan.units.length);
    let before = &steps[..number];
    // In a heat that goes on it is told already.
    let told = goes_on(step, before).is_some_and(|last| last.heat_celsius == step.heat_celsius);
    let other_heat = other_heat(plan, step, usual).filter(|_| !told).map(|heat| upper_first(&heat) + ".");
    let hold = hold_words(plan, step, before);
    let with_next = with_next(plan, (number, steps)).map(|words| bare_in_a_sentence(&words, unit));
    Some(StepWords {
        heat: heat(step.warmth()),
        hot: step.hot_length(plan).map(|(_, length)| length).unwrap_or_default(),
        title: card.title.to_owned(),
        sizes: sizes(plan, step, below > Below::Place),
        place: place(&card, unit),
        below: sentences([other_heat, with_next, hold, Some(besides(unit, step, below))].into_iter().flatten()),
        is_careful: card.caution.is_some(),
        number: card.number,
    })
}

/// The heat in its column, as narrow as it can be: `3`, `3 and 4`, `4–7`, `cold`.
fn heat(warmth: Warmth) -> String {
    match warmth {
        Warmth::Hot { first, last } if first + 1 < last => format!("{first}–{last}"),
        _ => warmth.figures(),
    }
}

/// The last hot step, where a step goes on in its heat.
fn goes_on<'s>(step: &WorkedStep, before: &'s [WorkedStep]) -> Option<&'s WorkedStep> {
    let last = before.iter().rev().find(|other| other.is_hot())?;
    (step.is_hot() && last.heat + last.needs > step.heat).then_some(last)
}

/// Sentences one after the other.
fn sentences(all: impl Iterator<Item = String>) -> String {
    all.map(|words| words.trim().to_owned()).filter(|words| !words.is_empty()).collect::<Vec<_>>().join(" ")
}

/// That a heat serves steps that follow, at the step that begins it: `Heat with 3.`
fn with_next(plan: &Plan, (number, steps): (usize, &[WorkedStep])) -> Option<String> {
    let step = steps.get(number).filter(|step| step.is_hot())?;
    let last = step.heat + step.needs - 1;
    let is_begun = goes_on(step, &steps[..number]).is_some() && step.needs == 1;
    let after = steps.iter().enumerate().skip(number + 1);
    let shared = after.take_while(|(_, next)| !next.is_hot() || next.heat == last).filter(|(_, next)| next.is_hot());
    // The bar is trued in what is left of a heat.
    let shared = shared.filter(|(_, next)| next.bar == step.bar && !next.parts().is_empty());
    let numbers: Vec<String> = shared.map(|(at, _)| (at + 1).to_string()).collect();
    let (end, most) = numbers.split_last().filter(|_| !is_begun)?;
    let numbers = if most.is_empty() { end.clone() } else { format!("{} and {end}", most.join(", ")) };
    Some(match step.with_next_length(plan) {
        Some(long) => format!("Last heat {long} with {numbers}."),
        None if step.needs > 1 => format!("Last heat with {numbers}."),
        None => format!("Heat with {numbers}."),
    })
}

/// What is held, where that is another end or another way than in the last hot step on the bar, or is to be cooled first: `Tongs on
/// “shank”, cooled.`
fn hold_words(plan: &Plan, step: &WorkedStep, before: &[WorkedStep]) -> Option<String> {
    let hold = step.hold?;
    let last = before.iter().rev().filter(|other| other.bar == step.bar).find_map(|other| other.hold);
    let is_cold = !hold.cool_first || goes_on(step, before).is_some_and(|last| last.bar == step.bar);
    if is_cold && last.is_some_and(|last| (last.part, last.by_hand) == (hold.part, hold.by_hand)) {
        return None;
    }
    let name = segment_name(plan.bars.get(step.bar.or(step.held_bar)?)?, hold.part);
    let cooled = hold.cool_words(plan);
    Some(if hold.by_hand {
        format!("Hold “{name}” by hand{cooled}.")
    } else {
        format!("Tongs on “{name}”{cooled}.")
    })
}

/// The sizes to reach, with the word that leads to them: `to 12 square, 120 long`.
fn sizes(plan: &Plan, step: &WorkedStep, with_hot: bool) -> String {
    let unit = plan.units.length;
    let becomes = if is_told_by_its_form(step) { step.becomes.join("; ") } else { String::new() };
    let becomes = bare(&becomes, unit);
    // How long the bar is cut stands over its strip.
    let is_told = |size: &&Size| size.what == "cut length" || is_in(&bare(&size.cold, unit), &becomes);
    let others: Vec<&Size> = step.sizes.iter().filter(|size| !is_told(size)).collect();
    let lengths: Vec<&Size> = others.iter().filter(|size| size.what.starts_with(LENGTH_OF)).copied().collect();
    // Of each part in the order of the title, and so without their names.
    let in_order = lengths.len() > 1 && lengths.len() == step.title.matches('“').count();
    let mut told: Vec<String> = [becomes.clone()].into_iter().filter(|words| !words.is_empty()).collect();
    for size in others {
        match size.what.starts_with(LENGTH_OF) && in_order {
            true if std::ptr::eq(size, lengths[0]) => told.push(lengths_words(&lengths, unit, with_hot)),
            true => {}
            false => told.push(one(size, unit, with_hot)),
        }
    }
    // From where several places are measured is said of the last.
    for at in 1..told.len() {
        if told[at].ends_with(FROM_START) {
            told[at - 1] = told[at - 1].trim_end_matches(FROM_START).to_owned();
        }
    }
    // A head is made on a pin, which keeps its size.
    let form = |at: usize| plan.segment(step.bar?, at).map(|segment| &segment.form);
    let is_pin = step.parts().into_iter().any(|at| matches!(form(at), Some(Form::Rivet(_))));
    let leads_to = !is_pin
        && step.tasks.iter().any(|task| {
            use Operation as O;
            matches!(task.operation, O::Draw | O::Taper | O::Upset | O::Spread | O::Flatten | O::SetDown | O::Trim)
        });
    let told = told.join(", ");
    match told.chars().next() {
        None => told,
        Some(first) if leads_to && (first.is_ascii_digit() || first == 'Ø') => format!("to {told}"),
        Some(_) => format!("· {told}"),
    }
}

/// The lengths of several parts: `55, 12.9 and 12.9 long`.
fn lengths_words(lengths: &[&Size], unit: PlanUnit, with_hot: bool) -> String {
    let listed = |figures: Vec<String>| match figures.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
        None => String::new(),
    };
    let cold = listed(lengths.iter().map(|size| bare(&size.cold, unit)).collect());
    let hot = lengths.iter().map(|size| size.hot.as_ref().map(|hot| bare(hot, unit))).collect::<Option<Vec<_>>>();
    let hot = hot.map(listed).filter(|hot| with_hot && lengths.iter().all(|size| is_told_hot(size)) && *hot != cold);
    format!("{cold} long") + &hot.map_or_else(String::new, |hot| format!(" (hot {hot})"))
}

/// Whether what a step makes is told better by the form than by its sizes: of a bend, which way it turns.
fn is_told_by_its_form(step: &WorkedStep) -> bool {
    step.tasks.iter().any(|task| task.operation.is_bending())
}

/// Whether a figure is told already, and not as a part of another one.
fn is_in(figure: &str, told: &str) -> bool {
    let is_part = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit() || "./".contains(letter));
    told.match_indices(figure).any(|(at, _)| {
        let (before, after) = (told[..at].trim_end(), &told[at + figure.len()..]);
        let is_fraction = after.trim_start().split(' ').next().is_some_and(|word| word.contains('/'));
        !is_part(before.chars().next_back()) && !is_part(after.chars().next().filter(|c| *c != '.')) && !is_fraction
    })
}

/// Only a length of so many mm is told hot as well: of a shorter one nobody reads the difference off hot bar.
const TOLD_HOT_MM: f64 = 150.0;

/// Whether a size is told hot as well.
pub(super) fn is_told_hot(size: &Size) -> bool {
    size.measure == Measure::Length && size.hot.is_some() && size.mm.is_some_and(|mm| mm >= TOLD_HOT_MM)
}

/// One size: `12 square`, `180 long (hot 182)`.
fn one(size: &Size, unit: PlanUnit, with_hot: bool) -> String {
    let cold = bare(&size.cold, unit);
    let hot = size.hot.as_ref().filter(|_| with_hot && is_told_hot(size)).map(|hot| bare(hot, unit));
    let hot = hot.filter(|hot| *hot != cold).map_or_else(String::new, |hot| format!(" (hot {hot})"));
    let [before, after] = around(&bare(&size.what, unit));
    let told = [before.as_str(), &cold, after.as_str()].into_iter().filter(|words| !words.is_empty());
    told.collect::<Vec<_>>().join(" ") + &hot
}

/// What is said before and after the figure of a size.
fn around(what: &str) -> [String; 2] {
    for bound in ["at least", "at most", "about"] {
        if let Some(rest) = what.strip_suffix(bound).and_then(|rest| rest.strip_suffix(", ")) {
            let [before, after] = around_plain(rest);
            // `left in the neck` is told after the figure that it may not go below.
            let after = if after.is_empty() { before } else { format!("{before} {after}").trim().to_owned() };
            return [bound.to_owned(), after];
        }
    }
    around_plain(what)
}

/// The same of a size that is no bound.
fn around_plain(what: &str) -> [String; 2] {
    /// What a smith says after a figure instead of what is measured before it.
    const AFTER: [(&str, &str); 7] = [
        ("cut length", "long"),
        ("length", "long"),
        ("thickness", "thick"),
        ("width", "wide"),
        ("diameter", "round"),
        ("square", "square"),
        ("across flats", "across flats"),
    ];
    let words = |before: &str, after: &str| [before.to_owned(), after.to_owned()];
    match what {
        "scarf" => return words("bevel", "long"),
        "angle, off straight" => return words("", "off straight"),
        "inside diameter" => return words("", "inside"),
        "block, mark to mark" => return words("block", "mark to mark"),
        "block, as it is upset" => return words("block", "as it is upset"),
        "length of the piece, cold" => return words("", "long, cold"),
        _ => {}
    }
    if let Some(rest) = what.strip_prefix("length in all") {
        return words("", &format!("in all{rest}"));
    }
    for (word, said) in AFTER {
        let Some(rest) = what.strip_prefix(word).filter(|rest| rest.is_empty() || rest.starts_with([' ', ','])) else {
            continue;
        };
        return match rest.strip_prefix(" of ") {
            // `width of the edge at its end`: the edge so wide at its end.
            Some(of) => {
                let (of, there) =
                    of.split_once(" at ").map_or((of, String::new()), |(of, at)| (of, format!(" at {at}")));
                words(of.strip_prefix("the ").unwrap_or(of), &format!("{said}{there}"))
            }
            // `square 12.5 mm from its start`.
            None if rest.trim_start().starts_with(|first: char| first.is_ascii_digit()) => {
                words("", &format!("{said} at{rest}"))
            }
            None => words("", &format!("{said}{rest}")),
        };
    }
    words(what, "")
}

/// Where it is done, how the bar lies there, and with what; the hammer goes without saying.
fn place(card: &CardWords<'_>, unit: PlanUnit) -> String {
    let place = std::iter::once(card.place.name().to_owned()).chain(card.lies.clone()).collect::<Vec<_>>().join(", ");
    let tools = card.tools.iter().filter(|tool| **tool != "hammer").map(|tool| tool_words(tool, unit));
    let told = std::iter::once(bare(&place, unit)).filter(|place| !place.is_empty()).chain(tools);
    told.map(|words| format!("· {words}")).collect::<Vec<_>>().join(" ")
}

/// A tool by its name and its size; which way it has that size is told where it is laid out.
fn tool_words(tool: &str, unit: PlanUnit) -> String {
    let (name, rest) = tool.split_once(", ").unwrap_or((tool, ""));
    let size = if rest.starts_with(|first: char| first.is_ascii_digit()) { format!(" {rest}") } else { String::new() };
    bare(&format!("{name}{size}"), unit)
}

/// Where the place is, and what else is told.
fn besides(unit: PlanUnit, step: &WorkedStep, below: Below) -> String {
    let measure =
        step.measure.iter().map(|line| landmark(line, step, unit, below > Below::Place)).collect::<Vec<_>>().join("; ");
    let measure = (!measure.is_empty()).then(|| upper_first(&measure) + ".");
    // What a joint puts together, and where along it.
    let is_joint = step.tasks.iter().any(|task| task.joint.is_some());
    let members = step.becomes.iter().filter(|_| is_joint).map(|words| upper_first(words) + ".");
    let notes = step.aim.iter().chain(&step.leave).chain(&step.step.note).chain(&step.part_notes).cloned();
    // A scarfed bar has no end to measure from: its length is taken before.
    let is_scarfed = step.tasks.iter().any(|task| task.operation == Operation::Scarf);
    let ways = step.lay.iter().filter(|_| below >= Below::Ways).cloned();
    let check = step.check.iter().filter(|_| below >= Below::Ways || is_scarfed).cloned();
    sentences(measure.into_iter().chain(members).chain(notes).chain(ways).chain(check))
}

/// From where a place is measured, without the unit that stands over all sizes.
fn landmark(line: &str, step: &WorkedStep, unit: PlanUnit, with_hot: bool) -> String {
    let line = bare_in_a_sentence(&in_short(line, &step.title), unit);
    if with_hot { line } else { without_hot(&line) }
}

/// The same without what is measured hot, in brackets after what is measured cold.
fn without_hot(words: &str) -> String {
    match words.split_once(" (") {
        Some((before, after)) => match after.split_once(" hot)") {
            Some((_, rest)) => before.to_owned() + &without_hot(rest),
            None => words.to_owned(),
        },
        None => words.to_owned(),
    }
}

/// Sizes without the unit that stands over all of them, a whole number of it without its tenth.
pub(super) fn bare(words: &str, unit: PlanUnit) -> String {
    without_units(words, unit, |tail| !tail.starts_with(char::is_alphanumeric))
}

/// The same in a sentence, where `in` may be no unit.
fn bare_in_a_sentence(words: &str, unit: PlanUnit) -> String {
    let ends = |tail: &str| {
        tail.is_empty()
            || tail.starts_with([',', ';', ')'])
            || tail.starts_with(" from")
            || tail.starts_with(" hot")
            || tail.starts_with(" (")
    };
    without_units(words, unit, |tail| {
        if unit == PlanUnit::Inch { ends(tail) } else { !tail.starts_with(char::is_alphanumeric) }
    })
}

fn without_units(words: &str, unit: PlanUnit, ends: impl Fn(&str) -> bool) -> String {
    let mark = match unit {
        PlanUnit::Millimeter => " mm",
        PlanUnit::Inch => " in",
    };
    let mut out = String::new();
    let mut rest = words;
    while let Some(at) = rest.find(mark) {
        let (before, after) = rest.split_at(at);
        let tail = &after[mark.len()..];
        let is_unit = before.ends_with(|c: char| c.is_ascii_digit()) && ends(tail);
        out.push_str(if is_unit { before.strip_suffix(".0").unwrap_or(before) } else { before });
        out.push_str(if is_unit { "" } else { mark });
        rest = tail;
    }
    out + rest
}

#[cfg(test)]
mod tests {
    use super::*;

    fn size(what: &str, cold: &str, hot: Option<&str>, measure: Measure) -> Size {
        Size {
            measure,
            what: what.to_owned(),
            cold: cold.to_owned(),
            hot: hot.map(str::to_owned),
            tolerance: None,
            follows: None,
            mm: cold.split(' ').next().and_then(|figure| figure.parse().ok()),
            tolerance_mm: 0.0,
            between_mm: None,
        }
    }

    fn said(what: &str, cold: &str, hot: Option<&str>, measure: Measure) -> String {
        one(&size(what, cold, hot, measure), PlanUnit::Millimeter, true)
    }

    #[test]
    fn a_length_that_is_measured_cold_asks_for_no_word_on_heat() {
        assert!(!is_told_hot(&size("length", "352 mm", None, Measure::Length)));
        assert!(is_told_hot(&size("length", "352 mm", Some("357 mm"), Measure::Length)));
    }

    #[test]
    fn sizes_are_told_as_a_smith_tells_them() {
        assert_eq!(said("square", "12.0 mm", Some("12.2 mm"), Measure::Across), "12 square");
        assert_eq!(said("length", "180.0 mm", Some("182 mm"), Measure::Length), "180 long (hot 182)");
        assert_eq!(said("length", "120.0 mm", Some("122 mm"), Measure::Length), "120 long");
        assert_eq!(said("length of “arm”", "55 mm", None, Measure::Length), "“arm” 55 long");
        assert_eq!(said("thickness at the tip", "2 mm", None, Measure::Thickness), "2 thick at the tip");
        assert_eq!(said("width, about", "30 mm", None, Measure::Width), "about 30 wide");
        assert_eq!(
            said("square 12.5 mm from its start", "3.3 mm", None, Measure::Across),
            "3.3 square at 12.5 from its start"
        );
        assert_eq!(said("diameter at its end", "9.5 mm", None, Measure::Across), "9.5 round at its end");
        assert_eq!(said("left in the neck, at least", "7 mm", None, Measure::Neck), "at least 7 left in the neck");
        assert_eq!(
            said("thickness over the swelling, at least", "19.0 mm", None, Measure::Swelling),
            "at least 19 thick over the swelling"
        );
        assert_eq!(said("width of the hole", "7 mm", None, Measure::Other), "hole 7 wide");
        assert_eq!(said("width of the edge at its end", "40 mm", None, Measure::Other), "edge 40 wide at its end");
        assert_eq!(said("block, mark to mark", "27 mm", None, Measure::Other), "block 27 mark to mark");
        assert_eq!(
            said("length in all, with “tip”", "190.5 mm", Some("193 mm"), Measure::Length),
            "190.5 in all, with “tip” (hot 193)"
        );
    }

    #[test]
    fn the_unit_of_all_sizes_is_left_out_and_another_one_stays() {
        assert_eq!(bare("34.0 mm × 26 mm, 1/4 in thick", PlanUnit::Millimeter), "34 × 26, 1/4 in thick");
        assert_eq!(bare("1 3/4 in × 7/8 in, lying in the swage", PlanUnit::Inch), "1 3/4 × 7/8, lying in the swage");
    }

    #[test]
    fn a_tool_is_named_with_its_size_alone() {
        let said = |tool: &str| tool_words(tool, PlanUnit::Inch);
        assert_eq!(said("fuller, 1/4 in"), "fuller 1/4");
        assert_eq!(said("mandrel 1 1/4 in, or the horn"), "mandrel 1 1/4");
        assert_eq!(said("set hammer, no longer than 1 3/16 in"), "set hammer");
    }

    #[test]
    fn in_a_sentence_only_what_is_a_unit_goes() {
        let said = |words: &str| bare_in_a_sentence(words, PlanUnit::Inch);
        assert_eq!(
            said("mark 2, now about 1 9/64 in (1 5/32 in hot) from the leaf end"),
            "mark 2, now about 1 9/64 (1 5/32 hot) from the leaf end"
        );
        assert_eq!(without_hot("end: 42.2 (42.8 hot) from mark 2 (punched)"), "end: 42.2 from mark 2 (punched)");
        assert_eq!(said("the root of slit 2 in the bar"), "the root of slit 2 in the bar");
        assert_eq!(
            bare_in_a_sentence("12.0 mm (12.2 mm hot) from the step", PlanUnit::Millimeter),
            "12 (12.2 hot) from the step"
        );
    }

    #[test]
    fn a_figure_that_is_part_of_another_one_is_not_told_yet() {
        let told = "curve 60°, inside radius 5/16, downward";
        assert!(is_in("60°", told) && is_in("5/16", told));
        assert!(!is_in("0°", told) && !is_in("6", "1 6/8") && !is_in("1", "1 5/16 long") && !is_in("5", "12.5 wide"));
    }
}
