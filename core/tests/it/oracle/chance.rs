//! Chance from a seed.

/// SplitMix64 (Steele, Lea, Flood 2014).
#[derive(Clone)]
pub struct Chance(pub u64);

impl Chance {
    /// From 0 to `below`, which is left out.
    pub fn of(&mut self, below: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) % below as u64) as usize
    }

    /// One of these; `None` where there are none.
    pub fn pick<'a, T>(&mut self, from: &'a [T]) -> Option<&'a T> {
        if from.is_empty() { None } else { from.get(self.of(from.len())) }
    }

    /// One time in so many.
    pub fn one_in(&mut self, many: usize) -> bool {
        self.of(many) == 0
    }
}
