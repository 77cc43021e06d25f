//! The sizes of a forged shape: its section, and its length, which follows from it.

use crate::bar::progress::Progress;
use crate::bar::state::shape_now;
use crate::job::site::{Part, Site, extents, in_mm};
use crate::says::size::{AS_IT_IS, Measure, Size};
use crate::says::words::length_words;
use fh_core::balance::{blunt_tip_mm, leeway};
use fh_core::metal::{CornerSize, Runout, SectionSize, Shape};
use fh_core::plan::Plan;
use uom::si::f64::Length;

/// What is measured of a shape: what is forged to a gauge first.
pub(crate) struct Row {
    pub(crate) measure: Measure,
    pub(crate) what: String,
    pub(crate) mm: f64,
}

impl Row {
    fn new(measure: Measure, what: &str, size: Length) -> Self {
        Self { measure, what: what.to_owned(), mm: in_mm(size) }
    }
}

pub(crate) fn section_rows(place: &str, section: &SectionSize) -> Vec<Row> {
    let row = |measure, what: &str, size| match (place, measure) {
        ("", _) => Row::new(measure, what, size),
        (_, Measure::Width) => Row::new(Measure::WidthThere, &format!("{what} {place}"), size),
        _ => Row::new(measure, &format!("{what} {place}"), size),
    };
    let across = |what, size| row(Measure::Across, what, size);
    match *section {
        SectionSize::Point => Vec::new(),
        SectionSize::Square { side, .. } => vec![across("square", side)],
        SectionSize::Round { diameter } => vec![across("diameter", diameter)],
        SectionSize::Flat { width, thickness, .. } | SectionSize::Oval { width, thickness } => {
            vec![row(Measure::Width, "width", width), row(Measure::Thickness, "thickness", thickness)]
        }
        SectionSize::Hexagon { across_flats } | SectionSize::Octagon { across_flats } => {
            vec![across("across flats", across_flats)]
        }
        SectionSize::Diamond { side } => vec![across("square on its corner", side)],
        SectionSize::HalfRound { width, height } => {
            vec![row(Measure::Width, "width", width), across("height of the half-round", height)]
        }
        SectionSize::Edge { width } => vec![row(Measure::WidthThere, "width of the edge", width)],
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
        (Shape::Flag { outline, root, tip, .. }, _) => {
            let thick = |what, size| Row::new(Measure::Thickness, what, size);
            let mut all = if matches!(planned, Shape::Flag { root, tip, .. } if (in_mm(*root) - in_mm(*tip)).abs() < 1e-9)
            {
                vec![thick("thickness", *root)]
            } else {
                vec![thick("thickness at the root", *root), thick("thickness at the tip", *tip)]
            };
            all.push(Row::new(Measure::Width, "width", outline.width()));
            all
        }
        (Shape::Hole { outline, thickness, .. }, _) => {
            let thick = Row::new(Measure::Thickness, "thickness", *thickness);
            vec![thick, Row::new(Measure::Width, "width", outline.width())]
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
        let as_it_is = |row: &Row| {
            let size = Size::bare(plan, &row.what, row.mm).of(row.measure);
            Size { tolerance: Some(AS_IT_IS.to_owned()), ..size }
        };
        let length = Size::bare(plan, "length", long).of(Measure::Length);
        return planned.iter().map(as_it_is).chain([length]).collect();
    };
    let [thin, fat] = [&leeway.thin, &leeway.fat].map(|end| rows(end, shape, reversed));
    let ends = |of: usize| [thin.get(of), fat.get(of)].map(|row| row.map_or(f64::NAN, |row| row.mm));
    let is_plate = matches!(shape, Shape::Flag { .. } | Shape::Hole { .. });
    let mut all: Vec<Size> = Vec::new();
    for (of, row) in planned.iter().enumerate() {
        let size = Size::between(plan, &row.what, row.mm, sorted(ends(of))).of(row.measure);
        all.push(match size.between_mm {
            None => Size { tolerance: Some(AS_IT_IS.to_owned()), ..size },
            Some(_) if leeway.length_binds => size.following(plan, "the length"),
            Some(_) if is_plate && row.measure == Measure::Width => size.following(plan, "the thickness"),
            Some(_) => size,
        });
    }
    let ends = [in_mm(leeway.fat.length()), in_mm(leeway.thin.length())];
    let length = Size::between(plan, "length", long, ends).of(Measure::Length);
    let from = if is_plate { "the thickness".to_owned() } else { changes(&all) };
    if !leeway.length_binds
        && from == BLUNT
        && let Some(mm) = blunt_tip_mm(plan, shape)
    {
        all.push(Size::bare(plan, "left at the tip, at most", mm));
    }
    all.extend(quarters(plan, shape, reversed));
    all.push(if leeway.length_binds { length } else { length.following(plan, &from) });
    all
}

/// What lies between the ends of a full or a hollow taper, at each quarter of its length from its start.
fn quarters(plan: &Plan, shape: &Shape, reversed: bool) -> Vec<Size> {
    /// A shorter one is forged by eye, in mm: common practice, no source.
    const BY_EYE: f64 = 40.0;
    let Shape::Taper { from, to, runout, length } = shape else { return Vec::new() };
    let long = in_mm(*length);
    if !matches!(runout, Runout::Power(_)) || long < BY_EYE {
        return Vec::new();
    }
    let quarter = |share: f64| {
        let f = runout.share_at(if reversed { 1.0 - share } else { share });
        let [one, other] = [extents(from), extents(to)];
        let size = [0, 1].map(|way| (1.0 - f) * one[way] + f * other[way]);
        let place = length_words(plan, share * long);
        let there = move |(measure, what, mm): (Measure, &str, f64)| {
            Size::length(plan, &format!("{what} {place} from its start"), mm).of(measure)
        };
        between_rows(from, to, size).into_iter().map(there)
    };
    [0.25, 0.5, 0.75].into_iter().flat_map(quarter).collect()
}

/// What is measured of a section between two others, so wide and so thick in mm.
fn between_rows(
    from: &SectionSize,
    to: &SectionSize,
    [width, thickness]: [f64; 2],
) -> Vec<(Measure, &'static str, f64)> {
    use SectionSize as S;
    let kind = if from.is_end() { to } else { from };
    let is_one_kind = from.is_end() || to.is_end() || std::mem::discriminant(from) == std::mem::discriminant(to);
    let across = |what| vec![(Measure::Across, what, thickness)];
    match kind {
        S::Square { .. } if is_one_kind => across("square"),
        S::Round { .. } if is_one_kind => across("diameter"),
        S::Hexagon { .. } | S::Octagon { .. } if is_one_kind => across("across flats"),
        _ if (width - thickness).abs() < 0.05 => vec![(Measure::Thickness, "thickness", thickness)],
        _ => vec![(Measure::WidthThere, "width", width), (Measure::Thickness, "thickness", thickness)],
    }
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
    let size = Size::between(site.plan, what, mm, [mm - down, mm + up]).of(Measure::Length);
    size.following(site.plan, "the section")
}

/// A rivet with one head made; the other stands out yet.
pub(crate) fn headed(site: &Site<'_>, part: Part<'_>, diameter: Length, shank: Length) -> Vec<Size> {
    let shape = Shape::Prism { section: SectionSize::Round { diameter }, length: shank };
    let named = |size: Size| match size.measure {
        Measure::Length => Size { what: "shank under the head".to_owned(), ..size }.of(Measure::Other),
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
    let beside = Shape::Prism { section: *section, length: crate::job::site::mm(now_mm) };
    let mut all = sized(site, part, &beside);
    all.pop();
    for size in &mut all {
        size.what = format!("{} of the bar beside it", size.what);
        if size.measure == Measure::Width {
            size.measure = Measure::WidthThere;
        }
    }
    let thickness = in_mm(corner.thickness);
    let over = thickness + in_mm(corner.peak_volume() / corner.width / corner.length()) * 2.0;
    // A corner that is too full is filed; one that is short of metal stays hollow.
    all.push(Size::bare(plan, "thickness over the swelling, at least", over).of(Measure::Swelling));
    all.push(Size::bare(plan, "length, at most", now_mm).of(Measure::Length));
    all
}
