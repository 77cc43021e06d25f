//! The keyboard on the boundaries. Each bar is one stop of the Tab key; the arrows step through its boundaries.

use super::drag::neighbor;
use crate::canvas::event::CanvasEvent;
use crate::canvas::figure::What;
use crate::canvas::held::{Feedback, focus_id};
use crate::canvas::model::Model;
use crate::canvas::places::spot_rect;
use crate::canvas::spot::Spot;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::canvas::{Canvas, snap};
use crate::state::Gesture;
use crate::widgets::keys;
use egui::accesskit::Action;
use egui::{EventFilter, Id, Key, Modifiers, Sense, Ui, WidgetInfo};

/// What a key asks of the boundary that has the keyboard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Asked {
    Step(isize),
    First,
    Last,
    Nudge(Nudge),
    Type,
    Leave,
}

/// A boundary moved by one step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Nudge {
    up: bool,
    fine: bool,
    /// Whether the next part gives or takes the metal.
    trades: bool,
}

fn asked(key: Key, modifiers: Modifiers) -> Option<Asked> {
    let nudge = |up, trades| Asked::Nudge(Nudge { up, fine: modifiers.alt, trades });
    if modifiers.command || modifiers.ctrl {
        return None;
    }
    Some(match key {
        Key::ArrowLeft | Key::OpenBracket => Asked::Step(-1),
        Key::ArrowRight | Key::CloseBracket => Asked::Step(1),
        Key::Home => Asked::First,
        Key::End => Asked::Last,
        Key::ArrowUp => nudge(true, modifiers.shift),
        Key::ArrowDown => nudge(false, modifiers.shift),
        // On many keyboards + is typed with Shift, so Shift says nothing here.
        Key::Plus | Key::Equals => nudge(true, false),
        Key::Minus => nudge(false, false),
        Key::Enter => Asked::Type,
        Key::Escape => Asked::Leave,
        _ => return None,
    })
}

impl Canvas {
    /// Reads the keys for the boundary that has the keyboard, and gives each bar its stop.
    pub(in crate::canvas) fn read_keys(&mut self, ui: &Ui, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        for strip in [Strip::Bar, Strip::Forged] {
            let last = stage.model.blocks.len().saturating_sub(1);
            let spot = Spot { strip, segment: self.focus.active(strip).min(last) };
            self.focus.rest_on(spot);
            let response = ui.interact(spot_rect(stage, spot), focus_id(strip), Sense::FOCUSABLE);
            let value = spot.size_mm(stage.model).unwrap_or_default();
            let name = match strip {
                Strip::Bar => "Marks on the bar",
                Strip::Forged => "Ends on the forged bar",
            };
            response.widget_info(|| WidgetInfo::slider(true, value, format!("{name}, {}", spot.name(stage.model))));
            ui.accesskit_node_builder(response.id, |node| {
                node.add_action(Action::Increment);
                node.add_action(Action::Decrement);
            });
            if !response.has_focus() || self.entry.is_some() {
                continue;
            }
            if response.gained_focus() {
                self.feedback = Feedback::default();
                events.push(CanvasEvent::Status(
                    "←→ choose a mark, ↑↓ move it (Shift: the next part trades metal), Enter types a size, Esc leaves."
                        .to_owned(),
                ));
            }
            let filter =
                EventFilter { horizontal_arrows: true, vertical_arrows: true, escape: true, ..EventFilter::default() };
            ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
            for asked in taken_keys(ui, response.id) {
                self.answer(ui, asked, strip, stage, events);
            }
        }
    }

    /// The boundary that has the keyboard.
    pub(in crate::canvas) fn focused(&self, ui: &Ui) -> Option<Spot> {
        let has = |strip| ui.memory(|memory| memory.has_focus(focus_id(strip)));
        let strip = [Strip::Bar, Strip::Forged].into_iter().find(|strip| has(*strip))?;
        Some(Spot { strip, segment: self.focus.active(strip) })
    }

    fn answer(&mut self, ui: &Ui, asked: Asked, strip: Strip, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        let at = self.focus.active(strip);
        let last = stage.model.blocks.len().saturating_sub(1);
        match asked {
            Asked::Step(by) => self.stand_at(at.saturating_add_signed(by).min(last), strip, stage, events),
            Asked::First => self.stand_at(0, strip, stage, events),
            Asked::Last => self.stand_at(last, strip, stage, events),
            Asked::Nudge(nudge) => self.nudge(ui, Spot { strip, segment: at }, nudge, stage, events),
            Asked::Type => self.open_entry(What::Boundary(Spot { strip, segment: at }), stage),
            Asked::Leave => {
                ui.memory_mut(|memory| memory.surrender_focus(focus_id(strip)));
                events.push(CanvasEvent::Status(String::new()));
            }
        }
    }

    fn stand_at(&mut self, segment: usize, strip: Strip, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        let spot = Spot { strip, segment };
        self.focus.rest_on(spot);
        self.feedback = Feedback::default();
        if let Some([_, end]) = spot.drawn(stage.model) {
            self.camera.reveal(end, &stage.frame);
        }
        events.push(CanvasEvent::Select(Some(segment)));
    }

    fn nudge(&mut self, ui: &Ui, spot: Spot, nudge: Nudge, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        let Some(target) = nudge.target(spot, stage.model) else { return };
        self.feedback = Feedback::default();
        events.push(CanvasEvent::Select(Some(spot.segment)));
        events.push(CanvasEvent::Gesture(Gesture::Begin));
        events.push(spot.wish(stage.model.bar, target, neighbor(nudge.trades)));
        events.push(CanvasEvent::Gesture(Gesture::Commit));
        ui.request_repaint();
    }
}

impl Nudge {
    /// Where it takes a boundary, in mm; none where it would pass the start of its segment.
    fn target(self, spot: Spot, model: &Model) -> Option<f64> {
        let [start, end] = spot.reach(model)?;
        let target = match spot.strip {
            Strip::Bar => snap::nudged(end, self.up, model.marks, self.fine),
            Strip::Forged => start + snap::nudged(end - start, self.up, model.marks, self.fine),
        };
        (target > start).then_some(target)
    }
}

/// What the keyboard and the screen reader ask for; nobody else reads these keys then.
fn taken_keys(ui: &Ui, id: Id) -> Vec<Asked> {
    ui.input_mut(|input| {
        let mut found = keys::take(input, asked);
        for (action, up) in [(Action::Increment, true), (Action::Decrement, false)] {
            for _ in 0..input.num_accesskit_action_requests(id, action) {
                found.push(Asked::Nudge(Nudge { up, fine: false, trades: false }));
            }
        }
        found
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_of_the_shell_are_left_to_it() {
        assert_eq!(asked(Key::Plus, Modifiers::COMMAND), None);
        assert_eq!(asked(Key::Z, Modifiers::NONE), None);
    }

    #[test]
    fn shift_lets_the_neighbor_trade_and_alt_is_fine() {
        let nudge = asked(Key::ArrowUp, Modifiers::SHIFT | Modifiers::ALT);
        assert_eq!(nudge, Some(Asked::Nudge(Nudge { up: true, fine: true, trades: true })));
    }
}
