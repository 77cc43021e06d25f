//! Settles what the ladder sheet of a plan says.

use super::words::{BarWords, Measure, RungWords, SegmentWords, SheetWords};
use crate::sheets::names::{bar_name, title};
use fh_core::balance::{Balance, CHECKING_HEAT_CELSIUS, Ladder, Rung, SegmentBalance, hot_length, ladder};
use fh_core::describe::{fine_length, ladder_size_words, made_words, rung_change_words, rung_size_words, segment_name};
use fh_core::plan::{Bar, Plan};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// Everything that the sheet says.
pub(super) fn sheet_words(plan: &Plan, balance: &Balance) -> SheetWords {
    let bars = plan.bars.iter().enumerate();
    SheetWords {
        title: title(plan),
        bars: bars.map(|(index, bar)| bar_words(plan, balance, index, bar)).collect(),
        explained: explained(plan),
    }
}

fn explained(plan: &Plan) -> String {
    let hot = match hot_length(plan, Length::new::<millimeter>(1.0)) {
        Some(_) => format!(
            " Hot is the length on the bar at about {CHECKING_HEAT_CELSIUS} °C, between a light cherry red and orange; a duller bar measures shorter."
        ),
        None => String::new(),
    };
    format!(
        "Once the marks are struck, each of these parts has its metal: left fat it stays short, drawn thin it runs long. \
         Lay a rule on the bar, find the length in the ladder, and read off how thick the part is by now.{hot}"
    )
}

fn bar_words(plan: &Plan, balance: &Balance, index: usize, bar: &Bar) -> BarWords {
    let ladders = (0..bar.count_segments()).filter_map(|at| Some((at, ladder(plan, balance, index, at)?)));
    BarWords {
        name: bar_name(plan, index, bar),
        segments: ladders
            .filter_map(|(at, ladder)| {
                segment_words(plan, bar, balance.bars.get(index)?.segments.get(at)?, at, &ladder)
            })
            .collect(),
    }
}

fn segment_words(plan: &Plan, bar: &Bar, balance: &SegmentBalance, at: usize, ladder: &Ladder) -> Option<SegmentWords> {
    let segment = bar.segment(at)?;
    Some(SegmentWords {
        number: bar.path(at),
        name: segment_name(bar, at),
        becomes: made_words(segment, balance, plan.units.length).form,
        measured: ladder_size_words(ladder),
        rungs: ladder.rungs.iter().rev().map(|rung| rung_words(plan, rung)).collect(),
    })
}

fn rung_words(plan: &Plan, rung: &Rung) -> RungWords {
    let marks = plan.units.marks;
    // The planned length is told as everywhere else.
    let words = |length: Length| match rung.steps {
        0 => fine_length(length, plan.units.length),
        _ => marks.round(length.get::<millimeter>()).text(),
    };
    let measure = |length: Length| Measure { words: words(length), mm: length.get::<millimeter>() };
    RungWords {
        planned: rung.steps == 0,
        size: rung_size_words(rung, plan.units.length),
        cold: measure(rung.length),
        hot: hot_length(plan, rung.length).map(measure),
        change: if rung.steps == 0 { "as planned".to_owned() } else { rung_change_words(rung, marks) },
    }
}
