//! Pieces whose stock is stated in print: the program's length of bar beside the book's, and `docs/stock-lengths.md`, which
//! shows them all.

use crate::handbook::{INCH, bar_of, forged};
use serde_json::{Value, json};

mod rows;

/// A piece whose length of bar is stated in print.
struct Row {
    /// What it is.
    piece: &'static str,
    /// Who states it, and where.
    source: &'static str,
    /// The bar.
    stock: &'static str,
    /// What is stated.
    stated: &'static str,
    /// What the program says to it.
    answer: Answer,
}

enum Answer {
    /// The sizes are there.
    Compared {
        /// Which part of it is compared.
        part: &'static str,
        /// The book's length in inches.
        book: f64,
        /// The same worked by hand from the sizes, without this program, in inches.
        by_hand: f64,
        /// The program's length in inches.
        ours: fn() -> f64,
        /// Why they part; of equals, what shows it.
        why: &'static str,
    },
    /// Sizes are missing, or the piece cannot be said in a plan: why.
    NotEnough(&'static str),
}

/// The inches of bar that one segment takes.
fn inches(stock: Value, segment: &Value) -> f64 {
    bar_of(&stock, std::slice::from_ref(segment), 0) / INCH
}

fn drawn(length: &str, section: Value) -> Value {
    forged(&json!({ "drawn": { "length": length, "section": section } }))
}

fn bent(section_follows: Value) -> Value {
    json!({ "name": "bend", "form": { "plain": {} }, "bend": section_follows })
}

/// The rows as the document shows them.
fn table() -> String {
    let mut text = String::from("| piece | source | bar | stated | worked out | why |\n|---|---|---|---|---|---|\n");
    for row in &rows::ROWS {
        let (worked_out, why) = match &row.answer {
            Answer::Compared { part, book, ours, why, .. } => (format!("{part}: {:.3} in for {book:.3}", ours()), *why),
            Answer::NotEnough(why) => ("-".to_owned(), *why),
        };
        text +=
            &format!("| {} | {} | {} | {} | {worked_out} | {why} |\n", row.piece, row.source, row.stock, row.stated);
    }
    text
}

#[test]
fn where_the_sizes_are_there_the_length_is_that_worked_by_hand() {
    let mut compared = 0;
    for row in &rows::ROWS {
        let Answer::Compared { by_hand, ours, .. } = &row.answer else { continue };
        let got = ours();
        assert!((got - by_hand).abs() <= 0.001 * by_hand, "{}: {got} where {by_hand} is right", row.piece);
        compared += 1;
    }
    assert_eq!((compared, rows::ROWS.len()), (8, 27));
}

#[test]
fn no_stated_length_is_too_short_but_those_whose_print_is_known_to_be_off() {
    // A bar cut too long is dressed, one cut too short is scrap: where the book has less, the row says why.
    for row in &rows::ROWS {
        let Answer::Compared { book, ours, why, .. } = &row.answer else { continue };
        let is_short = *book < ours() * 0.999;
        assert_eq!(is_short, why.starts_with("The print is short"), "{}: {book} for {}", row.piece, ours());
    }
}

#[test]
fn the_document_shows_what_the_program_says() {
    let path = tests::project().join("docs/stock-lengths.md");
    let document = std::fs::read_to_string(&path).unwrap();
    let table = table();
    assert!(document.contains(&table), "{} is to hold:\n{table}", path.display());
}
