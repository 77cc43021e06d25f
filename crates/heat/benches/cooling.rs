//! How long a cooling takes: the figures of docs/performance.md.

#![allow(missing_docs, clippy::expect_used, reason = "criterion writes the functions, and a bench may stop")]

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use fh_heat::cooling::{Span, cool};
use fh_heat::drawing::{Sides, best_bite_mm, draw};
use fh_heat::hammer::Hammer;
use fh_heat::heats::{HeatRange, heats};
use fh_heat::hot_zone::{HotZone, Start};
use fh_heat::loss::Loss;
use fh_heat::profile::{Profile, Run};
use fh_heat::section::BarSection;
use fh_heat::substance::Substance;
use std::hint::black_box;

fn tapered(length_mm: f64) -> Profile {
    let thick = BarSection::Square { side_mm: 20.0 };
    let thin = BarSection::Square { side_mm: 12.0 };
    let runs = [Run::between(0.0, length_mm / 3.0, thin, thick), Run::even(length_mm / 3.0, length_mm, thick)];
    Profile::of_runs(runs.into_iter().map(|run| run.expect("a run")).collect()).expect("a bar")
}

fn cooling(bencher: &mut Criterion) {
    let mut group = bencher.benchmark_group("cooling 120 s");
    let start = Start::Zone(HotZone::start(1200.0, 100.0, 15.0));
    for cells in [100, 200, 400] {
        let bar = tapered(300.0);
        let span = Span { cell_mm: Some(300.0 / f64::from(cells)), ..Span::of(120.0) };
        for (name, loss) in [
            ("plain", Loss { skin: false, ..Loss::in_still_air() }),
            ("skin", Loss::in_still_air()),
            ("anvil", Loss::on_the_anvil(0.0, 100.0)),
        ] {
            group.bench_function(BenchmarkId::new(name, cells), |it| {
                it.iter(|| cool(black_box(&bar), Substance::Steel, &loss, &start, span));
            });
        }
    }
    group.finish();
}

fn answers(bencher: &mut Criterion) {
    let cooled = cool(
        &tapered(300.0),
        Substance::Steel,
        &Loss::in_still_air(),
        &Start::Zone(HotZone::start(1200.0, 100.0, 15.0)),
        Span::of(120.0),
    );
    bencher.bench_function("length in range, each second", |it| it.iter(|| black_box(&cooled).in_range(850.0, 1250.0)));
    bencher.bench_function("seconds in range of 80 mm", |it| {
        it.iter(|| black_box(&cooled).workable(0.0, 80.0, 850.0, true));
    });
    let square = |side: f64| Sides { height_mm: side, width_mm: side };
    let range = HeatRange { start_celsius: 1200.0, finish_celsius: 850.0, handling_seconds: 5.0, carbon_percent: 0.2 };
    bencher.bench_function("passes, best bite and heats of a drawing", |it| {
        it.iter(|| {
            let bite = best_bite_mm(black_box(square(20.0))).expect("a bite");
            let drawn = draw(square(20.0), square(10.0), bite, 0.2);
            heats(&drawn, 40_000.0, &Hammer::hand(1.0), &Loss::on_the_anvil(0.0, 100.0), range)
        });
    });
}

criterion_group!(benches, cooling, answers);
criterion_main!(benches);
