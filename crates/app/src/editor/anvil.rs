//! To the anvil and back: the whole screen for one step at a time.

use super::Editor;
use crate::anvil::{Anvil, Wish};
use egui::{CentralPanel, Context, Frame, Ui, ViewportCommand};

impl Editor {
    /// Opens the view at the anvil at the chosen step, or the first.
    pub(crate) fn go_to_the_anvil(&mut self, ctx: &Context) {
        self.anvil = Some(Anvil::default());
        self.order.play(false, 0.0);
        self.order.refresh(&self.document);
        if self.order.at().is_none() {
            self.order.choose(Some(0));
        }
        self.refresh_order();
        ctx.send_viewport_cmd(ViewportCommand::Fullscreen(true));
        ctx.request_repaint();
    }

    /// Shows it in place of everything else.
    pub(super) fn show_anvil(&mut self, ui: &mut Ui, ctx: &Context) {
        // It is taken out so that it may change while it looks at the desk.
        let Some(mut anvil) = self.anvil.take() else { return };
        let desk = self.desk_at_the_anvil();
        let reads_keys = self.dialog.is_none();
        let frame = Frame::new().fill(desk.theme.ground);
        let wish = CentralPanel::default().frame(frame).show(ui, |ui| anvil.show(ui, &desk, reads_keys)).inner;
        match wish {
            Some(Wish::Leave) => {
                ctx.send_viewport_cmd(ViewportCommand::Fullscreen(false));
                ctx.request_repaint();
                return;
            }
            Some(Wish::Turn(steps)) => {
                let spent = anvil.take_spent(ui.input(|input| input.time));
                if let Some(spent) = spent.filter(|_| steps > 0) {
                    self.order.spend(&self.document, spent);
                }
                self.order.choose_by(steps);
                ctx.request_repaint();
            }
            None => {}
        }
        self.anvil = Some(anvil);
    }

    fn desk_at_the_anvil(&self) -> crate::state::Desk<'_> {
        crate::state::Desk { order: self.order.desk(), ..self.desk() }
    }
}
