//! What is first offered can be forged, and breaks none of our own rules: every form and every bend is put on every usual
//! bar at every place, and the findings then are those of the bar before.

#![allow(clippy::unwrap_used, reason = "tests")]

use crate::state::{Focus, Side};
use crate::widgets::Sizing;
use crate::{Editor, Scripted, Services};
use fh_core::edit::Edit;
use fh_core::findings::Severity;
use fh_core::forms;
use fh_core::new_segment::{first_bend, suits};
use fh_core::plan::{BendKind, Chain, Form, FormKind, Plan, SectionSpec, Segment, SquareSpec, Units};
use fh_measure::{LengthRange, WrittenLength};

/// Where a new part is put.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Place {
    Empty,
    Start,
    Middle,
    End,
}

impl Place {
    const ALL: [Self; 4] = [Self::Empty, Self::Start, Self::Middle, Self::End];
}

fn size(text: &str) -> WrittenLength {
    WrittenLength::parse(text, None, LengthRange::AboveZero).unwrap()
}

/// Plans of one bar, square, flat and round, in both units; nothing is on the bar, or two plain parts.
fn bars() -> Vec<Plan> {
    let square = |side| SectionSpec::Square(SquareSpec { side: size(side), edge_radius: None });
    let flat =
        |width, thickness| SectionSpec::Flat { width: size(width), thickness: size(thickness), edge_radius: None };
    let (mm, inches) = (Units::millimeters(), Units::inches());
    [
        (mm, square("12 mm")),
        (mm, flat("30 mm", "10 mm")),
        (mm, SectionSpec::Round(size("12 mm"))),
        (inches, square("1/2 in")),
        (inches, flat("1 1/4 in", "3/8 in")),
        (inches, SectionSpec::Round(size("1/2 in"))),
    ]
    .map(|(units, stock)| Plan::new("", units, stock))
    .into()
}

/// An editor with a new part of a form at a place.
fn with_new(mut plan: Plan, kind: FormKind, place: Place) -> (Vec<String>, Editor) {
    if place != Place::Empty {
        let plain = |name| Segment::new(name, Form::Plain(forms::Plain { length: Some(size("150 mm")) }));
        plan.bars[0].segments = vec![plain("front"), plain("back")];
    }
    let services = Services { home: None, dialogs: Box::new(Scripted::new(Vec::new())) };
    let mut editor = Editor::with_plan(services, plan);
    let before = told(&editor);
    let (focus, side) = match place {
        Place::Empty => (Focus::Bar, Side::After),
        Place::Start => (Focus::Segment(0), Side::Before),
        Place::Middle => (Focus::Segment(0), Side::After),
        Place::End => (Focus::Segment(1), Side::After),
    };
    editor.selection.focus = focus;
    editor.add_segment(kind, side);
    (before, editor)
}

/// The stops and warnings of a plan.
fn told(editor: &Editor) -> Vec<String> {
    let grave = editor.balance().findings.iter().filter(|finding| finding.severity > Severity::Note);
    grave.map(|finding| format!("{}: {}", finding.id, finding.message)).collect()
}

/// Bends the selected part, as the inspector does.
fn bend(editor: &mut Editor, kind: BendKind) {
    let at = editor.selected().unwrap();
    let mut segment = editor.plan().bars[0].flat()[at].segment.clone();
    let bar = &editor.balance().bars[0];
    let desk = editor.desk();
    let sizing = Sizing::within(desk.theme, editor.plan().units, Some(bar), Chain::Bar);
    segment.bend = first_bend(kind, &segment, bar.segments[at].shape.as_ref(), &sizing.first, at == 0);
    assert!(segment.bend.is_some());
    editor.edit(&Edit::ReplaceSegment { bar: 0, at, segment: Box::new(segment) });
}

/// Why a new part may be told something all the same.
fn reason(kind: FormKind, place: Place, told: &str) -> Option<&'static str> {
    if kind == FormKind::Flag && told.starts_with("socket-root") {
        return Some("a socket begins at the bar as it is, until the smith has drawn its neck");
    }
    let alone = kind == FormKind::Split && place == Place::Empty && told.starts_with("split-whole-bar");
    alone
        .then_some("the part that holds the branches together comes next, and no other first part could take its place")
}

#[test]
fn what_is_first_offered_breaks_no_rule_of_ours() {
    let mut broken = Vec::new();
    for plan in bars() {
        let stock = plan.bars[0].stock.describe();
        for (kind, place) in FormKind::ALL.into_iter().flat_map(|kind| Place::ALL.map(|place| (kind, place))) {
            let mut look = |of: Option<BendKind>, before: &[String], editor: &Editor| {
                let new = told(editor).into_iter().filter(|told| !before.contains(told));
                let unexplained = new.filter(|told| reason(kind, place, told).is_none());
                broken.extend(unexplained.map(|told| format!("{stock}, {kind:?} {of:?} {place:?}: {told}")));
            };
            let (before, editor) = with_new(plan.clone(), kind, place);
            look(None, &before, &editor);
            let form = editor.selected_segment().unwrap().form.clone();
            for of in BendKind::ALL.into_iter().filter(|bend| suits(&form, *bend) && kind != FormKind::Peak) {
                let (before, mut editor) = with_new(plan.clone(), kind, place);
                bend(&mut editor, of);
                look(Some(of), &before, &editor);
            }
        }
    }
    assert!(broken.is_empty(), "{} times:\n{}", broken.len(), broken.join("\n"));
}

#[test]
fn a_new_taper_runs_to_a_point_only_at_an_end_of_the_bar() {
    for plan in bars() {
        for place in Place::ALL {
            let (_, editor) = with_new(plan.clone(), FormKind::Taper, place);
            let segment = editor.selected_segment().unwrap();
            let Form::Taper(forms::Taper { to, .. }) = &segment.form else { panic!("{segment:?}") };
            assert_eq!(*to == SectionSpec::Point, place != Place::Middle, "{place:?} {to:?}");
        }
    }
}
