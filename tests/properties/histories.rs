//! Any sequence of edits: the laws hold after each, and undo and redo lead back and forth exactly.

use crate::properties::edits::{Deed, Drag, deed, drag};
use crate::properties::plans::plan;
use crate::properties::sizes::Sizes;
use crate::properties::{cases, laws};
use fh_core::edit::{Edit, History};
use fh_core::file;
use fh_core::plan::Plan;
use proptest::collection::vec;
use proptest::prelude::*;

/// Applies the edits one by one; every plan there was, each once, from the first to the last.
fn after_each(history: &mut History, deeds: &[Deed]) -> Result<Vec<Plan>, TestCaseError> {
    let mut plans = vec![history.plan().clone()];
    for deed in deeds {
        let before = history.revision();
        match history.apply(&deed.on(history.plan())) {
            Ok(_) => laws::check(history.plan())?,
            Err(refusal) => {
                let words = refusal.to_string();
                prop_assert!(words.len() > 10 && !words.contains("NaN"), "{}", words);
                prop_assert_eq!(history.plan(), plans.last().unwrap(), "a refused edit changes nothing");
            }
        }
        if history.revision() != before {
            let text = file::write(history.plan());
            let again = file::read(text.as_bytes());
            prop_assert!(again.as_ref() == Ok(history.plan()), "{deed:?}: {again:?}\n{text}");
            plans.push(history.plan().clone());
        }
    }
    Ok(plans)
}

fn check_undo_and_redo(history: &mut History, plans: &[Plan]) -> Result<(), TestCaseError> {
    for plan in plans.iter().rev().skip(1) {
        prop_assert!(history.undo());
        prop_assert_eq!(history.plan(), plan);
        prop_assert!(history.redo() && history.undo());
        prop_assert_eq!(history.plan(), plan, "undo then redo then undo");
    }
    prop_assert!(!history.undo() && !history.can_undo());
    for plan in plans.iter().skip(1) {
        prop_assert!(history.redo());
        prop_assert_eq!(history.plan(), plan);
    }
    prop_assert!(!history.redo() && !history.can_redo());
    Ok(())
}

proptest! {
    #![proptest_config(cases(120))]

    #[test]
    fn any_edits_keep_the_laws_and_can_be_taken_back(plan in plan(Sizes::Usual), deeds in vec(deed(Sizes::Usual), 1..12)) {
        let mut history = History::new(tests::read(&plan.0));
        let plans = after_each(&mut history, &deeds)?;
        check_undo_and_redo(&mut history, &plans)?;
    }

    #[test]
    fn absurd_edits_keep_the_laws_and_can_be_taken_back(plan in plan(Sizes::Absurd), deeds in vec(deed(Sizes::Absurd), 1..10)) {
        let mut history = History::new(tests::read(&plan.0));
        let plans = after_each(&mut history, &deeds)?;
        check_undo_and_redo(&mut history, &plans)?;
    }

    #[test]
    fn a_drag_is_one_step_and_a_drag_taken_back_is_none(plan in plan(Sizes::Usual), drags in vec(drag(), 1..8), keep in any::<bool>()) {
        let first = tests::read(&plan.0);
        let mut history = History::new(first.clone());
        history.begin();
        // The pointer's places are all reckoned from where the drag began, so nothing adds up.
        let edits: Vec<Edit> = drags.iter().map(|drag: &Drag| Edit::MoveBoundary(drag.on(&first))).collect();
        let last = edits.iter().filter(|edit| history.apply(edit).is_ok()).last();
        if keep {
            history.commit();
            let alone = last.map_or_else(|| first.clone(), |edit| edit.applied(&first).unwrap().0);
            prop_assert_eq!(history.plan(), &alone);
            prop_assert_eq!(history.undo(), alone != first);
        } else {
            history.cancel();
        }
        prop_assert_eq!(history.plan(), &first);
        prop_assert!(!history.can_undo());
    }
}
