//! Two plans, or two versions of one, side by side: what differs in metal, in marks, in parts and in heats.

mod align;
mod figures;
mod marks;
mod metal;
mod parts;

use crate::Worked;
use align::{Pair, align};
use fh_core::balance::Balance;
use fh_core::plan::{Bar, Plan};

/// A plan with what follows from it.
#[derive(Clone, Copy, Debug)]
pub struct Version<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// Its balance.
    pub balance: &'a Balance,
    /// Its order of work.
    pub worked: &'a Worked,
}

/// What is held against each other, under one head.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ComparedGroup {
    /// Its head: `Metal`.
    pub title: String,
    /// Its lines.
    pub lines: Vec<ComparedLine>,
}

/// One thing in both plans.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ComparedLine {
    /// What it is: `hook: to cut`.
    pub what: String,
    /// What it is in the first plan; none where it has none.
    pub first: Option<String>,
    /// What it is in the second.
    pub second: Option<String>,
    /// By how much the second is more or less, where that is a figure.
    pub by: Option<String>,
}

impl ComparedLine {
    /// Whether the two plans differ in it.
    pub fn differs(&self) -> bool {
        self.first != self.second
    }
}

/// Holds the second plan against the first: metal, marks, parts, heats and the findings that only one of them has. Lines that
/// are the same in both stand there too.
pub fn compare(first: Version<'_>, second: Version<'_>) -> Vec<ComparedGroup> {
    let bars = pairs_of_bars(first.plan, second.plan);
    let groups = [
        ("Metal", metal::lines(first, second, &bars)),
        ("Marks", marks::lines(first, second, &bars)),
        ("Parts", parts::lines(first, second, &bars)),
        ("Heats", figures::heats(first, second)),
        ("Findings", figures::findings(first, second)),
    ];
    let groups = groups.into_iter().filter(|(_, lines)| !lines.is_empty());
    groups.map(|(title, lines)| ComparedGroup { title: title.to_owned(), lines }).collect()
}

/// Which bar of the second plan is which of the first: those of one name, and of the rest those in one place.
fn pairs_of_bars(first: &Plan, second: &Plan) -> Vec<Pair> {
    let name = |bar: &Bar| bar.name.trim().to_lowercase();
    match (first.bars.len(), second.bars.len()) {
        (1, 1) => vec![[Some(0), Some(0)]],
        _ => align(&first.bars, &second.bars, |a, b| name(a) == name(b)),
    }
}
