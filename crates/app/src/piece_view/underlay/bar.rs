//! The line of sizes over the view while the picture is laid.

use super::{edit, strength};
use crate::state::{Command, Desk, Gesture, Request, Standard};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields};
use egui::{ComboBox, RichText, Slider, Ui};
use fh_core::plan::{Plan, Underlay, UnderlayView};
use fh_measure::{LengthRange, WrittenShare};

/// The width of the field for the distance, and of the slider, in points at normal text size.
const FIELD: f32 = 92.0;
const SLIDER: f32 = 64.0;
/// The least and the greatest strength, and its steps, in per cent.
const LEAST: f64 = 5.0;
const MOST: f64 = 95.0;
const STEP: f64 = 5.0;

/// What is asked of the view itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    Nothing,
    /// Read the file once more.
    LookAgain,
}

/// Shows the line.
pub(super) fn show(
    ui: &mut Ui,
    desk: &Desk<'_>,
    underlay: &Underlay,
    is_missing: bool,
    out: &mut Vec<Request>,
) -> Asked {
    let plan = desk.document.plan();
    let mut asked = Asked::Nothing;
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = space::GAP;
        distance(ui, desk, plan, underlay, out);
        slider(ui, desk, plan, underlay, out);
        view(ui, plan, underlay, out);
        if is_missing && ui.button("Reload").on_hover_text("Read the picture's file once more.").clicked() {
            asked = Asked::LookAgain;
        }
        if ui.button("Other…").on_hover_text("Lay another picture in its place.").clicked() {
            out.push(Request::Run(Command::LayPicture));
        }
        if ui.button("Remove").on_hover_text("Take the picture out of the plan; its file stays.").clicked() {
            out.push(Request::Edit(edit(plan, None)));
        }
        if ui.button("Done").on_hover_text("Leave the picture as it lies, and trace it.").clicked() {
            out.push(Request::Run(Command::AdjustPicture));
        }
    });
    asked
}

fn quiet(ui: &mut Ui, desk: &Desk<'_>, words: &str) {
    ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
}

fn distance(ui: &mut Ui, desk: &Desk<'_>, plan: &Plan, underlay: &Underlay, out: &mut Vec<Request>) {
    quiet(ui, desk, "Distance between the points");
    let sizing = Sizing::without_stock(desk.theme, plan.units);
    let entry = Entry::named("", "Distance of the points");
    let taken = ui.vertical(|ui| {
        ui.set_width(desk.theme.scaled(FIELD));
        fields::length(ui, &sizing, &entry, &underlay.distance, LengthRange::AboveZero)
    });
    if let Some(distance) = taken.inner {
        out.push(Request::Edit(edit(plan, Some(Underlay { distance, ..underlay.clone() }))));
    }
}

fn slider(ui: &mut Ui, desk: &Desk<'_>, plan: &Plan, underlay: &Underlay, out: &mut Vec<Request>) {
    quiet(ui, desk, "Strength");
    let mut percent = strength(underlay) * 100.0;
    ui.spacing_mut().slider_width = desk.theme.scaled(SLIDER);
    let slider = Slider::new(&mut percent, LEAST..=MOST).step_by(STEP).show_value(false);
    let response = ui.add(slider).on_hover_text("How strongly the picture is shown.");
    if response.drag_started() {
        out.push(Request::Gesture(Gesture::Begin));
    }
    let words = format!("{percent:.0} %");
    if response.changed()
        && let Ok(strength) = WrittenShare::parse(&words, true)
    {
        let next = edit(plan, Some(Underlay { strength: Some(strength), ..underlay.clone() }));
        out.push(if response.dragged() {
            Request::Gesture(Gesture::Drag(Box::new(next)))
        } else {
            Request::Edit(next)
        });
    }
    if response.drag_stopped() {
        out.push(Request::Gesture(Gesture::Commit));
    }
    response.accessible_name("Strength of the picture");
    quiet(ui, desk, &words);
}

fn view(ui: &mut Ui, plan: &Plan, underlay: &Underlay, out: &mut Vec<Request>) {
    let combo = ComboBox::from_id_salt("view of the picture").selected_text(super::seen_from(underlay.view));
    let shown = combo.show_ui(ui, |ui| {
        for view in UnderlayView::ALL {
            if ui.selectable_label(view == underlay.view, super::seen_from(view)).clicked() {
                out.push(Request::Edit(edit(plan, Some(Underlay { view, ..underlay.clone() }))));
                out.push(Request::Run(match super::standard(view) {
                    Standard::Side => Command::PieceSide,
                    Standard::Top => Command::PieceTop,
                    _ => Command::PieceFront,
                }));
            }
        }
    });
    shown.response.accessible_name("View that the picture lies in");
}
