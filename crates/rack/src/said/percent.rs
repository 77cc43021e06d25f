//! A share in per cent, which may be above 100: `25 %`, `12,5 %`.

use super::written::Said;

/// A share in hundredths of a per cent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Percent {
    text: String,
    /// How many hundredths of a per cent.
    pub hundredths: i64,
}

/// The most: 1000 %.
const MOST: i64 = 100_000;

impl Said for Percent {
    const WHAT: &'static str = "a share";
    const EXAMPLE: &'static str = "25 %";

    fn parse(text: &str) -> Result<Self, String> {
        let text = text.trim();
        let wrong = || format!("\"{text}\" isn't a share; write it as \"25 %\" or \"12.5 %\", from 0 to 1000 %");
        let number = text.strip_suffix('%').ok_or_else(wrong)?.trim();
        let (whole, part) = number.split_once(['.', ',']).unwrap_or((number, "0"));
        let is_number = |figures: &str| !figures.is_empty() && figures.chars().all(|c| c.is_ascii_digit());
        if !is_number(whole) || !is_number(part) || part.len() > 2 {
            return Err(wrong());
        }
        let hundredths = format!("{whole}{part:0<2}").parse().ok().filter(|share| *share <= MOST).ok_or_else(wrong)?;
        Ok(Self { text: text.to_owned(), hundredths })
    }

    fn text(&self) -> &str {
        &self.text
    }
}

/// Hundredths of a per cent in words: `12.5 %`.
pub fn percent_words(hundredths: i64) -> String {
    let text = format!("{}.{:02}", hundredths / 100, hundredths.rem_euclid(100));
    format!("{} %", text.trim_end_matches('0').trim_end_matches('.'))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn shares_are_hundredths_of_a_per_cent() {
        for (text, hundredths) in [("25 %", 2500), ("12,5%", 1250), ("0 %", 0), ("150.25 %", 15025)] {
            assert_eq!(Percent::parse(text).unwrap().hundredths, hundredths);
        }
        for text in ["25", "-5 %", "2000 %", "1.234 %", "%", "a %"] {
            assert!(Percent::parse(text).is_err(), "{text}");
        }
        assert_eq!(
            (percent_words(1250), percent_words(2500), percent_words(5)),
            ("12.5 %".into(), "25 %".into(), "0.05 %".into())
        );
    }
}
