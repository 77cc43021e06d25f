//! Where a mark stands on the screen: asked of the same editor, laid out in a window of the same size without a screen.

use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use fh_app::{Editor, Scripted, Services};
use fh_store::Home;
use std::path::Path;

/// The place of the mark at the end of a segment, in pixels of the window.
pub(crate) fn mark(plan: &Path, segment: usize, size: [f32; 2]) -> [i32; 2] {
    let home = tempfile::tempdir().unwrap();
    std::fs::write(home.path().join("settings.json"), r#"{ "tour_seen": true, "piece_open": false }"#).unwrap();
    let services = Services { home: Some(Home::at(home.path())), dialogs: Box::new(Scripted::new(Vec::new())) };
    let editor = Editor::with_file(services, plan);
    let name = format!("Mark {}: end of {}", segment + 1, editor.plan().bars[0].segments[segment].name);
    let mut harness = Harness::builder()
        .with_size(size)
        .with_max_steps(24)
        .build_ui_state(|ui, editor: &mut Editor| editor.show(ui), editor);
    fh_app::theme::install_fonts(&harness.ctx);
    harness.run();
    let center = harness.get_by_label(&name).rect().center();
    [center.x.round() as i32, center.y.round() as i32]
}
