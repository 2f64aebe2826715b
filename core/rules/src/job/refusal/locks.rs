//! Locks and keys.

use crate::journal::EntryId;
use crate::point::{ForcedLack, Stays};

/// Why something about a lock is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LockRefusal {
    /// The job has no such lock.
    NoSuchLock,
    /// It is off already.
    Off,
    /// It may not be taken off.
    Stays(Stays),
    /// Who is to act has to be told first of a lock that was taken off in their absence.
    Owed {
        /// The lock's owner.
        owner: EntryId,
        /// What it was on; `None` if that is not known here.
        place: Option<String>,
    },
    /// Only its owner cuts it.
    NotTheirsToCut {
        /// The owner.
        owner: EntryId,
    },
    /// Only its owner hands it over.
    NotTheirsToGive {
        /// The owner.
        owner: EntryId,
    },
    /// Its key is in a box on which the one who is to have it has no lock.
    KeyInBox,
    /// It is theirs already.
    TheirsAlready,
    /// The one who is to have it takes no part in the job.
    NotOnJobYet,
    /// Somebody else has to confirm.
    Confirms {
        /// Who.
        person: EntryId,
    },
    /// An offer that was answered or is not there.
    OfferGone,
    /// Only the person in charge hands over the shift.
    ShiftNotTheirs,
    /// To whom the shift goes.
    ShiftToNobody,
    /// Whoever takes the shift has no lock at a point.
    Gap {
        /// Who.
        person: EntryId,
        /// The point's label.
        at: String,
    },
    /// An authority whose function, or how it was reached, is not said.
    AuthorityUnsaid,
    /// An authority who works under supervision.
    AuthorityLearns,
    /// The owner as authority.
    AuthorityOwns,
    /// A forced removal of one's own lock.
    OwnLock,
    /// Why it cannot wait is not said.
    CannotWaitUnsaid,
    /// No authority is named yet.
    NoAuthority,
    /// What a forced removal lacks.
    Forced(ForcedLack),
    /// The lock was not forced off.
    NotForced,
    /// The key is in a box with another lock on it.
    BoxHeld {
        /// The box; `None` if it is not known here.
        place: Option<String>,
        /// Whose lock is on it.
        owner: EntryId,
    },
    /// The padlock that it is said to be is off by now.
    PadlockGone,
    /// The padlock that it is said to be is another one.
    PadlockOther,
    /// A padlock of this label and owner is on elsewhere.
    PadlockOn {
        /// The label.
        label: String,
        /// The owner.
        owner: EntryId,
        /// What it is on; `None` if that is not known here.
        place: Option<String>,
        /// The title of its job.
        job: String,
    },
    /// The owner takes no part in the job.
    OwnerNotOnJob {
        /// Who.
        owner: EntryId,
    },
    /// A lock without a label.
    NoLabel,
    /// A key in a box that is none of this job.
    KeyInNoBox,
    /// A personal lock on a box whose key is not with its owner.
    BoxKeyNotKept,
    /// Something else than a lock on a box.
    BoxTakesLocks,
    /// The job has no such box.
    NoSuchBox,
    /// A lock on a closed point.
    NotOpen {
        /// The point's label.
        at: String,
    },
    /// Other means at a point that takes a lock, or other means that are not said.
    TakesLock,
    /// A lock at a point that takes none.
    TakesNoLock,
    /// A second lock without a hasp.
    OneOnly,
    /// A hasp beside a lock that goes straight through the device.
    NotOnHasp,
}
