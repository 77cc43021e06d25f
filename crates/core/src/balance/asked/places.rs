//! The places of a bar's parts that a size can be taken from or to, for a hand that points at them.

use super::spot::spot;
use crate::balance::{BarBalance, SegmentBalance};
use crate::plan::{Bar, FeatureAt};
use crate::space::{Run, runs};

/// A place on a part that an asked size can name.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FeaturePlace {
    /// The part, counted through its bar.
    pub segment: usize,
    /// Which of its places.
    pub at: FeatureAt,
    /// Along, toward and up from where its center line starts, in mm.
    pub from_start: [f64; 3],
}

/// The places of every settled part of a bar: its ends, its middle, and of a bend where its faces meet.
pub fn feature_places(bar: &Bar, balance: &BarBalance) -> Vec<FeaturePlace> {
    const POINTS: [FeatureAt; 5] =
        [FeatureAt::Start, FeatureAt::End, FeatureAt::Apex, FeatureAt::Inside, FeatureAt::Middle];
    let formed: Vec<_> = balance.segments.iter().map(SegmentBalance::formed).collect();
    let runs = runs(&bar.segments, &formed);
    let of_part = |(segment, run): (usize, &Option<Run>)| {
        let (run, formed) = (run.as_ref()?, formed.get(segment)?);
        let (shape, to_start) = (formed.shape?, run.frame_at(0.0).inverse());
        let place = |at| {
            let spot = spot(run, shape, formed, (at, false))?;
            Some(FeaturePlace { segment, at, from_start: to_start.place(spot.at) })
        };
        Some(POINTS.into_iter().filter_map(place).collect::<Vec<_>>())
    };
    runs.iter().enumerate().filter_map(of_part).flatten().collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::balance::balance;
    use crate::space::vector::minus;

    #[test]
    fn the_places_of_a_bend_are_where_its_faces_meet() {
        let text = r#"{ "firstheat": 1, "title": "t", "units": { "length": "mm", "marks": "1 mm" }, "bars": [ {
            "name": "bar", "stock": { "square": "12 mm" }, "segments": [
            { "name": "leg", "form": { "plain": { "length": "100 mm" } } },
            { "name": "corner", "form": { "plain": {} },
              "bend": { "curve": { "angle": "90 deg", "inside_radius": "20 mm" } } },
            { "name": "foot", "form": { "plain": { "length": "50 mm" } } } ] } ] }"#;
        let plan = crate::file::read(text.as_bytes()).unwrap();
        let balance = balance(&plan);
        let places = feature_places(&plan.bars[0], &balance.bars[0]);
        let of = |at| places.iter().find(|place| place.segment == 1 && place.at == at).unwrap().from_start;
        // Legs that are tangent to a circle of 26 mm about the inside's middle meet 26 mm on; the outside faces, 6 mm out, meet
        // 32 mm on, the inside faces 20 mm on, 6 mm in. The end of a quarter turn is 26 mm on and 26 mm up.
        for (at, wanted) in [
            (FeatureAt::Start, [0.0, 0.0, 0.0]),
            (FeatureAt::End, [26.0, 0.0, 26.0]),
            (FeatureAt::Apex, [32.0, 0.0, -6.0]),
            (FeatureAt::Inside, [20.0, 0.0, 6.0]),
        ] {
            assert!(minus(of(at), wanted).iter().all(|off| off.abs() < 1e-9), "{at:?}: {:?}", of(at));
        }
        assert!(
            places.iter().all(|place| place.segment == 1 || !matches!(place.at, FeatureAt::Apex | FeatureAt::Inside))
        );
    }
}
