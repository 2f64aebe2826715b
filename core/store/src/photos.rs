//! Photos on disk: the original, named by its SHA-256, and copies to show, share and print, all written whole before the
//! entry that names it.
//!
//! The original is sealed: its name is what a signed entry says of it, nobody may write to it, and it is only given out while
//! its bytes still fit its name.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use crate::write_private;
use stillbar_journal::fact::PhotoDoubt;
use stillbar_media::evidence::{self, Checked, PhotoError};
use stillbar_values::TagId;

/// A copy is named by its original's SHA-256, and this.
const THUMBNAIL: &str = ".320.jpg";
const WORKING: &str = ".1600.jpg";
const PRINT: &str = ".960.jpg";

const COPIES: [&str; 3] = [THUMBNAIL, PRINT, WORKING];

/// Where they lie in a data folder.
pub fn folder(data: &Path) -> PathBuf {
    data.join("photos")
}

/// A photo that is now on disk.
pub struct KeptPhoto {
    /// SHA-256, hex.
    pub sha256: String,
    /// Bytes.
    pub length: u64,
    /// Media type by the file's own first bytes, whatever it was called.
    pub media: &'static str,
    /// Tags that were read in it.
    pub tags: Vec<TagId>,
    /// What is poor about the picture.
    pub doubts: Vec<PhotoDoubt>,
    /// SHA-256 of the copies for records and for lists, hex.
    pub copies: Vec<String>,
}

/// Why a photo is not kept.
#[derive(Debug, thiserror::Error)]
pub enum KeepPhotoError {
    /// It is none that can be kept.
    #[error(transparent)]
    Photo(#[from] PhotoError),
    /// The disk did not take it.
    #[error(transparent)]
    Unwritten(#[from] io::Error),
}

/// Keeps `bytes` in `folder`, with a thumbnail and a working copy beside them.
pub fn keep(folder: &Path, bytes: &[u8]) -> Result<KeptPhoto, KeepPhotoError> {
    let photo = evidence::check(bytes)?;
    let tags = photo.codes().tags;
    let Checked { sha256, media, thumbnail, working, print, warnings, .. } = photo;
    let copies = [&print, &thumbnail].map(|copy| evidence::sha256(copy)).to_vec();
    // The original first: should the power go, the copies can be made again from it.
    for (suffix, content) in [("", bytes), (WORKING, &working), (PRINT, &print), (THUMBNAIL, &thumbnail)] {
        let path = folder.join(format!("{sha256}{suffix}"));
        let there = if suffix.is_empty() { original(folder, &sha256).is_some() } else { path.exists() };
        if !there {
            write_private(&path, content).map_err(KeepPhotoError::Unwritten)?;
        }
        if suffix.is_empty() {
            seal(&path);
        }
    }
    Ok(KeptPhoto { sha256, length: bytes.len() as u64, media, tags, doubts: warnings, copies })
}

/// A kept photo's bytes: `name` is the SHA-256 for the original, and with `.320.jpg`, `.960.jpg` or `.1600.jpg` behind it for a
/// copy. Photos from before there were copies give the original. None if it is not there, or is not what was kept.
pub fn load(folder: &Path, name: &str) -> Option<Vec<u8>> {
    let sha256 = COPIES.iter().find_map(|suffix| name.strip_suffix(suffix)).unwrap_or(name);
    let hex = sha256.len() == 64 && sha256.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b));
    if !hex {
        return None;
    }
    let copy = if name == sha256 { None } else { fs::read(folder.join(name)).ok() };
    copy.or_else(|| original(folder, sha256))
}

/// Whether there is a small copy of a photo to show.
pub fn is_here(folder: &Path, sha256: &str) -> bool {
    folder.join(format!("{sha256}{THUMBNAIL}")).exists()
}

/// The copies of a photo that a record may show, as far as they are here, the largest first.
pub fn copies(folder: &Path, sha256: &str) -> Vec<Vec<u8>> {
    [PRINT, THUMBNAIL].iter().filter_map(|suffix| fs::read(folder.join(format!("{sha256}{suffix}"))).ok()).collect()
}

/// What is sent under this name: as [`load`], but never the original in place of a copy, for it says where it was taken. A copy that was lost is
/// made again.
pub fn to_send(folder: &Path, name: &str) -> Option<Vec<u8>> {
    let Some(sha256) = COPIES.iter().find_map(|suffix| name.strip_suffix(suffix)) else { return load(folder, name) };
    let copy = || fs::read(folder.join(name)).ok();
    copy().or_else(|| {
        keep(folder, &original(folder, sha256)?).ok()?;
        copy()
    })
}

/// Keeps the small copy of a photo that somebody else took; there is no original of it here. What is no small picture is not kept.
pub fn keep_copy(folder: &Path, sha256: &str, bytes: &[u8]) -> io::Result<()> {
    if evidence::check(bytes).is_ok() {
        write_private(&folder.join(format!("{sha256}{THUMBNAIL}")), bytes)?;
    }
    Ok(())
}

/// Makes the copies of up to `most` originals again that lack one, as after a disk that was full, and takes away what a write that broke
/// off has left. True if more are left.
pub fn mend(folder: &Path, most: usize) -> bool {
    let Ok(files) = fs::read_dir(folder) else { return false };
    let names: Vec<String> = files.filter_map(|f| f.ok()?.file_name().into_string().ok()).collect();
    // Nothing is being written while this runs: the journal is held.
    for half in names.iter().filter(|name| name.ends_with(".part")) {
        let _ = fs::remove_file(folder.join(half));
    }
    let lacks = |name: &String| {
        name.len() == 64 && COPIES.iter().any(|suffix| !folder.join(format!("{name}{suffix}")).exists())
    };
    let mut made = 0;
    for name in names.into_iter().filter(lacks) {
        if made == most {
            return true;
        }
        // One that is damaged, or of a kind that an older version took, stays as it is.
        let kept = original(folder, &name).is_some_and(|bytes| keep(folder, &bytes).is_ok());
        made += usize::from(kept);
    }
    false
}

/// The original, if its bytes fit its name.
fn original(folder: &Path, sha256: &str) -> Option<Vec<u8>> {
    let bytes = fs::read(folder.join(sha256)).ok()?;
    (evidence::sha256(&bytes) == sha256).then_some(bytes)
}

/// Against a slip of the hand. Where the file system has no such mark, the name still tells what was changed.
fn seal(path: &Path) {
    if let Ok(mut allowed) = fs::metadata(path).map(|m| m.permissions()) {
        allowed.set_readonly(true);
        let _ = fs::set_permissions(path, allowed);
    }
}
