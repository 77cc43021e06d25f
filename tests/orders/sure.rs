//! What a card must say once and rightly: one size with one range, a heat for what is hot after cold work, how hot and no hotter, and
//! what it is that falls.

use crate::orders::{demo, doing, lay, on, worked};
use fh_core::plan::Operation as O;
use fh_store::demos::DEMOS;
use fh_work::{Size, ToolKind};
use serde_json::{Value, json};

fn plain(name: &str, length: &str) -> Value {
    json!({ "name": name, "form": { "plain": { "length": length } } })
}

fn size<'s>(sizes: &'s [Size], what: &str) -> &'s Size {
    sizes.iter().find(|size| size.what == what).unwrap_or_else(|| panic!("{what} is not in {sizes:?}"))
}

/// 8.5 +0.5 -0 mm is 8.5 to 9.0 mm, whatever else is said of it.
#[test]
fn a_hole_a_ring_and_a_tenon_have_the_range_that_the_plan_gives_them() {
    let boss = json!({ "name": "boss", "form": { "hole": { "outline": { "rectangle": { "length": "40 mm", "width": "24 mm" } },
        "thickness": "8 mm", "hole": { "round": "8.5 +0.5 -0 mm" }, "made": "punched" } } });
    let ring = json!({ "name": "ring", "form": { "drawn": { "section": { "round": "8 mm" } } },
        "bend": { "ring": { "inside_diameter": "20 +1 -0 mm" } } });
    let worked = on(json!({ "square": "16 mm" }), &[plain("one", "80 mm"), boss, plain("other", "80 mm"), ring]);
    let told = size(&doing(&worked, O::Punch).sizes, "punch").clone();
    assert_eq!((told.between_mm, told.tolerance.as_deref()), (Some([8.5, 9.0]), Some("8.5 to 9.0 mm")), "{told:?}");
    let told = size(&doing(&worked, O::Bend).sizes, "inside diameter").clone();
    assert_eq!((told.between_mm, told.tolerance.as_deref()), (Some([20.0, 21.0]), Some("± 0.5 mm")), "{told:?}");
    let bolster = worked.tools.iter().find(|tool| tool.kind == ToolKind::Bolster).unwrap();
    assert_eq!(bolster.size_mm, Some(9.0), "the widest that the hole may be goes into it");
    let tenon = json!({ "name": "tenon", "form": { "tenon": { "section": { "round": "8.5 +0 -0.5 mm" }, "grip": "8 mm", "allowance": "12 mm" } } });
    let worked = on(json!({ "square": "12 mm" }), &[plain("shank", "200 mm"), tenon]);
    for operation in [O::SetDown, O::Draw] {
        let told = size(&doing(&worked, operation).sizes, "diameter").clone();
        assert_eq!(
            (told.between_mm, told.tolerance.as_deref()),
            (Some([8.0, 8.5]), Some("8.0 to 8.5 mm")),
            "{operation:?}"
        );
    }
}

/// A length in mm behind a word, as a card has it: `212.6 mm`.
fn mm(words: &str) -> Option<f64> {
    words.strip_suffix(" mm")?.rsplit(' ').next()?.parse().ok()
}

#[test]
fn what_a_card_allows_either_way_ends_where_the_range_does() {
    let mut seen = 0;
    for own in DEMOS {
        for size in worked(&demo(own.file_name)).steps.iter().flat_map(|step| &step.sizes) {
            let (Some([low, high]), Some(off)) = (size.between_mm, &size.tolerance) else { continue };
            let (Some(cold), Some(off)) = (mm(&size.cold), off.strip_prefix("± ").and_then(mm)) else { continue };
            assert!(
                (cold - off - low).abs() < 0.051 && (cold + off - high).abs() < 0.051,
                "{}: {size:?}",
                own.file_name
            );
            seen += 1;
        }
    }
    assert!(seen > 50, "{seen}");
}

/// What is brushed to be closed in, and what is marked before the first heat, let nothing cool.
#[test]
fn what_is_hot_after_cold_work_on_the_bar_begins_a_heat() {
    for own in DEMOS {
        let worked = worked(&demo(own.file_name));
        for (number, step) in worked.steps.iter().enumerate().filter(|(_, step)| step.bar.is_some() && step.is_hot()) {
            let before = worked.steps[..number].iter().rev().take_while(|other| other.bar == step.bar);
            let cold: Vec<_> = before.clone().take_while(|other| !other.is_hot()).collect();
            let cools = cold.iter().any(|other| other.tasks.iter().any(|task| task.operation != O::Brush));
            let last = before.into_iter().find(|other| other.is_hot());
            if let Some(last) = last.filter(|_| cools) {
                assert!(step.heat >= last.heat + last.needs, "{}: “{}”", own.file_name, step.title);
            }
            let cools_within = step.lay.as_deref().is_some_and(|words| words.contains("let it cool"));
            let is_normalised = step.tasks.iter().any(|task| task.operation == O::Normalise);
            assert!(!cools_within || is_normalised, "{}: no heat is broken off in “{}”", own.file_name, step.title);
        }
    }
}

#[test]
fn a_steel_that_hardens_is_told_how_hot_and_no_hotter() {
    let of = |material: &str| {
        let segments = [
            plain("shank", "200 mm"),
            json!({ "name": "end", "form": { "drawn": { "length": "80 mm", "section": { "square": "9 mm" } } } }),
        ];
        let mut plan = tests::read(&tests::one_bar(&json!({ "square": "12 mm" }), &segments));
        plan.material = Some(material.to_owned());
        let cautions = worked(&plan).steps.into_iter().filter_map(|step| step.caution);
        cautions.collect::<Vec<_>>().join(" ")
    };
    let open = of("carbon steel");
    assert!(
        open.contains("Not above 1070 °C, an orange: it burns. Test a spark where the grade is unknown."),
        "{open}"
    );
    assert!(open.contains("Not below 850 °C, a cherry red"), "{open}");
    let known = of("high-carbon steel");
    assert!(known.contains("Not above 1070 °C, an orange") && !known.contains("spark"), "{known}");
    assert!(of("spring steel").contains("Not above 1100 °C, a yellow"), "{}", of("spring steel"));
    assert!(!of("mild steel").contains("Not above"), "{}", of("mild steel"));
}

#[test]
fn what_hardens_is_never_cooled_in_water_wherever_cooling_is_named() {
    for own in DEMOS {
        let plan = demo(own.file_name);
        if plan.material().quench.may {
            continue;
        }
        let worked = worked(&plan);
        for step in &worked.steps {
            let held = step.held_words(&plan).unwrap_or_default();
            let cooled = held.find(", cooled").map_or("", |at| &held[at..]);
            assert!(cooled.is_empty() || cooled.contains("in air, never in water"), "{}: {held}", own.file_name);
        }
        let tools: String = worked.tools.iter().map(|tool| tool.reason()).collect();
        assert!(!tools.contains("once it is cooled."), "{}: {tools}", own.file_name);
    }
}

#[test]
fn who_stands_in_line_depends_on_what_is_held_while_it_is_cut() {
    let end = json!({ "name": "end", "form": { "drawn": { "length": "12 mm", "section": { "square": "12 mm" } } } });
    let of = |shank: &str, rest: &str| {
        let rest = json!({ "name": "rest", "form": { "hold": { "length": rest } } });
        let worked = on(json!({ "square": "16 mm" }), &[plain("shank", shank), end.clone(), rest]);
        let cut = doing(&worked, O::PartOff).clone();
        let rest = cut.hold.unwrap().part == 2;
        (cut.caution.unwrap_or_default(), lay(doing(&worked, O::PartOff)).to_owned(), rest)
    };
    let (caution, _, is_held) = of("4 mm", "150 mm");
    assert!(is_held && caution.contains("it is the work that comes off"), "{caution}");
    let (caution, lain, is_held) = of("150 mm", "150 mm");
    assert!(!is_held && caution.contains("nobody in line with the offcut"), "the piece is held: {caution}");
    assert!(
        lain.contains("What is left, 150.0 mm, is too short for another") && !lain.contains("next piece"),
        "{lain}"
    );
    let (_, lain, _) = of("150 mm", "400 mm");
    assert!(lain.contains("keep the rest for the next piece"), "{lain}");
    let waste = json!({ "name": "ragged", "form": { "trim": { "length": "20 mm" } } });
    let point = json!({ "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } });
    let worked = on(json!({ "square": "16 mm" }), &[waste, point, plain("shank", "200 mm")]);
    let caution = doing(&worked, O::Trim).caution.clone().unwrap_or_default();
    assert!(caution.contains("nobody in line with the offcut"), "{caution}");
}

/// Between which heats a steel is worked is said once for a bar, and not at every step.
#[test]
fn sparks_are_spoken_of_once_for_each_range_of_heat() {
    for name in ["trowel.plan.json", "dibber.plan.json"] {
        let plan = crate::orders::demo(name);
        let worked = fh_work::work_out(&plan, &fh_core::balance::balance(&plan), &fh_work::Shop::default());
        let stop = |step: &fh_work::WorkedStep| {
            step.caution.as_ref().and_then(|it| it.split("Not above").nth(1).map(str::to_owned))
        };
        let hot = worked.steps.iter().filter(|step| step.is_hot() && step.bar.is_some());
        let said: Vec<String> = hot.filter_map(stop).collect();
        let each: std::collections::BTreeSet<&String> = said.iter().collect();
        assert!(!said.is_empty() && each.len() == said.len(), "{name}: {said:?}");
    }
}
