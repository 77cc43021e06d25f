//! Where the parts of a bar lie now.

use crate::bar::progress::Progress;
use crate::job::site::Site;

/// Where the parts of a bar lie now, in mm.
pub(crate) struct Lengths {
    pub(crate) starts: Vec<f64>,
    pub(crate) lengths: Vec<f64>,
}

impl Lengths {
    pub(crate) fn new(site: &Site<'_>, progress: &Progress) -> Self {
        let lengths = progress.lengths(site);
        Self { starts: progress.starts(site, &lengths), lengths }
    }

    /// From where to where some parts reach.
    pub(crate) fn extent<'p>(&self, parts: impl Iterator<Item = &'p usize>) -> [f64; 2] {
        let ends = parts.filter_map(|at| Some([*self.starts.get(*at)?, self.starts[*at] + self.lengths.get(*at)?]));
        let all = ends.reduce(|all, next| [all[0].min(next[0]), all[1].max(next[1])]);
        all.unwrap_or([0.0, 0.0])
    }

    /// From where to where the bar reaches.
    pub(crate) fn ends(&self) -> [f64; 2] {
        let all = self.starts.iter().zip(&self.lengths);
        all.fold([0.0, 0.0], |[from, to], (start, length)| [f64::min(from, *start), f64::max(to, start + length)])
    }

    /// How far some parts reach from end to end.
    pub(crate) fn length(&self, parts: &[usize]) -> f64 {
        let [start, end] = self.extent(parts.iter());
        end - start
    }
}
