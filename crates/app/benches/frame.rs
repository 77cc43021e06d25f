//! How long a frame of the editor takes on the processor: the figures of docs/performance.md.

#![allow(missing_docs, clippy::expect_used, reason = "criterion writes the functions, and a bench may stop")]

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use egui::{Context, Event, Key, Modifiers, Pos2, RawInput, Rect, vec2};
use fh_app::{Editor, Scripted, Services};
use fh_core::plan::Plan;

/// A plan of so many segments: the gate hook's, over and over.
fn plan(segments: usize) -> Plan {
    let text = include_bytes!("../../../demo-plans/gate-hook.plan.json");
    let mut plan = fh_core::file::read(text).expect("the demo reads");
    let run = plan.bars[0].segments.clone();
    plan.bars[0].segments = run.iter().cycle().take(segments).cloned().collect();
    plan
}

/// A press of the keys that open the order of work.
fn open_the_order(screen: Rect) -> RawInput {
    let (key, modifiers) = (Key::F9, Modifiers::NONE);
    let press = |pressed| Event::Key { key, physical_key: None, pressed, repeat: false, modifiers };
    RawInput { screen_rect: Some(screen), events: vec![press(true), press(false)], ..RawInput::default() }
}

fn frames(criterion: &mut Criterion) {
    bench(criterion, "a frame of the editor", &[20, 60, 1000], false);
    bench(criterion, "a frame of the order of work", &[20, 60], true);
}

fn bench(criterion: &mut Criterion, name: &str, sizes: &[usize], order: bool) {
    let mut group = criterion.benchmark_group(name);
    for segments in sizes.iter().copied() {
        let context = Context::default();
        fh_app::theme::install_fonts(&context);
        let services = Services { home: None, dialogs: Box::new(Scripted::default()) };
        let mut editor = Editor::with_plan(services, plan(segments));
        let screen = Rect::from_min_size(Pos2::ZERO, vec2(1366.0, 768.0));
        let mut time = 0.0;
        for _ in 0..3 {
            let input = RawInput { screen_rect: Some(screen), ..RawInput::default() };
            let _ = context.run_ui(input, |ui| editor.show(ui));
        }
        if order {
            let _ = context.run_ui(open_the_order(screen), |ui| editor.show(ui));
        }
        group.bench_function(BenchmarkId::from_parameter(segments), |bencher| {
            bencher.iter(|| {
                time += 1.0 / 60.0;
                let input = RawInput { screen_rect: Some(screen), time: Some(time), ..RawInput::default() };
                let output = context.run_ui(input, |ui| editor.show(ui));
                context.tessellate(output.shapes, output.pixels_per_point)
            });
        });
    }
    group.finish();
}

criterion_group!(benches, frames);
criterion_main!(benches);
