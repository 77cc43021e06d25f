//! Random sizes as people write them.

use proptest::prelude::*;
use serde_json::{Value, json};
use std::fmt;

/// How large sizes may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Sizes {
    /// From half a millimetre to a forearm's length.
    Usual,
    /// Anything that a file may hold.
    Absurd,
}

/// A part of a plan file, shown as it would stand there.
#[derive(Clone)]
pub(crate) struct Written(pub(crate) Value);

impl fmt::Debug for Written {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0)
    }
}

/// A length above 0 with its unit.
pub(crate) fn length(sizes: Sizes) -> BoxedStrategy<String> {
    let usual = prop_oneof![
        (500_u32..200_000).prop_map(|um| format!("{} mm", f64::from(um) / 1000.0)),
        (1_u32..200).prop_map(|mm| format!("{mm} mm")),
        (1_u32..20, 1_u32..16).prop_map(|(whole, sixteenths)| format!("{whole} {sixteenths}/16 in")),
        (1_u32..64).prop_map(|parts| format!("{parts}/64\"")),
        (5_u32..200).prop_map(|mm| format!("{} cm", f64::from(mm) / 10.0)),
    ];
    let absurd = prop_oneof![
        Just("0.000000001 mm".to_owned()),
        Just("0.001 mm".to_owned()),
        Just("1/999 in".to_owned()),
        Just("1000000000 mm".to_owned()),
        Just("999999999 m".to_owned()),
        Just("12 ft".to_owned()),
    ];
    match sizes {
        Sizes::Usual => usual.boxed(),
        Sizes::Absurd => prop_oneof![usual, absurd].boxed(),
    }
}

/// An angle above 0.
pub(crate) fn angle(sizes: Sizes) -> BoxedStrategy<String> {
    let usual = prop_oneof![
        (1_u32..360).prop_map(|degrees| format!("{degrees} deg")),
        (1_u32..628).prop_map(|hundredths| format!("{} rad", f64::from(hundredths) / 100.0)),
        (1_u32..4).prop_map(|quarters| format!("{quarters}/4 turn")),
    ];
    match sizes {
        Sizes::Usual => usual.boxed(),
        Sizes::Absurd => prop_oneof![usual, Just("0.000001 deg".to_owned()), Just("1000000 turn".to_owned())].boxed(),
    }
}

/// The side of a bend: any angle.
pub(crate) fn side() -> impl Strategy<Value = String> {
    prop_oneof![Just(0_i32), Just(90), Just(180), Just(270), -400..400].prop_map(|degrees| format!("{degrees} deg"))
}

/// A share in per cent.
pub(crate) fn share(sizes: Sizes) -> BoxedStrategy<String> {
    let usual = (0_u32..150).prop_map(|tenths| format!("{} %", f64::from(tenths) / 10.0));
    match sizes {
        Sizes::Usual => usual.boxed(),
        Sizes::Absurd => prop_oneof![usual, Just("99.9999 %".to_owned())].boxed(),
    }
}

/// A section; `ends` allows what only the end of a taper may be, and `before` what needs a segment before.
pub(crate) fn section(sizes: Sizes, ends: bool, before: bool) -> BoxedStrategy<Value> {
    let size = move || length(sizes);
    let two = move |name: &'static str, first: &'static str, second: &'static str| {
        (size(), size()).prop_map(move |(a, b)| json!({ name: { first: a, second: b } }))
    };
    let one = move |name: &'static str| size().prop_map(move |size| json!({ name: size }));
    let eased = (size(), size(), size())
        .prop_map(|(w, t, r)| json!({ "flat": { "width": w, "thickness": t, "edge_radius": r } }));
    let eased_square =
        (size(), size()).prop_map(|(side, radius)| json!({ "square": { "side": side, "edge_radius": radius } }));
    let plain = prop_oneof![
        3 => one("square"),
        2 => one("round"),
        3 => two("flat", "width", "thickness"),
        1 => eased,
        1 => eased_square,
        1 => two("oval", "width", "thickness"),
        1 => one("hexagon"),
        1 => one("octagon"),
        1 => one("diamond"),
        1 => two("half_round", "width", "height"),
    ];
    match (ends, before) {
        (false, false) => plain.boxed(),
        (false, true) => prop_oneof![4 => plain, 1 => Just(json!("stock")), 1 => Just(json!("same"))].boxed(),
        (true, _) => prop_oneof![
            4 => plain,
            2 => Just(json!("point")),
            1 => one("edge"),
            1 => Just(json!("stock")),
            1 => Just(json!("same")),
        ]
        .boxed(),
    }
}
