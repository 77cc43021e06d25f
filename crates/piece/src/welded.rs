//! Fire welds that close a bar on itself: once they are made, their metal is in what they are welded to.

use crate::{Frame, Line, Piece};
use fh_core::balance::Balance;
use fh_core::joints::joined;
use fh_core::metal::{Shape, View};
use fh_core::plan::{Form, JointKind, Plan};
use fh_core::space::vector::{length, minus};

/// A part of a bar: the bar, and the segment counted through it.
type Part = (usize, usize);

/// The made welds of some bars, each from the origin, that show no more.
pub(crate) fn welded(plan: &Plan, balance: &Balance, local: &Piece) -> Vec<Part> {
    let is_weld = |line: &&Line| {
        let form = plan.segment(line.bar, line.segment).map(|segment| &segment.form);
        let balance = balance.bars.get(line.bar).and_then(|bar| bar.segments.get(line.segment));
        matches!(form, Some(Form::Weld(_))) && balance.is_some_and(|balance| !balance.unwelded)
    };
    let lines = local.lines.iter().filter(is_weld);
    let closed = lines.filter(|line| !is_welded_to_another(plan, line) && meets_its_bar(balance, local, line));
    closed.map(|line| (line.bar, line.segment)).collect()
}

/// Whether a joint welds a part to another bar.
fn is_welded_to_another(plan: &Plan, line: &Line) -> bool {
    let welds = joined(plan).into_iter().filter(|joint| joint.kind == JointKind::Weld);
    welds
        .filter(|joint| joint.members.iter().any(|member| (member.bar, member.segment) == (line.bar, line.segment)))
        .any(|joint| joint.members.iter().any(|member| member.bar != line.bar))
}

/// Whether it lies at other metal of its bar than what it grows from: at a place that is far from it along the bar.
fn meets_its_bar(balance: &Balance, local: &Piece, line: &Line) -> bool {
    /// So many thicknesses along the bar are far.
    const FAR: f64 = 3.0;
    let segment = balance.bars.get(line.bar).and_then(|bar| bar.segments.get(line.segment));
    let Some(Shape::Prism { section, .. }) = segment.and_then(|segment| segment.shape.as_ref()) else { return false };
    let thick = section.seen_mm(View::Side).max(section.seen_mm(View::Top));
    let apart = |one: &Frame, other: &Frame| length(minus(one.at, other.at));
    // Every place of the bar with its length from the datum end, and whether it is the weld's own.
    let (mut along, mut before) = (0.0, None);
    let mut places: Vec<(f64, &Frame, bool)> = Vec::new();
    for one in local.lines.iter().filter(|one| one.bar == line.bar) {
        for frame in &one.frames {
            along += before.map_or(0.0, |before| apart(before, frame));
            before = Some(frame);
            places.push((along, frame, one.segment == line.segment));
        }
    }
    let own: Vec<&(f64, &Frame, bool)> = places.iter().filter(|(_, _, own)| *own).collect();
    places.iter().filter(|(_, _, own)| !own).any(|(at, frame, _)| {
        own.iter().any(|(own_at, own, _)| (at - own_at).abs() > FAR * thick && apart(frame, own) < thick)
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use crate::{Quality, piece};
    use fh_core::balance::balance;
    use fh_core::file;

    /// A bar with a weld at its end, after a part bent so.
    fn parts(bend: &str, unwelded: bool) -> Vec<usize> {
        let text = format!(
            r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [
                {{ "name": "bar", "stock": {{ "round": "10 mm" }}, "segments": [
                {{ "form": {{ "plain": {{ "length": "80 mm" }} }} }},
                {{ "form": {{ "plain": {bend} }},
                {{ "form": {{ "weld": {{ "allowance": "10 mm" }} }} }} ] }} ] }}"#
        );
        let plan = file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}"));
        let mut balance = balance(&plan);
        balance.bars[0].segments[2].unwelded = unwelded;
        piece(&plan, &balance, Quality::Screen).lines.iter().map(|line| line.segment).collect()
    }

    #[test]
    fn the_weld_of_a_closed_ring_is_burnt_in_once_it_is_made() {
        let ring = r#"{} }, "bend": { "ring": { "inside_diameter": "50 mm", "side": "0 deg" } }"#;
        assert_eq!(parts(ring, false), [0, 1]);
        assert_eq!(parts(ring, true), [0, 1, 2]);
    }

    #[test]
    fn a_weld_that_meets_nothing_of_its_bar_shows() {
        assert_eq!(parts(r#"{ "length": "120 mm" } }"#, false), [0, 1, 2]);
    }
}
