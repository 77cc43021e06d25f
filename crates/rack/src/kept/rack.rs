//! The rack: bars on hand, and the cut lists that were booked on them.

use super::checks::{Checked, check_currency, check_length, check_material, check_price, refuse};
use crate::said::bar::SaidBar;
use crate::said::money::Currency;
use crate::said::price::{Per, Price};
use crate::said::section::{Alike, alike};
use crate::said::written::{Said, Written};
use fh_core::file::{self, FileError, KeyPath, Sort};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The version of the rack's file.
pub const VERSION: u32 = 1;

const SORT: Sort =
    Sort { key: "firstheat_rack", newest: VERSION, what: "rack", lists: &["bars", "booked", "took", "back"] };

/// Bars on hand.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Rack {
    /// The version of the file format: 1.
    #[schemars(range(min = 1, max = 1))]
    pub firstheat_rack: u32,
    /// What the prices are counted in, for example `EUR`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub currency: Option<String>,
    /// How many figures stand behind the point of a price; 2 where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub decimals: Option<u8>,
    /// The bars.
    #[serde(default)]
    pub bars: Vec<RackBar>,
    /// The cut lists that were booked, the latest last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub booked: Vec<Booking>,
}

/// Bars of one section and one length that lie in one place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RackBar {
    /// How many, the section and the length of one: `3 x 12 mm square, 2.4 m`.
    pub bar: Written<SaidBar>,
    /// The material; mild steel where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// The length as it was measured, where it is not the length that the bar is called by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured: Option<WrittenLength>,
    /// How much of one end gives no piece: crushed, bent or rusted through.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub end: Option<WrittenLength>,
    /// What it cost, for the quote; on the rack it is paid.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Written<Price>>,
    /// Where it lies.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lies: Option<String>,
    /// Free words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// A cut list that was booked: what was taken from the rack for it, and what was put back.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Booking {
    /// Its number, from 1 on.
    pub number: u32,
    /// What for.
    #[serde(default)]
    pub what: String,
    /// When, as `2026-05-04`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub on: Option<String>,
    /// The bars that were taken.
    #[serde(default)]
    pub took: Vec<RackBar>,
    /// The offcuts that were put back.
    #[serde(default)]
    pub back: Vec<RackBar>,
    /// Whether it was undone.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub undone: bool,
}

impl Default for Rack {
    fn default() -> Self {
        Self { firstheat_rack: VERSION, currency: None, decimals: None, bars: Vec::new(), booked: Vec::new() }
    }
}

impl Rack {
    /// What its prices are counted in.
    pub fn money(&self) -> Currency {
        Currency::of(self.currency.as_deref(), self.decimals)
    }

    /// How many bars lie on it.
    pub fn count(&self) -> u64 {
        self.bars.iter().map(|line| u64::from(line.bar.count)).sum()
    }
}

impl RackBar {
    /// A bar with nothing else said of it.
    pub fn new(bar: SaidBar, material: Option<String>) -> Self {
        Self { bar: Written(bar), material, measured: None, end: None, price: None, lies: None, note: None }
    }

    /// What it has alike with other bars.
    pub fn alike(&self) -> Alike {
        alike(self.material.as_deref(), &self.bar.section)
    }

    /// Its length in nm, as measured where it was.
    pub fn length_nm(&self) -> i64 {
        self.measured.as_ref().map_or(self.bar.length_nm(), |length| (length.mm() * 1e6).round() as i64)
    }

    /// How much of it gives no piece, in nm.
    pub fn end_nm(&self) -> i64 {
        self.end.as_ref().map_or(0, |length| (length.mm() * 1e6).round() as i64)
    }

    /// The same bars, but so many of them.
    #[must_use]
    pub fn with_count(&self, count: u32) -> Self {
        Self { bar: Written(self.bar.with_count(count)), ..self.clone() }
    }

    /// Whether it is the same bar in all but how many there are.
    pub fn is_like(&self, other: &Self) -> bool {
        self.alike() == other.alike()
            && (self.length_nm(), self.end_nm()) == (other.length_nm(), other.end_nm())
            && (&self.lies, &self.price, &self.note) == (&other.lies, &other.price, &other.note)
    }

    /// It in words: `3 x 12 mm square, 2.4 m, carbon steel, in the corner`.
    pub fn words(&self) -> String {
        let beside = [self.material.as_deref(), self.lies.as_deref()];
        [Some(self.bar.text())].into_iter().chain(beside).flatten().collect::<Vec<_>>().join(", ")
    }
}

/// Reads a rack.
///
/// # Errors
/// When the bytes are no rack that this program can read; the error names the line, the key and what would be right.
pub fn read(bytes: &[u8]) -> Result<Rack, FileError> {
    file::read_sort(bytes, &SORT, check)
}

/// Writes a rack.
pub fn write(rack: &Rack) -> String {
    file::write_sort(rack)
}

/// The JSON Schema of the rack's file.
pub fn schema() -> serde_json::Value {
    file::schema_of::<Rack>()
}

fn check(rack: &Rack) -> Checked {
    check_currency(rack.currency.as_deref(), rack.decimals)?;
    let (top, money) = (KeyPath::default(), rack.money());
    check_lines(&rack.bars, &money, &top.key("bars"))?;
    for (at, booking) in rack.booked.iter().enumerate() {
        let at = top.key("booked").index(at);
        check_lines(&booking.took, &money, &at.key("took"))?;
        check_lines(&booking.back, &money, &at.key("back"))?;
    }
    Ok(())
}

fn check_lines(lines: &[RackBar], money: &Currency, at: &KeyPath) -> Checked {
    lines.iter().enumerate().try_for_each(|(index, line)| check_line(line, money, &at.index(index)))
}

fn check_line(line: &RackBar, money: &Currency, at: &KeyPath) -> Checked {
    check_material(line.material.as_deref(), at)?;
    check_length(line.measured.as_ref(), at.key("measured"))?;
    check_length(line.end.as_ref(), at.key("end"))?;
    check_price(line.price.as_deref(), &Per::OF_A_BAR, money, at.key("price"))?;
    if line.end_nm() >= line.length_nm() {
        return refuse(at.key("end"), "the end that gives no piece is as long as the bar");
    }
    Ok(())
}
