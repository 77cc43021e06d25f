//! The rows: 27 lengths of bar in print.

use super::Answer::{Compared, NotEnough};
use super::{Row, bent, drawn, inches};
use crate::handbook::forged;
use serde_json::{Value, json};

const ILGEN_68: &str = "W. L. Ilgen, *Forge Work*, 1912, section 68";
const ILGEN_109: &str = "W. L. Ilgen, *Forge Work*, 1912, section 109";
const POSITIONS: &str = "Only where to cut and to punch is given, not what it is forged to.";
const NO_SHANK: &str = "The length of the shank is not given.";
const NO_LENGTHS: &str = "Sections are given, the lengths that they are forged to are not.";

fn round(diameter: &str) -> Value {
    json!({ "round": diameter })
}

fn flat(width: &str, thickness: &str) -> Value {
    json!({ "flat": { "width": width, "thickness": thickness } })
}

fn square(side: &str) -> Value {
    json!({ "square": side })
}

fn taper(length: &str, to: Value) -> Value {
    forged(&json!({ "taper": { "length": length, "to": to } }))
}

fn ring(diameter: &str) -> Value {
    bent(json!({ "ring": { "inside_diameter": diameter } }))
}

/// All of them, in the order of their books.
pub(super) const ROWS: [Row; 27] = [
    Row {
        piece: "staple with chisel points",
        source: ILGEN_68,
        stock: "1/4 in round",
        stated: "5 in; 1 in of each end drawn to 1 3/4 in",
        answer: Compared {
            part: "one point",
            book: 1.0,
            // 1.75/3 (A + M), A = π/4 · 1/16, M = 1/4 · 1/8: the round and the edge it runs out to.
            by_hand: 0.954_7,
            ours: || inches(round("1/4 in"), &taper("1 3/4 in", json!({ "edge": "1/4 in" }))),
            why: "The book takes a whole inch; 5 % is scale and dressing.",
        },
    },
    Row {
        piece: "staple with round points",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 70",
        stock: "1/4 in round",
        stated: "5 in; 1/2 in of each end drawn, 6 1/4 in over the points",
        answer: Compared {
            part: "one point",
            book: 0.5,
            // 1 1/8 in long: a third of a cone.
            by_hand: 0.375,
            ours: || inches(round("1/4 in"), &taper("1 1/8 in", json!("point"))),
            why: "The book's point is full, not a cone: a run-out of fullness 1 1/2 takes 0.506 in.",
        },
    },
    Row {
        piece: "gate hook",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 72",
        stock: "3/8 in square",
        stated: "7 1/4 in; marks at 1 1/2 and 6 in",
        answer: Compared {
            part: "eye end",
            book: 1.5,
            // 2 1/2 in of 5/16 in round.
            by_hand: 1.3635,
            ours: || inches(square("3/8 in"), &drawn("2 1/2 in", round("5/16 in"))),
            why: "The book leaves 10 % for the shoulder, scale and trimming.",
        },
    },
    Row {
        piece: "square corner, upset",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 75",
        stock: "1 × 1/2 in flat",
        stated: "10 in, the longer leg trimmed",
        answer: NotEnough("How far the upset runs is not given, and a leg is trimmed."),
    },
    Row {
        piece: "T weld",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 79",
        stock: "3/4 × 3/8 in flat",
        stated: "8 and 4 1/2 in",
        answer: NotEnough(NO_LENGTHS),
    },
    Row {
        piece: "boss with two arms",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 83",
        stock: "1 × 1/2 in flat",
        stated: "1 in for each arm, cut off at 3 1/2 in from the hole",
        answer: Compared {
            part: "one arm",
            book: 1.0,
            // 3 in of 7/16 in round beyond half the boss.
            by_hand: 0.9020,
            ours: || inches(flat("1 in", "1/2 in"), &drawn("3 in", round("7/16 in"))),
            why: "The book leaves 10 % and cuts off what is over.",
        },
    },
    Row {
        piece: "tongs",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 93",
        stock: "3/4 in square",
        stated: "6 1/2 in for each half",
        answer: NotEnough(NO_LENGTHS),
    },
    Row {
        piece: "tool with a fullered blade",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 96",
        stock: "1 × 1/2 in flat",
        stated: "7 in; fullered 5/8 in from the end",
        answer: NotEnough(NO_LENGTHS),
    },
    Row {
        piece: "tool with a square end, bent",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 98",
        stock: "1 × 1/2 in flat",
        stated: "5 in; fullered at 2 in",
        answer: NotEnough(NO_LENGTHS),
    },
    Row {
        piece: "tool with a thin upper edge",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 100",
        stock: "1 × 1/2 in flat",
        stated: "7 in",
        answer: NotEnough(NO_LENGTHS),
    },
    Row {
        piece: "tool with an eye and a blade",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 103",
        stock: "1 1/4 in square",
        stated: "4 in",
        answer: NotEnough(POSITIONS),
    },
    Row {
        piece: "tool with an eye and a cut end",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 105",
        stock: "1 in square",
        stated: "3 1/2 in",
        answer: NotEnough(POSITIONS),
    },
    Row {
        piece: "tool with a spread face",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 107",
        stock: "1 1/2 in square",
        stated: "4 3/4 in; 1 1/2 in of it for a face about 2 in square and 3/8 in thick",
        answer: Compared {
            part: "the face",
            book: 1.5,
            // 2 × 2 × 3/8 in³ over 2 1/4 in².
            by_hand: 2.0 / 3.0,
            ours: || inches(square("1 1/2 in"), &drawn("3/8 in", square("2 in"))),
            why: "The sizes in print do not agree: 1 1/2 in of this bar makes a face 3 in square.",
        },
    },
    Row {
        piece: "welded eye",
        source: ILGEN_109,
        stock: "round of any diameter d",
        stated: "π (D + d) - d",
        answer: Compared {
            part: "an eye of 2 in on 1/2 in round",
            book: 7.354,
            by_hand: 7.854,
            ours: || inches(round("1/2 in"), &ring("2 in")),
            why: "The print is short by d, which the first bend has already supplied; the program counts the whole ring.",
        },
    },
    Row {
        piece: "eye straight to its weld",
        source: ILGEN_109,
        stock: "round of any diameter d",
        stated: "2/3 π (D + d), the legs and the scarf",
        answer: Compared {
            part: "the round part, 2 in on 1/2 in round",
            book: 5.236,
            by_hand: 5.236,
            ours: || {
                let curve = json!({ "curve": { "angle": "240 deg", "inside_radius": "1 in" } });
                inches(round("1/2 in"), &bent(curve))
            },
            why: "The same: the line through the middle of the bar.",
        },
    },
    Row {
        piece: "tool of octagon bar",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 148",
        stock: "3/4 in octagon",
        stated: "about 6 1/2 in when finished",
        answer: NotEnough("The finished length is given, the length of bar is not."),
    },
    Row {
        piece: "ring with a riveted lap",
        source: "W. L. Ilgen, *Forge Work*, 1912, section 149",
        stock: "1/2 × 1/8 in flat",
        stated: "14 1/2 in for 5 in outside",
        answer: Compared {
            part: "ring and lap",
            book: 14.5,
            // π (5 - 1/8) and the lap of 3/4 in.
            by_hand: 16.0653,
            ours: || {
                let bar = || json!({ "flat": { "width": "1/2 in", "thickness": "1/8 in" } });
                inches(bar(), &ring("4 3/4 in")) + inches(bar(), &forged(&json!({ "plain": { "length": "3/4 in" } })))
            },
            why: "The print is short: 14 1/2 in makes a ring of 4 1/2 in outside.",
        },
    },
    Row {
        piece: "eye bolt",
        source: "J. B. Stokes, *Basic Blacksmithing*, FAO bulletin 88/1, 1992, job 10",
        stock: "16 mm round",
        stated: "200 mm",
        answer: NotEnough(NO_SHANK),
    },
    Row {
        piece: "shackle pin",
        source: "J. B. Stokes, *Basic Blacksmithing*, FAO bulletin 88/1, 1992, job 12",
        stock: "16 mm round",
        stated: "a hand length, cut off by the shackle",
        answer: NotEnough("Cut to the shackle, not to a size."),
    },
    Row {
        piece: "strap hinge",
        source: "J. B. Stokes, *Basic Blacksmithing*, FAO bulletin 88/1, 1992, job 14",
        stock: "25 × 6 mm flat",
        stated: "a strap",
        answer: NotEnough("No length is given."),
    },
    Row {
        piece: "plate tool with a tang",
        source: "J. B. Stokes, *Basic Blacksmithing*, FAO bulletin 88/1, 1992, job 20",
        stock: "5 mm plate",
        stated: "a pattern",
        answer: NotEnough("A cut plate is not a length of bar."),
    },
    Row {
        piece: "split link",
        source: "J. B. Stokes, *Basic Blacksmithing*, FAO bulletin 88/1, 1992, job 6",
        stock: "8 mm round",
        stated: "220 mm",
        answer: NotEnough("The link's size is in a drawing."),
    },
    Row {
        piece: "ladle",
        source: "*Shop Practice*, vol. 2, about 1906 to 1913, forging",
        stock: "disc 4 in × 1/8 in",
        stated: "about 4 in for a bowl of 3 1/2 in",
        answer: NotEnough("A plan has no dished form."),
    },
    Row {
        piece: "chain link",
        source: "J. M. Drew, *Farm Blacksmithing*, 1901",
        stock: "3/8 in round",
        stated: "about 6 in",
        answer: NotEnough("The link's size is not given."),
    },
    Row {
        piece: "bolt with a square head",
        source: "common practice, no source",
        stock: "1/4 in round",
        stated: "4 in for a bolt of 3 in",
        answer: NotEnough("The head's sizes are not given."),
    },
    Row {
        piece: "hook with a lug",
        source: "T. F. Googerty, *Practical Forging and Art Smithing*, 1915, page 59",
        stock: "as drawn",
        stated: "3 1/2 in for the lug",
        answer: NotEnough("The bar's section is in a drawing."),
    },
    Row {
        piece: "two rings of one size",
        source: "common practice, no source",
        stock: "3/8 in square; 3/4 in round",
        stated: "18 in; 12 in",
        answer: NotEnough("Their diameter is what is asked for."),
    },
];
