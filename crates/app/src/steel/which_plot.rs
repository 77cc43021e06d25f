//! Cost against work, one dot for each bar: what lies low and to the left is cheap and soon done.

use crate::state::{Desk, Request, SteelAsk};
use crate::theme::{Text, Theme, space};
use crate::widgets::scale::{short, steps};
use egui::{Align2, Pos2, Rect, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use fh_core::plan::PlanUnit;
use fh_rack::which::options::{BarOption, Fire};
use uom::si::f64::Mass;
use uom::si::mass::{gram, kilogram, pound};

/// The height of the plot, in points at normal text size, and the room for its figures.
const HEIGHT: f32 = 210.0;
const LEFT: f32 = 40.0;
const BELOW: f32 = 36.0;
/// A dot, and how far off a click still meets it.
const DOT: f32 = 4.5;
const REACH: f32 = 18.0;
/// The most figures along and up.
const MOST_TICKS: f64 = 5.0;
/// The room beyond the farthest dot.
const HEADROOM: f64 = 1.08;

struct Plot {
    room: Rect,
    /// From where it reaches along, and what the farthest dots are at.
    least: f64,
    most: [f64; 2],
}

impl Plot {
    fn place(&self, [x, y]: [f64; 2]) -> Pos2 {
        let share =
            |value: f64, from: f64, to: f64| if to > from { ((value - from) / (to - from)) as f32 } else { 0.5 };
        let along = self.room.left() + self.room.width() * share(x, self.least, self.most[0]);
        pos2(along, self.room.bottom() - self.room.height() * share(y, 0.0, self.most[1]))
    }
}

/// Shows the plot.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let (theme, which) = (desk.theme, &desk.steel.which);
    let (has_prices, has_minutes) = (which.options.iter().any(|option| option.cost.is_some()), which.has_minutes());
    let (weighs, of_a_kg) = match desk.document.plan().units.length {
        PlanUnit::Inch => ("weight, lb", Mass::new::<kilogram>(1.0).get::<pound>()),
        PlanUnit::Millimeter => ("weight, g", Mass::new::<kilogram>(1.0).get::<gram>()),
    };
    let value = |option: &BarOption| -> Option<[f64; 2]> {
        let cost = if has_prices { option.cost? as f64 } else { option.mass_kg * of_a_kg };
        let work =
            if has_minutes { option.fire.map_or(option.effort_cm3, Fire::all_minutes) } else { option.effort_cm3 };
        option.can_be_forged().then_some([cost, work])
    };
    let shown = which.shown().into_iter();
    let dots: Vec<(usize, [f64; 2])> = shown.filter_map(|at| Some((at, value(&which.options[at])?))).collect();
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), theme.scaled(HEIGHT)), Sense::CLICK);
    let words = [if has_prices { "cost" } else { weighs }, if has_minutes { "minutes" } else { "metal moved" }];
    response.widget_info(|| {
        WidgetInfo::labeled(Role::Image, true, format!("{} of each bar against its {}", words[1], words[0]))
    });
    if dots.is_empty() {
        return;
    }
    let farthest = |axis: usize| dots.iter().map(|(_, at)| at[axis]).fold(0.0, f64::max) * HEADROOM;
    let room = Rect::from_min_max(
        rect.left_top() + vec2(theme.scaled(LEFT), theme.scaled(space::GROUP)),
        rect.right_bottom() - vec2(space::GAP, theme.scaled(BELOW)),
    );
    // Bars of one piece differ by little in weight: the plot begins a little before the nearest dot.
    let nearest = dots.iter().map(|(_, at)| at[0]).fold(f64::INFINITY, f64::min);
    let plot = Plot { room, least: nearest * (2.0 - HEADROOM), most: [farthest(0), farthest(1)] };
    let money = desk.steel.stock.as_ref().map(|stock| stock.merchant.now.money()).unwrap_or_default();
    let along = |value: f64| if has_prices { money.figures(value as i64) } else { short(value) };
    axes(ui, theme, &plot, words, &along);
    let at = which.at();
    for (index, value) in &dots {
        dot(ui, theme, plot.place(*value), &which.options[*index], at == Some(*index));
    }
    let near = |to: Pos2| {
        let far = |value: &[f64; 2]| plot.place(*value).distance(to);
        let nearest = dots.iter().min_by(|(_, a), (_, b)| far(a).total_cmp(&far(b)));
        nearest.filter(|(_, value)| far(value) < theme.scaled(REACH)).map(|(index, _)| &which.options[*index])
    };
    if let Some(option) = response.hover_pos().and_then(near) {
        response.clone().on_hover_text_at_pointer(option.section.describe());
    }
    if let Some(option) = response.interact_pointer_pos().filter(|_| response.clicked()).and_then(near) {
        out.push(Request::Steel(SteelAsk::Look(option.alike.clone())));
    }
}

fn axes(ui: &Ui, theme: &Theme, plot: &Plot, words: [&str; 2], along: &dyn Fn(f64) -> String) {
    let (room, painter, small) = (plot.room, ui.painter(), theme.font(Text::Small));
    painter.rect_filled(room, 0, theme.ground);
    for mark in steps((plot.least, plot.most[0]), MOST_TICKS) {
        let x = plot.place([mark.value, 0.0]).x;
        painter.vline(x, room.y_range(), (theme.hairline(), theme.rule));
        let at = pos2(x, room.bottom() + space::TIGHT);
        painter.text(at, Align2::CENTER_TOP, along(mark.value), small.clone(), theme.ink_quiet);
    }
    for mark in steps((0.0, plot.most[1]), MOST_TICKS) {
        let y = plot.place([0.0, mark.value]).y;
        painter.hline(room.x_range(), y, (theme.hairline(), theme.rule));
        let at = pos2(room.left() - space::TIGHT, y);
        painter.text(at, Align2::RIGHT_CENTER, short(mark.value), small.clone(), theme.ink_quiet);
    }
    painter.text(
        room.left_top() - vec2(theme.scaled(LEFT) - space::TIGHT, 0.0),
        Align2::LEFT_BOTTOM,
        words[1],
        small.clone(),
        theme.ink,
    );
    let foot = room.right_bottom() + vec2(0.0, theme.scaled(BELOW));
    painter.text(foot, Align2::RIGHT_BOTTOM, words[0], small, theme.ink);
}

/// Filled where nothing speaks against it, else a ring; what is chosen has its name beside it.
fn dot(ui: &Ui, theme: &Theme, at: Pos2, option: &BarOption, is_chosen: bool) {
    let (painter, radius) = (ui.painter(), theme.scaled(DOT));
    if option.against.is_empty() && option.is_long_enough {
        painter.circle_filled(at, radius, theme.stock_edge);
    } else {
        painter.circle(at, radius, theme.ground, (space::LINE, theme.stock_edge));
    }
    if is_chosen {
        painter.circle_stroke(at, radius + space::TIGHT, (space::HEAVY, theme.accent));
    }
}
