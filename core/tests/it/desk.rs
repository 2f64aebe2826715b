//! A device for tests: a clock that stands until it is moved, chance from a seed, a secret in memory.

use std::path::Path;
use std::sync::atomic::{AtomicBool, AtomicI64, AtomicU64, Ordering};
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
    head: Mutex<Option<Vec<u8>>>,
    refuses_secrets: AtomicBool,
    start: AtomicU64,
    ran: AtomicU64,
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
        let (start, ran) = (AtomicU64::new(seed), AtomicU64::new(0));
        Arc::new(Device {
            now,
            ticks,
            chance,
            secret: Mutex::default(),
            head: Mutex::default(),
            refuses_secrets: AtomicBool::default(),
            start,
            ran,
        })
    }
    /// Time passes, or the clock is set back; the running clock only ever goes on.
    pub fn pass(&self, ms: i64) {
        self.now.fetch_add(ms, Ordering::Relaxed);
        self.ran.fetch_add(u64::try_from(ms).unwrap_or(0), Ordering::Relaxed);
    }
    /// The wall clock is set; no time passes.
    pub fn set_clock(&self, ahead_ms: i64) {
        self.now.fetch_add(ahead_ms, Ordering::Relaxed);
    }
    /// Another device with the same key.
    pub fn copied(&self, seed: u64) -> Arc<Device> {
        let copy = Device::ticking(seed, self.ticks);
        copy.now.store(self.now.load(Ordering::Relaxed), Ordering::Relaxed);
        *copy.secret.lock().unwrap() = self.secret.lock().unwrap().clone();
        copy
    }
    /// Nothing is kept outside the folder any more.
    pub fn loses_head(&self) {
        *self.head.lock().unwrap() = None;
    }
    /// Whether the place for secrets takes none.
    pub fn refuse_secrets(&self, refuses: bool) {
        self.refuses_secrets.store(refuses, Ordering::Relaxed);
    }
    /// The device was switched off and on.
    pub fn starts_anew(&self) {
        self.start.fetch_add(1, Ordering::Relaxed);
        self.ran.store(0, Ordering::Relaxed);
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
        let (start, ms) = (self.start.load(Ordering::Relaxed), self.ran.load(Ordering::Relaxed));
        Some(stillbar_core::journal::Running { start, ms })
    }
    fn load_head(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(self.head.lock().unwrap().clone())
    }
    fn store_head(&self, head: Vec<u8>) -> Result<(), PlatformError> {
        *self.head.lock().unwrap() = Some(head);
        Ok(())
    }
    fn now_ms(&self) -> i64 {
        self.now.fetch_add(self.ticks, Ordering::Relaxed)
    }
    fn offset_minutes(&self, _: i64) -> i32 {
        60
    }
    fn random(&self, count: u32) -> Vec<u8> {
        // The same run every time, which a test wants and a device must never have.
        bytes(&self.chance, count)
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(self.secret.lock().unwrap().clone())
    }
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        if self.refuses_secrets.load(Ordering::Relaxed) {
            return Err(PlatformError::Failed { why: "The place for keys is closed.".into() });
        }
        *self.secret.lock().unwrap() = Some(secret);
        Ok(())
    }
}

/// What SplitMix64 steps by (Steele, Lea, Flood 2014).
pub const STEP: u64 = 0x9E37_79B9_7F4A_7C15;

/// SplitMix64's number for a state.
pub fn mixed(state: u64) -> u64 {
    let mut z = state;
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

/// Bytes from a state, which goes on.
pub fn bytes(state: &AtomicU64, count: u32) -> Vec<u8> {
    (0..count).map(|_| mixed(state.fetch_add(STEP, Ordering::Relaxed)).to_le_bytes()[0]).collect()
}

pub const PEOPLE: &str = include_str!("../../journeys/people.journey");
pub const PLAN: &str = concat!(
    include_str!("../../journeys/plan.journey"),
    include_str!("../../journeys/add-instruments.journey"),
    include_str!("../../journeys/circuits.journey")
);
pub const ISOLATE: &str = include_str!("../../journeys/isolate.journey");
/// Work begins: what is asked before it is answered.
pub const BEGIN: &str = "tap Not asked for\nfill By whose rule = Site rule 4\ntap Save: Not asked for\ntap Nothing within reach\ntap None in there\ntap Whoever tested lets it start\ntap Begin work";
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
    let found = ["choose Kind of source", "fill What you found", "fill Where it comes in", "tap Save this source"];
    let lines = PLAN.lines().skip_while(|l| !l.starts_with("fill Where you looked"));
    let lines = lines.take_while(|l| !l.starts_with("tap Next: Points of isolation"));
    lines.filter(|l| !found.iter().any(|f| l.starts_with(f))).collect::<Vec<_>>().join("\n")
}

/// Isolating in another round: Q9 had been found off and stayed open, and what was asked at the points is answered.
pub fn locked_again(isolate: &str) -> String {
    let asked =
        ["Seen live", "What was seen live", "Both can be read", "Blocked at its controller", "How it is blocked"];
    let was = |line: &&str| {
        asked.iter().any(|of| {
            line.trim_start_matches("tap Save: ").starts_with(of)
                || line[line.find(' ').map_or(0, |at| at + 1)..].starts_with(of)
        })
    };
    let isolate = isolate.lines().filter(|line| !was(line)).map(|line| format!("{line}\n")).collect::<String>();
    let isolate = isolate.as_str();
    let open = isolate.find("fill What shows that it is open = Handle at 0").unwrap();
    let line = "tap Q9 changeover switch is open, off load\n";
    let after = isolate[open..].find(line).unwrap() + open + line.len();
    format!("{}{}", &isolate[..open], &isolate[after..])
}

/// A script in the words of North America: what the program says there, for what it says elsewhere.
pub fn american(script: &str) -> String {
    let words = [
        ("What it is = Switch-disconnector", "What it is = Disconnect switch"),
        ("The caution sign hangs", "The danger tag hangs"),
        ("main earthing terminal", "main grounding terminal"),
        ("Earth proved", "Ground proved"),
        ("[Proved dead]", "[Absence of voltage verified]"),
        ("tap Caution sign taken off", "tap Danger tag taken off"),
        ("tools and earths are clear", "tools and grounds are clear"),
    ];
    words.iter().fold(script.to_owned(), |script, (from, to)| script.replace(from, to))
}
