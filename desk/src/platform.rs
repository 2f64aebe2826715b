//! What the laptop lends to the core: its clocks, its chance, a file for the device's secret, and one outside the data folder for the end of
//! its chain.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

use jiff::Timestamp;
use jiff::tz::TimeZone;
use sha2::{Digest, Sha256};
use stillbar_core::Platform;
use stillbar_core::app::PlatformError;
use stillbar_core::journal::Running;

use crate::folder::plain;

pub(crate) const SECRET: &str = "device.key";

/// More than any key needs; what is larger is no key, and is not read into memory.
const MAX_SECRET: u64 = 4096;

/// Likewise for the end of the chain.
const MAX_HEAD: u64 = 4096;

/// The system has no source of random bytes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("This system gives no random bytes, so nothing can be signed.")]
pub struct NoRandom;

/// This laptop, with one data folder.
pub struct DesktopPlatform {
    folder: PathBuf,
    zone: TimeZone,
    /// The file of the end of its chain; `None` where the system names no folder for what is not the person's own.
    head: Option<PathBuf>,
    /// Which start of the laptop this is, where the system says it.
    start: Option<u64>,
}

impl DesktopPlatform {
    /// Fails if the system has no source of random bytes, without which no entry could be signed.
    pub fn new(folder: &Path) -> Result<Self, NoRandom> {
        let heads = dirs::state_dir().or_else(dirs::data_local_dir).map(|d| d.join("stillbar").join("heads"));
        Self::with_heads(folder, heads.as_deref())
    }

    /// The same with another folder for the ends of chains, or none.
    pub fn with_heads(folder: &Path, heads: Option<&Path>) -> Result<Self, NoRandom> {
        getrandom::fill(&mut [0; 1]).map_err(|_| NoRandom)?;
        // Named by where the data are: a copy that is put back in their place finds the end that was reached there.
        let name = |path: &Path| {
            Sha256::digest(path.as_os_str().as_encoded_bytes()).iter().map(|b| format!("{b:02x}")).collect::<String>()
        };
        let place = folder.canonicalize().unwrap_or_else(|_| folder.to_owned());
        let head = heads.map(|heads| heads.join(name(&place)));
        Ok(Self { folder: folder.to_owned(), zone: TimeZone::system(), head, start: start() })
    }

    fn write_head(&self, head: &[u8]) -> io::Result<()> {
        let Some(file) = &self.head else { return Err(io::ErrorKind::NotFound.into()) };
        let folder = file.parent().unwrap_or(Path::new("."));
        let mut builder = fs::DirBuilder::new();
        builder.recursive(true);
        #[cfg(unix)]
        std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
        builder.create(folder)?;
        write_new(&file.with_extension("new"), file, head)
    }

    fn write_secret(&self, secret: &[u8]) -> io::Result<()> {
        let (file, new) = (self.folder.join(SECRET), self.folder.join("device.key.new"));
        if let Some(former) = self.read_secret()? {
            // The key that signed a journal is never destroyed: should that journal come back, its chain goes on with it.
            let mut number = 1;
            while self.former(number).try_exists()? {
                number += 1;
            }
            write_new(&new, &self.former(number), &former)?;
        }
        write_new(&new, &file, secret)
    }

    /// Where a key is set aside that another takes the place of.
    fn former(&self, number: u32) -> PathBuf {
        self.folder.join(format!("{SECRET}.former-{number}"))
    }

    fn read_secret(&self) -> io::Result<Option<Vec<u8>>> {
        read_few(&self.folder.join(SECRET), MAX_SECRET)
    }
}

/// Writes a file for its owner only, whole or not at all, in place of what is there.
fn write_new(new: &Path, file: &Path, bytes: &[u8]) -> io::Result<()> {
    match fs::remove_file(new) {
        Err(e) if e.kind() != io::ErrorKind::NotFound => return Err(e),
        _ => {}
    }
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let mut out = options.open(new)?;
    out.write_all(bytes)?;
    out.sync_all()?;
    drop(out);
    fs::rename(new, file)?;
    // The new name itself must survive a power cut as well.
    #[cfg(unix)]
    File::open(file.parent().unwrap_or(Path::new(".")))?.sync_all()?;
    Ok(())
}

/// Reads a file of at most `most` bytes, if it is there.
fn read_few(path: &Path, most: u64) -> io::Result<Option<Vec<u8>>> {
    let file = match File::open(path) {
        Ok(file) => file,
        Err(e) if e.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(e) => return Err(e),
    };
    tighten(&file);
    let mut bytes = Vec::new();
    file.take(most + 1).read_to_end(&mut bytes)?;
    if bytes.len() as u64 > most {
        return Err(io::ErrorKind::FileTooLarge.into());
    }
    Ok(Some(bytes))
}

/// Which start of the laptop this is: another number after each (random(4), boot_id).
fn start() -> Option<u64> {
    let id = fs::read_to_string("/proc/sys/kernel/random/boot_id").ok()?;
    let hash = Sha256::digest(id.trim().as_bytes());
    // Without the highest bit: the database's whole numbers have a sign.
    hash.first_chunk().map(|first| u64::from_be_bytes(*first) >> 1)
}

/// Milliseconds since that start, those included that the laptop slept (clock_gettime(2), CLOCK_BOOTTIME).
#[cfg(target_os = "linux")]
fn since_start() -> Option<u64> {
    let time = rustix::time::clock_gettime(rustix::time::ClockId::Boottime);
    let (seconds, nanos) = (u64::try_from(time.tv_sec).ok()?, u64::try_from(time.tv_nsec).ok()?);
    Some(seconds * 1000 + nanos / 1_000_000)
}

/// Elsewhere the wall clock counts: the core takes it the cautious way.
#[cfg(not(target_os = "linux"))]
fn since_start() -> Option<u64> {
    None
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

impl Platform for DesktopPlatform {
    fn running(&self) -> Option<Running> {
        Some(Running { start: self.start?, ms: since_start()? })
    }

    fn load_head(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        let Some(file) = &self.head else { return Ok(None) };
        read_few(file, MAX_HEAD).map_err(|e| self.head_failed("read", &e))
    }

    fn store_head(&self, head: Vec<u8>) -> Result<(), PlatformError> {
        self.write_head(&head).map_err(|e| self.head_failed("written", &e))
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

impl DesktopPlatform {
    fn head_failed(&self, deed: &str, e: &io::Error) -> PlatformError {
        let why = match &self.head {
            Some(file) => format!("The end of the journal in {} could not be {deed}: {}.", file.display(), plain(e)),
            None => "This system names no folder for the end of the journal.".into(),
        };
        PlatformError::Failed { why }
    }

    fn failed(&self, deed: &str, e: &io::Error) -> PlatformError {
        PlatformError::Failed {
            why: format!("The device's key {} could not be {deed}: {}.", self.folder.join(SECRET).display(), plain(e)),
        }
    }
}
