//! What a cut list takes from the rack, and which offcuts go back on it.

use super::make::CutList;
use super::source::From;
use crate::kept::rack::{Rack, RackBar};
use crate::said::bar::SaidBar;
use crate::said::written::Written;
use fh_core::material;
use fh_measure::{LengthRange, LengthUnit, WrittenLength};

/// A millimetre and the sixteenth of an inch, in nm: offcuts are booked to the one below.
const MILLIMETER_NM: i64 = 1_000_000;
const SIXTEENTH_NM: i64 = 1_587_500;

/// The bars that a list takes from the rack that it was made on.
pub fn taken(list: &CutList, rack: &Rack) -> Vec<RackBar> {
    let mut all: Vec<(usize, u64)> = Vec::new();
    for bar in list.groups.iter().flat_map(|group| &group.bars) {
        if let Some(From::Rack(line)) = list.sources.get(bar.source).map(|source| source.from) {
            match all.iter_mut().find(|(known, _)| *known == line) {
                Some((_, times)) => *times += bar.times,
                None => all.push((line, bar.times)),
            }
        }
    }
    all.sort_unstable();
    let count = |times: u64| u32::try_from(times).unwrap_or(u32::MAX);
    all.into_iter().filter_map(|(line, times)| Some(rack.bars.get(line)?.with_count(count(times)))).collect()
}

/// The offcuts of a list that are kept, each a little shorter than it comes out: to the millimetre below, or the sixteenth of
/// an inch of a bar in inches.
pub fn put_back(list: &CutList) -> Vec<RackBar> {
    let mut all: Vec<RackBar> = Vec::new();
    for (group, bar) in list.groups.iter().flat_map(|group| group.bars.iter().map(move |bar| (group, bar))) {
        let Some(source) = list.sources.get(bar.source).filter(|_| bar.is_kept) else { continue };
        let (step, unit) = match source.called.unit() {
            LengthUnit::Inch | LengthUnit::Foot => (SIXTEENTH_NM, LengthUnit::Inch),
            _ => (MILLIMETER_NM, LengthUnit::Millimeter),
        };
        let mm = (bar.offcut_nm.div_euclid(step) * step) as f64 / 1e6;
        let Ok(length) = WrittenLength::from_mm(mm, unit, LengthRange::AboveZero) else { continue };
        let count = u32::try_from(bar.times).unwrap_or(u32::MAX);
        let material = (group.material != material::DEFAULT.name).then(|| group.material.clone());
        let end = bar_end(source.end_nm, unit);
        let offcut = RackBar {
            end,
            lies: if matches!(source.from, From::Rack(_)) { source.place.clone() } else { None },
            ..RackBar::new(SaidBar::new(count, &source.section, &length), material)
        };
        match all.iter_mut().find(|known| known.is_like(&offcut)) {
            Some(known) => {
                *known = RackBar { bar: Written(known.bar.with_count(known.bar.count + count)), ..known.clone() }
            }
            None => all.push(offcut),
        }
    }
    all
}

/// What gives no piece of the bar gives none of its offcut either: it is cut from the other end.
fn bar_end(end_nm: i64, unit: LengthUnit) -> Option<WrittenLength> {
    (end_nm > 0).then(|| WrittenLength::from_mm(end_nm as f64 / 1e6, unit, LengthRange::ZeroOrMore).ok()).flatten()
}
