//! The commands of the view of the piece.

use super::row::Row;
use crate::state::{Command, Desk, Standard};
use egui::{Key, KeyboardShortcut, Modifiers};

const CTRL: Modifiers = Modifiers::COMMAND;

pub(super) const ROWS: [Row; 14] = [
    Row::new(Command::ShowPiece, "Show the piece", "Open or close the view of the finished piece.")
        .keys(KeyboardShortcut::new(CTRL, Key::Num4))
        .chosen(is_open),
    Row::new(Command::PieceFront, "Piece from you", "See the piece from where the smith stands.")
        .keys(KeyboardShortcut::new(CTRL, Key::Num5))
        .when(is_open)
        .chosen(|desk| desk.piece.standard == Some(Standard::Front)),
    Row::new(Command::PieceSide, "Piece from the far end", "See the piece along its bar, from the far end.")
        .keys(KeyboardShortcut::new(CTRL, Key::Num6))
        .when(is_open)
        .chosen(|desk| desk.piece.standard == Some(Standard::Side)),
    Row::new(Command::PieceTop, "Piece from above", "See the piece from above.")
        .keys(KeyboardShortcut::new(CTRL, Key::Num7))
        .when(is_open)
        .chosen(|desk| desk.piece.standard == Some(Standard::Top)),
    Row::new(Command::PieceTurned, "Piece turned", "See the piece a little from the side and from above.")
        .keys(KeyboardShortcut::new(CTRL, Key::Num8))
        .when(is_open)
        .chosen(|desk| desk.piece.standard == Some(Standard::Turned)),
    Row::new(Command::PieceFit, "Fit the piece", "Show the whole piece.")
        .keys(KeyboardShortcut::new(CTRL, Key::Num9))
        .when(is_open),
    Row::new(Command::PieceLarger, "Larger piece", "Show the piece larger.").when(is_open),
    Row::new(Command::PieceSmaller, "Smaller piece", "Show the piece smaller.").when(is_open),
    Row::new(
        Command::QuarterTurn,
        "Turn it a quarter",
        "Turn the piece a quarter as you see it, and let it hang so from now on, here and on paper.",
    )
    .when(is_open),
    Row::new(
        Command::HangAsSeen,
        "Let it hang as it is seen",
        "What is up in this view is up from now on, here and on paper.",
    )
    .when(is_open),
    Row::new(Command::HangAsPlanned, "Let it lie as planned", "Lay the first bar along the ground again.")
        .when(|desk| is_open(desk) && !desk.document.plan().hangs.is_default()),
    Row::new(Command::Measure, "Measure the piece", "Click two points of the metal to see how far apart they are.")
        .keys(KeyboardShortcut::new(CTRL, Key::R))
        .when(is_open)
        .chosen(|desk| desk.piece.measuring),
    Row::new(
        Command::LayPicture,
        "Add a picture to trace…",
        "Lay a sketch, a photograph or a scan under the piece, to trace it.",
    ),
    Row::new(
        Command::AdjustPicture,
        "Adjust the picture",
        "Put two points on the picture, say how far apart they are, and lay it where it fits.",
    )
    .when(|desk| desk.piece_open && desk.document.plan().underlay.is_some())
    .chosen(|desk| desk.piece.adjusting),
];

fn is_open(desk: &Desk<'_>) -> bool {
    desk.piece_open
}
