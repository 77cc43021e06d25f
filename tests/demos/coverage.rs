//! Between them the demo plans use every form, bend, outline, section and run-out there is.

use fh_core::file;
use fh_core::forms;
use fh_core::plan::{
    Bend, BendKind, Form, FormKind, Gives, HoleKind, Made, OutlineKind, RunoutSpec, SectionKind, SectionSpec, Segment,
    Sides, ThicknessSpec,
};
use fh_store::demos::DEMOS;
use std::collections::BTreeSet;

/// The segments of all demos.
fn segments() -> Vec<Segment> {
    let bars = DEMOS.iter().flat_map(|demo| file::read(demo.text.as_bytes()).unwrap().bars);
    bars.flat_map(|bar| bar.flat().iter().map(|flat| flat.segment.clone()).collect::<Vec<_>>()).collect()
}

/// The sections that a form names.
fn sections(form: &Form) -> Vec<&SectionSpec> {
    match form {
        Form::Drawn(forms::Drawn { section, .. }) | Form::Peak(forms::Peak { section, .. }) => vec![section],
        Form::Shoulder(forms::Shoulder { to, .. }) => vec![to],
        Form::Taper(forms::Taper { from, to, .. }) => from.iter().chain([to]).collect(),
        _ => Vec::new(),
    }
}

/// Fails with the names that are not used.
fn assert_all_used(used: impl Iterator<Item = &'static str>, all: impl Iterator<Item = &'static str>) {
    let used: BTreeSet<_> = used.collect();
    let unused: Vec<_> = all.filter(|name| !used.contains(name)).collect();
    assert!(unused.is_empty(), "no demo has {unused:?}");
}

#[test]
fn every_form_is_in_a_demo() {
    let used = segments().into_iter().map(|segment| segment.form.kind().name());
    // A demo is a finished plan: nothing in it is left open.
    let all = FormKind::ALL.into_iter().filter(|kind| *kind != FormKind::Open);
    assert_all_used(used, all.map(FormKind::name));
}

#[test]
fn every_bend_is_in_a_demo() {
    let used = segments().into_iter().filter_map(|segment| segment.bend.map(|bend| bend.kind().name()));
    assert_all_used(used, BendKind::ALL.into_iter().map(BendKind::name));
}

#[test]
fn every_outline_is_in_a_demo() {
    let used = segments().into_iter().filter_map(|segment| match segment.form {
        Form::Flag(forms::Flag { outline, .. }) => Some(outline.kind().name()),
        _ => None,
    });
    assert_all_used(used, OutlineKind::ALL.into_iter().map(OutlineKind::name));
}

#[test]
fn every_section_is_in_a_demo() {
    let stocks = DEMOS.iter().flat_map(|demo| file::read(demo.text.as_bytes()).unwrap().bars);
    let stocks = stocks.map(|bar| bar.stock.kind().name());
    let forged = segments().into_iter().flat_map(|segment| {
        sections(&segment.form).into_iter().map(|section| section.kind().name()).collect::<Vec<_>>()
    });
    assert_all_used(stocks.chain(forged), SectionKind::ALL.into_iter().map(SectionKind::name));
}

#[test]
fn every_size_that_can_give_is_in_a_demo() {
    let used = segments().into_iter().map(|segment| segment.giving().name());
    assert_all_used(used, Gives::ALL.into_iter().map(Gives::name));
}

#[test]
fn every_hole_and_way_of_making_one_is_in_a_demo() {
    let holes = segments().into_iter().filter_map(|segment| match segment.form {
        Form::Hole(forms::Hole { hole, made, .. }) => Some([hole.kind().name(), made.name()]),
        _ => None,
    });
    let all = HoleKind::ALL.into_iter().map(HoleKind::name).chain(Made::ALL.into_iter().map(Made::name));
    assert_all_used(holes.flatten(), all);
}

#[test]
fn every_run_out_is_in_a_demo() {
    let used = segments().into_iter().filter_map(|segment| match segment.form {
        Form::Taper(forms::Taper { runout, .. }) => Some(match runout.unwrap_or(RunoutSpec::Straight) {
            RunoutSpec::Straight => "straight",
            RunoutSpec::Eased => "eased",
            RunoutSpec::Power(power) if power > 1.0 => "full",
            RunoutSpec::Power(_) => "hollow",
        }),
        _ => None,
    });
    assert_all_used(used, ["straight", "eased", "full", "hollow"].into_iter());
}

#[test]
fn both_thicknesses_and_both_kinds_of_set_down_are_in_a_demo() {
    let used = segments().into_iter().filter_map(|segment| match segment.form {
        Form::Flag(forms::Flag { thickness: ThicknessSpec::Even(_), .. }) => Some("even"),
        Form::Flag(forms::Flag { thickness: ThicknessSpec::Tapered { .. }, .. }) => Some("root to tip"),
        Form::Shoulder(forms::Shoulder { sides: Sides::All, .. }) => Some("all sides"),
        Form::Shoulder(forms::Shoulder { sides: Sides::Some(_), .. }) => Some("some sides"),
        _ => None,
    });
    assert_all_used(used, ["even", "root to tip", "all sides", "some sides"].into_iter());
}

#[test]
fn the_length_of_a_curve_follows_in_one_demo_and_its_angle_in_another() {
    let used = segments().into_iter().filter_map(|segment| match (segment.form.length().is_some(), segment.bend) {
        (false, Some(Bend::Curve { .. })) => Some("length"),
        (true, Some(Bend::Curve { angle: None, .. })) => Some("angle"),
        (true, Some(Bend::Curve { inside_radius: None, .. })) => Some("inside radius"),
        _ => None,
    });
    assert_all_used(used, ["length", "angle"].into_iter());
}
