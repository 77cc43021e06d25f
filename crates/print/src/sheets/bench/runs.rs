//! Words of more than one weight, broken into lines together.

use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::CLOSE_PITCH;
use crate::typeset;

/// Some words of one weight.
pub(super) struct Run {
    words: String,
    weight: Weight,
}

impl Run {
    /// Words of normal weight.
    pub(super) fn plain(words: &str) -> Self {
        Self { words: words.to_owned(), weight: Weight::Regular }
    }

    /// Bolder words.
    pub(super) fn bold(words: &str) -> Self {
        Self { words: words.to_owned(), weight: Weight::SemiBold }
    }
}

/// A stretch of one weight in a line, with where it starts and how wide it is.
struct Set {
    words: String,
    weight: Weight,
    left: f64,
    width: f64,
}

/// The runs one after the other in lines of a width, with an em of `size` mm; the first line starts `first` mm further right.
pub(super) fn runs_block(runs: &[Run], size: f64, width: f64, first: f64) -> Block {
    let pitch = size * CLOSE_PITCH;
    let lines = broken(runs, size, width, first);
    let set = |(index, line): (usize, &Vec<Set>)| {
        let y = pitch * index as f64 + size * 0.85;
        line.iter()
            .map(|one| Text::new(at(one.left, y), size, &one.words).weight(one.weight).into())
            .collect::<Vec<_>>()
    };
    let items: Vec<Item> = lines.iter().enumerate().flat_map(set).collect();
    Block { height: pitch * lines.len() as f64, items }
}

fn broken(runs: &[Run], size: f64, width: f64, first: f64) -> Vec<Vec<Set>> {
    let mut lines: Vec<Vec<Set>> = Vec::new();
    let mut x = first;
    for run in runs {
        let wide = |words: &str| typeset::width_mm(words, size, run.weight);
        for word in typeset::words_to_fit(&run.words, size, run.weight, width) {
            let is_begun = lines.last().is_some_and(|line| !line.is_empty());
            let before = if is_begun { wide(" ") } else { 0.0 };
            if is_begun && x + before + wide(&word) > width || lines.is_empty() {
                x = if lines.is_empty() { first } else { 0.0 };
                lines.push(Vec::new());
            } else {
                x += before;
            }
            let long = wide(&word);
            if let Some(line) = lines.last_mut() {
                put(line, Set { words: word, weight: run.weight, left: x, width: long }, size);
            }
            x += long;
        }
    }
    lines
}

/// Puts a word into a line: to the words before it where they have its weight.
fn put(line: &mut Vec<Set>, next: Set, size: f64) {
    match line.last_mut().filter(|last| last.weight == next.weight) {
        Some(last) => {
            last.words = format!("{} {}", last.words, next.words);
            last.width = typeset::width_mm(&last.words, size, last.weight);
        }
        None => line.push(next),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn runs_fill_lines_together_and_keep_inside_them() {
        let runs =
            [Run::bold("Draw out “hook”"), Run::plain("to 3/8 square, 2 35/64 long, over the horn and then flat")];
        let lines = broken(&runs, 5.0, 60.0, 5.0);
        assert!(lines.len() > 1 && (lines[0][0].left - 5.0).abs() < 1e-9);
        assert!(lines[0].len() == 2, "both weights in the first line");
        assert!(lines.iter().flatten().all(|set| set.left + set.width <= 60.0 + 1e-6));
        let all: Vec<&str> = lines.iter().flatten().map(|set| set.words.as_str()).collect();
        assert_eq!(all.join(" "), "Draw out “hook” to 3⁄8 square, 2 35⁄64 long, over the horn and then flat");
    }
}
