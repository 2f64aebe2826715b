//! What goes over the wire, as docs/exchange.md says it. Whatever comes in is bounded and checked before it is believed.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};

use crate::journal::{DeviceId, Entry, EntryId};

/// An entry on the wire.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WireEntry {
    /// The body in deterministic CBOR, base64.
    pub body: String,
    /// The 64 bytes of the signature, base64.
    pub sig: String,
}

impl WireEntry {
    /// For the wire.
    pub fn of(entry: &Entry) -> WireEntry {
        WireEntry { body: STANDARD.encode(&entry.bytes), sig: STANDARD.encode(entry.signature) }
    }

    /// Checks length, encoding and signature.
    pub fn open(&self) -> Option<Entry> {
        let sig: [u8; 64] = STANDARD.decode(&self.sig).ok()?.try_into().ok()?;
        Entry::open(STANDARD.decode(&self.body).ok()?, sig).ok()
    }
}

/// What an office can do.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Capabilities {
    /// The version of the exchange.
    pub exchange: u32,
    /// Entries that it takes at once.
    pub entries_per_push: usize,
    /// Bytes of an original at most.
    pub photo_bytes: u64,
    /// The office's clock.
    pub now_ms: i64,
}

/// What a phone asks for when it joins an office.
#[derive(Debug, Serialize)]
pub struct Ask {
    /// The one-time code.
    pub code: String,
    /// The phone's public key.
    pub device: DeviceId,
    /// What the phone is called.
    pub label: String,
    /// Ed25519 over `stillbar-enrol-1:` and the code, base64.
    pub sig: String,
}

/// What it is given.
#[derive(Debug, Deserialize)]
pub struct Enrolled {
    /// Its token.
    pub token: String,
    /// What the office is called.
    pub office: String,
}

/// Entries to be taken in.
#[derive(Debug, Serialize)]
pub struct Push {
    /// In the device's own order.
    pub entries: Vec<WireEntry>,
}

/// What became of them.
#[derive(Debug, Deserialize)]
pub struct Pushed {
    /// One for each entry, in order.
    pub answers: Vec<Answered>,
    /// How far the office has the device's chain.
    pub last: Last,
}

/// What became of one entry.
#[derive(Debug, Deserialize)]
pub struct Answered {
    /// The entry.
    pub id: EntryId,
    /// The answer.
    pub answer: Answer,
    /// Why, where it is not plain.
    #[serde(default)]
    pub reason: Option<String>,
}

/// The four answers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Answer {
    /// Taken in.
    Accepted,
    /// It was there already.
    Duplicate,
    /// Not taken in; the reason says why.
    Refused,
    /// Kept, and not shown to others until a person at the office has looked at it.
    Aside,
}

/// The end of a chain as the office has it.
#[derive(Debug, Clone, Copy, Deserialize)]
pub struct Last {
    /// The number of the last entry, or 0.
    pub seq: u64,
}

/// A page of what others wrote.
#[derive(Debug, Deserialize)]
pub struct Page {
    /// The entries.
    pub entries: Vec<WireEntry>,
    /// Entries of which only the name is left.
    #[serde(default)]
    pub erased: Vec<Erased>,
    /// Where the next page begins.
    pub next: String,
    /// Whether there is more.
    pub more: bool,
}

/// An entry of which only the name is left.
#[derive(Debug, Deserialize)]
pub struct Erased {
    /// The entry.
    pub id: EntryId,
    /// Who wrote it.
    pub device: DeviceId,
    /// Its number.
    pub seq: u64,
    /// Its site, if it belongs to one.
    #[serde(default)]
    pub site: Option<EntryId>,
}

/// What the office holds, to compare.
#[derive(Debug, Deserialize)]
pub struct Digest {
    /// By site.
    pub sites: Vec<SiteSum>,
}

/// One site.
#[derive(Debug, Deserialize)]
pub struct SiteSum {
    /// The site.
    pub site: EntryId,
    /// By device.
    pub devices: Vec<DeviceSum>,
}

/// What one device wrote for one site.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DeviceSum {
    /// The device.
    pub device: DeviceId,
    /// How many entries.
    pub count: u64,
    /// The highest number.
    pub last_seq: u64,
    /// SHA-256 chained over the ids in the order of their numbers, from 32 zero bytes.
    pub hash: EntryId,
}

/// Photos that the office lacks.
#[derive(Debug, Deserialize)]
pub struct AllWanted {
    /// One for each photo.
    pub wanted: Vec<Wanted>,
}

/// A photo that the office lacks.
#[derive(Debug, Clone, Deserialize)]
pub struct Wanted {
    /// Its name.
    pub sha256: String,
    /// Which of `320`, `960`, `original`.
    pub sizes: Vec<String>,
}

/// A refusal.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub struct Refusal {
    /// A word for a program.
    pub error: String,
    /// A sentence for a person.
    pub say: String,
}
