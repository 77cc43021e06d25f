//! How a bent bar is turned for its pictures: as it lies on the strips, by its longest straight part.

use fh_piece::vector::{Vector, dot, length, minus, times};
use fh_piece::{Frame, Line, Piece};

/// A part that turns by less than this is straight: the cosine of its turn.
const STRAIGHT: f64 = 0.9999;

/// The place by which the bar of a piece lies as it does on the strips; as planned where there are several bars, and as it
/// hangs where the plan says.
pub(super) fn anchor(piece: &Piece) -> Frame {
    let one_bar = !piece.hangs && piece.lines.iter().all(|line| (line.bar, line.copy) == (0, 0));
    let straight = piece.lines.iter().filter(|line| one_bar && is_straight(line));
    let longest = straight.max_by(|one, other| reach(one).total_cmp(&reach(other)));
    // In a piece the smith stands where y is below 0.
    let planned = Frame { toward: [0.0, -1.0, 0.0], ..Frame::START };
    longest.and_then(|line| line.frames.first()).copied().unwrap_or(planned)
}

/// To the right and up on paper, from the side and from above; from above what lies away from the smith is up.
pub(super) fn directions(anchor: &Frame) -> [[Vector; 2]; 2] {
    [[anchor.along, anchor.up], [anchor.along, times(anchor.toward, -1.0)]]
}

fn is_straight(line: &Line) -> bool {
    let ends = line.frames.first().zip(line.frames.last());
    ends.is_some_and(|(first, last)| dot(first.along, last.along) > STRAIGHT)
}

/// How far it is from a part's start to its end, in mm; nothing where that cannot be told.
fn reach(line: &Line) -> f64 {
    let ends = line.frames.first().zip(line.frames.last());
    ends.map_or(0.0, |(first, last)| length(minus(first.at, last.at))).max(0.0)
}
