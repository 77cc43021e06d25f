//! What a step says to do: words that would spoil a piece are held off, each on a small plan of its own.

use crate::orders::{doing, lay, on};
use fh_core::plan::{AnvilPlace, Operation as O};
use fh_work::Worked;
use serde_json::{Value, json};

fn plain(length: &str) -> Value {
    json!({ "name": "shank", "form": { "plain": { "length": length } } })
}

#[test]
fn a_flat_drawn_on_edge_to_a_round_is_drawn_and_not_spread() {
    let round = json!({ "name": "stem", "form": { "drawn": { "length": "80 mm", "section": { "round": "11 mm" } } } });
    let worked = on(json!({ "flat": { "width": "32 mm", "thickness": "9.5 mm" } }), &[plain("100 mm"), round]);
    let step = doing(&worked, O::Draw);
    assert_eq!(step.title, "Draw out “stem”");
    assert!(lay(step).contains("From its narrow sides"), "{}", lay(step));
}

#[test]
fn what_is_gathered_is_not_called_drawn() {
    let knob = json!({ "name": "knob", "form": { "drawn": { "length": "20 mm", "section": { "square": "20 mm" } } } });
    let worked = on(json!({ "square": "16 mm" }), &[plain("150 mm"), knob]);
    assert_eq!(doing(&worked, O::Upset).becomes, ["upset to 20 mm square"]);
}

fn flag(axis: &str) -> Worked {
    let flag = json!({ "name": "leaf", "form": { "flag": { "outline": { "rectangle": { "length": "80 mm", "width": "40 mm" } },
        "thickness": "3 mm" } }, "bend": { "socket": { "mandrel": if axis == "along" { "10 mm" } else { "20 mm" },
        "axis": axis, "sweep": "300 deg" } } });
    let mut flag = flag;
    // The size that is rolled up follows.
    let size = if axis == "along" { "width" } else { "length" };
    flag["form"]["flag"]["outline"]["rectangle"].as_object_mut().unwrap().remove(size);
    on(json!({ "square": "16 mm" }), &[plain("150 mm"), flag])
}

#[test]
fn a_knuckle_is_rolled_up_across_the_bar_and_a_socket_along_it() {
    let (along, across) = (flag("along"), flag("across"));
    let (along, across) = (doing(&along, O::Roll), doing(&across, O::Roll));
    assert!(lay(along).contains("curl both long edges in"), "{}", lay(along));
    assert_eq!(across.title, "Roll up “leaf”");
    assert_eq!(across.place, AnvilPlace::FarEdge);
    assert!(
        lay(across).contains("Begin at the end of “leaf”") && lay(across).contains("square across"),
        "{}",
        lay(across)
    );
    assert!(!lay(across).contains("long edges") && !across.tool.contains("swage"), "{} {}", lay(across), across.tool);
}

/// Template and check have the ring tangent to the bar: no step says to set its root back before it is held against them.
#[test]
fn an_eye_is_checked_as_its_template_has_it() {
    let eye = json!({ "name": "eye", "form": { "drawn": { "section": "stock" } },
        "bend": { "ring": { "inside_diameter": "20 mm" } } });
    let worked = on(json!({ "round": "10 mm" }), &[plain("150 mm"), eye]);
    let words = lay(doing(&worked, O::Bend));
    let (template, back) = (words.find("template").unwrap(), words.find("back over the middle").unwrap());
    assert!(template < back && words.contains("Check it so") && !words.contains("First bend its root"), "{words}");
}

#[test]
fn a_bend_is_laid_over_what_a_smithy_has() {
    let tool = |radius: &str| {
        let arm = json!({ "name": "arm", "form": { "drawn": { "section": "stock" } },
            "bend": { "curve": { "angle": "60 deg", "inside_radius": radius } } });
        let worked = on(json!({ "round": "10 mm" }), &[plain("150 mm"), arm, plain("150 mm")]);
        let step = doing(&worked, O::Bend);
        (step.tool.clone(), lay(step).to_owned())
    };
    assert_eq!(tool("12 mm").0, "mandrel 24 mm, or the horn");
    let (wide, lay) = tool("120 mm");
    assert_eq!(wide, "former or ring of 240 mm");
    assert!(!lay.contains("where it is as round as the bend") && lay.contains("trying it on the template"), "{lay}");
}

#[test]
fn a_knob_that_is_still_on_the_bar_is_not_turned_end_for_end() {
    for form in [json!({ "ball": { "diameter": "14 mm" } }), json!({ "cube": { "side": "14 mm" } })] {
        let worked = on(json!({ "square": "16 mm" }), &[plain("150 mm"), json!({ "name": "knob", "form": form })]);
        let words = lay(doing(&worked, O::Draw));
        assert!(words.contains("its end") && !words.contains("end for end") && !words.contains("six"), "{words}");
    }
}

#[test]
fn a_diamond_begins_with_the_corners_of_the_bar() {
    let arm = json!({ "name": "arm", "form": { "drawn": { "length": "80 mm", "section": { "diamond": "10 mm" } } } });
    let worked = on(json!({ "square": "16 mm" }), &[plain("150 mm"), arm]);
    assert!(lay(doing(&worked, O::Draw)).starts_with("Knock the bar's four corners down first"), "{worked:?}");
}

#[test]
fn what_falls_off_is_kept_where_it_is_the_next_pieces_bar() {
    let cut = json!({ "name": "saw cut", "form": { "trim": { "length": "3 mm" } } });
    let rest = json!({ "name": "rest", "form": { "hold": { "length": "300 mm" } } });
    let end = json!({ "name": "end", "form": { "drawn": { "length": "80 mm", "section": { "square": "12 mm" } } } });
    let stock = || json!({ "square": "16 mm" });
    let kept = on(stock(), &[plain("100 mm"), end.clone(), cut.clone(), rest.clone()]);
    assert!(lay(doing(&kept, O::PartOff)).contains("keep") && !lay(doing(&kept, O::PartOff)).contains("waste"));
    assert!(lay(doing(&on(stock(), &[plain("100 mm"), end.clone(), rest]), O::PartOff)).contains("keep the rest"));
    assert!(lay(doing(&on(stock(), &[plain("100 mm"), end, cut]), O::Trim)).contains("waste"));
}

/// Beyond a step that goes down on the top alone a plate lies flush with the bottom of the bar.
#[test]
fn a_plate_that_is_flush_with_one_side_is_struck_from_the_other() {
    let down = json!({ "name": "step", "form": { "shoulder": { "to": { "flat": { "width": "16 mm", "thickness": "5 mm" } },
        "radius": "2 mm", "sides": [0] } } });
    let boss = json!({ "name": "boss", "form": { "hole": { "outline": { "rectangle": { "length": "40 mm", "width": "24 mm" } },
        "thickness": "5 mm", "hole": { "round": "7 mm" }, "made": "punched" } } });
    let flush = on(json!({ "square": "16 mm" }), &[plain("100 mm"), down, boss.clone()]);
    let middle = on(json!({ "square": "16 mm" }), &[plain("100 mm"), boss]);
    let words = |worked: &Worked| lay(doing(worked, O::Flatten)).to_owned();
    assert!(words(&middle).contains("in the middle of the bar"), "{}", words(&middle));
    assert!(words(&flush).contains("Keep its bottom on the face"), "{}", words(&flush));
    assert!(!words(&flush).contains("Turn it over"), "{}", words(&flush));
}

#[test]
fn cut_faces_are_smoothed_before_a_branch_is_forged() {
    let branch = |name: &str| {
        json!({ "name": name, "segments": [{ "name": "tip", "form": { "taper": { "length": "60 mm",
        "to": "point" } } }] })
    };
    let split = json!({ "name": "tines", "form": { "split": { "branches": [branch("far"), branch("near")] } } });
    let worked = on(json!({ "square": "20 mm" }), &[split, plain("150 mm")]);
    let (cut, apart) = (doing(&worked, O::Split), doing(&worked, O::BendAside));
    // Before the slit is opened no tool reaches them.
    assert!(!lay(cut).contains("mooth") && cut.leave.is_none(), "{:?}", cut.leave);
    assert!(lay(apart).contains("smooth the cut faces, and round the root"), "{}", lay(apart));
    assert!(apart.check.as_ref().unwrap().contains("the cut faces: smooth"), "{:?}", apart.check);
}

#[test]
fn what_was_bent_is_trued_before_it_is_checked() {
    let arm = json!({ "name": "arm", "form": { "drawn": { "section": "stock" } },
        "bend": { "curve": { "angle": "60 deg", "inside_radius": "20 mm" } } });
    let worked = on(json!({ "round": "10 mm" }), &[plain("150 mm"), arm]);
    assert!(lay(doing(&worked, O::Check)).contains("True it first"));
}

#[test]
fn a_late_brush_is_hot_and_just_before_the_bend() {
    let worked = flag("along");
    let brush = worked.steps.iter().find(|step| step.title == "Brush “leaf”").unwrap();
    assert!(lay(brush).starts_with("Brush it hot, all round, as it comes out of the fire"), "{}", lay(brush));
}
