//! One entry: a body in deterministic CBOR, its hash, its signature, and behind the body what opens its commitments.

use std::collections::BTreeSet;

use ciborium::Value;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use super::{DeviceId, DeviceKey, EntryId, Fact, Hlc, Signed, cbor, personal};

/// Most bytes of a body with its openings. The largest fact is a drawn signature of 8 KiB.
pub const MAX_ENTRY_BYTES: usize = 32 * 1024;

/// What an entry says, before it is signed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Body {
    /// The device that wrote it.
    pub device: DeviceId,
    /// 1 for the device's first entry, and no gap after that.
    pub seq: u64,
    /// Its place in the order of everything.
    pub clock: Hlc,
    /// What the device's own clock read, in milliseconds since 1970-01-01T00:00Z; may be wrong, and then says so by its difference
    /// from `clock`.
    pub wall: i64,
    /// Minutes that local time was ahead of UTC.
    pub zone: i32,
    /// The id of the device's entry before this, or 32 zero bytes.
    pub prev: EntryId,
    /// The device's entry before this in the same job: nothing can be taken out of what a device wrote in a job, even where the entries
    /// between belong to other jobs and are not shown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after: Option<EntryId>,
    /// How long the device had been running, by a clock that runs while it sleeps and that nobody sets; `None` where it has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub running: Option<Running>,
    /// The site, if it belongs to one.
    pub site: Option<EntryId>,
    /// The job, if it belongs to one. The entry that opens a job *is* the job.
    pub job: Option<EntryId>,
    /// The person who had the device in hand.
    pub by: Option<EntryId>,
    /// How the device knew that it was this person.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub signed_on: Option<SignedOn>,
    /// What the device had of others' entries in this job, where that is more than it had said before.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub seen: Vec<Seen>,
    /// What is recorded.
    pub fact: Fact,
}

/// Another device, and the number of its last entry in the job that was here.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Seen(pub DeviceId, pub u64);

/// Time since a device was started, by a clock that also runs while it sleeps: CLOCK_BOOTTIME, elapsedRealtime, mach_continuous_time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Running {
    /// Which start of the device; another number after each restart.
    pub start: u64,
    /// Milliseconds since that start.
    pub ms: u64,
}

/// How a device knew who had it in hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SignedOn {
    /// Nobody else uses this device.
    OnlyUser,
    /// By their PIN.
    Pin,
    /// They went on without it.
    WithoutPin,
}

/// A signed entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// SHA-256 of [`Entry::signed`].
    pub id: EntryId,
    /// What it says; [`WITHHELD`](super::WITHHELD) stands for a text that was taken out.
    pub body: Body,
    /// The body in deterministic CBOR, and behind it what opens its commitments, if anything does: what is kept and passed on.
    pub bytes: Vec<u8>,
    /// How many of `bytes` are the body.
    length: usize,
    /// Ed25519 over [`Entry::signed`].
    pub signature: [u8; 64],
}

/// When and by whom: what is kept of an entry wherever a screen may show it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp {
    /// The entry.
    pub id: EntryId,
    /// The device that wrote it.
    pub device: DeviceId,
    /// Its number in that device's chain.
    pub seq: u64,
    /// Its place in the order.
    pub clock: Hlc,
    /// What the device's clock read.
    pub wall: i64,
    /// Minutes ahead of UTC.
    pub zone: i32,
    /// How long the device had been running.
    pub running: Option<Running>,
    /// The person who had the device in hand.
    pub by: Option<EntryId>,
    /// How the device knew that it was this person.
    pub signed_on: Option<SignedOn>,
}

/// Why bytes are not a valid entry.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum EntryError {
    /// Too long.
    #[error("an entry has at most {MAX_ENTRY_BYTES} bytes; this one has {0}")]
    TooLong(usize),
    /// Not the deterministic encoding of a body.
    #[error(transparent)]
    Cbor(#[from] cbor::CborError),
    /// Behind the body stands a text that is not the one that was committed to.
    #[error("the {0} is not the one that was signed")]
    Opening(String),
    /// The platform did not give the random bytes that were asked for.
    #[error("the system gave no random bytes, so names cannot be kept apart from the signature")]
    Salt,
    /// The signature is not the device's.
    #[error("the signature is not that of the device that the entry names")]
    Signature,
}

impl Stamp {
    /// Whether the person went on without their PIN.
    pub fn no_pin(&self) -> bool {
        self.signed_on == Some(SignedOn::WithoutPin)
    }

    /// Of something that is not in the journal.
    pub(crate) const NONE: Stamp = Stamp {
        id: EntryId::NONE,
        device: DeviceId([0; 32]),
        seq: 0,
        clock: Hlc(0, 0),
        wall: 0,
        zone: 0,
        running: None,
        by: None,
        signed_on: None,
    };
}

impl Entry {
    /// Signs `body`. `random` gives that many bytes from the system's cryptographic source.
    pub fn seal(body: Body, key: &DeviceKey, random: &dyn Fn(u32) -> Vec<u8>) -> Result<Entry, EntryError> {
        let mut value = cbor::value(&body)?;
        let openings = personal::commit(&mut value, random)?;
        let mut bytes = cbor::encode(&value)?;
        let length = bytes.len();
        let signature = key.sign(&bytes);
        let id = hash(&bytes);
        bytes.extend(openings);
        if bytes.len() > MAX_ENTRY_BYTES {
            return Err(EntryError::TooLong(bytes.len()));
        }
        Ok(Entry { id, body, bytes, length, signature })
    }

    /// Reads an entry from outside: checks length, encoding, openings and signature.
    pub fn open(bytes: Vec<u8>, signature: [u8; 64]) -> Result<Entry, EntryError> {
        let entry = Entry::trusted(bytes, signature)?;
        if entry.body.device.signed(entry.signed(), &entry.signature) { Ok(entry) } else { Err(EntryError::Signature) }
    }

    /// Reads an entry from this device's own database, where the signature was checked when it came in.
    pub fn trusted(bytes: Vec<u8>, signature: [u8; 64]) -> Result<Entry, EntryError> {
        if bytes.len() > MAX_ENTRY_BYTES {
            return Err(EntryError::TooLong(bytes.len()));
        }
        // Most entries commit to nothing, and are read in one go.
        let (body, length) = match cbor::decode(&bytes) {
            Ok(body) => (body, bytes.len()),
            Err(_) => opened(&bytes)?,
        };
        Ok(Entry { id: hash(&bytes[..length]), body, bytes, length, signature })
    }

    /// The body in deterministic CBOR: what is hashed and signed.
    pub fn signed(&self) -> &[u8] {
        &self.bytes[..self.length]
    }

    /// Whether something that was committed to can be taken out of it.
    pub fn opens(&self) -> bool {
        self.length < self.bytes.len()
    }

    /// The same entry without what names or marks a person: the same id, and its signature holds.
    pub fn withheld(&self) -> Result<Entry, EntryError> {
        self.keeping(&|_| false)
    }

    /// The same entry with those openings only that `keep` is true for, by the names of their fields.
    pub fn keeping(&self, keep: &dyn Fn(&str) -> bool) -> Result<Entry, EntryError> {
        let mut bytes = self.signed().to_vec();
        if self.opens() {
            bytes.extend(personal::keeping(&self.bytes[self.length..], keep)?);
        }
        Entry::trusted(bytes, self.signature)
    }

    /// Whether it says in the clear what names or marks a person.
    pub fn names(&self) -> bool {
        cbor::value(&self.body).is_ok_and(|mut body| personal::shown(&mut body))
    }

    /// When and by whom.
    pub fn stamp(&self) -> Stamp {
        let Body { device, seq, clock, wall, zone, running, by, signed_on, .. } = self.body;
        Stamp { id: self.id, device, seq, clock, wall, zone, running, by, signed_on }
    }

    /// The place in the total order of all entries of all devices: clock, then device where two clocks agree.
    pub fn order(&self) -> (Hlc, DeviceId) {
        (self.body.clock, self.body.device)
    }

    /// The entries that this one names: who had the device in hand, and all that its fact refers to. Not its site, its job and the
    /// entry before it.
    pub fn refers(&self) -> BTreeSet<EntryId> {
        let mut found: BTreeSet<EntryId> = self.body.by.into_iter().collect();
        // Byte strings of 32 bytes are ids and nothing else: a new fact need not be listed here.
        if let Ok(fact) = Value::serialized(&self.body.fact) {
            ids_in(&fact, &mut found);
        }
        found.remove(&EntryId::NONE);
        found
    }

    /// The job that this entry belongs to or opens.
    pub fn job(&self) -> Option<EntryId> {
        match self.body.fact {
            Fact::JobOpened { .. } => Some(self.id),
            _ => self.body.job,
        }
    }
}

/// Reads a body that commits to something, and what opens it. The body, and how many bytes are its own.
fn opened(bytes: &[u8]) -> Result<(Body, usize), EntryError> {
    let mut rest = bytes;
    let mut value = cbor::item(&mut rest)?;
    let length = bytes.len() - rest.len();
    let openings = if rest.is_empty() { None } else { Some(cbor::item(&mut rest)?) };
    let canonical = openings.as_ref().map_or(Ok(Vec::new()), cbor::encode)?;
    if !rest.is_empty() || canonical != bytes[length..] {
        return Err(cbor::CborError::NotCanonical.into());
    }
    let committed = personal::reveal(&mut value, openings)?;
    let body: Body = cbor::decode(&cbor::encode(&value)?)?;
    // As it stood, and in no other spelling.
    committed.put_back(&mut value);
    if cbor::encode(&value)? != bytes[..length] {
        return Err(cbor::CborError::NotCanonical.into());
    }
    Ok((body, length))
}

fn ids_in(value: &Value, found: &mut BTreeSet<EntryId>) {
    match value {
        Value::Bytes(bytes) => found.extend(<[u8; 32]>::try_from(bytes.as_slice()).map(EntryId)),
        Value::Array(items) => items.iter().for_each(|item| ids_in(item, found)),
        Value::Map(pairs) => pairs.iter().for_each(|(_, item)| ids_in(item, found)),
        _ => {}
    }
}

fn hash(bytes: &[u8]) -> EntryId {
    EntryId(Sha256::digest(bytes).into())
}
