//! The pages of what is about to be printed. They are drawn beside the window and are what the file is written from.

use crate::state::Desk;
use crate::state::steel::Aside;
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::page;
use egui::{Context, CursorIcon, Key, Rect, RichText, Role, ScrollArea, Sense, Ui, WidgetInfo, vec2};
use fh_print::drawing::Drawing;
use std::sync::Arc;

/// How far a page that is shown larger is enlarged over the width that there is.
const LARGER: f32 = 1.6;

/// The width of a dialog with pages, in points at normal text size.
pub(super) const WIDTH: f32 = dialog::PAGES;
/// The least width at which choices and pages stand beside each other, and that of the choices then, at normal text size.
const SIDE_BY_SIDE: f32 = 720.0;
const CHOICES: f32 = 390.0;
/// What head and buttons of the dialog and the line over the page take of the window's height, at normal text size.
const ROUND_ABOUT: f32 = 262.0;
/// The least height of a page, and that of one below the choices.
const LEAST: f32 = 200.0;
const BELOW: f32 = 420.0;

/// The pages of something that is printed with choices `K`.
pub(crate) struct Preview<K> {
    of: Option<K>,
    aside: Aside<Drawing>,
    drawing: Option<(K, Arc<Drawing>)>,
    at: usize,
    is_large: bool,
}

impl<K> Default for Preview<K> {
    fn default() -> Self {
        Self { of: None, aside: Aside::default(), drawing: None, at: 0, is_large: false }
    }
}

impl<K: Clone + PartialEq> Preview<K> {
    /// Hears what was drawn. Where other choices are made, what is printed with them is to be drawn.
    pub(crate) fn hear(&mut self, choices: &K) -> bool {
        if let (Some(drawing), Some(of)) = (self.aside.news().into_iter().last(), &self.of) {
            self.drawing = Some((of.clone(), Arc::new(drawing)));
        }
        self.of.as_ref() != Some(choices)
    }

    /// Begins to draw what is printed with these choices.
    pub(crate) fn begin(&mut self, ctx: &Context, choices: K, draw: impl FnOnce() -> Drawing + Send + 'static) {
        self.of = Some(choices);
        self.aside.begin(ctx, move |goes_on, tell| {
            if goes_on() {
                tell(draw());
            }
        });
    }

    /// The pages, where they are drawn with just these choices.
    pub(crate) fn drawing(&self, choices: &K) -> Option<&Arc<Drawing>> {
        self.drawing.as_ref().filter(|(of, _)| of == choices).map(|(_, drawing)| drawing)
    }

    /// Shows the choices, and the pages that follow from them beside; below where there is no room, alone where one is larger.
    pub(super) fn beside(&mut self, ui: &mut Ui, desk: &Desk<'_>, choices: impl FnOnce(&mut Ui)) {
        let theme = desk.theme;
        let most = (ui.ctx().content_rect().height() - theme.scaled(ROUND_ABOUT)).max(theme.scaled(LEAST));
        if self.is_large {
            self.show(ui, desk, most);
        } else if ui.available_width() < theme.scaled(SIDE_BY_SIDE) {
            choices(ui);
            ui.add_space(space::GROUP);
            self.show(ui, desk, most.min(theme.scaled(BELOW)));
        } else {
            ui.horizontal_top(|ui| {
                ui.vertical(|ui| {
                    ui.set_width(theme.scaled(CHOICES));
                    choices(ui);
                });
                ui.add_space(space::GROUP);
                ui.vertical(|ui| self.show(ui, desk, most));
            });
        }
    }

    /// Shows a page, how many there are, and buttons to turn them. It takes the same room whatever is on it, so that nothing
    /// moves under the pointer when the pages are there.
    fn show(&mut self, ui: &mut Ui, desk: &Desk<'_>, most: f32) {
        let drawing = self.drawing.as_ref().map(|(_, drawing)| Arc::clone(drawing));
        let count = drawing.as_ref().map(|drawing| drawing.pages.len());
        self.at = self.at.min(count.unwrap_or(0).saturating_sub(1));
        self.turn(ui, desk, count);
        ui.add_space(space::TIGHT);
        let room = vec2(ui.available_width(), most);
        ui.allocate_ui(room, |ui| {
            ui.set_min_size(room);
            let Some(drawing) = drawing else { return };
            let Some(page) = drawing.pages.get(self.at) else { return };
            let (wide, high) = drawing.size_mm(page);
            let size = vec2(wide as f32, high as f32);
            if self.is_large {
                let area = ScrollArea::both().max_height(room.y).auto_shrink([false, false]);
                let larger = size * (room.x * LARGER / size.x);
                area.id_salt(("page", self.at)).show(ui, |ui| self.page(ui, &drawing, larger));
            } else {
                self.page(ui, &drawing, size * (room.x / size.x).min(room.y / size.y));
            }
        });
    }

    fn turn(&mut self, ui: &mut Ui, desk: &Desk<'_>, known: Option<usize>) {
        let count = known.unwrap_or(0);
        let keys = ui.input(|input| (input.key_pressed(Key::PageUp), input.key_pressed(Key::PageDown)));
        ui.horizontal_wrapped(|ui| {
            let back = ui.add_enabled(self.at > 0, egui::Button::new("Page before"));
            let on = ui.add_enabled(self.at + 1 < count, egui::Button::new("Page after"));
            if (back.on_hover_text("Page Up").clicked() || keys.0) && self.at > 0 {
                self.at -= 1;
            }
            if (on.on_hover_text("Page Down").clicked() || keys.1) && self.at + 1 < count {
                self.at += 1;
            }
            let words = match known {
                None => "Drawing the pages…".to_owned(),
                Some(0) => "Nothing to print".to_owned(),
                Some(1) => "1 page".to_owned(),
                Some(_) => format!("Page {} of {count}", self.at + 1),
            };
            ui.label(RichText::new(words).text_style(Text::Strong.style()).color(desk.theme.ink));
            let larger = if self.is_large { "Smaller" } else { "Larger" };
            if count > 0 && ui.button(larger).clicked() {
                self.is_large = !self.is_large;
            }
        });
    }

    /// The page itself; a click shows it larger, or small again.
    fn page(&mut self, ui: &mut Ui, drawing: &Drawing, size: egui::Vec2) {
        let (place, response) = ui.allocate_exact_size(size.floor(), Sense::click());
        let name = format!("Page {} of {}", self.at + 1, drawing.pages.len());
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, name.clone()));
        if let Some(page) = drawing.pages.get(self.at).filter(|_| ui.is_rect_visible(place)) {
            let rect = Rect::from_min_size(place.min, size.floor());
            page::paint(ui.painter(), page, drawing.size_mm(page).0, rect);
        }
        let icon = if self.is_large { CursorIcon::ZoomOut } else { CursorIcon::ZoomIn };
        if response.on_hover_cursor(icon).clicked() {
            self.is_large = !self.is_large;
        }
    }
}
