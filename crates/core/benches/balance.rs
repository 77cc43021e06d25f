//! How long a balance takes: the figures of docs/performance.md.

#![allow(
    missing_docs,
    clippy::expect_used,
    clippy::print_stdout,
    reason = "criterion writes the functions, and a bench may stop"
)]

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use fh_core::balance::balance;
use fh_core::file;
use fh_core::plan::{Gives, Plan};
use fh_measure::{LengthRange, LengthUnit, WrittenLength};
use std::hint::black_box;

/// A run of segments that a real plan mixes: twelve forms and bends, repeated.
const RUN: &str = r#"
{"name":"point","form":{"taper":{"length":"2 1/2 in","from":{"square":"3/8 in"},"to":{"round":"1/4 in"},"runout":"eased"}}},
{"name":"hook","form":{"drawn":{"section":{"round":"3/8 in"}}},"bend":{"curve":{"angle":"180 deg","inside_radius":"1 in"}}},
{"name":"set-down","form":{"shoulder":{"to":{"square":"1/2 in"},"radius":"1/8 in","sides":"all"}}},
{"name":"shank","form":{"plain":{"length":"5 in"}}},
{"name":"leg","form":{"drawn":{"length":"3 in","section":{"flat":{"width":"3/4 in","thickness":"1/4 in"}}}}},
{"name":"corner","form":{"peak":{"section":{"square":"1/2 in"}}},"bend":{"corner":{"angle":"90 deg","inside_radius":"1/4 in"}}},
{"name":"reed","form":{"taper":{"length":"80 mm","from":{"half_round":{"width":"12 mm","height":"5 mm"}},"to":{"hexagon":"8 mm"}}}},
{"name":"eye","form":{"drawn":{"section":{"round":"8 mm"}}},"bend":{"ring":{"inside_diameter":"25 mm"}}},
{"name":"leaf","form":{"flag":{"outline":{"leaf":{"length":"60 mm","width":"24 mm"}},"thickness":{"root":"4 mm","tip":"2 mm"},"trim":"5 %"}}},
{"name":"knob","form":{"ball":{"diameter":"20 mm"}}}"#;

fn plan(segments: usize) -> Plan {
    let run: Vec<&str> = RUN.trim().split(",\n").collect();
    let all: Vec<&str> = (0..segments).map(|index| run[index % run.len()]).collect();
    let text = format!(
        r#"{{"firstheat":1,"title":"bench","units":{{"length":"in","marks":"1/16 in"}},"scale":"2 %",
            "bars":[{{"name":"bar","stock":{{"square":"1/2 in"}},"segments":[{}]}}]}}"#,
        all.join(",\n")
    );
    file::read(text.as_bytes()).expect("the bench's plan reads")
}

/// The gate hook of the demos, over and over: a plan as a smith leaves it, with few findings to put in words.
fn sound_plan(segments: usize) -> Plan {
    let text = include_bytes!("../../../demo-plans/gate-hook.plan.json");
    let mut plan = file::read(text).expect("the demo reads");
    let run = plan.bars[0].segments.clone();
    plan.bars[0].segments = run.iter().cycle().take(segments).cloned().collect();
    plan
}

/// The same with 50 marks fixed along it, a part before each giving to its block.
fn plan_of_blocks(segments: usize) -> Plan {
    let mut plan = sound_plan(segments);
    let marks: Vec<f64> = balance(&plan).bars[0].segments.iter().map(|part| part.mark_end.value * 1000.0).collect();
    let every = (segments / 50).max(1);
    let parts = &mut plan.bars[0].segments;
    for at in (every - 1..parts.len()).step_by(every) {
        parts[at].ends_at =
            WrittenLength::from_mm(marks[at] + 0.5, LengthUnit::Millimeter, LengthRange::AboveZero).ok();
        let block = &mut parts[at + 1 - every..=at];
        if let Some(giver) = block.iter_mut().find(|part| part.form.length().is_some()) {
            giver.gives = Some(Gives::Length);
        }
    }
    plan
}

/// Slits opened between plain parts, each with two branches of two parts: six segments at a time.
fn plan_of_splits(segments: usize) -> Plan {
    let part = r#"{"form":{"drawn":{"length":"2 in","section":{"square":"1/4 in"}}}}"#;
    let branch = format!(r#"{{"segments":[{part},{part}]}}"#);
    let split = format!(
        r#"{{"name":"basket","form":{{"split":{{"branches":[{branch},{branch}],"root":{{"radius":"1/8 in"}},
            "opening":{{"width":"1 1/2 in","turns":0.5}}}}}}}},{{"form":{{"plain":{{"length":"1 in"}}}}}}"#
    );
    let all = vec![split; segments.div_ceil(6)].join(",");
    let text = format!(
        r#"{{"firstheat":1,"units":{{"length":"in","marks":"1/16 in"}},"duty":"light","bars":[{{"name":"bar",
            "stock":{{"square":"1/2 in"}},"segments":[{{"form":{{"plain":{{"length":"6 in"}}}}}},{all}]}}]}}"#
    );
    file::read(text.as_bytes()).expect("the bench's plan reads")
}

fn balances(criterion: &mut Criterion) {
    for (name, plan) in [
        ("balance", sound_plan as fn(usize) -> Plan),
        ("balance of blocks", plan_of_blocks),
        ("balance of every form", plan),
        ("balance of splits", plan_of_splits),
    ] {
        let mut group = criterion.benchmark_group(name);
        for segments in [20, 200, 1000] {
            let plan = plan(segments);
            println!("{name}/{segments}: {} findings", balance(&plan).findings.len());
            group.bench_with_input(BenchmarkId::from_parameter(segments), &plan, |bencher, plan| {
                bencher.iter(|| balance(black_box(plan)));
            });
        }
        group.finish();
    }
}

/// A bracket of 20 parts bent in space with three sizes that three of its straights keep.
fn plan_of_sizes() -> Plan {
    let straight = |name: usize| format!(r#"{{"name":"s{name}","form":{{"plain":{{"length":"40 mm"}}}}}}"#);
    let bend = |side: usize| {
        format!(
            r#"{{"form":{{"plain":{{}}}},"bend":{{"curve":{{"angle":"{} deg","inside_radius":"10 mm","side":"{} deg"}}}}}}"#,
            40 + 10 * side,
            90 * (side % 3)
        )
    };
    let parts: Vec<String> = (0..10).flat_map(|at| [straight(at), bend(at % 4)]).collect();
    let size = |to: usize, long: u32, keeper: usize| {
        format!(
            r#"{{"from":{{"part":"s0","at":"start"}},"to":{{"part":"s{to}","at":"end"}},"size":"{long} mm","kept_by":"s{keeper}"}}"#
        )
    };
    let text = format!(
        r#"{{"firstheat":1,"bars":[{{"name":"bar","stock":{{"square":"12 mm"}},"segments":[{}]}}],"sizes":[{},{},{}]}}"#,
        parts.join(","),
        size(3, 100, 1),
        size(6, 110, 4),
        size(9, 140, 8)
    );
    file::read(text.as_bytes()).expect("the bench's plan reads")
}

/// Each size 3 mm more than it is as the plan is written, so that it can be kept.
fn within_reach(mut plan: Plan) -> Plan {
    let mut checked = plan.clone();
    checked.sizes.iter_mut().for_each(|size| size.kept_by = None);
    for (size, found) in plan.sizes.iter_mut().zip(balance(&checked).sizes) {
        let now = found.value.expect("the size can be taken").value * 1000.0;
        size.size =
            WrittenLength::from_mm(now + 3.0, LengthUnit::Millimeter, LengthRange::AboveZero).expect("a length");
    }
    plan
}

fn sizes(criterion: &mut Criterion) {
    let plan = within_reach(plan_of_sizes());
    let kept = balance(&plan).sizes.iter().filter(|size| size.met).count();
    println!("asked sizes: {kept} of {} kept", plan.sizes.len());
    criterion.bench_function("balance of 20 parts with 3 sizes kept in space", |bencher| {
        bencher.iter(|| balance(black_box(&plan)));
    });
    let one = Plan { sizes: plan.sizes[..1].to_vec(), ..plan };
    criterion.bench_function("balance of 20 parts with 1 size kept in space", |bencher| {
        bencher.iter(|| balance(black_box(&one)));
    });
}

fn files(criterion: &mut Criterion) {
    let text = file::write(&plan(60));
    criterion.bench_function("read a plan of 60 segments", |bencher| {
        bencher.iter(|| file::read(black_box(text.as_bytes())));
    });
}

criterion_group!(benches, balances, sizes, files);
criterion_main!(benches);
