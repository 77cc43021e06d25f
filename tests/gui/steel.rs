//! Steel: which bar, the rack, the cut list and the quote, by pointer and by keys, from an empty profile.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use fh_app::Editor;
use fh_rack::kept::{rack, shop};
use fh_rack::said::written::Said;

const NONE: Modifiers = Modifiers::NONE;
const NEW_BAR: &str = "Bar to put on the rack";

/// Steel is in front of the small plan.
fn at_steel() -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(NONE, Key::F8);
    desk
}

fn rack_file(desk: &Desk) -> rack::Rack {
    rack::read(&std::fs::read(desk.folder.path().join("rack.json")).unwrap()).unwrap()
}

fn on_the_rack(desk: &Desk) -> Vec<String> {
    rack_file(desk).bars.iter().map(rack::RackBar::words).collect()
}

/// Puts bars on the rack, each with Enter.
fn put(desk: &mut Desk, bars: &[&str]) {
    desk.press("Rack");
    for bar in bars {
        desk.type_only(NEW_BAR, bar);
        desk.keys(NONE, Key::Enter);
    }
}

fn has_minutes(desk: &Desk) -> bool {
    desk.shows("from the rack and the merchant's list")
}

fn is_found(desk: &Desk) -> bool {
    desk.shows(" used, ") && !desk.shows("Looking for a better list") && !desk.shows("looking for a better list")
}

#[test]
fn another_bar_is_taken_with_a_click_and_undo_gives_the_first_back() {
    let mut desk = at_steel();
    desk.wait(has_minutes);
    let before = desk.plan().clone();
    assert!(desk.shows("The plan's own bar; none is on the rack."));
    desk.harness.get_by_role_and_label(Role::Button, "16 mm square").scroll_to_me();
    desk.harness.run();
    desk.press("16 mm square");
    assert!(desk.shows("From the merchant's list."), "the option that was clicked is looked at");
    desk.press("Make it from this");
    assert_eq!(desk.plan().bars[0].stock.describe(), "16 mm square");
    assert!(desk.shows("Now from 16 mm square. Undo takes it back."));
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(*desk.plan(), before);
    desk.keys(NONE, Key::Escape);
    assert!(!desk.shows("Make it from this"), "Escape leads back to the plan");
}

#[test]
fn bars_are_gone_through_with_the_arrows_and_taken_with_enter() {
    let mut desk = at_steel();
    desk.wait(has_minutes);
    desk.harness.get_by_role_and_label(Role::Button, "12 mm square").focus();
    desk.harness.run();
    desk.keys(NONE, Key::ArrowDown);
    assert!(!desk.shows("The plan's own bar"), "another bar is looked at");
    desk.keys(NONE, Key::Enter);
    assert_ne!(desk.plan().bars[0].stock.describe(), "12 mm square");
}

#[test]
fn nothing_is_done_to_parts_that_are_not_seen() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.keys(NONE, Key::F8);
    let before = desk.plan().clone();
    desk.keys(NONE, Key::Delete);
    desk.keys(Modifiers::COMMAND, Key::D);
    assert_eq!(*desk.plan(), before);
}

#[test]
fn bars_come_on_the_rack_as_they_are_said_and_are_kept() {
    let mut desk = at_steel();
    desk.press("Rack");
    assert!(desk.shows("The rack is empty."));
    assert!(desk.has_keyboard(NEW_BAR), "one can type at once");
    desk.letters("3 x 12 mm square, 2.4 m");
    desk.keys(NONE, Key::Enter);
    assert!(desk.has_keyboard(NEW_BAR), "the next can be typed at once");
    desk.letters("1/2 in round, 7' 3 1/2\"");
    desk.keys(NONE, Key::Enter);
    assert_eq!(on_the_rack(&desk), ["3 x 12 mm square, 2.4 m", "1/2 in round, 7' 3 1/2\""]);
    assert!(desk.shows("4 bars on the rack"));
    desk.type_only(NEW_BAR, "12 mm sqare, 2 m");
    desk.keys(NONE, Key::Enter);
    assert!(desk.shows("is not a bar shape"), "what is wrong is said");
    assert_eq!(desk.text_of(NEW_BAR), "12 mm sqare, 2 m", "what was typed stays to be mended");
    assert_eq!(rack_file(&desk).count(), 4);
}

#[test]
fn a_line_of_the_rack_is_changed_taken_from_removed_and_brought_back() {
    let mut desk = at_steel();
    put(&mut desk, &["3 x 12 mm square, 2.4 m", "30 x 8 mm flat, 6 m"]);
    desk.press("3 x 12 mm square, 2.4 m");
    desk.type_in("Measured", "2412 mm");
    desk.type_in("Where", "left, below");
    desk.type_in("Bad end", "20");
    let bar = &rack_file(&desk).bars[0];
    assert_eq!((bar.length_nm(), bar.end_nm(), bar.lies.as_deref()), (2_412_000_000, 20_000_000, Some("left, below")));
    desk.type_in("Bars", "2 x 12 mm, 1 m");
    assert_eq!(rack_file(&desk).bars[0].bar.count, 3, "what cannot be read changes nothing");
    desk.keys(NONE, Key::Escape);
    desk.press("Take one");
    assert_eq!(rack_file(&desk).bars[0].bar.count, 2);
    desk.press("Remove");
    assert_eq!(on_the_rack(&desk), ["30 x 8 mm flat, 6 m"]);
    desk.press("Undo");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(rack_file(&desk).bars[0].bar.count, 3);
}

#[test]
fn a_rack_that_somebody_else_changes_is_read_again_and_loses_nothing() {
    let mut desk = at_steel();
    put(&mut desk, &["12 mm square, 2.4 m"]);
    let path = desk.folder.path().join("rack.json");
    let theirs = std::fs::read_to_string(&path).unwrap().replace("12 mm square, 2.4 m", "5 x 12 mm square, 2.4 m");
    std::fs::write(&path, theirs).unwrap();
    put(&mut desk, &["16 mm round, 1 m"]);
    assert_eq!(on_the_rack(&desk), ["5 x 12 mm square, 2.4 m", "16 mm round, 1 m"]);
    std::fs::write(&path, "{ \"firstheat_rack\": 1, \"bars\": [{ \"bar\": \"12 mm\" }] }").unwrap();
    // The disk is looked at once a second of the program's clock.
    desk.harness.run_steps(8);
    assert!(desk.shows("The rack cannot be read, and is left as it is"));
    assert!(std::fs::read_to_string(&path).unwrap().contains("12 mm\""));
}

#[test]
fn a_cut_list_is_made_booked_and_undone() {
    let mut desk = at_steel();
    put(&mut desk, &["12 mm square, 1 m"]);
    desk.press("Cut list");
    desk.wait(is_found);
    // 60 mm of point are 20 mm of bar: with 120 and 150 it takes 290 mm.
    assert!(desk.shows("1 bar used, nothing to buy."));
    desk.type_in("How many of Bean hook", "4");
    desk.wait(|desk| is_found(desk) && desk.shows("1 bar to buy; fewer is impossible."));
    // Three of the bar on the rack would leave 121 mm, too short to keep: all four come from the bar that has to be bought.
    assert!(desk.shows("A at 290 mm, A at 583 mm, A at 876 mm, A at 1169 mm; keep "));
    desk.type_in("How many of Bean hook", "2");
    desk.wait(|desk| is_found(desk) && desk.shows("1 bar used, nothing to buy"));
    assert!(desk.shows("1 × 1 m, rack: 12 mm square: A at 290 mm, A at 583 mm; keep 414 mm"));
    desk.press("Book it");
    assert!(desk.shows("Booked as number 1"));
    let booked = rack_file(&desk);
    assert_eq!(booked.booked[0].took[0].bar.count, 1);
    assert!(booked.bars.iter().all(|bar| bar.length_nm() != 1_000_000_000), "the bar is off the rack");
    assert!(!booked.booked[0].back.is_empty(), "its offcut is on it");
    desk.press("Undo booking 1");
    desk.wait(is_found);
    assert_eq!(on_the_rack(&desk), ["12 mm square, 1 m"]);
    assert!(rack_file(&desk).booked[0].undone);
}

#[test]
fn plans_of_a_job_are_cut_from_the_same_bars_and_printed() {
    let mut desk = Desk::with(Vec::new(), |services, folder| {
        let mut other = small_plan();
        other.title = "Shed hook".to_owned();
        std::fs::write(folder.join("shed.plan.json"), fh_core::file::write(&other)).unwrap();
        Editor::with_plan(services, small_plan())
    });
    desk.keys(NONE, Key::F8);
    desk.press("Cut list");
    desk.press("Add a plan…");
    let folder = desk.folder.path().to_owned();
    desk.type_only("File", &folder.join("nowhere.json").display().to_string());
    desk.keys(NONE, Key::Enter);
    assert!(desk.shows("■ "), "a file that is not there is told");
    desk.type_only("File", &folder.join("shed.plan.json").display().to_string());
    desk.press("Add it");
    desk.type_in("How many of Shed hook", "3");
    desk.wait(|desk| is_found(desk) && desk.shows("B Shed hook, 3 × 290 mm"));
    desk.press("Print the cut list");
    let paper = folder.join("list.pdf");
    desk.type_only("File", &paper.display().to_string());
    desk.press("Make the file");
    assert!(std::fs::read(&paper).unwrap().starts_with(b"%PDF"));
    desk.press("Close");
    desk.press("Leave out Shed hook");
    desk.wait(|desk| is_found(desk) && !desk.shows("Shed hook"));
}

#[test]
fn a_quote_follows_its_figures_at_once_and_is_printed() {
    let mut desk = at_steel();
    desk.press("Quote");
    desk.wait_for("1 of the job");
    assert!(desk.shows("No rate for an hour is given: work is not counted."));
    // So much that rounding to hundredths does not show in the shares.
    desk.type_in("What an hour costs", "4200");
    desk.wait(|desk| !desk.shows("No rate for an hour"));
    desk.type_in("Share of profit", "25");
    // A quarter on the cost is a fifth of the price.
    desk.wait_for("markup, on the cost: 25 %, 25 %, 25 %");
    assert!(desk.shows("margin, of the price: 20 %, 20 %, 20 %"));
    desk.press("of the price");
    desk.wait_for("margin, of the price: 25 %");
    desk.type_in("Count 3 of the quote", "50");
    desk.wait_for("50 of the job");
    let kept = shop::read(&std::fs::read(desk.folder.path().join("shop.json")).unwrap()).unwrap();
    assert_eq!(kept.rate.unwrap().0.text(), "4200 per hour");
    for (button, name) in [("Print the quote…", "quote.pdf"), ("Print the figures…", "figures.pdf")] {
        let paper = desk.folder.path().join(name);
        desk.press(button);
        desk.type_only("File", &paper.display().to_string());
        desk.press("Make the file");
        assert!(std::fs::read(&paper).unwrap().starts_with(b"%PDF"), "{name}");
        desk.press("Close");
    }
}

#[test]
fn alt_and_a_digit_show_a_part_of_steel_from_the_plan_and_from_each_other() {
    let tabs = ["Which bar", "Rack", "Cut list", "Quote", "Job", "Merchant", "Shop"];
    let keys = [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6, Key::Num7];
    let is_chosen = |desk: &Desk, tab: &str| {
        let mut all = desk.harness.query_all_by_role_and_label(Role::Button, tab);
        all.any(|node| {
            node.accesskit_node().is_selected() == Some(true)
                || node.accesskit_node().toggled().is_some_and(|it| it == egui::accesskit::Toggled::True)
        })
    };
    for (key, tab) in keys.into_iter().zip(tabs) {
        let mut desk = Desk::with_plan(small_plan());
        desk.keys(Modifiers::ALT, key);
        assert!(is_chosen(&desk, tab), "{tab} from the plan");
    }
    let mut desk = at_steel();
    for (key, tab) in keys.into_iter().zip(tabs).rev() {
        desk.keys(Modifiers::ALT, key);
        assert!(is_chosen(&desk, tab), "{tab}");
        assert_eq!(tabs.iter().filter(|tab| is_chosen(&desk, tab)).count(), 1);
    }
    desk.keys(NONE, Key::Escape);
    desk.press("Part 2: shank");
    assert_eq!(desk.editor().selected(), Some(1), "Escape goes back to the plan");
}
