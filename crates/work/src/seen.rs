//! What was seen at a step, and what is found from it.

use crate::bar::held::Hold;
use crate::fire::heating::Heated;
use crate::job::why::Why;
use fh_core::findings::Finding;

/// A finding about the order of work, with the steps it speaks of.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderFinding {
    /// What was found.
    pub finding: Finding,
    /// The same as it is told at its step, without the step's number and name; none where it is told in the same words.
    pub at_its_step: Option<String>,
    /// The steps it speaks of, counted from 0, in their order.
    pub steps: Vec<usize>,
    /// The rule that is broken, where it is one; of several that which holds most firmly.
    pub why: Option<Why>,
    /// Every broken rule that it tells of: why, the step that comes too soon and the one that should come before it.
    pub broken: Vec<(Why, usize, usize)>,
    /// Why the smith has it so all the same; none where that is not said.
    pub accepted: Option<String>,
}

/// What was seen at a step.
#[derive(Clone, Debug, Default)]
pub(crate) struct Seen {
    pub(crate) heated: Option<Heated>,
    pub(crate) hold: Option<Hold>,
    /// Bends that can be made neither on the anvil nor in the vice.
    pub(crate) stuck: Vec<usize>,
    /// Steps set down in a gap that is too narrow for their groove: the step, the fuller and the gap in mm.
    pub(crate) tight: Vec<(usize, f64, f64)>,
    /// Parts that run into each other afterwards.
    pub(crate) struck: Vec<(usize, usize)>,
    /// Whether something was parted off before.
    pub(crate) was_off: bool,
}
