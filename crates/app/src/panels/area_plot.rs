//! The plot of section area along the forged bar, the stock's area as a line across it.

use crate::figures;
use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::scale::{short, steps};
use egui::{Align2, Button, RichText, Ui};
use egui_plot::{AxisHints, FilledArea, GridMark, HLine, Line, LineStyle, Plot, PlotPoint, PlotPoints, VLine};
use fh_core::balance::BarBalance;
use fh_core::plan::PlanUnit;
use std::ops::RangeInclusive;

/// The most points of the curve, however many segments there are.
const MOST_POINTS: usize = 4000;
/// Points along one segment whose section changes.
const POINTS_PER_SEGMENT: usize = 24;
/// How many places along the curve the screen can tell apart.
const MOST_PLACES: f64 = 400.0;
/// The most ticks along the bar and up.
const MOST_TICKS_ALONG: f64 = 14.0;
const MOST_TICKS_UP: f64 = 4.0;
/// Between which distances of ticks, in points, their labels come to be seen: all at once.
const LABELS_FROM: f32 = 8.0;
const LABELS_FULL: f32 = 9.0;
/// The room over the highest point, as a share of it.
const HEADROOM: f64 = 1.2;

/// The curve of a bar: places along the forged bar and areas, in the plan's units.
#[derive(Clone, Debug, Default)]
pub(crate) struct Curve {
    along: Vec<f64>,
    area: Vec<f64>,
    /// Where each segment's points begin.
    starts: Vec<usize>,
}

impl Curve {
    /// Adds a point. One that lies closer to the last than the screen can show is left out, but for the ends of a segment.
    fn put(&mut self, along: f64, area: f64, shortest: f64, at_an_end: bool) {
        let is_close = self.along.last().is_some_and(|last| along - last < shortest);
        if along.is_finite() && area.is_finite() && (at_an_end || !is_close) {
            self.along.push(along);
            self.area.push(area);
        }
    }

    /// The curve in lines: one for each segment, and one for each step between two. A single line with corners so close
    /// to each other would be drawn with long spikes.
    fn lines(&self) -> Vec<Vec<[f64; 2]>> {
        let points: Vec<[f64; 2]> = self.along.iter().zip(&self.area).map(|(along, area)| [*along, *area]).collect();
        let mut lines = Vec::with_capacity(2 * self.starts.len());
        for (index, start) in self.starts.iter().enumerate() {
            let end = self.starts.get(index + 1).copied().unwrap_or(points.len());
            lines.extend(points.get(*start..end).map(<[_]>::to_vec));
            let step = points.get(end.saturating_sub(1)).zip(points.get(end));
            lines.extend(step.map(|(last, next)| vec![*last, *next]));
        }
        lines
    }

    /// Takes the areas along a bar.
    pub(crate) fn new(bar: &BarBalance, unit: PlanUnit) -> Self {
        let mut curve = Self::default();
        // A split stands for its branches: its area is that of all of them together.
        let each = (MOST_POINTS / bar.whole().count().max(1)).clamp(2, POINTS_PER_SEGMENT);
        let inch_or_mm = unit.length_unit().mm();
        let shortest = figures::mm(bar.forged_length) / inch_or_mm / MOST_PLACES;
        for (_, segment) in bar.whole() {
            let (start, length) = (figures::mm(segment.forged_start), figures::mm(segment.forged_length));
            curve.starts.push(curve.along.len());
            for point in 0..each {
                let share = point as f64 / (each - 1) as f64;
                let along = (start + length * share) / inch_or_mm;
                curve.put(
                    along,
                    figures::area_value(segment.area_at(share), unit),
                    shortest,
                    point == 0 || point + 1 == each,
                );
            }
        }
        curve
    }
}

/// Shows the head of the plot: a click opens or closes it.
pub(crate) fn show_head(ui: &mut Ui, desk: &Desk<'_>, open: bool, out: &mut Vec<Request>) {
    let unit = desk.document.plan().units.length;
    let (area, along) = (figures::area_sign(unit), unit.length_unit().symbol());
    let arrow = if open { "▼" } else { "▶" };
    let words = format!("{arrow}  Section area ({area}) along the forged bar ({along})");
    let words = RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet);
    let tip = if open { "Close the plot." } else { "Open the plot." };
    let response = ui.add(Button::new(words).frame(false)).on_hover_text(tip);
    if response.clicked() {
        out.push(Request::ShowPlot(!open));
    }
    response.accessible_name("Plot of section area");
}

/// Shows the plot.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, curve: &Curve, out: &mut Vec<Request>) {
    let plan = desk.document.plan();
    let Some(bar) = desk.document.balance().bars.get(desk.selection.bar) else { return };
    let unit = plan.units.length;
    show_head(ui, desk, true, out);
    let stock = figures::area_value(bar.stock_area, unit);
    let length = curve.along.last().copied().unwrap_or(1.0).max(f64::MIN_POSITIVE);
    let top = curve.area.iter().copied().fold(stock, f64::max).max(f64::MIN_POSITIVE) * HEADROOM;
    let to_forged = |stock_mm: f64| bar.forged_from_stock_mm(stock_mm) / unit.length_unit().mm();
    let cursor = desk.selection.cursor_mm.map(to_forged).filter(|cursor| cursor.is_finite());
    let pointer = plot(ui, desk).show(ui, |plot| {
        plot.set_plot_bounds_x(0.0..=length);
        plot.set_plot_bounds_y(0.0..=top);
        draw(plot, desk, curve, stock, cursor);
        if plot.response().hovered() { plot.pointer_coordinate() } else { None }
    });
    let response = pointer.response;
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Image, true, "Section area along the bar"));
    let pointer: Option<PlotPoint> = pointer.inner;
    match pointer {
        Some(at) => out.push(Request::Cursor(Some(bar.stock_from_forged_mm(at.x * unit.length_unit().mm())))),
        None if was_here(ui) => out.push(Request::Cursor(None)),
        None => {}
    }
    ui.data_mut(|data| data.insert_temp(was_here_id(), pointer.is_some()));
}

fn was_here(ui: &Ui) -> bool {
    ui.data(|data| data.get_temp::<bool>(was_here_id())).unwrap_or(false)
}

fn was_here_id() -> egui::Id {
    egui::Id::unique("the pointer was over the plot")
}

fn plot<'a>(ui: &Ui, desk: &Desk<'a>) -> Plot<'a> {
    let theme = desk.theme;
    let small = theme.font(Text::Small);
    let tick = |mark: GridMark, _: &RangeInclusive<f64>| short(mark.value);
    let spacing = egui::Rangef::new(LABELS_FROM, LABELS_FULL);
    let axis_x = AxisHints::new_x().formatter(tick).tick_label_font(small.clone()).tick_label_color(theme.ink_quiet);
    let axis_y = AxisHints::new_y().formatter(tick).tick_label_font(small).tick_label_color(theme.ink_quiet);
    let axis_y = axis_y.min_thickness(theme.scaled(52.0)).label_spacing(spacing);
    Plot::new("section area")
        .height(ui.available_height())
        .custom_x_axes(vec![axis_x.label_spacing(spacing)])
        .x_grid_spacer(|grid| steps(grid.bounds, MOST_TICKS_ALONG))
        .y_grid_spacer(|grid| steps(grid.bounds, MOST_TICKS_UP))
        .custom_y_axes(vec![axis_y])
        .show_background(false)
        .show_crosshair(false)
        .show_grid([false, true])
        .grid_color(theme.rule)
        .cursor_color(theme.accent)
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .allow_axis_zoom_drag(false)
        .set_margin_fraction(egui::Vec2::ZERO)
        .label_formatter(|_| None)
}

fn draw<'a>(plot: &mut egui_plot::PlotUi<'a>, desk: &Desk<'a>, curve: &Curve, stock: f64, cursor: Option<f64>) {
    let theme = desk.theme;
    let floor = vec![0.0; curve.along.len()];
    plot.add(FilledArea::new("", &curve.along, &floor, &curve.area).fill_color(theme.forged_fill.gamma_multiply(0.6)));
    for line in curve.lines() {
        let line = Line::new("area", PlotPoints::new(line)).color(theme.forged_edge).width(space::LINE);
        plot.line(line.allow_hover(false));
    }
    let dashes = LineStyle::Dashed { length: 2.0 * space::TIGHT };
    plot.hline(HLine::new("stock", stock).color(theme.stock_edge).width(space::LINE).style(dashes).allow_hover(false));
    let bounds = plot.plot_bounds();
    let label = RichText::new("stock").text_style(Text::Small.style());
    let at = PlotPoint::new(bounds.max()[0], stock);
    plot.text(egui_plot::Text::new("", at, label).anchor(Align2::RIGHT_BOTTOM).color(theme.ink).allow_hover(false));
    if let Some(cursor) = cursor {
        plot.vline(VLine::new("cursor", cursor).color(theme.accent).width(space::LINE).allow_hover(false));
    }
}
