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
/// A label farther from its tick than this is hard to follow: then fewer rungs are drawn.
const FARTHEST_MM: f64 = 22.0;
/// Between the labels and the words that say what the scale is.
const CAPTION_GAP_MM: f64 = 5.0;

/// Which side of the line the ticks of a scale stand on.
#[derive(Clone, Copy, PartialEq)]
enum Stands {
    Above,
    Below,
}

/// The gauge with as many rungs as the page has room for and an eye can follow; none where the planned one or most of them have
/// no room.
pub(super) fn block(segment: &SegmentWords, width: f64) -> Option<Block> {
    let rungs: Vec<&RungWords> = segment.rungs.iter().filter(|rung| longest(rung) <= width - FREE_MM).collect();
    if rungs.len() * 2 <= segment.rungs.len() {
        return None;
    }
    let planned = rungs.iter().position(|rung| rung.planned)?;
    (1..=rungs.len().div_ceil(2)).find_map(|every| {
        let kept = rungs.iter().enumerate().filter(|(at, _)| at.abs_diff(planned).is_multiple_of(every));
        drawn(&kept.map(|(_, rung)| *rung).collect::<Vec<_>>(), width)
    })
}

/// The gauge of some rungs; none where their labels have no room near them.
fn drawn(rungs: &[&RungWords], width: f64) -> Option<Block> {
    let end = rungs.iter().map(|rung| longest(rung)).fold(0.0, f64::max);
    let line_y = LEADER_MM + CAPTION + 1.0;
    let hot: Vec<(&RungWords, f64)> = rungs.iter().filter_map(|rung| Some((*rung, rung.hot.as_ref()?.mm))).collect();
    let cold: Vec<(&RungWords, f64)> = rungs.iter().map(|rung| (*rung, rung.cold.mm)).collect();
    let is_hot = !hot.is_empty();
    let foot = if is_hot { line_y + PLANNED_TICK_MM } else { line_y };
    let mut items = vec![
        Item::line(at(0.0, line_y), at(end, line_y), Pen::Outline),
        Item::line(at(0.6, line_y - PLANNED_TICK_MM), at(0.6, foot), Pen::DatumLine),
    ];
    let (above, words) = if is_hot { (&hot, "full scale, hot") } else { (&cold, "full scale, cold") };
    items.extend(scale(above, words, line_y, Stands::Above, width)?);
    if is_hot {
        items.extend(scale(&cold, "full scale, cold", line_y, Stands::Below, width)?);
    }
    Some(Block { height: if is_hot { 2.0 * line_y } else { line_y + 3.0 }, items })
}

fn longest(rung: &RungWords) -> f64 {
    rung.hot.as_ref().map_or(rung.cold.mm, |hot| hot.mm.max(rung.cold.mm))
}

/// The ticks of one scale with their thicknesses, and beside these which scale it is; none where they have no room.
fn scale(rungs: &[(&RungWords, f64)], words: &str, line_y: f64, stands: Stands, width: f64) -> Option<Vec<Item>> {
    let caption = Text::new(at(0.0, 0.0), CAPTION, words).gray(Gray::DARK);
    let beside = caption.width_mm() + CAPTION_GAP_MM;
    let (size, places) =
        [CAPTION, SMALLEST].into_iter().find_map(|size| Some((size, label_places(rungs, size, width)?)))?;
    let half = |at: Option<&(&RungWords, f64)>| at.map_or(0.0, |(rung, _)| label_mm(rung, size) / 2.0);
    let first = places.first()? - half(rungs.first());
    let last = places.last()? + half(rungs.last());
    let up = if stands == Stands::Above { -1.0 } else { 1.0 };
    let baseline = match stands {
        Stands::Above => line_y - LEADER_MM,
        Stands::Below => line_y + LEADER_MM + size * CAP_HEIGHT,
    };
    let mut items = Vec::new();
    for ((rung, x), place) in rungs.iter().zip(places) {
        let (tick, pen) = if rung.planned { (PLANNED_TICK_MM, Pen::CutLine) } else { (TICK_MM, Pen::MarkLine) };
        // All leaders turn aside at one height, so that none runs through another or through a tick.
        let [tip, turn] = [tick, PLANNED_TICK_MM].map(|mm| line_y + up * mm);
        items.push(Item::line(at(*x, line_y), at(*x, tip), pen));
        items.push(Item::Polyline {
            points: vec![at(*x, tip), at(*x, turn), at(place, line_y + up * (LEADER_MM - 0.6))],
            pen: Pen::Leader,
        });
        items.push(Text::new(at(place, baseline), size, &rung.size).centered().weight(weight(rung)).into());
    }
    let after = last + CAPTION_GAP_MM;
    let fits_after = last + beside <= width;
    if fits_after || first >= beside {
        items.push(caption.moved_to(at(if fits_after { after } else { 0.0 }, baseline)).into());
    }
    Some(items)
}

/// Where the labels stand; none where they have no room near their ticks.
fn label_places(rungs: &[(&RungWords, f64)], size: f64, width: f64) -> Option<Vec<f64>> {
    let widths: Vec<f64> = rungs.iter().map(|(rung, _)| label_mm(rung, size)).collect();
    let apart: Vec<f64> = widths.windows(2).map(|pair| (pair[0] + pair[1]) / 2.0 + GAP_MM).collect();
    let wanted: Vec<f64> = rungs.iter().map(|(_, mm)| *mm).collect();
    let ends = [widths.first(), widths.last()].map(|width| width.copied().unwrap_or(0.0) / 2.0);
    let places = spread(&wanted, &apart, ends[0], width - ends[1])?;
    let is_near = wanted.iter().zip(&places).all(|(wanted, place)| (wanted - place).abs() <= FARTHEST_MM);
    (is_near || rungs.len() == 1).then_some(places)
}

fn label_mm(rung: &RungWords, size: f64) -> f64 {
    typeset::width_mm(&typeset::printable(&rung.size), size, weight(rung))
}

fn weight(rung: &RungWords) -> Weight {
    if rung.planned { Weight::SemiBold } else { Weight::Regular }
}
