//! Quantities as people write them: parse, keep as typed, print, round. Knows nothing of forging.
//!
//! A written quantity keeps its text and its value. The value is the correctly rounded number of exactly what was
//! typed, and the text is what goes back into the file. A length may be written as a range; its value is then the middle.

mod counted;
mod crossed;
mod error;
mod exact;
mod file_text;
mod format;
mod format_length;
mod length_range;
mod length_unit;
mod odd_fraction;
mod plain;
mod reader;
mod rounded_length;
mod rounding;
mod scan;
mod size;
mod span;
mod worked;
mod written_angle;
mod written_length;
mod written_share;

pub use counted::counted;
pub use error::MeasureError;
pub use file_text::{signed, zero_allowed};
pub use format::{format_decimal, format_exact};
pub use format_length::format_length;
pub use length_range::LengthRange;
pub use length_unit::LengthUnit;
pub use plain::{in_mm, in_mm2, in_mm3, mm, mm2, mm3};
pub use rounded_length::RoundedLength;
pub use rounding::Rounding;
pub use written_angle::WrittenAngle;
pub use written_length::WrittenLength;
pub use written_share::WrittenShare;
