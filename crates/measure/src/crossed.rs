//! Sizes with a cross between them: `30 x 8 mm`, `1 × 1/8`.

use crate::error::MeasureError;
use crate::length_range::LengthRange;
use crate::length_unit::LengthUnit;
use crate::written_length::WrittenLength;

/// What stands between two sizes.
const CROSSES: [char; 3] = ['x', 'X', '×'];

impl WrittenLength {
    /// Reads sizes with a cross between them. The unit of the last one also counts for those that have none; where it has none
    /// either, they are in `unit`. Each may be a sum.
    ///
    /// # Errors
    /// Where one of them is no size above 0.
    pub fn crossed(text: &str, unit: Option<LengthUnit>) -> Result<Vec<Self>, MeasureError> {
        let parts: Vec<&str> = text.split(CROSSES).map(str::trim).collect();
        let said = parts.last().map_or("", |last| unit_of(last));
        let with_unit = |part: &&str| match unit_of(part) {
            "" if !part.is_empty() && !said.is_empty() => format!("{part} {said}"),
            _ => (*part).to_owned(),
        };
        let range = LengthRange::AboveZero;
        let read = |part: &&str| match unit {
            Some(unit) => Self::typed(&with_unit(part), unit, range, None),
            None => Self::parse(&with_unit(part), None, range),
        };
        parts.iter().map(read).collect()
    }
}

/// What stands behind the last figure of a size.
fn unit_of(size: &str) -> &str {
    let end_of_number =
        size.rfind(char::is_numeric).and_then(|at| size[at..].chars().next().map(|c| at + c.len_utf8()));
    size[end_of_number.unwrap_or(0)..].trim()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;

    fn texts(text: &str, unit: Option<LengthUnit>) -> Vec<String> {
        WrittenLength::crossed(text, unit).unwrap().iter().map(|size| size.text().to_owned()).collect()
    }

    #[test]
    fn the_unit_of_the_last_size_counts_for_all() {
        assert_eq!(texts("30 x 8 mm", Some(LengthUnit::Inch)), ["30 mm", "8 mm"]);
        assert_eq!(texts("1 × 1/8", Some(LengthUnit::Inch)), ["1 in", "1/8 in"]);
        assert_eq!(texts("1\" x 6 mm", None), ["1\"", "6 mm"]);
        assert_eq!(texts("2 - 1/2 X 1/4", Some(LengthUnit::Inch)), ["1 1/2 in", "1/4 in"]);
    }

    #[test]
    fn what_is_no_size_is_refused() {
        for text in ["", "x", "3 x", "30 x -8", "a x b"] {
            assert!(WrittenLength::crossed(text, Some(LengthUnit::Millimeter)).is_err(), "{text}");
        }
        assert!(WrittenLength::crossed("30 x 8", None).is_err());
    }
}
