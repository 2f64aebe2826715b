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

use stillbar_core::evidence;
use stillbar_core::journal::{DeviceId, EntryId};
use stillbar_protocol::limits::{COPY_BYTES, WANTED};
use stillbar_protocol::{Size, Wanted};

pub use blobs::{Blobs, BlobsError, key};
pub use upload::{Upload, UploadBegun, add, begin, drop_upload, finish, sweep, upload};

use crate::error::OfficeError;
use crate::exchange::sites_of;
use crate::params;
use crate::store::Tx;

/// Bytes of an original at most: what the core takes as a photo.
pub const MAX_ORIGINAL: i64 = evidence::MAX_PHOTO_BYTES as i64;

/// A photo, or a copy of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Name {
    /// SHA-256 of the original.
    pub sha256: [u8; 32],
    /// 0 for the original, otherwise the longest side of the copy in pixels.
    pub size: i64,
}

/// A size as it is kept: 0 for the original, otherwise the longest side in pixels.
fn side(size: Size) -> i64 {
    match size {
        Size::Thumbnail => 320,
        Size::Print => 960,
        Size::Original => 0,
    }
}

impl Name {
    /// From the last part of an address: 64 hex digits, and for a copy `.320.jpg` or `.960.jpg`.
    pub fn read(text: &str) -> Option<Name> {
        let (hex, size) = Size::ALL
            .into_iter()
            .find_map(|size| text.strip_suffix(size.suffix()).map(|hex| (hex, side(size))))
            .unwrap_or((text, 0));
        let small = hex.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
        hex.parse::<EntryId>().ok().filter(|_| small).map(|hash| Name { sha256: hash.0, size })
    }

    /// From what an upload says of itself.
    pub fn of(sha256: &str, size: Size) -> Option<Name> {
        Name::read(sha256).filter(|n| n.size == 0).map(|n| Name { size: side(size), ..n })
    }

    /// Bytes that it may have at most.
    pub fn most(&self) -> i64 {
        if self.size == 0 { MAX_ORIGINAL } else { COPY_BYTES }
    }
}

impl fmt::Display for Name {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&crate::hex(&self.sha256))?;
        if self.size == 0 { Ok(()) } else { write!(f, ".{}.jpg", self.size) }
    }
}

/// How long a kept photo is, if it is kept.
pub fn length(tx: &mut dyn Tx, name: Name) -> Result<Option<i64>, OfficeError> {
    let rows = tx.rows("SELECT length FROM photo WHERE sha256 = $1 AND size = $2", params![name.sha256, name.size])?;
    rows.first().map(|row| row.int(0)).transpose()
}

/// Whether an entry names the photo: one that `device` wrote, or one of a site of it. `aside` counts what is aside as well.
pub fn named(tx: &mut dyn Tx, device: DeviceId, sha256: [u8; 32], aside: bool) -> Result<bool, OfficeError> {
    let rows = tx.rows("SELECT site, device FROM photo_named WHERE sha256 = $1", params![sha256])?;
    let sites = sites_of(tx, device)?;
    for row in rows {
        let site = row.id(0)?;
        if sites.contains(&site) || (aside && row.device(1)? == device) {
            return Ok(true);
        }
    }
    Ok(false)
}

/// What entries of `device` name and the office lacks.
pub fn wanted(tx: &mut dyn Tx, device: DeviceId) -> Result<Vec<Wanted>, OfficeError> {
    let sql = "SELECT named.sha256, \
               (SELECT count(*) FROM photo WHERE photo.sha256 = named.sha256 AND size = 320), \
               (SELECT count(*) FROM photo WHERE photo.sha256 = named.sha256 AND size = 960), \
               (SELECT count(*) FROM photo WHERE photo.sha256 = named.sha256 AND size = 0) \
               FROM (SELECT DISTINCT sha256 FROM photo_named WHERE device = $1) AS named \
               WHERE (SELECT count(*) FROM photo WHERE photo.sha256 = named.sha256 AND size IN (0, 320, 960)) < 3 ORDER BY named.sha256 LIMIT $2";
    let mut wanted = Vec::new();
    for row in tx.rows(sql, params![device, WANTED])? {
        let mut sizes = Vec::new();
        for (at, size) in Size::ALL.into_iter().enumerate() {
            if !row.yes(at + 1)? {
                sizes.push(size);
            }
        }
        wanted.push(Wanted { sha256: crate::hex(&row.hash(0)?), sizes });
    }
    Ok(wanted)
}
