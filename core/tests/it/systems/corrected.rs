//! A wrong choice is corrected: the entry says what is there and why, the proof ends, nothing is lost, and points keep the conductors that
//! they were noted with until they are noted anew.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::Fact;
use stillbar_core::prove::{Earthing, System};
use stillbar_core::screens::as_text;

use super::story::*;
use crate::desk::*;
use crate::forgotten::Phone;

const WHY: &str = "Behind the cover are three lines";

/// The correction, on *Something changed*.
fn correct(to: &str, volts: &str) -> String {
    format!(
        "tap Something changed\nchoose Conductors at the point of work = {to}\nfill Nominal voltage in volts = {volts}\nfill What was wrong = \
         {WHY}\ntap Correct the conductors\n"
    )
}

const THREE: &str = "Three phase with neutral: L1, L2, L3, N, PE";

/// A board of three phases, noted as one phase, proved dead as that; and then corrected.
fn taken_for_one_phase() -> Phone {
    let story = Story::of(System::OnePhase, 230.0, Earthing::TnCS, 0);
    let phone = story.proved();
    assert!(phone.proved());
    phone.at_job();
    phone
}

fn opened_by_none(phone: &Phone) -> String {
    phone.at(&format!("/job/{}/step/points", phone.job()))
}

#[test]
fn a_correction_ends_the_proof_and_loses_nothing() {
    let phone = taken_for_one_phase();
    let before = phone.entries();
    phone.play(&correct(THREE, "230"));
    assert!(!phone.proved());
    phone.at_job();
    phone.play("see [Treat as live] The proof is void. Conductors, earthing or voltage had been noted wrong.");
    let after = phone.entries();
    assert!(before.iter().all(|e| after.contains(e)), "an entry is gone");
    assert_eq!(after.len(), before.len() + 1);
    let kept =
        |f: &Fact| matches!(f, Fact::SystemCorrected { why, system: System::ThreePhaseNeutral, .. } if why == WHY);
    assert_eq!(after.iter().filter(|e| kept(&e.body.fact)).count(), 1);
    // Locks, photos and points stand as they were.
    let job = folded(&phone);
    assert_eq!((job.locks_on().count(), job.points.len(), job.photos.len()), (2, 2, 2));
    assert_eq!(job.points[0].poles, ["L"]);
    assert_eq!(job.plan().len(), 10);
    phone.play(&format!("tap Time line\nsee {WHY}"));
    let made = stillbar_core::app::of_folder(
        phone.folder.path(),
        &*phone.device,
        "Replace the outgoing breaker of washer 4",
        false,
    );
    let made = made.unwrap();
    assert_eq!(made.report().state.word.code(), "void");
    // What the points of before open is no line of the system as it is.
    let lacks = format!("{:?}", folded(&phone).blockers(Step::Points));
    for line in ["L1", "L2", "L3"] {
        assert!(lacks.contains(&format!("LineClosed {{ line: \"{line}\" }}")), "{line}: {lacks}");
        assert!(lacks.contains(&format!("SourceConductor {{ conductor: \"{line}\"")), "{line}: {lacks}");
    }
}

/// A correction says what was wrong, in words.
#[test]
fn a_correction_says_why() {
    let phone = taken_for_one_phase();
    let without = correct(THREE, "230").replace(&format!("fill What was wrong = {WHY}\n"), "");
    phone.play(&format!("{without}see Write what was wrong about the conductors"));
    assert!(phone.proved(), "nothing was kept, and nothing ended");
    phone.at_job();
    phone.play(&format!("{}see Give the reason in words", correct(THREE, "230").replace(WHY, ".....")));
    assert!(phone.proved(), "nothing was kept, and nothing ended");
}

/// The points are noted anew with all that they open, opened and locked; then ten pairs, and on to the hand-back.
#[test]
fn a_corrected_job_comes_to_its_hand_back() {
    let phone = taken_for_one_phase();
    phone.play(&correct(THREE, "230"));
    let point = |label: &str, poles: &[&str], cuts: &str| {
        let poles = poles.iter().map(|p| format!("choose Conductors that it opens = {p}\n")).collect::<String>();
        format!(
            "fill Point, as it is labelled = {label}\nfill Where the point is = Main board MB1, all of the switch\nchoose What it is = \
             Switch-disconnector\nchoose Can it be locked open? = It takes a lock\n{poles}choose What it cuts off = {cuts}\ntap Add this point\n"
        )
    };
    let set = "Generator: Standby generator set, at Changeover switch Q9 in DB1";
    opened_by_none(&phone);
    phone.play(&point("Q4, three poles", &["L1", "L2", "L3"], "The normal supply"));
    phone.play(&point("Q9, four poles", &["L1", "L2", "L3", "N"], set));
    phone.at_job();
    // The rotation of three lines was not read while they were live, and is not read now.
    phone.play(
        "tap Next: Rotation before isolating\nfill Or why it was not read = Taken for one phase until the cover was off\ntap Not read before",
    );
    phone.play(&isolated_anew());
    // The cover is off since the first time.
    let indicator = from(until(PROVE, "choose How it was shown"), "choose Proved on");
    phone.play(&format!("tap Nothing started\ntap None fitted\n{indicator}"));
    reference_and_pairs(&phone, &["L1", "L2", "L3", "N", "PE"]);
    assert!(phone.proved());
    // Whoever reads what is proved sees that it was first noted as something else.
    assert!(banner(&phone).contains("Conductors corrected, before noted as One phase"), "{}", banner(&phone));
    let off = until(RESTORE, "read L1 – N");
    let more = changed(
        off,
        "tap Caution sign taken off Q4",
        "tap Take my lock off Q4, three poles\ntap Take my lock off Q9, four poles\ntap Caution sign taken off Q4",
    );
    let more = changed(
        &more,
        "tap Q4 feeder switch is closed\n",
        "tap Caution sign taken off Q4, three poles\ntap Caution sign taken off Q9, four poles\ntap Q4 feeder switch is closed\n\
         tap Q4, three poles is closed\n",
    );
    phone.play(&format!("{WORK}\n{more}"));
    let story = Story::of(System::ThreePhaseNeutral, 230.0, Earthing::TnCS, 0);
    let read = presence(&phone, |a, b| story.shows(a, b));
    assert_eq!(read.len(), 6, "{read:?}");
    assert_eq!(findings(&phone), Vec::<String>::new());
    // Nobody read the rotation of three lines before: it is read with what turns uncoupled.
    let guard = "choose How motors are kept from harm = What turns is uncoupled\nchoose Which way it turns";
    phone.play(&changed(&hand_back(true), "choose Which way it turns", guard));
    phone.at_job();
    phone.play(&format!("see [Handed back]\ntap Time line\nsee {WHY}"));
}

/// Both points opened, locked, signed and photographed, as they were before.
fn isolated_anew() -> String {
    let script = until(from(ISOLATE, "see Isolate Q4"), "see Isolate Q9");
    let second = from(ISOLATE, "see Isolate Q9");
    let blocked = until(from(second, "tap Blocked at its controller"), "fill What shows that it is open");
    let second = changed(second, blocked, "");
    let first = changed(script, "Q4 feeder switch", "Q4, three poles").replace("ML 7", "ML 17");
    let second = changed(&second, "Q9 changeover switch", "Q9, four poles").replace("ML 8", "ML 18");
    format!("{first}{second}")
}

/// The other way round: taken for three phases with neutral at 230 V, and it is a delta with a high leg. What is asked of it is asked now.
#[test]
fn what_the_right_system_asks_is_asked_after_a_correction() {
    let phone = Story::of(System::ThreePhaseNeutral, 230.0, Earthing::TnCS, 0).proved();
    phone.at_job();
    phone.play(&correct("Delta with a high leg: L1, L2, L3, N, PE", "240"));
    assert!(!phone.proved());
    phone.at_job();
    let shown = phone.at(&format!("/job/{}/step/points", phone.job()));
    assert!(shown.contains("Which line stands higher to neutral?"), "{shown}");
    let shown = as_text(&phone.field().screen());
    assert!(shown.contains("[Treat as live]"), "{shown}");
}
