//! The way from the top of a plan file to one of its values.

use super::wording::shortened;
use std::fmt;

/// One step on the way: into a list by number, or into a group by key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Step {
    /// Counted from 0.
    Index(usize),
    /// By name.
    Key(String),
}

/// The way to a value, for example `bars[0].stock`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct KeyPath(Vec<Step>);

impl KeyPath {
    /// The steps, from the top.
    pub(super) fn steps(&self) -> &[Step] {
        &self.0
    }

    /// One step further, by name.
    pub fn key(&self, key: &str) -> Self {
        self.step(Step::Key(key.to_owned()))
    }

    /// One step further, by number.
    pub fn index(&self, index: usize) -> Self {
        self.step(Step::Index(index))
    }

    fn step(&self, step: Step) -> Self {
        let mut steps = self.0.clone();
        steps.push(step);
        Self(steps)
    }

    /// Only the first so many steps.
    pub(super) fn first(&self, count: usize) -> Self {
        Self(self.0.iter().take(count).cloned().collect())
    }
}

impl From<&serde_path_to_error::Path> for KeyPath {
    fn from(path: &serde_path_to_error::Path) -> Self {
        use serde_path_to_error::Segment;
        let step = |segment: &Segment| match segment {
            Segment::Seq { index } => Some(Step::Index(*index)),
            Segment::Map { key } => Some(Step::Key(key.clone())),
            Segment::Enum { variant } => Some(Step::Key(variant.clone())),
            Segment::Unknown => None,
        };
        Self(path.iter().map_while(step).collect())
    }
}

impl fmt::Display for KeyPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (position, step) in self.0.iter().enumerate() {
            match step {
                Step::Index(index) => write!(f, "[{index}]")?,
                Step::Key(key) if position == 0 => f.write_str(&shortened(key))?,
                Step::Key(key) => write!(f, ".{}", shortened(key))?,
            }
        }
        Ok(())
    }
}
