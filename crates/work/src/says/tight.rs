//! Steps that are set down in a gap too narrow for their fuller.

use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::job::along::beyond_the_step;
use crate::job::site::{Part, Site};
use crate::job::task::Task;
use crate::says::tools::shoulder_fuller_mm;
use fh_core::plan::{Form, Operation};
use std::f64::consts::FRAC_PI_2;

/// Steps that are set down all round in a gap less than twice as wide as their fuller: the step, the fuller and the gap in mm.
pub(crate) fn tight(site: &Site<'_>, tasks: &[Task], progress: &Progress, lengths: &Lengths) -> Vec<(usize, f64, f64)> {
    let of = |task: &Task| {
        let at = task.part.filter(|_| task.operation == Operation::SetDown)?;
        let fuller = shoulder_fuller_mm(site.part(at)?)?;
        let thin = beyond_the_step(site, at)?;
        // At a free end there is no gap: the groove goes through. What follows and is drawn as thin is grooved with it.
        let (mut last, mut gap) = (at, 0.0);
        let mut now = thin;
        loop {
            gap += lengths.lengths.get(now)?;
            let beyond = site.beside(now).into_iter().flatten().find(|other| *other != last)?;
            if !goes_as_thin(site, beyond, thin) {
                let is_open = progress.stages[beyond].off || progress.stages[thin].forged;
                return (!is_open && gap < 2.0 * fuller).then_some((at, fuller, gap));
            }
            (last, now) = (now, beyond);
        }
    };
    tasks.iter().filter_map(of).collect()
}

/// Whether a part is drawn as thin as another.
fn goes_as_thin(site: &Site<'_>, at: usize, thin: usize) -> bool {
    let drawn = |at: usize| site.part(at).filter(|part| matches!(part.segment.form, Form::Drawn(_)));
    let size = |part: Part<'_>| [0.0, FRAC_PI_2].map(|side| part.balance.extent_mm(0.0, side));
    let sizes = drawn(at).map(size).zip(drawn(thin).map(size));
    sizes.is_some_and(|(own, other)| own.iter().zip(other).all(|(own, other)| *own < other + 0.01))
}
