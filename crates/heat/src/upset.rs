//! Upsetting: how long a hot length may be before it folds, and what it takes.

use super::estimate::Estimate;

/// What to think of a free hot length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UpsetLimit {
    /// It goes down by itself.
    Easy,
    /// Over 2 thicknesses: keep it straight, correct each bend at once.
    Watch,
    /// Over 2.5: likely to fold; take a shorter heat, or upset in stages.
    Likely,
    /// 3 and over: it folds (Forging Industry Association, rule 1: three diameters in one blow).
    Folds,
}

/// An upset of a length from one diameter to a greater one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Upset {
    /// Diameter before, in mm; the side for a square.
    pub before_mm: f64,
    /// Diameter after, in mm.
    pub after_mm: f64,
    /// The hot length before, in mm: what is above about 950 °C counts, the cold bar beside it guides.
    pub hot_length_mm: f64,
}

impl Upset {
    /// By its sizes in mm; none where they are no sizes or it grows no thicker.
    pub fn of(before_mm: f64, after_mm: f64, hot_length_mm: f64) -> Option<Self> {
        let sound = [before_mm, after_mm, hot_length_mm].iter().all(|size| (1e-2..1e5).contains(size));
        (sound && after_mm > before_mm).then_some(Self { before_mm, after_mm, hot_length_mm })
    }

    /// The length after it in mm: volume kept.
    pub fn length_after_mm(&self) -> f64 {
        self.hot_length_mm * (self.before_mm / self.after_mm).powi(2)
    }

    /// Thicknesses of free hot length.
    pub fn slenderness(&self) -> f64 {
        self.hot_length_mm / self.before_mm
    }

    /// What to think of its free length (Forging Industry Association and common practice).
    pub fn limit(&self) -> UpsetLimit {
        match self.slenderness() {
            ratio if ratio >= 3.0 => UpsetLimit::Folds,
            ratio if ratio > 2.5 => UpsetLimit::Likely,
            ratio if ratio > 2.0 => UpsetLimit::Watch,
            _ => UpsetLimit::Easy,
        }
    }

    /// The logarithmic strain.
    pub fn strain(&self) -> f64 {
        2.0 * (self.after_mm / self.before_mm).ln()
    }

    /// The work in J at a flow stress, `V sigma Q ln(L0/L1)` with Siebel's friction at the mean of both shapes.
    pub fn work_joules(&self, stress: Estimate) -> Estimate {
        let volume_mm3 = std::f64::consts::FRAC_PI_4 * self.before_mm * self.before_mm * self.hot_length_mm;
        let flatness = (self.before_mm + self.after_mm) / (self.hot_length_mm + self.length_after_mm());
        let factor = 1.0 + 0.3 / 3.0 * flatness;
        stress.times(volume_mm3 * factor * self.strain() / 1e3)
    }
}
