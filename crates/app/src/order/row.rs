//! A line of the list of steps: its number, its title, where and with what; and the head of a heat.

use super::groups::{Group, Line};
use crate::state::{Desk, heat_words, step_words};
use crate::theme::{Text, Theme, space};
use crate::widgets::{line, severity_sign};
use egui::{Align2, Rect, Response, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use fh_core::describe::short_name;
use fh_core::findings::Severity;
use fh_work::WorkedStep;

/// The heights of a step and of the head of a heat, in points at normal text size.
const STEP: f32 = 44.0;
const HEAT: f32 = 26.0;
/// The width of the numbers, and of the band of a heat.
const NUMBERS: f32 = 40.0;
const BAND: f32 = 6.0;
/// The room of a sign.
const SIGN: f32 = 18.0;

/// How a step is shown.
pub(super) struct Look {
    /// Its number, counted from 0.
    pub(super) number: usize,
    pub(super) selected: bool,
    pub(super) hot: bool,
    pub(super) worst: Option<Severity>,
}

/// The height of a line.
pub(super) fn height(theme: &Theme, line: &Line) -> f32 {
    theme.scaled(if matches!(line, Line::Heat(_)) { HEAT } else { STEP })
}

/// Shows the head of a heat: its number, and the minutes of its steps.
pub(super) fn heat(ui: &mut Ui, desk: &Desk<'_>, rect: Rect, (place, group): (usize, &Group)) -> Response {
    let theme = desk.theme;
    let minutes = minutes_words(group.minutes);
    let response = ui.interact(rect, ui.scope_id().with(("heat", place)), Sense::hover());
    let spoken = format!("{}, {minutes}", group.words);
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &spoken));
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, theme.ground);
    band(ui, theme, rect, group.warmth.is_hot());
    let right = rect.right() - space::PAD;
    let time = line::lay(ui, &minutes, theme.font(Text::Small), theme.ink_quiet, rect.width());
    let left = rect.left() + theme.scaled(BAND) + space::GAP;
    let name =
        line::lay(ui, &group.words, theme.font(Text::Strong), theme.ink, right - left - time.size().x - space::GAP);
    painter.galley(pos2(left, rect.center().y - name.size().y / 2.0), name, theme.ink);
    painter.galley(pos2(right - time.size().x, rect.center().y - time.size().y / 2.0), time, theme.ink_quiet);
    response
}

/// The band at the left edge that holds the steps of a heat together: broad where it is hot.
fn band(ui: &Ui, theme: &Theme, rect: Rect, hot: bool) {
    let width = theme.scaled(BAND);
    let (width, color) = if hot { (width, theme.hot) } else { (theme.hairline(), theme.edge) };
    ui.painter().rect_filled(Rect::from_min_size(rect.min, vec2(width, rect.height())), 0.0, color);
}

/// Shows a step.
pub(super) fn step(ui: &mut Ui, desk: &Desk<'_>, rect: Rect, step: &WorkedStep, look: &Look) -> Response {
    let theme = desk.theme;
    let response = ui.interact(rect, ui.scope_id().with(("step", look.number)), Sense::CLICK | Sense::DRAG);
    let spoken = step_words(look.number, step);
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, look.selected, &spoken));
    let painter = ui.painter();
    if look.selected {
        painter.rect_filled(rect, 0.0, theme.band_selected);
    } else if response.hovered() {
        painter.rect_filled(rect, 0.0, theme.panel_raised);
    }
    painter.hline(rect.x_range(), rect.bottom() - theme.hairline() / 2.0, (theme.hairline(), theme.rule));
    band(ui, theme, rect, look.hot);
    if look.selected {
        let stripe = vec2(space::TIGHT, rect.height());
        painter.rect_filled(Rect::from_min_size(rect.min, stripe), 0.0, theme.accent);
    }
    words(ui, theme, rect, step, look);
    response.on_hover_text(format!("{}. {}", short_name(&step.title), heat_words(step)))
}

fn words(ui: &Ui, theme: &Theme, rect: Rect, step: &WorkedStep, look: &Look) {
    let painter = ui.painter();
    let middle = rect.left() + theme.scaled(BAND + NUMBERS);
    let number = (look.number + 1).to_string();
    let at = pos2(middle - space::GAP, rect.center().y);
    painter.text(at, Align2::RIGHT_CENTER, number, theme.font(Text::Figure), theme.ink);
    let right = rect.right() - space::PAD;
    let sign_room = if look.worst.is_some() { theme.scaled(SIGN) } else { 0.0 };
    let title = line::lay(ui, &step.title, theme.font(Text::Strong), theme.ink, right - middle - sign_room);
    let below = line::lay(ui, &where_and_how(step), theme.font(Text::Small), theme.ink_quiet, right - middle);
    let top = rect.center().y - (title.size().y + below.size().y) / 2.0;
    let second = top + title.size().y;
    painter.galley(pos2(middle, top), title, theme.ink);
    painter.galley(pos2(middle, second), below, theme.ink_quiet);
    if let Some(worst) = look.worst {
        let (sign, color) = (severity_sign::sign(worst), severity_sign::color(theme, worst));
        painter.text(pos2(right, top), Align2::RIGHT_TOP, sign, theme.font(Text::Body), color);
    }
}

/// Where it is done and with what, in one line.
fn where_and_how(step: &WorkedStep) -> String {
    let place = step.place.name();
    if step.tool.is_empty() { place.to_owned() } else { format!("{place}; {}", step.tool) }
}

/// Minutes in words: `1.5 min`.
pub(super) fn minutes_words(minutes: f64) -> String {
    if minutes > 0.0 && minutes < 0.05 { "below 0.1 min".to_owned() } else { format!("{minutes:.1} min") }
}
