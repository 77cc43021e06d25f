//! The list of steps, heat by heat. A step is chosen by a click or the arrows, and carried to another place by hand.

use super::groups::{Line, lines};
use super::row::{self, Look};
use crate::state::{Command, Desk, OrderAsk, OrderDesk, Request};
use crate::theme::{Text, space};
use crate::widgets::command_button::{bar_button, menu_line};
use egui::{
    EventFilter, Id, Key, Modifiers, Rect, Response, RichText, Role, ScrollArea, Sense, Ui, WidgetInfo, pos2, vec2,
};
use fh_core::describe::short_name;
use fh_core::edit::StepChange;
use fh_core::findings::Severity;
use fh_measure::counted;

/// The height of the window from which all buttons stand over the list, in points at normal text size. All are in the menu.
const WITH_ALL_BUTTONS: f32 = 560.0;

/// What is carried while a step is dragged: its number.
#[derive(Clone, Copy)]
struct Carried(usize);

/// Shows the buttons over the list.
pub(crate) fn show_buttons(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(order) = desk.order else { return };
    let whose = if order.worked.proposed { "proposed by the program" } else { "your own order" };
    let words = format!("{}, {}, {whose}", counted(order.worked.steps.len(), "step"), order.worked.heats_words());
    ui.label(RichText::new("Order of work").text_style(Text::Heading.style()).color(desk.theme.ink));
    ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    let has_room = ui.ctx().content_rect().height() > desk.theme.scaled(WITH_ALL_BUTTONS);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(space::TIGHT, space::TIGHT);
        bar_button(ui, desk, Command::AddStep, "Add…", out);
        if !has_room {
            bar_button(ui, desk, Command::StepUp, "↑", out);
            bar_button(ui, desk, Command::StepDown, "↓", out);
            return;
        }
        bar_button(ui, desk, Command::DuplicateStep, "Duplicate", out);
        bar_button(ui, desk, Command::RemoveStep, "Remove", out);
        bar_button(ui, desk, Command::MergeSteps, "Join", out);
        bar_button(ui, desk, Command::SplitStep, "Take apart", out);
        bar_button(ui, desk, Command::StepUp, "↑", out);
        bar_button(ui, desk, Command::StepDown, "↓", out);
        bar_button(ui, desk, Command::ProposeAgain, "Program's order…", out);
    });
}

/// Shows the list. Only the lines in sight are drawn.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(order) = desk.order else { return };
    let lines = lines(desk.document.plan(), order.worked);
    let signs = signs(&order);
    let keyboard = take_keys(ui, &order, out);
    let around = ui.available_rect_before_wrap();
    ScrollArea::vertical().auto_shrink([false, false]).show_viewport(ui, |ui, sight| {
        let width = ui.available_width();
        let corner = ui.min_rect().min;
        let mut top = 0.0;
        for (place, line) in lines.iter().enumerate() {
            let height = row::height(desk.theme, line);
            let rect = Rect::from_min_size(corner + vec2(0.0, top), vec2(width, height));
            let is_chosen = matches!(line, Line::Step(number, _) if Some(*number) == order.at);
            if is_chosen && order.reveal {
                // A little of what stands before and after is shown too.
                ui.scroll_to_rect(rect.expand2(vec2(0.0, height)), None);
            }
            if top + height >= sight.top() && top <= sight.bottom() {
                show_line(ui, desk, &order, (place, line), rect, &signs, out);
            }
            top += height;
        }
        ui.allocate_rect(Rect::from_min_size(corner, vec2(width, top)), Sense::hover());
        follow_hand(ui, around);
        if lines.is_empty() {
            let words = "Nothing to forge yet: give one part all its sizes first.";
            ui.add_space(space::PAD);
            ui.label(RichText::new(words).color(desk.theme.ink_quiet));
        }
    });
    if keyboard {
        let ring = (space::LINE, desk.theme.focus);
        ui.painter().rect_stroke(around.shrink(space::LINE), space::CORNER, ring, egui::StrokeKind::Inside);
    }
}

/// The worst finding that speaks of each step.
fn signs(order: &OrderDesk<'_>) -> Vec<Option<Severity>> {
    let mut signs = vec![None; order.worked.steps.len()];
    for found in order.worked.open_findings() {
        for step in &found.steps {
            if let Some(sign) = signs.get_mut(*step) {
                *sign = Some(sign.map_or(found.finding.severity, |now: Severity| now.max(found.finding.severity)));
            }
        }
    }
    signs
}

/// While a step is carried near an edge of the list, the list moves.
fn follow_hand(ui: &Ui, around: Rect) {
    let Some(hand) = ui.input(|input| input.pointer.interact_pos()) else { return };
    if !egui::DragAndDrop::has_payload_of_type::<Carried>(ui.ctx()) || !around.contains(hand) {
        return;
    }
    let (above, below) = (hand.y - around.top(), around.bottom() - hand.y);
    let by = if above < space::TARGET { space::GAP } else { -space::GAP };
    if above.min(below) < space::TARGET {
        ui.scroll_with_delta(vec2(0.0, by));
        ui.request_repaint();
    }
}

fn list_id() -> Id {
    Id::unique("the list of steps")
}

/// The list is one stop of the Tab key; the arrows choose. Whether it has the keyboard.
fn take_keys(ui: &mut Ui, order: &OrderDesk<'_>, out: &mut Vec<Request>) -> bool {
    let count = order.worked.steps.len();
    let stop = Rect::from_min_size(ui.cursor().min, vec2(ui.available_width(), ui.available_height().max(1.0)));
    let response = ui.interact(stop, list_id(), Sense::FOCUSABLE);
    let said = order.chosen().zip(order.at).map_or_else(
        || format!("{}, none chosen", counted(count, "step")),
        |(step, at)| format!("step {} of {count}, {}", at + 1, short_name(&step.title)),
    );
    response.widget_info(|| WidgetInfo::labeled(Role::ListBox, true, format!("List of steps: {said}")));
    if !response.has_focus() {
        return false;
    }
    let filter = EventFilter { vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(list_id(), filter));
    let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
    let now = order.at.unwrap_or(0);
    let last = count.saturating_sub(1);
    if pressed(Key::ArrowUp) {
        out.push(choose(order.at.map_or(last, |at| at.saturating_sub(1))));
    }
    if pressed(Key::ArrowDown) {
        out.push(choose(order.at.map_or(0, |at| (at + 1).min(last))));
    }
    if pressed(Key::Home) {
        out.push(choose(0));
    }
    if pressed(Key::End) {
        out.push(choose(last));
    }
    if pressed(Key::Delete) && now < count {
        out.push(Request::Run(Command::RemoveStep));
    }
    true
}

fn choose(at: usize) -> Request {
    Request::Order(OrderAsk::Choose(Some(at)))
}

fn show_line(
    ui: &mut Ui,
    desk: &Desk<'_>,
    order: &OrderDesk<'_>,
    (place, line): (usize, &Line),
    rect: Rect,
    signs: &[Option<Severity>],
    out: &mut Vec<Request>,
) {
    match line {
        Line::Heat(group) => {
            let response = row::heat(ui, desk, rect, (place, group));
            drop_line(ui, desk, &response, (group.first_step, true), out);
        }
        Line::Step(number, hot) => {
            let Some(step) = order.worked.steps.get(*number) else { return };
            let look = Look {
                number: *number,
                selected: order.at == Some(*number),
                hot: *hot,
                worst: signs.get(*number).copied().flatten(),
            };
            let response = row::step(ui, desk, rect, step, &look);
            if response.clicked() || response.secondary_clicked() {
                ui.memory_mut(|memory| memory.request_focus(list_id()));
                out.push(choose(*number));
            }
            response.dnd_set_drag_payload(Carried(*number));
            drop_line(ui, desk, &response, (*number, false), out);
            response.context_menu(|ui| menu(ui, desk, out));
        }
    }
}

fn menu(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    for command in [
        Command::AddStep,
        Command::DuplicateStep,
        Command::MergeSteps,
        Command::SplitStep,
        Command::StepUp,
        Command::StepDown,
        Command::RemoveStep,
    ] {
        menu_line(ui, desk, command, out);
    }
}

/// Shows where a carried step would come to stand, and lets it down there: before a step or after it; over the head of a heat
/// before its first step.
fn drop_line(ui: &Ui, desk: &Desk<'_>, response: &Response, (number, is_head): (usize, bool), out: &mut Vec<Request>) {
    let Some(carried) = response.dnd_hover_payload::<Carried>() else { return };
    let Some(pointer) = ui.input(|input| input.pointer.interact_pos()) else { return };
    let below = !is_head && pointer.y > response.rect.center().y;
    let y = if below || is_head { response.rect.bottom() } else { response.rect.top() };
    ui.painter().hline(response.rect.x_range(), y, (space::HEAVY, desk.theme.accent));
    let tip = pos2(response.rect.left() + space::GAP, y);
    ui.painter().circle_filled(tip, space::TIGHT, desk.theme.accent);
    if response.dnd_release_payload::<Carried>().is_some() {
        let gap = number + usize::from(below);
        let to = if gap > carried.0 { gap - 1 } else { gap };
        if to != carried.0 {
            out.push(Request::Order(OrderAsk::Change(StepChange::Move { from: carried.0, to })));
        }
    }
}
