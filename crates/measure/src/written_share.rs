//! A share as it was written.

use crate::error::{MeasureError, Problem};
use crate::exact::Exact;
use crate::reader::Reader;
use crate::scan::{Kind, scan};

/// A share of a whole, from 0 to below 100 %, that keeps its text.
#[derive(Clone, Debug, PartialEq)]
pub struct WrittenShare {
    text: String,
    ratio: f64,
}

const EXAMPLE: &str = "2 % or 2,5 %";

impl WrittenShare {
    /// Reads a share: `2 %`, `2,5 %`. A bare number is per cent where `bare_is_percent`.
    ///
    /// # Errors
    /// Where the text is no share from 0 to below 100 %: what was read, where, and what would be right.
    pub fn parse(text: &str, bare_is_percent: bool) -> Result<Self, MeasureError> {
        let trimmed = text.trim();
        read(trimmed, bare_is_percent).map_err(|problem| problem.of(trimmed, EXAMPLE))
    }

    /// The text as typed.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The share, 0 to 1.
    pub fn ratio(&self) -> f64 {
        self.ratio
    }
}

fn read(text: &str, bare_is_percent: bool) -> Result<WrittenShare, Problem> {
    let parts = scan(text)?;
    let mut reader = Reader::new(&parts, text.chars().count());
    if parts.is_empty() {
        return Err(Problem::new(0, "nothing is written"));
    }
    if reader.sign() {
        return Err(Problem::new(0, "a share is not below 0"));
    }
    let percent = reader.number()?;
    let signed = reader.take_if(&Kind::Word("%".to_owned()));
    reader.finish()?;
    if !signed && !bare_is_percent {
        return Err(Problem::new(reader.at(), "the sign % is missing"));
    }
    let ratio = Exact::new(1, 100).and_then(|hundredth| percent.times(hundredth)).map(Exact::value);
    let ratio = ratio.filter(|ratio| *ratio < 1.0).ok_or_else(|| Problem::new(0, "a share is below 100 %"))?;
    let text = if signed { text.to_owned() } else { format!("{text} %") };
    Ok(WrittenShare { text, ratio })
}
