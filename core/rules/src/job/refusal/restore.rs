//! Restoring: what goes back on, the rotation, and readings that stand out.

use crate::job::SupplyName;
use crate::journal::EntryId;

/// Why something of restoring is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum RestoreRefusal {
    /// A point that is not open.
    NotOpen {
        /// Its label.
        at: String,
    },
    /// A point that was found off.
    FoundOff {
        /// Its label.
        at: String,
    },
    /// A point that another job's lock holds.
    Held {
        /// Its label.
        at: String,
        /// What is written on the lock.
        lock: String,
        /// Its owner.
        owner: EntryId,
        /// The title of its job.
        job: String,
    },
    /// A point that follows the supply.
    After {
        /// Its label.
        at: String,
        /// The labels of the points that come first.
        first: Vec<String>,
    },
    /// A point that brings a supply beside others, and no reason.
    Beside {
        /// Its label.
        at: String,
        /// What it brings.
        own: SupplyName,
        /// Beside what.
        others: Vec<SupplyName>,
    },
    /// The rotation before the isolation, once a point was opened.
    RotationBeforeLate,
    /// The rotation, while motors are in danger.
    Unguarded,
    /// An answer to no reading that stands out.
    AnswerOfNothing,
    /// Something of an answer that is not said.
    AnswerUnsaid(Unsaid),
    /// A missing line or neutral that somebody accepts.
    MissingAccepted,
}

/// What an answer to a reading that stands out lacks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unsaid {
    /// What was wrong.
    WasWrong,
    /// What was mended.
    Mended,
    /// What is left off.
    LeftOff,
    /// How it is kept off.
    KeptOff,
    /// Who accepts it.
    Accepts,
    /// How they were told.
    AcceptsWhy,
}
