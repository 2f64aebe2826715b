//! A phone of the simulation: the core's own, with what must never be lost on it.

use std::collections::BTreeSet;
use std::sync::Arc;

use stillbar_core::journal::{DeviceKey, Entry, EntryId, Fact};
use stillbar_core::screens::as_text;
use stillbar_core::store::Store;
use stillbar_core::sync::Done;
use stillbar_core::sync::rules::ExchangeTrouble;
use stillbar_core::{Field, Platform};
use tempfile::TempDir;

use super::Chance;
use super::link::{Air, Reach};
use crate::desk::*;

/// See the module.
pub struct Phone {
    pub folder: TempDir,
    pub device: Arc<Device>,
    pub field: Option<Arc<Field>>,
    pub token: String,
    /// Its journal as it was looked at last, and how many entries came since the look before.
    seen: Vec<Entry>,
    pub new: usize,
}

/// What a person may do: whatever is refused on the way is refused.
pub fn deed(chance: &mut Chance, number: usize, toms: bool) -> String {
    let fit = |point: &str| {
        // Each of the two fits a lock of their own.
        let whose = if toms { "TB" } else { "MB" };
        let owner = if toms { "Tomas Brandt" } else { "Mara Lind" };
        format!(
            "tap Isolate {point}\nfill What is written on the lock = {whose} {number}\nchoose How it is locked = Padlock on a hasp\n\
             tap Save lock, fitted by {owner}"
        )
    };
    let release = |lock: &str| format!("tap Locks and keys\ntap {lock}\ntap Take my lock off");
    match chance.of(16) {
        0 => fit("Q4 feeder switch"),
        1 => fit("Q9 changeover switch"),
        2 => release("ML 7"),
        3 => release("ML 8"),
        4 => "tap Locks and keys\ntap ML 7\nchoose To whom = Tomas Brandt\ntap Offer lock and key".into(),
        5 => "tap Locks and keys\ntap ML 7\nsign Tomas Brandt signs for lock and key = T\ntap Tomas Brandt takes lock and key".into(),
        6 => "tap Something changed\nfill What it is = Heater\nfill Where it comes in = X9\nchoose What kind of source = Control or \
              auxiliary supply\ntap Save the source that was found"
            .into(),
        7 => format!("tap All jobs\ntap In hand\nfill Name = Person {number}\ntap Add this person"),
        8 => format!(
            "tap Barriers and danger signs\nfill Barrier or sign = Sign {number}\nfill Where it stands or hangs = Stair\ntap Save this \
             barrier or sign"
        ),
        9 => "tap Time line\ntap Point of isolation Q4 feeder switch\nfill What was wrong with it = The wrong bay\ntap Withdraw this entry".into(),
        10 => format!("tap Next\n{PROVE}"),
        11 => format!("tap Next\n{INDICATION}"),
        12 => "tap Next\ntap Next".into(),
        13 => format!("{}\ntap The job\n{}", fit("Q4 feeder switch"), fit("Q9 changeover switch")),
        14 => WORK.into(),
        _ => "tap People on the job\ntap Tomas Brandt leaves the job".into(),
    }
}

impl Phone {
    pub fn new(number: usize, folder: TempDir) -> Phone {
        Phone::over(Device::new(number as u64 + 11), folder, String::new())
    }

    /// One that was in use before.
    pub fn again(seed: u64, folder: TempDir, secret: &[u8], token: &str, now: i64) -> Phone {
        let device = Device::new(seed);
        device.store_secret(secret.to_vec()).expect("memory takes it");
        device.now.store(now, std::sync::atomic::Ordering::Relaxed);
        Phone::over(device, folder, token.to_owned())
    }

    fn over(device: Arc<Device>, folder: TempDir, token: String) -> Phone {
        let field = Some(device.open(folder.path()).expect("it opens"));
        Phone { folder, device, field, token, seen: Vec::new(), new: 0 }
    }

    pub fn field(&self) -> &Field {
        self.field.as_ref().expect("it is open")
    }

    pub fn key(&self) -> DeviceKey {
        let secret = self.device.load_secret().expect("memory gives it").expect("one was made");
        DeviceKey::from_secret(&secret).expect("32 bytes")
    }

    pub fn goes(&self, to: &str) {
        self.field().act(None, format!("go {to}"), vec![]);
    }

    /// Plays as far as the app goes along; why it did not, if it did not.
    pub fn try_play(&self, script: &str) -> Option<String> {
        self.device.try_play(self.field(), script).err()
    }

    pub fn restart(&mut self) {
        self.field = None;
        self.field = Some(self.device.open(self.folder.path()).expect("it opens again"));
    }

    pub fn exchange(&mut self, air: &Arc<Air>) -> Result<Done, ExchangeTrouble> {
        let done = self.field().exchange_over(Arc::new(Reach(air.clone())), &self.token);
        self.look();
        done
    }

    pub fn take_in(&mut self, mut entries: Vec<Entry>) {
        entries.sort_by_key(|e| (e.body.device, e.body.seq));
        self.field().take_in(entries).expect("it takes them or keeps them aside");
        self.look();
    }

    /// What it had before its last `late` entries came, as far as anybody can tell from outside.
    pub fn earlier(&self, late: usize) -> Vec<Entry> {
        self.seen[..self.seen.len().saturating_sub(late)].to_vec()
    }

    /// The promises that must hold at any moment on any phone.
    pub fn look(&mut self) {
        let now = self.field().entries().expect("it reads");
        let ids: BTreeSet<EntryId> = now.iter().map(|e| e.id).collect();
        for before in &self.seen {
            assert!(ids.contains(&before.id), "entry {} of {} is lost", before.body.seq, before.body.device);
        }
        self.new = now.len() - self.seen.len();
        let device = self.key().device();
        let (mut prev, mut number) = (EntryId::NONE, 0);
        let own = now.iter().filter(|e| e.body.device == device);
        for entry in own {
            number += 1;
            assert_eq!((entry.body.seq, entry.body.prev), (number, prev), "its own chain");
            prev = entry.id;
        }
        self.seen = now;
        self.no_lock_is_off_without_a_release();
    }

    pub fn nothing_new(&self) -> bool {
        self.new == 0
    }

    fn no_lock_is_off_without_a_release(&self) {
        let back = self.field().screen().route;
        self.goes("/locks");
        let text = as_text(&self.field().screen());
        self.goes(&back);
        let off: BTreeSet<EntryId> = self
            .seen
            .iter()
            .filter_map(|e| match &e.body.fact {
                Fact::LockRemoved { lock, .. } | Fact::LockForced { lock, .. } => Some(*lock),
                _ => None,
            })
            .collect();
        for entry in &self.seen {
            if let Fact::LockFitted { label, .. } = &entry.body.fact
                && !off.contains(&entry.id)
            {
                assert!(
                    text.contains(&format!("lock {label}, on")),
                    "lock {label} has no release here and is not on:\n{text}"
                );
            }
        }
    }

    pub fn ids(&self) -> impl Iterator<Item = EntryId> {
        self.seen.iter().map(|e| e.id)
    }

    pub fn sites(&self) -> BTreeSet<EntryId> {
        self.seen.iter().filter_map(|e| e.body.site).collect()
    }

    /// Its own entries, in their order.
    pub fn chain(&self) -> Vec<EntryId> {
        let device = self.key().device();
        self.seen.iter().filter(|e| e.body.device == device).map(|e| e.id).collect()
    }

    /// The latest moment that it knows of.
    pub fn latest(&self) -> i64 {
        let told = self.seen.iter().map(|e| e.body.clock.0.max(e.body.wall)).max().unwrap_or_default();
        told.max(self.device.now_ms())
    }

    /// Its tables, which follow from its journal.
    pub fn tables(&mut self) -> String {
        self.field = None;
        let mut store = Store::open(self.folder.path()).expect("it opens");
        let tables = store.tables().expect("it reads");
        store.replay().expect("it can be worked out");
        assert_eq!(store.tables().expect("it reads"), tables, "the tables follow from the journal");
        drop(store);
        self.field = Some(self.device.open(self.folder.path()).expect("it opens"));
        tables
    }

    /// What it says of the job's standing.
    pub fn shows(&self, job: &str) -> String {
        self.goes(job);
        let text = as_text(&self.field().screen());
        text.lines().filter(|l| l.starts_with('[')).collect::<Vec<_>>().join("\n")
    }
}
