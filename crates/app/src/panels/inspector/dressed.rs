//! The lengths of the selected segment that are dressed in a die: which die, where, on which side, how deep, and what comes of it.

use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::{Button, RichText, Ui};
use fh_core::balance::SegmentBalance;
use fh_core::describe::{dressed_longer_words, dressed_place_words, dressed_words, upper_first};
use fh_core::plan::{Bend, DieKind, DieSpec, Dressed, DressedSide, Segment, Sides};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};

/// A first fuller's or swage's radius as a share of the bar's thickness.
const RADIUS: f64 = 0.25;
/// A first depth as a share of the bar's thickness.
const DEPTH: f64 = 0.125;
/// A first angle for a side that is none of the four, in degrees.
const ASKEW_DEGREES: f64 = 45.0;
/// The V of a block where none is written, in radians.
const V: f64 = std::f64::consts::FRAC_PI_2;

/// Shows the dressed lengths; `start` is the word for the segment's start.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    segment: &mut Segment,
    balance: Option<&SegmentBalance>,
    start: &str,
) {
    let mut removed = None;
    let is_bent = segment.bend.as_ref().is_some_and(|bend| !matches!(bend, Bend::Twist { .. }));
    for (index, dressed) in segment.dressed.iter_mut().enumerate() {
        ui.push_id(("dressed", index), |ui| {
            let name = |what: &str| format!("{what} of dressed length {}", index + 1);
            die(ui, sizing, dressed, &name);
            sizes(ui, sizing, dressed, &name);
            side(ui, sizing, dressed, is_bent, &name);
            told(ui, sizing, dressed, (balance, index), start);
            let remove = ui.button("Remove this dressing").on_hover_text("Leave this length as it is forged.");
            if remove.clicked() {
                removed = Some(index);
            }
            ui.add_space(space::GAP);
        });
    }
    if let Some(index) = removed {
        segment.dressed.remove(index);
    }
    let longer = balance.and_then(|balance| dressed_longer_words(balance, sizing.first.units.length));
    if let Some(words) = longer {
        quiet(ui, sizing, &format!("{words}."));
    }
    let tip = "A V-block, a swage or a fuller along a length of the part: its metal stays in it.";
    let is_full = segment.dressed.len() >= Dressed::MOST;
    if ui.add_enabled(!is_full, Button::new("Dress a length")).on_hover_text(tip).clicked() {
        segment.dressed.extend(first(sizing, balance));
    }
}

/// A first dressed length: a groove all along the top.
fn first(sizing: &Sizing<'_>, balance: Option<&SegmentBalance>) -> Option<Dressed> {
    let thick = thick_mm(balance);
    let die = DieSpec::Fuller { radius: sizing.first.size(RADIUS * thick)?, across: false };
    Some(Dressed::new(die, sizing.first.size(DEPTH * thick)?))
}

/// How thick the part is where it is thinnest, in mm; what is not settled is taken for a usual bar.
fn thick_mm(balance: Option<&SegmentBalance>) -> f64 {
    const USUAL: f64 = 12.0;
    let thinnest = balance.and_then(|balance| balance.shape.as_ref()?.least_thickness_mm());
    thinnest.filter(|mm| *mm > 1.0).unwrap_or(USUAL)
}

/// Which die, with its whole size.
fn die(ui: &mut Ui, sizing: &Sizing<'_>, dressed: &mut Dressed, name: &dyn Fn(&str) -> String) {
    let now = dressed.die.kind();
    let choices = DieKind::ALL.map(|kind| (kind, kind.name().to_owned()));
    if let Some(kind) = chooser::show(ui, sizing.theme, "Die", &name("Die"), now, &choices) {
        change_die(dressed, kind, sizing);
    }
    let radius = name("Radius");
    if let Some(size) = dressed.die.radius_mut()
        && let Some(typed) = fields::length(ui, sizing, &Entry::named("Radius", &radius), size, LengthRange::AboveZero)
    {
        *size = typed;
    }
    if let DieSpec::VBlock { angle } = &mut dressed.die {
        let label = name("Angle of the V");
        let entry = Entry::named("Angle of the V", &label);
        if let Some(typed) = fields::optional_angle(ui, sizing, &entry, angle.as_ref(), Some(V)) {
            *angle = typed.filter(DieSpec::is_v);
        }
    }
}

fn change_die(dressed: &mut Dressed, kind: DieKind, sizing: &Sizing<'_>) {
    let radius = || dressed.die.radius().cloned().or_else(|| sizing.first.size(2.0 * dressed.depth.mm()));
    let die = match kind {
        DieKind::Fuller => radius().map(|radius| DieSpec::Fuller { radius, across: false }),
        DieKind::FullerAcross => radius().map(|radius| DieSpec::Fuller { radius, across: true }),
        DieKind::Swage => radius().map(|radius| DieSpec::Swage { radius }),
        DieKind::VBlock => Some(DieSpec::VBlock { angle: None }),
    };
    if let Some(die) = die {
        dressed.die = die;
    }
    if kind == DieKind::FullerAcross {
        dressed.length = None;
    }
}

/// Where it lies, and how deep it goes.
fn sizes(ui: &mut Ui, sizing: &Sizing<'_>, dressed: &mut Dressed, name: &dyn Fn(&str) -> String) {
    let is_across = dressed.die.kind() == DieKind::FullerAcross;
    let (from, length, depth) = (name(if is_across { "Middle" } else { "Start" }), name("Length"), name("Depth"));
    let mut optional = |label: &str, name: &str, hint: &str, now: &mut Option<WrittenLength>, range| {
        let entry = Entry::named(label, name).hint(hint);
        if let Some(typed) = fields::optional_length(ui, sizing, &entry, now.as_ref(), range, None) {
            *now = typed;
        }
    };
    let label = if is_across { "Middle from its start" } else { "From its start" };
    optional(label, &from, "at its start", &mut dressed.from, LengthRange::ZeroOrMore);
    if !is_across {
        optional("For", &length, "to its end", &mut dressed.length, LengthRange::AboveZero);
    }
    let entry = Entry::named("Depth", &depth);
    if let Some(typed) = fields::length(ui, sizing, &entry, &dressed.depth, LengthRange::AboveZero) {
        dressed.depth = typed;
    }
}

/// What is chosen of the side.
#[derive(Clone, Copy, PartialEq)]
enum Side {
    Around(u16),
    Askew,
    Outside,
    Inside,
}

fn side(ui: &mut Ui, sizing: &Sizing<'_>, dressed: &mut Dressed, is_bent: bool, name: &dyn Fn(&str) -> String) {
    let now = side_of(&dressed.side);
    let around = Sides::DEGREES.into_iter().map(|one| (Side::Around(one), Sides::name_of(one).to_owned()));
    let mut choices: Vec<_> = around.collect();
    if is_bent || dressed.follows_bend() {
        choices.push((Side::Outside, "outside of its bend".to_owned()));
        choices.push((Side::Inside, "inside of its bend".to_owned()));
    }
    choices.push((Side::Askew, "at another angle".to_owned()));
    if let Some(choice) = chooser::show(ui, sizing.theme, "Side", &name("Side"), now, &choices) {
        let around = |degrees: f64| WrittenAngle::from_degrees(degrees).map_or(DressedSide::Up, DressedSide::Around);
        dressed.side = match choice {
            Side::Around(0) => DressedSide::Up,
            Side::Around(degrees) => around(f64::from(degrees)),
            Side::Askew => around(ASKEW_DEGREES),
            Side::Outside => DressedSide::Outside,
            Side::Inside => DressedSide::Inside,
        };
    }
    let label = name("Angle of the side");
    if now == Side::Askew
        && let DressedSide::Around(angle) = &mut dressed.side
        && let Some(typed) = fields::angle(ui, sizing, &Entry::named("Its angle", &label), angle)
    {
        *angle = typed;
    }
}

fn side_of(side: &DressedSide) -> Side {
    match side {
        DressedSide::Outside => Side::Outside,
        DressedSide::Inside => Side::Inside,
        DressedSide::Up => Side::Around(0),
        DressedSide::Around(angle) => {
            let degrees = angle.radians().to_degrees().rem_euclid(360.0);
            let near = Sides::DEGREES.into_iter().find(|one| (f64::from(*one) - degrees).abs() < 1e-6);
            near.map_or(Side::Askew, Side::Around)
        }
    }
}

/// What comes out of it, in words, as the balance has it.
fn told(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    dressed: &Dressed,
    (balance, index): (Option<&SegmentBalance>, usize),
    start: &str,
) {
    let unit = sizing.first.units.length;
    let Some((balance, dressing)) = balance.and_then(|balance| Some((balance, balance.dressed.get(index)?))) else {
        return;
    };
    let words = dressed_words(dressed, dressing, unit);
    let place = dressed_place_words(balance, dressing, unit, start);
    let words = format!("{words}, {place}, forged.");
    ui.label(RichText::new(words).text_style(Text::Strong.style()).color(sizing.theme.ink));
}

fn quiet(ui: &mut Ui, sizing: &Sizing<'_>, words: &str) {
    ui.label(RichText::new(upper_first(words)).text_style(Text::Small.style()).color(sizing.theme.ink_quiet));
}
