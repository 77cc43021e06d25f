//! An asked size with its parts found by their names.

use super::SizeMissed;
use crate::plan::{AskedSize, Bar, Direction, Feature, FeatureAt, Overall, Plan, Taken};
use fh_measure::WrittenLength;

/// What is measured; parts are counted through the bar.
#[derive(Clone, Copy, Debug)]
pub(super) enum What {
    /// From a place of one part to a place of another.
    Between { from: (usize, FeatureAt), to: (usize, FeatureAt), taken: How },
    /// Over all of the bar.
    Overall { direction: Direction, of: Option<usize> },
}

/// How it is taken.
#[derive(Clone, Copy, Debug)]
pub(super) enum How {
    InSpace,
    Along(usize),
    OnStraightBar,
}

/// A size with its parts found.
#[derive(Clone, Debug)]
pub(super) struct Wanted {
    pub(super) bar: usize,
    pub(super) what: What,
    /// What it is to be, in mm.
    pub(super) goal: f64,
    /// From what to what it may be, in mm, where it has a tolerance.
    range: Option<[f64; 2]>,
    /// The part that is to keep it.
    pub(super) keeper: Option<usize>,
}

impl Wanted {
    /// A size of a plan.
    ///
    /// # Errors
    /// What it names that is not there.
    pub(super) fn new(plan: &Plan, size: &AskedSize) -> Result<Self, SizeMissed> {
        let (index, bar) = bar_of(plan, size).ok_or(SizeMissed::NoBar)?;
        let part = |name: &String| find(bar, name).ok_or_else(|| SizeMissed::NoPart(name.clone()));
        let place = |feature: &Feature| Ok((part(&feature.part)?, feature.at));
        let what = match (&size.overall, &size.from, &size.to) {
            (Some(Overall { direction, of }), ..) => {
                What::Overall { direction: *direction, of: of.as_ref().map(part).transpose()? }
            }
            (None, Some(from), Some(to)) => {
                let taken = match &size.taken {
                    None | Some(Taken::InSpace) => How::InSpace,
                    Some(Taken::Along(name)) => How::Along(part(name)?),
                    Some(Taken::OnStraightBar) => How::OnStraightBar,
                };
                What::Between { from: place(from)?, to: place(to)?, taken }
            }
            _ => return Err(SizeMissed::NoPart(String::new())),
        };
        let keeper = size.kept_by.as_ref().map(part).transpose()?;
        let WrittenRange { goal, range } = WrittenRange::from(&size.size);
        Ok(Self { bar: index, what, goal, range, keeper })
    }

    /// Whether a value in mm is as asked; without a tolerance it may be off by half a step of the marks.
    pub(super) fn is_met(&self, value: f64, step: f64) -> bool {
        let [low, high] = self.range.unwrap_or([self.goal - step / 2.0, self.goal + step / 2.0]);
        // An end that is reached to the last figures is reached.
        let hair = (1e-9 * self.goal).max(1e-6);
        low - hair <= value && value <= high + hair
    }
}

struct WrittenRange {
    goal: f64,
    range: Option<[f64; 2]>,
}

impl From<&WrittenLength> for WrittenRange {
    fn from(size: &WrittenLength) -> Self {
        let range = size.is_range().then(|| [size.lowest_mm(), size.highest_mm()]);
        Self { goal: size.mm(), range }
    }
}

/// The bar that a size is taken on.
fn bar_of<'a>(plan: &'a Plan, size: &AskedSize) -> Option<(usize, &'a Bar)> {
    let mut bars = plan.bars.iter().enumerate();
    match &size.bar {
        Some(name) => bars.find(|(_, bar)| bar.name == *name),
        None => bars.next(),
    }
}

fn find(bar: &Bar, name: &str) -> Option<usize> {
    bar.flat().iter().position(|flat| flat.segment.name == name)
}
