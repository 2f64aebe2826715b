//! Chance from a seed.

use crate::desk::{STEP, mixed};

/// SplitMix64 (Steele, Lea, Flood 2014).
#[derive(Clone)]
pub struct Chance(pub u64);

impl Chance {
    /// From 0 to `below`, which is left out.
    pub fn of(&mut self, below: usize) -> usize {
        self.0 = self.0.wrapping_add(STEP);
        (mixed(self.0) % below as u64) as usize
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
