//! Who has the keyboard: a field that gets it has its whole text selected, so that what is typed takes its place.

use egui::text::{CCursor, CCursorRange};
use egui::text_edit::{TextEditOutput, TextEditState};
use egui::{Context, Id, Ui};

/// Looks after the selection of a field that was just shown: its whole text where it gets the keyboard or is
/// double-clicked. A click in a field that has the keyboard already places the caret, and dragging selects as usual.
pub(crate) fn select_on_focus(ui: &Ui, output: &TextEditOutput, text: &str) {
    let response = &output.response.response;
    let pending = response.id.with("to be selected");
    if response.gained_focus() {
        ui.data_mut(|data| data.insert_temp(pending, true));
    }
    let (down, drags) = ui.input(|input| (input.pointer.any_down(), input.pointer.is_decidedly_dragging()));
    let is_pending = ui.data(|data| data.get_temp::<bool>(pending)).is_some();
    if is_pending && (!down || drags) {
        ui.data_mut(|data| data.remove::<bool>(pending));
    }
    // While the button is down the caret stays where it was put, so that a selection can be dragged from there.
    if (is_pending && !down) || response.double_clicked() {
        select_all(ui.ctx(), response.id, text);
    }
}

/// Selects the whole text of a field.
fn select_all(ctx: &Context, id: Id, text: &str) {
    let mut state = TextEditState::load(ctx, id).unwrap_or_default();
    let all = CCursorRange::two(CCursor::default(), CCursor::new(text.chars().count()));
    state.cursor.set_char_range(Some(all));
    state.store(ctx, id);
}

/// Gives the keyboard to a field, with its whole text selected.
pub(super) fn give(ctx: &Context, id: Id, text: &str) {
    ctx.memory_mut(|memory| memory.request_focus(id));
    select_all(ctx, id, text);
}

/// When the keyboard was asked for, and for which field; none for the first that there is.
type Wanted = (u64, Option<&'static str>);

/// Gives the keyboard to the first field for a size that is shown in the next frame.
pub(crate) fn ask_for_size(ctx: &Context) {
    ask(ctx, None);
}

/// Gives the keyboard to the field of this name.
pub(crate) fn ask_for_field(ctx: &Context, name: &'static str) {
    ask(ctx, Some(name));
}

fn ask(ctx: &Context, name: Option<&'static str>) {
    let wanted: Wanted = (ctx.cumulative_frame_nr(), name);
    ctx.data_mut(|data| data.insert_temp(wanted_id(), wanted));
    ctx.request_repaint();
}

/// Whether the field of a size is to have the keyboard; only the first that asks is told so.
pub(super) fn is_wanted(ui: &Ui, name: &str) -> bool {
    let ctx = ui.ctx();
    let wanted = ctx.data_mut(|data| data.get_temp::<Wanted>(wanted_id()));
    let wanted = wanted.filter(|(_, named)| named.is_none_or(|named| named == name));
    let Some((asked, _)) = wanted.filter(|(asked, _)| *asked < ctx.cumulative_frame_nr()) else { return false };
    if !ui.memory(|memory| memory.allows_interaction(ui.layer_id())) {
        // A dialog that was closed in the last frame still holds the keyboard in this one.
        ctx.request_repaint();
        return false;
    }
    ctx.data_mut(|data| data.remove::<Wanted>(wanted_id()));
    // Where no field was there to take it, a later one must not.
    asked + LATEST >= ctx.cumulative_frame_nr()
}

/// For how many frames the keyboard is kept for a field.
const LATEST: u64 = 2;

fn wanted_id() -> Id {
    Id::unique("a size is to have the keyboard")
}
