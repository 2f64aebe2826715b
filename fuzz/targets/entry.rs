//! Entries as they come from another device, without their signatures, which no fuzzer can make: whatever decodes has exactly one
//! encoding, and any heap of such entries folds into a job, a world and a network without a panic.
//!
//! The input is entries one after the other, each behind its length in two bytes, as `sync::near` packs them without signatures.

#![no_main]

use libfuzzer_sys::fuzz_target;
use stillbar_core::job::Job;
use stillbar_core::journal::Entry;
use stillbar_core::supply::Drawn;
use stillbar_core::text::title;
use stillbar_core::world::World;

fuzz_target!(|bytes: &[u8]| {
    let mut rest = bytes;
    let mut entries = Vec::new();
    while let Some((length, after)) = rest.split_at_checked(2) {
        let length = usize::from(u16::from_be_bytes([length[0], length[1]]));
        let (body, after) = after.split_at(length.min(after.len()));
        rest = after;
        if let Ok(entry) = Entry::trusted(body.to_vec(), [0; 64]) {
            let again = entry.keeping(&|_| true).expect("it was read");
            assert_eq!(again.bytes, body, "one content, one encoding");
            let bare = entry.withheld().expect("it was read");
            assert_eq!((bare.id, bare.signed()), (entry.id, entry.signed()), "names stand beside what is signed");
            assert!(Entry::open(body.to_vec(), [0; 64]).is_err(), "a signature of zeros holds");
            entries.push(entry);
        }
    }
    entries.sort_by_key(Entry::order);
    entries.dedup_by_key(|e| e.id);
    let (mut world, mut drawn) = (World::default(), Drawn::default());
    for entry in &entries {
        entry.refers();
        world.extend(entry);
        drawn.extend(entry);
    }
    let folded = Job::fold(&entries);
    if let Some(job) = &folded {
        job.standing();
        job.plan();
        for state in job.steps() {
            title(state.step, job);
        }
        drawn.network();
        let (first, later) = entries.split_at(entries.len() / 2);
        if let Some(mut grown) = Job::fold(first) {
            later.iter().for_each(|entry| grown.extend(entry));
        }
    }
});
