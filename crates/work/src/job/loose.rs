//! What is put on a bar while that is still loose, before it is closed into a frame.

use fh_core::plan::{Joint, JointKind, Plan};
use std::collections::HashMap;

/// One piece of a bar: its name, and which of its copies.
type Piece<'p> = (&'p str, u32);

fn pieces(joint: &Joint) -> Vec<Piece<'_>> {
    let mut all: Vec<Piece<'_>> =
        joint.members().map(|member| (member.bar.as_str(), member.copy.unwrap_or(1))).collect();
    all.sort_unstable();
    all.dedup();
    all
}

/// Pairs of joints, counted from 0, of which the first is made before the second: it puts onto a bar what hangs on nothing else, and
/// the second closes that bar into a frame.
///
/// Common practice, no source: a loose bar lies on the anvil and goes round in the hand, a frame does not.
pub(crate) fn loose_first(plan: &Plan) -> Vec<(usize, usize)> {
    let of: Vec<Vec<Piece<'_>>> = plan.joints.iter().map(pieces).collect();
    let mut count: HashMap<Piece<'_>, usize> = HashMap::new();
    of.iter().flatten().for_each(|piece| *count.entry(*piece).or_default() += 1);
    // The only piece of a joint that lies in another one too; none where several do, or none does.
    let mut held: Vec<Option<Piece<'_>>> = Vec::new();
    for joint in &of {
        let mut others = joint.iter().copied().filter(|piece| count.get(piece).is_some_and(|count| *count > 1));
        held.push(others.next().filter(|_| others.next().is_none()));
    }
    let closes = |joint: &usize| held[*joint].is_none() && plan.joints[*joint].kind != JointKind::Weld;
    let mut pairs = Vec::new();
    for (first, piece) in held.iter().enumerate() {
        let Some(piece) = piece else { continue };
        pairs.extend((0..of.len()).filter(|then| of[*then].contains(piece) && closes(then)).map(|then| (first, then)));
    }
    pairs
}
