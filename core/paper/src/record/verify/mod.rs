//! Whether a record holds: chain, signatures, photos, and that everything it claims follows from its entries.
//!
//! Nothing of the file is believed: the report is worked out again from the entries alone and compared with what the file claims; the
//! pages of a PDF are made again from it and compared byte for byte.

mod words;

use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::Serialize;
use serde_json::Value;

use super::file::{FORMAT, MAX_ENTRIES, MAX_FILE_BYTES, MAX_PHOTOS, RecordFile, VERSION};
use super::links::{self, Linked, called};
use super::make::{Made, RereadError};
use super::report::Report;
use super::{pdf, tell};
use stillbar_journal::{Entry, EntryId};
use stillbar_media::evidence;
use stillbar_text as text;
use stillbar_values::RuleSet;

/// Most fields and list items of a file: twenty thousand entries with their claims have a million.
const MAX_PARTS: usize = 4_000_000;
/// What this version calls itself in a record.
const OWN: &str = concat!("stillbar ", env!("CARGO_PKG_VERSION"));
/// Most failures that are told.
const MAX: usize = 20;

/// What was found out about a record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Verdict {
    /// Whether everything holds.
    pub holds: bool,
    /// `pdf` or `json`.
    pub kind: &'static str,
    /// By whose rules the job was done, if it could be told: whoever tells of the record speaks in their words.
    #[serde(skip)]
    pub rules: Option<RuleSet>,
    /// What the job is called, if it could be told.
    pub title: String,
    /// The head: compare it with the one on paper.
    pub head: String,
    /// What is shown, in sentences.
    pub proved: Vec<String>,
    /// What is not shown, in sentences.
    pub not_proved: Vec<String>,
    /// What does not hold; the first is the one to look at.
    pub failures: Vec<Failure>,
}

/// Something that does not hold.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Failure {
    /// Which entry, claim, photo or page.
    pub what: String,
    /// Why, in a sentence.
    pub why: String,
}

/// Why a file cannot be read as a record; a sentence that says what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct Unreadable(String);

/// What a time stamp of somebody outside shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Anchor {
    /// When, in words, with the zone.
    pub at: String,
    /// Who says so.
    pub by: String,
    /// How many entries were there.
    pub covers: usize,
    /// Whether who checks the record trusts whoever says so.
    pub trusted: bool,
}

/// Looks at one anchor of a record: the job, the ids of the record's entries, the anchor as it stands in the file. The error is a sentence.
pub type AnchorWitness<'a> = &'a dyn Fn(EntryId, &BTreeSet<EntryId>, &Value) -> Result<Anchor, Box<dyn Error>>;

/// Checks a record, PDF or JSON, but not its anchors. Reads nothing but these bytes, and needs no network.
pub fn verify(bytes: &[u8]) -> Result<Verdict, Unreadable> {
    verify_with(bytes, None)
}

/// The same, and its anchors if there is somebody who can.
pub fn verify_with(bytes: &[u8], witness: Option<AnchorWitness>) -> Result<Verdict, Unreadable> {
    let mut found = FoundParts::of(bytes)?;
    if found.kind == "pdf" && found.failures.is_empty() {
        found.pages(bytes);
    }
    if let Some(witness) = witness {
        found.look_at_anchors(witness);
    }
    Ok(found.verdict())
}

/// See [`super::reread`]: what is on pages made by another version does not matter here, as they are made anew.
pub(super) fn read_whole(bytes: &[u8]) -> Result<Made, RereadError> {
    let found = FoundParts::of(bytes)?;
    match (found.failures.into_iter().next(), found.report) {
        (None, Some(report)) => Ok(Made::of(found.file, report, found.photos)),
        (Some(failure), _) => Err(RereadError::Fails(failure)),
        (None, None) => Err(RereadError::NoJob),
    }
}

struct FoundParts {
    kind: &'static str,
    file: RecordFile,
    entries: Vec<Entry>,
    linked: Linked,
    report: Option<Report>,
    /// By the SHA-256 of the original.
    photos: BTreeMap<String, Vec<u8>>,
    /// What the anchors show, if somebody looked at them.
    anchors: Option<Vec<Anchor>>,
    failures: Vec<Failure>,
}

impl FoundParts {
    fn of(bytes: &[u8]) -> Result<FoundParts, Unreadable> {
        let cannot = |why: &str| Unreadable(why.to_owned());
        if bytes.len() > MAX_FILE_BYTES {
            return Err(Unreadable(format!("A record has at most {} MB; this file has more.", MAX_FILE_BYTES >> 20)));
        }
        let (kind, json, pictures) = if bytes.starts_with(b"%PDF-") {
            let inside = pdf::inside(bytes);
            let json = inside.journal.ok_or_else(|| {
                cannot("There is no journal in this PDF: it is not a record, or it was printed or saved anew. Ask for the file itself.")
            })?;
            ("pdf", json, inside.pictures)
        } else {
            ("json", bytes.to_vec(), Vec::new())
        };
        let file = read(&json)?;
        let mut found = FoundParts {
            kind,
            file,
            entries: Vec::new(),
            linked: Linked::default(),
            report: None,
            photos: BTreeMap::new(),
            anchors: None,
            failures: Vec::new(),
        };
        if found.file.written().ok().as_deref() != Some(&json[..]) {
            found.fails(
                "the file",
                "it is not spelled as records are: it was changed or written anew since it was made.",
            );
        }
        found.read_entries();
        if found.failures.is_empty() {
            found.work_out();
            found.look_at_photos(pictures);
            if !found.file.seal_holds() {
                found.fails("the seal", "it is not that of the device that is named as having made this record.");
            }
        }
        Ok(found)
    }

    fn fails(&mut self, what: &str, why: impl Into<String>) {
        if self.failures.len() < MAX {
            self.failures.push(Failure { what: what.to_owned(), why: why.into() });
        }
    }

    fn read_entries(&mut self) {
        let wire = std::mem::take(&mut self.file.entries);
        for (i, entry) in wire.iter().enumerate() {
            let what = format!("entry {} of the file", i + 1);
            let parts = (STANDARD.decode(&entry.body), STANDARD.decode(&entry.sig));
            let (Ok(body), Some(sig)) = (parts.0, parts.1.ok().and_then(|sig| <[u8; 64]>::try_from(sig).ok())) else {
                self.fails(&what, "its bytes cannot be read.");
                continue;
            };
            match Entry::open(body.clone(), sig) {
                Ok(entry) => self.entries.push(entry),
                Err(e) => {
                    let what = Entry::trusted(body, sig).map_or(what, |entry| called(&entry));
                    self.fails(&what, format!("{e}."));
                }
            }
        }
        self.file.entries = wire;
    }

    fn work_out(&mut self) {
        let Ok(job) = self.file.job.parse::<EntryId>() else {
            return self.fails("the job", "its name is no id.");
        };
        self.linked = links::check(job, &self.entries);
        for (what, why) in std::mem::take(&mut self.linked.broken) {
            self.fails(&what, why);
        }
        let Some(report) = tell::report(job, &self.entries) else {
            return self.fails("the job", "no entry here opens it.");
        };
        let ours = serde_json::to_value(&report).unwrap_or_default();
        if let Some((place, theirs, ours)) = differs(&self.file.claims, &ours, String::new()) {
            self.fails(
                &format!("the claim{place}"),
                format!("it says {theirs}; what follows from the entries is {ours}.{}", self.other_version()),
            );
        }
        self.report = Some(report);
    }

    /// What is said where the record was made by another version, which may have worded it otherwise.
    fn other_version(&self) -> String {
        if self.file.program == OWN {
            return String::new();
        }
        format!(
            " The record was made by {:?}, and this is {OWN}, which may only word it otherwise: look at both.",
            self.file.program
        )
    }

    fn look_at_photos(&mut self, pictures: Vec<Vec<u8>>) {
        let Some(report) = &self.report else { return };
        let signed: BTreeMap<&str, &Vec<String>> =
            report.photos.iter().map(|p| (p.sha256.as_str(), &p.copies)).collect();
        let on_pages: BTreeMap<String, Vec<u8>> =
            pictures.into_iter().map(|bytes| (evidence::sha256(&bytes), bytes)).collect();
        let (mut photos, mut wrong) = (BTreeMap::new(), Vec::new());
        for picture in &self.file.photos {
            let what = format!("photo {:.8}", picture.sha256);
            if !signed.get(picture.sha256.as_str()).is_some_and(|copies| copies.contains(&picture.copy)) {
                wrong.push((what, "no signed entry names the copy that is shown of it."));
                continue;
            }
            let bytes = match &picture.jpeg {
                // What cannot be read is no picture, and not a picture that is left out.
                Some(jpeg) => Some(STANDARD.decode(jpeg).unwrap_or_default()),
                None => on_pages.get(&picture.copy).cloned(),
            };
            match bytes {
                None if self.kind == "json" => {}
                Some(bytes) if evidence::sha256(&bytes) == picture.copy => {
                    photos.insert(picture.sha256.clone(), bytes);
                }
                _ => wrong.push((what, "the picture that is shown is not the copy that was signed.")),
            }
        }
        self.photos = photos;
        wrong.into_iter().for_each(|(what, why)| self.fails(&what, why));
    }

    fn look_at_anchors(&mut self, witness: AnchorWitness) {
        let Ok(job) = self.file.job.parse::<EntryId>() else { return };
        let ids: BTreeSet<EntryId> = self.entries.iter().map(|e| e.id).collect();
        let mut seen = Vec::new();
        for (i, anchor) in std::mem::take(&mut self.file.anchors).iter().enumerate() {
            match witness(job, &ids, anchor) {
                Ok(anchor) => seen.push(anchor),
                Err(why) => self.fails(&format!("time stamp {}", i + 1), why.to_string()),
            }
        }
        self.anchors = Some(seen);
    }

    /// Makes the pages again and compares.
    fn pages(&mut self, bytes: &[u8]) {
        let Some(report) = &self.report else { return };
        match pdf::write(&self.file, report, &self.photos) {
            Ok(again) if again == bytes => {}
            _ => {
                let why = if self.file.program == OWN {
                    "they are not what this version makes of the journal in the file: the file was changed or saved anew. The journal itself \
                     holds; make the pages anew from it with: stillbar record FILE -o NEW.pdf"
                        .to_owned()
                } else {
                    format!(
                        "they were made by {}, and this is {OWN}: it cannot be shown that they say what the journal says. The journal itself \
                         holds; make the pages anew from it with: stillbar record FILE -o NEW.pdf",
                        self.file.program
                    )
                };
                self.fails("the pages", why);
            }
        }
    }
}

fn read(json: &[u8]) -> Result<RecordFile, Unreadable> {
    let cannot = |why: String| Unreadable(why);
    // Each part takes memory, however short it is written.
    if json.iter().filter(|b| matches!(b, b',' | b':' | b'[' | b'{')).count() > MAX_PARTS {
        return Err(cannot("This record has more parts than any record can have.".into()));
    }
    let value: Value =
        serde_json::from_slice(json).map_err(|e| cannot(format!("This is no record: {}", text::json(&e))))?;
    if value.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err(cannot("This is no record of Stillbar, or its beginning is damaged.".into()));
    }
    match value.get("version").and_then(Value::as_u64) {
        Some(version) if version == u64::from(VERSION) => {}
        Some(newer) => {
            return Err(cannot(format!(
                "This record has version {newer} of the format; this Stillbar reads {VERSION}. Update it."
            )));
        }
        None => return Err(cannot("This record does not say which version of the format it has.".into())),
    }
    let file: RecordFile =
        serde_json::from_value(value).map_err(|e| cannot(format!("This record is damaged ({e}).")))?;
    if file.entries.len() > MAX_ENTRIES || file.photos.len() > MAX_PHOTOS {
        return Err(cannot(format!("A record holds at most {MAX_ENTRIES} entries and {MAX_PHOTOS} photos.")));
    }
    Ok(file)
}

/// The first place where two values differ, and both of them there.
fn differs(theirs: &Value, ours: &Value, place: String) -> Option<(String, String, String)> {
    match (theirs, ours) {
        (Value::Object(a), Value::Object(b)) => {
            let keys: BTreeSet<&String> = a.keys().chain(b.keys()).collect();
            let of = |map: &serde_json::Map<String, Value>, key: &String| map.get(key).cloned().unwrap_or_default();
            keys.into_iter().find_map(|key| {
                if a.contains_key(key) != b.contains_key(key) {
                    return Some((format!("{place}.{key}"), told(&of(a, key)), told(&of(b, key))));
                }
                differs(&of(a, key), &of(b, key), format!("{place}.{key}"))
            })
        }
        (Value::Array(a), Value::Array(b)) if a.len() == b.len() => {
            a.iter().zip(b).enumerate().find_map(|(i, (a, b))| differs(a, b, format!("{place}[{i}]")))
        }
        (Value::Array(a), Value::Array(b)) => {
            Some((place, format!("{} things", a.len()), format!("{} things", b.len())))
        }
        (a, b) if a == b => None,
        (a, b) => Some((place, told(a), told(b))),
    }
}

fn told(value: &Value) -> String {
    match value {
        Value::String(text) => stillbar_rules::json::quoted(text),
        other => stillbar_rules::json::quoted(&other.to_string()),
    }
}
