//! One hot path so many times, for counting instructions: `hot PATH TIMES` under callgrind, by `tests/bench/instructions.py`. With 0 times
//! it only prepares; the difference is the path's own.

#[path = "year/mod.rs"]
#[allow(dead_code, reason = "benchmarks use the rest")]
mod year;

use std::hint::black_box;

use stillbar_core::evidence::check;
use stillbar_core::job::Job;
use stillbar_core::journal::{DeviceKey, Entry};
use stillbar_core::prove::{Order, parse_conductors, plan};
use stillbar_core::store::Store;
use stillbar_core::tag::Symbol;
use stillbar_core::tag::read::{Luma, frame};
use stillbar_core::{Field, Platform, demo};

fn main() {
    let mut words = std::env::args().skip(1);
    let path = words.next().expect("a path");
    let times: usize = words.next().expect("how often").parse().expect("a number");
    let folder = tempfile::tempdir().expect("a folder");
    year::write(folder.path(), 0, 200);
    let mut store = Store::open(folder.path()).expect("opens");
    let job = store.jobs().expect("reads").remove(0).id;
    let mut entries = store.entries_of(job).expect("reads");
    let first = entries[0].clone();
    let secret = year::Device::new(0).load_secret().expect("has one").expect("has one");
    let key = DeviceKey::from_secret(&secret).expect("32 bytes");
    match path.as_str() {
        "open an entry" => (0..times).for_each(|_| {
            black_box(Entry::open(first.bytes.clone(), first.signature).expect("holds"));
        }),
        "seal an entry" => (0..times).for_each(|_| {
            black_box(Entry::seal(first.body.clone(), &key, &|count| vec![7; count as usize]).expect("fits"));
        }),
        "fold a job" => (0..times).for_each(|_| {
            black_box(Job::fold(&entries).expect("it has its opening"));
        }),
        "plan 5 conductors" => {
            let conductors = parse_conductors("L1,L2,L3,N,PE").expect("five");
            (0..times).for_each(|_| drop(black_box(plan(&conductors, Order::ALL[0]))));
        }
        "keep an entry" => (0..times).for_each(|_| {
            let head = store.head(key.device()).expect("reads");
            let mut body = entries[entries.len() - 1].body.clone();
            (body.seq, body.prev, body.clock.0) = (head.seq + 1, head.id, body.clock.0 + 1000);
            let entry = Entry::seal(body, &key, &|count| vec![7; count as usize]).expect("fits");
            entries.push(entry.clone());
            let folded = Job::fold(&entries).expect("it has its opening");
            store.append(&[entry], &[&folded]).expect("there is room");
        }),
        "go to a job and draw it" => {
            drop(store);
            let device = year::Device::new(0);
            let field = Field::open(folder.path().to_string_lossy().into_owned(), device).expect("opens");
            (0..times).for_each(|_| {
                field.act(None, format!("go /job/{job}"), vec![]);
                black_box(field.screen());
            });
        }
        "read a frame" => {
            let (side, pixels) = Symbol::of_text(demo::TAG).luma(8);
            let luma = Luma::new(side, side, &pixels).expect("a picture");
            (0..times).for_each(|_| assert_eq!(black_box(frame(&luma)).tags.len(), 1));
        }
        "look at a photo" => (0..times).for_each(|_| drop(black_box(check(demo::PHOTO).expect("a photo")))),
        other => panic!("{other} is no path"),
    }
}
