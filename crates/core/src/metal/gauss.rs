//! Gauss's rule of 8 points, for sums along a part.

/// The nodes on one side of the middle of -1 to 1, each with its weight: Abramowitz and Stegun, *Handbook of Mathematical
/// Functions*, table 25.4.
pub(crate) const GAUSS_8: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_47),
    (0.960_289_856_497_536_2, 0.101_228_536_290_376_26),
];
