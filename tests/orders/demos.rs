//! The proposals for the demo plans are orders that one would forge from.

use crate::orders::{Done, place, proposed};
use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::Severity;
use fh_core::metal::Bent;
use fh_core::plan::{Operation, Plan, SocketAxis};
use fh_store::demos::DEMOS;
use fh_work::{Shop, after, work_out};
use std::cell::Cell;
use std::f64::consts::PI;
use tests::mm;

use Operation as O;

fn each(check: impl Fn(&str, &Plan)) {
    for demo in DEMOS {
        check(demo.file_name, &file::read(demo.text.as_bytes()).unwrap());
    }
}

#[test]
fn no_proposal_has_a_warning() {
    each(|name, plan| {
        let worked = work_out(plan, &balance(plan), &Shop::default());
        let grave = worked.findings.iter().filter(|found| found.finding.severity != Severity::Note);
        let words: Vec<&String> = grave.map(|found| &found.finding.message).collect();
        assert!(words.is_empty(), "{name}: {words:?}");
    });
}

#[test]
fn marks_come_first_and_wax_comes_last() {
    each(|name, plan| {
        let order = proposed(plan);
        assert_eq!(order.first().map(|done| done.0), Some(O::Mark), "{name}");
        assert_eq!(order.last().map(|done| done.0), Some(O::Wax), "{name}");
        let marks = order.iter().filter(|(operation, _)| *operation == O::Mark).count();
        assert_eq!(marks, plan.bars.len(), "{name}");
    });
}

/// The bends of a bar's proposal by the numbers of their parts.
fn bends(plan: &Plan, bar: usize) -> Vec<usize> {
    let steps = fh_work::proposal(plan, &balance(plan));
    let own = steps.iter().filter(|step| step.bar_index() == bar);
    let deeds = own.flat_map(|step| &step.work).filter(|deed| deed.operation.is_bending());
    deeds.flat_map(|deed| &deed.parts).filter_map(|path| plan.bars[bar].find_path(path)).collect()
}

/// Common practice, no source: a ring or a knuckle closes over what is bent beside it; a socket along the bar is rolled in the swage
/// block while that is straight.
#[test]
fn rings_close_after_the_other_bends_of_the_bar_and_sockets_are_rolled_before_them() {
    let (closed, rolled) = (Cell::new(0), Cell::new(0));
    each(|name, plan| {
        let balance = balance(plan);
        for (bar, balanced) in balance.bars.iter().enumerate() {
            let closes = |at: &usize| match balanced.segments[*at].bent {
                Some(Bent::Ring { sweep, .. }) => sweep > 1.5 * PI,
                Some(Bent::Socket { sweep, axis, .. }) => axis == SocketAxis::Across && sweep > 1.5 * PI,
                _ => false,
            };
            let is_socket =
                |at: &usize| matches!(balanced.segments[*at].bent, Some(Bent::Socket { axis: SocketAxis::Along, .. }));
            let order: Vec<usize> =
                bends(plan, bar).into_iter().filter(|at| plan.bars[bar].flat()[*at].depth == 0).collect();
            let first = order.iter().position(closes).unwrap_or(order.len());
            closed.set(closed.get() + usize::from(first < order.len()));
            assert!(order[first..].iter().all(closes), "{name}, bar {}: {order:?}", bar + 1);
            let sockets = order.iter().take_while(|at| is_socket(at)).count();
            rolled.set(rolled.get() + sockets);
            assert!(!order[sockets..].iter().any(is_socket), "{name}, bar {}: {order:?}", bar + 1);
        }
    });
    assert!(closed.get() > 0 && rolled.get() > 0, "no demo closes a ring, or none rolls a socket");
}

#[test]
fn every_heat_leaves_something_to_hold_and_metal_to_forge() {
    each(|name, plan| {
        let worked = work_out(plan, &balance(plan), &Shop::default());
        assert!(worked.heats > 0, "{name}");
        // To be normalised a bar is hot all over.
        let is_gripped = |step: &&fh_work::WorkedStep| step.is_hot() && step.tasks[0].operation != O::Normalise;
        for step in worked.steps.iter().filter(is_gripped).filter(|step| step.bar.is_some()) {
            let hold = step.hold.unwrap_or_else(|| panic!("{name}: nothing is held at “{}”", step.title));
            assert!(hold.jaw_mm.iter().all(|size| *size > 0.0), "{name}: {}", step.title);
            assert!(!step.tool.is_empty() || step.tasks[0].operation == O::Straighten, "{name}: {}", step.title);
        }
    });
}

#[test]
fn the_bar_grows_only_by_the_hammer() {
    each(|name, plan| {
        let balance = balance(plan);
        let worked = work_out(plan, &balance, &Shop::default());
        for n in 0..worked.steps.len() {
            let cold = worked.steps[n].tasks.iter().all(|task| !task.operation.is_hot() && task.operation != O::Drill);
            let [before, then] = [n, n + 1].map(|n| after(plan, &balance, &worked, n));
            for (before, then) in before.bars.iter().zip(&then.bars).filter(|_| cold) {
                assert!((mm(before.forged_length) - mm(then.forged_length)).abs() < 1e-9, "{name}, step {}", n + 1);
            }
        }
    });
}

/// What is asked of some demos by name, as a smith would say it.
#[test]
fn what_a_smith_would_ask_of_them() {
    let before = |order: &[Done], first: (Operation, &str), then: (Operation, &str)| {
        assert!(
            place(order, first.0, first.1) < place(order, then.0, then.1),
            "{first:?} before {then:?} in {order:?}"
        );
    };
    let hook = proposed(&crate::orders::demo("gate-hook.plan.json"));
    before(&hook, (O::Taper, "stem"), (O::Spread, "leaf"));
    before(&hook, (O::SetDown, "shoulder"), (O::Draw, "hook"));
    before(&hook, (O::Bend, "hook"), (O::Bend, "eye"));
    let trowel = proposed(&crate::orders::demo("trowel.plan.json"));
    before(&trowel, (O::Isolate, "blade"), (O::Taper, "neck"));
    before(&trowel, (O::Trim, "blade"), (O::Bend, "crank"));
    let fork = proposed(&crate::orders::demo("weeding-fork.plan.json"));
    before(&fork, (O::Punch, "tines"), (O::Split, "tines"));
    before(&fork, (O::Split, "tines"), (O::BendAside, "tines"));
    before(&fork, (O::BendAside, "tines"), (O::Taper, "point"));
    let scraper = proposed(&crate::orders::demo("boot-scraper.plan.json"));
    before(&scraper, (O::Upset, "right corner"), (O::Corner, "left corner"));
    assert_eq!(scraper.len(), 12, "{scraper:?}");
}

/// What hangs on one bar alone is put on before that bar is closed into the frame: common practice, no source.
#[test]
fn pegs_are_bound_to_their_legs_before_the_frame_is_closed() {
    let plan = crate::orders::demo("bean-frame.plan.json");
    let steps = fh_work::proposal(&plan, &balance(&plan));
    let joints: Vec<u32> = steps.iter().flat_map(|step| &step.work).filter_map(|deed| deed.joint).collect();
    assert_eq!(joints, [6, 7, 8, 9, 1, 2, 3, 4, 5]);
    let why = |(before, after, why): &(fh_work::Task, fh_work::Task, fh_work::Why)| {
        (*why == fh_work::Why::LooseFirst).then_some((before.joint, after.joint))
    };
    let pairs: Vec<_> = fh_work::rules(&plan, &balance(&plan)).iter().filter_map(why).collect();
    assert_eq!(pairs, [5, 6, 7, 8].map(|peg| (Some(peg), Some(peg - 4))));
}

/// The drift opens the plain bar to it: what is slit needs to be neither upset nor flattened for that.
#[test]
fn an_eye_in_the_plain_bar_is_only_slit_and_drifted() {
    let frame = proposed(&crate::orders::demo("bean-frame.plan.json"));
    for eye in ["first eye", "second eye"] {
        let done: Vec<Operation> = frame.iter().filter(|(_, part)| part == eye).map(|(done, _)| *done).collect();
        assert_eq!(done, [O::Punch, O::Drift], "{eye}");
    }
}
