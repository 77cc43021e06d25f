//! Shared helpers of the cross-crate tests: plans written as files are, balanced, and compared.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a helper of tests fails the test")]

use fh_core::balance::{Balance, SegmentBalance, balance};
use fh_core::file;
use fh_core::plan::Plan;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use uom::si::area::square_millimeter;
use uom::si::f64::{Area, Length, Mass, Volume};
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::volume::cubic_millimeter;

/// A way to write a length of so many millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spelling {
    /// `82.5 mm`
    Millimeters,
    /// `82,5 mm`
    DecimalComma,
    /// `8.25 cm`
    Centimeters,
    /// `0.0825 m`
    Meters,
    /// `3.24803149606 in`
    Inches,
    /// `3.24803149606"`
    InchMark,
    /// `0.270669291339 ft`
    Feet,
}

impl Spelling {
    /// Every way.
    pub const ALL: [Self; 7] = [
        Self::Millimeters,
        Self::DecimalComma,
        Self::Centimeters,
        Self::Meters,
        Self::Inches,
        Self::InchMark,
        Self::Feet,
    ];

    /// The length as text.
    pub fn of(self, mm: f64) -> String {
        match self {
            Self::Millimeters => format!("{} mm", figures(mm)),
            // A comma before three figures may mean thousands, so four stand there.
            Self::DecimalComma => format!("{mm:.4} mm").replace('.', ","),
            Self::Centimeters => format!("{} cm", figures(mm / 10.0)),
            Self::Meters => format!("{} m", figures(mm / 1000.0)),
            Self::Inches => format!("{} in", figures(mm / 25.4)),
            Self::InchMark => format!("{}\"", figures(mm / 25.4)),
            Self::Feet => format!("{} ft", figures(mm / 304.8)),
        }
    }
}

/// A number with 12 figures: its error is far below every tolerance.
pub fn figures(value: f64) -> String {
    format!("{value:.11e}").parse::<f64>().unwrap_or(value).to_string()
}

/// A plan of one bar in millimetres.
pub fn one_bar(stock: &Value, segments: &[Value]) -> Value {
    json!({
        "firstheat": 1,
        "title": "test piece",
        "units": { "length": "mm", "marks": "0.1 mm" },
        "bars": [{ "name": "bar", "stock": stock, "segments": segments }],
    })
}

/// The plan that is read from this text, as a file would be.
pub fn read(plan: &Value) -> Plan {
    let text = serde_json::to_string_pretty(plan).unwrap();
    file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

/// The plan read and balanced.
pub fn balanced(plan: &Value) -> Balance {
    balance(&read(plan))
}

/// The segment at a place of the first bar.
pub fn segment(balance: &Balance, at: usize) -> &SegmentBalance {
    &balance.bars[0].segments[at]
}

/// Fails where a value is not the wanted one to a share of it.
pub fn assert_close(what: &str, got: f64, want: f64, share: f64) {
    let off = (got - want).abs();
    assert!(off <= share * want.abs().max(1e-3), "{what}: {got} where {want} is right (off by {:e})", off / want);
}

/// The millimetres of a length.
pub fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// The square millimetres of an area.
pub fn mm2(area: Area) -> f64 {
    area.get::<square_millimeter>()
}

/// The cubic millimetres of a volume.
pub fn mm3(volume: Volume) -> f64 {
    volume.get::<cubic_millimeter>()
}

/// The kilograms of a mass.
pub fn kg(mass: Mass) -> f64 {
    mass.get::<kilogram>()
}

/// The folder of the whole project.
pub fn project() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_owned()
}
