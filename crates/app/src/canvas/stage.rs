//! The stage: everything that the painters and the readers of the hand share in one frame.

use super::camera::{Axis, Frame};
use super::figure::{Dimension, Figure};
use super::layout::{Heights, Layout};
use super::model::Model;
use super::scene::{AfterStep, Scene};
use super::sizes::Sizes;
use super::spot::Spot;
use super::strip::Strip;
use crate::state::Views;
use crate::theme::{Text, Theme, space};
use egui::{Color32, Galley, Painter, Rect, Ui, pos2};
use fh_core::balance::BarBalance;
use fh_core::plan::Bar;
use std::sync::Arc;

/// The share of the window's height that the metal is fitted to at least.
const LEAST_FOR_METAL: f32 = 0.12;

/// How the bars are looked at.
pub(super) struct Eye {
    /// From which sides.
    pub(super) views: Views,
    /// How many times thicker than they are.
    pub(super) exaggeration: f32,
    /// Where the strips lie.
    pub(super) layout: Layout,
    /// Where millimetres lie along them.
    pub(super) axis: Axis,
}

/// One frame of the drawing.
pub(super) struct Stage<'a> {
    /// Paints within the window.
    pub(super) painter: Painter,
    /// Paints on all of the drawing area, captions and ruler too.
    pub(super) outer: Painter,
    pub(super) theme: &'a Theme,
    pub(super) model: &'a Model,
    pub(super) balance: &'a BarBalance,
    /// The bar as written.
    pub(super) bar: &'a Bar,
    pub(super) sizes: Sizes,
    pub(super) axis: Axis,
    pub(super) layout: Layout,
    pub(super) frame: Frame,
    /// All of the drawing area.
    pub(super) rect: Rect,
    /// Where the strips lie: right of the captions, below the ruler.
    pub(super) window: Rect,
    pub(super) exaggeration: f32,
    pub(super) selected: Option<usize>,
    /// The segments that are selected besides.
    pub(super) also: &'a [usize],
    /// The step that the bar is drawn after.
    pub(super) step: Option<AfterStep<'a>>,
    /// The last segment of the bar itself.
    pub(super) last_whole: Option<usize>,
    /// The boundary in hand or under the pointer.
    pub(super) hot: Option<Spot>,
    /// The boundary that has the keyboard.
    pub(super) focused: Option<Spot>,
    /// Where the cursor stands, in mm on the starting bar and on the forged bar.
    pub(super) cursor: Option<[f64; 2]>,
}

impl<'a> Stage<'a> {
    /// Where the strips lie within the drawing area.
    pub(super) fn window(rect: Rect, sizes: &Sizes) -> Rect {
        let corner = pos2(rect.left() + sizes.gutter, rect.top() + sizes.ruler);
        Rect::from_min_max(corner.min(rect.max), rect.max)
    }

    /// What the camera is told of a model and a window.
    pub(super) fn frame(window: Rect, model: &Model, sizes: &Sizes, views: Views, exaggeration: f32) -> Frame {
        Frame {
            length_mm: model.length_mm(),
            across_mm: model.across_mm(views) * f64::from(exaggeration),
            width: window.width(),
            // Where the words alone fill the window, the strips are scrolled rather than drawn too small to see.
            height: (window.height() - heights(window, sizes).fixed(views)).max(window.height() * LEAST_FOR_METAL),
            margins: sizes.margins,
        }
    }

    /// The stage of this frame, with the camera where it is.
    pub(super) fn new(
        ui: &Ui,
        rect: Rect,
        scene: &Scene<'a>,
        model: &'a Model,
        sizes: Sizes,
        eye: Eye,
    ) -> Option<Self> {
        let balance = scene.balance.bars.get(scene.bar)?;
        let window = Self::window(rect, &sizes);
        let Eye { views, exaggeration, layout, axis } = eye;
        Some(Self {
            balance,
            bar: scene.plan.bars.get(scene.bar)?,
            painter: ui.painter().with_clip_rect(window.intersect(ui.clip_rect())),
            outer: ui.painter().with_clip_rect(rect.intersect(ui.clip_rect())),
            theme: scene.theme,
            model,
            sizes,
            layout,
            axis,
            frame: Self::frame(window, model, &sizes, views, exaggeration),
            rect,
            window,
            exaggeration,
            selected: scene.selected,
            also: scene.also,
            step: scene.step,
            last_whole: model.blocks.iter().rposition(|block| block.lane == 0),
            hot: None,
            focused: None,
            cursor: None,
        })
    }

    /// Paints all of it, and tells where the figures are.
    pub(super) fn paint(&self, dimensions: &[Dimension]) -> Vec<Figure> {
        self.outer.rect_filled(self.rect, 0.0, self.theme.ground);
        self.paint_bands();
        self.paint_strips();
        self.paint_repeats();
        self.paint_cursor();
        let mut figures = self.paint_marks();
        self.paint_branch_names();
        self.paint_names();
        figures.extend(self.paint_lengths());
        figures.extend(self.paint_dimensions(dimensions));
        self.paint_hot_zone();
        self.paint_boundaries();
        self.paint_captions();
        self.paint_ruler();
        figures
    }

    /// Text laid out on one line.
    pub(super) fn text(&self, words: impl Into<String>, text: Text, color: Color32) -> Arc<Galley> {
        self.painter.layout_no_wrap(words.into(), self.theme.font(text), color)
    }

    /// From where to where a segment reaches on the screen, on one of the bars.
    pub(super) fn span(&self, segment: usize, strip: Strip) -> Option<[f32; 2]> {
        let [start, end] = Spot { strip, segment }.drawn(self.model)?;
        Some([self.axis.x(start), self.axis.x(end)])
    }

    /// Whether a stretch along the bar can be seen.
    pub(super) fn sees(&self, [left, right]: [f32; 2]) -> bool {
        right >= self.window.left() - space::GAP && left <= self.window.right() + space::GAP
    }

    /// A line as wide as an edge, or heavier where something stands out.
    pub(super) fn edge(&self, heavy: bool) -> f32 {
        if heavy { space::HEAVY } else { self.theme.hairline() }
    }
}

/// The heights of everything but the metal.
pub(super) fn heights(window: Rect, sizes: &Sizes) -> Heights {
    Heights {
        window: window.height(),
        marks: sizes.line * sizes.lanes(window.height()) as f32 + space::GAP,
        names: sizes.line + space::TIGHT,
        lengths: sizes.line + space::TIGHT + sizes.zone,
        bands: sizes.bands,
        row: sizes.row,
        gap: space::GAP,
    }
}
