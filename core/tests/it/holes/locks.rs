//! Locks of others: keys in boxes, forced removals, and acts without a PIN.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::fact::{Duty, On};
use stillbar_core::journal::{EntryId, Fact, SignedOn};
use stillbar_core::point::Means;

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::{JOINED, Phone};

const BOX: &str = include_str!("../../../journeys/box.journey");

fn forced(lock: EntryId, authority: EntryId, words: [&str; 3]) -> Fact {
    let [function, reached, why] = words.map(str::to_owned);
    Fact::ForcedBegun { lock, authority, function, reached, why }
}

const WORDS: [&str; 3] = ["Site manager", "In person, at the board", "The hall has no light"];

fn not_on_site(lock: EntryId, how: &str) -> Fact {
    Fact::OwnerNotOnSite { lock, how: how.into() }
}

fn sought(lock: EntryId, how: &str, outcome: &str) -> Fact {
    Fact::OwnerSought { lock, how: how.into(), outcome: outcome.into() }
}

fn off(lock: EntryId) -> Fact {
    Fact::LockForced { lock, mark: "typed".into() }
}

/// All that comes before a lock is taken off under Joel's authority, who is not on the job.
fn everything_but_off(phone: &Phone, lock: EntryId) {
    keeps(phone, JOEL, forced(lock, phone.person(JOEL), WORDS));
    keeps(phone, JOEL, not_on_site(lock, "Gate log, the van is gone"));
    keeps(phone, JOEL, sought(lock, "Rang twice", "No answer, message left"));
}

fn is_on(phone: &Phone, label: &str) -> bool {
    phone.field().known_locks().iter().any(|l| l.on && l.label == label)
}

/// The key of a point's lock is in a box, and Tomas's lock is on the box: neither by force nor by its owner's bolt cutter does it come off.
#[test]
fn a_lock_whose_key_is_in_a_box_stays_while_another_has_a_lock_on_the_box() {
    let one = Phone::begun(&[PEOPLE, PLAN, BOX]);
    let lock = lock(&one, "ML 7");
    let lockbox = find(&one, |f| matches!(f, Fact::BoxPlaced { .. }));
    joins(&one, TOMAS, Duty::Working);
    let his = keeps(&one, TOMAS, lock_of(&one, TOMAS, On::Box(lockbox), "TB 1", Means::Hasp));
    let cut = || Fact::LockRemoved { lock, cut: Some("The key fell into the shaft".into()) };
    assert!(tries(&one, MARA, cut()).unwrap_err().contains("Tomas Brandt"));
    everything_but_off(&one, lock);
    let refused = tries(&one, JOEL, off(lock)).unwrap_err();
    assert!(refused.contains("Tomas Brandt") && is_on(&one, "ML 7"), "{refused}");
    keeps(&one, TOMAS, Fact::LockRemoved { lock: his, cut: None });
    keeps(&one, JOEL, off(lock));
    assert!(!is_on(&one, "ML 7"));
}

/// Every answer of a forced removal is ".", given in seconds.
#[test]
fn a_forced_removal_is_answered_in_words() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE]);
    let (lock, joel) = (lock(&one, "ML 7"), one.person(JOEL));
    for junk in JUNK {
        for place in 0..3 {
            let mut words = WORDS;
            words[place] = junk;
            assert!(tries(&one, JOEL, forced(lock, joel, words)).is_err(), "{words:?}");
        }
    }
    keeps(&one, JOEL, forced(lock, joel, WORDS));
    assert!(tries(&one, JOEL, off(lock)).is_err(), "nobody has looked for the owner");
    only_with_words(&one, JOEL, |how| not_on_site(lock, how));
    assert!(tries(&one, JOEL, off(lock)).is_err(), "nobody has tried to reach the owner");
    only_with_words(&one, JOEL, |how| sought(lock, how, "No answer"));
    only_with_words(&one, JOEL, |outcome| sought(lock, "Rang twice", outcome));
    assert!(tries(&one, IDA, off(lock)).is_err(), "the authority confirms it, and nobody else");
    assert!(is_on(&one, "ML 7"));
    keeps(&one, JOEL, off(lock));
    only_with_words(&one, JOEL, |how| Fact::OwnerTold { lock, how: how.into() });
}

/// An apprentice is the authority of their own forced removal; or the owner is.
#[test]
fn neither_a_learner_nor_the_owner_answers_for_a_forced_removal() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE]);
    let (lock, ida) = (lock(&one, "ML 7"), one.person(IDA));
    joins(&one, IDA, Duty::Learning);
    for by in [IDA, JOEL] {
        assert!(tries(&one, by, forced(lock, ida, WORDS)).is_err(), "{by} names a learner");
        assert!(tries(&one, by, forced(lock, one.person(MARA), WORDS)).is_err(), "{by} names the owner");
    }
    // Whoever answers for it need not be on the job.
    keeps(&one, IDA, forced(lock, one.person(JOEL), WORDS));
}

/// An apprentice who is not on this job, and works under somebody's eye on another, is a learner all the same.
#[test]
fn who_learns_on_another_job_answers_for_no_forced_removal() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE]);
    let (first, mara, ida) = (one.job(), one.person(MARA), one.person(IDA));
    let lock = lock(&one, "ML 7");
    let second = another_job(&one);
    let learns = Fact::WorkerJoined { person: ida, duty: Duty::Learning };
    one.field().keep(mara, Some(second), learns).unwrap();
    assert!(one.field().keep(ida, Some(first), forced(lock, ida, WORDS)).is_err());
    one.field().keep(ida, Some(first), forced(lock, one.person(JOEL), WORDS)).unwrap();
}

/// The owner of locks that were forced off is taken off the job, so that nobody has to tell them.
#[test]
fn an_owner_who_was_taken_off_the_job_is_told_all_the_same() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, JOINED]);
    tomas_locks(&one);
    let locks = ["TB 1", "TB 2"].map(|label| lock(&one, label));
    for lock in locks {
        everything_but_off(&one, lock);
        keeps(&one, JOEL, off(lock));
    }
    keeps(&one, MARA, Fact::WorkerLeft { person: one.person(TOMAS) });
    keeps(&one, MARA, Fact::CoverOff { what: "Front plate of DB4".into() });
    let run = proves(&one, MARA);
    assert!(one.proved(), "{}", banner(&one));
    assert!(one.at("/").contains("2 owners are not told yet"), "{}", one.at("/"));
    assert!(one.at("/locks").contains("Forced off, owner not told"), "{}", one.at("/locks"));
    answers(&one, MARA, Step::Work);
    assert!(tries(&one, MARA, Fact::WorkBegan { run }).unwrap_err().contains("Tomas Brandt"));
    for lock in locks {
        keeps(&one, MARA, Fact::OwnerTold { lock, how: "By telephone at 18:05".into() });
    }
    keeps(&one, MARA, Fact::WorkBegan { run });
}

/// Mara taps "Tomas Brandt" and takes his lock off without his PIN: nothing keeps it on, and record and time line say so.
#[test]
fn a_lock_that_came_off_without_a_pin_is_told_as_that() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, JOINED]);
    tomas_locks(&one);
    one.at("/");
    one.play(&format!(
        "tap Signed on: {MARA}\ntap {TOMAS}\nsee PIN of {TOMAS}\ntap Go on without PIN\ntap {TITLE}\ntap Locks and keys"
    ));
    one.play(&format!("tap {TOMAS} on Q4 feeder switch: TB 1\ntap Take my lock off"));
    assert!(!is_on(&one, "TB 1"));
    let removed = |e: &stillbar_core::journal::Entry| matches!(e.body.fact, Fact::LockRemoved { .. });
    let entry = one.field().entries().unwrap().into_iter().find(removed).unwrap();
    assert_eq!((entry.body.by, entry.body.signed_on), (Some(one.person(TOMAS)), Some(SignedOn::WithoutPin)));
    let time_line = one.at(&format!("/job/{}/time-line", one.job()));
    assert!(time_line.contains("Tomas Brandt (no PIN)"), "{time_line}");
    let made = stillbar_core::app::of_folder(one.folder.path(), &*one.device, TITLE, false).unwrap();
    let told = &made.report().time_line;
    assert!(told.iter().any(|line| line.when.named().as_deref() == Some("Tomas Brandt (no PIN)")), "{told:?}");
}
