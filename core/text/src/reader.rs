//! For whom something is told: whose clock, and which names are known.

use stillbar_journal::{EntryId, Stamp};

use crate::World;
use crate::catalogue::say;
use crate::times::when;

/// A name or a time, with what stands behind it where somebody went on without their PIN.
pub fn no_pin(said: String, without: bool) -> String {
    if without { say!("without-pin", said = said) } else { said }
}

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
        match stamp.by {
            Some(person) => {
                say!("when-who", when = self.when(stamp), who = no_pin(self.name(person), stamp.no_pin()))
            }
            None => self.when(stamp),
        }
    }
}
