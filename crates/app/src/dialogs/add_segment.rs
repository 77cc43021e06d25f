//! The dialog that offers the forms of a new segment, each with a drawing and a line of what it is.

use super::frame::{Frame, other_button};
use crate::state::{Desk, Focus, Request, Side};
use crate::theme::space;
use crate::widgets::form_card;
use egui::{Context, Grid};
use fh_core::plan::FormKind;

/// The least width of a card, in points at normal text size.
const CARD: f32 = 250.0;
/// The most cards beside each other.
const MOST_COLUMNS: usize = 4;

/// Shows the dialog.
pub(super) fn show(ctx: &Context, desk: &Desk<'_>, side: Side, out: &mut Vec<Request>) {
    let bar = desk.document.plan().bars.get(desk.selection.bar);
    let title = match side {
        _ if bar.is_some_and(|bar| bar.segments.is_empty()) => "Add the first part",
        _ if matches!(desk.selection.focus, Focus::Branch { .. }) => "Add a part to the branch",
        Side::Before => "Add a part before",
        Side::After => "Add a part after",
    };
    Frame { title, width: 1180.0 }.show(
        ctx,
        desk,
        out,
        |ui, out| {
            let columns = ((ui.available_width() / desk.theme.scaled(CARD)) as usize).clamp(1, MOST_COLUMNS);
            let width = ((ui.available_width() - space::GAP) / columns as f32 - space::GAP).floor();
            Grid::new("forms").num_columns(columns).spacing([space::GAP, space::GAP]).show(ui, |ui| {
                for (index, kind) in FormKind::ALL.into_iter().enumerate() {
                    if form_card::show(ui, desk.theme, kind, width).clicked() {
                        out.push(Request::AddSegment(kind, side));
                    }
                    if (index + 1) % columns == 0 {
                        ui.end_row();
                    }
                }
            });
        },
        |ui, out, ()| {
            if other_button(ui, "Cancel") {
                out.push(Request::CloseDialog);
            }
        },
    );
}
