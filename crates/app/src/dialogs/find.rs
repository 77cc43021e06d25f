//! Find anything by any word: commands, parts, findings, pages of the handbook.

use super::frame::{Frame, other_button};
use super::handbook::pages;
use crate::commands::{GROUPS, keys_text};
use crate::state::{Command, Desk, Request, told};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::line;
use egui::{Context, Key, Modifiers, RichText, Role, ScrollArea, Sense, TextEdit, Ui, WidgetInfo, vec2};
use fh_core::describe::{segment_name, short_name};

/// How many are listed.
const MOST: usize = 60;
/// The height of the list, in points at normal text size.
const HEIGHT: f32 = 380.0;

/// What is looked for.
#[derive(Default)]
pub(crate) struct Find {
    words: String,
    at: usize,
    met: bool,
}

/// What was found.
enum What {
    Command(Command),
    Part(usize, usize),
    Finding(usize),
    Page(usize),
}

struct Found {
    what: What,
    label: String,
    /// What it is, in small words.
    detail: String,
    right: String,
    can: bool,
}

impl Find {
    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let key = |key| ctx.input_mut(|input| input.consume_key(Modifiers::NONE, key));
        let (up, down, enter) = (key(Key::ArrowUp), key(Key::ArrowDown), key(Key::Enter));
        let frame = Frame { title: "Find", width: dialog::LIST };
        let contents = |ui: &mut Ui, _: &mut Vec<Request>| {
            if self.field(ui) {
                self.at = 0;
            }
            let all = found(ctx, desk, &self.words);
            let last = all.len().saturating_sub(1);
            self.at = (self.at + usize::from(down)).saturating_sub(usize::from(up)).min(last);
            ui.add_space(space::GAP);
            let clicked = self.list(ui, desk, &all, up || down);
            let picked = if enter { Some(self.at) } else { clicked };
            let picked = picked.and_then(|at| all.get(at)).filter(|found| found.can);
            picked.map(|found| requests(desk, &found.what)).unwrap_or_default()
        };
        frame.show(ctx, desk, out, contents, |ui, out, wanted| {
            out.extend(wanted);
            if other_button(ui, "Close") {
                out.push(Request::CloseDialog);
            }
        });
    }

    /// The field for the words; whether they were changed.
    fn field(&mut self, ui: &mut Ui) -> bool {
        let hint = "a command, a part, a finding, a page of the handbook";
        let field = TextEdit::singleline(&mut self.words).desired_width(f32::INFINITY).hint_text(hint);
        let response = ui.add(field).accessible_name("Words to find");
        if !std::mem::replace(&mut self.met, true) {
            response.request_focus();
        }
        response.changed()
    }

    /// The list; which of it was clicked.
    fn list(&self, ui: &mut Ui, desk: &Desk<'_>, all: &[Found], has_moved: bool) -> Option<usize> {
        let height = desk.theme.scaled(HEIGHT);
        let area = ScrollArea::vertical().max_height(height).min_scrolled_height(height).auto_shrink([false, false]);
        let shown = area.show(ui, |ui| {
            if all.is_empty() {
                ui.label(RichText::new("No match. Try fewer words.").color(desk.theme.ink_quiet));
            }
            ui.spacing_mut().item_spacing.y = 0.0;
            let mut clicked = None;
            for (at, found) in all.iter().enumerate() {
                let response = row(ui, desk, found, at == self.at);
                if at == self.at && has_moved {
                    response.scroll_to_me(None);
                }
                if response.clicked() {
                    clicked = Some(at);
                }
            }
            clicked
        });
        shown.inner
    }
}

/// What was found, with what it is below, its keys at the right.
fn row(ui: &mut Ui, desk: &Desk<'_>, found: &Found, is_chosen: bool) -> egui::Response {
    let theme = desk.theme;
    let right = ui.painter().layout_no_wrap(found.right.clone(), theme.font(Text::Small), theme.ink_quiet);
    let room = ui.available_width() - right.size().x - 3.0 * space::GAP;
    let ink = if found.can { theme.ink } else { theme.ink_quiet };
    let label = line::lay(ui, &found.label, theme.font(Text::Body), ink, room);
    let detail = line::lay(ui, &found.detail, theme.font(Text::Small), theme.ink_quiet, room);
    let size = vec2(ui.available_width(), label.size().y + detail.size().y + 2.0 * space::TIGHT);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let spoken = format!("{}: {}", found.label, found.detail);
    response.widget_info(|| WidgetInfo::selected(Role::Button, found.can, is_chosen, &spoken));
    if is_chosen || response.hovered() {
        ui.painter().rect_filled(rect, space::CORNER, if is_chosen { theme.chosen } else { theme.panel_raised });
    }
    let place = rect.min + vec2(space::GAP, space::TIGHT);
    let below = place + vec2(0.0, label.size().y);
    let at_right = rect.right_top() + vec2(-right.size().x - space::GAP, space::TIGHT);
    ui.painter().galley(place, label, ink);
    ui.painter().galley(below, detail, theme.ink_quiet);
    ui.painter().galley(at_right, right, theme.ink_quiet);
    response
}

/// What is done about it.
fn requests(desk: &Desk<'_>, what: &What) -> Vec<Request> {
    let mut all = vec![Request::CloseDialog];
    if desk.steel.is_open() && matches!(what, What::Part(..) | What::Finding(_)) {
        all.push(Request::Run(Command::ShowSteel));
    }
    match what {
        What::Command(command) => all.push(Request::Run(*command)),
        What::Part(bar, segment) => all.push(Request::Select(*bar, Some(*segment))),
        What::Finding(at) => all.extend(told(desk).get(*at).map(|told| told.show())),
        What::Page(page) => all.push(Request::ShowPage(*page)),
    }
    all
}

/// Everything that has all of the words, what begins with them first.
fn found(ctx: &Context, desk: &Desk<'_>, words: &str) -> Vec<Found> {
    let words = words.trim().to_lowercase();
    let parts: Vec<&str> = words.split_whitespace().collect();
    let all = commands(ctx, desk).into_iter().chain(parts_of(desk)).chain(findings(desk)).chain(handbook(&parts));
    let has_all = |found: &Found| {
        let text = format!("{} {}", found.label, found.detail).to_lowercase();
        matches!(found.what, What::Page(_)) || parts.iter().all(|word| text.contains(word))
    };
    let mut all: Vec<Found> = all.filter(has_all).collect();
    all.sort_by_key(|found| !found.label.to_lowercase().starts_with(&words));
    all.truncate(MOST);
    all
}

fn commands(ctx: &Context, desk: &Desk<'_>) -> Vec<Found> {
    let rows = GROUPS.iter().flat_map(|(group, rows)| rows.iter().map(move |row| (group, row)));
    let found = |(group, row): (&&str, &crate::commands::Row)| Found {
        what: What::Command(row.command),
        label: row.text.trim_end_matches('…').to_owned(),
        detail: format!("{group}: {}", row.tip),
        right: keys_text(ctx, row.command),
        can: row.command.may_be_used(desk),
    };
    rows.map(found).collect()
}

fn parts_of(desk: &Desk<'_>) -> Vec<Found> {
    let bars = desk.document.plan().bars.iter().enumerate();
    let of = |(at, bar): (usize, &fh_core::plan::Bar)| {
        let found = |segment: usize| Found {
            what: What::Part(at, segment),
            label: segment_name(bar, segment),
            detail: format!("part of {}", short_name(&bar.name)),
            right: String::new(),
            can: true,
        };
        (0..bar.segments.len()).map(found).collect::<Vec<_>>()
    };
    bars.flat_map(of).collect()
}

fn findings(desk: &Desk<'_>) -> Vec<Found> {
    let found = |(at, told): (usize, &crate::state::Told<'_>)| Found {
        what: What::Finding(at),
        label: told.finding().message.clone(),
        detail: format!("finding, {}", told.place(desk).unwrap_or_default()),
        right: String::new(),
        can: true,
    };
    told(desk).iter().enumerate().map(found).collect()
}

/// The pages of the handbook that have all of the words; none where nothing is looked for.
fn handbook(words: &[&str]) -> Vec<Found> {
    let found = |at: usize| Found {
        what: What::Page(at),
        label: pages::title(at).to_owned(),
        detail: "page of the handbook".to_owned(),
        right: String::new(),
        can: true,
    };
    if words.is_empty() { Vec::new() } else { pages::with(words).into_iter().map(found).collect() }
}
