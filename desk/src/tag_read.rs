//! `stillbar tag read`: which tags are in photos.

use std::fmt::Write;
use std::path::{Path, PathBuf};

use serde::Serialize;
use stillbar_core::evidence::{self, MAX_PHOTO_BYTES, PhotoError};
use stillbar_core::tag::read::FoundTag;
use stillbar_core::text::screens::command as said;

use crate::file::{self, FileError};

/// Why a photo could not be looked at.
#[derive(Debug, thiserror::Error)]
pub enum ReadError {
    /// The file cannot be read.
    #[error(transparent)]
    File(#[from] FileError),
    /// It is none.
    #[error(transparent)]
    Photo(#[from] PhotoError),
}

/// A photo that could not be looked at.
#[derive(Debug, thiserror::Error)]
#[error("{path}: {why}")]
pub struct UnreadPhoto {
    path: PathBuf,
    #[source]
    why: ReadError,
}

/// What is in one photo, as `--json` prints it.
#[derive(Serialize)]
struct InPhoto {
    file: String,
    tags: Vec<String>,
    other: Vec<String>,
}

/// Reads each photo. Returns what is to be printed, and the files that could not be read.
pub fn read(photos: &[PathBuf], json: bool) -> (String, Vec<UnreadPhoto>) {
    let (mut read, mut bad) = (Vec::new(), Vec::new());
    for path in photos {
        match one(path) {
            Ok(found) => read.push(InPhoto {
                file: path.display().to_string(),
                tags: found.tags.iter().map(ToString::to_string).collect(),
                other: found.other,
            }),
            Err(why) => bad.push(UnreadPhoto { path: path.clone(), why }),
        }
    }
    let text = if json { serde_json::to_string(&read).unwrap_or_default() } else { told(&read) };
    (text, bad)
}

fn one(path: &Path) -> Result<FoundTag, ReadError> {
    let bytes = file::read(path, MAX_PHOTO_BYTES, "it", "a photo")?;
    Ok(evidence::check(&bytes)?.codes())
}

fn told(read: &[InPhoto]) -> String {
    let mut out = String::new();
    for InPhoto { file, tags, other } in read {
        for tag in tags {
            let _ = writeln!(out, "{}", said::tag(file, tag.to_string()));
        }
        for text in other {
            // Escaped, so that a stranger's code cannot steer the terminal.
            let _ = writeln!(out, "{}", said::tag_foreign(file, text.escape_debug().to_string()));
        }
        if tags.is_empty() && other.is_empty() {
            let _ = writeln!(out, "{}", said::tag_none(file));
        }
    }
    out
}
