//! What is checked of every file of the rack beyond what its types can say.

use crate::said::money::{Currency, MOST_DECIMALS};
use crate::said::price::{Per, Price};
use fh_core::file::{Fault, KeyPath};
use fh_core::material;
use fh_measure::WrittenLength;

/// Nothing, or what is wrong and where.
pub type Checked = Result<(), Fault>;

/// Says what is wrong with a value.
pub(crate) fn refuse(at: KeyPath, message: impl Into<String>) -> Checked {
    Err(Fault::new(at, message))
}

/// That a material is one of the table.
pub(crate) fn check_material(name: Option<&str>, at: &KeyPath) -> Checked {
    match name.filter(|name| material::find(name).is_none()) {
        None => Ok(()),
        Some(name) => {
            let names: Vec<&str> = material::ALL.iter().map(|one| one.name).collect();
            refuse(at.key("material"), format!("there is no material \"{name}\" here; there is {}", names.join(", ")))
        }
    }
}

/// That a price is for one of these, and is money of the file's currency.
pub(crate) fn check_price(price: Option<&Price>, may_be: &[Per], currency: &Currency, at: KeyPath) -> Checked {
    let Some(price) = price else { return Ok(()) };
    if !may_be.contains(&price.per) {
        let words: Vec<&str> = may_be.iter().map(|per| per.words()).collect();
        return refuse(at, format!("a price {} means nothing here; it may be {}", price.per.words(), words.join(", ")));
    }
    price.amount(currency).map(drop).map_err(|why| Fault::new(at, why))
}

/// The longest name of a currency, in letters.
const LONGEST_NAME: usize = 20;

/// That money has a name that can stand in a line and is no amount, and no more figures behind its point than are reckoned with.
pub(crate) fn check_currency(name: Option<&str>, decimals: Option<u8>) -> Checked {
    let is_wrong = |c: char| c.is_control() || c.is_numeric();
    let is_name = |name: &str| name.chars().count() <= LONGEST_NAME && !name.contains(is_wrong);
    if let Some(name) = name.filter(|name| !is_name(name)) {
        let name: String = name.chars().filter(|c| !c.is_control()).take(LONGEST_NAME).collect();
        let message = format!(
            "“{name}” isn't a name of a currency; write it as “EUR”, with at most {LONGEST_NAME} letters and no figures"
        );
        return refuse(KeyPath::default().key("currency"), message);
    }
    match decimals {
        Some(decimals) if decimals > MOST_DECIMALS => {
            let message = format!("{decimals} was found; money has at most {MOST_DECIMALS} figures behind the point");
            refuse(KeyPath::default().key("decimals"), message)
        }
        _ => Ok(()),
    }
}

/// That a length is one length, and no range.
pub(crate) fn check_length(length: Option<&WrittenLength>, at: KeyPath) -> Checked {
    match length.filter(|length| length.is_range()) {
        Some(length) => refuse(at, format!("\"{}\" is a range; one length belongs here", length.text())),
        None => Ok(()),
    }
}
