//! Ready-made wholes as they are added: the order of work and the piece in space find nothing against them.

use fh_core::balance::balance;
use fh_core::findings::Severity;
use fh_core::first_sizes::FirstSizes;
use fh_core::forms;
use fh_core::new_segment::{Around, Whole};
use fh_core::plan::{Bend, Form, Plan, SectionSpec, Segment, Units};
use fh_measure::{LengthUnit, WrittenShare};
use fh_work::{Shop, work_out};

/// A plan of a whole at the free end of a bar, towards the datum or away from it.
fn plan(whole: Whole, bar: &str, first: bool) -> Plan {
    let stock = SectionSpec::said(bar, Some(LengthUnit::Millimeter)).unwrap();
    let is_round = matches!(stock, SectionSpec::Round(_));
    let mut plan = Plan::new("", Units::millimeters(), stock);
    plan.scale = WrittenShare::parse(Plan::USUAL_SCALE, true).ok();
    let sizes = FirstSizes::new(plan.units, balance(&plan).bars.first());
    let mut parts = whole.parts(&sizes, Around { first, is_round }).unwrap();
    let shank = Segment::new("shank", Form::Plain(forms::Plain { length: sizes.size(300.0) }));
    parts.insert(if first { parts.len() } else { 0 }, shank);
    plan.bars[0].segments = parts;
    plan
}

#[test]
fn no_whole_runs_into_itself_or_breaks_its_order() {
    let mut found = Vec::new();
    for whole in Whole::ALL {
        for bar in ["8 square", "12 square", "16 round", "25 x 8", "20 square"] {
            for first in [true, false] {
                let plan = plan(whole, bar, first);
                let worked = work_out(&plan, &balance(&plan), &Shop::default());
                let own = worked.own_findings().map(|found| &found.finding);
                let all = worked.into_itself.iter().chain(own);
                let grave = all.filter(|finding| finding.severity > Severity::Note);
                found.extend(grave.map(|finding| format!("{whole:?} of {bar}, first {first}: {}", finding.message)));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// By hand, of 12 mm square drawn to 7 mm: the neck's middle line has a radius of 7 + 3.5 = 10.5 mm, the ring's (18 + 7) / 2 =
/// 12.5 mm. In line: cos a = 10.5 / 23, a = 62.8°. The ring's outer corner at 16 mm meets the neck's face at 14 mm:
/// cos b = (23² + 16² - 14²) / (2 × 23 × 16) = 0.8003, b = 36.8°; 360° - 36.8° - 1° = 322°.
#[test]
fn an_eye_lies_in_line_with_its_bar_and_ends_at_its_neck() {
    let plan = plan(Whole::Eye, "12 square", false);
    let bends: Vec<_> = plan.bars[0].segments.iter().filter_map(|segment| segment.bend.as_ref()).collect();
    let [
        Bend::Curve { angle: Some(angle), inside_radius: Some(radius), .. },
        Bend::Ring { inside_diameter, sweep, .. },
    ] = bends.as_slice()
    else {
        panic!("{bends:?}")
    };
    assert_eq!((angle.text(), radius.text()), ("63 deg", "7 mm"));
    assert_eq!(inside_diameter.as_ref().unwrap().text(), "18 mm");
    assert_eq!(sweep.as_ref().unwrap().text(), "322 deg");
}
