//! A field that takes a written value: what is typed is checked at once and taken on Enter, Tab or a click elsewhere.
//!
//! A bad entry keeps its text and says why beside it; the last good value stays in force until it is mended or taken back
//! with Escape. Nothing that is said moves the fields.

mod doubt;
mod focus;
mod note;

pub(crate) use doubt::{forget as forget_doubt, of_jump, of_length as doubt_of_length, sentence as doubt_sentence};
pub(crate) use focus::{ask_for_field, ask_for_size, select_on_focus};

use crate::theme::{Text, Theme, space};
use crate::widgets::row;
use egui::{Context, Id, Key, Modifiers, Response, RichText, StrokeKind, TextEdit, Ui};
use fh_core::describe::short_name;

/// The widest a field grows, in points at normal text size.
const WIDEST: f32 = 240.0;
/// What stands at the end of a field whose size follows from others.
const FOLLOWS: &str = "follows";

/// The most letters that a field holds, whatever is pasted into it: setting millions of them takes seconds in every frame.
const MOST_LETTERS: usize = 2_000;

/// What a field is called and how it looks while it is empty.
pub(crate) struct Entry<'a> {
    /// The words beside it.
    pub(crate) label: &'a str,
    /// Its name for screen readers: one of its own within the panel.
    pub(crate) name: &'a str,
    /// What stands in it while it is empty.
    pub(crate) hint: &'a str,
    /// Why it is empty: what its value follows from.
    pub(crate) because: Option<&'a str>,
}

impl<'a> Entry<'a> {
    /// A field whose name is its label.
    pub(crate) fn new(label: &'a str) -> Self {
        Self { label, name: label, hint: "", because: None }
    }

    /// With a name of its own.
    pub(crate) fn named(label: &'a str, name: &'a str) -> Self {
        Self { name, ..Self::new(label) }
    }

    /// With words that stand in it while it is empty.
    pub(crate) fn hint(mut self, hint: &'a str) -> Self {
        self.hint = hint;
        self
    }

    /// With a reason why it is empty.
    pub(crate) fn because(mut self, because: Option<&'a str>) -> Self {
        self.because = because;
        self
    }
}

/// How a value is read from text, what one step up or down makes of it, and whether it may be a slip.
pub(crate) struct Reading<'a, T> {
    /// Reads the text; in words why it cannot be taken.
    pub(crate) read: &'a dyn Fn(&str) -> Result<T, String>,
    /// The value so many steps away.
    pub(crate) step: Option<&'a dyn Fn(i32) -> Option<T>>,
    /// Why a value that can be taken may be a slip of the fingers.
    pub(crate) doubt: Option<DoubtOf<'a, T>>,
}

/// Says why a value may be a slip, where it may.
type DoubtOf<'a, T> = &'a dyn Fn(&T) -> Option<String>;

/// Text that was typed and is not in the plan yet.
#[derive(Clone)]
struct Typed {
    text: String,
    /// The value it was typed over: once that changes, the typed text is void.
    over: String,
}

/// Shows the field. The value, once it is taken.
pub(crate) fn show<T>(ui: &mut Ui, theme: &Theme, entry: &Entry<'_>, now: &str, reading: &Reading<'_, T>) -> Option<T> {
    row::show(ui, theme, entry.label, |ui| ui.vertical(|ui| field(ui, theme, entry, now, reading)).inner)
}

fn field<T>(ui: &mut Ui, theme: &Theme, entry: &Entry<'_>, now: &str, reading: &Reading<'_, T>) -> Option<T> {
    let id = ui.make_persistent_id(("entry", entry.name));
    // A file may hold more than a field can show; it stays as it is until something else is typed.
    let now = now.char_indices().nth(MOST_LETTERS).map_or(now, |(end, _)| &now[..end]);
    let typed = ui.data(|data| data.get_temp::<Typed>(id)).filter(|typed| typed.over == now);
    let mut text = typed.map_or_else(|| now.to_owned(), |typed| typed.text);
    if reading.step.is_some() && focus::is_wanted(ui, entry.name) {
        focus::give(ui.ctx(), id, &text);
    }
    let stepped = take_step(ui, id, reading);
    let response = edit(ui, theme, entry, id, &mut text);
    let is_typed = text != now;
    let read = is_typed.then(|| (reading.read)(&text));
    let taken_back = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Escape));
    let is_left = response.lost_focus() && !taken_back;
    let is_good = read.as_ref().is_some_and(Result::is_ok);
    if stepped.is_some() || (is_left && is_good) || taken_back || !is_typed {
        ui.data_mut(|data| data.remove::<Typed>(id));
    } else {
        if is_left && ui.input(|input| input.key_pressed(Key::Enter)) {
            // Refused: the keyboard stays, and what is typed next takes the place of the bad text.
            focus::give(ui.ctx(), id, &text);
        }
        ui.data_mut(|data| data.insert_temp(id, Typed { text, over: now.to_owned() }));
    }
    note_unsettled(ui.ctx(), id, is_typed && ui.memory(|memory| memory.has_focus(id)));
    match read {
        Some(Err(why)) if stepped.is_none() && !taken_back => mistake(ui, theme, &response, now, &why),
        Some(Ok(value)) if is_left => {
            doubt::keep(ui, id, now, reading.doubt.and_then(|doubt| doubt(&value)));
            return Some(value);
        }
        _ => aside(ui, theme, entry, now, &response, is_typed),
    }
    stepped
}

/// The value one step up or down, where the field has the keyboard and an arrow was pressed.
fn take_step<T>(ui: &Ui, id: Id, reading: &Reading<'_, T>) -> Option<T> {
    let step = reading.step?;
    if !ui.memory(|memory| memory.has_focus(id)) {
        return None;
    }
    let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
    let steps = i32::from(pressed(Key::ArrowUp)) - i32::from(pressed(Key::ArrowDown));
    if steps == 0 { None } else { step(steps) }
}

fn edit(ui: &mut Ui, theme: &Theme, entry: &Entry<'_>, id: Id, text: &mut String) -> Response {
    let width = ui.available_width().min(theme.scaled(WIDEST));
    let hint = RichText::new(short_name(entry.hint)).color(theme.ink_quiet);
    let hint = if entry.because.is_some() { hint.italics() } else { hint };
    let field = TextEdit::singleline(text).id(id).desired_width(width).hint_text(hint).char_limit(MOST_LETTERS);
    let field = field.min_size(egui::vec2(0.0, theme.scaled(space::TARGET))).align(egui::Align2::LEFT_CENTER);
    let output = field.show(ui);
    focus::select_on_focus(ui, &output, text);
    output.response.response.accessible_name(entry.name)
}

/// Says why an entry is not taken, and which value stays.
fn mistake(ui: &mut Ui, theme: &Theme, field: &Response, now: &str, why: &str) {
    let edge = (space::LINE, theme.stop);
    ui.painter().rect_stroke(field.rect, space::CORNER, edge, StrokeKind::Inside);
    let stays = if now.is_empty() { String::new() } else { format!(". Until then {now} stays.") };
    note::show(ui, theme, field.rect, field.id, &format!("■ {why}{stays}"), theme.stop);
    let frame = ui.ctx().cumulative_frame_nr();
    ui.data_mut(|data| data.insert_temp(mistake_id(), frame));
}

/// What is told of a field that holds nothing wrong: that its size follows, or a doubt about what was taken last.
fn aside(ui: &mut Ui, theme: &Theme, entry: &Entry<'_>, now: &str, field: &Response, is_typed: bool) {
    if is_typed {
        return;
    }
    if let Some(words) = doubt::of(ui, field.id, now) {
        note::show(ui, theme, field.rect, field.id, &words, theme.ink);
    }
    if let Some(because) = entry.because.filter(|_| now.is_empty()) {
        follows(ui, theme, field, because);
    }
}

/// Says within an empty field that its size follows; the hover says from what.
fn follows(ui: &mut Ui, theme: &Theme, field: &Response, because: &str) {
    let words = RichText::new(FOLLOWS).text_style(Text::Small.style()).italics().color(theme.ink_quiet);
    let place = field.rect.shrink2(egui::vec2(space::GAP, 0.0));
    let inside = egui::UiBuilder::new().max_rect(place).layout(egui::Layout::right_to_left(egui::Align::Center));
    ui.scope_builder(inside, |ui| ui.add(egui::Label::new(words).selectable(false)));
    field.clone().on_hover_text(because);
}

/// Whether a field showed a mistake in this frame.
pub(crate) fn shows_a_mistake(ctx: &Context) -> bool {
    ctx.data(|data| data.get_temp::<u64>(mistake_id())) == Some(ctx.cumulative_frame_nr())
}

fn mistake_id() -> Id {
    Id::unique("an entry shows a mistake")
}

/// The field that holds text which is not in the plan yet, where one does and has the keyboard.
pub(crate) fn unsettled(ctx: &Context) -> Option<Id> {
    let id = ctx.data(|data| data.get_temp::<Id>(unsettled_id()))?;
    ctx.memory(|memory| memory.has_focus(id)).then_some(id)
}

fn note_unsettled(ctx: &Context, id: Id, is_unsettled: bool) {
    ctx.data_mut(|data| {
        if is_unsettled {
            data.insert_temp(unsettled_id(), id);
        } else if data.get_temp::<Id>(unsettled_id()) == Some(id) {
            data.remove::<Id>(unsettled_id());
        }
    });
}

fn unsettled_id() -> Id {
    Id::unique("the entry that is not settled")
}
