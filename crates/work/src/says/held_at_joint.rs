//! What is held while parts are joined: bar that stays cold and is thick enough, in the hand or in tongs.

use crate::bar::grip::{Bar, Cold};
use crate::bar::held::{HOT_MARGIN, Hold, handle};
use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::job::site::{Site, extents, least};
use crate::job::task::{Task, is_hot};
use fh_core::joints::{Joined, MemberPlace, PartSide, Role, joined};
use fh_core::plan::{Form, JointKind};

/// Jaws on metal with less than this share of the bar's thickness are set with care: common practice, no source.
const FINE: f64 = 1.0 / 3.0;

/// A bar that is held at a joint: its number, and where.
pub(crate) type HeldAtJoint = (usize, Hold);

/// What is held while a joint is made; none where a vice holds it, where it is made cold, or where nothing stays cold.
pub(crate) fn held_at_joint(sites: &[Site<'_>], progress: &[Progress], task: &Task) -> Option<HeldAtJoint> {
    let site = sites.first().filter(|site| is_hot(site, task))?;
    let number = task.joint?;
    let joint = joined(site.plan).into_iter().find(|joint| joint.joint == number)?;
    let heated = heated(&joint)?;
    let mut bars: Vec<usize> = joint.members.iter().filter(|member| is_held(member)).map(|it| it.bar).collect();
    bars.dedup();
    let held = bars.into_iter().filter_map(|bar| {
        let (site, progress) = (sites.get(bar)?, progress.get(bar)?);
        let (worth, hold) = on_bar(site, progress, joint.kind, &heated)?;
        Some((worth, (bar, hold)))
    });
    held.reduce(|best, next| if next.0 > best.0 + 1e-9 { next } else { best }).map(|(_, held)| held)
}

/// The members that come hot out of the fire; none where the vice holds the joint.
fn heated(joint: &Joined) -> Option<Vec<MemberPlace>> {
    let of = |wanted: &dyn Fn(&MemberPlace) -> bool| joint.members.iter().copied().filter(wanted).collect();
    match joint.kind {
        JointKind::Tenon => None,
        JointKind::Weld => Some(joint.members.clone()),
        JointKind::Rivet => Some(of(&|member| member.role == Role::Rivet)),
        JointKind::Collar => Some(of(&|member| member.role == Role::Collar)),
        JointKind::Hook => joint.members.last().map(|ring| vec![*ring]),
    }
}

/// Whether the bar of a member may be held: what is hot all through is carried to the joint, and the bars that it binds are held.
fn is_held(member: &MemberPlace) -> bool {
    !matches!(member.role, Role::Rivet | Role::Collar)
}

/// Where a bar is gripped best beside what of it is hot, and how good that is.
fn on_bar(site: &Site<'_>, progress: &Progress, kind: JointKind, heated: &[MemberPlace]) -> Option<(f64, Hold)> {
    let lengths = Lengths::new(site, progress);
    let [start, end] = lengths.extent(site.chains[0].1.iter());
    let hot: Vec<[f64; 2]> =
        heated.iter().filter(|member| member.bar == site.index).map(|it| hot_mm(site, &lengths, kind, it)).collect();
    let bar = Bar::new(site, progress, &lengths, &[]);
    let stock = least(extents(&site.balance.stock));
    let grips =
        cold_runs([start, end], &hot).into_iter().flat_map(|run| cold_of(run, [start, end])).filter_map(|cold| {
            let long = (cold.hot_mm - cold.end_mm).abs();
            // Beside a welding heat a hand is too near, wherever a ring is held.
            let cold = Cold { by_hand: kind != JointKind::Weld && long > Hold::BARE_HAND, ..cold };
            let grip = bar.best(cold)?;
            let is_poor = least(grip.jaw_mm) < FINE * stock;
            Some((grip.worth * handle(site, long), Hold { is_poor, ..Hold::new(long, cold, grip) }))
        });
    grips.reduce(|best, next| if next.0 > best.0 + 1e-9 { next } else { best })
}

/// From where to where a member is hot, in mm along its bar: about the end that is joined, or all of it.
fn hot_mm(site: &Site<'_>, lengths: &Lengths, kind: JointKind, member: &MemberPlace) -> [f64; 2] {
    let [from, to] = lengths.extent([member.segment].iter());
    let is_lap = site.flat.get(member.segment).is_some_and(|flat| matches!(flat.segment.form, Form::Weld(_)));
    let [from, to] = match member.side {
        _ if is_lap || kind == JointKind::Hook => [from, to],
        PartSide::Start => [from, from],
        PartSide::End => [to, to],
        PartSide::Around(_) => [from, to],
    };
    let beside = HOT_MARGIN + least(extents(&site.balance.stock));
    [from - beside, to + beside]
}

/// What of a bar lies between what is hot, in mm.
fn cold_runs([start, end]: [f64; 2], hot: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let mut hot = hot.to_vec();
    hot.sort_by(|one, other| one[0].total_cmp(&other[0]));
    let mut runs = Vec::new();
    let mut from = start;
    for [low, high] in hot {
        runs.push([from, low]);
        from = from.max(high);
    }
    runs.push([from, end]);
    runs.retain(|[from, to]| to - from > 1.0);
    runs
}

/// A cold run as it is gripped: from its free end; of one between two heats, which is a ring by then, from its middle.
fn cold_of([from, to]: [f64; 2], [start, end]: [f64; 2]) -> Vec<Cold> {
    let cold = |end_mm: f64, hot_mm: f64| Cold { end_mm, hot_mm, by_hand: false };
    let middle = f64::midpoint(from, to);
    match (from <= start, to >= end) {
        (true, _) => vec![cold(from, to)],
        (false, true) => vec![cold(to, from)],
        (false, false) => vec![cold(middle, to), cold(middle, from)],
    }
}
