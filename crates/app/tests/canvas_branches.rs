//! Branches on the drawing area: their marks and ends are found by name, dragged and nudged within their own lane.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use egui::{Key, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use fh_app::canvas::{Canvas, CanvasEvent, Gesture, Scene, Views};
use fh_app::theme::{Look, Theme, install_fonts};
use fh_core::balance::{Balance, balance};
use fh_core::edit::History;
use fh_core::metal::Shape;
use uom::si::length::millimeter;

/// As much of the program as the drawing area needs around it.
struct Host {
    history: History,
    canvas: Canvas,
    theme: Theme,
    selected: Option<usize>,
    refused: Option<String>,
}

impl Host {
    fn show(&mut self, ui: &mut egui::Ui) {
        let plan = self.history.snapshot();
        let balance = balance(&plan);
        let selected = self.selected;
        let scene = Scene {
            plan: &plan,
            balance: &balance,
            stamp: None,
            bar: 0,
            selected,
            also: &[],
            cursor_mm: None,
            theme: &self.theme,
            step: None,
        };
        for event in self.canvas.show(ui, &scene) {
            match event {
                CanvasEvent::Select(selected) => self.selected = selected,
                CanvasEvent::Gesture(Gesture::Begin) => self.history.begin(),
                CanvasEvent::Gesture(Gesture::Commit) => self.history.commit(),
                CanvasEvent::Gesture(Gesture::Cancel) => self.history.cancel(),
                CanvasEvent::Gesture(Gesture::Drag(edit)) => {
                    self.refused = self.history.apply(&edit).err().map(|refusal| refusal.to_string());
                }
                _ => {}
            }
        }
    }

    fn balance(&self) -> Balance {
        balance(self.history.plan())
    }

    fn mark_mm(&self, segment: usize) -> f64 {
        self.balance().bars[0].segments[segment].mark_end.get::<millimeter>()
    }

    fn forged_mm(&self, segment: usize) -> f64 {
        self.balance().bars[0].segments[segment].forged_length.get::<millimeter>()
    }

    /// Where the first cut of the split at 2 stands, and how long its slit is.
    fn cut_and_slit_mm(&self) -> [f64; 2] {
        let balance = self.balance();
        let Some(Shape::Split(size)) = &balance.bars[0].segments[1].shape else { panic!("the split is settled") };
        [size.cuts[0].get::<millimeter>(), size.slit.get::<millimeter>()]
    }
}

/// The segments are counted 0 shank, 1 fork, 2 root, 3 prong, 4 long, 5 prong.
const FORK: &str = r#"{
  "firstheat": 1, "title": "Fork",
  "units": { "length": "mm", "marks": "1 mm" },
  "bars": [ { "name": "fork", "stock": { "flat": { "width": "30 mm", "thickness": "10 mm" } }, "segments": [
    { "name": "shank", "form": { "plain": { "length": "120 mm" } } },
    { "name": "fork", "form": { "split": { "branches": [
      { "name": "left tine", "segments": [
        { "name": "root", "form": { "drawn": { "length": "60 mm", "section": { "square": "9 mm" } } } },
        { "name": "prong", "form": { "taper": { "length": "70 mm", "to": "point" } } } ] },
      { "name": "right tine", "segments": [
        { "name": "long", "form": { "drawn": { "length": "90 mm", "section": { "square": "8 mm" } } } },
        { "name": "prong", "form": { "taper": { "length": "60 mm", "to": "point" } } } ] } ] } } } ] } ] }"#;

fn harness(plan: &str, views: Views) -> Harness<'static, Host> {
    let plan = fh_core::file::read(plan.as_bytes()).unwrap();
    let mut canvas = Canvas::default();
    canvas.set_views(views);
    let theme = Theme::new(Look::Light, 1.0);
    let host = Host { history: History::new(plan), canvas, theme, selected: None, refused: None };
    let mut ready = false;
    let mut harness = Harness::builder().with_size([1100.0, 560.0]).build_ui_state(
        move |ui, host: &mut Host| {
            if ready {
                host.show(ui);
            } else {
                install_fonts(ui.ctx());
                host.theme.apply(ui.ctx());
                ready = true;
            }
        },
        host,
    );
    harness.run();
    harness
}

/// Drags what has this name so many points along, in small steps, and lets go.
fn drag(harness: &mut Harness<'static, Host>, name: &str, by: f32) {
    let from = harness.get_by_label(name).rect().center();
    harness.hover_at(from);
    harness.run();
    harness.drag_at(from);
    harness.run();
    for step in 1..=10 {
        harness.hover_at(from + vec2(by * step as f32 / 10.0, 0.0));
        harness.step();
    }
    harness.drop_at(from + vec2(by, 0.0));
    harness.run();
}

#[test]
fn a_mark_within_a_branch_is_dragged_and_the_cut_moves() {
    let mut harness = harness(FORK, Views::Both);
    let before = harness.state().history.plan().clone();
    let (length, [cut, slit]) = (harness.state().forged_mm(2), harness.state().cut_and_slit_mm());
    drag(&mut harness, "Mark 2.1.1: end of root", 20.0);
    let host = harness.state();
    assert_eq!(host.refused, None);
    assert_eq!(host.selected, Some(2));
    assert!(host.forged_mm(2) > length + 1.0, "{length} -> {}", host.forged_mm(2));
    let now = host.forged_mm(2);
    assert!((now - now.round()).abs() < 1e-3, "{now} is round");
    let [cut_now, slit_now] = host.cut_and_slit_mm();
    assert!(cut_now > cut + 0.1 && slit_now > slit + 0.5, "{cut} {slit} -> {cut_now} {slit_now}");
    harness.state_mut().history.undo();
    assert_eq!(*harness.state().history.plan(), before);
    assert!(!harness.state().history.can_undo());
}

#[test]
fn the_forged_end_of_a_branch_follows_the_hand() {
    let mut harness = harness(FORK, Views::Both);
    let length = harness.state().forged_mm(4);
    let other = harness.state().forged_mm(2);
    drag(&mut harness, "Forged end of long", 40.0);
    let now = harness.state().forged_mm(4);
    assert!(now > length + 5.0 && (now - now.round()).abs() < 1e-6, "{length} -> {now}");
    assert!((harness.state().forged_mm(2) - other).abs() < 1e-9);
}

#[test]
fn in_an_opened_slit_the_end_follows_the_hand_though_it_is_drawn_shorter() {
    let closed = FORK
        .replace(r#""right tine""#, r#""near""#)
        .replace(r#"{ "split": { "#, r#"{ "split": { "opening": { "width": "60 mm" }, "#)
        .replace(
            r#"{ "taper": { "length": "70 mm", "to": "point" } }"#,
            r#"{ "drawn": { "length": "80 mm", "section": { "square": "7 mm" } } }"#,
        )
        .replace(
            r#"{ "taper": { "length": "60 mm", "to": "point" } }"#,
            r#"{ "drawn": { "length": "50 mm", "section": { "square": "7 mm" } } }"#,
        )
        .replace(
            r#" ] } ] } } } ] } ] }"#,
            r#" ] } ] } } }, { "name": "rest", "form": { "plain": { "length": "100 mm" } } } ] } ] }"#,
        );
    let mut harness = harness(&closed, Views::Top);
    let length = harness.state().forged_mm(2);
    let node = harness.get_by_label("Forged end of root").rect();
    drag(&mut harness, "Forged end of root", 30.0);
    let grown = harness.state().forged_mm(2) - length;
    let moved = harness.get_by_label("Forged end of root").rect().center().x - node.center().x;
    assert!(grown > 4.0 && grown < 80.0, "{grown}");
    assert!(moved > 8.0 && moved < 45.0, "the end stays near the hand: {moved}");
}

#[test]
fn each_branch_is_taken_in_its_own_lane() {
    let mut harness = harness(FORK, Views::Both);
    let rect = |name: &str| harness.get_by_label(name).rect();
    let (left, right) = (rect("Part root"), rect("Part long"));
    // The first branch lies away from you: above, as it is seen from above.
    assert!(left.bottom() <= right.top() + 1.0, "{left:?} {right:?}");
    assert!(rect("Mark 2.1.1: end of root").bottom() <= right.center().y);
    harness.get_by_label("Part long").click();
    harness.run();
    assert_eq!(harness.state().selected, Some(4));
    harness.get_by_label("Part root").click();
    harness.run();
    assert_eq!(harness.state().selected, Some(2));
}

#[test]
fn branches_are_drawn_apart_only_where_the_plan_bends_them_apart() {
    // How far the tips lie from each other, in what lies between the middles of the branches as cut.
    let apart = |plan: &str| {
        let harness = harness(plan, Views::Top);
        let between = |names: [&str; 2]| {
            let [first, second] = names.map(|name| harness.get_by_label(name).rect().center().y);
            second - first
        };
        let as_cut = between(["Part root", "Part long"]);
        between(["Forged end of prong (2.1.2)", "Forged end of prong (2.2.2)"]) / as_cut
    };
    let unbent = apart(FORK);
    assert!((unbent - 1.0).abs() < 0.01, "{unbent}");
    let bent = |side: &str| {
        let curve = format!(r#""curve": {{ "angle": "40 deg", "side": "{side}" }}"#);
        format!(r#""section": {{ "square": "9 mm" }} }} }}, "bend": {{ {curve} }} }},"#)
    };
    let straight = r#""section": { "square": "9 mm" } } } },"#;
    assert!(FORK.contains(straight));
    // The left tine lies away from you: bent that way it parts from the right one, bent up it does not.
    let parted = apart(&FORK.replace(straight, &bent("270 deg")));
    assert!(parted > 1.05, "{parted}");
    let up = apart(&FORK.replace(straight, &bent("0 deg")));
    assert!((up - 1.0).abs() < 0.01, "{up}");
}

#[test]
fn the_keyboard_goes_through_all_branches() {
    let mut harness = harness(FORK, Views::Side);
    harness.get_by_label("Mark 1: end of shank").focus();
    harness.run();
    let mut seen = Vec::new();
    for _ in 0..5 {
        harness.key_press(Key::ArrowRight);
        harness.run();
        seen.push(harness.state().selected);
    }
    assert_eq!(seen, [1, 2, 3, 4, 5].map(Some));
    assert!(harness.query_by_label("Marks on the bar, Mark 2.2.2: end of prong").is_some());
    assert!(harness.query_by_label("Forged end of prong (2.2.2)").is_some());
    // Seen from the side the left tine lies behind the right one, and its mark says so.
    harness.get_by_label("Mark 2.1.1: end of root").focus();
    harness.run();
    assert!(harness.query_by_label_contains("it is behind right tine").is_some());
    let mark = harness.state().mark_mm(2);
    harness.key_press(Key::ArrowUp);
    harness.run();
    assert!(harness.state().mark_mm(2) > mark);
}

#[test]
fn splits_within_splits_from_absurdly_near_and_far_neither_freeze_nor_panic() {
    let leaf = r#"{ "name": "", "segments": [ { "name": "", "form": { "drawn": { "length": "40 mm", "section": { "square": "3 mm" } } } } ] }"#;
    let mut branch = leaf.to_owned();
    for _ in 0..5 {
        branch = format!(
            r#"{{ "name": "", "segments": [ {{ "name": "", "form": {{ "split": {{ "branches": [ {branch}, {branch} ] }} }} }} ] }}"#
        );
    }
    let plan = format!(
        r#"{{ "firstheat": 1, "title": "Broom", "units": {{ "length": "mm", "marks": "1 mm" }},
        "bars": [ {{ "name": "broom", "stock": {{ "square": "40 mm" }}, "segments": [
        {{ "name": "shank", "form": {{ "plain": {{ "length": "100 mm" }} }} }},
        {{ "name": "broom", "form": {{ "split": {{ "branches": [ {branch}, {branch} ] }} }} }} ] }} ] }}"#
    );
    let mut harness = harness(&plan, Views::Both);
    for views in Views::ALL {
        harness.state_mut().canvas.set_views(views);
        for factor in [1e-9, 1e12, 0.5, 1e-30] {
            harness.state_mut().canvas.zoom_by(factor);
            harness.run();
        }
    }
}
