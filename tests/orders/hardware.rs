//! Hasp, tongs, hammers and chisels, pins and hooks of our own in the sizes of the books, with the pairs that the book states.

use crate::orders::pieces::{Piece, boss, curve, piece, plain, point};
use fh_core::plan::Operation as O;
use serde_json::{Value, json};

/// Every piece. Left out of the eleven orders read: a swivel rolled over its own pin, and a tang closed and welded to a tube,
/// for which a plan has no words.
pub(crate) fn all() -> Vec<Piece> {
    vec![hasp(), tongs(), flatter(), crowbar(), chisel(), shackle_pin(), barbed_hook(), door_hook(), hat_hook()]
}

fn drawn(name: &str, length: &str, section: Value) -> Value {
    json!({ "name": name, "form": { "drawn": { "length": length, "section": section } } })
}

fn ring(name: &str) -> Value {
    json!({ "name": name, "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "1/2 in" } } })
}

fn bent(name: &str, angle: &str) -> Value {
    json!({ "name": name, "form": { "plain": {} }, "bend": curve(angle) })
}

fn edge(name: &str, length: &str, width: &str) -> Value {
    json!({ "name": name, "form": { "taper": { "length": length, "to": { "edge": width } } } })
}

fn hasp() -> Piece {
    let bend = json!({ "name": "bend", "form": { "plain": {} },
        "bend": { "curve": { "angle": "90 deg", "inside_radius": "1/4 in" } } });
    let tail = json!({ "name": "tail", "form": { "hole": { "outline": { "rectangle": { "length": "2 in",
        "width": "1 in" } }, "thickness": "1/4 in", "hole": { "round": "3/8 in" }, "made": "punched" } } });
    Piece {
        pairs: vec![
            (O::Mark, "", O::Isolate, "eye"),
            (O::Isolate, "eye", O::Flatten, "eye"),
            (O::Flatten, "eye", O::Punch, "eye"),
            (O::Draw, "neck", O::Bend, "bend"),
            (O::Punch, "tail", O::Bend, "bend"),
            (O::Bend, "bend", O::Bend, "hook"),
        ],
        ..piece(
            "door hasp",
            "W. L. Ilgen, Forge Work, 1912, section 73",
            json!({ "flat": { "width": "1 in", "thickness": "3/8 in" } }),
            json!([
                boss("eye", "1/4 in", "punched"),
                drawn("neck", "2 in", json!({ "flat": { "width": "1/2 in", "thickness": "1/4 in" } })),
                tail,
                bend,
                bent("hook", "180 deg"),
                plain("end", "1 in"),
            ]),
        )
    }
}

fn tongs() -> Piece {
    Piece {
        pairs: vec![(O::Flatten, "joint", O::Draw, "rein")],
        // The book draws the jaw first, and punches last of all, when both halves can be fitted to each other.
        otherwise: vec![(O::Draw, "jaw", O::Flatten, "joint"), (O::Draw, "rein", O::Punch, "joint")],
        ..piece(
            "half of a pair of flat tongs",
            "W. L. Ilgen, Forge Work, 1912, section 92",
            json!({ "square": "7/8 in" }),
            json!([
                drawn("jaw", "2 in", json!({ "flat": { "width": "7/8 in", "thickness": "1/2 in" } })),
                boss("joint", "1/2 in", "punched"),
                drawn("rein", "14 in", json!({ "round": "1/2 in" })),
            ]),
        )
    }
}

fn flatter() -> Piece {
    let eye = json!({ "name": "eye", "form": { "hole": { "outline": { "rectangle": { "length": "1 1/2 in",
        "width": "1 1/2 in" } }, "thickness": "1 1/2 in", "hole": { "round": "5/8 in" }, "made": "drifted" } } });
    Piece {
        pairs: vec![
            (O::Upset, "face", O::Punch, "eye"),
            (O::Punch, "eye", O::Drift, "eye"),
            (O::Drift, "eye", O::Draw, "head"),
        ],
        // The book draws the far end a little to hold it, and finishes it as the head after the eye.
        otherwise: Vec::new(),
        ..piece(
            "flatter",
            "W. L. Ilgen, Forge Work, 1912, section 107",
            json!({ "square": "1 1/2 in" }),
            json!([
                drawn("face", "1/2 in", json!({ "square": "2 1/4 in" })),
                eye,
                drawn("head", "1 1/2 in", json!({ "square": "1 1/8 in" })),
            ]),
        )
    }
}

fn crowbar() -> Piece {
    let tip = json!({ "name": "tip", "form": { "taper": { "length": "4 in", "to": { "edge": "1 in" } } },
        "bend": { "curve": { "angle": "30 deg" } } });
    Piece {
        pairs: vec![(O::Taper, "tip", O::Bend, "tip"), (O::Draw, "handle", O::Taper, "tip")],
        otherwise: Vec::new(),
        ..piece(
            "crowbar",
            "W. L. Ilgen, Forge Work, 1912, section 108 (its steel face left out)",
            json!({ "square": "1 1/8 in" }),
            json!([drawn("handle", "30 in", json!({ "round": "1 in" })), plain("heel", "4 in"), tip]),
        )
    }
}

fn chisel() -> Piece {
    Piece {
        otherwise: vec![(O::Taper, "head", O::Taper, "blade")],
        ..piece(
            "cold chisel",
            "W. L. Ilgen, Forge Work, 1912, section 102",
            json!({ "octagon": "3/4 in" }),
            json!([
                { "name": "head", "form": { "taper": { "length": "1 in", "to": { "round": "1/2 in" } } } },
                plain("body", "4 in"),
                edge("blade", "2 1/2 in", "3/4 in"),
            ]),
        )
    }
}

fn shackle_pin() -> Piece {
    let head = json!({ "name": "head", "form": { "hole": { "outline": { "disc": { "diameter": "32 mm" } },
        "thickness": "12 mm", "hole": { "round": "10 mm" }, "made": "punched" } } });
    Piece {
        pairs: vec![
            (O::Upset, "head", O::Draw, "neck"),
            (O::Draw, "neck", O::Flatten, "head"),
            (O::Flatten, "head", O::Punch, "head"),
        ],
        ..piece(
            "pin of a shackle",
            "J. B. Stokes, Basic Blacksmithing, FAO Agricultural Services Bulletin 88/1, 1992, job 12 (its ring left out)",
            json!({ "round": "16 mm" }),
            json!([head, drawn("neck", "10 mm", json!({ "round": "12 mm" })), plain("shank", "80 mm")]),
        )
    }
}

fn barbed_hook() -> Piece {
    Piece {
        pairs: vec![(O::Mark, "", O::Bend, "eye"), (O::Taper, "point", O::Bend, "hook")],
        // The book turns the eye while the other end is still whole bar.
        otherwise: vec![(O::Bend, "eye", O::Taper, "point"), (O::Bend, "eye", O::Bend, "hook")],
        ..piece(
            "barbed gate hook",
            "J. B. Stokes, Basic Blacksmithing, FAO Agricultural Services Bulletin 88/1, 1992, job 5 (its barb left out)",
            json!({ "round": "10 mm" }),
            json!([ring("eye"), plain("shank", "6 in"), bent("hook", "90 deg"), point("point", "1 1/2 in")]),
        )
    }
}

fn door_hook() -> Piece {
    Piece {
        pairs: vec![
            (O::SetDown, "shoulder", O::Draw, "eye"),
            (O::Draw, "eye", O::Bend, "eye"),
            (O::Taper, "point", O::Bend, "hook"),
        ],
        // The book turns the eye while the rod is whole, and twists last of all.
        otherwise: vec![(O::Bend, "eye", O::Taper, "point"), (O::Bend, "hook", O::Twist, "stem")],
        ..piece(
            "hook for a door, on a long rod",
            "J. M. Drew, Farm Blacksmithing, 1901, the hook for a door",
            json!({ "square": "3/8 in" }),
            json!([
                { "name": "eye", "form": { "drawn": { "section": { "round": "1/4 in" } } },
                  "bend": { "ring": { "inside_diameter": "1/2 in" } } },
                { "name": "shoulder", "form": { "shoulder": { "to": "stock", "radius": "1/16 in", "sides": "all" } } },
                { "name": "stem", "form": { "plain": { "length": "4 in" } }, "bend": { "twist": { "turns": 1 } } },
                bent("hook", "90 deg"),
                point("point", "1 in"),
            ]),
        )
    }
}

fn hat_hook() -> Piece {
    let arm = json!({ "name": "arm", "form": { "plain": {} }, "bend": curve("120 deg"),
        "repeats": [{ "what": "chased line", "count": 3 }] });
    Piece {
        pairs: vec![(O::Upset, "knob", O::Stamp, "arm"), (O::Stamp, "arm", O::Bend, "arm")],
        ..piece(
            "hat hook with a knob",
            "T. F. Googerty, Practical Forging and Art Smithing, 1915, figures 51 to 55 (its lug left out)",
            json!({ "round": "3/8 in" }),
            json!([drawn("knob", "1/2 in", json!({ "round": "5/8 in" })), arm, plain("stem", "4 in")]),
        )
    }
}
