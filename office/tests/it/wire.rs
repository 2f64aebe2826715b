//! Phone and office agree on the wire, and on what was on it before: every type from kept samples, every answer as a phone reads it.
//!
//! `wire-1.txt` is frozen: a line is a type and its bytes as version 1 of the exchange writes them. A line that no longer holds is a wire that
//! older phones and offices do not understand; a new type or word is a new line.

use std::collections::BTreeSet;

use axum::extract::Query;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, from_str, to_string};
use stillbar_core::wire::{self, *};
use stillbar_office::web::openapi;

use crate::phone::Phone;
use crate::rig::{Backend, Rig};

const SAMPLES: &str = include_str!("../wire-1.txt");

/// Reads bytes as `T` and writes them again.
fn again<T: Serialize + DeserializeOwned>(bytes: &str) -> String {
    let read: T = from_str(bytes).unwrap_or_else(|e| panic!("{e}: {bytes}"));
    to_string(&read).expect("it can be written")
}

fn samples() -> impl Iterator<Item = (&'static str, &'static str)> {
    SAMPLES.lines().map(|line| line.split_once(' ').expect("a type and its bytes"))
}

#[test]
fn every_type_reads_and_writes_the_bytes_of_version_1() {
    for (name, bytes) in samples() {
        let written = match name {
            "Capabilities" => again::<Capabilities>(bytes),
            "Ask" => again::<Ask>(bytes),
            "Enrolled" => again::<Enrolled>(bytes),
            "Entry" => again::<WireEntry>(bytes),
            "Push" => again::<Push>(bytes),
            "Pushed" => again::<Pushed>(bytes),
            "Answered" => again::<Answered>(bytes),
            "Last" => again::<Last>(bytes),
            "Page" => again::<Page>(bytes),
            "Erased" => again::<Erased>(bytes),
            "Digest" => again::<Digest>(bytes),
            "SiteSum" => again::<SiteSum>(bytes),
            "DeviceSum" => again::<DeviceSum>(bytes),
            "AllWanted" => again::<AllWanted>(bytes),
            "Wanted" => again::<Wanted>(bytes),
            "Refusal" => again::<Refusal>(bytes),
            _ => panic!("{name} is no type of the wire"),
        };
        assert_eq!(written, bytes, "{name}");
    }
    // Every word has its sample, and every type that is described.
    for word in Why::ALL.iter().map(|w| w.word()).chain(Answer::ALL.iter().map(|a| a.word())) {
        assert!(SAMPLES.contains(&format!("\"{word}\"")), "{word}");
    }
    let codes: BTreeSet<&str> = Code::ALL.iter().map(|code| code.word()).collect();
    let kept: BTreeSet<String> =
        samples().filter(|(name, _)| *name == "Refusal").map(|(_, bytes)| word(bytes)).collect();
    assert_eq!(codes, kept.iter().map(String::as_str).collect());
    let named: BTreeSet<&str> = samples().map(|(name, _)| name).collect();
    let described = openapi::description("http://127.0.0.1");
    for name in described["components"]["schemas"].as_object().expect("schemas").keys() {
        let a_word = ["Id", "Answer", "Why", "Code", "Size"].contains(&name.as_str());
        assert!(a_word || named.contains(name.as_str()), "{name} has no sample");
    }
}

fn word(refusal: &str) -> String {
    from_str::<Value>(refusal).expect("JSON")["error"].as_str().expect("a word").to_owned()
}

#[test]
fn calls_and_headers_are_those_of_version_1() {
    let device = "d4".repeat(32).parse().expect("an id");
    assert_eq!(Of { of: None }.path(), "/entries");
    assert_eq!(Of { of: Some(device) }.path(), format!("/entries?of={device}"));
    let pull = |limit, own| Pull { after: "bmV4dA-_".into(), limit, own };
    assert_eq!(pull(None, 0).path(), "/entries?after=bmV4dA-_");
    assert_eq!(pull(Some(200), 1).path(), "/entries?after=bmV4dA-_&limit=200&own=1");
    let read = |path: String| Query::<Pull>::try_from_uri(&path.parse().expect("a path")).expect("it reads").0;
    for asked in [pull(None, 0), pull(Some(5), 0), pull(Some(500), 1)] {
        assert_eq!(read(asked.path()), asked);
    }
    assert_eq!(read("/entries".into()), Pull::default());
    assert_eq!(read("/entries?colour=blue&own=1".into()).own, 1);
    let of = format!("/entries?of={device}").parse().expect("a path");
    assert_eq!(Query::<Of>::try_from_uri(&of).expect("it reads").0.of, Some(device));
    let paths = [paths::CAPABILITIES, paths::ENROL, paths::ENTRIES, paths::DIGEST, paths::WANTED, paths::PHOTOS];
    assert_eq!(paths, ["/capabilities", "/enrol", "/entries", "/digest", "/wanted", "/photos"]);
    use wire::photos::{CHECKSUM, LENGTH, METADATA, OCTETS, OFFSET, RESUMABLE, TUS, metadata, read_metadata};
    assert_eq!((RESUMABLE, TUS, OFFSET, LENGTH), ("tus-resumable", "1.0.0", "upload-offset", "upload-length"));
    assert_eq!((METADATA, CHECKSUM, OCTETS), ("upload-metadata", "upload-checksum", "application/offset+octet-stream"));
    assert_eq!(metadata("a1b2", Size::Print), "sha256 YTFiMg==,size OTYw");
    for size in Size::ALL {
        assert_eq!(read_metadata(&metadata("a1b2", size)), Some(("a1b2".into(), size)));
    }
    assert_eq!(read_metadata("size OTYw, sha256 YTFiMg==,name eA=="), Some(("a1b2".into(), Size::Print)));
    assert_eq!(read_metadata("sha256 YTFiMg==,size OTYx"), None);
    assert_eq!(code_text("https://office.example:7463", "c0de"), "stillbar-enrol:1:https://office.example:7463:c0de");
    assert_eq!(read_code(&code_text("http://[::1]:80", "c0de")), Some(("http://[::1]:80", "c0de")));
    assert_eq!(signed("c0de"), "stillbar-enrol-1:c0de");
}

/// What an older side leaves out has a meaning, and what a newer side adds takes nothing away.
#[test]
fn older_and_newer_sides_are_understood() {
    let able: Capabilities =
        from_str(r#"{"exchange":1,"entries-per-push":200,"photo-bytes":1000,"now-ms":5,"colour":"blue"}"#)
            .expect("it reads");
    assert_eq!((able.oldest, able.newest, able.entries_per_push, able.photo_bytes), (1, 1, 200, 1000));
    let enrolled: Enrolled = from_str(r#"{"token":"t","office":"o"}"#).expect("it reads");
    assert_eq!((enrolled.sites.len(), enrolled.office_device), (0, None));
    let id = "a1".repeat(32);
    let pushed = format!(
        r#"{{"answers":[{{"id":"{id}","answer":"accepted","at":5}},{{"id":"{id}","answer":"postponed","reason":"full-moon"}}],
            "last":{{"seq":1,"id":"{id}"}},"more":{{}}}}"#
    );
    let pushed: Pushed = from_str(&pushed).expect("it reads");
    let said: Vec<_> = pushed.answers.iter().map(|a| (a.answer, a.answer.taken(), a.reason)).collect();
    assert_eq!(said, [(Answer::Accepted, true, None), (Answer::Unknown, false, Some(Why::Unknown))]);
    let page: Page = from_str(r#"{"entries":[{"body":"","sig":"","v":2}],"next":"n","more":true}"#).expect("it reads");
    assert_eq!((page.entries.len(), page.erased.len(), page.more), (1, 0, true));
    let wanted: AllWanted =
        from_str(&format!(r#"{{"wanted":[{{"sha256":"{id}","sizes":["64","960"]}}]}}"#)).expect("it reads");
    assert_eq!(wanted.wanted[0].sizes, [Size::Print]);
    let refusal: Refusal = from_str(r#"{"error":"teapot","say":"Wait."}"#).expect("it reads");
    assert_eq!((refusal.error, refusal.say.as_str()), (Code::Unknown, "Wait."));
    assert_eq!(from_str::<Refusal>("{}").expect("it reads"), Refusal::default());
}

/// Every answer of the office, read by a phone and written again, is the same: neither side has a field that the other does not know.
#[test]
fn every_answer_is_read_whole() {
    fn whole<T: Serialize + DeserializeOwned>(said: String) {
        assert_eq!(again::<T>(&said), said);
    }
    let rig = Rig::new(Backend::Sqlite);
    let mut phone = Phone::new(1);
    whole::<Capabilities>(rig.ask("GET", paths::CAPABILITIES, &[], "").is(200).text());
    let code = rig.code(&[]);
    whole::<Enrolled>(phone.enrol(&rig, &code).is(201).text());
    whole::<Refusal>(phone.enrol(&rig, "no-such-code").is(403).text());
    whole::<Refusal>(rig.ask("GET", paths::DIGEST, &[], "").is(401).text());
    whole::<Refusal>(rig.ask("GET", "/nowhere", &[], "").is(404).text());
    phone.person("Mara Lind");
    let site = phone.site("Hill Laundry");
    let job = phone.job(site, "Replace a breaker");
    let point = phone.point(site, job, "Q4");
    phone.photo(site, job, point, b"a picture");
    let entries: Vec<_> = phone.chain.clone();
    whole::<Pushed>(phone.push_of(&rig, None, &entries[1..]).is(200).text());
    whole::<Pushed>(phone.push_of(&rig, None, &entries).is(200).text());
    let get = |path: String| phone.ask(&rig, "GET", &path, &[], "").is(200).text();
    whole::<Page>(get(Pull { limit: Some(2), own: 1, ..Pull::default() }.path()));
    whole::<Digest>(get(paths::DIGEST.into()));
    let wanted = get(paths::WANTED.into());
    assert!(wanted.contains("original"), "{wanted}");
    whole::<AllWanted>(wanted);
    // What a newer phone adds is passed over, in the body and in the query.
    let more = r#"{"entries":[],"colour":"blue"}"#;
    phone.ask(&rig, "POST", "/entries?colour=blue", &[("content-type", "application/json")], more).is(200);
    let able: Capabilities = from_str(&rig.ask("GET", paths::CAPABILITIES, &[], "").text()).expect("it reads");
    assert_eq!((able.exchange, able.oldest, able.newest), (EXCHANGE, OLDEST_ENTRY, NEWEST_ENTRY));
}

/// The description says of every field whether it must be there and of every number how far it goes, and its limits are those that hold.
#[test]
fn the_description_is_tight() {
    let described = openapi::description("http://127.0.0.1");
    let schemas = described["components"]["schemas"].as_object().expect("schemas");
    assert_eq!(schemas["Id"]["pattern"], "^[0-9a-f]{64}$");
    assert_eq!(schemas["Push"]["properties"]["entries"]["maxItems"], limits::ENTRIES);
    assert_eq!(schemas["AllWanted"]["properties"]["wanted"]["maxItems"], limits::WANTED);
    for asked in ["Ask", "Push"] {
        assert_eq!(schemas[asked]["additionalProperties"], false, "{asked}");
    }
    let limit = &described["paths"][paths::ENTRIES]["get"]["parameters"][1];
    assert_eq!((&limit["name"], &limit["schema"]["maximum"]), (&"limit".into(), &limits::ENTRIES.into()));
    for (name, schema) in schemas {
        let Some(fields) = schema["properties"].as_object() else { continue };
        let required: BTreeSet<&str> =
            schema["required"].as_array().expect("some must be there").iter().filter_map(Value::as_str).collect();
        for (field, of) in fields {
            let may_lack = [("Answered", "reason"), ("Page", "erased")].contains(&(name.as_str(), field.as_str()));
            assert_eq!(required.contains(field.as_str()), !may_lack, "{name}.{field}");
            let bounded = of["type"] != "integer" || (of["minimum"].is_i64() && of["maximum"].is_i64());
            assert!(bounded && !of.to_string().contains("null"), "{name}.{field}: {of}");
        }
    }
    for (path, operations) in described["paths"].as_object().expect("paths") {
        for (method, operation) in operations.as_object().expect("operations") {
            let asked = operation["parameters"].as_array().expect("a list");
            assert!(
                !asked.iter().any(|p| p["schema"].is_null() || p.to_string().contains("null")),
                "{method} {path}: {asked:?}"
            );
            assert!(
                operation["responses"]["4XX"].is_object() && operation["responses"]["503"].is_object(),
                "{method} {path}"
            );
        }
    }
}
