//! How long a frame of the editor takes on the processor: the figures of docs/performance.md.

#![allow(missing_docs, clippy::expect_used, reason = "criterion writes the functions, and a bench may stop")]

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use egui::{ClippedPrimitive, Context, Event, Key, Modifiers, Pos2, RawInput, Rect, vec2};
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

/// What comes from outside before a frame at a time in seconds.
fn input(time: f64) -> RawInput {
    let screen = Rect::from_min_size(Pos2::ZERO, vec2(1366.0, 768.0));
    RawInput { screen_rect: Some(screen), time: Some(time), ..RawInput::default() }
}

/// A press of the key that opens the order of work.
fn open_the_order() -> RawInput {
    let press =
        |pressed| Event::Key { key: Key::F9, physical_key: None, pressed, repeat: false, modifiers: Modifiers::NONE };
    RawInput { events: vec![press(true), press(false)], ..input(0.0) }
}

/// One frame, up to the triangles that a graphics card is given.
fn frame(context: &Context, editor: &mut Editor, input: RawInput) -> Vec<ClippedPrimitive> {
    let mut output = context.run_ui(input, |ui| editor.show(ui));
    // No card is there to take them.
    output.textures_delta.clear();
    context.tessellate(output.shapes, output.pixels_per_point)
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
        let mut time = 0.0;
        for _ in 0..3 {
            let _ = frame(&context, &mut editor, input(time));
        }
        if order {
            let _ = frame(&context, &mut editor, open_the_order());
        }
        group.bench_function(BenchmarkId::from_parameter(segments), |bencher| {
            bencher.iter(|| {
                time += 1.0 / 60.0;
                frame(&context, &mut editor, input(time))
            });
        });
    }
    group.finish();
}

criterion_group!(benches, frames);
criterion_main!(benches);
