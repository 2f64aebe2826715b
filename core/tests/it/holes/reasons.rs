//! Reasons are words, and what is firm and was passed over or withdrawn is said until it is answered anew.

use stillbar_core::journal::fact::{On, SourceKind};
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::point::Means;

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::{JOINED, Phone};

fn skips(why: &str) -> Fact {
    Fact::Deviated { step: "shed".into(), why: why.into() }
}

fn withdraws(entry: EntryId, why: &str) -> Fact {
    Fact::Withdrawn { entry, why: why.into() }
}

fn permit(phone: &Phone) -> EntryId {
    find(phone, |f| matches!(f, Fact::PermitNoted { .. }))
}

/// Dots, dashes, figures and five blanks of no width: neither a step is skipped nor an entry withdrawn nor a cause noted with them.
#[test]
fn a_reason_is_at_least_a_word_of_letters() {
    let one = Phone::begun(&[PEOPLE, PLAN]);
    only_with_words(&one, MARA, skips);
    only_with_words(&one, MARA, |why| withdraws(permit(&one), why));
    let one = opened_up();
    let run = begins(&one, MARA);
    let seen = keeps(&one, MARA, lit(run, "N", "L2"));
    for found in [true, false] {
        only_with_words(&one, MARA, |why| Fact::CauseNoted { of: vec![seen], found, cause: why.into() });
    }
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE, BEGIN]);
    only_with_words(&one, MARA, |why| Fact::WorkLeft { why: why.into() });
}

/// The found generator and its point are withdrawn with ".".
#[test]
fn a_found_source_that_was_withdrawn_is_said_until_it_is_answered_anew() {
    let one = Phone::begun(&[PEOPLE, PLAN]);
    let set = find(&one, |f| matches!(f, Fact::SourceAnswered { kind: SourceKind::Generator, .. }));
    assert!(!banner(&one).contains("Standby generator set"), "{}", banner(&one));
    only_with_words(&one, MARA, |why| withdraws(point(&one, "Q9 changeover switch"), why));
    only_with_words(&one, MARA, |why| withdraws(set, why));
    for says in [banner(&one), page_one(&one)] {
        assert!(says.contains("Standby generator set") && says.contains("withdrawn"), "{says}");
        assert!(says.contains("Seen at the board by two"), "and why: {says}");
    }
    // Without an answer nobody goes on to the points.
    let opened = tries(&one, MARA, opens(point(&one, "Q4 feeder switch"))).unwrap_err();
    assert!(opened.contains("Look for other sources"), "{opened}");
}

/// "None found", and where somebody looked is ".": that is no answer.
#[test]
fn none_found_says_where_somebody_looked() {
    let one = Phone::begun(&[PEOPLE, PLAN]);
    let none = |looked: &str| Fact::SourceAnswered {
        kind: SourceKind::Ups,
        found: None,
        looked: looked.into(),
        terminals: Vec::new(),
        millivolts: None,
    };
    only_with_words(&one, MARA, none);
    only_with_words(&one, MARA, |looked| Fact::StoredAnswered {
        found: None,
        seconds: 0,
        looked: looked.into(),
        kind: None,
        label: None,
    });
}

/// The indicator is found cracked, and that check is withdrawn with ".".
#[test]
fn a_failed_check_that_was_withdrawn_is_said_until_it_is_checked_anew() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let cracked = keeps(&one, MARA, check(tester(&one), false));
    assert!(!one.proved());
    only_with_words(&one, MARA, |why| withdraws(cracked, why));
    assert!(!one.proved(), "{}", banner(&one));
    for says in [banner(&one), page_one(&one)] {
        assert!(says.contains("Two-pole indicator, yellow case") && says.contains("withdrawn"), "{says}");
        assert!(says.contains("Seen at the board by two"), "and why: {says}");
    }
    keeps(&one, MARA, check(tester(&one), true));
    assert!(!banner(&one).contains("Seen at the board by two"), "{}", banner(&one));
    proves(&one, MARA);
    assert!(one.proved(), "{}", banner(&one));
}

/// Somebody who is not on the job skips a step, and withdraws an entry.
#[test]
fn who_is_not_on_the_job_neither_skips_nor_withdraws() {
    let one = Phone::begun(&[PEOPLE, PLAN]);
    let why = "One circuit feeds the alarm";
    assert!(tries(&one, JOEL, skips(why)).unwrap_err().contains("Joel Aras is not on this job"));
    assert!(tries(&one, JOEL, withdraws(permit(&one), why)).unwrap_err().contains("Joel Aras is not on this job"));
    keeps(&one, MARA, skips(why));
    keeps(&one, MARA, withdraws(permit(&one), why));
}

/// Who was on the job and has left it is not on it.
#[test]
fn who_left_the_job_neither_skips_nor_withdraws() {
    let one = Phone::begun(&[PEOPLE, PLAN, JOINED]);
    let why = "One circuit feeds the alarm";
    keeps(&one, MARA, Fact::WorkerLeft { person: one.person(TOMAS) });
    assert!(tries(&one, TOMAS, skips(why)).is_err());
    assert!(tries(&one, TOMAS, withdraws(permit(&one), why)).is_err());
}

/// A switch is declared to take no lock, and secured by ".": it says by what, and banner and page one say it too.
#[test]
fn a_point_without_a_lock_says_by_what_it_is_secured() {
    let plan =
        PLAN.replacen("Can it be locked open? = It takes a lock", "Can it be locked open? = It takes no lock", 1);
    let one = Phone::begun(&[PEOPLE, &plan, until(ISOLATE, "fill What is written on the lock = ML 7")]);
    let q4 = point(&one, "Q4 feeder switch");
    only_with_words(&one, MARA, |how| lock_of(&one, MARA, On::Point(q4), "no lock", Means::Other(how.into())));
    for says in [banner(&one), page_one(&one)] {
        assert!(says.contains("Q4 feeder switch is secured without a lock: Seen at the board by two"), "{says}");
    }
}
