//! Records: what is in them follows from the journal, whatever is changed in them is found, and what is withheld stays withheld.

use std::collections::BTreeSet;
use std::sync::Arc;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use ciborium::Value as Cbor;
use serde_json::Value;
use stillbar_core::app::of_folder;
use stillbar_core::journal::{DeviceKey, Entry, EntryId, Fact, cbor};
use stillbar_core::record::{Made, RecordParts, gather, make, reread, verify};
use stillbar_core::text::Distorted;
use stillbar_core::{Errand, Field};
use tempfile::TempDir;

use crate::desk::*;

const TITLE: &str = "Replace the outgoing breaker of washer 4";
const WHOLE: [&str; 6] = [PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE];

struct Job {
    folder: TempDir,
    device: Arc<Device>,
    field: Arc<Field>,
}

fn job(scripts: &[&str]) -> Job {
    let (folder, device, field) = begun(scripts);
    Job { folder, device, field }
}

impl Job {
    /// While the app has the folder open.
    fn record(&self, withhold: bool) -> Made {
        of_folder(self.folder.path(), &*self.device, TITLE, withhold).unwrap()
    }
}

/// SplitMix64.
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (z ^ (z >> 31)) as usize % most
    }
}

/// Whether a file passes for a record.
fn passes(bytes: &[u8]) -> bool {
    verify(bytes).is_ok_and(|verdict| verdict.holds)
}

fn parsed(json: &[u8]) -> Value {
    serde_json::from_slice(json).unwrap()
}

/// As the file spells it: sorted keys, no space (docs/formats.md).
fn spelled(value: &Value) -> Vec<u8> {
    fn sorted(value: &Value) -> Value {
        match value {
            Value::Object(map) => {
                let mut keys: Vec<&String> = map.keys().collect();
                keys.sort();
                keys.into_iter().map(|key| (key.clone(), sorted(&map[key]))).collect()
            }
            Value::Array(items) => items.iter().map(sorted).collect(),
            plain => plain.clone(),
        }
    }
    serde_json::to_vec(&sorted(value)).unwrap()
}

#[test]
fn a_record_holds_and_says_what_the_journal_says() {
    let job = job(&WHOLE);
    let made = job.record(false);
    let report = made.report();
    assert_eq!((report.title.as_str(), &*report.state.word), (TITLE, "Handed back"));
    // Ten pairs of five conductors, direct voltage where it is asked for, and the supply back.
    let dead: Vec<String> = report
        .readings
        .iter()
        .filter(|r| *r.kind.code() == "dead-test")
        .map(|r| format!("{} {}", r.first, r.then))
        .collect();
    assert_eq!(dead.iter().collect::<BTreeSet<_>>().len(), 10, "{dead:?}");
    assert!(report.readings.iter().any(|r| *r.kind.code() == "supply-back" && r.indicates));
    assert_eq!(report.photos.len(), 2);
    assert!(report.points.iter().all(|p| p.locks.iter().all(|l| l.off.is_some())));
    assert_eq!(report.time_line.len(), job.field.entries().unwrap().iter().filter(|e| e.job().is_some()).count());
    assert!(
        !report.cautions.is_empty()
            && report
                .hand_overs
                .iter()
                .any(|h| &*h.what == "Installation handed back" && *h.what.code() == "handed-back")
    );
    for (kind, bytes) in [("pdf", made.pdf().unwrap()), ("json", made.json().unwrap())] {
        let verdict = verify(&bytes).unwrap();
        assert!(verdict.holds && verdict.failures.is_empty(), "{verdict:#?}");
        assert_eq!((verdict.kind, &verdict.head), (kind, &report.head));
        // Both lists speak, and neither says that anything is safe.
        let said = format!("{:?}{:?}{}", verdict.proved, verdict.not_proved, serde_json::to_string(report).unwrap());
        assert!(said.contains("treat as live") && !said.to_lowercase().contains("safe"), "{said}");
    }
    assert_eq!(made.pdf().unwrap(), made.pdf().unwrap(), "the same record gives the same bytes");
    // Pages made anew from the JSON are the same pages.
    assert_eq!(reread(&made.json().unwrap()).unwrap().pdf().unwrap(), made.pdf().unwrap());
    assert_eq!(reread(&made.pdf().unwrap()).unwrap().json().unwrap(), made.json().unwrap());
}

#[test]
fn every_stage_of_a_job_has_a_record() {
    let stages: [(&[&str], &str); 5] = [
        (&[PEOPLE, PLAN], "not-begun"),
        (&[PEOPLE, PLAN, ISOLATE], "not-begun"),
        (&[PEOPLE, PLAN, ISOLATE, INDICATION], "indication"),
        (&[PEOPLE, PLAN, ISOLATE, PROVE], "proved"),
        (&[PEOPLE, PLAN, ISOLATE, PROVE, WORK], "restoring"),
    ];
    for (scripts, state) in stages {
        let job = job(scripts);
        let made = job.record(false);
        // The record says what the phone says.
        assert_eq!(*made.report().state.word.code(), state);
        assert_eq!(&*made.report().state.word, job.field.screen().standing.unwrap().word);
        for bytes in [made.pdf().unwrap(), made.json().unwrap()] {
            let verdict = verify(&bytes).unwrap();
            assert!(verdict.holds, "{:#?}", verdict.failures);
        }
    }
    let stop = job(&[PEOPLE, PLAN, ISOLATE, INDICATION]).record(false);
    assert_eq!(&*stop.report().state.word, "Stop, treat as live");
    assert_eq!(*stop.report().state.word.code(), "indication");
}

/// RFC 4180: read back by a reader of CSV, and the same as the report.
#[test]
fn csv_is_rfc_4180() {
    let made = job(&WHOLE).record(false);
    let text = made.csv().unwrap();
    assert!(text.lines().count() > 1 && text.ends_with("\r\n") && !text.replace("\r\n", "").contains('\n'));
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let of = |table: &str| rows.iter().filter(|r| &r[0] == table).count();
    assert_eq!((of("reading"), of("time line")), (made.report().readings.len(), made.report().time_line.len()));
    for (row, reading) in rows.iter().zip(&made.report().readings) {
        assert_eq!(
            (&row[7], &row[8], &row[9], &row[2]),
            (&*reading.first, reading.then.as_str(), &*reading.reading, reading.when.at.as_str())
        );
    }
}

/// At least a thousand mutants, none of which passes: bits of the file, facts, photos, claims, entries taken out.
#[test]
fn no_mutant_passes() {
    let made = job(&WHOLE).record(false);
    let (json, pdf) = (made.json().unwrap(), made.pdf().unwrap());
    // Each thread makes all mutants and looks at its share of them.
    const THREADS: usize = 4;
    std::thread::scope(|scope| {
        let shares = (0..THREADS).map(|share| {
            let (json, pdf) = (&json, &pdf);
            scope.spawn(move || mutants(json, pdf, |number| number % THREADS == share))
        });
        let shares: Vec<_> = shares.collect();
        assert!(shares.into_iter().all(|share| share.join().unwrap() >= 1_000));
    });
}

/// Makes mutants and looks at those that are `mine`; how many there are.
fn mutants(json: &Vec<u8>, pdf: &Vec<u8>, mine: impl Fn(usize) -> bool) -> usize {
    let mut chance = Chance(7);
    let mut count = 0;
    let mut dies = |bytes: &[u8], what: String| {
        assert!(!mine(count) || !passes(bytes), "{what}");
        count += 1;
    };
    for (file, name, many) in [(json, "JSON", 350), (pdf, "PDF", 150)] {
        for _ in 0..many {
            let (at, bit) = (chance.below(file.len()), chance.below(8));
            let mut bytes = file.clone();
            bytes[at] ^= 1 << bit;
            let near = String::from_utf8_lossy(&file[at.saturating_sub(60)..(at + 60).min(file.len())]).into_owned();
            dies(&bytes, format!("bit {bit} of byte {at} of the {name}: {near}"));
        }
    }
    // In the embedded journal, and in the pictures.
    let inside = |what: &[u8]| pdf.windows(what.len()).position(|w| w == what).unwrap();
    let journal = inside(b"{\"anchors\":[");
    let journal = journal..journal + json.len().min(60_000);
    let pictures = inside(&[0xff, 0xd8, 0xff, 0xe0]);
    for (range, name) in [(journal, "embedded journal"), (pictures..pictures + 1000, "picture")] {
        for _ in 0..100 {
            let at = range.start + chance.below(range.len());
            let mut bytes = pdf.clone();
            bytes[at] ^= 1 << chance.below(8);
            dies(&bytes, format!("byte {at}, in the {name}"));
        }
    }
    let whole = parsed(json);
    for (i, entry) in whole["entries"].as_array().unwrap().iter().enumerate() {
        // Every fact, with its old signature.
        for changed in changed_facts(entry) {
            let mut file = whole.clone();
            file["entries"][i]["body"] = changed.into();
            dies(&spelled(&file), format!("the fact of entry {i}"));
        }
        let mut file = whole.clone();
        file["entries"].as_array_mut().unwrap().remove(i);
        dies(&spelled(&file), format!("entry {i} taken out"));
    }
    for claim in claims(&whole["claims"], String::from("/claims")) {
        let mut file = whole.clone();
        let at = file.pointer_mut(&claim).unwrap();
        *at = match &*at {
            Value::String(text) => format!("{text}.").into(),
            Value::Bool(yes) => (!yes).into(),
            Value::Number(n) => (n.as_u64().unwrap() + 1).into(),
            _ => "else".into(),
        };
        if chance.below(7) == 0 {
            dies(&spelled(&file), claim);
        }
    }
    count
}

/// The fact of an entry with one of its texts, numbers or answers changed, in the same encoding; base64.
fn changed_facts(entry: &Value) -> Vec<String> {
    let bytes = STANDARD.decode(entry["body"].as_str().unwrap()).unwrap();
    let mut rest = &bytes[..];
    let body: Cbor = ciborium::from_reader(&mut rest).unwrap();
    let mut all = Vec::new();
    for which in 0..3 {
        let mut changed = body.clone();
        let mut left = which;
        let fact = changed.as_map_mut().unwrap().iter_mut().find(|(k, _)| k.as_text() == Some("fact")).unwrap();
        if turn(&mut fact.1, &mut left) {
            all.push(STANDARD.encode([cbor::encode(&changed).unwrap(), rest.to_vec()].concat()));
        }
    }
    all
}

/// Changes the text, number or answer that comes after `left` others.
fn turn(value: &mut Cbor, left: &mut usize) -> bool {
    match value {
        Cbor::Map(pairs) => pairs.iter_mut().any(|(_, v)| turn(v, left)),
        Cbor::Array(items) => items.iter_mut().any(|v| turn(v, left)),
        _ if *left > 0 => {
            *left -= 1;
            false
        }
        Cbor::Text(text) => {
            text.push('x');
            true
        }
        Cbor::Bool(yes) => {
            *yes = !*yes;
            true
        }
        Cbor::Integer(n) => {
            *n = (i128::from(*n) + 1).try_into().unwrap_or(0.into());
            true
        }
        Cbor::Bytes(bytes) => {
            bytes[0] ^= 1;
            true
        }
        _ => false,
    }
}

/// Every claim that is no list and no group, as a JSON pointer.
fn claims(value: &Value, at: String) -> Vec<String> {
    match value {
        Value::Object(map) => map.iter().flat_map(|(key, v)| claims(v, format!("{at}/{key}"))).collect(),
        Value::Array(items) => items.iter().enumerate().flat_map(|(i, v)| claims(v, format!("{at}/{i}"))).collect(),
        _ => vec![at],
    }
}

/// A forger with a key of their own, who leaves an entry out or changes one, and makes the record anew around it.
#[test]
fn a_forger_with_a_key_of_their_own_is_found_out() {
    let job = job(&WHOLE);
    let forger = DeviceKey::from_secret(&[66; 32]).unwrap();
    let (id, own, shared) = parts(&job);
    let make_of =
        |own: &[Entry]| make(gather(id, own, &shared, Default::default()), "2026-11-02T10:00:00+01:00", false, &forger);
    // What is made of all of it holds, and says who made it: the forger.
    let made = make_of(&own).unwrap().json().unwrap();
    assert!(verify(&made).unwrap().proved.iter().any(|p| p.contains(&forger.device().to_string()[..8])));
    for at in 1..own.len() {
        let mut without = own.clone();
        let gone = without.remove(at);
        let last = at == own.len() - 1;
        assert_eq!(make_of(&without).is_ok(), last, "without entry {at}, {}", gone.body.fact.kind());
        if !last {
            // With the same program changed so that it does not look: the file says what would follow, and is not believed.
            let mut file = parsed(&made);
            let gone = STANDARD.encode(&gone.bytes);
            file["entries"].as_array_mut().unwrap().retain(|e| e["body"] != gone.as_str());
            let verdict = verify(&spelled(&file)).unwrap();
            assert!(verdict.failures[0].why.contains("missing"), "{:?}", verdict.failures);
        }
    }
    // A reading signed anew by another device in the place of one that was taken out.
    let at = own.iter().position(|e| matches!(e.body.fact, Fact::ReadingTaken { .. })).unwrap();
    let mut swapped = own.clone();
    let mut body = own[at].body.clone();
    (body.device, body.seq, body.prev, body.after) = (forger.device(), 1, EntryId::NONE, None);
    swapped[at] = Entry::seal(body, &forger, &|n| vec![1; n as usize]).unwrap();
    assert!(make_of(&swapped).is_err());
}

/// The job's id, its entries, and the entries of no job.
fn parts(job: &Job) -> (EntryId, Vec<Entry>, Vec<Entry>) {
    let all = job.field.entries().unwrap();
    let id = all.iter().find(|e| matches!(e.body.fact, Fact::JobOpened { .. })).unwrap().id;
    let (own, shared) = all.into_iter().partition(|e| e.job() == Some(id));
    (id, own, shared)
}

#[test]
fn names_are_withheld_and_the_record_holds() {
    let job = job(&WHOLE);
    let (open, closed) = (job.record(false), job.record(true));
    assert_eq!(open.report().head, closed.report().head, "the same journal");
    // Whoever is named in the journal, in a field that is for names.
    let names = ["Mara Lind", "Tomas Brandt"];
    let texts = |made: &Made| {
        let json = made.json().unwrap();
        let bodies = parsed(&json)["entries"]
            .as_array()
            .unwrap()
            .iter()
            .flat_map(|e| STANDARD.decode(e["body"].as_str().unwrap()).unwrap())
            .collect::<Vec<u8>>();
        [json, bodies].concat()
    };
    let found = |bytes: &[u8], name: &str| bytes.windows(name.len()).any(|w| w == name.as_bytes());
    assert!(found(&texts(&open), names[0]));
    for name in names {
        assert!(!found(&texts(&closed), name), "{name}");
    }
    for bytes in [closed.pdf().unwrap(), closed.json().unwrap()] {
        let verdict = verify(&bytes).unwrap();
        assert!(verdict.holds, "{:#?}", verdict.failures);
        assert!(verdict.not_proved.iter().any(|n| n.contains("withheld")), "{:#?}", verdict.not_proved);
    }
    // No telephone number in any record: it is for who works there.
    for made in [&open, &closed] {
        assert!(!found(&texts(made), "555 0"));
    }
    let person = closed.report().time_line.iter().find_map(|l| l.when.by.clone()).unwrap();
    assert!(person.starts_with("person "), "{person}");
}

#[test]
fn a_record_with_a_gap_is_not_made() {
    let job = job(&WHOLE);
    let (id, mut own, shared) = parts(&job);
    own.remove(own.len() / 2);
    let key = DeviceKey::from_secret(&[3; 32]).unwrap();
    let gathered: RecordParts = gather(id, &own, &shared, Default::default());
    let why = make(gathered, "2026-11-02T10:00:00+01:00", false, &key).err().unwrap().to_string();
    assert!(why.contains("missing") && why.contains("Exchange"), "{why}");
}

/// A record that was made when version 1 of the format was new: whoever changes the journal, the fold or a claim breaks what people have kept, and
/// has to give the format another version. A sentence is no claim: every message may be worded otherwise, and an old record still holds.
#[test]
fn a_record_of_the_first_version_holds() {
    const KEPT: &str = "tests/samples/record-1.json";
    if std::env::var_os("STILLBAR_FREEZE").is_some() {
        let made = job(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE]).record(false);
        std::fs::write(KEPT, made.json().unwrap()).unwrap();
    }
    let kept = std::fs::read(KEPT).unwrap();
    let verdict = verify(&kept).unwrap();
    assert!(verdict.holds, "{:?}", verdict.failures);
    let stop = job(&[PEOPLE, PLAN, ISOLATE, INDICATION]).record(false);
    let _worded = Distorted::new();
    for record in [kept, stop.json().unwrap()] {
        let worded = verify(&record).unwrap();
        assert!(worded.holds, "{:?}", worded.failures);
    }
    assert_eq!(verdict.title, "Replace the outgoing breaker of washer 4");
    assert_eq!(verdict.head, "b9686286f9a2e2746b7b62296a5f90c44d08966a1c493031fa3591a82e5fb077");
}

/// Whatever comes is answered: a verdict or a sentence, never a panic, and never a yes.
#[test]
fn garbage_is_answered() {
    let made = job(&[PEOPLE, PLAN]).record(false);
    let mut chance = Chance(99);
    for bytes in [made.json().unwrap(), made.pdf().unwrap()] {
        for cut in (0..bytes.len()).step_by(bytes.len() / 40) {
            assert!(!passes(&bytes[..cut]), "cut at {cut}");
        }
        assert!(!passes(&[&bytes[..], b" "].concat()) && !passes(&[b" ", &bytes[..]].concat()));
    }
    for _ in 0..300 {
        let mut noise: Vec<u8> = (0..chance.below(400)).map(|_| chance.below(256) as u8).collect();
        if chance.below(2) == 0 {
            noise.splice(0..0, *b"%PDF-1.7 1 0 obj <</Type/EmbeddedFile/Length 99999999999/FlateDecode>>stream\n");
        }
        assert!(verify(&noise).is_err());
    }
    for (text, says) in [
        ("", "no record"),
        ("{}", "no record of Stillbar"),
        ("{\"format\":\"stillbar-record\",\"version\":2}", "version 2"),
        ("{\"format\":\"stillbar-record\",\"version\":1}", "damaged"),
        ("[[[[", "no record"),
    ] {
        assert!(verify(text.as_bytes()).unwrap_err().to_string().contains(says), "{text}");
    }
    let wide = format!("{{\"format\":\"stillbar-record\",\"version\":1,\"claims\":[{}0]}}", "0,".repeat(4_000_001));
    assert!(verify(wide.as_bytes()).unwrap_err().to_string().contains("more parts"));
    let deep = "[".repeat(100_000);
    assert!(verify(deep.as_bytes()).is_err());
}

#[test]
fn a_job_is_found_by_title_or_digits() {
    let job = job(&[PEOPLE, PLAN]);
    let of = |named: &str| of_folder(job.folder.path(), &*job.device, named, false).map(|m| m.report().job.clone());
    let id = of(TITLE).unwrap();
    assert_eq!(of(&id[..8]).unwrap(), id);
    assert_eq!(of(&TITLE.to_uppercase()).unwrap(), id);
    let why = of("Something else").unwrap_err();
    assert!(why.to_string().contains(&id[..8]) && why.to_string().contains(TITLE), "{why}");
    assert!(of_folder(&job.folder.path().join("nowhere"), &*job.device, TITLE, false).is_err());
}

/// Whatever people type comes on paper, if only as a mark; the journal inside has it as it was typed.
#[test]
fn every_alphabet_gets_a_page() {
    let title = "Žluťoučký Ελληνικά Кабель עברית عربى हिन्दी 日本語 ﬁ ½ 👍🏽 e\u{301} \u{202e}x\u{200d} \u{e000}";
    let plan = PLAN.replace(TITLE, title);
    assert!(plan.contains(title));
    let (folder, device, field) = begun(&[PEOPLE, &plan, ISOLATE]);
    let id = field.entries().unwrap().iter().find(|e| matches!(e.body.fact, Fact::JobOpened { .. })).unwrap().id;
    let made = of_folder(folder.path(), &*device, &id.to_string(), false).unwrap();
    assert_eq!(made.report().title, title);
    let verdict = verify(&made.pdf().unwrap()).unwrap();
    assert!(verdict.holds, "{:#?}", verdict.failures);
}

/// From the job's screen: the file that the shell is given is whole, and the few that stay do not pile up.
#[test]
fn the_app_hands_the_record_on() {
    let job = job(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE, include_str!("../../journeys/record.journey")]);
    let mut names = BTreeSet::new();
    for withheld in ["", " withheld"] {
        let errands = job.field.act(None, format!("share-record{withheld}"), vec![]);
        let [Errand::ShareFile { title, name, media_type, path }] = &errands[..] else { panic!("{errands:?}") };
        assert_eq!((title.as_str(), media_type.as_str()), (TITLE, "application/pdf"));
        let bytes = std::fs::read(path).unwrap();
        assert_eq!(job.field.shared(name).as_ref(), Some(&bytes));
        assert!(passes(&bytes));
        names.insert(name.clone());
    }
    assert_eq!(names.len(), 2);
    // Nothing else comes out that way.
    for name in ["", ".", "..", "../journal.db", "../device.key", "nothing.pdf", "/etc/hostname"] {
        assert_eq!(job.field.shared(name), None, "{name}");
    }
    let shared = job.folder.path().join("shared");
    for n in 0..9 {
        std::fs::write(shared.join(format!("old-{n}.pdf")), b"").unwrap();
    }
    job.field.act(None, "share-record".into(), vec![]);
    assert_eq!(std::fs::read_dir(&shared).unwrap().count(), 4);
    // While the app is aside its files are still lent.
    job.field.suspend();
    assert!(names.iter().any(|name| job.field.shared(name).is_some()));
}
