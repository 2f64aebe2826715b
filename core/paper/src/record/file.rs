//! The record as a JSON file, in the one spelling that it has: docs/formats.md tells of it.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use sha2::{Digest, Sha256};

use stillbar_journal::{DeviceId, DeviceKey, Signed};
use stillbar_protocol::WireEntry;

use super::write_error::WriteError;

/// What the file says that it is.
pub const FORMAT: &str = "stillbar-record";
/// The version of the format.
pub const VERSION: u32 = 1;
/// Most bytes of a file that is read: sixty photos and their job have 15 MB.
pub const MAX_FILE_BYTES: usize = 64 << 20;
/// Most entries in a record; a job of a year has some thousands.
pub const MAX_ENTRIES: usize = 20_000;
/// Most photos in a record.
pub const MAX_PHOTOS: usize = 1_000;

/// The file. Fields in the order in which they are written.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RecordFile {
    /// Proofs by others of when its entries were there; none is made on a device.
    pub anchors: Vec<Value>,
    /// The report.
    pub claims: Value,
    /// The job's entries and those that they name, in the journal's order.
    pub entries: Vec<WireEntry>,
    /// [`FORMAT`].
    pub format: String,
    /// The job's id, hex.
    pub job: String,
    /// When it was made, by the clock of whoever made it (RFC 3339).
    pub made: String,
    /// The pictures that are shown.
    pub photos: Vec<Picture>,
    /// The program that made it, and its version.
    pub program: String,
    /// Who made it.
    pub seal: Seal,
    /// [`VERSION`].
    pub version: u32,
}

/// A picture that is shown: in a PDF it stands on a page, in JSON it is here.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Picture {
    /// SHA-256 of the copy that is shown, hex.
    pub copy: String,
    /// The copy, base64.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub jpeg: Option<String>,
    /// SHA-256 of the original, hex.
    pub sha256: String,
}

/// The device that put the record together, and its signature over what it put together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Seal {
    /// Its public key, hex.
    pub device: String,
    /// Ed25519, base64.
    pub sig: String,
}

impl RecordFile {
    /// The file as bytes.
    pub fn written(&self) -> Result<Vec<u8>, WriteError> {
        let value = serde_json::to_value(self)?;
        let mut out = String::with_capacity(1 << 16);
        canonical(&value, &mut out);
        Ok(out.into_bytes())
    }

    /// What the seal is over: everything but anchors, which come later, the seal itself, and the bytes of pictures, which are named by
    /// their hash.
    pub fn sealed(&self) -> Result<Vec<u8>, WriteError> {
        let mut value = serde_json::to_value(self)?;
        if let Value::Object(map) = &mut value {
            map.remove("anchors");
            map.remove("seal");
            for picture in map.get_mut("photos").and_then(Value::as_array_mut).into_iter().flatten() {
                picture.as_object_mut().and_then(|picture| picture.remove("jpeg"));
            }
        }
        let mut out = String::with_capacity(1 << 16);
        canonical(&value, &mut out);
        let mut message = b"stillbar-record-1:".to_vec();
        message.extend(Sha256::digest(out.as_bytes()));
        Ok(message)
    }

    /// Signs it.
    pub fn seal(&mut self, key: &DeviceKey) -> Result<(), WriteError> {
        self.seal = Seal { device: key.device().to_string(), sig: String::new() };
        self.seal.sig = STANDARD.encode(key.sign(&self.sealed()?));
        Ok(())
    }

    /// Whether the seal is that of the device that it names.
    pub fn seal_holds(&self) -> bool {
        let sig: Option<[u8; 64]> = STANDARD.decode(&self.seal.sig).ok().and_then(|sig| sig.try_into().ok());
        match (self.seal.device.parse::<DeviceId>(), sig, self.sealed()) {
            (Ok(device), Some(sig), Ok(message)) => device.signed(&message, &sig),
            _ => false,
        }
    }

    /// The same without the bytes of pictures: what is embedded in a PDF, whose pages show them.
    pub fn without_pictures(&self) -> RecordFile {
        let mut file = self.clone();
        file.photos.iter_mut().for_each(|p| p.jpeg = None);
        file
    }
}

/// JSON with sorted keys, no space between, and no escapes but the needed ones: what RFC 8785 makes of texts, whole numbers, lists, truth
/// values and null, which is all that is here.
pub(super) fn canonical(value: &Value, out: &mut String) {
    match value {
        Value::Object(map) => {
            out.push('{');
            for (i, (key, value)) in sorted(map).into_iter().enumerate() {
                if i > 0 {
                    out.push(',');
                }
                text(key, out);
                out.push(':');
                canonical(value, out);
            }
            out.push('}');
        }
        Value::Array(items) => {
            out.push('[');
            for (i, item) in items.iter().enumerate() {
                if i > 0 {
                    out.push(',');
                }
                canonical(item, out);
            }
            out.push(']');
        }
        Value::String(words) => text(words, out),
        plain => out.push_str(&plain.to_string()),
    }
}

/// In the order of their UTF-16 (RFC 8785 section 3.2.3), which is that of their bytes: every key is ASCII.
fn sorted(map: &Map<String, Value>) -> Vec<(&String, &Value)> {
    let mut pairs: Vec<_> = map.iter().collect();
    pairs.sort_by(|a, b| a.0.cmp(b.0));
    pairs
}

fn text(words: &str, out: &mut String) {
    // Writing a string to a string cannot fail.
    out.push_str(&serde_json::to_string(words).unwrap_or_default());
}
