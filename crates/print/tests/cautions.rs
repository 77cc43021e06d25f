//! The cautions on paper: those of the plan on every kind of sheet, those of every fire once in a document.

#![allow(clippy::unwrap_used, reason = "tests")]

use crate::reading::words;
use crate::sound::assert_sound;
use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_print::drawing::Drawing;
use fh_print::paper::{Orientation, Paper};
use fh_print::sheets::{Sheet, document, usual_orientation};

fn plan(keys: &str) -> Plan {
    let text = format!(
        r#"{{ "firstheat": 1, "title": "Hook", {keys} "bars": [{{ "name": "hook", "stock": {{ "square": "12 mm" }}, "segments": [
            {{ "name": "point", "form": {{ "taper": {{ "length": "60 mm", "to": "point" }} }} }},
            {{ "name": "bow", "form": {{ "drawn": {{ "section": {{ "square": "9 mm" }} }} }},
               "bend": {{ "curve": {{ "angle": "180 deg", "inside_radius": "20 mm" }} }} }},
            {{ "name": "shank", "form": {{ "plain": {{ "length": "150 mm" }} }} }} ] }}] }}"#
    );
    fh_core::file::read(text.as_bytes()).unwrap()
}

fn printed(plan: &Plan, sheets: &[Sheet]) -> Drawing {
    document(plan, &balance(plan), sheets, Paper::A4, usual_orientation(sheets))
}

/// The words of the first page, in one line.
fn first_page(drawing: &Drawing) -> String {
    let first = Drawing { pages: drawing.pages[..1].to_vec(), ..drawing.clone() };
    words(&first).replace('\n', " ")
}

#[test]
fn every_kind_of_sheet_carries_what_its_plan_asks_for_on_its_first_page() {
    let hung = plan(r#""coating": "galvanised", "duty": "holds_people", "material": "brass","#);
    for sheet in Sheet::ALL {
        let drawing = printed(&hung, &[sheet]);
        assert_sound(&drawing, sheet.name());
        let said = first_page(&drawing);
        for words in ["STOP: The stock is galvanised.", "it must hold nobody", "Never strike it below 650 °C"] {
            assert!(said.contains(words), "{words} on {}: {said}", sheet.name());
        }
    }
}

#[test]
fn what_holds_at_every_fire_stands_once_in_a_document() {
    let plain = plan(r#""duty": "light","#);
    let documents = Sheet::ALL.iter().map(|sheet| vec![*sheet]).chain([Sheet::ALL.to_vec()]);
    for sheets in documents {
        for paper in Paper::ALL {
            let drawing = document(&plain, &balance(&plain), &sheets, paper, usual_orientation(&sheets));
            assert_sound(&drawing, &format!("{sheets:?}"));
            let said = words(&drawing).replace('\n', " ");
            assert!(said.matches("Local codes and licensed practice").count() <= 1, "{sheets:?}: {said}");
            let first = first_page(&drawing);
            assert!(first.to_lowercase().contains("local codes"), "{sheets:?}: {first}");
            assert!(said.contains("Nothing found wrong. Strength is not checked."), "{sheets:?}: {said}");
            assert!(!said.contains("STOP") && !said.contains("Not rated"), "{sheets:?}: {said}");
        }
    }
}

/// The table is meant for one sheet of paper: what holds at every fire must not cost most of the demos a second one.
#[test]
fn the_short_table_of_most_demos_stays_one_page() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-plans");
    let files = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path());
    let files: Vec<_> = files.filter(|path| path.extension().is_some_and(|end| end == "json")).collect();
    assert_eq!(files.len(), 17);
    let pages = |path: &std::path::PathBuf| {
        let plan = fh_core::file::read(&std::fs::read(path).unwrap()).unwrap();
        let sheets = [Sheet::StepList];
        document(&plan, &balance(&plan), &sheets, Paper::A4, Orientation::Portrait).pages.len()
    };
    let all: Vec<_> = files.iter().map(|path| (path.file_name().unwrap(), pages(path))).collect();
    assert!(all.iter().filter(|(_, pages)| *pages == 1).count() >= 10, "{all:?}");
}

#[test]
fn glasses_glove_and_extinguisher_lie_at_hand() {
    let said = words(&printed(&plan(""), &[Sheet::Steps]));
    for thing in ["safety glasses", "glove for the tongs hand", "extinguisher", "bucket of water"] {
        assert!(said.lines().any(|line| line == thing), "{thing} in {said}");
    }
}

#[test]
fn the_warnings_of_a_plan_stand_on_the_cards_and_on_the_table() {
    // Upset from far too thin a bar: it buckles.
    let text = r#"{ "firstheat": 1, "title": "Knob", "bars": [{ "name": "bar", "stock": { "square": "8 mm" }, "segments": [
        { "name": "knob", "form": { "ball": { "diameter": "30 mm" } } },
        { "name": "shank", "form": { "plain": { "length": "150 mm" } } } ] }] }"#;
    let plan = fh_core::file::read(text.as_bytes()).unwrap();
    let found = balance(&plan).findings;
    let warning = found.iter().find(|finding| finding.severity == fh_core::findings::Severity::Warning).unwrap();
    for sheet in [Sheet::Steps, Sheet::StepList] {
        let drawing = printed(&plan, &[sheet]);
        assert_sound(&drawing, sheet.name());
        let said = first_page(&drawing);
        assert!(said.contains(&fh_print::typeset::printable(&warning.message)[..30]), "{}: {said}", sheet.name());
        assert!(said.contains("warning"), "{said}");
    }
}
