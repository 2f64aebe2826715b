//! The one object that a shell holds.

use std::sync::Arc;

use crate::screens::parts::{Errand, Filled, Outcome, Screen};

/// What the device lends to the core. Clock, chance and the secret come from here, so that tests can inject them.
pub trait Platform: Send + Sync {
    /// The device's clock, in milliseconds since 1970-01-01T00:00Z.
    fn now_ms(&self) -> i64;
    /// Minutes that local time was ahead of UTC at that moment.
    fn offset_minutes(&self, at_ms: i64) -> i32;
    /// `count` bytes from the system's cryptographic source.
    fn random(&self, count: u32) -> Vec<u8>;
    /// The device's secret, if one was stored.
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError>;
    /// Store the device's secret where other apps cannot read it.
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError>;
}

/// The device could not do what the core asked of it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PlatformError {
    /// Why, in one sentence.
    #[error("{why}")]
    Failed { why: String },
}

/// Why the data folder could not be opened. Each sentence says what to do; nothing was changed or lost.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum OpenError {
    /// Another process has the folder open.
    #[error("{what}")]
    InUse { what: String },
    /// The database is damaged.
    #[error("{what}")]
    Damaged { what: String },
    /// The database was written by a newer version.
    #[error("{what}")]
    Newer { what: String },
    /// The folder cannot be written.
    #[error("{what}")]
    ReadOnly { what: String },
    /// The disk is full.
    #[error("{what}")]
    DiskFull { what: String },
    /// The device's secret is missing or is not the one that signed this journal.
    #[error("{what}")]
    Secret { what: String },
    /// Anything else, in one sentence.
    #[error("{what}")]
    Other { what: String },
}

/// The field app. One of these is open per data folder.
pub struct Field;

impl Field {
    /// Opens (or begins) the journal in `folder`.
    pub fn open(_folder: String, _platform: Arc<dyn Platform>) -> Result<Arc<Field>, OpenError> {
        Ok(Arc::new(Field))
    }
    /// What to show now.
    pub fn screen(&self) -> Screen {
        todo!()
    }
    /// The person did something. `turn` is the screen's turn, or `None` to act whatever happened since.
    pub fn act(&self, _turn: Option<u64>, _action: String, _input: Vec<Filled>) -> Vec<Errand> {
        todo!()
    }
    /// The person typed into a field: kept as a draft, so that nothing typed is lost.
    pub fn edit(&self, _field: String, _value: String) {}
    /// An errand ended.
    pub fn deliver(&self, _token: String, _outcome: Outcome) -> Vec<Errand> {
        todo!()
    }
    /// The bytes of a kept photo.
    pub fn photo(&self, _sha256: String) -> Option<Vec<u8>> {
        None
    }
}
