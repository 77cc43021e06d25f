//! Parts whose marks allow for less scale than the order of work takes, and the plan that allows for it.

use crate::answers::scale_loss::{BELIEVED, ScaleLoss, loss_words};
use crate::job::site::Site;
use crate::worked::Worked;
use fh_core::findings::{Finding, Place, Severity, is_over, is_under};
use fh_core::plan::Plan;
use fh_heat::estimate::Estimate;
use fh_measure::WrittenShare;

/// The id of these findings.
pub const SCALE_SHORT: &str = "scale-short";

const REASON: &str = "What the fire takes is missing at the mark: the part comes out short or thin.";

/// A part that is short of more than this share is warned of; less is worth knowing. Common practice, no source.
const WEIGHTY: f64 = 0.02;

/// The parts whose marks allow for less than the low end of what the fire takes.
///
/// A part that is left as stock keeps its length whatever scales off, and is not told of.
pub(crate) fn scale_short(sites: &[Site<'_>], losses: &[ScaleLoss]) -> Vec<Finding> {
    let of_bar = |loss: &ScaleLoss| {
        let site = sites.iter().find(|site| site.index == loss.bar);
        let all = loss.parts.iter().filter_map(|(at, _, share)| finding(site?, *at, *share));
        all.collect::<Vec<_>>()
    };
    losses.iter().flat_map(of_bar).collect()
}

fn finding(site: &Site<'_>, at: usize, share: Estimate) -> Option<Finding> {
    let part = site.part(at)?;
    let allowed = part.balance.scale_share;
    if part.segment.form.is_as_stock() || !is_under(allowed, share.low) {
        return None;
    }
    let (name, allowed_words) = (site.name(at), allowed_words(allowed));
    let message = format!(
        "The marks allow {allowed_words} of scale for “{name}”; the heats of this order take {} of it.",
        loss_words(share)
    );
    let taken = wanted(share).map_or_else(String::new, |wanted| format!("Give it a scale of {}, or ", wanted.text()));
    let remedy = if share.likely > BELIEVED {
        "A part this thin burns in that many heats: forge it last, and keep it out of the fire.".to_owned()
    } else {
        format!("{taken}forge it later and heat only what is worked.")
    };
    let severity = if share.low - allowed > WEIGHTY { Severity::Warning } else { Severity::Note };
    let place = Place { bar: Some(site.index), segment: Some(at) };
    Some(Finding { id: SCALE_SHORT, severity, place, message, reason: REASON, remedy })
}

/// The parts of a bar that are warned of because the fire takes more of them than the marks allow, counted through the bar, and
/// the share that each wants.
pub fn short_parts(worked: &Worked, bar: usize) -> Vec<(usize, WrittenShare)> {
    let is_warned = |at: usize| {
        let place = Place { bar: Some(bar), segment: Some(at) };
        worked.scale_short.iter().any(|found| found.place == place && found.severity > Severity::Note)
    };
    let losses = worked.scale.iter().filter(|loss| loss.bar == bar).flat_map(|loss| &loss.parts);
    losses.filter(|(at, ..)| is_warned(*at)).filter_map(|(at, _, share)| Some((*at, wanted(*share)?))).collect()
}

fn allowed_words(share: f64) -> String {
    if is_over(share, 0.0) {
        let text = format!("{:.1}", share * 100.0);
        format!("{} %", text.strip_suffix(".0").unwrap_or(&text))
    } else {
        "nothing".to_owned()
    }
}

/// What to plan with: the likely share in halves of a per cent, never less than the low end, and never more than is
/// believed; none where it is nothing.
pub(crate) fn wanted(share: Estimate) -> Option<WrittenShare> {
    let halves = (share.likely.min(BELIEVED) * 200.0).round().max((share.low * 200.0 - 1e-9).ceil());
    WrittenShare::parse(&format!("{} %", halves / 2.0), true).ok().filter(|share| share.ratio() > 0.0)
}

/// The share that a bar as a whole is offered, and what each part of its own that loses more needs: the part, counted
/// through the bar, and its share. None where the fire takes too little to plan with.
pub fn offered(plan: &Plan, loss: &ScaleLoss) -> Option<(WrittenShare, Vec<(usize, WrittenShare)>)> {
    let of_bar = wanted(loss.share)?;
    let general = of_bar.ratio();
    let bar = plan.bars.get(loss.bar)?;
    let own = |(at, _, share): &(usize, usize, Estimate)| {
        let segment = bar.segment(*at)?;
        let planned = segment.scale.as_ref().map_or(general, WrittenShare::ratio);
        let is_short = !segment.form.is_as_stock() && is_under(planned, share.low);
        Some((*at, wanted(*share).filter(|_| is_short)?))
    };
    Some((of_bar, loss.parts.iter().filter_map(own).collect()))
}

/// The plan with what is offered for a bar: over the whole plan where that is its only bar and has no share of its own.
///
/// None where nothing is offered.
pub fn taken_up(plan: &Plan, loss: &ScaleLoss) -> Option<Plan> {
    let (of_bar, parts) = offered(plan, loss)?;
    let mut next = plan.clone();
    let many = next.bars.len() > 1;
    let bar = next.bars.get_mut(loss.bar)?;
    for (at, share) in parts {
        bar.segment_mut(at)?.scale = Some(share);
    }
    if many || bar.scale.is_some() {
        bar.scale = Some(of_bar);
    } else {
        next.scale = Some(of_bar);
    }
    Some(next)
}
