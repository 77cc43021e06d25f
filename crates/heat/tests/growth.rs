//! Growth under flat tools, against `tests/data/growth.json`: the law evaluated independently of this project (mpmath, scipy's
//! quadrature and `solve_ivp`), volumes kept in each.

#![allow(clippy::unwrap_used, reason = "tests")]

use fh_heat::growth::{Growth, bite_for_mm, grown_width_mm, growth, share_asked};
use fh_heat::spread::Pass;
use serde_json::Value;

fn cases(topic: &str) -> Vec<Value> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/data/growth.json");
    let all: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let of_topic: Vec<Value> =
        all["cases"].as_array().unwrap().iter().filter(|case| case["topic"] == topic).cloned().collect();
    assert!(!of_topic.is_empty(), "{topic}");
    of_topic
}

fn input(case: &Value, key: &str) -> f64 {
    case["inputs"]["mm"][key].as_f64().unwrap()
}

fn near(case: &Value, of: &Value, key: &str, got: f64) {
    let want = of[key].as_f64().unwrap_or_else(|| panic!("{key} in {of}"));
    let most = (case["rel_tol"].as_f64().unwrap() * want.abs()).max(1e-7);
    assert!((got - want).abs() <= most, "{} {key}: {got} where {want} is right", case["id"]);
}

#[test]
fn one_pass_spreads_by_the_law_and_keeps_its_metal() {
    for case in cases("free spread") {
        let pass =
            Pass::of(input(&case, "height"), input(&case, "width"), input(&case, "to_height"), input(&case, "bite"))
                .unwrap();
        let (width, longer, want) = (pass.width_estimate_mm(), pass.longer_estimate(), &case["expected"]);
        near(&case, want, "s", pass.spread);
        for (key, got) in [("width", width.likely), ("width_low", width.low), ("width_high", width.high)] {
            near(&case, want, key, got);
        }
        for (key, got) in [("length", longer.likely), ("length_low", longer.low), ("length_high", longer.high)] {
            near(&case, want, key, got * input(&case, "length"));
        }
    }
}

#[test]
fn what_is_asked_of_flat_tools_is_told_by_the_share_of_the_strain() {
    for case in cases("spread asked for") {
        let before = ["width", "height"].map(|key| input(&case, key));
        let after = ["to_width", "to_height"].map(|key| input(&case, key));
        let share = share_asked(before, after).unwrap();
        near(&case, &case["expected"], "s_needed", share);
        let answer = case["expected"]["answer"].as_str().unwrap();
        let want = match answer {
            words if words.starts_with("flat tools can:") || words == "flat tools can" => Growth::FlatTools,
            words if words.starts_with("flat tools perhaps") => Growth::Perhaps,
            words if words.starts_with("flat tools cannot") => Growth::Spreading,
            _ => Growth::StruckBack,
        };
        assert_eq!(growth(share), want, "{}: {answer}", case["id"]);
        if !case["expected"]["bite_held_the_same_through_many_small_passes"].is_null() {
            let bite = bite_for_mm(before, after).unwrap();
            near(&case, &case["expected"], "bite_held_the_same_through_many_small_passes", bite);
            let grown = grown_width_mm(before, after[1], bite).unwrap();
            assert!((grown.likely - after[0]).abs() < 1e-9 && grown.low < grown.likely && grown.likely < grown.high);
        }
    }
}

#[test]
fn many_small_passes_come_to_the_width_of_ever_smaller_ones() {
    for case in cases("spread over passes") {
        let [width, height, to_height, bite] = ["width", "height", "to_height", "bite"].map(|key| input(&case, key));
        for passes in case["inputs"]["mm"]["passes"].as_array().unwrap() {
            let count = i32::try_from(passes.as_i64().unwrap()).unwrap();
            let ratio = (to_height / height).powf(1.0 / f64::from(count));
            let (mut wide, mut high) = (width, height);
            for _ in 0..count {
                let pass = Pass::of(high, wide, high * ratio, bite).unwrap();
                (wide, high) = (pass.width_after_mm, pass.height_after_mm);
            }
            let want = &case["expected"][format!("{count} equal passes")];
            near(&case, want, "width", wide);
            near(&case, want, "length", input(&case, "length") * width * height / (wide * high));
        }
        let limit = &case["expected"]["ever smaller passes (limit)"];
        let grown = grown_width_mm([width, height], to_height, bite).unwrap().likely;
        near(&case, limit, "width", grown);
        near(&case, limit, "length", input(&case, "length") * width * height / (grown * to_height));
    }
}

#[test]
fn a_bar_turned_after_each_pass_follows_the_law_with_the_sizes_that_it_then_has() {
    for case in cases("spread over passes, turned") {
        let (mut across, mut under, mut length) = (input(&case, "side"), input(&case, "side"), input(&case, "length"));
        for want in case["expected"]["after_each_pass"].as_array().unwrap() {
            let pass = Pass::of(under, across, under * input(&case, "ratio"), input(&case, "bite")).unwrap();
            (across, under, length) = (pass.height_after_mm, pass.width_after_mm, length * pass.longer);
            for (got, want) in [across, under, length, pass.spread].into_iter().zip(want.as_array().unwrap()) {
                let want = want.as_f64().unwrap();
                assert!((got - want).abs() <= 1e-9 * want, "{}: {got} where {want} is right", case["id"]);
            }
        }
    }
}

#[test]
fn nothing_taken_grows_nothing_and_no_size_is_none() {
    assert_eq!(grown_width_mm([20.0, 10.0], 10.0, 15.0).unwrap().likely.round(), 20.0);
    for [width, height, to, bite] in
        [[0.0, 10.0, 5.0, 9.0], [20.0, 10.0, 11.0, 9.0], [20.0, f64::NAN, 5.0, 9.0], [20.0, 10.0, 5.0, -1.0]]
    {
        assert!(grown_width_mm([width, height], to, bite).is_none());
    }
    assert!(share_asked([20.0, 10.0], [22.0, 10.0]).is_none() && bite_for_mm([20.0, 10.0], [60.0, 5.0]).is_none());
}
