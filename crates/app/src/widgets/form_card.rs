//! A form, or a ready-made whole, offered for choosing: its drawing, its name, and a line of what it is.

use super::{form_icon, whole_icon};
use crate::theme::{Text, Theme, space};
use egui::{FontId, Painter, Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use fh_core::describe::upper_first;
use fh_core::new_segment::Whole;
use fh_core::plan::FormKind;

/// The height of the drawing, in points at normal text size.
const ICON: f32 = 28.0;

/// What a card offers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Offer {
    /// A form.
    Form(FormKind),
    /// A ready-made whole.
    Whole(Whole),
}

impl Offer {
    /// Its name.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Form(kind) => kind.name(),
            Self::Whole(whole) => whole.name(),
        }
    }

    /// What it is, in a line.
    pub(crate) fn summary(self) -> &'static str {
        match self {
            Self::Form(kind) => kind.summary(),
            Self::Whole(whole) => whole.summary(),
        }
    }

    /// Other words for it.
    pub(crate) fn also(self) -> &'static [&'static str] {
        match self {
            Self::Form(_) => &[],
            Self::Whole(whole) => whole.also(),
        }
    }
}

/// Shows the card; one that is lit is taken by Enter.
pub(crate) fn show(ui: &mut Ui, theme: &Theme, offer: Offer, width: f32, is_lit: bool) -> Response {
    let icon = vec2(form_icon::width_for(theme.scaled(ICON)), theme.scaled(ICON));
    let wrap = (width - icon.x - 3.0 * space::GAP).max(theme.scaled(60.0));
    let lay = |text: &str, font: FontId, color| ui.painter().layout(text.to_owned(), font, color, wrap);
    let title = upper_first(offer.name());
    let name = lay(&title, theme.font(Text::Strong), theme.ink);
    let summary = lay(offer.summary(), theme.font(Text::Small), theme.ink_quiet);
    // Cards beside each other are of one height, whether the summary takes one line or two.
    let two_lines = 2.0 * ui.text_style_height(&Text::Small.style());
    let height = (name.size().y + summary.size().y.max(two_lines)).max(icon.y) + space::TIGHT;
    let (rect, response) = ui.allocate_exact_size(vec2(width, height), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &title));
    let visuals = ui.style().interact(&response);
    let (fill, edge) = match (is_lit, response.has_focus()) {
        (_, true) => (visuals.weak_bg_fill, Stroke::new(space::HEAVY, theme.focus)),
        (true, false) => (theme.band_selected, Stroke::new(space::LINE, theme.accent)),
        (false, false) => (visuals.weak_bg_fill, visuals.bg_stroke),
    };
    ui.painter().rect(rect, visuals.corner_radius, fill, edge, StrokeKind::Inside);
    let left = pos2(rect.left() + space::GAP, rect.center().y - icon.y / 2.0);
    let place = Rect::from_min_size(left, icon);
    paint_drawing(ui.painter(), theme, place, offer);
    let text = pos2(left.x + icon.x + space::GAP, rect.top() + space::TIGHT / 2.0);
    let below = text + vec2(0.0, name.size().y);
    ui.painter().galley(text, name, theme.ink);
    ui.painter().galley(below, summary, theme.ink_quiet);
    response
}

/// Paints the drawing of what is offered into a rectangle.
pub(crate) fn paint_drawing(painter: &Painter, theme: &Theme, rect: Rect, offer: Offer) {
    match offer {
        Offer::Form(kind) => form_icon::paint(painter, theme, rect, kind),
        Offer::Whole(whole) => whole_icon::paint(painter, theme, rect, whole),
    }
}

/// The name of a form as it begins a line.
pub(crate) fn title(kind: FormKind) -> String {
    upper_first(kind.name())
}
