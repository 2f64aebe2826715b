//! How long reading, checking and proposing take: `cargo run --release --example supply_speed NET.json ZONE [LOCKED,…]`.
//!
//! Prints one JSON object with the median and the slowest of each in milliseconds; `tests/bench/supply.py` makes the networks and the table.

use std::time::Instant;

use stillbar_core::supply::{States, check, files, propose};

fn main() {
    let mut words = std::env::args().skip(1);
    let (Some(path), Some(zone)) = (words.next(), words.next()) else {
        eprintln!("Give a network and a work zone.");
        std::process::exit(2);
    };
    let locked: Vec<String> = words.next().unwrap_or_default().split(',').map(str::to_owned).collect();
    let text = std::fs::read_to_string(&path).expect("the network's file");
    let read = || files::from_json(&text).expect("a network").network;
    let network = read();
    let zone = [zone];
    let locked: Vec<String> = locked.into_iter().filter(|id| !id.is_empty()).collect();
    let proposals = propose(&network, &zone, &States::new()).expect("a zone that is there");
    let told = [
        timed("read", 9, || drop(read())),
        timed("check", 101, || drop(check(&network, &zone, &locked))),
        timed("propose", 9, || drop(propose(&network, &zone, &States::new()))),
        format!("\"proposals\":{},\"complete\":{}", proposals.proposals.len(), proposals.complete),
    ];
    println!("{{{}}}", told.join(","));
}

fn timed(what: &str, times: usize, work: impl Fn()) -> String {
    let mut took: Vec<f64> = (0..times)
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed().as_secs_f64() * 1000.0
        })
        .collect();
    took.sort_by(f64::total_cmp);
    format!("\"{what}_ms\":[{:.2},{:.2}]", took[times / 2], took[times - 1])
}
