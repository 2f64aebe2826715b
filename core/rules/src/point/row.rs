//! A lock in the list of all locks of a device: of whatever job.

use stillbar_journal::EntryId;

/// A lock in the list of all locks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LockRow {
    /// The entry that fitted it.
    pub fit: EntryId,
    /// Its job.
    pub job: EntryId,
    /// Its job's title.
    pub job_title: String,
    /// What is written on what it is on; empty if that is not known here.
    pub place: String,
    /// What is written on it.
    pub label: String,
    /// Whose it is.
    pub owner: EntryId,
    /// Since when, milliseconds since 1970-01-01T00:00Z.
    pub since_ms: i64,
    /// Minutes ahead of UTC at that time.
    pub zone: i32,
    /// The point that it is on; `None` where it is on a lock box.
    pub point: Option<EntryId>,
    /// The link of the site's supply network that it is on.
    pub switch: Option<String>,
    /// The site.
    pub site: Option<EntryId>,
    /// The owner's telephone; filled in from the people, not stored here.
    pub telephone: String,
    /// Whether whoever recorded that it is theirs went on without their PIN.
    pub no_pin: bool,
    /// Whether it is on.
    pub on: bool,
    /// Whether it was forced off and the owner is not told yet.
    pub owed: bool,
    /// Why the entry that tells of it is put aside, where it is: until somebody has looked, it counts as on.
    pub aside: Option<String>,
}

impl LockRow {
    /// What is written on what it is on; `None` if that is not known here.
    pub fn on_what(&self) -> Option<String> {
        Some(self.place.clone()).filter(|place| !place.is_empty())
    }
}
