//! The commands of the view of the piece.

use super::{Command, Row};
use crate::piece_view::Standard;
use crate::state::Desk;
use egui::{Key, KeyboardShortcut, Modifiers};

const CTRL: Modifiers = Modifiers::COMMAND;

/// How much one step of zooming does.
const ZOOM_STEP: f32 = 1.25;

pub(super) const ROWS: [Row; 11] = [
    Row::new(Command::ShowPiece, "Show the piece", "Open or close the view of the finished piece.", |editor, _| {
        let open = editor.desk().piece_open;
        editor.show_piece(!open);
    })
    .keys(KeyboardShortcut::new(CTRL, Key::Num4))
    .chosen(is_open),
    Row::new(Command::PieceFront, "Piece from the front", "See the piece from where the smith stands.", |editor, _| {
        editor.piece_view.look_from(Standard::Front);
    })
    .keys(KeyboardShortcut::new(CTRL, Key::Num5))
    .when(is_open)
    .chosen(|desk| desk.piece.standard == Some(Standard::Front)),
    Row::new(
        Command::PieceSide,
        "Piece from the side",
        "See the piece along its bar, from the far end.",
        |editor, _| {
            editor.piece_view.look_from(Standard::Side);
        },
    )
    .keys(KeyboardShortcut::new(CTRL, Key::Num6))
    .when(is_open)
    .chosen(|desk| desk.piece.standard == Some(Standard::Side)),
    Row::new(Command::PieceTop, "Piece from above", "See the piece from above.", |editor, _| {
        editor.piece_view.look_from(Standard::Top);
    })
    .keys(KeyboardShortcut::new(CTRL, Key::Num7))
    .when(is_open)
    .chosen(|desk| desk.piece.standard == Some(Standard::Top)),
    Row::new(
        Command::PieceTurned,
        "Piece turned",
        "See the piece a little from the side and from above.",
        |editor, _| {
            editor.piece_view.look_from(Standard::Turned);
        },
    )
    .keys(KeyboardShortcut::new(CTRL, Key::Num8))
    .when(is_open)
    .chosen(|desk| desk.piece.standard == Some(Standard::Turned)),
    Row::new(Command::PieceFit, "Fit the piece", "Show the whole piece.", |editor, _| editor.piece_view.fit())
        .keys(KeyboardShortcut::new(CTRL, Key::Num9))
        .when(is_open),
    Row::new(Command::PieceLarger, "Larger piece", "Show the piece larger.", |editor, _| {
        editor.piece_view.zoom_by(ZOOM_STEP);
    })
    .when(is_open),
    Row::new(Command::PieceSmaller, "Smaller piece", "Show the piece smaller.", |editor, _| {
        editor.piece_view.zoom_by(1.0 / ZOOM_STEP);
    })
    .when(is_open),
    Row::new(
        Command::Measure,
        "Measure the piece",
        "Click two points of the metal to see how far apart they are.",
        |editor, _| {
            let words = editor.piece_view.toggle_measure();
            editor.say(words);
        },
    )
    .keys(KeyboardShortcut::new(CTRL, Key::R))
    .when(is_open)
    .chosen(|desk| desk.piece.measuring),
    Row::new(
        Command::LayPicture,
        "Lay a picture under the piece…",
        "Lay a sketch, a photograph or a scan under the piece, to trace it.",
        |editor, _| editor.ask_picture(),
    ),
    Row::new(
        Command::AdjustPicture,
        "Adjust the picture",
        "Put two points on the picture, say how far apart they are, and lay it where it fits.",
        |editor, _| {
            let on = !editor.desk().piece.adjusting;
            editor.adjust_picture(on);
        },
    )
    .when(|desk| desk.piece_open && desk.document.plan().underlay.is_some())
    .chosen(|desk| desk.piece.adjusting),
];

fn is_open(desk: &Desk<'_>) -> bool {
    desk.piece_open
}
