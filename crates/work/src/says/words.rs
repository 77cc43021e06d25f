//! Steps in words: what they are called, and the lengths in them.

use crate::fire::hot::hot_mm;
use crate::job::kind::is_slit_first;
use crate::job::part::met;
use crate::job::site::{Part, Site};
use crate::job::task::Task;
use fh_core::describe::{Face, lower_first, short_name, upper_first};
use fh_core::forms;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::{DieKind, Form, Member, Operation, Plan, PlanUnit, SocketAxis};
use fh_measure::{Rounding, counted, format_decimal, format_length};

/// A length that has to be hot, in words: as fine as the marks.
pub(crate) fn hot_length(plan: &Plan, mm: f64) -> String {
    format_length(mm.max(0.0), plan.units.length.length_unit(), plan.units.marks)
}

/// How many heats, in words. More than anyone counts are a size gone wrong, and need no figure.
pub(crate) fn heats_words(heats: usize) -> String {
    const MOST: usize = 500;
    match heats {
        0..=MOST => counted(heats, "heat"),
        _ => format!("more than {MOST} heats"),
    }
}

/// How many heats at least and at most, in words: `6 to 8 heats`.
pub(crate) fn heats_between_words([low, high]: [usize; 2]) -> String {
    let most = heats_words(high);
    if low == high || most.starts_with("more") { most } else { format!("{low} to {most}") }
}

/// As fine as it is forged, in the plan's unit.
pub(crate) fn finest(plan: &Plan) -> Rounding {
    plan.units.length.finest()
}

/// A length in mm in the plan's unit, as fine as it is forged.
pub(crate) fn length_words(plan: &Plan, mm: f64) -> String {
    format_length(mm, plan.units.length.length_unit(), finest(plan))
}

/// Two lengths in mm in the plan's unit, with as many figures as it takes for them to read differently.
pub(crate) fn apart(plan: &Plan, lengths: [f64; 2]) -> [String; 2] {
    let words = lengths.map(|mm| length_words(plan, mm));
    if words[0] != words[1] {
        return words;
    }
    let unit = plan.units.length.length_unit();
    fh_core::findings::apart(lengths, 2, |mm, decimals| format_decimal(mm, unit, decimals))
}

/// A length as it stands on the hot bar, as fine as it can be read there; none for a metal whose growth is not known.
pub(crate) fn hot_words(plan: &Plan, mm: f64) -> Option<String> {
    hot_mm(plan, mm).map(|hot| read_hot(plan, hot.likely))
}

/// A length of the hot bar in the plan's unit, as fine as anyone reads it off in the seconds that there are: common practice, no
/// source.
fn read_hot(plan: &Plan, mm: f64) -> String {
    /// Up to so many mm it is taken with a gauge or a caliper, beyond with dividers, then with a rule.
    const GAUGED_MM: f64 = 20.0;
    const DIVIDED_MM: f64 = 100.0;
    let rounding = match plan.units.length {
        _ if mm.abs() < GAUGED_MM => finest(plan),
        PlanUnit::Inch if mm.abs() < DIVIDED_MM => Rounding::THIRTY_SECOND_INCH,
        PlanUnit::Inch => Rounding::SIXTEENTH_INCH,
        PlanUnit::Millimeter if mm.abs() < DIVIDED_MM => Rounding::HALF_MILLIMETER,
        PlanUnit::Millimeter => Rounding::MILLIMETER,
    };
    format_length(mm, plan.units.length.length_unit(), rounding)
}

/// A length as it stands while only so many mm of it are hot; none where that reads no longer, or for a metal whose growth is not
/// known.
pub(crate) fn partly_hot_words(plan: &Plan, mm: f64, of_it_hot_mm: f64) -> Option<String> {
    let grown = hot_mm(plan, of_it_hot_mm)?.likely - of_it_hot_mm;
    Some(read_hot(plan, mm + grown)).filter(|hot| *hot != read_hot(plan, mm))
}

/// What a step that does some tasks is called.
pub(crate) fn title(plan: &Plan, site: Option<&Site<'_>>, tasks: &[Task]) -> String {
    let mut parts: Vec<String> = Vec::new();
    let mut rest = tasks;
    while let Some(first) = rest.first() {
        let count =
            rest.iter().take_while(|task| task.operation == first.operation && task.joint == first.joint).count();
        let (own, after) = rest.split_at(count.max(1));
        let words = deed(plan, site, own);
        parts.push(if parts.is_empty() { words } else { lower_first(&words) });
        rest = after;
    }
    if parts.is_empty() { "A step of your own".to_owned() } else { parts.join(", then ") }
}

/// One deed: tasks of one operation.
fn deed(plan: &Plan, site: Option<&Site<'_>>, tasks: &[Task]) -> String {
    let Some(first) = tasks.first() else { return String::new() };
    if let Some(joint) = first.joint {
        let name = plan.joints.get(joint).map_or_else(|| format!("joint {}", joint + 1), |it| it.title(joint));
        return format!("{} “{name}”", if first.operation == Operation::Weld { "Weld" } else { "Fit" });
    }
    let Some((site, part)) = site.and_then(|site| Some((site, site.part(first.part?)?))) else {
        return whole_bar(site, first.operation);
    };
    let parts = tasks.iter().filter_map(|task| task.part);
    let mut names: Vec<String> = parts.map(|at| format!("“{}”", site.name(at))).collect();
    if first.operation == Operation::Scarf {
        // Of two ends that meet both are scarfed.
        names.extend(met(site, part).map(|other| format!("the end of “{}”", short_name(other))));
    }
    let to = on_the_way_to(site, part, first).unwrap_or_default();
    let verb = verb(site, part, first);
    let verb = if names.len() > 1 { verb.replace("the boss", "the bosses") } else { verb.to_owned() };
    format!("{verb} {}{to}", joined(&names))
}

/// To what a part is drawn on the way to its finished shape, as its name is followed by it.
fn on_the_way_to(site: &Site<'_>, part: Part<'_>, task: &Task) -> Option<String> {
    let Form::Drawn(forms::Drawn { section, .. }) = &part.segment.form else { return None };
    let is_drawn = matches!(task.operation, Operation::Draw | Operation::Upset | Operation::Spread);
    // Where the shape stands for the finished one, its sizes are those.
    let is_first = site.begun(part.at).is_some_and(|begun| !begun.is_finished_form);
    (task.to.is_some() && is_first && is_drawn).then(|| format!(", first to {}", section.describe()))
}

/// What a task does to its part, as a verb with what belongs to it.
fn verb(site: &Site<'_>, part: Part<'_>, task: &Task) -> &'static str {
    use Operation as O;
    let form = &part.segment.form;
    match task.operation {
        O::SetDown if matches!(form, Form::Peak(_)) => "Set down both sides of",
        O::SetDown => "Set down",
        O::Isolate => "Neck off",
        O::Draw if matches!(form, Form::Ball(_)) => "Round up",
        O::Draw if matches!(form, Form::Cube(_)) => "Square up",
        O::Draw => "Draw out",
        O::Taper => "Taper",
        O::Upset if matches!(form, Form::Rivet(_)) => "Head",
        O::Upset => "Upset",
        O::Spread => "Spread",
        O::Flatten => "Flatten the boss",
        O::Open => "Open",
        O::Bend => "Bend",
        O::Corner => "Forge the corner",
        O::Roll if rolls_across(part) => "Roll up",
        O::Roll => "Roll",
        O::Twist => "Twist",
        O::Scarf => "Scarf",
        O::Weld => "Weld at",
        O::Dress => in_dies(part),
        O::DressEdges => "Dress the edges of",
        O::Stamp => "Mark out",
        O::Brush => "Brush",
        O::Wax => "Wax",
        O::Check => "Check",
        O::Normalise => "Normalise",
        O::Mark => "Mark",
        O::Fit => "Fit",
        O::Own => "Your own work on",
        O::Split | O::Punch | O::Drift | O::Drill | O::Trim | O::PartOff => cut(site, part, task.operation),
        O::BendAside | O::Straighten => branches(site, part, task.operation),
    }
}

/// What is done to a part in dies, as a verb: by the die where all are of one kind.
fn in_dies(part: Part<'_>) -> &'static str {
    let mut kinds = part.segment.dressed.iter().map(|dressed| dressed.die.kind());
    let first = kinds.next();
    match first.filter(|first| kinds.all(|kind| kind == *first)) {
        Some(DieKind::Fuller | DieKind::FullerAcross) => "Fuller",
        Some(DieKind::Swage) => "Swage a side of",
        Some(DieKind::VBlock) => "Dress the keel of",
        None => "Dress",
    }
}

/// How a part is cut or pierced, as a verb.
fn cut(site: &Site<'_>, part: Part<'_>, operation: Operation) -> &'static str {
    use Operation as O;
    let form = &part.segment.form;
    let is_split = matches!(form, Form::Split(_));
    let is_drilled = crate::job::part::is_drilled(site, part);
    match operation {
        O::Split => "Split",
        O::Punch if is_split && is_drilled => "Drill the root of the slit in",
        O::Punch if is_drilled => "Drill",
        O::Punch if is_split => "Punch the root of the slit in",
        O::Punch if is_slit_first(form) => "Slit",
        O::Punch => "Punch",
        O::Drift => "Drift",
        O::Drill => "Drill",
        O::Trim if crate::job::part::is_sawn(site, part) => "Saw off",
        O::Trim if matches!(form, Form::Trim(_)) => "Cut off",
        O::Trim if matches!(form, Form::Flag(_)) => "Trim",
        O::Trim => "File the end of",
        _ => "Cut off",
    }
}

/// How the branches of a slit are laid apart and together, or a part straightened, as a verb.
fn branches(site: &Site<'_>, part: Part<'_>, operation: Operation) -> &'static str {
    let is_split = matches!(part.segment.form, Form::Split(_));
    if is_split && site.has_leaving_branch(part.at) {
        return if operation == Operation::BendAside {
            "Bend out the free branch of"
        } else {
            "Bring back the free branch of"
        };
    }
    match (operation, site.is_closed_slit(part.at)) {
        (Operation::BendAside, true) => "Wedge open the slit in",
        (Operation::BendAside, false) => "Bend apart the branches of",
        (_, true) => "Lay together the branches of",
        _ if is_split => "Bring back the branches of",
        _ => "Straighten",
    }
}

/// Whether a flag is rolled up about an axis across the bar.
fn rolls_across(part: Part<'_>) -> bool {
    matches!(part.balance.bent, Some(Bent::Socket { axis: SocketAxis::Across, .. }))
}

fn whole_bar(site: Option<&Site<'_>>, operation: Operation) -> String {
    let bar = site.map_or("", |site| site.bar.name.trim());
    let bar = if bar.is_empty() { "the bar".to_owned() } else { format!("“{bar}”") };
    let is_cut = site.is_some_and(|site| site.bar.length.is_some());
    match operation {
        Operation::Mark if is_cut => format!("Mark {bar}"),
        Operation::Mark if site.is_some_and(|site| site.flat.len() < 2) => format!("Cut {bar} to length"),
        Operation::Mark => format!("Cut {bar} to length, and mark it"),
        Operation::Straighten => format!("Straighten and measure {bar}"),
        Operation::Check => format!("Check {bar} against the plan"),
        Operation::Brush => "Brush the whole piece".to_owned(),
        Operation::Wax => "Wax the whole piece".to_owned(),
        Operation::DressEdges => format!("Dress the edges of {bar}"),
        other => {
            format!("{} {bar}", upper_first(other.name()))
        }
    }
}

/// Which side of the bar is up, in words: `top`, `near side`.
pub(crate) fn side_up(degrees: f64) -> String {
    Face::at(degrees).name()
}

/// The sentences of a text. A full stop within a name ends none.
pub(crate) fn sentences(text: &str) -> Vec<&str> {
    let (mut all, mut start, mut in_name, mut after_stop) = (Vec::new(), 0, false, false);
    for (at, letter) in text.char_indices() {
        match letter {
            '“' => in_name = true,
            '”' => in_name = false,
            ' ' if after_stop && !in_name => {
                all.push(text[start..at].trim());
                start = at;
            }
            _ => {}
        }
        after_stop = letter == '.';
    }
    all.push(text[start..].trim());
    all.retain(|sentence| !sentence.is_empty());
    all
}

/// Words, each once.
pub(crate) fn distinct(all: impl Iterator<Item = String>) -> Vec<String> {
    let mut list: Vec<String> = Vec::new();
    for words in all {
        if !list.contains(&words) {
            list.push(words);
        }
    }
    list
}

/// A member of a joint, and where on it where that is written: `“leg” of upright, 15 in from its end nearer the foot`.
pub(crate) fn member(plan: &Plan, member: &Member) -> String {
    let name = format!("“{}” of {}", member.segment, member.bar);
    let bar = plan.bars.iter().find(|bar| bar.name == member.bar);
    match member.at.as_ref().zip(bar) {
        Some((at, bar)) => format!("{name}, {} from its end nearer the {}", at.text(), bar.datum_name()),
        None => name,
    }
}

/// Names in a row: `“a”, “b” and “c”`.
pub(crate) fn joined(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// What a part becomes by an operation, in the plan's own words.
pub(crate) fn becomes(site: &Site<'_>, task: &Task) -> Option<String> {
    let part = task.part.and_then(|at| site.part(at))?;
    if task.operation.is_bending() || task.operation == Operation::Twist {
        return fh_core::describe::bend_words(part.segment, &part.balance.derived);
    }
    let forged = task.operation.is_shaping()
        || matches!(task.operation, Operation::SetDown | Operation::Split | Operation::Punch | Operation::Drift);
    let is_twice = matches!(part.balance.shape, Some(Shape::Split(_))) && task.operation != Operation::Split;
    let words = || {
        let made = fh_core::describe::made_words(part.segment, part.balance, site.plan.units.length);
        match made.section {
            // What is gathered is not drawn.
            Some(section) if task.operation == Operation::Upset => format!("upset to {section}"),
            _ => made.form,
        }
    };
    (forged && !is_twice).then(words)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_full_stop_within_a_name_ends_no_sentence() {
        let text = "Lay “no. 1” on the face. Turn “St. John” over, 2.5 mm off. Stop.";
        let all = ["Lay “no. 1” on the face.", "Turn “St. John” over, 2.5 mm off.", "Stop."];
        assert_eq!(sentences(text), all);
        assert!(sentences(" ").is_empty());
    }
}
