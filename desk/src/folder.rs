//! Data folders: made for their owner only, and a demo never mixed with real work.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

pub use stillbar_core::store::plain;
use stillbar_core::store::{private, write_private};

/// In a folder with this file there is nothing but the demo.
const MARK: &str = "demo.txt";
const BEGUN: &str = "The jobs in this folder are invented, and are still being written.\n";
const WHOLE: &str = "The jobs in this folder are invented. `stillbar demo --fresh` empties it and writes them anew.\n";

/// Why a data folder cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum FolderError {
    /// It is a file.
    #[error("{0} is a file. Name a folder with --data.")]
    File(PathBuf),
    /// It could not be made.
    #[error("The folder {folder} could not be made: {}. Name another with --data.", plain(.why))]
    Unmade {
        /// The folder.
        folder: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// None was named, and the system has no place for it.
    #[error("This system names no folder for your data. Name one with --data.")]
    NoHome,
    /// What is in it cannot be seen.
    #[error("{folder} could not be read: {}.", plain(.why))]
    Unreadable {
        /// The folder.
        folder: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// The mark of the demo could not be written.
    #[error("{file} could not be written: {}. Name another folder with --data.", plain(.why))]
    Unmarked {
        /// The mark.
        file: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// Something of the demo stays in it.
    #[error("{folder} could not be emptied: {}.", plain(.why))]
    Unemptied {
        /// The folder.
        folder: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
}

/// What a folder is to the demo.
#[derive(Debug, PartialEq, Eq)]
pub enum Demo {
    /// Nothing is in it, or it is not there.
    Empty,
    /// The demo's jobs were not written to the end: the process was killed meanwhile.
    Begun,
    /// The demo is in it.
    Whole,
    /// Something else is in it.
    Other,
}

/// Makes `folder` if it is not there, readable by its owner only.
pub fn make(folder: &Path) -> Result<(), FolderError> {
    if folder.is_dir() {
        return Ok(());
    }
    if folder.exists() {
        return Err(FolderError::File(folder.to_owned()));
    }
    private::make_folder(folder).map_err(|why| FolderError::Unmade { folder: folder.to_owned(), why })
}

/// Where the demo's jobs are kept if no folder is named.
pub fn demo_home() -> Result<PathBuf, FolderError> {
    dirs::data_local_dir().map(|d| d.join("stillbar").join("demo")).ok_or(FolderError::NoHome)
}

/// What is in `folder`.
pub fn demo(folder: &Path) -> Result<Demo, FolderError> {
    let unreadable = |why| FolderError::Unreadable { folder: folder.to_owned(), why };
    match fs::read_to_string(folder.join(MARK)) {
        Ok(text) if text == WHOLE => return Ok(Demo::Whole),
        Ok(_) => return Ok(Demo::Begun),
        Err(e) if e.kind() == io::ErrorKind::NotFound => {}
        Err(e) => return Err(unreadable(e)),
    }
    match fs::read_dir(folder) {
        Ok(mut inside) => Ok(if inside.next().is_none() { Demo::Empty } else { Demo::Other }),
        Err(e) if e.kind() == io::ErrorKind::NotFound => Ok(Demo::Empty),
        Err(e) => Err(unreadable(e)),
    }
}

/// Says in the folder that the demo is being written, or that it is whole.
pub fn mark(folder: &Path, whole: bool) -> Result<(), FolderError> {
    let file = folder.join(MARK);
    let written = write_private(&file, if whole { WHOLE } else { BEGUN }.as_bytes());
    written.map_err(|why| FolderError::Unmarked { file, why })
}

/// Empties a folder of the demo; the mark goes last, so that a half-emptied one is still known as the demo's.
pub fn empty(folder: &Path) -> Result<(), FolderError> {
    let failed = |why| FolderError::Unemptied { folder: folder.to_owned(), why };
    mark(folder, false)?;
    for inside in fs::read_dir(folder).map_err(failed)? {
        let inside = inside.map_err(failed)?;
        if inside.file_name() == MARK {
            continue;
        }
        // A link is removed, never followed.
        let folder_itself = inside.file_type().map_err(failed)?.is_dir();
        let gone = if folder_itself { fs::remove_dir_all(inside.path()) } else { fs::remove_file(inside.path()) };
        gone.map_err(failed)?;
    }
    Ok(())
}
