//! Supply networks from files: read or refused with a place; what is read survives being written and read again, and every question about
//! it is answered.
//!
//! The first byte chooses: JSON (ours or pandapower's), or two CSV files with a line of `---` between them.

#![no_main]

use libfuzzer_sys::fuzz_target;
use stillbar_core::supply::files::{from_csv, from_json, to_csv, to_json};
use stillbar_core::supply::{States, check, propose};
use stillbar_core::text::file_error;

fuzz_target!(|bytes: &[u8]| {
    let Some((first, text)) = bytes.split_first() else { return };
    let Ok(text) = std::str::from_utf8(text) else { return };
    let read = match first {
        0 => from_json(text),
        _ => {
            let (nodes, links) = text.split_once("---\n").unwrap_or((text, ""));
            from_csv(nodes, links)
        }
    };
    let read = match read {
        Ok(read) => read,
        Err(refused) => {
            let said = file_error(&refused);
            assert!(said.ends_with('.'), "{said}");
            assert!(text.contains("safe") || !said.contains("safe"), "{said}");
            return;
        }
    };
    let network = read.network;
    let again = from_json(&to_json(&network)).expect("what is written can be read");
    assert_eq!(to_json(&again.network), to_json(&network));
    let (nodes, links) = to_csv(&network);
    let _ = from_csv(&nodes, &links);
    let states = States::default();
    for node in network.nodes().iter().take(3) {
        let locked: Vec<&str> = network.links().iter().take(2).map(|link| link.id.as_str()).collect();
        let _ = check(&network, &[&node.id], &locked);
        if network.links().len() <= 20 {
            let _ = propose(&network, &[&node.id], &states);
        }
    }
});
