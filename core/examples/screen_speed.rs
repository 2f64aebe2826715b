//! From an act to the next screen, of 200 blocks: `cargo run --release -p stillbar-core --example screen_speed FOLDER [times]`.
//! Leaves its journal and key in FOLDER, for the same measurement through the bindings (`tests/bench/bridge.py`).

mod bench;

use std::path::Path;
use std::time::Instant;

use bench::Bench;
use stillbar_core::journey::{Props, play};
use stillbar_core::{Field, demo};

/// Blocks of the screen that is measured: a time line of so many entries.
const BLOCKS: usize = 200;

fn main() {
    let mut words = std::env::args().skip(1);
    let folder = words.next().expect("a folder that is not there yet");
    let times: usize = words.next().map_or(501, |n| n.parse().expect("a number"));
    std::fs::create_dir_all(&folder).expect("can be made");
    let platform = Bench::with_key(Path::new(&folder).join("bench.key"));
    let field = Field::open(format!("{folder}/journal"), platform).expect("opens");
    let props = Props { photo: demo::PHOTO, wait: &|_| {} };
    for script in ["people", "plan", "add-instruments", "circuits"] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("journeys/{script}.journey"));
        play(&field, &std::fs::read_to_string(path).expect("is there"), &props).expect("plays");
    }
    play(&field, "tap The job\ntap Loads to switch off", &props).expect("plays");
    let line = |field: &Field| {
        play(field, "tap The job\ntap Time line", &props).expect("are buttons");
        field.screen().blocks.len()
    };
    while line(&field) < BLOCKS {
        let number = field.screen().blocks.len();
        let add = format!(
            "tap The job\ntap Loads to switch off\nfill Circuit, as it is labelled = F{number}\nfill What it serves = Hall {number}\ntap List this circuit"
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
