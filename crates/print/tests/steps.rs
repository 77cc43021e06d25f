//! Step cards, the short table and the gauge strip: what they say, and that nothing is cut off or laid over.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use crate::reading::{texts, words};
use crate::sound::assert_sound;
use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_print::drawing::{Drawing, Item, Point, Text};
use fh_print::paper::{MARGIN_MM, Orientation, Paper};
use fh_print::pen::Pen;
use fh_print::sheets::{Sheet, document, usual_orientation};
use fh_work::{Shop, hot_note, work_out};

/// A hook with a leaf, a boss and a scroll; two are made.
const HOOK: &str = r#"{ "firstheat": 1, "title": "Bean hook", "units": { "length": "mm", "marks": "0.5 mm" }, "material": "mild steel",
  "bars": [ { "name": "hook", "stock": { "square": "12 mm" }, "count": 2, "segments": [
    { "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "60 mm", "width": "25 mm" } }, "thickness": "4 mm" } } },
    { "name": "stem", "form": { "drawn": { "length": "120 mm", "section": { "round": "8 mm" } } } },
    { "name": "leg", "form": { "plain": { "length": "100 mm" } } },
    { "name": "point", "form": { "taper": { "length": "80 mm", "to": { "square": "5 mm" } } } } ] } ] }"#;

const EMPTY: &str = r#"{ "firstheat": 1, "title": "Nothing yet", "units": { "length": "mm", "marks": "1 mm" },
  "bars": [ { "name": "bar", "stock": { "square": "12 mm" }, "segments": [] } ] }"#;

const OWN: &str = r#""work": { "steps": [
  { "bar": 1, "work": [ { "operation": "taper", "parts": ["4"] } ], "title": "Point it", "caution": "Mind the thin end.", "note": "Ask for the small hammer.",
    "reach": [ { "what": "tip", "size": "5 mm", "tolerance": "1 mm" } ] } ] }, "bars""#;

const STEP_SHEETS: [Sheet; 3] = [Sheet::Steps, Sheet::StepList, Sheet::Gauges];

fn read(json: &str) -> Plan {
    fh_core::file::read(json.as_bytes()).unwrap()
}

fn sheet(plan: &Plan, sheet: Sheet, paper: Paper, orientation: Orientation) -> Drawing {
    document(plan, &balance(plan), &[sheet], paper, orientation)
}

fn landscape(json: &str, what: Sheet) -> Drawing {
    sheet(&read(json), what, Paper::A4, Orientation::Landscape)
}

/// A bar of so many parts, each drawn to another size.
fn long_plan(count: usize, length: &str) -> String {
    let part = |number: usize| {
        let side = 8 + number % 4;
        format!(
            r#"{{ "name": "part {number}", "form": {{ "drawn": {{ "length": "{length}", "section": {{ "square": "{side} mm" }} }} }} }}"#
        )
    };
    let parts: Vec<String> = (1..=count).map(part).collect();
    HOOK.split("\"segments\"").next().unwrap().to_owned() + &format!("\"segments\": [ {} ] }} ] }}", parts.join(", "))
}

fn assert_all_sound(json: &str, what: &str) {
    let plan = read(json);
    let balance = balance(&plan);
    // The narrower of each: what fits there fits the others.
    for (paper, orientation) in [(Paper::A4, Orientation::Portrait), (Paper::Letter, Orientation::Landscape)] {
        let drawing = document(&plan, &balance, &STEP_SHEETS, paper, orientation);
        assert_sound(&drawing, &format!("{what}, {paper:?}, {orientation:?}"));
        assert!(fh_print::pdf(&drawing).is_ok(), "{what}");
    }
}

#[test]
fn nothing_is_cut_off_and_no_words_overlap() {
    assert_all_sound(HOOK, "hook");
    assert_all_sound(&HOOK.replace("\"bars\"", OWN), "own steps");
    assert_all_sound(
        &HOOK.replace("\"leaf\", \"form\"", &format!("\"{}\", \"form\"", "long name ".repeat(40))),
        "long names",
    );
    assert_all_sound(&HOOK.replace("\"mm\"", "\"in\"").replace("0.5 mm", "1/32 in"), "inches");
}

#[test]
fn the_steps_of_every_demo_are_sound_on_both_papers() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-plans");
    let files = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let plans: Vec<_> = files.filter(|path| path.to_string_lossy().ends_with(".plan.json")).collect();
    assert!(plans.len() > 10);
    for path in plans {
        let plan = fh_core::file::read(&std::fs::read(&path).unwrap()).unwrap();
        let balance = balance(&plan);
        for paper in Paper::ALL {
            for sheets in [&[Sheet::Steps, Sheet::StepList][..], &[Sheet::Gauges]] {
                let drawing = document(&plan, &balance, sheets, paper, usual_orientation(sheets));
                assert_sound(&drawing, &format!("{}, {paper:?}, {sheets:?}", path.display()));
            }
        }
    }
}

#[test]
fn two_hundred_parts_are_printed() {
    let plan = read(&long_plan(200, "10 mm"));
    let drawing = document(&plan, &balance(&plan), &STEP_SHEETS, Paper::A4, Orientation::Portrait);
    assert_sound(&drawing, "two hundred parts");
}

#[test]
fn cards_and_table_stand_upright_and_what_shows_a_bar_lies() {
    let upright = |sheets: &[Sheet]| usual_orientation(sheets) == Orientation::Portrait;
    assert!(upright(&[Sheet::Steps]) && upright(&[Sheet::StepList, Sheet::Steps]));
    assert!(!upright(&[]) && !upright(&[Sheet::Gauges]) && !upright(&[Sheet::Marks, Sheet::Steps]));
}

#[test]
fn three_simple_cards_stand_on_an_upright_page() {
    let drawing = sheet(&read(&long_plan(8, "60 mm")), Sheet::Steps, Paper::A4, Orientation::Portrait);
    let cards = drawing.pages.iter().map(|page| texts(page).iter().filter(|text| text.content() == "done").count());
    assert!(cards.max() >= Some(4));
}

#[test]
fn cards_are_upright_beside_a_mark_sheet_that_lies() {
    let plan = read(HOOK);
    let sheets = [Sheet::Marks, Sheet::Steps];
    let drawing = document(&plan, &balance(&plan), &sheets, Paper::A4, usual_orientation(&sheets));
    let lies = |page: &fh_print::drawing::Page| page.orientation == Some(Orientation::Landscape);
    assert!(lies(&drawing.pages[0]) && drawing.pages.last().is_some_and(|last| !lies(last)));
}

#[test]
fn a_reason_stands_once_with_all_its_steps() {
    let plan = read(HOOK);
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    let said = words(&sheet(&plan, Sheet::Steps, Paper::A4, Orientation::Portrait)).replace('\n', " ");
    let reasons = worked.reasons();
    assert!(!reasons.is_empty());
    for reason in reasons {
        assert!(said.contains(&reason), "{reason} in {said}");
        assert_eq!(said.matches(reason.split_once(": ").unwrap().1).count(), 1, "{reason}");
    }
}

#[test]
fn what_the_smith_knows_is_printed_beside_the_step() {
    let mut plan = read(&HOOK.replace("\"bars\"", OWN));
    let steps = plan.work.steps.as_mut().unwrap();
    steps[0] = steps[0].clone().accepting("wrong-order", Some("The tip is my handle."));
    let said = words(&sheet(&plan, Sheet::Steps, Paper::A4, Orientation::Portrait));
    assert!(said.contains("I know\nThe tip is my handle."), "{said}");
}

#[test]
fn the_heat_of_the_hot_sizes_and_the_loss_in_the_fire_are_told_once() {
    let plan = read(HOOK);
    let balance = balance(&plan);
    let worked = work_out(&plan, &balance, &Shop::default());
    let note = hot_note(&plan).unwrap();
    let loss = &worked.scale[0].reason();
    for of in [Sheet::Steps, Sheet::StepList] {
        let said = words(&sheet(&plan, of, Paper::A4, Orientation::Portrait)).replace('\n', " ");
        assert_eq!(said.matches(&note).count(), 1, "{note} in {said}");
        assert_eq!(said.matches(loss.as_str()).count(), 1, "{loss} in {said}");
    }
}

#[test]
fn a_band_says_its_bar_in_full() {
    let said = words(&sheet(&read(HOOK), Sheet::Steps, Paper::A4, Orientation::Portrait));
    assert!(said.contains("hook: 12 mm square, make 2\n"), "{said}");
}

#[test]
fn absurd_sizes_are_printed() {
    assert_all_sound(&long_plan(2, "90000 m"), "a very long bar");
    assert_all_sound(&HOOK.replace("12 mm", "0.001 mm"), "a very thin bar");
    assert_all_sound(&HOOK.replace("12 mm", "30 m"), "a very thick bar");
    assert_all_sound(&HOOK.replace("80 mm", "900000000000 mm"), "no number");
    let words = "mind the thin end ".repeat(400);
    let own = OWN
        .replace("Mind the thin end.", &words)
        .replace("Ask for the small hammer.", &words)
        .replace("Point it", &words);
    assert_all_sound(&HOOK.replace("\"bars\"", &own), "very many words");
    let tolerance = OWN.replace("tip", "square").replace("1 mm", "900 mm");
    assert_all_sound(&HOOK.replace("\"bars\"", &tolerance), "a very wide notch");
}

#[test]
fn an_empty_plan_gives_sheets_that_say_so() {
    let mut no_bar = read(EMPTY);
    no_bar.bars.clear();
    let none = ["This plan has no bar yet.", "This plan has no bar yet.", "No size of this piece asks for a gauge."];
    for (of, wanted) in STEP_SHEETS.into_iter().zip(none) {
        let drawing = sheet(&no_bar, of, Paper::A4, Orientation::Landscape);
        assert!(words(&drawing).contains(wanted), "{}", words(&drawing));
        assert_sound(&drawing, of.name());
        assert_sound(&landscape(EMPTY, of), of.name());
    }
    let none = HOOK.replace("\"bars\"", r#""work": { "steps": [] }, "bars""#);
    assert!(words(&landscape(&none, Sheet::Steps)).contains("This plan has no steps yet."));
}

#[test]
fn every_step_has_its_card() {
    let plan = read(HOOK);
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    let said = words(&landscape(HOOK, Sheet::Steps));
    for step in &worked.steps {
        assert!(said.contains(&step.title), "{} in {said}", step.title);
        for size in &step.sizes {
            // The unit stands over the column.
            let bare = |words: &str| words.strip_suffix(" mm").unwrap_or(words).to_owned();
            assert!(said.contains(&bare(&size.cold)), "{} of {} in {said}", size.cold, step.title);
            assert!(size.hot.as_ref().is_none_or(|hot| said.contains(&bare(hot))), "{said}");
        }
        let heat = match step.needs {
            0 => "cold".to_owned(),
            1 => format!("heat {}", step.heat),
            2 => format!("heats {} and {}", step.heat, step.heat + 1),
            needs => format!("heats {} to {}", step.heat, step.heat + needs - 1),
        };
        assert!(said.contains(&heat), "{heat} in {said}");
    }
    assert_eq!(said.lines().filter(|line| *line == "done").count(), worked.steps.len());
    for words in
        ["hook: 12 mm square, make 2", "The whole piece", "Have ready, for these steps", "hatched: what the step works"]
    {
        assert!(said.contains(words), "{words} in {said}");
    }
}

#[test]
fn a_card_is_not_broken_over_two_pages() {
    let drawing = landscape(HOOK, Sheet::Steps);
    for page in &drawing.pages {
        let said: Vec<&str> = texts(page).into_iter().map(Text::content).collect();
        // What stands under the head of a card of a bar: the heat that it is worked at.
        let count = |wanted: &dyn Fn(&str) -> bool| said.iter().filter(|said| wanted(said)).count();
        let hot = count(&|said| said.starts_with("heat ") || said.starts_with("heats "));
        let told = count(&|said| said.starts_with("Hot: ") || said.starts_with("Hot at first: "));
        let straightened = count(&|said| said.starts_with("Straighten "));
        assert_eq!(hot, told + straightened, "{said:?}");
    }
}

#[test]
fn the_short_form_tells_every_step_in_fewer_pages() {
    let plan = read(HOOK);
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    let (short, long) = (landscape(HOOK, Sheet::StepList), landscape(HOOK, Sheet::Steps));
    assert!(short.pages.len() < long.pages.len());
    let said = words(&short);
    let lines: Vec<&str> = said.lines().collect();
    for number in 1..=worked.steps.len() {
        assert!(lines.contains(&number.to_string().as_str()), "{number} in {said}");
    }
    let figures: Vec<&str> = worked.steps[0].marks.iter().map(|mark| mark.at.trim_end_matches(" mm")).collect();
    assert!(figures.len() > 2 && said.replace('\n', " ").contains(&figures.join(", ")), "{figures:?} in {said}");
}

#[test]
fn the_smiths_own_words_are_printed() {
    let json = HOOK.replace("\"bars\"", OWN);
    let said = words(&landscape(&json, Sheet::Steps));
    for own in ["Point it", "Mind the thin end.", "Ask for the small hammer.", "tip", "your own order"] {
        assert!(said.contains(own), "{own} in {said}");
    }
}

#[test]
fn findings_of_the_order_stand_before_the_first_card() {
    let json = HOOK.replace("\"bars\"", OWN);
    let plan = read(&json);
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    assert!(!worked.findings.is_empty());
    for of in [Sheet::Steps, Sheet::StepList] {
        let said = words(&landscape(&json, of));
        let found = said.find("Problems with this order").expect("the findings");
        assert!(found < said.find("Point it").expect("the card"), "{said}");
    }
}

#[test]
fn a_caution_has_a_sign_that_needs_no_color() {
    let json = HOOK.replace("\"bars\"", OWN);
    for of in [Sheet::Steps, Sheet::StepList] {
        assert!(words(&landscape(&json, of)).lines().any(|line| line == "!"));
    }
}

/// The corners of the strips on a page: what is outlined in marking lines with more corners than a box.
fn strips(drawing: &Drawing) -> Vec<Vec<Point>> {
    let outline = |item: &Item| match item {
        Item::Polygon { points, fill: None, pen: Some(Pen::MarkLine) } if points.len() > 4 => Some(points.clone()),
        _ => None,
    };
    drawing.pages.iter().flat_map(|page| page.items.iter().filter_map(outline)).collect()
}

#[test]
fn each_gauge_has_its_notches_at_full_scale() {
    let plan = read(HOOK);
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    assert!(!worked.gauges.is_empty());
    let mut wanted: Vec<f64> =
        worked.gauges.iter().flat_map(|gauge| gauge.go_mm.into_iter().chain([gauge.no_go_mm])).collect();
    wanted.extend(worked.gauges.iter().filter_map(|gauge| gauge.hot_mm));
    for paper in Paper::ALL {
        let drawing = sheet(&plan, Sheet::Gauges, paper, Orientation::Landscape);
        // Down into a notch, along its bottom, and up again.
        let bottoms = strips(&drawing).into_iter().flat_map(|strip| {
            let deep = strip
                .windows(4)
                .filter(|four| four[0].y < four[1].y && four[1].y == four[2].y && four[3].y == four[0].y);
            deep.map(|four| four[2].x - four[1].x).collect::<Vec<_>>()
        });
        let found: Vec<f64> = bottoms.collect();
        assert_eq!(found.len(), wanted.len(), "{found:?}");
        for width in &wanted {
            assert!(found.iter().any(|found| (found - width).abs() < 1e-6), "{width} in {found:?}");
        }
        let said = words(&drawing);
        for words in ["go\n", "no go\n", "hot\n"] {
            assert!(said.contains(words), "{words} in {said}");
        }
        assert!(strips(&drawing).iter().flatten().all(|point| point.x >= MARGIN_MM - 1e-6));
    }
}

#[test]
fn a_length_says_from_what_it_follows() {
    let plan = read(HOOK);
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    let said = words(&sheet(&plan, Sheet::Steps, Paper::A4, Orientation::Portrait)).replace('\n', " ");
    let sizes: Vec<_> =
        worked.steps.iter().flat_map(|step| &step.sizes).filter(|size| size.follows.is_some()).collect();
    assert!(!sizes.is_empty());
    for size in sizes {
        let (follows, range) = (size.follows.as_ref().unwrap(), size.tolerance.as_ref().unwrap());
        assert!(said.contains(&format!("follows from {follows}")), "{size:?} in {said}");
        assert!(said.contains(range.strip_suffix(" mm").unwrap_or(range)), "{size:?} in {said}");
    }
}

#[test]
fn what_is_too_thin_for_a_notch_is_left_to_the_caliper() {
    let thin = r#"{ "firstheat": 1, "units": { "length": "in", "marks": "1/32 in" }, "bars": [{ "stock": { "square": "1/2 in" }, "segments": [
        { "name": "rest", "form": { "plain": { "length": "4 in" } } },
        { "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "2 in", "width": "1 in" } }, "thickness": "1/16 in" } } } ] }] }"#;
    let plan = read(thin);
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    let leaf = worked.gauges.iter().find(|gauge| gauge.what == "leaf: thickness").unwrap();
    assert!(leaf.caliper && leaf.no_go_mm < 2.0);
    let said = words(&sheet(&plan, Sheet::Gauges, Paper::A4, Orientation::Landscape));
    let said = said.replace('\n', " ").replace('⁄', "/");
    assert!(
        said.contains("with the caliper: ") && said.contains("leaf: thickness 1/16 in, 3/64 in to 5/64 in"),
        "{said}"
    );
    let ready = words(&sheet(&plan, Sheet::Steps, Paper::A4, Orientation::Portrait)).replace('\n', " ");
    assert!(ready.contains("1⁄16 in (caliper): "), "{ready}");
}
