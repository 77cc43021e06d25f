//! How warm the metal is while a step is done, and the heat that it is done in.

use crate::step::WorkedStep;
use fh_core::plan::Operation;

/// How warm the metal is while a step is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Warmth {
    /// Cold.
    Cold,
    /// Warm, and no heat of the fire is counted for it.
    Warm,
    /// Hot, from its first to its last heat, counted from 1.
    Hot {
        /// The first heat.
        first: usize,
        /// The last heat.
        last: usize,
    },
}

impl Warmth {
    /// Whether it is hot.
    pub fn is_hot(self) -> bool {
        matches!(self, Self::Hot { .. })
    }

    /// It under a head that says *heat*: `cold`, `warm`, `3`, `3 and 4`, `4 to 7`.
    pub fn figures(self) -> String {
        match self {
            Self::Cold => "cold".to_owned(),
            Self::Warm => "warm".to_owned(),
            Self::Hot { first, last } if first == last => first.to_string(),
            Self::Hot { first, last } if first + 1 == last => format!("{first} and {last}"),
            Self::Hot { first, last } => format!("{first} to {last}"),
        }
    }

    /// It in words: `cold`, `warm`, `heat 3`, `heats 3 and 4`, `heats 4 to 7`.
    pub fn words(self) -> String {
        match self {
            Self::Hot { first, last } if first == last => format!("heat {first}"),
            Self::Hot { .. } => format!("heats {}", self.figures()),
            Self::Cold | Self::Warm => self.figures(),
        }
    }
}

impl WorkedStep {
    /// How warm the metal is: what is brushed to be closed in is brushed in the heat of the step that closes it.
    pub fn warmth(&self) -> Warmth {
        let all = |wanted: Operation| !self.tasks.is_empty() && self.tasks.iter().all(|it| it.operation == wanted);
        match (self.needs, self.brushed_in) {
            (0, Some(heat)) => Warmth::Hot { first: heat, last: heat },
            (0, None) if all(Operation::Wax) => Warmth::Warm,
            (0, None) => Warmth::Cold,
            (needs, _) => Warmth::Hot { first: self.heat, last: self.heat + needs - 1 },
        }
    }
}

/// For each step the heat that it is brushed in: the first one of the step that closes the same part in next; none of other
/// steps.
pub(crate) fn brushed_in(steps: &[WorkedStep]) -> Vec<Option<usize>> {
    let is_brushed = |step: &WorkedStep| {
        !step.is_hot() && step.tasks.iter().any(|task| task.operation == Operation::Brush && task.part.is_some())
    };
    let closes = |step: &WorkedStep, brushed: &WorkedStep| {
        step.is_hot() && step.bar == brushed.bar && step.parts().iter().any(|part| brushed.parts().contains(part))
    };
    let of = |(number, step): (usize, &WorkedStep)| {
        let next = steps.get(number + 1)?;
        (is_brushed(step) && closes(next, step)).then_some(next.heat)
    };
    steps.iter().enumerate().map(of).collect()
}
