//! One decision, one finding: a step that stands in the wrong place breaks many rules at once, and is told once.

use crate::job::why::Why;

/// A broken rule: why, the step that comes too soon, and the one that should come before it.
pub(crate) type Pair = (Why, usize, usize);

/// A step in the wrong place, with every rule that it breaks there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Decision {
    /// Whether the step comes too soon; it comes too late where not.
    pub(crate) is_early: bool,
    /// The broken rules, at least one.
    pub(crate) pairs: Vec<Pair>,
}

/// The fewest steps found whose places break all of these rules: again and again the one that breaks most of those left.
pub(crate) fn decisions(mut pairs: Vec<Pair>) -> Vec<Decision> {
    let mut all = Vec::new();
    while !pairs.is_empty() {
        let early = |step: usize| move |pair: &Pair| pair.1 == step && pair.1 != pair.2;
        let late = |step: usize| move |pair: &Pair| pair.2 == step && pair.1 != pair.2;
        let worst = pairs.iter().flat_map(|(_, one, other)| {
            let [early, late] =
                [pairs.iter().filter(|it| early(*one)(it)).count(), pairs.iter().filter(|it| late(*other)(it)).count()];
            [(early, true, *one), (late, false, *other)]
        });
        // Of steps that break as many rules the first that comes too soon.
        let worst = worst.max_by_key(|(count, is_early, step)| (*count, *is_early, std::cmp::Reverse(*step)));
        let Some((count, is_early, step)) = worst else { break };
        let belongs = |pair: &Pair| match (count, is_early) {
            (0 | 1, _) => false,
            (_, true) => early(step)(pair),
            (_, false) => late(step)(pair),
        };
        let (own, left): (Vec<Pair>, Vec<Pair>) = pairs.into_iter().partition(belongs);
        if own.is_empty() {
            // Each of those that are left stands for itself.
            all.extend(left.into_iter().map(|pair| Decision { is_early: true, pairs: vec![pair] }));
            break;
        }
        all.push(Decision { is_early, pairs: own });
        pairs = left;
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_one_step_breaks_is_one_decision() {
        let pairs: Vec<Pair> =
            [3, 5, 9].map(|late| (Why::PartLate, 1, late)).into_iter().chain([(Why::PartForStep, 1, 5)]).collect();
        assert_eq!(decisions(pairs.clone()), [Decision { is_early: true, pairs }]);
    }

    #[test]
    fn a_step_that_comes_too_late_for_many_is_told_by_itself() {
        let pairs = vec![(Why::IsolateFirst, 2, 8), (Why::IsolateFirst, 4, 8), (Why::ThinLast, 1, 3)];
        let all = decisions(pairs.clone());
        assert_eq!(all[0], Decision { is_early: false, pairs: pairs[..2].to_vec() });
        assert_eq!(all[1].pairs, pairs[2..]);
    }

    #[test]
    fn rules_that_share_no_step_are_told_one_by_one() {
        let pairs = vec![(Why::IsolateFirst, 2, 8), (Why::SlitFirst, 4, 4)];
        assert_eq!(decisions(pairs).len(), 2);
    }
}
