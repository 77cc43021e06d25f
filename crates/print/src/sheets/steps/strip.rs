//! The bar after a step, to scale: what the step works is hatched, the rest is outline, and what has to be hot is bracketed.

use super::bar_scale::BarScale;
use super::hatch::hatch;
use super::mark_numbers;
use super::strip_bar::{StripBar, across_at};
use crate::drawing::{Item, Point, Text, at};
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::CAPTION;
use fh_core::balance::SegmentBalance;
use fh_core::forms;
use fh_core::metal::{Bent, Twist, View};
use fh_core::plan::{Chain, Form, Operation, Plan, RootSpec};
use fh_measure::in_mm;
use fh_work::{LaidLine, LaidPlace, MarkLine, Stage, WorkedStep};

/// Over the bar, for the bracket and its words.
const BRACKET_MM: f64 = 3.6;
/// Half of a bracket's end.
const TICK_MM: f64 = 1.4;
/// The size of the notch that stands for a neck.
const NECK_MM: f64 = 1.1;
/// Half of the line across the middle of a slit.
const SLIT_TICK_MM: f64 = 1.6;
/// Marks that stand closer than this on paper are drawn thin.
const DENSE_MM: f64 = 2.5;
/// Around a bar.
const GAP_MM: f64 = 0.7;
/// At the left, for the names of the views.
pub(super) const NAMES_MM: f64 = 20.0;
/// The edges of a twist that stand closer than this on paper are left out.
const CLOSEST_SWEEPS_MM: f64 = 0.5;
/// Places closer than this on paper are one.
const FINEST_MM: f64 = 0.12;

/// The bar before and after a step.
pub(super) struct Strip<'a> {
    pub(super) before: &'a StripBar,
    pub(super) after: &'a StripBar,
    pub(super) step: &'a WorkedStep,
    pub(super) scale: BarScale,
    pub(super) plan: &'a Plan,
    /// Whether it is shown bent besides.
    pub(super) shown_bent: bool,
}

impl Strip<'_> {
    /// The bar from the side, and from above where that tells more; its views are named at the left, its scale in the band over
    /// its cards.
    pub(super) fn block(&self, width: f64) -> Block {
        if let Some(view) = self.step.marked_view {
            return self.marked(view, width);
        }
        let Some(side) = self.row(View::Side) else { return Block::default() };
        let mut over = self.bracket(width - NAMES_MM).indented(NAMES_MM);
        over.height = over.height.max(1.0);
        let block = over.over(with_name(side, if self.is_bent() { "straight" } else { "side" }));
        let above = self.pierces() || (!self.shown_bent && self.tells_more_from_above());
        match if above { self.row(View::Top) } else { None } {
            Some(top) => block.over(with_name(top, "above")),
            None => block,
        }
    }

    /// Whether something of the bar is bent by then: the strip keeps it straight, for its sizes along.
    fn is_bent(&self) -> bool {
        let is_bent = |(stage, part): (&Stage, &SegmentBalance)| {
            stage.bent && !stage.off && !matches!(part.bent, None | Some(Bent::Twist { .. }))
        };
        self.step.stages.iter().zip(&self.after.bar.segments).any(is_bent)
    }

    /// The side that is punched, as on the mark sheet, with the numbers of the marks over it.
    fn marked(&self, view: View, width: f64) -> Block {
        let Some(row) = self.row(view) else { return Block::default() };
        let over = self.mark_numbers(width - NAMES_MM).indented(NAMES_MM);
        over.over(with_name(row, if view == View::Top { "above" } else { "side" }))
    }

    /// The number of each mark over its line.
    fn mark_numbers(&self, width: f64) -> Block {
        let along = |mark: &MarkLine| mark.at_mm * self.scale.along;
        let marks = self.step.marks.iter().filter(|mark| along(mark).is_finite());
        let marks: Vec<(f64, &str)> = marks.map(|mark| (along(mark), mark.number.as_str())).collect();
        mark_numbers::block(&marks, width)
    }

    /// Whether it makes a hole or a slit.
    fn pierces(&self) -> bool {
        let is_piercing =
            |operation: Operation| matches!(operation, Operation::Punch | Operation::Drift | Operation::Drill);
        self.step.tasks.iter().any(|task| task.part.is_some() && is_piercing(task.operation))
    }

    /// One view of it.
    fn row(&self, view: View) -> Option<Block> {
        let [_, [low, high]] = self.after.extent(view)?;
        let scale = self.scale.seen_from(view);
        let high_mm = high * scale.across;
        let place = |[along, across]: [f64; 2]| at(along * scale.along, GAP_MM + high_mm - across * scale.across);
        let height = (high - low) * scale.across + 2.0 * GAP_MM;
        let mut items = self.cut_off(view, &place, [low, high]);
        for worked in [false, true] {
            for (at, segment) in self.after.bar.segments.iter().enumerate() {
                if self.is_worked(at) == worked {
                    items.extend(part(segment, (self.after.outline(at, view), view), worked, &place));
                }
            }
        }
        if view == View::Top {
            items.extend(self.slits(&place));
            items.extend(self.root_holes(&place));
        }
        items.extend(self.necks(view, &place));
        items.extend(self.marks([low, high], &place));
        items.extend(self.step.laid.iter().flat_map(|line| laid(line, &place)).filter(Item::is_finite));
        Some(Block { height, items })
    }

    /// Whether a part is worked in this step: itself, or the split that it is a branch of.
    fn is_worked(&self, at: usize) -> bool {
        let parts = self.step.parts();
        if parts.is_empty() {
            return self.step.is_hot();
        }
        let mut at = at;
        loop {
            if parts.contains(&at) {
                return true;
            }
            match self.after.bar.segments.get(at).map(|segment| segment.chain) {
                Some(Chain::Branch { split, .. }) if split < at => at = split,
                _ => return false,
            }
        }
    }

    /// What the step cuts off at the far end, dashed, as it was.
    fn cut_off(&self, view: View, place: &impl Fn([f64; 2]) -> Point, [low, high]: [f64; 2]) -> Vec<Item> {
        let end = in_mm(self.after.bar.forged_length);
        let gone = |(at, before): &(usize, &SegmentBalance)| {
            self.step.parts().contains(at)
                && in_mm(before.forged_start) >= end - 0.01
                && self.after.bar.segments.get(*at).is_some_and(|now| now.shape.is_none())
        };
        let outline = |(at, _): (usize, &SegmentBalance)| {
            let inside = |[along, across]: [f64; 2]| place([along, across.clamp(low, high)]);
            let points = paper_points(self.before.outline(at, view), &inside);
            (points.len() > 2).then_some(Item::Polygon { points, fill: None, pen: Some(Pen::Dashed) })
        };
        self.before.bar.segments.iter().enumerate().filter(gone).filter_map(outline).collect()
    }

    /// Where a part is necked and not forged yet: a notch into each edge.
    fn necks(&self, view: View, place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
        let notches = |along: &f64| {
            let parts = (0..self.after.bar.segments.len()).map(|at| self.after.outline(at, view));
            let [low, high] = parts.filter_map(|outline| across_at(outline, *along)).next()?;
            Some([([*along, high], 1.0), ([*along, low], -1.0)])
        };
        let drawn = |(edge, down): ([f64; 2], f64)| {
            let at_edge = place(edge);
            let points = vec![
                at(at_edge.x - NECK_MM, at_edge.y),
                at(at_edge.x, at_edge.y + NECK_MM * down),
                at(at_edge.x + NECK_MM, at_edge.y),
            ];
            Item::Polygon { points, fill: Some(Gray::BLACK), pen: None }
        };
        self.step.necks_mm.iter().filter_map(notches).flatten().map(drawn).filter(Item::is_finite).collect()
    }

    /// Slits that stand open: a thick line along the bar, with a cross line at its middle.
    fn slits(&self, place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
        let drawn = |[from, to]: &[f64; 2]| {
            let middle = (from + to) / 2.0;
            let part = self.after.bar.segments.iter().find(|part| {
                let start = in_mm(part.forged_start);
                part.shape.is_some() && (start..=start + in_mm(part.forged_length)).contains(&middle)
            });
            let across = part.map_or(0.0, |part| -part.offset_mm[0]);
            let at_middle = place([middle, across]);
            let tick = |y: f64| at(at_middle.x, at_middle.y + y);
            [
                Item::line(place([*from, across]), place([*to, across]), Pen::DatumLine),
                Item::line(tick(-SLIT_TICK_MM), tick(SLIT_TICK_MM), Pen::MarkLine),
            ]
        };
        self.step.slits_mm.iter().flat_map(drawn).filter(Item::is_finite).collect()
    }

    /// Holes that are punched for the ends of slits which are not cut yet.
    fn root_holes(&self, place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
        let Some(bar) = self.step.bar.and_then(|bar| self.plan.bars.get(bar)) else { return Vec::new() };
        let hole = |(at, stage): (usize, &Stage)| {
            let part =
                self.after.bar.segments.get(at).filter(|part| stage.pierced && !stage.cut && part.shape.is_some())?;
            let Form::Split(forms::Split { root: Some(RootSpec::Hole(diameter)), .. }) = &bar.segment(at)?.form else {
                return None;
            };
            Some((at, part, diameter.mm()))
        };
        let holes = self.step.stages.iter().enumerate().filter_map(hole);
        let round = |(middle, diameter): (f64, f64)| {
            let edge = (0..24).map(|step| (std::f64::consts::TAU * f64::from(step) / 24.0).sin_cos());
            let edge = edge.map(|(sin, cos)| place([middle + cos * diameter / 2.0, sin * diameter / 2.0]));
            Item::Polygon { points: edge.collect(), fill: Some(Gray::WHITE), pen: Some(Pen::MarkLine) }
        };
        let all = holes.flat_map(|(at, part, diameter)| {
            self.roots(at, part, diameter).into_iter().map(move |middle| (middle, diameter))
        });
        all.map(round).filter(Item::is_finite).collect()
    }

    /// Where the holes of a split lie: at each end of it that has bar beyond.
    fn roots(&self, at: usize, part: &SegmentBalance, diameter: f64) -> Vec<f64> {
        let (start, length) = (in_mm(part.forged_start), in_mm(part.forged_length));
        let whole = self.after.bar.segments.iter().enumerate().filter(|(_, other)| other.chain == Chain::Bar);
        let places: Vec<usize> = whole.map(|(other, _)| other).collect();
        let inner = [places.first() != Some(&at), places.last() != Some(&at)];
        let middles = [start + diameter / 2.0, start + length - diameter / 2.0];
        middles.into_iter().zip(inner).filter_map(|(middle, inner)| inner.then_some(middle)).collect()
    }

    /// The marks across the bar where they are laid off.
    fn marks(&self, [low, high]: [f64; 2], place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
        let length = in_mm(self.after.bar.forged_length) * self.scale.along;
        let is_dense = self.step.marks.len() as f64 * DENSE_MM > length;
        let pen = if is_dense { Pen::MarkLine } else { Pen::CutLine };
        let line = |mark: &MarkLine| Item::line(place([mark.at_mm, low]), place([mark.at_mm, high]), pen);
        self.step.marks.iter().map(line).filter(Item::is_finite).collect()
    }

    /// What has to be hot, over the bar.
    fn bracket(&self, width: f64) -> Block {
        let Some([from, to]) = self.step.hot_mm.filter(|ends| ends.iter().all(|mm| mm.is_finite())) else {
            return Block::default();
        };
        let (from, to) = ((from * self.scale.along).max(0.0), (to * self.scale.along).min(width));
        let y = BRACKET_MM - TICK_MM;
        let tick = |x: f64| Item::line(at(x, y), at(x, y + TICK_MM), Pen::CutLine);
        let items = vec![Item::line(at(from, y), at(to, y), Pen::CutLine), tick(from), tick(to)];
        Block { height: BRACKET_MM, items }
    }

    /// Whether what is worked looks different from above.
    fn tells_more_from_above(&self) -> bool {
        let has_branches = self
            .after
            .bar
            .segments
            .iter()
            .any(|segment| matches!(segment.chain, Chain::Branch { .. }) && segment.shape.is_some());
        let mut worked = self.after.bar.segments.iter().enumerate().filter(|(at, _)| self.is_worked(*at));
        let differs = |(at, segment): (usize, &SegmentBalance)| {
            let [side, top] = [View::Side, View::Top].map(|view| thickest(self.after.outline(at, view)));
            let is_dressed = segment.dressed_seen(View::Top).iter().any(|seen| !seen.is_hidden);
            (side - top).abs() > 0.1 * side.max(top) || !segment.holes_mm().is_empty() || is_dressed
        };
        has_branches || worked.any(differs)
    }
}

/// A hole's middle as a cross, a slit as its lines; dashed where they are in an edge.
fn laid(line: &LaidLine, place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
    match &line.place {
        LaidPlace::Hole { at_mm, across_mm } => {
            let middles = across_mm.iter().map(|across| place([*at_mm, *across]));
            let cross = |middle: Point| {
                [
                    Item::line(
                        at(middle.x - SLIT_TICK_MM, middle.y),
                        at(middle.x + SLIT_TICK_MM, middle.y),
                        Pen::MarkLine,
                    ),
                    Item::line(
                        at(middle.x, middle.y - SLIT_TICK_MM),
                        at(middle.x, middle.y + SLIT_TICK_MM),
                        Pen::MarkLine,
                    ),
                ]
            };
            middles.flat_map(cross).collect()
        }
        LaidPlace::Slit { ends_mm: [from, to], across_mm, is_seen } => {
            let pen = if *is_seen { Pen::CutLine } else { Pen::Dashed };
            across_mm.iter().map(|across| Item::line(place([*from, *across]), place([*to, *across]), pen)).collect()
        }
    }
}

/// A row with its name at the left.
fn with_name(row: Block, name: &str) -> Block {
    let middle = row.height / 2.0 + CAPTION * 0.33;
    let mut row = row.indented(NAMES_MM);
    row.items.push(named(name, middle));
    row
}

fn named(words: &str, y: f64) -> Item {
    Text::new(at(0.0, y), CAPTION, words).gray(Gray::DARK).into()
}

/// How far an outline reaches across the bar.
fn thickest(outline: &[[f64; 2]]) -> f64 {
    let across = outline.iter().map(|point| point[1]);
    let (low, high) = across.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| (low.min(y), high.max(y)));
    (high - low).max(0.0)
}

/// One part: what is worked is hatched on gray, the rest is outline.
fn part(
    segment: &SegmentBalance,
    (outline, view): (&[[f64; 2]], View),
    worked: bool,
    place: &impl Fn([f64; 2]) -> Point,
) -> Vec<Item> {
    let points = paper_points(outline, place);
    if points.len() < 3 {
        return Vec::new();
    }
    let mut items = Vec::new();
    let fill = if worked { Gray::LIGHT } else { Gray::WHITE };
    items.push(Item::Polygon { points: points.clone(), fill: Some(fill), pen: None });
    // The edges of a twist tell it; hatching would hide them.
    let twist = Twist::of(segment.shape.as_ref(), segment.bent);
    match twist {
        Some(twist) => items.extend(twist_lines(twist, segment, outline, place)),
        None if worked => items.extend(hatch(&points)),
        None => {}
    }
    let pen = if worked { Pen::Outline } else { Pen::MarkLine };
    items.push(Item::Polygon { points, fill: None, pen: Some(pen) });
    items.extend(dressed_lines(segment, view, place));
    let holes = if view == View::Top { segment.holes_mm() } else { Vec::new() };
    items.extend(holes.iter().map(|hole| Item::Polygon {
        points: paper_points(hole, place),
        fill: Some(Gray::WHITE),
        pen: Some(Pen::MarkLine),
    }));
    items
}

/// The edges of what is dressed in dies; dashed on the side away from the eye.
fn dressed_lines(segment: &SegmentBalance, view: View, place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
    // Once it is twisted they run round it.
    if matches!(segment.bent, Some(Bent::Twist { .. })) {
        return Vec::new();
    }
    let edges = segment.dressed_seen(view).into_iter().flat_map(|seen| {
        let pen = if seen.is_hidden { Pen::Dashed } else { Pen::MarkLine };
        seen.edges_mm().map(|[from, to]| Item::line(place(from), place(to), pen))
    });
    edges.filter(Item::is_finite).collect()
}

/// The edges of a twist on their way over the side that is seen: as many as it has turns for.
fn twist_lines(
    twist: Twist,
    segment: &SegmentBalance,
    outline: &[[f64; 2]],
    place: &impl Fn([f64; 2]) -> Point,
) -> Vec<Item> {
    let (start, length) = (in_mm(segment.forged_start), in_mm(segment.forged_length));
    let mut last = f64::NEG_INFINITY;
    let mut items = Vec::new();
    for sweep in twist.sweeps() {
        let line = sweep.iter().filter_map(|[share, up]| {
            let along = start + length * share;
            let [low, high] = across_at(outline, along)?;
            Some(place([along, (low + high) / 2.0 + (high - low) / 2.0 * up]))
        });
        let points: Vec<Point> = line.collect();
        // Closer than this they are no lines but a shade.
        let is_apart = points.last().is_some_and(|end| end.x - last >= CLOSEST_SWEEPS_MM);
        if points.len() > 1 && is_apart {
            last = points.last().map_or(last, |end| end.x);
            items.push(Item::Polyline { points, pen: Pen::MarkLine });
        }
    }
    items.into_iter().filter(Item::is_finite).collect()
}

/// An outline on paper, without places that cannot be told apart there.
fn paper_points(outline: &[[f64; 2]], place: &impl Fn([f64; 2]) -> Point) -> Vec<Point> {
    let mut points: Vec<Point> = Vec::new();
    for point in outline.iter().map(|point| place(*point)).filter(|point| point.x.is_finite() && point.y.is_finite()) {
        let is_new = |last: &Point| (point.x - last.x).abs() > FINEST_MM || (point.y - last.y).abs() > FINEST_MM;
        if points.last().is_none_or(is_new) {
            points.push(point);
        }
    }
    points
}
