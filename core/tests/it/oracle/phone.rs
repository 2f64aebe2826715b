//! A phone of the players: a folder in memory, clocks of its own that may be wrong, and what came to it.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};
use std::sync::{Arc, Mutex};

use stillbar_core::journal::{Body, Clock, DeviceId, DeviceKey, Entry, EntryId, Fact, Running, VERSION};
use stillbar_core::journey::{Props, play};
use stillbar_core::{Field, Platform, PlatformError, demo};
use tempfile::TempDir;

use super::known::Moment;
use crate::desk::{MORNING, bytes};

/// What the clock on the wall of the test says; no phone sees it.
pub type True = Arc<AtomicI64>;

/// What a phone lends to the core.
pub struct Device {
    time: True,
    /// How far its wall clock is from the true time.
    off: AtomicI64,
    start: AtomicU64,
    started: AtomicI64,
    /// Whether it has a clock that runs while it sleeps.
    has_running: bool,
    chance: AtomicU64,
    secret: Mutex<Option<Vec<u8>>>,
    head: Mutex<Option<Vec<u8>>>,
}

impl Platform for Device {
    fn now_ms(&self) -> i64 {
        self.time.load(Ordering::Relaxed) + self.off.load(Ordering::Relaxed)
    }
    fn offset_minutes(&self, _: i64) -> i32 {
        60
    }
    fn running(&self) -> Option<Running> {
        let since = self.time.load(Ordering::Relaxed) - self.started.load(Ordering::Relaxed);
        let start = self.start.load(Ordering::Relaxed);
        self.has_running.then(|| Running { start, ms: u64::try_from(since).expect("time goes on") })
    }
    fn random(&self, count: u32) -> Vec<u8> {
        bytes(&self.chance, count)
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(self.secret.lock().unwrap().clone())
    }
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        *self.secret.lock().unwrap() = Some(secret);
        Ok(())
    }
    fn load_head(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(self.head.lock().unwrap().clone())
    }
    fn store_head(&self, head: Vec<u8>) -> Result<(), PlatformError> {
        *self.head.lock().unwrap() = Some(head);
        Ok(())
    }
}

/// A copy of a phone's folder.
struct Kept {
    folder: TempDir,
    came: BTreeMap<EntryId, (Entry, i64)>,
    written: usize,
}

pub struct Phone {
    pub device: Arc<Device>,
    pub time: True,
    folder: TempDir,
    field: Option<Arc<Field>>,
    /// Whose it is, mostly.
    pub person: EntryId,
    /// Everything that came to it or was written on it, and when by the true time; what is kept aside, too.
    came: BTreeMap<EntryId, (Entry, i64)>,
    /// Its journal, as it was read last.
    pub entries: Vec<Entry>,
    pub aside: Vec<Entry>,
    kept: Option<Kept>,
    /// How many entries were written on it, the forgotten ones with them.
    written: usize,
    pub forgotten: bool,
    /// It asks no gate: its own key signs whatever somebody says.
    pub loose: Option<DeviceKey>,
}

/// In memory if there is such a place.
fn folder() -> TempDir {
    let memory = Path::new("/dev/shm");
    if memory.is_dir() { tempfile::tempdir_in(memory) } else { tempfile::tempdir() }.expect("a folder")
}

fn copy(from: &Path, to: &Path) {
    for file in std::fs::read_dir(from).expect("it is there").flatten() {
        let name = to.join(file.file_name());
        if file.path().is_dir() {
            std::fs::create_dir_all(&name).expect("can be made");
            copy(&file.path(), &name);
        } else {
            std::fs::copy(file.path(), name).expect("there is room");
        }
    }
}

impl Phone {
    pub fn new(seed: u64, time: &True, has_running: bool) -> Phone {
        let started = AtomicI64::new(MORNING - 3_600_000);
        let device = Arc::new(Device {
            time: time.clone(),
            off: AtomicI64::new(0),
            start: AtomicU64::new(1),
            started,
            has_running,
            chance: AtomicU64::new(seed),
            secret: Mutex::default(),
            head: Mutex::default(),
        });
        let mut phone = Phone {
            device,
            time: time.clone(),
            folder: folder(),
            field: None,
            person: EntryId::NONE,
            came: BTreeMap::new(),
            entries: Vec::new(),
            aside: Vec::new(),
            kept: None,
            written: 0,
            forgotten: false,
            loose: None,
        };
        phone.open();
        phone
    }

    fn open(&mut self) {
        let folder = self.folder.path().to_string_lossy().into_owned();
        self.field = Some(Field::open(folder, self.device.clone()).expect("it opens"));
        self.look();
    }

    pub fn field(&self) -> &Field {
        self.field.as_ref().expect("it is open")
    }

    pub fn id(&self) -> DeviceId {
        let secret = self.device.load_secret().expect("memory gives it").expect("one was made");
        DeviceKey::from_secret(&secret).expect("32 bytes").device()
    }

    /// Reads its journal; what came and is not in it is kept aside.
    pub fn look(&mut self) {
        self.entries = self.field().entries().expect("it reads");
        let now = self.time.load(Ordering::Relaxed);
        for e in &self.entries {
            self.came.entry(e.id).or_insert_with(|| (e.clone(), now));
        }
        let here: std::collections::BTreeSet<EntryId> = self.entries.iter().map(|e| e.id).collect();
        self.aside = self.came.values().filter(|(e, _)| !here.contains(&e.id)).map(|(e, _)| e.clone()).collect();
    }

    /// The same, where nothing came but this.
    fn look_for(&mut self, kept: EntryId) {
        let before = self.entries.len();
        self.entries = self.field().entries().expect("it reads");
        match self.entries.iter().rfind(|e| e.id == kept) {
            Some(e) if self.entries.len() == before + 1 => {
                self.came.insert(kept, (e.clone(), self.time.load(Ordering::Relaxed)));
            }
            _ => self.look(),
        }
    }

    pub fn keep(&mut self, by: EntryId, job: Option<EntryId>, fact: Fact) -> Result<EntryId, String> {
        if self.loose.is_some() {
            return self.sign(by, job, fact);
        }
        let kept = self.field().keep(by, job, fact).map_err(|why| why.to_string())?;
        self.written += 1;
        self.look_for(kept);
        Ok(kept)
    }

    /// An entry that no gate has seen. Of what others wrote it says nothing.
    fn sign(&mut self, by: EntryId, job: Option<EntryId>, fact: Fact) -> Result<EntryId, String> {
        let key = self.loose.as_ref().ok_or("it asks a gate")?;
        let own: Vec<&Entry> = self.entries.iter().filter(|e| e.body.device == key.device()).collect();
        let (wall, running) = (self.device.now_ms(), self.device.running());
        let last = self.entries.iter().map(|e| e.body.clock).max().unwrap_or_default();
        let body = Body {
            version: VERSION,
            device: key.device(),
            seq: own.len() as u64 + 1,
            clock: Clock::resume(last).tick(wall),
            wall,
            zone: 60,
            running,
            prev: own.last().map_or(EntryId::NONE, |e| e.id),
            after: own.iter().rfind(|e| e.job() == job).filter(|_| job.is_some()).map(|e| e.id),
            site: job.and_then(|job| self.entries.iter().find(|e| e.id == job)).and_then(|e| e.body.site),
            job,
            by: Some(by),
            signed_on: None,
            practice: false,
            seen: Vec::new(),
            fact,
        };
        let entry = Entry::seal(body, key, &|count| self.device.random(count)).map_err(|e| e.to_string())?;
        let id = entry.id;
        self.came.insert(id, (entry.clone(), self.time.load(Ordering::Relaxed)));
        self.entries.push(entry);
        Ok(id)
    }

    /// What it hears comes in chains, as an office hands it on.
    pub fn hear(&mut self, mut entries: Vec<Entry>) {
        entries.sort_by_key(|e| (e.body.device, e.body.seq));
        let now = self.time.load(Ordering::Relaxed);
        for e in &entries {
            self.came.entry(e.id).or_insert_with(|| (e.clone(), now));
        }
        if self.loose.is_some() {
            self.entries.extend(entries);
            self.entries.sort_by_key(Entry::order);
            self.entries.dedup_by_key(|e| e.id);
            return;
        }
        self.field().take_in(entries).expect("it takes them or keeps them aside");
        self.look();
        // "What peers and the office hold of its own chain."
        let me = self.id();
        self.forgotten |= self.aside.iter().any(|e| e.body.device == me);
    }

    pub fn wall(&self) -> i64 {
        self.device.now_ms()
    }

    pub fn set_clock(&self, off: i64) {
        self.device.off.store(off, Ordering::Relaxed);
    }

    pub fn restart_app(&mut self) {
        self.field = None;
        self.open();
    }

    /// The device itself goes off and on.
    pub fn restart(&mut self) {
        self.field = None;
        self.device.start.fetch_add(1, Ordering::Relaxed);
        self.device.started.store(self.time.load(Ordering::Relaxed) - 20_000, Ordering::Relaxed);
        self.open();
    }

    /// Somebody copies the folder.
    pub fn copy(&mut self) {
        self.field = None;
        let to = folder();
        copy(self.folder.path(), to.path());
        self.kept = Some(Kept { folder: to, came: self.came.clone(), written: self.written });
        self.open();
    }

    /// The copy is put back. What was written since is not here any more.
    /// `knows`: the end of its chain is still known outside the folder; else it takes another phone to tell.
    pub fn put_back(&mut self, knows: bool) -> bool {
        let Some(kept) = self.kept.take() else { return false };
        self.field = None;
        if knows {
            self.forgotten |= kept.written < self.written;
        } else {
            *self.device.head.lock().unwrap() = None;
        }
        (self.folder, self.came) = (kept.folder, kept.came);
        self.open();
        true
    }

    /// The one tap by which somebody goes on under a new key.
    pub fn go_on(&mut self) -> Result<(), String> {
        let before = self.id();
        self.field().act(None, "go /".into(), Vec::new());
        play(self.field(), "tap Go on under a new key", &Props { photo: demo::PHOTO, wait: &|_| {} })?;
        if self.id() == before {
            return Err(format!("no new key: {:?}", self.field().screen().notice.map(|n| n.text)));
        }
        // A copy from before has another key than the phone now.
        (self.forgotten, self.kept) = (false, None);
        self.look();
        Ok(())
    }

    pub fn with_moment<T>(&self, ask: impl FnOnce(&Moment) -> T) -> T {
        let now = self.time.load(Ordering::Relaxed);
        let since = |id: EntryId| self.came.get(&id).map_or(0, |(_, at)| now - at);
        let (device, wall, running) = (self.id(), self.device.now_ms(), self.device.running());
        ask(&Moment { device, wall, running, forgotten: self.forgotten, since: &since })
    }
}
