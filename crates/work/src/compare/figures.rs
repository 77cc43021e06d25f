//! Figures of two plans: heats and minutes, and findings that only one has.

use super::{ComparedLine, Version};
use fh_core::findings::{Finding, Severity};
use fh_core::plan::PlanUnit;
use uom::si::f64::Mass;
use uom::si::mass::{gram, kilogram, pound};

/// A line of two texts, and by how much they differ.
pub(super) fn line(what: impl Into<String>, [first, second]: [Option<String>; 2], by: Option<String>) -> ComparedLine {
    let by = by.filter(|_| first != second);
    ComparedLine { what: what.into(), first, second, by }
}

/// More with a plus, less with a true minus.
pub(super) fn signed(by: f64, words: impl Fn(f64) -> String) -> String {
    let sign = if by < 0.0 { "−" } else { "+" };
    format!("{sign} {}", words(by.abs()))
}

/// A mass with three digits that matter.
pub(super) fn mass_words(mass: Mass, unit: PlanUnit) -> String {
    let three = |value: f64| {
        let whole = if value < 1.0 { 0 } else { value.log10() as usize + 1 };
        format!("{value:.*}", 3_usize.saturating_sub(whole))
    };
    match unit {
        PlanUnit::Inch => format!("{} lb", three(mass.get::<pound>())),
        PlanUnit::Millimeter if mass.get::<kilogram>() < 1.0 => format!("{} g", three(mass.get::<gram>())),
        PlanUnit::Millimeter => format!("{} kg", three(mass.get::<kilogram>())),
    }
}

/// Heats, steps and minutes of all pieces.
pub(super) fn heats(first: Version<'_>, second: Version<'_>) -> Vec<ComparedLine> {
    let both = [first, second];
    let counted = |what: &str, count: &dyn Fn(Version<'_>) -> usize| {
        let [a, b] = both.map(count);
        let by = signed(b as f64 - a as f64, |by| format!("{by:.0}"));
        line(what, [a, b].map(|count| Some(count.to_string())), Some(by))
    };
    let minutes = both.map(|version| version.worked.steps.iter().map(|step| step.minutes).sum::<f64>().round());
    let by = signed(minutes[1] - minutes[0], |by| format!("{by:.0} min"));
    let are_many = both.iter().any(|version| version.worked.heats_of_all != version.worked.heats);
    let all = are_many.then(|| counted("heats for all pieces", &|version| version.worked.heats_of_all));
    let one = counted("heats", &|version| version.worked.heats);
    let steps = counted("steps", &|version| version.worked.steps.len());
    let work =
        line("work at the fire, for one of each bar", minutes.map(|min| Some(format!("{min:.0} min"))), Some(by));
    [Some(one), all, Some(steps), Some(work)].into_iter().flatten().collect()
}

/// What is found of only one of them, notes left out.
pub(super) fn findings(first: Version<'_>, second: Version<'_>) -> Vec<ComparedLine> {
    let weighty = |version: Version<'_>| {
        let all = version.balance.findings.iter().filter(|finding| finding.severity > Severity::Note);
        all.cloned().collect::<Vec<Finding>>()
    };
    let [a, b] = [first, second].map(weighty);
    let has = |all: &[Finding], one: &Finding| {
        all.iter().any(|other| (other.id, &other.message, other.place) == (one.id, &one.message, one.place))
    };
    let told = |finding: &Finding| Some(finding.message.clone());
    let gone = a.iter().filter(|one| !has(&b, one)).map(|one| line("only in the first", [told(one), None], None));
    let new = b.iter().filter(|one| !has(&a, one)).map(|one| line("only in the second", [None, told(one)], None));
    gone.chain(new).collect()
}
