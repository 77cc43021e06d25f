//! The view at the anvil: one step at a time, to be read from two metres, steered by any key and by a foot switch.

mod clock;
mod keys;
mod page;
mod turn_timer;

use crate::canvas::paint::bare;
use crate::state::{Desk, Spent};
use crate::theme::{Text, space};
use crate::widgets::line;
use clock::Clock;
use egui::{Button, Context, Rect, RichText, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use fh_core::cautions::cautions;
use keys::Turn;
use page::Page;
use std::time::Duration;
use turn_timer::TurnTimer;

/// The share of the height that the strip takes.
const STRIP: f32 = 0.2;
/// The height of the line of keys, in points at normal text size.
const FOOT: f32 = 30.0;

/// The width of the button that leaves, in points at normal text size.
const LEAVE: f32 = 90.0;

/// What the keys do, in one line; in fewer words where that has no room.
const KEYS: [&str; 2] = [
    "Next: Space, Enter, any letter, right half   Back: ←, Page Up, left half   Home: restart the clock   Esc: leave",
    "Next: Space   Back: ←   Clock: Home   Leave: Esc",
];

/// What the hand asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Wish {
    /// So many steps on.
    Turn(isize),
    /// Leave the view.
    Leave,
}

/// The view, and what it remembers from frame to frame.
#[derive(Default)]
pub(crate) struct Anvil {
    clock: Clock,
    timer: TurnTimer,
}

impl Anvil {
    /// Shows the chosen step, and reads the keys unless a dialog in front wants them.
    pub(crate) fn show(&mut self, ui: &mut Ui, desk: &Desk<'_>, reads_keys: bool) -> Option<Wish> {
        let now = ui.input(|input| input.time);
        let rect = ui.available_rect_before_wrap();
        ui.painter().rect_filled(rect, 0.0, desk.theme.ground);
        let pressed = if reads_keys { self.read_keys(ui.ctx(), now) } else { None };
        let wish = pressed.or_else(|| touch(ui, rect));
        let Some((order, step)) = desk.order.and_then(|order| Some((order, order.chosen()?))) else {
            nothing(ui, desk, rect);
            return wish.or_else(|| leave_button(ui, desk, rect));
        };
        self.clock.follow(step.is_hot().then_some(step.heat), now);
        self.timer.follow(order.at.filter(|_| step.is_hot()), now);
        let foot = desk.theme.scaled(FOOT);
        let strip_top = rect.bottom() - foot - rect.height() * STRIP;
        let above = Rect::from_min_max(rect.min, pos2(rect.right(), strip_top)).shrink2(vec2(space::GROUP, space::GAP));
        let strip = Rect::from_min_max(pos2(rect.left(), strip_top), pos2(rect.right(), rect.bottom() - foot));
        let clock = self.clock.words(now);
        let plan = desk.document.plan();
        let warned = &cautions(plan, desk.document.balance());
        Page { order: &order, step, clock: clock.as_deref(), plan, warned }.show(ui, desk.theme, above);
        if let Some(shown) = order.shown {
            bare::paint(ui, strip.shrink2(vec2(space::GROUP, 0.0)), desk.theme, shown, desk.selection.bar);
        }
        foot_line(ui, desk, rect, foot);
        if self.clock.runs() {
            // Only the clock moves: once a second is enough.
            ui.ctx().request_repaint_after(Duration::from_secs_f64(self.clock.until_next_second(now)));
        }
        wish.or_else(|| leave_button(ui, desk, rect))
    }

    /// What the step that is left took, once; none where its clock did not run.
    pub(crate) fn take_spent(&mut self, now: f64) -> Option<Spent> {
        self.timer.take(now)
    }

    fn read_keys(&mut self, ctx: &Context, now: f64) -> Option<Wish> {
        let mut wish = None;
        for turn in keys::pressed(ctx) {
            match turn {
                Turn::Next => wish = Some(Wish::Turn(1)),
                Turn::Back => wish = Some(Wish::Turn(-1)),
                Turn::Clock => {
                    self.clock.restart(now);
                    self.timer.begin_heat();
                }
                Turn::Leave => return Some(Wish::Leave),
            }
        }
        wish
    }
}

/// The two halves of the screen turn the page.
fn touch(ui: &Ui, rect: Rect) -> Option<Wish> {
    let (left, right) = rect.split_left_right_at_fraction(0.5);
    let half = |rect: Rect, name: &'static str| {
        let response = ui.interact(rect, ui.scope_id().with(name), Sense::CLICK);
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name));
        response.clicked()
    };
    let (back, next) = (half(left, "Back a step"), half(right, "On to the next step"));
    if back { Some(Wish::Turn(-1)) } else { next.then_some(Wish::Turn(1)) }
}

fn foot_line(ui: &Ui, desk: &Desk<'_>, rect: Rect, height: f32) {
    let foot = Rect::from_min_max(pos2(rect.left(), rect.bottom() - height), rect.max);
    let room = foot.width() - desk.theme.scaled(LEAVE) - 2.0 * space::GROUP;
    let words = line::lay_first(ui, &KEYS, &desk.theme.font(Text::Body), desk.theme.ink_quiet, room);
    let told = ui.interact(foot, ui.scope_id().with("keys"), Sense::hover());
    told.widget_info(|| WidgetInfo::labeled(Role::Label, true, words.text()));
    let at = pos2(foot.left() + space::GROUP, foot.center().y - words.size().y / 2.0);
    ui.painter().galley(at, words, desk.theme.ink_quiet);
}

fn leave_button(ui: &mut Ui, desk: &Desk<'_>, rect: Rect) -> Option<Wish> {
    let size = vec2(desk.theme.scaled(LEAVE), desk.theme.scaled(space::TARGET));
    let place = Rect::from_min_size(rect.right_bottom() - size - vec2(space::GAP, 1.0), size);
    let button = ui.put(place, Button::new("Leave")).on_hover_text("Back to the editor (Esc)");
    button.accessible_name("Leave the anvil").clicked().then_some(Wish::Leave)
}

fn nothing(ui: &mut Ui, desk: &Desk<'_>, rect: Rect) {
    let words = "Nothing to forge yet: give one part all its sizes first.";
    let words = RichText::new(words).text_style(Text::Title.style()).color(desk.theme.ink);
    ui.put(rect.shrink(space::GROUP), egui::Label::new(words).wrap().selectable(false));
}
