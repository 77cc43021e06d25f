//! What the fire takes over the whole order, offered as the plan's scale.

use crate::order::OrderDesk;
use crate::state::{Desk, Request};
use crate::theme::Text;
use crate::widgets::heading;
use egui::{RichText, Ui};
use fh_core::edit::{BarHeader, Edit, PlanHeader};
use fh_core::plan::Plan;
use fh_measure::WrittenShare;
use fh_work::ScaleLoss;

/// Shows the reason for each bar and the button that takes it up.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, out: &mut Vec<Request>) {
    let (theme, plan) = (desk.theme, desk.document.plan());
    if order.ledger.scale().is_empty() {
        return;
    }
    heading::show(ui, theme, "Scale");
    for loss in order.ledger.scale() {
        let Some(bar) = plan.bars.get(loss.bar) else { continue };
        if plan.bars.len() > 1 {
            ui.label(RichText::new(&bar.name).text_style(Text::Strong.style()).color(theme.ink));
        }
        ui.label(RichText::new(&loss.reason).color(theme.ink));
        let Some(share) = offered(loss) else { continue };
        let now = bar.scale.as_ref().or(plan.scale.as_ref());
        if now.is_some_and(|now| (now.ratio() - share.ratio()).abs() < 1e-9) {
            ui.label(RichText::new(format!("✓ {} are planned as scale.", share.text())).color(theme.ink));
            continue;
        }
        let planned = now.map_or_else(|| "none".to_owned(), |now| now.text().to_owned());
        ui.label(RichText::new(format!("Planned: {planned}")).text_style(Text::Small.style()).color(theme.ink_quiet));
        let whose = if is_of_bar(plan, loss.bar) { format!(" of “{}”", bar.name) } else { String::new() };
        if ui.button(format!("Take up {} as scale{whose}", share.text())).clicked() {
            out.extend(taken_up(plan, loss.bar, share).map(Request::Edit));
        }
    }
    let parts = plan.bars.iter().any(|bar| bar.flat().iter().any(|flat| flat.segment.scale.is_some()));
    if parts {
        let words = "Parts with a scale of their own keep it.";
        ui.label(RichText::new(words).text_style(Text::Small.style()).color(theme.ink_quiet));
    }
}

/// The likely share, rounded to half a per cent; none where it is too small to plan with.
fn offered(loss: &ScaleLoss) -> Option<WrittenShare> {
    let percent = (loss.share.likely * 200.0).round() / 2.0;
    WrittenShare::parse(&format!("{percent} %"), true).ok().filter(|share| share.ratio() > 0.0)
}

/// Whether the share is written on the bar and not over the whole plan: the bars differ, or it has one of its own.
fn is_of_bar(plan: &Plan, bar: usize) -> bool {
    plan.bars.len() > 1 || plan.bars.get(bar).is_some_and(|bar| bar.scale.is_some())
}

fn taken_up(plan: &Plan, bar: usize, share: WrittenShare) -> Option<Edit> {
    if !is_of_bar(plan, bar) {
        return Some(Edit::SetPlan(Box::new(PlanHeader { scale: Some(share), ..PlanHeader::from(plan) })));
    }
    let header = BarHeader { scale: Some(share), ..BarHeader::from(plan.bars.get(bar)?) };
    Some(Edit::SetBar { bar, header: Box::new(header) })
}
