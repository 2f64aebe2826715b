//! What every answer stands on: the database, the photos, the office's key, and what the system lends.

use std::path::PathBuf;
use std::sync::Arc;
use std::time::{SystemTime, UNIX_EPOCH};

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use sha2::{Digest, Sha256};
use stillbar_core::journal::DeviceKey;
use tokio::sync::Semaphore;

use crate::error::OfficeError;
use crate::photos::Blobs;
use crate::store::{Database, Tx};

/// Photos that may be in memory at once.
const PHOTOS_AT_ONCE: usize = 4;
/// Passwords that may be hashed at once: each takes 19 MiB.
const PASSWORDS_AT_ONCE: usize = 2;

/// Fills with random bytes.
pub type Random = dyn Fn(&mut [u8]) -> Result<(), OfficeError> + Send + Sync;

/// What the system lends: its clock and its chance. Tests lend their own.
pub struct Lent {
    /// Milliseconds since 1970-01-01T00:00Z.
    pub now: Box<dyn Fn() -> i64 + Send + Sync>,
    /// Fills with random bytes.
    pub random: Box<Random>,
}

impl Lent {
    /// From the system.
    pub fn system() -> Lent {
        Lent {
            now: Box::new(|| {
                let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
                i64::try_from(since.as_millis()).unwrap_or(i64::MAX)
            }),
            random: Box::new(|into| {
                getrandom::fill(into).map_err(|_| OfficeError::broken("the system gives no random bytes"))
            }),
        }
    }
}

/// How the office is reached.
#[derive(Debug, Clone, Default)]
pub struct Reached {
    /// The address that phones and browsers use, without a slash at the end.
    pub url: String,
    /// Whether it begins with https: cookies are then sent over TLS only.
    pub secure: bool,
    /// Whether a proxy in front says who is calling.
    pub proxied: bool,
}

/// The office.
pub struct Office {
    /// The database.
    pub store: Box<dyn Database>,
    /// The photos.
    pub blobs: Blobs,
    /// The key that signs what the office writes itself.
    pub key: DeviceKey,
    /// The data folder.
    pub folder: PathBuf,
    /// What the office is called.
    pub name: String,
    /// How it is reached.
    pub reached: Reached,
    /// What the system lends.
    pub lent: Lent,
    /// Held while a photo is whole in memory.
    pub photos: Semaphore,
    /// Held while a password is hashed.
    pub passwords: Semaphore,
}

/// The office, as every answer holds it.
pub type Shared = Arc<Office>;

impl Office {
    /// Puts it together.
    pub fn new(
        store: Box<dyn Database>,
        blobs: Blobs,
        key: DeviceKey,
        folder: PathBuf,
        name: String,
        reached: Reached,
        lent: Lent,
    ) -> Office {
        let (photos, passwords) = (Semaphore::new(PHOTOS_AT_ONCE), Semaphore::new(PASSWORDS_AT_ONCE));
        Office { store, blobs, key, folder, name, reached, lent, photos, passwords }
    }

    /// The office's clock.
    pub fn now(&self) -> i64 {
        (self.lent.now)()
    }

    /// `N` random bytes.
    pub fn random<const N: usize>(&self) -> Result<[u8; N], OfficeError> {
        let mut bytes = [0; N];
        (self.lent.random)(&mut bytes)?;
        Ok(bytes)
    }

    /// A secret of `N` random bytes, as text.
    pub fn secret<const N: usize>(&self) -> Result<String, OfficeError> {
        Ok(URL_SAFE_NO_PAD.encode(self.random::<N>()?))
    }

    /// Changes the database, in one transaction.
    pub fn change<T>(&self, work: impl FnMut(&mut dyn Tx) -> Result<T, OfficeError>) -> Result<T, OfficeError> {
        crate::store::change(&*self.store, work)
    }

    /// Reads one moment of the database.
    pub fn read<T>(&self, work: impl FnMut(&mut dyn Tx) -> Result<T, OfficeError>) -> Result<T, OfficeError> {
        crate::store::read(&*self.store, work)
    }
}

/// Does `work` on a thread that may block. A panic there is told as a fault, and the office goes on.
pub async fn call<T, F>(office: &Shared, work: F) -> Result<T, OfficeError>
where
    T: Send + 'static,
    F: FnOnce(&Office) -> Result<T, OfficeError> + Send + 'static,
{
    let office = Arc::clone(office);
    tokio::task::spawn_blocking(move || work(&office))
        .await
        .unwrap_or_else(|_| Err(OfficeError::broken("a call ended in a panic")))
}

/// What is kept of a secret. Secrets are random and long, so a plain hash cannot be guessed backwards.
pub fn kept(secret: &str) -> [u8; 32] {
    Sha256::digest(secret.as_bytes()).into()
}
