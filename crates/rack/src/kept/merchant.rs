//! The merchant's list: which sections can be bought, in which lengths, and at what price.

use super::checks::{Checked, check_currency, check_length, check_material, check_price, refuse};
use crate::said::money::Currency;
use crate::said::price::{Per, Price};
use crate::said::section::SaidSection;
use crate::said::written::Written;
use fh_core::file::{self, FileError, KeyPath, Sort};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The version of the merchant's file.
pub const VERSION: u32 = 1;

const SORT: Sort = Sort {
    key: "firstheat_merchant",
    newest: VERSION,
    what: "merchant's list",
    lists: &["bars", "sections", "lengths"],
};

/// The list that comes with the program: common sizes and lengths, without prices (common practice, no source).
pub const COMMON: &str = include_str!("common.merchant.json");

/// What can be bought.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Merchant {
    /// The version of the file format: 1.
    #[schemars(range(min = 1, max = 1))]
    pub firstheat_merchant: u32,
    /// Whose list it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// What the prices are counted in, for example `EUR`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub currency: Option<String>,
    /// How many figures stand behind the point of a price; 2 where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub decimals: Option<u8>,
    /// What there is.
    #[serde(default)]
    pub bars: Vec<MerchantLine>,
}

/// Sections that are sold in the same lengths at the same price.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MerchantLine {
    /// The sections: `12 mm square`.
    pub sections: Vec<Written<SaidSection>>,
    /// The material; mild steel where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// The lengths of a bar.
    pub lengths: Vec<WrittenLength>,
    /// The price: each, or by length or mass.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Written<Price>>,
    /// How many bars of each section and length there are; as many as wanted where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_most: Option<u32>,
    /// How much of each bar gives no piece: its sheared ends.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub end: Option<WrittenLength>,
    /// How long it takes to come, in words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lead: Option<String>,
    /// Free words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

impl Merchant {
    /// The list that comes with the program.
    pub fn common() -> Self {
        let none = Self { firstheat_merchant: VERSION, name: None, currency: None, decimals: None, bars: Vec::new() };
        read(COMMON.as_bytes()).unwrap_or(none)
    }

    /// What its prices are counted in.
    pub fn money(&self) -> Currency {
        Currency::of(self.currency.as_deref(), self.decimals)
    }
}

/// Reads a merchant's list.
///
/// # Errors
/// When the bytes are none that this program can read; the error names the line, the key and what would be right.
pub fn read(bytes: &[u8]) -> Result<Merchant, FileError> {
    file::read_sort(bytes, &SORT, check)
}

/// Writes a merchant's list.
pub fn write(merchant: &Merchant) -> String {
    file::write_sort(merchant)
}

/// The JSON Schema of the merchant's file.
pub fn schema() -> serde_json::Value {
    file::schema_of::<Merchant>()
}

fn check(merchant: &Merchant) -> Checked {
    check_currency(merchant.currency.as_deref(), merchant.decimals)?;
    let (at, money) = (KeyPath::default().key("bars"), merchant.money());
    merchant.bars.iter().enumerate().try_for_each(|(index, line)| check_line(line, &money, &at.index(index)))
}

fn check_line(line: &MerchantLine, money: &Currency, at: &KeyPath) -> Checked {
    check_material(line.material.as_deref(), at)?;
    check_price(line.price.as_deref(), &Per::OF_A_BAR, money, at.key("price"))?;
    check_length(line.end.as_ref(), at.key("end"))?;
    let end_mm = line.end.as_ref().map_or(0.0, WrittenLength::mm);
    for (index, length) in line.lengths.iter().enumerate() {
        let at = at.key("lengths").index(index);
        check_length(Some(length), at.clone())?;
        if length.mm() > 1e5 {
            return refuse(at, format!("\"{}\" is longer than 100 m", length.text()));
        }
        if length.mm() <= end_mm {
            return refuse(at, format!("\"{}\" is no longer than the end that gives no piece", length.text()));
        }
    }
    Ok(())
}
