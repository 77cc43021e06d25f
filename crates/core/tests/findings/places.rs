//! Findings after splits and within them: they name the part they mean.

use super::cases::CASES;
use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::Finding;
use std::collections::BTreeSet;

/// A split with a part on each of two branches, and a plain part after it: five parts counted through the bar.
const SPLIT_BEFORE: &str = r#"{ "form": { "plain": { "length": "200 mm" } } },
    { "name": "slit", "form": { "split": { "root": { "hole": "6 mm" }, "branches": [
      { "segments": [{ "form": { "drawn": { "length": "50 mm", "section": { "square": "7 mm" } } } }] },
      { "segments": [{ "form": { "drawn": { "length": "50 mm", "section": { "square": "7 mm" } } } }] }] } } },
    { "form": { "plain": { "length": "200 mm" } } }"#;

/// A plain part in its place.
const PLAIN_BEFORE: &str = r#"{ "form": { "plain": { "length": "200 mm" } } }"#;

/// The findings of a bar, with the bar.
fn found_on(plan: &str, bar: &str, segments: &str) -> (fh_core::plan::Bar, Vec<Finding>) {
    let bar =
        if bar.contains("stock") { bar.to_owned() } else { format!(r#""stock": {{ "square": "12 mm" }}, {bar}"#) };
    let text = format!(
        r#"{{ "firstheat": 1, {plan} "units": {{ "length": "mm", "marks": "1 mm" }},
              "bars": [{{ "name": "bar", {bar} "segments": [{segments}] }}] }}"#
    );
    let plan = file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{text}"));
    (plan.bars[0].clone(), balance(&plan).findings)
}

/// Every finding of the cases that speaks of a part, with the same parts after a split.
#[test]
fn a_finding_after_a_split_names_the_part_it_means() {
    let mut told = BTreeSet::new();
    for (id, plan, bar, segments) in CASES.iter().filter(|case| !case.3.is_empty()) {
        let (alone, before) = found_on(plan, bar, &format!("{PLAIN_BEFORE}, {segments}"));
        let (written, after) = found_on(plan, bar, &format!("{SPLIT_BEFORE}, {segments}"));
        for finding in before.iter().filter(|finding| finding.id == *id) {
            // One part is before it alone, and five with the split: two more along the bar itself.
            let Some(at) = finding.place.segment else { continue };
            let (number, rest) = alone
                .path(at)
                .split_once('.')
                .map_or((alone.path(at), String::new()), |(number, rest)| (number.to_owned(), format!(".{rest}")));
            let path = format!("{}{rest}", number.parse::<usize>().unwrap() + 2);
            assert_eq!(written.path(at + 4), path, "{id}");
            let same = after.iter().find(|other| other.id == *id && other.place.segment == Some(at + 4));
            let same = same.unwrap_or_else(|| panic!("{id}: {after:#?}"));
            if finding.message.contains(&format!("part {}", alone.path(at))) {
                assert!(same.message.contains(&format!("part {path}")), "{id}: {}", same.message);
                told.insert(*id);
            }
        }
    }
    assert!(told.len() > 30, "{}: {told:?}", told.len());
}

/// The cases again on the first branch of a split, but for fixed marks, which lie on the bar itself: what is told of a part
/// there names branch and path.
#[test]
fn a_finding_within_a_split_names_the_branch_and_the_part() {
    let mut told = BTreeSet::new();
    let may_be_in_a_branch = |segments: &str| !["hold", "ends_at"].iter().any(|word| segments.contains(word));
    let cases = CASES.iter().filter(|case| !case.3.is_empty() && may_be_in_a_branch(case.3));
    for (id, plan, bar, segments) in cases {
        let split = format!(
            r#"{{ "form": {{ "plain": {{ "length": "200 mm" }} }} }}, {{ "name": "fork", "form": {{ "split": {{ "branches": [
              {{ "name": "left tine", "segments": [{segments}] }},
              {{ "segments": [{{ "form": {{ "drawn": {{ "length": "50 mm", "section": {{ "square": "7 mm" }} }} }} }}] }}] }} }} }}"#
        );
        let (written, found) = found_on(plan, bar, &split);
        for finding in found.iter().filter(|finding| finding.id == *id && finding.message.contains("part ")) {
            let Some(at) = finding.place.segment else { continue };
            let path = written.path(at);
            if path.starts_with("2.1.") {
                assert!(finding.message.contains(&format!("left tine, part {path}")), "{id}: {}", finding.message);
                told.insert(*id);
            }
        }
    }
    assert!(told.len() > 15, "{}: {told:?}", told.len());
}
