//! A plan made from another bar: the finished piece stays, so that what was left as the bar is now drawn or upset to it.

use crate::balance::balance;
use crate::forms::{Drawn, Peak, Shoulder, Taper};
use crate::plan::{Bar, Form, Plan, SectionSpec, Segment};

/// The plan with one of its bars made from another section; none where there is no such bar.
///
/// What is plain bar becomes drawn (or upset) to the section that the bar had, and a section that is given as the bar's own is
/// written out. The branches of a split are as the cut leaves them, and change with the bar. Marks that were fixed move so that
/// each block keeps its metal, and a length to which the old bar was cut goes.
pub fn made_of(plan: &Plan, bar: usize, section: &SectionSpec) -> Option<Plan> {
    let was = plan.bars.get(bar)?.stock.clone();
    let mut other = plan.clone();
    let of = other.bars.get_mut(bar)?;
    of.stock = section.clone();
    if was.bar_sizes_nm() == section.bar_sizes_nm() {
        return Some(other);
    }
    (of.length, of.takes_up) = (None, None);
    let mut before_is_bar = true;
    for segment in &mut of.segments {
        before_is_bar = write_out(segment, &was, before_is_bar);
    }
    if of.has_fixed_marks() {
        let area = |plan: &Plan| balance(plan).bars.get(bar).map(|bar| bar.stock_area);
        let share = (area(plan)? / area(&other)?).value;
        move_marks(other.bars.get_mut(bar)?, share);
    }
    Some(other)
}

/// Fixed marks that many times as far from the datum. One that cannot be written stays.
fn move_marks(bar: &mut Bar, times: f64) {
    for mark in bar.segments.iter_mut().filter_map(|segment| segment.ends_at.as_mut()) {
        if let Ok(moved) = mark.scaled(times) {
            *mark = moved;
        }
    }
}

/// Writes the old section out where a segment leaned on the bar; whether the segment ends as the bar is.
fn write_out(segment: &mut Segment, was: &SectionSpec, before_is_bar: bool) -> bool {
    for via in segment.via.iter_mut().filter_map(|via| via.form.as_mut()) {
        write_out_form(via, was, before_is_bar);
    }
    write_out_form(&mut segment.form, was, before_is_bar)
}

fn write_out_form(form: &mut Form, was: &SectionSpec, before_is_bar: bool) -> bool {
    let own = |section: &mut SectionSpec| {
        if *section == SectionSpec::Stock {
            *section = was.clone();
        }
    };
    match form {
        Form::Plain(plain) => {
            *form = Form::Drawn(Drawn { length: plain.length.clone(), section: was.clone() });
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
    use crate::file;

    const PLAN: &str = r#"{ "firstheat": 1, "units": { "length": "mm", "marks": "1 mm" },
        "bars": [{ "name": "stake", "stock": { "square": "12 mm" }, "segments": [
            { "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } },
            { "name": "shank", "form": { "plain": { "length": "200 mm" } } } ] }] }"#;

    fn section(text: &str) -> SectionSpec {
        SectionSpec::said(text, None).unwrap()
    }

    #[test]
    fn the_piece_stays_the_same_and_a_thicker_bar_is_shorter_by_the_ratio_of_areas() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        let thicker = made_of(&plan, 0, &section("16 mm square")).unwrap();
        let [was, now] = [&plan, &thicker].map(|plan| balance(plan).bars[0].clone());
        assert!((was.finished_volume - now.finished_volume).value.abs() < 1e-15);
        // A point of 60 mm takes a third of it: 220 mm of 12 mm square are 123.75 mm of 16 mm square.
        let [was, now] = [was, now].map(|bar| bar.stock_length.value * 1000.0);
        assert!((was - 220.0).abs() < 1e-9 && (now - 220.0 * 144.0 / 256.0).abs() < 1e-9, "{was} {now}");
    }

    #[test]
    fn the_same_section_changes_nothing_and_a_bar_that_is_not_there_is_none() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        assert_eq!(made_of(&plan, 0, &plan.bars[0].stock).unwrap(), plan);
        assert!(made_of(&plan, 4, &plan.bars[0].stock).is_none());
    }

    /// A mark fixed at 90 mm of 12 mm square holds 12 960 mm³, which are 50.625 mm of 16 mm square.
    #[test]
    fn a_fixed_mark_moves_so_that_its_block_keeps_its_metal() {
        let text = PLAN.replace(r#""to": "point" } } }"#, r#""to": "point" } }, "ends_at": "90 mm" }"#);
        let plan = file::read(text.as_bytes()).unwrap();
        let thicker = made_of(&plan, 0, &section("16 mm square")).unwrap();
        let mark = thicker.bars[0].segments[0].ends_at.as_ref().unwrap();
        assert!((mark.mm() - 50.625).abs() < 1e-9, "{}", mark.text());
        let [was, now] = [&plan, &thicker].map(|plan| balance(plan).bars[0].clone());
        assert!((was.finished_volume - now.finished_volume).value.abs() < 1e-15);
    }

    /// A bar that is already cut is another bar: its length does not bind the new one.
    #[test]
    fn the_length_of_the_old_bar_goes() {
        let text = PLAN.replace(r#""segments""#, r#""length": "300 mm", "takes_up": "shank", "segments""#);
        let plan = file::read(text.as_bytes()).unwrap();
        let thicker = made_of(&plan, 0, &section("16 mm square")).unwrap();
        assert_eq!((&thicker.bars[0].length, &thicker.bars[0].takes_up), (&None, &None));
    }
}
