//! Nobody else on this machine reads along: files are for their owner only (0600) and folders too (0700), whatever the umask says; what an
//! earlier version left open to others is closed when the folder is opened. Start at [`close`].
//!
//! Where a file system has no such marks, the folder of the person's own data has to keep others out.

use std::ffi::OsStr;
use std::fs::{self, DirEntry, File, OpenOptions};
use std::io;
use std::path::Path;

/// What Stillbar keeps in a data folder, the shells' own files among it; in the first list by whole name, in the second by how it begins.
const NAMES: [&str; 7] = ["in-use", "photos", "shared", "office", "demo.txt", "room", "room.part"];
const BEGINNINGS: [&str; 3] = ["journal.db", "device.key", "damaged-"];

/// Makes `folder`, and whatever has to hold it, for its owner only. One that is there stays as it is.
pub fn make_folder(folder: &Path) -> io::Result<()> {
    let mut builder = fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder)
}

/// Opens `path` to write, for its owner only, and makes it if it is not there. What is in it stays.
pub fn open(path: &Path) -> io::Result<File> {
    let mut options = OpenOptions::new();
    options.read(true).write(true).create(true).truncate(false);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let file = options.open(path)?;
    // One that a write which broke off has left may be open to others.
    tighten(path);
    Ok(file)
}

/// Closes to others what is ours in `folder`, and the folder itself if it holds nothing else: a person's own folder may serve others too.
/// What may not be changed stays as it is, for refusing to work would help nobody.
pub fn close(folder: &Path) {
    let Ok(inside) = fs::read_dir(folder) else { return };
    let mut only_ours = true;
    for entry in inside.filter_map(Result::ok) {
        if ours(&entry.file_name()) {
            close_all(&entry);
        } else {
            only_ours = false;
        }
    }
    if only_ours {
        tighten(folder);
    }
}

fn ours(name: &OsStr) -> bool {
    name.to_str().is_some_and(|n| NAMES.contains(&n) || BEGINNINGS.iter().any(|b| n.starts_with(b)))
}

/// A folder is closed after all that is in it: one that is closed already needs no look, and there may be many photos in it.
fn close_all(entry: &DirEntry) {
    // Of the entry itself: a link is not followed.
    let Ok(found) = entry.metadata() else { return };
    if found.is_dir() && is_open(&found) {
        for inside in fs::read_dir(entry.path()).into_iter().flatten().filter_map(Result::ok) {
            close_all(&inside);
        }
    }
    if !found.is_symlink() {
        tighten(&entry.path());
    }
}

#[cfg(unix)]
fn is_open(found: &fs::Metadata) -> bool {
    std::os::unix::fs::PermissionsExt::mode(&found.permissions()) & 0o077 != 0
}

#[cfg(unix)]
fn tighten(path: &Path) {
    use std::os::unix::fs::PermissionsExt;
    if let Ok(found) = fs::metadata(path)
        && is_open(&found)
    {
        // What the owner may not write stays so: originals of photos are sealed.
        let most = if found.is_dir() { 0o700 } else { 0o600 };
        let _ = fs::set_permissions(path, fs::Permissions::from_mode(found.permissions().mode() & most));
    }
}

#[cfg(not(unix))]
fn is_open(_: &fs::Metadata) -> bool {
    false
}

#[cfg(not(unix))]
fn tighten(_: &Path) {}
