//! Files that a person names on the command line.

use std::fs::File;
use std::io::{self, ErrorKind, Read};
use std::path::Path;

/// What a file is called in messages.
pub fn name(path: &Path) -> String {
    if piped(path) { "what was piped in".to_owned() } else { path.display().to_string() }
}

/// The bytes of a file, or of what is piped in where `path` is `-`: one more than `most`, so that the core sees that it is too large;
/// never all of an endless file. An error is one sentence about `name` that tells `what` to give, such as "a photo".
pub fn read(path: &Path, most: usize, name: &str, what: &str) -> Result<Vec<u8>, String> {
    let read = if piped(path) {
        bounded(io::stdin().lock(), most)
    } else {
        File::open(path).and_then(|file| bounded(file, most))
    };
    read.map_err(|e| match e.kind() {
        ErrorKind::NotFound => format!("{name} is not there. Give the path of {what}, or - to pipe it in."),
        ErrorKind::PermissionDenied => format!("{name} may not be read by you. Change its permissions, or pipe it in."),
        ErrorKind::IsADirectory => format!("{name} is a folder. Give the path of {what} in it."),
        _ => format!("{name} cannot be read. Give the path of {what}, or - to pipe it in."),
    })
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
