//! Hands and tools: what it takes of a heat to lay one tool down and take up another, and to do alone what wants three hands.

use crate::fire::hearth::Fire;
use fh_core::plan::Operation;

/// To lay one tool down and take up another takes so long, in seconds, as from the fire to the first blow: common practice, no source.
const CHANGE: f64 = 3.0;

/// To put the bar under a hold-down, and take it out again, so long, in seconds: common practice, no source.
const HOLD_DOWN: f64 = 4.0;

/// What is taken up for some work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Taken {
    /// The hammer, over face, edge or horn.
    Hammer,
    /// A fuller in the hardy hole.
    Fuller,
    /// A chisel, or the hot cut in the hardy hole.
    Chisel,
    /// A punch.
    Punch,
    /// A drift.
    Drift,
    /// A stamp or a marking tool.
    Stamp,
}

/// What is taken up for an operation that is done hot; none where that is seen to beforehand, or is the bar's own truing.
pub(crate) fn taken(operation: Operation) -> Option<Taken> {
    use Operation as O;
    match operation {
        O::Isolate => Some(Taken::Fuller),
        O::Split | O::Trim | O::PartOff => Some(Taken::Chisel),
        O::Punch => Some(Taken::Punch),
        O::Drift => Some(Taken::Drift),
        O::Stamp => Some(Taken::Stamp),
        O::Draw | O::Taper | O::Flatten | O::Spread | O::SetDown | O::Bend | O::Roll | O::BendAside | O::Open => {
            Some(Taken::Hammer)
        }
        _ => None,
    }
}

/// Whether an operation asks for a hand for the bar, one for the tool and one for the hammer.
fn wants_three(operation: Operation) -> bool {
    use Operation as O;
    matches!(operation, O::Split | O::Punch | O::Drift | O::Stamp)
}

/// How many minutes it takes to lay one tool down and take up another.
pub(crate) fn change_minutes(last: Option<Taken>, next: Option<Taken>) -> f64 {
    if last.zip(next).is_some_and(|(last, next)| last != next) { CHANGE / 60.0 } else { 0.0 }
}

/// How many minutes of a heat some operations, one after the other, take besides their work: to change tools, and alone to hold the bar
/// down.
pub(crate) fn besides_minutes(operations: impl Iterator<Item = Operation> + Clone, alone: bool) -> f64 {
    let changes = operations.clone().zip(operations.clone().skip(1));
    let changes: f64 = changes.map(|(one, next)| change_minutes(taken(one), taken(next))).sum();
    let is_held_down = alone && operations.clone().any(wants_three);
    changes + if is_held_down { HOLD_DOWN / 60.0 } else { 0.0 }
}

/// Whether nobody holds the bar or a tool for the smith.
pub(crate) fn is_alone(fire: Option<&Fire>) -> bool {
    fire.is_none_or(|fire| fire.alone)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_one_who_forges_alone_wants_a_hold_down_and_only_where_hands_are_short() {
        let besides = |operation, alone| besides_minutes(std::iter::once(operation), alone);
        assert!(besides(Operation::Punch, true) > 0.0);
        assert_eq!(besides(Operation::Punch, false), 0.0);
        assert_eq!(besides(Operation::Draw, true), 0.0);
    }

    #[test]
    fn groove_hammer_and_punch_are_two_changes_and_drawing_on_is_none() {
        let change = |one, other| change_minutes(taken(one), taken(other)) > 0.0;
        assert!(change(Operation::Isolate, Operation::Flatten) && change(Operation::Flatten, Operation::Punch));
        assert!(!change(Operation::Draw, Operation::Taper) && !change(Operation::Draw, Operation::Straighten));
    }
}
