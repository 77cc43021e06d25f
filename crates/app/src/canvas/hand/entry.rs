//! Typing a figure of the drawing: a mark from the datum end, a forged length, a size across a part.

use super::drag::neighbor;
use super::figures::wish;
use super::tag::{beside, framed};
use crate::canvas::Canvas;
use crate::canvas::event::CanvasEvent;
use crate::canvas::figure::What;
use crate::canvas::held::{Entry, Feedback, Then};
use crate::canvas::spot::Spot;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::state::Gesture;
use crate::theme::{Text, space};
use crate::widgets::entry::{doubt_of_length, doubt_sentence};
use egui::{Align2, Area, Id, Key, Modifiers, Order, Pos2, RichText, TextEdit, Ui, pos2};
use fh_core::edit::{Edit, HoleMove, HoleWay, MarkEdit, PartChange};
use fh_core::plan::{Segment, SizeName};
use fh_measure::{LengthRange, LengthUnit, WrittenLength};

/// Lengths this close are the same, in mm.
const HAIR_MM: f64 = 1e-6;

impl Canvas {
    /// Opens the field of a figure.
    pub(in crate::canvas) fn open_entry(&mut self, what: What, stage: &Stage<'_>) {
        let Some((mm, text)) = stands(what, stage) else { return };
        self.feedback = Feedback::default();
        let before = (mm, text.clone());
        self.entry = Some(Entry { what, text, bad: None, fresh: true, sent: None, before });
    }

    /// Shows the field, and sends what was typed.
    pub(in crate::canvas) fn show_entry(&mut self, ui: &mut Ui, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        let Some(mut entry) = self.entry.take() else { return };
        if let Some(then) = entry.sent {
            match self.feedback.refused.take() {
                Some(refused) => (entry.bad, entry.sent, entry.fresh) = (Some(refused), None, true),
                None => {
                    let doubt = entry.doubt(stage).unwrap_or_default();
                    events.push(CanvasEvent::Status(doubt));
                    return self.go_on(ui, entry.what, then, stage, events);
                }
            }
        }
        let (at, corner) = place(stage, entry.what);
        let id = Id::unique("canvas entry");
        let answer = Area::new(id).order(Order::Foreground).fixed_pos(at).pivot(corner).show(ui, |ui| {
            let mut answer = Answer::Stay;
            framed(ui, stage.theme, |ui| answer = entry.ask(ui, stage));
            answer
        });
        match answer.inner {
            Answer::Stay => self.entry = Some(entry),
            Answer::Leave(then) => {
                events.push(CanvasEvent::Status(String::new()));
                self.go_on(ui, entry.what, then, stage, events);
            }
            Answer::Take { trades, then } => {
                match entry.wish(stage, trades) {
                    Ok(wish) => {
                        self.feedback = Feedback::default();
                        events.push(CanvasEvent::Gesture(Gesture::Begin));
                        events.push(wish);
                        events.push(CanvasEvent::Gesture(Gesture::Commit));
                        entry.sent = Some(then);
                        ui.request_repaint();
                    }
                    Err(words) => (entry.bad, entry.fresh) = (Some(words), true),
                }
                self.entry = Some(entry);
            }
        }
    }

    /// What comes after a figure: the next one, or the boundary that it belongs to.
    fn go_on(&mut self, ui: &Ui, what: What, then: Then, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        match (then, what.spot()) {
            (Then::Back, Some(spot)) => self.focus.take(ui, spot),
            (Then::On { back }, _) => {
                if let Some(next) = what.next(back, stage) {
                    self.open(next, stage, events);
                    ui.request_repaint();
                }
            }
            _ => {}
        }
    }
}

/// The size that a figure tells, in mm and as it is written.
fn stands(what: What, stage: &Stage<'_>) -> Option<(f64, String)> {
    let block = stage.model.blocks.get(what.segment())?;
    Some(match what {
        What::Boundary(Spot { strip: Strip::Bar, .. }) => match &block.fixed {
            Some(fixed) => (fixed.mm, fixed.text.clone()),
            None => (block.mark.mm(), block.mark.text()),
        },
        What::Boundary(_) => {
            let mm = block.forged[1] - block.forged[0];
            // A length that gave to fit its bar is not the one that is written.
            let own = own_length(stage, what.segment()).filter(|own| (own.mm() - mm).abs() < HAIR_MM);
            (mm, own.map_or_else(|| written(mm, stage), |own| own.text().to_owned()))
        }
        What::Across(segment, across) => {
            let size = across.size(stage.bar.segment(segment)?)?;
            (size.mm(), size.text().to_owned())
        }
        What::Hole(segment, place) => {
            let middle = block.details.middles.get(place.hole)?;
            let mm = if place.way == HoleWay::Along { middle.along_mm } else { middle.across_mm? };
            let own = stage.bar.segment(segment).and_then(|part| place.written(part));
            (mm, own.map_or_else(|| written(mm, stage), |own| own.text().to_owned()))
        }
    })
}

/// Where the field of a figure lies, and which of its corners lies there.
fn place(stage: &Stage<'_>, what: What) -> (Pos2, Align2) {
    let Some(spot) = what.spot() else {
        let [left, right] = stage.span(what.segment(), Strip::Forged).unwrap_or_default();
        let x = ((left + right) / 2.0).clamp(stage.window.left(), stage.window.right());
        return (pos2(x, stage.layout.names.top - space::GAP), Align2::CENTER_BOTTOM);
    };
    beside(stage, spot)
}

/// What became of the field in one frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Answer {
    Stay,
    /// Closed without a change.
    Leave(Then),
    Take {
        trades: bool,
        then: Then,
    },
}

impl Entry {
    fn ask(&mut self, ui: &mut Ui, stage: &Stage<'_>) -> Answer {
        let label = ui.label(RichText::new(self.what.name(stage)).text_style(Text::Strong.style()));
        let left = ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape));
        let mut output = TextEdit::singleline(&mut self.text).desired_width(stage.theme.scaled(160.0)).show(ui);
        let field = output.response.response.labelled_by(label.id);
        if self.fresh {
            self.fresh = false;
            field.request_focus();
            let all = egui::text::CCursorRange::two(
                egui::text::CCursor::default(),
                egui::text::CCursor::new(self.text.chars().count()),
            );
            output.state.cursor.set_char_range(Some(all));
            output.state.store(ui, field.id);
            ui.request_repaint();
            return Answer::Stay;
        }
        if let Some(bad) = &self.bad {
            ui.add_space(space::TIGHT);
            ui.label(RichText::new(format!("■ {bad}")).color(stage.theme.stop));
        }
        if field.changed() {
            self.bad = None;
        }
        if left {
            return Answer::Leave(Then::Back);
        }
        let (entered, tabbed, shift) =
            ui.input(|input| (input.key_pressed(Key::Enter), input.key_pressed(Key::Tab), input.modifiers.shift));
        match (entered && (field.has_focus() || field.lost_focus()), field.lost_focus()) {
            (true, _) => self.leave(shift, Then::Back),
            (_, true) if tabbed => self.leave(false, Then::On { back: shift }),
            (_, true) => self.leave(false, Then::Nothing),
            _ => Answer::Stay,
        }
    }

    /// What was typed is taken; what stands as it was changes nothing.
    fn leave(&self, trades: bool, then: Then) -> Answer {
        if self.text == self.before.1 { Answer::Leave(then) } else { Answer::Take { trades, then } }
    }

    /// Why what was typed and taken may be a slip of the fingers.
    fn doubt(&self, stage: &Stage<'_>) -> Option<String> {
        let typed = self.typed(stage.model.unit.length_unit()).ok()?;
        if self.range() == LengthRange::Any {
            return None;
        }
        let words = doubt_of_length(Some((self.before.0, &self.before.1)), &typed)?;
        Some(doubt_sentence(&words, true))
    }

    /// The size that was typed, worked out where it is a sum.
    fn typed(&self, unit: LengthUnit) -> Result<WrittenLength, String> {
        let it = WrittenLength::parse(&self.before.1, Some(unit), self.range()).ok();
        let typed = WrittenLength::typed(&self.text, unit, self.range(), it.as_ref());
        typed.map_err(|error| error.to_string())
    }

    /// What may be typed.
    fn range(&self) -> LengthRange {
        match self.what {
            What::Hole(_, place) => place.way.range(),
            _ => LengthRange::AboveZero,
        }
    }

    /// What the typed size asks for; a fixed mark stays as it was typed.
    fn wish(&self, stage: &Stage<'_>, trades: bool) -> Result<CanvasEvent, String> {
        let typed = self.typed(stage.model.unit.length_unit())?;
        let bar = stage.model.bar;
        let spot = match self.what {
            What::Across(segment, across) => return Ok(wish(bar, (segment, across), typed)),
            What::Hole(segment, place) => {
                let change = PartChange::Hole(HoleMove::one(place, typed));
                let edit = Edit::ChangePart { bar, at: segment, change };
                return Ok(CanvasEvent::Gesture(Gesture::Drag(Box::new(edit))));
            }
            What::Boundary(spot) => spot,
        };
        let segment = spot.segment;
        if let Some(typed) = with_length(stage, spot, &typed).filter(|_| !trades) {
            let edit = Edit::ChangePart { bar, at: segment, change: PartChange::Typed(Box::new(typed)) };
            return Ok(CanvasEvent::Gesture(Gesture::Drag(Box::new(edit))));
        }
        let is_fixed = stage.model.blocks.get(segment).is_some_and(|block| block.fixed.is_some());
        Ok(match spot.strip {
            Strip::Bar if is_fixed => {
                let edit = Edit::Mark(MarkEdit::Move { bar, segment, to: typed });
                CanvasEvent::Gesture(Gesture::Drag(Box::new(edit)))
            }
            Strip::Bar => spot.wish(bar, typed.mm(), neighbor(trades)),
            Strip::Forged => {
                let start = spot.reach(stage.model).map_or(0.0, |[start, _]| start);
                spot.wish(bar, start + typed.mm(), neighbor(trades))
            }
        })
    }
}

/// The length of a part as it is written, where it has one of its own.
fn own_length<'a>(stage: &'a Stage<'_>, segment: usize) -> Option<&'a WrittenLength> {
    stage.bar.segment(segment)?.form.length()
}

/// The part of a forged end with another length, kept as it was typed; none where it has no length of its own.
fn with_length(stage: &Stage<'_>, spot: Spot, length: &WrittenLength) -> Option<Segment> {
    let part = stage.bar.segment(spot.segment).filter(|_| spot.strip == Strip::Forged)?;
    let mut next = part.clone();
    let mut has_one = false;
    next.form.sizes_mut(&mut |name, place| {
        if name == SizeName::Length {
            *place = length.clone();
            has_one = true;
        }
    });
    (has_one && part.form.branches().is_empty()).then_some(next)
}

fn written(mm: f64, stage: &Stage<'_>) -> String {
    let unit = stage.model.unit.length_unit();
    let written = WrittenLength::from_mm(mm, unit, LengthRange::Any);
    written.map(|length| length.text().to_owned()).unwrap_or_default()
}
