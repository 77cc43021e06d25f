//! What came out of the smith's own jobs, and what is learnt from it.

use fh_core::plan::Operation;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// One job as it was reckoned, before anything was learnt, and as it came out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Experience {
    /// Its entry in the log of the plan, counted from 0; none of what the profile keeps of other pieces.
    #[serde(skip)]
    pub entry: Option<usize>,
    /// The title of the piece.
    pub piece: String,
    /// What was done.
    pub operation: Operation,
    /// The forms of the parts it was done to, as `taper` or `flag`.
    pub form: String,
    /// Minutes of work: reckoned, and as they came out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<[f64; 2]>,
    /// Minutes that one heat gave: reckoned, and as they came out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heat_minutes: Option<[f64; 2]>,
    /// Blows: reckoned, and counted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blows: Option<[f64; 2]>,
    /// The share of metal lost to scale: planned, and weighed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<[f64; 2]>,
}

impl Experience {
    /// The same without its place in a log: what is kept outlives that.
    pub(crate) fn without_entry(&self) -> Self {
        Self { entry: None, ..self.clone() }
    }
}

/// What is learnt from experience: how many times the reckoned figure is the likely one.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Learnt {
    /// Of the minutes of each operation and form.
    minutes: BTreeMap<(Operation, String), f64>,
    /// Of the minutes of each operation on any form.
    operations: BTreeMap<Operation, f64>,
    /// Of the minutes that a heat gives.
    pub heat: Option<f64>,
    /// Of blows.
    pub blows: Option<f64>,
    /// The share of metal lost to scale, weighed.
    pub scale: Option<f64>,
}

/// No single job moves a factor farther than this, up or down.
const FARTHEST: f64 = 5.0;

impl Learnt {
    /// From what the smith has logged.
    ///
    /// The mean of logarithms, with one job more that came out just as reckoned: a single odd day moves it half way.
    pub fn of<'e>(experience: impl Iterator<Item = &'e Experience> + Clone) -> Self {
        let factor = |pairs: Vec<[f64; 2]>| {
            let logs: Vec<f64> = pairs.iter().filter_map(|pair| ratio(*pair)).map(f64::ln).collect();
            (!logs.is_empty()).then(|| (logs.iter().sum::<f64>() / (logs.len() as f64 + 1.0)).exp())
        };
        let mut by_form: BTreeMap<(Operation, String), Vec<[f64; 2]>> = BTreeMap::new();
        let mut by_operation: BTreeMap<Operation, Vec<[f64; 2]>> = BTreeMap::new();
        for one in experience.clone() {
            let Some(pair) = one.minutes else { continue };
            by_form.entry((one.operation, one.form.clone())).or_default().push(pair);
            by_operation.entry(one.operation).or_default().push(pair);
        }
        let weighed: Vec<f64> = experience.clone().filter_map(|one| one.scale).map(|[_, out]| out).collect();
        Self {
            minutes: by_form.into_iter().filter_map(|(key, pairs)| Some((key, factor(pairs)?))).collect(),
            operations: by_operation.into_iter().filter_map(|(key, pairs)| Some((key, factor(pairs)?))).collect(),
            heat: factor(experience.clone().filter_map(|one| one.heat_minutes).collect()),
            blows: factor(experience.clone().filter_map(|one| one.blows).collect()),
            scale: (!weighed.is_empty()).then(|| weighed.iter().sum::<f64>() / weighed.len() as f64),
        }
    }

    /// How many times the reckoned minutes of an operation on a form it is likely to take.
    pub fn minutes(&self, operation: Operation, form: &str) -> f64 {
        let own = self.minutes.get(&(operation, form.to_owned()));
        own.or_else(|| self.operations.get(&operation)).copied().unwrap_or(1.0)
    }

    /// Whether nothing was learnt yet.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// How many times the reckoned figure came out; none where one of them says nothing.
fn ratio([reckoned, out]: [f64; 2]) -> Option<f64> {
    let sound = reckoned.is_finite() && out.is_finite() && reckoned > 0.0 && out > 0.0;
    sound.then(|| (out / reckoned).clamp(1.0 / FARTHEST, FARTHEST))
}
