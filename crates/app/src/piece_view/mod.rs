//! The view of the piece: the finished shape in space, turned by hand, measured, and its bends dragged.
//!
//! It draws a piece and asks for what the hand wants; it changes no plan. `model` keeps the piece, `camera` from where it is
//! seen, `image` its picture, and the rest reads the pointer and the keys.

mod arc;
mod blank;
mod camera;
mod captions;
mod handles;
pub(crate) mod head;
mod held;
mod image;
mod joined;
mod measure;
mod model;
mod pick;
mod place;
mod scale_bar;
mod spots;
mod stage;
mod steer;
mod underlay;
mod warnings;

pub(crate) use underlay::{check as check_picture, edit as lay_edit, seen_from, view_of};

use crate::state::{Desk, Gesture, PieceState, Request, Standard};
use crate::theme::{Text, space};
use crate::widgets::menu_of_part;
use camera::Camera;
use egui::{Align2, Label, Rect, Response, RichText, Role, Sense, Stroke, StrokeKind, Ui, Vec2, WidgetInfo};
use fh_core::plan::UnderlayView;
use held::Held;
use image::Image;
use measure::Measure;
use model::Model;
use place::{Place, Whole};
use stage::Stage;
use underlay::Under;

/// What is said where there is nothing to see yet.
const NOTHING: &str = "The finished piece shows here as soon as the bar has a part with all its sizes.";

/// The height of a line of words in the corners, in points at normal text size, and the share of the view that it may take:
/// a fitted piece stays clear of them.
const LABELS: f32 = 14.0;
const MOST_FOR_LABELS: f32 = 0.08;

/// The view and what it remembers from frame to frame.
#[derive(Default)]
pub(crate) struct PieceView {
    model: Model,
    camera: Camera,
    image: Image,
    measure: Measure,
    held: Option<Held>,
    under: Under,
    pointed_at: Option<Place>,
    zoom_asked: Option<f32>,
    /// What the piece was last fitted for.
    fitted_for: Option<(u64, Camera, Vec2)>,
}

impl PieceView {
    /// Looks from a named side.
    pub(crate) fn look_from(&mut self, standard: Standard) {
        self.camera.look_from(standard);
    }

    /// What lies to the right, away from whoever looks, and up.
    pub(crate) fn seen_rows(&self) -> [[f64; 3]; 3] {
        let sight = self.camera.sight();
        [sight.right, sight.toward.map(|part| -part), sight.up]
    }

    /// Shows the whole piece.
    pub(crate) fn fit(&mut self) {
        self.camera.fit();
    }

    /// Zooms about the middle of the view.
    pub(crate) fn zoom_by(&mut self, factor: f32) {
        self.zoom_asked = Some(self.zoom_asked.unwrap_or(1.0) * factor);
    }

    /// Begins or ends measuring; what to do then.
    pub(crate) fn toggle_measure(&mut self) -> &'static str {
        self.measure.toggle();
        if self.measure.is_on { "Click two points on the metal. Esc clears them." } else { "" }
    }

    /// Begins to lay the picture in a view, or ends it; what to do then.
    pub(crate) fn adjust_picture(&mut self, view: Option<UnderlayView>) -> &'static str {
        self.under.adjust(view.is_some());
        let Some(view) = view else { return "" };
        self.camera.look_from(underlay::standard(view));
        if self.measure.is_on {
            self.measure.toggle();
        }
        "Put the two points on the picture and type how far apart they are; drag the picture to where it fits."
    }

    /// How wide the piece is in a view, in mm; none where there is no piece yet.
    pub(crate) fn width_mm(&self, view: UnderlayView) -> Option<f64> {
        let [along, across, _] = self.model.reach?;
        let [least, most] = if view == UnderlayView::Side { across } else { along };
        Some(most - least)
    }

    /// Whether a handle or the picture is in hand: Escape belongs to the view then.
    pub(crate) fn is_holding(&self) -> bool {
        self.held.is_some() || self.under.is_holding()
    }

    /// What the buttons show.
    pub(crate) fn state(&self) -> PieceState {
        PieceState {
            measuring: self.measure.is_on,
            standard: self.camera.standard(),
            adjusting: self.under.is_adjusting(),
        }
    }

    /// Draws the piece and reads what the hand does to it.
    pub(crate) fn show(&mut self, ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
        if self.under.refresh(ui.ctx(), desk.document) {
            self.fitted_for = None;
        }
        self.under.show_bar(ui, desk, out);
        let size = ui.available_size().max(Vec2::splat(space::TARGET));
        let (rect, ground) = ui.allocate_exact_size(size, Sense::click_and_drag());
        ui.painter().rect_filled(rect, 0.0, desk.theme.ground);
        if self.model.refresh(desk.document, desk.shown()) {
            self.camera = Camera::default();
            self.measure.clear();
            self.under.adjust(false);
            self.let_go(out);
        }
        // The piece is taken out while the rest of the view may change.
        let model = std::mem::take(&mut self.model);
        if model.is_empty() && desk.document.plan().underlay.is_none() {
            self.let_go(out);
            show_nothing(ui, desk, rect, &ground);
        } else {
            self.show_piece(ui, desk, &model, &ground, out);
        }
        self.model = model;
        if ground.has_focus() {
            let ring = Stroke::new(space::LINE, desk.theme.focus);
            ui.painter().rect_stroke(rect.shrink(space::LINE), space::CORNER, ring, StrokeKind::Inside);
        }
    }

    fn show_piece(&mut self, ui: &mut Ui, desk: &Desk<'_>, model: &Model, ground: &Response, out: &mut Vec<Request>) {
        let rect = ground.rect;
        self.steer(ui, ground, out);
        let labels = desk.theme.scaled(LABELS).min(rect.height() * MOST_FOR_LABELS);
        self.keep_whole(model, desk, rect.size() - egui::vec2(0.0, 2.0 * labels));
        let shown = desk.shown();
        let selected = desk.selection.segment().filter(|_| shown.is_none());
        let selected = selected.map(|segment| (desk.selection.bar, segment));
        let lit = (lit(desk, selected), self.pointed_at);
        let stage = Stage {
            rect,
            painter: ui.painter().with_clip_rect(rect.intersect(ui.clip_rect())),
            theme: desk.theme,
            plan: shown.map_or(desk.document.plan(), |shown| &shown.plan),
            balance: shown.map_or(desk.document.balance(), |shown| &shown.balance),
            model,
            camera: self.camera,
            selected,
        };
        let seen = self.camera.standard().map_or("turned by hand", Standard::name);
        let name = format!("The piece. {seen}");
        ground.widget_info(|| WidgetInfo::labeled(Role::Image, true, &name));
        self.under.paint(&stage);
        self.image.see_through(self.under.is_shown());
        self.image.paint(ui, rect, model, &self.camera.sight(), desk.theme, lit);
        stage.paint_blanks();
        stage.paint_scale_bar();
        captions::show(ui, &stage, self.measure.is_on, shown.map(|shown| (shown.after, shown.of)));
        self.touch_piece(ui, &stage, ground, out);
        self.under.caption(ui, &stage);
        if shown.is_none() {
            menu_of_part::over(ui, ground, desk, out);
            self.touch_handles(ui, &stage, out);
            self.under.touch(ui, &stage, ground, out);
        } else {
            self.let_go(out);
        }
    }

    /// Keeps the piece whole in the window, unless a handle is in hand: what is dragged must not shrink under the hand.
    fn keep_whole(&mut self, model: &Model, desk: &Desk<'_>, window: Vec2) {
        if !self.camera.fits() || self.is_holding() || self.fitted_for == Some((model.stamp, self.camera, window)) {
            return;
        }
        let picture = self.under.corners(desk.document.plan(), &self.camera);
        let balance = desk.shown().map_or_else(|| desk.document.balance(), |shown| &shown.balance);
        let blanks = blank::places(model, balance);
        self.camera.show_all(model.corners().chain(blanks).chain(picture).chain(room(desk)), window);
        self.fitted_for = Some((model.stamp, self.camera, window));
    }

    /// Lets go of the handle in hand.
    fn let_go(&mut self, out: &mut Vec<Request>) {
        if self.held.take().is_some() {
            out.push(Request::Gesture(Gesture::Commit));
        }
        self.under.let_go(out);
        self.pointed_at = None;
    }
}

/// What stands out: the selected segment, or what the step changes.
fn lit(desk: &Desk<'_>, selected: Option<Place>) -> Vec<Whole> {
    let plan = desk.document.plan();
    let Some(shown) = desk.shown() else { return selected.map(|place| Whole::new(plan, place)).into_iter().collect() };
    let places = shown.bar.into_iter().flat_map(|bar| shown.lit.iter().map(move |segment| (bar, *segment)));
    places.map(|place| Whole::new(plan, place)).collect()
}

/// The ends of the longest bar while steps are shown, so that what grows is seen to one scale.
fn room(desk: &Desk<'_>) -> impl Iterator<Item = [f64; 3]> + use<> {
    let longest = desk.shown().map(|shown| shown.longest_mm);
    longest.into_iter().flat_map(|mm| [[0.0, 0.0, 0.0], [mm, 0.0, 0.0]])
}

fn show_nothing(ui: &mut Ui, desk: &Desk<'_>, rect: Rect, ground: &Response) {
    ground.widget_info(|| WidgetInfo::labeled(Role::Image, true, "The piece: nothing to see yet"));
    let words = RichText::new(NOTHING).text_style(Text::Body.style()).color(desk.theme.ink_quiet);
    let room = rect.shrink(space::GROUP);
    let size = egui::vec2(room.width(), desk.theme.scaled(space::TARGET) * 2.0);
    let place = Align2::CENTER_CENTER.align_size_within_rect(size.min(room.size()), room);
    ui.put(place, Label::new(words).wrap().halign(egui::Align::Center).selectable(false));
}
