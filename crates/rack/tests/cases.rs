//! Every case of `tests/data/cutting.json`: each best there was found by two or more methods of other libraries that agree
//! (constraint programming and an arc flow as a mixed-integer program), or is published.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use fh_rack::cut::{Answer, Problem, cut, first_plan};
use fh_rack::lengths;
use serde_json::Value;

fn problem(case: &Value) -> Problem {
    lengths::read(&case.to_string()).unwrap().problem
}

fn cases() -> Vec<Value> {
    let text = include_str!("../../../tests/data/cutting.json");
    serde_json::from_str::<Value>(text).unwrap()["cases"].as_array().unwrap().clone()
}

fn value(answer: &Answer, goal: &str) -> f64 {
    let worth = &answer.worth;
    match goal {
        "bars" => worth.bars as f64,
        "cost" => worth.cost as f64 / 100.0,
        "length" => worth.length_nm as f64 / 1e6,
        "scrap" => worth.scrap_nm as f64 / 1e6,
        _ => worth.longest_nm as f64 / 1e6,
    }
}

/// Every bar holds what it is said to, every piece is cut once, and no bar is used that is not there.
fn assert_can_be_cut(id: &str, problem: &Problem, answer: &Answer) {
    let mut cut = vec![0_u64; problem.demands.len()];
    let mut used = vec![0_u64; problem.supplies.len()];
    for bar in &answer.bars {
        let supply = &problem.supplies[bar.supply];
        used[bar.supply] += bar.times;
        let mut width = -problem.kerf_nm;
        for &(demand, count) in &bar.cuts {
            let way = problem.demands[demand].ways.iter().find(|way| way.section == supply.section).expect(id);
            width += (way.length_nm + problem.kerf_nm) * count as i64;
            cut[demand] += count * bar.times;
        }
        assert!(width <= supply.length_nm - supply.end_nm, "{id}: a bar is too short for what is cut from it");
    }
    for left in &answer.left {
        cut[left.demand] += left.count;
    }
    let wanted: Vec<u64> = problem.demands.iter().map(|demand| demand.count).collect();
    assert_eq!(cut, wanted, "{id}: pieces");
    for (supply, used) in problem.supplies.iter().zip(used) {
        assert!(supply.count.is_none_or(|count| used <= count), "{id}: more bars than there are");
    }
}

#[test]
fn every_case_comes_to_its_proven_best() {
    let mut faults = Vec::new();
    for case in cases() {
        let id = case["id"].as_str().unwrap();
        let problem = problem(&case);
        let answer = cut(&problem, &|| true, &mut |_| ());
        assert_can_be_cut(id, &problem, &answer);
        if case["feasible"] != true {
            assert!(!answer.left.is_empty(), "{id} cannot be cut whole, and is");
            continue;
        }
        assert!(answer.left.is_empty(), "{id} leaves {:?}", answer.left);
        for goal in case["objective"].as_array().unwrap() {
            let goal = goal.as_str().unwrap();
            let (got, best) = (value(&answer, goal), case["objective_values"][goal].as_f64().unwrap());
            if (got - best).abs() > 1e-6 {
                faults.push(format!("{id}: {goal} {got}, the best is {best}"));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn what_is_called_proven_is_the_best() {
    for case in cases().iter().filter(|case| case["feasible"] == true) {
        let answer = cut(&problem(case), &|| true, &mut |_| ());
        let goals = case["objective"].as_array().unwrap();
        for goal in goals.iter().take(answer.bound.proven) {
            let goal = goal.as_str().unwrap();
            assert!((value(&answer, goal) - case["objective_values"][goal].as_f64().unwrap()).abs() < 1e-6);
        }
    }
}

#[test]
fn best_fit_alone_gives_a_plan_that_can_be_cut() {
    for case in cases() {
        let problem = problem(&case);
        assert_can_be_cut(case["id"].as_str().unwrap(), &problem, &first_plan(&problem));
    }
}
