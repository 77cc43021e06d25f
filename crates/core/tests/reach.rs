//! Edits that would lead where no file and no bar can follow: they are refused, or come where they were wished.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::edit::{BoundaryMove, BoundaryTarget, Edit, History, Neighbor, PlanHeader, move_boundary};
use fh_core::file;
use fh_core::findings::Severity;
use fh_core::motif::Motif;
use fh_core::plan::{Chain, Plan, Segment};
use uom::si::f64::Length;
use uom::si::length::millimeter;

fn plan(bar: &str) -> Plan {
    file::read(format!(r#"{{ "firstheat": 1, "bars": [{bar}] }}"#).as_bytes()).expect("the plan reads")
}

fn bar_of(segments: &str) -> Plan {
    plan(&format!(r#"{{ "stock": {{ "square": "12 mm" }}, "segments": [{segments}] }}"#))
}

fn split() -> Segment {
    let leg = |name: &str| {
        format!(r#"{{ "segments": [{{ "name": "{name}", "form": {{ "plain": {{ "length": "90 mm" }} }} }}] }}"#)
    };
    let text = format!(r#"{{ "name": "s", "form": {{ "split": {{ "branches": [{}, {}] }} }} }}"#, leg("p"), leg("q"));
    serde_json::from_str(&text).unwrap()
}

/// Puts splits into each other until an edit is refused: the plan, how many there are, and the refusal.
fn nested(put: impl Fn(Chain, Segment) -> Edit) -> (Plan, usize, String) {
    let mut history = History::new(bar_of(r#"{ "form": { "plain": { "length": "100 mm" } } }"#));
    let mut chain = Chain::Bar;
    for depth in 0..64 {
        if let Err(refusal) = history.apply(&put(chain, split())) {
            return (history.plan().clone(), depth, refusal.to_string());
        }
        let flat = history.plan().bars[0].flat();
        let splits = flat.iter().enumerate().filter(|(_, flat)| flat.segment.name == "s");
        let (deepest, _) = splits.max_by_key(|(_, flat)| flat.depth).unwrap();
        chain = Chain::Branch { split: deepest, branch: 0 };
    }
    panic!("splits lie in each other without end");
}

#[test]
fn splits_too_deep_for_a_file_never_come_into_a_plan() {
    let one = |chain, segment| Edit::InsertInto { bar: 0, chain, place: 0, segment: Box::new(segment) };
    let several = |chain, segment| Edit::InsertSegments { bar: 0, chain, place: 0, segments: vec![segment] };
    for (plan, depth, refusal) in [nested(one), nested(several)] {
        assert_eq!(depth, 9, "{refusal}");
        assert_eq!(refusal, "splits are nested too deeply; a plan takes nine at most");
        assert_eq!(file::read(file::write(&plan).as_bytes()).unwrap(), plan, "what was taken reads back");
    }
}

#[test]
fn a_motif_that_is_too_deep_is_refused_wherever_it_is_put() {
    let (plan, ..) = nested(|chain, segment| Edit::InsertInto { bar: 0, chain, place: 0, segment: Box::new(segment) });
    let motif = Motif::taken(&plan, 0, Chain::Bar, 0..=0, "nest").unwrap();
    let inner = Chain::Branch { split: 0, branch: 1 };
    let put = Edit::InsertSegments { bar: 0, chain: inner, place: 0, segments: motif.segments.clone() };
    assert!(put.applied(&plan).is_err());
    let mut deeper = motif;
    for _ in 0..3 {
        let mut outer = serde_json::to_value(split()).unwrap();
        outer["form"]["split"]["branches"][0]["segments"] = serde_json::to_value(&deeper.segments).unwrap();
        deeper.segments = vec![serde_json::from_value(outer).unwrap()];
    }
    let refused = file::check_motif(&deeper).unwrap_err().to_string();
    assert_eq!(refused, "splits are nested too deeply; a kept part takes nine at most");
    assert!(file::read_motif(file::write_motif(&deeper).as_bytes()).is_err(), "its file would not be read");
}

#[test]
fn a_plan_too_large_for_its_file_is_refused() {
    let plan = bar_of(r#"{ "form": { "plain": { "length": "100 mm" } } }"#);
    let with_notes = |words: usize| {
        let notes = Some("forge ".repeat(words));
        Edit::SetPlan(Box::new(PlanHeader { notes, ..PlanHeader::from(&plan) })).applied(&plan)
    };
    let refused = with_notes(3_000_000).unwrap_err().to_string();
    assert_eq!(refused, "its file would have 18 MB, and a plan has 16 MB at most");
    let (large, _) = with_notes(2_000_000).unwrap();
    assert_eq!(file::read(file::write(&large).as_bytes()).unwrap(), large);
}

fn wish(segment: usize, to: BoundaryTarget) -> BoundaryMove {
    BoundaryMove { bar: 0, segment, to, neighbor: Neighbor::KeepsMetal }
}

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

fn forged_end(plan: &Plan, segment: usize) -> f64 {
    let balance = balance(plan);
    let segment = &balance.bars[0].segments[segment];
    (segment.forged_start + segment.forged_length).get::<millimeter>()
}

/// A bar already cut, of which the part called `takes` takes up what is left.
fn cut_bar(segments: &str) -> Plan {
    plan(&format!(
        r#"{{ "stock": {{ "square": "20 mm" }}, "length": "400 mm", "takes_up": "takes", "segments": [{segments}] }}"#
    ))
}

const BOSS: &str = r#"{ "name": "takes", "form": { "hole": { "outline": { "disc": { "diameter": "40 mm" } }, "thickness": "12 mm",
  "hole": { "round": "14 mm" }, "made": "drilled" } } }"#;

#[test]
fn a_hole_that_takes_up_is_dragged_to_where_it_was_wished() {
    let shank = r#"{ "name": "shank", "form": { "drawn": { "length": "300 mm", "section": { "square": "18 mm" } } } }"#;
    let plan = cut_bar(&format!(r#"{BOSS}, {shank}"#));
    for by in [-2.0, 3.0, 8.0] {
        let wished = forged_end(&plan, 0) + by;
        let moved = move_boundary(&plan, &wish(0, BoundaryTarget::Forged(mm(wished)))).unwrap();
        let come = forged_end(&moved.plan, 0);
        assert!((come - wished).abs() < 0.02, "wished {wished}, came to {come}");
    }
}

#[test]
fn what_would_be_carried_elsewhere_is_refused() {
    // The blade's thickness gives, the tongue after it is as the blade ends, and so takes another length of bar.
    let plan = cut_bar(
        r#"{ "name": "takes", "form": { "plain": {} } },
        { "name": "stem", "form": { "drawn": { "length": "60 mm", "section": { "square": "10 mm" } } } },
        { "name": "blade", "gives": "thickness", "form": { "drawn": { "length": "80 mm",
          "section": { "flat": { "width": "24 mm", "thickness": "6 mm" } } } } },
        { "name": "tongue", "form": { "drawn": { "length": "70 mm", "section": "same" } } }"#,
    );
    let ends = [Neighbor::KeepsMetal, Neighbor::TradesMetal].map(|neighbor| {
        let wished = forged_end(&plan, 1) + 6.0;
        let to = BoundaryTarget::Forged(mm(wished));
        match move_boundary(&plan, &BoundaryMove { neighbor, ..wish(1, to) }) {
            Ok(moved) => (forged_end(&moved.plan, 1) - wished).abs() < 0.05,
            Err(refusal) => refusal.to_string().contains("its end would come to"),
        }
    });
    assert_eq!(ends, [true, true]);
}

#[test]
fn a_boss_keeps_the_metal_that_its_hole_needs() {
    let plan = bar_of(
        r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "30 mm" } }, "thickness": "8 mm",
          "hole": { "round": "12 mm" }, "made": "drilled" } } }, { "form": { "plain": { "length": "80 mm" } } }"#,
    );
    let mut refusals = Vec::new();
    for tenths in 1..400 {
        let to = BoundaryTarget::Mark(mm(f64::from(tenths) / 10.0));
        match move_boundary(&plan, &wish(0, to)) {
            Ok(moved) => {
                let stop = balance(&moved.plan).findings.into_iter().find(|finding| finding.severity == Severity::Stop);
                assert_eq!(stop.map(|stop| stop.message), None, "{tenths}");
            }
            Err(refusal) => refusals.push(refusal.to_string()),
        }
    }
    assert!(!refusals.is_empty() && refusals.len() < 300, "{}", refusals.len());
    assert!(refusals.iter().all(|refusal| refusal.starts_with("“boss”: ")), "{refusals:?}");
}

#[test]
fn a_scroll_too_short_for_its_turns_says_so() {
    let of = |bar: &str| {
        let plan = plan(bar);
        let balance = balance(&plan);
        let stop = balance.findings.iter().find(|finding| finding.severity == Severity::Stop).unwrap().clone();
        (stop, balance)
    };
    let scroll = r#"{ "name": "scroll", "form": { "plain": { "length": "50 mm" } },
      "bend": { "scroll": { "inner_radius": "12 mm", "turns": 2, "run": "even", "eye": "end" } } }"#;
    let (stop, _) = of(&format!(r#"{{ "stock": {{ "square": "12 mm" }}, "segments": [{scroll}] }}"#));
    assert_eq!(stop.id, "scroll-too-short");
    assert!(stop.message.contains("its turns round its radius take 150"), "two turns at 12 mm: {}", stop.message);
    assert!(!stop.remedy.contains("another bar"), "{}", stop.remedy);
    // On a bar already cut its length gives, and with it as short the bar is not to blame either.
    let (stop, balance) = of(&format!(
        r#"{{ "stock": {{ "square": "12 mm" }}, "length": "200 mm", "takes_up": "scroll", "segments": [
          {{ "form": {{ "plain": {{ "length": "190 mm" }} }} }}, {} ] }}"#,
        scroll.replace("50 mm", "500 mm")
    ));
    assert_eq!(stop.id, "scroll-too-short");
    let derived = &balance.bars[0].segments[1].derived;
    assert!(derived.iter().all(|derived| derived.gave.is_none()), "nothing gave: {derived:?}");
}

#[test]
fn sizes_that_nobody_means_are_told() {
    let told = |size: &str| {
        let plan = bar_of(&format!(r#"{{ "name": "shank", "form": {{ "plain": {{ "length": "{size}" }} }} }}"#));
        let found = balance(&plan).findings.into_iter().find(|finding| finding.id == "size-doubtful");
        found.map(|finding| finding.message)
    };
    for size in ["0.0000001 mm", "39370078740 in", "999999999 m"] {
        assert_eq!(told(size), Some(format!("“shank” has a size of {size}.")));
    }
    for size in ["0.1 mm", "12 mm", "6 m", "90 m"] {
        assert_eq!(told(size), None, "{size}");
    }
}
