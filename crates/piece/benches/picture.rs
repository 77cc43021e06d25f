//! How long a picture of a piece takes: the figures of docs/performance.md.

#![allow(missing_docs, clippy::expect_used, reason = "criterion writes the functions, and a bench may stop")]

mod run;

use criterion::{Criterion, criterion_group, criterion_main};
use fh_core::balance::balance;
use fh_piece::raster::{Drawn, Picture, Sight, Tone};
use fh_piece::{Quality, piece};
use run::plan;
use std::hint::black_box;

/// A view that is turned a little, the whole piece in it.
fn sight(center: [f64; 3], width_mm: f64, pixels: f64) -> Sight {
    let (s, c) = (-32.0_f64).to_radians().sin_cos();
    let (t, d) = 22.0_f64.to_radians().sin_cos();
    Sight {
        right: [c, s, 0.0],
        up: [-s * t, c * t, d],
        toward: [s * d, -c * d, t],
        center,
        pixels_per_mm: pixels / width_mm,
    }
}

fn pictures(criterion: &mut Criterion) {
    let plan = plan(50);
    let piece = piece(&plan, &balance(&plan), Quality::Screen);
    let meshes = || piece.solids.iter().map(|solid| &solid.mesh);
    criterion.bench_function("making 50 segments ready to be drawn", |bencher| {
        bencher.iter(|| Drawn::new(black_box(meshes())));
    });
    let drawn = Drawn::new(meshes());
    let bounds = piece.bounds().expect("the piece has a size");
    let center = std::array::from_fn(|axis| f64::midpoint(bounds.low[axis], bounds.high[axis]));
    let long = (0..3).map(|axis| bounds.high[axis] - bounds.low[axis]).fold(1.0, f64::max);
    let tone = Tone { bright: [220, 214, 210], dark: [110, 105, 100], edge: [76, 64, 56] };
    let (mut picture, mut colors) = (Picture::default(), Vec::new());
    for (name, finer) in [("while it turns", 1), ("once it rests", 2)] {
        let size = [900 * finer, 300 * finer];
        let sight = sight(center, long, size[1] as f64);
        criterion.bench_function(&format!("picture of {} triangles {name}", drawn.triangle_count()), |bencher| {
            bencher.iter(|| {
                picture.draw(black_box(&drawn), &sight, size, finer);
                picture.colored(&[tone], |_| 0, finer, &mut colors);
            });
        });
    }
}

criterion_group!(benches, pictures);
criterion_main!(benches);
