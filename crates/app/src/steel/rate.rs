//! What an hour costs and what profit is put on: fields, and sliders that show at once what they do.

use super::fields;
use crate::state::Desk;
use crate::theme::space;
use crate::widgets::entry::{self, Entry, Reading};
use egui::{Button, RichText, Slider, Ui};
use fh_rack::kept::shop::{Profit, Shop};
use fh_rack::said::money::Currency;
use fh_rack::said::percent::{Percent, percent_words};
use fh_rack::said::price::Price;
use fh_rack::said::written::{Said, Written};

/// How far the sliders reach, in hundredths of a per cent of markup, in those of margin, and in units of money for an hour.
const MOST_MARKUP: i64 = 10_000;
const MOST_MARGIN: i64 = 8_000;
const MOST_RATE: i64 = 150;

/// Shows rate and profit, each with a slider. It is told of other figures, and whether they are kept: not while a slider is
/// dragged.
pub(super) fn sliders(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, take: &mut dyn FnMut(Shop, bool)) {
    if let Some(rate) = field(ui, desk, shop) {
        take(Shop { rate, ..shop.clone() }, true);
    }
    let money = shop.money();
    let unit = 10_i64.pow(u32::from(money.decimals.min(4)));
    let now = shop.rate.as_ref().and_then(|rate| rate.amount(&money).ok()).unwrap_or(0);
    if let Some((value, keep)) = slide(ui, desk, "An hour, by the slider", now / unit, MOST_RATE)
        && let Ok(rate) = read_rate(&format!("{} per hour", money.figures(value * unit)), &money)
    {
        take(Shop { rate: Some(rate), ..shop.clone() }, keep);
    }
    profit(ui, desk, shop, &mut |shop| take(shop, true));
    let (share, is_margin) = share_of(shop);
    let most = if is_margin { MOST_MARGIN } else { MOST_MARKUP };
    if let Some((value, keep)) = slide(ui, desk, "Profit, by the slider", share / 100, most / 100)
        && let Ok(share) = Written::parse(&format!("{value} %"))
    {
        take(Shop { profit: as_profit(share, is_margin), ..shop.clone() }, keep);
    }
    let now = (shop.currency.as_deref(), shop.decimals);
    if let Some((currency, decimals)) = fields::currency(ui, desk, ("Currency", ""), "EUR", now) {
        take(Shop { currency, decimals, ..shop.clone() }, true);
    }
}

/// What an hour costs.
pub(super) fn field(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop) -> Option<Option<Written<Price>>> {
    let money = shop.money();
    let read = |text: &str| match text.trim() {
        "" => Ok(None),
        text => read_rate(text, &money).map(Some),
    };
    let now = shop.rate.as_ref().map_or("", |rate| rate.text());
    let entry = Entry::named("An hour", "What an hour costs").hint("42.00 per hour");
    entry::show(ui, desk.theme, &entry, now, &Reading { read: &read, step: None, doubt: None })
}

/// A price for an hour, whether or not that is said.
fn read_rate(text: &str, money: &Currency) -> Result<Written<Price>, String> {
    let has_unit = text.contains("per ") || text.ends_with("each");
    let price: Written<Price> =
        if has_unit { Written::parse(text)? } else { Written::parse(&format!("{text} per hour"))? };
    if price.per != fh_rack::said::price::Per::Hour {
        return Err(format!("“{text}” isn't a price for an hour. Write it as 42.00 per hour"));
    }
    price.amount(money)?;
    Ok(price)
}

/// A slider over whole numbers. Its value, where it was moved, and whether it is to be kept: not while it is dragged.
pub(super) fn slide(ui: &mut Ui, desk: &Desk<'_>, name: &str, now: i64, most: i64) -> Option<(i64, bool)> {
    let mut value = now.clamp(0, most);
    ui.spacing_mut().slider_width = (ui.available_width() - space::GROUP).max(desk.theme.scaled(80.0));
    let slider = Slider::new(&mut value, 0..=most).show_value(false).trailing_fill(true);
    let slider = slider.clamping(egui::SliderClamping::Never);
    let slider = ui.scope(|ui| {
        // What it runs on is seen on the ground of the panel.
        ui.visuals_mut().widgets.inactive.bg_fill = desk.theme.rule;
        ui.visuals_mut().selection.bg_fill = desk.theme.edge;
        ui.add(slider)
    });
    let slider = slider.inner;
    let (is_changed, is_dragged, is_over) = (slider.changed(), slider.dragged(), slider.drag_stopped());
    slider.accessible_name(name);
    (is_changed || is_over).then_some((value, !is_dragged))
}

fn share_of(shop: &Shop) -> (i64, bool) {
    match &shop.profit {
        Some(Profit::Markup(share)) => (share.hundredths, false),
        Some(Profit::Margin(share)) => (share.hundredths, true),
        None => (0, false),
    }
}

fn as_profit(share: Written<Percent>, is_margin: bool) -> Option<Profit> {
    Some(if is_margin { Profit::Margin(share) } else { Profit::Markup(share) })
}

/// Markup or margin: the one is set, and both are shown beside the price.
pub(super) fn profit(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, take: &mut dyn FnMut(Shop)) {
    let (share, is_margin) = share_of(shop);
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Profit").color(desk.theme.ink_quiet));
        for (margin, words) in [(false, "on the cost"), (true, "of the price")] {
            if ui.add(Button::new(words).selected(is_margin == margin)).clicked() && is_margin != margin {
                let share = if margin { share.min(MOST_MARGIN) } else { share };
                if let Ok(share) = Written::parse(&percent_words(share)) {
                    take(Shop { profit: as_profit(share, margin), ..shop.clone() });
                }
            }
        }
    });
    let read = |text: &str| {
        let text = text.trim();
        Written::<Percent>::parse(&if text.ends_with('%') { text.to_owned() } else { format!("{text} %") })
    };
    let reading = Reading { read: &read, step: None, doubt: None };
    let entry = Entry::named("Share", "Share of profit");
    if let Some(share) = entry::show(ui, desk.theme, &entry, &percent_words(share), &reading) {
        take(Shop { profit: as_profit(share, is_margin), ..shop.clone() });
    }
}
