//! Typing an exact size at a boundary: a mark from the datum end, or a forged length.

use super::drag::neighbor;
use super::tag::{beside, framed};
use crate::canvas::Canvas;
use crate::canvas::event::CanvasEvent;
use crate::canvas::held::{Entry, Feedback};
use crate::canvas::spot::Spot;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::state::Gesture;
use crate::theme::{Text, space};
use crate::widgets::entry::{doubt_of_length, doubt_sentence};
use egui::{Area, Id, Key, Modifiers, Order, RichText, TextEdit, Ui};
use fh_core::edit::{Edit, MarkEdit};
use fh_measure::{LengthRange, WrittenLength};

impl Canvas {
    /// Opens the field at a boundary.
    pub(in crate::canvas) fn open_entry(&mut self, spot: Spot, stage: &Stage<'_>) {
        let Some(block) = stage.model.blocks.get(spot.segment) else { return };
        let (mm, text) = match spot.strip {
            Strip::Bar => match &block.fixed {
                Some(fixed) => (fixed.mm, fixed.text.clone()),
                None => (block.mark.mm(), block.mark.text()),
            },
            Strip::Forged => {
                let mm = block.forged[1] - block.forged[0];
                (mm, written(mm, stage))
            }
        };
        self.feedback = Feedback::default();
        let before = (mm, text.clone());
        self.entry = Some(Entry { spot, text, bad: None, fresh: true, sent: false, before });
    }

    /// Shows the field, and sends what was typed.
    pub(in crate::canvas) fn show_entry(&mut self, ui: &mut Ui, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        let Some(mut entry) = self.entry.take() else { return };
        if entry.sent {
            match self.feedback.refused.take() {
                Some(refused) => (entry.bad, entry.sent, entry.fresh) = (Some(refused), false, true),
                None => {
                    events.extend(entry.doubt(stage).map(CanvasEvent::Status));
                    return self.focus.take(ui, entry.spot);
                }
            }
        }
        let (at, corner) = beside(stage, entry.spot);
        let id = Id::unique("canvas entry");
        let answer = Area::new(id).order(Order::Foreground).fixed_pos(at).pivot(corner).show(ui, |ui| {
            let mut answer = Answer::Stay;
            framed(ui, stage.theme, |ui| answer = entry.ask(ui, stage));
            answer
        });
        match answer.inner {
            Answer::Stay => self.entry = Some(entry),
            Answer::Leave => self.focus.take(ui, entry.spot),
            Answer::Drop => {}
            Answer::Take { trades } => {
                match entry.wish(stage, trades) {
                    Ok(wish) => {
                        self.feedback = Feedback::default();
                        events.push(CanvasEvent::Gesture(Gesture::Begin));
                        events.push(wish);
                        events.push(CanvasEvent::Gesture(Gesture::Commit));
                        entry.sent = true;
                        ui.request_repaint();
                    }
                    Err(words) => (entry.bad, entry.fresh) = (Some(words), true),
                }
                self.entry = Some(entry);
            }
        }
    }
}

/// What became of the field in one frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Answer {
    Stay,
    /// Closed, and back to the boundary.
    Leave,
    /// Closed because something else has the keyboard now.
    Drop,
    Take {
        trades: bool,
    },
}

impl Entry {
    fn ask(&mut self, ui: &mut Ui, stage: &Stage<'_>) -> Answer {
        let what = match self.spot.strip {
            Strip::Bar => format!("{}, from the {}", self.spot.name(stage.model), stage.model.datum),
            Strip::Forged => format!("{}: forged length", self.spot.name(stage.model)),
        };
        let label = ui.label(RichText::new(what).text_style(Text::Strong.style()));
        let taken = ui.input(|input| input.key_pressed(Key::Enter).then_some(input.modifiers.shift));
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
        match taken {
            _ if left => Answer::Leave,
            Some(trades) if field.has_focus() || field.lost_focus() => Answer::Take { trades },
            _ if field.lost_focus() => Answer::Drop,
            _ => Answer::Stay,
        }
    }

    /// Why what was typed and taken may be a slip of the fingers.
    fn doubt(&self, stage: &Stage<'_>) -> Option<String> {
        let unit = stage.model.unit.length_unit();
        let typed = WrittenLength::parse(&self.text, Some(unit), LengthRange::AboveZero).ok()?;
        let words = doubt_of_length(Some((self.before.0, &self.before.1)), &typed)?;
        Some(doubt_sentence(&words, true))
    }

    /// What the typed size asks for; a fixed mark stays as it was typed.
    fn wish(&self, stage: &Stage<'_>, trades: bool) -> Result<CanvasEvent, String> {
        let unit = stage.model.unit.length_unit();
        let typed = WrittenLength::parse(&self.text, Some(unit), LengthRange::AboveZero);
        let typed = typed.map_err(|error| error.to_string())?;
        let (bar, segment) = (stage.model.bar, self.spot.segment);
        let is_fixed = stage.model.blocks.get(segment).is_some_and(|block| block.fixed.is_some());
        Ok(match self.spot.strip {
            Strip::Bar if is_fixed => {
                let edit = Edit::Mark(MarkEdit::Move { bar, segment, to: typed });
                CanvasEvent::Gesture(Gesture::Drag(Box::new(edit)))
            }
            Strip::Bar => self.spot.wish(bar, typed.mm(), neighbor(trades)),
            Strip::Forged => {
                let start = self.spot.reach(stage.model).map_or(0.0, |[start, _]| start);
                self.spot.wish(bar, start + typed.mm(), neighbor(trades))
            }
        })
    }
}

fn written(mm: f64, stage: &Stage<'_>) -> String {
    let unit = stage.model.unit.length_unit();
    let written = WrittenLength::from_mm(mm, unit, LengthRange::Any);
    written.map(|length| length.text().to_owned()).unwrap_or_default()
}
