//! The picture under the piece: a sketch, a photograph or a scan in the view that it lies in, to its true scale, to be traced.
//!
//! `load` reads its file, `lay` knows which place of the piece each pixel stands for, `points` lets the hand lay it, and
//! `bar` shows its sizes.

mod bar;
mod grip;
mod lay;
mod load;
mod points;

pub(crate) use load::check;

use super::camera::Camera;
use super::stage::Stage;
use crate::state::{Desk, Document, Request, Standard};
use crate::theme::{Text, UNTINTED, space};
use egui::{Context, Frame, Label, Margin, Rect, RichText, Ui, pos2, vec2};
use fh_core::edit::{Edit, PlanHeader};
use fh_core::plan::{Plan, PlanUnit, Underlay, UnderlayView};
use grip::{Held, kept_lay};
use lay::Lay;
use load::Picture;
use std::path::{Path, PathBuf};

/// How strongly a picture is shown where the plan does not say it.
const USUAL_STRENGTH: f64 = 0.5;

/// The picture under the piece, and what the view remembers of it from frame to frame.
#[derive(Default)]
pub(super) struct Under {
    picture: Picture,
    adjusting: bool,
    held: Option<Held>,
    /// Whether it was shown in the last frame.
    shown: bool,
}

impl Under {
    /// Begins or ends laying the picture.
    pub(super) fn adjust(&mut self, on: bool) {
        self.adjusting = on;
    }

    /// Whether the picture is being laid.
    pub(super) fn is_adjusting(&self) -> bool {
        self.adjusting
    }

    /// Whether the picture or one of its points is in hand.
    pub(super) fn is_holding(&self) -> bool {
        self.held.is_some()
    }

    /// Whether a drag beside the metal belongs to the picture rather than to the camera.
    pub(super) fn takes_drags(&self) -> bool {
        self.adjusting && self.shown
    }

    /// Whether the picture was shown in the last frame: the metal over it is to let it through.
    pub(super) fn is_shown(&self) -> bool {
        self.shown
    }

    /// Follows the plan: reads its picture. Whether the picture has just come.
    pub(super) fn refresh(&mut self, ctx: &Context, document: &Document) -> bool {
        let underlay = document.plan().underlay.as_ref();
        self.adjusting &= underlay.is_some();
        let path = underlay.map(|underlay| path_of(document, &underlay.file));
        self.picture.refresh(ctx, path.as_deref())
    }

    /// The corners of the picture where it is seen from here: it is to be whole in the window too.
    pub(super) fn corners(&self, plan: &Plan, camera: &Camera) -> impl Iterator<Item = [f64; 3]> + use<> {
        let seen = plan.underlay.as_ref().filter(|underlay| camera.standard() == Some(standard(underlay.view)));
        seen.and_then(|underlay| self.lay(underlay)).map(|lay| lay.corners()).into_iter().flatten()
    }

    fn lay(&self, underlay: &Underlay) -> Option<Lay> {
        Lay::of(underlay, self.picture.sheet()?.size)
    }

    /// Paints the picture, behind everything else.
    pub(super) fn paint(&mut self, stage: &Stage<'_>) {
        self.shown = false;
        let Some(underlay) = seen(stage) else { return };
        let Some(lay) = kept_lay(self.held.as_ref()).or_else(|| self.lay(underlay)) else { return };
        let Some(sheet) = self.picture.sheet() else { return };
        let ends = [[0.0, 0.0], [1.0, 1.0]].map(|share| stage.point(lay.in_space(share)));
        let all = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
        let tint = UNTINTED.gamma_multiply(strength(underlay) as f32);
        stage.painter.image(sheet.texture.id(), Rect::from_two_pos(ends[0], ends[1]), all, tint);
        self.shown = true;
    }

    /// Says what is to be known of the picture: why it is not seen, or its scale while it is laid.
    pub(super) fn caption(&self, ui: &mut Ui, stage: &Stage<'_>) {
        let Some(underlay) = &stage.plan.underlay else { return };
        let Some(words) = self.words(underlay, stage) else { return };
        let theme = stage.theme;
        let line = ui.text_style_height(&Text::Small.style()) + space::TIGHT;
        let at = stage.rect.left_top() + vec2(space::GAP, space::TIGHT + line);
        let width = (stage.rect.width() - 2.0 * space::GAP).max(1.0);
        let laid = crate::widgets::line::lay(ui, &words, theme.font(Text::Small), theme.ink, width);
        let rect = Rect::from_min_size(at, laid.size() + vec2(1.0, 0.0));
        ui.painter().rect_filled(
            rect.expand2(vec2(space::TIGHT, 0.0)),
            space::CORNER,
            theme.ground.gamma_multiply(0.8),
        );
        let text = RichText::new(words).text_style(Text::Small.style()).color(theme.ink);
        ui.put(rect, Label::new(text).truncate().selectable(false));
    }

    fn words(&self, underlay: &Underlay, stage: &Stage<'_>) -> Option<String> {
        if let Some(why) = self.picture.missing() {
            return Some(format!("No picture under the piece: {why} ({})", underlay.file));
        }
        if seen(stage).is_none() {
            return Some(format!("The picture under the piece shows {}.", seen_from(underlay.view)));
        }
        let lay = self.lay(underlay).filter(|_| self.adjusting)?;
        Some(scale_words(lay.mm_per_pixel, stage.plan.units.length))
    }

    /// Shows its sizes while it is laid.
    pub(super) fn show_bar(&mut self, ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let Some(underlay) = desk.document.plan().underlay.as_ref().filter(|_| self.adjusting) else { return };
        let frame = Frame::new().fill(desk.theme.panel).inner_margin(Margin::symmetric(12, 4));
        let is_missing = self.picture.missing().is_some();
        let asked = frame.show(ui, |ui| {
            ui.set_width(ui.available_width());
            bar::show(ui, desk, underlay, is_missing, out)
        });
        if asked.inner == bar::Asked::LookAgain {
            self.picture.look_again();
        }
    }
}

/// The scale in words, in the plan's unit.
fn scale_words(mm_per_pixel: f64, unit: PlanUnit) -> String {
    let [size, symbol] = match unit {
        PlanUnit::Inch => [format!("{:.4}", mm_per_pixel / unit.length_unit().mm()), "in".to_owned()],
        PlanUnit::Millimeter => [format!("{mm_per_pixel:.3}"), "mm".to_owned()],
    };
    let size = size.trim_end_matches('0').trim_end_matches('.');
    format!("One pixel of the picture is {size} {symbol}.")
}

/// The plan's picture, where it is seen from here.
fn seen<'a>(stage: &Stage<'a>) -> Option<&'a Underlay> {
    stage.plan.underlay.as_ref().filter(|underlay| stage.camera.standard() == Some(standard(underlay.view)))
}

/// The view of the piece that shows a picture.
pub(super) fn standard(view: UnderlayView) -> Standard {
    match view {
        UnderlayView::Front => Standard::Front,
        UnderlayView::Side => Standard::Side,
        UnderlayView::Top => Standard::Top,
    }
}

/// The view that a new picture is laid in: the one that is shown, or else from the front.
pub(crate) fn view_of(standard: Option<Standard>) -> UnderlayView {
    match standard {
        Some(Standard::Side) => UnderlayView::Side,
        Some(Standard::Top) => UnderlayView::Top,
        _ => UnderlayView::Front,
    }
}

/// The words for a view: `from the front`.
pub(crate) fn seen_from(view: UnderlayView) -> &'static str {
    match view {
        UnderlayView::Front => "from the front",
        UnderlayView::Side => "from the side",
        UnderlayView::Top => "from above",
    }
}

fn strength(underlay: &Underlay) -> f64 {
    underlay.strength.as_ref().map_or(USUAL_STRENGTH, fh_measure::WrittenShare::ratio)
}

/// Where the picture's file is: a relative path starts from the plan's folder.
fn path_of(document: &Document, file: &str) -> PathBuf {
    let folder = document.file().and_then(|file| file.path.parent());
    folder.unwrap_or(Path::new("")).join(file)
}

/// The change that lays the picture so, or takes it away.
pub(crate) fn edit(plan: &Plan, underlay: Option<Underlay>) -> Edit {
    Edit::SetPlan(Box::new(PlanHeader { underlay, ..PlanHeader::from(plan) }))
}

/// A length of so many mm as a place is written: to the finest step of the plan's unit.
fn placed(mm: f64, unit: PlanUnit) -> Option<fh_measure::WrittenLength> {
    let mm = unit.finest().round(mm).mm();
    fh_measure::WrittenLength::from_mm(mm, unit.length_unit(), fh_measure::LengthRange::Any).ok()
}
