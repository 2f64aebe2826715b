//! `stillbar tag read`: which tags are in photos.

use std::fmt::Write;
use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::{Path, PathBuf};

use serde::Serialize;
use stillbar_core::evidence::{self, MAX_PHOTO_BYTES};
use stillbar_core::tag::read::{Found, Luma, still};

/// What is in one photo, as `--json` prints it.
#[derive(Serialize)]
struct InPhoto {
    file: String,
    tags: Vec<String>,
    other: Vec<String>,
}

/// Reads each photo. Returns what is to be printed, and one sentence for each file that could not be read.
pub fn read(photos: &[PathBuf], json: bool) -> (String, Vec<String>) {
    let (mut read, mut bad) = (Vec::new(), Vec::new());
    for path in photos {
        match one(path) {
            Ok(found) => read.push(InPhoto {
                file: path.display().to_string(),
                tags: found.tags.iter().map(ToString::to_string).collect(),
                other: found.other,
            }),
            Err(why) => bad.push(format!("{}: {why}", path.display())),
        }
    }
    let text = if json { serde_json::to_string(&read).unwrap_or_default() } else { told(&read) };
    (text, bad)
}

fn one(path: &Path) -> Result<Found, String> {
    let mut bytes = Vec::new();
    // One byte more than a photo may have, so that the check sees that it is too large; never all of an endless file.
    File::open(path).and_then(|f| f.take(MAX_PHOTO_BYTES as u64 + 1).read_to_end(&mut bytes)).map_err(|e| {
        match e.kind() {
            ErrorKind::NotFound => "it is not there. Give the path of a photo.",
            ErrorKind::PermissionDenied => "it may not be read by you. Change its permissions.",
            ErrorKind::IsADirectory => "it is a folder. Give the paths of the photos in it.",
            _ => "it cannot be read. Give the path of a photo.",
        }
    })?;
    let photo = evidence::check(&bytes).map_err(|e| e.to_string())?;
    let luma = Luma::new(photo.luma_width, photo.luma_height, &photo.luma).map_err(|e| format!("{e}."))?;
    Ok(still(&luma))
}

fn told(read: &[InPhoto]) -> String {
    let mut out = String::new();
    for InPhoto { file, tags, other } in read {
        for tag in tags {
            let _ = writeln!(out, "{file}: tag {tag}");
        }
        for text in other {
            // Escaped, so that a stranger's code cannot steer the terminal.
            let _ = writeln!(out, "{file}: no tag of ours, its text is \"{}\"", text.escape_debug());
        }
        if tags.is_empty() && other.is_empty() {
            let _ = writeln!(out, "{file}: no code was read. Take the photo closer, straight on, without glare.");
        }
    }
    out
}
