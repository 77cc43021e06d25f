//! A ladder drawn at full scale from the segment's start: a tick where its end lies at each thickness.

use super::words::{RungWords, SegmentWords};
use crate::drawing::{Item, Text, at};
use crate::fonts::{CAP_HEIGHT, Weight};
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::spread::spread;
use crate::sheets::type_sizes::{CAPTION, SMALLEST};
use crate::typeset;

/// The length of a tick; that of the planned thickness is longer.
const TICK_MM: f64 = 3.0;
const PLANNED_TICK_MM: f64 = 5.0;
/// The height that leaders have to reach labels that were moved aside.
const LEADER_MM: f64 = 9.0;
/// The space between two labels.
const GAP_MM: f64 = 2.0;
/// The longest segment that is drawn beside its labels: its end must not stand at the edge of the page.
const FREE_MM: f64 = 12.0;

/// Which side of the line the ticks of a scale stand on.
#[derive(Clone, Copy, PartialEq)]
enum Stands {
    Above,
    Below,
}

/// The gauge with as many rungs as the page has room for; none where the planned one or most of them have none.
pub(super) fn block(segment: &SegmentWords, width: f64) -> Option<Block> {
    let rungs: Vec<&RungWords> = segment.rungs.iter().filter(|rung| longest(rung) <= width - FREE_MM).collect();
    if rungs.len() * 2 <= segment.rungs.len() || !rungs.iter().any(|rung| rung.planned) {
        return None;
    }
    let end = rungs.iter().map(|rung| longest(rung)).fold(0.0, f64::max);
    let line_y = LEADER_MM + CAPTION + 1.0;
    let mut items = vec![Item::line(at(0.0, line_y), at(end, line_y), Pen::Outline)];
    let hot: Vec<(&RungWords, f64)> = rungs.iter().filter_map(|rung| Some((*rung, rung.hot.as_ref()?.mm))).collect();
    let cold: Vec<(&RungWords, f64)> = rungs.iter().map(|rung| (*rung, rung.cold.mm)).collect();
    let is_hot = !hot.is_empty();
    items.extend(start(line_y, is_hot, end, width));
    items.extend(scale(if is_hot { &hot } else { &cold }, line_y, Stands::Above, width)?);
    if is_hot {
        items.extend(scale(&cold, line_y, Stands::Below, width)?);
    }
    Some(Block { height: if is_hot { 2.0 * line_y } else { line_y + 3.0 }, items })
}

fn longest(rung: &RungWords) -> f64 {
    rung.hot.as_ref().map_or(rung.cold.mm, |hot| hot.mm.max(rung.cold.mm))
}

/// The datum of the gauge, and which scale is which: behind the line, or before its ticks where the page ends there.
fn start(line_y: f64, is_hot: bool, end: f64, width: f64) -> Vec<Item> {
    let foot = if is_hot { line_y + PLANNED_TICK_MM } else { line_y };
    let mut items = vec![Item::line(at(0.6, line_y - PLANNED_TICK_MM), at(0.6, foot), Pen::DatumLine)];
    let mut caption = |y: f64, words: &str| {
        let text = Text::new(at(3.0, y), CAPTION, words).gray(Gray::DARK);
        let behind = end + FREE_MM / 2.0;
        let fits = behind + text.width_mm() <= width;
        items.push(if fits { text.moved_to(at(behind, y)) } else { text }.into());
    };
    caption(line_y - 1.8, if is_hot { "full scale, hot" } else { "full scale, cold" });
    if is_hot {
        caption(line_y + 1.8 + CAPTION * CAP_HEIGHT, "full scale, cold");
    }
    items
}

/// The ticks of one scale with their thicknesses; none where these have no room.
fn scale(rungs: &[(&RungWords, f64)], line_y: f64, stands: Stands, width: f64) -> Option<Vec<Item>> {
    let label_width =
        |size: f64, rung: &RungWords| typeset::width_mm(&typeset::printable(&rung.size), size, weight(rung));
    let set = |size: f64| {
        let widths: Vec<f64> = rungs.iter().map(|(rung, _)| label_width(size, rung)).collect();
        let apart: Vec<f64> = widths.windows(2).map(|pair| (pair[0] + pair[1]) / 2.0 + GAP_MM).collect();
        let wanted: Vec<f64> = rungs.iter().map(|(_, mm)| *mm).collect();
        let ends = [widths.first(), widths.last()].map(|width| width.copied().unwrap_or(0.0) / 2.0);
        Some((size, spread(&wanted, &apart, ends[0], width - ends[1])?))
    };
    let (size, places) = set(CAPTION).or_else(|| set(SMALLEST))?;
    let up = if stands == Stands::Above { -1.0 } else { 1.0 };
    let mut items = Vec::new();
    for ((rung, x), place) in rungs.iter().zip(places) {
        let (tick, pen) = if rung.planned { (PLANNED_TICK_MM, Pen::CutLine) } else { (TICK_MM, Pen::MarkLine) };
        let tip = line_y + up * tick;
        items.push(Item::line(at(*x, line_y), at(*x, tip), pen));
        items.push(Item::line(at(*x, tip), at(place, line_y + up * (LEADER_MM - 0.6)), Pen::Leader));
        let baseline = match stands {
            Stands::Above => line_y - LEADER_MM,
            Stands::Below => line_y + LEADER_MM + size * CAP_HEIGHT,
        };
        items.push(Text::new(at(place, baseline), size, &rung.size).centered().weight(weight(rung)).into());
    }
    Some(items)
}

fn weight(rung: &RungWords) -> Weight {
    if rung.planned { Weight::SemiBold } else { Weight::Regular }
}
