//! Money: whole numbers of the smallest unit, never a fraction of it.

use super::written::Said;

/// The most that is reckoned with, in the smallest unit: ten thousand million.
pub const MOST: i64 = 1_000_000_000_000;

/// What money is counted in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Currency {
    /// What it is called; empty where nobody said.
    pub name: String,
    /// How many figures stand behind the point: 2 for hundredths.
    pub decimals: u8,
}

impl Default for Currency {
    fn default() -> Self {
        Self { name: String::new(), decimals: 2 }
    }
}

/// The most figures behind the point.
pub const MOST_DECIMALS: u8 = 4;

impl Currency {
    /// A currency as a file names it.
    pub fn of(name: Option<&str>, decimals: Option<u8>) -> Self {
        Self { name: name.unwrap_or_default().trim().to_owned(), decimals: decimals.unwrap_or(2) }
    }

    /// An amount of its smallest unit, in words: `EUR 12.40`.
    pub fn words(&self, amount: i64) -> String {
        let name = if self.name.is_empty() { String::new() } else { format!("{} ", self.name) };
        format!("{name}{}", self.figures(amount))
    }

    /// The same without the name: `12.40`.
    pub fn figures(&self, amount: i64) -> String {
        let unit = 10_i64.pow(u32::from(self.decimals.min(MOST_DECIMALS)));
        let (sign, amount) = (if amount < 0 { "-" } else { "" }, amount.unsigned_abs());
        let unit = unit.unsigned_abs();
        match self.decimals {
            0 => format!("{sign}{amount}"),
            decimals => format!("{sign}{}.{:0width$}", amount / unit, amount % unit, width = usize::from(decimals)),
        }
    }

    /// The amount as a number for other programs.
    pub fn number(&self, amount: i64) -> f64 {
        amount as f64 / 10_f64.powi(i32::from(self.decimals))
    }
}

/// Money as it was written: `4.20`, `4,20 EUR`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrittenMoney {
    text: String,
    figures: i64,
    decimals: u8,
    currency: Option<String>,
}

impl WrittenMoney {
    /// So much in the smallest unit of a currency.
    ///
    /// # Errors
    /// Where it names another currency, or more figures behind the point than that has.
    pub fn amount(&self, currency: &Currency) -> Result<i64, String> {
        if let Some(own) = self.currency.as_ref().filter(|own| **own != currency.name) {
            let money = if currency.name.is_empty() {
                "no currency is named here".to_owned()
            } else {
                format!("the money here is {}", currency.name)
            };
            return Err(format!("\"{}\" is in {own}, and {money}; one list has one currency", self.text));
        }
        let Some(missing) = currency.decimals.checked_sub(self.decimals) else {
            return Err(format!("\"{}\" has more than {} figures behind the point", self.text, currency.decimals));
        };
        let amount = self.figures.checked_mul(10_i64.pow(u32::from(missing.min(MOST_DECIMALS))));
        amount.filter(|amount| *amount <= MOST).ok_or_else(|| format!("\"{}\" is too much money", self.text))
    }
}

impl Said for WrittenMoney {
    const WHAT: &'static str = "money";
    const EXAMPLE: &'static str = "4.20";

    fn parse(text: &str) -> Result<Self, String> {
        let text = text.trim();
        let wrong = || format!("\"{text}\" isn't an amount of money; write it as \"4.20\" or \"4.20 EUR\"");
        let is_figure = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
        let start = text.find(is_figure).ok_or_else(wrong)?;
        let end = text.rfind(is_figure).map_or(text.len(), |at| at + 1);
        let (before, number, after) = (&text[..start], &text[start..end], &text[end..]);
        if before.contains(['-', '−']) {
            return Err(format!("\"{text}\" is below 0; money is 0 or more here"));
        }
        let (whole, part) = number.split_once(['.', ',']).unwrap_or((number, ""));
        let is_number = |figures: &str| figures.chars().all(|c| c.is_ascii_digit());
        if whole.is_empty() || !is_number(whole) || !is_number(part) || (part.is_empty() && number.len() > whole.len())
        {
            return Err(format!("{}; thousands are not parted", wrong()));
        }
        let decimals = u8::try_from(part.len()).unwrap_or(u8::MAX);
        let figures = format!("{whole}{part}").parse().map_err(|_| format!("\"{text}\" is too much money"))?;
        let currency = match (before.trim(), after.trim()) {
            ("", "") => None,
            (name, "") | ("", name) => Some(name.to_owned()),
            _ => return Err(wrong()),
        };
        Ok(Self { text: text.to_owned(), figures, decimals, currency })
    }

    fn text(&self) -> &str {
        &self.text
    }
}

/// An amount times a share in hundredths of a per cent, halves away from 0.
pub fn share_of(amount: i64, share: i64) -> i64 {
    times_over(amount, share, 10_000)
}

/// An amount times one number over another, halves away from 0.
pub fn times_over(amount: i64, times: i64, over: i64) -> i64 {
    let (product, over) = (i128::from(amount) * i128::from(times), i128::from(over.max(1)));
    let half = if product < 0 { -over / 2 } else { over / 2 };
    i64::try_from((product + half) / over).unwrap_or(if product < 0 { i64::MIN } else { i64::MAX })
}

/// An amount rounded up to a step.
pub fn up_to_step(amount: i64, step: i64) -> i64 {
    if step <= 1 {
        amount
    } else {
        amount.div_euclid(step).saturating_add(i64::from(amount.rem_euclid(step) > 0)).saturating_mul(step)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    fn eur() -> Currency {
        Currency::of(Some("EUR"), None)
    }

    #[test]
    fn money_is_whole_numbers_of_the_smallest_unit() {
        for (text, amount) in [("4.20", 420), ("4,2", 420), ("17", 1700), ("EUR 0.05", 5), ("0.05 EUR", 5), ("0", 0)] {
            assert_eq!(WrittenMoney::parse(text).unwrap().amount(&eur()), Ok(amount), "{text}");
        }
        let whole = Currency::of(Some("JPY"), Some(0));
        assert_eq!(WrittenMoney::parse("450").unwrap().amount(&whole), Ok(450));
        assert_eq!(
            (whole.words(450), eur().words(5), eur().words(-1234)),
            ("JPY 450".into(), "EUR 0.05".into(), "EUR -12.34".into())
        );
    }

    #[test]
    fn what_is_no_money_is_told() {
        for (text, why) in [
            ("", "isn't an amount"),
            ("-3", "below 0"),
            ("1.250.00", "not parted"),
            ("4.", "isn't an amount"),
            ("a 4 b", "isn't an amount"),
        ] {
            let words = WrittenMoney::parse(text).unwrap_err();
            assert!(words.contains(why), "{text}: {words}");
        }
        let amount = |text: &str| WrittenMoney::parse(text).unwrap().amount(&eur()).unwrap_err();
        assert!(amount("4.20 USD").contains("in USD, and the money here is EUR"));
        assert!(amount("4.205").contains("more than 2 figures"));
        assert!(amount("99999999999999").contains("too much"));
    }

    #[test]
    fn halves_go_away_from_nothing_and_steps_go_up() {
        assert_eq!((share_of(1050, 1900), share_of(50, 100), share_of(-50, 100)), (200, 1, -1));
        assert_eq!((up_to_step(1201, 50), up_to_step(1200, 50), up_to_step(7, 1)), (1250, 1200, 7));
    }
}
