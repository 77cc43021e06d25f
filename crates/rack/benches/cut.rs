//! How long a cut list and the question which bar take: the figures of docs/performance.md.

#![allow(missing_docs, clippy::expect_used, reason = "criterion writes the functions, and a bench may stop")]

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use fh_core::plan::Plan;
use fh_rack::cut::{Demand, Goal, Problem, Supply, Way, cut};
use fh_rack::kept::merchant::{self, Merchant};
use fh_rack::kept::rack::Rack;
use fh_rack::list::source::{Source, sources};
use fh_rack::which::options::{options, work_options};
use std::hint::black_box;

/// So many lengths of 120 to 2400 mm, `each` times on the average, from bars of 6 m.
fn problem(lengths: usize, each: u64) -> Problem {
    let mut seed = 20_u64;
    let mut next = |most: u64| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) % most
    };
    let mut demand = || {
        let length_nm = i64::try_from(1200 + next(22_800)).unwrap_or(1200) * 100_000;
        Demand { count: 1 + next(2 * each - 1), ways: vec![Way { section: String::new(), length_nm, extra: 0 }] }
    };
    let demands = (0..lengths).map(|_| demand()).collect();
    let supply = Supply { section: String::new(), length_nm: 6_000_000_000, end_nm: 0, count: None, price: 1 };
    let goals = vec![Goal::Cost, Goal::Scrap, Goal::Longest];
    Problem { kerf_nm: 3_000_000, keep_from_nm: Some(300_000_000), supplies: vec![supply], demands, goals }
}

fn cuts(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("cut");
    group.sample_size(10);
    for (lengths, each) in [(20, 3), (60, 2), (200, 10)] {
        let problem = problem(lengths, each);
        let pieces: u64 = problem.demands.iter().map(|demand| demand.count).sum();
        group.bench_function(BenchmarkId::new("lengths", format!("{lengths} of {pieces} pieces")), |bencher| {
            bencher.iter(|| cut(black_box(&problem), &|| true, &mut |_| ()));
        });
    }
    group.finish();
}

/// A plan of 20 parts.
fn plan() -> Plan {
    let parts = [
        r#"{ "form": { "taper": { "length": "60 mm", "to": { "square": "8 mm" } } } }"#,
        r#"{ "form": { "drawn": { "length": "80 mm", "section": { "square": "8 mm" } } } }"#,
        r#"{ "form": { "plain": { "length": "60 mm" } } }"#,
        r#"{ "form": { "flag": { "outline": { "leaf": { "length": "60 mm", "width": "25 mm" } }, "thickness": "4 mm" } } }"#,
    ];
    let segments: Vec<&str> = (0..20).map(|at| parts[at % parts.len()]).collect();
    let json = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [ {{ "name": "bar", "stock": {{ "square": "12 mm" }}, "segments": [ {} ] }} ] }}"#,
        segments.join(", ")
    );
    fh_core::file::read(json.as_bytes()).expect("the plan reads")
}

/// What can be had of 40 sections.
fn forty() -> Vec<Source> {
    let mut merchant = Merchant::common();
    merchant.bars.truncate(2);
    for (line, count) in merchant.bars.iter_mut().zip([14, 15]) {
        line.sections.truncate(count);
    }
    let flats = merchant::Merchant::common().bars.remove(2);
    merchant.bars.push(flats);
    merchant.bars[2].sections.truncate(11);
    sources(&Rack::default(), &merchant).expect("there is no price")
}

fn bars(criterion: &mut Criterion) {
    let (plan, sources) = (plan(), forty());
    let mut group = criterion.benchmark_group("bars");
    group.sample_size(10);
    group.bench_function("40 sections for 20 parts", |bencher| {
        bencher.iter(|| options(black_box(&plan), 0, &sources));
    });
    group.bench_function("the same with their orders", |bencher| {
        bencher.iter(|| {
            let mut all = options(&plan, 0, &sources);
            work_options(&plan, 0, &mut all, (&fh_work::Shop::default(), 2.0), &|| true, &mut |_| ());
            all
        });
    });
    group.finish();
}

criterion_group!(benches, cuts, bars);
criterion_main!(benches);
