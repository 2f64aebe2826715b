//! Tags at points: bound, read, moved, given up, and what a scan answers.

use stillbar_core::screens::as_text;
use stillbar_core::store::Store;
use stillbar_core::tag::TagId;

use crate::desk::*;

fn tag(seed: u8) -> TagId {
    TagId::from_random([seed; TagId::RANDOM_BYTES])
}

fn at_q4() -> String {
    "tap The job\ntap Isolate Q4 feeder switch\ntap Tag of Q4 feeder switch\n".into()
}

/// From the first screen in one tap: whose lock, who has the key, since when, which job, their telephone.
#[test]
fn a_scan_tells_whose_lock_it_is() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let tag = tag(1);
    device.play(
        &field,
        &format!(
            "{}see Stick a blank tag\nscan Scan the tag here = {tag}\nsee is blank\ntap It hangs at Q4 feeder switch\n\
             see This is Q4 feeder switch, by its tag\ntap The job\ntap All jobs\nscan Scan a tag = {tag}\n\
             see Hangs at: Q4 feeder switch, Main board MB1, bay 4\nsee ## Lock of Mara Lind on Q4 feeder switch\nsee Key holder: Mara Lind\n\
             see Since: \nsee Replace the outgoing breaker of washer 4\nsee Telephone: \nsee Ring Mara Lind\nsee Pictures\n\
             see As known to this phone at ",
            at_q4()
        ),
    );
    // What is read twice is one tag; by hand it is the same as by the camera.
    device.play(
        &field,
        &format!("tap Scan another tag\nfill Or the tag as printed = {}\ntap Look it up\nsee Key holder", tag.spaced()),
    );
    device.play(
        &field,
        "tap All jobs\ntap Scan a tag\nfill Or the tag as printed = STB0 0000\ntap Look it up\nsee begins with STB",
    );
}

/// How old the knowledge is: by the device's clock now, and when it last exchanged with the office.
#[test]
fn an_answer_says_when_the_office_was_last_reached() {
    let (folder, device, field) = begun(&[PEOPLE]);
    device.play(&field, &format!("scan Scan a tag = {}\nsee It has not reached an office", tag(9)));
    drop(field);
    Store::open(folder.path()).unwrap().keep_office_reached(MORNING - 45 * 60_000).unwrap();
    let field = device.open(folder.path()).unwrap();
    device.play(&field, "see at 08:40. Office last reached 07:55; other phones may know of more locks.");
    device.play(&field, "tap All jobs\ntap Locks on now\nsee Office last reached 07:55");
}

#[test]
fn an_unknown_tag_is_no_clearance() {
    let (_folder, device, field) = begun(&[PEOPLE]);
    device.play(
        &field,
        &format!(
            "scan Scan a tag = {}\nsee knows nothing of this tag\nsee No lock listed does NOT mean it is clear\nsee other phones may know",
            tag(9)
        ),
    );
}

#[test]
fn a_foreign_code_is_said_and_nothing_is_opened() {
    let (_folder, device, field) = begun(&[PEOPLE]);
    device.play(
        &field,
        "scan Scan a tag = https://example.org/\nsee not a Stillbar tag. Nothing was opened\nsee Scan a tag",
    );
    assert_eq!(field.screen().route, "/scan");
}

/// A tag that belongs to another point: said at once, and bound here only with a reason.
#[test]
fn the_wrong_point_is_told() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let (one, two) = (tag(1), tag(2));
    device.play(
        &field,
        &format!(
            "tap The job\ntap Isolate Q9 changeover switch\ntap Tag of Q9 changeover switch\nscan Scan the tag here = {one}\n\
             tap It hangs at Q9 changeover switch\n{}scan Scan the tag here = {one}\nsee This tag belongs to Q9 changeover switch, not to Q4\n\
             see Look which switch you stand at\ntap The tag hangs at Q4 feeder switch now\nsee Write why\n\
             fill If it really hangs here now: why = Stuck on the wrong door\ntap The tag hangs at Q4 feeder switch now\n\
             see This is Q4 feeder switch, by its tag\n\
             tap Tag of Q4 feeder switch\nscan Scan the tag here = {two}\ntap It hangs at Q4 feeder switch\n\
             see {}\nsee {}",
            at_q4(),
            one.spaced(),
            two.spaced()
        ),
    );
    // The newest place is the one that a scan names.
    device.play(&field, &format!("tap The job\ntap All jobs\nscan Scan a tag = {one}\nsee Hangs at: Q4 feeder switch"));
}

/// The same switch in a later job, by site, label and place, however they are spaced: its tag goes with it, and nothing is
/// asked. A switch of the same name elsewhere is another.
#[test]
fn a_tag_known_from_an_earlier_job_is_taken_over() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let tag = tag(1);
    device.play(&field, &format!("{}scan Scan the tag here = {tag}\ntap It hangs at Q4 feeder switch", at_q4()));
    let later = [
        include_str!("../../journeys/plan.journey"),
        include_str!("../../journeys/check-instruments.journey"),
        include_str!("../../journeys/circuits.journey"),
    ];
    let later =
        later.concat().replace("Replace the outgoing breaker of", "Tighten the tails of").replace("bay 4", "Bay  4");
    // The generator is known from the first job, and comes in here too.
    let found = "choose Kind of source = Generator\nfill What you found = Standby generator set\nfill Where it comes in = Changeover switch Q9 in DB1\ntap Save this source\n";
    let looked = "fill Where you looked = DB4, its drawing";
    let elsewhere = later.clone();
    let later = later.replace(found, "").replace(looked, &format!("tap It is a source here too\n{looked}"));
    device.play(&field, "tap The job\ntap All jobs");
    device.play(&field, &later);
    device.play(&field, &ISOLATE.replace("ML 7", "ML 17").replace("ML 8", "ML 18"));
    device.play(
        &field,
        &format!(
            "{}scan Scan the tag here = {tag}\nsee This is Q4 feeder switch, by its tag\nunseen is blank",
            at_q4()
        ),
    );
    // Two jobs hold a lock there; both are told.
    device.play(
        &field,
        &format!(
            "tap The job\ntap All jobs\nscan Scan a tag = {tag}\nsee Replace the outgoing breaker of washer 4\n\
             see Tighten the tails of washer 4\ntap All jobs"
        ),
    );
    for (lock, from, to, said) in [
        (
            "ML 27",
            "Brook Lane dye works",
            "Hill Road laundry",
            "Q4 feeder switch at another site, not to Q4 feeder switch",
        ),
        ("ML 37", "Bay  4", "bay 14", "Q4 feeder switch, Main board MB1, Bay  4, not to Q4 feeder switch"),
    ] {
        field.act(None, "go /".into(), vec![]);
        // At another site nobody knows of that generator yet.
        let plan = if to.starts_with("Hill") { &elsewhere } else { &later };
        device.play(&field, &plan.replace(from, to).replace("Tighten the tails", "Look at the tails"));
        device.play(&field, &ISOLATE.replace("ML 7", lock).replace("ML 8", &lock.replace('7', "8")));
        device.play(&field, &at_q4());
        device.play(&field, &format!("scan Scan the tag here = {tag}\nsee This tag belongs to {said}"));
    }
}

#[test]
fn a_lost_tag_is_replaced_and_says_so() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let (old, new) = (tag(1), tag(2));
    device.play(
        &field,
        &format!(
            "{}scan Scan the tag here = {old}\ntap It hangs at Q4 feeder switch\ntap Tag of Q4 feeder switch\ntap Tag {} is gone\n\
             see Write what became of the tag\nfill If a tag is gone: what became of it = Torn off\ntap Tag {} is gone\n\
             see Stick a new one\nscan Scan the tag here = {new}\ntap It hangs at Q4 feeder switch\ntap The job\ntap All jobs\n\
             scan Scan a tag = {old}\nsee This tag was given up: Torn off\ntap Scan another tag\nscan Scan with the camera = {new}\nsee Lock of Mara Lind",
            at_q4(),
            old.spaced(),
            old.spaced()
        ),
    );
}

/// The table of tags follows from the journal, and a database of version 1 gets it.
#[test]
fn an_older_database_gets_the_table() {
    let (folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    device.play(&field, &format!("{}scan Scan the tag here = {}\ntap It hangs at Q4 feeder switch", at_q4(), tag(1)));
    drop(field);
    let mut store = Store::open(folder.path()).unwrap();
    let tables = store.tables().unwrap();
    assert!(tables.contains(tag(1).as_str()), "{tables}");
    store.replay().unwrap();
    assert_eq!(store.tables().unwrap(), tables);
    drop(store);
    let db = rusqlite::Connection::open(folder.path().join(stillbar_core::store::DATABASE)).unwrap();
    db.execute_batch(
        "DROP TABLE tag; ALTER TABLE lock DROP COLUMN switch; ALTER TABLE lock DROP COLUMN site; DROP TABLE site_entry; \
         DROP TABLE aside; DROP TABLE upload; DROP INDEX entry_shared; ALTER TABLE entry DROP COLUMN shared; ALTER TABLE lock DROP COLUMN \
         point; ALTER TABLE lock DROP COLUMN no_pin; DROP TABLE arrival; DROP TABLE pin; DROP TABLE draft; CREATE TABLE draft (route TEXT NOT NULL, field TEXT NOT NULL, value TEXT NOT NULL, \
         PRIMARY KEY (route, field)) STRICT, WITHOUT ROWID; PRAGMA user_version = 1;",
    )
    .unwrap();
    drop(db);
    let field = device.open(folder.path()).unwrap();
    assert!(!as_text(&field.screen()).is_empty());
    drop(field);
    let mut store = Store::open(folder.path()).unwrap();
    store.replay().unwrap();
    assert_eq!(store.tables().unwrap(), tables);
}

/// A photo that shows the tag of another point waits for a reason; one of the right tag completes the evidence.
#[test]
fn a_photo_of_the_wrong_tag_is_told_and_kept_only_with_a_reason() {
    let (folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let (q4, q9) = (tag(1), tag(2));
    let bind = |point: &str, tag: TagId| {
        format!(
            "tap The job\ntap Isolate {point}\ntap Tag of {point}\nscan Scan the tag here = {tag}\ntap It hangs at {point}\n"
        )
    };
    device.play(
        &field,
        &format!(
            "{}see No photo shows the tag of Q9 changeover switch\nsee >> Take the photo now\n{}see No photo shows the tag of Q4 feeder switch\n\
             photo Photo of Q4 feeder switch = {q9}\n\
             see The tag in this picture belongs to Q9 changeover switch, not Q4 feeder switch.\nsee Not saved yet\n\
             see No photo shows the tag of Q4\ntap Save it with this reason\nsee Write why",
            bind("Q9 changeover switch", q9),
            bind("Q4 feeder switch", q4)
        ),
    );
    // It waits through a restart.
    drop(field);
    let field = device.open(folder.path()).unwrap();
    device.play(
        &field,
        &format!(
            "see Not saved yet\nfill Why it is saved all the same = Both switches are in one door\ntap Save it with this reason\n\
             unseen Not saved yet\nsee No photo shows the tag of Q4\nphoto Photo of Q4 feeder switch = {q4}\n\
             unseen No photo shows the tag of Q4\ntap The job\ntap Time line\nsee Both switches are in one door"
        ),
    );
}

/// What was photographed before the point was opened again shows nothing of the lock that is on now.
#[test]
fn a_photo_of_an_earlier_round_does_not_show_the_tag() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let q9 = tag(2);
    device.play(
        &field,
        &format!(
            "tap The job\ntap Isolate Q9 changeover switch\ntap Tag of Q9 changeover switch\nscan Scan the tag here = {q9}\n\
             tap It hangs at Q9 changeover switch\nphoto Photo of Q9 changeover switch = {q9}\nunseen No photo shows the tag\n{PROVE}{WORK}"
        ),
    );
    let cut = RESTORE.find("sign Signature").unwrap();
    let cut = RESTORE[..cut].rfind("fill Who takes").unwrap();
    device.play(&field, &RESTORE[..cut]);
    let again = locked_again(&ISOLATE.replace("ML 7", "ML 17").replace("ML 8", "ML 18"));
    let last = again.rfind("photo ").or(again.rfind("tap Take the photo now")).unwrap();
    device.play(
        &field,
        &format!(
            "tap The job\ntap Something changed\nfill What will be worked on now = Breaker 5\nfill Why the scope changes = It is cracked\n\
             tap Save the new scope\ntap Next: Look for other sources\n{}\ntap Next: Switch off the loads\n{}",
            looked_again(),
            &again[..last]
        ),
    );
    let line = again[last..].lines().next().unwrap();
    device.play(&field, &format!("{line}\nsee No photo shows the tag of Q9 changeover switch"));
}

/// A frame that is not as large as it says ends the scan with a sentence, and its token is spent.
#[test]
fn a_torn_frame_ends_the_scan() {
    let (_folder, _device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let route = field.screen().route;
    let errands = field.act(None, format!("scan {}", "0".repeat(64)), vec![]);
    let stillbar_core::screens::parts::Errand::ScanTag { token, .. } = &errands[0] else { panic!("{errands:?}") };
    let none = field.deliver(token.clone(), stillbar_core::Outcome::Frame { width: 9, height: 9, luma: vec![0; 80] });
    assert_eq!(none, [stillbar_core::Errand::Buzz]);
    let screen = field.screen();
    assert!(screen.notice.unwrap().text.contains("a size that cannot be read"));
    assert_ne!(screen.route, route);
    // The token is spent.
    field.deliver(token.clone(), stillbar_core::Outcome::Frame { width: 1, height: 1, luma: vec![0] });
    assert!(field.screen().notice.unwrap().text.contains("not asked for any more"));
}
