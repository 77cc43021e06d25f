//! Two plans side by side in lines: what it is, how it is in the first and in the second, and by how much they differ.

use crate::theme::{Text, Theme, space};
use crate::widgets::heading;
use egui::{Label, RichText, Ui, vec2};
use fh_work::{ComparedGroup, ComparedLine};

/// The shares of the width of the four columns.
const SHARES: [f32; 4] = [0.24, 0.31, 0.31, 0.14];
/// What stands where a plan has nothing.
const NOTHING: &str = "–";

/// Shows the groups; of them only what differs where that is wished. `heads` names the two plans.
pub(crate) fn show(ui: &mut Ui, theme: &Theme, heads: [&str; 2], groups: &[ComparedGroup], only_what_differs: bool) {
    let wanted = |line: &&ComparedLine| !only_what_differs || line.differs();
    let bold = |words: &str| RichText::new(words).text_style(Text::Strong.style()).color(theme.ink);
    row(ui, ["", heads[0], heads[1], "by"].map(bold));
    let mut is_empty = true;
    for group in groups {
        let lines: Vec<&ComparedLine> = group.lines.iter().filter(wanted).collect();
        if lines.is_empty() {
            continue;
        }
        is_empty = false;
        heading::show(ui, theme, &group.title);
        for line in lines {
            row(ui, cells(theme, line, !only_what_differs));
        }
    }
    if is_empty {
        ui.add_space(space::GAP);
        ui.label(RichText::new("They are the same in metal, marks, parts and heats.").color(theme.ink));
    }
}

/// What differs is in full ink, and has a sign before it where it stands among what is the same.
fn cells(theme: &Theme, line: &ComparedLine, is_among_same: bool) -> [RichText; 4] {
    let ink = if line.differs() { theme.ink } else { theme.ink_quiet };
    let sign = if line.differs() && is_among_same { "≠ " } else { "" };
    let text = |words: &Option<String>| words.clone().unwrap_or_else(|| NOTHING.to_owned());
    let by = line.by.clone().unwrap_or_default();
    [format!("{sign}{}", line.what), text(&line.first), text(&line.second), by]
        .map(|words| RichText::new(words).color(ink))
}

/// One line of four columns, each as high as its words need.
fn row(ui: &mut Ui, cells: [RichText; 4]) {
    let room = ui.available_width() - 3.0 * space::GAP;
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = space::GAP;
        for (words, share) in cells.into_iter().zip(SHARES) {
            ui.allocate_ui_with_layout(vec2(room * share, 0.0), egui::Layout::top_down(egui::Align::Min), |ui| {
                ui.set_width(room * share);
                ui.add(Label::new(words).wrap());
            });
        }
    });
}
