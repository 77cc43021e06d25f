//! Worked examples of the old books and clean geometry: bends, drawn and upset work, weights.
//!
//! Each case carries its source; `from memory` and `plane geometry` are said where they hold. Old books
//! reckon with π = 22/7 and round up to the next eighth or sixteenth of an inch, so their tolerances say so.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod bends;
mod drawn;
mod examples;
mod heats;
mod legs;
mod pieces;
mod weights;

use fh_core::balance::Balance;
use serde_json::{Value, json};
use tests::{balanced, mm, one_bar, segment};

/// How close an answer must come, and why.
#[derive(Clone, Copy, Debug)]
enum Tolerance {
    /// Geometry: a tenth of a per cent, and no shop rounding in it.
    Geometry,
    /// The printed answer uses π = 22/7, which is 0.04 % more than π.
    Print22over7,
    /// The book rounds up to the next eighth of an inch: the answer is at most the print, and at most 1/8 in below it.
    RoundsUp,
}

impl Tolerance {
    fn holds(self, got: f64, printed: f64) -> bool {
        match self {
            Self::Geometry => (got - printed).abs() <= 0.001 * printed,
            Self::Print22over7 => (got * (22.0 / 7.0 / std::f64::consts::PI) - printed).abs() <= 0.001 * printed,
            Self::RoundsUp => got <= printed + 1e-9 && got >= printed - 25.4 / 8.0,
        }
    }
}

const INCH: f64 = 25.4;

/// The length of bar that a segment of a plan takes, in mm.
fn bar_of(stock: &Value, segments: &[Value], at: usize) -> f64 {
    mm(segment(&balanced(&one_bar(stock, segments)), at).stock_length)
}

/// Compares with what the source prints.
#[track_caller]
fn check(source: &str, got: f64, printed: f64, tolerance: Tolerance) {
    assert!(tolerance.holds(got, printed), "{got} where {printed} is printed ({source}; {tolerance:?})");
}

/// A segment without a bend.
fn forged(form: &Value) -> Value {
    json!({ "name": "part", "form": form })
}

/// Whether the balance warns of a segment by this id.
fn warns(balance: &Balance, id: &str) -> bool {
    balance.findings.iter().any(|finding| finding.id == id && finding.severity >= fh_core::findings::Severity::Warning)
}
