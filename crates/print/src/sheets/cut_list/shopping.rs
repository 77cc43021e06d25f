//! What to buy: a list for the merchant, with boxes to tick.

use super::CutHead;
use super::bar::mass_words;
use crate::fonts::Weight;
use crate::sheets::flow::Flow;
use crate::sheets::paragraph::paragraph;
use crate::sheets::rows::{Col, Row, put_rows};
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::{BODY, CAPTION};
use fh_rack::list::make::CutList;

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
        Col { head: "bars", share: 0.08, is_figures: true },
        Col { head: "section", share: 0.22, is_figures: false },
        Col { head: "material", share: 0.16, is_figures: false },
        Col { head: "length", share: 0.1, is_figures: true },
        Col { head: "weigh", share: 0.18, is_figures: true },
        Col { head: "each", share: 0.11, is_figures: true },
        Col { head: "all", share: 0.13, is_figures: true },
        Col { head: "comes in", share: 0.12, is_figures: false },
    ];
    let mut rows = Vec::new();
    let (mut sum, mut is_priced) = (0_i64, true);
    for (source, count) in &bought {
        let times = i64::try_from(*count).unwrap_or(i64::MAX);
        let money = |amount: i64| list.money.words(amount);
        is_priced &= source.price.is_some();
        sum = sum.saturating_add(source.price.unwrap_or(0).saturating_mul(times));
        let cells = vec![
            count.to_string(),
            source.section.describe(),
            source.alike.material.clone(),
            source.called.text().to_owned(),
            mass_words(source.mass_kg * *count as f64),
            source.price.map(money).unwrap_or_default(),
            source.price.map(|price| money(price.saturating_mul(times))).unwrap_or_default(),
            source.place.clone().unwrap_or_default(),
        ];
        rows.push(Row { cells, is_ticked: true, ..Row::default() });
    }
    let total = if is_priced { list.money.words(sum) } else { String::new() };
    let count: u64 = bought.iter().map(|(_, count)| count).sum();
    let all = vec![
        count.to_string(),
        "all".to_owned(),
        String::new(),
        String::new(),
        mass_words(list.new_mass_kg()),
        String::new(),
        total,
    ];
    rows.push(Row { cells: all, is_sum: true, ..Row::default() });
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
