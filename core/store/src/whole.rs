//! Files that are there whole or not at all, and stay there when the power goes.

use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;

use super::private;

/// Writes `bytes` to `path`, in place of what is there: under another name first, which a failure takes away again.
pub fn write_whole(path: &Path, bytes: &[u8]) -> io::Result<()> {
    write(path, bytes, |half| File::create(half))
}

/// The same for a file of the data folder, which is for its owner only.
pub fn write_private(path: &Path, bytes: &[u8]) -> io::Result<()> {
    write(path, bytes, |half| {
        let file = private::open(half)?;
        file.set_len(0)?;
        Ok(file)
    })
}

fn write(path: &Path, bytes: &[u8], create: impl FnOnce(&Path) -> io::Result<File>) -> io::Result<()> {
    let mut half = OsString::from(path);
    half.push(".part");
    let written = (|| {
        let mut file = create(Path::new(&half))?;
        file.write_all(bytes)?;
        file.sync_all()?;
        fs::rename(&half, path)?;
        // The name is on disk only when the folder is.
        sync_folder(path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new(".")))
    })();
    if written.is_err() {
        let _ = fs::remove_file(&half);
    }
    written
}

/// Has the names in `folder` on disk: a file's own `fsync` promises its content only (POSIX.1-2024, fsync).
pub(super) fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
}

/// The same for a folder that was just made, and whatever was made to hold it. What may not be looked into was not made here.
pub(super) fn sync_new_folder(folder: &Path) {
    for holder in folder.ancestors().filter(|p| !p.as_os_str().is_empty()) {
        let _ = sync_folder(holder);
    }
}

/// An error of the file system in words that a person can use, without the system's own numbers.
pub fn plain(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::PermissionDenied => "you have no permission for it".into(),
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => "the disk is full".into(),
        io::ErrorKind::ReadOnlyFilesystem => "the disk cannot be written".into(),
        io::ErrorKind::NotFound => "it is not there".into(),
        // What the library has no name for; EIO is one of these.
        kind if kind == io::Error::from_raw_os_error(i32::MAX).kind() => {
            "the disk did not take it, or did not give it".into()
        }
        kind => kind.to_string(),
    }
}
