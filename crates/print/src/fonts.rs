//! The fonts that are built into the program, so that a sheet looks and measures the same everywhere.
//!
//! Source Sans 3, under the SIL Open Font License; the licence lies beside the fonts.

/// How bold the words are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// For reading.
    Regular,
    /// For figures and headings.
    SemiBold,
}

/// The height of a capital or a figure as a share of the em (the fonts' own table, 660 of 1000 units).
pub const CAP_HEIGHT: f64 = 0.66;

/// How far letters reach below the baseline as a share of the em (measured on the letters g and p, rounded up).
pub const DESCENT: f64 = 0.22;

impl Weight {
    /// The font file.
    pub fn bytes(self) -> &'static [u8] {
        match self {
            Self::Regular => include_bytes!("../../../assets/fonts/SourceSans3-Regular.ttf"),
            Self::SemiBold => include_bytes!("../../../assets/fonts/SourceSans3-SemiBold.ttf"),
        }
    }

    /// Its name.
    pub fn font_name(self) -> &'static str {
        match self {
            Self::Regular => "Source Sans 3 Regular",
            Self::SemiBold => "Source Sans 3 SemiBold",
        }
    }
}
