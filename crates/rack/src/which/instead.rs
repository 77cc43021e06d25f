//! A plan made from another bar: the finished piece stays, so that what was left as the bar is now drawn or upset to it.

use crate::said::section::alike;
use fh_core::forms::{Drawn, Peak, Shoulder, Taper};
use fh_core::plan::{Form, Plan, SectionSpec, Segment};

/// The plan with one of its bars made from another section; none where there is no such bar.
///
/// What is plain bar becomes drawn (or upset) to the section that the bar had, and a section that is given as the bar's own is
/// written out. The branches of a split are as the cut leaves them, and change with the bar.
pub fn instead_of(plan: &Plan, bar: usize, section: &SectionSpec) -> Option<Plan> {
    let was = plan.bars.get(bar)?.stock.clone();
    let mut other = plan.clone();
    let of = other.bars.get_mut(bar)?;
    of.stock = section.clone();
    if alike(None, &was) == alike(None, section) {
        return Some(other);
    }
    let mut before_is_bar = true;
    for segment in &mut of.segments {
        before_is_bar = write_out(segment, &was, before_is_bar);
    }
    Some(other)
}

/// Writes the old section out where a segment leaned on the bar; whether the segment ends as the bar is.
fn write_out(segment: &mut Segment, was: &SectionSpec, before_is_bar: bool) -> bool {
    let own = |section: &mut SectionSpec| {
        if *section == SectionSpec::Stock {
            *section = was.clone();
        }
    };
    match &mut segment.form {
        Form::Plain(plain) => {
            segment.form = Form::Drawn(Drawn { length: plain.length.clone(), section: was.clone() });
            false
        }
        Form::Drawn(Drawn { section, .. })
        | Form::Peak(Peak { section, .. })
        | Form::Shoulder(Shoulder { to: section, .. }) => {
            own(section);
            false
        }
        Form::Taper(Taper { from, to, .. }) => {
            own(to);
            match from {
                Some(from) => own(from),
                None if before_is_bar => *from = Some(was.clone()),
                None => {}
            }
            false
        }
        Form::Collar(collar) => {
            own(&mut collar.section);
            false
        }
        Form::Tenon(tenon) => {
            own(&mut tenon.section);
            false
        }
        Form::Hold(_) | Form::Trim(_) | Form::Weld(_) | Form::Split(_) => true,
        _ => before_is_bar,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::said::section::parse;
    use fh_core::balance::balance;
    use fh_core::file;

    const PLAN: &str = r#"{ "firstheat": 1, "units": { "length": "mm", "marks": "1 mm" },
        "bars": [{ "name": "stake", "stock": { "square": "12 mm" }, "segments": [
            { "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } },
            { "name": "shank", "form": { "plain": { "length": "200 mm" } } } ] }] }"#;

    #[test]
    fn the_piece_stays_the_same_and_a_thicker_bar_is_shorter_by_the_ratio_of_areas() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        let thicker = instead_of(&plan, 0, &parse("16 mm square").unwrap()).unwrap();
        let [was, now] = [&plan, &thicker].map(|plan| balance(plan).bars[0].clone());
        assert!((was.finished_volume - now.finished_volume).value.abs() < 1e-15);
        // A point of 60 mm takes a third of it: 220 mm of 12 mm square are 123.75 mm of 16 mm square.
        let [was, now] = [was, now].map(|bar| bar.stock_length.value * 1000.0);
        assert!((was - 220.0).abs() < 1e-9 && (now - 220.0 * 144.0 / 256.0).abs() < 1e-9, "{was} {now}");
    }

    #[test]
    fn the_same_section_changes_nothing_and_a_bar_that_is_not_there_is_none() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        assert_eq!(instead_of(&plan, 0, &plan.bars[0].stock).unwrap(), plan);
        assert!(instead_of(&plan, 4, &plan.bars[0].stock).is_none());
    }
}
