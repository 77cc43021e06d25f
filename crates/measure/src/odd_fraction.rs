//! Fractions that no rule is divided in: `1/23 in` is more likely a slip of the fingers than a size.

use crate::scan::{Kind, Part, scan};
use crate::size::is_foot;
use crate::written_length::WrittenLength;

/// What rules divide an inch in: halves down to 64ths, twelfths on a framing square, tenths and hundredths on an
/// engineer's rule. Common practice, no source. Thirds and fifths are on no rule.
const OF_AN_INCH: [i128; 9] = [2, 4, 8, 10, 12, 16, 32, 64, 100];
/// A foot is divided in whole inches as well.
const OF_A_FOOT: [i128; 2] = [3, 6];

impl WrittenLength {
    /// The first fraction in the text that no rule is divided in, as it is written: `1/23` of `3 1/23 in`.
    pub fn odd_fraction(&self) -> Option<String> {
        let parts = scan(self.text()).ok()?;
        let odd = parts.iter().enumerate().find_map(|(at, part)| odd_at(&parts, at, part))?;
        Some(self.text().chars().take(odd.end).skip(odd.start).collect())
    }
}

/// The characters of an odd fraction that ends at a part.
fn odd_at(parts: &[Part], at: usize, part: &Part) -> Option<std::ops::Range<usize>> {
    let before = |back: usize| at.checked_sub(back).and_then(|before| parts.get(before));
    let (denominator, start) = match &part.kind {
        Kind::Vulgar(fraction) => (fraction.denominator(), part.at),
        Kind::Whole(denominator) if before(1).is_some_and(|part| part.kind == Kind::Slash) => {
            (*denominator, before(2)?.at)
        }
        _ => return None,
    };
    let is_of_feet = parts.get(at + 1).is_some_and(|next| is_foot(&next.kind));
    let is_there = OF_AN_INCH.contains(&denominator) || (is_of_feet && OF_A_FOOT.contains(&denominator));
    (!is_there).then_some(start..part.end)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::length_range::LengthRange;

    fn odd(text: &str) -> Option<String> {
        WrittenLength::parse(text, None, LengthRange::Any).unwrap().odd_fraction()
    }

    #[test]
    fn a_fraction_that_no_rule_has_is_found_wherever_it_is() {
        for (text, fraction) in [
            ("3 1/23 in", "1/23"),
            ("1/3 in", "1/3"),
            ("⅓ in", "⅓"),
            ("2 3/24\"", "3/24"),
            ("1/4 to 9/31 in", "9/31"),
            ("6 in ± 1/30 in", "1/30"),
            ("1' 2 3/7\"", "3/7"),
            ("1/128 in", "1/128"),
        ] {
            assert_eq!(odd(text).as_deref(), Some(fraction), "{text}");
        }
    }

    #[test]
    fn what_a_rule_shows_is_no_odd_fraction() {
        for text in [
            "3 1/2 in",
            "1/4\"",
            "5/8 in",
            "3 13/16 in",
            "31/32 in",
            "63/64 in",
            "¼ in",
            "3/10 in",
            "7/12 in",
            "33/100 in",
            "1/3 ft",
            "1/6'",
            "3.0435 in",
            "82.5 mm",
            "1' 2 3/8\"",
            "1/4 to 9/32 in",
        ] {
            assert_eq!(odd(text), None, "{text}");
        }
    }
}
