//! What kind of part a task works.

use crate::job::legs;
use crate::job::site::{Site, in_mm};
use crate::job::task::Task;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::{Form, Made};

/// The inside radius of a bend that is made over an edge, in mm; none where the horn is as round.
pub(crate) fn over_the_edge_mm(site: &Site<'_>, task: &Task) -> Option<f64> {
    match site.part(task.part?)?.balance.bent? {
        Bent::Curve { inside_radius, .. } => Some(in_mm(inside_radius)).filter(|radius| *radius < legs::OVER_AN_EDGE),
        _ => None,
    }
}

pub(crate) fn has_form(site: &Site<'_>, task: &Task, wanted: fn(&Form) -> bool) -> bool {
    task.part.and_then(|at| site.part(at)).is_some_and(|part| wanted(&part.segment.form))
}

pub(crate) fn is_rivet(site: &Site<'_>, task: &Task) -> bool {
    has_form(site, task, |form| matches!(form, Form::Rivet(_)))
}

pub(crate) fn is_flag(site: &Site<'_>, task: &Task) -> bool {
    has_form(site, task, |form| matches!(form, Form::Flag(_)))
}

pub(crate) fn is_trimmed_later(site: &Site<'_>, task: &Task) -> bool {
    has_form(site, task, |form| matches!(form, Form::Flag(flag) if flag.is_cut()))
}

pub(crate) fn is_pierced_later(site: &Site<'_>, task: &Task) -> bool {
    has_form(site, task, |form| match form {
        Form::Hole(_) => true,
        Form::Flag(plate) => !plate.holes.is_empty(),
        _ => false,
    })
}

/// Whether a hole is slit first, and drifted open afterwards.
pub(crate) fn is_slit(site: &Site<'_>, task: &Task) -> bool {
    has_form(site, task, is_slit_first)
}

/// The same of a form.
pub(crate) fn is_slit_first(form: &Form) -> bool {
    match form {
        Form::Hole(hole) => hole.made == Made::Drifted,
        Form::Flag(plate) => plate.is_slit(),
        _ => false,
    }
}

pub(crate) fn ends_in_point(site: &Site<'_>, task: &Task) -> bool {
    let shape = task.part.and_then(|at| site.part(at)).and_then(|part| part.balance.shape.as_ref());
    matches!(shape, Some(Shape::Taper { from, to, .. }) if from.is_end() || to.is_end())
}
