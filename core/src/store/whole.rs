//! Files that are there whole or not at all.

use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;

/// Writes `bytes` to `path`, in place of what is there: under another name first, which a failure takes away again.
pub fn write_whole(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut half = OsString::from(path);
    half.push(".part");
    let written = (|| {
        let mut file = File::create(&half)?;
        file.write_all(bytes)?;
        file.sync_all()?;
        fs::rename(&half, path)?;
        // The name is on disk only when the folder is.
        let folder = path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
        if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
    })();
    if written.is_err() {
        let _ = fs::remove_file(&half);
    }
    written
}
