//! The tag at a boundary in hand: the mark, the lengths, and what gives or why it cannot be.

use crate::canvas::Canvas;
use crate::canvas::model::Model;
use crate::canvas::spot::Spot;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::{Text, Theme, space};
use egui::{Align, Align2, Area, Frame, Grid, Id, Layout, Order, Pos2, RichText, Stroke, Ui, pos2, vec2};
use fh_core::plan::PlanUnit;
use fh_measure::{LengthUnit, format_decimal};

/// The lines of a tag: what it is, in the shop's words, in the other words.
fn lines(spot: Spot, model: &Model) -> Option<[[String; 3]; 3]> {
    let block = model.blocks.get(spot.segment)?;
    let [stock, forged] = [block.stock[1] - block.stock[0], block.forged[1] - block.forged[0]];
    let mark = [format!("from the {}", model.datum), block.mark.text(), exact(block.mark_mm)];
    Some([mark, line("bar it takes", stock, model), line("forged length", forged, model)])
}

fn line(what: &str, mm: f64, model: &Model) -> [String; 3] {
    [what.to_owned(), in_plan_unit(mm, model.unit), exact(mm)]
}

/// A length in the plan's unit, fine enough to see a nudge.
fn in_plan_unit(mm: f64, unit: PlanUnit) -> String {
    unit.finest().round(mm).text()
}

fn exact(mm: f64) -> String {
    format_decimal(mm, LengthUnit::Millimeter, 2)
}

impl Canvas {
    /// Shows the tag at the pointer during a drag, or at the boundary that has the keyboard.
    pub(in crate::canvas) fn show_tag(&self, ui: &Ui, stage: &Stage<'_>) {
        let dragged = self.drag.as_ref().map(|drag| drag.spot);
        let Some(spot) = dragged.or(stage.focused).filter(|_| self.entry.is_none()) else { return };
        let pointer = ui.input(|input| input.pointer.latest_pos()).filter(|_| dragged.is_some());
        let off = vec2(space::GROUP, space::GROUP);
        let at = pointer.map_or_else(|| beside(stage, spot), |pointer| (pointer + off, Align2::LEFT_TOP));
        let Some(lines) = lines(spot, stage.model) else { return };
        tag_area(Id::unique("canvas tag"), at, stage.theme).show(ui, |ui| {
            framed(ui, stage.theme, |ui| {
                ui.spacing_mut().interact_size.y = 0.0;
                ui.label(RichText::new(spot.name(stage.model)).text_style(Text::Strong.style()));
                let in_mm = stage.model.unit == PlanUnit::Millimeter;
                Grid::new("canvas tag lines").spacing(vec2(space::PAD, space::TIGHT)).show(ui, |ui| {
                    for (index, [what, shop, exact]) in lines.iter().enumerate() {
                        let figures = RichText::new(shop).text_style(Text::Strong.style());
                        ui.label(RichText::new(what).color(stage.theme.ink_quiet));
                        right(ui, figures);
                        if !in_mm || index == 0 {
                            right(ui, RichText::new(exact).color(stage.theme.ink_quiet));
                        }
                        ui.end_row();
                    }
                });
                if let Some(words) = stage.hidden_words(spot.segment) {
                    ui.label(RichText::new(words).color(stage.theme.ink_quiet));
                }
                self.show_outcome(ui, stage.theme);
            });
        });
    }

    /// What gave, or why it cannot be.
    fn show_outcome(&self, ui: &mut Ui, theme: &Theme) {
        if let Some(refused) = &self.feedback.refused {
            ui.label(RichText::new(format!("■ {refused}")).color(theme.stop));
        } else if let Some(gave) = &self.feedback.gave {
            ui.label(RichText::new(gave).color(theme.accent));
        }
    }
}

fn right(ui: &mut Ui, text: RichText) {
    ui.with_layout(Layout::right_to_left(Align::Center), |ui| ui.label(text));
}

/// Beside a boundary that has the keyboard, over the bands and clear of its strip; and which corner lies there.
pub(in crate::canvas) fn beside(stage: &Stage<'_>, spot: Spot) -> (Pos2, Align2) {
    let x = spot.drawn(stage.model).map_or(stage.window.left(), |[_, end]| stage.axis.x(end));
    let x = x.clamp(stage.window.left(), stage.window.right()) + space::GAP;
    match spot.strip {
        Strip::Bar => (pos2(x, stage.layout.bands.top + space::GAP), Align2::LEFT_TOP),
        Strip::Forged => (pos2(x, stage.layout.names.top - space::GAP), Align2::LEFT_BOTTOM),
    }
}

/// An area above everything, kept on the screen, that the pointer goes through.
fn tag_area(id: Id, (at, corner): (Pos2, Align2), theme: &Theme) -> Area {
    Area::new(id)
        .order(Order::Tooltip)
        .fixed_pos(at)
        .pivot(corner)
        .interactable(false)
        .default_width(theme.scaled(320.0))
}

/// A raised card.
pub(in crate::canvas) fn framed(ui: &mut Ui, theme: &Theme, contents: impl FnOnce(&mut Ui)) {
    Frame::NONE
        .fill(theme.panel_raised)
        .stroke(Stroke::new(space::LINE, theme.accent))
        .corner_radius(space::CORNER)
        .inner_margin(space::GAP)
        .show(ui, contents);
}
