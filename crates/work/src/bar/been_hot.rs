//! What of a bar was hot in earlier heats: black metal burns a hand.

use crate::bar::lengths::Lengths;

/// A hand is kept so far from what was hot before, in mm, until that is cooled and tested: heat runs along the bar, and black
/// metal looks cold. Common practice, no source.
const HAND: f64 = 300.0;

/// A part of a bar that was hot, as a share of its length from its start.
type Shares = Vec<Option<[f64; 2]>>;

/// What of each part of a bar was in the fire.
#[derive(Clone, Debug)]
pub(crate) struct BeenHot {
    /// In any heat.
    shares: Shares,
    /// In the last heats, each by its number; no more than two.
    heats: Vec<(usize, Shares)>,
}

impl BeenHot {
    /// Of a bar of so many parts, all of them cold.
    pub(crate) fn none(parts: usize) -> Self {
        Self { shares: vec![None; parts], heats: Vec::new() }
    }

    /// Whether anything was.
    pub(crate) fn any(&self) -> bool {
        self.shares.iter().any(Option::is_some)
    }

    /// Takes in what has to be hot for a step in a heat, in mm along the bar as it is before it; the whole bar where that is none.
    pub(crate) fn note(&mut self, lengths: &Lengths, hot_mm: Option<[f64; 2]>, heat: usize) {
        take_in(&mut self.shares, lengths, hot_mm);
        if hot_mm.is_none() {
            // What is straightened is measured cold.
            self.cool();
            return;
        }
        if self.heats.last().is_none_or(|(last, _)| *last != heat) {
            let keep = self.heats.len().saturating_sub(1);
            self.heats.drain(..keep);
            self.heats.push((heat, vec![None; self.shares.len()]));
        }
        if let Some((_, last)) = self.heats.last_mut() {
            take_in(last, lengths, hot_mm);
        }
    }

    /// Whether a place was hot in the heat before one, so that it is still hot when the bar comes out of the fire again.
    pub(crate) fn is_hot_yet(&self, lengths: &Lengths, at_mm: f64, heat: usize) -> bool {
        self.before(heat).iter().enumerate().any(|(at, share)| {
            let [start, end] = lengths.extent([at].iter());
            let place = (at_mm - start) / (end - start).max(1e-6);
            end - start > 1e-6 && share.is_some_and(|[from, to]| (from..=to).contains(&place))
        })
    }

    /// How much bar around a place was cold in the heat before one, between two other places, in mm.
    pub(crate) fn cold_run_mm(&self, lengths: &Lengths, at_mm: f64, [low, high]: [f64; 2], heat: usize) -> f64 {
        let (mut low, mut high) = (low, high);
        for (at, share) in self.before(heat).iter().enumerate() {
            let [start, end] = lengths.extent([at].iter());
            let Some([from, to]) = *share else { continue };
            let (from, to) = (start + from * (end - start), start + to * (end - start));
            match () {
                () if to <= at_mm => low = low.max(to),
                () if from >= at_mm => high = high.min(from),
                () => return 0.0,
            }
        }
        (high - low).max(0.0)
    }

    /// What was hot in the heat just before one.
    fn before(&self, heat: usize) -> &[Option<[f64; 2]>] {
        let last = self.heats.iter().rfind(|(number, _)| *number < heat);
        last.map_or(&[], |(_, shares)| shares)
    }

    /// The bar was let cool: nothing is hot from the heats before.
    pub(crate) fn cool(&mut self) {
        self.heats.clear();
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

/// Takes in what is hot of each part, in mm along the bar; the whole bar where that is none.
fn take_in(shares: &mut Shares, lengths: &Lengths, hot_mm: Option<[f64; 2]>) {
    for (at, share) in shares.iter_mut().enumerate() {
        let [start, end] = lengths.extent([at].iter());
        let long = end - start;
        let [from, to] = hot_mm.map_or([start, end], |[from, to]| [from.max(start), to.min(end)]);
        if long > 1e-6 && to > from {
            let own = [(from - start) / long, (to - start) / long];
            *share = Some(share.map_or(own, |before| [before[0].min(own[0]), before[1].max(own[1])]));
        }
    }
}
