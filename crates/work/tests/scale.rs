//! The scale that the marks allow for, against what the heats of the order take.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_measure::WrittenShare;
use fh_work::{SCALE_SHORT, Shop, Worked, taken_up, work_out};
use std::path::Path;

fn demos() -> Vec<(String, Plan)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo-plans");
    let files = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path());
    let plans = files.filter(|path| path.to_string_lossy().ends_with(".plan.json"));
    plans
        .map(|path| (path.display().to_string(), fh_core::file::read(&std::fs::read(path).unwrap()).unwrap()))
        .collect()
}

fn worked(plan: &Plan) -> Worked {
    work_out(plan, &balance(plan), &Shop::default())
}

fn share(text: &str) -> Option<WrittenShare> {
    Some(WrittenShare::parse(text, true).unwrap())
}

/// A plan without any scale.
fn without_scale(plan: &Plan) -> Plan {
    let mut bare = Plan { scale: None, ..plan.clone() };
    for bar in &mut bare.bars {
        bar.scale = None;
        (0..bar.count_segments()).for_each(|at| bar.segment_mut(at).unwrap().scale = None);
    }
    bare
}

/// A leaf and its stem on 12 mm square: the leaf is thin, and hot while the stem is forged.
fn leaf() -> Plan {
    let text = r#"{ "firstheat": 1, "title": "leaf", "bars": [{ "name": "hook", "stock": { "square": "12 mm" }, "segments": [
        { "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "60 mm", "width": "26 mm" } }, "thickness": "2 mm" } } },
        { "name": "stem", "form": { "drawn": { "length": "120 mm", "section": { "round": "6 mm" } } } },
        { "name": "rest", "form": { "plain": { "length": "200 mm" } } } ] }] }"#;
    fh_core::file::read(text.as_bytes()).unwrap()
}

#[test]
fn what_is_taken_up_is_enough_for_every_demo() {
    for (name, plan) in demos() {
        let mut plan = without_scale(&plan);
        let short = worked(&plan).scale_short;
        assert!(!short.is_empty(), "{name} is forged hot, so it loses something");
        for loss in worked(&plan).scale {
            plan = taken_up(&plan, &loss).unwrap();
        }
        assert_eq!(worked(&plan).scale_short, [], "{name}");
    }
}

#[test]
fn what_loses_most_loses_no_less_than_the_worked_metal_as_a_whole() {
    for (name, plan) in demos() {
        for loss in worked(&plan).scale {
            let told = |(at, ..): &&(usize, usize, _)| {
                let segment = plan.bars[loss.bar].segment(*at).unwrap();
                loss.reason().contains(&format!("“{}”", fh_core::describe::part_name(&plan.bars[loss.bar], *at)))
                    && !segment.form.is_as_stock()
            };
            let most = loss.parts.iter().filter(told).map(|part| part.2.likely).fold(0.0, f64::max);
            assert!(most >= loss.share.likely - 1e-9, "{name}: {}", loss.reason());
        }
    }
}

#[test]
fn the_demos_allow_for_what_their_heats_take() {
    for (name, plan) in demos() {
        assert_eq!(worked(&plan).scale_short, [], "{name}");
    }
}

#[test]
fn a_part_is_told_of_only_below_the_low_end_of_what_it_loses() {
    let plan = leaf();
    let first = worked(&plan);
    let (_, heats, lost) = *first.scale[0].parts.iter().find(|(at, ..)| *at == 0).unwrap();
    assert!(heats > 1 && lost.low < lost.likely / 1.5, "{lost:?} in {heats}");
    let with = |ratio: f64| {
        let mut plan = leaf();
        plan.bars[0].segments[0].scale = share(&format!("{} %", ratio * 100.0));
        worked(&plan).scale_short.into_iter().find(|finding| finding.place.segment == Some(0))
    };
    assert!(with(lost.low * 1.02).is_none(), "within the doubt it is enough");
    let short = with(lost.low * 0.9).unwrap();
    assert_eq!(short.id, SCALE_SHORT);
    assert!(short.message.contains("“leaf”") && short.message.contains("%"), "{}", short.message);
    assert!(short.remedy.starts_with("Give it a scale of "), "{}", short.remedy);
}

#[test]
fn each_part_is_held_against_its_own_allowance() {
    let mut plan = leaf();
    plan.scale = share("20 %");
    assert_eq!(worked(&plan).scale_short, []);
    plan.bars[0].segments[1].scale = share("0.1 %");
    let short = worked(&plan).scale_short;
    let [one] = short.as_slice() else { panic!("{short:?}") };
    assert_eq!(one.place.segment, Some(1));
    assert!(one.message.contains("allow 0.1 %") && one.message.contains("“stem”"), "{}", one.message);
}

#[test]
fn what_is_left_as_stock_is_not_told_of() {
    let text = r#"{ "firstheat": 1, "bars": [{ "stock": { "square": "12 mm" }, "segments": [
        { "name": "hook", "form": { "plain": { "length": "150 mm" } }, "bend": { "curve": { "angle": "180 deg" } } },
        { "name": "rest", "form": { "plain": { "length": "200 mm" } } } ] }] }"#;
    let worked = worked(&fh_core::file::read(text.as_bytes()).unwrap());
    assert!(!worked.scale.is_empty() && worked.scale_short.is_empty(), "{:?}", worked.scale_short);
}

#[test]
fn a_part_with_a_full_stop_in_its_name_is_named_in_full() {
    let mut plan = without_scale(&leaf());
    plan.bars[0].segments[0].name = "No. 2 leaf".to_owned();
    let worked = worked(&plan);
    let loss = &worked.scale[0];
    assert!(loss.taken.contains("; “No. 2 leaf” loses most, "), "{}", loss.taken);
    assert!(loss.deed.as_ref().is_some_and(|deed| deed.starts_with("For the most it takes ")), "{:?}", loss.deed);
}

#[test]
fn a_loss_that_nobody_would_believe_is_no_figure() {
    // A small fire and a slow hand: some dozen heats for a thin tip.
    let mut plan = leaf();
    plan.work.heats.pace = Some(0.05);
    let worked = worked(&plan);
    let (_, heats, lost) = *worked.scale[0].parts.iter().max_by(|a, b| a.2.likely.total_cmp(&b.2.likely)).unwrap();
    assert!(lost.likely > 0.25, "{lost:?} in {heats}");
    assert!(
        worked.scale[0].taken.starts_with("Scale takes over a quarter of the worked metal; "),
        "{}",
        worked.scale[0].taken
    );
    let told = &worked.scale_short[0];
    assert!(told.message.contains("take over a quarter of it") && told.remedy.contains("forge it last"), "{told:?}");
}

/// A long bar with a point at one end: the far part of it is never in the fire.
#[test]
fn only_what_is_hot_of_a_part_loses_to_the_fire() {
    let plan = |length: u32| {
        let text = format!(
            r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "12 mm" }}, "segments": [
            {{ "name": "shank", "form": {{ "plain": {{ "length": "{length} mm" }} }} }},
            {{ "name": "point", "form": {{ "taper": {{ "length": "60 mm", "to": "point" }} }} }} ] }}] }}"#
        );
        fh_core::file::read(text.as_bytes()).unwrap()
    };
    let lost = |length: u32| {
        let worked = worked(&plan(length));
        worked.scale[0].parts.iter().find(|(at, ..)| *at == 0).unwrap().2.likely
    };
    let (short, long) = (lost(60), lost(600));
    assert!((short / long - 10.0).abs() < 0.1, "{short} of 60 mm, {long} of 600 mm");
}

#[test]
fn what_may_be_lost_beyond_the_marks_is_allowed_for_in_the_plan_where_every_mark_follows() {
    for (name, plan) in demos() {
        for loss in worked(&plan).scale {
            assert!(loss.share.low <= loss.share.likely && loss.share.likely <= loss.share.high, "{name}: {loss:?}");
            let balance = balance(&plan);
            let more = loss.parts.iter().filter_map(|(at, _, share)| {
                let segment = plan.bars[loss.bar].segment(*at)?;
                let part = &balance.bars[loss.bar].segments[*at];
                let kept = (1.0 - part.scale_share) / (1.0 - share.high.min(0.25));
                (!segment.form.is_as_stock()).then(|| part.stock_length * (kept - 1.0).max(0.0))
            });
            let mm = more.map(|length| length.get::<uom::si::length::millimeter>()).sum::<f64>();
            assert_eq!(
                loss.reason().contains("allow more scale in the plan"),
                mm >= 1.0,
                "{name}: {mm} {}",
                loss.reason()
            );
        }
    }
}
