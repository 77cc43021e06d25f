//! Volumes, lengths and marks against reference values that were computed outside this project.
//!
//! `tests/data/geometry.json` names for each value the method and the libraries it was computed with. Every case is
//! written as a plan file, read, balanced and compared; cases of forms that are not built yet are listed in `skipped.rs`.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod bends;
mod cases;
mod corners_left;
mod curves;
mod cut_to_shape;
mod growth;
mod on_the_way;
mod outlines;
mod pieces;
mod scrolls;
mod skipped;
mod splits;
mod tapers;

use cases::topics;
use skipped::SKIPPED;

/// How many cases are checked: of tapers, bends, curves, outlines, splits and pieces.
const CHECKED: usize = 17 + 22 + 16 + 12 + 7 + 1;

#[test]
fn no_reference_case_is_lost() {
    let mut checked = 0;
    for (topic, ids) in topics() {
        for id in ids {
            if skipped::reason(&id).is_none() {
                checked += 1;
                let known = ["tapers", "bends", "curves", "outlines", "splits", "pieces"];
                assert!(known.contains(&topic.as_str()), "{id} is neither checked nor skipped");
            }
        }
    }
    assert_eq!(checked, CHECKED);
}

#[test]
fn every_skipped_case_is_there_and_has_its_reason() {
    let ids: Vec<String> = topics().into_iter().flat_map(|(_, ids)| ids).collect();
    for (id, reason) in SKIPPED {
        assert!(ids.iter().any(|known| known == id), "there is no case {id}");
        assert!(!reason.is_empty());
    }
}
