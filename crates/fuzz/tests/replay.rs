//! What was once found is not found again, and a round is known by its number.

#![allow(clippy::unwrap_used, reason = "tests")]

use fh_fuzz::{Corpus, Kept, Kind, check_plan, check_steel, kept, round};
use std::path::Path;

#[test]
fn nothing_that_is_kept_breaks_anything_again() {
    let corpus = Corpus::new();
    let all = kept(&Path::new(env!("CARGO_MANIFEST_DIR")).join("inputs")).unwrap();
    assert!(all.iter().any(|kept| matches!(kept, Kept::Plan(..))));
    assert!(all.iter().any(|kept| matches!(kept, Kept::Round(Kind::Edits, _))));
    for kept in all {
        let (name, faults) = match kept {
            Kept::Plan(path, bytes) => (path.display().to_string(), check_plan(&bytes, true).0),
            Kept::Steel(path, bytes) => (path.display().to_string(), check_steel(&corpus, &bytes, true).0),
            Kept::Round(kind, number) => (format!("{} {number}", kind.name()), round(&corpus, kind, number).faults),
        };
        assert!(faults.is_empty(), "{name}: {faults:#?}");
    }
}

#[test]
fn a_round_is_the_same_each_time() {
    let corpus = Corpus::new();
    for kind in Kind::ALL {
        let (one, other) = (round(&corpus, kind, 7), round(&corpus, kind, 7));
        assert_eq!(one, other);
        assert!(one.tried > 0, "{}", kind.name());
    }
    assert_ne!(round(&corpus, Kind::Plans, 8).input, round(&corpus, Kind::Plans, 9).input);
}

#[test]
fn most_random_plans_are_plans() {
    let corpus = Corpus::new();
    let read =
        (0..200).filter(|number| fh_core::file::read(&fh_fuzz::input(&corpus, Kind::Plans, *number)).is_ok()).count();
    assert!((100..200).contains(&read), "{read} of 200");
}

#[test]
fn many_random_files_of_the_rack_can_be_read() {
    let corpus = Corpus::new();
    let is_read = |number: &u64| {
        let bytes = fh_fuzz::input(&corpus, Kind::Steel, *number);
        fh_rack::kept::rack::read(&bytes).is_ok()
            || fh_rack::kept::merchant::read(&bytes).is_ok()
            || fh_rack::kept::shop::read(&bytes).is_ok()
            || fh_rack::kept::job::read(&bytes).is_ok()
    };
    let read = (0..200).filter(is_read).count();
    assert!((60..200).contains(&read), "{read} of 200");
}
