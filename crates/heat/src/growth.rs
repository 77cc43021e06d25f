//! How wide a bar grows that is struck down one way through many small passes, and what growth flat tools can give.

use super::estimate::Estimate;
use super::spread::{DOUBT, spread_share};

/// The most of the strain that flat tools put into width: Tomlinson and Stringer's law at a bite of three widths.
const MOST: f64 = 0.73;
/// So many steps leave no figure of a width open.
const STEPS: usize = 128;
/// Bites between which one is looked for, as shares of the width.
const BITES: [f64; 2] = [1e-6, 10.0 / 3.0];

/// What it takes to make one size grow while the other is struck down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Growth {
    /// Less than any bite gives: it is struck on its other sides too, and trued.
    StruckBack,
    /// Flat tools give it.
    FlatTools,
    /// Flat tools may just give it: over the law by no more than its doubt.
    Perhaps,
    /// Only a peen or a fuller along the bar gives it, or an upset.
    Spreading,
}

/// Which figure of the law, with its doubt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Share {
    /// What it is seldom under.
    Low,
    /// What it most likely is.
    Likely,
    /// What it is seldom over.
    High,
}

/// The share of the strain that has to go into width: `s = ln(w1/w0) / ln(h0/h1)`; none where nothing is taken off the height
/// or a size is no positive number.
pub fn share_asked(before_mm: [f64; 2], after_mm: [f64; 2]) -> Option<f64> {
    let ([width, height], [to_width, to_height]) = (before_mm, after_mm);
    let sound = [width, height, to_width, to_height].iter().all(|size| (1e-6..1e9).contains(size));
    (sound && to_height < height).then(|| (to_width / width).ln() / (height / to_height).ln())
}

/// What it takes for a share of the strain to go into width.
pub fn growth(share: f64) -> Growth {
    match share {
        share if share < spread_share(0.0) => Growth::StruckBack,
        share if share <= MOST => Growth::FlatTools,
        share if share <= MOST + DOUBT => Growth::Perhaps,
        _ => Growth::Spreading,
    }
}

/// The width in mm that a bar grows to when its height is struck down in ever smaller passes, bite beside bite; its ends are
/// those of the law's doubt. None where a size is no positive number or nothing is taken.
///
/// Each small pass follows the law of [`spread_share`] with the width that the bar has by then: `dw/w = s(b/w) dh/h`, by the
/// Runge-Kutta method of the fourth order.
pub fn grown_width_mm(before_mm: [f64; 2], to_height_mm: f64, bite_mm: f64) -> Option<Estimate> {
    let at = |share| grown_mm(before_mm, to_height_mm, bite_mm, share);
    Some(Estimate { low: at(Share::Low)?, likely: at(Share::Likely)?, high: at(Share::High)? })
}

/// One of the figures of [`grown_width_mm`], in mm.
pub fn grown_mm(before_mm: [f64; 2], to_height_mm: f64, bite_mm: f64, which: Share) -> Option<f64> {
    let [width, height] = before_mm;
    let sound = [width, height, to_height_mm, bite_mm].iter().all(|size| (1e-6..1e9).contains(size));
    if !sound || to_height_mm > height {
        return None;
    }
    let off = match which {
        Share::Low => -DOUBT,
        Share::Likely => 0.0,
        Share::High => DOUBT,
    };
    let share = |log_width: f64| (spread_share(bite_mm / log_width.exp()) + off).clamp(0.0, 1.0);
    let step = (height / to_height_mm).ln() / STEPS as f64;
    let grow = |at: f64, _| {
        let first = share(at);
        let second = share(at + step / 2.0 * first);
        let third = share(at + step / 2.0 * second);
        let fourth = share(at + step * third);
        at + step / 6.0 * (first + 2.0 * second + 2.0 * third + fourth)
    };
    Some((0..STEPS).fold(width.ln(), grow).exp())
}

/// The bite in mm that makes a bar grow to a width while its height is struck down; none where no bite of flat tools does.
pub fn bite_for_mm(before_mm: [f64; 2], after_mm: [f64; 2]) -> Option<f64> {
    let [to_width, to_height] = after_mm;
    let width = |bite: f64| grown_mm(before_mm, to_height, bite, Share::Likely);
    // The law's top lies at a share of the widest width.
    let (mut low, mut high) = (BITES[0] * before_mm[0], BITES[1] * to_width.max(before_mm[0]));
    if width(low)? > to_width || width(high)? < to_width {
        return None;
    }
    for _ in 0..STEPS {
        let middle = f64::midpoint(low, high);
        if width(middle)? < to_width { low = middle } else { high = middle }
    }
    Some(high)
}
