//! Entries to an office and back.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};
use stillbar_values::{DeviceId, EntryId};

/// An entry on the wire. That it is one shows only when it is opened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = Entry))]
pub struct WireEntry {
    /// The body in deterministic CBOR, and behind it what opens its commitments, base64.
    pub body: String,
    /// The 64 bytes of the signature, base64.
    pub sig: String,
}

impl WireEntry {
    /// From the bytes that are kept.
    pub fn from_bytes(body: &[u8], sig: &[u8]) -> WireEntry {
        WireEntry { body: STANDARD.encode(body), sig: STANDARD.encode(sig) }
    }

    /// The bytes of the body, if it is base64.
    pub fn body(&self) -> Option<Vec<u8>> {
        STANDARD.decode(&self.body).ok()
    }

    /// The signature, if it is base64 of 64 bytes.
    pub fn sig(&self) -> Option<[u8; 64]> {
        STANDARD.decode(&self.sig).ok()?.try_into().ok()
    }
}

/// Entries to be taken in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Push {
    /// In the device's own order; at most [`crate::limits::ENTRIES`].
    #[cfg_attr(feature = "schema", schema(max_items = 500))]
    pub entries: Vec<WireEntry>,
}

/// Whose entries are pushed.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::IntoParams), into_params(parameter_in = Query))]
pub struct Of {
    /// The device that wrote them, if it is another one than the caller.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", param(nullable = false, value_type = Option<crate::schema::Id>))]
    pub of: Option<DeviceId>,
}

impl Of {
    /// Path and query of the call.
    pub fn path(&self) -> String {
        self.of.map_or_else(|| crate::paths::ENTRIES.to_owned(), |of| format!("{}?of={of}", crate::paths::ENTRIES))
    }
}

/// What became of the entries of a push.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Pushed {
    /// One for each entry, in the same order.
    pub answers: Vec<Answered>,
    /// The end of the device's chain as the office has it now.
    pub last: Last,
}

/// What became of one entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Answered {
    /// The entry.
    #[cfg_attr(feature = "schema", schema(value_type = crate::schema::Id))]
    pub id: EntryId,
    /// The answer.
    pub answer: Answer,
    /// Why it was refused or is aside.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schema(nullable = false))]
    pub reason: Option<Why>,
}

words! {
    /// What becomes of an entry.
    Answer,
    /// An answer of a newer office: the entry counts as not taken, and is sent again.
    else Unknown:
    /// It is in the chain and in its feeds.
    Accepted "accepted",
    /// It was there already.
    Duplicate "duplicate",
    /// Not taken; the reason says why.
    Refused "refused",
    /// Kept, and not shown to others until a person at the office has looked at it.
    Aside "aside",
}

impl Answer {
    /// Whether the office has the entry on disk. What is not known to say so does not.
    pub fn taken(self) -> bool {
        matches!(self, Answer::Accepted | Answer::Duplicate | Answer::Aside)
    }
}

words! {
    /// Why an entry was refused, or is kept aside.
    Why,
    /// A reason of a newer office.
    else Unknown:
    /// Length, encoding or signature.
    NotAnEntry "not-an-entry",
    /// Another device than the call is about.
    NotYours "not-yours",
    /// Another entry has this number; both are kept.
    Fork "another-entry-has-this-number",
    /// Entries before it are missing.
    Gap "gap",
    /// An entry before it in the same call was refused.
    AfterARefusal "after-a-refusal",
    /// The quarantine of this device is full.
    QuarantineFull "quarantine-full",
    /// The device is not enrolled here.
    UnknownDevice "unknown-device",
    /// The device was withdrawn.
    Withdrawn "device-withdrawn",
    /// More than 24 hours ahead.
    Ahead "from-the-future",
    /// An entry of the device came from the future before.
    Held "held-back",
    /// The site is not the device's.
    Ground "not-your-site",
}

/// The end of a chain: 0 and 32 zero bytes at the beginning.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Last {
    /// The last number.
    #[cfg_attr(feature = "schema", schema(value_type = i64, minimum = 0))]
    pub seq: u64,
    /// The last id.
    #[cfg_attr(feature = "schema", schema(value_type = crate::schema::Id))]
    pub id: EntryId,
}

/// What is asked of a page.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::IntoParams), into_params(parameter_in = Query))]
pub struct Pull {
    /// What the page before gave as `next`; empty for the beginning.
    #[serde(default)]
    pub after: String,
    /// Entries at most.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", param(nullable = false, minimum = 1, maximum = 500))]
    pub limit: Option<u32>,
    /// 1: with the caller's own entries, for one that lost its data.
    #[serde(default)]
    #[cfg_attr(feature = "schema", param(minimum = 0, maximum = 1))]
    pub own: u8,
}

impl Pull {
    /// Path and query of the call. What comes from an office as `next` needs no escaping: it is base64 for addresses.
    pub fn path(&self) -> String {
        let mut path = format!("{}?after={}", crate::paths::ENTRIES, self.after);
        if let Some(limit) = self.limit {
            path.push_str(&format!("&limit={limit}"));
        }
        if self.own == 1 {
            path.push_str("&own=1");
        }
        path
    }
}

/// A page of what the phone's sites have.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Page {
    /// In the order of the feeds.
    pub entries: Vec<WireEntry>,
    /// Entries of which only the name is left; left out if there is none.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub erased: Vec<Erased>,
    /// Where the next page begins.
    pub next: String,
    /// Whether there is more now.
    pub more: bool,
}

/// An entry of which only the name is left: its personal data were erased.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Erased {
    /// The entry.
    #[cfg_attr(feature = "schema", schema(value_type = crate::schema::Id))]
    pub id: EntryId,
    /// Who wrote it.
    #[cfg_attr(feature = "schema", schema(value_type = crate::schema::Id))]
    pub device: DeviceId,
    /// Its number.
    #[cfg_attr(feature = "schema", schema(value_type = i64, minimum = 0))]
    pub seq: u64,
    /// The site in whose feed it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schema(required = true, nullable = false, value_type = crate::schema::Id))]
    pub site: Option<EntryId>,
}
