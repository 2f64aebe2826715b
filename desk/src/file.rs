//! Files that a person names on the command line.

use std::fs::File;
use std::io::{self, ErrorKind, Read};
use std::path::{Path, PathBuf};
use std::str::Utf8Error;

/// Why a file that was named cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum FileError {
    /// It is not there.
    #[error("{name} is not there. Give the path of {what}, or - to pipe it in.")]
    NotThere {
        /// What it is called.
        name: String,
        /// What to give.
        what: &'static str,
    },
    /// It is somebody else's.
    #[error("{0} may not be read by you. Change its permissions, or pipe it in.")]
    Forbidden(String),
    /// It is a folder.
    #[error("{name} is a folder. Give the path of {what} in it.")]
    Folder {
        /// What it is called.
        name: String,
        /// What to give.
        what: &'static str,
    },
    /// It cannot be read for another reason.
    #[error("{name} cannot be read. Give the path of {what}, or - to pipe it in.")]
    Unreadable {
        /// What it is called.
        name: String,
        /// What to give.
        what: &'static str,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// It is no text in UTF-8.
    #[error("{name}: byte {} is not UTF-8; save the file as UTF-8.", .why.valid_up_to() + 1)]
    NotUtf8 {
        /// What it is called.
        name: String,
        /// Where.
        #[source]
        why: Utf8Error,
    },
    /// One is there already, and nobody said that it may be replaced.
    #[error("{0} is there already. Give another name, or --force to replace it.")]
    There(PathBuf),
    /// It could not be written.
    #[error("{path} could not be written ({}). Give a folder that is there, with space.", .why.kind())]
    Unwritten {
        /// Where.
        path: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
}

/// What a file is called in messages.
pub fn name(path: &Path) -> String {
    if piped(path) { "what was piped in".to_owned() } else { path.display().to_string() }
}

/// The bytes of a file, or of what is piped in where `path` is `-`: one more than `most`, so that the core sees that it is too large;
/// never all of an endless file. An error is about `name` and tells `what` to give, such as "a photo".
pub fn read(path: &Path, most: usize, name: &str, what: &'static str) -> Result<Vec<u8>, FileError> {
    let read = if piped(path) {
        bounded(io::stdin().lock(), most)
    } else {
        File::open(path).and_then(|file| bounded(file, most))
    };
    let name = || name.to_owned();
    read.map_err(|why| match why.kind() {
        ErrorKind::NotFound => FileError::NotThere { name: name(), what },
        ErrorKind::PermissionDenied => FileError::Forbidden(name()),
        ErrorKind::IsADirectory => FileError::Folder { name: name(), what },
        _ => FileError::Unreadable { name: name(), what, why },
    })
}

/// The same as text in UTF-8.
pub fn read_text(path: &Path, most: usize, name: &str, what: &'static str) -> Result<String, FileError> {
    String::from_utf8(read(path, most, name, what)?)
        .map_err(|e| FileError::NotUtf8 { name: name.to_owned(), why: e.utf8_error() })
}

/// Writes a file, in place of what is there.
pub fn write(path: &Path, bytes: impl AsRef<[u8]>) -> Result<(), FileError> {
    std::fs::write(path, bytes).map_err(|why| FileError::Unwritten { path: path.to_owned(), why })
}

fn piped(path: &Path) -> bool {
    path == Path::new("-")
}

/// Up to one byte more than `most`.
pub fn bounded(from: impl Read, most: usize) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    from.take(most as u64 + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}
