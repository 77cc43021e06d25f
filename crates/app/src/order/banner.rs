//! The line over the strips that says at which step the bars are shown, and leads back.

use crate::state::{Command, Desk, OrderAsk, Request, Shown};
use crate::theme::{Text, space};
use crate::widgets::command_button::bar_button;
use egui::{Button, Frame, Margin, RichText, Ui};
use fh_core::describe::short_name;

/// Which bar is shown, where there are several: `, twin`.
fn bar_words(desk: &Desk<'_>, shown: &Shown) -> String {
    let bars = &desk.document.plan().bars;
    let name = shown.bar.and_then(|bar| bars.get(bar)).map(|bar| bar.name.trim()).filter(|_| bars.len() > 1);
    name.filter(|name| !name.is_empty()).map_or_else(String::new, |name| format!(", {}", short_name(name)))
}

/// Shows the line.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(order) = desk.order else { return };
    let theme = desk.theme;
    let words = order.shown.map_or_else(
        || "Finished bars; no step chosen".to_owned(),
        |shown| format!("After step {} of {}{}", shown.after, shown.of, bar_words(desk, shown)),
    );
    let fill = if order.shown.is_some() { theme.band_selected } else { theme.panel };
    Frame::new().fill(fill).inner_margin(Margin::symmetric(12, 4)).show(ui, |ui| {
        ui.set_min_width(ui.available_width());
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing = egui::vec2(space::TIGHT, space::TIGHT);
            ui.label(RichText::new(words).text_style(Text::Strong.style()).color(theme.ink));
            ui.add_space(space::GAP);
            bar_button(ui, desk, Command::PreviousStep, "Step before", out);
            bar_button(ui, desk, Command::PlaySteps, if order.plays { "Stop here" } else { "Run through" }, out);
            bar_button(ui, desk, Command::NextStep, "Step after", out);
            if order.shown.is_some() {
                let back = ui.add(Button::new("Back to the plan"));
                if back.on_hover_text("Show the finished bars; their ends can be dragged again (Esc).").clicked() {
                    out.push(Request::Order(OrderAsk::Choose(None)));
                }
            }
            bar_button(ui, desk, Command::AtTheAnvil, "At the anvil", out);
        });
    });
}
