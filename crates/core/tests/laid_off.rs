//! The side of the bar that is marked, the holes and slits that are laid off on it, and where branches end.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use fh_core::balance::{BarBalance, balance};
use fh_core::metal::View;

fn bar(stock: &str, segments: &str) -> BarBalance {
    let plan = format!(
        r#"{{ "firstheat": 1, "title": "t", "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [ {{ "name": "b", "stock": {stock}, "segments": [ {segments} ] }} ] }}"#
    );
    balance(&fh_core::file::read(plan.as_bytes()).expect("a plan")).bars.remove(0)
}

fn split(side: &str, root: &str) -> String {
    let branch = |name: &str| {
        format!(
            r#"{{ "name": "{name}", "segments": [
                {{ "name": "tip", "form": {{ "drawn": {{ "length": "60 mm", "section": {{ "square": "9 mm" }} }} }} }},
                {{ "name": "foot", "form": {{ "drawn": {{ "length": "40 mm", "section": {{ "square": "9 mm" }} }} }} }} ] }}"#
        )
    };
    format!(
        r#"{{ "name": "fork", "form": {{ "split": {{ "side": "{side} deg"{root}, "branches": [ {}, {} ] }} }} }}"#,
        branch("one"),
        branch("other")
    )
}

const REST: &str = r#"{ "name": "rest", "form": { "plain": { "length": "80 mm" } } }"#;

#[test]
fn the_wide_side_is_marked_and_of_a_square_bar_the_one_that_is_pierced() {
    let flat = |width, thickness| {
        bar(&format!(r#"{{ "flat": {{ "width": "{width} mm", "thickness": "{thickness} mm" }} }}"#), REST).marked_view()
    };
    assert_eq!(flat(40, 8), View::Top);
    let square = |segments: &str| bar(r#"{ "square": "20 mm" }"#, segments).marked_view();
    assert_eq!(square(REST), View::Top);
    assert_eq!(square(&format!("{}, {REST}", split("270", ""))), View::Top);
    assert_eq!(square(&format!("{}, {REST}", split("0", ""))), View::Side);
    // A flat keeps its wide side, though the cut is in its edge.
    let flat = bar(r#"{ "flat": { "width": "40 mm", "thickness": "12 mm" } }"#, &format!("{}, {REST}", split("0", "")));
    let laid = flat.laid_off();
    assert_eq!(laid.view, View::Top);
    assert!(!laid.slits[0].is_seen);
}

#[test]
fn a_root_hole_lies_its_radius_before_the_mark_and_the_branches_end_at_the_mark() {
    let bar = bar(r#"{ "square": "20 mm" }"#, &format!("{}, {REST}", split("270", r#", "root": { "hole": "6 mm" }"#)));
    let laid = bar.laid_off();
    let [hole] = laid.holes.as_slice() else { panic!("{:?}", laid.holes) };
    let mm = |length: uom::si::f64::Length| length.get::<uom::si::length::millimeter>();
    // Each branch 100 mm of 81 mm², so 40.5 mm of bar; the hole takes 9 π × 20 mm³ more, 1.41 mm: the mark stands at 41.91.
    assert!((mm(hole.middle) - 38.914).abs() < 1e-3, "{}", mm(hole.middle));
    assert_eq!(hole.shop.text(), "39 mm");
    assert!(hole.across_mm.iter().all(|across| across.abs() < 1e-9), "{:?}", hole.across_mm);
    let slit = &laid.slits[0];
    assert_eq!((slit.ends[0].shop.text(), slit.ends[1].shop.text()), ("0 mm".to_owned(), "39 mm".to_owned()));
    assert!(slit.ends[1].is_hole && !slit.ends[0].is_hole);
    // The split, one: tip, foot; other: tip, foot.
    for foot in [2, 4] {
        assert_eq!(bar.block_shop(foot).unwrap()[1], bar.segments[0].mark_end_shop);
        assert_eq!(bar.block_exact(foot).unwrap()[1], bar.segments[0].mark_end);
    }
    assert_eq!(bar.block_shop(1).unwrap()[1], bar.segments[1].mark_end_shop);
}

#[test]
fn the_last_mark_is_rounded_up_and_those_between_to_the_nearest() {
    let plain = |mm: f64| format!(r#"{{ "name": "part", "form": {{ "plain": {{ "length": "{mm} mm" }} }} }}"#);
    let bar = bar(r#"{ "square": "12 mm" }"#, &format!("{}, {}", plain(40.4), plain(60.0)));
    assert_eq!(bar.segments[0].mark_end_shop.text(), "40 mm");
    assert_eq!(bar.segments[1].mark_end_shop.text(), "101 mm");
    assert_eq!(bar.step_shop(1).unwrap().text(), "61 mm");
}

#[test]
fn beside_a_saw_cut_only_the_mark_of_the_piece_is_struck() {
    let plain =
        |name: &str, mm: u32| format!(r#"{{ "name": "{name}", "form": {{ "plain": {{ "length": "{mm} mm" }} }} }}"#);
    let away =
        |form: &str, mm: u32| format!(r#"{{ "name": "{form}", "form": {{ "{form}": {{ "length": "{mm} mm" }} }} }}"#);
    let struck = |segments: &[String]| {
        let bar = bar(r#"{ "square": "12 mm" }"#, &segments.join(", "));
        (1..segments.len()).map(|at| bar.is_struck(at - 1, at)).collect::<Vec<_>>()
    };
    // The far side of the cut is scribed, whichever end the tongs hold.
    assert_eq!(struck(&[plain("a", 50), away("trim", 2), away("hold", 120)]), [true, false]);
    assert_eq!(struck(&[away("hold", 120), away("trim", 2), plain("a", 50)]), [false, true]);
    assert_eq!(struck(&[plain("a", 50), away("trim", 2), plain("b", 50)]), [true, false]);
    assert_eq!(struck(&[away("trim", 2), plain("b", 50)]), [true]);
    // A longer one has room for both.
    assert_eq!(struck(&[plain("a", 50), away("trim", 3), away("hold", 120)]), [true, true]);
}
