//! The flat outlines as DXF, each on a layer of its segment's name.
//!
//! The file is of release 12, the oldest that every reader knows: a header and entities, each value under its group code
//! (Autodesk, *DXF Reference*). It holds nothing but the outlines, so that the same plan gives the same bytes.

use crate::Flat;
use std::fmt::{Display, Write};

/// Group codes: what the value under them is.
const KIND: i32 = 0;
const TEXT: i32 = 1;
const NAME: i32 = 2;
const LAYER: i32 = 8;
const VARIABLE: i32 = 9;
const X: i32 = 10;
const Y: i32 = 20;
const Z: i32 = 30;
const VERTICES_FOLLOW: i32 = 66;
const FLAG: i32 = 70;

/// Millimetres as `$INSUNITS` counts units, metric as `$MEASUREMENT` does, and a closed line by its flag.
const MILLIMETRES: i32 = 4;
const METRIC: i32 = 1;
const CLOSED: i32 = 1;

/// The longest name of a layer in release 12.
const LAYER_LETTERS: usize = 31;

/// The text of the file.
pub(super) fn write(flats: &[Flat]) -> String {
    let mut text = String::new();
    section(&mut text, "HEADER");
    for (variable, code, value) in [
        ("$ACADVER", TEXT, "AC1009"),
        ("$INSUNITS", FLAG, &MILLIMETRES.to_string()),
        ("$MEASUREMENT", FLAG, &METRIC.to_string()),
    ] {
        put(&mut text, VARIABLE, variable);
        put(&mut text, code, value);
    }
    put(&mut text, KIND, "ENDSEC");
    section(&mut text, "ENTITIES");
    for flat in flats {
        let layer = layer(flat);
        flat.loops.iter().for_each(|points| polyline(&mut text, &layer, points));
    }
    put(&mut text, KIND, "ENDSEC");
    put(&mut text, KIND, "EOF");
    text
}

fn section(text: &mut String, name: &str) {
    put(text, KIND, "SECTION");
    put(text, NAME, name);
}

/// A closed line through points in mm.
fn polyline(text: &mut String, layer: &str, points: &[[f64; 2]]) {
    put(text, KIND, "POLYLINE");
    put(text, LAYER, layer);
    put(text, VERTICES_FOLLOW, 1);
    place(text, [0.0, 0.0]);
    put(text, FLAG, CLOSED);
    for point in points {
        put(text, KIND, "VERTEX");
        put(text, LAYER, layer);
        place(text, *point);
    }
    put(text, KIND, "SEQEND");
    put(text, LAYER, layer);
}

fn place(text: &mut String, [x, y]: [f64; 2]) {
    for (code, value) in [(X, x), (Y, y), (Z, 0.0)] {
        put(text, code, format_args!("{value:.6}"));
    }
}

/// A group: its code, then its value.
fn put(text: &mut String, code: i32, value: impl Display) {
    let _ = write!(text, "{code:>3}\r\n{value}\r\n");
}

/// The name of a layer: letters and figures, as old readers want it.
fn layer(flat: &Flat) -> String {
    let word: String = flat.name.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '_' }).collect();
    let name = format!("BAR{}_{}_{word}", flat.bar + 1, flat.segment + 1);
    name.chars().take(LAYER_LETTERS).collect()
}
