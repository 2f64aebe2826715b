//! What is switched, opened and closed: circuits, points, signs, covers.

use crate::job::blocker::Charged;
use crate::journal::EntryId;

/// Why something that is switched is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SwitchRefusal {
    /// Something may still hold a charge.
    Charged(Charged),
    /// The job has no such circuit.
    NoSuchCircuit,
    /// A circuit that is off already.
    CircuitOff {
        /// Its label.
        label: String,
    },
    /// A circuit whose turn has not come.
    CircuitNext {
        /// The label of the one that comes next.
        label: String,
    },
    /// Every circuit is on.
    CircuitsOn,
    /// A point that is open already.
    OpenAlready,
    /// A sign before the lock.
    SignBeforeLock {
        /// The point's label.
        at: String,
    },
    /// A sign that comes down before the lock.
    SignUnderLock,
    /// A point with a lock on it.
    Locked,
    /// A point with a lock on it by the word of an entry that is put aside.
    LockedAside {
        /// The point's label.
        at: String,
        /// What is written on the lock.
        lock: String,
        /// Its owner.
        owner: EntryId,
    },
    /// A cover that is back.
    CoverBack,
    /// The job has no such cover.
    NoSuchCover,
    /// A pair that is not read with the supply back.
    NotAPair {
        /// The first conductor.
        first: String,
        /// The second.
        then: String,
    },
}
