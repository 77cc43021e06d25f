//! The parts of two plans in words: what each becomes, and how it is bent.

use super::align::Pair;
use super::figures::line;
use super::marks::{pairs_of_parts, titled};
use super::{ComparedLine, Version};
use fh_core::describe::{bend_words, dressed_lines, made_words, side_words};
use fh_core::plan::Bend;

pub(super) fn lines(first: Version<'_>, second: Version<'_>, bars: &[Pair]) -> Vec<ComparedLine> {
    let both = [first, second];
    let mut all = Vec::new();
    for pair in bars {
        let bar = |side: usize| both[side].plan.bars.get(pair[side]?);
        let plans = [bar(0), bar(1)];
        for parts in pairs_of_parts(plans[0], plans[1]) {
            let words = |side: usize| words(both[side], pair[side]?, parts[side]?);
            all.push(line(titled(plans, parts, bars.len() > 1), [words(0), words(1)], None));
        }
    }
    all
}

/// What a part becomes, with its sizes as they come out.
fn words(version: Version<'_>, bar: usize, at: usize) -> Option<String> {
    let segment = version.plan.segment(bar, at)?;
    let balance = version.balance.bars.get(bar)?.segments.get(at)?;
    let made = made_words(segment, balance, version.plan.units.length);
    let side = side_words(segment).map(|side| format!("on {side}"));
    let toward = segment.bend.as_ref().and_then(Bend::side).map(|side| format!("towards {}", side.text()));
    let bend = bend_words(segment, &balance.derived);
    let name = segment.name.trim().to_owned();
    let named = (!name.is_empty()).then_some(name);
    let all = [named, Some(made.form), side, bend, toward].into_iter().flatten();
    let bars = version.plan.bars.get(bar).zip(version.balance.bars.get(bar));
    let dressed = bars.map(|(bar, worked)| dressed_lines(version.plan.units.length, bar, worked, at));
    Some(all.chain(dressed.into_iter().flatten()).collect::<Vec<_>>().join("; "))
}
