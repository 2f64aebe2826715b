//! What a newer version writes: kept, passed on, shown as such, and nothing stands proved beside it. The newer version is played by hands that
//! write CBOR values and know none of our structs.

use std::sync::Arc;

use ciborium::Value;
use stillbar_core::Field;
use stillbar_core::journal::{DeviceKey, Entry, EntryId, Fact, Newer, WITHHELD, cbor};
use stillbar_core::screens::as_text;
use stillbar_core::store::{DATABASE, Store, rescue};

use crate::desk::*;

const ME: [u8; 32] = [77; 32];

fn text(text: &str) -> Value {
    Value::Text(text.into())
}

fn map(pairs: &[(&str, Value)]) -> Value {
    Value::Map(pairs.iter().map(|(key, value)| (text(key), value.clone())).collect())
}

fn id(id: EntryId) -> Value {
    Value::Bytes(id.0.to_vec())
}

/// The keys that every version has, and a fact.
fn envelope(fact: Value) -> Vec<(&'static str, Value)> {
    let device = DeviceKey::from_secret(&ME).unwrap().device();
    vec![
        ("v", 1.into()),
        ("device", Value::Bytes(device.0.to_vec())),
        ("seq", 1.into()),
        ("clock", Value::Array(vec![5.into(), 0.into()])),
        ("wall", 5.into()),
        ("zone", 60.into()),
        ("prev", Value::Bytes(vec![0; 32])),
        ("site", Value::Null),
        ("job", Value::Null),
        ("by", Value::Null),
        ("fact", fact),
    ]
}

fn with(mut keys: Vec<(&'static str, Value)>, key: &'static str, value: Value) -> Vec<(&'static str, Value)> {
    keys.retain(|(k, _)| *k != key);
    keys.push((key, value));
    keys
}

/// Signed; what stands behind the body is `openings`.
fn wired(keys: &[(&str, Value)], openings: &[u8]) -> (Vec<u8>, [u8; 64]) {
    let mut bytes = cbor::encode(&map(keys)).unwrap();
    let signature = DeviceKey::from_secret(&ME).unwrap().sign(&bytes);
    bytes.extend(openings);
    (bytes, signature)
}

fn opened(keys: &[(&str, Value)]) -> Entry {
    let (bytes, signature) = wired(keys, &[]);
    let entry = Entry::open(bytes.clone(), signature).unwrap();
    assert_eq!(entry.bytes, bytes, "what is kept and passed on is what came");
    entry
}

fn cover(more: &[(&str, Value)]) -> Value {
    map(&[("cover-off", map(&[&[("what", text("Door of DB6"))], more].concat()))])
}

#[test]
fn what_is_known_is_read_and_the_rest_is_told() {
    let plain = opened(&envelope(cover(&[])));
    assert_eq!(plain.newer, None);
    let field = opened(&envelope(cover(&[("torque", 12.into())])));
    let key = opened(&with(envelope(cover(&[])), "weather", text("rain")));
    let version = opened(&with(envelope(cover(&[])), "v", 2.into()));
    let hand = opened(&with(envelope(cover(&[])), "signed_on", text("palm-vein")));
    for (entry, what) in [(&field, "a field"), (&key, "a key"), (&version, "a version"), (&hand, "a way to sign on")] {
        assert_eq!(entry.newer, Some(Newer::Beside), "{what}");
        assert_eq!(entry.body.fact, plain.body.fact, "{what}");
    }
    assert_eq!(hand.body.signed_on, None);
    let kind = opened(&envelope(map(&[("arc-flash-looked-at", map(&[("at", text("DB6"))]))])));
    let value = opened(&envelope(map(&[(
        "source-answered",
        map(&[("kind", text("fusion")), ("found", Value::Null), ("looked", text("cellar"))]),
    )])));
    let shape = opened(&envelope(map(&[("cover-off", text("a text where a map was"))])));
    for (entry, kind) in [(&kind, "arc-flash-looked-at"), (&value, "source-answered"), (&shape, "cover-off")] {
        assert_eq!((entry.newer, entry.body.fact.kind().as_str()), (Some(Newer::Fact), kind));
    }
    // A new version may name entries in ways of its own.
    let named = EntryId([9; 32]);
    let refers = opened(&envelope(map(&[("linked", map(&[("to", id(named))]))])));
    assert!(refers.refers().contains(&named));
}

/// Whatever is in it, bytes are an entry only in the one encoding, with the keys that all versions have, and with the signature.
#[test]
fn newer_is_no_excuse() {
    let good = envelope(cover(&[("torque", 12.into())]));
    let (bytes, signature) = wired(&good, &[]);
    for i in 0..bytes.len() * 8 {
        let mut bytes = bytes.clone();
        bytes[i / 8] ^= 1 << (i % 8);
        assert!(Entry::open(bytes, signature).is_err(), "bit {i}");
    }
    let refused = |bytes: Vec<u8>, what: &str| {
        let signature = DeviceKey::from_secret(&ME).unwrap().sign(&bytes);
        assert!(Entry::open(bytes, signature).is_err(), "{what}");
    };
    for key in ["v", "device", "seq", "clock", "wall", "zone", "prev", "fact"] {
        let mut keys = good.clone();
        keys.retain(|(k, _)| *k != key);
        refused(cbor::encode(&map(&keys)).unwrap(), key);
        refused(cbor::encode(&map(&with(good.clone(), key, text("another type")))).unwrap(), key);
    }
    let mut unsorted = Vec::new();
    ciborium::into_writer(&map(&good), &mut unsorted).unwrap();
    refused(unsorted, "keys in another order");
    let mut float = Vec::new();
    let mut sorted: Vec<_> = envelope(cover(&[("torque", Value::Float(1.5))]));
    sorted.sort_by_key(|(key, _)| (key.len(), *key));
    ciborium::into_writer(&map(&sorted), &mut float).unwrap();
    refused(float, "a float");
    let two = map(&[("cover-off", map(&[])), ("cover-on", map(&[]))]);
    refused(cbor::encode(&map(&envelope(two))).unwrap(), "two facts in one");
}

/// Personal fields of a kind that is not known here can be withheld all the same.
#[test]
fn names_in_a_kind_that_is_not_known_are_withheld() {
    use sha2::{Digest, Sha256};
    let salt = [3_u8; 16];
    let commitment = Sha256::digest([&salt[..], b"Ines Faro"].concat()).to_vec();
    let fact = map(&[("medic-called", map(&[("at", text("Gate 2"))]))]);
    let keys = with(envelope(fact), "personal", map(&[("who", Value::Bytes(commitment.clone()))]));
    let opening = |name: &str| {
        cbor::encode(&map(&[("who", Value::Array(vec![Value::Bytes(salt.to_vec()), text(name)]))])).unwrap()
    };
    let (bytes, signature) = wired(&keys, &opening("Ines Faro"));
    let whole = Entry::open(bytes, signature).unwrap();
    assert!(whole.opens() && whole.names() && whole.newer == Some(Newer::Fact));
    let Fact::Newer { payload, .. } = &whole.body.fact else { panic!("not known") };
    assert!(payload.windows(9).any(|w| w == b"Ines Faro"));
    let without = whole.withheld().unwrap();
    assert_eq!((without.id, without.signature), (whole.id, whole.signature));
    assert!(!without.names() && !without.bytes.windows(4).any(|w| w == b"Ines"));
    let Fact::Newer { payload, .. } = &without.body.fact else { panic!("not known") };
    assert!(payload.windows(WITHHELD.len()).any(|w| w == WITHHELD.as_bytes()));
    let (bytes, signature) = wired(&keys, &opening("Tomas Brandt"));
    assert!(Entry::open(bytes, signature).is_err(), "another name");
    // A text in the fact and a commitment beside it: which of them was signed?
    let both = map(&[("medic-called", map(&[("who", text("Ines Faro"))]))]);
    let keys = with(envelope(both), "personal", map(&[("who", Value::Bytes(commitment))]));
    let (bytes, signature) = wired(&keys, &[]);
    assert!(Entry::open(bytes, signature).is_err());
}

/// A job that is proved dead, and what another phone wrote about it.
fn proved() -> (tempfile::TempDir, Arc<Device>, Arc<Field>, Entry) {
    let (folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    device.play(&field, "tap The job\nsee Proved dead");
    let job = job(&field);
    (folder, device, field, job)
}

/// The entry that opened the job.
fn job(field: &Field) -> Entry {
    field.entries().unwrap().into_iter().find(|e| matches!(e.body.fact, Fact::JobOpened { .. })).unwrap()
}

/// An entry of the newer phone, after everything else.
fn written(field: &Field, seq: u64, prev: EntryId, site: Option<EntryId>, job: Option<EntryId>, fact: Value) -> Entry {
    let latest = field.entries().unwrap().iter().map(|e| e.body.clock.0).max().unwrap();
    let of = |id: Option<EntryId>| id.map_or(Value::Null, self::id);
    let mut keys = envelope(fact);
    for (key, value) in [
        ("seq", seq.into()),
        ("clock", Value::Array(vec![(latest + 1).into(), 0.into()])),
        ("wall", (latest + 1).into()),
        ("prev", id(prev)),
        ("site", of(site)),
        ("job", of(job)),
    ] {
        keys = with(keys, key, value);
    }
    opened(&keys)
}

fn unknown() -> Value {
    map(&[("bus-coupler-closed", map(&[("at", text("Panel 3"))]))])
}

#[test]
fn nothing_stands_proved_beside_what_cannot_be_read() {
    let barrier = |more: &[(&str, Value)]| {
        let known = [("what", text("Barrier")), ("at", text("Door"))];
        map(&[("barrier-placed", map(&[&known[..], more].concat()))])
    };
    // Site, job, what; whether the proof of the job stands on.
    let cases: [(bool, bool, Value, bool); 6] = [
        (true, true, barrier(&[]), true),
        (true, true, barrier(&[("height", 2.into())]), false),
        (true, true, unknown(), false),
        (true, false, unknown(), false),
        (false, false, unknown(), false),
        (false, false, map(&[("site-noted", map(&[("name", text("Mill Road")), ("postcode", text("X1"))]))]), true),
    ];
    for (at_site, of_job, fact, stands) in cases {
        let (folder, device, field, job) = proved();
        let site = job.body.site.filter(|_| at_site);
        let entry = written(&field, 1, EntryId::NONE, site, of_job.then_some(job.id), fact.clone());
        field.take_in(vec![entry.clone()]).unwrap();
        let told = as_text(&field.screen());
        assert_eq!(told.contains("Proved dead"), stands, "{fact:?}\n{told}");
        assert_eq!(told.contains("newer version"), !stands, "{fact:?}\n{told}");
        // Also after the app was closed and opened, and the entry goes on to the next phone as it came.
        drop(field);
        let field = device.open(folder.path()).unwrap();
        let told = as_text(&field.screen());
        assert_eq!(told.contains("Proved dead"), stands, "{fact:?}\n{told}");
        assert!(field.entries().unwrap().contains(&entry));
    }
}

#[test]
fn what_cannot_be_read_is_listed_and_stands_in_the_way_of_no_lock() {
    let (folder, device, field, job) = proved();
    let owner = job.body.by.unwrap();
    let point = field.entries().unwrap().into_iter().find(|e| matches!(e.body.fact, Fact::PointAdded { .. })).unwrap();
    let lock = map(&[(
        "lock-fitted",
        map(&[
            ("on", map(&[("point", id(point.id))])),
            ("owner", id(owner)),
            ("label", text("ZZ 9")),
            ("key", text("owner")),
            ("means", text("padlock")),
            ("colour", text("orange")),
        ]),
    )]);
    let first = written(&field, 1, EntryId::NONE, job.body.site, Some(job.id), unknown());
    let second = written(&field, 2, first.id, job.body.site, Some(job.id), lock);
    field.take_in(vec![first.clone(), second.clone()]).unwrap();
    field.act(None, "go /locks".into(), vec![]);
    let told = as_text(&field.screen());
    assert!(told.contains("ZZ 9"), "a lock of a newer version is on:\n{told}");
    field.act(None, format!("go /job/{}/time-line", job.id), vec![]);
    let told = as_text(&field.screen());
    assert!(told.contains("bus-coupler-closed") && told.contains("update this app"), "{told}");
    // A ruined file gives back what is signed, whatever it says.
    drop(field);
    let path = folder.path().join(DATABASE);
    let all = Store::open(folder.path()).unwrap().all_entries().unwrap();
    let mut bytes = std::fs::read(&path).unwrap();
    bytes[..4096].fill(0);
    std::fs::write(&path, &bytes).unwrap();
    assert!(device.open(folder.path()).is_err());
    assert_eq!(rescue(folder.path()).unwrap().entries, all.len());
    let kept = Store::open(folder.path()).unwrap().all_entries().unwrap();
    assert!(kept.contains(&first) && kept.contains(&second));
}

/// A job of a system that is not known here, with a point of a kind that is not, and a lock by a means that is not: the lock is on, here too.
#[test]
fn a_lock_of_a_job_that_cannot_be_read_in_full_is_on_and_keeps_its_point_open() {
    let closing = RESTORE.find("tap Q4 feeder switch is closed").unwrap();
    let (folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, &RESTORE[..closing]]);
    let job = job(&field);
    let added = |e: &Entry| matches!(&e.body.fact, Fact::PointAdded { label, .. } if label == "Q4 feeder switch");
    let point = field.entries().unwrap().into_iter().find(added).unwrap();
    let Fact::PointAdded { label, at, .. } = &point.body.fact else { panic!("a point") };
    let (site, owner) = (job.body.site, job.body.by.unwrap());
    let theirs = map(&[(
        "job-opened",
        map(&[
            ("title", text("Retrofit of bay 9")),
            ("place", text("Cellar")),
            ("equipment", text("DB9")),
            ("scope", text("Busbar")),
            ("system", text("five-phase")),
            ("earthing", text("TN-S")),
            ("order", text("least-dangerous-first")),
            ("nominal-millivolts", 230_000.into()),
        ]),
    )]);
    let opened = written(&field, 1, EntryId::NONE, site, None, theirs);
    let switch = map(&[(
        "point-added",
        map(&[
            ("label", text(label)),
            ("at", text(at)),
            ("kind", text("bus-section-switch")),
            ("lockable", true.into()),
            ("poles", Value::Array(vec![text("L1")])),
            ("cuts", Value::Null),
        ]),
    )]);
    let switch = written(&field, 2, opened.id, site, Some(opened.id), switch);
    let lock = |more: &[(&str, Value)]| {
        let known = [("label", text("ZZ 9")), ("key", text("owner")), ("means", text("welded-plate"))];
        map(&[("lock-fitted", map(&[&known[..], more].concat()))])
    };
    let on = [("on", map(&[("point", id(switch.id))])), ("owner", id(owner))];
    let locked = written(&field, 3, switch.id, site, Some(opened.id), lock(&on));
    assert_eq!([&opened, &switch, &locked].map(|e| e.newer), [Some(Newer::Beside); 3]);
    assert_eq!(opened.job(), Some(opened.id));
    // For whose it is nothing can stand in.
    let nobodys = written(&field, 4, locked.id, site, Some(opened.id), lock(&on[..1]));
    assert_eq!(nobodys.newer, Some(Newer::Fact));

    field.take_in(vec![opened.clone(), switch, locked]).unwrap();
    drop(field);
    let field = device.open(folder.path()).unwrap();
    field.act(None, "go /locks".into(), vec![]);
    let told = as_text(&field.screen());
    assert!(told.contains("ZZ 9") && told.contains("Retrofit of bay 9"), "{told}");
    field.act(None, format!("go /job/{}", opened.id), vec![]);
    let told = as_text(&field.screen());
    assert!(told.contains("reat as live") && told.contains("newer version"), "{told}");
    let refused =
        field.keep(owner, Some(job.id), Fact::PointClosed { point: point.id, beside: None }).unwrap_err().to_string();
    assert!(refused.contains("ZZ 9"), "{refused}");
}

/// A program that reads more in the same entries than the one before works out all that follows from them when it opens the folder.
#[test]
fn another_program_works_the_tables_out_again() {
    let (folder, device, field, job) = proved();
    drop(field);
    let store = Store::open(folder.path()).unwrap();
    let (tables, across) = (store.tables().unwrap(), store.entries_across().unwrap());
    drop(store);
    let path = folder.path().join(DATABASE);
    let db = rusqlite::Connection::open(&path).unwrap();
    // As one leaves it that could read neither the job's opening nor its locks.
    db.execute_batch("DELETE FROM job; DELETE FROM lock; DELETE FROM tag; UPDATE entry SET shared = 0").unwrap();
    db.execute("UPDATE entry SET job = NULL WHERE id = ?1", [job.id.0]).unwrap();
    // The same program leaves it alone.
    assert_ne!(Store::open(folder.path()).unwrap().tables().unwrap(), tables);
    db.execute("UPDATE local SET value = '0.2' WHERE name = 'program'", []).unwrap();
    drop(db);
    let store = Store::open(folder.path()).unwrap();
    assert_eq!((store.tables().unwrap(), store.entries_across().unwrap()), (tables, across));
    drop(store);
    let field = device.open(folder.path()).unwrap();
    device.play(&field, "see Proved dead");
}

/// Practice is told from work by every version: it takes no lock off and proves nothing on a real board.
#[test]
fn practice_says_nothing_of_a_real_board() {
    let (_folder, _device, field, job) = proved();
    let entries = field.entries().unwrap();
    let fitted = |e: &Entry| match e.body.fact {
        Fact::LockFitted { owner, .. } => Some((e.id, owner)),
        _ => None,
    };
    let (lock, owner) = entries.iter().find_map(fitted).unwrap();
    let off = map(&[("lock-removed", map(&[("lock", id(lock))]))]);
    // Who removes it knows of it.
    let last = entries.iter().filter(|e| e.job() == Some(job.id)).max_by_key(|e| e.body.seq).unwrap();
    let seen = vec![Value::Bytes(last.body.device.0.to_vec()), last.body.seq.into(), id(last.id)];
    let latest: Value = (last.body.clock.0 + 1).into();
    let mut keys = envelope(off);
    for (key, value) in [
        ("clock", Value::Array(vec![latest.clone(), 0.into()])),
        ("wall", latest),
        ("site", job.body.site.map_or(Value::Null, id)),
        ("job", id(job.id)),
        ("by", id(owner)),
        ("seen", Value::Array(vec![Value::Array(seen)])),
    ] {
        keys = with(keys, key, value);
    }
    let real = opened(&keys);
    let practised = opened(&with(keys, "practice", true.into()));
    assert_eq!((practised.newer, practised.body.practice), (None, true));
    let fold = |more: &Entry| {
        let all: Vec<Entry> = entries.iter().filter(|e| e.job() == Some(job.id)).chain([more]).cloned().collect();
        let job = stillbar_core::job::Job::fold(&all).unwrap();
        job.locks_on().filter(|l| l.stamp.id == lock).count()
    };
    assert_eq!((fold(&practised), fold(&real)), (1, 0));
}
