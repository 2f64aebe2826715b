//! The tables follow from the journal, and the order of arrival does not matter.

use proptest::prelude::*;
use stillbar_core::job::Job;
use stillbar_core::store::Store;

use crate::desk::*;

/// A job that used every kind of step, with a proof that was voided in between.
fn lines() -> Vec<String> {
    [PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE].concat().lines().map(str::to_owned).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    /// Wherever a job is broken off, working the tables out again from nothing gives the same tables.
    #[test]
    fn replay_gives_the_same_tables(cut in 10usize..230, seed in any::<u64>()) {
        let folder = tempfile::tempdir().unwrap();
        let device = Device::new(seed);
        let field = device.open(folder.path()).unwrap();
        let lines = lines();
        let cut = cut.min(lines.len());
        device.play(&field, &lines[..cut].join("\n"));
        drop(field);
        let mut store = Store::open(folder.path()).unwrap();
        let before = store.tables().unwrap();
        store.replay().unwrap();
        prop_assert_eq!(before, store.tables().unwrap());
    }

    /// The entries of a job, shuffled, with some of them twice, fold to the same job.
    #[test]
    fn any_order_of_arrival_gives_the_same_job(shuffle in prop::collection::vec(any::<u32>(), 120), twice in 0usize..60) {
        let entries = finished().0.clone();
        let (_, whole) = finished();
        let mut mixed: Vec<_> = entries.iter().cloned().zip(shuffle.iter().cycle()).collect();
        mixed.push(mixed[twice % mixed.len()].clone());
        mixed.sort_by_key(|(entry, chance)| (chance.wrapping_mul(entry.body.seq as u32 | 1), entry.body.seq));
        let mixed: Vec<_> = mixed.into_iter().map(|(entry, _)| entry).collect();
        prop_assert_eq!(&Job::fold(&mixed).unwrap(), whole);
    }
}

fn finished() -> &'static (Vec<stillbar_core::journal::Entry>, Job) {
    static DONE: std::sync::OnceLock<(Vec<stillbar_core::journal::Entry>, Job)> = std::sync::OnceLock::new();
    DONE.get_or_init(|| {
        let (folder, _device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE]);
        drop(field);
        let store = Store::open(folder.path()).unwrap();
        let job = store.jobs().unwrap()[0].id;
        let entries = store.entries_of(job).unwrap();
        let whole = Job::fold(&entries).unwrap();
        (entries, whole)
    })
}

/// Entry by entry (as it happens on the device) and all at once (as after a restart) give the same job.
#[test]
fn extending_equals_folding() {
    let (entries, _) = finished();
    let mut grown = Job::fold(&entries[..1]).unwrap();
    for (i, entry) in entries.iter().enumerate().skip(1) {
        grown.extend(entry);
        assert_eq!(grown, Job::fold(&entries[..=i]).unwrap(), "entry {i}");
    }
}
