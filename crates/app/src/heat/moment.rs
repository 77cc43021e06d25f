//! The moment that is looked at: seconds since the bar left the fire, by a slider.

use crate::theme::{Text, Theme, space};
use egui::{Id, RichText, Slider, Ui};
use fh_work::OneHeat;

/// The width kept for the seconds beside the slider, in points at normal text size.
const SECONDS: f32 = 48.0;
/// The shortest time that is shown, in seconds, and to what it is rounded up.
const ROUND: f64 = 10.0;
/// How much longer than anything is hot enough the bar is looked at.
const BEYOND: f64 = 1.25;

/// How far the slider goes, in seconds: until nothing is hot enough any more, and a little on.
pub(super) fn last(one: &OneHeat) -> f64 {
    let known = one.in_range.last().map_or(ROUND, |last| last.seconds);
    let hot = one.in_range.iter().rev().find(|now| now.length_mm > 0.0).map_or(known, |now| now.seconds);
    ((hot * BEYOND / ROUND).ceil() * ROUND).clamp(ROUND, known.max(ROUND))
}

/// Shows the slider; the moment it stands at, in seconds.
pub(super) fn show(ui: &mut Ui, theme: &Theme, last: f64) -> f64 {
    let id = Id::unique("the moment of the heat");
    let mut now = ui.data(|data| data.get_temp::<f64>(id)).unwrap_or(0.0).clamp(0.0, last);
    let quiet = |words: &str| RichText::new(words).text_style(Text::Small.style()).color(theme.ink_quiet);
    ui.label(quiet("Seconds since it left the fire"));
    ui.horizontal(|ui| {
        ui.spacing_mut().slider_width = (ui.available_width() - theme.scaled(SECONDS)).max(space::TARGET);
        let slider = Slider::new(&mut now, 0.0..=last).step_by(1.0).show_value(false).trailing_fill(true);
        let response = ui.add(slider).on_hover_text("Drag, or press the left and right arrows.");
        response.accessible_name("Seconds since it left the fire");
        ui.label(RichText::new(format!("{now:.0} s")).text_style(Text::Strong.style()).color(theme.ink));
    });
    ui.data_mut(|data| data.insert_temp(id, now));
    now
}
