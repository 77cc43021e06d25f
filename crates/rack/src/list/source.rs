//! What pieces can be cut from: bars of the rack, and bars that can be bought.

use super::wanted::ListError;
use crate::kept::merchant::{Merchant, MerchantLine};
use crate::kept::rack::Rack;
use crate::said::money::{Currency, times_over};
use crate::said::price::{Per, Price};
use crate::said::section::{Alike, alike};
use crate::weight::kg_per_meter;
use fh_core::plan::SectionSpec;
use fh_measure::WrittenLength;

/// Where a bar comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum From {
    /// A line of the rack, counted from 0.
    Rack(usize),
    /// A line of the merchant's list, counted from 0.
    New(usize),
}

/// Bars of one section and length that can be had.
#[derive(Clone, Debug, PartialEq)]
pub struct Source {
    /// Where they come from.
    pub from: From,
    /// Their section.
    pub section: SectionSpec,
    /// What they have alike with pieces.
    pub alike: Alike,
    /// The length of one as it is called.
    pub called: WrittenLength,
    /// The length of one in nm, as measured where it was.
    pub length_nm: i64,
    /// How much of one gives no piece, in nm.
    pub end_nm: i64,
    /// How many there are; none: as many as wanted.
    pub count: Option<u64>,
    /// The price of one in the smallest unit; none where it is not known, and for what lies on the rack.
    pub price: Option<i64>,
    /// Where it lies on the rack, or how long it takes to come.
    pub place: Option<String>,
    /// The mass of one in kg.
    pub mass_kg: f64,
}

/// Everything that can be had: the rack first.
///
/// # Errors
/// Where a price cannot be read in the merchant's currency.
pub fn sources(rack: &Rack, merchant: &Merchant) -> Result<Vec<Source>, ListError> {
    sources_in(rack, merchant, &merchant.money())
}

/// The same, with the merchant's prices counted in this currency.
pub(crate) fn sources_in(rack: &Rack, merchant: &Merchant, money: &Currency) -> Result<Vec<Source>, ListError> {
    let mut all: Vec<Source> =
        rack.bars.iter().enumerate().filter(|(_, line)| line.bar.count > 0).map(of_rack).collect();
    for (at, line) in merchant.bars.iter().enumerate() {
        all.extend(of_merchant(at, line, money)?);
    }
    Ok(all)
}

fn of_rack((at, line): (usize, &crate::kept::rack::RackBar)) -> Source {
    let length_nm = line.length_nm();
    Source {
        from: From::Rack(at),
        section: line.bar.section.clone(),
        alike: line.alike(),
        called: line.bar.length.clone(),
        length_nm,
        end_nm: line.end_nm(),
        count: Some(u64::from(line.bar.count)),
        price: None,
        place: line.lies.clone(),
        mass_kg: mass_kg(line.material.as_deref(), &line.bar.section, length_nm),
    }
}

fn of_merchant(at: usize, line: &MerchantLine, money: &Currency) -> Result<Vec<Source>, ListError> {
    let mut all = Vec::new();
    for section in &line.sections {
        for length in &line.lengths {
            let length_nm = (length.mm() * 1e6).round() as i64;
            let mass_kg = mass_kg(line.material.as_deref(), &section.section, length_nm);
            let price = line.price.as_deref().map(|price| of_one(price, length_nm, mass_kg, money)).transpose()?;
            all.push(Source {
                from: From::New(at),
                section: section.section.clone(),
                alike: alike(line.material.as_deref(), &section.section),
                called: length.clone(),
                length_nm,
                end_nm: line.end.as_ref().map_or(0, |end| (end.mm() * 1e6).round() as i64),
                count: line.at_most.map(u64::from),
                price,
                place: line.lead.clone(),
                mass_kg,
            });
        }
    }
    Ok(all)
}

/// The mass of a length of bar.
pub fn mass_kg(material: Option<&str>, section: &SectionSpec, length_nm: i64) -> f64 {
    kg_per_meter(material, section) * length_nm as f64 / 1e9
}

/// Grams in a pound (international avoirdupois pound, 1959), in hundred-thousandths.
const POUND: i64 = 45_359_237;

/// The price of one bar.
pub(crate) fn of_one(price: &Price, length_nm: i64, mass_kg: f64, money: &Currency) -> Result<i64, ListError> {
    let amount = price.amount(money).map_err(ListError::Money)?;
    let milligrams = (mass_kg * 1e6).round() as i64;
    Ok(match price.per {
        Per::Meter => times_over(amount, length_nm, 1_000_000_000),
        Per::Foot => times_over(amount, length_nm, 304_800_000),
        Per::Kilogram => times_over(amount, milligrams, 1_000_000),
        Per::Pound => times_over(amount, milligrams.saturating_mul(100), POUND),
        _ => amount,
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::said::written::Said;

    #[test]
    fn a_bar_costs_by_its_mass_its_length_or_as_it_is() {
        let one = |text: &str| {
            let price = Price::parse(text).unwrap();
            of_one(&price, 6_000_000_000, 6.7824, &Currency::default()).unwrap()
        };
        // 6 m of 12 mm square weigh 6.7824 kg: 6.7824 × 1.85 = 12.547.
        assert_eq!((one("1.85 per kg"), one("1.60 per m"), one("9.60 each")), (1255, 960, 960));
        // 6.7824 kg are 14.9526 lb; 6 m are 19.685 ft.
        assert_eq!((one("0.84 per lb"), one("0.50 per ft")), (1256, 984));
    }
}
