//! A bar as cooling sees it: area and girth along its length, in runs that may jump where they meet.

use super::section::BarSection;

/// The longest bar that is taken, in mm: ten times any stock length.
const LONGEST_MM: f64 = 60_000.0;

/// Area and girth at one place of a bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Where, from the bar's start, in mm of cold length.
    pub x_mm: f64,
    /// The area of the section in mm²; 0 at a sharp tip. Legs of a split side by side count together.
    pub area_mm2: f64,
    /// The girth of the section in mm; that of the legs of a split together.
    pub perimeter_mm: f64,
}

/// A stretch of bar without a jump: areas run on between its places as their square roots, girths in proportion.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    places: Vec<Place>,
    skin: f64,
}

/// A bar as area and girth along its length.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    runs: Vec<Run>,
}

impl Run {
    /// A run through places in the order of the bar; `skin` as in [`BarSection::skin`].
    ///
    /// None with fewer than two places, places that do not advance, figures that are no numbers or negative, or no metal.
    pub fn through(places: Vec<Place>, skin: f64) -> Option<Self> {
        let is_sound = |place: &Place| {
            let figures = [place.x_mm, place.area_mm2, place.perimeter_mm];
            figures.iter().all(|figure| figure.is_finite() && figure.abs() < 1e9)
                && place.area_mm2 >= 0.0
                && place.perimeter_mm >= 0.0
        };
        let advances = places.windows(2).all(|pair| matches!(pair, [a, b] if a.x_mm < b.x_mm));
        let has_metal = places.iter().any(|place| place.area_mm2 > 0.0 && place.perimeter_mm > 0.0);
        let sound = places.len() >= 2 && advances && has_metal && places.iter().all(is_sound);
        (sound && (0.0..=1.0).contains(&skin)).then_some(Self { places, skin })
    }

    /// A run that keeps one section; none as in [`Run::through`].
    pub fn even(from_mm: f64, to_mm: f64, section: BarSection) -> Option<Self> {
        Self::between(from_mm, to_mm, section, section)
    }

    /// A run that goes evenly from one section to another; none as in [`Run::through`].
    pub fn between(from_mm: f64, to_mm: f64, from: BarSection, to: BarSection) -> Option<Self> {
        let place = |x_mm, it: BarSection| Place { x_mm, area_mm2: it.area_mm2(), perimeter_mm: it.perimeter_mm() };
        let skin = if from.area_mm2() >= to.area_mm2() { from.skin() } else { to.skin() };
        Self::through(vec![place(from_mm, from), place(to_mm, to)], skin)
    }

    /// A run sampled at so many steps from area in mm² and girth in mm at a place in mm; none as in [`Run::through`].
    pub fn sampled(
        from_mm: f64,
        to_mm: f64,
        steps: usize,
        skin: f64,
        section_at: impl Fn(f64) -> (f64, f64),
    ) -> Option<Self> {
        let steps = steps.clamp(1, 100_000);
        let place = |index: usize| {
            let x_mm = from_mm + (to_mm - from_mm) * index as f64 / steps as f64;
            let (area_mm2, perimeter_mm) = section_at(x_mm);
            Place { x_mm, area_mm2, perimeter_mm }
        };
        Self::through((0..=steps).map(place).collect(), skin)
    }

    pub(super) fn start_mm(&self) -> f64 {
        self.places.first().map_or(0.0, |place| place.x_mm)
    }

    pub(super) fn end_mm(&self) -> f64 {
        self.places.last().map_or(0.0, |place| place.x_mm)
    }

    pub(super) fn skin(&self) -> f64 {
        self.skin
    }

    /// Area in mm² and girth in mm at a place of the run; those of the nearer end beyond it.
    pub(super) fn at(&self, x_mm: f64) -> (f64, f64) {
        let next = self.places.partition_point(|place| place.x_mm <= x_mm).clamp(1, self.places.len() - 1);
        let (Some(a), Some(b)) = (self.places.get(next - 1), self.places.get(next)) else { return (0.0, 0.0) };
        let share = ((x_mm - a.x_mm) / (b.x_mm - a.x_mm)).clamp(0.0, 1.0);
        let root = a.area_mm2.sqrt() * (1.0 - share) + b.area_mm2.sqrt() * share;
        (root * root, a.perimeter_mm * (1.0 - share) + b.perimeter_mm * share)
    }
}

impl Profile {
    /// A bar of runs that follow one another without gaps; none where they do not, or where the bar is over 60 m.
    pub fn of_runs(runs: Vec<Run>) -> Option<Self> {
        let meet = |pair: &[Run]| matches!(pair, [a, b] if (a.end_mm() - b.start_mm()).abs() < 1e-6);
        let profile = Self { runs };
        let sound = !profile.runs.is_empty()
            && profile.runs.windows(2).all(meet)
            && (1e-3..LONGEST_MM).contains(&profile.length_mm());
        sound.then_some(profile)
    }

    /// A bar of one section; none where its sizes are no positive numbers.
    pub fn bar(length_mm: f64, section: BarSection) -> Option<Self> {
        Self::of_runs(vec![Run::even(0.0, length_mm, section)?])
    }

    /// Where it starts, in mm.
    pub fn start_mm(&self) -> f64 {
        self.runs.first().map_or(0.0, Run::start_mm)
    }

    /// Where it ends, in mm.
    pub fn end_mm(&self) -> f64 {
        self.runs.last().map_or(0.0, Run::end_mm)
    }

    /// Its length in mm.
    pub fn length_mm(&self) -> f64 {
        self.end_mm() - self.start_mm()
    }

    /// Area in mm² and girth in mm at a place; just right of it where two runs meet.
    pub fn at(&self, x_mm: f64) -> (f64, f64) {
        let index = self.runs.partition_point(|run| run.start_mm() <= x_mm).saturating_sub(1);
        self.runs.get(index).map_or((0.0, 0.0), |run| run.at(x_mm))
    }

    pub(super) fn runs(&self) -> &[Run] {
        &self.runs
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn a_shoulder_jumps_and_a_taper_runs_on() {
        let thin = BarSection::Square { side_mm: 12.0 };
        let thick = BarSection::Square { side_mm: 25.0 };
        let runs = vec![Run::even(0.0, 100.0, thin).unwrap(), Run::between(100.0, 300.0, thick, thin).unwrap()];
        let profile = Profile::of_runs(runs).unwrap();
        assert_eq!(profile.at(99.9).0.round(), 144.0);
        assert_eq!(profile.at(100.0).0.round(), 625.0);
        assert!((profile.at(200.0).0 - 18.5 * 18.5).abs() < 1e-9);
    }

    #[test]
    fn what_is_no_bar_is_none() {
        let square = |side_mm| BarSection::Square { side_mm };
        assert!(Profile::bar(0.0, square(10.0)).is_none());
        assert!(Profile::bar(f64::NAN, square(10.0)).is_none());
        assert!(Profile::bar(100.0, square(0.0)).is_none());
        assert!(Profile::bar(1e7, square(10.0)).is_none());
        let gap = vec![Run::even(0.0, 10.0, square(5.0)).unwrap(), Run::even(11.0, 20.0, square(5.0)).unwrap()];
        assert!(Profile::of_runs(gap).is_none());
        assert!(Run::through(Vec::new(), 0.5).is_none());
    }
}
