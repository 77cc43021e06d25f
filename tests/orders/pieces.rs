//! Small pieces of our own in the sizes of the books, each with the pairs “first this, then that” that the book states.

use fh_core::plan::{Operation, Plan};
use serde_json::{Value, json};

use Operation as O;

/// “This before that”: an operation on a part, and another.
pub(crate) type Pair = (Operation, &'static str, Operation, &'static str);

/// A piece, the book that forges one like it, and the order in which the book does.
pub(crate) struct Piece {
    pub(crate) title: &'static str,
    pub(crate) source: &'static str,
    pub(crate) plan: Plan,
    /// What the book does, and the program too.
    pub(crate) pairs: Vec<Pair>,
    /// What the book does, and the program the other way round, for a reason of its own.
    pub(crate) otherwise: Vec<Pair>,
}

pub(crate) fn piece(title: &'static str, source: &'static str, stock: Value, segments: Value) -> Piece {
    let plan = tests::read(&json!({
        "firstheat": 1,
        "title": title,
        "units": { "length": "in", "marks": "1/16 in" },
        "bars": [{ "name": "bar", "stock": stock, "segments": segments }],
    }));
    Piece { title, source, plan, pairs: Vec::new(), otherwise: Vec::new() }
}

pub(crate) fn plain(name: &str, length: &str) -> Value {
    json!({ "name": name, "form": { "plain": { "length": length } } })
}

pub(crate) fn point(name: &str, length: &str) -> Value {
    json!({ "name": name, "form": { "taper": { "length": length, "to": "point" } } })
}

pub(crate) fn boss(name: &str, thickness: &str, made: &str) -> Value {
    let outline = json!({ "disc": { "diameter": "1 in" } });
    json!({ "name": name, "form": {
        "hole": { "outline": outline, "thickness": thickness, "hole": { "round": "1/2 in" }, "made": made } } })
}

pub(crate) fn curve(angle: &str) -> Value {
    json!({ "curve": { "angle": angle, "inside_radius": "1/2 in" } })
}

/// Every piece.
pub(crate) fn all() -> Vec<Piece> {
    vec![
        grab_hook(),
        chain_grab_hook(),
        chain_hook(),
        gate_hook(),
        twisted_gate_hook(),
        hammock_hook(),
        shackle(),
        upset_bends(),
        hump(),
        pipe_hook(),
        eye_welded_to_its_bar(),
        split_eye(),
        knocker(),
        volute(),
        hinge(),
        strap_hinge(),
    ]
}

fn grab_hook() -> Piece {
    let hook = json!({ "name": "hook", "form": { "plain": {} }, "bend": curve("180 deg") });
    Piece {
        pairs: vec![
            (O::Isolate, "eye", O::Flatten, "eye"),
            (O::Flatten, "eye", O::Punch, "eye"),
            (O::Punch, "eye", O::Bend, "hook"),
            (O::Taper, "point", O::Bend, "hook"),
        ],
        ..piece(
            "grab hook",
            "T. F. Googerty, Practical Forging and Art Smithing, 1915, the hook before exercise 11",
            json!({ "flat": { "width": "3/4 in", "thickness": "3/8 in" } }),
            json!([boss("eye", "5/16 in", "punched"), plain("shank", "3/4 in"), hook, point("point", "2 in")]),
        )
    }
}

fn chain_grab_hook() -> Piece {
    let hook = json!({ "name": "hook", "form": { "plain": {} }, "bend": curve("180 deg") });
    Piece {
        pairs: vec![
            (O::Isolate, "eye", O::Flatten, "eye"),
            (O::Flatten, "eye", O::Punch, "eye"),
            (O::Punch, "eye", O::Drift, "eye"),
            (O::Drift, "eye", O::Bend, "hook"),
            (O::Taper, "end", O::Bend, "hook"),
        ],
        ..piece(
            "chain grab hook",
            "W. L. Ilgen, Forge Work, 1912, section 84",
            json!({ "flat": { "width": "3/4 in", "thickness": "3/8 in" } }),
            json!([boss("eye", "5/16 in", "drifted"), plain("shank", "1/2 in"), hook,
                { "name": "end", "form": { "taper": { "length": "2 in", "to": { "round": "3/16 in" } } } }]),
        )
    }
}

fn chain_hook() -> Piece {
    Piece {
        pairs: vec![
            (O::Flatten, "eye", O::Bend, "throat"),
            (O::Draw, "shank", O::Bend, "throat"),
            (O::Taper, "tip", O::Bend, "throat"),
            (O::Punch, "eye", O::Bend, "throat"),
        ],
        ..piece(
            "chain hook, forged to size before it is bent",
            "Shop Practice, vol. 2, c. 1906-1913, chain hooks",
            json!({ "square": "3/4 in" }),
            json!([
                boss("eye", "1/2 in", "punched"),
                { "name": "shank", "form": { "drawn": { "length": "2 in", "section": { "square": "1/2 in" } } } },
                { "name": "throat", "form": { "plain": {} }, "bend": curve("180 deg") },
                { "name": "tip", "form": { "taper": { "length": "2 in", "to": { "square": "1/4 in" } } } },
            ]),
        )
    }
}

fn gate_hook_segments() -> Value {
    json!([
        { "name": "eye", "form": { "drawn": { "section": { "round": "5/16 in" } } },
          "bend": { "ring": { "inside_diameter": "1/2 in" } } },
        { "name": "shoulder", "form": { "shoulder": { "to": "stock", "radius": "1/16 in", "sides": "all" } } },
        plain("near stem", "1 in"),
        { "name": "twist", "form": { "plain": { "length": "2 in" } }, "bend": { "twist": { "turns": 1 } } },
        plain("far stem", "1 in"),
        { "name": "hook", "form": { "taper": { "to": { "round": "1/4 in" } } }, "bend": curve("90 deg") },
        point("point", "1 in"),
    ])
}

fn gate_hook() -> Piece {
    Piece {
        pairs: vec![
            (O::SetDown, "shoulder", O::Draw, "eye"),
            (O::Draw, "eye", O::Bend, "eye"),
            (O::Taper, "point", O::Bend, "hook"),
        ],
        // The book turns the eye first, and twists last of all, the hook in the vice.
        otherwise: vec![
            (O::Bend, "eye", O::Bend, "hook"),
            (O::Bend, "eye", O::Twist, "twist"),
            (O::Bend, "hook", O::Twist, "twist"),
        ],
        ..piece(
            "gate hook",
            "W. L. Ilgen, Forge Work, 1912, section 72",
            json!({ "square": "3/8 in" }),
            gate_hook_segments(),
        )
    }
}

fn twisted_gate_hook() -> Piece {
    Piece {
        pairs: vec![
            (O::SetDown, "shoulder", O::Draw, "eye"),
            (O::Draw, "eye", O::Bend, "eye"),
            (O::Draw, "eye", O::Bend, "hook"),
            (O::Taper, "hook", O::Bend, "eye"),
            (O::Taper, "hook", O::Bend, "hook"),
        ],
        otherwise: vec![(O::Bend, "eye", O::Twist, "twist"), (O::Bend, "hook", O::Twist, "twist")],
        ..piece(
            "twisted gate hook",
            "Shop Practice, vol. 2, c. 1906-1913, bend with square forged corner, and forming shoulders",
            json!({ "square": "3/8 in" }),
            gate_hook_segments(),
        )
    }
}

fn hammock_hook() -> Piece {
    Piece {
        pairs: vec![(O::Taper, "point", O::Bend, "hook")],
        // The book turns the eye while the other end is still whole bar.
        otherwise: vec![(O::Bend, "eye", O::Taper, "point"), (O::Bend, "eye", O::Bend, "hook")],
        ..piece(
            "hammock hook, hay hook",
            "T. F. Googerty, Practical Forging and Art Smithing, 1915, hammock hook, and exercise 13",
            json!({ "round": "3/8 in" }),
            json!([
                { "name": "eye", "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "1/2 in" } } },
                plain("shank", "2 in"),
                { "name": "hook", "form": { "plain": {} }, "bend": curve("180 deg") },
                point("point", "1 1/2 in"),
            ]),
        )
    }
}

fn shackle() -> Piece {
    let bow = json!({ "curve": { "angle": "180 deg", "inside_radius": "3/4 in" } });
    let eye = |name: &str| {
        let hole = json!({ "outline": { "disc": { "diameter": "30 mm" } }, "thickness": "16 mm",
            "hole": { "round": "16 mm" }, "made": "drifted" });
        json!({ "name": name, "form": { "hole": hole } })
    };
    let pairs = ["near eye", "far eye"].into_iter().flat_map(|eye| {
        [(O::Upset, eye, O::Punch, eye), (O::Punch, eye, O::Drift, eye), (O::Drift, eye, O::Bend, "bow")]
    });
    Piece {
        pairs: pairs.collect(),
        ..piece(
            "shackle",
            "J. B. Stokes, Basic Blacksmithing, FAO Agricultural Services Bulletin 88/1, 1992, job 11",
            json!({ "round": "16 mm" }),
            json!([eye("near eye"), plain("near leg", "40 mm"),
                { "name": "bow", "form": { "plain": {} }, "bend": bow }, plain("far leg", "40 mm"), eye("far eye")]),
        )
    }
}

fn square_corner(name: &str) -> Value {
    json!({ "name": name, "form": { "peak": { "section": "stock" } },
        "bend": { "corner": { "angle": "90 deg", "inside_radius": "3 mm" } } })
}

fn upset_bends() -> Piece {
    Piece {
        pairs: vec![
            (O::Mark, "", O::Upset, "near corner"),
            (O::Upset, "near corner", O::Corner, "near corner"),
            (O::Upset, "far corner", O::Corner, "near corner"),
            (O::Upset, "near corner", O::Corner, "far corner"),
        ],
        ..piece(
            "upset bends",
            "J. B. Stokes, Intermediate Blacksmithing, FAO Agricultural Services Bulletin 88/2, 1992, upset bends",
            json!({ "flat": { "width": "25 mm", "thickness": "12 mm" } }),
            json!([
                plain("near leg", "60 mm"),
                square_corner("near corner"),
                plain("middle", "80 mm"),
                square_corner("far corner"),
                plain("far leg", "60 mm")
            ]),
        )
    }
}

fn hump() -> Piece {
    let leg = |name: &str| {
        json!({ "name": name, "form": { "drawn": { "length": "4 in",
            "section": { "flat": { "width": "1 in", "thickness": "3/8 in" } } } } })
    };
    let corner = json!({ "name": "corner",
        "form": { "peak": { "section": { "flat": { "width": "1 in", "thickness": "3/8 in" } } } },
        "bend": { "corner": { "angle": "90 deg", "inside_radius": "1/8 in" } } });
    Piece {
        pairs: vec![(O::Draw, "near leg", O::Corner, "corner"), (O::Draw, "far leg", O::Corner, "corner")],
        ..piece(
            "square corner from heavier bar",
            "Shop Practice, vol. 2, c. 1906-1913, bend with square forged corner, the second way",
            json!({ "flat": { "width": "1 in", "thickness": "5/8 in" } }),
            json!([leg("near leg"), corner, leg("far leg")]),
        )
    }
}

fn pipe_hook() -> Piece {
    Piece {
        pairs: vec![
            (O::Upset, "body", O::Draw, "arm"),
            (O::SetDown, "shoulder", O::Draw, "arm"),
            (O::Draw, "arm", O::Trim, "cut off"),
            (O::Trim, "cut off", O::Bend, "arm"),
            (O::Taper, "point", O::Bend, "arm"),
        ],
        ..piece(
            "pipe hook",
            "W. L. Ilgen, Forge Work, 1912, section 71",
            json!({ "square": "1/2 in" }),
            json!([
                { "name": "cut off", "form": { "trim": { "length": "1/2 in" } } },
                { "name": "arm", "form": { "drawn": {
                    "section": { "flat": { "width": "1/2 in", "thickness": "1/4 in" } } } }, "bend": curve("180 deg") },
                { "name": "shoulder", "form": { "shoulder": { "to": { "square": "5/8 in" },
                    "radius": "1/8 in", "sides": "all" } } },
                { "name": "body", "form": { "drawn": { "length": "1 in", "section": { "square": "5/8 in" } } } },
                point("point", "2 1/4 in"),
            ]),
        )
    }
}

fn eye_welded_to_its_bar() -> Piece {
    Piece {
        pairs: vec![(O::Scarf, "scarf", O::Bend, "eye"), (O::Bend, "eye", O::Weld, "scarf")],
        ..piece(
            "welded eye",
            "T. F. Googerty, Hand-Forging and Wrought-Iron Ornamental Work, 1911, pages 70 and 71",
            json!({ "round": "1/2 in" }),
            json!([
                plain("shank", "6 in"),
                { "name": "eye", "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "1 in" } } },
                { "name": "scarf", "form": { "weld": { "allowance": "1/2 in" } } },
            ]),
        )
    }
}

fn split_eye() -> Piece {
    let prong = |name: &str, side: &str| {
        json!({ "name": name, "segments": [
            { "name": name, "form": { "taper": { "length": "2 in", "to": { "edge": "3/8 in" } } },
              "bend": { "curve": { "angle": "60 deg", "side": side } } }] })
    };
    Piece {
        pairs: vec![
            (O::Split, "end", O::Taper, "near prong"),
            (O::Split, "end", O::Taper, "far prong"),
            (O::Taper, "near prong", O::Bend, "near prong"),
            (O::Taper, "far prong", O::Bend, "far prong"),
        ],
        ..piece(
            "split end",
            "T. F. Googerty, Hand-Forging and Wrought-Iron Ornamental Work, 1911, page 72",
            json!({ "flat": { "width": "3/4 in", "thickness": "3/8 in" } }),
            json!([
                plain("shank", "4 in"),
                { "name": "end", "form": { "split": {
                    "branches": [prong("far prong", "270 deg"), prong("near prong", "90 deg")],
                    "root": { "radius": "1/16 in" } } } },
            ]),
        )
    }
}

fn knocker() -> Piece {
    Piece {
        pairs: vec![(O::Upset, "striker", O::Draw, "arm"), (O::Stamp, "arm", O::Bend, "arm")],
        ..piece(
            "hammer of a knocker",
            "T. F. Googerty, Practical Forging and Art Smithing, 1915, door knocker: upset, drawn, deep lines while straight",
            json!({ "square": "3/4 in" }),
            json!([
                { "name": "striker", "form": { "drawn": { "length": "3/4 in", "section": { "square": "1 in" } } } },
                { "name": "arm", "form": { "drawn": { "section": { "square": "1/2 in" } } }, "bend": curve("90 deg"),
                  "repeats": [{ "what": "chased line", "count": 3 }] },
                plain("top", "1 in"),
            ]),
        )
    }
}

fn volute() -> Piece {
    Piece {
        pairs: vec![(O::Taper, "volute", O::Bend, "volute")],
        ..piece(
            "volute scroll",
            "T. F. Googerty, Practical Forging and Art Smithing, 1915, art smithing, exercise 1",
            json!({ "flat": { "width": "1/2 in", "thickness": "1/4 in" } }),
            json!([
                { "name": "volute", "form": { "taper": { "to": { "round": "3/16 in" } } },
                  "bend": { "scroll": { "inner_radius": "1/4 in", "outer_radius": "2 in", "turns": 2, "run": "opening",
                    "eye": "start" } } },
                plain("bar", "6 in"),
            ]),
        )
    }
}

fn knuckle() -> Value {
    json!({ "name": "knuckle", "form": { "flag": { "outline": { "rectangle": { "width": "1 in" } },
        "thickness": "1/8 in" } }, "bend": { "socket": { "mandrel": "3/8 in", "axis": "across" } } })
}

fn hinge() -> Piece {
    let plate = json!({ "name": "plate", "form": { "hole": { "outline": { "rectangle": { "length": "2 in",
        "width": "1 in" } }, "thickness": "1/8 in", "hole": { "round": "1/4 in" }, "made": "drilled" } } });
    Piece {
        pairs: vec![(O::Drill, "plate", O::Roll, "knuckle")],
        ..piece(
            "hinge",
            "T. F. Googerty, Practical Forging and Art Smithing, 1915, chapter X, hinge",
            json!({ "flat": { "width": "1 in", "thickness": "1/8 in" } }),
            json!([plate, plain("leaf", "1/2 in"), knuckle()]),
        )
    }
}

fn strap_hinge() -> Piece {
    let screw = json!({ "name": "screw", "form": { "hole": { "outline": { "rectangle": { "length": "1 in",
        "width": "1 in" } }, "thickness": "1/8 in", "hole": { "round": "1/4 in" }, "made": "punched" } } });
    Piece {
        // The book rolls the eye first and lays off the holes from it.
        otherwise: vec![(O::Roll, "knuckle", O::Punch, "screw")],
        ..piece(
            "strap hinge",
            "J. B. Stokes, Basic Blacksmithing, FAO Agricultural Services Bulletin 88/1, 1992, strap hinge (job 14)",
            json!({ "flat": { "width": "1 in", "thickness": "1/8 in" } }),
            json!([knuckle(), plain("leaf", "1 in"), screw, plain("end", "2 in")]),
        )
    }
}
