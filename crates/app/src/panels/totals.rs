//! The foot of the window: what to cut and what it weighs, and what was found. Always in sight.

use crate::figures;
use crate::state::{Desk, Focus, Request, Told, by_severity, told};
use crate::theme::{Text, space};
use crate::widgets::severity_sign::count_words;
use egui::text::LayoutJob;
use egui::{Button, RichText, TextFormat, Ui};
use fh_core::balance::totals;
use fh_core::findings::NONE_FOUND;
use fh_core::plan::{Plan, PlanUnit};
use fh_measure::{LengthUnit, RoundedLength, counted, format_decimal};

/// From how far off a rounded length is said to be rounded, in mm.
const LEAST_OFF_MM: f64 = 0.05;
/// What the button says where nothing is found and there is no room for all of it.
const NONE: &str = "No findings";
/// The most letters of a bar's name.
const NAME: usize = 18;

/// Shows the figures of what is selected: of the whole plan, or of a bar.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let plan = desk.document.plan();
    let is_whole = desk.selection.focus == Focus::Plan && !desk.order_open();
    let has_more = plan.bars.len() > 1 || plan.bars.iter().any(|bar| bar.pieces() > 1);
    let cells = if is_whole && has_more { figures_of_plan(desk) } else { figures_of_bar(desk) };
    let room = ui.available_width();
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = space::GROUP;
        // Where steel is shown, the list of findings is not.
        if !desk.steel.is_open() {
            findings_button(ui, desk, room - width(ui, desk, &cells, false), out);
        }
        let left = ui.max_rect().right() - ui.cursor().left();
        let has_room = width(ui, desk, &cells, true) <= left;
        cells.iter().for_each(|cell| cell.show(ui, desk, has_room));
    });
}

/// All bars, each as often as it is made.
fn figures_of_plan(desk: &Desk<'_>) -> Vec<Cell> {
    let plan = desk.document.plan();
    let unit = plan.units.length;
    let all = totals(plan, desk.document.balance());
    let bars = counted(plan.bars.len(), "bar");
    let cut = plan.units.marks.round_up(figures::mm(all.cut_length)).text();
    let beside =
        (unit == PlanUnit::Inch).then(|| format_decimal(figures::mm(all.cut_length), LengthUnit::Millimeter, 0));
    vec![
        Cell::new("Whole plan", &bars),
        Cell { beside, ..Cell::new("Cut, in all", &cut) },
        Cell::new("Bars weigh, in all", &figures::mass(all.stock_mass, unit)),
        Cell::new("Pieces weigh, in all", &figures::mass(all.finished_mass, unit)),
        Cell::new("Pieces, in all", &all.pieces.to_string()),
        Cell::new("Largest mark error", &figures::in_millimeters(all.largest_rounding_error)),
    ]
}

/// One bar; where the plan has more of them, or more are made of it, that is said.
fn figures_of_bar(desk: &Desk<'_>) -> Vec<Cell> {
    let plan = desk.document.plan();
    let index = desk.selection.bar;
    let (Some(bar), Some(balance)) = (plan.bars.get(index), desk.document.balance().bars.get(index)) else {
        return Vec::new();
    };
    let mut cells = Vec::new();
    if plan.bars.len() > 1 {
        let which = format!("Bar {} of {}", index + 1, plan.bars.len());
        let name = if bar.name.trim().is_empty() { "no name".to_owned() } else { shortened(&bar.name) };
        cells.push(Cell::new(&which, &name));
    }
    let each = if bar.pieces() > 1 { ", each" } else { "" };
    let unit = plan.units.length;
    match &bar.length {
        None => {
            let spread = desk.document.spread().bar(index);
            let between = spread.and_then(|spread| spread.stock_length.words(plan.units.marks));
            let shop = balance.cut_length_shop(plan.units.marks);
            let beside = between.or_else(|| beside(plan, shop, figures::mm(balance.stock_length)));
            cells.push(Cell { beside, ..Cell::new(&format!("Cut length{each}"), &shop.text()) });
        }
        Some(length) => {
            let needs = plan.units.marks.round_up(figures::mm(balance.last_mark())).text();
            let beside = Some(format!("needs {needs}"));
            cells.push(Cell { beside, ..Cell::new(&format!("Bar as cut{each}"), length.text()) });
        }
    }
    cells.extend([
        Cell::new(&format!("Bar weighs{each}"), &figures::mass(balance.stock_mass, unit)),
        Cell::new(&format!("Piece weighs{each}"), &figures::mass(balance.finished_mass, unit)),
        Cell::new("Pieces", &bar.pieces().to_string()),
        Cell::new("Largest mark error", &figures::in_millimeters(balance.largest_rounding_error)),
    ]);
    cells
}

/// A name with as many letters as there is room for beside the figures.
fn shortened(name: &str) -> String {
    let name = name.trim();
    if name.chars().count() <= NAME { name.to_owned() } else { name.chars().take(NAME - 1).chain(['…']).collect() }
}

/// What stands beside the length to cut: that it is rounded up, and from what; millimetres where it is in inches.
fn beside(plan: &Plan, shop: RoundedLength, mm: f64) -> Option<String> {
    let exact = format_decimal(mm, LengthUnit::Millimeter, 1);
    if shop.mm() - mm >= LEAST_OFF_MM {
        return Some(format!("rounded up from {exact}"));
    }
    (plan.units.length == PlanUnit::Inch).then_some(exact)
}

/// A figure under its name.
struct Cell {
    name: String,
    figure: String,
    /// What stands beside the figure; where there is no room for all of it, at the pointer.
    beside: Option<String>,
}

impl Cell {
    fn new(name: &str, figure: &str) -> Self {
        Self { name: name.to_owned(), figure: figure.to_owned(), beside: None }
    }

    fn words(&self, desk: &Desk<'_>, has_room: bool) -> LayoutJob {
        let theme = desk.theme;
        let mut words = LayoutJob::default();
        words.append(&self.figure, 0.0, TextFormat::simple(theme.font(Text::Figure), theme.ink));
        if let Some(beside) = self.beside.as_ref().filter(|_| has_room) {
            words.append(beside, space::GAP, TextFormat::simple(theme.font(Text::Body), theme.ink_quiet));
        }
        words.wrap.max_width = f32::INFINITY;
        words
    }

    fn show(&self, ui: &mut Ui, desk: &Desk<'_>, has_room: bool) {
        ui.vertical(|ui| {
            ui.spacing_mut().item_spacing.y = 0.0;
            // Never letter under letter at the edge of the window.
            let name = RichText::new(&self.name).text_style(Text::Small.style()).color(desk.theme.ink_quiet);
            ui.add(egui::Label::new(name).extend());
            let figure = ui.add(egui::Label::new(self.words(desk, has_room)).extend());
            if let Some(beside) = self.beside.as_ref().filter(|_| !has_room) {
                figure.on_hover_text(beside);
            }
        });
    }
}

/// How wide all the figures are, with what stands beside them or without it.
fn width(ui: &Ui, desk: &Desk<'_>, cells: &[Cell], with_beside: bool) -> f32 {
    let wide = |cell: &Cell| {
        let name = ui.painter().layout_no_wrap(cell.name.clone(), desk.theme.font(Text::Small), desk.theme.ink);
        ui.painter().layout_job(cell.words(desk, with_beside)).size().x.max(name.size().x)
    };
    let gaps = space::GROUP * cells.len().saturating_sub(1) as f32;
    cells.iter().map(wide).sum::<f32>() + gaps
}

/// The button that opens the list of findings: how many there are, in words; only how many where there is no room for all.
fn findings_button(ui: &mut Ui, desk: &Desk<'_>, room: f32, out: &mut Vec<Request>) {
    let open = desk.findings_open;
    let all = told(desk);
    let words = says(&all);
    let arrow = if open { "▼" } else { "▲" };
    let tip = if open { "Close the list." } else { "Open the list." };
    let font = desk.theme.font(Text::Body);
    let full = ui.painter().layout_no_wrap(format!("{words} {arrow}"), font, desk.theme.ink).size().x;
    let fits = full + 2.0 * ui.spacing().button_padding.x + space::GROUP <= room;
    let shown = if fits { words.clone() } else { counts(&all).unwrap_or_else(|| NONE.to_owned()) };
    let response = ui.add(Button::new(format!("{shown} {arrow}")));
    let response = if fits { response.on_hover_text(tip) } else { response.on_hover_text(format!("{words} {tip}")) };
    if response.clicked() {
        out.push(Request::ShowFindings(!open));
    }
    response.accessible_name(words);
}

/// How many findings of each weight there are: `1 stop, 3 warnings`; none where there are none.
fn counts(all: &[Told<'_>]) -> Option<String> {
    let counts: Vec<String> =
        by_severity(all).into_iter().map(|(severity, count)| count_words(count, severity)).collect();
    (!counts.is_empty()).then(|| counts.join(", "))
}

/// What the list of findings is called, and how many it has: `Findings: 1 stop, 3 warnings`.
pub(crate) fn says(all: &[Told<'_>]) -> String {
    counts(all).map_or_else(|| NONE_FOUND.to_owned(), |counts| format!("Findings: {counts}"))
}
