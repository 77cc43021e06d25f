//! The handbook, offline: its pages at the left, searched by any word, the chosen one beside them.

pub(crate) mod pages;
mod reading;

use super::frame::{Frame, main_button, other_button};
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use egui::{Button, Context, Label, RichText, ScrollArea, TextEdit, Ui, vec2};
use pages::PAGES;
use reading::{Block, Span, blocks};

/// The width of the list of pages, and what head and buttons take of the height, in points at normal text size.
const LIST: f32 = 250.0;
const ROUND_ABOUT: f32 = 214.0;
const LEAST: f32 = 160.0;

/// The handbook, at a page.
pub(crate) struct Handbook {
    at: usize,
    before: Vec<usize>,
    words: String,
    met: bool,
    blocks: Vec<Block>,
}

impl Handbook {
    /// Opens a page.
    pub(crate) fn at(page: usize) -> Self {
        let at = page.min(PAGES.len() - 1);
        Self { at, before: Vec::new(), words: String::new(), met: false, blocks: read(at) }
    }

    fn turn_to(&mut self, page: usize) {
        if page != self.at {
            self.before.push(self.at);
            (self.at, self.blocks) = (page, read(page));
        }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let height = (ctx.content_rect().height() - desk.theme.scaled(ROUND_ABOUT)).max(desk.theme.scaled(LEAST));
        let mut wanted = None;
        let can_go_back = !self.before.is_empty();
        let mut back = false;
        let frame = Frame { title: "Handbook", width: dialog::PAGES };
        let contents = |ui: &mut Ui, _: &mut Vec<Request>| {
            ui.horizontal_top(|ui| {
                ui.vertical(|ui| {
                    ui.set_width(desk.theme.scaled(LIST).min(ui.available_width() * 0.35));
                    wanted = self.list(ui, desk, height);
                });
                ui.add_space(space::GAP);
                ui.vertical(|ui| wanted = self.page(ui, desk, height).or(wanted));
            });
        };
        frame.show(ctx, desk, out, contents, |ui, out, ()| {
            if main_button(ui, desk.theme, "Close", true) {
                out.push(Request::CloseDialog);
            }
            ui.add_enabled_ui(can_go_back, |ui| back = other_button(ui, "Page before"));
        });
        if back && let Some(page) = self.before.pop() {
            (self.at, self.blocks) = (page, read(page));
        }
        if let Some(page) = wanted {
            self.turn_to(page);
        }
    }

    /// The pages that have the words; which was clicked.
    fn list(&mut self, ui: &mut Ui, desk: &Desk<'_>, height: f32) -> Option<usize> {
        let field = TextEdit::singleline(&mut self.words).desired_width(f32::INFINITY).hint_text("find a word");
        let response = ui.add(field).accessible_name("Words in the handbook");
        if !std::mem::replace(&mut self.met, true) {
            response.request_focus();
        }
        let words = self.words.to_lowercase();
        let found = pages::with(&words.split_whitespace().collect::<Vec<_>>());
        let mut clicked = None;
        let area = ScrollArea::vertical().id_salt("pages").auto_shrink([false, false]);
        let height = (height - desk.theme.scaled(space::TARGET) - space::GAP).max(desk.theme.scaled(LEAST));
        area.max_height(height).min_scrolled_height(height).show(ui, |ui| {
            if found.is_empty() {
                ui.label(RichText::new("No page has all of these words.").color(desk.theme.ink_quiet));
            }
            for page in found {
                let is_below = PAGES.get(page).is_some_and(|page| page.file.contains('/'));
                let words = if is_below { format!("   {}", pages::title(page)) } else { pages::title(page).to_owned() };
                let button = Button::new(words).frame(page == self.at).selected(page == self.at).truncate();
                let size = vec2(ui.available_width(), desk.theme.scaled(space::TARGET));
                let size_left =
                    ui.allocate_ui_with_layout(size, egui::Layout::left_to_right(egui::Align::Center), |ui| {
                        ui.add(button).accessible_name(pages::title(page)).clicked()
                    });
                if size_left.inner {
                    clicked = Some(page);
                }
            }
        });
        clicked
    }

    /// The page; where a link leads that was clicked.
    fn page(&self, ui: &mut Ui, desk: &Desk<'_>, height: f32) -> Option<usize> {
        let mut link = None;
        let area = ScrollArea::vertical().id_salt(("page", self.at)).auto_shrink([false, false]);
        area.max_height(height).min_scrolled_height(height).show(ui, |ui| {
            ui.set_width((ui.available_width() - space::GROUP).max(0.0));
            // Lines of words are as high as their words, the first of them too.
            ui.spacing_mut().interact_size.y = 0.0;
            ui.spacing_mut().item_spacing.y = space::GAP;
            for (at, block) in self.blocks.iter().enumerate() {
                ui.push_id(at, |ui| block_shown(ui, desk, block, &mut link));
            }
        });
        link.and_then(|link: String| pages::linked(self.at, &link))
    }
}

fn read(page: usize) -> Vec<Block> {
    blocks(PAGES.get(page).map_or("", |page| page.text))
}

fn block_shown(ui: &mut Ui, desk: &Desk<'_>, block: &Block, link: &mut Option<String>) {
    match block {
        Block::Heading(level, words) => {
            let style = if *level == 1 { Text::Title } else { Text::Heading };
            ui.add_space(if *level == 1 { 0.0 } else { space::GAP });
            ui.label(RichText::new(words).text_style(style.style()).color(desk.theme.ink));
        }
        Block::Words(spans) => words(ui, desk, spans, false, link),
        Block::Item(spans) => {
            ui.horizontal_top(|ui| {
                ui.label("•");
                ui.vertical(|ui| words(ui, desk, spans, false, link));
            });
        }
        Block::Table(rows) => table(ui, desk, rows, link),
        Block::Code(text) => {
            egui::Frame::new().fill(desk.theme.panel_raised).inner_margin(space::GAP).show(ui, |ui| {
                ui.add(Label::new(RichText::new(text).monospace()).wrap());
            });
        }
    }
    if !matches!(block, Block::Item(_)) {
        ui.add_space(space::TIGHT);
    }
}

/// Words that wrap; those that lead to a page can be clicked.
fn words(ui: &mut Ui, desk: &Desk<'_>, spans: &[Span], is_head: bool, link: &mut Option<String>) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 0.0;
        for span in spans {
            let mut text =
                RichText::new(&span.words).color(if is_head { desk.theme.ink_quiet } else { desk.theme.ink });
            if span.is_code {
                text = text.monospace();
            } else if span.is_strong {
                text = text.text_style(Text::Strong.style());
            } else if is_head {
                text = text.text_style(Text::Small.style());
            }
            match &span.link {
                Some(to) => {
                    if ui.link(text.color(desk.theme.note)).clicked() {
                        *link = Some(to.clone());
                    }
                }
                None => {
                    ui.label(text);
                }
            }
        }
    });
}

/// A table: columns as wide as what stands in them asks for, each cell wrapped.
fn table(ui: &mut Ui, desk: &Desk<'_>, rows: &[Vec<Vec<Span>>], link: &mut Option<String>) {
    let count = rows.iter().map(Vec::len).max().unwrap_or(0);
    let long = |cell: &Vec<Span>| cell.iter().map(|span| span.words.chars().count()).sum::<usize>();
    let wants = |column: usize| {
        let most = rows.iter().filter_map(|row| row.get(column)).map(long).max().unwrap_or(0);
        most.clamp(6, 60) as f32
    };
    let shares: Vec<f32> = (0..count).map(wants).collect();
    let room = ui.available_width() - space::GROUP * count.saturating_sub(1) as f32;
    let all: f32 = shares.iter().sum::<f32>().max(1.0);
    for (at, row) in rows.iter().enumerate() {
        ui.horizontal_top(|ui| {
            ui.spacing_mut().item_spacing.x = space::GROUP;
            for (cell, share) in row.iter().zip(&shares) {
                let wide = (room * share / all).floor().max(1.0);
                ui.allocate_ui_with_layout(vec2(wide, 0.0), egui::Layout::top_down(egui::Align::Min), |ui| {
                    ui.set_width(wide);
                    words(ui, desk, cell, at == 0, link);
                });
            }
        });
        let (line, _) = ui.allocate_exact_size(vec2(ui.available_width(), 1.0), egui::Sense::hover());
        ui.painter().hline(line.x_range(), line.center().y, (desk.theme.hairline(), desk.theme.rule));
    }
}
