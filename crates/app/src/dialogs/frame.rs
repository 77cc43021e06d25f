//! The frame that every dialog stands in: a head, contents that scroll where they must, and the buttons.

use crate::state::{Desk, Request};
use crate::theme::{Text, Theme, space};
use crate::widgets::entry;
use egui::{Button, Context, Id, Key, Modal, RichText, ScrollArea, Ui};

/// What the head and the buttons take of the height, in points at normal text size.
const ROUND_ABOUT: f32 = 110.0;

/// It is no narrower than this, however small the window was made, in points.
const LEAST: f32 = 40.0;

/// A dialog's head and width.
pub(super) struct Frame<'a> {
    pub(super) title: &'a str,
    /// Its width in points at normal text size.
    pub(super) width: f32,
}

impl Frame<'_> {
    /// Shows the contents and below them the buttons, which are given what the contents chose. Escape closes the dialog.
    pub(super) fn show<R>(
        &self,
        ctx: &Context,
        desk: &Desk<'_>,
        out: &mut Vec<Request>,
        contents: impl FnOnce(&mut Ui, &mut Vec<Request>) -> R,
        buttons: impl FnOnce(&mut Ui, &mut Vec<Request>, R),
    ) {
        let theme = desk.theme;
        let screen = ctx.content_rect().size();
        let width = theme.scaled(self.width).min(screen.x - 8.0 * space::GROUP).max(LEAST);
        let area = Modal::default_area(Id::unique(("dialog", self.title)));
        let window = egui::Frame::window(&ctx.global_style());
        let shown = Modal::new(Id::unique(("dialog", self.title))).area(area).frame(window).show(ctx, |ui| {
            ui.set_width(width);
            ui.label(RichText::new(self.title).text_style(Text::Title.style()).color(theme.ink));
            ui.add_space(space::GAP);
            let height = screen.y - theme.scaled(ROUND_ABOUT) - 6.0 * space::GROUP;
            let most = height.max(theme.scaled(120.0));
            // As high as it has to be at once: a dialog that grows from frame to frame moves under the pointer.
            let area = ScrollArea::vertical().auto_shrink([false, true]).max_height(most).min_scrolled_height(most);
            let chosen = area.show(ui, |ui| contents(ui, out)).inner;
            ui.add_space(space::GROUP);
            ui.horizontal_wrapped(|ui| buttons(ui, out, chosen));
        });
        let escape = shown.is_top_modal && !shown.any_popup_open && ctx.input(|input| input.key_pressed(Key::Escape));
        if escape {
            out.push(Request::CloseDialog);
        }
    }
}

/// The button that does what the dialog is for; whether it was pressed, by hand or by Enter.
pub(super) fn main_button(ui: &mut Ui, theme: &Theme, text: &str, enabled: bool) -> bool {
    let enabled = enabled && !entry::shows_a_mistake(ui.ctx());
    let words = RichText::new(text).text_style(Text::Strong.style()).color(theme.panel_raised);
    let button = Button::new(words).fill(theme.ink);
    let clicked = ui.add_enabled(enabled, button).clicked();
    clicked || (enabled && ui.input(|input| input.key_pressed(Key::Enter)) && !has_focus_elsewhere(ui))
}

/// A button beside it.
pub(super) fn other_button(ui: &mut Ui, text: &str) -> bool {
    ui.button(text).clicked()
}

/// Whether a button or a list has the keyboard: Enter is meant for it.
fn has_focus_elsewhere(ui: &Ui) -> bool {
    ui.memory(|memory| memory.focused()).is_some()
}
