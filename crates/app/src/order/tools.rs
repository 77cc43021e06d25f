//! The tools that the order asks for, each with its reason: owned or missing, and another way where it is missing.

use super::your_tools;
use crate::state::{Desk, OrderAsk, OrderDesk, Request, step_numbers};
use crate::theme::{Text, space};
use crate::widgets::heading;
use egui::{RichText, Ui};
use fh_work::{Gauge, OwnedTool, Shop, Tool};

/// Shows tools, gauges, and what the smith owns.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, out: &mut Vec<Request>) {
    let theme = desk.theme;
    ui.label(RichText::new("Tools for this piece").text_style(Text::Heading.style()).color(theme.ink));
    let missing = order.worked.tools.iter().filter(|tool| !tool.owned).count();
    let words = match missing {
        0 => "You have all of them.".to_owned(),
        count => format!("You lack {count} of these. Tick what you have."),
    };
    ui.label(RichText::new(words).text_style(Text::Small.style()).color(theme.ink_quiet));
    for tool in &order.worked.tools {
        ui.add_space(space::GAP);
        show_tool(ui, desk, order.shop, tool, out);
    }
    if !order.worked.gauges.is_empty() {
        heading::show(ui, theme, "Gauges to make");
        order.worked.gauges.iter().for_each(|gauge| show_gauge(ui, desk, gauge));
    }
    your_tools::show(ui, desk, order.shop, out);
}

fn show_tool(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, tool: &Tool, out: &mut Vec<Request>) {
    let theme = desk.theme;
    if tool.kind.is_in_every_smithy() {
        ui.label(RichText::new(&tool.words).text_style(Text::Strong.style()).color(theme.ink));
    } else {
        let mut owned = tool.owned;
        let words = RichText::new(&tool.words).text_style(Text::Strong.style()).color(theme.ink);
        let name = format!("I have it: {}", tool.words);
        if ui.checkbox(&mut owned, words).accessible_name(name).changed() {
            out.push(Request::Order(OrderAsk::Own(ticked(shop, tool, owned))));
        }
    }
    let have = match (tool.kind.is_in_every_smithy(), tool.owned) {
        (true, _) => "In every smithy",
        (false, true) => "✓ You have it",
        (false, false) => "Missing",
    };
    let steps = step_numbers(&tool.steps());
    ui.label(RichText::new(format!("{have}. {steps}")).text_style(Text::Small.style()).color(theme.ink_quiet));
    ui.label(RichText::new(tool.reason()).color(theme.ink));
    if !tool.owned && !tool.other_way.is_empty() {
        let words = format!("Without it: {}", tool.other_way);
        ui.label(RichText::new(words).italics().color(theme.ink));
    }
}

/// What the smith owns once a tool is ticked, or no longer.
fn ticked(shop: &Shop, tool: &Tool, owned: bool) -> Shop {
    let mut next = shop.clone();
    if owned {
        next.tools.push(OwnedTool { kind: tool.kind, from_mm: tool.size_mm.map(tenth), to_mm: None });
    } else {
        // Whatever does for this tool is let go of.
        next.tools.retain(|own| !Shop { tools: vec![own.clone()], ..Shop::default() }.has(tool.kind, tool.size_mm));
    }
    next
}

/// A size as it is kept, to a tenth of a millimetre.
fn tenth(mm: f64) -> f64 {
    (mm * 10.0).round() / 10.0
}

fn show_gauge(ui: &mut Ui, desk: &Desk<'_>, gauge: &Gauge) {
    let caliper = if gauge.caliper { ", caliper" } else { "" };
    let words = format!("{}: {}{caliper}", gauge.what, gauge.words);
    ui.label(RichText::new(words).color(desk.theme.ink));
    let steps = step_numbers(&gauge.steps);
    ui.label(RichText::new(steps).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
}
