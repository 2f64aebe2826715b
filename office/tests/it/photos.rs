//! Photos: taken in at any byte, verified, kept once, given to phones of the site only.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};
use stillbar_core::journal::EntryId;
use stillbar_office::params;

use crate::phone::Phone;
use crate::rig::{Answer, Backend, Rig, each};

const TUS: (&str, &str) = ("tus-resumable", "1.0.0");

fn begun(rig: &Rig) -> (Phone, EntryId, String) {
    let mut phone = rig.phone(1, &[]);
    phone.person("Mara Lind");
    let site = phone.site("Hill Laundry");
    let job = phone.job(site, "Replace a breaker");
    let point = phone.point(site, job, "Q1");
    let sha256 = phone.photo(site, job, point, picture());
    phone.push_all(rig);
    (phone, site, sha256)
}

/// A real photo file, padded behind its end to have some length.
fn picture() -> &'static [u8] {
    static PICTURE: std::sync::OnceLock<Vec<u8>> = std::sync::OnceLock::new();
    PICTURE.get_or_init(|| {
        let mut bytes = stillbar_core::demo::PHOTO.to_vec();
        bytes.resize(700_001, 7);
        bytes
    })
}

fn create(rig: &Rig, phone: &Phone, sha256: &str, size: &str, length: usize) -> Answer {
    let said = format!("sha256 {},size {}", STANDARD.encode(sha256), STANDARD.encode(size));
    let length = length.to_string();
    phone.ask(rig, "POST", "/photos", &[TUS, ("upload-length", &length), ("upload-metadata", &said)], "")
}

fn send(rig: &Rig, phone: &Phone, place: &str, from: usize, bytes: &[u8]) -> Answer {
    let from = from.to_string();
    let headers = [TUS, ("upload-offset", from.as_str()), ("content-type", "application/offset+octet-stream")];
    phone.ask(rig, "PATCH", place, &headers, bytes)
}

#[test]
fn an_upload_goes_on_at_any_byte_and_is_verified() {
    each(|rig| {
        let (phone, _, sha256) = begun(rig);
        let wanted = phone.ask(rig, "GET", "/wanted", &[], "").is(200).json();
        assert_eq!(wanted["wanted"][0]["sizes"], serde_json::json!(["320", "960", "original"]));
        let bytes = picture();
        let place = create(rig, &phone, &sha256, "original", bytes.len()).is(201).header("location").to_owned();
        let mut at = 0;
        for piece in [1, 999, 65_537, 300_000] {
            send(rig, &phone, &place, at, &bytes[at..at + piece]).is(204);
            at += piece;
            let here = phone.ask(rig, "HEAD", &place, &[TUS], "").is(200);
            assert_eq!(here.header("upload-offset"), at.to_string());
        }
        let wrong = send(rig, &phone, &place, at + 1, b"x").is(409);
        assert_eq!(wrong.header("upload-offset"), at.to_string());
        // A phone that forgot where it was begins again, and finds the same upload.
        let again = create(rig, &phone, &sha256, "original", bytes.len()).is(201);
        assert_eq!(
            (again.header("location"), again.header("upload-offset")),
            (place.as_str(), at.to_string().as_str())
        );
        send(rig, &phone, &place, at, &bytes[at..]).is(204);
        let got = phone.ask(rig, "GET", &format!("/photos/{sha256}"), &[], "").is(200);
        assert_eq!(got.bytes, bytes);
        assert_eq!(got.header("content-type"), "image/png");
        // Kept once: the bytes are not sent a second time.
        let twice = create(rig, &phone, &sha256, "original", bytes.len()).is(200);
        assert_eq!(twice.header("upload-offset"), bytes.len().to_string());
        let wanted = phone.ask(rig, "GET", "/wanted", &[], "").is(200).json();
        assert_eq!(wanted["wanted"][0]["sizes"], serde_json::json!(["320", "960"]));
        // A size that earlier offices took in stands for none of these.
        let older = "INSERT INTO photo (sha256, size, length, kept_ms) VALUES ($1, $2, 1, 1)";
        let hash = sha256.parse::<EntryId>().unwrap().0;
        rig.office
            .change(|tx| [320, 1600].iter().try_for_each(|size: &i64| tx.run(older, params![hash, *size]).map(drop)))
            .unwrap();
        let wanted = phone.ask(rig, "GET", "/wanted", &[], "").is(200).json();
        assert_eq!(wanted["wanted"][0]["sizes"], serde_json::json!(["960"]));
        // Nothing of the upload is left.
        let left = std::fs::read_dir(rig.folder.path().join("photos/uploads")).unwrap().map(|f| f.unwrap().file_name());
        assert_eq!(left.collect::<Vec<_>>(), ["about.txt"]);
    });
}

#[test]
fn other_bytes_than_the_entry_names_are_thrown_away() {
    each(|rig| {
        let (phone, _, sha256) = begun(rig);
        let mut bytes = picture().to_vec();
        bytes[500_000] ^= 1;
        let place = create(rig, &phone, &sha256, "original", bytes.len()).is(201).header("location").to_owned();
        let said = send(rig, &phone, &place, 0, &bytes);
        assert_eq!(said.status.as_u16(), 460);
        assert_eq!(said.json()["error"], "not-this-photo");
        phone.ask(rig, "HEAD", &place, &[TUS], "").is(404);
        phone.ask(rig, "GET", &format!("/photos/{sha256}"), &[], "").is(404);
        let place = create(rig, &phone, &sha256, "original", bytes.len()).is(201).header("location").to_owned();
        send(rig, &phone, &place, 0, picture()).is(204);
    });
}

#[test]
fn a_photo_belongs_to_its_site() {
    each(|rig| {
        let (phone, site, sha256) = begun(rig);
        let place = create(rig, &phone, &sha256, "original", picture().len()).is(201).header("location").to_owned();
        send(rig, &phone, &place, 0, picture()).is(204);
        let (same, other) = (rig.phone(2, &[site]), rig.phone(3, &[]));
        let path = format!("/photos/{sha256}");
        assert_eq!(same.ask(rig, "GET", &path, &[], "").is(200).bytes, picture());
        other.ask(rig, "GET", &path, &[], "").is(404);
        create(rig, &other, &sha256, "original", picture().len()).is(403);
        let part = same.ask(rig, "GET", &path, &[("range", "bytes=10-19")], "").is(206);
        assert_eq!((part.bytes.as_slice(), part.header("content-range")), (&picture()[10..20], "bytes 10-19/700001"));
        let tail = same.ask(rig, "GET", &path, &[("range", "bytes=700000-")], "").is(206);
        assert_eq!(tail.bytes, [7]);
        same.ask(rig, "GET", &path, &[("range", "bytes=700001-")], "").is(416);
    });
}

#[test]
fn what_no_entry_names_is_not_taken() {
    let rig = Rig::new(Backend::Sqlite);
    let (phone, ..) = begun(&rig);
    let foreign = "ab".repeat(32);
    assert_eq!(create(&rig, &phone, &foreign, "original", 10).is(403).json()["error"], "not-named");
    create(&rig, &phone, "no hash", "original", 10).is(400);
    create(&rig, &phone, &foreign, "640", 10).is(400);
    phone.ask(&rig, "POST", "/photos", &[("upload-length", "10")], "").is(412);
}

#[test]
fn a_checksum_is_verified_before_anything_is_kept() {
    let rig = Rig::new(Backend::Sqlite);
    let (phone, _, sha256) = begun(&rig);
    let place = create(&rig, &phone, &sha256, "original", picture().len()).is(201).header("location").to_owned();
    let sum = |bytes: &[u8]| format!("sha256 {}", STANDARD.encode(Sha256::digest(bytes)));
    let patch = |sum: &str, bytes: &[u8]| {
        let kind = ("content-type", "application/offset+octet-stream");
        phone.ask(&rig, "PATCH", &place, &[TUS, ("upload-offset", "0"), kind, ("upload-checksum", sum)], bytes)
    };
    assert_eq!(patch(&sum(b"other"), &picture()[..100]).status.as_u16(), 460);
    assert_eq!(phone.ask(&rig, "HEAD", &place, &[TUS], "").is(200).header("upload-offset"), "0");
    assert_eq!(patch(&sum(&picture()[..100]), &picture()[..100]).is(204).header("upload-offset"), "100");
    phone.ask(&rig, "DELETE", &place, &[TUS], "").is(204);
    phone.ask(&rig, "HEAD", &place, &[TUS], "").is(404);
}
