//! Whether entries hang together: chains, what comes after what in the job, and what each device says that it had of the others.

use std::collections::{BTreeMap, BTreeSet};

use stillbar_journal::{DeviceId, Entry, EntryId};

/// What was found.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Linked {
    /// Where something does not fit: the entry, and why.
    pub broken: Vec<(String, String)>,
    /// Entries of other jobs and of no job that lie between those shown, in all chains.
    pub between: u64,
    /// Entries that are named and not here.
    pub absent: usize,
}

/// How an entry is called in a sentence.
pub(super) fn called(entry: &Entry) -> String {
    format!("entry {} of device {:.8} ({})", entry.body.seq, entry.body.device.to_string(), entry.id.short())
}

/// Checks `entries` of one `job` and those that they name.
pub(super) fn check(job: EntryId, entries: &[Entry]) -> Linked {
    let mut found = Linked::default();
    let mut ids = BTreeSet::new();
    let mut chains: BTreeMap<DeviceId, Vec<&Entry>> = BTreeMap::new();
    for entry in entries {
        if !ids.insert(entry.id) {
            found.broken.push((called(entry), "it is there twice.".into()));
        }
        if entry.job().is_some_and(|of| of != job) {
            found.broken.push((called(entry), "it belongs to another job.".into()));
        }
        chains.entry(entry.body.device).or_default().push(entry);
    }
    for chain in chains.values_mut() {
        chain.sort_by_key(|e| e.body.seq);
        of_chain(chain, &mut found);
        of_job(job, chain, &mut found);
    }
    for entry in entries {
        for seen in entry.body.seen.iter().filter(|_| entry.job() == Some(job)) {
            let here = chains.get(&seen.0).is_some_and(|chain| {
                let at = chain.binary_search_by_key(&seen.1, |e| e.body.seq);
                at.is_ok_and(|at| chain[at].id == seen.2 && chain[at].job() == Some(job))
            });
            if !here {
                let why = format!(
                    "it was written knowing entry {} of device {:.8} in this job, which is missing.",
                    seen.1,
                    seen.0.to_string()
                );
                found.broken.push((called(entry), why));
            }
        }
    }
    let named: BTreeSet<EntryId> = entries.iter().flat_map(|e| e.refers().into_iter().chain(e.body.site)).collect();
    found.absent = named.iter().filter(|id| !ids.contains(id)).count();
    found
}

fn of_chain(chain: &[&Entry], found: &mut Linked) {
    for pair in chain.windows(2) {
        let [before, entry] = pair else { continue };
        let mut broken = |why: &str| found.broken.push((called(entry), why.into()));
        if entry.body.seq == before.body.seq && entry.id != before.id {
            broken("another entry of this device has the same number.");
        }
        if entry.body.seq == before.body.seq + 1 && entry.body.prev != before.id {
            broken("it does not name the entry before it.");
        }
        if entry.body.clock <= before.body.clock && entry.id != before.id {
            broken("its place in the order is before that of the entry before it.");
        }
        found.between += (entry.body.seq - before.body.seq).saturating_sub(1);
    }
    if let Some(first) = chain.first().filter(|e| e.body.seq == 1 && e.body.prev != EntryId::NONE) {
        found.broken.push((called(first), "it is the first of its device and names one before it.".into()));
    }
}

fn of_job(job: EntryId, chain: &[&Entry], found: &mut Linked) {
    let mut before: Option<EntryId> = None;
    for entry in chain.iter().filter(|e| e.job() == Some(job)) {
        if entry.body.after != before {
            let why = "the entry of its device before it in this job is missing or is another one.";
            found.broken.push((called(entry), why.into()));
        }
        before = Some(entry.id);
    }
}
