//! Photos on disk: one file each, named by its SHA-256, written whole before the entry that names it.

use std::fs::{self, File};
use std::io::Write;
use std::path::Path;

use sha2::{Digest, Sha256};

/// Most bytes of a photo: a 12 MP camera file has 3 to 6 MB.
pub const MAX_PHOTO_BYTES: usize = 40 << 20;

/// A photo that is now on disk.
pub struct Kept {
    /// SHA-256, hex.
    pub sha256: String,
    /// Bytes.
    pub length: u64,
    /// Media type by the file's own first bytes, whatever it was called.
    pub media: &'static str,
}

/// Keeps `bytes` in `folder`. The error is a sentence for the person.
pub fn keep(folder: &Path, bytes: &[u8]) -> Result<Kept, String> {
    if bytes.is_empty() {
        return Err("The photo is empty. Take it again.".into());
    }
    if bytes.len() > MAX_PHOTO_BYTES {
        return Err("The photo has more than 40 MB. Set the camera to a smaller size and take it again.".into());
    }
    let media = sniff(bytes)?;
    let sha256: String = Sha256::digest(bytes).iter().map(|b| format!("{b:02x}")).collect();
    let path = folder.join(&sha256);
    if !path.exists() {
        write(folder, &path, bytes)
            .map_err(|e| format!("The photo could not be written to disk ({e}). Free some space and take it again."))?;
    }
    Ok(Kept { sha256, length: bytes.len() as u64, media })
}

/// A kept photo's bytes.
pub fn load(folder: &Path, sha256: &str) -> Option<Vec<u8>> {
    let hex = sha256.len() == 64 && sha256.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b));
    if hex { fs::read(folder.join(sha256)).ok() } else { None }
}

fn write(folder: &Path, path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let half = path.with_extension("part");
    let written = (|| {
        let mut file = File::create(&half)?;
        file.write_all(bytes)?;
        file.sync_all()?;
        fs::rename(&half, path)?;
        // The name is on disk only when the folder is.
        if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
    })();
    if written.is_err() {
        let _ = fs::remove_file(&half);
    }
    written
}

fn sniff(bytes: &[u8]) -> Result<&'static str, String> {
    match bytes {
        [0xff, 0xd8, 0xff, ..] => Ok("image/jpeg"),
        [0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a, ..] => Ok("image/png"),
        [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'E', b'B', b'P', ..] => Ok("image/webp"),
        [_, _, _, _, b'f', b't', b'y', b'p', ..] => {
            Err("This photo is in a format (HEIC) that cannot be kept here. Set the camera to JPEG and take it again."
                .into())
        }
        _ => Err("This file is not a JPEG, PNG or WebP picture. Choose a photo.".into()),
    }
}
