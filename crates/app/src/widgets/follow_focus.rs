//! Brings what has the keyboard into sight: no stop of the Tab key is off the screen.

use crate::theme::space;
use egui::{Id, Ui};

/// Scrolls to what got the keyboard since the last frame, where it is among the contents that were just shown.
pub(crate) fn follow(ui: &Ui) {
    let slot = ui.scope_id().with("had the keyboard");
    let now = ui.memory(|memory| memory.focused());
    let before = ui.data(|data| data.get_temp::<Option<Id>>(slot)).flatten();
    if now == before {
        return;
    }
    ui.data_mut(|data| data.insert_temp(slot, now));
    let Some(response) = now.and_then(|id| ui.ctx().read_response(id)) else { return };
    let is_here = response.layer_id == ui.layer_id() && ui.min_rect().contains(response.rect.center());
    if is_here && !ui.clip_rect().contains_rect(response.rect) {
        ui.scroll_to_rect(response.rect.expand(space::GROUP), None);
    }
}
