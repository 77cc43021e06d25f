//! The units of length that people write.

/// A unit of length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LengthUnit {
    /// 25.4 mm.
    Inch,
    /// 12 in.
    Foot,
    /// One millimetre.
    Millimeter,
    /// 10 mm.
    Centimeter,
    /// 1000 mm.
    Meter,
}

impl LengthUnit {
    /// Its sign.
    pub fn symbol(self) -> &'static str {
        match self {
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Millimeter => "mm",
            Self::Centimeter => "cm",
            Self::Meter => "m",
        }
    }

    /// How many millimetres it is; the inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    pub fn mm(self) -> f64 {
        let (numerator, denominator) = self.exact_mm();
        numerator as f64 / denominator as f64
    }

    /// Its millimetres as an exact fraction.
    pub(crate) fn exact_mm(self) -> (i128, i128) {
        match self {
            Self::Inch => (127, 5),
            Self::Foot => (1524, 5),
            Self::Millimeter => (1, 1),
            Self::Centimeter => (10, 1),
            Self::Meter => (1000, 1),
        }
    }

    /// The unit of this word, whatever its case.
    pub(crate) fn from_word(word: &str) -> Option<Self> {
        Some(match word.to_lowercase().as_str() {
            "in" | "inch" | "inches" | "ins" => Self::Inch,
            "ft" | "foot" | "feet" => Self::Foot,
            "mm" | "millimeter" | "millimetre" | "millimeters" | "millimetres" => Self::Millimeter,
            "cm" | "centimeter" | "centimetre" | "centimeters" | "centimetres" => Self::Centimeter,
            "m" | "meter" | "metre" | "meters" | "metres" => Self::Meter,
            _ => return None,
        })
    }
}
