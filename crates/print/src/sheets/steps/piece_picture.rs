//! A picture of the finished piece, or of one finished bar: from where it tells most, with numbers and overall sizes.

use super::bar_scale::BarScale;
use super::dimension_lines::{level_dimension, space_of, upright_dimension};
use super::label_layout::all_placed;
use super::outline::seen_edges;
use super::piece_labels::{Label, Room, Style};
use super::piece_view::{From, PartSeen, PieceView};
use crate::drawing::{Item, Point, Text, at};
use crate::fonts::Weight;
use crate::paper::Area;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::{BODY, CAPTION};
use crate::typeset;
use fh_core::balance::Balance;
use fh_core::metal::{Bent, FreeEnd, Shape};
use fh_core::plan::{Chain, Plan};
use fh_piece::{Piece, Quality, hung};

/// Free at the left of the metal, for numbers.
const LEFT_MM: f64 = 10.0;
/// Free at its right, for numbers and the height.
const RIGHT_MM: f64 = 20.0;
/// As far above and below the metal there is room for numbers.
const BESIDE_MM: f64 = 30.0;
/// What is thinner on paper is drawn thicker, where nothing is bent.
const THINNEST_MM: f64 = 3.0;
/// More parts than this have small figures without boxes.
const MOST_BOXED: usize = 26;
/// More numbers than this have no room on a picture.
const MOST_NUMBERS: usize = 90;
/// The longest name that stands on a picture.
const LONGEST_NAME_MM: f64 = 60.0;
/// Over a view, for its name and its scale.
const CAPTION_MM: f64 = 6.0;
/// Between two views below each other.
const BETWEEN_MM: f64 = 2.0;
/// Between two views side by side.
const BESIDE_EACH_OTHER_MM: f64 = 4.0;
/// What is named on a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::sheets) enum Named {
    /// Each part, by its number, and the datum end.
    Parts,
    /// Each bar, by its name.
    Bars,
    /// Nothing: the piece and its overall sizes.
    Nothing,
}

/// A piece to be drawn.
pub(in crate::sheets) struct Picture<'a> {
    plan: &'a Plan,
    balance: &'a Balance,
    named: Named,
    views: Vec<PieceView>,
    piece: Piece,
}

/// A picture on paper.
#[derive(Clone, Default)]
pub(in crate::sheets) struct Drawn {
    pub(in crate::sheets) block: Block,
    /// How far it reaches to the right.
    right: f64,
    /// From where on there is nothing at its right: to the right and down.
    pub(in crate::sheets) free: [f64; 2],
    /// Whether some numbers found no room.
    pub(in crate::sheets) left_out: bool,
}

impl Drawn {
    /// A second view at the right of the first where both have room, else below it.
    fn with(self, second: Self, width: f64) -> Self {
        let left_out = self.left_out || second.left_out;
        let left = self.right + BESIDE_EACH_OTHER_MM;
        let mut block = self.block;
        if left + second.right <= width {
            let free = [left, second.block.height + BETWEEN_MM];
            block.height = block.height.max(second.block.height);
            block.items.extend(second.block.indented(left).items);
            return Self { block, right: left + second.right, free, left_out };
        }
        let right = self.right.max(second.right);
        Self { block: block.then_free(BETWEEN_MM).over(second.block), right, free: [right, 0.0], left_out }
    }
}

impl<'a> Picture<'a> {
    /// The views of a piece that tell something; none where it cannot be drawn.
    pub(in crate::sheets) fn new(plan: &'a Plan, balance: &'a Balance, named: Named, room: [f64; 2]) -> Option<Self> {
        let piece = hung(plan, balance, Quality::Print);
        let view = |from: From| {
            let upright = PieceView::new(plan, &piece, balance, from, false)?;
            let laid = PieceView::new(plan, &piece, balance, from, true)?;
            // What hangs stands on paper as it hangs.
            let gains = !piece.hangs && scale_of(laid.size(), room) > 1.3 * scale_of(upright.size(), room);
            Some(if gains { laid } else { upright })
        };
        let (side, above) = (view(From::Side)?, view(From::Above)?);
        // From the side, as the bar lies on the cards, unless it shows clearly more from above.
        let (first, second) = if above.area() > 1.2 * side.area() { (above, side) } else { (side, above) };
        let tells_more = second.tells_more_than(&first);
        let mut views = vec![first];
        views.extend(tells_more.then_some(second));
        Some(Self { plan, balance, named, views, piece })
    }

    /// The picture on so much paper, the metal no taller than `tallest` mm.
    pub(in crate::sheets) fn drawn(&self, width: f64, tallest: f64) -> Drawn {
        let scale = self.scale([width - LEFT_MM - RIGHT_MM, tallest]);
        let labels = self.labels(scale);
        let drawn = self.views.iter().enumerate().map(|(index, view)| {
            let own: Vec<&Label> = labels.iter().filter(|(at, _)| *at == index).map(|(_, label)| label).collect();
            self.view(view, index == 0, &own, scale, width)
        });
        let mut whole = drawn.reduce(|first, second| first.with(second, width)).unwrap_or_default();
        whole.left_out |= labels.len() < self.number_count();
        whole
    }

    /// How large it is drawn: all views alike, and true to scale unless nothing is bent and it would be a mere line.
    fn scale(&self, room: [f64; 2]) -> BarScale {
        let along = self.views.iter().map(|view| scale_of(view.size(), room)).fold(1.0, f64::min);
        let thicker = || self.views.iter().filter(|view| view.may_be_thicker());
        let high = thicker().map(|view| view.size()[1]).fold(1e-6, f64::max);
        let thick = thicker().map(|view| view.size()[1]).fold(f64::INFINITY, f64::min).max(1e-6);
        let is_bent = self.balance.bars.iter().flat_map(|bar| &bar.segments);
        let is_bent = is_bent.filter_map(|segment| segment.bent).any(|bent| !matches!(bent, Bent::Twist { .. }));
        let several = self.balance.bars.len() > 1;
        let across = if is_bent || several { along } else { (THINNEST_MM / thick).min(room[1] / 2.0 / high).min(1.0) };
        BarScale { along, across: if across > 1.15 * along { across } else { along } }
    }

    fn view(&self, view: &PieceView, first: bool, labels: &[&Label], scale: BarScale, width: f64) -> Drawn {
        let scale = scale_in(view, scale);
        let place = placing(view, scale);
        let outlines: Vec<Vec<Point>> = view.parts.iter().map(|part| on_paper(&part.outline, &place)).collect();
        let [wide, high] = [view.size()[0] * scale.along, view.size()[1] * scale.across];
        let area = Area {
            left: 0.0,
            top: -BESIDE_MM,
            right: (LEFT_MM + wide + RIGHT_MM / 2.0).min(width).max(60.0_f64.min(width)),
            bottom: high + BESIDE_MM,
        };
        let mut items: Vec<Item> =
            view.parts.iter().zip(&outlines).flat_map(|(part, own)| metal(part, own, &place)).collect();
        items.extend(self.datum_line(view, &place).filter(|_| first));
        let (placed, left_out) = all_placed(&Room::new(area, &outlines), labels, labels.len() > MOST_BOXED);
        items.extend(placed);
        let mut taken = space_of(&items);
        let [low, high_end] = view.finished.map(&place);
        if first {
            let y = taken.bottom + 4.0;
            items.extend(level_dimension([low.x, high_end.x], y, &self.size_words(view.finished_size()[0])));
        }
        let words = self.size_words(view.finished_size()[1]);
        if scale.across == scale.along
            && high > typeset::width_mm(&typeset::printable(&words), BODY, Weight::SemiBold) + 4.0
        {
            items.extend(upright_dimension([high_end.y, low.y], taken.right + 4.0, &words));
        }
        taken = space_of(&items);
        let down = CAPTION_MM - taken.top;
        let mut items: Vec<Item> = items.into_iter().map(|item| item.shifted(0.0, down)).collect();
        items.push(Text::new(at(0.0, CAPTION), CAPTION, &caption(view, scale)).gray(Gray::DARK).into());
        let block = Block { height: taken.bottom + down + 1.0, items };
        Drawn { block, right: taken.right, free: [taken.right, 0.0], left_out }
    }

    fn size_words(&self, mm: f64) -> String {
        self.plan.units.marks.round(mm).text()
    }

    /// A heavy line across the datum end.
    fn datum_line(&self, view: &PieceView, place: &impl Fn([f64; 2]) -> Point) -> Option<Item> {
        let first = self.datum_part(view)?;
        let (from, next) = (place(*first.spine.first()?), place(*first.spine.get(1)?));
        let long = (next.x - from.x).hypot(next.y - from.y).max(1e-9);
        let across = [-(next.y - from.y) / long, (next.x - from.x) / long];
        let outline = on_paper(&first.outline, place);
        let near = outline.iter().filter(|point| (point.x - from.x).hypot(point.y - from.y) < 12.0);
        let half = near.map(|point| ((point.x - from.x) * across[0] + (point.y - from.y) * across[1]).abs());
        let start_half = half.fold(0.0, f64::max).clamp(1.0, 4.0) + 1.0;
        let end = |sign: f64| at(from.x + across[0] * start_half * sign, from.y + across[1] * start_half * sign);
        (self.named == Named::Parts).then(|| Item::line(end(1.0), end(-1.0), Pen::DatumLine))
    }

    /// The part that the bar starts with.
    fn datum_part<'v>(&self, view: &'v PieceView) -> Option<&'v PartSeen> {
        view.parts.iter().min_by_key(|part| part.part)
    }

    /// How many numbers a picture of all parts has.
    fn number_count(&self) -> usize {
        if self.named == Named::Parts { self.views.first().map_or(0, |view| view.parts.len()) } else { 0 }
    }

    /// Everything that is named, each with the view that it is named on.
    fn labels(&self, scale: BarScale) -> Vec<(usize, Label)> {
        match self.named {
            Named::Nothing => Vec::new(),
            Named::Bars => self.bar_labels(scale),
            Named::Parts => {
                let mut labels = self.number_labels(scale);
                labels.extend(self.datum_label(scale));
                labels
            }
        }
    }

    fn datum_label(&self, scale: BarScale) -> Option<(usize, Label)> {
        let (view, bar) = (self.views.first()?, self.plan.bars.first()?);
        let first = self.datum_part(view)?;
        let place = placing(view, scale);
        // Lengthwise at its very end, so that the words stand beyond the metal or over it.
        let from = place(*first.spine.first()?);
        let next = place(*first.spine.get(1)?);
        let across = at(from.x - (next.y - from.y), from.y + (next.x - from.x));
        let words = bar.datum.as_ref().map_or_else(|| bar.datum_name().to_owned(), |name| format!("datum: {name}"));
        let words = typeset::shorten(&words, BODY, Weight::SemiBold, LONGEST_NAME_MM);
        let step = |share: f64| at(from.x + (across.x - from.x) * share, from.y + (across.y - from.y) * share);
        Some((
            0,
            Label {
                words,
                style: Style::Name,
                spine: vec![step(-1e-3), step(1e-3)],
                own: self.own(view, first),
                pinned: true,
            },
        ))
    }

    fn number_labels(&self, scale: BarScale) -> Vec<(usize, Label)> {
        let Some((first, bar)) = self.views.first().zip(self.plan.bars.first()) else { return Vec::new() };
        let crowded = first.parts.len() > MOST_BOXED;
        let mut parts: Vec<&PartSeen> = first.parts.iter().collect();
        parts.sort_by_key(|part| part.part);
        let every = parts.len().div_ceil(MOST_NUMBERS).max(1);
        let paths = bar.paths();
        let label = |part: &&PartSeen| {
            let (index, view) = self.best_view(part);
            let seen = view.parts.iter().find(|one| one.is_same_as(part))?;
            let words = paths.get(part.part)?.clone();
            let style = match words.contains('.') {
                _ if crowded => Style::Plain,
                true => Style::Framed,
                false => Style::Black,
            };
            let spine = on_paper(&seen.spine, &placing(view, scale));
            Some((index, Label { words, style, spine, own: self.own(view, seen), pinned: false }))
        };
        let mut labels: Vec<(usize, Label)> = parts.iter().step_by(every).filter_map(label).collect();
        if !crowded {
            labels.extend(self.split_labels(scale, &paths));
        }
        labels
    }

    /// The numbers of splits, at the roots of their branches.
    fn split_labels(&self, scale: BarScale, paths: &[String]) -> Vec<(usize, Label)> {
        let Some(bar) = self.balance.bars.first() else { return Vec::new() };
        let label = |(at, segment): (usize, &fh_core::balance::SegmentBalance)| {
            let Some(Shape::Split(split)) = &segment.shape else { return None };
            let own = |one: &fh_piece::Line| {
                matches!(bar.segments.get(one.segment)?.chain, Chain::Branch { split, .. } if split == at).then_some(())
            };
            let of_split = |part: &&PartSeen| self.piece.line(part.bar, part.part).and_then(own).is_some();
            let root = self.views[0].parts.iter().filter(of_split).max_by_key(|part| match split.opens() {
                FreeEnd::Datum => part.part as i64,
                FreeEnd::Far | FreeEnd::Neither => -(part.part as i64),
            })?;
            let (index, view) = self.best_view(root);
            let root = view.parts.iter().find(|one| one.is_same_as(root))?;
            let place = placing(view, scale);
            let mut spine = on_paper(&root.spine, &place);
            let keep = spine.len().div_ceil(6).max(2).min(spine.len());
            spine = match split.opens() {
                FreeEnd::Datum => spine.split_off(spine.len() - keep),
                FreeEnd::Far | FreeEnd::Neither => spine.into_iter().take(keep).collect(),
            };
            let words = paths.get(at)?.clone();
            let style = if words.contains('.') { Style::Framed } else { Style::Black };
            Some((index, Label { words, style, spine, own: self.own(view, root), pinned: false }))
        };
        bar.segments.iter().enumerate().filter_map(label).collect()
    }

    /// Each bar by its name, at its longest part.
    fn bar_labels(&self, scale: BarScale) -> Vec<(usize, Label)> {
        let Some(view) = self.views.first() else { return Vec::new() };
        let label = |(index, bar): (usize, &fh_core::plan::Bar)| {
            let own = view.parts.iter().filter(|part| part.bar == index && !view.hides(part));
            let part = own.max_by(|one, other| one.seen_length().total_cmp(&other.seen_length()))?;
            let name = bar.name.trim();
            let words = if name.is_empty() { format!("bar {}", index + 1) } else { name.to_owned() };
            let words = typeset::shorten(&words, BODY, Weight::SemiBold, LONGEST_NAME_MM);
            let spine = on_paper(&part.spine, &placing(view, scale));
            Some((0, Label { words, style: Style::Name, spine, own: self.own(view, part), pinned: false }))
        };
        self.plan.bars.iter().enumerate().filter_map(label).collect()
    }

    /// The view that shows a part best: the first, unless it is hidden there or looked at along its length.
    fn best_view(&self, part: &PartSeen) -> (usize, &PieceView) {
        let better = |(_, view): &(usize, &PieceView)| {
            let there = view.parts.iter().find(|one| one.is_same_as(part));
            there.is_some_and(|there| {
                let longer = part.seen_length() < 0.35 * there.seen_length();
                (longer || self.views[0].hides(part)) && !view.hides(there)
            })
        };
        self.views.iter().enumerate().skip(1).find(better).unwrap_or((0, &self.views[0]))
    }

    /// The number of a part's outline in its view, counted from 1.
    fn own(&self, view: &PieceView, part: &PartSeen) -> u32 {
        let at = view.parts.iter().position(|one| one.is_same_as(part));
        at.and_then(|at| u32::try_from(at + 1).ok()).unwrap_or(0)
    }
}

/// The scale at which it fits, never larger than it is.
fn scale_of([wide, high]: [f64; 2], [width, height]: [f64; 2]) -> f64 {
    (width / wide.max(1e-6)).min(height / high.max(1e-6)).min(1.0)
}

/// The scale of one view: what shows a shape that lies across the bar keeps it.
fn scale_in(view: &PieceView, scale: BarScale) -> BarScale {
    if view.may_be_thicker() { scale } else { scale.even() }
}

/// From the piece to paper.
fn placing(view: &PieceView, scale: BarScale) -> impl Fn([f64; 2]) -> Point {
    let [low, high] = view.bounds;
    let scale = scale_in(view, scale);
    move |[x, y]| at(LEFT_MM + (x - low[0]) * scale.along, (high[1] - y) * scale.across)
}

fn on_paper(points: &[[f64; 2]], place: &impl Fn([f64; 2]) -> Point) -> Vec<Point> {
    points.iter().map(|point| place(*point)).collect()
}

/// One part: its metal, its edges, and the arrises between them.
fn metal(part: &PartSeen, outline: &[Point], place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
    let points = outline.to_vec();
    let mut items = vec![Item::Polygon { points, fill: Some(Gray::LIGHT), pen: None }];
    items.extend(seen_edges(&part.seen, Pen::MarkLine, place));
    items
}

/// `from the side, 1 : 2.9`.
fn caption(view: &PieceView, scale: BarScale) -> String {
    let laid = if view.laid { ", laid on its side" } else { "" };
    let thicker = scale.explained().map_or(String::new(), |words| format!(", {words}"));
    let pins = if view.has_pins() { ", sizes without the heads" } else { "" };
    format!("{}{laid}, {}{thicker}{pins}", view.from.name(), scale.words())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::sheets::steps::piece_view::is_inside;

    #[test]
    fn what_hangs_stands_on_paper_as_it_hangs() {
        let path = format!("{}/../../demo-plans/gate-hook.plan.json", env!("CARGO_MANIFEST_DIR"));
        let mut plan = fh_core::file::read(&std::fs::read(path).unwrap()).unwrap();
        let balance = fh_core::balance::balance(&plan);
        let size = |plan: &Plan| Picture::new(plan, &balance, Named::Parts, [150.0, 75.0]).unwrap().views[0].size();
        let lying = size(&plan);
        plan.hangs.tipped = fh_measure::WrittenAngle::from_degrees(-90.0).ok();
        let hanging = size(&plan);
        assert!((lying[0] - hanging[1]).abs() < 0.1 && (lying[1] - hanging[0]).abs() < 0.1, "{lying:?} {hanging:?}");
    }

    #[test]
    fn a_leader_starts_where_its_own_part_is_seen() {
        let path = format!("{}/../../demo-plans/gate-hook.plan.json", env!("CARGO_MANIFEST_DIR"));
        let plan = fh_core::file::read(&std::fs::read(path).unwrap()).unwrap();
        let balance = fh_core::balance::balance(&plan);
        let picture = Picture::new(&plan, &balance, Named::Parts, [150.0, 75.0]).unwrap();
        let scale = picture.scale([150.0, 75.0]);
        let (view, place) = (&picture.views[0], placing(&picture.views[0], scale));
        let outlines: Vec<Vec<Point>> = view.parts.iter().map(|part| on_paper(&part.outline, &place)).collect();
        let area = Area { left: -20.0, top: -40.0, right: 220.0, bottom: 120.0 };
        let mut seen = 0;
        for (_, label) in picture.labels(scale).iter().filter(|(view, label)| *view == 0 && !label.pinned) {
            let (items, _) = Room::new(area, &outlines).place(label).unwrap();
            let Some(Item::Line { from, .. }) = items.first() else { panic!("{}", label.words) };
            let plain = |points: &Vec<Point>| points.iter().map(|point| [point.x, point.y]).collect::<Vec<_>>();
            let uppermost = outlines.iter().rposition(|points| is_inside(&plain(points), [from.x, from.y]));
            assert_eq!(uppermost.map(|at| at + 1), usize::try_from(label.own).ok(), "{}", label.words);
            seen += 1;
        }
        assert_eq!(seen, 8);
    }
}
