//! The foot of the window: what to cut and what it weighs, and what was found. Always in sight.

use crate::figures;
use crate::order::told;
use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::severity_sign::{color, count_words, sign};
use egui::text::LayoutJob;
use egui::{Align, Button, Layout, RichText, TextFormat, Ui};
use fh_core::findings::Severity;
use fh_core::plan::{Plan, PlanUnit};
use fh_measure::{LengthUnit, format_decimal};

/// From how far off a rounded length is said to be rounded, in mm.
const LEAST_OFF_MM: f64 = 0.05;

/// Shows the totals of the selected bar.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = space::GROUP;
        figures_of_bar(ui, desk);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| findings_button(ui, desk, out));
    });
}

fn figures_of_bar(ui: &mut Ui, desk: &Desk<'_>) {
    let plan = desk.document.plan();
    let index = desk.selection.bar;
    let (Some(bar), Some(balance)) = (plan.bars.get(index), desk.document.balance().bars.get(index)) else { return };
    let unit = plan.units.length;
    let shop = plan.units.marks.round(figures::mm(balance.stock_length)).text();
    match &bar.length {
        None => {
            let spread = desk.document.spread().bar(index);
            let between = spread.and_then(|spread| figures::between(spread.stock_length, plan.units.marks));
            let beside = between.or_else(|| beside(plan, figures::mm(balance.stock_length)));
            cell(ui, desk, "Cut length", &shop, beside);
        }
        Some(_) => {
            let needs = plan.units.marks.round(figures::mm(balance.last_mark())).text();
            cell(ui, desk, "Bar as cut", &shop, Some(format!("needs {needs}")));
        }
    }
    cell(ui, desk, "Bar weighs", &figures::mass(balance.stock_mass, unit), None);
    cell(ui, desk, "Piece weighs", &figures::mass(balance.finished_mass, unit), None);
    cell(ui, desk, "Pieces", &bar.pieces().to_string(), None);
    cell(ui, desk, "Largest rounding", &figures::in_millimeters(balance.largest_rounding_error), None);
}

/// What stands beside the rounded length: millimetres, or the exact length where the rounding shows.
fn beside(plan: &Plan, mm: f64) -> Option<String> {
    let exact = format_decimal(mm, LengthUnit::Millimeter, 1);
    match plan.units.length {
        PlanUnit::Inch => Some(exact),
        PlanUnit::Millimeter => {
            let off = (plan.units.marks.round(mm).mm() - mm).abs();
            (off >= LEAST_OFF_MM).then(|| format!("exactly {exact}"))
        }
    }
}

/// A figure under its name.
fn cell(ui: &mut Ui, desk: &Desk<'_>, name: &str, figure: &str, beside: Option<String>) {
    let theme = desk.theme;
    ui.vertical(|ui| {
        ui.spacing_mut().item_spacing.y = 0.0;
        ui.label(RichText::new(name).text_style(Text::Small.style()).color(theme.ink_quiet));
        let mut words = LayoutJob::default();
        words.append(figure, 0.0, TextFormat::simple(theme.font(Text::Figure), theme.ink));
        if let Some(beside) = beside {
            words.append(&beside, space::GAP, TextFormat::simple(theme.font(Text::Body), theme.ink_quiet));
        }
        words.wrap.max_width = f32::INFINITY;
        ui.add(egui::Label::new(words).extend());
    });
}

fn findings_button(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let open = desk.findings_open;
    let (words, spoken) = summary(desk);
    let button = Button::new(words);
    let tip = if open { "Close the list of findings." } else { "Open the list of findings." };
    let response = ui.add(button).on_hover_text(tip);
    if response.clicked() {
        out.push(Request::ShowFindings(!open));
    }
    response.accessible_name(format!("Findings: {spoken}"));
}

/// How many findings there are of each severity, with their signs and in words.
fn summary(desk: &Desk<'_>) -> (LayoutJob, String) {
    let theme = desk.theme;
    let mut job = LayoutJob::default();
    let mut spoken = Vec::new();
    let all = told(desk);
    for severity in [Severity::Stop, Severity::Warning, Severity::Note] {
        let count = all.iter().filter(|told| told.finding().severity == severity).count();
        if count > 0 {
            let words = count_words(count, severity);
            let text = format!("{} {words}", sign(severity));
            let lead = if job.is_empty() { 0.0 } else { space::PAD };
            job.append(&text, lead, TextFormat::simple(theme.font(Text::Body), color(theme, severity)));
            spoken.push(words);
        }
    }
    if !spoken.is_empty() {
        let arrow = if desk.findings_open { "▼" } else { "▲" };
        job.append(arrow, space::PAD, TextFormat::simple(theme.font(Text::Small), theme.ink_quiet));
    } else {
        job.append("✓ Nothing found", 0.0, TextFormat::simple(theme.font(Text::Body), theme.ink));
        spoken.push("nothing found".to_owned());
    }
    (job, spoken.join(", "))
}
