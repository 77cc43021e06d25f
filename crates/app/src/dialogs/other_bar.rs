//! The dialog that makes the piece from another bar: its sizes stay, and what that takes is shown first.

use super::frame::{Frame, main_button, other_button};
use super::whole_preview::WholePreview;
use crate::state::{Desk, Request, WholeAsk};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::{Sizing, section_form};
use egui::{Context, RichText, Ui};
use fh_core::edit::WholeChange;
use fh_core::plan::{SectionKind, SectionSpec};
use fh_work::Shop;

/// What it does.
const WORDS: &str = "The finished sizes stay. What is plain bar now is drawn or upset to them. A length that the bar was \
                     cut to goes, and marks that you fixed move.";

/// Another bar being chosen.
pub(crate) struct OtherBar {
    bar: usize,
    section: SectionSpec,
    /// The sections that lie on the rack.
    rack: Vec<SectionSpec>,
    preview: WholePreview,
}

impl OtherBar {
    /// For a bar of the plan, which has a section now.
    pub(crate) fn new(bar: usize, section: SectionSpec, rack: Vec<SectionSpec>, shop: Shop) -> Self {
        Self { bar, section, rack, preview: WholePreview::new(shop) }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "Make it from another bar", width: dialog::LIST };
        let contents = |ui: &mut Ui, _: &mut Vec<Request>| self.contents(ui, desk);
        frame.show(ctx, desk, out, contents, |ui, out, change| {
            if main_button(ui, desk.theme, "Make it from this", change.is_some())
                && let Some(change) = change
            {
                out.push(Request::Whole(WholeAsk::Change(change)));
            }
            if other_button(ui, "Cancel") {
                out.push(Request::CloseDialog);
            }
        });
    }

    /// The change that is chosen, where there is one that can be made.
    fn contents(&mut self, ui: &mut Ui, desk: &Desk<'_>) -> Option<WholeChange> {
        let stock = &desk.document.plan().bars.get(self.bar)?.stock;
        ui.label(format!("Its bar is {}.", stock.describe()));
        ui.label(RichText::new(WORDS).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
        ui.add_space(space::GAP);
        let sizing = Sizing::without_stock(desk.theme, desk.document.plan().units);
        let kinds: Vec<_> = SectionKind::ALL.into_iter().filter(|kind| kind.is_stock_shape()).collect();
        if let Some(section) = section_form::show(ui, &sizing, "new bar", &self.section, &kinds) {
            self.section = section;
        }
        self.on_rack(ui, desk);
        if stock.bar_sizes_nm() == self.section.bar_sizes_nm() {
            ui.add_space(space::GAP);
            ui.label(RichText::new("Say another bar to see what it takes.").color(desk.theme.ink_quiet));
            return None;
        }
        let change = WholeChange::OtherBar { bar: self.bar, section: Box::new(self.section.clone()) };
        self.preview.show(ui, desk, &change).then_some(change)
    }

    fn on_rack(&mut self, ui: &mut Ui, desk: &Desk<'_>) {
        if self.rack.is_empty() {
            return;
        }
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new("On your rack").color(desk.theme.ink_quiet));
            for section in &self.rack {
                if ui.button(section.describe()).clicked() {
                    self.section = section.clone();
                }
            }
        });
    }
}
