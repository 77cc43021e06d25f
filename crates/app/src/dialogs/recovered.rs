//! The dialog that offers back the work of a program that was killed.

use super::frame::{Frame, other_button};
use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use egui::{Context, RichText, Ui};
use fh_store::Leftover;
use std::time::SystemTime;

/// Work that was left over, the latest first.
pub(crate) struct Recovered {
    /// The work, while this dialog holds it.
    pub(crate) work: Vec<Leftover>,
}

impl Recovered {
    pub(super) fn show(&self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        Frame { title: "Unsaved work was found", width: 520.0 }.show(
            ctx,
            desk,
            out,
            |ui, out| {
                ui.label("The program ended last time before this was saved.");
                for (index, work) in self.work.iter().enumerate() {
                    row(ui, desk, index, work, out);
                }
            },
            |ui, out, ()| {
                if other_button(ui, "Decide later") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}

fn row(ui: &mut Ui, desk: &Desk<'_>, index: usize, work: &Leftover, out: &mut Vec<Request>) {
    ui.add_space(space::GROUP);
    let plan = work.plan().ok();
    let title = plan.map(|plan| plan.title).filter(|title| !title.trim().is_empty());
    let name = title.unwrap_or_else(|| "Untitled".to_owned());
    ui.label(
        RichText::new(format!("Recovered work from {}: {name}", age(work.written()))).text_style(Text::Strong.style()),
    );
    let place = work.document().map_or_else(|| "never saved in a file".to_owned(), |path| path.display().to_string());
    ui.label(RichText::new(place).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    ui.horizontal(|ui| {
        if ui.button("Open").clicked() {
            out.push(Request::Recovered(index, true));
        }
        if ui.button("Discard").clicked() {
            out.push(Request::Recovered(index, false));
        }
    });
}

/// How long ago, as people say it.
fn age(written: SystemTime) -> String {
    let seconds = written.elapsed().map_or(0, |age| age.as_secs());
    let count = |count: u64, unit: &str| format!("{count} {unit}{} ago", if count == 1 { "" } else { "s" });
    match seconds {
        0..=89 => "a minute ago".to_owned(),
        90..=5_399 => count((seconds + 30) / 60, "minute"),
        5_400..=129_599 => count((seconds + 1_800) / 3_600, "hour"),
        _ => count((seconds + 43_200) / 86_400, "day"),
    }
}
