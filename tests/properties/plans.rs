//! Random plans, as the text of a plan file.

use crate::properties::forms::segment;
use crate::properties::sizes::{Sizes, Written, length, section, share};
use fh_measure::Rounding;
use proptest::option;
use proptest::prelude::*;
use serde_json::{Value, json};

/// What may take up, by the place of a segment; the last choice is a name that no segment has.
fn takes_up() -> impl Strategy<Value = usize> {
    0_usize..7
}

/// Segments by their names: `s0`, `s1` …, the first without what needs one before it.
pub(crate) fn named(segments: Vec<Written>) -> Vec<Value> {
    let name = |(at, Written(mut segment)): (usize, Written)| {
        segment["name"] = json!(format!("s{at}"));
        if at == 0 {
            for form in segment["form"].as_object_mut().unwrap().values_mut() {
                for key in ["section", "to", "from"] {
                    if form.get(key) == Some(&json!("same")) {
                        form[key] = json!("stock");
                    }
                }
            }
        }
        segment
    };
    segments.into_iter().enumerate().map(name).collect()
}

/// A bar: mostly free, sometimes already cut, and then mostly with a segment that takes up.
pub(crate) fn bar(sizes: Sizes) -> impl Strategy<Value = Written> {
    let fixed = option::weighted(0.25, (length_of_bar(sizes), option::weighted(0.8, takes_up())));
    let segments = proptest::collection::vec(segment(sizes), 0..6);
    (section(sizes, false, false), segments, fixed, option::weighted(0.2, share(sizes)), 1_u32..9).prop_map(
        |(stock, segments, fixed, scale, count)| {
            let mut bar = json!({ "name": "bar", "count": count, "stock": stock, "segments": named(segments) });
            if let Some((length, takes_up)) = fixed {
                bar["length"] = json!(length);
                if let Some(at) = takes_up {
                    bar["takes_up"] = json!(format!("s{at}"));
                }
            }
            if let Some(scale) = scale {
                bar["scale"] = json!(scale);
            }
            Written(bar)
        },
    )
}

fn length_of_bar(sizes: Sizes) -> BoxedStrategy<String> {
    prop_oneof![length(sizes), (100_u32..2000).prop_map(|mm| format!("{mm} mm"))].boxed()
}

fn units() -> impl Strategy<Value = Value> {
    let rounding = proptest::sample::select(Rounding::CHOICES.to_vec());
    (prop_oneof![Just("in"), Just("mm")], rounding)
        .prop_map(|(length, marks)| json!({ "length": length, "marks": marks.text() }))
}

/// A plan of one bar or more.
pub(crate) fn plan(sizes: Sizes) -> impl Strategy<Value = Written> {
    let materials: Vec<&str> = fh_core::material::ALL.iter().map(|material| material.name).collect();
    (
        units(),
        option::of(proptest::sample::select(materials)),
        option::of(share(sizes)),
        option::weighted(0.2, prop_oneof![Just("lifts"), Just("light"), Just("tows")]),
        option::weighted(0.2, prop_oneof![Just("galvanised"), Just("painted")]),
        proptest::collection::vec(bar(sizes), 1..3),
    )
        .prop_map(|(units, material, scale, duty, coating, bars)| {
            let bars: Vec<Value> = bars.into_iter().map(|Written(bar)| bar).collect();
            let mut plan = json!({ "firstheat": 1, "title": "any plan", "units": units, "bars": bars });
            let words = [("material", material.map(str::to_owned)), ("scale", scale)];
            let choices = [("duty", duty.map(str::to_owned)), ("coating", coating.map(str::to_owned))];
            for (key, value) in words.into_iter().chain(choices) {
                if let Some(value) = value {
                    plan[key] = json!(value);
                }
            }
            Written(plan)
        })
}
