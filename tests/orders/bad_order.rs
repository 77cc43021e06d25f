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
const BAD: [(Operation, &str); 18] = [
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
    (O::Trim, "eye"),
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
        ("wrong-order", vec![2, 3, 5, 7, 14, 15]),
        ("wrong-order", vec![3, 4, 15]),
        ("mark-gone", vec![4, 6]),
        ("wrong-order", vec![7, 8, 15]),
        ("mark-gone", vec![8, 9]),
        ("mark-gone", vec![10, 11, 12]),
    ];
    assert_eq!(ids(&rules), wanted, "{:#?}", rules.iter().map(|found| &found.finding.message).collect::<Vec<_>>());
    for found in &rules {
        assert_eq!(found.finding.reason, found.why.unwrap().reason());
        assert!(!found.finding.remedy.is_empty() && found.finding.message.contains(&format!("{}", found.steps[0] + 1)));
    }
    let whys: Vec<Why> = rules.iter().filter_map(|found| found.why).collect();
    assert!(whys.contains(&Why::ForgeBeforeBend) && whys.contains(&Why::IsolateFirst));
    let told: Vec<Why> = rules.iter().flat_map(|found| &found.broken).map(|(why, ..)| *why).collect();
    assert!(told.contains(&Why::CloseLast) && told.contains(&Why::StraightFirst) && told.contains(&Why::ThinLast));
}

#[test]
fn what_the_smith_knows_is_kept_with_its_reason_and_not_told_again() {
    let plan = demo("gate-hook.plan.json");
    let mut bad = steps(&plan, &BAD);
    bad[1] = bad[1].clone().accepting("wrong-order", Some("The eye is closed on its staple."));
    let worked = with_steps(&plan, bad);
    let known: Vec<&OrderFinding> = worked.findings.iter().filter(|found| found.accepted.is_some()).collect();
    let [known] = known[..] else { panic!("{known:#?}") };
    assert_eq!((known.steps[0], known.accepted.as_deref()), (1, Some("The eye is closed on its staple.")));
    assert_eq!(worked.open_findings().count() + 1, worked.findings.len());
    assert!(worked.own_findings().all(|found| found.accepted.is_none()));
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
    let [soon] = soon[..] else { panic!("one decision, one finding: {:?}", ids(&worked.findings)) };
    assert!(soon.steps.len() > 2 && soon.steps[0] == 1, "{:?}", soon.steps);
    assert!(soon.broken.iter().all(|(_, early, _)| *early == 1), "{:?}", soon.broken);
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
