//! A price and what it is for: `1.85 per kg`, `9.60 each`, `42.00 per hour`.

use super::money::{Currency, WrittenMoney};
use super::written::Said;

/// What a price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Per {
    /// One bar, one piece, one time.
    Each,
    /// A metre.
    Meter,
    /// A foot.
    Foot,
    /// A kilogram.
    Kilogram,
    /// A pound.
    Pound,
    /// An hour.
    Hour,
    /// A square metre.
    SquareMeter,
    /// A square foot.
    SquareFoot,
    /// A year.
    Year,
}

/// The words that a price may end with.
const WORDS: [(&str, Per); 13] = [
    ("each", Per::Each),
    ("per bar", Per::Each),
    ("per piece", Per::Each),
    ("per m", Per::Meter),
    ("per metre", Per::Meter),
    ("per ft", Per::Foot),
    ("per kg", Per::Kilogram),
    ("per lb", Per::Pound),
    ("per hour", Per::Hour),
    ("per m²", Per::SquareMeter),
    ("per m2", Per::SquareMeter),
    ("per ft²", Per::SquareFoot),
    ("per year", Per::Year),
];

impl Per {
    /// What the price of a bar may be for.
    pub(crate) const OF_A_BAR: [Self; 5] = [Self::Each, Self::Meter, Self::Foot, Self::Kilogram, Self::Pound];

    /// The words for it.
    pub fn words(self) -> &'static str {
        WORDS.iter().find(|(_, per)| *per == self).map_or("each", |(words, _)| words)
    }
}

/// A price as it was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Price {
    text: String,
    money: WrittenMoney,
    /// What it is for.
    pub per: Per,
}

impl Price {
    /// The price in the smallest unit of a currency.
    ///
    /// # Errors
    /// Where it names another currency, or more figures behind the point than that has.
    pub fn amount(&self, currency: &Currency) -> Result<i64, String> {
        self.money.amount(currency)
    }
}

impl Said for Price {
    const WHAT: &'static str = "a price";
    const EXAMPLE: &'static str = "1.85 per kg";

    fn parse(text: &str) -> Result<Self, String> {
        let text = text.trim();
        let found = WORDS.iter().find_map(|(words, per)| Some((text.strip_suffix(words)?, *per)));
        let (money, per) = found.filter(|(money, _)| money.ends_with(' ')).unwrap_or((text, Per::Each));
        if found.is_none() && text.contains(" per ") {
            let words: Vec<&str> = WORDS.iter().map(|(words, _)| *words).collect();
            return Err(format!("\"{text}\": what is the price for? It may be {}", words.join(", ")));
        }
        Ok(Self { text: text.to_owned(), money: WrittenMoney::parse(money)?, per })
    }

    fn text(&self) -> &str {
        &self.text
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn a_price_says_what_it_is_for() {
        let read = |text: &str| {
            let price = Price::parse(text).unwrap();
            (price.amount(&Currency::default()).unwrap(), price.per)
        };
        assert_eq!(read("1.85 per kg"), (185, Per::Kilogram));
        assert_eq!(read("9.60 each"), (960, Per::Each));
        assert_eq!(read("9.60"), (960, Per::Each));
        assert_eq!(read("18 per m²"), (1800, Per::SquareMeter));
        assert_eq!(read("1,60 per m"), (160, Per::Meter));
        assert!(Price::parse("3 per stone").unwrap_err().contains("what is the price for?"));
        assert!(Price::parse("-3 per kg").unwrap_err().contains("below 0"));
    }
}
