//! The whole job in a table.

use super::job::Job;
use super::short_rows::ShortColumns;
use super::words::card_words;
use crate::fonts::Weight;
use crate::sheets::flow::Flow;
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::CAPTION;
use fh_work::{ScaleLoss, hot_note};

impl Job<'_> {
    /// Puts the whole job on the flow as a table.
    pub(in crate::sheets) fn put_table(&self, flow: &mut Flow) {
        if !self.start(flow, "STEPS, SHORT") {
            return;
        }
        let columns = ShortColumns::fill(flow.width(), self.plan.units.length);
        let (mut last, mut heat) = (None, 0);
        for (number, step) in self.worked.steps.iter().enumerate() {
            let row = columns.row(&card_words(self.plan, number, step), step, step.is_hot() && step.heat != heat);
            heat = if step.is_hot() { step.heat + step.needs - 1 } else { heat };
            // What is done to the whole piece says so itself.
            let is_begun = last != Some(step.bar) && (step.bar.is_some() || number == 0);
            let band = is_begun.then(|| self.band(step.bar, None, flow.width()));
            last = Some(step.bar);
            // On the same page the heads are not written again.
            let is_first = number == 0;
            let top = band.map(|band| if is_first { band.over(columns.head()) } else { band });
            match top {
                Some(top) => flow.put(top.over(row)),
                None if row.height > flow.room() => flow.put(columns.head().over(row)),
                None => flow.put(row),
            }
        }
        let losses = self.worked.scale.iter().map(ScaleLoss::reason);
        let notes: Vec<String> = hot_note(self.plan).into_iter().chain(losses).collect();
        if !notes.is_empty() {
            flow.skip(1.0);
            flow.put(paragraph(&notes.join(" "), CAPTION, Weight::Regular, flow.width()));
        }
    }
}
