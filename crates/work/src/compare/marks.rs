//! The marks of two plans, part by part from the datum.

use super::align::{Pair, align};
use super::figures::{line, signed};
use super::{ComparedLine, Version};
use fh_core::balance::{BarBalance, SegmentBalance};
use fh_core::describe::{segment_name, short_name};
use fh_core::plan::{Bar, Form, Segment};
use fh_measure::format_length;

/// The parts of two bars that belong together: those of one name, or of one form where they have none.
pub(super) fn pairs_of_parts(first: Option<&Bar>, second: Option<&Bar>) -> Vec<Pair> {
    let parts = |bar: Option<&Bar>| -> Vec<Segment> {
        bar.map_or_else(Vec::new, |bar| bar.flat().into_iter().map(|flat| flat.segment.clone()).collect())
    };
    let name = |segment: &Segment| segment.name.trim().to_lowercase();
    align(&parts(first), &parts(second), |a, b| {
        let [one, other] = [name(a), name(b)];
        one == other && (!one.is_empty() || a.form.kind() == b.form.kind())
    })
}

/// Whose part it is, where there are several bars.
pub(super) fn titled(bars: [Option<&Bar>; 2], parts: Pair, are_many: bool) -> String {
    let Some((bar, at)) = bars.iter().zip(parts).find_map(|(bar, at)| (*bar).zip(at)) else { return String::new() };
    let name = segment_name(bar, at);
    if are_many && !bar.name.trim().is_empty() { format!("{}: {name}", short_name(&bar.name)) } else { name }
}

pub(super) fn lines(first: Version<'_>, second: Version<'_>, bars: &[Pair]) -> Vec<ComparedLine> {
    let both = [first, second];
    let mut all = Vec::new();
    for pair in bars {
        let bar = |side: usize| both[side].plan.bars.get(pair[side]?);
        let balance = |side: usize| both[side].balance.bars.get(pair[side]?);
        let (plans, balances) = ([bar(0), bar(1)], [balance(0), balance(1)]);
        for parts in pairs_of_parts(plans[0], plans[1]) {
            all.extend(mark(both, (plans, balances), parts, bars.len() > 1));
        }
    }
    all
}

/// The mark at the end of a part of the bar itself; none of a branch's, which lie on the slit.
fn mark(
    both: [Version<'_>; 2],
    (bars, balances): ([Option<&Bar>; 2], [Option<&BarBalance>; 2]),
    parts: Pair,
    are_many: bool,
) -> Option<ComparedLine> {
    let of = |side: usize| -> Option<&SegmentBalance> {
        let (bar, at) = (bars[side]?, parts[side]?);
        let is_branch = matches!(bar.place_of(at)?.0, fh_core::plan::Chain::Branch { .. });
        balances[side]?.segments.get(at).filter(|_| !is_branch)
    };
    let ends = [of(0), of(1)].map(|segment| segment.map(|segment| segment.mark_end_shop));
    if ends == [None, None] {
        return None;
    }
    let units = both[0].plan.units;
    let by = ends[0]
        .zip(ends[1])
        .map(|(a, b)| signed(b.mm() - a.mm(), |mm| format_length(mm, units.length.length_unit(), units.marks)));
    let is_hold = |side: usize| {
        bars[side]
            .zip(parts[side])
            .and_then(|(bar, at)| bar.segment(at))
            .is_some_and(|part| matches!(part.form, Form::Hold(_)))
    };
    let what = if is_hold(0) || is_hold(1) { "end of what is held" } else { "end of" };
    let name = titled(bars, parts, are_many);
    Some(line(format!("{what} {name}"), ends.map(|end| end.map(|end| end.text())), by))
}
