//! The hybrid logical clock of Kulkarni, Demirbas, Madappa, Avva and Leone (2014): close to the wall clock, never backwards.
//!
//! Order in the journal comes from here and not from the wall clock, so a clock turned back cannot reorder what happened.

use serde::{Deserialize, Serialize};

/// A moment: the largest wall clock seen so far in milliseconds, and a counter that tells moments of one millisecond apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
pub struct Hlc(
    /// Milliseconds since 1970-01-01T00:00Z; the paper's `l`.
    pub i64,
    /// The paper's `c`.
    pub u32,
);

/// The clock of one device.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Clock {
    last: Hlc,
}

impl Clock {
    /// Goes on after the latest moment that the journal holds.
    pub fn resume(last: Hlc) -> Clock {
        Clock { last }
    }

    /// The latest moment given out or taken in.
    pub fn last(&self) -> Hlc {
        self.last
    }

    /// A moment for something that happens here while the wall clock reads `wall`; later than every earlier one.
    pub fn tick(&mut self, wall: i64) -> Hlc {
        self.last = if wall > self.last.0 { Hlc(wall, 0) } else { self.last.next() };
        self.last
    }

    /// Takes in a moment from another device, so that whatever happens here next comes after it.
    pub fn receive(&mut self, other: Hlc, wall: i64) -> Hlc {
        let l = self.last.0.max(other.0).max(wall);
        let c = match (l == self.last.0, l == other.0) {
            (true, true) => Hlc(l, self.last.1.max(other.1)).next(),
            (true, false) => self.last.next(),
            (false, true) => other.next(),
            (false, false) => Hlc(l, 0),
        };
        self.last = c;
        c
    }
}

impl Hlc {
    /// The next moment of the same millisecond. Four thousand million in one millisecond cannot be reached by a person, but a
    /// forged moment could say so: then the millisecond moves on instead of the counter wrapping round.
    fn next(self) -> Hlc {
        match self.1.checked_add(1) {
            Some(c) => Hlc(self.0, c),
            None => Hlc(self.0.saturating_add(1), 0),
        }
    }
}
