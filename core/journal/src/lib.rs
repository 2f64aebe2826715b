//! The journal: signed, hash-chained, append-only entries, one chain a device.
//!
//! Promises: an entry is never edited or deleted (a correction is a new entry that names the old one); the bytes of an
//! entry are the same on every device (deterministic CBOR); the order of all entries is total and agrees with who had
//! seen what (hybrid logical clock); an entry that a newer version wrote is kept and passed on like any other, because its hash and its
//! signature do not ask what it says. Start at [`Entry`]; the closed list of what this version can record is [`Fact`].

mod entry;
mod fingerprint;
mod key;
mod kinds;
mod personal;
mod read;

pub mod cbor;
pub mod clock;
pub mod fact;

pub use clock::{Clock, Hlc};
pub use entry::{Body, Entry, EntryError, MAX_ENTRY_BYTES, Running, Seen, SignedOn, Stamp, VERSION};
pub use fact::Fact;
pub use fingerprint::fingerprint;
pub use key::{DeviceKey, Signed};
pub use personal::WITHHELD;
pub use read::Newer;
pub use stillbar_values::{DeviceId, EntryId};
