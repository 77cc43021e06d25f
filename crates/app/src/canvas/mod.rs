//! The drawing area: the starting bar, the same metal forged, and the bands that join them.
//!
//! It draws a balance and tells what the hand does; it changes no plan. `model` says what to draw in millimetres, `camera` and
//! `layout` where, `paint` how, and `hand` reads the pointer and the keys.

mod camera;
mod clip;
mod event;
mod figure;
mod hand;
mod held;
mod labels;
mod layout;
mod model;
pub(crate) mod paint;
mod places;
mod scene;
mod sizes;
mod snap;
mod spot;
mod stage;
mod strip;

pub use crate::state::{Gesture, Views};
pub use event::CanvasEvent;
pub use scene::{AfterStep, Scene};

use camera::Camera;
use held::{AcrossDrag, Drag, Entry, Feedback, Focus, HoleDrag};
use model::Model;
use paint::empty;
use sizes::Sizes;
use spot::Spot;
use stage::{Eye, Stage};
use std::rc::Rc;

/// Both views are drawn where the bar is at least this share of what it would be with one.
const BOTH_WORTH: f64 = 0.6;

/// The drawing area and what it remembers from frame to frame.
#[derive(Default)]
pub struct Canvas {
    /// From which sides the bars are seen.
    pub views: Views,
    /// From which sides they are drawn: from one where both would leave most of the width empty.
    drawn_views: Views,
    /// How many times thicker than true the bars are drawn, beyond 1; see [`Self::exaggeration`].
    thicker: f32,
    camera: Camera,
    zoom_asked: Option<f32>,
    shown_bar: usize,
    drag: Option<Drag>,
    across: Option<AcrossDrag>,
    hole: Option<HoleDrag>,
    /// The hole whose place is shown: the segment, and which of its holes.
    hole_shown: (usize, usize),
    focus: Focus,
    entry: Option<Entry>,
    feedback: Feedback,
    hovered: Option<Spot>,
    cursor_told: Option<f64>,
    /// What is drawn, and what it was worked out for.
    kept: Option<([u64; 3], usize, Rc<Model>)>,
}

impl Canvas {
    /// Chooses from which sides the bars are seen.
    pub fn set_views(&mut self, views: Views) {
        self.views = views;
    }

    /// Whether both views were asked for and there is room for one.
    pub fn hides_a_view(&self) -> bool {
        self.views == Views::Both && self.drawn_views != Views::Both
    }

    /// How many times thicker than true the bars are drawn: 1 where they are true to scale.
    pub fn exaggeration(&self) -> f32 {
        1.0 + self.thicker
    }

    /// Draws the bars so many times thicker than they are, 1 to 8. The drawing says so.
    pub fn set_exaggeration(&mut self, times: f32) {
        self.thicker = if times.is_finite() { times.clamp(1.0, 8.0) - 1.0 } else { 0.0 };
    }

    /// Shows the whole bar.
    pub fn fit(&mut self) {
        self.camera.fit();
    }

    /// Zooms about the middle of the window, or about the selected boundary.
    pub fn zoom_by(&mut self, factor: f32) {
        self.zoom_asked = Some(self.zoom_asked.unwrap_or(1.0) * factor);
    }

    /// Tells that the last move was refused, and why.
    pub fn refused(&mut self, words: String) {
        self.feedback = Feedback { gave: None, refused: Some(words) };
    }

    /// Tells what gave way in the last move.
    pub fn gave(&mut self, words: String) {
        self.feedback = Feedback { gave: Some(words), refused: None };
    }

    /// Whether a boundary or a size is in hand: Escape belongs to the drawing then.
    pub fn is_holding(&self) -> bool {
        self.drag.is_some() || self.across.is_some() || self.hole.is_some() || self.entry.is_some()
    }

    /// Draws the bars and reads what the hand does on them.
    pub fn show(&mut self, ui: &mut egui::Ui, scene: &Scene<'_>) -> Vec<CanvasEvent> {
        let mut events = Vec::new();
        let size = ui.available_size().max(egui::Vec2::splat(crate::theme::space::TARGET));
        let (rect, ground) = ui.allocate_exact_size(size, egui::Sense::CLICK | egui::Sense::DRAG);
        let sizes = Sizes::new(scene.theme);
        let sizes = if scene.step.is_some() { sizes.with_zone() } else { sizes };
        if self.shown_bar != scene.bar {
            self.shown_bar = scene.bar;
            self.let_go(&mut events);
            self.camera.fit();
        }
        let Some(model) = self.model(scene).filter(|model| !model.blocks.is_empty()) else {
            self.let_go(&mut events);
            self.drawn_views = self.views;
            empty::paint(ui, rect, scene, &sizes);
            self.tell_cursor(None, &mut events);
            return events;
        };
        let window = Stage::window(rect, &sizes);
        if !self.is_holding() {
            self.drawn_views = self.views_that_fit(window, &model, &sizes);
        }
        self.steer(ui, &ground, window, &model, &sizes, scene);
        let layout = self.layout(window, &model, &sizes);
        let axis = self.camera.axis(window.left());
        let eye = Eye { views: self.drawn_views, exaggeration: self.exaggeration(), layout, axis };
        let Some(mut stage) = Stage::new(ui, rect, scene, &model, sizes, eye) else { return events };
        if scene.step.is_none() {
            self.read_keys(ui, &stage, &mut events);
        }
        self.touch_segments(ui, &stage, &ground, &mut events);
        if scene.step.is_none() {
            self.touch_boundaries(ui, &stage, &mut events);
        } else {
            self.let_go(&mut events);
        }
        self.touch_cursor(ui, &mut stage, &ground, scene.cursor_mm, &mut events);
        let focused = if scene.step.is_none() { self.focused(ui) } else { None };
        (stage.hot, stage.focused) = (self.hot(), focused);
        let dimensions = stage.dimensions();
        let mut figures = stage.paint(&dimensions);
        if scene.step.is_none() {
            self.touch_holes(ui, &stage, &mut events);
            stage.paint_hole_place(self.hole_shown(), &mut figures);
            self.touch_figures(ui, &stage, &figures, &mut events);
            self.touch_handles(ui, &stage, &dimensions, &mut events);
        }
        self.show_tag(ui, &stage);
        self.show_entry(ui, &stage, &mut events);
        events
    }

    /// What is drawn: what was worked out for an earlier frame, while nothing that it follows from has changed.
    fn model(&mut self, scene: &Scene<'_>) -> Option<Rc<Model>> {
        let known = self.kept.as_ref().filter(|(stamp, bar, _)| Some(*stamp) == scene.stamp && *bar == scene.bar);
        if let Some((.., model)) = known {
            return Some(Rc::clone(model));
        }
        let model = Rc::new(Model::new(scene)?);
        self.kept = scene.stamp.map(|stamp| (stamp, scene.bar, Rc::clone(&model)));
        Some(model)
    }

    /// The views that were asked for; one of both where the second would make the bar so much smaller that most of the width
    /// stays empty.
    fn views_that_fit(&self, window: egui::Rect, model: &Model, sizes: &Sizes) -> Views {
        let scale = |views| Stage::frame(window, model, sizes, views, self.exaggeration()).fitted_scale();
        match self.views {
            Views::Both if scale(Views::Both) < BOTH_WORTH * scale(Views::Side) => Views::Side,
            views => views,
        }
    }

    /// The boundary that is in hand, or has the keyboard, or lies under the pointer.
    fn hot(&self) -> Option<Spot> {
        self.drag
            .as_ref()
            .map(|drag| drag.spot)
            .or(self.entry.as_ref().and_then(|entry| entry.what.spot()))
            .or(self.hovered)
    }

    /// Lets go of whatever is in hand.
    fn let_go(&mut self, events: &mut Vec<CanvasEvent>) {
        if self.drag.take().is_some() | self.across.take().is_some() | self.hole.take().is_some() {
            events.push(CanvasEvent::Gesture(Gesture::Commit));
        }
        self.entry = None;
        self.hovered = None;
    }
}
