//! Segments under the pointer: a click selects one, a click on the ground none, and resting on one tells what it becomes.

use crate::canvas::Canvas;
use crate::canvas::event::CanvasEvent;
use crate::canvas::layout::Row;
use crate::canvas::paint::bands;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::{Text, space};
use egui::{Pos2, Rect, Response, RichText, Role, Sense, Ui, WidgetInfo, pos2};

impl Canvas {
    /// Makes the segments in sight things that can be clicked and named.
    pub(in crate::canvas) fn touch_segments(
        &self,
        ui: &Ui,
        stage: &Stage<'_>,
        ground: &Response,
        events: &mut Vec<CanvasEvent>,
    ) {
        let base = ui.make_persistent_id("segment");
        let mut last_right = vec![f32::NEG_INFINITY; stage.model.lanes.len()];
        for (index, block) in stage.model.blocks.iter().enumerate() {
            let Some([left, right]) = stage.span(index, Strip::Bar) else { continue };
            let [left, right] = widened(left, right, stage.sizes.catch, block.settled);
            let Some(last_right) = last_right.get_mut(block.lane) else { continue };
            let kept = stage.selected == Some(index) || right - *last_right >= stage.sizes.catch / 4.0;
            if !stage.sees([left, right]) || !kept {
                continue;
            }
            *last_right = right;
            let stretch = stage.stretch_of_segment(index, Strip::Bar);
            let rect = Rect::from_min_max(pos2(left, stretch.top), pos2(right, stretch.bottom));
            let response = ui.interact(rect.intersect(stage.window), base.with(index), Sense::CLICK);
            let name = segment_name(stage, index);
            response.widget_info(|| WidgetInfo::selected(Role::Button, true, stage.selected == Some(index), &name));
            if response.clicked() {
                events.push(chosen(ui, Some(index)));
            }
            if response.double_clicked() {
                events.push(CanvasEvent::EditExact { segment: index });
            }
            tell(&response, stage, Some(index));
        }
        let under = ground.hover_pos().or(ground.interact_pointer_pos()).and_then(|at| segment_at(stage, at));
        if ground.clicked() {
            events.push(chosen(ui, under));
        }
        let asked = ui.input(|input| input.pointer.secondary_clicked().then(|| input.pointer.interact_pos()).flatten());
        let asked = asked.filter(|_| ui.rect_contains_pointer(ground.rect)).and_then(|at| segment_at(stage, at));
        if let Some(segment) = asked.filter(|segment| !stage.also.contains(segment)) {
            events.push(CanvasEvent::Select(Some(segment)));
        }
        if let Some(segment) = under.filter(|_| ground.double_clicked()) {
            events.push(CanvasEvent::EditExact { segment });
        }
        tell(ground, stage, under);
    }
}

/// What a click chooses: with Shift all from the selected one to it, with Ctrl one more or one less.
fn chosen(ui: &Ui, segment: Option<usize>) -> CanvasEvent {
    let keys = ui.input(|input| input.modifiers);
    match segment {
        Some(to) if keys.shift || keys.command => CanvasEvent::Extend { to, run: keys.shift },
        segment => CanvasEvent::Select(segment),
    }
}

/// The name that screen readers hear.
fn segment_name(stage: &Stage<'_>, index: usize) -> String {
    match stage.model.blocks.get(index) {
        Some(block) if block.unique_name == format!("part {}", block.path) => format!("Part {}", block.path),
        Some(block) => format!("Part {}", block.unique_name),
        None => String::new(),
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
    if !stage.window.contains(at) {
        return None;
    }
    if let Some(row) = stage.layout.rows.iter().find(|row| (row.stretch.top..=row.stretch.bottom).contains(&at.y)) {
        return segment_in_row(stage, row, at);
    }
    let share = match (stage.layout.bands, at.y) {
        (bands, y) if (bands.top..=bands.bottom).contains(&y) => (y - bands.top) / bands.height().max(1.0),
        // Between two views of the same bar.
        (bands, y) => stage.layout.between_rows(y).then_some(if y < bands.top { 0.0 } else { 1.0 })?,
    };
    let catches = |index: &usize| {
        let Some([left, right]) = bands::at_share(stage, *index, share) else { return false };
        let settled = stage.model.blocks.get(*index).is_none_or(|block| block.settled);
        let [left, right] = widened(left, right, stage.sizes.catch, settled);
        (left..right).contains(&at.x)
    };
    (0..stage.model.blocks.len()).filter(|index| stage.is_whole(*index)).find(catches)
}

/// The nearest segment that is drawn at a place of a row; a split where none of its branches is.
fn segment_in_row(stage: &Stage<'_>, row: &Row, at: Pos2) -> Option<usize> {
    let catches = |index: &usize| {
        let Some(block) = stage.model.blocks.get(*index) else { return false };
        let Some([left, right]) = stage.span(*index, row.strip) else { return false };
        let [left, right] = widened(left, right, stage.sizes.catch, block.settled);
        let across = stage.is_whole(*index) || {
            let stretch = stage.stretch_in_row(*index, row);
            (stretch.top - space::TIGHT..=stretch.bottom + space::TIGHT).contains(&at.y)
        };
        across && (left..right).contains(&at.x)
    };
    let of_branch = stage.model.painted(row.view).rev().filter(|index| !stage.is_whole(*index)).find(catches);
    of_branch.or_else(|| (0..stage.model.blocks.len()).filter(|index| stage.is_whole(*index)).find(catches))
}

/// Tells what a segment becomes, once the pointer rests on it.
fn tell(response: &Response, stage: &Stage<'_>, segment: Option<usize>) {
    let Some(index) = segment else { return };
    let Some(block) = stage.model.blocks.get(index) else { return };
    response.clone().on_hover_ui_at_pointer(|ui| {
        let bend = stage.bar.segment(index).and_then(|segment| fh_core::describe::bend_words(segment, &[]));
        ui.label(RichText::new(&block.name).text_style(Text::Strong.style()));
        ui.label(bend.map_or_else(|| block.becomes.clone(), |bend| format!("{}; {bend}", block.becomes)));
        for words in &block.laid {
            ui.label(words);
        }
        if let Some(words) = stage.hidden_words(index) {
            ui.label(RichText::new(words).color(stage.theme.ink_quiet));
        }
        if let Some(severity) = block.severity {
            ui.label(RichText::new(format!("has a {}", severity.name())).color(stage.severity_color(severity)));
        }
    });
}
