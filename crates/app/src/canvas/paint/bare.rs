//! The forged bar alone, without marks, names and bands: large, with what a step changes lit and what is hot shown.

use crate::canvas::clip::parted;
use crate::canvas::model::Model;
use crate::canvas::model::block::Block;
use crate::canvas::scene::{AfterStep, Scene};
use crate::state::Shown;
use crate::theme::{Text, Theme, space};
use crate::widgets::fill::filled;
use egui::{Align2, Pos2, Rect, Role, Sense, Shape, Stroke, Ui, WidgetInfo, pos2};
use fh_core::metal::View;

/// The room below the bar for the zone and its words, as a share of the height, and above it for names.
const BELOW: f32 = 0.3;
const ABOVE: f32 = 0.22;
/// From how many times the thickness for its length a bar is drawn thicker than it is, so that it is seen from afar.
const MOST_THICKER: f32 = 3.0;

/// Where millimetres lie on the screen.
struct Scale {
    left: f32,
    middle: f32,
    along: f32,
    across: f32,
}

impl Scale {
    fn at(&self, [along, up]: [f64; 2]) -> Pos2 {
        pos2(self.left + along as f32 * self.along, self.middle - up as f32 * self.across)
    }
}

/// Paints a bar as it is after the step.
pub(crate) fn paint(ui: &Ui, rect: Rect, theme: &Theme, shown: &Shown, bar: usize) {
    let hot = shown.hot_on(bar).map(|hot| (hot.mm, hot.label.as_str()));
    let step = AfterStep {
        number: shown.after,
        lit: shown.lit_on(bar),
        hot,
        room_mm: shown.longest_mm,
        room_across_mm: [0.0; 2],
    };
    let (plan, balance) = (&shown.plan, &shown.balance);
    let scene =
        Scene { plan, balance, stamp: None, bar, selected: None, also: &[], cursor_mm: None, theme, step: Some(step) };
    let Some(model) = Model::new(&scene).filter(|model| !model.blocks.is_empty()) else { return };
    let response = ui.interact(rect, ui.scope_id().with("bare strip"), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, "The bar after the step"));
    let Some(scale) = scale(&model, rect, shown.longest_mm) else { return };
    let draw = |block: &Block, lit: bool| paint_block(ui, theme, &scale, block, lit);
    let is_lit = |at: usize| step.lit.contains(&at);
    for at in model.painted(View::Side).filter(|at| !is_lit(*at)) {
        model.blocks.get(at).into_iter().for_each(|block| draw(block, false));
    }
    for at in model.painted(View::Side).filter(|at| is_lit(*at)) {
        model.blocks.get(at).into_iter().for_each(|block| draw(block, true));
    }
    paint_names(ui, theme, rect, &scale, &model, step.lit);
    paint_zone(ui, theme, rect, &scale, &step);
}

fn scale(model: &Model, rect: Rect, longest_mm: f64) -> Option<Scale> {
    let along = rect.width() / (longest_mm.max(model.forged_mm).max(1.0) as f32);
    let [lower, upper] = model.edges.forged.side;
    let thick = ((upper - lower) as f32).max(1e-3);
    let room = rect.height() * (1.0 - BELOW - ABOVE);
    let across = (room / thick).min(along * MOST_THICKER);
    let middle = rect.top() + rect.height() * ABOVE + room / 2.0 + ((upper + lower) / 2.0) as f32 * across;
    (along.is_finite() && across.is_finite()).then_some(Scale { left: rect.left(), middle, along, across })
}

fn paint_block(ui: &Ui, theme: &Theme, scale: &Scale, block: &Block, lit: bool) {
    let points: Vec<Pos2> = block.outlines.side.iter().map(|at| scale.at(*at)).collect();
    if points.len() < 3 {
        return;
    }
    let painter = ui.painter();
    let fill = if lit { theme.band_selected } else { theme.forged_fill };
    painter.add(Shape::mesh(filled(&points, fill)));
    let stroke =
        if lit { Stroke::new(2.0 * space::HEAVY, theme.accent) } else { Stroke::new(space::LINE, theme.forged_edge) };
    painter.extend(parted(&points).into_iter().map(|line| Shape::line(line, stroke)));
}

/// The names of what the step changes, above it.
fn paint_names(ui: &Ui, theme: &Theme, rect: Rect, scale: &Scale, model: &Model, lit: &[usize]) {
    let font =
        egui::FontId::new((rect.height() * 0.15).max(theme.font(Text::Body).size), theme.font(Text::Strong).family);
    let mut last = f32::NEG_INFINITY;
    for block in lit.iter().filter_map(|at| model.blocks.get(*at)) {
        let middle = scale.at([(block.drawn[0] + block.drawn[1]) / 2.0, 0.0]).x;
        let words = ui.painter().layout_no_wrap(block.name.clone(), font.clone(), theme.ink);
        let left = (middle - words.size().x / 2.0).min(rect.right() - words.size().x).max(rect.left());
        if left > last {
            last = left + words.size().x + space::GAP;
            ui.painter().galley(pos2(left, rect.top()), words, theme.ink);
        }
    }
}

fn paint_zone(ui: &Ui, theme: &Theme, rect: Rect, scale: &Scale, step: &AfterStep<'_>) {
    let Some(([from, to], label)) = step.hot else { return };
    let (left, right) = (scale.at([from, 0.0]).x, scale.at([to, 0.0]).x);
    let thick = rect.height() * 0.045;
    let top = rect.bottom() - rect.height() * BELOW + thick;
    let band = Rect::from_min_max(pos2(left, top), pos2(right.max(left + 1.0), top + thick));
    ui.painter().rect_filled(band, 0.0, theme.hot);
    let edge = Stroke::new(space::HEAVY, theme.ink);
    for x in [left, right] {
        ui.painter().vline(x, top - thick..=top + thick, edge);
    }
    let font =
        egui::FontId::new((rect.height() * 0.14).max(theme.font(Text::Body).size), theme.font(Text::Strong).family);
    let words = ui.painter().layout_no_wrap(label.to_owned(), font, theme.ink);
    let middle = (left + right) / 2.0;
    let x = (middle - words.size().x / 2.0).min(rect.right() - words.size().x).max(rect.left());
    let place = Align2::LEFT_BOTTOM.anchor_size(pos2(x, rect.bottom()), words.size());
    ui.painter().galley(place.min, words, theme.ink);
}
