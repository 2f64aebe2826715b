//! Photos: named by their SHA-256, taken in at any byte, verified, kept once.
//!
//! Promises: only a photo that an entry of this office names is taken in; what is kept under a SHA-256 has it; bytes that were
//! acknowledged are on disk; a phone gets only photos that an entry of one of its sites names. Start at [`Name`], [`begin`] and
//! [`add`].

mod blobs;
#[cfg(feature = "s3")]
mod s3;
mod upload;

use std::fmt;

use serde::Serialize;
use stillbar_core::evidence;
use stillbar_core::journal::{DeviceId, EntryId};

pub use blobs::{Blobs, key};
pub use upload::{Begun, Upload, add, begin, drop_upload, finish, sweep, upload};

use crate::exchange::sites_of;
use crate::fault::Fault;
use crate::store::Tx;
use crate::with;

/// Bytes of an original at most: what the core takes as a photo.
pub const MOST_ORIGINAL: i64 = evidence::MAX_PHOTO_BYTES as i64;
/// Bytes of a copy at most; one of 960 pixels has a twentieth of that.
pub const MOST_COPY: i64 = 4 * 1024 * 1024;
/// Photos that are told as wanted at once.
pub const MOST_WANTED: usize = 500;

/// A photo, or a copy of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Name {
    /// SHA-256 of the original.
    pub sha256: [u8; 32],
    /// 0 for the original, otherwise the longest side of the copy in pixels.
    pub size: i64,
}

/// The sizes, as phones call them, small ones first.
pub const SIZES: [(&str, i64); 3] = [("320", 320), ("960", 960), ("original", 0)];

impl Name {
    /// From the last part of an address: 64 hex digits, and for a copy `.320.jpg` or `.960.jpg`.
    pub fn read(text: &str) -> Option<Name> {
        let (hex, size) = match (text.strip_suffix(".320.jpg"), text.strip_suffix(".960.jpg")) {
            (Some(hex), _) => (hex, 320),
            (_, Some(hex)) => (hex, 960),
            _ => (text, 0),
        };
        let small = hex.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
        hex.parse::<EntryId>().ok().filter(|_| small).map(|hash| Name { sha256: hash.0, size })
    }

    /// From what an upload says of itself.
    pub fn of(sha256: &str, size: &str) -> Option<Name> {
        let size = SIZES.iter().find(|(word, _)| *word == size)?.1;
        Name::read(sha256).filter(|n| n.size == 0).map(|n| Name { size, ..n })
    }

    /// Bytes that it may have at most.
    pub fn most(&self) -> i64 {
        if self.size == 0 { MOST_ORIGINAL } else { MOST_COPY }
    }
}

impl fmt::Display for Name {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&crate::hex(&self.sha256))?;
        if self.size == 0 { Ok(()) } else { write!(f, ".{}.jpg", self.size) }
    }
}

/// How long a kept photo is, if it is kept.
pub fn length(tx: &mut dyn Tx, name: Name) -> Result<Option<i64>, Fault> {
    let rows = tx.rows("SELECT length FROM photo WHERE sha256 = $1 AND size = $2", with![name.sha256, name.size])?;
    rows.first().map(|row| row.int(0)).transpose()
}

/// Whether an entry names the photo: one that `device` wrote, or one of a site of it. `aside` counts what is aside as well.
pub fn named(tx: &mut dyn Tx, device: DeviceId, sha256: [u8; 32], aside: bool) -> Result<bool, Fault> {
    let rows = tx.rows("SELECT site, device FROM photo_named WHERE sha256 = $1", with![sha256])?;
    let sites = sites_of(tx, device)?;
    for row in rows {
        let site = row.id(0)?;
        if sites.contains(&site) || (aside && row.device(1)? == device) {
            return Ok(true);
        }
    }
    Ok(false)
}

/// A photo that the office lacks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Wanted {
    /// SHA-256 of the original.
    pub sha256: String,
    /// What is lacking of it: `320`, `960`, `original`.
    pub sizes: Vec<&'static str>,
}

/// What entries of `device` name and the office lacks.
pub fn wanted(tx: &mut dyn Tx, device: DeviceId) -> Result<Vec<Wanted>, Fault> {
    let sql = "SELECT named.sha256, \
               (SELECT count(*) FROM photo WHERE photo.sha256 = named.sha256 AND size = 320), \
               (SELECT count(*) FROM photo WHERE photo.sha256 = named.sha256 AND size = 960), \
               (SELECT count(*) FROM photo WHERE photo.sha256 = named.sha256 AND size = 0) \
               FROM (SELECT DISTINCT sha256 FROM photo_named WHERE device = $1) AS named \
               WHERE (SELECT count(*) FROM photo WHERE photo.sha256 = named.sha256 AND size IN (0, 320, 960)) < 3 ORDER BY named.sha256 LIMIT $2";
    let mut wanted = Vec::new();
    for row in tx.rows(sql, with![device, MOST_WANTED])? {
        let mut sizes = Vec::new();
        for (at, (word, _)) in SIZES.iter().enumerate() {
            if !row.yes(at + 1)? {
                sizes.push(*word);
            }
        }
        wanted.push(Wanted { sha256: crate::hex(&row.hash(0)?), sizes });
    }
    Ok(wanted)
}
