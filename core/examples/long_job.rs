//! A long job with photos, played as a person would: `cargo run --example long_job FOLDER PHOTO...`. Leaves its journal in FOLDER, for
//! `tests/bench/record.py`.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::SystemTime;

use stillbar_core::journey::{Props, play};
use stillbar_core::{Field, Platform, PlatformError, demo};

/// How often the work is left: a week of breaks and shifts.
const ROUNDS: usize = 20;

struct Bench(PathBuf, AtomicU64);

impl Platform for Bench {
    fn now_ms(&self) -> i64 {
        SystemTime::UNIX_EPOCH.elapsed().map_or(0, |d| d.as_millis() as i64)
    }
    fn offset_minutes(&self, _: i64) -> i32 {
        60
    }
    fn random(&self, count: u32) -> Vec<u8> {
        // Nothing here is kept or relied on.
        (0..count).map(|_| (self.1.fetch_add(0x9E37_79B9, Ordering::Relaxed) >> 7) as u8).collect()
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(std::fs::read(&self.0).ok())
    }
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        std::fs::write(&self.0, secret).map_err(|e| PlatformError::Failed { why: e.to_string() })
    }
}

fn main() {
    let mut words = std::env::args().skip(1);
    let folder = words.next().expect("a folder");
    let photos: Vec<Vec<u8>> = words.map(|path| std::fs::read(path).expect("a photo")).collect();
    let key = Path::new(&folder).join("device.key");
    let field = Field::open(folder, Arc::new(Bench(key, AtomicU64::new(1)))).expect("opens");
    let say = |script: &str, photo: &[u8]| {
        if let Err(why) = play(&field, script, &Props { photo, wait: &|_| {} }) {
            panic!("{why}");
        }
    };
    let journey = |name: &str| {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("journeys/{name}.journey"));
        std::fs::read_to_string(path).expect("is there")
    };
    for name in ["people", "plan", "add-instruments", "circuits", "isolate"] {
        say(&journey(name), demo::PHOTO);
    }
    for (number, photo) in photos.iter().enumerate() {
        let point = if number % 2 == 0 { "Q4 feeder switch" } else { "Q9 changeover switch" };
        say(&format!("tap The job\ntap Isolate {point}\nphoto Photo of {point}"), photo);
    }
    // What makes a job long: work that is left and begun again, each time under a proof of its own.
    let prove = journey("prove");
    let (open, again) = prove.split_at(prove.find("choose Proved on").expect("the indicator is proved"));
    say("tap The job\ntap Open up, treating it as live", demo::PHOTO);
    say(open, demo::PHOTO);
    for _round in 0..ROUNDS {
        say(again, demo::PHOTO);
        say(
            "tap Begin work\nfill Why the work is left = Break\ntap Leave the work\ntap The job\ntap Prove the indicator",
            demo::PHOTO,
        );
    }
    say(again, demo::PHOTO);
    for name in ["work", "restore"] {
        say(&journey(name), demo::PHOTO);
    }
}
