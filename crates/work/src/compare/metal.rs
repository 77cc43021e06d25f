//! The metal of two plans: what each bar is made from and cut to, and what it weighs.

use super::align::Pair;
use super::figures::{line, mass_words, signed};
use super::{ComparedLine, Version};
use fh_core::balance::{BarBalance, totals};
use fh_core::describe::short_name;
use fh_core::plan::{Bar, Plan};
use fh_measure::format_length;
use fh_piece::{Quality, hung};
use uom::si::f64::Mass;
use uom::si::mass::kilogram;

pub(super) fn lines(first: Version<'_>, second: Version<'_>, bars: &[Pair]) -> Vec<ComparedLine> {
    let both = [first, second];
    let plans = both.map(|version| version.plan);
    let mut all = vec![
        line("metal", both.map(|version| Some(version.plan.material_name().to_owned())), None),
        line("scale", plans.map(scale), None),
    ];
    for pair in bars {
        all.extend(of_bar(both, *pair, bars.len() > 1));
    }
    let sums = both.map(|version| totals(version.plan, version.balance));
    if bars.len() > 1 || sums.iter().any(|sum| sum.pieces > 1) {
        all.push(weight("all bars weigh", plans, sums.map(|sum| Some(sum.stock_mass))));
    }
    all.push(weight("finished weight", plans, sums.map(|sum| Some(sum.finished_mass))));
    all.push(line("size over all", both.map(size), None));
    all
}

fn scale(plan: &Plan) -> Option<String> {
    Some(plan.scale.as_ref().map_or_else(|| "none".to_owned(), |share| share.text().to_owned()))
}

fn of_bar(both: [Version<'_>; 2], pair: Pair, are_many: bool) -> Vec<ComparedLine> {
    let bar = |side: usize| -> Option<(&Bar, &BarBalance)> {
        let at = pair[side]?;
        Some((both[side].plan.bars.get(at)?, both[side].balance.bars.get(at)?))
    };
    let bars = [bar(0), bar(1)];
    let name = bars.iter().flatten().next().map_or("", |(bar, _)| bar.name.trim());
    let what = |what: &str| match (are_many, name) {
        (true, "") => format!("bar {}: {what}", pair.iter().flatten().next().map_or(0, |at| at + 1)),
        (true, name) => format!("{}: {what}", short_name(name)),
        _ => what.to_owned(),
    };
    let plans = both.map(|version| version.plan);
    let marks = |side: usize| plans[side].units.marks;
    let cut = |side: usize| Some(bars[side]?.1.cut_length_shop(marks(side)));
    let cuts = [cut(0), cut(1)];
    let by = cuts[0]
        .zip(cuts[1])
        .map(|(a, b)| signed(b.mm() - a.mm(), |mm| format_length(mm, plans[0].units.length.length_unit(), marks(0))));
    vec![
        line(what("bar"), bars.map(|bar| Some(bar?.0.stock.describe())), None),
        line(what("pieces"), bars.map(|bar| Some(bar?.0.pieces().to_string())), None),
        line(what("to cut"), cuts.map(|cut| Some(cut?.text())), by),
        weight(&what("bar weighs"), plans, bars.map(|bar| Some(bar?.1.stock_mass))),
    ]
}

fn weight(what: &str, plans: [&Plan; 2], masses: [Option<Mass>; 2]) -> ComparedLine {
    let unit = |side: usize| plans[side].units.length;
    let words = |side: usize| masses[side].map(|mass| mass_words(mass, unit(side)));
    let by = masses[0]
        .zip(masses[1])
        .map(|(a, b)| signed((b - a).get::<kilogram>(), |kg| mass_words(Mass::new::<kilogram>(kg), unit(0))));
    line(what, [words(0), words(1)], by)
}

/// How long, wide and high the finished piece is, as it is put together.
fn size(version: Version<'_>) -> Option<String> {
    let bounds = hung(version.plan, version.balance, Quality::Screen).bounds()?;
    let units = version.plan.units;
    let sizes = bounds.size().map(|mm| format_length(mm, units.length.length_unit(), units.marks));
    Some(sizes.join(" × "))
}
