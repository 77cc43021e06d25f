//! A motif: a run of segments under a name, to be put into any plan, larger or smaller where that is wished.

mod take;

use crate::balance::{BarBalance, balance};
use crate::plan::{Bar, Plan, SectionSpec, Segment, Units};
use fh_measure::MeasureError;
use serde::{Deserialize, Serialize};

/// The version of the motif file that this program writes.
pub const MOTIF_VERSION: u32 = 1;

/// A run of segments under a name, with the bar that it was planned for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Motif {
    /// The version of the file format: 1.
    pub firstheat_motif: u32,
    /// What the smith calls it.
    pub name: String,
    /// The units of the plan that it was taken from.
    #[serde(default)]
    pub units: Units,
    /// The section of the bar that it was planned for.
    pub stock: SectionSpec,
    /// Its segments, from the datum side.
    pub segments: Vec<Segment>,
}

impl Segment {
    /// The same segment with every length multiplied by a factor; angles, turns, counts and shares stay.
    ///
    /// # Errors
    /// Where the factor is not above 0, or a length becomes too small or too great to be written.
    pub fn scaled(&self, factor: f64) -> Result<Self, MeasureError> {
        let mut next = self.clone();
        let mut failed = None;
        next.lengths_mut(&mut |length| match length.scaled(factor) {
            Ok(scaled) => *length = scaled,
            Err(error) => failed = Some(error),
        });
        failed.map_or(Ok(next), Err)
    }
}

impl Motif {
    /// The same motif with every length multiplied by a factor; angles, turns, counts and shares stay.
    ///
    /// # Errors
    /// Where the factor is not above 0, or a length becomes too small or too great to be written.
    pub fn scaled(&self, factor: f64) -> Result<Self, MeasureError> {
        let mut next = self.clone();
        if factor == 1.0 {
            return Ok(next);
        }
        let mut failed = None;
        let mut scale = |length: &mut fh_measure::WrittenLength| match length.scaled(factor) {
            Ok(scaled) => *length = scaled,
            Err(error) => failed = Some(error),
        };
        next.stock.lengths_mut(&mut scale);
        next.segments = self.segments.iter().map(|segment| segment.scaled(factor)).collect::<Result<_, _>>()?;
        failed.map_or(Ok(next), Err)
    }

    /// The factor at which its bar has the area of another bar: the root of the areas' ratio. None where it has none.
    pub fn factor_to_fit(&self, bar: &BarBalance) -> Option<f64> {
        let own = self.balanced()?.stock_area;
        let factor = (bar.stock_area / own).value.sqrt();
        (factor.is_finite() && factor > 0.0).then_some(factor)
    }

    /// The bar that it makes on its own.
    pub fn bar(&self) -> Bar {
        Bar { segments: self.segments.clone(), ..Bar::new(&self.name, self.stock.clone()) }
    }

    /// What follows for the bar that it makes on its own: its picture, and the length of bar that it takes.
    pub fn balanced(&self) -> Option<BarBalance> {
        let mut plan = Plan::new(&self.name, self.units, self.stock.clone());
        plan.bars = vec![self.bar()];
        balance(&plan).bars.into_iter().next()
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::edit::Edit;
    use crate::file;
    use crate::metal::in_mm;
    use crate::plan::Chain;

    const PLAN: &str = r#"{ "firstheat": 1, "units": { "length": "in", "marks": "1/16 in" }, "bars": [{
      "stock": { "square": "1/2 in" }, "segments": [
        { "name": "tang", "form": { "drawn": { "length": "2 in", "section": { "octagon": "3/8 in" } } } },
        { "name": "neck", "form": { "taper": { "length": "1/4 in", "to": { "round": "1/4 in" } } },
          "repeats": [{ "what": "lines", "step": "1/32 in", "margin": "0 in" }] },
        { "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "2 1/2 in", "width": "1 1/8 in" } },
          "thickness": "0.1 in", "trim": "4 %" } } },
        { "name": "shank", "form": { "drawn": { "length": "50 mm", "section": "same" } },
          "bend": { "curve": { "angle": "90 deg" } } } ] }] }"#;

    fn plan() -> Plan {
        file::read(PLAN.as_bytes()).unwrap()
    }

    fn texts(motif: &Motif) -> Vec<String> {
        let mut texts = Vec::new();
        motif.segments.iter().for_each(|segment| segment.lengths(&mut |length| texts.push(length.text().to_owned())));
        texts
    }

    #[test]
    fn the_section_that_a_motif_begins_with_is_written_into_it() {
        let motif = Motif::taken(&plan(), 0, Chain::Bar, 1..=2, " leaf ").unwrap();
        assert_eq!((motif.name.as_str(), motif.segments.len()), ("leaf", 2));
        let form = serde_json::to_value(&motif.segments[0].form).unwrap();
        assert_eq!(form["taper"]["from"]["octagon"], "3/8 in");
        let shank = Motif::taken(&plan(), 0, Chain::Bar, 3..=3, "shank").unwrap();
        let form = serde_json::to_value(&shank.segments[0].form).unwrap();
        assert_eq!(form["drawn"]["section"], "stock", "a leaf ends as stock");
        assert_eq!(Motif::taken(&plan(), 0, Chain::Bar, 3..=4, "more than there is"), None);
    }

    #[test]
    fn every_length_is_scaled_and_stays_as_people_write_it() {
        let motif = Motif::taken(&plan(), 0, Chain::Bar, 1..=3, "leaf").unwrap();
        let twice = ["1/2 in", "3/4 in", "1/2 in", "1/16 in", "0 in", "5 in", "2 1/4 in", "0.2 in", "100 mm"];
        assert_eq!(texts(&motif.scaled(2.0).unwrap()), twice);
        let half = ["1/8 in", "3/16 in", "1/8 in", "1/64 in", "0 in", "1 1/4 in", "9/16 in", "0.05 in", "25 mm"];
        assert_eq!(texts(&motif.scaled(0.5).unwrap()), half);
        let third = motif.scaled(1.0 / 3.0).unwrap();
        assert_eq!(texts(&third)[0..2], ["0.0833 in", "1/8 in"]);
        assert_eq!(motif.scaled(1.0).unwrap(), motif);
        for wrong in [0.0, -1.0, f64::NAN, 1e300] {
            assert!(motif.scaled(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_motif_fits_another_bar_by_the_root_of_the_areas() {
        let motif = Motif::taken(&plan(), 0, Chain::Bar, 0..=2, "leaf").unwrap();
        let twice = motif.scaled(2.0).unwrap().balanced().unwrap();
        assert!((motif.factor_to_fit(&twice).unwrap() - 2.0).abs() < 1e-12);
        // Everything twice as large takes twice the length of a bar that is twice as large.
        let one = motif.balanced().unwrap();
        assert!((in_mm(twice.last_mark()) / in_mm(one.last_mark()) - 2.0).abs() < 1e-9);
    }

    #[test]
    fn a_motif_of_a_branch_is_taken_and_put_into_another_branch() {
        let text = r#"{ "firstheat": 1, "bars": [{ "stock": { "flat": { "width": "20 mm", "thickness": "10 mm" } }, "segments": [
          { "name": "fork", "form": { "split": { "branches": [
            { "segments": [ { "form": { "drawn": { "length": "80 mm", "section": { "round": "8 mm" } } } },
              { "name": "tip", "form": { "taper": { "length": "30 mm", "to": "point" } } } ] },
            { "segments": [ { "form": { "drawn": { "length": "80 mm", "section": { "round": "8 mm" } } } } ] } ] } } } ] }] }"#;
        let plan = file::read(text.as_bytes()).unwrap();
        let [first, second] = [0, 1].map(|branch| Chain::Branch { split: 0, branch });
        let motif = Motif::taken(&plan, 0, first, 1..=1, "tip").unwrap();
        let form = serde_json::to_value(&motif.segments[0].form).unwrap();
        assert_eq!(form["taper"]["from"]["round"], "8 mm");
        let segments = motif.scaled(0.5).unwrap().segments;
        let insert = Edit::InsertSegments { bar: 0, chain: second, place: 1, segments: segments.clone() };
        let (next, _) = insert.applied(&plan).unwrap();
        assert_eq!(next.bars[0].chain(second).map(|chain| chain[1].clone()), segments.first().cloned());
        let nowhere = Edit::InsertSegments { bar: 1, chain: second, place: 1, segments };
        assert!(nowhere.applied(&plan).is_err());
    }

    #[test]
    fn a_motif_file_comes_back_and_is_refused_with_its_place() {
        let motif = Motif::taken(&plan(), 0, Chain::Bar, 0..=2, "leaf").unwrap();
        let text = file::write_motif(&motif);
        assert!(text.starts_with("{\n  \"firstheat_motif\": 1,\n  \"name\": \"leaf\",\n"), "{text}");
        assert_eq!(file::read_motif(text.as_bytes()).unwrap(), motif);
        for (from, to, wanted) in [
            (
                "\"firstheat_motif\": 1",
                "\"firstheat_motif\": 2",
                "line 2, column 22, at firstheat_motif: this kept part was",
            ),
            (
                "\"firstheat_motif\"",
                "\"firstheat\"",
                "this isn't a kept part of First Heat: the key \"firstheat_motif\"",
            ),
            ("\"leaf\",", "\" \",", "a kept part must have a name"),
            ("\"stock\":", "\"stok\":", "there is no key \"stok\" here; was \"stock\" meant?"),
            ("{ \"square\": \"1/2 in\" }", "\"same\"", "no bar has the section \"same\""),
            ("\"2 in\"", "\"2 inn\"", "“inn” isn't a unit"),
        ] {
            let broken = text.replacen(from, to, 1);
            let error = file::read_motif(broken.as_bytes()).unwrap_err().to_string();
            assert!(error.contains(wanted), "{error}");
        }
        assert!(file::read_motif(PLAN.as_bytes()).is_err());
    }
}
