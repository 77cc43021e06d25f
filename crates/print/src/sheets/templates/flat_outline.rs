//! The outlines of spread blocks and bosses, before anything is trimmed and after, with their holes.

use super::figure::{Figure, circle, cross};
use super::lie::Lie;
use super::plate_holes;
use super::template::{Line, Template};
use super::tiles::tile_count;
use super::words::{bent_words, hole_words, size_words};
use crate::drawing::{Item, Text, at};
use crate::pen::Pen;
use crate::sheets::sizes_in_words::mm_words;
use crate::sheets::type_sizes::{BODY, FACT};
use fh_core::balance::SegmentBalance;
use fh_core::describe::segment_name;
use fh_core::forms;
use fh_core::metal::{Bent, Blank, HoleSize, Outline, Shape};
use fh_core::plan::{Bar, Form, Plan, PlanUnit, SocketAxis};
use fh_measure::{in_mm, mm};
use uom::si::f64::Length;

/// How far a center line stands out.
const CENTER_OUT_MM: f64 = 5.0;
/// A rim thinner than this is not forged, and its line would run into the outline's, in mm (common practice, no source).
const LEAST_TRIM_MM: f64 = 0.5;
/// From the root to the dimension of its width.
const ROOT_WIDTH_MM: f64 = 22.0;
/// From the outline to a dimension.
const DIMENSION_MM: f64 = 11.0;

/// The template of a flag or a boss, counted through the bar; none for other segments.
pub(super) fn outline_template(
    plan: &Plan,
    bar: &Bar,
    number: usize,
    balance: &SegmentBalance,
    page: [f64; 2],
) -> Option<Template> {
    let segment = bar.segment(number)?;
    let unit = plan.units.length;
    let name = segment_name(bar, number);
    match balance.shape.as_ref()? {
        shape @ Shape::Flag { outline, root, tip, blank, holes } => {
            let trim = match &segment.form {
                Form::Flag(forms::Flag { trim, .. }) => trim.as_ref().map_or(0.0, fh_measure::WrittenShare::ratio),
                _ => 0.0,
            };
            let axis = roll_axis(balance.bent.as_ref());
            let blank = blank.as_deref();
            let figure = lying(page, |lie| {
                let mut items = flag_items(unit, outline, &before(outline, blank, trim), axis, lie);
                items.extend(plate_holes::hole_items(holes, lie));
                items
            });
            let tip = blank.map_or(*tip, |blank| blank.tip);
            let mut lines = vec![line(thickness_words(unit, *root, tip))];
            lines.extend(blank.and_then(|blank| blank_words(unit, shape, &blank.outline)).map(line));
            if trim > 0.0 {
                lines.push(line(trim_words(unit, outline, trim)));
            }
            lines.extend(plate_holes::hole_lines(unit, holes));
            lines.extend(bent_words(plan, balance.bent.as_ref(), shape).map(|words| line(format!("then {words}"))));
            lines.extend(rolled_words(balance.bent.as_ref()).map(|words| line(words.to_owned())));
            Some(Template { name: with_path(bar, number, &name), figure, lines })
        }
        Shape::Hole { outline, thickness, hole, at } => {
            let figure = lying(page, |lie| {
                let mut items = flag_items(unit, outline, &Before::Nothing, None, lie);
                items.extend(hole_items(unit, outline, hole, *at, lie));
                items
            });
            let lines = vec![line(format!("{} thick", size_words(unit, *thickness))), line(hole_words(unit, hole))];
            Some(Template { name: with_path(bar, number, &name), figure, lines })
        }
        _ => None,
    }
}

fn line(words: String) -> Line {
    Line { number: String::new(), words }
}

/// A segment's path and name: `4 leaf`.
pub(super) fn with_path(bar: &Bar, number: usize, name: &str) -> String {
    format!("{} · {name}", bar.path(number))
}

/// The axis that a flag is rolled about, if it is rolled.
fn roll_axis(bent: Option<&Bent>) -> Option<SocketAxis> {
    match bent {
        Some(Bent::Socket { axis, .. }) => Some(*axis),
        _ => None,
    }
}

fn rolled_words(bent: Option<&Bent>) -> Option<&'static str> {
    roll_axis(bent).map(|axis| match axis {
        SocketAxis::Along => "unrolled; the axis lies along the bar",
        SocketAxis::Across => "unrolled; the axis lies across the bar",
    })
}

fn thickness_words(unit: PlanUnit, root: Length, tip: Length) -> String {
    if (root - tip).abs() < mm(0.005) {
        format!("{} thick", size_words(unit, root))
    } else {
        format!("{} thick at the root, {} at the tip", size_words(unit, root), size_words(unit, tip))
    }
}

fn share_words(share: f64) -> String {
    let percent = format!("{:.1}", share * 100.0);
    format!("{} %", percent.trim_end_matches('0').trim_end_matches('.'))
}

/// The drawing as it lies level, or upright where that takes less paper.
fn lying(page: [f64; 2], items: impl Fn(Lie) -> Vec<Item>) -> Figure {
    let [level, upright] = [Lie::Level, Lie::Upright].map(|lie| Figure::of(items(lie)));
    if tile_count(&upright, page) < tile_count(&level, page) { upright } else { level }
}

/// What an outline is before it is cut.
enum Before {
    /// As it is after.
    Nothing,
    /// A rim all round, by its points in mm.
    Rim(Vec<[f64; 2]>),
    /// A blank on the same base line.
    Blank(Outline),
}

fn before(outline: &Outline, blank: Option<&Blank>, trim: f64) -> Before {
    match blank {
        Some(blank) => Before::Blank(blank.outline.clone()),
        None if side_to_trim(outline, trim) >= LEAST_TRIM_MM => Before::Rim(grown(outline, &outline.points_mm(), trim)),
        None => Before::Nothing,
    }
}

/// What the dashed blank is, and what of it is cut away.
fn blank_words(unit: PlanUnit, shape: &Shape, blank: &Outline) -> Option<String> {
    let cut = shape.cut()?;
    let sizes = [blank.length(), blank.width()].map(|size| size_words(unit, size));
    let share = (cut.away_area / blank.area()).value;
    Some(format!(
        "dashed: the blank it is spread to, {} × {}; {} of it are cut away",
        sizes[0],
        sizes[1],
        share_words((share * 1000.0).round() / 1000.0)
    ))
}

/// From where to where points lie across the bar.
fn across_of(points: &[[f64; 2]]) -> [f64; 2] {
    points.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], point| [low.min(point[1]), high.max(point[1])])
}

/// The outline after it is cut and, where something is cut off, before; its middle or base line and its sizes.
fn flag_items(unit: PlanUnit, outline: &Outline, cut: &Before, axis: Option<SocketAxis>, lie: Lie) -> Vec<Item> {
    let points = outline.points_mm();
    let length = in_mm(outline.length());
    let before = match cut {
        Before::Nothing => Vec::new(),
        Before::Rim(points) => points.clone(),
        Before::Blank(blank) => blank.points_mm(),
    };
    let reach = before.iter().chain(&points).map(|point| point[1].abs()).fold(0.0, f64::max);
    let far = before.iter().chain(&points).map(|point| point[0]).fold(0.0, f64::max);
    let [low, high] = across_of(&points);
    let mut items = vec![lie.polygon(&points, Pen::Outline)];
    if !before.is_empty() {
        items.push(lie.polygon(&before, Pen::Dashed));
    }
    let (across, beyond) = (reach + CENTER_OUT_MM, far + CENTER_OUT_MM);
    items.push(match axis {
        Some(SocketAxis::Across) => lie.line([length / 2.0, -across], [length / 2.0, across], Pen::CenterLine),
        _ => lie.line([-CENTER_OUT_MM, 0.0], [beyond, 0.0], Pen::CenterLine),
    });
    if let Before::Blank(blank) = cut {
        items.extend(blank_sizes(unit, outline, blank, [reach, far], lie));
    }
    if matches!(cut, Before::Blank(_)) || (low + high).abs() > 0.05 {
        items.push(base_line_words(lie));
    }
    items.push(root_words(lie));
    items.extend(lie.along([0.0, length], reach + DIMENSION_MM, &mm_words(unit, length)));
    items.extend(lie.across([low, high], far + DIMENSION_MM, &mm_words(unit, high - low)));
    items.extend(root_width(unit, outline, high - low, lie));
    items
}

/// The blank's length and width outside those of the outline, where they are others.
fn blank_sizes(unit: PlanUnit, outline: &Outline, blank: &Outline, [reach, far]: [f64; 2], lie: Lie) -> Vec<Item> {
    let (length, own_length) = (in_mm(blank.length()), in_mm(outline.length()));
    let ([low, high], own) = (across_of(&blank.points_mm()), across_of(&outline.points_mm()));
    // Beyond the dimension of the outline, whose figure may lie beside it.
    let beyond = |own: f64| {
        let words = Text::new(at(0.0, 0.0), FACT, &mm_words(unit, own)).bold();
        DIMENSION_MM + (words.width_mm() + 6.0).max(DIMENSION_MM)
    };
    let mut items = Vec::new();
    if (length - own_length).abs() > 0.05 {
        items.extend(lie.along([0.0, length], reach + beyond(own_length), &mm_words(unit, length)));
    }
    if (low - own[0]).abs() > 0.05 || (high - own[1]).abs() > 0.05 {
        items.extend(lie.across([low, high], far + beyond(own[1] - own[0]), &mm_words(unit, high - low)));
    }
    items
}

/// What the line is that outline and blank have in common: under the word for the end that it begins at.
fn base_line_words(lie: Lie) -> Item {
    let words = "base line";
    match lie {
        Lie::Level => Text::new(at(-CENTER_OUT_MM - 1.0, BODY * 1.5), BODY, words).right().into(),
        Lie::Upright => Text::new(at(0.0, CENTER_OUT_MM + BODY * 2.3), BODY, words).centered().into(),
    }
}

/// The width at the root, where the outline is wider elsewhere.
fn root_width(unit: PlanUnit, outline: &Outline, width: f64, lie: Lie) -> Vec<Item> {
    let root = outline.end_width(false).map_or(0.0, in_mm);
    if root < 1.0 || (root - width).abs() < 0.05 {
        return Vec::new();
    }
    // At the left of the word that says which end it is.
    let before = match lie {
        Lie::Level => -ROOT_WIDTH_MM - Text::new(at(0.0, 0.0), FACT, &mm_words(unit, root)).bold().width_mm(),
        Lie::Upright => -ROOT_WIDTH_MM,
    };
    let at_root: Vec<_> = outline.points_mm().into_iter().filter(|point| point[0] < 1e-6).collect();
    let [low, high] = across_of(&at_root);
    let ends = if (high - low - root).abs() < 1e-6 { [low, high] } else { [-root / 2.0, root / 2.0] };
    lie.across(ends, before, &mm_words(unit, root))
}

/// How far the sides of an outline reach beyond it before a share of it is trimmed off, in mm.
fn side_to_trim(outline: &Outline, trim: f64) -> f64 {
    in_mm(outline.width()) / 2.0 * ((1.0 + trim).sqrt() - 1.0)
}

/// What the dashed outline shows, from where it is nearest to the finished one to where it is farthest; words alone where
/// the rim is too thin to be drawn, or forged.
fn trim_words(unit: PlanUnit, outline: &Outline, trim: f64) -> String {
    let side = side_to_trim(outline, trim);
    if side < LEAST_TRIM_MM {
        return format!("{} more than the outline is spread: file it to the line", share_words(trim));
    }
    let points = outline.points_mm();
    let edges = || points.iter().zip(points.iter().cycle().skip(1));
    let beside = |place: [f64; 2]| edges().map(|(a, b)| off_edge(place, *a, *b)).fold(f64::INFINITY, f64::min);
    let off = grown(outline, &points, trim).into_iter().map(beside);
    let (least, most) = off.fold((f64::INFINITY, 0.0_f64), |(low, high), off| (low.min(off), high.max(off)));
    let [least, most] = [least, most].map(|mm| (mm * 10.0).round() / 10.0);
    let beyond = if most - least < 0.15 {
        mm_words(unit, most)
    } else if least < 0.05 {
        format!("up to {}", mm_words(unit, most))
    } else {
        format!("{} to {}", mm_words(unit, least), mm_words(unit, most))
    };
    format!("dashed: before {} is trimmed off, {beyond} outside", share_words(trim))
}

/// How far a place lies from an edge.
fn off_edge(place: [f64; 2], a: [f64; 2], b: [f64; 2]) -> f64 {
    let (way, out) = ([b[0] - a[0], b[1] - a[1]], [place[0] - a[0], place[1] - a[1]]);
    let square = way[0] * way[0] + way[1] * way[1];
    let share = if square > 0.0 { ((way[0] * out[0] + way[1] * out[1]) / square).clamp(0.0, 1.0) } else { 0.0 };
    (out[0] - way[0] * share).hypot(out[1] - way[1] * share)
}

/// Which end joins the bar.
fn root_words(lie: Lie) -> Item {
    match lie {
        Lie::Level => Text::new(at(-CENTER_OUT_MM - 1.0, BODY * 0.25), BODY, "root").right().into(),
        Lie::Upright => Text::new(at(0.0, CENTER_OUT_MM + BODY), BODY, "root").centered().into(),
    }
}

/// The outline before trimming: the same shape with so much more area. It grows about the middle of its root where that
/// is as wide as the bar, and about its centroid where it runs out at the root.
fn grown(outline: &Outline, points: &[[f64; 2]], trim: f64) -> Vec<[f64; 2]> {
    let factor = (1.0 + trim).sqrt();
    let at_root = points.iter().filter(|point| point[0] < 1e-6).map(|point| point[1].abs()).fold(0.0, f64::max);
    let fixed = if at_root > 0.5 { 0.0 } else { in_mm(outline.length()) * outline.centroid_share() };
    points.iter().map(|[along, away]| [fixed + (along - fixed) * factor, away * factor]).collect()
}

/// A hole with its cross, and how far its middle lies from the root.
fn hole_items(unit: PlanUnit, outline: &Outline, hole: &HoleSize, place: Length, lie: Lie) -> Vec<Item> {
    let along = in_mm(place);
    let middle = lie.place([along, 0.0]);
    let mut items: Vec<Item> = match hole {
        HoleSize::Round { diameter } => vec![circle(middle, in_mm(*diameter) / 2.0, Pen::Outline)],
        _ => {
            let points: Vec<[f64; 2]> =
                hole.points_mm(96).into_iter().map(|[ahead, toward]| [along + ahead, -toward]).collect();
            vec![lie.polygon(&points, Pen::Outline)]
        }
    };
    items.extend(cross(middle));
    let beside = -in_mm(outline.width()) / 2.0 - DIMENSION_MM + 4.0;
    let beside = if lie == Lie::Upright { beside - 20.0 } else { beside };
    items.extend(lie.along([0.0, along], beside, &mm_words(unit, along)));
    items
}
