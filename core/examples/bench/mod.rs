//! The device of a measurement: the system's clock, a key in a file, and no randomness worth the name, since nothing here is relied on.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::SystemTime;

use stillbar_core::{Platform, PlatformError};

pub struct Bench(PathBuf, AtomicU64);

impl Bench {
    /// With its key in this file.
    pub fn with_key(path: PathBuf) -> Arc<Bench> {
        Arc::new(Bench(path, AtomicU64::new(1)))
    }
}

impl Platform for Bench {
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
        SystemTime::UNIX_EPOCH.elapsed().map_or(0, |d| d.as_millis() as i64)
    }
    fn offset_minutes(&self, _: i64) -> i32 {
        60
    }
    fn random(&self, count: u32) -> Vec<u8> {
        (0..count).map(|_| (self.1.fetch_add(0x9E37_79B9, Ordering::Relaxed) >> 7) as u8).collect()
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(std::fs::read(&self.0).ok())
    }
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        std::fs::write(&self.0, secret).map_err(|e| PlatformError::Failed { why: e.to_string() })
    }
}
