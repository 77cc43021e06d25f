//! The shop's figures: what an hour costs and what is charged for it, ways of cutting, finishes, profit, tax.

use super::checks::{Checked, check_currency, check_length, check_price, refuse};
use crate::said::money::{Currency, WrittenMoney};
use crate::said::percent::Percent;
use crate::said::price::{Per, Price};
use crate::said::time::WrittenTime;
use crate::said::written::Written;
use fh_core::file::{self, Fault, FileError, KeyPath, Sort};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The version of the shop's file.
pub const VERSION: u32 = 1;

const SORT: Sort =
    Sort { key: "firstheat_shop", newest: VERSION, what: "shop file", lists: &["cutting", "finishes", "not_included"] };

/// The figures that come with the program: ways of cutting and times, without any price.
pub const COMMON: &str = include_str!("common.shop.json");

/// The shop's figures. What is left out is not reckoned, and the quote says so.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Shop {
    /// The version of the file format: 1.
    #[schemars(range(min = 1, max = 1))]
    pub firstheat_shop: u32,
    /// The name at the head of a quote.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// What money is counted in, for example `EUR`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub currency: Option<String>,
    /// How many figures stand behind the point; 2 where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub decimals: Option<u8>,
    /// What an hour of work costs: wages and what hangs on them, without overheads and profit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rate: Option<Written<Price>>,
    /// What an hour of a striker costs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub striker: Option<Written<Price>>,
    /// What the shop costs whether there is work or not.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub overhead: Option<Overhead>,
    /// Fuel for an hour of fire.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fuel: Option<Written<Price>>,
    /// Discs, flux, oil and the like for an hour of work.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub consumables: Option<Written<Price>>,
    /// How long a heat takes in the fire.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heat_up: Option<Written<WrittenTime>>,
    /// How many irons lie in the fire at once, so that waiting for one is work on another.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1, max = 20))]
    pub irons: Option<u32>,
    /// What every job takes once, however many are made: lighting the fire, laying out, jigs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub setup: Option<Written<WrittenTime>>,
    /// What the second, the fourth, the eighth piece takes of the time of the first, the second, the fourth.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub learning: Option<Written<Percent>>,
    /// Which of the hours are reckoned with: `low`, `likely` or `high`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours: Option<Hours>,
    /// The ways of cutting; the first is taken where nothing else is said.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cutting: Vec<Cutting>,
    /// Offcuts from this length are kept.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub keep_from: Option<WrittenLength>,
    /// The finishes.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub finishes: Vec<Finish>,
    /// What is added for contingency.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub contingency: Option<Written<Percent>>,
    /// Profit: on the cost, or of the price.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub profit: Option<Profit>,
    /// What a price is rounded up to, for example `1.00`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub round_up_to: Option<Written<WrittenMoney>>,
    /// The tax on the price; none where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tax: Option<Tax>,
    /// What is paid when the work is ordered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub deposit: Option<Written<Percent>>,
    /// How long a quote is valid, in words: `30 days`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub valid: Option<String>,
    /// What the price does not include, each in words.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub not_included: Vec<String>,
    /// Words at the foot of a quote.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closing: Option<String>,
}

/// Overheads by the year, spread over the hours that are billed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Overhead {
    /// What they come to in a year.
    pub yearly: Written<WrittenMoney>,
    /// How many hours are billed in it.
    #[schemars(range(min = 1, max = 10000))]
    pub hours: u32,
}

/// Which figure of a range is taken.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Hours {
    /// The least.
    Low,
    /// The likely one.
    #[default]
    Likely,
    /// The most.
    High,
}

/// A way of cutting.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Cutting {
    /// What it is called.
    pub name: String,
    /// How much metal one cut takes, with what is dressed off after it; may be 0.
    #[serde(deserialize_with = "fh_measure::zero_allowed::deserialize")]
    pub kerf: WrittenLength,
    /// How long one cut takes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub time: Option<Written<WrittenTime>>,
    /// Of a piece cut off hot from a long bar: how much of the bar is held in the hand to the last, and gives no piece.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hold: Option<WrittenLength>,
}

/// A finish and its price.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Finish {
    /// What it is called.
    pub name: String,
    /// Its price: by mass, by area or each.
    pub price: Written<Price>,
}

/// Profit, in one of two ways.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Profit {
    /// A share of the cost, put on it.
    Markup(Written<Percent>),
    /// A share of the price.
    Margin(Written<Percent>),
}

/// A tax on the price.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Tax {
    /// What it is called.
    pub name: String,
    /// Its rate.
    pub rate: Written<Percent>,
    /// Whether the price that is rounded has the tax in it; put on after where not.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub inclusive: bool,
}

impl Shop {
    /// What money is counted in.
    pub fn money(&self) -> Currency {
        Currency::of(self.currency.as_deref(), self.decimals)
    }

    /// The way of cutting of this name, or the first where none is named.
    pub fn cutting(&self, name: Option<&str>) -> Option<&Cutting> {
        match name {
            Some(name) => self.cutting.iter().find(|way| way.name == name),
            None => self.cutting.iter().find(|way| way.hold.is_none()),
        }
    }

    /// The figures that come with the program.
    pub fn common() -> Self {
        let none = Self {
            firstheat_shop: VERSION,
            name: None,
            currency: None,
            decimals: None,
            rate: None,
            striker: None,
            overhead: None,
            fuel: None,
            consumables: None,
            heat_up: None,
            irons: None,
            setup: None,
            learning: None,
            hours: None,
            cutting: Vec::new(),
            keep_from: None,
            finishes: Vec::new(),
            contingency: None,
            profit: None,
            round_up_to: None,
            tax: None,
            deposit: None,
            valid: None,
            not_included: Vec::new(),
            closing: None,
        };
        read(COMMON.as_bytes()).unwrap_or(none)
    }
}

/// Reads the shop's figures.
///
/// # Errors
/// When the bytes are none that this program can read; the error names the line, the key and what would be right.
pub fn read(bytes: &[u8]) -> Result<Shop, FileError> {
    file::read_sort(bytes, &SORT, check)
}

/// Writes the shop's figures.
pub fn write(shop: &Shop) -> String {
    file::write_sort(shop)
}

/// The JSON Schema of the shop's file.
pub fn schema() -> serde_json::Value {
    file::schema_of::<Shop>()
}

fn check(shop: &Shop) -> Checked {
    check_currency(shop.currency.as_deref(), shop.decimals)?;
    let (top, money) = (KeyPath::default(), shop.money());
    let hourly =
        [("rate", &shop.rate), ("striker", &shop.striker), ("fuel", &shop.fuel), ("consumables", &shop.consumables)];
    for (key, price) in hourly {
        check_price(price.as_deref(), &[Per::Hour], &money, top.key(key))?;
    }
    check_money(shop.overhead.as_ref().map(|all| &*all.yearly), &money, top.key("overhead").key("yearly"))?;
    check_money(shop.round_up_to.as_deref(), &money, top.key("round_up_to"))?;
    if shop.overhead.as_ref().is_some_and(|all| !(1..=10_000).contains(&all.hours)) {
        return refuse(top.key("overhead").key("hours"), "the hours billed in a year run from 1 to 10000");
    }
    if shop.irons.is_some_and(|irons| !(1..=20).contains(&irons)) {
        return refuse(top.key("irons"), "write 1 to 20 irons");
    }
    check_shares(shop, &top)?;
    for (at, way) in shop.cutting.iter().enumerate() {
        let at = top.key("cutting").index(at);
        check_length(Some(&way.kerf), at.key("kerf"))?;
        check_length(way.hold.as_ref(), at.key("hold"))?;
        if way.kerf.mm() > 100.0 {
            return refuse(at.key("kerf"), format!("a cut of {} is too wide; at most 100 mm", way.kerf.text()));
        }
    }
    for (at, finish) in shop.finishes.iter().enumerate() {
        let per = [Per::Kilogram, Per::Pound, Per::SquareMeter, Per::SquareFoot, Per::Each];
        check_price(Some(&finish.price), &per, &money, top.key("finishes").index(at).key("price"))?;
    }
    Ok(())
}

fn check_shares(shop: &Shop, top: &KeyPath) -> Checked {
    if let Some(Profit::Margin(share)) =
        shop.profit.as_ref().filter(|profit| matches!(profit, Profit::Margin(share) if share.hundredths >= 10_000))
    {
        let message = format!(
            "a margin of {} would leave no cost; it is below 100 %",
            crate::said::percent::percent_words(share.hundredths)
        );
        return refuse(top.key("profit").key("margin"), message);
    }
    if shop.deposit.as_ref().is_some_and(|share| share.hundredths > 10_000) {
        return refuse(top.key("deposit"), "a deposit is no more than the price: at most 100 %");
    }
    if shop.learning.as_ref().is_some_and(|share| !(5_000..=10_000).contains(&share.hundredths)) {
        return refuse(top.key("learning"), "learning runs from 50 % to 100 %; 100 % is none");
    }
    Ok(())
}

fn check_money(money: Option<&WrittenMoney>, currency: &Currency, at: KeyPath) -> Checked {
    money.map_or(Ok(()), |money| money.amount(currency).map(drop).map_err(|why| Fault::new(at, why)))
}
