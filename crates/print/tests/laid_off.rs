//! What is laid off on the cold bar: mark sheet and first card show the same side of it, and every place is a number on both.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use crate::reading::{extent, texts, words};
use fh_core::balance::{Balance, balance};
use fh_core::metal::View;
use fh_core::plan::Plan;
use fh_print::drawing::{Drawing, Item, Point};
use fh_print::paper::{Orientation, Paper};
use fh_print::pen::Pen;
use fh_print::sheets::{Sheet, document, mark_sheet};
use fh_work::{LaidPlace, Shop, WorkedStep, work_out};

fn folder() -> String {
    format!("{}/../../demo-plans", env!("CARGO_MANIFEST_DIR"))
}

fn named(name: &str) -> Plan {
    fh_core::file::read(&std::fs::read(format!("{}/{name}.plan.json", folder())).unwrap()).unwrap()
}

/// Every demo with its name.
fn demos() -> Vec<(String, Plan)> {
    let files = std::fs::read_dir(folder()).unwrap().map(|file| file.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<String> = files.filter_map(|file| Some(file.strip_suffix(".plan.json")?.to_owned())).collect();
    names.sort();
    assert!(names.len() > 10, "{names:?}");
    names.into_iter().map(|name| (name.clone(), named(&name))).collect()
}

fn sheet(plan: &Plan, balance: &Balance) -> Drawing {
    mark_sheet(plan, balance, Paper::A4, Orientation::Landscape)
}

fn cards(plan: &Plan, balance: &Balance) -> Drawing {
    document(plan, balance, &[Sheet::Steps], Paper::A4, Orientation::Portrait)
}

fn marking(plan: &Plan, balance: &Balance) -> Vec<WorkedStep> {
    work_out(plan, balance, &Shop::default()).steps.into_iter().filter(|step| step.marked_view.is_some()).collect()
}

/// Everything said, in one line.
fn line(drawing: &Drawing) -> String {
    words(drawing).replace('\n', " ")
}

/// How far apart the upper and lower edge of the bar are in each row of the strip.
fn row_heights(drawing: &Drawing) -> Vec<f64> {
    let level = drawing.pages.iter().flat_map(|page| &page.items).filter_map(|item| match item {
        Item::Line { from, to, pen: Pen::Outline } if (from.y - to.y).abs() < 1e-9 => Some(from.y),
        _ => None,
    });
    level.collect::<Vec<f64>>().chunks(2).map(|pair| (pair[1] - pair[0]).abs()).collect()
}

#[test]
fn sheet_and_card_show_the_same_side_and_name_it_alike_for_every_demo() {
    for (demo, plan) in demos() {
        let balance = balance(&plan);
        let (sheet, said) = (sheet(&plan, &balance), line(&cards(&plan, &balance)));
        let steps = marking(&plan, &balance);
        let marked: Vec<_> = balance.bars.iter().filter(|bar| bar.segments.len() > 1).collect();
        assert_eq!(steps.len(), marked.len(), "{}", demo);
        for (step, bar) in steps.iter().zip(&marked) {
            let view = bar.marked_view();
            let (from, side, up) = match view {
                View::Top => ("seen from above", "top", "top"),
                View::Side => ("seen from where you stand", "near side", "near side"),
            };
            // On the sheet, on the card, and where the cards are explained.
            let heading = line(&sheet);
            assert!(
                heading.contains(from) && heading.contains(&format!("on every card it is the {side}.")),
                "{heading}"
            );
            assert_eq!(step.marked_view, Some(view), "{}", demo);
            assert_eq!(step.up.as_deref(), Some(up), "{}", demo);
            assert!(step.lay.as_deref().unwrap().contains(&format!("that side is the {side}")), "{:?}", step.lay);
            assert!(said.contains(&format!("the punched side is the {side}")), "{said}");
            // It is as wide on the sheet as that side of the bar.
            let [low, high] = bar.stock_edges_mm(view);
            assert!(row_heights(&sheet).iter().any(|height| (height - (high - low)).abs() < 1e-6), "{}", demo);
        }
    }
}

#[test]
fn a_flat_is_marked_on_its_wide_side_on_sheet_and_card() {
    let plan = named("boot-scraper");
    let balance = balance(&plan);
    let sheet = sheet(&plan, &balance);
    assert!(row_heights(&sheet).iter().all(|height| (height - 40.0).abs() < 1e-6), "{:?}", row_heights(&sheet));
    assert!(line(&sheet).contains("wide side up"), "{}", line(&sheet));
    // On the first card it is seen from above too, and is no thinner there than 40 mm are to its 480 mm.
    let step = marking(&plan, &balance).remove(0);
    let cards = cards(&plan, &balance);
    let page = cards.pages.iter().find(|page| texts(page).iter().any(|text| text.content() == step.title)).unwrap();
    let start = page.items.iter().position(|item| matches!(item, Item::Text(text) if text.content() == step.title));
    let on_card = &page.items[start.unwrap()..];
    let view = on_card.iter().find_map(|item| match item {
        Item::Text(text) if ["above", "side"].contains(&text.content()) => Some(text.content()),
        _ => None,
    });
    assert_eq!(view, Some("above"));
    let bars = on_card.iter().filter_map(|item| match item {
        Item::Polygon { points, pen: Some(Pen::MarkLine), fill: None } => Some(size(points)),
        _ => None,
    });
    let parts: Vec<[f64; 2]> = bars.take(7).collect();
    let long: f64 = parts.iter().map(|part| part[0]).sum();
    assert!(parts.iter().all(|part| part[1] / long >= 40.0 / 480.0 - 1e-3), "{parts:?}");
}

/// How long and how high an outline is on paper.
fn size(points: &[Point]) -> [f64; 2] {
    let reach = |of: fn(&Point) -> f64| {
        let (low, high) = points
            .iter()
            .map(of)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)));
        high - low
    };
    [reach(|point| point.x), reach(|point| point.y)]
}

#[test]
fn every_hole_and_every_slit_is_a_number_on_the_strip_in_the_table_and_on_the_first_card() {
    let mut holes = 0;
    for (demo, plan) in demos() {
        let balance = balance(&plan);
        let sheet = sheet(&plan, &balance);
        let count = |wanted: &str| {
            sheet.pages.iter().flat_map(|page| texts(page)).filter(|text| text.content() == wanted).count()
        };
        for (bar, step) in balance.bars.iter().filter(|bar| bar.segments.len() > 1).zip(marking(&plan, &balance)) {
            let laid = bar.laid_off();
            assert_eq!(step.laid.len(), laid.holes.len() + laid.slits.len(), "{}", demo);
            for hole in &laid.holes {
                holes += 1;
                let at = fh_print::typeset::printable(&hole.shop.text());
                assert!(count(&at) >= 2, "{}: {at} on strip and table", demo);
                let on_card = step.laid.iter().any(|line| {
                    line.at == hole.shop.text()
                        && matches!(&line.place, LaidPlace::Hole { at_mm, .. } if (at_mm - hole.shop.mm()).abs() < 1e-9)
                });
                assert!(on_card, "{}: {at} in {:?}", demo, step.laid);
                assert!(count("hole") >= 2, "{}", demo);
            }
            let said = line(&cards(&plan, &balance));
            for told in &step.laid {
                assert!(said.contains(&fh_print::typeset::printable(&told.at)), "{told:?} in {said}");
            }
        }
    }
    assert!(holes > 5, "{holes}");
}

#[test]
fn a_root_hole_has_one_place_on_every_sheet() {
    let plan = named("weeding-fork");
    let balance = balance(&plan);
    let bar = &balance.bars[0];
    let hole = bar.laid_off().holes[0].clone();
    // Ø 6 mm up to the mark at 46.3 mm: its middle is 43.3 mm from the tip, to the next mm 43.
    assert_eq!(hole.shop.text(), "43 mm");
    let sheet = line(&sheet(&plan, &balance));
    assert!(
        sheet.contains("slit line 10.0 mm from the far edge, from the tip of the tines to the hole at 43 mm"),
        "{sheet}"
    );
    let steps = work_out(&plan, &balance, &Shop::default()).steps;
    let measured = |title: &str| steps.iter().find(|step| step.title.starts_with(title)).unwrap().measure.clone();
    assert_eq!(
        measured("Drill the root"),
        ["the middle of the root hole in “tines”: its punch mark, 43 mm from the tip of the tines"]
    );
    assert_eq!(
        measured("Split “tines”"),
        ["the end of the slit in “tines”: the root hole, its middle 43 mm from the tip of the tines"]
    );
    // What ends at the root ends at the slit's own mark, and nowhere else.
    for path in ["1.1.4", "1.2.4"] {
        let at = plan.bars[0].paths().iter().position(|own| own == path).unwrap();
        assert_eq!(bar.block_shop(at).unwrap()[1], bar.segments[0].mark_end_shop, "{path}");
    }
    assert!(!sheet.contains("45 mm") && !sheet.contains("44.9"), "{sheet}");
}

#[test]
fn a_cross_stands_where_its_number_says() {
    let plan = named("herb-bracket");
    let balance = balance(&plan);
    let drawing = sheet(&plan, &balance);
    // The datum of the first row stands at the margin and the room for the arrow.
    let datum_mm = fh_print::paper::MARGIN_MM + 7.0;
    let first = balance.bars[0].laid_off().holes[0].shop.mm();
    let at = drawing.pages[0].items.iter().any(|item| match item {
        Item::Line { from, to, pen: Pen::CenterLine } => {
            (from.x - to.x).abs() < 1e-9 && (from.x - datum_mm - first).abs() < 1e-9
        }
        _ => false,
    });
    assert!(at, "no line at {first} mm");
}

#[test]
fn what_is_punched_and_what_is_only_scribed_is_told_where_both_occur() {
    const LEGEND: &str = "A dot is punched, a bare line scribed.";
    let told = |name: &str| {
        let plan = named(name);
        line(&sheet(&plan, &balance(&plan))).contains(LEGEND)
    };
    assert!(told("trowel") && told("gate-hook"));
    assert!(!told("herb-bracket"));
}

#[test]
fn a_column_that_would_be_empty_is_left_out() {
    let heads = |name: &str| {
        let plan = named(name);
        let drawing = sheet(&plan, &balance(&plan));
        let all: Vec<String> =
            drawing.pages.iter().flat_map(|page| texts(page)).map(|text| text.content().to_owned()).collect();
        (all.contains(&"strike".to_owned()), all.contains(&"side".to_owned()))
    };
    assert_eq!(heads("herb-bracket"), (true, false));
    assert_eq!(heads("weeding-fork"), (true, false));
}

#[test]
fn parts_are_told_with_every_size_as_it_comes_out() {
    for (demo, part) in [
        ("boot-scraper", "plain 231.9 mm to fit the bar"),
        ("draw-hoe", "rectangle 85 mm × 100.8 mm, 3 mm thick, 5 % trimmed"),
        ("trowel", "polygon of 7 corners, 130 mm × 60 mm over all"),
        ("trowel", "drawn 50 mm to 14 mm × 7 mm half-round"),
    ] {
        let plan = named(demo);
        let balance = balance(&plan);
        let said = line(&sheet(&plan, &balance)).replace('\u{a0}', " ");
        assert!(said.contains(part), "{demo}: {part} in {said}");
    }
    for (demo, plan) in demos() {
        let balance = balance(&plan);
        for drawing in [sheet(&plan, &balance), cards(&plan, &balance)] {
            let said = line(&drawing);
            for word in [" deg", "section before", "× …", "the stock's section"] {
                assert!(!said.contains(word), "{}: {word} in {said}", demo);
            }
        }
    }
}

#[test]
fn a_forged_length_is_told_alike_on_card_and_ladder() {
    let plan = named("gate-hook");
    let balance = balance(&plan);
    let at = plan.bars[0].flat().iter().position(|flat| flat.segment.name == "hook").unwrap();
    let length = fh_core::describe::fine_length(balance.bars[0].segments[at].forged_length, plan.units.length);
    // On a card the unit stands over the column.
    let printable = fh_print::typeset::printable(&length);
    let length = printable.trim_end_matches("in").trim_end();
    for sheets in [[Sheet::Steps], [Sheet::Ladder]] {
        let said = line(&document(&plan, &balance, &sheets, Paper::A4, Orientation::Portrait));
        assert!(said.contains(length), "{sheets:?}: {length} in {said}");
    }
}

#[test]
fn the_strip_stands_on_the_first_page_though_its_branches_are_marked_on_both_sides() {
    let plan = named("weeding-fork");
    let drawing = sheet(&plan, &balance(&plan));
    let said: Vec<&str> = texts(&drawing.pages[0]).iter().map(|text| text.content()).collect();
    assert!(said.iter().any(|words| words.starts_with("▼ datum")), "{said:?}");
}

#[test]
fn no_number_and_no_name_of_a_demo_lies_over_another() {
    for (demo, plan) in demos() {
        for paper in [Paper::A4, Paper::Letter] {
            let drawing = mark_sheet(&plan, &balance(&plan), paper, Orientation::Landscape);
            for page in &drawing.pages {
                let all: Vec<_> = texts(page).into_iter().map(|text| (text.content(), extent(text))).collect();
                for (index, (words, one)) in all.iter().enumerate() {
                    let over = all[index + 1..].iter().find(|(_, other)| {
                        let hair = 0.01;
                        one.left < other.right - hair
                            && other.left < one.right - hair
                            && one.top < other.bottom - hair
                            && other.top < one.bottom - hair
                    });
                    assert!(over.is_none(), "{demo}: {words} and {over:?}");
                }
            }
        }
    }
}
