//! The foot of the window: what to cut and what it weighs, and what was found. Always in sight.

use crate::figures;
use crate::state::{Desk, Focus, Request, Told, counted, told};
use crate::theme::{Text, space};
use crate::widgets::severity_sign::count_words;
use egui::text::LayoutJob;
use egui::{Button, RichText, TextFormat, Ui};
use fh_core::balance::totals;
use fh_core::findings::NONE_FOUND;
use fh_core::plan::{Plan, PlanUnit};
use fh_measure::{LengthUnit, RoundedLength, format_decimal};

/// From how far off a rounded length is said to be rounded, in mm.
const LEAST_OFF_MM: f64 = 0.05;
/// The most letters of a bar's name.
const NAME: usize = 18;

/// Shows the figures of what is selected: of the whole plan, or of a bar.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = space::GROUP;
        // Where steel is shown, the list of findings is not.
        if !desk.steel.is_open() {
            findings_button(ui, desk, out);
        }
        let plan = desk.document.plan();
        let is_whole = desk.selection.focus == Focus::Plan && !desk.order_open();
        let has_more = plan.bars.len() > 1 || plan.bars.iter().any(|bar| bar.pieces() > 1);
        if is_whole && has_more { figures_of_plan(ui, desk) } else { figures_of_bar(ui, desk) }
    });
}

/// All bars, each as often as it is made.
fn figures_of_plan(ui: &mut Ui, desk: &Desk<'_>) {
    let plan = desk.document.plan();
    let unit = plan.units.length;
    let all = totals(plan, desk.document.balance());
    let bars = if plan.bars.len() == 1 { "1 bar".to_owned() } else { format!("{} bars", plan.bars.len()) };
    cell(ui, desk, "Whole plan", &bars, None);
    let cut = plan.units.marks.round_up(figures::mm(all.cut_length)).text();
    let beside =
        (unit == PlanUnit::Inch).then(|| format_decimal(figures::mm(all.cut_length), LengthUnit::Millimeter, 0));
    cell(ui, desk, "Cut, in all", &cut, beside);
    cell(ui, desk, "Bars weigh, in all", &figures::mass(all.stock_mass, unit), None);
    cell(ui, desk, "Pieces weigh, in all", &figures::mass(all.finished_mass, unit), None);
    cell(ui, desk, "Pieces, in all", &all.pieces.to_string(), None);
    cell(ui, desk, "Largest mark error", &figures::in_millimeters(all.largest_rounding_error), None);
}

/// One bar; where the plan has more of them, or more are made of it, that is said.
fn figures_of_bar(ui: &mut Ui, desk: &Desk<'_>) {
    let plan = desk.document.plan();
    let index = desk.selection.bar;
    let (Some(bar), Some(balance)) = (plan.bars.get(index), desk.document.balance().bars.get(index)) else { return };
    if plan.bars.len() > 1 {
        let which = format!("Bar {} of {}", index + 1, plan.bars.len());
        let name = if bar.name.trim().is_empty() { "no name".to_owned() } else { shortened(&bar.name) };
        cell(ui, desk, &which, &name, None);
    }
    let each = if bar.pieces() > 1 { ", each" } else { "" };
    let unit = plan.units.length;
    match &bar.length {
        None => {
            let spread = desk.document.spread().bar(index);
            let between = spread.and_then(|spread| figures::between(spread.stock_length, plan.units.marks));
            let shop = balance.cut_length_shop(plan.units.marks);
            let beside = between.or_else(|| beside(plan, shop, figures::mm(balance.stock_length)));
            cell(ui, desk, &format!("Cut length{each}"), &shop.text(), beside);
        }
        Some(length) => {
            let needs = plan.units.marks.round_up(figures::mm(balance.last_mark())).text();
            cell(ui, desk, &format!("Bar as cut{each}"), length.text(), Some(format!("needs {needs}")));
        }
    }
    cell(ui, desk, &format!("Bar weighs{each}"), &figures::mass(balance.stock_mass, unit), None);
    cell(ui, desk, &format!("Piece weighs{each}"), &figures::mass(balance.finished_mass, unit), None);
    cell(ui, desk, "Pieces", &bar.pieces().to_string(), None);
    cell(ui, desk, "Largest mark error", &figures::in_millimeters(balance.largest_rounding_error), None);
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
fn cell(ui: &mut Ui, desk: &Desk<'_>, name: &str, figure: &str, beside: Option<String>) {
    let theme = desk.theme;
    ui.vertical(|ui| {
        ui.spacing_mut().item_spacing.y = 0.0;
        // Never letter under letter at the edge of the window.
        let name = RichText::new(name).text_style(Text::Small.style()).color(theme.ink_quiet);
        ui.add(egui::Label::new(name).extend());
        let mut words = LayoutJob::default();
        words.append(figure, 0.0, TextFormat::simple(theme.font(Text::Figure), theme.ink));
        if let Some(beside) = beside {
            words.append(&beside, space::GAP, TextFormat::simple(theme.font(Text::Body), theme.ink_quiet));
        }
        words.wrap.max_width = f32::INFINITY;
        ui.add(egui::Label::new(words).extend());
    });
}

/// The button that opens the list of findings: how many there are, in words.
fn findings_button(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let open = desk.findings_open;
    let words = says(&told(desk));
    let arrow = if open { "▼" } else { "▲" };
    let tip = if open { "Close the list." } else { "Open the list." };
    let response = ui.add(Button::new(format!("{words} {arrow}"))).on_hover_text(tip);
    if response.clicked() {
        out.push(Request::ShowFindings(!open));
    }
    response.accessible_name(words);
}

/// What the list of findings is called, and how many it has: `What the craft says: 1 stop, 3 warnings`.
pub(crate) fn says(all: &[Told<'_>]) -> String {
    let counts: Vec<String> = counted(all).into_iter().map(|(severity, count)| count_words(count, severity)).collect();
    let words = if counts.is_empty() { NONE_FOUND.to_owned() } else { counts.join(", ") };
    format!("What the craft says: {words}")
}
