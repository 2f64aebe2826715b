//! What is on the wire, as JSON.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use stillbar_core::journal::{Entry, EntryId};

use super::Offered;

/// An entry on the wire.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WireEntry {
    /// The body in deterministic CBOR, base64.
    pub body: String,
    /// The 64 bytes of the signature, base64.
    pub sig: String,
}

impl WireEntry {
    /// From the bytes that are kept.
    pub fn of(body: &[u8], sig: &[u8]) -> WireEntry {
        WireEntry { body: STANDARD.encode(body), sig: STANDARD.encode(sig) }
    }

    /// Checks length, encoding and signature. What is no entry keeps the hash of what was sent as its name.
    pub fn open(&self) -> Offered {
        let body = STANDARD.decode(&self.body).unwrap_or_default();
        let id = EntryId(Sha256::digest(&body).into());
        let sig: Option<[u8; 64]> = STANDARD.decode(&self.sig).ok().and_then(|s| s.try_into().ok());
        let entry = sig.and_then(|sig| Entry::open(body, sig).ok());
        Offered { id: entry.as_ref().map_or(id, |entry| entry.id), entry }
    }
}

/// `POST /entries`.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Push {
    /// In the device's own order.
    pub entries: Vec<WireEntry>,
}
