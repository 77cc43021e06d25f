//! How many of something, in words.

use std::fmt::Display;

/// How many of something: `1 bar`, `3 bars`, `0 bars`; for nouns whose plural only takes an s.
pub fn counted<N: Display + Copy + TryInto<u64>>(count: N, noun: &str) -> String {
    let plural = if count.try_into().is_ok_and(|count| count == 1) { "" } else { "s" };
    format!("{count} {noun}{plural}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_is_told_as_one_and_none_as_many() {
        assert_eq!([0, 1, 2].map(|count: usize| counted(count, "step")), ["0 steps", "1 step", "2 steps"]);
        assert_eq!(counted(1_i64, "bar"), "1 bar");
    }
}
