//! Numeric integration.

/// The integral of a function by Gauss's rule of 5 points on even pieces.
pub(crate) fn gauss(from: f64, to: f64, pieces: u32, f: impl Fn(f64) -> f64) -> f64 {
    const NODES: [(f64, f64); 5] = [
        (0.0, 0.568_888_888_888_888_9),
        (0.538_469_310_105_683_1, 0.478_628_670_499_366_47),
        (-0.538_469_310_105_683_1, 0.478_628_670_499_366_47),
        (0.906_179_845_938_664, 0.236_926_885_056_189_08),
        (-0.906_179_845_938_664, 0.236_926_885_056_189_08),
    ];
    let half = (to - from) / f64::from(pieces) / 2.0;
    let piece = |piece: u32| {
        let middle = from + half * (2.0 * f64::from(piece) + 1.0);
        NODES.iter().map(|(at, weight)| weight * f(middle + half * at)).sum::<f64>() * half
    };
    (0..pieces).map(piece).sum()
}

/// The integral of a function over 0 to 1 that may fall off like a root at both ends: steps bunched toward the ends.
pub(crate) fn over_length(f: impl Fn(f64) -> f64) -> f64 {
    // t = s³ (10 - 15 s + 6 s²) runs from 0 to 1 and stands still at both.
    gauss(0.0, 1.0, 200, |s| {
        let t = s * s * s * (10.0 - 15.0 * s + 6.0 * s * s);
        f(t) * 30.0 * s * s * (1.0 - s) * (1.0 - s)
    })
}
