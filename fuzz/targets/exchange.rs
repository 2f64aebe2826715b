//! Messages of the exchange: the JSON that the office answers, the JSON that it is sent, and the codes that pass from phone to phone.

#![no_main]

use libfuzzer_sys::fuzz_target;
use stillbar_core::sync::near::{self, PartKind, PartStep, PartsGathered};
use stillbar_core::wire::{AllWanted, Capabilities, Carried, Digest, Enrolled, Page, Pushed, Refusal, WireEntry};

fuzz_target!(|bytes: &[u8]| {
    match bytes {
        // The parts of a code, one a line.
        [0, text @ ..] => {
            let mut gathered = PartsGathered::default();
            for part in String::from_utf8_lossy(text).lines() {
                if let Some(PartStep::Whole(kind, plain)) = gathered.take(part) {
                    match kind {
                        PartKind::Has => drop(near::read_has(&plain)),
                        PartKind::Entries => drop(near::read_entries(&plain)),
                    }
                }
            }
        }
        // What such a code holds when it is unpacked.
        [1, plain @ ..] => {
            if let Some(has) = near::read_has(plain) {
                let parts = near::show_has(&has).unwrap_or_default();
                let mut gathered = PartsGathered::default();
                let whole = parts.iter().filter_map(|part| gathered.take(part)).last();
                assert!(
                    parts.is_empty() || matches!(whole, Some(PartStep::Whole(PartKind::Has, back)) if back == plain)
                );
            }
            near::read_entries(plain);
        }
        [2, json @ ..] => {
            if let Ok(page) = serde_json::from_slice::<Page>(json) {
                page.entries.iter().for_each(|entry| drop(entry.open()));
            }
            drop(serde_json::from_slice::<Vec<WireEntry>>(json));
        }
        [_, json @ ..] => {
            drop(serde_json::from_slice::<Pushed>(json));
            drop(serde_json::from_slice::<Digest>(json));
            drop(serde_json::from_slice::<AllWanted>(json));
            drop(serde_json::from_slice::<Capabilities>(json));
            drop(serde_json::from_slice::<Enrolled>(json));
            drop(serde_json::from_slice::<Refusal>(json));
        }
        [] => {}
    }
});
