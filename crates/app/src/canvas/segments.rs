//! Segments under the pointer: a click selects one, a click on the ground none, and resting on one tells what it becomes.

use super::layout::Strip;
use super::stage::Stage;
use super::{Canvas, CanvasEvent, bands};
use crate::theme::Text;
use egui::{Pos2, Rect, Response, RichText, Role, Sense, Ui, WidgetInfo, pos2};
use fh_core::plan::Segment;

impl Canvas {
    /// Makes the segments in sight things that can be clicked and named.
    pub(super) fn touch_segments(&self, ui: &Ui, stage: &Stage<'_>, ground: &Response, events: &mut Vec<CanvasEvent>) {
        let base = ui.make_persistent_id("segment");
        let stretch = stage.layout.stretch_of(Strip::Bar);
        let mut last_right = f32::NEG_INFINITY;
        for (index, block) in stage.model.blocks.iter().enumerate() {
            let Some([left, right]) = stage.span(index, Strip::Bar) else { continue };
            let [left, right] = widened(left, right, stage.sizes.catch, block.settled);
            let kept = stage.selected == Some(index) || right - last_right >= stage.sizes.catch / 4.0;
            if !stage.sees([left, right]) || !kept {
                continue;
            }
            last_right = right;
            let rect = Rect::from_min_max(pos2(left, stretch.top), pos2(right, stretch.bottom));
            let response = ui.interact(rect.intersect(stage.window), base.with(index), Sense::CLICK);
            let name = segment_name(stage, index);
            response.widget_info(|| WidgetInfo::selected(Role::Button, true, stage.selected == Some(index), &name));
            if response.clicked() {
                events.push(CanvasEvent::Select(Some(index)));
            }
            if response.double_clicked() {
                events.push(CanvasEvent::EditExact { segment: index });
            }
            tell(&response, stage, Some(index));
        }
        let under = ground.hover_pos().or(ground.interact_pointer_pos()).and_then(|at| segment_at(stage, at));
        if ground.clicked() {
            events.push(CanvasEvent::Select(under));
        }
        if let Some(segment) = under.filter(|_| ground.double_clicked()) {
            events.push(CanvasEvent::EditExact { segment });
        }
        tell(ground, stage, under);
    }
}

/// The name that screen readers hear.
fn segment_name(stage: &Stage<'_>, index: usize) -> String {
    match stage.model.blocks.get(index) {
        Some(block) if !block.unique_name.starts_with("segment ") => format!("Segment {}", block.unique_name),
        _ => format!("Segment {}", index + 1),
    }
}

/// A segment that is not settled is as wide as its box.
fn widened(left: f32, right: f32, least: f32, settled: bool) -> [f32; 2] {
    if settled || right - left >= least {
        return [left, right];
    }
    let middle = (left + right) / 2.0;
    [middle - least / 2.0, middle + least / 2.0]
}

/// The segment that is drawn at a place: on a bar or on the bands between.
fn segment_at(stage: &Stage<'_>, at: Pos2) -> Option<usize> {
    let within = |strip| {
        let stretch = stage.layout.stretch_of(strip);
        (stretch.top..=stretch.bottom).contains(&at.y)
    };
    if !stage.window.contains(at) {
        return None;
    }
    let bands = stage.layout.bands;
    let share = match at.y {
        _ if within(Strip::Bar) => 0.0,
        _ if within(Strip::Forged) => 1.0,
        y if (bands.top..=bands.bottom).contains(&y) => (y - bands.top) / bands.height().max(1.0),
        _ => return None,
    };
    let catches = |index: usize| {
        let settled = stage.model.blocks.get(index).is_none_or(|block| block.settled);
        let [left, right] = bands::at_share(stage, index, share)?;
        let [left, right] = widened(left, right, stage.sizes.catch, settled);
        (left..right).contains(&at.x).then_some(index)
    };
    (0..stage.model.blocks.len()).find_map(catches)
}

/// Tells what a segment becomes, once the pointer rests on it.
fn tell(response: &Response, stage: &Stage<'_>, segment: Option<usize>) {
    let Some(index) = segment else { return };
    let Some(block) = stage.model.blocks.get(index) else { return };
    response.clone().on_hover_ui_at_pointer(|ui| {
        let words = stage.segments.get(index).map(words).unwrap_or_default();
        ui.label(RichText::new(&block.name).text_style(Text::Strong.style()));
        ui.label(words);
        if let Some(severity) = block.severity {
            ui.label(RichText::new(format!("has a {}", severity.name())).color(stage.severity_color(severity)));
        }
    });
}

/// What a segment becomes, and how it is bent then.
fn words(segment: &Segment) -> String {
    let form = fh_core::describe::form_words(segment);
    match fh_core::describe::bend_words(segment, &[]) {
        Some(bend) => format!("{form}; {bend}"),
        None => form,
    }
}
