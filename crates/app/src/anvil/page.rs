//! The page at the anvil: heat and clock, the title, the sizes cold and hot, how it is done, and its cautions.

use crate::state::{OrderDesk, heat_words};
use crate::theme::{Text, Theme, space};
use egui::text::{LayoutJob, TextFormat};
use egui::{Align2, Color32, FontId, Galley, Pos2, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use fh_core::cautions::Cautions;
use fh_core::describe::short_name;
use fh_core::plan::Plan;
use fh_work::WorkedStep;
use std::sync::Arc;

/// Sizes of letters in points, on a screen of the height below.
const HEAD: f32 = 46.0;
const CLOCK: f32 = 84.0;
const TITLE: f32 = 58.0;
const FIGURE: f32 = 46.0;
const WORDS: f32 = 32.0;
const SMALL: f32 = 22.0;
/// The screen that they are meant for.
const SCREEN: [f32; 2] = [1366.0, 768.0];
/// Everything is set as large as the page holds, from the one of these shares to the other.
const MOST: f32 = 1.4;
const LEAST: f32 = 0.4;
/// The share of the width that the sizes have; the rest has how it is done.
const SIZES: f32 = 0.6;

/// One page.
pub(super) struct Page<'a> {
    pub(super) order: &'a OrderDesk<'a>,
    pub(super) step: &'a WorkedStep,
    /// What the clock shows.
    pub(super) clock: Option<&'a str>,
    pub(super) plan: &'a Plan,
    /// The cautions of the plan.
    pub(super) warned: &'a Cautions,
}

/// Something laid out that waits to be painted.
struct Laid {
    at: Pos2,
    galley: Arc<Galley>,
    ink: Color32,
}

/// The pen: from the top down, at one size.
struct Pen<'a> {
    ui: &'a Ui,
    theme: &'a Theme,
    size: f32,
    laid: Vec<Laid>,
    frames: Vec<(Rect, Color32)>,
}

impl Page<'_> {
    /// Shows the page: as large as it fits.
    pub(super) fn show(&self, ui: &mut Ui, theme: &Theme, rect: Rect) {
        let screen = ui.ctx().content_rect();
        let full = (screen.height() / SCREEN[1]).min(screen.width() / SCREEN[0]);
        let mut share = MOST;
        let mut pen = loop {
            let mut pen = Pen { ui, theme, size: full * share, laid: Vec::new(), frames: Vec::new() };
            let foot = self.write(&mut pen, rect);
            if foot <= rect.bottom() || share <= LEAST {
                break pen;
            }
            share *= 0.94;
        };
        let painter = ui.painter().with_clip_rect(rect.expand(space::GAP));
        for (frame, color) in pen.frames.drain(..) {
            painter.rect_stroke(frame, space::CORNER, Stroke::new(space::HEAVY, color), StrokeKind::Inside);
        }
        for laid in std::mem::take(&mut pen.laid) {
            painter.galley(laid.at, laid.galley, laid.ink);
        }
        self.tell(ui, rect);
    }

    /// What screen readers hear.
    fn tell(&self, ui: &Ui, rect: Rect) {
        let number = self.order.at.unwrap_or(0) + 1;
        let all = format!(
            "Step {number} of {}. {}. {}",
            self.order.worked.steps.len(),
            heat_words(self.step),
            short_name(&self.step.title)
        ) + &self.heard();
        let response = ui.interact(rect, ui.scope_id().with("page"), Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &all));
        if let Some(clock) = self.clock {
            let response = ui.interact(rect, ui.scope_id().with("clock"), Sense::hover());
            response.widget_info(|| WidgetInfo::labeled(Role::Label, true, format!("Clock of the heat: {clock}")));
        }
    }

    /// Whether the first step is shown, which says all cautions of the plan.
    fn is_first(&self) -> bool {
        self.order.at.unwrap_or(0) == 0
    }

    /// What stops the plan, what it asks for and what the step asks for, as it is heard.
    fn heard(&self) -> String {
        let stops = self.warned.stops.iter().map(|words| format!(" Stop: {words}"));
        let own = self.warned.own.iter().filter(|_| self.is_first());
        let own = self.warned.rating.iter().chain(own).copied().chain(self.step.caution.as_deref());
        stops.chain(own.map(|words| format!(" Caution: {words}"))).collect()
    }

    /// Writes everything; how far down it reaches.
    fn write(&self, pen: &mut Pen<'_>, rect: Rect) -> f32 {
        let top = self.head(pen, rect);
        let mut top = self.of_the_plan(pen, rect, top);
        top = pen.text(&short_name(&self.step.title), TITLE, true, pen.theme.ink, (rect.left(), top, rect.width()));
        top += pen.gap();
        if self.step.sizes.is_empty() && self.step.measure.is_empty() {
            let foot = self.how(pen, pos2(rect.left(), top), rect.width());
            return self.caution(pen, rect, foot + pen.gap());
        }
        let left = self.sizes(pen, pos2(rect.left(), top), rect.width() * SIZES);
        let right_x = rect.left() + rect.width() * SIZES + pen.gap() * 2.0;
        let right = self.how(pen, pos2(right_x, top), rect.right() - right_x);
        self.caution(pen, rect, left.max(right) + pen.gap())
    }

    fn head(&self, pen: &mut Pen<'_>, rect: Rect) -> f32 {
        let number = self.order.at.unwrap_or(0) + 1;
        let ink = pen.theme.ink;
        let clock = self.clock.map(|words| pen.lay(words, CLOCK, true, ink, f32::INFINITY));
        let line = pen.size * if clock.is_some() { CLOCK } else { HEAD } * 1.12;
        let room = rect.width() - clock.as_ref().map_or(0.0, |clock| clock.size().x + pen.gap());
        let bar = self.step.bar.and_then(|bar| self.plan.bars.get(bar)).filter(|_| self.plan.bars.len() > 1);
        let bar = bar.map_or_else(String::new, |bar| format!("   {}", short_name(&bar.name)));
        let (steps, heats) = (self.order.worked.steps.len(), self.order.worked.heats);
        let of = if self.step.is_hot() { format!(" of {heats}") } else { String::new() };
        let words = format!("Step {number} of {steps}    {}{of}{bar}", heat_words(self.step));
        let words = pen.lay(&words, HEAD, true, ink, room);
        let height = line.max(words.size().y);
        let middle = rect.top() + height / 2.0;
        if let Some(clock) = clock {
            let at = pos2(rect.right() - clock.size().x, middle - clock.size().y / 2.0);
            pen.laid.push(Laid { at, galley: clock, ink });
        }
        pen.laid.push(Laid { at: pos2(rect.left(), middle - words.size().y / 2.0), galley: words, ink });
        rect.top() + height
    }

    /// The sizes in three columns: what, cold, hot; below them from where places are measured.
    fn sizes(&self, pen: &mut Pen<'_>, corner: Pos2, width: f32) -> f32 {
        let (ink, quiet) = (pen.theme.ink, pen.theme.ink_quiet);
        let column = width * 0.25;
        let right = corner.x + width;
        let mut top = corner.y;
        if !self.step.sizes.is_empty() {
            let heads = [("cold", right - column), ("hot", right)];
            let line = heads.map(|(words, x)| pen.right(words, SMALL, false, quiet, pos2(x, top)));
            top += line[0].max(line[1]);
        }
        for size in &self.step.sizes {
            let what = pen.lay(&size.what, WORDS, false, ink, width - 2.0 * column - pen.gap());
            let cold = pen.right(&size.cold, FIGURE, true, ink, pos2(right - column, top));
            let hot = size.hot.as_deref().map_or(0.0, |hot| pen.right(hot, FIGURE, true, ink, pos2(right, top)));
            let height = cold.max(hot).max(what.size().y);
            let at = pos2(corner.x, top + (height - what.size().y) / 2.0);
            pen.laid.push(Laid { at, galley: what, ink });
            top += height;
        }
        let marks = self.step.marks.iter().map(fh_work::MarkLine::words);
        let laid = self.step.laid.iter().map(fh_work::LaidLine::words);
        for words in marks.chain(laid).chain(self.step.measure.iter().cloned()) {
            top = pen.text(&words, WORDS, false, ink, (corner.x, top, width));
        }
        top
    }

    /// Where, with what, which side up, and what to check.
    fn how(&self, pen: &mut Pen<'_>, corner: Pos2, width: f32) -> f32 {
        let step = self.step;
        let mut place = step.place.name().to_owned();
        let edge = step.edge.as_ref().map(|edge| format!("edge {edge}"));
        let up = step.up.as_ref().map(|up| format!("{up} up"));
        for words in [edge, up].into_iter().flatten() {
            place = format!("{place}, {words}");
        }
        let tool = Some(step.tool.clone());
        let held = step.held_words(self.plan);
        let words = [&step.heat_with, &step.lay, &step.check, &step.leave].map(Clone::clone);
        let lines = [Some(place), tool, held].into_iter().chain(words).chain(step.part_notes.iter().cloned().map(Some));
        let mut top = corner.y;
        for words in lines.flatten().chain(step.step.note.clone()).filter(|words| !words.is_empty()) {
            top = pen.text(&words, WORDS, false, pen.theme.ink, (corner.x, top, width)) + pen.gap() / 4.0;
        }
        top
    }

    /// The cautions of the plan: all of them at the first step, and what stops it or is not rated at every one.
    fn of_the_plan(&self, pen: &mut Pen<'_>, rect: Rect, top: f32) -> f32 {
        let stops = self.warned.stops.iter().map(|words| format!("■ STOP: {words}"));
        let stops: Vec<String> = stops.chain(self.warned.rating.map(|words| format!("■ {words}"))).collect();
        let mut foot = top;
        if !stops.is_empty() {
            foot = pen.framed(&stops.join("\n"), SMALL, pen.theme.stop, rect, foot) + pen.gap() / 4.0;
        }
        if self.is_first() && !self.warned.own.is_empty() {
            let words = format!("▲ {}", self.warned.own.join(" "));
            foot = pen.framed(&words, SMALL, pen.theme.warning, rect, foot) + pen.gap() / 4.0;
        }
        if self.is_first() {
            let ink = pen.theme.ink_quiet;
            foot = pen.text(&self.warned.in_short(), SMALL, false, ink, (rect.left(), foot, rect.width()));
        }
        foot
    }

    /// The caution, in a frame and with a sign.
    fn caution(&self, pen: &mut Pen<'_>, rect: Rect, top: f32) -> f32 {
        let Some(caution) = &self.step.caution else { return top };
        pen.framed(&format!("▲ {caution}"), WORDS, pen.theme.warning, rect, top)
    }
}

impl Pen<'_> {
    /// Words in a frame as wide as the page; their foot.
    fn framed(&mut self, words: &str, points: f32, color: Color32, rect: Rect, top: f32) -> f32 {
        let pad = self.gap() / 2.0;
        let room = (rect.left() + 2.0 * pad, top + pad, rect.width() - 4.0 * pad);
        let foot = self.text(words, points, true, color, room) + pad;
        self.frames.push((Rect::from_min_max(pos2(rect.left(), top), pos2(rect.right(), foot)), color));
        foot
    }

    fn gap(&self) -> f32 {
        self.size * space::GROUP * 1.2
    }

    fn lay(&self, words: &str, points: f32, strong: bool, ink: Color32, width: f32) -> Arc<Galley> {
        let family = self.theme.font(if strong { Text::Strong } else { Text::Body }).family;
        let font = FontId::new((points * self.size).max(8.0), family);
        let mut job = LayoutJob::single_section(words.to_owned(), TextFormat::simple(font, ink));
        job.wrap.max_width = width.max(1.0);
        self.ui.painter().layout_job(job)
    }

    /// Writes words that may take several lines; their foot.
    fn text(&mut self, words: &str, points: f32, strong: bool, ink: Color32, (x, top, width): (f32, f32, f32)) -> f32 {
        let galley = self.lay(words, points, strong, ink, width);
        let foot = top + galley.size().y;
        self.laid.push(Laid { at: pos2(x, top), galley, ink });
        foot
    }

    /// Writes words that end at a place; their height.
    fn right(&mut self, words: &str, points: f32, strong: bool, ink: Color32, at: Pos2) -> f32 {
        let galley = self.lay(words, points, strong, ink, f32::INFINITY);
        let rect = Align2::RIGHT_TOP.anchor_size(at, vec2(galley.size().x, galley.size().y));
        self.laid.push(Laid { at: rect.min, galley, ink });
        rect.height()
    }
}
