//! For whom something is told: whose clock, and which names are known.

use stillbar_journal::{EntryId, Stamp};

use crate::World;
use crate::times::when;

/// What stands behind the name of who went on without their PIN.
pub const NO_PIN: &str = " (no PIN)";

/// Whoever reads.
#[derive(Debug, Clone, Copy)]
pub struct Reader<'a> {
    /// People, sites, instruments.
    pub world: &'a World,
    /// Their clock, in milliseconds since 1970-01-01T00:00Z. At 0 whatever names a time names the date as well.
    pub now: i64,
    /// Minutes ahead of UTC.
    pub zone: i32,
}

impl Reader<'_> {
    /// A person's name.
    pub fn name(&self, id: EntryId) -> String {
        self.world.name(id)
    }

    /// When, as a person here reads it: "10:42", or with the date if it was another day.
    pub fn when(&self, stamp: &Stamp) -> String {
        when(stamp.wall, stamp.zone, self.now)
    }

    /// "10:42, Mara Lind"; it says where she went on without her PIN.
    pub fn by(&self, stamp: &Stamp) -> String {
        let no_pin = if stamp.no_pin() { NO_PIN } else { "" };
        match stamp.by {
            Some(person) => format!("{}, {}{no_pin}", self.when(stamp), self.name(person)),
            None => self.when(stamp),
        }
    }
}
