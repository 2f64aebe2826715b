//! Points of isolation, locks, signs, keys: who holds what.
//!
//! Promises: a lock is off only when its owner took it off or a forced removal was completed, and both name the fitting that
//! they have seen; a key is with exactly one person or in one box; what a person may do with a lock is decided here and
//! nowhere else. Start at [`Lock`].

mod locks;
mod row;

use stillbar_journal::fact::{KeyAt, On};
use stillbar_journal::{EntryId, Stamp};
use stillbar_values::TagId;
use stillbar_values::network::Position;

pub use locks::{ForcedLack, Stays, covered, forced_lacks, gap, may_remove, uncovered};
pub use row::LockRow;
pub use stillbar_values::{Means, PointKind};

/// A point of isolation in a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Point {
    /// The entry that added it.
    pub stamp: Stamp,
    /// Its name on the device, such as "Q1 main switch".
    pub label: String,
    /// Where it is.
    pub at: String,
    /// What it is.
    pub kind: PointKind,
    /// Whether it takes a lock.
    pub lockable: bool,
    /// The conductors it opens.
    pub poles: Vec<String>,
    /// The other source it cuts, or `None` for the normal supply.
    pub cuts: Option<EntryId>,
    /// The link of the site's network that it is.
    pub switch: Option<String>,
    /// Whether it is open in normal service.
    pub stays_open: bool,
    /// The point of the site, known from another job, that it is.
    pub same_as: Option<EntryId>,
    /// When it was opened, and not closed since.
    pub opened: Option<Stamp>,
    /// How it was found: closed is on. Of several openings the one that found it on.
    pub found: Option<Position>,
    /// What was seen to go off, or to stand open, when it was last opened; empty if it never was.
    pub seen: String,
    /// The closings in other jobs that whoever opened it knew of.
    pub knowing: Vec<EntryId>,
    /// When it was closed after the work.
    pub closed: Option<Stamp>,
    /// Every closing.
    pub closings: Vec<Stamp>,
    /// When the sign was hung, and not taken down since.
    pub sign: Option<Stamp>,
    /// The tags that hang or hung at it.
    pub tags: Vec<PointTag>,
}

/// A tag at a point.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PointTag {
    /// What it says.
    pub tag: TagId,
    /// When it was bound.
    pub stamp: Stamp,
    /// When a person last read it there.
    pub read: Option<Stamp>,
    /// When and why it came off.
    pub gone: Option<(Stamp, String)>,
}

impl Point {
    /// The tags that hang at it now.
    pub fn tags_now(&self) -> impl Iterator<Item = &PointTag> {
        self.tags.iter().filter(|t| t.gone.is_none())
    }
}

/// A lock box.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LockBox {
    /// The entry that placed it.
    pub stamp: Stamp,
    /// Its name.
    pub label: String,
    /// Where it hangs.
    pub at: String,
}

/// A lock that is or was on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lock {
    /// The entry that fitted it: this is the lock's name.
    pub stamp: Stamp,
    /// What it is on.
    pub on: On,
    /// Whose it is now; changes only by a hand-over that both confirmed.
    pub owner: EntryId,
    /// Since when it is theirs.
    pub since: Stamp,
    /// What is written on it.
    pub label: String,
    /// Where its key is.
    pub key: KeyAt,
    /// How it secures.
    pub means: Means,
    /// The same padlock, on elsewhere: one cable or bar goes through both.
    pub through: Option<EntryId>,
    /// An offer to hand it over that was not answered yet: the entry, and to whom.
    pub offered: Option<(EntryId, EntryId)>,
    /// How it came off.
    pub off: Option<Off>,
    /// A forced removal in progress or completed.
    pub forced: Option<Forced>,
}

/// How a lock came off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Off {
    /// By its owner.
    Owner(Stamp),
    /// Cut by its owner, who had no key.
    Cut(Stamp),
    /// Under an authority, in the owner's absence.
    Forced(Stamp),
}

/// The forced removal of an absent owner's lock: what is known so far.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Forced {
    /// When it began.
    pub begun: Stamp,
    /// Who answers for it.
    pub authority: EntryId,
    /// What the authority is at this site.
    pub function: String,
    /// How they were reached.
    pub reached: String,
    /// Why it cannot wait.
    pub why: String,
    /// How it was found that the owner is not on site.
    pub not_on_site: Vec<(Stamp, String)>,
    /// Attempts to reach the owner: how, and what came of it.
    pub sought: Vec<(Stamp, String, String)>,
    /// When the owner was told.
    pub told: Option<(Stamp, String)>,
}

impl Lock {
    /// Whether it is still on.
    pub fn is_on(&self) -> bool {
        self.off.is_none()
    }
}
