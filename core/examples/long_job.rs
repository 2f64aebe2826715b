//! A long job with photos, played as a person would: `cargo run --example long_job FOLDER ROUNDS PHOTO...`. Leaves its journal in
//! FOLDER, for `tests/bench/record.py`; ROUNDS is how often the work is left and begun again.

mod bench;

use std::path::Path;

use bench::Bench;
use stillbar_core::journey::{Props, play};
use stillbar_core::{Field, demo};

fn main() {
    let mut words = std::env::args().skip(1);
    let folder = words.next().expect("a folder");
    let rounds: usize = words.next().expect("rounds").parse().expect("a number");
    let photos: Vec<Vec<u8>> = words.map(|path| std::fs::read(path).expect("a photo")).collect();
    let key = Path::new(&folder).join("device.key");
    let field = Field::open(folder, Bench::with_key(key)).expect("opens");
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
    say("tap The job\ntap Covers off: treat as live", demo::PHOTO);
    say(open, demo::PHOTO);
    for _round in 0..rounds {
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
