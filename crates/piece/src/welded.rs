//! Fire welds that close a bar on itself: once they are made, their metal is in what they are welded to.

use crate::{Line, Piece};
use fh_core::balance::{Balance, BarBalance, SegmentBalance};
use fh_core::joints::joined;
use fh_core::metal::{FreeEnd, Shape, View};
use fh_core::plan::{Chain, Form, JointKind, Plan};
use fh_core::space::vector::{length, minus};
use fh_measure::in_mm;

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
    let closed = lines.filter(|line| !is_welded_to_another(plan, line) && meets_its_bar(plan, balance, local, line));
    closed.map(|line| (line.bar, line.segment)).collect()
}

/// Whether a joint welds a part to another bar.
fn is_welded_to_another(plan: &Plan, line: &Line) -> bool {
    let welds = joined(plan).into_iter().filter(|joint| joint.kind == JointKind::Weld);
    welds
        .filter(|joint| joint.members.iter().any(|member| (member.bar, member.segment) == (line.bar, line.segment)))
        .any(|joint| joint.members.iter().any(|member| member.bar != line.bar))
}

/// Whether it lies at other metal of its bar than what it grows from: at a place that is far from it along the bar. A collar
/// is closed about its bundle, and lies elsewhere in truth.
fn meets_its_bar(plan: &Plan, balance: &Balance, local: &Piece, line: &Line) -> bool {
    /// So many thicknesses along the bar are far.
    const FAR: f64 = 3.0;
    let Some(bar) = balance.bars.get(line.bar) else { return false };
    let segment = bar.segments.get(line.segment);
    let Some(Shape::Prism { section, .. }) = segment.and_then(|segment| segment.shape.as_ref()) else { return false };
    let thick = section.seen_mm(View::Side).max(section.seen_mm(View::Top));
    let is_on_it = |one: &&Line| {
        let form = plan.segment(one.bar, one.segment).map(|segment| &segment.form);
        one.bar == line.bar && !matches!(form, Some(Form::Collar(_)))
    };
    let places = |one: &Line| {
        let stops = one.frames.iter().zip(&one.shares);
        stops.map(|(frame, share)| (frame.at, up_to_the_bar(bar, one.segment, *share))).collect::<Vec<_>>()
    };
    let own = places(line);
    let others = local.lines.iter().filter(is_on_it).filter(|one| one.segment != line.segment);
    others.flat_map(places).any(|(at, ways)| {
        own.iter().any(|(own_at, own)| length(minus(at, *own_at)) < thick && walked_mm(&ways, own) > FAR * thick)
    })
}

/// A place of a chain, in mm along the forged bar, and how far it is to there.
struct Stop {
    chain: Chain,
    at: f64,
    walked: f64,
}

/// The ways from a place of a part to the bar itself: through the roots of the splits whose branch it is of, one or two of each.
fn up_to_the_bar(bar: &BarBalance, segment: usize, share: f64) -> Vec<Stop> {
    let Some(part) = bar.segments.get(segment) else { return Vec::new() };
    let [from, to] = reach_mm(part);
    let mut stops = vec![Stop { chain: part.chain, at: from + share * (to - from), walked: 0.0 }];
    let mut at = 0;
    while let Some(&Stop { chain, at: place, walked }) = stops.get(at) {
        at += 1;
        let Chain::Branch { split, .. } = chain else { continue };
        let Some(whole) = bar.segments.get(split).filter(|_| split < segment) else { continue };
        let Some(Shape::Split(size)) = &whole.shape else { continue };
        let members = bar.segments.iter().filter(|segment| segment.chain == chain).map(reach_mm);
        let ends =
            members.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], [from, to]| [low.min(from), high.max(to)]);
        for (index, (end, of_split)) in ends.into_iter().zip(reach_mm(whole)).enumerate() {
            let free = [FreeEnd::Datum, FreeEnd::Far][index];
            if size.free != free {
                stops.push(Stop { chain: whole.chain, at: of_split, walked: walked + (place - end).abs() });
            }
        }
    }
    stops
}

/// From where to where a part lies on the forged bar, in mm.
fn reach_mm(segment: &SegmentBalance) -> [f64; 2] {
    let start = in_mm(segment.forged_start);
    [start, start + in_mm(segment.forged_length)]
}

/// How far it is along the metal from one place to another, in mm.
fn walked_mm(from: &[Stop], to: &[Stop]) -> f64 {
    let pairs = from.iter().flat_map(|one| to.iter().map(move |other| (one, other)));
    let met = pairs.filter(|(one, other)| one.chain == other.chain);
    met.map(|(one, other)| one.walked + (one.at - other.at).abs() + other.walked).fold(f64::INFINITY, f64::min)
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

    /// Which parts of a bar of 10 mm square are in the piece.
    fn shown(segments: &str) -> Vec<usize> {
        let text = format!(
            r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [
                {{ "name": "bar", "stock": {{ "square": "10 mm" }}, "segments": [{segments}] }} ] }}"#
        );
        let plan = file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}"));
        piece(&plan, &balance(&plan), Quality::Screen).lines.iter().map(|line| line.segment).collect()
    }

    #[test]
    fn a_weld_beside_a_split_or_a_collar_is_not_at_other_metal_of_its_bar() {
        let weld = r#"{ "form": { "weld": { "allowance": "10 mm" } } }"#;
        let branch = r#"{ "name": "b", "segments": [{ "form": { "drawn": { "length": "8 mm", "section": { "square": "4 mm" } } } }] }"#;
        let long = r#"{ "name": "c", "segments": [{ "form": { "drawn": { "length": "900 mm", "section": { "square": "4 mm" } } } }] }"#;
        let split = format!(r#"{{ "form": {{ "split": {{ "branches": [{long}, {branch}] }} }} }}"#);
        // A split has no line of its own, but for its branches.
        assert_eq!(shown(&format!("{weld}, {split}")), [0, 2, 3]);
        let collar =
            r#"{ "form": { "collar": { "section": { "square": "10 mm" }, "width": "10 mm", "height": "10 mm" } } }"#;
        assert_eq!(shown(&format!("{collar}, {weld}")), [0, 1]);
    }
}
