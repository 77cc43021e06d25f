//! What is in an open block: what could be made of its metal, each to be chosen with a click.

use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::heading;
use egui::{Button, RichText, Ui, vec2};
use fh_core::contents::contents;
use fh_core::describe::{answer_words, fine_length};
use fh_core::edit::{Edit, MarkEdit};

/// Shows what the block could become; nothing where it is no open one.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, at: usize, out: &mut Vec<Request>) {
    let (plan, bar) = (desk.document.plan(), desk.selection.bar);
    let Some((written, balance)) = plan.bars.get(bar).zip(desk.document.balance().bars.get(bar)) else { return };
    let Some(found) = contents(plan, written, balance).into_iter().find(|found| found.segment == at) else { return };
    let unit = plan.units.length;
    heading::show(ui, desk.theme, "What is in it");
    let words = format!("{} of bar, scale taken off. Click what it becomes.", fine_length(found.bar_length, unit));
    ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    for answer in found.answers {
        let [what, size] = answer_words(&answer, unit);
        if line(ui, desk, &what, &size) {
            out.push(Request::Edit(Edit::Mark(MarkEdit::Fill { bar, segment: at, with: answer })));
        }
    }
}

/// One answer: what it is at the left, how large it comes out at the right. Whether it was chosen.
fn line(ui: &mut Ui, desk: &Desk<'_>, what: &str, size: &str) -> bool {
    let wide = vec2(ui.available_width(), desk.theme.scaled(space::TARGET));
    let [what_words, size_words] = [what, size].map(|words| RichText::new(words).color(desk.theme.ink));
    let button = Button::new(what_words).right_text(size_words).min_size(wide);
    ui.add(button).on_hover_text(format!("Make it {what}, {size}.")).clicked()
}
