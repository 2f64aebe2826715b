//! Saving what can be saved from a damaged database: nothing is deleted, and nothing is believed without its signature.
//!
//! Two ways, joined: asking SQLite for each row by its number, and reading the file's bytes for bodies followed by their
//! signatures, which finds entries even when the database's own structure is gone.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags};

use super::open::{StoreError, io_error, settle, take_lock};
use super::whole::{sync_folder, write_private};
use super::{DATABASE, OpenError, Store, private};
use stillbar_journal::{Entry, EntryId, MAX_ENTRY_BYTES};
use stillbar_rules::job::Job;

/// What a rescue found.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Rescued {
    /// Entries whose signature holds, now in a new database.
    pub entries: usize,
    /// Numbers missing from a device's chain, as "device 1f2e…: 12 to 14".
    pub missing: Vec<String>,
    /// Where the damaged files are kept.
    pub kept: PathBuf,
}

/// The note that makes the app begin a new key when it opens the folder next.
pub const NEW_KEY: &str = "new-key";

/// Where the new database is made, inside the folder that keeps the damaged one.
const FRESH: &str = "new";
/// Its presence says that the new database is finished.
const READY: &str = "ready";

/// Every body begins so, of whatever version: a map, of up to 23 pairs or of up to 255, and the key `v`, which sorts first.
fn begins(w: &[u8]) -> bool {
    matches!(w, [0xa8..=0xb7, 0x61, b'v', ..] | [0xb8, _, 0x61, b'v'])
}

/// Moves the database in `folder` aside and makes a new one from every entry that still proves itself.
///
/// The new database is finished beside the old one before anything moves, so a rescue that is broken off at any moment leaves either
/// the damaged database where it was, or a state that [`Store::open`] refuses and a second rescue finishes.
pub fn rescue(folder: &Path) -> Result<Rescued, OpenError> {
    let failed = |e: &std::io::Error| io_error(folder, e);
    let lock = take_lock(folder)?;
    private::close(folder);
    let begun = unfinished(folder);
    if begun.is_none() && !folder.join(DATABASE).exists() {
        return Err(OpenError::Other {
            what: format!("There is no journal in {}. Nothing was changed.", folder.display()),
        });
    }
    let kept = match begun {
        Some(kept) => kept,
        None => begin(folder)?,
    };
    // The log first: SQLite would throw it away if it met it beside an empty database.
    for end in ["-wal", "-shm", ""] {
        let name = format!("{DATABASE}{end}");
        if folder.join(&name).exists() {
            fs::rename(folder.join(&name), kept.join(&name)).map_err(|e| failed(&e))?;
        }
    }
    // What is damaged has its new name on disk before anything takes its old one.
    sync_folder(&kept).map_err(|e| failed(&e))?;
    fs::rename(kept.join(FRESH).join(DATABASE), folder.join(DATABASE)).map_err(|e| failed(&e))?;
    // Only an empty folder is left of the place where the new database was made; if it stays, it does no harm.
    let _ = fs::remove_dir_all(kept.join(FRESH));
    sync_folder(folder).map_err(|e| failed(&e))?;
    drop(lock);
    let entries = Store::open(folder)?.all_entries().map_err(|e| OpenError::Other { what: e.to_string() })?;
    Ok(Rescued { entries: entries.len(), missing: gaps(&entries), kept })
}

/// A rescue that was broken off after its new database was finished: the folder that holds it.
pub(super) fn unfinished(folder: &Path) -> Option<PathBuf> {
    let kept = fs::read_dir(folder).ok()?.filter_map(|entry| Some(entry.ok()?.path()));
    let mut kept: Vec<PathBuf> = kept.filter(|path| path.join(FRESH).join(READY).exists()).collect();
    kept.sort();
    kept.pop().filter(|path| path.join(FRESH).join(DATABASE).exists())
}

/// Copies the damaged files, reads what can be read, and makes the new database in a folder of its own.
fn begin(folder: &Path) -> Result<PathBuf, OpenError> {
    let failed = |e: &std::io::Error| io_error(folder, e);
    let other = |what: String| OpenError::Other { what };
    let kept = (1..1000)
        .map(|n| folder.join(format!("damaged-{n}")))
        .find(|path| !path.exists())
        .ok_or_else(|| other("There are a thousand rescued journals here; move some away.".into()))?;
    let fresh = kept.join(FRESH);
    private::make_folder(&fresh).map_err(|e| failed(&e))?;
    let mut found: BTreeMap<EntryId, Entry> = BTreeMap::new();
    // SQLite may write to what it opens, so it gets copies; the originals are only read, and later moved.
    for name in ["", "-wal"].map(|end| format!("{DATABASE}{end}")) {
        if folder.join(&name).exists() {
            let bytes = fs::read(folder.join(&name)).map_err(|e| failed(&e))?;
            carve(&bytes, &mut found);
            write_private(&kept.join(&name), &bytes).map_err(|e| failed(&e))?;
        }
    }
    ask(&kept.join(DATABASE), &mut found);

    let entries = one_a_number(found.into_values().collect());
    let mut by_job: BTreeMap<EntryId, Vec<Entry>> = BTreeMap::new();
    for entry in &entries {
        if let Some(job) = entry.job() {
            by_job.entry(job).or_default().push(entry.clone());
        }
    }
    let jobs: Vec<Job> = by_job.values().filter_map(|entries| Job::fold(entries)).collect();
    let mut store = Store::open(&fresh)?;
    store.append(&entries, &jobs.iter().collect::<Vec<_>>()).map_err(|e| other(e.to_string()))?;
    // The end of this device's chain may be among what is lost. Going on under the old key could give one number to two entries, so
    // the device begins a chain of its own.
    store.keep_local(NEW_KEY, "1").map_err(|e| other(e.to_string()))?;
    settle(&store.db).map_err(|e| other(StoreError::from(e).to_string()))?;
    drop(store);
    for made in [&kept, folder] {
        sync_folder(made).map_err(|e| failed(&e))?;
    }
    write_private(&fresh.join(READY), b"").map_err(|e| failed(&e))?;
    Ok(kept)
}

/// One entry a device and number. An entry that was signed and then taken back can still lie in the file: the one that counts is
/// the one that the next entry names.
fn one_a_number(mut entries: Vec<Entry>) -> Vec<Entry> {
    let named: BTreeSet<EntryId> = entries.iter().map(|e| e.body.prev).collect();
    entries.sort_by_key(|e| (e.body.device, e.body.seq, !named.contains(&e.id), e.id));
    entries.dedup_by_key(|e| (e.body.device, e.body.seq));
    entries.sort_by_key(Entry::order);
    entries
}

/// Reads entries out of raw bytes: a body, what opens it if there is such, and right behind that the 64 bytes of the signature.
fn carve(bytes: &[u8], found: &mut BTreeMap<EntryId, Entry>) {
    let starts = bytes.windows(4).enumerate().filter(|(_, w)| begins(w)).map(|(at, _)| at);
    for at in starts {
        let window = &bytes[at..bytes.len().min(at + MAX_ENTRY_BYTES)];
        let mut rest = window;
        for _item in ["body", "openings"] {
            if ciborium::de::from_reader_with_recursion_limit::<ciborium::Value, _>(&mut rest, 24).is_err() {
                break;
            }
            let length = window.len() - rest.len();
            let Some(signature) = bytes.get(at + length..at + length + 64).and_then(|s| s.try_into().ok()) else {
                break;
            };
            if let Ok(entry) = Entry::open(window[..length].to_vec(), signature) {
                found.insert(entry.id, entry);
                break;
            }
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
