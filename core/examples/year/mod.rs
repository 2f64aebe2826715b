//! A journal as a year of work leaves it, for benchmarks and the soak: the job of a story again and again, each entry signed anew, in one
//! chain, with the tables that follow. Made by the store, a transaction a job, because playing it would take an hour.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};

use ciborium::Value;
use stillbar_core::job::Job;
use stillbar_core::journal::{Body, Clock, DeviceKey, Entry, EntryId, Fact};
use stillbar_core::journey::{Props, play};
use stillbar_core::store::Store;
use stillbar_core::{Field, Platform, PlatformError, demo};

/// 2026-11-02 07:40 UTC: when a year ends.
const NOW: i64 = 1_793_605_200_000;
const DAY: i64 = 24 * 3_600_000;
/// Photos of a job: 10,000 in a year of 1,000 jobs (assumptions).
pub const PHOTOS: usize = 10;
/// The secret of every device here; nothing that it signs is kept.
const SECRET: [u8; 32] = [7; 32];

/// A device whose clock goes on a second whenever it is read.
pub struct Device {
    pub now: AtomicI64,
    chance: AtomicU64,
    secret: [u8; 32],
}

impl Device {
    pub fn new(number: u8) -> Arc<Device> {
        let mut secret = SECRET;
        secret[0] = secret[0].wrapping_add(number);
        Arc::new(Device { now: AtomicI64::new(NOW), chance: AtomicU64::new(u64::from(number)), secret })
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
        self.now.fetch_add(1000, Ordering::Relaxed)
    }
    fn offset_minutes(&self, _: i64) -> i32 {
        60
    }
    fn random(&self, count: u32) -> Vec<u8> {
        (0..count).map(|_| (self.chance.fetch_add(0x9E37_79B9_7F4A_7C15, Ordering::Relaxed) >> 40) as u8).collect()
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(Some(self.secret.to_vec()))
    }
    fn store_secret(&self, _: Vec<u8>) -> Result<(), PlatformError> {
        Ok(())
    }
}

/// Plays lines of a journey on a field.
pub fn act(field: &Field, script: &str) {
    play(field, script, &Props { photo: demo::PHOTO, wait: &|_| {} }).unwrap_or_else(|why| panic!("{why}"));
}

/// The story of a whole job.
const WHOLE_JOB: [&str; 8] = [
    include_str!("../../journeys/people.journey"),
    include_str!("../../journeys/plan.journey"),
    include_str!("../../journeys/add-instruments.journey"),
    include_str!("../../journeys/circuits.journey"),
    include_str!("../../journeys/isolate.journey"),
    include_str!("../../journeys/prove.journey"),
    include_str!("../../journeys/work.journey"),
    include_str!("../../journeys/restore.journey"),
];

/// The entries of one whole job: those of no job first.
fn whole_job() -> Vec<Entry> {
    let folder = tempfile::tempdir().expect("a folder");
    let field = Field::open(folder.path().to_string_lossy().into_owned(), Device::new(1)).expect("opens");
    act(&field, &WHOLE_JOB.concat());
    let mut entries = field.entries().expect("reads");
    entries.sort_by_key(|e| (e.job().is_some(), e.body.seq));
    entries
}

/// Writes a year into `folder`: `most` entries or a few less, the last job left with its locks on. `chain`: which of the devices.
pub fn write(folder: &Path, number: u8, most: usize) -> usize {
    let model = whole_job();
    let key = DeviceKey::from_secret(&Device::new(number).secret).expect("32 bytes");
    let mut writer = Writer {
        key,
        clock: Clock::default(),
        head: (0, EntryId::NONE),
        wall: NOW - 365 * DAY,
        names: BTreeMap::new(),
    };
    let mut store = Store::open(folder).expect("opens");
    let shared: Vec<Entry> = model.iter().filter(|e| e.job().is_none()).map(|e| writer.again(e)).collect();
    store.append(&shared, &[]).expect("there is room");
    let of_job: Vec<&Entry> = model.iter().filter(|e| e.job().is_some()).collect();
    let photo = of_job.iter().position(|e| matches!(e.body.fact, Fact::PhotoTaken { .. })).expect("a photo was taken");
    let a_job = of_job.len() + PHOTOS - 2;
    let jobs = most.saturating_sub(shared.len()) / a_job;
    for job in 0..jobs {
        writer.wall = writer.wall.max(NOW - 365 * DAY + 365 * DAY / jobs as i64 * job as i64);
        let mut entries = Vec::with_capacity(a_job);
        for (at, entry) in of_job.iter().enumerate() {
            // The last job stands with its locks on.
            if job + 1 == jobs && matches!(entry.body.fact, Fact::LockRemoved { .. }) {
                break;
            }
            entries.push(writer.again(entry));
            if at == photo {
                for more in 0..PHOTOS - 2 {
                    let mut taken = (*entry).clone();
                    if let Fact::PhotoTaken { sha256, .. } = &mut taken.body.fact {
                        *sha256 = format!("{:064x}", job * PHOTOS + more);
                        fs::write(folder.join("photos").join(&*sha256), b"a photo").expect("there is room");
                    }
                    entries.push(writer.again(&taken));
                }
            }
        }
        let folded = Job::fold(&entries).expect("it begins with its opening");
        store.append(&entries, &[&folded]).expect("there is room");
    }
    store.tidy();
    usize::try_from(writer.head.0).expect("not that many")
}

struct Writer {
    key: DeviceKey,
    clock: Clock,
    head: (u64, EntryId),
    wall: i64,
    /// The new id of what was signed anew.
    names: BTreeMap<[u8; 32], EntryId>,
}

impl Writer {
    /// The same fact at the end of this chain, with all that it names under their new ids.
    fn again(&mut self, entry: &Entry) -> Entry {
        self.wall += 20_000;
        let name = |id: EntryId| self.names.get(&id.0).copied().unwrap_or(id);
        let fact = Value::serialized(&entry.body.fact).expect("writes");
        let fact: Fact = renamed(fact, &self.names).deserialized().expect("reads");
        let body = Body {
            device: self.key.device(),
            seq: self.head.0 + 1,
            clock: self.clock.tick(self.wall),
            wall: self.wall,
            prev: self.head.1,
            site: entry.body.site.map(name),
            job: entry.body.job.map(name),
            by: entry.body.by.map(name),
            seen: Vec::new(),
            fact,
            ..entry.body.clone()
        };
        let sealed = Entry::seal(body, &self.key, &|count| vec![7; count as usize]).expect("fits");
        self.head = (sealed.body.seq, sealed.id);
        self.names.insert(entry.id.0, sealed.id);
        sealed
    }
}

fn renamed(value: Value, names: &BTreeMap<[u8; 32], EntryId>) -> Value {
    let inner = |v| renamed(v, names);
    match value {
        Value::Bytes(bytes) => {
            let new = <[u8; 32]>::try_from(bytes.as_slice()).ok().and_then(|id| names.get(&id)).map(|id| id.0.to_vec());
            Value::Bytes(new.unwrap_or(bytes))
        }
        Value::Array(items) => Value::Array(items.into_iter().map(inner).collect()),
        Value::Map(pairs) => Value::Map(pairs.into_iter().map(|(k, v)| (k, inner(v))).collect()),
        plain => plain,
    }
}
