//! Which joints carry the piece: walked in their order, they join its bars to trees; what is joined twice closes a loop.

use super::Joined;
use std::collections::HashMap;

/// Two members of a joint, and whether they were joined before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    /// The joint's place in the list that was walked.
    pub joined: usize,
    /// The member that stands for those before: always the one that stays.
    pub from: usize,
    /// The member that is linked to it.
    pub to: usize,
    /// Whether other joints hold the two together already.
    pub closes: bool,
}

/// A copy of a bar.
type Copy = (usize, u32);

/// The links of the joints in their order. Members on one and the same copy of a bar are no link.
pub fn links(joints: &[Joined]) -> Vec<Link> {
    let mut trees = Trees::default();
    let mut links = Vec::new();
    for (joined, joint) in joints.iter().enumerate() {
        let Some(fixed) = joint.members.first() else { continue };
        for (to, member) in joint.members.iter().enumerate().skip(1) {
            let (a, b) = ((fixed.bar, fixed.copy), (member.bar, member.copy));
            if a != b {
                links.push(Link { joined, from: 0, to, closes: !trees.join(a, b) });
            }
        }
    }
    links
}

/// Copies that hang together, each with the one it was hung on.
#[derive(Default)]
struct Trees {
    hung_on: HashMap<Copy, Copy>,
}

impl Trees {
    /// Puts the trees of two copies together; whether they were apart.
    fn join(&mut self, a: Copy, b: Copy) -> bool {
        let (a, b) = (self.root(a), self.root(b));
        if a != b {
            self.hung_on.insert(b, a);
        }
        a != b
    }

    /// The copy at the root; the way there is made shorter.
    fn root(&mut self, mut copy: Copy) -> Copy {
        while let Some(next) = self.hung_on.get(&copy).copied() {
            if let Some(after) = self.hung_on.get(&next).copied() {
                self.hung_on.insert(copy, after);
            }
            copy = next;
        }
        copy
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_joined_twice_closes_a_loop() {
        let mut trees = Trees::default();
        let joins = [((0, 0), (1, 0)), ((2, 0), (1, 1)), ((1, 0), (1, 1)), ((0, 0), (2, 0)), ((0, 0), (3, 0))];
        let apart: Vec<bool> = joins.into_iter().map(|(a, b)| trees.join(a, b)).collect();
        assert_eq!(apart, [true, true, true, false, true]);
    }
}
