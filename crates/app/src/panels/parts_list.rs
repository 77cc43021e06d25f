//! The list of the plan's bars and their segments, in order from the datum end.

use super::part_row::{self, Part};
use crate::state::{Command, Desk, Focus, Line, Request, lines};
use crate::theme::space;
use crate::widgets::command_button::{bar_button, menu_line};
use crate::widgets::{keys, menu_of_part};
use egui::{EventFilter, Id, Key, Modifiers, Rect, Role, ScrollArea, Sense, StrokeKind, Ui, WidgetInfo};

/// A line of the list.
#[derive(Clone, Copy, PartialEq)]
enum Row {
    Plan,
    Bar(usize),
    Line(usize, Line),
}

/// What is carried while a line is dragged: its bar and its segment.
#[derive(Clone, Copy)]
struct Carried(usize, usize);

/// Shows the list. Only the lines in sight are drawn, so that a thousand segments cost no more than twenty.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let rows = rows(desk);
    let height = part_row::height(desk.theme);
    ui.spacing_mut().item_spacing.y = 0.0;
    let selected = rows.iter().position(|row| row.is_selected(desk)).filter(|_| is_newly_selected(ui, desk));
    ScrollArea::vertical().auto_shrink([false, false]).show_rows(ui, height, rows.len(), |ui, range| {
        if let Some(at) = rows.iter().position(|row| row.is_selected(desk)) {
            let top = ui.cursor().top() + (at as f32 - range.start as f32) * height;
            let line = Rect::from_x_y_ranges(ui.max_rect().x_range(), top..=top + height);
            let row = |by: isize| at.checked_add_signed(by).and_then(|at| rows.get(at)).copied();
            one_stop(ui, desk, line, (rows.first().copied(), rows.last().copied()), row, out);
        }
        if let Some(at) = selected {
            let top = ui.cursor().top() + (at as f32 - range.start as f32) * height;
            let line = Rect::from_x_y_ranges(ui.max_rect().x_range(), top..=top + height);
            ui.scroll_to_rect(line, None);
        }
        for row in rows.get(range).unwrap_or_default() {
            match row {
                Row::Plan => plan_line(ui, desk, out),
                Row::Bar(bar) => bar_line(ui, desk, *bar, out),
                Row::Line(bar, Line::Segment { at, depth }) => segment_line(ui, desk, *bar, (*at, *depth), out),
                Row::Line(bar, line @ Line::Branch { .. }) => branch_line(ui, desk, *bar, *line, out),
            }
        }
    });
}

/// What a key asks of the list.
#[derive(Clone, Copy)]
enum Asked {
    By(isize),
    First,
    Last,
    Type,
    Leave,
}

fn asked(key: Key, modifiers: Modifiers) -> Option<Asked> {
    if modifiers.any() {
        return None;
    }
    Some(match key {
        Key::ArrowUp => Asked::By(-1),
        Key::ArrowDown => Asked::By(1),
        Key::Home => Asked::First,
        Key::End => Asked::Last,
        Key::Enter => Asked::Type,
        Key::Escape => Asked::Leave,
        _ => return None,
    })
}

/// The list as one stop of the Tab key, at its selected line: the arrows go through its lines, Enter types the size of a part.
fn one_stop(
    ui: &Ui,
    desk: &Desk<'_>,
    line: Rect,
    (first, last): (Option<Row>, Option<Row>),
    row: impl Fn(isize) -> Option<Row>,
    out: &mut Vec<Request>,
) {
    let response = ui.interact(line, Id::unique("keyboard of the parts"), Sense::FOCUSABLE);
    let spoken = row(0).and_then(|row| row.spoken(desk)).unwrap_or_default();
    response.widget_info(|| WidgetInfo::labeled(Role::ListBox, true, format!("Parts of the plan, {spoken}")));
    if !response.has_focus() {
        return;
    }
    if response.gained_focus() {
        ui.scroll_to_rect(line, None);
        out.push(Request::Say("↑↓ choose a line, Enter types its size, Esc leaves.".to_owned()));
    }
    let ring = (space::HEAVY, desk.theme.focus);
    ui.painter().with_clip_rect(ui.clip_rect()).rect_stroke(line, 0.0, ring, StrokeKind::Inside);
    let filter = EventFilter { vertical_arrows: true, escape: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    for asked in ui.input_mut(|input| keys::take(input, asked)) {
        match asked {
            Asked::By(by) => out.extend(row(by).map(Row::chosen)),
            Asked::First => out.extend(first.map(Row::chosen)),
            Asked::Last => out.extend(last.map(Row::chosen)),
            Asked::Type => out.extend(desk.selection.segment().map(Request::TypeSize)),
            Asked::Leave => {
                ui.memory_mut(|memory| memory.surrender_focus(response.id));
                out.push(Request::Say(String::new()));
            }
        }
    }
}

impl Row {
    /// What a click on it asks for.
    fn chosen(self) -> Request {
        match self {
            Self::Plan => Request::SelectPlan,
            Self::Bar(bar) => Request::Select(bar, None),
            Self::Line(bar, Line::Segment { at, .. }) => Request::Select(bar, Some(at)),
            Self::Line(bar, Line::Branch { split, branch, .. }) => Request::SelectBranch { bar, split, branch },
        }
    }

    /// What screen readers hear of it.
    fn spoken(self, desk: &Desk<'_>) -> Option<String> {
        let part = match self {
            Self::Plan => Some(Part::plan(desk)),
            Self::Bar(bar) => Part::bar(desk, bar),
            Self::Line(bar, Line::Segment { at, depth }) => Part::segment(desk, bar, at, depth),
            Self::Line(bar, Line::Branch { split, branch, depth }) => Part::branch(desk, bar, split, branch, depth),
        };
        part.map(|part| part.spoken)
    }

    fn is_selected(self, desk: &Desk<'_>) -> bool {
        match self {
            Self::Plan => desk.selection.focus == Focus::Plan,
            Self::Bar(bar) => desk.selection.bar == bar && desk.selection.focus == Focus::Bar,
            Self::Line(bar, line) => desk.selection.bar == bar && desk.selection.focus == line.focus(),
        }
    }
}

/// Whether something else was selected in the last frame: its line is then brought into sight.
fn is_newly_selected(ui: &Ui, desk: &Desk<'_>) -> bool {
    let slot = Id::unique("the selected line of the parts");
    let now = (desk.document.serial(), desk.selection.bar, desk.selection.focus);
    let before = ui.data(|data| data.get_temp::<(u64, usize, Focus)>(slot));
    ui.data_mut(|data| data.insert_temp(slot, now));
    before != Some(now)
}

/// Shows the buttons below the list.
pub(crate) fn show_buttons(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = egui::vec2(space::TIGHT, space::TIGHT);
        bar_button(ui, desk, Command::AddBefore, "Add before…", out);
        bar_button(ui, desk, Command::AddAfter, "Add after…", out);
        bar_button(ui, desk, Command::Duplicate, "Duplicate", out);
        bar_button(ui, desk, Command::Remove, "Remove", out);
        bar_button(ui, desk, Command::MoveUp, "↑", out);
        bar_button(ui, desk, Command::MoveDown, "↓", out);
    });
}

fn rows(desk: &Desk<'_>) -> Vec<Row> {
    let mut rows = vec![Row::Plan];
    for (index, bar) in desk.document.plan().bars.iter().enumerate() {
        rows.push(Row::Bar(index));
        rows.extend(lines(bar).into_iter().map(|line| Row::Line(index, line)));
    }
    rows
}

fn plan_line(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let selected = desk.selection.focus == Focus::Plan;
    let part = Part::plan(desk);
    if part_row::show(ui, desk.theme, &part, selected).clicked() {
        out.push(Request::SelectPlan);
    }
}

fn bar_line(ui: &mut Ui, desk: &Desk<'_>, bar: usize, out: &mut Vec<Request>) {
    let selected = desk.selection.focus == Focus::Bar && desk.selection.bar == bar;
    let Some(part) = Part::bar(desk, bar) else { return };
    let response = part_row::show(ui, desk.theme, &part, selected);
    if response.clicked() {
        out.push(Request::Select(bar, None));
    }
    response.context_menu(|ui| {
        if selected || desk.selection.bar == bar {
            menu_line(ui, desk, Command::AddBar, out);
            menu_line(ui, desk, Command::RemoveBar, out);
        } else if ui.button("Select this bar").clicked() {
            out.push(Request::Select(bar, None));
            ui.close();
        }
    });
}

/// The head of a branch, under its split.
fn branch_line(ui: &mut Ui, desk: &Desk<'_>, bar: usize, line: Line, out: &mut Vec<Request>) {
    let Line::Branch { split, branch, depth } = line else { return };
    let selected = desk.selection.bar == bar && desk.selection.focus == line.focus();
    let Some(part) = Part::branch(desk, bar, split, branch, depth) else { return };
    let response = part_row::show(ui, desk.theme, &part, selected);
    if response.clicked() || response.secondary_clicked() {
        out.push(Request::SelectBranch { bar, split, branch });
    }
    response.context_menu(|ui| {
        for command in [Command::AddAfter, Command::InsertMotif, Command::Paste] {
            menu_line(ui, desk, command, out);
        }
    });
}

fn segment_line(ui: &mut Ui, desk: &Desk<'_>, bar: usize, (segment, depth): (usize, usize), out: &mut Vec<Request>) {
    let is_here = desk.selection.bar == bar;
    let is_also = is_here && desk.also.contains(&segment);
    let selected = is_here && (desk.selection.segment() == Some(segment) || is_also);
    let Some(part) = Part::segment(desk, bar, segment, depth) else { return };
    let response = part_row::show(ui, desk.theme, &part, selected);
    let keys = ui.input(|input| input.modifiers);
    if response.clicked() && is_here && (keys.shift || keys.command) {
        out.push(Request::Extend { to: segment, run: keys.shift });
    } else if response.clicked() || (response.secondary_clicked() && !is_also) {
        out.push(Request::Select(bar, Some(segment)));
    }
    response.dnd_set_drag_payload(Carried(bar, segment));
    drop_line(ui, desk, &response, bar, segment, out);
    response.context_menu(|ui| menu_of_part::lines(ui, desk, out));
}

/// Shows where a carried segment would come to lie, and lets it down there. A segment stays in its chain.
fn drop_line(ui: &Ui, desk: &Desk<'_>, response: &egui::Response, bar: usize, segment: usize, out: &mut Vec<Request>) {
    let Some(carried) = response.dnd_hover_payload::<Carried>().filter(|carried| carried.0 == bar) else { return };
    let Some(plan) = desk.document.plan().bars.get(bar) else { return };
    let Some(((chain, place), (from_chain, from))) = plan.place_of(segment).zip(plan.place_of(carried.1)) else {
        return;
    };
    let Some(pointer) = ui.input(|input| input.pointer.interact_pos()).filter(|_| chain == from_chain) else { return };
    let below = pointer.y > response.rect.center().y;
    let y = if below { response.rect.bottom() } else { response.rect.top() };
    ui.painter().hline(response.rect.x_range(), y, (space::HEAVY, desk.theme.accent));
    if response.dnd_release_payload::<Carried>().is_some() {
        let gap = place + usize::from(below);
        let to = if gap > from { gap - 1 } else { gap };
        if let Some(number) = plan.number_of(chain, to).filter(|_| to != from) {
            out.push(Request::Select(bar, Some(carried.1)));
            out.push(Request::MoveTo(number));
        }
    }
}
