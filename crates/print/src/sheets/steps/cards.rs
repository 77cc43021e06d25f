//! The cards: one for each step, after a page with the job and what is laid ready.

use super::job::Job;
use super::said_before::SaidBefore;
use super::usual_heat::usual_heat;
use super::words::card_words;
use super::{card, opening, piece_page, ready, slim_card, strip};
use crate::sheets::flow::Flow;

/// Between two cards.
const BETWEEN_MM: f64 = 1.8;

impl Job<'_> {
    /// Puts a card for each step on the flow, after a page with the job and what is laid ready.
    pub(in crate::sheets) fn put_cards(&self, flow: &mut Flow) {
        if !self.start(flow, "STEPS") {
            return;
        }
        piece_page::put_piece(flow, self.plan, self.balance);
        ready::put_ready(flow, self.plan, self.worked);
        opening::put_heat_notes(flow, self.plan, self.worked);
        let states = self.states(flow.width() - 2.0 * card::PAD_MM - strip::NAMES_MM);
        let mut before = SaidBefore::new(usual_heat(self.plan, &self.worked.steps));
        let mut last = None;
        for (number, step) in self.worked.steps.iter().enumerate() {
            let words = before.shorten(card_words(self.plan, number, step), number + 1, step.bar);
            let scale = step.bar.and_then(|bar| states.get(bar)?.scale);
            let head = (last != Some(step.bar)).then(|| self.band(step.bar, scale, flow.width()));
            last = Some(step.bar);
            let card = if words.is_slim {
                slim_card::slim_card(&words, flow.width())
            } else {
                let strip = self.strip(&states, number, step, flow.width() - 2.0 * card::PAD_MM);
                let head_mm = head.as_ref().map_or(0.0, |head| head.height);
                card::card(&words, &strip, flow.width(), flow.page_room() - head_mm)
            };
            flow.put(match head {
                Some(head) => head.over(card),
                None => card,
            });
            flow.skip(BETWEEN_MM);
        }
        opening::put_reasons(flow, self.worked);
    }
}
