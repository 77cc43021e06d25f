//! Branches that leave the bar and have no room in line with it again once they are drawn out.

use crate::job::site::{Site, in_mm};
use fh_core::metal::FreeEnd;
use fh_core::plan::Chain;

/// Whether a branch that leaves the bar at a split is drawn out longer than its slit, and bent: laid back in line it would lie on the
/// bar before the slit, so it stays off until its own bend is made. Common practice, no source.
pub(crate) fn stays_off(site: &Site<'_>, split: usize) -> bool {
    let Some(size) = site.split_size(split).filter(|_| site.has_leaving_branch(split)) else { return false };
    site.chains.iter().any(|(chain, members)| {
        let Chain::Branch { split: own, branch } = chain else { return false };
        let leaves = size.branches.get(*branch).is_some_and(|branch| branch.free != FreeEnd::Neither);
        let parts = || members.iter().filter_map(|at| site.part(*at));
        let long = parts().map(|part| in_mm(part.balance.forged_length)).sum::<f64>();
        *own == split && leaves && long > in_mm(size.slit) && parts().any(|part| part.balance.bent.is_some())
    })
}
