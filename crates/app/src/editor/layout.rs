//! The layout of the window: what stands where, and how it gives way to large text and small windows.

use super::Editor;
use crate::canvas::{AfterStep, Scene};
use crate::dialogs::Spots;
use crate::panels::area_plot::Curve;
use crate::panels::{area_plot, empty_bar, findings, inspector, menu_bar, parts_list, strips_bar, totals};
use crate::state::{Request, told};
use crate::theme::Theme;
use crate::widgets::menu_of_part;
use crate::{order, piece_view, steel};
use egui::{Frame, Margin, Panel, Rect, ScrollArea, Ui};

/// First widths and heights, in points at normal text size.
const LIST: f32 = 264.0;
const ORDER: f32 = 324.0;
const INSPECTOR: f32 = 304.0;
const PLOT: f32 = 132.0;
const FINDINGS: f32 = 124.0;
const PIECE: f32 = 236.0;
/// The height between the bars at the top and the foot from which the view of the piece is open unless it was closed.
const LEAST_HEIGHT_WITH_PIECE: f32 = 430.0;
/// The share of that height that the view of the piece takes at most at first, so that the strips have the rest.
const MOST_FOR_PIECE: f32 = 0.52;
/// Its height where a picture lies under the piece to be traced, as long as the strips keep this much.
const PIECE_ON_PICTURE: f32 = 420.0;
const STRIPS_BESIDE_PICTURE: f32 = 356.0;
/// The height between the bars at the top and the foot from which the plot is open unless it was closed.
const LEAST_HEIGHT_WITH_PLOT: f32 = 440.0;
/// The height of the window from which the list of findings is open unless it was closed.
const LEAST_HEIGHT_WITH_FINDINGS: f32 = 500.0;
/// The height of the strips from which their own line of buttons stands beside that of the order of work.
const LEAST_HEIGHT_WITH_BARS: f32 = 300.0;
/// The width of the window below which it squeezes its side panels.
const LEAST_WIDTH: f32 = 640.0;
/// The share of the window that side panels may take at most, so that large text leaves room for the strips.
const MOST_OF_WIDTH: f32 = 0.27;
const MOST_OF_HEIGHT: f32 = 0.24;

impl Editor {
    /// Shows the whole editor.
    pub fn show(&mut self, ui: &mut Ui) {
        if !self.dress(ui.ctx()) {
            return;
        }
        let ctx = ui.ctx().clone();
        let mut requests = std::mem::take(&mut self.waiting);
        self.read_events(&ctx, &mut requests);
        self.play_on(&ctx);
        self.refresh_order();
        self.refresh_findings(&ctx);
        if self.anvil.is_some() {
            self.show_anvil(ui, &ctx);
        } else {
            self.refresh_curve();
            self.refresh_steel(&ctx);
            self.show_panels(ui, &mut requests);
            self.order.revealed();
        }
        self.refresh_preview(&ctx);
        self.show_in_front(&ctx, &mut requests);
        self.apply_all(requests, &ctx);
        self.keep_work(&ctx);
        self.tell_title(&ctx);
    }

    fn refresh_curve(&mut self) {
        let now = (self.document.serial(), self.document.revision(), self.selection.bar);
        if self.curve_of == Some(now) {
            return;
        }
        self.curve_of = Some(now);
        let unit = self.document.plan().units.length;
        let bar = self.document.balance().bars.get(self.selection.bar);
        self.curve = bar.map_or_else(Curve::default, |bar| Curve::new(bar, unit));
    }

    fn show_panels(&mut self, ui: &mut Ui, out: &mut Vec<Request>) {
        let mut spots = Spots::default();
        let size = ui.available_size();
        self.has_room_for_findings = size.y > self.theme.scaled(LEAST_HEIGHT_WITH_FINDINGS);
        self.mend_squeezed(size.x);
        let sized = self.sized_for;
        let desk = self.desk();
        let theme = desk.theme;
        let side = |points: f32| theme.scaled(points).min((size.x * MOST_OF_WIDTH).round());
        spots.top =
            Panel::top("top").frame(bar_frame(theme)).show(ui, |ui| menu_bar::show(ui, &desk, out)).response.rect;
        spots.foot =
            Panel::bottom("totals").frame(bar_frame(theme)).show(ui, |ui| totals::show(ui, &desk, out)).response.rect;
        if desk.steel.is_open() {
            steel::show(ui, &desk, out);
            self.spots = spots;
            return;
        }
        if desk.findings_open && !told(&desk).is_empty() {
            let height = theme.scaled(FINDINGS).min((size.y * MOST_OF_HEIGHT).round());
            let panel = Panel::bottom("findings").resizable(false).frame(bar_frame(theme));
            let shown = panel.show(ui, |ui| findings::show(ui, &desk, height, out));
            spots.foot = spots.foot.union(shown.response.rect);
        }
        let open = desk.order_open();
        let width = if open { side(ORDER) } else { side(LIST) };
        let list = Panel::left(("parts", sized, open)).resizable(true).default_size(width).min_size(width * 0.75);
        spots.list = list.frame(list_frame(theme)).show(ui, |ui| list_panel(ui, &desk, out)).response.rect;
        let panel = Panel::right(("inspector", sized))
            .resizable(true)
            .default_size(side(INSPECTOR))
            .min_size(side(INSPECTOR) * 0.75);
        let contents = if open { order::panel::show } else { inspector::show };
        spots.inspector = panel.frame(side_frame(theme)).show(ui, |ui| contents(ui, &desk, out)).response.rect;
        self.has_room_for_piece = ui.available_height() > self.theme.scaled(LEAST_HEIGHT_WITH_PIECE);
        // The plot is of the finished bar alone.
        spots.plot = if self.settings.order_open { Rect::NOTHING } else { self.show_plot(ui, size.y, out) };
        spots.piece = self.show_piece_view(ui, out);
        spots.strips = self.show_strips(ui, out);
        self.spots = spots;
    }

    /// Panels that a tiny window squeezed are sized anew once it is large again.
    fn mend_squeezed(&mut self, width: f32) {
        let is_squeezed = width < self.theme.scaled(LEAST_WIDTH);
        if self.is_squeezed && !is_squeezed {
            self.sized_for += 1;
        }
        self.is_squeezed = is_squeezed;
    }

    /// Shows the plot, or only its head where it is closed or there is no room for both it and the strips.
    fn show_plot(&self, ui: &mut Ui, window_height: f32, out: &mut Vec<Request>) -> Rect {
        let desk = self.desk();
        let theme = desk.theme;
        let for_piece = if desk.piece_open { theme.scaled(PIECE) } else { 0.0 };
        let has_room = ui.available_height() - for_piece > theme.scaled(LEAST_HEIGHT_WITH_PLOT);
        if !desk.settings.plot_open.unwrap_or(has_room) {
            let panel = Panel::bottom("plot head").frame(bar_frame(theme));
            return panel.show(ui, |ui| area_plot::show_head(ui, &desk, false, out)).response.rect;
        }
        let height = theme.scaled(PLOT).min((window_height * MOST_OF_HEIGHT).round());
        let plot = Panel::bottom(("plot", self.sized_for)).resizable(true).default_size(height).min_size(height * 0.6);
        plot.frame(bar_frame(theme)).show(ui, |ui| area_plot::show(ui, &desk, &self.curve, out)).response.rect
    }

    /// Shows the view of the piece, or only its head where it is closed or there is no room for both it and the strips.
    fn show_piece_view(&mut self, ui: &mut Ui, out: &mut Vec<Request>) -> Rect {
        // It is taken out so that it may change while it looks at the desk.
        let mut view = std::mem::take(&mut self.piece_view);
        let mut desk = self.desk();
        desk.piece = view.state();
        let frame = bar_frame(desk.theme);
        let rect = if desk.piece_open {
            let on_picture = desk.document.plan().underlay.is_some();
            let least = desk.theme.scaled(PIECE).min((ui.available_height() * MOST_FOR_PIECE).round());
            let beside_strips = ui.available_height() - desk.theme.scaled(STRIPS_BESIDE_PICTURE);
            let most = if on_picture { desk.theme.scaled(PIECE_ON_PICTURE).max(least) } else { least };
            let height = beside_strips.round().clamp(least, most);
            let panel = Panel::bottom(("piece", self.sized_for, on_picture)).resizable(true).default_size(height);
            let panel = panel.min_size(height * 0.5).frame(Frame::new().fill(desk.theme.panel));
            let shown = panel.show(ui, |ui| {
                Panel::top("piece head").frame(frame).show(ui, |ui| piece_view::head::show(ui, &desk, out));
                view.show(ui, &desk, out);
            });
            shown.response.rect
        } else {
            let panel = Panel::bottom("piece head alone").frame(frame);
            panel.show(ui, |ui| piece_view::head::show(ui, &desk, out)).response.rect
        };
        self.piece_view = view;
        rect
    }

    fn show_strips(&mut self, ui: &mut Ui, out: &mut Vec<Request>) -> Rect {
        let desk = self.desk();
        let frame = bar_frame(desk.theme);
        let has_room = ui.available_height() > self.theme.scaled(LEAST_HEIGHT_WITH_BARS);
        if has_room || !desk.order_open() {
            Panel::top("strips bar").frame(frame).show(ui, |ui| strips_bar::show(ui, &desk, &self.said, out));
        }
        if desk.order_open() {
            let banner = Panel::top("after step").frame(Frame::new().fill(desk.theme.panel));
            banner.show(ui, |ui| order::banner::show(ui, &desk, out));
        }
        let rect = ui.available_rect_before_wrap();
        if !has_room && desk.order_open() {
            // The line that says it has no room here.
            strips_bar::float(ui, &desk, &self.said);
        }
        self.canvas.set_views(self.settings.views);
        let bar = self.selection.bar;
        let shown = self.order.desk().filter(|_| self.settings.order_open).and_then(|order| order.shown);
        let step = shown.map(|shown| AfterStep {
            number: shown.after,
            lit: shown.lit_on(bar),
            hot: shown.hot_on(bar).map(|hot| (hot.mm, hot.label.as_str())),
            room_mm: shown.longest_mm,
            room_across_mm: shown.thickest_mm.get(bar).copied().unwrap_or_default(),
        });
        let scene = Scene {
            plan: self.document.plan(),
            balance: shown.map_or(self.document.balance(), |shown| &shown.balance),
            stamp: Some([self.document.serial(), self.document.revision(), shown.map_or(0, |shown| shown.shot + 1)]),
            bar,
            selected: self.selection.segment().filter(|_| step.is_none()),
            also: if step.is_none() { &self.also } else { &[] },
            cursor_mm: self.selection.cursor_mm.filter(|_| step.is_none()),
            theme: &self.theme,
            step,
        };
        let canvas = &mut self.canvas;
        let events = egui::CentralPanel::default()
            .frame(Frame::new().fill(scene.theme.ground))
            .show(ui, |ui| canvas.show(ui, &scene));
        out.extend(events.inner.into_iter().map(Request::from));
        if step.is_none() {
            menu_of_part::over(ui, &events.response, &self.desk(), out);
        }
        let is_empty = scene.plan.bars.get(scene.bar).is_some_and(|bar| bar.segments.is_empty());
        if is_empty {
            empty_bar::show(ui, &self.desk(), rect, out);
        }
        rect
    }

    fn show_in_front(&mut self, ctx: &egui::Context, out: &mut Vec<Request>) {
        if let Some(mut dialog) = self.dialog.take() {
            dialog.show(ctx, &self.desk(), out);
            self.dialog = Some(dialog);
        } else if let Some(mut tour) = self.tour.take() {
            tour.show(ctx, &self.desk(), &self.spots, out);
            self.tour = Some(tour);
        }
    }
}

fn list_panel(ui: &mut Ui, desk: &crate::state::Desk<'_>, out: &mut Vec<Request>) {
    if desk.order_open() {
        Panel::top("order buttons")
            .frame(bar_frame(desk.theme))
            .show(ui, |ui| order::list::show_buttons(ui, desk, out));
        order::list::show(ui, desk, out);
        return;
    }
    // Over the list: under it they would move with the list of findings, and a click meant for one would meet another.
    Panel::top("parts buttons").frame(bar_frame(desk.theme)).show(ui, |ui| parts_list::show_buttons(ui, desk, out));
    ScrollArea::neither().show(ui, |ui| parts_list::show(ui, desk, out));
}

/// A panel along the top or the bottom.
fn bar_frame(theme: &Theme) -> Frame {
    framed(theme, Margin::symmetric(12, 6))
}

/// A panel at the side.
fn side_frame(theme: &Theme) -> Frame {
    framed(theme, Margin { left: 12, right: 8, top: 8, bottom: 0 })
}

/// The list, whose lines reach from edge to edge.
fn list_frame(theme: &Theme) -> Frame {
    framed(theme, Margin::ZERO)
}

fn framed(theme: &Theme, margin: Margin) -> Frame {
    Frame::new().fill(theme.panel).inner_margin(margin)
}
