//! What was written when version 1 of the entry was new: bytes that every later version has to read as they were meant.
//!
//! `samples/facts-1.json` has one entry of each kind that can be recorded. A new kind is put in by hand as `{"fact": …}` and signed with
//! `STILLBAR_FREEZE=1`; an entry that has its bytes is never changed.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::Value;
use stillbar_core::journal::{Body, DeviceId, DeviceKey, Entry, EntryId, Fact, Hlc, Running, Seen, SignedOn, VERSION};
use stillbar_core::tag::TagId;

const FACTS: &str = "tests/samples/facts-1.json";
const SOURCE: &str = include_str!("../../journal/src/fact.rs");

fn kept() -> Vec<Value> {
    serde_json::from_str(&std::fs::read_to_string(FACTS).unwrap()).unwrap()
}

/// Signs what has no bytes yet, with every key of the envelope in use.
fn freeze(kept: &mut [Value]) {
    let key = DeviceKey::from_secret(&[5; 32]).unwrap();
    for (at, one) in kept.iter_mut().enumerate().filter(|(_, one)| one.get("body").is_none()) {
        let fact = one["fact"]
            .to_string()
            .replace("\"TAG\"", &format!("\"{}\"", TagId::from_random([at as u8; TagId::RANDOM_BYTES])));
        one["fact"] = serde_json::from_str(&fact).unwrap();
        let body = Body {
            version: VERSION,
            device: key.device(),
            seq: at as u64 + 1,
            clock: Hlc(1_795_000_000_000 + at as i64, 3),
            wall: 1_795_000_000_000,
            zone: -210,
            prev: EntryId([31; 32]),
            after: Some(EntryId([32; 32])),
            running: Some(Running { start: 7, ms: 90_000 }),
            site: Some(EntryId([33; 32])),
            job: Some(EntryId([34; 32])),
            by: Some(EntryId([35; 32])),
            signed_on: Some(SignedOn::Pin),
            practice: at % 2 == 1,
            seen: vec![Seen(DeviceId([36; 32]), 4, EntryId([37; 32]))],
            fact: serde_json::from_value(one["fact"].clone()).unwrap_or_else(|e| panic!("{}: {e}", one["fact"])),
        };
        let entry = Entry::seal(body, &key, &|count| vec![9; count as usize]).unwrap();
        one["body"] = STANDARD.encode(&entry.bytes).into();
        one["sig"] = STANDARD.encode(entry.signature).into();
    }
    std::fs::write(FACTS, serde_json::to_string_pretty(kept).unwrap() + "\n").unwrap();
}

#[test]
fn an_entry_of_every_kind_of_version_1_reads_as_it_was_meant() {
    let mut kept = kept();
    if std::env::var_os("STILLBAR_FREEZE").is_some() {
        freeze(&mut kept);
    }
    for (at, one) in kept.iter().enumerate() {
        let bytes = |key: &str| STANDARD.decode(one[key].as_str().expect("signed")).unwrap();
        let entry = Entry::open(bytes("body"), bytes("sig").try_into().unwrap()).unwrap();
        let body = &entry.body;
        assert_eq!(serde_json::to_value(&body.fact).unwrap(), one["fact"], "{at}");
        assert_eq!((entry.newer, body.seq, body.clock.1, body.zone), (None, at as u64 + 1, 3, -210));
        assert_eq!((body.practice, body.signed_on, body.seen.len()), (at % 2 == 1, Some(SignedOn::Pin), 1));
        assert_eq!(body.running, Some(Running { start: 7, ms: 90_000 }));
        let ids = [Some(body.prev), body.after, body.site, body.job, body.by];
        assert_eq!(ids, [31, 32, 33, 34, 35].map(|n| Some(EntryId([n; 32]))));
    }
    // Every kind there is, as its definition tells.
    let list = &SOURCE[SOURCE.find("pub enum Fact {").unwrap()..];
    let list = &list[..list.find("\n}\n").unwrap()];
    let variants = list.lines().filter_map(|line| line.strip_prefix("    ")?.split_once([' ', '{']));
    let named = |name: &&str| name.starts_with(char::is_uppercase) && *name != "Newer";
    let kebab = |name: &str| {
        let mut out = String::new();
        for c in name.chars() {
            if c.is_uppercase() && !out.is_empty() {
                out.push('-');
            }
            out.extend(c.to_lowercase());
        }
        out
    };
    let mut all: Vec<String> = variants.map(|(name, _)| name).filter(named).map(kebab).collect();
    let mut have: Vec<String> =
        kept.iter().map(|one| serde_json::from_value::<Fact>(one["fact"].clone()).unwrap().kind()).collect();
    all.sort();
    have.sort();
    have.dedup();
    assert_eq!(have, all);
}
