//! Where the marks of a repeat fall on a forged segment: how many fit, how far apart, and what is left over.

use super::SegmentBalance;
use crate::metal::{in_mm, mm};
use crate::plan::{Repeat, RepeatFrom, Segment};
use uom::si::f64::Length;

/// What the sum of many steps may be off, in mm, before one mark fewer fits.
const HAIR_MM: f64 = 1e-6;

/// One repeat laid off along its segment.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidRepeat {
    /// What is repeated, in words.
    pub what: String,
    /// From where it is stepped off.
    pub from: RepeatFrom,
    /// The places along the forged segment from its datum side; of tools side by side, their middles.
    pub places: Vec<Length>,
    /// From one to the next; none where there are fewer than two.
    pub step: Option<Length>,
    /// The width of the tool, where tools are set side by side.
    pub width: Option<Length>,
    /// What the row leaves free at the segment's start, the margin included; below 0 where it runs off.
    pub free_at_start: Length,
    /// What the row leaves free at the segment's end, the margin included; below 0 where it runs off.
    pub free_at_end: Length,
    /// How far the row reaches beyond the segment or into its margins, both ends together; 0 where it fits.
    pub over: Length,
    /// Whether more would fit than the most that are counted, [`Repeat::MOST`].
    pub more: bool,
}

impl LaidRepeat {
    /// How many there are.
    pub fn count(&self) -> usize {
        self.places.len()
    }
}

/// The repeats of a segment laid off on its forged length; none of a segment whose shape is not settled.
pub fn laid_repeats(segment: &Segment, balance: &SegmentBalance) -> Vec<LaidRepeat> {
    if balance.shape.is_none() {
        return Vec::new();
    }
    segment.repeats.iter().map(|repeat| lay_repeat(repeat, balance.forged_length)).collect()
}

/// Lays one repeat off along a segment of this forged length.
///
/// With `L` the length, `m` the margin and `s` the step: marks at points fit `⌊(L − 2m) / s⌋ + 1` times, tools of
/// the width `s` set side by side `⌊(L − 2m) / s⌋` times; a count `n` alone steps by `(L − 2m) / (n − 1)`.
pub fn lay_repeat(repeat: &Repeat, length: Length) -> LaidRepeat {
    let length = in_mm(length);
    let margin = repeat.margin.as_ref().map_or(0.0, |margin| margin.mm());
    let room = length - 2.0 * margin;
    let width = repeat.width.as_ref().map(|width| width.mm());
    let (count, step, more) = counted(repeat, room, width);
    // The row from its first edge to its last: between the middles of the first and the last, and half a tool at each end.
    let tool = width.unwrap_or(0.0);
    let reach = count.saturating_sub(1) as f64 * step + if count > 0 { tool } else { 0.0 };
    let spare = room - reach;
    let before = margin
        + match repeat.from {
            RepeatFrom::Start => 0.0,
            RepeatFrom::End => spare,
            RepeatFrom::Middle => spare / 2.0,
        };
    let places: Vec<Length> = (0..count).map(|index| mm(before + tool / 2.0 + f64::from(index) * step)).collect();
    LaidRepeat {
        what: repeat.what_name().to_owned(),
        from: repeat.from,
        step: (count > 1).then_some(mm(step)),
        width: width.map(mm),
        free_at_start: mm(before),
        free_at_end: mm(length - before - reach),
        over: mm(if count > 0 && spare < -HAIR_MM { -spare } else { 0.0 }),
        more,
        places,
    }
}

/// How many there are, the step in mm, and whether more would fit than are counted.
fn counted(repeat: &Repeat, room: f64, width: Option<f64>) -> (u32, f64, bool) {
    let written = repeat.count.map(|count| count.min(Repeat::MOST));
    match (repeat.step.as_ref().map(|step| step.mm()), width, written) {
        (Some(step), _, Some(count)) | (None, Some(step), Some(count)) => (count, step, false),
        (Some(step), _, None) => {
            let (steps, more) = whole_steps(room, step);
            let count = if room < -HAIR_MM { 0 } else { steps.saturating_add(1).min(Repeat::MOST) };
            (count, step, more)
        }
        (None, Some(step), None) => {
            let (count, more) = whole_steps(room, step);
            (count, step, more)
        }
        // Several are spread over some room; one needs but its place.
        (None, None, Some(count)) if room < if count > 1 { HAIR_MM } else { -HAIR_MM } => (0, 0.0, false),
        (None, None, Some(count)) if count > 1 => (count, room / f64::from(count - 1), false),
        (None, None, count) => (count.unwrap_or(0), 0.0, false),
    }
}

/// How often a step goes into the room, at most [`Repeat::MOST`] times, and whether it would go in more often.
fn whole_steps(room: f64, step: f64) -> (u32, bool) {
    let times = ((room + HAIR_MM) / step).floor();
    if times >= f64::from(Repeat::MOST) {
        return (Repeat::MOST, true);
    }
    (if times > 0.0 { times as u32 } else { 0 }, false)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use serde_json::json;

    fn laid(repeat: serde_json::Value, length_mm: f64) -> LaidRepeat {
        lay_repeat(&serde_json::from_value(repeat).unwrap(), mm(length_mm))
    }

    fn places(laid: &LaidRepeat) -> Vec<f64> {
        laid.places.iter().map(|place| (in_mm(*place) * 1e6).round() / 1e6).collect()
    }

    #[test]
    fn a_step_goes_in_as_often_as_it_fits() {
        let from_start = laid(json!({ "what": "chisel lines", "step": "6 mm" }), 45.0);
        assert_eq!(places(&from_start), [0.0, 6.0, 12.0, 18.0, 24.0, 30.0, 36.0, 42.0]);
        assert_eq!((in_mm(from_start.free_at_start), in_mm(from_start.free_at_end)), (0.0, 3.0));
        let from_end = laid(json!({ "what": "chisel lines", "from": "end", "step": "6 mm" }), 45.0);
        assert_eq!(places(&from_end)[0], 3.0);
        assert_eq!(places(&from_end)[7], 45.0);
        let middle = laid(json!({ "what": "chisel lines", "from": "middle", "step": "6 mm" }), 45.0);
        assert_eq!((in_mm(middle.free_at_start), in_mm(middle.free_at_end)), (1.5, 1.5));
    }

    #[test]
    fn margins_stay_free_at_both_ends() {
        let laid = laid(json!({ "what": "dots", "step": "10 mm", "margin": "5 mm" }), 100.0);
        assert_eq!((laid.count(), places(&laid)[0], places(&laid)[9]), (10, 5.0, 95.0));
        assert_eq!(in_mm(laid.over), 0.0);
    }

    #[test]
    fn tools_stand_side_by_side_and_are_told_by_their_middles() {
        let laid = laid(json!({ "what": "fuller", "from": "middle", "width": "10 mm" }), 45.0);
        assert_eq!(places(&laid), [7.5, 17.5, 27.5, 37.5]);
        assert_eq!((in_mm(laid.free_at_start), in_mm(laid.free_at_end)), (2.5, 2.5));
        assert_eq!(laid.step.map(in_mm), Some(10.0));
    }

    #[test]
    fn a_count_alone_is_spread_evenly() {
        let spread = laid(json!({ "what": "twists", "count": 5, "margin": "10 mm" }), 100.0);
        assert_eq!(places(&spread), [10.0, 30.0, 50.0, 70.0, 90.0]);
        for (from, place) in [("start", 10.0), ("middle", 50.0), ("end", 90.0)] {
            let one = laid(json!({ "what": "dot", "from": from, "count": 1, "margin": "10 mm" }), 100.0);
            assert_eq!(places(&one), [place], "{from}");
            assert_eq!(one.step, None);
        }
    }

    #[test]
    fn a_count_with_a_step_holds_even_where_it_runs_off() {
        let laid = laid(json!({ "what": "lines", "from": "middle", "step": "6 mm", "count": 7 }), 30.0);
        assert_eq!((laid.count(), in_mm(laid.over)), (7, 6.0));
        assert_eq!((in_mm(laid.free_at_start), in_mm(laid.free_at_end)), (-3.0, -3.0));
    }

    #[test]
    fn steps_that_add_up_to_the_length_are_not_lost_to_rounding() {
        let laid = laid(json!({ "what": "lines", "step": "0.1 mm" }), 0.1 + 0.2);
        assert_eq!(laid.count(), 4);
        let inches = super::tests::laid(json!({ "what": "lines", "step": "1/8 in" }), 3.0 * 25.4);
        assert_eq!(inches.count(), 25);
    }

    #[test]
    fn where_the_margins_leave_no_room_there_are_none() {
        for size in ["step", "width"] {
            let mut repeat = json!({ "what": "lines", "margin": "30 mm" });
            repeat[size] = json!("6 mm");
            assert_eq!(laid(repeat, 50.0).count(), 0, "{size}");
        }
        assert_eq!(laid(json!({ "what": "lines", "count": 3, "margin": "30 mm" }), 50.0).count(), 0);
        assert_eq!(laid(json!({ "what": "fuller", "width": "60 mm" }), 50.0).count(), 0);
    }

    #[test]
    fn more_than_anyone_would_strike_is_cut_short() {
        let laid = laid(json!({ "what": "lines", "step": "0.001 mm" }), 1e9);
        assert_eq!((laid.count(), laid.more), (1000, true));
    }
}
