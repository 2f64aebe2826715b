//! What the laptop lends to the core: its clock, its chance, and a file for the device's secret.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

use jiff::Timestamp;
use jiff::tz::TimeZone;
use stillbar_core::Platform;
use stillbar_core::app::PlatformError;

use crate::folder::plain;

pub(crate) const SECRET: &str = "device.key";

/// More than any key needs; what is larger is no key, and is not read into memory.
const MOST_SECRET: u64 = 4096;

/// This laptop, with one data folder.
pub struct System {
    folder: PathBuf,
    zone: TimeZone,
}

impl System {
    /// Fails if the system has no source of random bytes, without which no entry could be signed.
    pub fn new(folder: &Path) -> Result<Self, String> {
        getrandom::fill(&mut [0; 1]).map_err(|_| "This system gives no random bytes, so nothing can be signed.")?;
        Ok(Self { folder: folder.to_owned(), zone: TimeZone::system() })
    }

    fn write_secret(&self, secret: &[u8]) -> io::Result<()> {
        let (file, new) = (self.folder.join(SECRET), self.folder.join("device.key.new"));
        if file.try_exists()? {
            // The key that signed a journal is never replaced: its chain could not go on.
            return Err(io::ErrorKind::AlreadyExists.into());
        }
        match fs::remove_file(&new) {
            Err(e) if e.kind() != io::ErrorKind::NotFound => return Err(e),
            _ => {}
        }
        let mut options = OpenOptions::new();
        options.write(true).create_new(true);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        let mut out = options.open(&new)?;
        out.write_all(secret)?;
        out.sync_all()?;
        drop(out);
        fs::rename(&new, &file)?;
        // The new name itself must survive a power cut as well.
        #[cfg(unix)]
        File::open(&self.folder)?.sync_all()?;
        Ok(())
    }

    fn read_secret(&self) -> io::Result<Option<Vec<u8>>> {
        let file = match File::open(self.folder.join(SECRET)) {
            Ok(file) => file,
            Err(e) if e.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(e) => return Err(e),
        };
        tighten(&file);
        let mut secret = Vec::new();
        file.take(MOST_SECRET + 1).read_to_end(&mut secret)?;
        if secret.len() as u64 > MOST_SECRET {
            return Err(io::ErrorKind::FileTooLarge.into());
        }
        Ok(Some(secret))
    }
}

/// Others may not read the key. On a disk that cannot be changed it stays as it is: refusing would help nobody.
#[cfg(unix)]
fn tighten(file: &File) {
    use std::os::unix::fs::PermissionsExt;
    if let Ok(found) = file.metadata()
        && found.permissions().mode() & 0o077 != 0
    {
        let _ = file.set_permissions(fs::Permissions::from_mode(0o600));
    }
}

/// Elsewhere the folder of the person's own data keeps others out.
#[cfg(not(unix))]
fn tighten(_: &File) {}

impl Platform for System {
    fn running(&self) -> Option<stillbar_core::journal::Running> {
        None
    }
    fn load_head(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(None)
    }
    fn store_head(&self, _: Vec<u8>) -> Result<(), PlatformError> {
        Ok(())
    }
    fn now_ms(&self) -> i64 {
        // A clock before 1970 counts backwards; the core judges what it makes of that.
        match SystemTime::now().duration_since(UNIX_EPOCH) {
            Ok(since) => i64::try_from(since.as_millis()).unwrap_or(i64::MAX),
            Err(before) => i64::try_from(before.duration().as_millis()).map_or(i64::MIN, |ms| -ms),
        }
    }

    fn offset_minutes(&self, at_ms: i64) -> i32 {
        Timestamp::from_millisecond(at_ms).map_or(0, |at| self.zone.to_offset(at).seconds() / 60)
    }

    fn random(&self, count: u32) -> Vec<u8> {
        let mut bytes = vec![0; count as usize];
        // It answered at the start; a source that breaks later must stop the entry rather than weaken its signature.
        getrandom::fill(&mut bytes).expect("the system's random source answered at the start");
        bytes
    }

    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        self.read_secret().map_err(|e| self.failed("read", &e))
    }

    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        self.write_secret(&secret).map_err(|e| self.failed("written", &e))
    }
}

impl System {
    fn failed(&self, deed: &str, e: &io::Error) -> PlatformError {
        PlatformError::Failed {
            why: format!("The device's key {} could not be {deed}: {}.", self.folder.join(SECRET).display(), plain(e)),
        }
    }
}
