//! Writes something for every target to begin with, from the demo and its journeys: `fuzz/run seeds`.

use std::fs;
use std::path::Path;
use std::sync::{Arc, Mutex};

use stillbar_core::sync::near::{Has, short, show_entries, show_has};
use stillbar_core::tag::Symbol;
use stillbar_core::wire::{Carried, WireEntry};
use stillbar_core::{Field, Platform, PlatformError, demo, record};

struct Device(Mutex<(i64, Option<Vec<u8>>)>);

impl Platform for Device {
    fn running(&self) -> Option<stillbar_core::journal::Running> {
        None
    }
    fn load_head(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(None)
    }
    fn store_head(&self, _: Vec<u8>) -> Result<(), PlatformError> {
        Ok(())
    }
    fn now_ms(&self) -> i64 {
        let mut held = self.0.lock().expect("nobody panics");
        held.0 += 1000;
        held.0
    }
    fn offset_minutes(&self, _: i64) -> i32 {
        60
    }
    fn random(&self, count: u32) -> Vec<u8> {
        (0..count).map(|n| n as u8).collect()
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(self.0.lock().expect("nobody panics").1.clone())
    }
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        self.0.lock().expect("nobody panics").1 = Some(secret);
        Ok(())
    }
}

fn main() {
    let into = std::env::args().nth(1).expect("a folder");
    let into = Path::new(&into);
    let write = |target: &str, name: &str, bytes: &[u8]| {
        fs::create_dir_all(into.join(target)).expect("can be made");
        fs::write(into.join(target).join(name), bytes).expect("there is room");
    };

    let data = into.join("data");
    let device = Arc::new(Device(Mutex::new((1_793_605_200_000, None))));
    demo::seed(&data.to_string_lossy(), device.clone()).expect("the demo plays");
    let field = Field::open(data.to_string_lossy().into_owned(), device).expect("opens");
    let entries = field.entries().expect("reads");
    let pack = |bodies: &mut dyn Iterator<Item = &Vec<u8>>| {
        bodies.flat_map(|b| (b.len() as u16).to_be_bytes().into_iter().chain(b.clone())).collect::<Vec<u8>>()
    };
    let job = entries.iter().find_map(|e| e.job()).expect("there is a job");
    write("entry", "all", &pack(&mut entries.iter().map(|e| &e.bytes)));
    write("entry", "job", &pack(&mut entries.iter().filter(|e| e.job() == Some(job)).map(|e| &e.bytes)));
    for entry in &entries {
        write("entry", &entry.body.fact.kind(), &pack(&mut std::iter::once(&entry.bytes)));
    }

    let own: Vec<_> = entries.iter().take(4).cloned().collect();
    let mut has = Has::default();
    has.0.entry(short(&job.0)).or_default().insert(short(&own[0].body.device.0), 7);
    for (name, parts) in [("has", show_has(&has)), ("some", show_entries(&own))] {
        write("exchange", name, &[&[0], parts.expect("fits").join("\n").as_bytes()].concat());
    }
    write("exchange", "plain-has", &[&[1][..], &stillbar_core::journal::cbor::encode(&has).expect("writes")].concat());
    let wire: Vec<_> = own.iter().map(WireEntry::of).collect();
    let wire = serde_json::to_value(&wire).expect("writes");
    let id = job.to_string();
    let page = serde_json::json!({"entries": wire, "erased": [{"id": id, "device": id, "seq": 3, "site": id}], "next": "x", "more": true});
    write("exchange", "page", &[&[2][..], page.to_string().as_bytes()].concat());
    for (name, json) in [
        (
            "pushed",
            serde_json::json!({"answers": [{"id": id, "answer": "aside", "reason": "held-back"}], "last": {"seq": 4}}),
        ),
        (
            "digest",
            serde_json::json!({"sites": [{"site": id, "devices": [{"device": id, "count": 1, "last-seq": 1, "hash": id}]}]}),
        ),
        ("wanted", serde_json::json!({"wanted": [{"sha256": id, "sizes": ["320", "original"]}]})),
        ("able", serde_json::json!({"exchange": 1, "entries-per-push": 500, "photo-bytes": 100, "now-ms": 5})),
        ("refusal", serde_json::json!({"error": "held", "say": "A sentence."})),
    ] {
        write("exchange", name, &[&[3][..], json.to_string().as_bytes()].concat());
    }

    // The beginning of a job, so that it fits.
    let (ours, shared): (Vec<_>, Vec<_>) = entries.iter().cloned().partition(|e| e.job() == Some(job));
    let key = stillbar_core::journal::DeviceKey::from_secret(&[9; 32]).expect("a key");
    let short = record::gather(job, &ours[..2], &shared[..0], Default::default());
    let made = record::make(short, "2026-11-26T08:00:00+00:00", false, &key).expect("a record");
    write("record", "json", &made.json().expect("writes"));
    write("record", "pdf", &made.pdf().expect("writes"));

    write("tag", "text", &[&[0], demo::TAG.as_bytes()].concat());
    write("tag", "spaced", &[&[0], demo::TAG.to_lowercase().as_bytes()].concat());
    for (name, text) in [("frame", demo::TAG), ("other", "https://example.org/")] {
        let (side, luma) = Symbol::of_text(text).luma(2);
        write("tag", name, &[&[1, side as u8][..], &luma].concat());
    }

    write("image", "png", demo::PHOTO);
    let photo = stillbar_core::evidence::check(demo::PHOTO).expect("a photo");
    write("image", "jpeg", &photo.thumbnail);
    // The examples of the documentation.
    let formats = include_str!("../../docs/formats.md");
    let blocks = formats.split("```").skip(1).step_by(2).filter_map(|block| block.split_once('\n'));
    for (number, (kind, text)) in blocks.enumerate() {
        match kind {
            "json" if text.contains("\"nodes\"") => {
                write("network", &format!("json-{number}"), &[&[0], text.as_bytes()].concat())
            }
            "json" => write("case", &format!("json-{number}"), text.as_bytes()),
            "csv" => write("network", &format!("csv-{number}"), &[&[1], text.as_bytes()].concat()),
            _ => {}
        }
    }
    let rules =
        include_str!("../../docs/company-rules.md").split("```json\n").nth(1).and_then(|rest| rest.split("```").next());
    write("company", "json", rules.expect("an example").as_bytes());
    drop(field);
    fs::remove_dir_all(data).expect("is ours");
}
