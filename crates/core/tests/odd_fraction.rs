//! Fractions that no rule is divided in are told wherever they are written.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::Finding;

/// The findings of a bar 1/3 in square with these segments.
fn findings(segments: &str) -> Vec<Finding> {
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "in", "marks": "1/16 in" }},
              "bars": [{{ "name": "bar", "stock": {{ "square": "1/3 in" }}, "segments": [{segments}] }}] }}"#
    );
    balance(&file::read(text.as_bytes()).unwrap()).findings
}

#[test]
fn an_odd_fraction_is_told_of_every_size_once_in_its_own_place() {
    let branch = |length| {
        format!(r#"{{ "segments": [{{ "name": "{length}", "form": {{ "plain": {{ "length": "{length}" }} }} }}] }}"#)
    };
    let segments = format!(
        r#"{{ "name": "first", "form": {{ "plain": {{ "length": "2 1/7 in" }} }} }},
        {{ "name": "fork", "form": {{ "split": {{ "root": {{ "hole": "1/9 in" }}, "branches": [{}, {}] }} }} }}"#,
        branch("3 1/23 in"),
        branch("3 1/2 in")
    );
    let found = findings(&segments);
    let odd: Vec<_> = found.iter().filter(|finding| finding.id == "odd-fraction").collect();
    let told: Vec<_> = odd.iter().map(|finding| (finding.place.segment, finding.message.as_str())).collect();
    assert_eq!(
        told,
        [
            (None, "The bar has a size of 1/3 in: no rule shows 1/3."),
            (Some(0), "“first” has a size of 2 1/7 in: no rule shows 1/7."),
            (Some(1), "“fork” has a size of 1/9 in: no rule shows 1/9."),
            (Some(2), "“branch 1, 3 1/23 in” has a size of 3 1/23 in: no rule shows 1/23."),
        ]
    );
}
