//! From an act to the next screen, of 200 blocks: `cargo run --release -p stillbar-core --example screen_speed FOLDER [times]`.
//! Leaves its journal and key in FOLDER, for the same measurement through the bindings (`tests/bench/bridge.py`).

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Instant, SystemTime};

use stillbar_core::journey::{Props, play};
use stillbar_core::{Field, Platform, PlatformError, demo};

/// Blocks of the screen that is measured: a time line of so many entries.
const BLOCKS: usize = 200;

struct Bench(PathBuf);

impl Platform for Bench {
    fn now_ms(&self) -> i64 {
        SystemTime::UNIX_EPOCH.elapsed().map_or(0, |d| d.as_millis() as i64)
    }
    fn offset_minutes(&self, _: i64) -> i32 {
        0
    }
    fn random(&self, count: u32) -> Vec<u8> {
        // Nothing here is kept or relied on.
        (0..count).map(|k| k as u8).collect()
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
    let folder = words.next().expect("a folder that is not there yet");
    let times: usize = words.next().map_or(501, |n| n.parse().expect("a number"));
    std::fs::create_dir_all(&folder).expect("can be made");
    let platform = Arc::new(Bench(Path::new(&folder).join("bench.key")));
    let field = Field::open(format!("{folder}/journal"), platform).expect("opens");
    let props = Props { photo: demo::PHOTO, wait: &|_| {} };
    for script in ["people", "plan", "add-instruments", "circuits"] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("journeys/{script}.journey"));
        play(&field, &std::fs::read_to_string(path).expect("is there"), &props).expect("plays");
    }
    play(&field, "tap The job\ntap Circuits to shed", &props).expect("plays");
    let line = |field: &Field| {
        field.act(None, "up".into(), vec![]);
        play(field, "tap Time line", &props).expect("is a button");
        field.screen().blocks.len()
    };
    while line(&field) < BLOCKS {
        let number = field.screen().blocks.len();
        let add = format!(
            "tap The job\ntap Circuits to shed\nfill Circuit, as it is labelled = F{number}\nfill What it serves = Hall {number}\ntap List this circuit"
        );
        play(&field, &add, &props).expect("plays");
    }
    let route = field.screen().route;
    let blocks = field.screen().blocks.len();
    let mut took: Vec<_> = (0..times)
        .map(|_| {
            let start = Instant::now();
            field.act(None, format!("go {route}"), vec![]);
            assert_eq!(field.screen().blocks.len(), blocks);
            start.elapsed()
        })
        .collect();
    took.sort_unstable();
    let us = |at: usize| took[at].as_micros();
    println!(
        r#"{{"route":"{route}","blocks":{blocks},"median_us":{},"p95_us":{}}}"#,
        us(times / 2),
        us(times * 95 / 100)
    );
}
