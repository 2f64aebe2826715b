//! Photos on disk: the original, named by its SHA-256, and two copies to show and share, all written whole before the
//! entry that names it.

use std::fs;
use std::path::Path;

use crate::evidence::{self, Checked, Warning};
use crate::store::write_whole;
use crate::tag::TagId;

/// A copy is named by its original's SHA-256, and this.
const THUMBNAIL: &str = ".320.jpg";
const WORKING: &str = ".1600.jpg";

/// A photo that is now on disk.
pub struct Kept {
    /// SHA-256, hex.
    pub sha256: String,
    /// Bytes.
    pub length: u64,
    /// Media type by the file's own first bytes, whatever it was called.
    pub media: &'static str,
    /// Tags that were read in it.
    pub tags: Vec<TagId>,
    /// What is poor about the picture.
    pub doubts: Vec<Warning>,
}

/// Keeps `bytes` in `folder`, with a thumbnail and a working copy beside them. The error is a sentence for the person.
pub fn keep(folder: &Path, bytes: &[u8]) -> Result<Kept, String> {
    let photo = evidence::check(bytes).map_err(|e| e.to_string())?;
    let tags = photo.codes().tags;
    let Checked { sha256, media, thumbnail, working, warnings, .. } = photo;
    // The original first: should the power go, the copies can be made again from it.
    for (suffix, content) in [("", bytes), (WORKING, &working), (THUMBNAIL, &thumbnail)] {
        let path = folder.join(format!("{sha256}{suffix}"));
        if !path.exists() {
            write_whole(&path, content).map_err(|e| {
                format!("The photo could not be written to disk ({e}). Free some space and take it again.")
            })?;
        }
    }
    Ok(Kept { sha256, length: bytes.len() as u64, media, tags, doubts: warnings })
}

/// A kept photo's bytes: `name` is the SHA-256 for the original, and with `.320.jpg` or `.1600.jpg` behind it for a copy.
/// Photos from before there were copies give the original.
pub fn load(folder: &Path, name: &str) -> Option<Vec<u8>> {
    let sha256 = name.strip_suffix(THUMBNAIL).or_else(|| name.strip_suffix(WORKING)).unwrap_or(name);
    let hex = sha256.len() == 64 && sha256.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b));
    if hex { fs::read(folder.join(name)).or_else(|_| fs::read(folder.join(sha256))).ok() } else { None }
}
