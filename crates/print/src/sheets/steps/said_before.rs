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
    /// The words of the next card, without what an earlier one says.
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
        let (mut left, mut known, mut dropped): (Vec<&str>, Vec<usize>, usize) = (Vec::new(), Vec::new(), 0);
        for sentence in sentences(text) {
            let bare = names.iter().fold(sentence.to_owned(), |all, name| all.replace(name.as_str(), "…"));
            match self.said.get(&(head, bare.clone())) {
                Some(step) if *step < number => {
                    known.push(*step);
                    dropped += sentence.len();
                }
                _ => {
                    self.said.insert((head, bare), number);
                    left.push(sentence);
                }
            }
        }
        known.sort_unstable();
        known.dedup();
        if dropped < SHORT || known.len() > 2 {
            return vec![(head, text.to_owned())];
        }
        let steps: Vec<String> = known.iter().map(ToString::to_string).collect();
        let like = format!("As in step{} {}.", if steps.len() > 1 { "s" } else { "" }, steps.join(" and "));
        let left = left.into_iter().map(str::to_owned);
        vec![(head, std::iter::once(like).chain(left).collect::<Vec<_>>().join(" "))]
    }
}

/// Where a step is laid and checked as one and the same earlier step, one line says both.
fn in_one(mut said: Vec<(&'static str, String)>) -> Vec<(&'static str, String)> {
    let of = |wanted: &str| said.iter().position(|(head, text)| *head == wanted && is_all_known(text));
    if let (Some(lay), Some(check)) = (of("lay"), of("check"))
        && said[lay].1 == said[check].1
    {
        said[lay].1 = said[lay].1.replace("As in", "Lay and check it as in");
        said.remove(check);
    }
    said
}

/// Whether nothing is said but that it is as in earlier steps.
fn is_all_known(text: &str) -> bool {
    text.starts_with("As in step") && sentences(text).len() == 1
}

/// What stands in quotation marks in a title.
fn quoted(title: &str) -> impl Iterator<Item = &str> {
    title.split('“').skip(1).filter_map(|rest| rest.split('”').next()).filter(|name| !name.is_empty())
}

/// The sentences of a text: each ends where a full stop stands before a capital or a quotation mark.
fn sentences(text: &str) -> Vec<&str> {
    let starts = |rest: &str| rest.trim_start().starts_with(|first: char| first.is_uppercase() || first == '“');
    let ends = text.match_indices(". ").map(|(at, _)| at + 1).filter(|end| starts(&text[*end..]));
    let mut start = 0;
    let mut all = Vec::new();
    for end in ends.chain([text.len()]) {
        all.push(text[start..end].trim());
        start = end;
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sentence_is_said_once_whatever_its_part_is_called() {
        let mut before = SaidBefore::default();
        let text = |name: &str| format!("Quarter turns to and fro, never all the way round. Begin at “{name}”.");
        let first = before.one("lay", &text("stem"), (&["stem".to_owned()], 3));
        assert_eq!(first, [("lay", text("stem"))]);
        let next = before.one("lay", &format!("{} Mind the shoulder.", text("hook")), (&["hook".to_owned()], 5));
        assert_eq!(next, [("lay", "As in step 3. Mind the shoulder.".to_owned())]);
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
