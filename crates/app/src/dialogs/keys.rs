//! The list of keys.

use super::frame::{Frame, main_button};
use crate::commands::{GROUPS, keys_text};
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use egui::{Context, Grid, RichText, Ui};

/// The width of the keys, in points at normal text size.
const KEYS: f32 = 140.0;
/// The keys that belong to no command.
const OTHERS: [(&str, &str); 14] = [
    ("Tab, Shift+Tab", "The next or the previous field, button or bar"),
    ("← →, Home, End", "On a bar: the next, previous, first or last mark"),
    ("↑ ↓", "On a mark: one step of the rounding. In a field: one step more or less"),
    ("Alt+↑ ↓", "On a mark: a fine step"),
    ("Shift+↑ ↓", "On a mark: the next part trades metal, the bar keeps its length"),
    ("Enter", "On a mark: type its exact place. In a field: take what was typed"),
    ("Esc", "Take back a drag or what was typed; close a dialog"),
    ("Drag", "A mark: it snaps to the rounding"),
    ("Alt+drag", "A mark: free of the rounding"),
    ("Shift+drag", "A mark: the next part trades metal, the bar keeps its length"),
    ("Ctrl+wheel", "Zoom about the pointer"),
    ("← → ↑ ↓, + −", "On the piece: turn it, zoom. On the handle of a bend: one step more or less"),
    ("Shift+arrows, Home", "On the piece: move it, show all of it"),
    ("Drag, wheel", "The piece: turn it, zoom; with Shift or the middle button it moves"),
];

pub(super) fn show(ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
    Frame { title: "Keys", width: dialog::LIST }.show(
        ctx,
        desk,
        out,
        |ui, _| {
            for (group, rows) in GROUPS {
                head(ui, desk, group);
                Grid::new(group)
                    .num_columns(2)
                    .min_col_width(desk.theme.scaled(KEYS))
                    .spacing([space::GROUP, space::TIGHT])
                    .show(ui, |ui| {
                        for row in rows.iter().filter(|row| row.keys.is_some()) {
                            line(ui, &keys_text(ctx, row.command), row.text.trim_end_matches('…'));
                        }
                    });
            }
            head(ui, desk, "Marks, fields and the pointer");
            Grid::new("by hand")
                .num_columns(2)
                .min_col_width(desk.theme.scaled(KEYS))
                .spacing([space::GROUP, space::TIGHT])
                .show(ui, |ui| {
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
