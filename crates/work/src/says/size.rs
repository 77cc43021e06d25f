//! One size to reach, cold and as it measures hot, and how far it may be off.

use crate::says::words::{finest, hot_words, length_words};
use fh_core::balance::tolerance_mm;
use fh_core::plan::{Plan, Target};

/// What of a part is measured. It says what a size is measured with, and how it is told among others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// How long it is.
    Length,
    /// How wide it is, all along.
    Width,
    /// How wide it is at one place.
    WidthThere,
    /// How thick it is.
    Thickness,
    /// Another size across the bar, that a notch goes over.
    Across,
    /// What is left in a neck, and must not become thinner.
    Neck,
    /// How thick a swelling is at least.
    Swelling,
    /// What no notch goes over: in a hole or a bend, a count, or what is rough.
    Other,
}

impl Measure {
    /// What is measured by a size that a smith wrote: of what it is, in words.
    fn read(words: &str) -> Self {
        let is_notched = !words.ends_with("of the hole") && !words.ends_with(", about");
        let begins = |start: &str| words.starts_with(start);
        match words {
            _ if begins("length") => Self::Length,
            _ if !is_notched => Self::Other,
            "width" => Self::Width,
            _ if begins("width") => Self::WidthThere,
            _ if begins("thickness over the swelling") => Self::Swelling,
            _ if begins("thickness") => Self::Thickness,
            _ if begins("left in the neck") => Self::Neck,
            _ if ["square", "diameter", "across flats", "height", "side"].into_iter().any(begins) => Self::Across,
            _ => Self::Other,
        }
    }
}

/// One size to reach.
#[derive(Clone, Debug, PartialEq)]
pub struct Size {
    /// What of the part it is.
    pub measure: Measure,
    /// What is measured: `thickness`, `angle`.
    pub what: String,
    /// The cold size in words.
    pub cold: String,
    /// The size as it stands on the hot bar; none of an angle, or of a metal whose growth is not known here.
    pub hot: Option<String>,
    /// How far it may be off in words: `± 0.5 mm`, `190 to 201 mm`; none where nothing is said.
    pub tolerance: Option<String>,
    /// From what its range follows: `the thickness`; none where it is kept by itself.
    pub follows: Option<String>,
    /// The cold size in mm; none of an angle or a count.
    pub mm: Option<f64>,
    /// The most that it may be off either way, in mm.
    pub tolerance_mm: f64,
    /// The least and the most that it may be, in mm; none where nothing is said.
    pub between_mm: Option<[f64; 2]>,
}

/// In place of a tolerance, for what the step leaves as it is.
pub(crate) const AS_IT_IS: &str = "as it is";

impl Size {
    /// It as a measure of the part.
    pub(crate) fn of(self, measure: Measure) -> Self {
        Self { measure, ..self }
    }

    /// A size that is off by what the rules allow.
    pub(crate) fn length(plan: &Plan, what: &str, mm: f64) -> Self {
        Self::with_tolerance(plan, what, mm, tolerance_mm(plan, mm))
    }

    /// A size of a hole, a radius or a cut: not of the metal itself, so a small one is off by as much as a large one.
    pub(crate) fn inside(plan: &Plan, what: &str, mm: f64) -> Self {
        Self::with_tolerance(plan, what, mm, tolerance_mm(plan, f64::INFINITY).min(mm / 2.0))
    }

    fn with_tolerance(plan: &Plan, what: &str, mm: f64, tolerance_mm: f64) -> Self {
        Self::between(plan, what, mm, [mm - tolerance_mm, mm + tolerance_mm])
    }

    /// A size of which nothing is said how far it may be off.
    pub(crate) fn bare(plan: &Plan, what: &str, mm: f64) -> Self {
        Self::between(plan, what, mm, [mm; 2])
    }

    /// A size that may lie between two others.
    pub(crate) fn between(plan: &Plan, what: &str, mm: f64, [low, high]: [f64; 2]) -> Self {
        let most = (mm - low).max(high - mm);
        let is_range = most > 1e-6 && most.is_finite();
        Self {
            measure: Measure::Other,
            what: what.to_owned(),
            cold: length_words(plan, mm),
            hot: hot_words(plan, mm),
            tolerance: is_range.then(|| off_words(plan, mm, [low, high])),
            follows: None,
            mm: Some(mm),
            tolerance_mm: if is_range { most } else { 0.0 },
            between_mm: is_range.then_some([low, high]),
        }
    }

    /// It, with what its range follows from; that is told from end to end.
    pub(crate) fn following(self, plan: &Plan, from: &str) -> Self {
        let tolerance = self.between_mm.map(|between| between_words(plan, between)).or(self.tolerance);
        Self { follows: self.between_mm.map(|_| from.to_owned()), tolerance, ..self }
    }

    pub(crate) fn words(what: &str, words: String) -> Self {
        Self {
            measure: Measure::Other,
            what: what.to_owned(),
            cold: words,
            hot: None,
            tolerance: None,
            follows: None,
            mm: None,
            tolerance_mm: 0.0,
            between_mm: None,
        }
    }

    /// It as it is measured: what is done cold is measured cold.
    pub(crate) fn when(self, hot: bool) -> Self {
        Self { hot: self.hot.filter(|_| hot), ..self }
    }

    /// A size that the smith wrote.
    pub(crate) fn written(plan: &Plan, target: &Target) -> Self {
        let (what, mm) = (&target.what, target.size.mm());
        let measure = Measure::read(what);
        let size = match &target.tolerance {
            Some(tolerance) => Self::with_tolerance(plan, what, mm, tolerance.mm()),
            // How long it comes out follows from the section, of which the smith may have written nothing.
            None if measure == Measure::Length => Self::bare(plan, what, mm),
            None => Self::length(plan, what, mm),
        };
        Self { measure, cold: target.size.text().to_owned(), ..size }
    }
}

/// How far a size may be off in words: both ways alike, or from end to end.
fn off_words(plan: &Plan, mm: f64, [low, high]: [f64; 2]) -> String {
    let words = length_words(plan, high - mm);
    // As they are read: a size and what it may be off come out at its ends, and no farther.
    let step = finest(plan).step_mm();
    let read = |mm: f64| (mm / step).round() * step;
    let comes_out = (read(mm) + read(high - mm) - read(high)).abs() < step / 4.0
        && (read(mm) - read(mm - low) - read(low)).abs() < step / 4.0;
    let is_even = words == length_words(plan, mm - low);
    if is_even && comes_out { format!("± {words}") } else { between_words(plan, [low, high]) }
}

/// From end to end, in the steps that the marks are rounded to, or finer where the range is but a few of them.
fn between_words(plan: &Plan, [low, high]: [f64; 2]) -> String {
    let marks = plan.units.marks;
    let rounding = if high - low > 3.0 * marks.step_mm() { marks } else { finest(plan) };
    rounding.between_text(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_size_that_a_smith_wrote_is_measured_by_what_it_is_of() {
        let all = [
            ("length of the tail", Measure::Length),
            ("width", Measure::Width),
            ("width at its end", Measure::WidthThere),
            ("thickness at the root", Measure::Thickness),
            ("thickness over the swelling, at least", Measure::Swelling),
            ("square", Measure::Across),
            ("across flats", Measure::Across),
            ("left in the necks, at least", Measure::Neck),
            ("diameter of the hole", Measure::Other),
            ("thickness, about", Measure::Other),
            ("turns", Measure::Other),
        ];
        for (words, measure) in all {
            assert_eq!(Measure::read(words), measure, "{words}");
        }
    }
}
