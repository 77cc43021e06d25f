//! How long a piece takes: the figures of docs/performance.md.

#![allow(missing_docs, clippy::expect_used, reason = "criterion writes the functions, and a bench may stop")]

mod run;

use criterion::{Criterion, criterion_group, criterion_main};
use fh_core::balance::balance;
use fh_piece::{Quality, overlaps, piece};
use run::plan;
use std::hint::black_box;

fn pieces(criterion: &mut Criterion) {
    let plan = plan(50);
    let balance = balance(&plan);
    for (name, quality) in [("for the screen", Quality::Screen), ("for files", Quality::Print)] {
        criterion.bench_function(&format!("piece of 50 segments {name}"), |bencher| {
            bencher.iter(|| piece(black_box(&plan), black_box(&balance), quality));
        });
    }
}

fn overlapping(criterion: &mut Criterion) {
    let plan = plan(50);
    let balance = balance(&plan);
    let piece = piece(&plan, &balance, Quality::Screen);
    criterion.bench_function("overlaps of 50 segments", |bencher| {
        bencher.iter(|| overlaps(black_box(&plan), black_box(&balance), black_box(&piece)));
    });
}

criterion_group!(benches, pieces, overlapping);
criterion_main!(benches);
