//! The names of segments on their bands, or above the forged bar where a band is too narrow; and what was found there.

use super::bands;
use crate::canvas::labels::{Wanted, placed};
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::{Text, space};
use egui::text::{LayoutJob, TextFormat, TextWrapping};
use egui::{Galley, Pos2, Rect, pos2, vec2};
use fh_core::findings::Severity;
use std::sync::Arc;

/// How far down the bands the names stand.
const NAME_SHARE: f32 = 0.42;

/// What stands above a segment of the forged bar.
struct Above {
    middle: f32,
    name: Option<Arc<Galley>>,
    severity: Option<Severity>,
    rank: u8,
}

/// A segment that wants something above it.
struct Wanting {
    index: usize,
    middle: f32,
    /// Whether its name stands elsewhere.
    has_place: bool,
    severity: Option<Severity>,
    selected: bool,
}

impl Stage<'_> {
    /// Paints the names and the shapes of findings.
    pub(in crate::canvas) fn paint_names(&self) {
        let mut wanting = Vec::new();
        for (index, block) in self.model.blocks.iter().enumerate() {
            let is_on_band = block.lane == 0 && self.paint_name_on_band(index);
            wanting.extend(self.wants_above(index, is_on_band));
        }
        wanting.sort_by(|a, b| a.middle.total_cmp(&b.middle));
        let mut above = Vec::new();
        let mut last = f32::NEG_INFINITY;
        for item in wanting {
            let matters = item.selected || item.severity.is_some();
            let far = item.middle - last >= if matters { space::TIGHT } else { self.sizes.line };
            if far || item.selected {
                last = item.middle;
                let name = (!item.has_place).then(|| self.name(item.index, f32::INFINITY)).flatten();
                let rank = u8::from(item.severity.is_some()) + 2 * u8::from(item.selected);
                above.push(Above { middle: item.middle, name, severity: item.severity, rank });
            }
        }
        self.paint_above(&above);
    }

    /// What is wanted above a segment of the forged bar, its name being on its band or not.
    fn wants_above(&self, index: usize, is_on_band: bool) -> Option<Wanting> {
        let (block, span) = (self.model.blocks.get(index)?, self.span(index, Strip::Forged)?);
        let has_place = if block.lane == 0 { is_on_band } else { !self.wants_branch_name(index) };
        let middle = (span[0] + span[1]) / 2.0;
        let severity = block.severity.filter(|severity| *severity > Severity::Note);
        let selected = self.selected == Some(index);
        let wants = self.sees([middle, middle]) && (!has_place || severity.is_some());
        wants.then_some(Wanting { index, middle, has_place, severity, selected })
    }

    /// Paints a name in the middle of its band where it fits, cut short with an ellipsis where it must; tells whether it did.
    fn paint_name_on_band(&self, index: usize) -> bool {
        // A band that slants leaves less room: what is free at the top and at the bottom of the line counts.
        let half_line = self.sizes.line / 2.0 / self.layout.bands.height().max(1.0);
        let edges = [NAME_SHARE - half_line, NAME_SHARE + half_line].map(|share| bands::at_share(self, index, share));
        let [Some(above), Some(below)] = edges else { return false };
        let left = above[0].max(below[0]).max(self.window.left());
        let right = above[1].min(below[1]).min(self.window.right());
        let room = right - left - 2.0 * space::TIGHT;
        if room < self.sizes.name / 3.0 {
            return false;
        }
        let Some(name) = self.name(index, room) else { return false };
        if name.elided && room < self.sizes.name * 1.5 {
            return false;
        }
        let at = pos2((left + right) / 2.0, self.band_name_y()) - name.size() / 2.0;
        if self.model.blocks.get(index).is_some_and(|block| block.cuts.is_some()) {
            // The bands of its branches would run through it.
            let fill = if self.selected == Some(index) { self.theme.band_selected } else { self.theme.band };
            self.painter.rect_filled(Rect::from_min_size(at, name.size()).expand(space::TIGHT / 2.0), 0.0, fill);
        }
        self.painter.galley(at, name, self.theme.ink);
        true
    }

    fn band_name_y(&self) -> f32 {
        egui::lerp(self.layout.bands.top..=self.layout.bands.bottom, NAME_SHARE)
    }

    fn paint_above(&self, above: &[Above]) {
        let wanted: Vec<_> = above.iter().map(|item| Wanted { span: self.above_span(item), rank: item.rank }).collect();
        let lanes = placed(&wanted, 1, space::GAP);
        let middle = self.layout.names.middle();
        for (item, (lane, wanted)) in above.iter().zip(lanes.iter().zip(&wanted)) {
            match (lane, item.severity) {
                (Some(_), _) => self.paint_item(item, pos2(wanted.span[0], middle)),
                // A finding is shown even where its name has no room.
                (None, Some(severity)) => self.paint_severity(severity, pos2(item.middle, middle)),
                (None, None) => {}
            }
        }
    }

    fn above_span(&self, item: &Above) -> [f32; 2] {
        let shape = if item.severity.is_some() { self.sizes.shape } else { 0.0 };
        let name = item.name.as_ref().map_or(0.0, |name| name.size().x);
        let between = if shape > 0.0 && name > 0.0 { space::TIGHT } else { 0.0 };
        let half = (shape + between + name) / 2.0;
        // Not cut off at the window's edges.
        let least = self.window.left() + half + space::TIGHT;
        let middle = item.middle.min(self.window.right() - half - space::TIGHT).max(least);
        [middle - half, middle + half]
    }

    fn paint_item(&self, item: &Above, at: Pos2) {
        let mut x = at.x;
        if item.name.is_some() {
            let [left, right] = self.above_span(item);
            let half = self.layout.names.height() / 2.0;
            let chip = Rect::from_min_max(pos2(left, at.y - half), pos2(right, at.y + half));
            self.painter.rect_filled(
                chip.expand2(vec2(space::TIGHT, 0.0)),
                f32::from(space::CORNER),
                self.theme.ground,
            );
        }
        if let Some(severity) = item.severity {
            self.paint_severity(severity, pos2(x + self.sizes.shape / 2.0, at.y));
            x += self.sizes.shape + space::TIGHT;
        }
        if let Some(name) = &item.name {
            self.painter.galley(pos2(x, at.y - name.size().y / 2.0), Arc::clone(name), self.theme.ink);
        }
    }

    /// A segment's name on one line of at most this width.
    pub(in crate::canvas) fn name(&self, index: usize, width: f32) -> Option<Arc<Galley>> {
        let block = self.model.blocks.get(index)?;
        let selected = self.selected == Some(index);
        let font_id = self.theme.font(if selected { Text::Strong } else { Text::Body });
        let color = if selected { self.theme.ink } else { self.theme.ink_quiet };
        let mut job =
            LayoutJob::single_section(block.name.clone(), TextFormat { font_id, color, ..Default::default() });
        job.wrap = TextWrapping { max_width: width, max_rows: 1, break_anywhere: true, ..Default::default() };
        Some(self.painter.layout_job(job))
    }
}
