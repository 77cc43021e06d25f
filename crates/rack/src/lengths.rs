//! A bare list of lengths to cut, without a plan: the file of `firstheat cut --lengths`.

use crate::cut::{Demand, Goal, Problem, Supply, Way};
use serde::Deserialize;
use thiserror::Error;

/// Why a list of lengths cannot be cut.
#[derive(Debug, Error)]
pub enum LengthsError {
    /// It is no JSON, or a key is missing or of the wrong kind.
    #[error("{0}")]
    File(#[from] serde_json::Error),
    /// A value makes no sense; which, what was found, and what is wanted.
    #[error("{0}")]
    Value(String),
}

/// The longest length: 1 km.
const LONGEST_MM: f64 = 1e6;
/// The highest price.
const DEAREST: f64 = 1e9;
/// The most bars and pieces.
const MOST: u64 = 1_000_000;
/// nm in a millimetre.
const NM: f64 = 1e6;

/// Lengths in mm, prices in whole money.
#[derive(Debug, Deserialize)]
struct LengthsFile {
    #[serde(default)]
    kerf: f64,
    #[serde(default)]
    unusable_end: f64,
    #[serde(default)]
    keep_from: Option<f64>,
    bars: Vec<BarLine>,
    pieces: Vec<PieceLine>,
    #[serde(default)]
    objective: Vec<GoalName>,
}

#[derive(Debug, Deserialize)]
struct BarLine {
    length: f64,
    #[serde(default)]
    count: Option<u64>,
    #[serde(default)]
    price: Option<f64>,
    #[serde(default)]
    section: Option<String>,
}

#[derive(Debug, Deserialize)]
struct PieceLine {
    #[serde(default)]
    name: Option<String>,
    count: u64,
    #[serde(default)]
    length: Option<f64>,
    #[serde(default)]
    section: Option<String>,
    #[serde(default)]
    from: Vec<WayLine>,
}

#[derive(Debug, Deserialize)]
struct WayLine {
    section: String,
    length: f64,
    #[serde(default)]
    extra: f64,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "lowercase")]
enum GoalName {
    Bars,
    Length,
    Cost,
    Scrap,
    Longest,
}

/// A list of lengths that was read.
#[derive(Clone, Debug)]
pub struct Lengths {
    /// What is to be cut.
    pub problem: Problem,
    /// The name of each piece where it has one, in the problem's order.
    pub names: Vec<Option<String>>,
}

/// Reads a list of lengths. Without an objective it is the cost where a bar has a price, else the bars, then scrap, then the
/// longest offcut.
///
/// # Errors
/// Where the text is no such list, or a length, a count or a price is none.
pub fn read(text: &str) -> Result<Lengths, LengthsError> {
    let file: LengthsFile = serde_json::from_str(text)?;
    let priced = file.bars.iter().any(|bar| bar.price.is_some());
    let end_nm = nm("unusable_end", file.unusable_end, true)?;
    let supplies =
        file.bars.iter().enumerate().map(|(at, bar)| supply(at, bar, end_nm)).collect::<Result<Vec<_>, _>>()?;
    let demands = file.pieces.iter().enumerate().map(|(at, piece)| demand(at, piece)).collect::<Result<Vec<_>, _>>()?;
    if demands.iter().map(|demand| demand.count).fold(0, u64::saturating_add) > MOST {
        return Err(LengthsError::Value(format!("more than {MOST} pieces are wanted; cut them in several lists")));
    }
    let problem = Problem {
        kerf_nm: nm("kerf", file.kerf, true)?,
        keep_from_nm: file.keep_from.map(|length| nm("keep_from", length, true)).transpose()?,
        supplies,
        demands,
        goals: goals(&file.objective, priced),
    };
    Ok(Lengths { problem, names: file.pieces.into_iter().map(|piece| piece.name).collect() })
}

fn goals(asked: &[GoalName], priced: bool) -> Vec<Goal> {
    let goal = |name: &GoalName| match name {
        GoalName::Bars => Goal::Bars,
        GoalName::Length => Goal::Length,
        GoalName::Cost => Goal::Cost,
        GoalName::Scrap => Goal::Scrap,
        GoalName::Longest => Goal::Longest,
    };
    if asked.is_empty() {
        return vec![if priced { Goal::Cost } else { Goal::Bars }, Goal::Scrap, Goal::Longest];
    }
    asked.iter().map(goal).collect()
}

fn supply(at: usize, bar: &BarLine, end_nm: i64) -> Result<Supply, LengthsError> {
    let count = bar.count.map(|count| count.min(MOST));
    Ok(Supply {
        section: bar.section.clone().unwrap_or_default(),
        length_nm: nm(&format!("bars[{at}].length"), bar.length, false)?,
        end_nm,
        count,
        price: money(&format!("bars[{at}].price"), bar.price.unwrap_or(0.0))?,
    })
}

fn demand(at: usize, piece: &PieceLine) -> Result<Demand, LengthsError> {
    let ways = match (piece.length, piece.from.as_slice()) {
        (Some(length), []) => vec![Way {
            section: piece.section.clone().unwrap_or_default(),
            length_nm: nm(&format!("pieces[{at}].length"), length, false)?,
            extra: 0,
        }],
        (None, [_, ..]) => {
            piece.from.iter().enumerate().map(|(way, line)| self::way(at, way, line)).collect::<Result<_, _>>()?
        }
        _ => {
            return Err(LengthsError::Value(format!(
                "pieces[{at}]: give it a length, or the sections that it may be cut from"
            )));
        }
    };
    Ok(Demand { count: piece.count, ways })
}

fn way(at: usize, way: usize, line: &WayLine) -> Result<Way, LengthsError> {
    let key = format!("pieces[{at}].from[{way}]");
    Ok(Way {
        section: line.section.clone(),
        length_nm: nm(&format!("{key}.length"), line.length, false)?,
        extra: money(&format!("{key}.extra"), line.extra)?,
    })
}

/// A length as whole nanometres.
fn nm(key: &str, mm: f64, may_be_0: bool) -> Result<i64, LengthsError> {
    let nm = (mm * NM).round();
    if (nm > 0.0 || (may_be_0 && mm == 0.0)) && mm <= LONGEST_MM {
        return Ok(nm as i64);
    }
    let least = if may_be_0 { "0 or more" } else { "more than 0" };
    Err(LengthsError::Value(format!("{key}: {mm} mm; a length here is {least}, and at most {LONGEST_MM} mm")))
}

/// Money as whole hundredths.
fn money(key: &str, money: f64) -> Result<i64, LengthsError> {
    if (0.0..=DEAREST).contains(&money) {
        return Ok((money * 100.0).round() as i64);
    }
    Err(LengthsError::Value(format!("{key}: {money}; a price is 0 or more, and at most {DEAREST}")))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::read;

    fn refusal(text: &str) -> String {
        read(text).map(|_| ()).unwrap_err().to_string()
    }

    #[test]
    fn what_makes_no_sense_is_refused_with_its_key() {
        let of = |bars: &str, pieces: &str| format!(r#"{{ "bars": [{bars}], "pieces": [{pieces}] }}"#);
        let piece = r#"{ "length": 500, "count": 1 }"#;
        assert!(refusal(&of(r#"{ "length": 0 }"#, piece)).starts_with("bars[0].length: 0 mm"));
        assert!(refusal(&of(r#"{ "length": -3 }"#, piece)).starts_with("bars[0].length: -3 mm"));
        assert!(refusal(&of(r#"{ "length": 1e300 }"#, piece)).starts_with("bars[0].length"));
        assert!(refusal(&of(r#"{ "length": 6000, "price": -1 }"#, piece)).starts_with("bars[0].price: -1"));
        assert!(refusal(&of(r#"{ "length": 6000 }"#, r#"{ "count": 2 }"#)).starts_with("pieces[0]: give it a length"));
        assert!(refusal(&of(r#"{ "length": 6000 }"#, r#"{ "length": 1, "count": 9000000 }"#)).starts_with("more than"));
        assert!(refusal(r#"{ "pieces": [] }"#).contains("bars"));
    }

    #[test]
    fn lengths_are_exact_to_a_nanometre() {
        let lengths =
            read(r#"{ "bars": [{ "length": 6096 }], "pieces": [{ "length": 608.17125, "count": 10 }] }"#).unwrap();
        assert_eq!(lengths.problem.demands[0].ways[0].length_nm, 608_171_250);
    }
}
