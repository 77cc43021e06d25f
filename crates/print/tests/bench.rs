//! The bench sheet: one leaf to forge from.

#![allow(clippy::unwrap_used, reason = "tests")]

use crate::reading::{texts, words};
use crate::sound::assert_sound;
use fh_core::balance::{Balance, balance};
use fh_core::cautions::cautions;
use fh_core::plan::{Operation, Plan, PlanUnit};
use fh_print::drawing::{Drawing, Item};
use fh_print::paper::{Orientation, Paper};
use fh_print::pen::{Gray, Pen};
use fh_print::sheets::{Sheet, document, usual_orientation};
use fh_work::{Shop, Worked, work_out};

/// The em that nothing on a bench sheet is smaller than, in mm; a step has at least the second.
const LEAST_MM: [f64; 2] = [3.4, 4.1];

fn read(json: &str) -> Plan {
    fh_core::file::read(json.as_bytes()).unwrap()
}

fn demos() -> Vec<(String, Plan)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-plans");
    let files = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path());
    let plans = files.filter(|path| path.to_string_lossy().ends_with(".plan.json"));
    let read = |path: std::path::PathBuf| {
        let plan = fh_core::file::read(&std::fs::read(&path).unwrap()).unwrap();
        (path.file_name().unwrap().to_string_lossy().into_owned(), plan)
    };
    plans.map(read).collect()
}

fn printed(plan: &Plan, sheets: &[Sheet], paper: Paper) -> Drawing {
    document(plan, &balance(plan), sheets, paper, usual_orientation(sheets))
}

fn bench(plan: &Plan, paper: Paper) -> Drawing {
    printed(plan, &[Sheet::Bench], paper)
}

fn worked(plan: &Plan, balance: &Balance) -> Worked {
    work_out(plan, balance, &Shop::default())
}

/// Everything a drawing says, in one line without spaces.
fn said(drawing: &Drawing) -> String {
    joined(&words(drawing))
}

fn joined(words: &str) -> String {
    fh_print::typeset::printable(words).chars().filter(|letter| !letter.is_whitespace()).collect()
}

/// A size without the plan's own unit, and without the tenth of a whole number.
fn bare(cold: &str, plan: &Plan) -> String {
    match plan.units.length {
        PlanUnit::Millimeter => cold.replace(" mm", "").split(' ').map(|word| word.trim_end_matches(".0")).collect(),
        PlanUnit::Inch => cold.replace(" in", ""),
    }
}

fn parts(plan: &Plan) -> usize {
    plan.bars.iter().map(|bar| bar.flat().len()).sum()
}

#[test]
fn every_demo_of_one_bar_is_forged_from_one_leaf() {
    let mut leaves = 0;
    for (name, plan) in demos() {
        for paper in Paper::ALL {
            let drawing = bench(&plan, paper);
            assert_sound(&drawing, &format!("{name}, {paper:?}"));
            if plan.bars.len() == 1 && parts(&plan) <= 20 {
                assert!(drawing.pages.len() <= 2, "{name} on {paper:?}: {} pages", drawing.pages.len());
                leaves += 1;
            }
        }
    }
    assert!(leaves >= 20, "{leaves}");
}

#[test]
fn it_stands_upright_also_beside_sheets_that_lie() {
    let (_, plan) = demos().into_iter().find(|(name, _)| name.starts_with("gate-hook")).unwrap();
    let drawing = printed(&plan, &Sheet::USUAL, Paper::A4);
    assert_sound(&drawing, "marks and bench");
    let lies: Vec<Orientation> = drawing.pages.iter().map(|page| drawing.lies(page)).collect();
    let marks = lies.iter().take_while(|lies| **lies == Orientation::Landscape).count();
    assert!(marks > 0 && lies[marks..].iter().all(|lies| *lies == Orientation::Portrait), "{lies:?}");
    assert!((1..=2).contains(&(lies.len() - marks)), "{lies:?}");
    let all = words(&drawing);
    for number in 1..=lies.len() {
        assert!(all.contains(&format!("page {number} of {}", lies.len())), "{all}");
    }
}

#[test]
fn every_step_is_on_it_with_its_part_its_sizes_and_its_heat() {
    for (name, plan) in demos() {
        let balance = balance(&plan);
        let all = said(&bench(&plan, Paper::A4));
        let steps = worked(&plan, &balance).steps;
        assert!(steps.len() > 5, "{name}");
        for (number, step) in steps.iter().enumerate() {
            let title = joined(&step.title);
            if step.tasks.iter().any(|task| task.joint.is_some()) {
                // Joints that are made alike share a line.
                let name = title.split_once('“').map_or(title.as_str(), |(_, name)| name);
                assert!(all.contains(name), "{name} in {all}");
                continue;
            }
            let heat = joined(&step.warmth().words().replace("heats ", "").replace("heat ", "").replace(" to ", "–"));
            let line = format!("{}{heat}{title}", number + 1);
            assert!(all.contains(&line), "{name}: {line} in {all}");
            for size in &step.sizes {
                let figure = joined(&bare(&size.cold, &plan));
                assert!(all.contains(&figure), "{name}, step {}: {} {figure} in {all}", number + 1, size.what);
            }
        }
        assert!(all.contains(&joined(&worked(&plan, &balance).heats_words())), "{name}");
    }
}

#[test]
fn it_says_where_the_tool_goes_and_joints_alike_once_and_the_cut_once() {
    let demo = |start: &str| demos().into_iter().find(|(name, _)| name.starts_with(start)).unwrap().1;
    let hook = words(&bench(&demo("gate-hook"), Paper::A4));
    for told in ["Fuller on the “stem” side of the mark", "“set-back” goes thin: tool on its side."] {
        assert!(joined(&hook).contains(&joined(told)), "{told} in {hook}");
    }
    assert!(
        hook.contains("cut 9 1⁄8 in · make 2")
            && joined(&hook).contains(&joined("Scale may take 1⁄8 in more of the bar.")),
        "{hook}"
    );
    assert_eq!(hook.matches("9 1⁄8").count(), 3, "over the strip, at its mark, in the table: {hook}");
    let fire = "Each step on both before the next, both in the fire";
    assert!(joined(&hook).contains(&joined(fire)), "{hook}");
    let stand = words(&bench(&demo("pot-stand"), Paper::A4));
    let fits = "Fit “leg 1 to ring”, “leg 2 to ring” and “leg 3 to ring”";
    assert!(joined(&stand).contains(&joined(fits)) && stand.matches("Fit “").count() == 1, "{stand}");
    let bevel = "Bevel its near side, the outside of the bend; “arc 1” on its far side, the inside of the bend.";
    let other = "Bevel its far side, the outside of the bend; “arc 1” on its near side, the inside of the bend.";
    assert!([bevel, other].iter().any(|told| joined(&stand).contains(&joined(told))), "{stand}");
    let lifter = words(&bench(&demo("cloche-lifter"), Paper::A4));
    assert!(joined(&lifter).contains(&joined("a quarter too far, then back while you push the ends together.")));
    assert!(!joined(&lifter).contains(&joined("at the jaws of the vice")), "that is on its card");
}

/// What costs the piece where it is forgotten: another heat than most, a heat that serves more steps, what is cooled before it is
/// held, the length of a bar before it is scarfed, and the point of a leaf's blank.
#[test]
fn what_only_a_card_said_and_spoils_the_piece_is_on_it() {
    let mut seen = [0; 4];
    for (name, plan) in demos() {
        let all = said(&bench(&plan, Paper::A4));
        let steps = worked(&plan, &balance(&plan)).steps;
        let ranges: Vec<Option<String>> = steps.iter().map(|step| step.heat_range(&plan)).collect();
        let count = |range: &Option<String>| ranges.iter().filter(|other| *other == range).count();
        let usual = ranges.iter().filter(|range| range.is_some()).map(count).max().unwrap_or(0);
        let has = |words: &str| all.contains(&joined(words));
        for (step, range) in steps.iter().zip(&ranges) {
            let Some(words) = range.as_ref().filter(|_| count(range) < usual) else { continue };
            // What it looks like, where the fire is as hot as for most steps.
            let down = words.split(", down to ").nth(1).unwrap();
            let looks = down.split(", ").next().unwrap();
            assert!(
                has(&format!("own to {down}.")) || has(&format!("Down to {looks}.")),
                "{name}, {}: {words} in {all}",
                step.title
            );
            seen[0] += 1;
        }
        for step in steps.iter().filter(|step| step.hold.is_some_and(|hold| hold.cool_first)) {
            let hold = step.hold.unwrap();
            let (by, cooled) = (if hold.by_hand { " by hand" } else { "" }, hold.cool_words(&plan));
            assert!(!cooled.is_empty() && has(&format!("”{by}{cooled}.")), "{name}, {}", step.title);
            seen[1] += 1;
        }
        for step in steps.iter().filter(|step| step.tasks.iter().any(|task| task.operation == Operation::Scarf)) {
            assert!(step.check.as_ref().is_none_or(|check| has(check)), "{name}, {}", step.title);
            seen[2] += 1;
        }
        for pair in steps.windows(2).enumerate() {
            let (number, [one, next]) = pair else { continue };
            let begins = one.is_hot()
                && steps[..number].iter().all(|before| before.heat + before.needs.saturating_sub(1) < one.heat);
            let is_next = next.is_hot() && next.heat == one.heat && next.bar == one.bar && !next.parts().is_empty();
            if begins && one.needs == 1 && is_next {
                let after = steps[number + 1..].iter().take_while(|step| !step.is_hot() || step.heat == one.heat);
                let last = after.filter(|step| step.is_hot() && !step.parts().is_empty()).count();
                let told = format!("Heat with {}{}", number + 2, if last == 1 { "." } else { "" });
                assert!(has(&told), "{name}, {}: {told} in {all}", one.title);
                seen[3] += 1;
            }
        }
    }
    assert!(seen.iter().all(|seen| *seen > 1), "{seen:?}");
    let (_, hook) = demos().into_iter().find(|(name, _)| name.starts_with("gate-hook")).unwrap();
    assert!(
        said(&bench(&hook, Paper::A4)).contains(&joined("Draw its end to a short point first, and narrow its root"))
    );
}

#[test]
fn each_piece_of_a_bar_has_a_box_at_each_step() {
    let (_, plan) = demos().into_iter().find(|(name, _)| name.starts_with("gate-hook")).unwrap();
    let steps = worked(&plan, &balance(&plan)).steps.len();
    let boxes = |pieces: u32| {
        let mut plan = plan.clone();
        plan.bars[0].count = Some(pieces);
        let drawing = bench(&plan, Paper::A4);
        let is_box = |item: &&Item| {
            matches!(item, Item::Polygon { points, fill: None, pen: Some(Pen::Frame) }
            if points.len() == 4 && (points[2].x - points[0].x - 4.6).abs() < 1e-6)
        };
        drawing.pages.iter().flat_map(|page| &page.items).filter(is_box).count()
    };
    assert_eq!([boxes(1), boxes(3), boxes(9)], [steps, 3 * steps, steps]);
}

#[test]
fn every_mark_hole_and_slit_is_on_it_as_on_the_mark_sheet() {
    for (name, plan) in demos() {
        let balance = balance(&plan);
        let all = said(&bench(&plan, Paper::Letter));
        for bar in &balance.bars {
            for at in 0..bar.segments.len() {
                let shop = bar.block_shop(at).unwrap()[1];
                assert!(all.contains(&joined(&shop.text())), "{name}: {} in {all}", shop.text());
            }
            let laid = bar.laid_off();
            for hole in &laid.holes {
                assert!(all.contains(&joined(&hole.shop.text())), "{name}: hole {}", hole.shop.text());
            }
        }
        for (bar, own) in plan.bars.iter().zip(&balance.bars) {
            for slit in own.laid_off().slits {
                let line = fh_core::describe::slit_line_words(plan.units.length, bar, own, slit.segment);
                assert!(line.is_none_or(|line| all.contains(&joined(&line))), "{name}");
            }
        }
    }
}

#[test]
fn every_stop_and_every_caution_is_on_it() {
    for (name, plan) in demos() {
        let balance = balance(&plan);
        let all = said(&bench(&plan, Paper::A4));
        let warned = cautions(&plan, &balance);
        let own = warned.stops.iter().map(String::as_str).chain(warned.rating).chain(warned.own);
        let steps = worked(&plan, &balance).steps;
        let steps = steps.iter().filter_map(|step| step.caution.as_deref());
        for words in own.chain(steps) {
            assert!(all.contains(&joined(words)), "{name}: {words} in {all}");
        }
        assert!(all.contains(&joined(warned.general[5])) || all.contains("localcodesfirst"), "{name}: {all}");
    }
}

#[test]
fn a_step_with_a_caution_has_a_sign_and_a_heat_begins_with_a_heavier_line() {
    let (_, plan) = demos().into_iter().find(|(name, _)| name.starts_with("gate-hook")).unwrap();
    let balance = balance(&plan);
    let steps = worked(&plan, &balance).steps;
    let drawing = bench(&plan, Paper::A4);
    let signs = drawing.pages.iter().flat_map(texts).filter(|text| text.content() == "!").count();
    // One before all of them, where they are told.
    assert_eq!(signs, 1 + steps.iter().filter(|step| step.caution.is_some()).count());
    let width = Paper::A4.printable(Orientation::Portrait).width();
    let heavy = drawing.pages.iter().flat_map(|page| &page.items).filter(|item| match item {
        Item::Line { from, to, pen: Pen::CutLine } => (to.x - from.x - width).abs() < 1e-6,
        _ => false,
    });
    let hot = steps.iter().filter(|step| step.is_hot());
    let mut last = 0;
    let begun = hot.filter(|step| step.heat != std::mem::replace(&mut last, step.heat + step.needs - 1)).count();
    assert_eq!(heavy.count(), begun);
}

#[test]
fn nothing_on_it_is_too_small_for_arms_length_and_all_of_it_is_black_or_dark() {
    for (name, plan) in demos() {
        for paper in Paper::ALL {
            let drawing = bench(&plan, paper);
            for text in drawing.pages.iter().flat_map(texts) {
                assert!(text.size_mm >= LEAST_MM[0] - 1e-9, "{name}: {} mm: {}", text.size_mm, text.content());
                let is_dark = text.gray.lightness() <= Gray::DARK.lightness() || text.gray == Gray::WHITE;
                assert!(is_dark, "{name}: {}", text.content());
            }
        }
        let steps = worked(&plan, &balance(&plan)).steps;
        let drawing = bench(&plan, Paper::Letter);
        let starts = |step: &str, text: &str| !text.is_empty() && joined(step).starts_with(&joined(text));
        for text in drawing.pages.iter().flat_map(texts).filter(|text| text.content().len() > 8) {
            if steps.iter().any(|step| starts(&step.title, text.content())) {
                assert!(text.size_mm >= LEAST_MM[1] - 1e-9, "{name}: {} mm: {}", text.size_mm, text.content());
            }
        }
    }
}

#[test]
fn the_strip_is_at_full_scale_where_it_fits_and_says_so_where_it_does_not() {
    let bar = |length: &str| {
        read(&format!(
            r#"{{ "firstheat": 1, "title": "Peg", "bars": [{{ "name": "peg", "stock": {{ "square": "10 mm" }}, "segments": [
                {{ "name": "point", "form": {{ "taper": {{ "length": "40 mm", "to": "point" }} }} }},
                {{ "name": "shank", "form": {{ "plain": {{ "length": "{length}" }} }} }} ] }}] }}"#
        ))
    };
    let short = words(&bench(&bar("120 mm"), Paper::A4));
    assert!(short.contains("Full scale: lay the bar on it") && !short.contains("Not at full scale"), "{short}");
    let long = words(&bench(&bar("500 mm"), Paper::A4));
    assert!(long.contains("Not at full scale, 1 : "), "{long}");
}

#[test]
fn several_bars_have_their_strips_and_steps_each_under_its_band() {
    for (name, plan) in demos().into_iter().filter(|(_, plan)| plan.bars.len() > 1) {
        let drawing = bench(&plan, Paper::A4);
        assert_sound(&drawing, &name);
        let all = words(&drawing);
        for (index, bar) in plan.bars.iter().enumerate() {
            let band = format!("bar {} of {}: {}", index + 1, plan.bars.len(), bar.name);
            assert!(all.contains(&fh_print::typeset::printable(&band)), "{name}: {band} in {all}");
        }
        let short = printed(&plan, &[Sheet::StepList], Paper::A4).pages.len();
        let marks = printed(&plan, &[Sheet::Marks], Paper::A4).pages.len();
        assert!(drawing.pages.len() < short + marks, "{name}: {} pages", drawing.pages.len());
    }
}

#[test]
fn an_empty_plan_many_parts_and_absurd_sizes_are_printed() {
    let bare = r#"{ "firstheat": 1, "title": "Bar", "bars": [{ "name": "bar", "stock": { "square": "12 mm" }, "segments": [] }] }"#;
    let mut empty = read(bare);
    empty.bars.clear();
    assert!(words(&bench(&empty, Paper::A4)).contains("This plan has no bar yet."));
    assert!(words(&bench(&read(bare), Paper::A4)).contains("Nothing is marked on this bar yet."));
    let many = |count: usize, length: &str| {
        let part = |number: usize| {
            let side = 8 + number % 4;
            format!(
                r#"{{ "name": "part {number}", "form": {{ "drawn": {{ "length": "{length}", "section": {{ "square": "{side} mm" }} }} }} }}"#
            )
        };
        let parts: Vec<String> = (1..=count).map(part).collect();
        format!(
            r#"{{ "firstheat": 1, "title": "Long", "bars": [{{ "name": "{}", "stock": {{ "square": "12 mm" }}, "segments": [ {} ] }}] }}"#,
            "long name ".repeat(count),
            parts.join(", ")
        )
    };
    for (count, length) in [(60, "10 mm"), (3, "900 m"), (3, "0.01 mm"), (20, "55 mm")] {
        for paper in Paper::ALL {
            let drawing = bench(&read(&many(count, length)), paper);
            assert_sound(&drawing, &format!("{count} parts of {length}"));
            assert!(fh_print::pdf(&drawing).is_ok());
        }
    }
}
