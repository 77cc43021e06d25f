//! What to buy: a list for the merchant, with boxes to tick.

use super::CutHead;
use super::bar::mass_words;
use crate::fonts::Weight;
use crate::sheets::flow::Flow;
use crate::sheets::paragraph::paragraph;
use crate::sheets::rows::{Col, Row, put_rows};
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::{BODY, CAPTION};
use fh_rack::list::make::{Bought, CutList};
use fh_rack::list::words::run;

/// Puts the list on a page of its own; nothing where nothing is bought.
pub(super) fn put(flow: &mut Flow, list: &CutList, head: CutHead<'_>) {
    let bought = list.bought();
    if bought.is_empty() {
        return;
    }
    let width = flow.width();
    flow.start_part(format!("{}, to buy", head.title));
    flow.put(title_block(head.title, head.date, "TO BUY", width).then_free(2.0));
    let columns = [
        Col { head: "bars", share: 0.06, is_figures: true },
        Col { head: "section", share: 0.18, is_figures: false },
        Col { head: "material", share: 0.14, is_figures: false },
        Col { head: "length", share: 0.09, is_figures: true },
        Col { head: "of it used", share: 0.1, is_figures: true },
        Col { head: "weight", share: 0.17, is_figures: true },
        Col { head: "each", share: 0.11, is_figures: true },
        Col { head: "all", share: 0.12, is_figures: true },
        Col { head: "delivery", share: 0.13, is_figures: false },
    ];
    let mut rows = Vec::new();
    let (mut sum, mut is_priced) = (0_i64, true);
    for bought in &bought {
        let source = bought.source;
        let money = |amount: i64| list.money.words(amount);
        is_priced &= source.price.is_some();
        sum = sum.saturating_add(bought.cost().unwrap_or(0));
        let cells = vec![
            bought.count.to_string(),
            source.section.describe(),
            source.alike.material.clone(),
            source.called.text().to_owned(),
            run(bought.used_nm, source),
            mass_words(source.mass_kg * bought.count as f64),
            source.price.map(money).unwrap_or_default(),
            bought.cost().map(money).unwrap_or_default(),
            source.place.clone().unwrap_or_default(),
        ];
        rows.push(Row { cells, is_ticked: true, ..Row::default() });
    }
    let total = if is_priced { list.money.words(sum) } else { String::new() };
    rows.push(all_of_it(list, &bought, total));
    put_rows(flow, &columns, &rows);
    flow.skip(3.0);
    if !is_priced {
        flow.put(
            paragraph("A price that is not known is left free: ask for it.", BODY, Weight::Regular, width)
                .then_free(1.0),
        );
    }
    let words = "Weights follow from sizes, steel at 7850 kg/m³; rolled bars are up to 8 % off at 10 mm.";
    flow.put(paragraph(words, CAPTION, Weight::Regular, width));
}

/// The row that sums up what is bought.
fn all_of_it(list: &CutList, bought: &[Bought<'_>], total: String) -> Row {
    let count: u64 = bought.iter().map(|bought| bought.count).sum();
    let none = String::new;
    let mass = mass_words(list.new_mass_kg());
    Row {
        cells: vec![count.to_string(), "all".to_owned(), none(), none(), none(), mass, none(), total],
        is_sum: true,
        ..Row::default()
    }
}
