//! A bar as a task sees it that makes a shape on the way: that shape stands for the finished one, and the one before it for the bar.

use crate::job::site::{Begun, Site};
use fh_core::balance::{BarBalance, as_by_then, opens_again};
use fh_core::metal::Shape;
use fh_core::plan::{Bar, Form, Segment};

/// A bar with some of its parts on the way.
pub(crate) struct Staged {
    bar: Bar,
    balance: BarBalance,
    begun: Vec<Begun>,
    /// The parts, and which of their shapes stands for the finished one; none where that is the finished one itself.
    pub(crate) of: Vec<(usize, Option<usize>)>,
}

impl Staged {
    /// A bar with these parts on the way to these shapes.
    pub(crate) fn new(site: &Site<'_>, of: Vec<(usize, Option<usize>)>) -> Self {
        let mut staged =
            Self { bar: site.bar.clone(), balance: site.balance.clone(), begun: Vec::with_capacity(of.len()), of };
        for (at, to) in staged.of.clone() {
            staged.put(site, at, to);
        }
        staged
    }

    fn put(&mut self, site: &Site<'_>, at: usize, to: Option<usize>) {
        let Some(part) = site.part(at) else { return };
        let unit = site.plan.units.length;
        let then = to.and_then(|to| as_by_then(part.segment, part.balance, to, unit));
        if let Some((segment, balance)) = then {
            self.bar.segment_mut(at).into_iter().for_each(|slot| *slot = segment.clone());
            self.balance.segments.get_mut(at).into_iter().for_each(|slot| *slot = balance.clone());
        }
        let before = match to {
            Some(to) => to.checked_sub(1),
            None => part.segment.via.len().checked_sub(1),
        };
        let via = before.and_then(|before| part.balance.via.get(before));
        let slot = self.balance.segments.get_mut(at);
        if let (Some(shape), Some(slot)) = (via.and_then(|via| via.shape.as_ref()), slot) {
            slot.stock_length = shape.length();
        }
        self.begun.push(Begun {
            part: at,
            raw: via.and_then(|via| via.shape.as_ref()).and_then(Shape::middle),
            is_first: before.is_none(),
            keeps_form: before.is_some_and(|before| form_of(part.segment, to) == form_of(part.segment, Some(before))),
            was_bent: via.is_some_and(|via| via.bent.is_some()),
            is_finished_form: form_of(part.segment, to) == &part.segment.form,
            opens_again: to.is_some_and(|to| opens_again(part.balance, to)),
            keeps_bend: before.is_some_and(|before| bend_of(part.segment, to) == bend_of(part.segment, Some(before))),
        });
    }

    /// The bar as a site of its own.
    pub(crate) fn site<'s>(&'s self, site: &Site<'s>) -> Site<'s> {
        Site::staged(site.plan, site.index, (&self.bar, &self.balance), self.begun.clone())
    }
}

/// The form of a shape on the way, or of the finished one.
fn form_of(segment: &Segment, to: Option<usize>) -> &Form {
    let written = to.and_then(|to| segment.via.iter().take(to + 1).rev().find_map(|via| via.form.as_ref()));
    written.unwrap_or(&segment.form)
}

fn bend_of(segment: &Segment, to: Option<usize>) -> Option<&fh_core::plan::Bend> {
    match to {
        Some(to) => segment.via.get(to).and_then(|via| via.bend.as_ref()),
        None => segment.bend.as_ref(),
    }
}
