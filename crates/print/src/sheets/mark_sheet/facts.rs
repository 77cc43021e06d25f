//! The facts in the heading of a bar's part: what is fetched from the rack, and what is cut from it.

use crate::sheets::fact_boxes::Fact;
use fh_core::balance::{Balance, BarBalance, BarSpread, totals};
use fh_core::describe::scale_words;
use fh_core::plan::{Bar, Coating, Plan, PlanUnit};
use fh_measure::counted;
use uom::si::f64::Mass;
use uom::si::length::millimeter;
use uom::si::mass::{kilogram, pound};

/// Stock, length, count, material and masses.
pub(super) fn facts(plan: &Plan, bar: &Bar, worked: &BarBalance, spread: Option<&BarSpread>) -> Vec<Fact> {
    let unit = plan.units.length;
    let mut facts = vec![
        Fact { caption: "stock", value: bar.stock.describe(), also: String::new() },
        length_fact(plan, bar, worked, spread),
        Fact { caption: "how many", value: bar.pieces().to_string(), also: String::new() },
        material_fact(plan, bar),
    ];
    facts.extend(spread.and_then(|spread| overall_fact(plan, worked, spread)));
    if !worked.segments.is_empty() {
        facts.push(mass_fact("bar weighs", worked.stock_mass, bar.pieces(), unit));
        facts.push(mass_fact("piece weighs", worked.finished_mass, bar.pieces(), unit));
    }
    facts
}

/// What all bars of a plan take together.
pub(super) fn whole_plan_fact(plan: &Plan, balance: &Balance) -> Fact {
    let (all, unit) = (totals(plan, balance), plan.units.length);
    let cut = plan.units.marks.round_up(all.cut_length.get::<millimeter>()).text();
    let weighs = |mass| mass_words(mass, unit);
    Fact {
        caption: "whole plan, all bars",
        value: format!("{}, cut {cut}", counted(all.pieces, "piece")),
        also: format!("bars weigh {}, pieces {}", weighs(all.stock_mass), weighs(all.finished_mass)),
    }
}

/// The length to cut, as the last mark is rounded; or the length of a bar that is already cut.
fn length_fact(plan: &Plan, bar: &Bar, worked: &BarBalance, spread: Option<&BarSpread>) -> Fact {
    let between = spread.and_then(|spread| spread.stock_length.words(plan.units.marks));
    let exact = between.unwrap_or_else(|| exactly(plan, bar, worked));
    match (&bar.length, worked.whole().last().map(|(_, last)| last)) {
        (Some(length), _) => Fact { caption: "bar already cut to", value: length.text().to_owned(), also: exact },
        (None, Some(last)) => Fact { caption: "cut length", value: last.mark_end_shop.text(), also: exact },
        (None, None) => Fact { caption: "cut length", value: "not known yet".to_owned(), also: String::new() },
    }
}

/// The length that the cut one is rounded up from.
fn exactly(plan: &Plan, bar: &Bar, worked: &BarBalance) -> String {
    let exact = worked.stock_length.get::<millimeter>();
    let up = worked.cut_length_shop(plan.units.marks).mm() - exact;
    let up = if bar.length.is_none() && up >= 0.05 { ", rounded up" } else { "" };
    format!("exactly {exact:.1} mm{up}")
}

/// The overall size forged and still straight, where tolerances make a range of it.
fn overall_fact(plan: &Plan, worked: &BarBalance, spread: &BarSpread) -> Option<Fact> {
    let also = spread.forged_length.words(plan.units.marks)?;
    let value = plan.units.marks.round(worked.forged_length.get::<millimeter>()).text();
    Some(Fact { caption: "forged, still straight", value, also })
}

/// What it is made of; below it the coating, and the scale that the marks allow for, each part with its own.
fn material_fact(plan: &Plan, bar: &Bar) -> Fact {
    let scale = format!("scale allowed for {}", scale_words(plan, bar));
    let coating = plan.coating.map_or("", Coating::name);
    let also = if coating.is_empty() { scale } else { format!("{coating}; {scale}") };
    Fact { caption: "material", value: plan.material_name().to_owned(), also }
}

/// The mass of one, and of all where several are made.
fn mass_fact(caption: &'static str, each: Mass, count: u32, unit: PlanUnit) -> Fact {
    let also = match count {
        0 | 1 => other_mass_words(each, unit),
        _ => format!("all {count}: {}", mass_words(each * f64::from(count), unit)),
    };
    Fact { caption, value: mass_words(each, unit), also }
}

fn mass_words(mass: Mass, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => format!("{:.2} lb", mass.get::<pound>()),
        PlanUnit::Millimeter => format!("{:.2} kg", mass.get::<kilogram>()),
    }
}

fn other_mass_words(mass: Mass, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => mass_words(mass, PlanUnit::Millimeter),
        PlanUnit::Millimeter => mass_words(mass, PlanUnit::Inch),
    }
}
