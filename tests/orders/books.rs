//! The proposal keeps the order in which named books forge like pieces, and differs where the handbook says that it does.

use crate::orders::pieces::{Pair, Piece};
use crate::orders::{hardware, pieces, place, proposed};
use fh_core::balance::balance;
use fh_core::findings::Severity;

fn all() -> Vec<Piece> {
    pieces::all().into_iter().chain(hardware::all()).collect()
}

fn in_order(piece: &Piece, (first, part, then, other): &Pair) -> bool {
    let order = proposed(&piece.plan);
    place(&order, *first, part) < place(&order, *then, other)
}

fn words(piece: &Piece, (first, part, then, other): &Pair) -> String {
    let (first, then) = (first.name(), then.name());
    format!("{} ({}): {first} “{part}”, then {then} “{other}”", piece.title, piece.source)
}

#[test]
fn the_proposal_keeps_the_order_of_the_books() {
    let mut faults = Vec::new();
    for piece in all() {
        faults.extend(piece.pairs.iter().filter(|pair| !in_order(&piece, pair)).map(|pair| words(&piece, pair)));
    }
    assert!(faults.is_empty(), "not in the order of the book:\n  {}", faults.join("\n  "));
}

#[test]
fn where_books_go_another_way_is_known() {
    let mut faults = Vec::new();
    for piece in all() {
        faults.extend(piece.otherwise.iter().filter(|pair| in_order(&piece, pair)).map(|pair| words(&piece, pair)));
    }
    assert!(
        faults.is_empty(),
        "the program goes the book's way now; say so in the handbook:\n  {}",
        faults.join("\n  ")
    );
}

#[test]
fn every_piece_can_be_forged() {
    for piece in all() {
        let balance = balance(&piece.plan);
        let stops = balance.findings.iter().filter(|finding| finding.severity == Severity::Stop);
        let words: Vec<&String> = stops.map(|finding| &finding.message).collect();
        assert!(words.is_empty(), "{}: {words:?}", piece.title);
        assert!(!piece.pairs.is_empty() || !piece.otherwise.is_empty(), "{} says nothing", piece.title);
    }
}
