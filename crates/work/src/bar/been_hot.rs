//! What of a bar was hot in earlier heats: black metal burns a hand.

use crate::bar::lengths::Lengths;

/// A hand is kept so far from what was hot before, in mm, until that is cooled and tested: heat runs along the bar, and black
/// metal looks cold. Common practice, no source.
const HAND: f64 = 300.0;

/// What of each part of a bar was in the fire, as shares of its length from its start.
#[derive(Clone, Debug)]
pub(crate) struct BeenHot {
    shares: Vec<Option<[f64; 2]>>,
}

impl BeenHot {
    /// Of a bar of so many parts, all of them cold.
    pub(crate) fn none(parts: usize) -> Self {
        Self { shares: vec![None; parts] }
    }

    /// Whether anything was.
    pub(crate) fn any(&self) -> bool {
        self.shares.iter().any(Option::is_some)
    }

    /// Takes in what has to be hot for a step, in mm along the bar as it is before it; the whole bar where that is none.
    pub(crate) fn note(&mut self, lengths: &Lengths, hot_mm: Option<[f64; 2]>) {
        for (at, share) in self.shares.iter_mut().enumerate() {
            let [start, end] = lengths.extent([at].iter());
            let long = end - start;
            let [from, to] = hot_mm.map_or([start, end], |[from, to]| [from.max(start), to.min(end)]);
            if long > 1e-6 && to > from {
                let own = [(from - start) / long, (to - start) / long];
                *share = Some(share.map_or(own, |before| [before[0].min(own[0]), before[1].max(own[1])]));
            }
        }
    }

    /// Whether anything so near to a place was hot that a hand there may be burnt.
    pub(crate) fn is_near(&self, lengths: &Lengths, at_mm: f64) -> bool {
        self.shares.iter().enumerate().any(|(at, share)| {
            let [start, end] = lengths.extent([at].iter());
            share.is_some_and(|[from, to]| {
                let (from, to) = (start + from * (end - start), start + to * (end - start));
                end - start > 1e-6 && from < at_mm + HAND && to > at_mm - HAND
            })
        })
    }
}
