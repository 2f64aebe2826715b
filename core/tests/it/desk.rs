//! A device for tests: a clock that stands until it is moved, chance from a seed, a secret in memory.

use std::path::Path;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};
use std::sync::{Arc, Mutex};

use stillbar_core::journey::{Props, play};
use stillbar_core::{Field, OpenError, Platform, PlatformError, demo};

/// 2026-11-02 07:40 UTC.
pub const MORNING: i64 = 1_793_605_200_000;

pub struct Device {
    pub now: AtomicI64,
    /// How far the clock goes on whenever it is read, in milliseconds.
    ticks: i64,
    chance: AtomicU64,
    secret: Mutex<Option<Vec<u8>>>,
}

impl Device {
    pub fn new(seed: u64) -> Arc<Device> {
        Device::ticking(seed, 7)
    }
    /// A clock that stands until it is moved, so that every shell reads the same times.
    pub fn standing(seed: u64) -> Arc<Device> {
        Device::ticking(seed, 0)
    }
    fn ticking(seed: u64, ticks: i64) -> Arc<Device> {
        let (now, chance) = (AtomicI64::new(MORNING), AtomicU64::new(seed));
        Arc::new(Device { now, ticks, chance, secret: Mutex::new(None) })
    }
    pub fn pass(&self, ms: i64) {
        self.now.fetch_add(ms, Ordering::Relaxed);
    }
    pub fn open(self: &Arc<Self>, folder: &Path) -> Result<Arc<Field>, OpenError> {
        Field::open(folder.to_string_lossy().into_owned(), self.clone())
    }
    /// Plays a journey.
    pub fn play(&self, field: &Field, script: &str) {
        if let Err(why) = self.try_play(field, script) {
            panic!("{why}");
        }
    }
    pub fn try_play(&self, field: &Field, script: &str) -> Result<(), String> {
        play(field, script, &Props { photo: demo::PHOTO, wait: &|ms| self.pass(ms) })
    }
}

impl Platform for Device {
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
        self.now.fetch_add(self.ticks, Ordering::Relaxed)
    }
    fn offset_minutes(&self, _: i64) -> i32 {
        60
    }
    fn random(&self, count: u32) -> Vec<u8> {
        // SplitMix64: the same run every time, which a test wants and a device must never have.
        let byte = || {
            let mut z = self.chance.fetch_add(0x9E37_79B9_7F4A_7C15, Ordering::Relaxed);
            z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
            z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
            (z ^ (z >> 31)).to_le_bytes()[0]
        };
        (0..count).map(|_| byte()).collect()
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(self.secret.lock().unwrap().clone())
    }
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        *self.secret.lock().unwrap() = Some(secret);
        Ok(())
    }
}

pub const PEOPLE: &str = include_str!("../../journeys/people.journey");
pub const PLAN: &str = concat!(
    include_str!("../../journeys/plan.journey"),
    include_str!("../../journeys/add-instruments.journey"),
    include_str!("../../journeys/circuits.journey")
);
pub const ISOLATE: &str = include_str!("../../journeys/isolate.journey");
pub const PROVE: &str = include_str!("../../journeys/prove.journey");
pub const WORK: &str = include_str!("../../journeys/work.journey");
pub const RESTORE: &str = include_str!("../../journeys/restore.journey");
pub const INDICATION: &str = include_str!("../../journeys/indication.journey");

/// A fresh folder with a job played as far as `scripts` go.
pub fn begun(scripts: &[&str]) -> (tempfile::TempDir, Arc<Device>, Arc<Field>) {
    let folder = tempfile::tempdir().unwrap();
    let device = Device::new(1);
    let field = device.open(folder.path()).unwrap();
    for script in scripts {
        device.play(&field, script);
    }
    (folder, device, field)
}

/// The answers about other sources and stored energy that a change of scope asks for anew: where nothing had been found.
pub fn looked_again() -> String {
    let found = ["fill Or what you found", "fill Where it comes in", "tap Generator: found"];
    let lines = PLAN.lines().skip_while(|l| !l.starts_with("fill Where you looked"));
    let lines = lines.take_while(|l| !l.starts_with("tap Next: Points of isolation"));
    lines.filter(|l| !found.iter().any(|f| l.starts_with(f))).collect::<Vec<_>>().join("\n")
}

/// Isolating in another round: Q9 had been found off and stayed open.
pub fn locked_again(isolate: &str) -> String {
    let open = isolate.find("fill What you saw go off = Handle at 0").unwrap();
    let line = "tap Q9 changeover switch is open, off load\n";
    let after = isolate[open..].find(line).unwrap() + open + line.len();
    format!("{}{}", &isolate[..open], &isolate[after..])
}
