//! The axes of the plots over time: seconds along, even ticks, no dragging.

use crate::theme::{Text, Theme, space};
use crate::widgets::scale::{short, steps};
use egui::{Align2, RichText, Ui};
use egui_plot::{AxisHints, GridMark, HLine, Line, LineStyle, Plot, PlotPoint, PlotPoints, PlotUi, VLine};
use std::ops::RangeInclusive;

/// The most ticks along and up.
const MOST_TICKS_ALONG: f64 = 7.0;
const MOST_TICKS_UP: f64 = 5.0;
/// The height of a plot, in points at normal text size.
const HEIGHT: f32 = 150.0;
/// The room to the right of the last second, as a share of the time, so that its number is whole.
const RIGHT: f64 = 1.05;
/// The width of its numbers at the left.
const NUMBERS: f32 = 34.0;

/// An empty plot.
pub(super) fn plot<'a>(ui: &Ui, theme: &Theme, name: &str, up: &str) -> Plot<'a> {
    let small = theme.font(Text::Small);
    let tick = |mark: GridMark, _: &RangeInclusive<f64>| short(mark.value);
    let label = |words: &str| RichText::new(words).text_style(Text::Small.style()).color(theme.ink_quiet);
    let axis_x = AxisHints::new_x().label(label("seconds out of the fire")).formatter(tick);
    let axis_y = AxisHints::new_y().label(label(up)).formatter(tick).min_thickness(theme.scaled(NUMBERS));
    let spacing = egui::Rangef::new(space::GAP, space::GAP + 1.0);
    let dress = |axis: AxisHints<'a>| {
        axis.tick_label_font(small.clone()).tick_label_color(theme.ink_quiet).label_spacing(spacing)
    };
    Plot::new(name)
        .width(ui.available_width())
        .height(theme.scaled(HEIGHT))
        .custom_x_axes(vec![dress(axis_x)])
        .custom_y_axes(vec![dress(axis_y)])
        .x_grid_spacer(|grid| steps(grid.bounds, MOST_TICKS_ALONG))
        .y_grid_spacer(|grid| steps(grid.bounds, MOST_TICKS_UP))
        .show_background(false)
        .show_crosshair(false)
        .grid_color(theme.rule)
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .allow_axis_zoom_drag(false)
        .set_margin_fraction(egui::Vec2::ZERO)
        .label_formatter(|_| None)
}

/// Sets what is seen: so many seconds along, and up to a value.
pub(super) fn bounds(plot: &mut PlotUi<'_>, seconds: f64, top: f64) {
    plot.set_plot_bounds_x(0.0..=seconds * RIGHT);
    plot.set_plot_bounds_y(0.0..=top);
}

/// Draws a curve.
pub(super) fn curve(plot: &mut PlotUi<'_>, theme: &Theme, points: Vec<[f64; 2]>, style: LineStyle) {
    let line = Line::new("", PlotPoints::new(points)).color(theme.ink).width(space::LINE).style(style);
    plot.line(line.allow_hover(false));
}

/// Draws a line across with its words: over it at the right, or below it at the left, where the curves are still high.
pub(super) fn level(plot: &mut PlotUi<'_>, theme: &Theme, value: f64, words: &str, is_over: bool) {
    let dashes = LineStyle::Dashed { length: space::GAP };
    plot.hline(HLine::new("", value).color(theme.ink_quiet).width(space::LINE).style(dashes).allow_hover(false));
    let bounds = plot.plot_bounds();
    let (x, anchor) =
        if is_over { (bounds.max()[0], Align2::RIGHT_BOTTOM) } else { (bounds.min()[0], Align2::LEFT_TOP) };
    let at = PlotPoint::new(x, value);
    let words = format!(" {words} ");
    let label = RichText::new(words).text_style(Text::Small.style());
    plot.text(egui_plot::Text::new("", at, label).anchor(anchor).color(theme.ink).allow_hover(false));
}

/// Draws the moment that is looked at.
pub(super) fn moment(plot: &mut PlotUi<'_>, theme: &Theme, seconds: f64) {
    plot.vline(VLine::new("", seconds).color(theme.accent).width(space::LINE).allow_hover(false));
}
