//! Saving what can be saved from a damaged database: nothing is deleted, and nothing is believed without its signature.
//!
//! Two ways, joined: asking SQLite for each row by its number, and reading the file's bytes for bodies followed by their
//! signatures, which finds entries even when the database's own structure is gone.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags};

use super::open::{io_error, take_lock};
use super::{DATABASE, Store};
use crate::app::OpenError;
use crate::job::Job;
use crate::journal::{Entry, EntryId, MAX_ENTRY_BYTES};

/// What a rescue found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rescued {
    /// Entries whose signature holds, now in a new database.
    pub entries: usize,
    /// Numbers missing from a device's chain, as "device 1f2e…: 12 to 14".
    pub missing: Vec<String>,
    /// Where the damaged files are kept.
    pub kept: PathBuf,
}

/// The note that makes the app begin a new key when it opens the folder next.
pub(crate) const NEW_KEY: &str = "new-key";

/// Every body begins so: a map of ten pairs, and the key `by`, which sorts first.
const BODY_BEGINS: [u8; 4] = [0xaa, 0x62, b'b', b'y'];

/// Moves the database in `folder` aside and makes a new one from every entry that still proves itself.
pub fn rescue(folder: &Path) -> Result<Rescued, OpenError> {
    let failed = |e: &std::io::Error| io_error(folder, e);
    let damaged = folder.join(DATABASE);
    if !damaged.exists() {
        return Err(OpenError::Other {
            what: format!("There is no journal in {}. Nothing was changed.", folder.display()),
        });
    }
    let lock = take_lock(folder)?;
    let kept = (1..1000).map(|n| folder.join(format!("damaged-{n}"))).find(|path| !path.exists()).ok_or_else(|| {
        OpenError::Other { what: "There are a thousand rescued journals here; move some away.".into() }
    })?;
    fs::create_dir(&kept).map_err(|e| failed(&e))?;
    // Copies first: the original is moved only when all that could be read is safely on disk beside it.
    let files: Vec<String> = ["", "-wal", "-shm"]
        .iter()
        .map(|end| format!("{DATABASE}{end}"))
        .filter(|name| folder.join(name).exists())
        .collect();
    for name in &files {
        fs::copy(folder.join(name), kept.join(name)).map_err(|e| failed(&e))?;
    }
    let mut found: BTreeMap<EntryId, Entry> = BTreeMap::new();
    for name in files.iter().filter(|name| !name.ends_with("-shm")) {
        let bytes = fs::read(kept.join(name)).map_err(|e| failed(&e))?;
        carve(&bytes, &mut found);
    }
    ask(&kept.join(DATABASE), &mut found);
    for name in &files {
        // The copy that SQLite may have touched is replaced by the untouched original.
        fs::rename(folder.join(name), kept.join(name)).map_err(|e| failed(&e))?;
    }

    drop(lock);
    let mut store = Store::open(folder)?;
    let mut entries: Vec<Entry> = found.into_values().collect();
    entries.sort_by_key(Entry::order);
    let mut by_job: BTreeMap<EntryId, Vec<Entry>> = BTreeMap::new();
    for entry in &entries {
        if let Some(job) = entry.job() {
            by_job.entry(job).or_default().push(entry.clone());
        }
    }
    let jobs: Vec<Job> = by_job.values().filter_map(|entries| Job::fold(entries)).collect();
    let refs: Vec<&Job> = jobs.iter().collect();
    store.append(&entries, &refs).map_err(|e| OpenError::Other { what: e.to_string() })?;
    // The end of this device's chain may be among what is lost. Going on under the old key could give one number to two entries, so
    // the device begins a chain of its own.
    store.keep_local(NEW_KEY, "1").map_err(|e| OpenError::Other { what: e.to_string() })?;
    Ok(Rescued { entries: entries.len(), missing: gaps(&entries), kept })
}

/// Reads entries out of raw bytes: a body, and right behind it the 64 bytes of its signature.
fn carve(bytes: &[u8], found: &mut BTreeMap<EntryId, Entry>) {
    let starts = bytes.windows(BODY_BEGINS.len()).enumerate().filter(|(_, w)| *w == BODY_BEGINS).map(|(at, _)| at);
    for at in starts {
        let window = &bytes[at..bytes.len().min(at + MAX_ENTRY_BYTES)];
        let mut rest = window;
        if ciborium::de::from_reader_with_recursion_limit::<ciborium::Value, _>(&mut rest, 24).is_err() {
            continue;
        }
        let length = window.len() - rest.len();
        let Some(signature) = bytes.get(at + length..at + length + 64).and_then(|s| s.try_into().ok()) else {
            continue;
        };
        if let Ok(entry) = Entry::open(window[..length].to_vec(), signature) {
            found.insert(entry.id, entry);
        }
    }
}

/// Asks SQLite for every row by its number; a row on a damaged page answers with an error and is passed by.
fn ask(path: &Path, found: &mut BTreeMap<EntryId, Entry>) {
    let Ok(db) = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_WRITE) else { return };
    // No entry is shorter than 200 bytes, so the file cannot hold more rows than this.
    let most = fs::metadata(path).map_or(0, |m| m.len() / 200 + 1);
    let Ok(mut query) = db.prepare("SELECT body, sig FROM entry WHERE number = ?1") else { return };
    for number in 1..=most {
        let Ok((body, sig)) = query.query_row([number], |r| Ok((r.get::<_, Vec<u8>>(0)?, r.get::<_, [u8; 64]>(1)?)))
        else {
            continue;
        };
        if let Ok(entry) = Entry::open(body, sig) {
            found.insert(entry.id, entry);
        }
    }
}

fn gaps(entries: &[Entry]) -> Vec<String> {
    let mut by_device: BTreeMap<_, Vec<u64>> = BTreeMap::new();
    for entry in entries {
        by_device.entry(entry.body.device).or_default().push(entry.body.seq);
    }
    let mut out = Vec::new();
    for (device, mut numbers) in by_device {
        numbers.sort_unstable();
        let mut expected = 1;
        for number in numbers {
            if number > expected {
                out.push(format!("device {:.8}: {expected} to {}", device.to_string(), number - 1));
            }
            expected = number + 1;
        }
    }
    out
}
