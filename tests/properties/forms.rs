//! Random forms, bends and segments.

use crate::properties::sizes::{Sizes, Written, angle, length, section, share, side};
use proptest::option;
use proptest::prelude::*;
use serde_json::{Map, Value, json};
use std::f64::consts::TAU;

/// A group of keys; those without a value are left out.
fn group<const N: usize>(keys: [(&str, Option<Value>); N]) -> Value {
    let keys = keys.into_iter().filter_map(|(key, value)| Some((key.to_owned(), value?)));
    Value::Object(keys.collect::<Map<String, Value>>())
}

fn text(value: Option<String>) -> Option<Value> {
    value.map(Value::String)
}

/// Mostly given, for sizes that may follow from a bend.
fn mostly(size: BoxedStrategy<String>) -> impl Strategy<Value = Option<String>> {
    option::weighted(0.8, size)
}

fn drawn(sizes: Sizes) -> BoxedStrategy<Value> {
    (mostly(length(sizes)), section(sizes, false, true))
        .prop_map(|(length, section)| json!({ "drawn": group([("length", text(length)), ("section", Some(section))]) }))
        .boxed()
}

fn taper(sizes: Sizes) -> BoxedStrategy<Value> {
    let runout = prop_oneof![
        Just(json!("straight")),
        Just(json!("eased")),
        (1_u32..=100).prop_map(|tenths| json!({ "power": f64::from(tenths) / 10.0 })),
    ];
    (mostly(length(sizes)), option::of(section(sizes, true, true)), section(sizes, true, true), option::of(runout))
        .prop_map(|(length, from, to, runout)| {
            json!({ "taper": group([("length", text(length)), ("from", from), ("to", Some(to)), ("runout", runout)]) })
        })
        .boxed()
}

fn shoulder(sizes: Sizes) -> BoxedStrategy<Value> {
    let some = proptest::sample::subsequence(vec![0, 90, 180, 270], 1..=4).prop_map(|sides| json!(sides));
    let sides = prop_oneof![Just(json!("all")), some];
    (section(sizes, false, true), length(sizes), sides)
        .prop_map(|(to, radius, sides)| json!({ "shoulder": { "to": to, "radius": radius, "sides": sides } }))
        .boxed()
}

/// A star of corners about a middle: it never crosses itself.
fn polygon() -> BoxedStrategy<Value> {
    proptest::collection::vec(1_u32..100, 3..12)
        .prop_map(|reaches| {
            let turn = TAU / reaches.len() as f64;
            let corner = |(at, reach): (usize, &u32)| {
                let (sin, cos) = (turn * at as f64).sin_cos();
                let mm =
                    |value: f64| format!("{} mm", (value * f64::from(*reach) * 1000.0).round() as i64 as f64 / 1000.0);
                json!([mm(cos), mm(sin)])
            };
            json!({ "polygon": reaches.iter().enumerate().map(corner).collect::<Vec<_>>() })
        })
        .boxed()
}

pub(crate) fn outline(sizes: Sizes) -> BoxedStrategy<Value> {
    let two = move |name: &'static str| {
        (length(sizes), length(sizes)).prop_map(move |(l, w)| json!({ name: { "length": l, "width": w } }))
    };
    let trapezoid = (length(sizes), length(sizes), length(sizes))
        .prop_map(|(length, root, tip)| json!({ "trapezoid": { "length": length, "root": root, "tip": tip } }));
    prop_oneof![
        two("rectangle"),
        two("ellipse"),
        two("leaf"),
        two("stadium"),
        trapezoid,
        length(sizes).prop_map(|diameter| json!({ "disc": { "diameter": diameter } })),
        polygon(),
    ]
    .boxed()
}

fn flag(sizes: Sizes) -> BoxedStrategy<Value> {
    let thickness = prop_oneof![
        length(sizes).prop_map(|even| json!(even)),
        (length(sizes), length(sizes)).prop_map(|(root, tip)| json!({ "root": root, "tip": tip })),
    ];
    let holes = option::weighted(0.3, proptest::collection::vec(plate_hole(sizes), 1..4));
    (outline(sizes), thickness, option::of(share(sizes)), holes)
        .prop_map(|(outline, thickness, trim, holes)| {
            let keys = [
                ("outline", Some(outline)),
                ("thickness", Some(thickness)),
                ("trim", text(trim)),
                ("holes", holes.map(|holes| json!(holes))),
            ];
            json!({ "flag": group(keys) })
        })
        .boxed()
}

/// A hole through a plate: mostly within a usual one, sometimes far beside it.
fn plate_hole(sizes: Sizes) -> impl Strategy<Value = Value> {
    let across = (length(sizes), proptest::bool::ANY)
        .prop_map(|(across, toward)| if toward { format!("-{across}") } else { across });
    let (slug, across) = (option::weighted(0.3, length(sizes)), option::of(across));
    (through(sizes), made(), slug, length(sizes), across).prop_map(|(hole, made, slug, at, across)| {
        let keys = [
            ("hole", Some(hole)),
            ("made", Some(json!(made))),
            ("slug", text(slug)),
            ("at", Some(json!(at))),
            ("across", text(across)),
        ];
        group(keys)
    })
}

/// The shape of a hole.
fn through(sizes: Sizes) -> BoxedStrategy<Value> {
    prop_oneof![
        length(sizes).prop_map(|size| json!({ "round": size })),
        length(sizes).prop_map(|size| json!({ "square": size })),
        (length(sizes), length(sizes)).prop_map(|(l, w)| json!({ "slot": { "length": l, "width": w } })),
    ]
    .boxed()
}

/// How a hole is made.
fn made() -> impl Strategy<Value = &'static str> {
    prop_oneof![Just("drilled"), Just("punched"), Just("drifted")]
}

fn one(name: &'static str, key: &'static str, sizes: Sizes) -> BoxedStrategy<Value> {
    length(sizes).prop_map(move |size| json!({ name: { key: size } })).boxed()
}

fn hole(sizes: Sizes) -> BoxedStrategy<Value> {
    (outline(sizes), length(sizes), through(sizes), made(), option::of(length(sizes)), option::of(length(sizes)))
        .prop_map(|(outline, thickness, hole, made, slug, at)| {
            let keys = [
                ("outline", Some(outline)),
                ("thickness", Some(json!(thickness))),
                ("hole", Some(hole)),
                ("made", Some(json!(made))),
                ("slug", text(slug)),
                ("at", text(at)),
            ];
            json!({ "hole": group(keys) })
        })
        .boxed()
}

fn pins(sizes: Sizes) -> BoxedStrategy<Value> {
    let rule = option::of(prop_oneof![Just("butted"), Just("lapped"), Just("middle_line")]);
    prop_oneof![
        (section(sizes, false, true), length(sizes), length(sizes)).prop_map(
            |(section, grip, head)| json!({ "tenon": { "section": section, "grip": grip, "allowance": head } })
        ),
        (length(sizes), length(sizes))
            .prop_map(|(d, grip)| json!({ "rivet": { "diameter": d, "grip": grip, "allowance": "0 mm" } })),
        (section(sizes, false, true), length(sizes), length(sizes), rule).prop_map(|(section, width, height, rule)| {
            let keys = [
                ("section", Some(section)),
                ("width", Some(json!(width))),
                ("height", Some(json!(height))),
                ("rule", rule.map(|rule| json!(rule))),
            ];
            json!({ "collar": group(keys) })
        }),
        one("weld", "allowance", sizes),
    ]
    .boxed()
}

/// A split whose branches are chains of the simpler forms, or of splits again.
fn split(sizes: Sizes, deeper: usize) -> BoxedStrategy<Value> {
    let branch = proptest::collection::vec(segment_within(sizes, deeper), 0..3).prop_map(|segments| {
        let segments: Vec<Value> = crate::properties::plans::named(segments);
        json!({ "name": "branch", "segments": segments })
    });
    let root = prop_oneof![
        length(sizes).prop_map(|size| json!({ "radius": size })),
        length(sizes).prop_map(|size| json!({ "hole": size })),
    ];
    let side = proptest::sample::select(vec!["0 deg", "90 deg", "180 deg", "270 deg"]);
    let opening = (length(sizes), option::of(-3_i32..4)).prop_map(|(width, turns)| {
        group([("width", Some(json!(width))), ("turns", turns.map(|turns| json!(f64::from(turns) / 2.0)))])
    });
    (proptest::collection::vec(branch, 2..4), option::of(root), option::of(side), option::weighted(0.3, opening))
        .prop_map(|(branches, root, side, opening)| {
            let keys = [
                ("branches", Some(json!(branches))),
                ("side", side.map(|side| json!(side))),
                ("root", root),
                ("opening", opening),
            ];
            json!({ "split": group(keys) })
        })
        .boxed()
}

fn form(sizes: Sizes, deeper: usize) -> BoxedStrategy<Value> {
    if deeper == 0 {
        return simple_form(sizes);
    }
    prop_oneof![12 => simple_form(sizes), 1 => split(sizes, deeper - 1)].boxed()
}

fn simple_form(sizes: Sizes) -> BoxedStrategy<Value> {
    prop_oneof![
        3 => mostly(length(sizes)).prop_map(|length| json!({ "plain": group([("length", text(length))]) })),
        3 => drawn(sizes),
        3 => taper(sizes),
        2 => shoulder(sizes),
        3 => flag(sizes),
        2 => hole(sizes),
        2 => pins(sizes),
        1 => section(sizes, false, true).prop_map(|section| json!({ "peak": { "section": section } })),
        1 => one("ball", "diameter", sizes),
        1 => one("cube", "side", sizes),
        1 => one("trim", "length", sizes),
        1 => one("hold", "length", sizes),
    ]
    .boxed()
}

fn bend(sizes: Sizes) -> BoxedStrategy<Value> {
    let curve = (option::of(angle(sizes)), option::of(length(sizes)), option::of(side())).prop_map(|(a, r, side)| {
        json!({ "curve": group([("angle", text(a)), ("inside_radius", text(r)), ("side", text(side))]) })
    });
    let ring = (option::of(length(sizes)), option::of(angle(sizes)), option::of(side())).prop_map(|(d, a, side)| {
        json!({ "ring": group([("inside_diameter", text(d)), ("sweep", text(a)), ("side", text(side))]) })
    });
    let radius = prop_oneof![length(sizes), Just("0 mm".to_owned())];
    let corner = (angle(sizes), radius, option::of(side())).prop_map(|(a, r, side)| {
        json!({ "corner": group([("angle", text(Some(a))), ("inside_radius", text(Some(r))), ("side", text(side))]) })
    });
    prop_oneof![curve, ring, corner, scroll(sizes), socket(sizes), twist(sizes)].boxed()
}

fn turns() -> impl Strategy<Value = f64> {
    (1_u32..40).prop_map(|quarters| f64::from(quarters) / 4.0)
}

fn scroll(sizes: Sizes) -> BoxedStrategy<Value> {
    let inner = prop_oneof![4 => length(sizes), 1 => Just("0 mm".to_owned())];
    let choices = (prop_oneof![Just("even"), Just("opening")], prop_oneof![Just("start"), Just("end")]);
    (option::weighted(0.8, inner), mostly(length(sizes)), option::weighted(0.7, turns()), choices, option::of(side()))
        .prop_map(|(inner, outer, turns, (run, eye), side)| {
            let keys = [
                ("inner_radius", text(inner)),
                ("outer_radius", text(outer)),
                ("turns", turns.map(|turns| json!(turns))),
                ("run", Some(json!(run))),
                ("eye", Some(json!(eye))),
                ("side", text(side)),
            ];
            json!({ "scroll": group(keys) })
        })
        .boxed()
}

fn socket(sizes: Sizes) -> BoxedStrategy<Value> {
    let axis = prop_oneof![Just("along"), Just("across")];
    (mostly(length(sizes)), option::of(angle(sizes)), option::of(length(sizes)), axis)
        .prop_map(|(mandrel, sweep, less, axis)| {
            let keys =
                [("mandrel", text(mandrel)), ("sweep", text(sweep)), ("less", text(less)), ("axis", Some(json!(axis)))];
            json!({ "socket": group(keys) })
        })
        .boxed()
}

fn twist(sizes: Sizes) -> BoxedStrategy<Value> {
    (turns(), proptest::bool::ANY, option::of(share(sizes)))
        .prop_map(|(turns, left, shortening)| {
            let turns = if left { -turns } else { turns };
            json!({ "twist": group([("turns", Some(json!(turns))), ("shortening", text(shortening))]) })
        })
        .boxed()
}

/// A segment without a name. Peaks come with their corner, and forms without a length mostly with a bend.
pub(crate) fn segment(sizes: Sizes) -> impl Strategy<Value = Written> {
    segment_within(sizes, 2)
}

/// A segment whose splits lie so deep in one another at most.
fn segment_within(sizes: Sizes, deeper: usize) -> BoxedStrategy<Written> {
    let gives = prop_oneof![Just("length"), Just("width"), Just("thickness"), Just("nothing")];
    let corner = (1_u32..179, 0_u32..30).prop_map(|(degrees, radius)| {
        json!({ "corner": { "angle": format!("{degrees} deg"), "inside_radius": format!("{radius} mm") } })
    });
    (
        form(sizes, deeper),
        option::weighted(0.3, bend(sizes)),
        corner,
        option::of(gives),
        option::weighted(0.1, share(sizes)),
        option::weighted(0.15, proptest::collection::vec(dressed(sizes), 1..4)),
    )
        .prop_map(|(form, bend, corner, gives, scale, dressed)| {
            let bend = if form.get("peak").is_some() { Some(corner) } else { bend };
            let gives = gives.map(|gives| json!(gives));
            let takes_dies = ["plain", "drawn", "taper"].iter().any(|name| form.get(name).is_some());
            let dressed = dressed.filter(|_| takes_dies).map(|dressed| json!(dressed));
            let keys =
                [("form", Some(form)), ("bend", bend), ("dressed", dressed), ("gives", gives), ("scale", text(scale))];
            Written(group(keys))
        })
        .boxed()
}

/// A length dressed in a die.
fn dressed(sizes: Sizes) -> impl Strategy<Value = Value> {
    let die = prop_oneof![
        (length(sizes), proptest::bool::ANY)
            .prop_map(|(radius, across)| json!({ "fuller": { "radius": radius, "across": across } })),
        length(sizes).prop_map(|radius| json!({ "swage": { "radius": radius } })),
        option::of(10_u32..=170).prop_map(|angle| {
            json!({ "v_block": group([("angle", angle.map(|degrees| json!(format!("{degrees} deg"))))]) })
        }),
    ];
    let from = prop_oneof![4 => length(sizes), 1 => Just("0 mm".to_owned())];
    let side = prop_oneof![side(), Just("outside".to_owned()), Just("inside".to_owned())];
    (die, option::of(from), option::of(length(sizes)), option::of(side), length(sizes)).prop_map(
        |(die, from, length, side, depth)| {
            let is_across = die.pointer("/fuller/across") == Some(&json!(true));
            let keys = [
                ("die", Some(die)),
                ("from", text(from)),
                ("length", text(length.filter(|_| !is_across))),
                ("side", text(side)),
                ("depth", Some(json!(depth))),
            ];
            group(keys)
        },
    )
}
