//! What is learnt, in words: from this piece and from the smith's others; and the button that keeps it.

use super::figure::{percent, tenths};
use crate::state::{Desk, OrderAsk, OrderDesk, Request};
use crate::theme::Text;
use crate::widgets::heading;
use egui::{RichText, Ui};
use fh_core::plan::{Operation, Plan};
use fh_measure::counted;
use fh_work::{Shop, Worked};
use std::collections::BTreeMap;

/// So near to 1 a factor says that it came out as reckoned.
const AS_RECKONED: f64 = 0.05;

/// Shows what is learnt; nothing where nothing is.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, out: &mut Vec<Request>) {
    let (theme, plan) = (desk.theme, desk.document.plan());
    let all = sentences(plan, order);
    if !all.is_empty() {
        heading::show(ui, theme, "What is learnt");
        for words in &all {
            ui.label(RichText::new(words).color(theme.ink));
        }
        let about = "The first job moves the figure half way, later ones more: one odd day decides nothing.";
        ui.label(RichText::new(about).text_style(Text::Small.style()).color(theme.ink_quiet));
    }
    let own = &order.worked.experience;
    if own.is_empty() {
        return;
    }
    if order.shop.keeps(&plan.title, own) {
        ui.label(RichText::new("✓ Kept in your profile for your next plans.").color(theme.ink));
    } else if ui
        .button("Keep for my next plans")
        .on_hover_text("Saves it in your profile, replacing what was kept for this piece.")
        .clicked()
    {
        let mut shop = order.shop.clone();
        shop.keep(&plan.title, own);
        out.push(Request::Order(OrderAsk::Own(shop)));
    }
}

fn sentences(plan: &Plan, order: &OrderDesk<'_>) -> Vec<String> {
    let worked = order.worked;
    let mut all = of_minutes(&jobs(&plan.title, order.shop, worked), worked);
    if let Some(heat) = worked.learnt.heat {
        all.push(match is_as_reckoned(heat) {
            true => "Your heats last as long as worked out.".to_owned(),
            false => format!("Your heats last {} times as long as worked out.", tenths(heat)),
        });
    }
    if let Some(blows) = worked.learnt.blows {
        all.push(match is_as_reckoned(blows) {
            true => "You need as many blows as worked out.".to_owned(),
            false => format!("You need {} times as many blows as worked out.", tenths(blows)),
        });
    }
    let weighed: Vec<[f64; 2]> = worked.experience.iter().filter_map(|one| one.scale).collect();
    for [planned, out] in &weighed {
        all.push(format!("The fire took {} of the bar; {} was planned.", percent(*out), percent(*planned)));
    }
    if weighed.is_empty() && plan.work.log.iter().any(|entry| entry.kg.is_some()) {
        all.push("The weight does not fit this bar: weigh the finished bar alone, without what was held.".to_owned());
    }
    all.extend(next_plan(order.ledger.planned(worked), worked));
    all
}

/// The jobs of which the minutes are known, by operation and form.
fn jobs(title: &str, shop: &Shop, worked: &Worked) -> BTreeMap<(Operation, String), usize> {
    let others = shop.experience.iter().filter(|one| one.piece != title);
    let mut jobs = BTreeMap::new();
    for one in others.chain(&worked.experience).filter(|one| one.minutes.is_some()) {
        *jobs.entry((one.operation, one.form.clone())).or_insert(0) += 1;
    }
    jobs
}

fn of_minutes(jobs: &BTreeMap<(Operation, String), usize>, worked: &Worked) -> Vec<String> {
    let sentence = |((operation, form), count): (&(Operation, String), &usize)| {
        let alone = jobs.keys().filter(|(other, _)| other == operation).count() == 1;
        let of = if alone || form.is_empty() { String::new() } else { format!(" ({form})") };
        let factor = worked.learnt.minutes(*operation, form);
        let long = match is_as_reckoned(factor) {
            true => "as long as worked out".to_owned(),
            false => format!("{} times as long as worked out", tenths(factor)),
        };
        format!("To {}{of} takes you {long} ({}).", operation.name(), counted(*count, "job"))
    };
    jobs.iter().map(sentence).collect()
}

fn is_as_reckoned(factor: f64) -> bool {
    (factor - 1.0).abs() < AS_RECKONED
}

/// What the next plan of this piece would say otherwise.
fn next_plan(planned: &Worked, now: &Worked) -> Option<String> {
    let minutes = |worked: &Worked| tenths(worked.steps.iter().map(|step| step.minutes).sum());
    let (before, after) = (minutes(planned), minutes(now));
    if planned.heats == now.heats && before == after {
        return None;
    }
    Some(format!(
        "Next time you plan this piece: {} instead of {}, {after} minutes of work instead of {before}.",
        counted(now.heats, "heat"),
        planned.heats
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn near_to_one_is_as_reckoned() {
        assert!(is_as_reckoned(1.04) && is_as_reckoned(0.96));
        assert!(!is_as_reckoned(1.1) && !is_as_reckoned(0.9));
    }
}
