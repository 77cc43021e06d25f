//! The shapes on the way: each a form that the hammer gives a straight bar, or a bend of it.

use super::super::fault::{Checked, refuse};
use super::super::key_path::KeyPath;
use super::check_bend;
use crate::plan::{Bend, Form, FormKind, Gives, Segment, Via};

/// Makes sure that the shapes on the way say what can be made; `first` tells that no segment lies before theirs.
pub(super) fn check_via(segment: &Segment, first: bool, at: &KeyPath) -> Checked {
    if segment.via.is_empty() {
        return Ok(());
    }
    let kind = segment.form.kind();
    if !kind.has_via() {
        let message =
            format!("the form \"{}\" has no shapes on the way; give them to the parts that it is made of", kind.name());
        return refuse(at.clone(), message);
    }
    if segment.via.len() > Via::MOST {
        let count = segment.via.len();
        return refuse(at.clone(), format!("{count} shapes were read; a part has {} on the way at most", Via::MOST));
    }
    let is_forged = |via: &Via| via.form.as_ref().is_some_and(|form| form.kind() != FormKind::Plain);
    if let Some(index) = segment.via.iter().position(is_forged).filter(|_| kind == FormKind::Plain) {
        let message = "a plain part stays as the bar is; give the finished part the form \"drawn\"";
        return refuse(at.index(index).key("form"), message);
    }
    segment.via.iter().enumerate().try_for_each(|(index, via)| check_one(via, first, &at.index(index)))
}

fn check_one(via: &Via, first: bool, at: &KeyPath) -> Checked {
    let form = at.key("form");
    match &via.form {
        None if via.bend.is_none() => {
            return refuse(at.clone(), "a shape on the way has a form or a bend; neither was found");
        }
        None if via.gives.is_some() => {
            return refuse(at.key("gives"), "only a size of a form that is given here can follow from the metal");
        }
        None => {}
        Some(one) if !Via::FORMS.contains(&one.kind()) => {
            let names: Vec<_> = Via::FORMS.iter().map(|kind| format!("\"{}\"", kind.name())).collect();
            let message = format!("\"{}\" was found; a shape on the way is {}", one.kind().name(), names.join(", "));
            return refuse(form, message);
        }
        Some(Form::Flag(flag)) if flag.is_cut() => {
            return refuse(form.key("flag"), "a shape on the way is not cut or trimmed; the finished one is");
        }
        Some(Form::Plain(_)) if via.gives.is_some_and(|gives| gives != Gives::Length) => {
            return refuse(at.key("gives"), "of a plain length only the length can follow");
        }
        Some(one) => one.one().check(first, &form.key(one.kind().name()))?,
    }
    match &via.bend {
        Some(bend @ (Bend::Corner { .. } | Bend::Twist { .. })) => {
            let name = bend.kind().name();
            let message = format!("\"{name}\" was found; a bend on the way is a curve, a ring, a scroll or a socket");
            refuse(at.key("bend").key(name), message)
        }
        Some(bend) => check_bend(bend, &at.key("bend").key(bend.kind().name())),
        None => Ok(()),
    }
}
