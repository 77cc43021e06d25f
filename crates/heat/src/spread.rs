//! How a bar spreads and lengthens under one pass of flat tools.

use super::estimate::Estimate;

/// The widest bite over the bar's width that spreads more than a narrower one; wider bites are taken as this.
const WIDEST_BITE: f64 = 10.0 / 3.0;
/// How far the share that spreads can be off; Z. Wusatowski's formula of rolling (*Fundamentals of Rolling*, 1969,
/// from memory) agrees so far.
pub const DOUBT: f64 = 0.10;

/// The share of the strain that goes into width, by the bite over the width before it.
///
/// `s = 0.14 + 0.36 (b/w) - 0.054 (b/w)²` (Tomlinson and Stringer 1959, from memory), held at its greatest from b/w 3.33 on.
pub fn spread_share(bite_over_width: f64) -> f64 {
    let bite = if bite_over_width.is_finite() { bite_over_width.clamp(0.0, WIDEST_BITE) } else { WIDEST_BITE };
    0.14 + bite * (0.36 - 0.054 * bite)
}

/// One pass: the whole length pressed once from a height to a lesser one, bite beside bite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pass {
    /// Height before, in mm: along the blow.
    pub height_before_mm: f64,
    /// Width before, in mm.
    pub width_before_mm: f64,
    /// Height after, in mm.
    pub height_after_mm: f64,
    /// Width after, in mm.
    pub width_after_mm: f64,
    /// Length of one bite along the bar, in mm.
    pub bite_mm: f64,
    /// The share of the strain that went into width.
    pub spread: f64,
    /// How many times longer it made the bar.
    pub longer: f64,
}

/// Why a pass lies outside of what the formula was measured on: steel near 1000 to 1100 °C between flat parallel tools.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpreadDoubt {
    /// The bite is under 0.3 of the width: it indents more than it draws.
    BiteNarrow,
    /// The bite is over 3 times the width: it mostly spreads.
    BiteWide,
    /// More than a quarter of the height taken in one pass: folds and laps.
    TakenDeep,
    /// More than twice as high as wide: it may lean or buckle.
    TallSection,
    /// More than twice as wide as high: friction under the face holds it back.
    WideSection,
}

/// The most that one pass takes of the height before it folds or laps: a quarter (about 25 to 30 %, from memory).
pub const DEEPEST: f64 = 0.25;

impl Pass {
    /// A pass by its sizes in mm; none where they are no positive numbers or nothing is taken.
    pub fn of(height_before_mm: f64, width_before_mm: f64, height_after_mm: f64, bite_mm: f64) -> Option<Self> {
        let sizes = [height_before_mm, width_before_mm, height_after_mm, bite_mm];
        let sound = sizes.iter().all(|size| (1e-3..1e6).contains(size)) && height_after_mm < height_before_mm;
        let spread = spread_share(bite_mm / width_before_mm);
        let left = height_after_mm / height_before_mm;
        sound.then(|| Self {
            height_before_mm,
            width_before_mm,
            height_after_mm,
            width_after_mm: width_before_mm * left.powf(-spread),
            bite_mm,
            spread,
            longer: left.powf(spread - 1.0),
        })
    }

    /// The logarithmic strain of the height.
    pub fn strain(&self) -> f64 {
        (self.height_before_mm / self.height_after_mm).ln()
    }

    /// The effective strain: `ln(h0/h1) sqrt(4/3 (1 - s + s²))` (von Mises, for strains that keep the volume).
    pub fn effective_strain(&self) -> f64 {
        let s = self.spread;
        self.strain() * (4.0 / 3.0 * (1.0 - s + s * s)).sqrt()
    }

    /// The width after it in mm, with the doubt of the formula.
    pub fn width_estimate_mm(&self) -> Estimate {
        self.with_spread(|spread| self.width_before_mm * (spread * self.strain()).exp())
    }

    /// How many times longer it makes the bar, with the doubt of the formula.
    pub fn longer_estimate(&self) -> Estimate {
        let longest_first = self.with_spread(|spread| ((1.0 - spread) * self.strain()).exp());
        Estimate { low: longest_first.high, likely: longest_first.likely, high: longest_first.low }
    }

    fn with_spread(&self, value: impl Fn(f64) -> f64) -> Estimate {
        let [low, likely, high] = [-DOUBT, 0.0, DOUBT].map(|off| value((self.spread + off).clamp(0.0, 1.0)));
        Estimate { low, likely, high }
    }

    /// Why the formula is stretched here; empty where it is not (limits from memory).
    pub fn doubts(&self) -> Vec<SpreadDoubt> {
        let bite = self.bite_mm / self.width_before_mm;
        let shape = self.width_before_mm / self.height_before_mm;
        let all = [
            (bite < 0.3, SpreadDoubt::BiteNarrow),
            (bite > 3.0, SpreadDoubt::BiteWide),
            (1.0 - self.height_after_mm / self.height_before_mm > DEEPEST, SpreadDoubt::TakenDeep),
            (shape < 0.5, SpreadDoubt::TallSection),
            (shape > 2.0, SpreadDoubt::WideSection),
        ];
        all.into_iter().filter(|(is_so, _)| *is_so).map(|(_, doubt)| doubt).collect()
    }
}

/// How many times wider a peen makes a flat, its ridge along the bar: `thinner` is thickness after over before.
///
/// By symmetry with drawing the share that goes into width is `1 - s(t/l)`, t the ridge's contact width, l its length: derived,
/// not verified.
pub fn peened_width_ratio(thinner: f64, ridge_width_mm: f64, ridge_length_mm: f64) -> Option<Estimate> {
    let sound = (1e-3..=1.0).contains(&thinner) && ridge_width_mm > 0.0 && ridge_length_mm > 0.0;
    let share = 1.0 - spread_share(ridge_width_mm / ridge_length_mm);
    let at = |share: f64| thinner.powf(-share.clamp(0.0, 1.0));
    sound.then(|| Estimate { low: at(share - DOUBT), likely: at(share), high: at(share + DOUBT) })
}
