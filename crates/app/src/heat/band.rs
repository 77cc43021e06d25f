//! The bar from end to end at a moment, shaded by its heat: what is worked bracketed, what is hot enough as a heavy line.

use super::brackets::{self, Row};
use super::isotherms::{coldest_between, hottest, levels, met};
use super::shades::Shades;
use super::window::Window;
use crate::state::Desk;
use crate::theme::{Text, Theme, space};
use egui::{Painter, Rect, Response, RichText, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use fh_core::material::Material;
use fh_core::plan::Units;
use fh_heat::colors::{CHAPMAN, SCALES};
use fh_measure::format_length;
use fh_work::OneHeat;

/// The height of the bar, in points at normal text size.
const BAR: f32 = 30.0;
/// How far a line of one heat stands out over the bar, in points.
const LINE_UP: f32 = space::TIGHT;

/// The bar at a moment.
struct Now<'a> {
    theme: &'a Theme,
    one: &'a OneHeat,
    units: Units,
    seconds: f64,
    /// Places in mm and °C.
    along: Vec<(f64, f64)>,
    window: Window,
}

/// Shows the bar and its heat in words.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, one: &OneHeat, metal: &Material, seconds: f64, shades: &Shades) {
    let along = one.cooled.along(seconds);
    let window = Window::new(one, &along);
    let now = Now { theme: desk.theme, one, units: desk.document.plan().units, seconds, along, window };
    let small = desk.theme.font(Text::Small).size * 1.3;
    let below = 3.0 * brackets::height(desk.theme) + small;
    let height = small + LINE_UP + desk.theme.scaled(BAR) + space::TIGHT + below;
    let (all, response) = ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::hover());
    let bar = Rect::from_min_size(all.min + vec2(0.0, small + LINE_UP), vec2(all.width(), desk.theme.scaled(BAR)));
    now.draw_bar(ui.painter(), bar, shades);
    now.draw_lines(ui.painter(), bar, shades);
    now.draw_brackets(ui.painter(), bar);
    let words = now.words();
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, format!("Heat along the bar. {words}")));
    now.tell_at_pointer(&response, bar);
    ui.label(RichText::new(&words).color(desk.theme.ink));
    color_words(ui, desk.theme, &now, metal);
}

impl Now<'_> {
    /// The shades, cell by cell; neighbors of one shade are drawn as one.
    fn draw_bar(&self, painter: &Painter, bar: Rect, shades: &Shades) {
        let edges = self.along.windows(2).map(|pair| match pair {
            [a, b] => f64::midpoint(a.0, b.0),
            _ => 0.0,
        });
        let mut from = bar.left();
        let mut cells = self.along.iter().map(|cell| shades.step_of(cell.1)).peekable();
        let mut edges = edges.chain(std::iter::once(f64::INFINITY));
        while let Some(step) = cells.next() {
            let to = edges.next().map_or(bar.right(), |mm| self.window.x(bar, mm));
            if cells.peek() != Some(&step) {
                painter.rect_filled(Rect::from_x_y_ranges(from..=to, bar.y_range()), 0, shades.shade(step));
                from = to;
            }
        }
        let edge = (self.theme.hairline().max(space::LINE), self.theme.stock_edge);
        painter.hline(bar.x_range(), bar.top(), edge);
        painter.hline(bar.x_range(), bar.bottom(), edge);
        for (goes_on, x) in self.window.goes_on.into_iter().zip([bar.left(), bar.right()]) {
            if goes_on {
                painter.add(egui::Shape::dashed_line(
                    &[pos2(x, bar.top()), pos2(x, bar.bottom())],
                    edge,
                    space::TIGHT,
                    space::TIGHT,
                ));
            } else {
                painter.vline(x, bar.y_range(), edge);
            }
        }
    }

    /// Lines where a heat is met, with its number over the bar; as many as there is room for.
    fn draw_lines(&self, painter: &Painter, bar: Rect, shades: &Shades) {
        let mut taken: Vec<[f32; 2]> = Vec::new();
        if let Some((mm, celsius)) = hottest(&self.along) {
            self.write_heat(painter, bar, (mm, celsius), &mut taken);
        }
        for level in levels(self.one.stop_celsius, shades.step, shades.high) {
            for mm in met(&self.along, level) {
                let is_drawn = self.window.mm[0] < mm && mm < self.window.mm[1];
                if is_drawn && self.write_heat(painter, bar, (mm, level), &mut taken) {
                    let x = self.window.x(bar, mm);
                    painter.vline(
                        x,
                        bar.top() - LINE_UP..=bar.bottom(),
                        (self.theme.hairline(), shades.line_on(level)),
                    );
                }
            }
        }
    }

    /// Writes a heat over its place, where there is room.
    fn write_heat(&self, painter: &Painter, bar: Rect, at: (f64, f64), taken: &mut Vec<[f32; 2]>) -> bool {
        let words = format!("{:.0} °C", at.1);
        let galley = painter.layout_no_wrap(words, self.theme.font(Text::Small), self.theme.ink);
        let size = galley.size();
        let left = (self.window.x(bar, at.0) - size.x / 2.0).clamp(bar.left(), bar.right() - size.x);
        let span = [left - space::TIGHT, left + size.x + space::TIGHT];
        if taken.iter().any(|other| span[0] < other[1] && other[0] < span[1]) {
            return false;
        }
        taken.push(span);
        painter.galley(pos2(left, bar.top() - LINE_UP - size.y), galley, self.theme.ink);
        true
    }

    fn draw_brackets(&self, painter: &Painter, bar: Rect) {
        let theme = self.theme;
        let x = |mm: [f64; 2]| mm.map(|mm| self.window.x(bar, mm));
        let mut row = Row { theme, painter, across: bar, top: bar.bottom() + space::TIGHT };
        let [from, to] = self.one.worked_mm;
        row.bracket(x([from, to]), false, &format!("worked: {}", self.length(to - from)));
        row.top += brackets::height(theme);
        let spans = self.spans();
        spans.iter().for_each(|(from, to)| row.line(x([*from, *to]), true));
        let middle = spans.first().zip(spans.last()).map(|(first, last)| f64::midpoint(first.0, last.1));
        let middle = middle.unwrap_or(f64::midpoint(from, to));
        row.words(self.window.x(bar, middle), &self.hot_enough(), theme.ink);
        row.top += brackets::height(theme);
        let [from, to] = self.one.heated_mm;
        let heated = [from.max(self.bar_mm()[0]), to.min(self.bar_mm()[1])];
        row.bracket(x(heated), false, &format!("in the fire: {}", self.length(heated[1] - heated[0])));
        row.top += brackets::height(theme);
        let [left, right] = self.window.mm.map(|mm| self.length(mm));
        let goes_on = |goes_on: bool| if goes_on { "…" } else { "" };
        let [on_left, on_right] = self.window.goes_on.map(goes_on);
        row.at_ends(&format!("{on_left}{left}"), &format!("{right}{on_right}"));
    }

    /// Where all cells lie.
    fn bar_mm(&self) -> [f64; 2] {
        let place = |cell: Option<&(f64, f64)>| cell.map_or(0.0, |cell| cell.0);
        [place(self.along.first()), place(self.along.last())]
    }

    /// Where the bar is hot enough and not spoilt, as it was reckoned for the nearest second.
    fn spans(&self) -> &[(f64, f64)] {
        let second = self.seconds.round().max(0.0) as usize;
        self.one.in_range.get(second).map_or(&[], |now| now.spans_mm.as_slice())
    }

    fn hot_enough(&self) -> String {
        let mm: f64 = self.spans().iter().map(|(from, to)| to - from).sum();
        if mm > 0.0 { format!("hot enough: {}", self.length(mm)) } else { "nothing is hot enough".to_owned() }
    }

    fn length(&self, mm: f64) -> String {
        format_length(mm.max(0.0), self.units.length.length_unit(), self.units.marks)
    }

    /// The hottest and the coldest of what is worked, in °C.
    fn extremes(&self) -> Option<[f64; 2]> {
        Some([hottest(&self.along)?.1, coldest_between(&self.along, self.one.worked_mm)?])
    }

    fn words(&self) -> String {
        let hot = self.hot_enough();
        match self.extremes() {
            Some([high, low]) => format!(
                "After {:.0} s: {high:.0} °C at the hottest, {low:.0} °C at the coldest of what is worked; {hot}.",
                self.seconds
            ),
            None => format!("After {:.0} s: {hot}.", self.seconds),
        }
    }

    fn tell_at_pointer(&self, response: &Response, bar: Rect) {
        if let Some(pointer) = response.hover_pos() {
            let mm = self.window.mm_at(bar, pointer.x);
            let celsius = self.one.cooled.celsius_at(mm, self.seconds);
            let words = format!("At {}: {celsius:.0} °C after {:.0} s", self.length(mm), self.seconds);
            response.clone().on_hover_text_at_pointer(words);
        }
    }
}

/// What the eye would call it: one author's words, beside the temperatures.
fn color_words(ui: &mut Ui, theme: &Theme, now: &Now<'_>, metal: &Material) {
    let Some([high, low]) = now.extremes() else { return };
    let small = |words: String| RichText::new(words).text_style(Text::Small.style()).color(theme.ink_quiet);
    if !metal.glows {
        ui.label(small("You cannot judge this metal by colour: it melts before it glows.".to_owned()));
        return;
    }
    let word = |celsius: f64| format!("{celsius:.0} °C: {}", CHAPMAN.word(celsius).unwrap_or("no colour"));
    let words = format!("By {}, {}; {}.", CHAPMAN.author, word(high), word(low));
    let others = SCALES.iter().filter(|scale| scale.author != CHAPMAN.author);
    let others = others.map(|scale| {
        let word = |celsius: f64| scale.word(celsius).unwrap_or("no colour");
        format!("{}: {}; {} ({}).", scale.author, word(high), word(low), scale.source)
    });
    let tip: Vec<String> = std::iter::once(format!("{} ({}).", CHAPMAN.author, CHAPMAN.source))
        .chain(others)
        .chain(std::iter::once("The authors differ by 150 °C over one word, and so do daylight and dusk.".to_owned()))
        .collect();
    ui.label(small(words)).on_hover_text(tip.join("\n"));
}
