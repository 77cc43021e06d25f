//! The rows of marks along the selected segment: chisel lines, dots, tools side by side; and what is counted of each.

use crate::theme::{Text, space};
use crate::widgets::entry::{self, Entry, Reading};
use crate::widgets::{Sizing, chooser, fields};
use egui::{Button, RichText, Ui};
use fh_core::balance::{LaidRepeat, SegmentBalance, lay_repeat};
use fh_core::describe::{repeat_count_words, repeat_first_words, repeat_free_words, repeat_places_words};
use fh_core::plan::{Repeat, RepeatFrom, Segment};
use fh_measure::LengthRange;

/// A first step in mm, to be typed over.
const STEP_MM: f64 = 6.0;
/// A first tool's width in mm.
const WIDTH_MM: f64 = 10.0;
/// A first count.
const COUNT: u32 = 5;

/// What says how far it is from one to the next.
#[derive(Clone, Copy, PartialEq)]
enum Paced {
    Step,
    Tools,
    Spread,
}

/// Shows the rows; `ends` are the words for the segment's two ends.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    segment: &mut Segment,
    balance: Option<&SegmentBalance>,
    ends: [&str; 2],
) {
    let mut removed = None;
    for (index, repeat) in segment.repeats.iter_mut().enumerate() {
        ui.push_id(("repeat", index), |ui| {
            let number = index + 1;
            sizes(ui, sizing, repeat, number);
            if let Some(balance) = balance.filter(|balance| balance.shape.is_some()) {
                counted(ui, sizing, &lay_repeat(repeat, balance.forged_length), ends);
            }
            let words = format!("Remove “{}”", repeat.what_name());
            if ui.button(words).on_hover_text("Remove this row of marks.").clicked() {
                removed = Some(index);
            }
            ui.add_space(space::GAP);
        });
    }
    if let Some(index) = removed {
        segment.repeats.remove(index);
    }
    let button = Button::new("Add a row of marks");
    let tip = "Chisel lines, dots or tools set side by side, at equal steps along the forged part.";
    if ui.add(button).on_hover_text(tip).clicked() {
        segment.repeats.extend(first(sizing));
    }
}

/// A first row.
fn first(sizing: &Sizing<'_>) -> Option<Repeat> {
    Some(Repeat {
        what: "chisel lines".to_owned(),
        from: RepeatFrom::Middle,
        step: Some(sizing.first.size(STEP_MM)?),
        width: None,
        count: None,
        margin: None,
    })
}

fn sizes(ui: &mut Ui, sizing: &Sizing<'_>, repeat: &mut Repeat, number: usize) {
    let name = |what: &str| format!("{what} of row {number}");
    let what = name("Marks");
    if let Some(typed) = fields::words(ui, sizing, &Entry::named("Marks", &what), &repeat.what) {
        repeat.what = typed;
    }
    let now = paced(repeat);
    let choices = [
        (Paced::Step, "equal steps".to_owned()),
        (Paced::Tools, "tools side by side".to_owned()),
        (Paced::Spread, "a count, spread evenly".to_owned()),
    ];
    if let Some(choice) = chooser::show(ui, sizing.theme, "Spaced by", &name("Pace"), now, &choices) {
        pace(repeat, choice, sizing);
    }
    let (step, width) = (name("Step"), name("Tool width"));
    for (label, name, size) in [("Step", &step, &mut repeat.step), ("Tool width", &width, &mut repeat.width)] {
        if let Some(size) = size
            && let Some(typed) = fields::length(ui, sizing, &Entry::named(label, name), size, LengthRange::AboveZero)
        {
            *size = typed;
        }
    }
    count(ui, sizing, repeat, &name("How many"));
    let choices = [
        (RepeatFrom::Start, "its start".to_owned()),
        (RepeatFrom::End, "its end".to_owned()),
        (RepeatFrom::Middle, "the middle".to_owned()),
    ];
    if let Some(from) = chooser::show(ui, sizing.theme, "Counted from", &name("Counted from"), repeat.from, &choices) {
        repeat.from = from;
    }
    let margin = name("Margin");
    let entry = Entry::named("Margin", &margin).hint("none");
    if let Some(typed) =
        fields::optional_length(ui, sizing, &entry, repeat.margin.as_ref(), LengthRange::ZeroOrMore, Some(0.0))
    {
        repeat.margin = typed;
    }
}

fn paced(repeat: &Repeat) -> Paced {
    match (&repeat.step, &repeat.width) {
        (_, Some(_)) => Paced::Tools,
        (Some(_), None) => Paced::Step,
        (None, None) => Paced::Spread,
    }
}

fn pace(repeat: &mut Repeat, choice: Paced, sizing: &Sizing<'_>) {
    let kept = repeat.step.take().or(repeat.width.take());
    match choice {
        Paced::Step => repeat.step = kept.or_else(|| sizing.first.size(STEP_MM)),
        Paced::Tools => repeat.width = kept.or_else(|| sizing.first.size(WIDTH_MM)),
        Paced::Spread => repeat.count = repeat.count.or(Some(COUNT)),
    }
}

/// How many; where a step or a width says it, the field may be left empty.
fn count(ui: &mut Ui, sizing: &Sizing<'_>, repeat: &mut Repeat, name: &str) {
    let needed = paced(repeat) == Paced::Spread;
    let read = |text: &str| {
        if text.trim().is_empty() && !needed {
            return Ok(None);
        }
        let count = text.trim().parse::<u32>().ok().filter(|count| (1..=Repeat::MOST).contains(count));
        count.map(Some).ok_or_else(|| {
            format!("“{}” isn't a count of marks; write a whole number from 1 to {}", text.trim(), Repeat::MOST)
        })
    };
    let step = |steps| {
        let count = repeat.count.unwrap_or(1).checked_add_signed(steps)?;
        (1..=Repeat::MOST).contains(&count).then_some(Some(count))
    };
    let text = repeat.count.map_or_else(String::new, |count| count.to_string());
    let entry = Entry::named("How many", name).hint("as many as fit");
    let reading = Reading { read: &read, step: Some(&step), doubt: None };
    if let Some(typed) = entry::show(ui, sizing.theme, &entry, &text, &reading) {
        repeat.count = typed;
    }
}

/// What comes out of it, in words.
fn counted(ui: &mut Ui, sizing: &Sizing<'_>, laid: &LaidRepeat, ends: [&str; 2]) {
    let unit = sizing.first.units.length;
    let mut words = repeat_count_words(laid, unit);
    if !laid.places.is_empty() {
        words = format!("{words}, {}.", repeat_first_words(laid, unit, ends));
    }
    ui.label(RichText::new(words).text_style(Text::Strong.style()).color(sizing.theme.ink));
    for words in repeat_free_words(laid, unit).into_iter().chain(places(laid, sizing, ends[0])) {
        ui.label(RichText::new(words).text_style(Text::Small.style()).color(sizing.theme.ink_quiet));
    }
}

fn places(laid: &LaidRepeat, sizing: &Sizing<'_>, start: &str) -> Option<String> {
    // A figure keeps its fraction and its unit when the line breaks.
    let places = repeat_places_words(laid, sizing.first.units.length).replace(' ', "\u{a0}").replace(",\u{a0}", ", ");
    let lead = if laid.width.is_some() { "Middles at" } else { "At" };
    (!places.is_empty()).then(|| format!("{lead} {places} from {start}, forged."))
}
