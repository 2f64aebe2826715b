//! Two phones that test at once, and a phone that has forgotten: what either met counts for both.

use std::sync::Arc;
use std::sync::atomic::Ordering;

use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::prove::Reading;

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::{Desk, Phone, desk};

/// The covers are off. Mara has one phone and the other is at the same board: neither hears of the other from here on.
fn two() -> (Phone, Phone) {
    let one = opened_up();
    let other = Phone::beside(&one, 2, MARA);
    (one, other)
}

/// A phone that hears of these, in this order.
fn third(seed: u64, heard: &[&Phone]) -> Phone {
    let third = Phone::of(Device::new(seed));
    third.device.now.store(heard[0].device.now.load(Ordering::Relaxed), Ordering::Relaxed);
    heard.iter().for_each(|phone| third.hear(phone));
    third
}

fn minutes_pass(phones: [&Phone; 2], minutes: i64) {
    phones.iter().for_each(|phone| phone.device.pass(minutes * MINUTE));
}

/// Each begins a test of its own; the other proves dead in its own. What the one meets, before or after that, keeps everybody from work, in
/// whatever order they hear of it.
fn ends_live(after: bool, says: &str, meets: impl Fn(&Phone, EntryId)) {
    let (one, other) = two();
    let run = begins(&one, MARA);
    if !after {
        meets(&one, run);
    }
    minutes_pass([&one, &other], 1);
    let proof = proves(&other, MARA);
    minutes_pass([&one, &other], 1);
    if after {
        meets(&one, run);
    }
    assert!(other.proved() && third(7, &[&other]).proved(), "until they hear of each other");
    let thirds = [third(8, &[&one, &other]), third(9, &[&other, &one])];
    one.hear(&other);
    other.hear(&one);
    for phone in [&one, &other, &thirds[0], &thirds[1]] {
        let shown = banner(phone);
        assert!(!phone.proved() && shown.to_lowercase().contains("treat as live"), "{shown}");
        assert!(shown.contains(says), "the banner says what was met: {shown}");
        assert!(tries(phone, MARA, Fact::WorkBegan { run: proof }).is_err());
    }
}

/// N – L2 lit on one phone; a minute later the other, unaware, begins a test and reads nothing.
#[test]
fn a_voltage_read_before_the_other_begins_keeps_both_live() {
    ends_live(false, "N – L2", |one, run| _ = keeps(one, MARA, lit(run, "N", "L2")));
}

/// PE – L2 lit in the one's own test a minute after the other has proved dead in a newer one.
#[test]
fn a_voltage_read_after_the_other_proved_keeps_both_live() {
    ends_live(true, "PE – L2", |one, run| _ = keeps(one, MARA, lit(run, "PE", "L2")));
}

/// "The reference is not earth" in the one's own test, after the other has proved dead in a newer one.
#[test]
fn a_reference_that_fails_after_the_other_proved_keeps_both_live() {
    ends_live(true, "not earth", |one, run| _ = keeps(one, MARA, earth(run, false)));
}

/// The indicator fails the one's second proof, after the other has proved dead with the same indicator.
#[test]
fn an_indicator_that_fails_after_the_other_proved_with_it_keeps_both_live() {
    ends_live(true, "failed", |one, run| {
        reads(one, MARA, run, &pairs(one), Reading::None);
        keeps(one, MARA, second_proof(one, run, false));
    });
}

/// A cause that was noted elsewhere does not make a whole test good that was made without knowing of either.
#[test]
fn an_indication_ends_with_its_cause_and_a_whole_test_by_who_knew() {
    let (one, other) = two();
    let run = begins(&one, MARA);
    let seen = keeps(&one, MARA, lit(run, "N", "L2"));
    other.hear(&one);
    assert!(tries(&one, MARA, first_proof(&one, true)).is_err(), "the cause comes first");
    keeps(&one, MARA, cause(seen, true));
    assert!(tries(&other, MARA, first_proof(&other, true)).is_err(), "the other has not heard of the cause");
    // A whole test by somebody who had heard of nothing of this.
    let (begun, late) = two();
    let run = begins(&begun, MARA);
    let seen = keeps(&begun, MARA, lit(run, "N", "L2"));
    keeps(&begun, MARA, cause(seen, true));
    minutes_pass([&begun, &late], 1);
    proves(&late, MARA);
    assert!(late.proved());
    late.hear(&begun);
    assert!(!late.proved(), "{}", banner(&late));
    proves(&late, MARA);
    assert!(late.proved(), "{}", banner(&late));
    begun.hear(&late);
    assert!(begun.proved(), "{}", banner(&begun));
}

/// The folder is put back from a copy without its locks, and nobody has an office: who is beside tells of them, and they are on.
#[test]
fn own_locks_that_a_copy_forgot_are_on_again_once_heard() {
    let mut one = Phone::begun(&[PEOPLE, PLAN]);
    let copy = one.copy();
    one.play(ISOLATE);
    let other = Phone::beside(&one, 2, MARA);
    one.put_back(&copy);
    assert!(one.at("/locks").contains("has forgotten what it wrote: treat as live"), "{}", one.at("/locks"));
    one.hear(&other);
    assert!(one.at("/").contains("Locks on now: 2"), "{}", one.at("/"));
    for label in ["ML 7", "ML 8"] {
        assert!(one.field().known_locks().iter().any(|l| l.on && l.label == label), "{label}");
        assert!(one.at("/locks").contains(&format!("lock {label}")), "{}", one.at("/locks"));
    }
}

/// The office holds a later entry of this phone's than the phone: what ended the proof may be in it.
#[test]
fn a_proof_does_not_stand_where_the_office_holds_a_later_entry() {
    let phone = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let last = phone.entries().len() as u64;
    for (more, stands) in [(0, true), (1, false)] {
        let office = Desk { own: Some((EntryId::NONE, phone.key(), last + more)), ..desk(&phone) };
        let _ = phone.field().exchange_over(Arc::new(office), "t");
        assert_eq!(phone.proved(), stands, "{}", banner(&phone));
    }
    let shown = phone.at_job();
    assert!(shown.contains("This phone has forgotten what it wrote: treat as live"), "{shown}");
    assert!(!shown.contains("All sent."), "{shown}");
}
