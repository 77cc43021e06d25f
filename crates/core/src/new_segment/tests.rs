//! What is first offered.

#![allow(clippy::unwrap_used, reason = "tests")]

use super::new_segment;
use crate::balance::balance;
use crate::findings::Severity;
use crate::first_sizes::FirstSizes;
use crate::plan::{FormKind, Plan, SectionSpec, Units};
use fh_measure::{LengthRange, WrittenLength};

#[test]
fn every_form_is_offered_in_both_units() {
    for units in [Units::inches(), Units::millimeters()] {
        let sizes = FirstSizes::without_stock(units);
        for kind in FormKind::ALL {
            assert_eq!(new_segment(kind, &sizes).unwrap().form.kind(), kind);
        }
    }
}

#[test]
fn every_new_segment_can_be_forged() {
    let written = |text| WrittenLength::parse(text, None, LengthRange::AboveZero).unwrap();
    for width in ["8 mm", "12 mm", "40 mm"] {
        for kind in FormKind::ALL {
            let stock = SectionSpec::Flat { width: written(width), thickness: written("8 mm"), edge_radius: None };
            let mut plan = Plan::new("", Units::millimeters(), stock);
            let empty = balance(&plan);
            let sizes = FirstSizes::new(plan.units, empty.bars.first());
            let rest = new_segment(FormKind::Hold, &sizes).unwrap();
            plan.bars[0].segments = vec![new_segment(kind, &sizes).unwrap(), rest];
            let findings = balance(&plan).findings;
            let stops = findings.iter().filter(|finding| finding.severity == Severity::Stop);
            assert_eq!(stops.map(|finding| &finding.message).collect::<Vec<_>>(), Vec::<&String>::new(), "{kind:?}");
        }
    }
}
