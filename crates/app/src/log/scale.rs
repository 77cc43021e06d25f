//! What the fire takes over the whole order, offered as the plan's scale.

use crate::state::{Desk, OrderDesk, Request};
use crate::theme::Text;
use crate::widgets::heading;
use egui::{RichText, Ui};
use fh_core::describe::{part_name, scale_words, short_name};
use fh_core::edit::Edit;
use fh_core::plan::{Bar, Plan};
use fh_measure::{WrittenShare, counted};
use fh_work::{ScaleLoss, offered, taken_up};

/// So many parts are named in the words of a button at most.
const NAMED: usize = 3;

/// Shows the reason for each bar and the button that takes it up.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, out: &mut Vec<Request>) {
    let (theme, plan) = (desk.theme, desk.document.plan());
    if order.worked.scale.is_empty() {
        return;
    }
    heading::show(ui, theme, "Scale");
    for loss in &order.worked.scale {
        let Some(bar) = plan.bars.get(loss.bar) else { continue };
        if plan.bars.len() > 1 {
            ui.label(RichText::new(short_name(&bar.name)).text_style(Text::Strong.style()).color(theme.ink));
        }
        ui.label(RichText::new(loss.reason()).color(theme.ink));
        let Some((share, parts)) = offered(plan, loss) else { continue };
        let now = bar.scale.as_ref().or(plan.scale.as_ref());
        if parts.is_empty() && now.is_some_and(|now| (now.ratio() - share.ratio()).abs() < 1e-9) {
            ui.label(RichText::new(format!("✓ The plan already allows {} for scale.", share.text())).color(theme.ink));
            continue;
        }
        let planned = scale_words(plan, bar);
        ui.label(RichText::new(format!("Planned: {planned}")).text_style(Text::Small.style()).color(theme.ink_quiet));
        if ui.button(words(plan, loss, bar, &share, &parts)).clicked() {
            out.extend(taken_up(plan, loss).map(|next| Request::Edit(Edit::ReplacePlan(Box::new(next)))));
        }
    }
    let parts = plan.bars.iter().any(|bar| bar.flat().iter().any(|flat| flat.segment.scale.is_some()));
    if parts {
        let words = "Parts with a scale of their own keep it, unless it is too small.";
        ui.label(RichText::new(words).text_style(Text::Small.style()).color(theme.ink_quiet));
    }
}

/// The words of the button: `Take up 2.5 % as scale, 6 % for “leaf”`.
fn words(plan: &Plan, loss: &ScaleLoss, bar: &Bar, share: &WrittenShare, parts: &[(usize, WrittenShare)]) -> String {
    let is_of_bar = plan.bars.len() > 1 || plan.bars.get(loss.bar).is_some_and(|bar| bar.scale.is_some());
    let whose = if is_of_bar { format!(" of “{}”", short_name(&bar.name)) } else { String::new() };
    let each: String = if parts.len() > NAMED {
        format!(", and more for {}", counted(parts.len(), "part"))
    } else {
        parts.iter().map(|(at, share)| format!(", {} for “{}”", share.text(), part_name(bar, *at))).collect()
    };
    format!("Use {} as the scale allowance{whose}{each}", share.text())
}
