//! What is written is read again as the same plan.

use crate::properties::cases;
use crate::properties::plans::plan;
use crate::properties::sizes::Sizes;
use fh_core::file;
use proptest::prelude::*;

proptest! {
    #![proptest_config(cases(300))]

    #[test]
    fn writing_reading_and_writing_again_changes_nothing(plan in plan(Sizes::Absurd)) {
        let plan = tests::read(&plan.0);
        let text = file::write(&plan);
        let again = file::read(text.as_bytes()).map_err(|error| TestCaseError::fail(format!("{error}\n{text}")))?;
        prop_assert_eq!(&again, &plan);
        prop_assert_eq!(file::write(&again), text);
    }
}
