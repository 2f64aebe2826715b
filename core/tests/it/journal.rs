//! The journal against outside references.

use std::collections::BTreeMap;

use ciborium::Value;
use sha2::{Digest, Sha256};
use stillbar_core::journal::{Body, Clock, DeviceId, DeviceKey, Entry, EntryId, Fact, Hlc, Signed, WITHHELD, cbor};

fn hex(text: &str) -> Vec<u8> {
    (0..text.len()).step_by(2).map(|i| u8::from_str_radix(&text[i..i + 2], 16).unwrap()).collect()
}

/// RFC 8032 section 7.1, tests 1 to 3: secret key, public key, message, signature.
#[test]
fn ed25519_as_rfc_8032() {
    let vectors = [
        (
            "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
            "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
            "",
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
        ),
        (
            "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
            "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
            "72",
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
        ),
        (
            "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
            "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
            "af82",
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
        ),
    ];
    for (secret, public, message, signature) in vectors {
        let key = DeviceKey::from_secret(&hex(secret)).unwrap();
        assert_eq!(key.device().to_string(), public);
        let signed = key.sign(&hex(message));
        assert_eq!(signed.to_vec(), hex(signature));
        assert!(key.device().signed(&hex(message), &signed));
        let mut broken = signed;
        broken[7] ^= 1;
        assert!(!key.device().signed(&hex(message), &broken));
    }
}

/// RFC 8949 section 4.2.1: the order of keys in the RFC's own example, and shortest integers (appendix A).
#[test]
fn cbor_as_rfc_8949() {
    let int = |n: i64| Value::Integer(n.into());
    let text = |t: &str| Value::Text(t.into());
    let keys = [
        int(10),
        int(100),
        int(-1),
        text("z"),
        text("aa"),
        Value::Array(vec![int(100)]),
        Value::Array(vec![int(-1)]),
        Value::Bool(false),
    ];
    let shuffled = Value::Map([5, 3, 7, 0, 6, 2, 4, 1].map(|i: usize| (keys[i].clone(), int(0))).to_vec());
    assert_eq!(cbor::encode(&shuffled).unwrap(), hex("a80a001864002000617a006261610081186400812000f400"));
    for (number, bytes) in [
        (0, "00"),
        (23, "17"),
        (24, "1818"),
        (100, "1864"),
        (1000, "1903e8"),
        (1_000_000, "1a000f4240"),
        (1_000_000_000_000, "1b000000e8d4a51000"),
        (-1, "20"),
        (-1000, "3903e7"),
    ] {
        assert_eq!(cbor::encode(&number).unwrap(), hex(bytes));
        assert_eq!(cbor::decode::<i64>(&hex(bytes)).unwrap(), number);
    }
    // The same number in a longer spelling, indefinite length, trailing bytes, a float: refused.
    for other in ["1800", "190001", "9f01ff", "0000", "f93c00"] {
        assert!(cbor::decode::<Value>(&hex(other)).is_err(), "{other}");
    }
}

/// Kulkarni et al. 2014, figure 5: the send and receive rules, case by case.
#[test]
fn clock_as_the_paper() {
    let mut clock = Clock::resume(Hlc(10, 0));
    assert_eq!(clock.tick(11), Hlc(11, 0), "physical time is ahead: c restarts");
    assert_eq!(clock.tick(11), Hlc(11, 1), "same millisecond: c counts");
    assert_eq!(clock.tick(5), Hlc(11, 2), "physical time went back: l stays, c counts");
    assert_eq!(clock.receive(Hlc(11, 9), 3), Hlc(11, 10), "l equal to the message's: the larger c counts on");
    assert_eq!(clock.receive(Hlc(20, 4), 3), Hlc(20, 5), "the message is ahead: its c counts on");
    assert_eq!(clock.receive(Hlc(15, 7), 3), Hlc(20, 6), "we are ahead: our c counts on");
    assert_eq!(clock.receive(Hlc(21, 7), 30), Hlc(30, 0), "physical time is ahead of both: c restarts");
    assert_eq!(Clock::resume(Hlc(5, u32::MAX)).tick(5), Hlc(6, 0), "a full counter moves l on and never wraps");
}

fn entry(label: &str) -> Entry {
    let key = DeviceKey::from_secret(&[7; 32]).unwrap();
    let fact = Fact::DeviceBegan { label: label.into(), after: None };
    let body = Body {
        device: key.device(),
        seq: 1,
        clock: Hlc(5, 0),
        wall: 5,
        zone: 0,
        prev: EntryId::NONE,
        after: None,
        site: None,
        job: None,
        by: None,
        running: None,
        signed_on: None,
        seen: Vec::new(),
        fact,
    };
    Entry::seal(body, &key, &salt).unwrap()
}

#[test]
fn any_flipped_bit_is_found() {
    let good = entry("field");
    assert_eq!(Entry::open(good.bytes.clone(), good.signature).unwrap(), good);
    for i in 0..good.bytes.len() * 8 {
        let mut bytes = good.bytes.clone();
        bytes[i / 8] ^= 1 << (i % 8);
        assert!(Entry::open(bytes, good.signature).is_err(), "bit {i}");
    }
    for i in 0..512 {
        let mut signature = good.signature;
        signature[i / 8] ^= 1 << (i % 8);
        assert!(Entry::open(good.bytes.clone(), signature).is_err(), "bit {i} of the signature");
    }
}

#[test]
fn an_entry_is_bounded() {
    let long = entry("short").body;
    let fact = Fact::DeviceBegan { label: "x".repeat(40_000), after: None };
    let key = DeviceKey::from_secret(&[7; 32]).unwrap();
    assert!(Entry::seal(Body { fact, ..long }, &key, &salt).unwrap_err().to_string().contains("at most"));
    assert!(Entry::open(vec![0; 40_000], [0; 64]).is_err());
    assert!("zz".parse::<DeviceId>().is_err());
}

fn salt(count: u32) -> Vec<u8> {
    (0..count).map(|n| n as u8 ^ 0x5a).collect()
}

fn person(name: &str) -> Entry {
    let key = DeviceKey::from_secret(&[7; 32]).unwrap();
    let (qualification, telephone) = ("Electrician".into(), "555 0100".into());
    let fact = Fact::PersonNoted { name: name.into(), qualification, telephone, corrects: None };
    Entry::seal(Body { fact, ..entry("x").body }, &key, &salt).unwrap()
}

fn name_of(entry: &Entry) -> &str {
    let Fact::PersonNoted { name, .. } = &entry.body.fact else { panic!("a person") };
    name
}

/// The signed part holds SHA-256(salt || text) and not the text; what opens it can be taken away and nothing else.
#[test]
fn a_name_can_be_withheld_and_the_entry_holds() {
    let whole = person("Mara Lind");
    assert_eq!(Entry::open(whole.bytes.clone(), whole.signature).unwrap(), whole);
    assert_eq!(name_of(&whole), "Mara Lind");
    let hidden = |bytes: &[u8]| !bytes.windows(4).any(|w| w == b"Mara" || w == b"Elec" || w == b"555 ");
    assert!(hidden(whole.signed()) && !hidden(&whole.bytes));
    // FIPS 180-4 over salt and text, in the place of the text.
    let commitment = Sha256::digest([&salt(16), "Mara Lind".as_bytes()].concat());
    assert!(whole.signed().windows(32).any(|w| w == commitment.as_slice()));

    let without = whole.withheld().unwrap();
    assert_eq!((without.id, without.signature, name_of(&without)), (whole.id, whole.signature, WITHHELD));
    assert_eq!(Entry::open(without.bytes.clone(), without.signature).unwrap(), without);
    assert!(without.bytes == whole.signed() && whole.opens() && !without.opens());
    assert!(without.refers().is_empty(), "a commitment names no entry: {:?}", without.refers());

    // Another name's opening behind this body; the openings twice; an opening of nothing; an empty one.
    let other = person("Tomas Brandt");
    let opening = |e: &Entry| e.bytes[e.signed().len()..].to_vec();
    for (tail, what) in [
        (opening(&other), "another name"),
        ([opening(&whole), opening(&whole)].concat(), "twice"),
        (vec![0xa0], "no opening in it"),
        (vec![0xf6], "no map"),
        ([&opening(&whole)[..], &[0]].concat(), "more behind it"),
    ] {
        assert!(Entry::open([whole.signed(), &tail].concat(), whole.signature).is_err(), "{what}");
    }
    let plain = entry("field");
    assert!(Entry::open([plain.signed(), &opening(&whole)].concat(), plain.signature).is_err());
}

/// One opening of three may stay: a name without its telephone.
#[test]
fn openings_go_one_by_one() {
    let whole = person("Mara Lind");
    let mut openings: BTreeMap<String, Value> = ciborium::from_reader(&whole.bytes[whole.signed().len()..]).unwrap();
    openings.remove("telephone");
    let less = [whole.signed(), &cbor::encode(&openings).unwrap()].concat();
    let entry = Entry::open(less, whole.signature).unwrap();
    assert_eq!((entry.id, name_of(&entry)), (whole.id, "Mara Lind"));
    assert!(matches!(&entry.body.fact, Fact::PersonNoted { telephone, .. } if telephone == WITHHELD));
}

/// Body, openings and signature: wherever a bit turns, it is found.
#[test]
fn any_flipped_bit_is_found_behind_the_body_too() {
    let good = person("Mara Lind");
    for i in 0..good.bytes.len() * 8 {
        let mut bytes = good.bytes.clone();
        bytes[i / 8] ^= 1 << (i % 8);
        assert!(Entry::open(bytes, good.signature).is_err(), "bit {i}");
    }
    let cut = |n: usize| Entry::open(good.bytes[..n].to_vec(), good.signature);
    let whole: Vec<usize> = (0..good.bytes.len()).filter(|n| cut(*n).is_ok()).collect();
    assert_eq!(whole, [good.signed().len()], "no other beginning of an entry is an entry");
}

/// A name that is written plainly, as before there were commitments, still reads.
#[test]
fn an_entry_of_an_earlier_version_holds() {
    let key = DeviceKey::from_secret(&[7; 32]).unwrap();
    let whole = person("Mara Lind");
    let plain = cbor::encode(&whole.body).unwrap();
    let entry = Entry::open(plain.clone(), key.sign(&plain)).unwrap();
    assert_eq!((name_of(&entry), entry.opens()), ("Mara Lind", false));
}

#[test]
fn nothing_is_sealed_without_chance() {
    let key = DeviceKey::from_secret(&[7; 32]).unwrap();
    let none = Entry::seal(person("Mara Lind").body, &key, &|_| Vec::new());
    assert!(none.unwrap_err().to_string().contains("no random bytes"));
}
