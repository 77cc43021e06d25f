//! The sizes of a forged shape: its section, and its length, which follows from it.

use crate::progress::Progress;
use crate::site::{Part, Site, in_mm, in_mm2};
use crate::size::{AS_IT_IS, Size};
use crate::state::shape_now;
use fh_core::balance::{blunt_tip_mm, leeway};
use fh_core::metal::{CornerSize, SectionSize, Shape};
use uom::si::f64::Length;

/// What is measured of a shape, in mm: what is forged to a gauge first.
pub(crate) type Row = (String, f64);

pub(crate) fn section_rows(place: &str, section: &SectionSize) -> Vec<Row> {
    let row = |what: &str, size| {
        let what = if place.is_empty() { what.to_owned() } else { format!("{what} {place}") };
        (what, in_mm(size))
    };
    match *section {
        SectionSize::Point => Vec::new(),
        SectionSize::Square { side, .. } => vec![row("square", side)],
        SectionSize::Round { diameter } => vec![row("diameter", diameter)],
        SectionSize::Flat { width, thickness, .. } | SectionSize::Oval { width, thickness } => {
            vec![row("width", width), row("thickness", thickness)]
        }
        SectionSize::Hexagon { across_flats } | SectionSize::Octagon { across_flats } => {
            vec![row("across flats", across_flats)]
        }
        SectionSize::Diamond { side } => vec![row("square on its corner", side)],
        SectionSize::HalfRound { width, height } => vec![row("width", width), row("height", height)],
        SectionSize::Edge { width } => vec![row("width of the edge", width)],
    }
}

/// The rows of a shape besides its length. `planned` says which of its ends run out to nothing: these have none.
fn rows(shape: &Shape, planned: &Shape, reversed: bool) -> Vec<Row> {
    match (shape, planned) {
        (Shape::Prism { section, .. }, _) => section_rows("", section),
        (Shape::Taper { from, to, .. }, Shape::Taper { from: first, to: last, .. }) => {
            let ends = [(from, first), (to, last)];
            let [start, end] = if reversed { [ends[1], ends[0]] } else { ends };
            let end_rows = |place: &str, (now, planned): (&SectionSize, &SectionSize)| {
                if planned.is_end() { section_rows(place, planned) } else { section_rows(place, now) }
            };
            let mut all = end_rows("at its start", start);
            all.extend(end_rows("at its end", end));
            all
        }
        (Shape::Flag { outline, root, tip }, _) => {
            let (root, tip) = (in_mm(*root), in_mm(*tip));
            let mut all = if matches!(planned, Shape::Flag { root, tip, .. } if (in_mm(*root) - in_mm(*tip)).abs() < 1e-9)
            {
                vec![("thickness".to_owned(), root)]
            } else {
                vec![("thickness at the root".to_owned(), root), ("thickness at the tip".to_owned(), tip)]
            };
            all.push(("width".to_owned(), in_mm(outline.width())));
            all
        }
        (Shape::Hole { outline, thickness, .. }, _) => {
            vec![("thickness".to_owned(), in_mm(*thickness)), ("width".to_owned(), in_mm(outline.width()))]
        }
        _ => Vec::new(),
    }
}

/// The sizes of a forged shape and how far they may be off: its section, and its length, which follows from it.
pub(crate) fn sized(site: &Site<'_>, part: Part<'_>, shape: &Shape) -> Vec<Size> {
    let plan = site.plan;
    let reversed = part.balance.reversed;
    let long = in_mm(shape.length());
    let planned = rows(shape, shape, reversed);
    let Some(leeway) = leeway(plan, &part.segment.form, shape, site.raw_section(part.at)) else {
        // As the bar is: nothing of it is forged to a gauge.
        let as_it_is = |(what, mm): &Row| Size { tolerance: Some(AS_IT_IS.to_owned()), ..Size::bare(plan, what, *mm) };
        return planned.iter().map(as_it_is).chain([Size::bare(plan, "length", long)]).collect();
    };
    let [thin, fat] = [&leeway.thin, &leeway.fat].map(|end| rows(end, shape, reversed));
    let ends = |of: usize| [thin.get(of), fat.get(of)].map(|row| row.map_or(f64::NAN, |(_, mm)| *mm));
    let is_plate = matches!(shape, Shape::Flag { .. } | Shape::Hole { .. });
    let mut all: Vec<Size> = Vec::new();
    for (of, (what, mm)) in planned.iter().enumerate() {
        let size = Size::between(plan, what, *mm, sorted(ends(of)));
        all.push(match size.between_mm {
            None => Size { tolerance: Some(AS_IT_IS.to_owned()), ..size },
            Some(_) if leeway.length_binds => size.following(plan, "the length"),
            Some(_) if is_plate && what == "width" => size.following(plan, "the thickness"),
            Some(_) => size,
        });
    }
    let length = Size::between(plan, "length", long, [in_mm(leeway.fat.length()), in_mm(leeway.thin.length())]);
    let from = if is_plate { "the thickness".to_owned() } else { changes(&all) };
    if !leeway.length_binds
        && from == BLUNT
        && let Some(mm) = blunt_tip_mm(plan, shape)
    {
        all.push(Size::bare(plan, "left at the tip, at most", mm));
    }
    all.push(if leeway.length_binds { length } else { length.following(plan, &from) });
    all
}

/// What a tip that runs out to nothing is called, where the length follows from how blunt it is left.
const BLUNT: &str = "the tip";

/// What of a section may be off, as that from which the length follows.
fn changes(sizes: &[Size]) -> String {
    let mut off = sizes.iter().filter(|size| size.between_mm.is_some() && size.follows.is_none());
    match (off.next(), off.next()) {
        (None, _) => BLUNT.to_owned(),
        (Some(only), None) => format!("the {}", only.what),
        _ => "the section".to_owned(),
    }
}

fn sorted([one, other]: [f64; 2]) -> [f64; 2] {
    [one.min(other), one.max(other)]
}
/// By how much a part may be shorter and longer than planned, in mm; none where that is not known.
pub(crate) fn off_mm(site: &Site<'_>, progress: &Progress, at: usize) -> Option<[f64; 2]> {
    let part = site.part(at)?;
    let shape = shape_now(site, progress, at, &progress.lengths(site))?;
    let leeway = leeway(site.plan, &part.segment.form, &shape, site.raw_section(at))?;
    let [fat, own, thin] = [&leeway.fat, &shape, &leeway.thin].map(|shape| in_mm(shape.length()));
    Some([(own - fat).max(0.0), (thin - own).max(0.0)])
}

/// How long several parts are together, one after the other, in mm.
pub(crate) fn length_in_all(site: &Site<'_>, progress: &Progress, parts: &[usize], what: &str, mm: f64) -> Size {
    // They are drawn to one section: where one is fat, all are.
    let off = parts.iter().filter_map(|at| off_mm(site, progress, *at));
    let [down, up] = off.fold([0.0, 0.0], |sum: [f64; 2], off| [sum[0] + off[0], sum[1] + off[1]]);
    Size::between(site.plan, what, mm, [mm - down, mm + up]).following(site.plan, "the section")
}

/// A rivet with one head made; the other stands out yet.
pub(crate) fn headed(site: &Site<'_>, part: Part<'_>, diameter: Length, shank: Length) -> Vec<Size> {
    let shape = Shape::Prism { section: SectionSize::Round { diameter }, length: shank };
    let named = |size: Size| match size.what.as_str() {
        "length" => Size { what: "shank under the head".to_owned(), ..size },
        _ => size,
    };
    sized(site, part, &shape).into_iter().map(named).collect()
}

/// A swelling for a corner: as its bar is beside it, and as thick over the swelling as its metal makes it.
pub(crate) fn peak(
    site: &Site<'_>,
    part: Part<'_>,
    section: &SectionSize,
    corner: &CornerSize,
    now_mm: f64,
) -> Vec<Size> {
    let plan = site.plan;
    let beside = Shape::Prism { section: *section, length: crate::site::mm(now_mm) };
    let mut all = sized(site, part, &beside);
    all.pop();
    for size in &mut all {
        size.what = format!("{} of the bar beside it", size.what);
    }
    let (thickness, wide) = (in_mm(corner.thickness), in_mm(corner.width));
    let over = thickness + in_mm(corner.peak_volume() / corner.width / corner.length()) * 2.0;
    let swelling = Size::length(plan, "thickness over the swelling", over);
    // The swelling is a triangle over the bar: half its height counts. The bar beside it is kept.
    let mean = |over: f64| in_mm2(section.area()) + wide * (over - thickness) / 2.0;
    let planned = mean(over);
    let long = |over: f64| now_mm * planned / mean(over.max(thickness));
    let between = swelling.between_mm.map_or([now_mm; 2], |[low, high]| [long(high), long(low)]);
    all.push(swelling);
    all.push(Size::between(plan, "length", now_mm, between).following(plan, "the swelling"));
    all
}
