//! What a card has a smith measure, turn, file and cut, on small plans worked by hand.

use crate::orders::{demo, doing, lay, on, worked};
use fh_core::balance::balance;
use fh_core::plan::{AnvilPlace, Operation as O};
use fh_store::demos::DEMOS;
use fh_work::{ToolKind, Worked, WorkedStep, after};
use serde_json::{Value, json};

fn plain(name: &str, length: &str) -> Value {
    json!({ "name": name, "form": { "plain": { "length": length } } })
}

/// Both legs are drawn, so that no mark is left; a thickness of 16 mm beside the bow is hot, and 1.27 % of that longer: 0.2 mm, which
/// nobody reads off 200 mm of hot bar.
#[test]
fn a_measured_length_of_which_little_is_hot_reads_no_longer() {
    let leg = |name: &str, long: &str| json!({ "name": name, "form": { "drawn": { "length": long, "section": { "square": "15 mm" } } } });
    let bow = json!({ "name": "bow", "form": { "drawn": { "length": "100 mm", "section": "stock" } },
        "bend": { "curve": { "angle": "60 deg" } } });
    let worked = on(json!({ "square": "16 mm" }), &[leg("one", "200 mm"), bow, leg("other", "250 mm")]);
    let bend = doing(&worked, O::Bend);
    let told = ["the start of “bow”: 200.0 mm from the", "the end of “bow”: 250.0 mm from the"];
    assert!(told.iter().any(|told| bend.measure[0].starts_with(told)), "{:?}", bend.measure);
}

/// A length in mm behind a word, as a card has it: `212.6 mm`.
fn before_mm(words: &str) -> Option<f64> {
    words.strip_suffix(" mm")?.rsplit([' ', '(']).next()?.parse().ok()
}

#[test]
fn no_measured_length_grows_by_more_than_what_is_hot_in_its_heat() {
    let mut seen = 0;
    for own in DEMOS.iter() {
        let worked = worked(&demo(own.file_name));
        for step in &worked.steps {
            let of_heat = worked.steps.iter().filter(|other| {
                other.bar == step.bar && other.heat <= step.heat && other.heat + other.needs > step.heat
            });
            // As the bar is before a step, and as long as it makes it.
            let zones: Vec<[f64; 2]> = of_heat.flat_map(|other| [other.zone_mm, other.hot_mm]).flatten().collect();
            let hot = zones.iter().map(|zone| zone[1]).fold(0.0, f64::max)
                - zones.iter().map(|zone| zone[0]).fold(f64::INFINITY, f64::min);
            for words in &step.measure {
                let Some((cold, rest)) = words.split_once(" (") else { continue };
                let Some((now, _)) = rest.split_once(" hot)") else { continue };
                let (Some(cold), Some(now)) = (before_mm(cold), before_mm(now)) else { continue };
                seen += 1;
                // Up to 100 mm it is read to 0.5 mm, beyond to 1 mm.
                let read = if now < 100.0 { 0.25 } else { 0.5 };
                assert!(now - cold <= 0.0135 * hot + read + 0.06, "{}: {words} with {hot} mm hot", own.file_name);
            }
        }
    }
    assert!(seen > 10, "{seen}");
}

fn tenon(section: &Value) -> Worked {
    let tenon =
        json!({ "name": "tenon", "form": { "tenon": { "section": section, "grip": "10 mm", "allowance": "12 mm" } } });
    on(json!({ "square": "16 mm" }), &[plain("shank", "200 mm"), tenon])
}

#[test]
fn the_hole_of_a_monkey_tool_has_the_shape_of_its_tenon() {
    let words = |section: &Value| {
        let worked = tenon(section);
        worked.tools.into_iter().find(|tool| tool.kind == ToolKind::MonkeyTool).unwrap().words
    };
    assert!(words(&json!({ "square": "10 mm" })).starts_with("monkey tool, with a square hole 10."));
    assert!(words(&json!({ "round": "10 mm" })).starts_with("monkey tool, bored to 10."));
}

/// Half of 16 mm is 8: what is shorter finds no hold under a hot cut.
#[test]
fn a_sliver_is_sawn_cold_and_its_end_not_sawn_square_twice() {
    for (long, cold) in [("3 mm", true), ("7 mm", true), ("9 mm", false)] {
        let waste = json!({ "name": "ragged", "form": { "trim": { "length": long } } });
        let point = json!({ "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } });
        let worked = on(json!({ "square": "16 mm" }), &[waste, point, plain("shank", "200 mm")]);
        let trim = doing(&worked, O::Trim);
        assert_eq!(!trim.is_hot(), cold, "{long}");
        assert_eq!(
            trim.tool == "saw" && trim.title == "Saw off “ragged”" && trim.place == AnvilPlace::Vice,
            cold,
            "{long}"
        );
        assert_eq!(trim.hold.is_none() && trim.zone_mm.is_none(), cold, "{long}");
        let saw = worked.tools.iter().find(|tool| tool.kind == ToolKind::Saw).unwrap();
        assert!(
            !saw.reason().contains("ends square") && saw.reason().contains("“ragged” stays as it is"),
            "{}",
            saw.reason()
        );
    }
}

fn step_to(stock: Value, section: &Value) -> String {
    let down = json!({ "name": "step", "form": { "shoulder": { "to": section, "radius": "2 mm", "sides": "all" } } });
    let neck = json!({ "name": "neck", "form": { "drawn": { "length": "80 mm", "section": section } } });
    lay(doing(&on(stock, &[plain("shank", "200 mm"), down, neck]), O::SetDown)).to_owned()
}

#[test]
fn a_step_is_turned_as_its_section_asks() {
    let of = |section: Value| step_to(json!({ "square": "16 mm" }), &section);
    let square = of(json!({ "square": "10 mm" }));
    assert!(square.contains("A quarter turn after every blow") && !square.contains("eighth"), "{square}");
    assert!(of(json!({ "octagon": "10 mm" })).contains("then an eighth"));
    assert!(of(json!({ "hexagon": "10 mm" })).contains("A sixth of a turn after every blow"));
    let round = of(json!({ "round": "10 mm" }));
    assert!(round.contains("then an eighth, and round it last"), "{round}");
}

#[test]
fn what_keeps_its_height_is_set_down_from_its_edges() {
    let flat = step_to(json!({ "flat": { "width": "20 mm", "thickness": "8 mm" } }), &json!({ "square": "8 mm" }));
    assert!(flat.contains("Strike its two edges only") && !flat.contains("quarter turn"), "{flat}");
    let thinned = step_to(
        json!({ "flat": { "width": "20 mm", "thickness": "8 mm" } }),
        &json!({ "flat": { "width": "20 mm", "thickness": "5 mm" } }),
    );
    assert!(thinned.contains("Strike top and bottom only"), "{thinned}");
}

#[test]
fn no_bar_has_four_corners_knocked_down_that_has_six_or_none() {
    for (stock, has_four) in [
        (json!({ "square": "16 mm" }), true),
        (json!({ "hexagon": "16 mm" }), false),
        (json!({ "round": "16 mm" }), false),
    ] {
        let arm =
            json!({ "name": "arm", "form": { "drawn": { "length": "80 mm", "section": { "diamond": "10 mm" } } } });
        let worked = on(stock.clone(), &[plain("shank", "150 mm"), arm]);
        let words = lay(doing(&worked, O::Draw));
        assert_eq!(words.contains("four corners"), has_four, "{stock}: {words}");
        assert!(words.contains("point up and down"), "{words}");
    }
}

/// Two branches of 20 mm square, each with a drawn length and a point.
fn tines(apart: bool) -> Worked {
    let branch = |name: &str| {
        let drawn = |part: &str| json!({ "name": part, "form": { "drawn": { "length": "50 mm", "section": { "square": "9 mm" } } } });
        json!({ "name": name, "segments": [{ "name": "tip", "form": { "taper": { "length": "60 mm", "from": { "square": "9 mm" },
            "to": "point" } } }, drawn("tine"), drawn("root")] })
    };
    let split = json!({ "name": "tines", "form": { "split": { "branches": [branch("far"), branch("near")] } } });
    let segments = [split, plain("shank", "150 mm")];
    let plan = tests::one_bar(&json!({ "square": "20 mm" }), &segments);
    let mut plan = tests::read(&plan);
    if !apart {
        let both: Vec<String> = ["1.1.2", "1.1.3", "1.2.2", "1.2.3"].map(str::to_owned).to_vec();
        let steps = json!([{ "work": [{ "operation": "split", "parts": ["1"] }] }, { "work": [{ "operation": "draw", "parts": both }] }]);
        plan.work.steps = Some(serde_json::from_value(steps).unwrap());
    }
    worked(&plan)
}

#[test]
fn branches_side_by_side_are_as_long_and_as_far_off_as_one_of_them() {
    let (one, both) = (tines(true), tines(false));
    let in_all = |worked: &Worked| {
        let sizes = doing(worked, O::Draw).sizes.iter().filter(|size| size.what.starts_with("length in all"));
        sizes.map(|size| (size.what.clone(), size.mm.unwrap(), size.tolerance_mm)).collect::<Vec<_>>()
    };
    let (one, both) = (in_all(&one), in_all(&both));
    assert_eq!((one.len(), both.len()), (1, 2), "{one:?} {both:?}");
    for (size, name) in both.iter().zip(["“far”", "“near”"]) {
        assert!(size.0.contains(name), "{size:?}");
        assert!((size.1 - one[0].1).abs() < 1e-6 && (size.2 - one[0].2).abs() < 1e-6, "{size:?} {one:?}");
    }
}

#[test]
fn the_second_branch_is_brought_to_the_length_of_the_first() {
    let worked = tines(true);
    let words = |title: &str| lay(worked.steps.iter().find(|step| step.title == title).unwrap()).to_owned();
    let [far, near] = ["far", "near"].map(|branch| words(&format!("Taper “{branch}, tip”")));
    assert_eq!([&far, &near].map(|words| words.matches("Bring it to the length of").count()).iter().sum::<usize>(), 1);
    assert!(near.contains("to the length of “far”") || far.contains("to the length of “near”"), "{far} {near}");
}

/// 24 mm of 12 mm square are twice its thickness; for a peak of so sharp a corner 21 mm go into it.
#[test]
fn a_peak_is_forged_in_a_heat_of_its_own_after_it_is_upset() {
    let upset = worked(&demo("herb-bracket.plan.json"));
    let short = doing(&upset, O::Upset);
    let [from, to] = short.zone_mm.unwrap();
    assert!(to - from < 24.0, "{from} to {to}");
    assert_eq!(short.needs, 3);
    assert!(lay(short).contains("in a heat of its own, lay it down"), "{}", lay(short));
    let scraper = worked(&demo("boot-scraper.plan.json"));
    let longer = doing(&scraper, O::Upset);
    let [from, to] = longer.zone_mm.unwrap();
    assert!(to - from > 16.0, "{from} to {to}");
    assert_eq!(longer.needs, 2);
}

/// An eye round to 316° meets its neck; one that goes round to 270° is open there.
#[test]
fn a_ring_is_filed_to_its_neck_while_it_is_straight_and_costs_no_heat() {
    let of = |sweep: &str| {
        let eye = json!({ "name": "eye", "form": { "drawn": { "section": { "round": "8 mm" } } },
            "bend": { "ring": { "inside_diameter": "20 mm", "sweep": sweep } } });
        on(json!({ "round": "10 mm" }), &[plain("shank", "150 mm"), eye])
    };
    let at = |worked: &Worked, title: &str| worked.steps.iter().position(|step| step.title == title);
    let closed = of("316 deg");
    let (filed, bent) = (at(&closed, "File the end of “eye”").unwrap(), at(&closed, "Bend “eye”").unwrap());
    assert!(
        at(&closed, "Straighten and measure “bar”").unwrap() < filed && filed < bent,
        "where the bar is cold anyway"
    );
    assert!(!closed.steps[filed].is_hot() && closed.steps[filed].tool == "file");
    let words = lay(&closed.steps[bent]);
    assert!(words.contains("See that its filed end lies on the neck. Close it on the mandrel."), "{words}");
    assert!(!words.contains("cool") && closed.steps[bent].needs == 1, "{words}");
    let open = of("270 deg");
    assert!(at(&open, "File the end of “eye”").is_none());
    assert_eq!(open.heats, closed.heats);
}

/// A ring of 9 mm round on 16 mm square with 5 mm of bar for its scarf.
fn scarfed_ring() -> Worked {
    let drawn = |name: &str, bend: Value| json!({ "name": name, "form": { "drawn": { "length": "60 mm", "section": { "round": "9 mm" } } }, "bend": bend });
    let mut back = drawn("set-back", json!({ "curve": { "angle": "60 deg", "side": "180 deg" } }));
    back["form"]["drawn"]["length"] = json!("20 mm");
    let mut ring =
        drawn("ring", json!({ "ring": { "inside_diameter": "26 mm", "sweep": "322 deg", "side": "0 deg" } }));
    ring["form"]["drawn"].as_object_mut().unwrap().remove("length");
    let scarf = json!({ "name": "scarf", "form": { "weld": { "allowance": "5 mm" } } });
    on(json!({ "square": "16 mm" }), &[plain("shank", "200 mm"), back, ring, scarf])
}

/// So much bar of an octagon of 16 mm is 0.8284 × 16² / (π 4.5²) times as long in 9 mm round; the ring goes 322° round a middle line of
/// 35 mm.
#[test]
fn an_end_that_is_scarfed_is_measured_from_as_it_is_forged() {
    let plan = demo("cloche-lifter.plan.json");
    let worked = worked(&plan);
    let own = balance(&plan).bars[0].segments.last().unwrap().clone();
    let scarf = tests::mm(own.stock_length) * (1.0 - own.scale_share);
    let ring = worked.steps.iter().find(|step| step.title == "Bend “hanging ring”").unwrap();
    let (told, from) = ring.measure[0].split_once(": ").unwrap().1.split_once(" mm ").unwrap();
    let wanted = 322f64.to_radians() * 17.5 + scarf * 0.8284 * 256.0 / (std::f64::consts::PI * 4.5 * 4.5);
    assert!(from.ends_with("from the far end"), "{:?}", ring.measure);
    assert!((told.parse::<f64>().unwrap() - wanted).abs() < 0.6, "{:?}, {wanted}", ring.measure);
}

#[test]
fn so_short_an_end_is_drawn_along_before_it_is_scarfed() {
    let worked = scarfed_ring();
    let draw =
        worked.steps.iter().find(|step| step.title.starts_with("Draw out") && step.title.contains("“ring”")).unwrap();
    assert!(lay(draw).contains("Draw “scarf” out along with it, through the end"), "{}", lay(draw));
    let scarf = doing(&worked, O::Scarf);
    assert!(!lay(scarf).contains("forge it down"), "{}", lay(scarf));
    // A quarter of 13.5 mm, and what lies on the bar is beveled on the inside, which is the top.
    assert!(lay(scarf).contains("Upset the end by 3.4 mm first"), "{}", lay(scarf));
    assert!(lay(scarf).contains("bevel its top, the inside of the bend"), "{}", lay(scarf));
}

#[test]
fn a_ring_is_measured_before_its_ends_are_scarfed() {
    for worked in [worked(&demo("pot-stand.plan.json")), scarfed_ring()] {
        let at = |operation: O| {
            worked.steps.iter().position(|step| step.tasks.iter().any(|task| task.operation == operation))
        };
        let (scarf, straighten) = (at(O::Scarf).unwrap(), at(O::Straighten).unwrap());
        assert!(scarf < straighten);
        assert!(
            worked.steps[scarf].check.as_ref().unwrap().starts_with("Measure it straight and cold before you upset")
        );
        assert!(worked.steps[straighten].sizes.is_empty(), "{:?}", worked.steps[straighten].sizes);
        assert!(worked.steps[straighten].check.as_ref().unwrap().contains("measured before"));
    }
    let stand = worked(&demo("pot-stand.plan.json"));
    let words = lay(doing(&stand, O::Scarf));
    assert!(
        words.starts_with("Upset both ends by 4.5 mm first") && words.contains("the outside of the bend"),
        "{words}"
    );
    assert!(words.contains("which it meets, on its") && words.ends_with("the inside of the bend."), "{words}");
}

/// One length is cut: what the fire may take beyond the marks is allowed for in the plan, and the cut and the marks follow.
#[test]
fn no_card_names_another_cut_than_the_first() {
    for own in DEMOS.iter() {
        let plan = demo(own.file_name);
        for loss in worked(&plan).scale {
            let reason = &loss.reason();
            assert!(!reason.contains("longer") && !reason.contains("trim"), "{}: {reason}", own.file_name);
        }
    }
}

/// What a fire cannot reach in a frame is heated by a torch, and the torch is on the list.
#[test]
fn what_stands_out_of_a_frame_is_heated_by_a_torch() {
    let worked = worked(&demo("bean-frame.plan.json"));
    let fits: Vec<&WorkedStep> =
        worked.steps.iter().filter(|step| step.is_hot() && step.tool.contains("rivet set")).collect();
    assert!(fits.len() > 1);
    assert!(fits.iter().all(|step| lay(step).contains("torch") && step.tool.contains("gas torch")));
    assert!(fits.iter().any(|step| lay(step).contains("Heat the rivet before it goes in")));
    assert!(worked.tools.iter().any(|tool| tool.kind == ToolKind::Torch));
}

/// The outline of a leaf runs to a point at its root, where 8 mm of bar go on.
#[test]
fn the_root_of_a_leaf_keeps_its_width_where_its_template_has_none() {
    let leaf = json!({ "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "64 mm", "width": "26 mm" } },
        "thickness": "3 mm", "trim": "5 %" } } });
    let stem = json!({ "name": "stem", "form": { "drawn": { "length": "60 mm", "section": { "square": "8 mm" } } } });
    let worked = on(json!({ "square": "12 mm" }), &[leaf, stem, plain("shank", "200 mm")]);
    assert!(lay(doing(&worked, O::Spread)).contains("narrow its root to 8.0 mm, where the template runs to a point"));
    assert!(lay(doing(&worked, O::Trim)).contains("leave that 8.0 mm wide"), "{}", lay(doing(&worked, O::Trim)));
}

/// A ring right beside a thin plate: a thickness of 10 mm of the plate is hot with it, whatever holds the bar.
#[test]
fn a_thin_neighbor_that_is_hot_is_dipped_though_it_is_held() {
    let plate = json!({ "name": "plate", "form": { "flag": { "outline": { "rectangle": { "length": "110 mm", "width": "28 mm" } },
        "thickness": "2.5 mm" } } });
    let ring = json!({ "name": "ring", "form": { "drawn": { "section": { "round": "6 mm" } } },
        "bend": { "ring": { "inside_diameter": "12 mm", "sweep": "285 deg" } } });
    let worked = on(json!({ "square": "10 mm" }), &[plate, ring]);
    let step = doing(&worked, O::Bend);
    assert_eq!(step.hold.unwrap().part, 0);
    assert!(step.caution.as_ref().unwrap().contains("Keep “plate” out of the fire"), "{:?}", step.caution);
}

/// A fuller of 10 mm with a round nose, 6.5 mm deep from top and bottom of 20 mm square: half a circle of 39.3 mm² and 15 mm² with
/// straight sides, twice, at the height of 20 mm come to 5.4 mm of the bar. Marks are rounded to half a millimetre.
#[test]
fn what_a_groove_pushes_out_is_counted_in_what_is_measured_over_it() {
    let plan = demo("trowel.plan.json");
    let worked = worked(&plan);
    let draw = worked.steps.iter().position(|step| step.tasks.iter().any(|task| task.operation == O::Draw)).unwrap();
    let step = &worked.steps[draw];
    let (_, told) = step.measure[0].split_once("now about ").unwrap_or_else(|| panic!("{:?}", step.measure));
    let told: f64 = told.split_once(" mm").unwrap().0.parse().unwrap();
    let before = after(&plan, &balance(&plan), &worked, draw).bars[0].segments[..2].to_vec();
    let bare: f64 = before.iter().map(|segment| tests::mm(segment.forged_length)).sum();
    assert!((told - (bare + 5.43)).abs() < 0.3, "{:?}, {bare}", step.measure);
}

/// A fuller of 10 mm in a block of 12.5 mm leaves 2.5 mm of full bar beside what is drawn.
#[test]
fn no_rib_is_left_between_a_groove_and_what_is_drawn_beside_it() {
    let worked = worked(&demo("trowel.plan.json"));
    let draw = doing(&worked, O::Draw);
    assert!(
        lay(draw).contains("Draw it from the groove on, and take what is left of “neck” there down with it"),
        "{}",
        lay(draw)
    );
    let fork = self::worked(&demo("weeding-fork.plan.json"));
    assert!(fork.steps.iter().all(|step| !step.lay.as_ref().is_some_and(|lay| lay.contains("from the groove on"))));
}

#[test]
fn no_hole_is_drilled_before_what_is_beside_it_is_flat() {
    let boss = |name: &str| {
        json!({ "name": name, "form": { "hole": { "outline": { "rectangle": { "length": "25 mm", "width": "28 mm" } },
            "thickness": "4 mm", "hole": { "round": "5 mm" }, "made": "drilled" } } })
    };
    let worked = on(json!({ "square": "12 mm" }), &[boss("one"), boss("other"), plain("shank", "200 mm")]);
    let places = |operation: O| -> Vec<usize> {
        let does = |step: &WorkedStep| step.tasks.iter().any(|task| task.operation == operation);
        (0..worked.steps.len()).filter(|at| does(&worked.steps[*at])).collect()
    };
    assert!(places(O::Flatten).iter().max() < places(O::Drill).iter().min(), "{worked:?}");
}

/// The tines run out to points, which are kept out of the fire while one of them is forged.
#[test]
fn branches_are_brought_back_in_a_heat_of_their_own_at_their_root() {
    let worked = tines(true);
    let back = doing(&worked, O::Straighten);
    // The bar is trued with what is left of it.
    let is_part = |step: &&WorkedStep| step.tasks.iter().any(|task| task.part.is_some());
    let others = worked.steps.iter().filter(|step| step.is_hot() && step.tasks != back.tasks).filter(is_part);
    assert!(others.clone().all(|step| step.heat + step.needs <= back.heat || step.heat >= back.heat + back.needs));
    let [from, to] = back.zone_mm.unwrap();
    assert!(to - from < 70.0, "{from} to {to}");
    for step in worked.steps.iter() {
        let told = step.heat_with.as_deref().unwrap_or_default();
        assert!(!told.contains("“tines” too"), "{told}");
    }
}

/// Two steps on one side, 4 mm down and up again with 40 mm between them: the second line does not lie flat on the edge.
#[test]
fn a_bar_that_would_rock_lies_on_a_block() {
    let worked = worked(&demo("trellis-bracket.plan.json"));
    let steps: Vec<&WorkedStep> =
        worked.steps.iter().filter(|step| step.tasks.iter().any(|task| task.operation == O::SetDown)).collect();
    assert_eq!(steps.iter().filter(|step| lay(step).contains("would rock on the face")).count(), 1);
    assert!(
        !lay(steps[0]).contains("rocks") && lay(steps[1]).contains("Put a block 4.0 mm thick"),
        "{}",
        lay(steps[1])
    );
}

/// A collar that was upset to 22 mm stands 3 mm out of 16 mm square on every side.
#[test]
fn a_bar_with_something_thick_on_it_is_propped_where_it_is_set_down() {
    let collar =
        json!({ "name": "collar", "form": { "drawn": { "length": "20 mm", "section": { "square": "22 mm" } } } });
    let tenon = json!({ "name": "tenon", "form": { "tenon": { "section": { "square": "10 mm" }, "grip": "10 mm", "allowance": "12 mm" } } });
    let worked = on(json!({ "square": "16 mm" }), &[plain("shank", "200 mm"), collar, plain("neck", "50 mm"), tenon]);
    let words = lay(doing(&worked, O::SetDown));
    assert!(words.contains("“collar” is thicker by 3.0 mm on each side"), "{words}");
}

#[test]
fn of_two_rings_that_hang_in_each_other_the_last_is_closed_there() {
    let bar = |name: &str| {
        json!({ "name": name, "stock": { "round": "8 mm" }, "segments": [plain("shank", "100 mm"),
            { "name": "ring", "form": { "drawn": { "section": "stock" } }, "bend": { "ring": { "inside_diameter": "30 mm" } } }] })
    };
    let plan = json!({ "firstheat": 1, "bars": [bar("one"), bar("other")], "joints": [{ "name": "hung", "kind": "hook",
        "fixed": { "bar": "one", "segment": "ring" }, "moved": [{ "bar": "other", "segment": "ring" }] }] });
    let worked = worked(&tests::read(&plan));
    let bends: Vec<&str> = worked.steps.iter().filter(|step| step.title == "Bend “ring”").map(lay).collect();
    assert_eq!(bends.len(), 2);
    assert!(bends[0].contains("Close it on the mandrel") && !bends[0].contains("Leave it open"), "{}", bends[0]);
    assert!(
        bends[1].contains("Leave it open: it is closed at “hung”") && !bends[1].contains("Close it"),
        "{}",
        bends[1]
    );
    let fit = doing(&worked, O::Fit);
    assert!(fit.is_hot() && lay(fit).contains("close it there"), "{fit:?}");
}
