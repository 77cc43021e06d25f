//! The dialog that offers new parts: ready-made wholes and the forms, each with a drawing and a line of what it is. Letters
//! find one of them, arrows go from one to the next, Enter takes it.

use super::frame::{Frame, other_button};
use crate::state::{Desk, Focus, Request, Side};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::form_card::{self, Offer};
use egui::{Context, Grid, Key, Modifiers, RichText, TextEdit, Ui};
use fh_core::new_segment::Whole;
use fh_core::plan::FormKind;

/// The least width of a card, in points at normal text size.
const CARD: f32 = 210.0;
/// The most cards beside each other.
const MOST_COLUMNS: usize = 5;

/// A part being chosen.
pub(crate) struct AddPart {
    side: Side,
    /// The letters that were typed.
    letters: String,
    /// Which of those that are offered is lit; none until something is typed or an arrow pressed.
    at: Option<usize>,
    /// Whether the field of the letters has had the keyboard; it has it first.
    met: bool,
}

impl AddPart {
    /// Beside the selected part.
    pub(crate) fn new(side: Side) -> Self {
        Self { side, letters: String::new(), at: None, met: false }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let bar = desk.document.plan().bars.get(desk.selection.bar);
        let title = match self.side {
            _ if bar.is_some_and(|bar| bar.segments.is_empty()) => "Add the first part",
            _ if matches!(desk.selection.focus, Focus::Branch { .. }) => "Add a part to the branch",
            Side::Before => "Add a part before",
            Side::After => "Add a part after",
        };
        Frame { title, width: dialog::CARDS }.show(
            ctx,
            desk,
            out,
            |ui, out| self.contents(ui, desk, out),
            |ui, out, ()| {
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }

    fn contents(&mut self, ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let columns = ((ui.available_width() / desk.theme.scaled(CARD)) as usize).clamp(1, MOST_COLUMNS);
        let before = self.letters.clone();
        let offers = found(&before);
        let entered = self.read_keys(ui, columns, offers.len());
        self.field(ui, desk);
        if self.letters != before {
            self.at = (!self.letters.trim().is_empty()).then_some(0);
        }
        // What the new letters find is shown at once.
        let offers = found(&self.letters);
        let lit = self.at.filter(|_| !offers.is_empty()).map(|at| at.min(offers.len() - 1));
        if let Some(offer) = lit.filter(|_| entered).and_then(|at| offers.get(at)) {
            out.push(wish(*offer, self.side));
        }
        if offers.is_empty() {
            ui.label(RichText::new("No match. Try hook, leaf or taper.").color(desk.theme.ink_quiet));
        }
        let wholes = offers.iter().take_while(|offer| matches!(offer, Offer::Whole(_))).count();
        let is_grouped = self.letters.trim().is_empty();
        let groups =
            if is_grouped { [(0, wholes, READY), (wholes, offers.len(), FORMS)] } else { [(0, offers.len(), ""); 2] };
        for (from, to, head) in groups.into_iter().take(if is_grouped { 2 } else { 1 }) {
            if !head.is_empty() {
                ui.label(RichText::new(head).text_style(Text::Heading.style()));
            }
            let cards = offers.get(from..to).unwrap_or_default();
            if let Some(offer) = grid(ui, desk, cards, columns, lit.and_then(|at| at.checked_sub(from))) {
                out.push(wish(offer, self.side));
            }
        }
    }

    /// The field of the letters. It keeps the keyboard, so that letters find a part at any time.
    fn field(&mut self, ui: &mut Ui, desk: &Desk<'_>) {
        let field = TextEdit::singleline(&mut self.letters).hint_text("Type to find: hook, leaf, taper …");
        let field = field.desired_width(desk.theme.scaled(320.0)).char_limit(40);
        let response = ui.add(field.min_size(egui::vec2(0.0, desk.theme.scaled(space::TARGET))));
        // It gives the keyboard to nobody but what Tab goes to.
        let is_free = ui.memory(|memory| memory.focused().is_none());
        if !std::mem::replace(&mut self.met, true) || is_free {
            response.request_focus();
        }
        response.accessible_name("Find a part");
        ui.add_space(space::TIGHT);
    }

    /// The arrows move on, Enter takes what is lit; whether Enter was pressed in the field.
    fn read_keys(&mut self, ui: &Ui, columns: usize, count: usize) -> bool {
        let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
        let moves = [(Key::ArrowDown, columns.cast_signed()), (Key::ArrowUp, -columns.cast_signed())];
        for (key, by) in moves {
            if pressed(key) && count > 0 {
                let next = self.at.map_or(0, |at| at.saturating_add_signed(by));
                self.at = Some(next.min(count - 1));
            }
        }
        // Within the field the arrows move the caret where there are letters.
        for (key, by) in [(Key::ArrowRight, 1), (Key::ArrowLeft, -1)] {
            if self.at.is_some() && pressed(key) {
                self.at = self.at.map(|at| at.saturating_add_signed(by).min(count.saturating_sub(1)));
            }
        }
        ui.input(|input| input.key_pressed(Key::Enter))
    }
}

const READY: &str = "Ready made";
const FORMS: &str = "Forms";

/// What is wanted when something is chosen.
fn wish(offer: Offer, side: Side) -> Request {
    match offer {
        Offer::Whole(whole) => Request::AddWhole(whole, side),
        Offer::Form(kind) => Request::AddSegment(kind, side),
    }
}

/// The cards beside and below each other; the one that was clicked.
fn grid(ui: &mut Ui, desk: &Desk<'_>, cards: &[Offer], columns: usize, lit: Option<usize>) -> Option<Offer> {
    let width = ((ui.available_width() - space::GAP) / columns as f32 - space::GAP).floor();
    let mut chosen = None;
    let id = cards.first().map(|offer| offer.name());
    Grid::new(("parts", id)).num_columns(columns).spacing([space::GAP, space::TIGHT]).show(ui, |ui| {
        for (index, offer) in cards.iter().enumerate() {
            let response = form_card::show(ui, desk.theme, *offer, width, lit == Some(index));
            if lit == Some(index) && !ui.clip_rect().contains_rect(response.rect) {
                response.scroll_to_me(None);
            }
            if response.clicked() {
                chosen = Some(*offer);
            }
            if (index + 1) % columns == 0 {
                ui.end_row();
            }
        }
    });
    chosen
}

/// What is offered for the letters that were typed: all of it, or what they are found in, what begins with them first.
fn found(letters: &str) -> Vec<Offer> {
    let wholes = Whole::ALL.into_iter().map(Offer::Whole);
    let all = wholes.chain(FormKind::ALL.into_iter().map(Offer::Form));
    let wanted = letters.trim().to_lowercase();
    if wanted.is_empty() {
        return all.collect();
    }
    let mut ranked: Vec<(usize, Offer)> = all.filter_map(|offer| Some((rank(offer, &wanted)?, offer))).collect();
    ranked.sort_by_key(|(rank, _)| *rank);
    ranked.into_iter().map(|(_, offer)| offer).collect()
}

/// How well letters fit: 0 the name begins with them, then a word of it, then another word for it, then anywhere.
fn rank(offer: Offer, wanted: &str) -> Option<usize> {
    let begins = |words: &str| words.split([' ', '-']).any(|word| word.starts_with(wanted));
    let (name, summary) = (offer.name().to_lowercase(), offer.summary().to_lowercase());
    match () {
        () if name.starts_with(wanted) => Some(0),
        () if begins(&name) => Some(1),
        () if offer.also().iter().any(|words| words.starts_with(wanted) || begins(words)) => Some(2),
        () if begins(&summary) => Some(3),
        () => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(letters: &str) -> Vec<&'static str> {
        found(letters).into_iter().map(|offer| offer.name()).collect()
    }

    #[test]
    fn letters_find_what_begins_with_them_first() {
        assert_eq!(names("cur").first(), Some(&"curl"));
        assert_eq!(names("tap").first(), Some(&"taper"));
        assert_eq!(names("HOLE").first(), Some(&"hole"));
        assert_eq!(names("scroll"), ["curl"]);
        assert!(names("plate").contains(&"screw plate") && names("plate").contains(&"flag"));
        assert!(names("zz").is_empty());
        assert_eq!(names("").len(), Whole::ALL.len() + FormKind::ALL.len());
    }
}
