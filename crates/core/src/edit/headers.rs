//! What stands over a plan and over a bar, apart from their segments: what an edit of a header sets.

use crate::plan::{Bar, Coating, Duty, Hangs, Limits, Plan, Practice, SectionSpec, Underlay, Units};
use fh_measure::{WrittenLength, WrittenShare};
use std::mem::take;

/// What stands over the whole plan.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanHeader {
    /// See [`Plan::title`].
    pub title: String,
    /// See [`Plan::notes`].
    pub notes: Option<String>,
    /// See [`Plan::units`].
    pub units: Units,
    /// See [`Plan::material`].
    pub material: Option<String>,
    /// See [`Plan::scale`].
    pub scale: Option<WrittenShare>,
    /// See [`Plan::duty`].
    pub duty: Option<Duty>,
    /// See [`Plan::coating`].
    pub coating: Option<Coating>,
    /// See [`Plan::limits`].
    pub limits: Limits,
    /// See [`Plan::practice`].
    pub practice: Practice,
    /// See [`Plan::hangs`].
    pub hangs: Hangs,
    /// See [`Plan::underlay`].
    pub underlay: Option<Underlay>,
}

impl From<&Plan> for PlanHeader {
    fn from(plan: &Plan) -> Self {
        Self {
            title: plan.title.clone(),
            notes: plan.notes.clone(),
            units: plan.units,
            material: plan.material.clone(),
            scale: plan.scale.clone(),
            duty: plan.duty,
            coating: plan.coating,
            limits: plan.limits.clone(),
            practice: plan.practice,
            hangs: plan.hangs.clone(),
            underlay: plan.underlay.clone(),
        }
    }
}

/// What stands over a bar's segments.
#[derive(Clone, Debug, PartialEq)]
pub struct BarHeader {
    /// See [`Bar::name`].
    pub name: String,
    /// See [`Bar::count`].
    pub count: Option<u32>,
    /// See [`Bar::stock`].
    pub stock: SectionSpec,
    /// See [`Bar::datum`].
    pub datum: Option<String>,
    /// See [`Bar::length`].
    pub length: Option<WrittenLength>,
    /// See [`Bar::takes_up`].
    pub takes_up: Option<String>,
    /// See [`Bar::scale`].
    pub scale: Option<WrittenShare>,
}

impl From<&Bar> for BarHeader {
    fn from(bar: &Bar) -> Self {
        Self {
            name: bar.name.clone(),
            count: bar.count,
            stock: bar.stock.clone(),
            datum: bar.datum.clone(),
            length: bar.length.clone(),
            takes_up: bar.takes_up.clone(),
            scale: bar.scale.clone(),
        }
    }
}

/// Sets a header over a plan.
pub(super) fn set_plan(plan: &mut Plan, header: &PlanHeader) {
    let PlanHeader { title, notes, units, material, scale, duty, coating, limits, practice, hangs, underlay } =
        header.clone();
    let Plan { firstheat, bars, joints, sizes, work, .. } = plan;
    let (firstheat, bars, joints, sizes, work) = (*firstheat, take(bars), take(joints), take(sizes), take(work));
    *plan = Plan {
        firstheat,
        title,
        notes,
        units,
        material,
        scale,
        duty,
        coating,
        limits,
        practice,
        hangs,
        underlay,
        bars,
        joints,
        sizes,
        work,
    };
}

/// Sets a header over a bar.
pub(super) fn set_bar(bar: &mut Bar, header: &BarHeader) {
    let BarHeader { name, count, stock, datum, length, takes_up, scale } = header.clone();
    let segments = take(&mut bar.segments);
    *bar = Bar { name, count, stock, datum, length, takes_up, scale, segments };
}
