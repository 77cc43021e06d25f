//! The list of keys.

use super::frame::{Frame, main_button};
use crate::commands::{GROUPS, keys_text};
use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use egui::{Context, Grid, RichText, Ui};

/// The keys that belong to no command.
const OTHERS: [(&str, &str); 8] = [
    ("Tab, Shift+Tab", "Go to the next or the previous field or boundary"),
    ("← →", "On a boundary: move it by one step of the marks' rounding"),
    ("Enter", "On a boundary: type its exact place. In a field: take what was typed"),
    ("↑ ↓", "In a field for a size: one step more or less"),
    ("Esc", "Take a drag or what was typed back; close a dialog"),
    ("Ctrl", "While dragging a boundary: free of the rounding"),
    ("Shift", "While dragging a boundary: the neighbor trades metal instead of the bar growing"),
    ("Ctrl + wheel", "Zoom about the pointer"),
];

pub(super) fn show(ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
    Frame { title: "Keys", width: 620.0 }.show(
        ctx,
        desk,
        out,
        |ui, _| {
            for (group, rows) in GROUPS {
                head(ui, desk, group);
                Grid::new(group).num_columns(2).spacing([space::GROUP, space::TIGHT]).show(ui, |ui| {
                    for row in rows.iter().filter(|row| row.keys.is_some()) {
                        line(ui, &keys_text(ctx, row.command), row.text.trim_end_matches('…'));
                    }
                });
            }
            head(ui, desk, "By hand");
            Grid::new("by hand").num_columns(2).spacing([space::GROUP, space::TIGHT]).show(ui, |ui| {
                for (keys, words) in OTHERS {
                    line(ui, keys, words);
                }
            });
        },
        |ui, out, ()| {
            if main_button(ui, desk.theme, "Close", true) {
                out.push(Request::CloseDialog);
            }
        },
    );
}

fn head(ui: &mut Ui, desk: &Desk<'_>, words: &str) {
    ui.add_space(space::GAP);
    ui.label(RichText::new(words).text_style(Text::Heading.style()).color(desk.theme.ink));
}

fn line(ui: &mut Ui, keys: &str, words: &str) {
    ui.label(RichText::new(keys).text_style(Text::Strong.style()));
    ui.add(egui::Label::new(words).wrap());
    ui.end_row();
}
