//! Random small jobs by both ways: every state, and column generation with its bound.

#![allow(clippy::cast_possible_wrap, reason = "small numbers")]

use fh_rack::cut::{Demand, Goal, Problem, Supply, Way, cut};

/// Numbers that follow from a seed alone.
struct Numbers(u64);

impl Numbers {
    /// From 1 to `most`.
    fn next(&mut self, most: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % most + 1
    }
}

fn problem(seed: u64, goals: Vec<Goal>) -> Problem {
    let mut numbers = Numbers(seed);
    let mut supplies = Vec::new();
    for at in 0..numbers.next(3) {
        supplies.push(Supply {
            section: String::new(),
            length_nm: 40 + numbers.next(60) as i64,
            end_nm: 0,
            count: (at > 0).then(|| numbers.next(3)),
            price: if at > 0 { 0 } else { numbers.next(20) as i64 },
        });
    }
    let mut demands = Vec::new();
    for _ in 0..numbers.next(4) {
        let ways = vec![Way { section: String::new(), length_nm: 5 + numbers.next(35) as i64, extra: 0 }];
        demands.push(Demand { count: numbers.next(6), ways });
    }
    Problem { kerf_nm: numbers.next(3) as i64 - 1, keep_from_nm: Some(15), supplies, demands, goals }
}

#[test]
fn both_ways_come_to_the_same() {
    for seed in 0..400 {
        for goal in [Goal::Bars, Goal::Length, Goal::Cost] {
            let by_columns = cut(&problem(seed, vec![goal]), &|| true, &mut |_| ());
            let by_states = cut(&problem(seed, vec![goal, Goal::Scrap]), &|| true, &mut |_| ());
            assert_eq!(by_states.bound.proven, 2, "{seed}");
            let value = |answer: &fh_rack::cut::Answer| match goal {
                Goal::Bars => answer.worth.bars,
                Goal::Length => answer.worth.length_nm,
                _ => answer.worth.cost,
            };
            assert_eq!(value(&by_columns), value(&by_states), "{seed} {goal:?}");
            assert!(by_columns.bound.first <= value(&by_states), "{seed} {goal:?}: what was proven is not so");
        }
    }
}

#[test]
fn a_search_that_is_stopped_still_has_the_plan_by_best_fit() {
    let problem = problem(7, vec![Goal::Bars]);
    let mut seen = 0;
    let answer = cut(&problem, &|| false, &mut |_| seen += 1);
    assert!(seen > 0 && !answer.bars.is_empty() && answer.left.is_empty());
}
