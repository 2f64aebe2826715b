//! What jobs share: points of isolation, padlocks, sources, and the names under which locks go on.

use std::sync::atomic::Ordering;

use stillbar_core::journal::fact::{About, Limit};
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::journey::planned_again;
use stillbar_core::screens::as_text;
use stillbar_core::{Errand, Field, Filled};

use crate::desk::*;

const PLAN_ONLY: &str = include_str!("../../journeys/plan.journey");
const CHECK: &str = include_str!("../../journeys/check-instruments.journey");
const CIRCUITS: &str = include_str!("../../journeys/circuits.journey");
const FIRST: &str = "Replace the outgoing breaker of washer 4";
const SECOND: &str = "Tighten the tails of washer 2";

fn text(field: &Field) -> String {
    as_text(&field.screen())
}

fn job(field: &Field) -> EntryId {
    field.screen().route.split('/').nth(2).unwrap().parse().unwrap()
}

fn goes(field: &Field, to: &str) {
    field.act(None, format!("go {to}"), vec![]);
}

/// Everything that `other` has and this does not.
fn hear(field: &Field, other: &Field) {
    let mut entries: Vec<Entry> = other.entries().unwrap();
    entries.sort_by_key(|e| (e.body.device, e.body.seq));
    field.take_in(entries).unwrap();
}

fn person(field: &Field, name: &str) -> EntryId {
    let noted = |e: &Entry| matches!(&e.body.fact, Fact::PersonNoted { name: n, .. } if n == name);
    field.entries().unwrap().into_iter().find(noted).unwrap().id
}

/// The device goes into another hand.
pub fn hand(device: &Device, field: &Field, from: &str, to: &str) {
    goes(field, "/");
    device.play(field, &format!("tap Signed on: {from}\ntap {to}\ntap Go on without PIN"));
}

/// The plan of a second job at the same points, where the first one's generator is known, up to its points.
fn second_plan() -> String {
    let too = "tap It is a source here too\n";
    planned_again(PLAN_ONLY).replace(FIRST, SECOND).replacen(too, &format!("see told by {FIRST}\n{too}"), 1)
}

fn until<'a>(script: &'a str, line: &str) -> &'a str {
    &script[..script.find(line).unwrap_or_else(|| panic!("no {line}"))]
}

/// The second job, isolated by Tomas Brandt: everything was found off already.
pub fn second_isolated() -> String {
    let isolate = ISOLATE.replace("On: I switched it off", "Off already").replace("ML ", "TB ");
    let isolate = isolate.replace("Mara Lind", "Tomas Brandt");
    format!("{}{CHECK}{CIRCUITS}{isolate}", second_plan())
}

#[test]
fn a_point_that_another_job_knows_is_offered_and_its_locks_are_shown() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    hand(&device, &field, "Mara Lind", "Tomas Brandt");
    let plan = second_plan();
    device.play(&field, until(&plan, "fill Point, as it is labelled = Q4"));
    device.play(
        &field,
        &format!(
            "see Known from {FIRST}. Tap to use it here.\ntap Q4 feeder switch, Main board MB1, bay 4\n\
             see This is the point known from {FIRST}: Q4 feeder switch\nchoose What it cuts off = The normal supply\ntap Add this point\n\
             see Saved. This is the point known from {FIRST}"
        ),
    );
    let shed = until(ISOLATE, "fill What you saw go off");
    // Typed alike, it is the same by itself, and the form says so before it is kept.
    field.edit("label".into(), "q9  CHANGEOVER switch".into());
    field.edit("at".into(), "DB1,beside the d\u{43e}or".into());
    device.play(
        &field,
        &format!(
            "see This is the point known from {FIRST}: Q9 changeover switch\nchoose What it is = Switch-disconnector\n\
             choose Can it be locked open? = It takes a lock\nchoose Conductors that it opens = L1\nchoose Conductors that it opens = L2\n\
             choose Conductors that it opens = L3\nchoose Conductors that it opens = N\nchoose What it cuts off = Generator: Standby generator set, at Changeover switch Q9 in DB1\ntap Add this point\nsee Saved. This is the point known from {FIRST}\n\
             tap The job\ntap Locks and keys\nsee Locks of other jobs on the same points\nsee Mara Lind, lock ML 7, on Q4 feeder switch\n\
             see Mara Lind, lock ML 8, on Q9 changeover switch\nsee For: {FIRST}\nunseen does NOT mean\ntap The job\n\
             tap Indicator and proving unit\n{CHECK}{CIRCUITS}{shed}see Open already for {FIRST}: lock ML 7 of Mara Lind\n\
             see Known at this site: Q4 feeder switch"
        ),
    );
    let shown = text(&field);
    assert!(shown.find("Off already").unwrap() < shown.find("On: I switched it off").unwrap(), "{shown}");
}

#[test]
fn two_switches_that_look_alike_are_parted_at_the_spot() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    hand(&device, &field, "Mara Lind", "Tomas Brandt");
    device.play(&field, until(&second_isolated(), "fill What you saw go off"));
    let part = format!("tap These are two: this, and Q4 feeder switch of {FIRST}\n");
    device.play(
        &field,
        &format!(
            "see Mara Lind, lock ML 7\n{part}see Write by what the two are told apart\nfill By what they are told apart = ...\n{part}\
             see in words\nfill By what they are told apart = This one is in bay 4 of the annex, with a red handle\n{part}\
             unseen lock ML 7\nunseen These are two\nsee does NOT mean it is clear"
        ),
    );
}

#[test]
fn nobody_closes_a_point_that_another_job_has_locked_and_every_screen_says_whose_it_is() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK]);
    let first = job(&field);
    hand(&device, &field, "Mara Lind", "Tomas Brandt");
    device.play(&field, &second_isolated());
    hand(&device, &field, "Tomas Brandt", "Mara Lind");
    goes(&field, &format!("/job/{first}"));
    device.play(&field, &format!("tap Next: Covers back\n{}", until(RESTORE, "tap Q4 feeder switch is closed")));
    goes(&field, &format!("/job/{first}/step/close"));
    device.play(&field, &format!("see Q4 feeder switch [stays open]\nsee Tomas Brandt, lock TB 7\nsee For: {SECOND}"));
    let point = |e: &Entry| {
        e.job() == Some(first) && matches!(&e.body.fact, Fact::PointAdded { label, .. } if label.starts_with("Q4"))
    };
    let q4 = field.entries().unwrap().into_iter().find(point).unwrap().id;
    let why = field.keep(person(&field, "Mara Lind"), Some(first), Fact::PointClosed { point: q4, beside: None });
    assert!(why.unwrap_err().to_string().contains("TB 7"));
}

/// A tag that hangs at the point of one job tells of the locks of every job at that point.
#[test]
fn a_tag_tells_of_the_locks_of_every_job_at_its_point() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    hand(&device, &field, "Mara Lind", "Tomas Brandt");
    device.play(&field, &second_isolated());
    let tag = "STB7K2M9PX4W6BHE";
    device.play(
        &field,
        &format!(
            "tap The job\ntap Isolate Q4 feeder switch\ntap Tag of Q4 feeder switch\nscan Scan the tag here = {tag}\n\
             tap It hangs at Q4 feeder switch\ntap The job\ntap All jobs\nscan Scan a tag = {tag}\n\
             see Lock of Tomas Brandt on Q4 feeder switch\nsee Lock of Mara Lind on Q4 feeder switch\nunseen does NOT mean"
        ),
    );
}

#[test]
fn a_point_that_was_closed_for_another_job_is_seen_open_again_and_proved_again() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN]);
    // Another phone, which hears of the first job's locks only afterwards.
    let (folder, other_device) = (tempfile::tempdir().unwrap(), Device::new(2));
    other_device.pass(device.now.load(Ordering::Relaxed) - MORNING);
    let other = other_device.open(folder.path()).unwrap();
    hear(&other, &field);
    device.play(&field, &format!("{ISOLATE}{PROVE}see [Proved dead]"));
    let isolated = second_isolated().replace("Off already", "On: I switched it off");
    other_device.play(&other, &format!("tap Sign on\ntap Tomas Brandt\n{isolated}"));
    let (second, tomas) = (job(&other), person(&other, "Tomas Brandt"));
    let keeps = |fact: Fact| other.keep(tomas, Some(second), fact).unwrap_or_else(|why| panic!("{why}"));
    keeps(Fact::GivenUp { why: "Wrong board".into(), clear: "Nobody was at it".into() });
    keeps(Fact::Told { who: "Hall".into(), how: "Radio".into(), about: About::Energising });
    let of_second: Vec<Entry> = other.entries().unwrap().into_iter().filter(|e| e.job() == Some(second)).collect();
    for entry in &of_second {
        match &entry.body.fact {
            Fact::LockFitted { .. } => _ = keeps(Fact::LockRemoved { lock: entry.id, cut: None }),
            Fact::SignPosted { point } => _ = keeps(Fact::SignRemoved { point: *point }),
            _ => {}
        }
    }
    let q4 = |e: &&Entry| matches!(&e.body.fact, Fact::PointAdded { label, .. } if label.starts_with("Q4"));
    keeps(Fact::PointClosed { point: of_second.iter().find(q4).unwrap().id, beside: None });
    hear(&field, &other);
    device.play(
        &field,
        &format!(
            "see [Treat as live]\ntap The job\ntap Next: Isolate Q4 feeder switch\nsee Q4 feeder switch was closed for another job, {SECOND}\n\
             fill What you saw go off = Blades apart, lamp out\nchoose How you found it = Off already\ntap Q4 feeder switch is open\n\
             see [Treat as live]\nsee Q4 feeder switch was closed for another job in between."
        ),
    );
}

/// A padlock is known by its owner and label, however it is written; nothing that can be true is refused.
#[test]
fn a_padlock_that_is_on_elsewhere_is_asked_about_and_every_answer_works() {
    let upto = until(ISOLATE, "fill What is written on the lock = ML 8");
    for label in ["ml 7", "ML7", "ML  7", "ML\u{200b} 7", "\u{41c}L 7"] {
        for (answer, says) in [
            ("Moved here: I took it off there", "is off Q4 feeder switch, and on here"),
            ("One cable or bar through both", "Saved."),
            ("Another padlock with the same name\nfill What tells the two apart = blue tape", "blue tape"),
        ] {
            let (_folder, device, field) = begun(&[PEOPLE, PLAN, upto]);
            device.play(
                &field,
                &format!(
                    "fill What is written on the lock = {label}\nchoose How it is locked = Padlock on a hasp\ntap Save lock, fitted by \
                     Mara Lind\nsee of Mara Lind is on already: Q4 feeder switch, for {FIRST}.\nchoose This padlock is on elsewhere = {answer}\n\
                     tap Save lock, fitted by Mara Lind\nsee {says}"
                ),
            );
            let on: Vec<String> = field.known_locks().into_iter().map(|l| format!("{} {}", l.label, l.place)).collect();
            let q4 = on.iter().any(|l| l.contains("Q4"));
            assert_eq!(q4, !answer.starts_with("Moved"), "{label:?}, {answer}: {on:?}");
            assert!(on.iter().any(|l| l.contains("Q9")), "{label:?}, {answer}: {on:?}");
        }
    }
}

#[test]
fn one_padlock_through_points_of_two_jobs_comes_off_both() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let first = job(&field);
    let elsewhere = |script: &str| {
        script.replace("Q4 feeder switch", "Q14 feeder switch").replace("Q9 changeover switch", "Q19 tie")
    };
    let isolate = elsewhere(until(ISOLATE, "tap The caution sign"));
    goes(&field, "/");
    let second = format!("{}{CHECK}{CIRCUITS}{isolate}", elsewhere(&second_plan()));
    device.play(
        &field,
        &format!(
            "{second}see ML 7 of Mara Lind is on already: Q4 feeder switch, for {FIRST}.\nchoose This padlock is on elsewhere = One cable or bar \
             through both\ntap Save lock, fitted by Mara Lind\ntap The job\ntap Locks and keys\ntap Mara Lind on Q14 feeder switch: ML 7\n\
             see This padlock goes through Q4 feeder switch too, for {FIRST}\ntap Take my lock off Q14 feeder switch, as Mara Lind\n\
             see it is off Q4 feeder switch, for {FIRST} too"
        ),
    );
    assert!(field.known_locks().iter().all(|l| l.label != "ML 7"));
    assert!(field.standing_says(first).contains("A lock came off Q4 feeder switch"), "{}", field.standing_says(first));
}

/// Whose lock it is never passes from one person to the next: not by a refusal, by handing the device on, or by a restart.
#[test]
fn the_owner_in_a_form_is_whoever_has_the_device_or_is_named() {
    let (folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, include_str!("../../journeys/tomas-joins.journey")]);
    device.play(&field, "tap The job\ntap Isolate Q4 feeder switch\nfill What is written on the lock = ML 70\ntap Save lock, fitted by Mara Lind\nsee Choose how it is locked");
    device.play(&field, "tap Enter a lock that Tomas Brandt fitted\nunseen ML 70\ntap Save lock, fitted by Tomas Brandt\nsee Write what is on the lock's label");
    let route = field.screen().route;
    hand(&device, &field, "Mara Lind", "Tomas Brandt");
    goes(&field, &route);
    device.play(&field, "see > Save lock, fitted by Tomas Brandt\nunseen ML 70\nsee Fit your lock");
    drop(field);
    let field = device.open(folder.path()).unwrap();
    device.play(&field, "see > Save lock, fitted by Tomas Brandt\nsee Fit your lock");
    hand(&device, &field, "Tomas Brandt", "Mara Lind");
    goes(&field, &route);
    // Her own form again, with what she typed herself, and not the one that she had opened for Tomas.
    device.play(
        &field,
        "see Fit your lock\nsee > Save lock, fitted by Mara Lind\nsee ML 70\nunseen Save lock, fitted by Tomas",
    );
    // A second tab that still shows an older screen keeps nothing.
    let stale = field.screen().turn - 1;
    let mara = person(&field, "Mara Lind");
    let before = field.entries().unwrap().len();
    field.act(Some(stale), format!("fit {mara}"), vec![Filled { field: "lock-label".into(), value: "X 1".into() }]);
    assert_eq!(field.entries().unwrap().len(), before);
}

#[test]
fn two_drives_of_like_names_are_each_read() {
    let plan = PLAN.replace(
        "tap No stored energy found\n",
        "fill Or what you found = Drive 1\nfill Where its terminals are = X1\nfill Waiting time on its label, in minutes = 5\ntap Stored energy \
         found\nfill Or what you found = Drive 10\nfill Where its terminals are = X10\nfill Waiting time on its label, in minutes = 5\ntap Stored \
         energy found\n",
    );
    assert_ne!(plan, PLAN);
    let (_folder, device, field) = begun(&[PEOPLE, &plan, ISOLATE]);
    // With the covers on: the labels' time first.
    device.play(&field, "see Drive 1: wait 5 min from opening\nsee Drive 10: wait 5 min from opening\nwait 6");
    device.play(&field, until(PROVE, "wait 1"));
    device.play(
        &field,
        "fill Direct voltage at Drive 1, in volts = 0\ntap Save the reading at Drive 1\nfill Direct voltage at Drive 10, in volts = 0\ntap Save \
         the reading at Drive 10\nsee # Test every pair",
    );
}

#[test]
fn a_source_that_another_job_found_is_answered_for() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN]);
    goes(&field, "/");
    let plan = second_plan();
    device.play(&field, until(&plan, "tap It is a source here too"));
    device.play(
        &field,
        "tap It does not reach this work\nsee Write why it does not reach this work\nfill Or why it does not reach this work = ...\ntap It does not \
         reach this work\nsee in words\nfill Or why it does not reach this work = Its changeover feeds DB1 only, seen at the door\ntap It does \
         not reach this work\nunseen Known at this site\nsee Standby generator set, at Changeover switch Q9 in DB1 does not reach this work",
    );
}

#[test]
fn the_company_sets_a_limit_once_and_in_a_job_only_the_person_in_charge_changes_it() {
    let (_folder, device, field) = begun(&[PEOPLE]);
    device.play(&field, "tap New job\nsee every figure other than 0 counts as an indication");
    let asked = field.act(Some(field.screen().turn), "ask-limit".into(), vec![]);
    assert!(matches!(asked.as_slice(), [Errand::Share { text, .. }] if text.contains("Mara Lind")), "{asked:?}");
    goes(&field, "/");
    device.play(
        &field,
        "tap Rules of your company and sites\nfill Limit in volts AC = 60\nfill Limit in volts DC = 10\nfill Rule that sets it = EW 14\n\
         tap Save the limit, signed by Mara Lind\nsee has to be below 50 V AC\nfill Limit in volts AC = 10\ntap Save the limit, signed by Mara \
         Lind\nsee 10 V AC and 10 V DC count as no indication, by EW 14",
    );
    goes(&field, "/");
    device.play(&field, PLAN);
    let first = job(&field);
    goes(&field, "/rules");
    let rules = "tap Save for this site, signed by Mara Lind\n";
    device.play(
        &field,
        &format!(
            "choose Site = Brook Lane dye works\nfill Minutes between two proofs = 61\nfill Minutes that a proof holds = 240\n{rules}\
             see A site sets less, not more\nfill Minutes between two proofs = 30\n{rules}see 30 min between proofs, 240 min for a proof"
        ),
    );
    let limit = Some(Limit { ac: 5_000, dc: 5_000, rule: "EW 14, figure 2".into() });
    let tomas = person(&field, "Tomas Brandt");
    let mara = person(&field, "Mara Lind");
    field
        .keep(
            mara,
            Some(first),
            Fact::WorkerJoined { person: tomas, duty: stillbar_core::journal::fact::Duty::Working },
        )
        .unwrap();
    let why = field.keep(tomas, Some(first), Fact::LimitSet { limit }).unwrap_err().to_string();
    assert!(why.contains("Only the person in charge"), "{why}");
    goes(&field, &format!("/job/{first}/change"));
    device.play(
        &field,
        "see 10 V AC and 10 V DC\nfill Limit in volts AC = 5\nfill Limit in volts DC = 5\nfill Rule that sets it = EW 14, figure 2\n\
         tap Change the limit, signed by Mara Lind\nsee The proof has ended",
    );
    hand(&device, &field, "Mara Lind", "Tomas Brandt");
    goes(&field, &format!("/job/{first}/change"));
    device.play(&field, "see Only Mara Lind changes it\nunseen Change the limit");
}

#[test]
fn who_cuts_their_own_lock_says_so_and_it_is_no_forced_removal() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    device.play(
        &field,
        "tap The job\ntap People on the job\nchoose Person = Ida Holm\nchoose Duty = Under supervision\ntap Save person and duty\n\
         tap The job\ntap Locks and keys\ntap Mara Lind on Q4 feeder switch: ML 7\ntap My lock on Q4 feeder switch is cut, as Mara Lind\n\
         see Write why there was no key\nfill Why you cut your own lock = The key fell into the shaft\ntap My lock on Q4 feeder switch is cut, as \
         Mara Lind\nsee Cut by its owner, who had no key",
    );
    let first = job(&field);
    hand(&device, &field, "Mara Lind", "Joel Aras");
    goes(&field, &format!("/job/{first}/locks"));
    device.play(
        &field,
        "tap Mara Lind on Q9 changeover switch: ML 8\nsee Who answers for it\nsee Tomas Brandt\nunseen Ida Holm",
    );
}
