//! The office is a device too: its key, in a file that only its owner may read.

use std::fs::{File, OpenOptions};
use std::io::{ErrorKind, Read, Write};
use std::path::Path;

use stillbar_core::journal::{DeviceKey, EntryId};

use crate::error::OfficeError;
use crate::params;
use crate::store::{Database, change};

/// The key's file name in the data folder.
pub const KEY: &str = "office.key";

/// The key in `file`, made if the office has none yet. Several processes over one database use the same key. The error is a sentence.
pub fn office_key(store: &dyn Database, file: &Path, now: i64) -> Result<DeviceKey, String> {
    let known = known(store).map_err(|e| e.told().2)?;
    let shown = file.display();
    let found = read(file).map_err(|e| format!("The office's key {shown} cannot be read: {e}."))?;
    let secret = match (found, &known) {
        (Some(secret), _) => secret,
        (None, Some(_)) => {
            return Err(format!(
                "The office's key {shown} is not there, and this database was written with one. Put it back from your copy; another \
                 process of this office has the same."
            ));
        }
        (None, None) => {
            let mut secret = [0; 32];
            getrandom::fill(&mut secret).map_err(|_| "The system gives no random bytes, so no key could be made.")?;
            match write(file, &secret) {
                Ok(()) => secret.to_vec(),
                // Another process was a moment earlier: its key counts.
                Err(e) if e.kind() == ErrorKind::AlreadyExists => read(file).ok().flatten().unwrap_or_default(),
                Err(e) => return Err(format!("The office's key {shown} could not be written: {e}.")),
            }
        }
    };
    let key = DeviceKey::from_secret(&secret).ok_or_else(|| format!("{shown} is no key: it has not 32 bytes."))?;
    let kept = keep(store, &key, now).map_err(|e| e.told().2)?;
    if kept != key.device().to_string() {
        return Err(format!(
            "{shown} is not the key that this database was written with. Nothing was changed: give the right one with --key."
        ));
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

fn read(file: &Path) -> std::io::Result<Option<Vec<u8>>> {
    let opened = match File::open(file) {
        Err(e) if e.kind() == ErrorKind::NotFound => return Ok(None),
        opened => opened?,
    };
    let mut secret = Vec::new();
    opened.take(64).read_to_end(&mut secret)?;
    Ok(Some(secret))
}

fn write(file: &Path, secret: &[u8]) -> std::io::Result<()> {
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
