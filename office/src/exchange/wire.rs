//! Entries from the wire.

use sha2::{Digest, Sha256};
use stillbar_core::journal::{Entry, EntryId};
use stillbar_protocol::WireEntry;

use super::Offered;

/// Checks length, encoding and signature. What is no entry keeps the hash of what was sent as its name.
pub fn open(wire: &WireEntry) -> Offered {
    let body = wire.body().unwrap_or_default();
    let id = EntryId(Sha256::digest(&body).into());
    let entry = wire.sig().and_then(|sig| Entry::open(body, sig).ok());
    Offered { id: entry.as_ref().map_or(id, |entry| entry.id), entry }
}
