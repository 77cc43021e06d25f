//! Today's date, by the computer's clock.

use std::time::{SystemTime, UNIX_EPOCH};

/// Seconds of a day.
const DAY: u64 = 86_400;

/// Today in universal time, as `2026-05-04`; none where the clock stands before 1970.
pub(super) fn today() -> Option<String> {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).ok()?;
    Some(date(since.as_secs() / DAY))
}

/// The date so many days after the first of January 1970, in the Gregorian calendar: every 400 years have 146,097 days.
fn date(days: u64) -> String {
    let mut left = days;
    let mut year = 1970;
    while left >= days_of(year) {
        left -= days_of(year);
        year += 1;
    }
    let february = if days_of(year) == 366 { 29 } else { 28 };
    let mut month = 1;
    for length in [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] {
        if left < length {
            break;
        }
        left -= length;
        month += 1;
    }
    format!("{year:04}-{month:02}-{:02}", left + 1)
}

fn days_of(year: u64) -> u64 {
    let is_leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    if is_leap { 366 } else { 365 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_counted_through_leap_years() {
        // 10957 days from 1970 to 2000 (30 years and 7 leap days), 59 more to the 29th of February.
        assert_eq!(
            (date(0), date(10_957), date(10_957 + 59)),
            ("1970-01-01".into(), "2000-01-01".into(), "2000-02-29".into())
        );
        assert_eq!(date(10_957 + 60), "2000-03-01");
        assert!(today().is_some_and(|today| today.len() == 10 && today.as_str() > "2026"));
    }
}
