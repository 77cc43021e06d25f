//! How long an order of work takes: the figures of docs/performance.md.

#![allow(missing_docs, clippy::expect_used, reason = "criterion writes the functions, and a bench may stop")]

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_work::{Shop, after, work_out};
use std::hint::black_box;

const BRACKET: &str = include_str!("../../../demo-plans/herb-bracket.plan.json");

/// A bar of so many parts: leaf ends, tapers, bosses and bends after one another.
fn long_plan(count: usize) -> Plan {
    let parts = [
        r#"{ "form": { "taper": { "length": "60 mm", "to": { "square": "8 mm" } } } }"#,
        r#"{ "form": { "drawn": { "length": "80 mm", "section": { "square": "8 mm" } } }, "bend": { "curve": { "inside_radius": "30 mm", "side": "0 deg" } } }"#,
        r#"{ "form": { "plain": { "length": "60 mm" } } }"#,
        r#"{ "form": { "hole": { "outline": { "rectangle": { "length": "34 mm", "width": "26 mm" } }, "thickness": "5 mm", "hole": { "round": "7 mm" }, "made": "punched" } } }"#,
        r#"{ "form": { "plain": { "length": "40 mm" } } }"#,
        r#"{ "form": { "flag": { "outline": { "leaf": { "length": "60 mm", "width": "25 mm" } }, "thickness": "4 mm" } } }"#,
    ];
    let segments: Vec<&str> = (0..count).map(|at| parts[at % parts.len()]).collect();
    let json = format!(
        r#"{{ "firstheat": 1, "title": "Long", "units": {{ "length": "mm", "marks": "1 mm" }}, "material": "mild steel",
            "bars": [ {{ "name": "bar", "stock": {{ "square": "12 mm" }}, "segments": [ {} ] }} ] }}"#,
        segments.join(", ")
    );
    fh_core::file::read(json.as_bytes()).expect("the plan reads")
}

fn orders(bencher: &mut Criterion) {
    let mut group = bencher.benchmark_group("work out the order");
    let bracket = fh_core::file::read(BRACKET.as_bytes()).expect("the demo reads");
    for (name, plan) in [("bracket", bracket), ("20", long_plan(20)), ("60", long_plan(60))] {
        let balance = balance(&plan);
        group.bench_function(BenchmarkId::from_parameter(name), |it| {
            it.iter(|| work_out(black_box(&plan), &balance, &Shop::default()));
        });
    }
    group.finish();
    let plan = long_plan(60);
    let balance = balance(&plan);
    let worked = work_out(&plan, &balance, &Shop::default());
    bencher.bench_function("the bar after half of 60 parts' steps", |it| {
        it.iter(|| after(black_box(&plan), &balance, &worked, worked.steps.len() / 2));
    });
}

criterion_group!(benches, orders);
criterion_main!(benches);
