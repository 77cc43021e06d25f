//! A split: its branches, the side they lie on, the end of the slit, and how far it is opened.

use super::sizes::named_size;
use crate::figures;
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading};
use egui::{Button, Label, RichText, Ui, vec2};
use fh_core::balance::SegmentBalance;
use fh_core::forms;
use fh_core::metal::{FreeEnd, Shape, SplitSize};
use fh_core::new_segment::new_branch;
use fh_core::plan::{Branch, Form, Opening, RootSpec, Sides};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};
use uom::si::f64::Length;

/// A split has two branches at least.
const LEAST_BRANCHES: usize = 2;
/// The side of the first branch where the plan does not say.
const USUAL_SIDE: u16 = 270;
/// A first radius, a first hole, a first opening against the bar.
const ROOT_RADIUS: f64 = 0.1;
const ROOT_HOLE: f64 = 0.25;
const OPENING: f64 = 2.0;
/// The width of a branch's number, in points at normal text size.
const NUMBER: f32 = 20.0;

/// What is asked for beside a change of sizes.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Wish {
    /// Select a branch.
    Select(usize),
    /// Add a segment to a branch.
    AddTo(usize),
}

/// What is done to the list of branches.
enum Change {
    Remove(usize),
    Swap(usize, usize),
}

/// Shows the split; changes what was typed, and says what else was asked for.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    form: &mut Form,
    balance: Option<&SegmentBalance>,
) -> Option<Wish> {
    let Form::Split(forms::Split { branches, side, root, opening, cut, slit, kerf }) = form else { return None };
    let settled = match balance.and_then(|balance| balance.shape.as_ref()) {
        Some(Shape::Split(split)) => Some(&**split),
        _ => None,
    };
    first_side(ui, sizing, side);
    root_of(ui, sizing, root);
    if branches.len() == 2 {
        cut_line(ui, sizing, (cut, slit, kerf), settled);
    }
    if opening.is_some() || settled.is_some_and(|split| split.free == FreeEnd::Neither) {
        opened(ui, sizing, opening);
    }
    heading::show(ui, sizing.theme, "Branches, counted from that side");
    list(ui, sizing, branches, settled)
}

fn first_side(ui: &mut Ui, sizing: &Sizing<'_>, side: &mut Option<WrittenAngle>) {
    let degrees = side.as_ref().map_or(f64::from(USUAL_SIDE), |side| side.radians().to_degrees().rem_euclid(360.0));
    let now = Sides::DEGREES.into_iter().find(|one| (f64::from(*one) - degrees).abs() < 1e-6);
    let choices: Vec<_> = Sides::DEGREES.into_iter().map(|one| (Some(one), Sides::name_of(one).to_owned())).collect();
    if let Some(Some(choice)) =
        chooser::show(ui, sizing.theme, "First branch", "Side of the first branch", now, &choices)
    {
        *side = if choice == USUAL_SIDE { None } else { WrittenAngle::from_degrees(f64::from(choice)).ok() };
    }
}

/// How the end of the slit is made.
#[derive(Clone, Copy, PartialEq)]
enum Root {
    AsCut,
    Rounded,
    Hole,
}

fn root_of(ui: &mut Ui, sizing: &Sizing<'_>, root: &mut Option<RootSpec>) {
    let now = match root {
        None => Root::AsCut,
        Some(RootSpec::Radius(_)) => Root::Rounded,
        Some(RootSpec::Hole(_)) => Root::Hole,
    };
    let choices = [
        (Root::AsCut, "as it is cut".to_owned()),
        (Root::Rounded, "rounded".to_owned()),
        (Root::Hole, "in a hole".to_owned()),
    ];
    let size = |factor: f64| sizing.first.size(factor * sizing.first.stock_mm[0].min(sizing.first.stock_mm[1]));
    match chooser::show(ui, sizing.theme, "Slit ends", "How the slit ends", now, &choices) {
        Some(Root::AsCut) => *root = None,
        Some(Root::Rounded) => *root = size(ROOT_RADIUS).map(RootSpec::Radius),
        Some(Root::Hole) => *root = size(ROOT_HOLE).map(RootSpec::Hole),
        None => {}
    }
    match root {
        None => {}
        Some(RootSpec::Radius(radius)) => named_size(ui, sizing, "Radius", "Radius at the end of the slit", radius),
        Some(RootSpec::Hole(diameter)) => named_size(ui, sizing, "Hole", "Hole at the end of the slit", diameter),
    }
}

/// The cut line, the slit's length and the saw's kerf, where they are written.
fn cut_line(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    (cut, slit, kerf): (&mut Option<WrittenLength>, &mut Option<WrittenLength>, &mut Option<WrittenLength>),
    settled: Option<&SplitSize>,
) {
    let follows = |length: Option<Length>| length.map(figures::mm);
    let at = follows(settled.and_then(|split| split.cuts.first().copied()));
    let long = follows(settled.map(|split| split.slit));
    let words = |length: Option<f64>, else_: &str| {
        length.map_or_else(|| else_.to_owned(), |mm| sizing.words(fh_measure::mm(mm)))
    };
    let (at_hint, long_hint) = (words(at, "follows from the metal"), words(long, "follows from what holds"));
    let mut field = |label: &str, name: &str, hint: &str, size: &mut Option<WrittenLength>, follows: Option<f64>| {
        let entry = Entry::named(label, name).hint(hint);
        let range = LengthRange::AboveZero;
        if let Some(typed) = fields::optional_length(ui, sizing, &entry, size.as_ref(), range, follows) {
            *size = typed;
        }
    };
    field("Cut", "Cut from the first branch's face", &at_hint, cut, at);
    if cut.is_some() {
        field("Slit", "Length of the slit", &long_hint, slit, long);
        field("Saw's cut", "Width of the saw's cut", "none: a chisel", kerf, None);
    } else {
        (*slit, *kerf) = (None, None);
    }
}

fn opened(ui: &mut Ui, sizing: &Sizing<'_>, opening: &mut Option<Opening>) {
    let choices = [(false, "left closed".to_owned()), (true, "to an eye or a basket".to_owned())];
    match chooser::show(ui, sizing.theme, "Opened", "How the split is opened", opening.is_some(), &choices) {
        Some(true) => {
            let width = sizing.first.size(OPENING * sizing.first.stock_mm[0]);
            *opening = width.map(|width| Opening { width, turns: None });
        }
        Some(false) => *opening = None,
        None => {}
    }
    let Some(Opening { width, turns }) = opening else { return };
    named_size(ui, sizing, "Widest", "Width of the opening, middle to middle", width);
    let left = turns.is_some_and(|turns| turns < 0.0);
    let entry = Entry::named("Turned", "Turns of the branches round each other").hint("not at all");
    if let Some(typed) = fields::optional_turns(ui, sizing, &entry, turns.map(f64::abs), None) {
        *turns = typed.map(|count| if left { -count } else { count });
    }
}

fn list(ui: &mut Ui, sizing: &Sizing<'_>, branches: &mut Vec<Branch>, settled: Option<&SplitSize>) -> Option<Wish> {
    let (count, mut change, mut wish) = (branches.len(), None, None);
    for (index, branch) in branches.iter_mut().enumerate() {
        ui.push_id(("branch", index), |ui| {
            change = name_line(ui, sizing, index, branch, count).or(change.take());
            wish = wish.or(below(ui, sizing, index, branch, settled));
        });
    }
    match change {
        Some(Change::Remove(index)) => drop(branches.remove(index)),
        Some(Change::Swap(one, other)) => branches.swap(one, other),
        None => {}
    }
    let tip = "One more cut and one more branch, left as cut.";
    if ui.button("Add a branch").on_hover_text(tip).clicked() {
        branches.extend(new_branch(&sizing.first));
    }
    wish
}

/// A branch's name, and buttons that change the list.
fn name_line(ui: &mut Ui, sizing: &Sizing<'_>, index: usize, branch: &mut Branch, count: usize) -> Option<Change> {
    let number = index + 1;
    let size = sizing.theme.scaled(space::TARGET);
    let mut change = None;
    ui.horizontal_top(|ui| {
        let words = RichText::new(number.to_string()).color(sizing.theme.ink_quiet);
        ui.add_sized([sizing.theme.scaled(NUMBER), size], Label::new(words));
        let width = (ui.available_width() - 3.0 * (size + space::GAP)).floor().max(size);
        ui.allocate_ui(vec2(width, size), |ui| {
            ui.set_width(width);
            let (name, hint) = (format!("Name of branch {number}"), branch.title(index));
            let entry = Entry::named("", &name).hint(if branch.name.is_empty() { &hint } else { "" });
            if let Some(name) = fields::words(ui, sizing, &entry, &branch.name) {
                branch.name = name;
            }
        });
        let mut button = |enabled: bool, sign: &str, name: String, tip: &str| {
            let button = ui.add_enabled(enabled, Button::new(sign).min_size(vec2(size, size))).on_hover_text(tip);
            button.clone().accessible_name(name);
            button.clicked()
        };
        if button(index > 0, "↑", format!("Move branch {number} up"), "Towards the first side.") {
            change = Some(Change::Swap(index, index - 1));
        }
        if button(number < count, "↓", format!("Move branch {number} down"), "Away from the first side.") {
            change = Some(Change::Swap(index, number));
        }
        let removable = count > LEAST_BRANCHES;
        if button(removable, "×", format!("Remove branch {number}"), "Take the branch and its parts out.") {
            change = Some(Change::Remove(index));
        }
    });
    change
}

/// What a branch holds, and the way to it.
fn below(ui: &mut Ui, sizing: &Sizing<'_>, index: usize, branch: &Branch, settled: Option<&SplitSize>) -> Option<Wish> {
    let number = index + 1;
    let mut wish = None;
    ui.horizontal_wrapped(|ui| {
        ui.add_space(sizing.theme.scaled(NUMBER));
        let share = settled.and_then(|split| split.branches.get(index)).map(|size| size.share);
        let share = share.map_or_else(String::new, |share| format!(", {:.0} %", share * 100.0));
        let words = format!("{}{share}", super::branch::segments_words(branch.segments.len()));
        ui.label(RichText::new(words).text_style(Text::Small.style()).color(sizing.theme.ink_quiet));
        let add = ui.small_button("Add…").on_hover_text("Add a part at the end of this branch.");
        add.clone().accessible_name(format!("Add a part to branch {number}"));
        if add.clicked() {
            wish = Some(Wish::AddTo(index));
        }
        let open = ui.small_button("Open").on_hover_text("Select this branch.");
        open.clone().accessible_name(format!("Open branch {number}"));
        if open.clicked() {
            wish = Some(Wish::Select(index));
        }
    });
    ui.add_space(space::TIGHT);
    wish
}
