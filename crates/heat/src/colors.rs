//! Words for the colors of heat, each with the author of its scale: they differ by 150 °C for one word.
//!
//! A color word stands beside a temperature, never instead of it; a glow is first seen at about 400 °C in the dark, 474 at
//! twilight, 525 in daylight, 581 in sunlight (*Machinery's Handbook*, 12th ed., from memory).

/// A word for a heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatColor {
    /// The word.
    pub word: &'static str,
    /// From how many °C on it is used; the next row's begins where it ends.
    pub from_celsius: f64,
}

/// A published scale of heat colors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColorScale {
    /// Who wrote it, and when.
    pub author: &'static str,
    /// Where it is from, or `from memory`.
    pub source: &'static str,
    /// Its words from the coolest on.
    pub colors: &'static [HeatColor],
}

const fn color(word: &'static str, from_celsius: f64) -> HeatColor {
    HeatColor { word, from_celsius }
}

/// Chapman's bands.
pub const CHAPMAN: ColorScale = ColorScale {
    author: "Chapman 1972",
    source: "W. A. J. Chapman, Workshop Technology part 1, 5th ed. 1972, as quoted in the Wikipedia article Red heat",
    colors: &[
        color("black red", 426.0),
        color("very dark red", 594.0),
        color("dark red", 705.0),
        color("cherry red", 815.0),
        color("light cherry red", 871.0),
        color("orange", 982.0),
        color("yellow", 1093.0),
        color("yellow white", 1259.0),
        color("white", 1315.0),
    ],
};

/// The boiler makers' points, each taken as the beginning of its word.
pub const STIRLING: ColorScale = ColorScale {
    author: "Stirling 1905",
    source: "Stirling Boiler Co., A Book of Steam for Engineers, 1905, p. 50, as quoted in the Wikipedia article Red heat",
    colors: &[
        color("just visible", 525.0),
        color("dull red", 699.0),
        color("dull cherry", 800.0),
        color("full cherry", 900.0),
        color("clear cherry", 1000.0),
        color("deep orange", 1100.0),
        color("clear orange", 1200.0),
        color("white", 1300.0),
        color("bright white", 1400.0),
        color("dazzling white", 1500.0),
    ],
};

/// White and Taylor's points, given in °F, each taken as the beginning of its word.
pub const WHITE_AND_TAYLOR: ColorScale = ColorScale {
    author: "White and Taylor 1899",
    source: "from memory",
    colors: &[
        color("blood red", 566.0),
        color("dark cherry", 635.0),
        color("medium cherry", 677.0),
        color("cherry", 746.0),
        color("bright cherry", 843.0),
        color("salmon", 899.0),
        color("light salmon", 941.0),
        color("yellow", 996.0),
        color("light yellow", 1079.0),
        color("white", 1204.0),
    ],
};

/// Every scale.
pub const SCALES: [ColorScale; 3] = [CHAPMAN, STIRLING, WHITE_AND_TAYLOR];

impl ColorScale {
    /// The word for a temperature in °C; none where nothing glows.
    pub fn word(&self, celsius: f64) -> Option<&'static str> {
        self.colors.iter().rev().find(|color| celsius >= color.from_celsius).map(|color| color.word)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scales_disagree_over_cherry() {
        assert_eq!(CHAPMAN.word(820.0), Some("cherry red"));
        assert_eq!(STIRLING.word(820.0), Some("dull cherry"));
        assert_eq!(WHITE_AND_TAYLOR.word(820.0), Some("cherry"));
        assert!(SCALES.iter().all(|scale| scale.word(20.0).is_none() && scale.word(f64::NAN).is_none()));
    }

    #[test]
    fn every_scale_goes_up() {
        for scale in SCALES {
            assert!(
                scale.colors.windows(2).all(|pair| pair[0].from_celsius < pair[1].from_celsius),
                "{}",
                scale.author
            );
        }
    }
}
