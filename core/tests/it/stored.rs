//! How long stored energy is waited for, from docs/systems.md: never less than its label says, or the table where it has none.

use stillbar_core::job::waits::least_wait;
use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::{Found, StoredKind};
use stillbar_core::text;

use crate::asked_more::bench::{Bench, Case};
use crate::desk::*;
use crate::holes::by_hand::MARA;
use crate::restoring::keep;

fn stored(seconds: u32, kind: Option<StoredKind>, label: Option<u32>) -> Fact {
    let found = Some(Found { what: "Drive of pump 3".into(), at: "X5".into() });
    Fact::StoredAnswered { found, seconds, looked: String::new(), kind, label }
}

/// The page has each kind with its wait, a button of the app says the same, and what nobody knows waits longest.
#[test]
fn the_page_says_what_the_app_has() {
    let page = include_str!("../../../docs/systems.md");
    let longest = StoredKind::ALL.map(|kind| least_wait(kind).seconds).into_iter().max();
    assert_eq!(Some(least_wait(StoredKind::NotKnown).seconds), longest);
    for kind in StoredKind::ALL {
        let (code, minutes) = (serde_json::to_value(kind).unwrap(), least_wait(kind).seconds / 60);
        let row = format!("| `{}` | {minutes} min | ", code.as_str().unwrap());
        assert!(page.contains(&row), "docs/systems.md has no {row}");
        assert!(text::stored_kind(kind).contains(&format!("wait {minutes} min")), "{}", text::stored_kind(kind));
    }
}

/// No label: the table, to the second. A label, longer or shorter: the label.
#[test]
fn a_wait_is_no_shorter_than_its_label_or_the_table() {
    let (_folder, _device, field) = begun(&[PEOPLE, PLAN]);
    for kind in StoredKind::ALL {
        let least = least_wait(kind).seconds;
        let why = keep(&field, stored(least - 1, Some(kind), None)).unwrap_err();
        assert!(why.contains("Wait at least"), "{kind:?}: {why}");
        keep(&field, stored(least, Some(kind), None)).unwrap();
        keep(&field, stored(least + 600, Some(kind), None)).unwrap();
        keep(&field, stored(120, Some(kind), Some(120))).unwrap();
        assert!(keep(&field, stored(119, Some(kind), Some(120))).is_err(), "{kind:?}: below its label");
        assert!(keep(&field, stored(least, Some(kind), Some(least + 1))).is_err(), "{kind:?}: its label is longer");
        assert!(keep(&field, stored(0, Some(kind), Some(0))).is_err(), "{kind:?}: no wait at all");
    }
    // What nobody named is what nobody knows.
    assert!(keep(&field, stored(899, None, None)).is_err());
}

/// From a phone that asks no gate: the wait of the table counts. What was written before there was a table counts as it was meant.
#[test]
fn a_shorter_wait_from_elsewhere_is_taken_as_the_table() {
    for (said, kind, label, waits) in [
        (60, Some(StoredKind::Drive), None, 900),
        (60, Some(StoredKind::PowerFactor), None, 180),
        (60, Some(StoredKind::NotKnown), Some(120), 120),
        (1200, Some(StoredKind::Ups), None, 1200),
        (300, None, None, 300),
    ] {
        let bench = Bench::new(Case::house_socket(), &[], &[]);
        bench.ungated(77, MARA, stored(said, kind, label));
        let job = bench.folded();
        let found: Vec<u32> = job.stored.iter().filter(|s| s.found.is_some()).map(|s| s.seconds).collect();
        assert_eq!(found, [waits], "{kind:?} {label:?}");
    }
}

/// On the page: nothing picked is not known, a longer one is taken, and a shorter one asks for the label.
#[test]
fn the_page_proposes_the_wait() {
    let plan = PLAN[..PLAN.find("tap No stored energy found").unwrap()].to_owned();
    let (_folder, device, field) = begun(&[PEOPLE, &plan]);
    let what = "fill Or what you found = Drive of pump 3\nfill Where its terminals are = X5\n";
    device.play(
        &field,
        &format!(
            "{what}see wait 15 min\nfill Or a longer wait, in minutes = 4\ntap Stored energy found\n\
             see Wait at least 15 min\nfill Or a longer wait, in minutes = 20\ntap Stored energy found\nsee wait 20 min"
        ),
    );
    let label = "fill Waiting time on its label, in minutes = ";
    device.play(
        &field,
        &format!(
            "{what}choose What it is, and the wait without a label = Power-factor capacitors: wait 3 min (IEC 60831-1)\ntap Stored energy found\n\
             see wait 3 min\n{what}{label}0\ntap Stored energy found\nsee whole minutes\n{label}2\ntap Stored energy found\nsee wait 2 min"
        ),
    );
    let last = field.entries().unwrap().pop().unwrap();
    let Fact::StoredAnswered { seconds, kind, label, .. } = last.body.fact else { panic!("{:?}", last.body.fact) };
    // What was picked goes with what was kept: the next one is not known again.
    assert_eq!((seconds, label, kind), (120, Some(120), Some(StoredKind::NotKnown)));
}
