//! The shapes that the selected part has on the way: what each is, what follows from its metal, and their order.

use super::{bend, form};
use crate::figures;
use crate::theme::{Text, space};
use crate::widgets::{Sizing, chooser};
use egui::{Button, CollapsingHeader, RichText, Ui};
use fh_core::balance::{Derived, SegmentBalance, ViaBalance};
use fh_core::describe::via_words;
use fh_core::edit::{ViaChange, effective};
use fh_core::new_segment::suits;
use fh_core::plan::{BendKind, FormKind, Gives, Segment, Via};

/// Shows the shapes and changes the sizes that were typed; answers what else is chosen.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    segment: &mut Segment,
    balance: Option<&SegmentBalance>,
    first: bool,
) -> Option<ViaChange> {
    let mut chosen = None;
    for at in 0..segment.via.len() {
        let (words, count) = (title(sizing, segment, balance, at), segment.via.len());
        // The last one is the one that is being made up.
        let head = CollapsingHeader::new(words).id_salt(("shape", at)).default_open(at + 1 == count);
        head.show(ui, |ui| {
            lowest(ui, sizing, balance, at);
            chosen = chosen.take().or(one(ui, sizing, segment, balance, (at, first)));
            chosen = chosen.take().or(buttons(ui, at, count));
            ui.add_space(space::GAP);
        });
    }
    let tip = "A shape that it has before the finished one: first drawn to a flat, then spread; bent out of the way, and opened again.";
    let is_full = segment.via.len() >= Via::MOST;
    let button = Button::new("Add a shape on the way");
    if ui.add_enabled(!is_full, button).on_hover_text(tip).clicked() {
        chosen = Some(ViaChange::Add(segment.via.len()));
    }
    chosen
}

/// What it comes to: `Shape 1: drawn 45.5 mm to 14 mm × 6 mm`.
fn title(sizing: &Sizing<'_>, segment: &Segment, balance: Option<&SegmentBalance>, at: usize) -> String {
    let unit = sizing.first.units.length;
    let words = balance.and_then(|balance| via_words(segment, balance, at, unit)).unwrap_or_default();
    format!("Shape {}: {words}", at + 1)
}

/// What follows where all scale were lost by then.
fn lowest(ui: &mut Ui, sizing: &Sizing<'_>, balance: Option<&SegmentBalance>, at: usize) {
    let follows = balance.and_then(|balance| balance.via.get(at)).and_then(|via| via.follows);
    let is_less = |low: f64, size: f64| (size - low).abs() > 0.05;
    if let Some(follows) = follows.filter(|it| is_less(figures::mm(it.low), figures::mm(it.size))) {
        let (name, low) = (follows.name.words(), sizing.words(follows.low));
        let words = format!("Its {name} follows from its metal; with all scale lost by then {low}.");
        ui.label(RichText::new(words).text_style(Text::Small.style()).color(sizing.theme.ink_quiet));
    }
}

/// Its form, its bend and their sizes.
fn one(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    segment: &mut Segment,
    balance: Option<&SegmentBalance>,
    (at, first): (usize, bool),
) -> Option<ViaChange> {
    let number = at + 1;
    let own = effective(segment, at).clone();
    let via = segment.via.get_mut(at)?;
    let mut chosen = form_kind(ui, sizing, via, (at, segment.form.kind()));
    // A shape by itself, shown with the fields of any part.
    let mut shape = Segment { bend: via.bend.clone(), gives: via.gives, ..Segment::new("", own.clone()) };
    let settled = balance.zip(balance.and_then(|balance| balance.via.get(at)));
    let settled = settled.map(|(balance, via)| by_itself(balance, via));
    if via.form.is_some() {
        form::show(ui, sizing, &mut shape, settled.as_ref(), first);
        gives(ui, sizing, &mut shape, number);
    }
    let kinds =
        Via::BENDS.into_iter().filter(|kind| suits(&own, *kind)).map(|kind| (Some(kind), kind.name().to_owned()));
    let choices: Vec<_> = std::iter::once((None, "straight".to_owned())).chain(kinds).collect();
    let now = via.bend.as_ref().map(fh_core::plan::Bend::kind);
    let name = format!("Bend of shape {number}");
    let bent: Option<Option<BendKind>> = chooser::show(ui, sizing.theme, "Bend", &name, now, &choices);
    chosen = chosen.or(bent.map(|kind| ViaChange::Bend(at, kind)));
    bend::sizes(ui, sizing, &mut shape, settled.as_ref());
    if via.form.is_some() {
        (via.form, via.gives) = (Some(shape.form), shape.gives);
    }
    via.bend = shape.bend;
    chosen
}

/// The balance of a shape as though it were the whole part: what follows for it stands in its fields.
fn by_itself(balance: &SegmentBalance, via: &ViaBalance) -> SegmentBalance {
    let derived: Vec<Derived> = via.derived.clone();
    let (shape, bent) = (via.shape.clone(), via.bent);
    SegmentBalance { shape, bent, derived, via: Vec::new(), ..balance.clone() }
}

fn form_kind(ui: &mut Ui, sizing: &Sizing<'_>, via: &Via, (at, finished): (usize, FormKind)) -> Option<ViaChange> {
    let before = if at == 0 { "as the finished one" } else { "as the shape before it" };
    let fits = |kind: &FormKind| finished != FormKind::Plain || *kind == FormKind::Plain;
    let kinds = Via::FORMS.into_iter().filter(fits).map(|kind| (Some(kind), kind.name().to_owned()));
    let choices: Vec<_> = std::iter::once((None, before.to_owned())).chain(kinds).collect();
    let now = via.form.as_ref().map(fh_core::plan::Form::kind);
    let name = format!("Form of shape {}", at + 1);
    chooser::show(ui, sizing.theme, "Form", &name, now, &choices).map(|kind| ViaChange::Form(at, kind))
}

/// Which size follows from the metal.
fn gives(ui: &mut Ui, sizing: &Sizing<'_>, shape: &mut Segment, number: usize) {
    let is_free = shape.form.length().is_none();
    let usual = if is_free { "its length, which is left out" } else { "none: all are written" };
    let words = |gives: Gives| match gives {
        Gives::Nothing => "none: all are written".to_owned(),
        gives => format!("its {}", gives.name()),
    };
    let all = Gives::ALL.into_iter().filter(|gives| *gives != Gives::Nothing).map(|gives| (Some(gives), words(gives)));
    let choices: Vec<_> = std::iter::once((None, usual.to_owned())).chain(all).collect();
    let name = format!("Size of shape {number} that follows");
    if let Some(choice) = chooser::show(ui, sizing.theme, "Follows", &name, shape.gives, &choices) {
        shape.gives = choice;
    }
}

/// Earlier, later, out.
fn buttons(ui: &mut Ui, at: usize, count: usize) -> Option<ViaChange> {
    let number = at + 1;
    ui.horizontal_wrapped(|ui| {
        let press = |ui: &mut Ui, words: String, tip: &str, is_possible: bool| {
            ui.add_enabled(is_possible, Button::new(words)).on_hover_text(tip).clicked()
        };
        if press(ui, format!("Shape {number} earlier"), "Make it before the shape before it.", at > 0) {
            return Some(ViaChange::Move { from: at, to: at - 1 });
        }
        if press(ui, format!("Shape {number} later"), "Make it after the shape after it.", at + 1 < count) {
            return Some(ViaChange::Move { from: at, to: at + 1 });
        }
        press(ui, format!("Remove shape {number}"), "It is not made any more.", true).then_some(ViaChange::Remove(at))
    })
    .inner
}
