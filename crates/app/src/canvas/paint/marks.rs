//! The marks above the starting bar: their numbers and their running totals from the datum end.

use crate::canvas::figure::{Figure, What};
use crate::canvas::labels::{Wanted, placed, thinned};
use crate::canvas::spot::Spot;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::{Text, space};
use egui::{Galley, Rect, Stroke, StrokeKind, pos2, vec2};
use std::sync::Arc;

/// One label.
struct Label {
    /// The segment whose mark it is; none at the datum end.
    segment: Option<usize>,
    /// The mark that it belongs to.
    x: f32,
    left: f32,
    rank: u8,
    /// The mark's number; none at the datum end.
    number: Option<Arc<Galley>>,
    words: Arc<Galley>,
}

/// The marks that lie at one place.
struct MarkGroup {
    x: f32,
    segments: Vec<usize>,
}

impl Label {
    fn width(&self) -> f32 {
        let number = self.number.as_ref().map_or(0.0, |number| chip_width(number) + space::TIGHT);
        number + self.words.size().x
    }
}

fn chip_width(number: &Galley) -> f32 {
    number.size().x + 2.0 * space::TIGHT
}

impl Stage<'_> {
    /// Paints the labels that have room, with a stem down to the bar, and tells where they are.
    pub(in crate::canvas) fn paint_marks(&self) -> Vec<Figure> {
        let labels = self.mark_labels();
        let wanted: Vec<_> = labels
            .iter()
            .map(|label| Wanted { span: [label.left, label.left + label.width()], rank: label.rank })
            .collect();
        let lanes = placed(&wanted, self.sizes.lanes(self.window.height()), space::GAP);
        let stem = Stroke::new(self.theme.hairline(), self.theme.ink_quiet);
        let bar_top = self.layout.stretch_of(Strip::Bar).top;
        // All stems first: a stem may pass behind a label of the lower row.
        for (label, lane) in labels.iter().zip(&lanes) {
            if let Some(lane) = lane {
                self.painter.vline(label.x, self.lane_bottom(*lane)..=bar_top, stem);
            }
        }
        let mut figures = Vec::new();
        for (label, lane) in labels.iter().zip(&lanes) {
            let Some(lane) = lane else { continue };
            let rect = self.paint_mark_label(label, *lane);
            let what = label.segment.map(|segment| What::Boundary(Spot { strip: Strip::Bar, segment }));
            figures.extend(what.map(|what| Figure { what, rect, hit: rect }));
        }
        self.paint_fixed_marks(bar_top);
        figures
    }

    /// A dot in a square at each mark that is fixed.
    fn paint_fixed_marks(&self, bar_top: f32) {
        let fixed = self.model.blocks.iter().filter_map(|block| block.fixed.as_ref());
        let ring = Stroke::new(space::LINE, self.theme.ink);
        for x in fixed.map(|fixed| self.axis.x(fixed.mm)).filter(|x| self.window.x_range().contains(*x)) {
            let place = pos2(x, bar_top);
            let square = Rect::from_center_size(place, vec2(self.sizes.shape, self.sizes.shape));
            self.painter.rect(square, 0.0, self.theme.ground, ring, StrokeKind::Middle);
            self.painter.circle_filled(place, self.sizes.shape / 5.0, self.theme.ink);
        }
    }

    fn lane_bottom(&self, lane: usize) -> f32 {
        self.layout.marks.bottom - space::GAP - lane as f32 * self.sizes.line
    }

    fn mark_labels(&self) -> Vec<Label> {
        let datum = self.axis.x(0.0);
        let words = self.text(&self.model.datum, Text::Strong, self.theme.ink);
        let at_datum = Label { segment: None, x: datum, left: datum + space::TIGHT, rank: 2, number: None, words };
        let mut labels: Vec<_> =
            Some(at_datum).filter(|label| self.window.x_range().contains(label.x)).into_iter().collect();
        let groups = self.mark_groups();
        let rank = |group: &MarkGroup| group.segments.iter().map(|at| self.mark_rank(*at)).max().unwrap_or_default();
        let places = groups.iter().enumerate().map(|(index, group)| (index, group.x));
        let chosen = |index: usize| groups.get(index).is_some_and(|group| rank(group) > 0);
        labels.extend(thinned(places, space::GAP, chosen).into_iter().filter_map(|(index, x)| {
            let group = groups.get(index)?;
            let first =
                group.segments.iter().copied().max_by_key(|at| (self.mark_rank(*at), std::cmp::Reverse(*at)))?;
            let block = self.model.blocks.get(first)?;
            let rank = rank(group);
            let ink = if rank > 1 { self.theme.accent } else { self.theme.ink };
            let number = self.text(self.mark_numbers(group, rank > 1, first), Text::Small, ink);
            let words = block.fixed.as_ref().map_or_else(|| block.mark.bare_text(), |fixed| fixed.text.clone());
            let words = self.text(words, Text::Strong, ink);
            let mut label = Label { segment: Some(first), x, left: x, rank, number: Some(number), words };
            let most = self.window.right() - space::TIGHT - label.width();
            let least = (datum + space::TIGHT).max(self.window.left() + space::TIGHT);
            label.left = (x - label.width() / 2.0).min(most).max(least);
            Some(label)
        }));
        labels
    }

    /// The marks in sight from left to right; those at one place have one label.
    fn mark_groups(&self) -> Vec<MarkGroup> {
        let blocks = self.model.blocks.iter().enumerate();
        let places = blocks.map(|(index, block)| (index, self.axis.x(block.mark_mm)));
        let mut places: Vec<_> = places.filter(|(_, x)| self.window.x_range().contains(*x)).collect();
        let has_branches = self.model.lanes.len() > 1;
        if has_branches {
            places.sort_by(|a, b| a.1.total_cmp(&b.1));
        }
        let mut groups: Vec<MarkGroup> = Vec::with_capacity(places.len());
        for (segment, x) in places {
            match groups.last_mut().filter(|group| has_branches && x - group.x < space::HAIRLINE) {
                Some(group) => group.segments.push(segment),
                None => groups.push(MarkGroup { x, segments: vec![segment] }),
            }
        }
        groups
    }

    /// The numbers of the marks at one place. A split stands for its branches; one that is chosen stands alone.
    fn mark_numbers(&self, group: &MarkGroup, is_chosen: bool, first: usize) -> String {
        let path = |at: usize| self.model.blocks.get(at).map_or("", |block| block.path.as_str());
        if is_chosen || group.segments.len() == 1 {
            return path(first).to_owned();
        }
        let within = |a: &str, b: &str| a.strip_prefix(b).is_some_and(|rest| rest.starts_with('.'));
        let paths = || group.segments.iter().map(|at| path(*at));
        let kept: Vec<_> = paths().filter(|own| !paths().any(|other| within(own, other))).collect();
        kept.join(" · ")
    }

    /// How much a mark matters: in hand, then of the selected segment, then the last one.
    fn mark_rank(&self, segment: usize) -> u8 {
        let spot = Spot { strip: Strip::Bar, segment };
        match segment {
            _ if self.hot == Some(spot) || self.focused == Some(spot) => 4,
            _ if self.selected == Some(segment) => 3,
            _ if self.last_whole == Some(segment) => 1,
            _ => 0,
        }
    }

    fn paint_mark_label(&self, label: &Label, lane: usize) -> Rect {
        let bottom = self.lane_bottom(lane);
        let area =
            Rect::from_min_max(pos2(label.left, bottom - self.sizes.line), pos2(label.left + label.width(), bottom));
        self.painter.rect_filled(area.expand2(vec2(space::HAIRLINE, 0.0)), 0.0, self.theme.ground);
        let mut left = area.left();
        if let Some(number) = &label.number {
            let chip = Rect::from_min_size(area.min, vec2(chip_width(number), area.height()));
            let chip = chip.shrink2(vec2(0.0, space::HAIRLINE));
            let ring = Stroke::new(self.theme.hairline(), self.theme.ink_quiet);
            self.painter.rect_stroke(chip, f32::from(space::CORNER), ring, StrokeKind::Inside);
            let at = chip.center() - number.size() / 2.0;
            self.painter.galley(at, Arc::clone(number), self.theme.ink);
            left = chip.right() + space::TIGHT;
        }
        let at = pos2(left, area.center().y - label.words.size().y / 2.0);
        self.painter.galley(at, Arc::clone(&label.words), self.theme.ink);
        area
    }
}
