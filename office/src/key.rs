//! The office is a device too: its key, in a file that only its owner may read.

use std::fs::{File, OpenOptions};
use std::io::{self, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};

use stillbar_core::journal::{DeviceKey, EntryId};

use crate::error::OfficeError;
use crate::params;
use crate::store::{Database, change};

/// The key's file name in the data folder.
pub const KEY: &str = "office.key";

/// Why the office has no key.
#[derive(Debug, thiserror::Error)]
pub enum KeyError {
    /// The database could not say whose it is; told as to any caller.
    #[error("{}", .0.says())]
    Store(#[source] OfficeError),
    /// The file cannot be read.
    #[error("The office's key {file} cannot be read: {why}.")]
    Unreadable {
        /// The file.
        file: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// The database knows a key, and the file is not there.
    #[error(
        "The office's key {0} is not there, and this database was written with one. Put it back from your copy; another \
         process of this office has the same."
    )]
    Missing(PathBuf),
    /// The system gives no random bytes.
    #[error("The system gives no random bytes, so no key could be made.")]
    NoRandom,
    /// The file could not be written.
    #[error("The office's key {file} could not be written: {why}.")]
    Unwritten {
        /// The file.
        file: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// What is in the file is no key.
    #[error("{0} is no key: it has not 32 bytes.")]
    NoKey(PathBuf),
    /// It is a key, and not the one of this database.
    #[error(
        "{0} is not the key that this database was written with. Nothing was changed: give the right one with --key."
    )]
    Other(PathBuf),
}

impl From<OfficeError> for KeyError {
    fn from(error: OfficeError) -> KeyError {
        KeyError::Store(error.noted())
    }
}

/// The key in `file`, made if the office has none yet. Several processes over one database use the same key.
pub fn office_key(store: &dyn Database, file: &Path, now: i64) -> Result<DeviceKey, KeyError> {
    let known = known(store)?;
    let named = || file.to_owned();
    let found = read(file).map_err(|why| KeyError::Unreadable { file: named(), why })?;
    let secret = match (found, &known) {
        (Some(secret), _) => secret,
        (None, Some(_)) => return Err(KeyError::Missing(named())),
        (None, None) => {
            let mut secret = [0; 32];
            getrandom::fill(&mut secret).map_err(|_| KeyError::NoRandom)?;
            match write(file, &secret) {
                Ok(()) => secret.to_vec(),
                // Another process was a moment earlier: its key counts.
                Err(e) if e.kind() == ErrorKind::AlreadyExists => read(file).ok().flatten().unwrap_or_default(),
                Err(why) => return Err(KeyError::Unwritten { file: named(), why }),
            }
        }
    };
    let key = DeviceKey::from_secret(&secret).ok_or_else(|| KeyError::NoKey(named()))?;
    let kept = keep(store, &key, now)?;
    if kept != key.device().to_string() {
        return Err(KeyError::Other(named()));
    }
    Ok(key)
}

fn known(store: &dyn Database) -> Result<Option<String>, OfficeError> {
    crate::store::read(store, |tx| {
        let rows = tx.rows("SELECT value FROM office WHERE name = $1", params!["device"])?;
        rows.first().map(|row| row.text(0)).transpose()
    })
}

/// Writes down whose key it is, unless that is known, and makes the office a device of its own. Returns whose it is.
fn keep(store: &dyn Database, key: &DeviceKey, now: i64) -> Result<String, OfficeError> {
    change(store, |tx| {
        let device = key.device();
        tx.run(
            "INSERT INTO office (name, value) VALUES ($1, $2) ON CONFLICT (name) DO NOTHING",
            params!["device", device.to_string()],
        )?;
        let rows = tx.rows("SELECT value FROM office WHERE name = $1", params!["device"])?;
        let kept = rows.first().map_or(Ok(String::new()), |row| row.text(0))?;
        if kept == device.to_string() {
            tx.run(
                "INSERT INTO device (id, label, token, enrolled_ms, withdrawn_ms, held, last_seq, last_id, heard_ms) \
                 VALUES ($1, $2, NULL, $3, NULL, 0, 0, $4, $3) ON CONFLICT (id) DO NOTHING",
                params![device, "The office", now, EntryId::NONE],
            )?;
        }
        Ok(kept)
    })
}

fn read(file: &Path) -> io::Result<Option<Vec<u8>>> {
    let opened = match File::open(file) {
        Err(e) if e.kind() == ErrorKind::NotFound => return Ok(None),
        opened => opened?,
    };
    let mut secret = Vec::new();
    opened.take(64).read_to_end(&mut secret)?;
    Ok(Some(secret))
}

fn write(file: &Path, secret: &[u8]) -> io::Result<()> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let mut out = options.open(file)?;
    out.write_all(secret)?;
    out.sync_all()?;
    // The new name itself must survive a power cut as well.
    let folder = file.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
    if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
}
