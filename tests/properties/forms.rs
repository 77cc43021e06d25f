//! Random forms, bends and segments.

use crate::sizes::{Sizes, Written, angle, length, section, share, side};
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

fn outline(sizes: Sizes) -> BoxedStrategy<Value> {
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
    (outline(sizes), thickness, option::of(share(sizes)))
        .prop_map(|(outline, thickness, trim)| {
            json!({ "flag": group([("outline", Some(outline)), ("thickness", Some(thickness)), ("trim", text(trim))]) })
        })
        .boxed()
}

fn one(name: &'static str, key: &'static str, sizes: Sizes) -> BoxedStrategy<Value> {
    length(sizes).prop_map(move |size| json!({ name: { key: size } })).boxed()
}

fn form(sizes: Sizes) -> BoxedStrategy<Value> {
    prop_oneof![
        3 => mostly(length(sizes)).prop_map(|length| json!({ "plain": group([("length", text(length))]) })),
        3 => drawn(sizes),
        3 => taper(sizes),
        2 => shoulder(sizes),
        3 => flag(sizes),
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
    prop_oneof![curve, ring, corner].boxed()
}

/// A segment without a name. Peaks come with their corner, and forms without a length mostly with a bend.
pub(crate) fn segment(sizes: Sizes) -> impl Strategy<Value = Written> {
    let gives = prop_oneof![Just("length"), Just("width"), Just("thickness"), Just("nothing")];
    let corner = (1_u32..179, 0_u32..30).prop_map(|(degrees, radius)| {
        json!({ "corner": { "angle": format!("{degrees} deg"), "inside_radius": format!("{radius} mm") } })
    });
    (form(sizes), option::weighted(0.3, bend(sizes)), corner, option::of(gives), option::weighted(0.1, share(sizes)))
        .prop_map(|(form, bend, corner, gives, scale)| {
            let bend = if form.get("peak").is_some() { Some(corner) } else { bend };
            let gives = gives.map(|gives| json!(gives));
            Written(group([("form", Some(form)), ("bend", bend), ("gives", gives), ("scale", text(scale))]))
        })
}
