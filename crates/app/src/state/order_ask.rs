//! What is asked for about the order of work. It is done after the frame.

use fh_core::edit::StepChange;
use fh_core::plan::{HeatRules, Logged, Step};
use fh_work::Shop;

/// What the panel beside the order shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Tab {
    /// The chosen step.
    #[default]
    Step,
    /// What one heat does for it.
    OneHeat,
    /// What came out at it.
    Log,
    /// The rules of heats.
    Heats,
    /// Tools and gauges.
    Tools,
}

impl Tab {
    /// Every tab, in the order they are offered.
    pub(crate) const ALL: [Self; 5] = [Self::Step, Self::OneHeat, Self::Log, Self::Heats, Self::Tools];

    /// Whether it has fields that belong to the chosen step.
    pub(crate) fn is_of_a_step(self) -> bool {
        matches!(self, Self::Step | Self::Log)
    }

    /// The word on it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Step => "Step",
            Self::OneHeat => "One heat",
            Self::Log => "Log",
            Self::Heats => "Heat rules",
            Self::Tools => "Tools",
        }
    }
}

/// Something to be done to the order of work, or with it.
#[derive(Clone, Debug)]
pub(crate) enum OrderAsk {
    /// Choose a step, or none.
    Choose(Option<usize>),
    /// Choose the next step that works on a segment of a bar.
    ChooseOn(usize, usize),
    /// Change the steps.
    Change(StepChange),
    /// Put a step after the chosen one.
    Add(Box<Step>),
    /// Let go of the smith's own order.
    Propose,
    /// The rules of heats.
    Rules(Box<HeatRules>),
    /// What came out, step by step.
    Log(Vec<Logged>),
    /// What the smith owns.
    Own(Shop),
    /// Show another tab.
    Show(Tab),
}
