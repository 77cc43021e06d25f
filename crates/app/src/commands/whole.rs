//! The commands that change the whole piece, and that hold it against another one.

use super::edit::shows_the_plan;
use super::row::Row;
use crate::state::{Command, Desk};

pub(super) const ROWS: [Row; 4] = [
    Row::new(
        Command::OtherHand,
        "Make the other hand",
        "Make the piece as a mirror shows it: what is bent towards you is bent away, a twist runs the other way.",
    )
    .when(has_parts),
    Row::new(
        Command::OtherBar,
        "Make it from another bar…",
        "Keep the finished sizes and choose another bar; see first what that takes and what cannot be made.",
    )
    .when(has_parts),
    Row::new(
        Command::ScalePiece,
        "Scale the piece…",
        "Make the whole piece larger or smaller, by a number or to a size, on the steps of a rule.",
    )
    .when(has_parts),
    Row::new(
        Command::Compare,
        "Compare…",
        "See the plan beside another one, or as it was saved: what differs in metal, marks and heats.",
    ),
];

/// Whether there is a piece to be changed, and it is shown.
fn has_parts(desk: &Desk<'_>) -> bool {
    shows_the_plan(desk) && desk.document.plan().bars.iter().any(|bar| !bar.segments.is_empty())
}
