//! Planned against actual: every logged step with what was planned, what came out, and the difference.

use super::figure::{signed, tenths};
use crate::state::{Desk, OrderDesk, log_entries, paired, step_words};
use crate::theme::{Text, Theme, space};
use egui::{Align, Label, Layout, RichText, Ui, vec2};
use fh_core::plan::{Logged, Plan, PlanUnit};
use fh_measure::format_decimal;
use fh_work::{Experience, WorkedStep};

/// The share of the width that the words have; the three figures share the rest.
const WORDS: f32 = 0.34;

/// One line of the table: what, planned, actual, difference.
type Line = [String; 4];

/// Shows the table; nothing where nothing is logged.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>) {
    let (theme, plan) = (desk.theme, desk.document.plan());
    let head = ["", "planned", "actual", "difference"].map(str::to_owned);
    line(ui, theme, &head, true);
    let mut all = paired(plan, order.worked);
    all.sort_by_key(|(entry, _)| log_entries::step_of(&order.worked.steps, entry).map_or(usize::MAX, |(at, _)| at));
    for (entry, reckoned) in all {
        let planned = order.ledger.planned_step(order.worked, entry);
        let words = RichText::new(title(order, entry)).text_style(Text::Strong.style()).color(theme.ink);
        ui.add(Label::new(words).wrap());
        for one in lines(plan, entry, planned, reckoned) {
            line(ui, theme, &one, false);
        }
        if let Some(note) = &entry.note {
            ui.label(RichText::new(note).text_style(Text::Small.style()).color(theme.ink_quiet));
        }
        ui.add_space(space::TIGHT);
    }
}

fn title(order: &OrderDesk<'_>, entry: &Logged) -> String {
    let day = entry.day.as_ref().map_or_else(String::new, |day| format!(", {day}"));
    match log_entries::step_of(&order.worked.steps, entry) {
        Some((at, step)) => format!("{}{day}", step_words(at, step)),
        None => {
            let parts = entry.parts.join(", ");
            format!("No step does this now: {} {parts}{day}", entry.operation.name())
        }
    }
}

fn lines(plan: &Plan, entry: &Logged, planned: Option<&WorkedStep>, reckoned: Option<&Experience>) -> Vec<Line> {
    let whole = |value: f64| format!("{value:.0}");
    let mut all = Vec::new();
    if let Some(heats) = entry.heats {
        all.push(compared("Heats", planned.map(|step| step.needs as f64), f64::from(heats), whole));
    }
    if let Some(minutes) = entry.minutes {
        all.push(compared("Minutes", planned.map(|step| step.minutes), minutes, tenths));
    }
    if let Some(blows) = entry.blows {
        let planned = reckoned.and_then(|one| one.blows).map(|[planned, _]| planned);
        all.push(compared("Blows", planned, f64::from(blows), whole));
    }
    for target in &entry.sizes {
        let size = planned.and_then(|step| {
            let at = log_entries::size_names(step).iter().position(|name| *name == target.what)?;
            step.sizes.get(at)?.mm
        });
        let one = compared(&target.what, size, target.size.mm(), |mm| length(plan, mm));
        all.push(one);
    }
    if let Some(kg) = entry.kg {
        all.push(["Weight".to_owned(), String::new(), format!("{kg} kg"), String::new()]);
    }
    if let Some([planned, out]) = reckoned.and_then(|one| one.scale) {
        all.push(compared("Scale", Some(planned), out, super::figure::percent));
    }
    all
}

fn compared(what: &str, planned: Option<f64>, out: f64, words: impl Fn(f64) -> String) -> Line {
    let difference = planned.map_or_else(String::new, |planned| signed(out - planned, &words));
    [what.to_owned(), planned.map_or_else(String::new, &words), words(out), difference]
}

/// A size to a tenth of a millimetre or a hundredth of an inch.
fn length(plan: &Plan, mm: f64) -> String {
    let decimals = if plan.units.length == PlanUnit::Inch { 2 } else { 1 };
    format_decimal(mm, plan.units.length.length_unit(), decimals)
}

fn line(ui: &mut Ui, theme: &Theme, line: &Line, is_head: bool) {
    let all = ui.available_width();
    let height = theme.font(Text::Body).size * 1.4;
    let (style, ink) = if is_head { (Text::Small.style(), theme.ink_quiet) } else { (Text::Body.style(), theme.ink) };
    ui.spacing_mut().item_spacing.y = 1.0;
    ui.spacing_mut().interact_size.y = height;
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 0.0;
        for (column, words) in line.iter().enumerate() {
            let first = column == 0;
            let width = if first { all * WORDS } else { all * (1.0 - WORDS) / 3.0 };
            let layout =
                if first { Layout::left_to_right(Align::Center) } else { Layout::right_to_left(Align::Center) };
            ui.allocate_ui_with_layout(vec2(width, height), layout, |ui| {
                ui.set_min_size(vec2(width, height));
                let ink = if first { theme.ink_quiet } else { ink };
                if !words.is_empty() {
                    ui.add(Label::new(RichText::new(words).text_style(style.clone()).color(ink)).truncate());
                }
            });
        }
    });
}
