//! The exchange: what is answered, what stands in which feed, and that nothing is lost.

use ciborium::Value as CborValue;
use serde_json::Value;
use stillbar_core::journal::{Entry, EntryId, Fact, Newer, cbor};

use crate::phone::{Phone, answers, entries};
use crate::rig::{NOW, Rig, each};

const HOUR: i64 = 3_600_000;

/// A phone with a person, a site of its own and a job, not sent yet.
fn begun(rig: &Rig, number: u8, site: &str) -> (Phone, EntryId, EntryId) {
    let mut phone = rig.phone(number, &[]);
    phone.person("Mara Lind");
    let site = phone.site(site);
    let job = phone.job(site, "Replace a breaker");
    (phone, site, job)
}

fn ids(entries: &[Entry]) -> Vec<EntryId> {
    entries.iter().map(|e| e.id).collect()
}

#[test]
fn an_entry_is_taken_once_however_often_it_comes() {
    each(|rig| {
        let (mut phone, site, job) = begun(rig, 1, "Hill Laundry");
        phone.told(site, job, "The foreman");
        assert_eq!(phone.push(rig, &phone.chain), ["accepted"; 4]);
        assert_eq!(phone.push(rig, &phone.chain), ["duplicate"; 4]);
        let said = phone.push_of(rig, None, &phone.chain[2..]).is(200).json();
        assert_eq!(said["last"]["seq"], 4);
        assert_eq!(said["last"]["id"], phone.chain[3].id.to_string());
        let got = phone.ask(rig, "GET", "/entries?own=1", &[], "").is(200).json();
        assert_eq!(entries(&got).len(), 4);
        assert!(phone.pull(rig, 500).is_empty(), "its own entries come only if asked for");
    });
}

#[test]
fn a_gap_is_refused_and_the_end_is_told() {
    each(|rig| {
        let (phone, ..) = begun(rig, 1, "Hill Laundry");
        assert_eq!(phone.push(rig, &phone.chain[..1]), ["accepted"]);
        let said = phone.push_of(rig, None, &phone.chain[2..]).is(200).json();
        assert_eq!(answers(&said), ["refused gap"]);
        assert_eq!(said["last"]["seq"], 1);
        assert_eq!(said["last"]["id"], phone.chain[0].id.to_string());
        // What came before a refusal is kept; what follows waits.
        let mixed = [phone.chain[1].clone(), phone.chain[0].clone(), phone.chain[2].clone()];
        assert_eq!(phone.push(rig, &mixed), ["accepted", "duplicate", "accepted"]);
    });
}

#[test]
fn a_second_entry_of_one_number_is_kept_and_refused() {
    each(|rig| {
        let (mut phone, site, job) = begun(rig, 1, "Hill Laundry");
        phone.push_all(rig);
        // The phone was put back from a copy: it goes on from its second entry in another way.
        let first_way = phone.chain.clone();
        phone.chain.truncate(2);
        let other = phone.job(site, "Another job");
        phone.told(site, other, "Somebody");
        let fork = phone.chain[2..].to_vec();
        assert_eq!(
            phone.push(rig, &fork),
            ["refused another-entry-has-this-number", "refused another-entry-has-this-number"],
        );
        // Both are kept, and nothing of the first way changed.
        let kept = rig.office.read(|tx| tx.rows("SELECT id FROM quarantine ORDER BY seq", &[])).expect("it reads");
        let kept: Vec<EntryId> = kept.iter().map(|row| row.id(0).expect("an id")).collect();
        assert_eq!(kept, ids(&fork));
        assert_eq!(phone.push(rig, &first_way), ["duplicate"; 3]);
        // The first way goes on, and asking again changes nothing.
        phone.chain = first_way;
        phone.told(site, job, "The foreman");
        assert_eq!(phone.push(rig, &phone.chain[3..]), ["accepted"]);
        assert_eq!(phone.push(rig, &fork).len(), 2);
        let again = rig.office.read(|tx| tx.rows("SELECT id FROM quarantine", &[])).expect("it reads");
        assert_eq!(again.len(), 2);
    });
}

#[test]
fn what_is_no_entry_is_refused_and_what_follows_waits() {
    each(|rig| {
        let (phone, ..) = begun(rig, 1, "Hill Laundry");
        let mut turned = phone.chain.clone();
        turned[1].bytes[40] ^= 1;
        assert_eq!(phone.push(rig, &turned), ["accepted", "refused not-an-entry", "refused after-a-refusal"]);
        let mut forged = phone.chain.clone();
        forged[1].signature[5] ^= 1;
        assert_eq!(phone.push(rig, &forged)[1], "refused not-an-entry");
        let other = rig.phone(2, &[]);
        assert_eq!(other.push(rig, &phone.chain[..1]), ["refused not-yours"]);
        assert_eq!(phone.push(rig, &phone.chain), ["duplicate", "accepted", "accepted"]);
    });
}

#[test]
fn two_phones_of_one_site_see_each_other_and_a_third_of_another_site_sees_nothing() {
    each(|rig| {
        let (mut a, site, job) = begun(rig, 1, "Hill Laundry");
        let point = a.point(site, job, "Q1");
        a.lock(site, job, point, "ML 7");
        a.push_all(rig);
        let (b_site, ..) = begun(rig, 3, "Mill");
        b_site.push_all(rig);
        let b = rig.phone(2, &[site]);
        let got = b.pull(rig, 500);
        // The person comes before the first entry that names them.
        let kinds: Vec<String> = got.iter().map(|e| e.body.fact.kind()).collect();
        assert_eq!(kinds, ["person-noted", "site-noted", "job-opened", "point-added", "lock-fitted"]);
        assert!(b_site.pull(rig, 500).is_empty());
        let got = b_site.ask(rig, "GET", "/entries?own=1", &[], "").is(200).json();
        assert!(entries(&got).iter().all(|e| e.body.device == b_site.id()));
        // Nothing of site A is in the sums either.
        let sums = b_site.ask(rig, "GET", "/digest", &[], "").is(200).text();
        assert!(!sums.contains(&site.to_string()) && !sums.contains(&a.id().to_string()), "{sums}");
    });
}

#[test]
fn pages_of_any_size_give_the_same() {
    each(|rig| {
        let (mut a, site, job) = begun(rig, 1, "Hill Laundry");
        for n in 0..40 {
            a.told(site, job, &format!("Person {n}"));
        }
        a.push_all(rig);
        let b = rig.phone(2, &[site]);
        let whole = ids(&b.pull(rig, 500));
        assert_eq!(whole.len(), 43);
        for limit in [1, 2, 7, 42, 43, 44] {
            assert_eq!(ids(&b.pull(rig, limit)), whole, "pages of {limit}");
        }
    });
}

#[test]
fn a_page_has_a_bounded_number_of_bytes_and_no_more_than_are_asked_for() {
    let rig = Rig::new(crate::rig::Backend::Sqlite);
    let (mut a, site, job) = begun(&rig, 1, "Hill Laundry");
    for _ in 0..60 {
        a.told(site, job, &"x".repeat(30_000));
    }
    for part in a.chain.chunks(30) {
        assert_eq!(a.push_of(&rig, None, part).is(200).json()["answers"].as_array().map(Vec::len), Some(part.len()));
    }
    let b = rig.phone(2, &[site]);
    let page = b.ask(&rig, "GET", "/entries", &[], "").is(200);
    assert!(page.bytes.len() < 2 * 1024 * 1024, "{} bytes", page.bytes.len());
    assert_eq!(page.json()["more"], true);
    assert_eq!(b.pull(&rig, 500).len(), 63);
}

#[test]
fn an_entry_from_the_future_is_kept_and_holds_its_device_back() {
    each(|rig| {
        let (mut phone, site, job) = begun(rig, 1, "Hill Laundry");
        phone.push_all(rig);
        phone.wall = NOW + 25 * HOUR;
        phone.told(site, job, "The foreman");
        phone.told(site, job, "The manager");
        assert_eq!(phone.push(rig, &phone.chain[3..]), ["aside from-the-future"; 2]);
        // The clock is put right; the hybrid clock of its entries stays ahead, so they are still aside.
        rig.wait(3 * HOUR);
        phone.told(site, job, "The owner");
        assert_eq!(phone.push(rig, &phone.chain[5..]), ["aside held-back"]);
        assert_eq!(
            phone.push(rig, &phone.chain[3..]),
            ["aside from-the-future", "aside from-the-future", "aside held-back"]
        );
        let b = rig.phone(2, &[site]);
        assert_eq!(b.pull(rig, 500).len(), 3, "none of it reaches another phone");
        let now = rig.now();
        let gone = rig.office.change(|tx| stillbar_office::exchange::release(tx, now, phone.id())).expect("released");
        assert_eq!(gone, (3, 0));
        assert_eq!(b.pull(rig, 500).len(), 6);
        phone.told(site, job, "The guard");
        assert_eq!(phone.push(rig, &phone.chain[6..]), ["accepted"]);
        assert_same_sums(rig, &b, &phone);
    });
}

/// The sums of a site are what the spec says, worked out here from the entries.
fn assert_same_sums(rig: &Rig, reader: &Phone, writer: &Phone) {
    use sha2::{Digest, Sha256};
    let sums = reader.ask(rig, "GET", "/digest", &[], "").is(200).json();
    let mine: Vec<Entry> = reader.pull(rig, 500).into_iter().filter(|e| e.body.device == writer.id()).collect();
    let mut mine = mine;
    mine.sort_by_key(|e| e.body.seq);
    let hash =
        mine.iter().fold([0u8; 32], |hash, e| Sha256::new().chain_update(hash).chain_update(e.id.0).finalize().into());
    let devices = sums["sites"][0]["devices"].as_array().expect("a list").clone();
    let found: Vec<&Value> = devices.iter().filter(|d| d["device"] == writer.id().to_string()).collect();
    assert_eq!(found.len(), 1, "{sums}");
    assert_eq!(found[0]["count"], mine.len());
    assert_eq!(found[0]["last-seq"], mine.last().map_or(0, |e| e.body.seq));
    assert_eq!(found[0]["hash"], EntryId(hash).to_string());
}

#[test]
fn a_withdrawn_phone_may_send_and_gets_nothing() {
    each(|rig| {
        let (mut phone, site, job) = begun(rig, 1, "Hill Laundry");
        phone.push_all(rig);
        rig.office.change(|tx| tx.run("UPDATE device SET withdrawn_ms = 1", &[])).expect("withdrawn");
        phone.told(site, job, "The foreman");
        assert_eq!(phone.push(rig, &phone.chain[2..]), ["duplicate", "aside device-withdrawn"]);
        assert_eq!(phone.ask(rig, "GET", "/entries", &[], "").is(403).json()["error"], "device-withdrawn");
        assert_eq!(phone.ask(rig, "GET", "/digest", &[], "").is(403).json()["error"], "device-withdrawn");
    });
}

#[test]
fn entries_of_a_foreign_site_are_aside_until_the_site_is_given() {
    each(|rig| {
        let (a, site, _) = begun(rig, 1, "Hill Laundry");
        a.push_all(rig);
        let mut b = rig.phone(2, &[]);
        b.person("Ida Holm");
        b.job(site, "A job on a site that nobody gave");
        assert_eq!(b.push(rig, &b.chain), ["accepted", "aside not-your-site"]);
        assert!(b.pull(rig, 500).is_empty());
        let now = rig.now();
        let release =
            |rig: &Rig| rig.office.change(|tx| stillbar_office::exchange::release(tx, now, b.id())).expect("released");
        assert_eq!(release(rig), (0, 1), "it stays while the site is not the phone's");
        let give = "INSERT INTO device_site (device, site) VALUES ($1, $2)";
        rig.office.change(|tx| tx.run(give, stillbar_office::params![b.id(), site])).expect("given");
        assert_eq!(release(rig), (1, 0));
        let kinds: Vec<String> = a.pull(rig, 500).iter().map(|e| e.body.fact.kind()).collect();
        assert_eq!(kinds, ["person-noted", "job-opened"], "who wrote it comes along");
    });
}

#[test]
fn a_person_who_comes_later_or_is_corrected_reaches_the_site() {
    each(|rig| {
        let (a, site, _) = begun(rig, 1, "Hill Laundry");
        a.push_all(rig);
        let mut c = rig.phone(3, &[site]);
        let stranger = c.person("Ola Berg");
        let mut b = rig.phone(2, &[site]);
        b.by = Some(stranger);
        b.job(site, "In the hand of somebody from another phone");
        b.push_all(rig);
        assert_eq!(a.pull(rig, 500).len(), 1, "the person is not here yet");
        c.push_all(rig);
        assert_eq!(a.pull(rig, 500).len(), 2);
        let fact = Fact::PersonNoted {
            name: "Ola Bergh".into(),
            qualification: String::new(),
            telephone: String::new(),
            corrects: Some(stranger),
        };
        c.write(None, None, fact);
        c.push_all(rig);
        assert_eq!(a.pull(rig, 500).len(), 3, "the correction follows");
    });
}

#[test]
fn one_phone_hands_on_what_another_wrote() {
    each(|rig| {
        let (a, site, job) = begun(rig, 1, "Hill Laundry");
        // B got all of A's chain phone to phone, and worked on A's job before A had signal.
        let mut b = rig.phone(2, &[]);
        b.person("Ida Holm");
        b.told(site, job, "The foreman");
        assert_eq!(b.push(rig, &b.chain), ["accepted", "aside not-your-site"]);
        let said = b.push_of(rig, Some(a.id()), &a.chain).is(200).json();
        assert_eq!(answers(&said), ["accepted"; 3]);
        let now = rig.now();
        let gone = rig.office.change(|tx| stillbar_office::exchange::release(tx, now, b.id())).expect("released");
        assert_eq!(gone, (1, 0), "who brought the site is on it");
        assert_eq!(a.push(rig, &a.chain), ["duplicate"; 3]);
        assert_eq!(a.pull(rig, 500).len(), 2);
        // A device that nobody enrolled: kept, and in no feed.
        let mut stranger = Phone::new(9);
        stranger.person("Nobody knows");
        let said = b.push_of(rig, Some(stranger.id()), &stranger.chain).is(200).json();
        assert_eq!(answers(&said), ["aside unknown-device"]);
    });
}

#[test]
fn a_code_serves_one_phone_and_a_token_is_void_when_it_is_renewed() {
    each(|rig| {
        let code = rig.code(&[]);
        let (mut a, mut b) = (Phone::new(1), Phone::new(2));
        a.enrol(rig, &code).is(201);
        assert_eq!(b.enrol(rig, &code).is(403).json()["error"], "code-not-valid");
        let first = a.token.clone();
        // The answer was lost: the same phone asks again.
        a.enrol(rig, &code).is(201);
        let old = format!("Bearer {first}");
        rig.ask("GET", "/digest", &[("authorization", &old)], "").is(401);
        a.ask(rig, "GET", "/digest", &[], "").is(200);
        // It came: the same call once more, by whoever overheard it, is worth nothing.
        a.person("Mara Lind");
        a.push_all(rig);
        let token = a.token.clone();
        a.enrol(rig, &code).is(403);
        assert_eq!(a.token, token);
        a.ask(rig, "GET", "/digest", &[], "").is(200);
        let late = rig.code(&[]);
        rig.wait(16 * 60_000);
        b.enrol(rig, &late).is(403);
        let kept = rig.office.read(|tx| tx.rows("SELECT token FROM device", &[])).expect("it reads");
        let plain = kept.iter().filter_map(|row| row.bytes(0).ok()).any(|t| t == a.token.as_bytes());
        assert!(!plain, "only hashes of tokens are kept");
    });
}

#[test]
fn gzip_is_taken_and_given_and_a_bomb_is_not() {
    use std::io::Write;
    let rig = Rig::new(crate::rig::Backend::Sqlite);
    let (mut a, site, job) = begun(&rig, 1, "Hill Laundry");
    for n in 0..50 {
        a.told(site, job, &format!("Person {n}"));
    }
    let pack = |bytes: &[u8]| {
        let mut packed = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::default());
        packed.write_all(bytes).expect("memory takes it");
        packed.finish().expect("memory takes it")
    };
    let list: Vec<Value> = a.chain.iter().map(crate::phone::wire).collect();
    let body = pack(serde_json::json!({ "entries": list }).to_string().as_bytes());
    let kind = [("content-type", "application/json"), ("content-encoding", "gzip")];
    let said = a.ask(&rig, "POST", "/entries", &kind, body).is(200);
    assert_eq!(answers(&said.json()), ["accepted"; 53]);
    let page = a.ask(&rig, "GET", "/entries?own=1", &[("accept-encoding", "br, gzip;q=0.8")], "").is(200);
    assert_eq!(page.header("content-encoding"), "gzip");
    let mut text = String::new();
    std::io::Read::read_to_string(&mut flate2::read::GzDecoder::new(page.bytes.as_slice()), &mut text).expect("gzip");
    assert_eq!(entries(&serde_json::from_str(&text).expect("JSON")).len(), 53);
    let bomb = pack(&vec![b' '; 64 << 20]);
    assert!(bomb.len() < 100_000);
    assert_eq!(a.ask(&rig, "POST", "/entries", &kind, bomb).is(413).json()["error"], "too-large");
    a.ask(&rig, "POST", "/entries", &kind, "no gzip at all").is(400);
}

/// Signed anew over a body that a newer version made of one of ours.
fn of_a_newer_version(
    phone: &Phone,
    entry: &Entry,
    prev: EntryId,
    change: impl Fn(&mut Vec<(CborValue, CborValue)>),
) -> Entry {
    let mut body: CborValue = ciborium::from_reader(entry.signed()).expect("CBOR");
    let keys = body.as_map_mut().expect("a map");
    for (key, value) in keys.iter_mut().filter(|(key, _)| key.as_text() == Some("prev")) {
        *value = CborValue::Bytes(prev.0.to_vec());
        assert!(key.is_text());
    }
    change(keys);
    let bytes = cbor::encode(&body).expect("it can be written");
    let signature = phone.key.sign(&bytes);
    Entry::open(bytes, signature).expect("an entry")
}

/// One entry with a field more, one of a kind that nobody here knows, and the plain lock after them: all are taken in, go on to the next phone
/// as they came, and the board shows the lock and that nothing stands proved.
#[test]
fn what_a_newer_phone_writes_is_taken_in_and_passed_on() {
    each(|rig| {
        let (mut phone, site, job) = begun(rig, 1, "Hill Laundry");
        phone.told(site, job, "Foreman");
        phone.told(site, job, "Porter");
        let point = phone.point(site, job, "Q4");
        phone.lock(site, job, point, "ML 7");
        let at = phone.chain.len() - 4;
        let before = phone.chain[at - 1].id;
        let more = of_a_newer_version(&phone, &phone.chain[at], before, |keys| {
            keys.push((CborValue::Text("weather".into()), CborValue::Text("rain".into())));
        });
        let unknown = of_a_newer_version(&phone, &phone.chain[at + 1], more.id, |keys| {
            let fact = keys.iter_mut().find(|(key, _)| key.as_text() == Some("fact")).expect("a fact");
            let kind = CborValue::Text("bus-coupler-closed".into());
            fact.1 = CborValue::Map(vec![(kind, CborValue::Map(Vec::new()))]);
            keys.retain(|(key, _)| key.as_text() != Some("personal"));
        });
        let plain = of_a_newer_version(&phone, &phone.chain[at + 2], unknown.id, |_| ());
        let lock = of_a_newer_version(&phone, &phone.chain[at + 3], plain.id, |keys| {
            // The point has another id, because what comes before it in the chain has.
            let fact = keys.iter_mut().find(|(key, _)| key.as_text() == Some("fact")).expect("a fact");
            fact.1 = renamed(&fact.1, phone.chain[at + 2].id, plain.id);
        });
        assert_eq!((more.newer, unknown.newer, lock.newer), (Some(Newer::Beside), Some(Newer::Fact), None));
        phone.chain.splice(at.., [more, unknown, plain, lock]);
        phone.push_all(rig);
        let second = rig.phone(2, &[site]);
        assert_eq!(second.pull(rig, 100), phone.chain, "as they came");
    });
}

fn renamed(value: &CborValue, from: EntryId, to: EntryId) -> CborValue {
    match value {
        CborValue::Bytes(id) if *id == from.0 => CborValue::Bytes(to.0.to_vec()),
        CborValue::Map(pairs) => CborValue::Map(pairs.iter().map(|(k, v)| (k.clone(), renamed(v, from, to))).collect()),
        other => other.clone(),
    }
}
