//! Numbers that look random and follow from a seed.

/// A source of numbers. The same seed gives the same numbers on every machine.
#[derive(Clone, Debug)]
pub(crate) struct Random(u64);

impl Random {
    /// The numbers of a seed.
    pub(crate) fn new(seed: u64) -> Self {
        let mut random = Self(seed);
        random.next();
        random
    }

    /// Splitmix64, by Steele, Lea and Flood; constants from memory.
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A whole number below another; 0 where that is 0.
    pub(crate) fn below(&mut self, end: usize) -> usize {
        if end == 0 { 0 } else { (self.next() % end as u64) as usize }
    }

    /// Whether the one in so many happens.
    pub(crate) fn one_in(&mut self, many: usize) -> bool {
        self.below(many) == 0
    }

    /// A number from 0 to 1.
    pub(crate) fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// One of a list; none of an empty one.
    pub(crate) fn of<'a, T>(&mut self, list: &'a [T]) -> Option<&'a T> {
        let at = self.below(list.len());
        list.get(at)
    }

    /// A place in a list of so many, now and then one beyond its end.
    pub(crate) fn place(&mut self, count: usize) -> usize {
        match self.below(12) {
            0 => usize::MAX,
            1 => count + self.below(4),
            _ => self.below(count),
        }
    }
}
