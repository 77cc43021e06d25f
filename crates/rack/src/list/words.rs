//! What is said of a cut list: how good it is known to be, and lengths as they are marked.

use super::make::{Aim, CutList, Group};
use super::source::Source;
use fh_measure::{LengthUnit, Rounding, counted, format_length};

/// A length in nm as it is marked on a bar: to a tenth of a millimetre, or on a bar in inches to the nearest 1/32.
pub fn marked(nm: i64, source: &Source) -> String {
    let mm = nm as f64 / 1e6;
    let fine = Rounding::parse("1/32 in").ok().filter(|_| source.called.unit() != LengthUnit::Millimeter);
    match (source.called.unit(), fine) {
        (LengthUnit::Inch | LengthUnit::Foot, Some(fine)) => format_length(mm, LengthUnit::Inch, fine),
        _ => format!("{} mm", tenths(mm)),
    }
}

/// Millimetres to a tenth, without a 0 behind the point.
pub fn tenths(mm: f64) -> String {
    let text = format!("{mm:.1}");
    text.strip_suffix(".0").map(str::to_owned).unwrap_or(text)
}

/// A length of bar to pay for: in metres to the hundredth, or in feet of bars in inches.
pub fn run(nm: i64, source: &Source) -> String {
    match source.called.unit() {
        LengthUnit::Inch | LengthUnit::Foot => format!("{:.2} ft", nm as f64 / 304_800_000.0),
        _ => format!("{:.2} m", nm as f64 / 1e9),
    }
}

/// What pieces and cuts take of a group's bars: `Pieces and cuts take 5.46 m of 6.00 m.`; empty where nothing is cut.
pub fn taken(list: &CutList, group: &Group) -> String {
    let Some(source) = group.bars.first().and_then(|bar| list.sources.get(bar.source)) else { return String::new() };
    let (whole, used) = list.taken_nm(group);
    format!("Pieces and cuts take {} of {}.", run(used, source), run(whole, source))
}

/// How good a group's list is known to be: `9 bars used, 3 bars to buy; fewer is impossible. Scrap 120 mm.`
pub fn known(list: &CutList, group: &Group) -> String {
    let bars = |count: u64| counted(count, "bar");
    let used = u64::try_from(group.worth.bars).unwrap_or(0);
    let to_buy = match (group.new_bars, group.aim) {
        (0, _) => "nothing to buy".to_owned(),
        (new, Aim::NewBars) => format!("{} to buy", bars(new)),
        (new, Aim::Cost) => format!("{} to buy for {}", bars(new), list.money.words(group.worth.cost)),
    };
    let sure = match (group.is_first_proven, group.aim) {
        _ if group.new_bars == 0 || !group.left.is_empty() => String::new(),
        (true, Aim::NewBars) => "; fewer is impossible".to_owned(),
        (true, Aim::Cost) => "; less is impossible".to_owned(),
        (false, Aim::NewBars) => format!("; at least {} are needed", group.bound),
        (false, Aim::Cost) => format!("; at least {} is needed", list.money.words(group.bound)),
    };
    let scrap = if group.is_proven { ", and no list leaves less" } else { "" };
    let first = group.bars.first().and_then(|bar| list.sources.get(bar.source));
    let long = |source: &Source| marked(group.worth.scrap_nm, source);
    let scrap = format!("Scrap {}{scrap}", first.map_or_else(|| "0 mm".to_owned(), long));
    format!("{} used, {to_buy}{sure}. {scrap}. {}", bars(used), taken(list, group)).trim_end().to_owned()
}

/// How a group is cut: `chop saw, kerf 3 mm`.
pub fn way(group: &Group) -> String {
    let way = if group.way.is_empty() { String::new() } else { format!("{}, ", group.way) };
    let hold =
        group.hold_nm.map_or(String::new(), |hold| format!(", {} mm held to the last", tenths(hold as f64 / 1e6)));
    format!("{way}kerf {} mm{hold}", tenths(group.kerf_nm as f64 / 1e6))
}
