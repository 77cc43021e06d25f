//! How the bar cools over time: the heat of what is worked, and how much is still hot enough.

use super::{axes, moment};
use crate::state::Desk;
use crate::theme::{Text, Theme, space};
use egui::{RichText, Role, Sense, Shape, Ui, WidgetInfo, pos2, vec2};
use egui_plot::LineStyle;
use fh_work::OneHeat;

/// The room over the highest value, as a share of it.
const HEADROOM: f64 = 1.25;
/// The length of a sample of a line, in points at normal text size.
const SAMPLE: f32 = 26.0;

/// Shows both plots.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, one: &OneHeat, seconds: f64) {
    heat(ui, desk.theme, one, seconds);
    key(ui, desk.theme);
    ui.add_space(space::GAP);
    length(ui, desk, one, seconds);
}

/// The places of what is worked that are followed, with how their lines are drawn.
fn places(one: &OneHeat) -> [(&'static str, f64, LineStyle); 3] {
    let [from, to] = one.worked_mm;
    [
        ("middle", f64::midpoint(from, to), LineStyle::Solid),
        ("left end", from, LineStyle::Dashed { length: space::GAP }),
        ("right end", to, LineStyle::Dotted { spacing: space::TIGHT }),
    ]
}

fn heat(ui: &mut Ui, theme: &Theme, one: &OneHeat, seconds: f64) {
    caption(ui, theme, "Heat of what is worked, °C");
    let last = moment::last(one);
    let shown = axes::plot(ui, theme, "heat over time", "°C").show(ui, |plot| {
        axes::bounds(plot, last, one.start_celsius * HEADROOM);
        let start = format!("out of the fire: {:.0} °C", one.start_celsius);
        axes::level(plot, theme, one.start_celsius, &start, true);
        axes::level(plot, theme, one.stop_celsius, &format!("stop: {:.0} °C", one.stop_celsius), false);
        for (_, mm, style) in places(one) {
            let history = one.cooled.history(mm).into_iter().take_while(|point| point.0 <= last);
            axes::curve(plot, theme, history.map(|(at, celsius)| [at, celsius]).collect(), style);
        }
        axes::moment(plot, theme, seconds);
    });
    let ends = places(one).map(|(name, mm, _)| format!("{name} {:.0} °C", one.cooled.celsius_at(mm, seconds)));
    let words = format!("Heat over time: after {seconds:.0} s {}", ends.join(", "));
    shown.response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &words));
}

fn length(ui: &mut Ui, desk: &Desk<'_>, one: &OneHeat, seconds: f64) {
    let theme = desk.theme;
    let unit = desk.document.plan().units.length.length_unit();
    caption(ui, theme, &format!("Length that is hot enough, {}", unit.symbol()));
    let last = moment::last(one);
    let worked = (one.worked_mm[1] - one.worked_mm[0]) / unit.mm();
    let points: Vec<[f64; 2]> = one.in_range.iter().map(|now| [now.seconds, now.length_mm / unit.mm()]).collect();
    let top = points.iter().map(|point| point[1]).fold(worked, f64::max).max(f64::MIN_POSITIVE) * HEADROOM;
    let shown = axes::plot(ui, theme, "length over time", unit.symbol()).show(ui, |plot| {
        axes::bounds(plot, last, top);
        axes::level(plot, theme, worked, "as long as what is worked", false);
        axes::curve(
            plot,
            theme,
            points.iter().copied().take_while(|point| point[0] <= last).collect(),
            LineStyle::Solid,
        );
        axes::moment(plot, theme, seconds);
    });
    let now = points.get(seconds.round().max(0.0) as usize).map_or(0.0, |point| point[1]);
    let words = format!("Hot length over time: after {seconds:.0} s {now:.1} {}", unit.symbol());
    shown.response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &words));
}

fn caption(ui: &mut Ui, theme: &Theme, words: &str) {
    ui.label(RichText::new(words).text_style(Text::Strong.style()).color(theme.ink));
}

/// Which line is which.
fn key(ui: &mut Ui, theme: &Theme) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = space::TIGHT;
        for (name, style) in [
            ("middle", None),
            ("left end", Some((space::GAP, space::TIGHT))),
            ("right end", Some((space::LINE, space::TIGHT))),
        ] {
            let size = vec2(theme.scaled(SAMPLE), theme.font(Text::Small).size);
            let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
            let ends = [pos2(rect.left(), rect.center().y), pos2(rect.right(), rect.center().y)];
            let stroke = (space::LINE, theme.ink);
            match style {
                None => ui.painter().add(Shape::line_segment(ends, stroke)),
                Some((dash, gap)) => ui.painter().add(Shape::Vec(Shape::dashed_line(&ends, stroke, dash, gap))),
            };
            ui.label(RichText::new(name).text_style(Text::Small.style()).color(theme.ink_quiet));
            ui.add_space(space::GAP);
        }
    });
}
