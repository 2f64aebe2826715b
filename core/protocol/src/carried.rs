//! Entries to the wire and back: that bytes are an entry is the journal's to say.

use stillbar_journal::Entry;

use crate::WireEntry;

/// What an entry on the wire needs of the journal.
pub trait Carried: Sized {
    /// An entry for the wire.
    fn of(entry: &Entry) -> Self;

    /// Checks length, encoding and signature; `None` if it is no entry.
    fn open(&self) -> Option<Entry>;
}

impl Carried for WireEntry {
    fn of(entry: &Entry) -> WireEntry {
        WireEntry::from_bytes(&entry.bytes, &entry.signature)
    }

    fn open(&self) -> Option<Entry> {
        Entry::open(self.body()?, self.sig()?).ok()
    }
}
