//! What stands in the corners of the view: from where the piece is seen, what is selected, what is wrong, how large it is.

use super::place::{Place, Whole, name_of};
use super::stage::Stage;
use crate::figures::finished as figure;
use crate::theme::{Text, space};
use egui::{Align2, Label, Rect, RichText, Ui};

/// The width from which sizes are told in words, in points at normal text size.
const WITH_WORDS: f32 = 480.0;

/// Shows them.
pub(super) fn show(ui: &mut Ui, stage: &Stage<'_>, is_measuring: bool, after: Option<(usize, usize)>) {
    let seen = stage.camera.standard().map_or("Turned by hand", crate::state::Standard::name);
    let after = after.map_or_else(String::new, |(step, of)| format!(". After step {step} of {of}"));
    let seen = format!("{seen}{after}");
    let words = match stage.selected.filter(|place| is_in_piece(stage, *place)) {
        Some(place) => format!("{seen}. Selected: {}", name_of(stage.plan, place)),
        None => seen,
    };
    show_label(ui, stage, &words, Align2::LEFT_TOP);
    // What was measured stands in that corner too.
    if let Some(words) = wrong(stage).filter(|_| !is_measuring) {
        show_label(ui, stage, &words, Align2::RIGHT_TOP);
    }
    if let Some(words) = overall(stage) {
        show_label(ui, stage, &words, Align2::RIGHT_BOTTOM);
    }
}

/// Whether anything of a segment is seen: one that is trimmed or held is no part of the piece.
fn is_in_piece(stage: &Stage<'_>, place: Place) -> bool {
    let whole = Whole::new(stage.plan, place);
    stage.model.places.iter().any(|place| whole.holds(*place))
}

/// What is wrong with how it is put together: the worst, and how many more there are.
fn wrong(stage: &Stage<'_>) -> Option<String> {
    let first = stage.model.warnings.first()?;
    Some(match stage.model.warnings.len() - 1 {
        0 => first.clone(),
        more => format!("{first}, and {more} more"),
    })
}

/// How large the piece is: `Overall: 212 mm long, 12 mm deep, 84 mm high`.
fn overall(stage: &Stage<'_>) -> Option<String> {
    let unit = stage.plan.units.length;
    let [long, deep, high] = stage.model.reach?.map(|[least, most]| {
        let mm = most - least;
        figure(mm, unit)
    });
    let has_room = stage.rect.width() > stage.theme.scaled(WITH_WORDS);
    Some(if has_room {
        format!("Overall: {long} wide, {deep} deep, {high} high")
    } else {
        format!("{long} × {deep} × {high}")
    })
}

/// Shows a line in a corner, on a ground that keeps it readable over the metal.
pub(super) fn show_label(ui: &mut Ui, stage: &Stage<'_>, words: &str, corner: Align2) {
    show_in(ui, stage, words, (corner, space::TIGHT));
}

/// Words under those in a corner at the top.
pub(super) fn show_below(ui: &mut Ui, stage: &Stage<'_>, words: &str, corner: Align2) {
    show_in(ui, stage, words, (corner, stage.theme.scaled(space::TARGET)));
}

/// Words in a corner, so far from the edge above or below.
fn show_in(ui: &mut Ui, stage: &Stage<'_>, words: &str, (corner, from_edge): (Align2, f32)) {
    let theme = stage.theme;
    let room = stage.rect.shrink2(egui::vec2(space::GAP, from_edge));
    let laid = crate::widgets::line::lay(ui, words, theme.font(Text::Small), theme.ink, room.width());
    let rect = corner.align_size_within_rect(laid.size(), room);
    ui.painter().rect_filled(
        rect.expand2(egui::vec2(space::TIGHT, 0.0)),
        space::CORNER,
        theme.ground.gamma_multiply(0.8),
    );
    let text = RichText::new(words).text_style(Text::Small.style()).color(theme.ink);
    let rect = Rect::from_min_size(rect.min, rect.size() + egui::vec2(1.0, 0.0));
    ui.put(rect, Label::new(text).truncate().selectable(false));
}
