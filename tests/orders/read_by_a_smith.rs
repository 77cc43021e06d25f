//! What a smith who is to forge the demos tomorrow asks of their cards: what would cost a bar or mislead. Common practice, no source.

use crate::orders::{demo, doing, lay, place, proposed, worked};
use fh_core::balance::balance;
use fh_core::findings::Severity;
use fh_core::plan::{AnvilPlace, Operation as O};
use fh_work::{ToolKind, Worked, WorkedStep};
use tests::mm;

/// The step of this title.
fn titled<'w>(worked: &'w Worked, title: &str) -> &'w WorkedStep {
    let all: Vec<_> = worked.steps.iter().map(|step| &step.title).collect();
    worked.steps.iter().find(|step| step.title == title).unwrap_or_else(|| panic!("“{title}” is not in {all:?}"))
}

/// A size of a step, in mm.
fn size(step: &WorkedStep, what: &str) -> f64 {
    let found = step.sizes.iter().find(|size| size.what == what);
    found.and_then(|size| size.mm).unwrap_or_else(|| panic!("{what} is not in {:?}", step.sizes))
}

/// Drawn last, the bar beside the taper would leave a step at its thick end, and warm the thin end once more.
#[test]
fn the_bar_that_a_taper_runs_out_of_is_drawn_before_it_and_thin_ends_come_last() {
    let before = |name: &str, first: (O, &str), then: (O, &str)| {
        let order = proposed(&demo(name));
        assert!(place(&order, first.0, first.1) < place(&order, then.0, then.1), "{name}: {order:?}");
    };
    before("gate-hook.plan.json", (O::SetDown, "shoulder"), (O::Spread, "leaf"));
    before("gate-hook.plan.json", (O::Draw, "hook"), (O::Taper, "stem"));
    before("dibber.plan.json", (O::Draw, "grip"), (O::Taper, "neck"));
    before("row-marker.plan.json", (O::SetDown, "shoulder"), (O::Spread, "fishtail"));
}

/// The plate is 4 mm thick and the leg 12 mm: in the middle of it their backs would lie 4 mm apart.
#[test]
fn a_screw_plate_behind_a_one_sided_step_lies_flush_with_the_back() {
    for (name, plate, leg, up) in [("trellis-bracket", 0, 3, -1.0), ("lantern-arm", 6, 4, 1.0)] {
        let plan = demo(&format!("{name}.plan.json"));
        let balance = balance(&plan);
        let back = |at: usize| {
            let part = &balance.bars[0].segments[at];
            let half = part.shape.as_ref().unwrap().end_extents_mm(false, &balance.bars[0].stock)[1] / 2.0;
            part.offset_mm[1] + up * half
        };
        assert!((back(plate) - back(leg)).abs() < 1e-9, "{name}: {} and {}", back(plate), back(leg));
    }
    let trellis = worked(&demo("trellis-bracket.plan.json"));
    let flat = doing(&trellis, O::Flatten);
    assert!(lay(flat).contains("Keep its bottom on the face"), "{}", lay(flat));
}

/// 12 mm wide; sides of 16 mm and a half-circle of 6 mm: 22 mm deep; their middles 14 mm from the middle line. Both in the plan.
#[test]
fn notches_are_told_with_their_sizes_their_places_and_how_they_are_made() {
    let rack = worked(&demo("dibber-rack.plan.json"));
    let trim = titled(&rack, "Trim “rest”");
    assert!((size(trim, "width of the 2 notches") - 12.0).abs() < 1e-9);
    assert!((size(trim, "depth of the 2 notches") - 22.0).abs() < 1e-9);
    assert!(
        lay(trim).contains("14.0 mm to both sides of the base line; clamp it and drill each 12.0 mm at its bottom"),
        "{}",
        lay(trim)
    );
    let number = rack.steps.iter().position(|step| step == trim).unwrap();
    let with = |kind: ToolKind| rack.tools.iter().any(|tool| tool.kind == kind && tool.steps().contains(&number));
    assert!(with(ToolKind::Drill) && with(ToolKind::Saw) && with(ToolKind::File));
}

/// Point 60, stake 220, and the blank of 72 that is only later cut to 70; it reaches 6 mm to one side and 22 to the other.
#[test]
fn a_plate_off_the_middle_is_spread_to_its_side_and_measured_with_its_blank() {
    let rack = worked(&demo("dibber-rack.plan.json"));
    let spread = titled(&rack, "Spread “plate”");
    assert!(lay(spread).contains("Spread it to its far side: 22.0 mm there"), "{}", lay(spread));
    let straight = titled(&rack, "Straighten and measure “label”");
    assert!(straight.check.as_ref().unwrap().contains("352.0 mm"), "{:?}", straight.check);
}

/// The thorn is drawn to 77 mm beside a slit of 30 mm: in line again it would lie on the shank.
#[test]
fn a_thorn_longer_than_its_slit_is_not_laid_back_on_the_bar() {
    let stake = worked(&demo("net-stake.plan.json"));
    let back = |step: &WorkedStep| step.tasks.iter().any(|task| task.operation == O::Straighten && task.part.is_some());
    assert!(!stake.steps.iter().any(back));
    let bend = titled(&stake, "Bend “thorn, root”");
    assert!(lay(bend).contains("bring it back over a bar of 20.0 mm"), "{}", lay(bend));
}

#[test]
fn a_ring_is_welded_round_the_horn_and_its_lips_are_kept_from_the_blast() {
    let stand = worked(&demo("pot-stand.plan.json"));
    let weld = doing(&stand, O::Weld);
    assert_eq!(weld.place, AnvilPlace::Horn);
    assert!(lay(weld).contains("Hang the ring on the horn") && lay(weld).contains("they burn first"), "{}", lay(weld));
}

#[test]
fn which_side_of_a_leg_takes_the_peg_and_what_lies_under_a_diamond_is_said() {
    let frame = worked(&demo("bean-frame.plan.json"));
    let peg = titled(&frame, "Fit “peg 1”");
    assert!(lay(peg).starts_with("Lay the bottom of “shank” on the top of “leg”."), "{}", lay(peg));
    assert!(frame.tools.iter().any(|tool| tool.kind == ToolKind::File), "a stub of a tenon is filed square");
    let stake = worked(&demo("twine-stake.plan.json"));
    assert!(lay(doing(&stake, O::Dress)).contains("in a V-block"));
    assert!(stake.tools.iter().any(|tool| tool.kind == ToolKind::VBlock));
}

/// As the scraper hangs, its blade is as high as the bar is wide, 40 mm, and not as it is thick.
#[test]
fn the_scraper_stands_on_edge_and_the_trowel_is_dished_before_it_is_normalised() {
    let scraper = demo("boot-scraper.plan.json");
    let rolled = scraper.hangs.rolled.as_ref().unwrap();
    assert!((rolled.radians().to_degrees() - 90.0).abs() < 1e-9);
    let trowel = worked(&demo("trowel.plan.json"));
    let at = |title: &str| trowel.steps.iter().position(|step| step.title == title).unwrap();
    assert!(at("Bend “crank back”") < at("Dish “blade”") && at("Dish “blade”") < at("Normalise “trowel”"));
    let grave = trowel.open_findings().any(|found| found.finding.severity != Severity::Note);
    assert!(!grave && mm(balance(&demo("trowel.plan.json")).bars[0].forged_length) > 0.0);
}
