//! A deliberately bad order of a demo beside the good one: each fault is told with its steps and its reason.

use crate::orders::{demo, done, ids, with_steps};
use fh_core::balance::balance;
use fh_core::plan::{Deed, Operation, Plan, Step};
use fh_work::{OrderFinding, Why, proposal};

use Operation as O;

/// Steps on the first bar, each one operation on one part, or on the whole bar.
fn steps(plan: &Plan, list: &[(Operation, &str)]) -> Vec<Step> {
    let step = |(operation, name): &(Operation, &str)| {
        let flat = plan.bars[0].flat();
        let found = flat.iter().position(|flat| flat.segment.name == *name);
        let parts = found.map(|at| plan.bars[0].path(at)).into_iter().collect();
        Step { work: vec![Deed::new(*operation, parts)], ..Step::default() }
    };
    list.iter().map(step).collect()
}

/// The gate hook forged as a beginner might: the eye first, bends before forging, necks when it is too late.
const BAD: [(Operation, &str); 17] = [
    (O::Mark, ""),
    (O::Bend, "eye"),
    (O::Bend, "set-back"),
    (O::Draw, "set-back"),
    (O::Draw, "eye"),
    (O::SetDown, "eye shoulder"),
    (O::Bend, "hook"),
    (O::Draw, "hook"),
    (O::SetDown, "shoulder"),
    (O::Spread, "leaf"),
    (O::Isolate, "leaf"),
    (O::Taper, "stem"),
    (O::Trim, "leaf"),
    (O::Straighten, ""),
    (O::Check, ""),
    (O::Brush, ""),
    (O::Wax, ""),
];

fn broken(findings: &[OrderFinding]) -> Vec<OrderFinding> {
    let mut rules: Vec<OrderFinding> = findings.iter().filter(|found| found.why.is_some()).cloned().collect();
    rules.sort_by(|one, other| one.steps.cmp(&other.steps));
    rules
}

#[test]
fn a_bad_order_is_told_step_by_step() {
    let plan = demo("gate-hook.plan.json");
    let bad = steps(&plan, &BAD);
    let good = proposal(&plan, &balance(&plan));
    let (mut same, mut as_good) = (done(&plan, &bad), done(&plan, &good));
    same.sort();
    as_good.sort();
    assert_eq!(same, as_good, "both orders do the same, one better than the other");

    let worked = with_steps(&plan, bad);
    let rules = broken(&worked.findings);
    let wanted = [
        ("out-of-reach", vec![2, 3]),
        ("wrong-order", vec![2, 5]),
        ("out-of-reach", vec![2, 7]),
        ("wrong-order", vec![2, 14]),
        ("wrong-order", vec![3, 4]),
        ("wrong-order", vec![3, 14]),
        ("mark-gone", vec![4, 6]),
        ("wrong-order", vec![7, 8]),
        ("wrong-order", vec![7, 14]),
        ("mark-gone", vec![8, 9]),
        ("mark-gone", vec![10, 11]),
        ("thin-too-soon", vec![10, 12]),
    ];
    assert_eq!(ids(&rules), wanted, "{:#?}", rules.iter().map(|found| &found.finding.message).collect::<Vec<_>>());
    for found in &rules {
        assert_eq!(found.finding.reason, found.why.unwrap().reason());
        assert!(!found.finding.remedy.is_empty() && found.finding.message.contains(&format!("{}", found.steps[0] + 1)));
    }
    let whys: Vec<Why> = rules.iter().filter_map(|found| found.why).collect();
    assert!(whys.contains(&Why::CloseLast) && whys.contains(&Why::IsolateFirst) && whys.contains(&Why::StraightFirst));
}

#[test]
fn the_good_order_written_down_is_told_nothing() {
    for demo in fh_store::demos::DEMOS {
        let plan = demo.file_name;
        let plan = crate::orders::demo(plan);
        let worked = with_steps(&plan, proposal(&plan, &balance(&plan)));
        assert!(broken(&worked.findings).is_empty(), "{}: {:?}", demo.file_name, ids(&worked.findings));
        assert!(!worked.proposed);
    }
}

#[test]
fn what_is_left_out_doubled_or_unknown_is_told() {
    let plan = demo("gate-hook.plan.json");
    let mut list = steps(&plan, &BAD);
    list.remove(12);
    list[1].work[0].parts = vec!["42".to_owned()];
    let worked = with_steps(&plan, list);
    let told: Vec<&str> = worked.findings.iter().map(|found| found.finding.id).collect();
    assert_eq!(told.iter().filter(|id| **id == "not-in-the-order").count(), 2, "{told:?}");
    assert_eq!(told.iter().filter(|id| **id == "part-unknown").count(), 1, "{told:?}");
}

#[test]
fn parting_off_first_leaves_nothing_to_hold() {
    let plan = demo("trowel.plan.json");
    let mut list = proposal(&plan, &balance(&plan));
    let cut = list.iter().position(|step| step.work.iter().any(|deed| deed.operation == O::PartOff)).unwrap();
    let cut = list.remove(cut);
    list.insert(1, cut);
    let worked = with_steps(&plan, list);
    let soon: Vec<&OrderFinding> =
        worked.findings.iter().filter(|found| found.finding.id == "parted-too-soon").collect();
    assert!(soon.len() > 3 && soon.iter().all(|found| found.steps[0] == 1), "{:?}", ids(&worked.findings));
    assert!(soon.iter().all(|found| found.why == Some(Why::PartLate)));
}

#[test]
fn what_is_forgotten_after_a_split_and_on_its_branches_is_named_by_its_part() {
    let plan = demo("weeding-fork.plan.json");
    let bar = &plan.bars[0];
    let found = with_steps(&plan, steps(&plan, &[(O::Mark, "")])).findings;
    let missing: Vec<_> = found.iter().filter(|found| found.finding.id == "not-in-the-order").collect();
    let of = |path: &str, words: &str| {
        let own = missing.iter().filter(|found| found.finding.place.path(&plan) == path);
        own.map(|found| &found.finding.message).find(|message| message.contains(words)).cloned()
    };
    // The split counts nine parts through the bar: the tang is the sixth along it, and the fourteenth of all.
    assert_eq!(bar.find_path("6"), Some(13));
    assert_eq!(of("6", "“tang”").as_deref(), Some("No step covers: taper “tang”."));
    assert_eq!(of("1.1.2", "“far tine, tine”").as_deref(), Some("No step covers: draw out “far tine, tine”."));
    for found in &missing {
        let Some(at) = found.finding.place.segment else { continue };
        let name = fh_core::describe::part_name(bar, at);
        assert!(found.finding.message.contains(&format!("“{name}”")), "{name}: {}", found.finding.message);
    }
    assert!(missing.len() > 20, "{}", missing.len());
}
