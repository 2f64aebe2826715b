//! A journal that was put back from a copy, a copied phone, clocks that contradict: said, treated as live, and gone on from.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicI64, Ordering};
use std::sync::{Arc, Mutex};

use stillbar_core::Field;
use stillbar_core::journal::{DeviceId, Entry, EntryId, Fact};
use stillbar_core::screens::as_text;
use stillbar_core::store::DATABASE;
use stillbar_core::sync::{Call, HeardAnswer, OfficeLink};
use stillbar_core::wire::{Carried, WireEntry};

use crate::desk::*;

const FORGOT: &str = "This phone has forgotten what it wrote: treat as live";
const TITLE: &str = "Replace the outgoing breaker of washer 4";
const DAY: i64 = 24 * 3_600_000;
pub const JOINED: &str = include_str!("../../journeys/tomas-joins.journey");

/// A phone whose folder can be put back as it was.
pub struct Phone {
    pub folder: tempfile::TempDir,
    pub device: Arc<Device>,
    field: Option<Arc<Field>>,
}

impl Phone {
    pub fn of(device: Arc<Device>) -> Phone {
        let folder = tempfile::tempdir().unwrap();
        let field = Some(device.open(folder.path()).unwrap());
        Phone { folder, device, field }
    }
    pub fn begun(scripts: &[&str]) -> Phone {
        let (folder, device, field) = begun(scripts);
        Phone { folder, device, field: Some(field) }
    }
    /// Somebody else's phone that knows the job.
    pub fn beside(other: &Phone, seed: u64, person: &str) -> Phone {
        let phone = Phone::of(Device::new(seed));
        phone.device.now.store(other.device.now.load(Ordering::Relaxed), Ordering::Relaxed);
        phone.hear(other);
        phone.play(&format!("tap Sign on\ntap {person}\ntap {TITLE}"));
        phone
    }
    pub fn field(&self) -> &Field {
        self.field.as_ref().unwrap()
    }
    pub fn play(&self, script: &str) {
        self.device.play(self.field(), script);
    }
    pub fn entries(&self) -> Vec<Entry> {
        let mut all = self.field().entries().unwrap();
        all.sort_by_key(|e| (e.body.device, e.body.seq));
        all
    }
    pub fn hear(&self, other: &Phone) {
        self.field().take_in(other.entries()).unwrap();
    }
    pub fn at(&self, route: &str) -> String {
        self.field().act(None, format!("go {route}"), vec![]);
        as_text(&self.field().screen())
    }
    pub fn job(&self) -> EntryId {
        self.entries().iter().find(|e| matches!(e.body.fact, Fact::JobOpened { .. })).unwrap().id
    }
    pub fn at_job(&self) -> String {
        self.at(&format!("/job/{}", self.job()))
    }
    pub fn person(&self, called: &str) -> EntryId {
        let named = |e: &&Entry| matches!(&e.body.fact, Fact::PersonNoted { name, .. } if name == called);
        self.entries().iter().find(named).unwrap().id
    }
    pub fn proved(&self) -> bool {
        self.field().proved(self.job())
    }
    /// The newest device that this phone wrote as.
    pub fn key(&self) -> DeviceId {
        let begun = self.field().entries().unwrap();
        begun.iter().rev().find(|e| matches!(e.body.fact, Fact::DeviceBegan { .. })).unwrap().body.device
    }
    fn database(&self) -> PathBuf {
        self.folder.path().join(DATABASE)
    }
    fn restart(&mut self) {
        self.field = None;
        self.field = Some(self.device.open(self.folder.path()).unwrap());
    }
    /// A copy of the journal as it is now.
    pub fn copy(&self) -> Vec<u8> {
        self.field().suspend();
        let copy = fs::read(self.database()).unwrap();
        self.field().resume().unwrap();
        copy
    }
    /// The copy is put back, and the app starts.
    pub fn put_back(&mut self, copy: &[u8]) {
        self.field = None;
        write(&self.database(), copy);
        self.restart();
    }
    fn goes_on(&self) {
        self.at("/");
        self.play("tap Go on under a new key\nsee goes on under a new key\nunseen has forgotten");
    }
    /// Everything that proves dead is done; whether it stands is another matter.
    fn proves_again(&self) {
        self.at_job();
        let done = &PROVE[..PROVE.rfind("see [Proved dead]").unwrap()];
        self.play(&format!("tap Next: Covers off: treat as live\n{done}"));
    }
    fn refused(&self, fact: Fact) -> String {
        self.field().keep(self.person("Mara Lind"), Some(self.job()), fact).unwrap_err().to_string()
    }
    fn shows_lock(&self, label: &str) -> bool {
        self.field().known_locks().iter().any(|l| l.label == label)
    }
}

fn write(database: &Path, copy: &[u8]) {
    for end in ["-wal", "-shm"] {
        let _ = fs::remove_file(format!("{}{end}", database.display()));
    }
    fs::write(database, copy).unwrap();
}

/// Tomas fits a lock on the phone that he has in hand.
pub fn fit(label: &str) -> String {
    format!(
        "tap Isolate Q4 feeder switch\nfill What is written on the lock = {label}\nchoose How it is locked = Padlock on a hasp\ntap Save lock, fitted by \
         Tomas Brandt\n"
    )
}

/// The same on a phone that Mara has in hand.
fn fit_for_him(label: &str) -> String {
    fit(label).replacen("\nfill", "\ntap Enter a lock that Tomas Brandt fitted\nfill", 1)
}

fn cover() -> Fact {
    Fact::CoverOff { what: "Front plate".into() }
}

/// Nobody else holds what was forgotten: the head kept outside tells, every job says so, nothing is signed, and one tap goes on.
#[test]
fn put_back_with_nobody_beside() {
    let mut phone = Phone::begun(&[PEOPLE, PLAN, ISOLATE]);
    let copy = phone.copy();
    phone.play(PROVE);
    assert!(phone.proved());
    let old = phone.key();
    phone.put_back(&copy);
    let before = phone.entries();
    for _ in 0..2 {
        assert!(phone.at("/").contains(FORGOT) && phone.at("/locks").contains(FORGOT));
        let shown = phone.at_job();
        assert!(shown.contains(&format!("[Treat as live] {FORGOT}")), "{shown}");
        assert!(phone.refused(cover()).contains("Go on under a new key"));
        assert_eq!(phone.entries(), before, "nothing is signed with the old key");
        // It stays so through the background and a restart.
        phone.field().suspend();
        phone.field().resume().unwrap();
        assert!(phone.at("/").contains(FORGOT));
        phone.restart();
    }
    phone.goes_on();
    let began = phone.entries().into_iter().find(|e| e.body.device == phone.key()).unwrap();
    assert!(
        matches!(began.body.fact, Fact::DeviceBegan { after: Some(after), .. } if after == old && began.body.seq == 1)
    );
    phone.proves_again();
    phone.play("see [Proved dead]");
    phone.restart();
    assert!(phone.proved());
}

/// What stood in the copy does not stand any more, not under the new key either: what ended it may be what was forgotten.
#[test]
fn no_proof_of_the_copy_stands() {
    let mut phone = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let copy = phone.copy();
    assert!(phone.proved());
    phone.play("tap The job\ntap Locks and keys\ntap Mara Lind on Q4 feeder switch: ML 7\ntap Take my lock off");
    phone.put_back(&copy);
    assert!(!phone.proved());
    phone.goes_on();
    assert!(!phone.proved(), "{}", phone.at_job());
    assert!(phone.at_job().contains("[Treat as live]"));
    // The same while the app was only in the background.
    let mut phone = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let copy = phone.copy();
    phone.play(BEGIN);
    phone.field().suspend();
    write(&phone.database(), &copy);
    phone.field().resume().unwrap();
    assert!(phone.at("/").contains(FORGOT) && !phone.proved());
    phone.restart();
    assert!(phone.at("/").contains(FORGOT));
}

/// A phone beside holds what was forgotten: it comes back as history, with the head kept outside or without it.
#[test]
fn what_a_phone_beside_holds_comes_back() {
    for head in [true, false] {
        let mut one = Phone::begun(&[PEOPLE, PLAN, ISOLATE]);
        let copy = one.copy();
        one.play(JOINED);
        let whole = one.entries();
        let other = Phone::beside(&one, 2, "Tomas Brandt");
        if !head {
            one.device.loses_head();
        }
        one.put_back(&copy);
        assert_eq!(one.at("/").contains(FORGOT), head);
        // What others write is heard all the same.
        other.play(&fit("TB 1"));
        one.hear(&other);
        assert!(one.at_job().contains(FORGOT));
        assert!(whole.iter().all(|e| one.entries().contains(e)), "what was forgotten is back");
        assert!(one.shows_lock("TB 1"));
        assert!(one.refused(cover()).contains("Go on under a new key"));
        one.goes_on();
        assert_eq!(one.field().take_in(other.entries()).unwrap().new, 0);
        other.hear(&one);
        assert_eq!(one.entries(), other.entries());
    }
}

/// Two phones with one key: each notices when it hears of the other, and what does not fit is put aside and counts.
#[test]
fn a_copied_phone() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, JOINED]);
    let copy = one.copy();
    let device = one.device.copied(77);
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join(DATABASE), copy).unwrap();
    let field = Some(device.open(folder.path()).unwrap());
    let twin = Phone { folder, device, field };
    assert!(!twin.at("/").contains(FORGOT), "nothing tells yet");
    one.play("tap The job\ntap Shift change");
    let number = one.entries().len();
    twin.at_job();
    twin.play(&fit_for_him("TB 1"));
    one.at_job();
    one.play(&fit_for_him("TB 2"));
    assert_eq!((one.entries().len(), twin.entries().len()), (number + 1, number + 1));
    // The second one hears of the new key of the first as well.
    for (phone, beside, theirs, new) in [(&one, &twin, "TB 1", 0), (&twin, &one, "TB 2", 1)] {
        let taken = phone.field().take_in(beside.entries()).unwrap();
        assert_eq!((taken.new, taken.aside), (new, 1));
        assert!(phone.at("/").contains(FORGOT));
        assert!(phone.shows_lock(theirs));
        let shown = phone.at(&format!("/job/{}/locks", phone.job()));
        assert!(shown.contains(theirs) && shown.contains("from an entry put aside"), "{shown}");
        phone.goes_on();
    }
    assert_ne!(one.key(), twin.key());
}

/// A phone two days ahead shows its locks: they are listed on the job without any office, count as on, and are answered at the spot.
#[test]
fn two_days_ahead() {
    let mut one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, JOINED]);
    let other = Phone::beside(&one, 2, "Tomas Brandt");
    other.device.set_clock(2 * DAY);
    other.play(&fit("TB 1"));
    let taken = one.field().take_in(other.entries()).unwrap();
    assert_eq!(taken.aside, 1);
    assert!(one.shows_lock("TB 1"));
    assert!(one.at("/locks").contains("lock TB 1, on Q4 feeder switch"), "{}", one.at("/locks"));
    let shown = one.at_job();
    assert!(shown.contains("1 entry put aside") && shown.contains("1 to look at"), "{shown}");
    one.play("tap 1 entry put aside\nsee Lock TB 1 of Tomas Brandt on Q4 feeder switch\nsee its clock is more than a day ahead");
    // Tomas has no lock that this phone believes in; he leaves, so that nothing but the entry is in the way.
    one.at_job();
    one.play("tap People on the job\ntap Tomas Brandt leaves the job");
    one.at_job();
    one.play("tap Next: Covers off: treat as live");
    let proof = PROVE.find("tap Next: Prove the indicator").unwrap();
    one.play(&PROVE[..proof]);
    one.play("see Next: Look at the spot, entries are put aside");
    // Who proves all the same proves nothing.
    one.at(&format!("/job/{}/step/prove-before", one.job()));
    one.play(&PROVE[PROVE.find("choose Proved on").unwrap()..PROVE.rfind("see [Proved dead]").unwrap()]);
    assert!(!one.proved());
    let shown = one.at_job();
    assert!(shown.contains("An entry about this job is put aside"), "{shown}");
    // Who is there looks, says so, and proves again.
    one.play(
        "tap 1 entry put aside\ntap Lock TB 1 of Tomas Brandt on Q4 feeder switch\nfill How it is at the spot = ...\ntap Save: I looked at the \
         spot\nsee Give the reason\nfill How it is at the spot = No lock of Tomas on Q4; he says it is on Q5\ntap Save: I looked at the \
         spot\nsee looked at",
    );
    assert!(!one.shows_lock("TB 1"));
    let shown = one.at(&format!("/job/{}/locks", one.job()));
    assert!(shown.contains("In entries put aside, looked at"), "{shown}");
    assert!(!one.proved(), "whoever proved did not know of it");
    one.at_job();
    one.play("tap Something changed\nfill Which neutral, and where = N of way 3\ntap Save: neutral disconnected");
    one.at_job();
    one.play("tap Next: Prove the indicator");
    one.play(&PROVE[PROVE.find("choose Proved on").unwrap()..]);
    assert!(one.proved(), "{}", one.at_job());
    // When the clocks contradict no longer it comes in by itself.
    one.device.pass(2 * DAY);
    let before = one.entries().len();
    one.restart();
    assert_eq!(one.entries().len(), before + 1);
    assert!(one.shows_lock("TB 1") && !one.at_job().contains("put aside"));
}

/// A point with such a lock is not closed, by whichever way it is asked.
#[test]
fn a_lock_put_aside_keeps_its_point_open() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, JOINED]);
    let other = Phone::beside(&one, 2, "Tomas Brandt");
    other.device.set_clock(2 * DAY);
    other.play(&fit("TB 1"));
    one.at_job();
    one.play(
        "tap People on the job\ntap Tomas Brandt leaves the job\ntap The job\ntap Next: Covers off: treat as live",
    );
    one.play(PROVE);
    one.play(WORK);
    one.hear(&other);
    assert!(!one.proved());
    // Two took part: what they had is counted back.
    let restore = RESTORE.replace("tap Save: Back to automatic\n", "tap Save: Back to automatic\ntap All are back\n");
    let closing = restore.find("tap Q4 feeder switch is closed").unwrap();
    one.play(&restore[..closing]);
    // The screen leads to the entry, and whoever closes all the same is refused.
    one.play(
        "see Stays open: lock TB 1 of Tomas Brandt is on it, from an entry put aside\nunseen Q4 feeder switch is closed",
    );
    let named = |e: &&Entry| matches!(&e.body.fact, Fact::PointAdded { label, .. } if label == "Q4 feeder switch");
    let point = one.entries().iter().find(named).unwrap().id;
    let why = one.refused(Fact::PointClosed { point, beside: None });
    assert!(why.contains("stays open: lock TB 1 of Tomas Brandt is on it"), "{why}");
    one.play(
        "tap Look at the entry put aside\ntap Lock TB 1 of Tomas Brandt\nfill How it is at the spot = No lock of Tomas on Q4, he was \
         asked\ntap Save: I looked at the spot\ntap Next: Switch the isolators back on",
    );
    one.play(&restore[closing..]);
}

/// The new key is on disk before it signs: ended at any moment between, the phone has its old state or goes on with a key of its own.
#[test]
fn ended_between() {
    let mut phone = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let copy = phone.copy();
    phone.play(BEGIN);
    phone.put_back(&copy);
    let (old, before) = (phone.key(), phone.entries());
    let forgotten = phone.copy();
    // The place for keys takes nothing: nothing is signed, and the tap is done again by the next start.
    phone.device.refuse_secrets(true);
    phone.at("/");
    phone.play("tap Go on under a new key\nsee The place for keys is closed");
    assert!(phone.at("/").contains(FORGOT) && phone.refused(cover()).contains("forgotten"));
    assert_eq!(phone.entries(), before);
    phone.device.refuse_secrets(false);
    phone.restart();
    assert_ne!(phone.key(), old);
    assert!(!phone.at("/").contains(FORGOT) && !phone.proved(), "{}", phone.at_job());
    // The key is stored and has signed nothing.
    let new = phone.key();
    let last = before.iter().map(|e| e.body.clock).max().unwrap();
    phone.field = None;
    write(&phone.database(), &forgotten);
    {
        let db = rusqlite::Connection::open(phone.database()).unwrap();
        for (note, text) in [
            ("not-before", format!("{} {}", last.0, last.1)),
            ("old-key", old.to_string()),
            ("new-key", new.to_string()),
        ] {
            db.execute("INSERT INTO local VALUES (?1, ?2)", [note, &text]).unwrap();
        }
    }
    phone.restart();
    let own: Vec<Entry> = phone.entries().into_iter().filter(|e| e.body.device == new).collect();
    assert!(
        matches!(&own[..], [e] if matches!(e.body.fact, Fact::DeviceBegan { after: Some(after), .. } if after == old))
    );
    assert!(!phone.at("/").contains(FORGOT) && !phone.proved());
    phone.at_job();
    phone.play("tap Something changed\nfill Which neutral, and where = N of way 3\ntap Save: neutral disconnected");
    phone.at_job();
    phone.play("tap Next: Prove the indicator");
    phone.play(&PROVE[PROVE.find("choose Proved on").unwrap()..]);
    assert!(phone.proved(), "{}", phone.at_job());
}

/// The journal is gone and the key is not: no number is given twice.
#[test]
fn an_empty_folder_under_an_old_key() {
    let mut phone = Phone::begun(&[PEOPLE]);
    let old = phone.key();
    phone.field = None;
    phone.folder = tempfile::tempdir().unwrap();
    phone.restart();
    assert_ne!(phone.key(), old);
    assert!(matches!(phone.entries()[0].body.fact, Fact::DeviceBegan { after: Some(after), .. } if after == old));
}

/// An office of a few answers: it refuses what is pushed, holds more of the phone's chain than the phone, and has a clock.
pub struct Desk {
    pub pages: Mutex<Vec<Entry>>,
    pub refuses: bool,
    pub now: AtomicI64,
    pub own: Option<(EntryId, DeviceId, u64)>,
    pub asked: Mutex<Vec<String>>,
}

impl OfficeLink for Desk {
    fn call(&self, call: &Call) -> Result<HeardAnswer, String> {
        self.asked.lock().unwrap().push(format!("{} {}", call.method, call.path));
        let of = |text: String| Ok(HeardAnswer { status: 200, headers: vec![], body: text.into_bytes() });
        let none = "0".repeat(64);
        match (call.method, call.path.split('?').next().unwrap()) {
            ("GET", "/capabilities") => of(format!(
                r#"{{"exchange":1,"entries-per-push":200,"photo-bytes":1000,"now-ms":{}}}"#,
                self.now.load(Ordering::Relaxed)
            )),
            ("POST", "/entries") if self.refuses => of(format!(
                r#"{{"answers":[{{"id":"{none}","answer":"refused","reason":"another-entry-has-this-number"}}],"last":{{"seq":9,"id":"{none}"}}}}"#
            )),
            ("POST", "/entries") => of(format!(
                r#"{{"answers":[{{"id":"{none}","answer":"duplicate"}}],"last":{{"seq":1,"id":"{none}"}}}}"#
            )),
            ("GET", "/entries") => {
                let entries: Vec<String> = self.pages.lock().unwrap().iter().map(wire).collect();
                of(format!(r#"{{"entries":[{}],"next":"1","more":false}}"#, entries.join(",")))
            }
            ("GET", "/digest") => of(match self.own {
                Some((site, device, last)) => format!(
                    r#"{{"sites":[{{"site":"{site}","devices":[{{"device":"{device}","count":{last},"last-seq":{last},"hash":"{none}"}}]}}]}}"#
                ),
                None => r#"{"sites":[]}"#.into(),
            }),
            ("GET", "/wanted") => of(r#"{"wanted":[]}"#.into()),
            other => Err(format!("{other:?}")),
        }
    }
}

fn wire(entry: &Entry) -> String {
    let wire: WireEntry = Carried::of(entry);
    format!(r#"{{"body":"{}","sig":"{}"}}"#, wire.body, wire.sig)
}

pub fn desk(phone: &Phone) -> Desk {
    let now = AtomicI64::new(phone.device.now.load(Ordering::Relaxed));
    Desk { pages: Mutex::default(), refuses: false, now, own: None, asked: Mutex::default() }
}

/// The office refuses what this phone sends, because its chain has two ends: what others wrote is heard all the same, and it is said.
#[test]
fn a_refused_push_ends_no_hearing() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, JOINED]);
    let other = Phone::beside(&one, 2, "Tomas Brandt");
    other.play(&fit("TB 1"));
    let office = Arc::new(Desk { pages: Mutex::new(other.entries()), refuses: true, ..desk(&one) });
    let done = one.field().exchange_over(office.clone(), "t");
    assert!(done.unwrap_err().says().contains("another entry has this number"));
    assert!(one.shows_lock("TB 1"), "the pull goes on");
    assert!(one.at_job().contains(FORGOT));
    // Its own entries are asked for as well from now on.
    let _ = one.field().exchange_over(office.clone(), "t");
    assert!(office.asked.lock().unwrap().iter().any(|call| call.contains("own=1")));
    one.goes_on();
}

/// The office holds more of this phone's chain than the phone.
#[test]
fn the_office_holds_more() {
    let one = Phone::begun(&[PEOPLE]);
    let (device, last) = (one.key(), one.entries().len() as u64);
    for more in [0, 1] {
        let office = Desk { own: Some((EntryId::NONE, device, last + more)), ..desk(&one) };
        let _ = one.field().exchange_over(Arc::new(office), "t");
        assert_eq!(one.at("/").contains(FORGOT), more == 1);
    }
}

/// A second phone whose clock is ahead does not make a wait shorter: it counts from when the opening is known there.
#[test]
fn a_second_phone_ahead_waits_as_long() {
    let plan = PLAN.replacen(
        "fill Where you looked = Feeders of DB4 and the nameplates of the washers\ntap No stored energy found",
        "fill Or what you found = Drive of washer 4\nfill Where its terminals are = X5 plus and minus\nfill Waiting time on its label, in minutes = \
         15\ntap Stored energy found",
        1,
    );
    let one = Phone::begun(&[PEOPLE, &plan, ISOLATE]);
    let other = Phone::of(Device::new(2));
    other.device.now.store(one.device.now.load(Ordering::Relaxed) + 20 * 60_000, Ordering::Relaxed);
    other.hear(&one);
    let why = other.refused(cover());
    assert!(why.contains("wait"), "{why}");
    other.device.pass(14 * 60_000);
    assert!(other.refused(cover()).contains("wait"));
    other.device.pass(2 * 60_000);
    other.field().keep(other.person("Mara Lind"), Some(other.job()), cover()).unwrap();
}
