//! How long a mark sheet takes: the figures of docs/performance.md.

#![allow(missing_docs, clippy::expect_used, reason = "criterion writes the functions, and a bench may stop")]

use criterion::{Criterion, criterion_group, criterion_main};
use fh_core::balance::balance;
use fh_print::paper::{Orientation, Paper};
use fh_print::sheets::mark_sheet;
use fh_print::{pdf, svg};
use std::hint::black_box;

const PLAN: &[u8] = include_bytes!("../../../demo-plans/gate-hook.plan.json");

fn sheets(criterion: &mut Criterion) {
    let plan = fh_core::file::read(PLAN).expect("the demo reads");
    let sheet = || mark_sheet(black_box(&plan), &balance(&plan), Paper::A4, Orientation::Landscape);
    criterion.bench_function("lay out a mark sheet", |bencher| bencher.iter(sheet));
    criterion.bench_function("a mark sheet from plan to PDF", |bencher| bencher.iter(|| pdf(&sheet())));
    criterion.bench_function("a mark sheet from plan to SVG", |bencher| bencher.iter(|| svg(&sheet())));
}

criterion_group!(benches, sheets);
criterion_main!(benches);
