//! The piece as Wavefront OBJ, one group for each solid under its segment's name.

use crate::Piece;
use fh_core::describe::segment_name;
use fh_core::plan::{Bar, Plan};
use std::fmt::Write;

/// The text of the file.
pub(super) fn write(plan: &Plan, piece: &Piece) -> String {
    let mut text = String::from("# in millimetres\n");
    let mut first = 1;
    for solid in &piece.solids {
        let _ = writeln!(text, "g {}", group(plan, solid.bar, solid.segment));
        for [x, y, z] in &solid.mesh.points {
            let _ = writeln!(text, "v {x:.6} {y:.6} {z:.6}");
        }
        for [a, b, c] in &solid.mesh.triangles {
            let _ = writeln!(text, "f {} {} {}", a + first, b + first, c + first);
        }
        first += solid.mesh.points.len() as u32;
    }
    text
}

/// The name of a segment's group: one word.
fn group(plan: &Plan, bar: usize, segment: usize) -> String {
    let words =
        |words: fn(&Bar, usize) -> String| plan.bars.get(bar).map_or_else(String::new, |bar| words(bar, segment));
    let (name, path) = (words(segment_name), words(Bar::path));
    let word: String = name.chars().map(|c| if c.is_alphanumeric() { c } else { '_' }).collect();
    format!("bar{}_{path}_{word}", bar + 1)
}
