//! Opening a data folder: what can be wrong with it, and what to do.

use std::fs::{self, File, TryLockError};
use std::io::{ErrorKind, Read};
use std::path::Path;
use std::time::Duration;

use rusqlite::{Connection, ErrorCode, OpenFlags, Transaction, TransactionBehavior};

use super::rescue::unfinished;
use super::whole::{plain, sync_new_folder, write_private};
use super::{OpenError, Store, photos, private};

/// The database's file name in the data folder.
pub const DATABASE: &str = "journal.db";
/// The file whose lock tells a second process that the folder is in use.
pub const LOCK: &str = "in-use";

const VERSION: i64 = SCHEMA.len() as i64;
/// What each version adds to the one before.
const SCHEMA: [&str; 6] = [
    include_str!("schema.sql"),
    include_str!("schema-2.sql"),
    include_str!("schema-3.sql"),
    include_str!("schema-4.sql"),
    include_str!("schema-5.sql"),
    include_str!("schema-6.sql"),
];
/// The note of the program that worked the tables out: another one may read more in the same entries.
const PROGRAM: &str = "program";
/// A database up to this size is checked whole when it is opened, at about 0.8 ms a MiB (an AMD EPYC); a larger one would make the start
/// wait. What is damaged there shows when it is read.
const CHECK_WHOLE: u64 = 16 << 20;

/// How often the folder's lock is asked for, and the pause between: a lock that was just let go of lives on for a moment in a child process
/// that is between fork and exec (flock(2)).
const TRIES: usize = 10;
const PAUSE: std::time::Duration = std::time::Duration::from_millis(20);

/// Why something could not be kept or read.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// From SQLite.
    #[error("{}", sentence(.0))]
    Sqlite(#[from] rusqlite::Error),
    /// An entry on disk cannot be read.
    #[error("The journal on this device is damaged ({0}). Close the app and run: stillbar rescue")]
    Damaged(String),
}

impl StoreError {
    /// Whether the disk is full.
    pub fn is_full(&self) -> bool {
        matches!(self, StoreError::Sqlite(error) if code(error) == Some(ErrorCode::DiskFull))
    }
}

fn code(error: &rusqlite::Error) -> Option<ErrorCode> {
    error.sqlite_error_code()
}

fn sentence(error: &rusqlite::Error) -> String {
    match code(error) {
        Some(ErrorCode::DiskFull) => {
            "The disk is full. Nothing of this was kept, and what you typed is still here: free some space and tap again.".into()
        }
        Some(ErrorCode::ReadOnly | ErrorCode::PermissionDenied | ErrorCode::CannotOpen) => {
            "The data folder cannot be written. Nothing of this was kept: make the folder writable and tap again.".into()
        }
        Some(ErrorCode::SystemIoFailure) => {
            "The disk did not take it; it may be full or failing. Nothing of this was kept, and what you typed is still here.".into()
        }
        Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => {
            "The journal on this device is damaged. Close the app and run: stillbar rescue".into()
        }
        _ => format!("The journal did not take it ({error}). Nothing of this was kept: tap again."),
    }
}

impl Store {
    /// Opens the folder, and makes it if it is not there. A damaged or newer database is left byte for byte as it is.
    pub fn open(folder: &Path) -> Result<Store, OpenError> {
        let shown = folder.display();
        if folder.exists() && !folder.is_dir() {
            return Err(OpenError::Other { what: format!("{shown} is a file. Name a folder for the data instead.") });
        }
        private::make_folder(&photos::folder(folder)).map_err(|e| io_error(folder, &e))?;
        let lock = take_lock(folder)?;
        private::close(folder);
        let path = folder.join(DATABASE);
        if unfinished(folder).is_some() {
            return Err(damaged(folder, "a rescue was broken off"));
        }
        if fs::metadata(&path).is_ok_and(|m| m.len() > 0) {
            look_first(folder, &path)?;
        } else if fs::metadata(folder.join(format!("{DATABASE}-wal"))).is_ok_and(|m| m.len() > 0) {
            return Err(damaged(folder, "its log is there and the database is not"));
        }
        if !fs::metadata(&path).is_ok_and(|m| m.len() > 0) {
            begin(folder, &path)?;
        }
        let failed = |e: rusqlite::Error| open_error(folder, &e);
        let db = Connection::open(&path).map_err(failed)?;
        prepare(&db).map_err(|e| store_error(folder, &e))?;
        Ok(Store { db, folder: folder.to_owned(), _lock: Some(lock) })
    }

    /// Looks into a folder that another process may have open: nothing can be written through this, and what is read is whole.
    pub fn look(folder: &Path) -> Result<Store, OpenError> {
        let path = folder.join(DATABASE);
        if !fs::metadata(&path).is_ok_and(|m| m.len() > 0) {
            let what = format!("There is no journal in {}. Name the data folder with --data.", folder.display());
            return Err(OpenError::Other { what });
        }
        look_first(folder, &path)?;
        let failed = |e: rusqlite::Error| open_error(folder, &e);
        // Beside a writer SQLite wants to note that somebody reads; in a folder that cannot be written nobody writes.
        let flags = [OpenFlags::SQLITE_OPEN_READ_WRITE, OpenFlags::SQLITE_OPEN_READ_ONLY];
        let open = |flags| {
            let db = Connection::open_with_flags(&path, flags)?;
            db.busy_timeout(Duration::from_secs(5))?;
            db.pragma_update(None, "query_only", "ON")?;
            db.query_row("SELECT count(*) FROM entry", [], |row| row.get::<_, i64>(0)).map(|_| db)
        };
        let db = open(flags[0]).or_else(|_| open(flags[1])).map_err(failed)?;
        Ok(Store { db, folder: folder.to_owned(), _lock: None })
    }

    /// Lets the database grow no further than `pages`, to see what a full disk does.
    #[doc(hidden)]
    pub fn limit_pages(&self, pages: u32) {
        let _ = self.db.pragma_update(None, "max_page_count", pages);
    }
}

/// Makes the empty database under another name, and puts it in place when it is whole: one that was half made when the power went would
/// have to be written to before it could be looked at.
fn begin(folder: &Path, path: &Path) -> Result<(), OpenError> {
    let new = folder.join(format!("{DATABASE}.new"));
    let failed = |e: &std::io::Error| io_error(folder, e);
    for end in ["", "-journal", "-wal", "-shm"] {
        let left = folder.join(format!("{DATABASE}.new{end}"));
        if left.exists() {
            fs::remove_file(left).map_err(|e| failed(&e))?;
        }
    }
    // SQLite gives its log and its index the permissions of the database.
    private::open(&new).map_err(|e| failed(&e))?;
    let made = Connection::open(&new).map_err(StoreError::from).and_then(|db| {
        prepare(&db)?;
        Ok(settle(&db)?)
    });
    made.map_err(|e| store_error(folder, &e))?;
    fs::rename(&new, path).map_err(|e| failed(&e))?;
    // The log of the new name is empty; left behind, it does no harm.
    for end in ["-wal", "-shm"] {
        let _ = fs::remove_file(folder.join(format!("{DATABASE}.new{end}")));
    }
    sync_new_folder(folder);
    Ok(())
}

/// Moves everything from the log into the database, on disk: one file is then the whole of it. Closing does the same, and says nothing
/// when it fails.
pub(super) fn settle(db: &Connection) -> rusqlite::Result<()> {
    db.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| row.get::<_, i64>(0)).map(drop)
}

fn prepare(db: &Connection) -> Result<(), StoreError> {
    db.busy_timeout(Duration::from_secs(5))?;
    db.pragma_update(None, "journal_mode", "WAL")?;
    db.pragma_update(None, "synchronous", "FULL")?;
    // Android gives an app no folder for temporary files that SQLite would find.
    db.pragma_update(None, "temp_store", "MEMORY")?;
    db.pragma_update(None, "foreign_keys", "ON")?;
    let version: i64 = db.pragma_query_value(None, "user_version", |row| row.get(0))?;
    let program = env!("CARGO_PKG_VERSION");
    let noted = "SELECT EXISTS (SELECT 1 FROM local WHERE name = ?1 AND value = ?2)";
    let own = version == VERSION && db.query_row(noted, [PROGRAM, program], |row| row.get(0))?;
    if !own {
        let from = usize::try_from(version).unwrap_or(0).min(SCHEMA.len());
        let missing = SCHEMA[from..].concat();
        let tx = Transaction::new_unchecked(db, TransactionBehavior::Immediate)?;
        tx.execute_batch(&missing)?;
        super::replay(&tx)?;
        tx.execute(super::KEEP, [PROGRAM, program])?;
        tx.pragma_update(None, "user_version", VERSION)?;
        tx.commit()?;
    }
    Ok(())
}

pub(super) fn take_lock(folder: &Path) -> Result<File, OpenError> {
    let path = folder.join(LOCK);
    let file = private::open(&path).map_err(|e| io_error(folder, &e))?;
    for last in (0..TRIES).map(|n| n + 1 == TRIES) {
        match file.try_lock() {
            Ok(()) => return Ok(file),
            Err(TryLockError::WouldBlock) if last => break,
            Err(TryLockError::WouldBlock) => std::thread::sleep(PAUSE),
            Err(TryLockError::Error(e)) => return Err(io_error(folder, &e)),
        }
    }
    Err(OpenError::InUse {
        what: format!(
            "The data folder {} is already open in another Stillbar. Use that one, or stop it and start again.",
            folder.display()
        ),
    })
}

/// Looks at an existing database without the right to change it.
fn look_first(folder: &Path, path: &Path) -> Result<(), OpenError> {
    let mut header = Vec::new();
    let opened = File::open(path).map_err(|e| io_error(folder, &e))?;
    let length = opened.metadata().map_or(0, |m| m.len());
    opened.take(16).read_to_end(&mut header).map_err(|e| io_error(folder, &e))?;
    if header != b"SQLite format 3\0" {
        return Err(damaged(folder, "it does not begin like a database"));
    }
    let failed = |e: rusqlite::Error| open_error(folder, &e);
    let db = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY).map_err(failed)?;
    let version: i64 = db.pragma_query_value(None, "user_version", |row| row.get(0)).map_err(failed)?;
    if version > VERSION {
        return Err(OpenError::Newer {
            what: format!(
                "The data folder {} was written by a newer Stillbar (its version is {version}, this one knows {VERSION}). Nothing was \
                 changed: update Stillbar and open it again.",
                folder.display()
            ),
        });
    }
    if length <= CHECK_WHOLE {
        let found: String = db.query_row("PRAGMA quick_check(1)", [], |row| row.get(0)).map_err(failed)?;
        if found != "ok" {
            return Err(damaged(folder, &found));
        }
    }
    Ok(())
}

fn damaged(folder: &Path, why: &str) -> OpenError {
    let shown = folder.display();
    OpenError::Damaged {
        what: format!(
            "The journal in {shown} is damaged ({}). Nothing was changed. Run: stillbar rescue --data {shown}   It keeps the damaged \
             file and saves every entry whose signature still holds.",
            why.lines().next().unwrap_or("unreadable")
        ),
    }
}

fn store_error(folder: &Path, error: &StoreError) -> OpenError {
    match error {
        StoreError::Sqlite(error) => open_error(folder, error),
        StoreError::Damaged(why) => damaged(folder, why),
    }
}

fn open_error(folder: &Path, error: &rusqlite::Error) -> OpenError {
    match code(error) {
        Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => damaged(folder, &error.to_string()),
        Some(ErrorCode::DiskFull) => full(folder),
        // SQLite does not say why a file could not be made: a try of our own tells a full disk from one that takes nothing.
        Some(ErrorCode::CannotOpen) => {
            let trial = folder.join("room");
            let tried = write_private(&trial, &[0; 4096]);
            let _ = fs::remove_file(&trial);
            tried.err().map_or_else(|| read_only(folder), |e| io_error(folder, &e))
        }
        Some(ErrorCode::ReadOnly | ErrorCode::PermissionDenied) => read_only(folder),
        // A full disk can also look so: SQLite's index of the log is a file that it makes longer before it writes.
        Some(ErrorCode::SystemIoFailure) => OpenError::Other {
            what: format!(
                "The journal in {} could not be opened: the disk did not take it, or did not give it; it may be full or failing. Nothing \
                 was changed: free some space and start again.",
                folder.display()
            ),
        },
        _ => OpenError::Other { what: format!("The journal in {} could not be opened: {error}", folder.display()) },
    }
}

/// The same for the file system's own errors; shared with photos and keys.
pub fn io_error(folder: &Path, error: &std::io::Error) -> OpenError {
    match error.kind() {
        ErrorKind::ReadOnlyFilesystem | ErrorKind::PermissionDenied => read_only(folder),
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => full(folder),
        _ => {
            OpenError::Other { what: format!("The data folder {} cannot be used: {}.", folder.display(), plain(error)) }
        }
    }
}

fn read_only(folder: &Path) -> OpenError {
    OpenError::ReadOnly {
        what: format!(
            "The data folder {} cannot be written. Nothing was changed: make it writable, or name another with --data.",
            folder.display()
        ),
    }
}

fn full(folder: &Path) -> OpenError {
    OpenError::DiskFull {
        what: format!(
            "The disk of {} is full. Nothing was changed: free some space and start again.",
            folder.display()
        ),
    }
}
