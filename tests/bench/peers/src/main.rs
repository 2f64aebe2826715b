//! A merge of many entries into an empty phone, by Stillbar and by libraries that merge, each holding the same facts:
//! `peers KIND ENTRIES make FILE` writes what one side sends, `peers KIND ENTRIES merge FILE` takes it in and prints what it took.
//! `tests/bench/peers.py` runs them all, each in a process of its own, so that the memory is that of the merge.
//!
//! The peers hold a map from the entry's id to its fact as JSON. Stillbar also checks every signature, keeps everything on disk and works out
//! its tables, which they do not.

#[path = "../../../../core/examples/year/mod.rs"]
#[allow(dead_code)]
mod year;

use std::time::Instant;

use stillbar_core::Field;
use stillbar_core::journal::Entry;
use stillbar_core::store::Store;
use stillbar_core::sync::near;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [kind, entries, what, file] = &words[..] else { panic!("KIND ENTRIES make|merge FILE") };
    let count: usize = entries.parse().expect("a number");
    if what == "make" {
        let folder = tempfile::tempdir().expect("a folder");
        year::write(folder.path(), 0, count);
        let entries = Store::open(folder.path()).expect("opens").all_entries().expect("reads");
        std::fs::write(file, sent(kind, &entries)).expect("there is room");
        return;
    }
    let bytes = std::fs::read(file).expect("was made");
    let before = resident("VmRSS:");
    let start = Instant::now();
    let merged = merge(kind, &bytes);
    let took = start.elapsed();
    println!(
        r#"{{"kind":"{kind}","entries":{merged},"bytes":{},"ms":{},"peak_mib":{}}}"#,
        bytes.len(),
        took.as_millis(),
        resident("VmHWM:").saturating_sub(before) >> 10
    );
}

/// What one side sends to another that has nothing.
fn sent(kind: &str, entries: &[Entry]) -> Vec<u8> {
    let facts = entries.iter().map(|e| (e.id.to_string(), serde_json::to_string(&e.body.fact).expect("writes")));
    match kind {
        "stillbar" => {
            let mut ordered: Vec<&Entry> = entries.iter().collect();
            ordered.sort_by_key(|e| (e.body.device, e.body.seq));
            let mut bytes = Vec::new();
            for entry in ordered {
                bytes.extend((entry.bytes.len() as u16).to_be_bytes());
                bytes.extend(&entry.bytes);
                bytes.extend(entry.signature);
            }
            bytes
        }
        "automerge" => {
            use automerge::transaction::Transactable;
            let mut doc = automerge::AutoCommit::new();
            facts.for_each(|(id, fact)| doc.put(automerge::ROOT, id, fact).expect("is put"));
            doc.save()
        }
        "loro" => {
            let doc = loro::LoroDoc::new();
            let map = doc.get_map("entries");
            facts.for_each(|(id, fact)| map.insert(&id, fact).expect("is put"));
            doc.commit();
            doc.export(loro::ExportMode::Snapshot).expect("writes")
        }
        "yrs" => {
            use yrs::{Map, ReadTxn, Transact};
            let doc = yrs::Doc::new();
            let map = doc.get_or_insert_map("entries");
            let mut txn = doc.transact_mut();
            facts.for_each(|(id, fact)| drop(map.insert(&mut txn, id, fact)));
            drop(txn);
            doc.transact().encode_state_as_update_v1(&yrs::StateVector::default())
        }
        other => panic!("{other} is no kind"),
    }
}

/// Takes it in, where there is one thing of its own already. How many are there afterwards.
fn merge(kind: &str, bytes: &[u8]) -> usize {
    match kind {
        "stillbar" => {
            let folder = tempfile::tempdir().expect("a folder");
            let field = Field::open(folder.path().to_string_lossy().into_owned(), year::Device::new(1)).expect("opens");
            let entries = near::read_entries(bytes).expect("every signature holds");
            field.take_in(entries).expect("there is room").new
        }
        "automerge" => {
            use automerge::ReadDoc;
            use automerge::transaction::Transactable;
            let mut doc = automerge::AutoCommit::new();
            doc.put(automerge::ROOT, "own", "of this phone").expect("is put");
            doc.load_incremental(bytes).expect("reads");
            doc.length(automerge::ROOT) - 1
        }
        "loro" => {
            let doc = loro::LoroDoc::new();
            doc.get_map("entries").insert("own", "of this phone").expect("is put");
            doc.commit();
            doc.import(bytes).expect("reads");
            doc.get_map("entries").len() - 1
        }
        "yrs" => {
            use yrs::updates::decoder::Decode;
            use yrs::{Map, Transact};
            let doc = yrs::Doc::new();
            let map = doc.get_or_insert_map("entries");
            map.insert(&mut doc.transact_mut(), "own", "of this phone");
            doc.transact_mut().apply_update(yrs::Update::decode_v1(bytes).expect("reads")).expect("fits");
            map.len(&doc.transact()) as usize - 1
        }
        other => panic!("{other} is no kind"),
    }
}

/// KiB of this process, by proc(5).
fn resident(what: &str) -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").expect("proc(5)");
    status.lines().find_map(|l| l.strip_prefix(what)?.split_whitespace().next()?.parse().ok()).expect("proc(5)")
}
