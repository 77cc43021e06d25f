//! What the quote comes to, line by line, a column for each count.

use crate::state::Desk;
use crate::theme::space;
use crate::widgets::heading;
use crate::widgets::table::{self, Column, Line};
use egui::{RichText, Ui};
use fh_rack::quote::lines::{Part, sum};
use fh_rack::quote::quoted::{Quote, QuoteFor};
use fh_rack::said::percent::percent_words;
use fh_rack::said::time::time_words;

const COLUMNS: [Column; 4] =
    [Column::words("", 1.6), Column::figures("", 1.0), Column::figures("", 1.0), Column::figures("", 1.0)];

/// Shows it.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, quote: &Quote) {
    let theme = desk.theme;
    let money = |amount: i64| quote.money.figures(amount);
    let all = |what: &dyn Fn(&QuoteFor) -> String| -> Vec<String> { quote.counts.iter().map(what).collect() };
    ui.spacing_mut().item_spacing.y = 0.0;
    let head = all(&|one| format!("{} of the job", one.count));
    line(ui, desk, &quote.money.name, head, true);
    ui.add_space(space::TIGHT);
    for part in [Part::Material, Part::Labour, Part::Expense] {
        line(ui, desk, part.name(), all(&|one| money(sum(&one.lines, part))), false);
    }
    line(ui, desk, "overheads", all(&|one| money(one.asked.overheads)), false);
    line(ui, desk, "for what nobody foresaw", all(&|one| money(one.asked.contingency)), false);
    rule(ui, desk);
    line(ui, desk, "cost", all(&|one| money(one.asked.cost)), true);
    line(ui, desk, "profit", all(&|one| money(one.asked.profit)), false);
    line(ui, desk, "rounding up", all(&|one| money(one.asked.rounding)), false);
    rule(ui, desk);
    line(ui, desk, "price", all(&|one| money(one.asked.price)), true);
    line(ui, desk, "tax", all(&|one| money(one.asked.tax)), false);
    line(ui, desk, "to pay", all(&|one| money(one.asked.total)), true);
    line(ui, desk, "each", all(&|one| money(one.asked.each)), true);
    rule(ui, desk);
    line(ui, desk, "markup, on the cost", all(&|one| percent_words(one.asked.markup.max(0))), false);
    line(ui, desk, "margin, of the price", all(&|one| percent_words(one.asked.margin.max(0))), false);
    line(ui, desk, "hours that are charged", all(&|one| time_words(one.minutes)), false);
    let range = |one: &QuoteFor| format!("{} to {}", time_words(one.at_the_fire.low), time_words(one.at_the_fire.high));
    line(ui, desk, "of them at the fire", all(&range), false);
    line(ui, desk, "weighs, forged", all(&|one| format!("{:.2} kg", one.mass_kg)), false);
    if !quote.not_counted.is_empty() {
        heading::show(ui, theme, "Not counted");
        for words in &quote.not_counted {
            ui.label(RichText::new(format!("● {words}")).color(theme.note));
        }
    }
    ui.add_space(space::GROUP);
}

fn line(ui: &mut Ui, desk: &Desk<'_>, words: &str, values: Vec<String>, is_strong: bool) {
    let name = format!("{words}: {}", values.join(", "));
    let cells: Vec<String> = std::iter::once(words.to_owned()).chain(values).collect();
    let ink = if is_strong { desk.theme.ink } else { desk.theme.ink_quiet };
    table::read_only(ui, desk.theme, &COLUMNS, &Line { cells: &cells, name: &name, is_chosen: false, ink, is_strong });
}

fn rule(ui: &mut Ui, desk: &Desk<'_>) {
    let (line, _) = ui.allocate_exact_size(egui::vec2(ui.available_width(), space::TIGHT), egui::Sense::hover());
    ui.painter().hline(line.x_range(), line.center().y, (desk.theme.hairline(), desk.theme.rule));
}
