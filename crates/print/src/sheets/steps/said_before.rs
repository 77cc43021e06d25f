//! What an earlier card says in the same words is not said again: the card names the step that says it.

use super::words::CardWords;
use std::collections::HashMap;

/// Less than so many letters are said again: it takes as long to look them up.
const SHORT: usize = 40;

/// What the cards said so far: under its word, without the names of its parts, and the step that says it, counted from 1.
#[derive(Default)]
pub(super) struct SaidBefore {
    said: HashMap<(&'static str, String), usize>,
}

impl SaidBefore {
    /// The words of the next card, without what an earlier one says in the same words.
    pub(super) fn shorten<'a>(&mut self, words: CardWords<'a>, number: usize) -> CardWords<'a> {
        let names: Vec<String> = quoted(words.title).map(str::to_owned).collect();
        let said = words.said.iter().flat_map(|(head, text)| self.one(head, text, (&names, number))).collect();
        CardWords { said: in_one(said), ..words }
    }

    /// What is left to say under a word; nothing new is said of a place, which is always another one.
    fn one(
        &mut self,
        head: &'static str,
        text: &str,
        (names, number): (&[String], usize),
    ) -> Vec<(&'static str, String)> {
        if !matches!(head, "lay" | "check" | "leave") {
            return vec![(head, text.to_owned())];
        }
        // A step that says more would bring the rest of it along, so only the whole is the same.
        let bare = names.iter().fold(text.to_owned(), |all, name| all.replace(name.as_str(), "…"));
        match self.said.get(&(head, bare.clone())) {
            Some(step) if *step < number && text.len() >= SHORT => vec![(head, format!("As in step {step}."))],
            _ => {
                self.said.entry((head, bare)).or_insert(number);
                vec![(head, text.to_owned())]
            }
        }
    }
}

/// Where a step is laid and checked as one and the same earlier step, one line says both; a check that is known is not told alone.
fn in_one(mut said: Vec<(&'static str, String)>) -> Vec<(&'static str, String)> {
    let of = |wanted: &str| said.iter().position(|(head, text)| *head == wanted && is_all_known(text));
    let Some(check) = of("check") else { return said };
    if let Some(lay) = of("lay").filter(|lay| said[*lay].1 == said[check].1) {
        said[lay].1 = said[lay].1.replace("As in", "Lay and check it as in");
    }
    said.remove(check);
    said
}

/// Whether nothing is said but that it is as in an earlier step.
fn is_all_known(text: &str) -> bool {
    text.starts_with("As in step")
}

/// What stands in quotation marks in a title.
fn quoted(title: &str) -> impl Iterator<Item = &str> {
    title.split('“').skip(1).filter_map(|rest| rest.split('”').next()).filter(|name| !name.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_said_in_the_same_words_is_said_once_whatever_its_part_is_called() {
        let mut before = SaidBefore::default();
        let text = |name: &str| format!("Quarter turns to and fro, never all the way round. Begin at “{name}”.");
        let first = before.one("lay", &text("stem"), (&["stem".to_owned()], 3));
        assert_eq!(first, [("lay", text("stem"))]);
        let next = before.one("lay", &text("hook"), (&["hook".to_owned()], 5));
        assert_eq!(next, [("lay", "As in step 3.".to_owned())]);
    }

    #[test]
    fn a_step_that_says_less_than_an_earlier_one_says_it_itself() {
        let mut before = SaidBefore::default();
        let round = "Square first, then eight sides, then round. Quarter turns to and fro, never all the way round.";
        let square = "Quarter turns to and fro, never all the way round.";
        for (number, text) in [(3, round), (5, square)] {
            assert_eq!(before.one("lay", text, (&[], number)), [("lay", text.to_owned())]);
        }
    }

    #[test]
    fn a_place_is_always_told() {
        let mut before = SaidBefore::default();
        let place = "the start of “hook”: mark 3, struck at 55 mm from the end of the bar";
        for number in [2, 4] {
            assert_eq!(before.one("measure", place, (&[], number)), [("measure", place.to_owned())]);
        }
    }
}
