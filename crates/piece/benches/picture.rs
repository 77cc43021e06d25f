//! How long a picture of a piece takes: the figures of docs/performance.md.

#![allow(missing_docs, clippy::expect_used, reason = "criterion writes the functions, and a bench may stop")]

use criterion::{Criterion, criterion_group, criterion_main};
use fh_core::balance::balance;
use fh_core::file;
use fh_core::plan::Plan;
use fh_piece::raster::{Drawn, Picture, Sight, Tone};
use fh_piece::{Quality, piece};
use std::hint::black_box;

/// A run of segments that a real plan mixes.
const RUN: &str = r#"
{"name":"point","form":{"taper":{"length":"60 mm","from":{"square":"10 mm"},"to":{"round":"6 mm"},"runout":"eased"}}},
{"name":"hook","form":{"drawn":{"section":{"round":"10 mm"}}},"bend":{"curve":{"angle":"180 deg","inside_radius":"25 mm"}}},
{"name":"set-down","form":{"shoulder":{"to":{"square":"12 mm"},"radius":"3 mm","sides":"all"}}},
{"name":"shank","form":{"plain":{"length":"120 mm"}},"bend":{"twist":{"turns":2}}},
{"name":"scroll","form":{"taper":{"to":{"square":"5 mm"}}},"bend":{"scroll":{"inner_radius":"8 mm","outer_radius":"50 mm","turns":1.5,"run":"opening","eye":"end"}}},
{"name":"corner","form":{"peak":{"section":{"square":"12 mm"}}},"bend":{"corner":{"angle":"90 deg","inside_radius":"6 mm"}}},
{"name":"reed","form":{"taper":{"length":"80 mm","from":{"half_round":{"width":"12 mm","height":"5 mm"}},"to":{"hexagon":"8 mm"}}}},
{"name":"boss","form":{"hole":{"outline":{"disc":{"diameter":"30 mm"}},"thickness":"6 mm","hole":{"round":"8 mm"},"made":"punched"}}},
{"name":"leaf","form":{"flag":{"outline":{"leaf":{"length":"60 mm","width":"24 mm"}},"thickness":{"root":"4 mm","tip":"2 mm"}}}},
{"name":"knob","form":{"ball":{"diameter":"20 mm"}}}"#;

fn plan(segments: usize) -> Plan {
    let run: Vec<&str> = RUN.trim().split(",\n").collect();
    let all: Vec<&str> = (0..segments).map(|index| run[index % run.len()]).collect();
    let text = format!(
        r#"{{"firstheat":1,"title":"bench","units":{{"length":"mm","marks":"1 mm"}},
            "bars":[{{"name":"bar","stock":{{"square":"12 mm"}},"segments":[{}]}}]}}"#,
        all.join(",\n")
    );
    file::read(text.as_bytes()).expect("the bench's plan reads")
}

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
