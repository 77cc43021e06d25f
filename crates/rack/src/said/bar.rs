//! Bars as they are said: `3 x 12 mm square, 2.4 m`.

use super::section;
use super::written::Said;
use fh_core::plan::SectionSpec;
use fh_measure::{LengthRange, LengthUnit, WrittenLength};

/// The most bars in one line.
pub const MOST_BARS: u32 = 100_000;

/// The longest bar in mm: 100 m.
const LONGEST_MM: f64 = 1e5;

const EXAMPLES: &str = "say it as \"12 mm square, 2.4 m\" or \"3 x 30 x 8 mm flat, 1500 mm\"";

/// Bars of one section and one length.
#[derive(Clone, Debug, PartialEq)]
pub struct SaidBar {
    text: String,
    /// How many.
    pub count: u32,
    /// Their section.
    pub section: SectionSpec,
    /// The length of one.
    pub length: WrittenLength,
}

impl SaidBar {
    /// So many bars of a section and a length.
    pub fn new(count: u32, section: &SectionSpec, length: &WrittenLength) -> Self {
        let text = words(count, &section.describe(), length.text());
        Self { text, count, section: section.clone(), length: length.clone() }
    }

    /// The same, but so many of them; the words for section and length stay.
    #[must_use]
    pub fn with_count(&self, count: u32) -> Self {
        if count == self.count {
            return self.clone();
        }
        let of = counted(&self.text).map_or(self.text.as_str(), |(_, of)| of);
        Self { text: if count == 1 { of.to_owned() } else { format!("{count} x {of}") }, count, ..self.clone() }
    }

    /// The length of one in nm.
    pub fn length_nm(&self) -> i64 {
        (self.length.mm() * 1e6).round() as i64
    }
}

fn words(count: u32, section: &str, length: &str) -> String {
    let count = if count == 1 { String::new() } else { format!("{count} x ") };
    format!("{count}{section}, {length}")
}

impl Said for SaidBar {
    const WHAT: &'static str = "a bar";
    const EXAMPLE: &'static str = "3 x 12 mm square, 2.4 m";

    fn parse(text: &str) -> Result<Self, String> {
        let text = text.trim();
        let Some((head, length)) = split(text) else {
            return Err(format!("\"{text}\": the length is missing behind a comma; {EXAMPLES}"));
        };
        let length = WrittenLength::parse(length.trim(), None, LengthRange::AboveZero)
            .map_err(|error| format!("the length of the bar \"{text}\": {error}"))?;
        if length.is_range() || length.mm() > LONGEST_MM {
            return Err(format!("the length of the bar \"{text}\" is one length, and at most 100 m"));
        }
        // What reads as a section is one; else the first figure tells how many there are.
        let unit = Some(section::unit_of(head).unwrap_or_else(|| unit_beside(&length)));
        let (count, section) = match (section::parse_in(head, unit), counted(head)) {
            (Ok(section), _) => (1, section),
            (Err(_), Some((count, rest))) => (count, section::parse_in(rest, unit)?),
            (Err(why), None) => return Err(why),
        };
        if count == 0 || count > MOST_BARS {
            return Err(format!("\"{text}\": {count} bars; a line has 1 to {MOST_BARS}"));
        }
        Ok(Self { text: text.to_owned(), count, section, length })
    }

    fn text(&self) -> &str {
        &self.text
    }
}

/// The unit of a section whose own words name none: what goes with that of its length.
fn unit_beside(length: &WrittenLength) -> LengthUnit {
    match length.unit() {
        LengthUnit::Inch | LengthUnit::Foot => LengthUnit::Inch,
        LengthUnit::Millimeter | LengthUnit::Centimeter | LengthUnit::Meter => LengthUnit::Millimeter,
    }
}

/// The section and the length: the last comma with a space behind it parts them, for `2,4 m` has one of its own.
fn split(text: &str) -> Option<(&str, &str)> {
    text.rsplit_once(", ").or_else(|| text.rsplit_once(','))
}

/// A count and what it counts: `3 x …`.
fn counted(text: &str) -> Option<(u32, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit())?;
    let rest = text.get(end..)?.trim_start();
    let rest = rest.strip_prefix(['x', 'X', '×'])?;
    text.get(..end)?.parse().ok().map(|count| (count, rest.trim_start()))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    fn said(text: &str) -> (u32, String, i64) {
        let bar = SaidBar::parse(text).unwrap();
        assert_eq!(bar.text(), text);
        (bar.count, bar.section.describe(), bar.length_nm() / 1_000_000)
    }

    #[test]
    fn bars_are_understood_as_they_are_said() {
        assert_eq!(said("3 x 12 mm square, 2.4 m"), (3, "12 mm square".to_owned(), 2400));
        assert_eq!(said("12 mm square, 2,4 m"), (1, "12 mm square".to_owned(), 2400));
        assert_eq!(said("2 x 30 x 8 mm flat, 1500 mm"), (2, "30 mm × 8 mm flat".to_owned(), 1500));
        assert_eq!(said("30 x 8 mm flat, 6 m"), (1, "30 mm × 8 mm flat".to_owned(), 6000));
        assert_eq!(said("4 × 1/2 in round, 20 ft"), (4, "1/2 in round".to_owned(), 6096));
        assert_eq!(said("2 x 1/2 square, 30 in"), (2, "1/2 in square".to_owned(), 762));
        assert_eq!(said("3 x 1 x 1/4 flat, 20 ft"), (3, "1 in × 1/4 in flat".to_owned(), 6096));
        assert_eq!(said("12 square, 2.4 m"), (1, "12 mm square".to_owned(), 2400));
        assert_eq!(said("1/2 in square, 7' 3 1/2\""), (1, "1/2 in square".to_owned(), 2222));
    }

    #[test]
    fn a_bar_without_length_of_length_0_or_of_no_section_is_told() {
        for (text, why) in [
            ("12 mm square", "the length is missing"),
            ("12 mm square, 0 mm", "greater than 0"),
            ("12 mm square, -3 m", "12 mm square, -3 m"),
            ("0 x 12 mm square, 1 m", "0 bars"),
            ("9999999 x 12 mm square, 1 m", "9999999 bars"),
            ("12 mm, 1 m", "is not a bar shape"),
            ("12 mm square, 200 m", "at most 100 m"),
        ] {
            let words = SaidBar::parse(text).unwrap_err();
            assert!(words.contains(why), "{text}: {words}");
        }
    }

    #[test]
    fn another_count_keeps_the_words() {
        let bar = SaidBar::parse("3 x 1/2\" square, 20'").unwrap();
        assert_eq!(bar.with_count(2).text(), "2 x 1/2\" square, 20'");
        assert_eq!(bar.with_count(1).text(), "1/2\" square, 20'");
        assert_eq!(bar.with_count(1).with_count(5).text(), "5 x 1/2\" square, 20'");
    }
}
