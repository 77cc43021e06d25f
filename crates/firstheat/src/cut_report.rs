//! A cut list in words and as JSON.

use crate::table::{Side, lined_up};
use fh_measure::counted;
use fh_rack::cut::{Answer, BarCut, Goal, LeftOver};
use fh_rack::lengths::Lengths;
use serde::Serialize;
use serde_json::{Map, Value};

/// A cut list for other programs. Lengths in mm, prices in whole money.
#[derive(Serialize)]
pub(crate) struct CutReport {
    feasible: bool,
    /// What was to be least, and what it comes to.
    objective_values: Map<String, Value>,
    /// The same, in the order in which it was asked.
    #[serde(skip)]
    goals: Vec<(Goal, f64)>,
    groups: [Group; 1],
    left: Vec<Left>,
}

#[derive(Serialize)]
struct Group {
    section: Option<String>,
    bars_used: i64,
    new_bars: u64,
    cost: f64,
    scrap_mm: f64,
    longest_offcut_mm: f64,
    /// No plan has less of the first objective; absent where that has no bound.
    lower_bound: Option<f64>,
    /// Whether no plan is better, by all that was asked.
    proven: bool,
    bars: Vec<Bar>,
}

#[derive(Serialize)]
struct Bar {
    length_mm: f64,
    section: Option<String>,
    from: &'static str,
    times: u64,
    cuts: Vec<Cut>,
    offcut_mm: f64,
}

#[derive(Clone, Serialize)]
struct Cut {
    piece: String,
    length_mm: f64,
}

#[derive(Serialize)]
struct Left {
    piece: String,
    count: u64,
    #[serde(skip_serializing_if = "Option::is_none")]
    too_long_mm: Option<f64>,
}

fn mm(nm: i64) -> f64 {
    nm as f64 / 1e6
}

fn money(hundredths: i64) -> f64 {
    hundredths as f64 / 100.0
}

impl CutReport {
    /// The report of an answer.
    pub(crate) fn new(lengths: &Lengths, answer: &Answer) -> Self {
        let problem = &lengths.problem;
        let worth = &answer.worth;
        let figure = |goal: &Goal| match goal {
            Goal::Bars => worth.bars as f64,
            Goal::Length => mm(worth.length_nm),
            Goal::Cost => money(worth.cost),
            Goal::Scrap => mm(worth.scrap_nm),
            Goal::Longest => mm(worth.longest_nm),
        };
        let goals: Vec<(Goal, f64)> = problem.goals.iter().map(|goal| (*goal, figure(goal))).collect();
        let first = answer.bound.first;
        let lower_bound = match problem.goals.first() {
            Some(Goal::Bars) => Some(first as f64),
            Some(Goal::Length) => Some(mm(first)),
            Some(Goal::Cost) => Some(money(first)),
            _ => None,
        };
        let is_bought = |bar: &&BarCut| problem.supplies[bar.supply].count.is_none();
        let mut sections = problem.supplies.iter().map(|supply| supply.section.as_str());
        let first_section = sections.next().unwrap_or_default();
        let group = Group {
            section: sections.all(|section| section == first_section).then(|| named(first_section)).flatten(),
            bars_used: worth.bars,
            new_bars: answer.bars.iter().filter(is_bought).map(|bar| bar.times).sum(),
            cost: money(worth.cost),
            scrap_mm: mm(worth.scrap_nm),
            longest_offcut_mm: mm(worth.longest_nm),
            lower_bound,
            proven: answer.left.is_empty() && answer.bound.proven == problem.goals.len(),
            bars: answer.bars.iter().map(|cut| bar(lengths, cut)).collect(),
        };
        Self {
            feasible: answer.left.is_empty(),
            objective_values: goals.iter().map(|(goal, value)| (key(*goal).to_owned(), (*value).into())).collect(),
            goals,
            groups: [group],
            left: answer.left.iter().map(|over| left(lengths, over)).collect(),
        }
    }
}

/// What a goal is called in the report.
fn key(goal: Goal) -> &'static str {
    match goal {
        Goal::Bars => "bars",
        Goal::Length => "length",
        Goal::Cost => "cost",
        Goal::Scrap => "scrap",
        Goal::Longest => "longest",
    }
}

fn named(section: &str) -> Option<String> {
    (!section.is_empty()).then(|| section.to_owned())
}

/// The name of a piece, or its number in the list, from 1.
fn piece(lengths: &Lengths, demand: usize) -> String {
    lengths.names.get(demand).cloned().flatten().unwrap_or_else(|| (demand + 1).to_string())
}

fn bar(lengths: &Lengths, cut: &BarCut) -> Bar {
    let supply = &lengths.problem.supplies[cut.supply];
    let cuts = cut.cuts.iter().flat_map(|&(demand, count)| {
        let ways = lengths.problem.demands[demand].ways.iter().filter(|way| way.section == supply.section);
        let length = ways.min_by_key(|way| (way.extra, way.length_nm)).map_or(0, |way| way.length_nm);
        let cut = Cut { piece: piece(lengths, demand), length_mm: mm(length) };
        std::iter::repeat_n(cut, usize::try_from(count).unwrap_or(0))
    });
    Bar {
        length_mm: mm(supply.length_nm),
        section: named(&supply.section),
        from: if supply.count.is_some() { "rack" } else { "new" },
        times: cut.times,
        cuts: cuts.collect(),
        offcut_mm: mm(cut.offcut_nm),
    }
}

fn left(lengths: &Lengths, over: &LeftOver) -> Left {
    Left { piece: piece(lengths, over.demand), count: over.count, too_long_mm: over.too_long_nm.map(mm) }
}

/// The report as a smith reads it: bar after bar, what is left, and how good it is known to be.
pub(crate) fn words(report: &CutReport) -> String {
    let [group] = &report.groups;
    let heads = ["bars", "length", "from", "cuts", "offcut"].map(str::to_owned).to_vec();
    let rows = group.bars.iter().map(|bar| {
        let length = format!("{} mm", bar.length_mm);
        vec![bar.times.to_string(), length, from(bar), cuts(&bar.cuts), format!("{} mm", bar.offcut_mm)]
    });
    let rows: Vec<Vec<String>> = std::iter::once(heads).chain(rows).collect();
    let mut text = lined_up(&[Side::Right, Side::Right, Side::Left, Side::Left, Side::Right], &rows);
    text.push('\n');
    for over in &report.left {
        let why =
            over.too_long_mm.map_or("there are no more bars".to_owned(), |mm| format!("{mm} mm too long for any bar"));
        text.push_str(&format!("Not cut: {} × piece {}: {why}.\n", over.count, over.piece));
    }
    text.push_str(&known(report, group));
    text
}

fn from(bar: &Bar) -> String {
    bar.section.as_ref().map_or(bar.from.to_owned(), |section| format!("{}, {section}", bar.from))
}

/// `3 × 580 + 1 × 700`.
fn cuts(cuts: &[Cut]) -> String {
    let mut lots: Vec<(f64, usize)> = Vec::new();
    for cut in cuts {
        match lots.last_mut().filter(|(length, _)| *length == cut.length_mm) {
            Some((_, count)) => *count += 1,
            None => lots.push((cut.length_mm, 1)),
        }
    }
    lots.iter().map(|(length, count)| format!("{count} × {length}")).collect::<Vec<_>>().join(" + ")
}

/// What was asked for, and how good the list is known to be.
fn known(report: &CutReport, group: &Group) -> String {
    let value = |(goal, value): &(Goal, f64)| match goal {
        Goal::Bars => counted(group.bars_used, "bar"),
        Goal::Length => format!("{value} mm of bar"),
        Goal::Cost => format!("cost {value:.2}"),
        Goal::Scrap => format!("scrap {value} mm"),
        Goal::Longest => format!("longest offcut {value} mm"),
    };
    let values = report.goals.iter().map(value).collect::<Vec<_>>().join(", ");
    let sure = match (group.proven, group.lower_bound) {
        (true, _) => "no list is better".to_owned(),
        (false, Some(bound)) if bound > 0.0 => format!("no list has less than {bound} of the first"),
        _ => "there may be a better list".to_owned(),
    };
    format!("{values}: {sure}.\n")
}
