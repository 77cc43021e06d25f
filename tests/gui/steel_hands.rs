//! Steel by keys alone, its sliders, its plot, its filters, and a search that is stopped.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers, pos2, vec2};
use egui_kittest::kittest::Queryable;
use fh_core::plan::Plan;
use fh_rack::kept::{merchant, rack, shop};
use fh_rack::said::written::Said;
use std::fs;

const NONE: Modifiers = Modifiers::NONE;
const ALT: Modifiers = Modifiers::ALT;
const CTRL: Modifiers = Modifiers::COMMAND;
const NEW_BAR: &str = "Bar to put on the rack";

fn at(tab: Key) -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(ALT, tab);
    desk
}

fn kept_shop(desk: &Desk) -> shop::Shop {
    shop::read(&fs::read(desk.folder.path().join("shop.json")).unwrap()).unwrap()
}

#[test]
fn every_part_of_steel_is_one_key_away_and_escape_leads_back() {
    let mut desk = Desk::with_plan(small_plan());
    for (key, words) in [
        (Key::Num1, "Only"),
        (Key::Num2, "The rack is empty."),
        (Key::Num3, "How it is cut"),
        (Key::Num4, "For how many"),
        (Key::Num5, "Beside the fire"),
        (Key::Num6, "The chosen line"),
        (Key::Num7, "Ways of cutting"),
    ] {
        desk.keys(ALT, key);
        assert!(desk.shows(words), "{words}");
    }
    desk.keys(NONE, Key::F8);
    assert!(!desk.shows("Ways of cutting"), "F8 goes back to the plan");
    desk.keys(NONE, Key::F8);
    assert!(desk.shows("Ways of cutting"), "and to the part that was left");
    desk.keys(NONE, Key::Escape);
    assert!(desk.shows("Part 2: shank"));
}

#[test]
fn a_bar_is_said_with_its_material_and_its_place_by_keys_alone() {
    let mut desk = at(Key::Num2);
    assert!(desk.has_keyboard(NEW_BAR));
    desk.letters("2 x 3/4 in round, 6 ft");
    desk.keys(NONE, Key::Tab);
    let materials = desk.harness.get_by_role_and_label(Role::ComboBox, "Material of the bar to put on");
    assert!(materials.is_focused(), "from the bar Tab leads to its material");
    desk.keys(NONE, Key::Tab);
    assert!(desk.has_keyboard("Where the bar to put on is"));
    desk.letters("left, above");
    desk.keys(NONE, Key::Enter);
    assert!(desk.has_keyboard(NEW_BAR), "and Enter back to the next bar");
    let rack = rack::read(&fs::read(desk.folder.path().join("rack.json")).unwrap()).unwrap();
    assert_eq!(rack.bars[0].words(), "2 x 3/4 in round, 6 ft, left, above");
    for words in [
        "0 x 12 mm square, 1 m",
        "12 mm square, 0 mm",
        "12 mm square, -1 m",
        "12 mm square",
        "5000000000 x 12 mm square, 1 m",
    ] {
        desk.type_only(NEW_BAR, words);
        desk.keys(NONE, Key::Enter);
        assert_eq!(desk.text_of(NEW_BAR), words, "it stays to be mended");
        assert!(desk.shows("■ "), "{words}: what is wrong is said");
    }
}

#[test]
fn a_slider_shows_at_once_what_it_does_and_is_kept_once_it_is_let_go() {
    let mut desk = at(Key::Num4);
    desk.wait_for("1 of the job");
    let from = desk.harness.get_by_label("An hour, by the slider").rect();
    let to = pos2(from.left() + from.width() * 0.4, from.center().y);
    desk.harness.hover_at(pos2(from.left() + 8.0, to.y));
    desk.harness.drag_at(pos2(from.left() + 8.0, to.y));
    desk.harness.run();
    desk.harness.hover_at(to);
    desk.harness.run();
    desk.wait(|desk| !desk.shows("No rate for an hour is given"));
    assert!(!desk.folder.path().join("shop.json").exists(), "while it is dragged nothing is written");
    desk.harness.drop_at(to);
    desk.harness.run();
    let rate = kept_shop(&desk).rate.unwrap();
    assert!(rate.text().ends_with(".00 per hour"), "{}", rate.text());
    let most = desk.harness.get_by_label("Profit, by the slider").rect();
    desk.click_at(pos2(most.right() - 8.0, most.center().y));
    desk.wait(|desk| desk.shows("markup, on the cost: 100 %") || desk.shows("markup, on the cost: 99"));
    // What is taken back is the last thing that was done here.
    desk.keys(CTRL, Key::Z);
    assert!(kept_shop(&desk).profit.is_none());
    desk.keys(CTRL, Key::Z);
    assert!(kept_shop(&desk).rate.is_none());
}

#[test]
fn the_first_count_of_a_quote_is_slid() {
    let mut desk = at(Key::Num4);
    desk.wait_for("1 of the job");
    let slider = desk.harness.get_by_label("Count 1, by the slider").rect();
    desk.click_at(slider.center());
    desk.wait(|desk| !desk.shows("1 of the job") && (45..56).any(|count| desk.shows(&format!("{count} of the job"))));
    let first = desk.harness.get_by_label("Count 1 of the quote").value().unwrap_or_default();
    assert!((45..56).contains(&first.parse().unwrap_or(0)), "{first}");
}

#[test]
fn a_figure_of_a_quote_tells_from_where_it_is() {
    let mut desk = at(Key::Num4);
    desk.type_in("What an hour costs", "30");
    desk.wait(|desk| desk.shows("Line by line") && desk.shows("40 min, 30.00 per hour"));
    assert!(desk.shows("setting up: 20.00, once for the job"));
    desk.harness.get_by_role_and_label(Role::Button, "Lines for 10 of the job").scroll_to_me();
    desk.harness.run();
    desk.press("Lines for 10 of the job");
    desk.wait_for("10 × Bean hook, at the fire");
}

#[test]
fn figures_of_the_shop_are_typed_taken_back_and_refused() {
    let mut desk = at(Key::Num7);
    desk.type_in("Overheads in a year", "12000");
    desk.type_in("Hours billed in a year", "1500");
    desk.type_in("Rate of the tax", "19");
    desk.type_in("Name of the tax", "value added tax");
    desk.type_in("Deposit when the work is ordered", "40 %");
    let kept = kept_shop(&desk);
    assert_eq!(kept.overhead.as_ref().map(|all| all.hours), Some(1500));
    assert_eq!(kept.tax.as_ref().map(|tax| (tax.name.as_str(), tax.rate.hundredths)), Some(("value added tax", 1900)));
    desk.type_only("Fuel for an hour of fire", "-3");
    desk.keys(NONE, Key::Enter);
    assert!(desk.shows("below 0"), "a negative price is told");
    desk.keys(NONE, Key::Escape);
    desk.type_in("Deposit when the work is ordered", "400");
    assert!(desk.shows("a deposit is no more than the price"));
    assert_eq!(kept_shop(&desk), kept);
    desk.keys(CTRL, Key::Z);
    assert_eq!(kept_shop(&desk).deposit, None);
}

#[test]
fn figures_that_someone_else_changed_meanwhile_are_not_written_over() {
    let mut desk = at(Key::Num7);
    desk.type_in("Setting up, once for a job", "30 min");
    let path = desk.folder.path().join("shop.json");
    let theirs = fs::read_to_string(&path).unwrap().replace("30 min", "50 min");
    fs::write(&path, &theirs).unwrap();
    desk.type_in("Irons in the fire at once", "4");
    // Whether it is seen before or as it is written: theirs stays, and what was typed is not lost without a word.
    let now = kept_shop(&desk);
    assert_eq!(now.setup.as_ref().map(|time| time.minutes), Some(50.0));
    assert!(now.irons == Some(4) || desk.shows("changed elsewhere"));
}

#[test]
fn prices_of_the_merchant_are_given_all_at_once_or_line_by_line() {
    let mut desk = at(Key::Num6);
    assert!(desk.shows("lines have no price"));
    desk.type_in("One price for the whole list", "1.85");
    let kept = || merchant::read(&fs::read(desk.folder.path().join("merchant.json")).unwrap()).unwrap();
    assert!(kept().bars.iter().all(|line| line.price.as_ref().is_some_and(|price| price.text() == "1.85 per kg")));
    desk.press("Add a line");
    desk.type_in("Sections", "40 x 10 mm flat; 50 x 10 mm flat");
    desk.type_in("Lengths", "6 m; 3000");
    desk.type_in("Price", "8.40 per m");
    let kept = merchant::read(&fs::read(desk.folder.path().join("merchant.json")).unwrap()).unwrap();
    let line = kept.bars.last().unwrap();
    assert_eq!((line.sections.len(), line.lengths.len()), (2, 2));
    assert_eq!(line.price.as_ref().map(|price| price.text()), Some("8.40 per m"));
    desk.press("Remove the chosen line");
    desk.keys(CTRL, Key::Z);
    let again = merchant::read(&fs::read(desk.folder.path().join("merchant.json")).unwrap()).unwrap();
    assert_eq!(again, kept);
}

#[test]
fn only_some_bars_are_shown_where_that_is_wanted() {
    let mut desk = at(Key::Num2);
    desk.letters("16 mm round, 2 m");
    desk.keys(NONE, Key::Enter);
    desk.keys(ALT, Key::Num1);
    desk.wait_for("from the rack and the merchant's list");
    desk.press("on the rack");
    assert!(desk.shows("2 of "), "the one on the rack, and the plan's own");
    desk.press("on the rack");
    desk.choose("Sections that are shown", "hexagon");
    let others = desk.harness.query_all_by(|node| {
        node.role() == Role::Button && node.label().is_some_and(|label| label.ends_with(" mm square"))
    });
    assert_eq!(others.count(), 1, "the plan's own bar alone is square");
}

#[test]
fn a_dot_of_the_plot_is_clicked_and_its_bar_looked_at() {
    let mut desk = at(Key::Num1);
    desk.wait_for("from the rack and the merchant's list");
    assert!(desk.shows("minutes of each bar against its weight, g"));
    let plot = desk.harness.get_by_label("minutes of each bar against its weight, g").rect();
    let places = (1..12).flat_map(|x| (1..8).map(move |y| vec2(x as f32 / 12.0, y as f32 / 8.0)));
    for share in places {
        desk.click_at(plot.left_top() + plot.size() * share);
        if desk.shows("From the merchant's list.") {
            return;
        }
    }
    panic!("no dot is met");
}

/// A plan of many bars, none as long as another.
fn many_bars() -> Plan {
    let bar = |at: usize| {
        let length = 211 + at * 37 % 1900;
        format!(
            r#"{{ "name": "bar {at}", "count": 9, "stock": {{ "square": "12 mm" }},
                "segments": [{{ "form": {{ "plain": {{ "length": "{length} mm" }} }} }}] }}"#
        )
    };
    let bars: Vec<String> = (0..150).map(bar).collect();
    let text = format!(
        r#"{{ "firstheat": 1, "title": "Rails", "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{}] }}"#,
        bars.join(",")
    );
    fh_core::file::read(text.as_bytes()).unwrap()
}

#[test]
fn a_search_that_takes_long_is_stopped_and_its_best_list_stays() {
    let mut desk = Desk::with_plan(many_bars());
    desk.keys(ALT, Key::Num3);
    desk.wait(|desk| desk.shows("Stop the search") && desk.shows(" used, "));
    desk.press("Stop the search");
    desk.wait_for("Stopped: this is the best that was found.");
    assert!(desk.shows(" used, "));
}

#[test]
fn a_rack_that_is_changed_while_its_list_is_booked_loses_nothing() {
    let mut desk = at(Key::Num2);
    desk.letters("12 mm square, 1 m");
    desk.keys(NONE, Key::Enter);
    desk.keys(ALT, Key::Num3);
    desk.wait(|desk| desk.shows(" used, ") && !desk.shows("ooking for a better list"));
    let path = desk.folder.path().join("rack.json");
    let theirs = fs::read_to_string(&path).unwrap().replace("12 mm square, 1 m", "16 mm square, 1 m");
    fs::write(&path, &theirs).unwrap();
    desk.harness.get_by_role_and_label(Role::Button, "Book it").click();
    desk.harness.step();
    desk.harness.step();
    assert!(desk.shows("changed elsewhere"), "it is said");
    assert_eq!(fs::read_to_string(&path).unwrap(), theirs, "and nothing is booked");
    desk.wait(|desk| desk.shows("1 bar to buy") && !desk.shows("ooking for a better list"));
    desk.press("Book it");
    assert!(desk.shows("Booked as number 1"), "the list that is made anew is booked");
    desk.keys(ALT, Key::Num5);
    assert!(desk.shows("booking 1: 1 bar"), "and noted in the job");
}
