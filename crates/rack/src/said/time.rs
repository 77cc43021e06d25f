//! A length of time: `2 h`, `40 min`, `1 h 30 min`.

use super::written::Said;

/// A time as it was written.
#[derive(Clone, Debug, PartialEq)]
pub struct WrittenTime {
    text: String,
    /// How many minutes.
    pub minutes: f64,
}

/// The longest: a working year and more.
const MOST_MINUTES: f64 = 200_000.0;

impl Said for WrittenTime {
    const WHAT: &'static str = "a time";
    const EXAMPLE: &'static str = "1 h 30 min";

    fn parse(text: &str) -> Result<Self, String> {
        let text = text.trim();
        let wrong = || format!("\"{text}\" isn't a time; write it as \"2 h\", \"40 min\" or \"1 h 30 min\"");
        let (mut minutes, mut number) = (0.0, None::<f64>);
        let mut some = false;
        for word in words(text) {
            match (number.take(), word.as_str()) {
                (Some(hours), "h" | "hour" | "hours") => minutes += hours * 60.0,
                (Some(some), "min" | "minute" | "minutes") => minutes += some,
                (None, figures) => number = Some(figures.replace(',', ".").parse().map_err(|_| wrong())?),
                _ => return Err(wrong()),
            }
            some = true;
        }
        if !some || number.is_some() || !(0.0..=MOST_MINUTES).contains(&minutes) {
            return Err(wrong());
        }
        Ok(Self { text: text.to_owned(), minutes })
    }

    fn text(&self) -> &str {
        &self.text
    }
}

/// Figures and words apart, whether a space stands between them or not.
fn words(text: &str) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    let is_figure = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
    let mut last = ' ';
    for c in text.chars() {
        if c != ' ' {
            match all.last_mut() {
                Some(word) if last != ' ' && is_figure(last) == is_figure(c) => word.push(c),
                _ => all.push(c.to_string()),
            }
        }
        last = c;
    }
    all
}

/// Minutes in words: `1 h 25 min`.
pub fn time_words(minutes: f64) -> String {
    let whole = minutes.round().max(0.0) as i64;
    match (whole / 60, whole % 60) {
        (0, rest) => format!("{rest} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, rest) => format!("{hours} h {rest} min"),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn times_are_minutes() {
        for (text, minutes) in
            [("2 h", 120.0), ("40min", 40.0), ("1 h 30 min", 90.0), ("1,5 hours", 90.0), ("0 min", 0.0)]
        {
            assert!((WrittenTime::parse(text).unwrap().minutes - minutes).abs() < 1e-9, "{text}");
        }
        for text in ["", "2", "h", "-1 h", "2 days", "1 h 30"] {
            assert!(WrittenTime::parse(text).is_err(), "{text}");
        }
        assert_eq!(
            (time_words(90.0), time_words(59.6), time_words(120.2)),
            ("1 h 30 min".into(), "1 h".into(), "2 h".into())
        );
    }
}
