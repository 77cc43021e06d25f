//! What an earlier card says in the same words is not said again: the card names the step that says it.

use super::in_short::in_short;
use super::words::CardWords;
use fh_core::describe::upper_first;
use std::collections::{HashMap, HashSet};

/// Less than so many letters are said again: it takes as long to look them up.
const SHORT: usize = 24;

/// What the cards said so far.
#[derive(Default)]
pub(super) struct SaidBefore {
    /// Each sentence under its word, without the names of its parts, and the step that says it, counted from 1.
    said: HashMap<(&'static str, String), usize>,
    /// Each caution, and the step that has it.
    cautions: HashMap<String, usize>,
    /// What parts of a bar become.
    become_so: HashSet<(Option<usize>, String)>,
    /// What was held last, on which bar.
    held: Option<(Option<usize>, String)>,
    /// How hot most steps are worked, told before the first card.
    usual: Option<String>,
}

impl SaidBefore {
    /// Nothing so far but how hot most steps are worked.
    pub(super) fn new(usual: Option<String>) -> Self {
        Self { usual, ..Self::default() }
    }

    /// The words of the next card on a bar, without what an earlier one says in the same words.
    pub(super) fn shorten<'a>(&mut self, words: CardWords<'a>, number: usize, bar: Option<usize>) -> CardWords<'a> {
        let names: Vec<String> = quoted(words.title).map(str::to_owned).collect();
        let said = words.said.iter().flat_map(|(head, text)| match *head {
            "measure" => {
                let lines = text.split("; ").map(|line| in_short(line, words.title));
                vec![(*head, lines.collect::<Vec<_>>().join("; "))]
            }
            _ => self.one(head, text, (&names, number)),
        });
        let said = in_one(said.collect());
        let caution = words.caution.map(|text| self.caution(text, number));
        let fire = words.fire.as_deref().map(|fire| self.without_the_usual(fire).replace(" of work", ""));
        let tongs = words.tongs.clone().filter(|held| self.is_held_anew(bar, held));
        let is_new = self.become_so.insert((bar, format!("{names:?} {}", words.becomes)));
        let becomes = if is_new { words.becomes.clone() } else { String::new() };
        CardWords { said, fire, tongs, becomes, caution_words: caution, ..words }
    }

    /// A caution; where an earlier step has it in the same words, only that.
    fn caution(&mut self, text: &str, number: usize) -> String {
        let step = *self.cautions.entry(text.to_owned()).or_insert(number);
        if step < number { format!("As in step {step}.") } else { text.to_owned() }
    }

    /// Whether something else is held, or otherwise, than in the last hot step on the bar.
    fn is_held_anew(&mut self, bar: Option<usize>, held: &str) -> bool {
        let now = Some((bar, held.to_owned()));
        let is_new = self.held != now;
        self.held = now;
        is_new
    }

    /// How hot and how long, without how hot most steps are.
    fn without_the_usual(&self, fire: &str) -> String {
        let usual = self.usual.as_deref().unwrap_or_default();
        let at = fire.to_lowercase().find(&usual.to_lowercase()).filter(|_| !usual.is_empty());
        let Some((before, after)) = at.and_then(|at| Some((fire.get(..at)?, fire.get(at + usual.len()..)?))) else {
            return fire.to_owned();
        };
        let (before, after) = (before.trim_end_matches([' ', '·']), after.trim_start_matches([';', ' ']));
        match (before.is_empty(), after.is_empty()) {
            (false, false) => format!("{before} · {after}"),
            (true, _) => upper_first(after),
            (false, true) => before.to_owned(),
        }
    }

    /// What is left to say under a word: what is new of it, and which step says the rest.
    fn one(
        &mut self,
        head: &'static str,
        text: &str,
        (names, number): (&[String], usize),
    ) -> Vec<(&'static str, String)> {
        if !matches!(head, "lay" | "check" | "leave") {
            return vec![(head, text.to_owned())];
        }
        let told: Vec<(&str, usize)> = sentences(text)
            .into_iter()
            .map(|sentence| (sentence, self.first(head, sentence, (names, number))))
            .collect();
        let is_all_known = told.iter().all(|(_, step)| *step < number) && text.len() >= SHORT;
        let is_known = |(sentence, step): &(&str, usize)| *step < number && (is_all_known || sentence.len() >= SHORT);
        let news: Vec<&str> = told.iter().filter(|one| !is_known(one)).map(|(sentence, _)| *sentence).collect();
        let mut steps: Vec<usize> = told.iter().filter(|one| is_known(one)).map(|(_, step)| *step).collect();
        steps.sort_unstable();
        steps.dedup();
        let of = match steps.as_slice() {
            [] => return vec![(head, text.to_owned())],
            [one] => format!("step {one}"),
            all => format!("steps {}", all.iter().map(usize::to_string).collect::<Vec<_>>().join(" and ")),
        };
        match news.as_slice() {
            [] => vec![(head, format!("As in {of}."))],
            // What is checked each time needs no word.
            news if head == "check" => vec![(head, news.join(" "))],
            news => vec![(head, format!("{} Else as in {of}.", news.join(" ")))],
        }
    }

    /// The step that says a sentence first, whatever its parts are called.
    fn first(&mut self, head: &'static str, text: &str, (names, number): (&[String], usize)) -> usize {
        let bare = names.iter().fold(text.to_owned(), |all, name| all.replace(&format!("“{name}”"), "“…”"));
        *self.said.entry((head, bare)).or_insert(number)
    }
}

/// The sentences of a text; a full stop within a name or a figure ends none.
fn sentences(text: &str) -> Vec<&str> {
    let mut all = Vec::new();
    let (mut start, mut in_name) = (0, false);
    let letters: Vec<(usize, char)> = text.char_indices().collect();
    for (index, (at, letter)) in letters.iter().enumerate() {
        in_name = match letter {
            '“' => true,
            '”' => false,
            _ => in_name,
        };
        let next = letters.get(index + 1).map(|(_, next)| *next);
        if *letter == '.' && !in_name && next.is_none_or(char::is_whitespace) {
            let end = at + letter.len_utf8();
            all.push(text[start..end].trim());
            start = end;
        }
    }
    all.push(text[start..].trim());
    all.retain(|sentence| !sentence.is_empty());
    all
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
    fn of_several_sentences_only_the_new_ones_are_told_again() {
        let mut before = SaidBefore::default();
        let turns = "Quarter turns to and fro, never all the way round.";
        let round = format!("Square first, then eight sides, then round. {turns}");
        assert_eq!(before.one("lay", &round, (&[], 3)), [("lay", round.clone())]);
        assert_eq!(before.one("lay", turns, (&[], 5)), [("lay", "As in step 3.".to_owned())]);
        let more = format!("Begin over the far edge. {turns}");
        assert_eq!(
            before.one("lay", &more, (&[], 7)),
            [("lay", "Begin over the far edge. Else as in step 3.".to_owned())]
        );
    }

    #[test]
    fn how_hot_most_steps_are_is_told_before_the_cards() {
        let before = SaidBefore::new(Some("yellow, 1200 °C, down to cherry red, 850 °C".to_owned()));
        let usual = "Hot: 54 mm · yellow, 1200 °C, down to cherry red, 850 °C; about 25 s of work";
        assert_eq!(before.without_the_usual(usual), "Hot: 54 mm · about 25 s of work");
        let other = "Hot: 54 mm · yellow, 1200 °C, down to dark red, 750 °C; about 25 s of work";
        assert_eq!(before.without_the_usual(other), other);
        assert_eq!(
            before.without_the_usual("Yellow, 1200 °C, down to cherry red, 850 °C; about 5 s of work"),
            "About 5 s of work"
        );
    }

    #[test]
    fn what_is_held_and_cautioned_is_told_where_it_changes() {
        let mut before = SaidBefore::default();
        let held: Vec<bool> =
            [(0, "a"), (0, "a"), (0, "b"), (1, "b")].map(|(bar, held)| before.is_held_anew(Some(bar), held)).to_vec();
        assert_eq!(held, [true, false, true, true]);
        assert_eq!([before.caution("Cool it.", 4), before.caution("Cool it.", 6)], ["Cool it.", "As in step 4."]);
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
