//! Records on their way to others: written into the data folder, for the shell to hand on.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use super::NotDone;
use super::of_folder::of_store;
use super::session::Session;
use crate::journal::EntryId;
use crate::screens::parts::Errand;
use crate::store::{private, write_private};

/// Where they lie in the data folder.
const FOLDER: &str = "shared";
/// How many stay: whoever they were handed to may still be reading.
const KEPT: usize = 4;

impl Session {
    /// Makes the record of a job as PDF, and has the shell hand it on.
    pub(crate) fn share_record(&self, job: EntryId, withhold: bool) -> Result<Errand, NotDone> {
        self.remembers()?;
        let made = of_store(&self.store, job, &self.key, self.now(), withhold)?;
        let pdf = made.pdf()?;
        let folder = self.store.folder.join(FOLDER);
        let name =
            format!("record-{}-{:.8}{}.pdf", job.short(), made.report().head, if withhold { "-no-names" } else { "" });
        private::make_folder(&folder).map_err(NotDone::RecordUnwritten)?;
        write_private(&folder.join(&name), &pdf).map_err(NotDone::RecordUnwritten)?;
        clear(&folder, &name);
        let path = folder.join(&name).to_string_lossy().into_owned();
        Ok(Errand::ShareFile { title: made.report().title.clone(), name, media_type: "application/pdf".into(), path })
    }
}

/// A file that was made to be shared, by its name alone.
pub(crate) fn shared(folder: &Path, name: &str) -> Option<Vec<u8>> {
    let plain = name.bytes().all(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'.')) && !name.starts_with('.');
    if plain { fs::read(folder.join(FOLDER).join(name)).ok() } else { None }
}

/// Takes the oldest away. What cannot be taken away stays, and is tried again the next time.
fn clear(folder: &Path, newest: &str) {
    let Ok(files) = fs::read_dir(folder) else { return };
    let mut all: Vec<(SystemTime, PathBuf)> = files
        .filter_map(|f| f.ok().filter(|f| f.file_name() != newest))
        .filter_map(|f| Some((f.metadata().and_then(|m| m.modified()).ok()?, f.path())))
        .collect();
    all.sort();
    for (_, path) in all.iter().rev().skip(KEPT - 1) {
        let _ = fs::remove_file(path);
    }
}
