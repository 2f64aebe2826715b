//! Several people and several locks: hasp, lock box, hand-over, shift change, and the owner who must be told.
//!
//! Sources: 29 CFR 1910.147(f)(3) for groups, (f)(4) for the shift change, (e)(3) for forced removal.

use stillbar_core::screens::as_text;

use crate::desk::*;

const TOMAS_JOINS: &str =
    "tap The job\ntap People on the job\nchoose Person = Tomas Brandt\nchoose Duty = Works\ntap Keep person and duty\n";

#[test]
fn each_person_needs_a_lock_of_their_own() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, TOMAS_JOINS]);
    device.play(
        &field,
        "tap Next: Isolate Q4 feeder switch\nsee Tomas Brandt has no lock of their own on Q4 feeder switch",
    );
    let fit = |point: &str, label: &str| {
        format!(
            "tap The job\ntap Isolate {point}\nchoose Whose lock it is = Tomas Brandt\nfill What is written on the lock = \
             {label}\nchoose How it is locked = Padlock on a hasp\ntap Lock for another person\n"
        )
    };
    device.play(&field, &fit("Q4 feeder switch", "TB 1"));
    device.play(&field, &fit("Q9 changeover switch", "TB 2"));
    let screen = as_text(&field.screen());
    assert!(screen.starts_with("# Open up"), "{screen}");
    // The same label a second time, and a padlock straight through a device that has a lock already.
    for (label, how, says) in [
        ("TB 1", "Padlock on a hasp", "labelled TB 1 is on already"),
        ("TB 9", "Padlock through the device or box", "Only a hasp"),
    ] {
        device.play(
            &field,
            &format!(
                "tap The job\ntap Isolate Q4 feeder switch\nchoose Whose lock it is = Tomas Brandt\nfill What is written on the lock = \
                 {label}\nchoose How it is locked = {how}\ntap Lock for another person\nsee {says}"
            ),
        );
    }
}

#[test]
fn a_person_who_joins_later_ends_the_proof_until_their_lock_is_on() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, TOMAS_JOINS]);
    let work = format!("{}/step/work", field.screen().route.split("/step").next().unwrap());
    field.act(None, format!("go {work}"), vec![]);
    field.act(None, "begin".into(), vec![]);
    let screen = as_text(&field.screen());
    assert!(screen.contains("! First: Isolate Q4 feeder switch. Tomas Brandt has no lock of their own"), "{screen}");
    assert!(device.try_play(&field, "tap Begin work\nunseen !").is_err());
}

#[test]
fn lock_and_key_pass_from_hand_to_hand() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, TOMAS_JOINS]);
    device.play(
        &field,
        "tap The job\ntap Locks and keys\ntap Mara Lind on Q4 feeder switch: ML 7\nchoose To whom = Tomas Brandt\ntap Offer lock and \
         key\nsee Key holder: Mara Lind\ntap Tomas Brandt takes lock and key\nsee Tomas Brandt signs in the box first\nsign Tomas Brandt \
         signs for lock and key = Tomas Brandt\ntap Tomas Brandt takes lock and key\nsee Lock of Tomas Brandt\nsee Key holder: Tomas Brandt",
    );
    // It is his now: he may take it off, and she may not.
    device.play(&field, "tap Take my lock off\nsee Taken off by its owner");
}

#[test]
fn a_shift_is_taken_only_without_a_gap() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, TOMAS_JOINS]);
    device.play(
        &field,
        "tap The job\ntap Shift change\nchoose Who takes the shift = Tomas Brandt\nfill What you told them = Two points, both mine\ntap \
         Offer the shift\nsee Tomas Brandt has no lock of their own on Q4 feeder switch\n",
    );
    assert!(device.try_play(&field, "tap Tomas Brandt takes the shift").is_err());
    for (point, label) in [("Q4 feeder switch", "TB 1"), ("Q9 changeover switch", "TB 2")] {
        device.play(
            &field,
            &format!(
                "tap Fit the locks of Tomas Brandt\nchoose Whose lock = Tomas Brandt\nchoose It is on = {point}\nfill Written on the lock = \
                 {label}\nchoose How it secures = Padlock on a hasp\nchoose Where its key is = With the owner\ntap Keep this lock\ntap The \
                 job\ntap Shift change"
            ),
        );
    }
    device.play(
        &field,
        "sign Tomas Brandt signs for the shift = Tomas Brandt\ntap Tomas Brandt takes the shift\nsee [Treat as live] The proof is void. The \
         shift changed.",
    );
}

#[test]
fn keys_in_a_box_with_a_lock_of_each_person() {
    let plan = PLAN.replace(
        "tap Next: Indicator and proving unit",
        "fill Number or name of the box = B1\nfill Where the box hangs = Door of plant room 2\ntap Add this lock box\ntap Next: Indicator and \
         proving unit",
    );
    // The first lock's key goes into the box, then her own lock goes on the box.
    let isolate = ISOLATE.replace(
        "choose How it is locked = Padlock on a hasp\n",
        "choose Where its key is = In lock box B1\nchoose How it is locked = Padlock through the device or box\n",
    );
    let cut = isolate.find("tap The caution sign hangs at Q4").unwrap();
    let (_folder, device, field) = begun(&[PEOPLE, &plan, &isolate[..cut]]);
    device.play(&field, "see Keep this lock");
    device.play(
        &field,
        "fill What is written on the lock = ML 70\nchoose Where the lock is = On lock box B1\nchoose How it is locked = Padlock through the \
         device or box\ntap Keep this lock\ntap The job\ntap Locks and keys\ntap Mara Lind on Q4 feeder switch: ML 7\nsee the box still has \
         the lock of Mara Lind\nunseen > Take my lock off",
    );
}

/// Whoever's lock was forced off fits no lock and begins no work before it is recorded that they know.
#[test]
fn the_absent_owner_is_told_before_resuming() {
    let forced = "tap The job\ntap All jobs\ntap In hand: Mara Lind\ntap Joel Aras\ntap Replace the outgoing breaker of washer 4\ntap Locks and \
                  keys\ntap Mara Lind on Q4 feeder switch: ML 7\nfill Why it cannot wait = No light\nchoose Who answers for it = Joel Aras\ntap \
                  Begin a forced removal\nfill How you found that Mara Lind is not on site = Gate log\ntap Mara Lind is not on site\nfill How \
                  you tried to reach them = Rang twice\nfill What came of it = No answer\ntap Keep this attempt\nsign Joel Aras signs for the \
                  removal = Joel Aras\ntap Take the lock off under the authority of Joel Aras\n";
    let again = "choose Whose lock it is = Mara Lind\nfill What is written on the lock = ML 9\nchoose How it is locked = Padlock on a \
                 hasp\ntap Keep this lock\n";
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, forced]);
    let lock = field.screen().route;
    device.play(
        &field,
        "tap Locks and keys\ntap The job\ntap All jobs\ntap In hand: Joel Aras\ntap Mara Lind\ntap Replace the outgoing breaker of washer \
         4\ntap Next: Isolate Q4 feeder switch",
    );
    device.play(&field, again);
    let screen = as_text(&field.screen());
    assert!(screen.contains("They have to be told"), "{screen}");
    field.act(None, format!("go {lock}"), vec![]);
    device.play(
        &field,
        "fill How Mara Lind was told = By telephone at 18:05\ntap Mara Lind has been told\ntap Locks and keys\ntap The job\ntap Next: Isolate Q4 \
         feeder switch",
    );
    device.play(&field, again);
    let screen = as_text(&field.screen());
    assert!(!screen.contains("They have to be told"), "{screen}");
}

#[test]
fn a_point_that_takes_no_lock_is_secured_once_and_shown_everywhere() {
    let plan = PLAN.replacen(
        "choose Can it be locked open? = It takes a lock",
        "choose Can it be locked open? = It takes no lock",
        1,
    );
    let cut = ISOLATE.find("fill What is written on the lock = ML 7").unwrap();
    let (_folder, device, field) = begun(&[PEOPLE, &plan, &ISOLATE[..cut]]);
    device.play(
        &field,
        "see Q4 feeder switch is not secured.\nfill How the point is secured without a lock = Links in the tool case of Mara Lind\ntap Keep how it \
         is secured\ntap The caution sign hangs at Q4 feeder switch\nphoto Photo of Q4 feeder switch\nsee [deviation] Q4 feeder switch is secured \
         without a lock: Links in the tool case of Mara Lind",
    );
}
