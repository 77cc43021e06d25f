//! The tour of the screen: a few short notes, each beside what it speaks of.

use crate::state::{Command, Desk, Request};
use crate::theme::{Text, space};
use egui::{Area, Button, Context, Id, Key, Order, Pos2, Rect, RichText, Stroke, StrokeKind, Ui, Vec2, pos2, vec2};

/// Where the parts of the screen are.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Spots {
    pub(crate) top: Rect,
    pub(crate) list: Rect,
    pub(crate) strips: Rect,
    pub(crate) piece: Rect,
    pub(crate) plot: Rect,
    pub(crate) inspector: Rect,
    pub(crate) foot: Rect,
}

impl Default for Spots {
    fn default() -> Self {
        let none = Rect::ZERO;
        Self { top: none, list: none, strips: none, piece: none, plot: none, inspector: none, foot: none }
    }
}

/// How wide a note is, in points at normal text size.
const WIDTH: f32 = 340.0;

/// A note: its head, its words, and the part of the screen that it speaks of.
struct Note(&'static str, &'static str, fn(&Spots) -> Rect);

/// How many notes there are.
#[cfg(test)]
pub(crate) const COUNT: usize = NOTES.len();

const NOTES: [Note; 8] = [
    Note(
        "The piece, part by part",
        "Each length of bar and what it becomes, from the datum end on. Add, reorder and copy parts here.",
        |spots| spots.list,
    ),
    Note(
        "The same metal, before and after",
        "The starting bar with its marks, and the same metal forged. Drag a mark or an end: everything follows at once, and Esc takes it back.",
        |spots| spots.strips,
    ),
    Note(
        "The finished piece",
        "The same metal bent. Drag to turn it, the wheel zooms; a click selects a part, and the handles of its bend change it.",
        |spots| spots.piece,
    ),
    Note(
        "How much metal, where",
        "The area of the section along the forged bar; a click on its head folds and unfolds it. Below the dashed line the stock is drawn out, above it is upset.",
        |spots| spots.plot,
    ),
    Note(
        "Sizes as you say them",
        "3 1/4, 82.5 mm, 1' 2 3/8\": type it as you would write it. Sizes that follow from others are in italics.",
        |spots| spots.inspector,
    ),
    Note(
        "Is it sound?",
        "What to cut and what it weighs, always in sight. Beside it the findings; click one to see where it is.",
        |spots| spots.foot,
    ),
    Note(
        "From the rack to the price",
        "Steel (F8) says which bar to take, what is on your rack, what to cut from which bar, what to buy, and what to charge for it.",
        |spots| spots.top,
    ),
    Note(
        "To the anvil",
        "Order of work (F9) has the steps, heats and tools; Print sheets… makes the sheets to work from. Ctrl+F finds every command and every page of the handbook.",
        |spots| spots.top,
    ),
];

/// The tour, at one of its notes.
#[derive(Default)]
pub(crate) struct Tour {
    at: usize,
}

impl Tour {
    /// Shows the note.
    pub(crate) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, spots: &Spots, out: &mut Vec<Request>) {
        let Some(note) = NOTES.get(self.at) else {
            out.push(Request::EndTour);
            return;
        };
        let target = (note.2)(spots);
        let theme = desk.theme;
        let painter = ctx.layer_painter(egui::LayerId::new(Order::Foreground, Id::unique("tour frame")));
        painter.rect_stroke(
            target.shrink(space::TIGHT),
            space::CORNER,
            Stroke::new(space::HEAVY, theme.focus),
            StrokeKind::Inside,
        );
        let width = theme.scaled(WIDTH);
        let area = Area::new(Id::unique("tour")).order(Order::Tooltip).fixed_pos(beside(
            target,
            ctx.content_rect(),
            vec2(width, theme.scaled(180.0)),
        ));
        area.constrain(true).show(ctx, |ui| {
            egui::Frame::window(ui.style()).show(ui, |ui| {
                ui.set_width(width - 2.0 * space::GROUP);
                self.words(ui, desk, note, out);
            });
        });
        self.turn(ctx, out);
    }

    /// Goes on and back by keys, unless a field or a button has the keyboard.
    fn turn(&mut self, ctx: &Context, out: &mut Vec<Request>) {
        let pressed = |key| ctx.input_mut(|input| input.consume_key(egui::Modifiers::NONE, key));
        if pressed(Key::Escape) {
            out.push(Request::EndTour);
        }
        if ctx.memory(|memory| memory.focused()).is_some() {
            return;
        }
        if pressed(Key::Enter) || pressed(Key::ArrowRight) {
            self.next(out);
        }
        if pressed(Key::ArrowLeft) || pressed(Key::Backspace) {
            self.at = self.at.saturating_sub(1);
        }
    }

    /// The note after; after the last one a plan of one's own is begun.
    fn next(&mut self, out: &mut Vec<Request>) {
        if self.at + 1 < NOTES.len() {
            self.at += 1;
        } else {
            out.extend([Request::EndTour, Request::Run(Command::New)]);
        }
    }

    fn words(&mut self, ui: &mut Ui, desk: &Desk<'_>, note: &Note, out: &mut Vec<Request>) {
        ui.label(RichText::new(note.0).text_style(Text::Heading.style()));
        ui.label(note.1);
        ui.add_space(space::GAP);
        ui.horizontal(|ui| {
            let last = self.at + 1 == NOTES.len();
            let on = ui.button(if last { "Begin my own" } else { "Next" });
            if on.on_hover_text("Enter or →").clicked() {
                self.next(out);
            }
            if ui.add_enabled(self.at > 0, Button::new("Back")).on_hover_text("←").clicked() {
                self.at -= 1;
            }
            if ui.button(if last { "Close" } else { "Skip the tour" }).on_hover_text("Esc").clicked() {
                out.push(Request::EndTour);
            }
            let count = format!("{} of {}", self.at + 1, NOTES.len());
            ui.label(RichText::new(count).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
        });
    }
}

/// A place for a note beside a part of the screen: where there is room for it, else in its middle.
fn beside(target: Rect, screen: Rect, size: Vec2) -> Pos2 {
    let gap = space::PAD;
    if target.right() + gap + size.x < screen.right() {
        return pos2(target.right() + gap, target.top() + gap);
    }
    if target.left() - gap - size.x > screen.left() {
        return pos2(target.left() - gap - size.x, target.top() + gap);
    }
    if target.top() - gap - size.y > screen.top() {
        return pos2(target.center().x - size.x / 2.0, target.top() - gap - size.y);
    }
    if target.bottom() + gap + size.y < screen.bottom() {
        return pos2(target.center().x - size.x / 2.0, target.bottom() + gap);
    }
    target.center() - size / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_note_covers_what_it_speaks_of() {
        // The parts of a window of 1366 by 768 points.
        let screen = Rect::from_min_size(Pos2::ZERO, vec2(1366.0, 768.0));
        let part = |left: f32, top: f32, right: f32, foot: f32| Rect::from_min_max(pos2(left, top), pos2(right, foot));
        let spots = Spots {
            top: part(0.0, 0.0, 1366.0, 42.0),
            list: part(0.0, 42.0, 264.0, 711.0),
            strips: part(264.0, 84.0, 1062.0, 434.0),
            piece: part(264.0, 436.0, 1062.0, 670.0),
            plot: part(264.0, 672.0, 1062.0, 711.0),
            inspector: part(1062.0, 42.0, 1366.0, 711.0),
            foot: part(0.0, 711.0, 1366.0, 768.0),
        };
        for note in &NOTES {
            let (target, size) = ((note.2)(&spots), vec2(WIDTH, 180.0));
            let card = Rect::from_min_size(beside(target, screen, size), size);
            assert!(!card.intersects(target) && screen.contains_rect(card), "{}: {card:?}", note.0);
        }
    }
}
