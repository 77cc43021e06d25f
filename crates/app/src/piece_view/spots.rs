//! Places of the piece's parts that a size can be asked between, and the size that two of them make.

use super::joined::Part;
use super::stage::Stage;
use fh_core::balance::feature_places;
use fh_core::describe::segment_name;
use fh_core::plan::{AskedSize, Bar, Feature, FeatureAt, Plan};
use fh_measure::{LengthRange, WrittenLength};
use fh_piece::vector::{length, minus};

/// A place of a part of one of the copies of a bar.
#[derive(Clone, Copy, PartialEq)]
pub(super) struct Spot {
    bar: usize,
    copy: u32,
    segment: usize,
    at: FeatureAt,
}

impl Spot {
    /// The part that it is of.
    pub(super) fn part(self) -> Part {
        (self.bar, self.copy, self.segment)
    }

    /// `shank, its end`.
    pub(super) fn words(self, plan: &Plan) -> String {
        let name = plan.bars.get(self.bar).map_or_else(String::new, |bar| segment_name(bar, self.segment));
        format!("{name}, {}", self.at.name())
    }
}

/// Every place with where it lies in space.
pub(super) fn spots<'s>(stage: &'s Stage<'_>) -> impl Iterator<Item = (Spot, [f64; 3])> + 's {
    let places: Vec<_> =
        stage.plan.bars.iter().zip(&stage.balance.bars).map(|(bar, balance)| feature_places(bar, balance)).collect();
    stage.model.piece.lines.iter().flat_map(move |line| {
        let own = places.get(line.bar).into_iter().flatten().filter(|place| place.segment == line.segment);
        let found = |place: &fh_core::balance::FeaturePlace| {
            let spot = Spot { bar: line.bar, copy: line.copy, segment: line.segment, at: place.at };
            Some((spot, line.frames.first()?.place(place.from_start)))
        };
        own.filter_map(found).collect::<Vec<_>>()
    })
}

/// The size from one place to another as it is now, rounded as the marks are.
///
/// # Errors
/// Why it cannot be asked for: the two lie on different bars, or a bar or a part has no name of its own to be called by.
pub(super) fn asked(stage: &Stage<'_>, from: Spot, to: Spot) -> Result<AskedSize, String> {
    if (from.bar, from.copy) != (to.bar, to.copy) {
        return Err("A size is asked for on one bar; these two places lie on two.".to_owned());
    }
    let none = || "There is no size between these two places.".to_owned();
    let bar = stage.plan.bars.get(from.bar).filter(|_| from != to).ok_or_else(none)?;
    let feature = |spot: Spot| Ok::<_, String>(Feature::new(own_name(bar, spot.segment)?, spot.at));
    let place = |spot: Spot| spots(stage).find(|(other, _)| *other == spot).map(|(_, at)| at).ok_or_else(none);
    let step = stage.plan.units.marks;
    let mm = (length(minus(place(to)?, place(from)?)) / step.step_mm()).round() * step.step_mm();
    let on = (stage.plan.bars.len() > 1).then(|| bar.name.clone());
    if on.as_ref().is_some_and(|name| stage.plan.bars.iter().position(|bar| bar.name == *name) != Some(from.bar)) {
        return Err(format!("Give each of the bars called “{}” a name of its own to ask for it.", bar.name));
    }
    Ok(AskedSize {
        name: String::new(),
        bar: on,
        from: Some(feature(from)?),
        to: Some(feature(to)?),
        taken: None,
        overall: None,
        size: WrittenLength::from_mm(mm, step.unit(), LengthRange::ZeroOrMore).map_err(|_| none())?,
        kept_by: None,
    })
}

/// The name of a part that is the first of that name on its bar.
///
/// # Errors
/// What to name where it is not.
fn own_name(bar: &Bar, segment: usize) -> Result<&str, String> {
    let flat = bar.flat();
    let name = flat.get(segment).map_or("", |flat| flat.segment.name.as_str());
    let is_first = flat.iter().position(|flat| flat.segment.name == name) == Some(segment);
    if name.is_empty() || !is_first {
        return Err(format!("Give part {} a name of its own to ask for it.", bar.path(segment)));
    }
    Ok(name)
}
