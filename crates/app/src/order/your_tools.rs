//! The list of the smith's own tools: kinds, and the sizes that they have of each.

use crate::state::{Desk, OrderAsk, Request};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields, heading};
use egui::{ComboBox, RichText, Ui};
use fh_core::plan::PlanUnit;
use fh_measure::{LengthRange, WrittenLength};
use fh_work::{OwnedTool, Shop, ToolKind};

/// Shows the list.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, out: &mut Vec<Request>) {
    let theme = desk.theme;
    heading::show(ui, theme, "Your tools");
    let about = "Kept in your own profile, for every plan. Leave the sizes empty where any size will do.";
    ui.label(RichText::new(about).text_style(Text::Small.style()).color(theme.ink_quiet));
    let sizing = Sizing::new(theme, desk.document.plan().units, None);
    let mut next = shop.clone();
    let mut gone = None;
    for (number, tool) in next.tools.iter_mut().enumerate() {
        ui.add_space(space::GAP);
        if own_tool(ui, &sizing, number + 1, tool) {
            gone = Some(number);
        }
    }
    if let Some(gone) = gone {
        next.tools.remove(gone);
    }
    ui.add_space(space::GAP);
    next.tools.extend(added(ui));
    if next != *shop {
        out.push(Request::Order(OrderAsk::Own(next)));
    }
}

/// One tool with its sizes; whether it is to go.
fn own_tool(ui: &mut Ui, sizing: &Sizing<'_>, number: usize, tool: &mut OwnedTool) -> bool {
    let gone = ui
        .horizontal(|ui| {
            let words = RichText::new(tool.kind.name()).text_style(Text::Strong.style()).color(sizing.theme.ink);
            ui.label(words);
            let remove = ui.button("Remove").on_hover_text("You no longer have it.");
            remove.accessible_name(format!("Remove {} from your tools", tool.kind.name())).clicked()
        })
        .inner;
    let names = [format!("Your tool {number}: smallest"), format!("Your tool {number}: largest")];
    size(ui, sizing, ("Smallest", &names[0], "any size"), &mut tool.from_mm);
    if tool.from_mm.is_some() {
        size(ui, sizing, ("Largest", &names[1], "the same"), &mut tool.to_mm);
    }
    gone
}

fn size(ui: &mut Ui, sizing: &Sizing<'_>, (label, name, hint): (&str, &str, &str), now: &mut Option<f64>) {
    let unit = sizing.first.units.length.length_unit();
    let written = now.and_then(|mm| {
        // Kept in mm; shown in the plan's unit, to a hundredth of an inch or a tenth of a millimetre.
        let step = if sizing.first.units.length == PlanUnit::Inch { 0.254 } else { 0.1 };
        WrittenLength::from_mm((mm / step).round() * step, unit, LengthRange::AboveZero).ok()
    });
    let entry = Entry::named(label, name).hint(hint);
    let range = LengthRange::AboveZero;
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, written.as_ref(), range, None) {
        *now = typed.map(|length| length.mm());
    }
}

/// The tool that is chosen to be added.
fn added(ui: &mut Ui) -> Option<OwnedTool> {
    let combo = ComboBox::from_id_salt("add a tool").selected_text("Add a tool…");
    let shown = combo.show_ui(ui, |ui| {
        let kinds = ToolKind::ALL.into_iter().filter(|kind| !kind.is_in_every_smithy());
        let mut chosen = None;
        for kind in kinds {
            if ui.selectable_label(false, kind.name()).clicked() {
                chosen = Some(OwnedTool { kind, from_mm: None, to_mm: None });
            }
        }
        chosen
    });
    shown.response.accessible_name("Add a tool to yours");
    shown.inner.flatten()
}
