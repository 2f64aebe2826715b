//! How old a proof, a test and a wait may be, and by which clock.

use stillbar_core::journal::Fact;
use stillbar_core::prove::Reading;

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::Phone;

/// Proved dead, and work begins three days later.
#[test]
fn a_proof_holds_for_a_shift() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, cover_off()]);
    let run = proves(&one, MARA);
    one.device.pass(11 * HOUR);
    assert!(one.proved() && !one.at_job().contains("runs out"), "{}", one.at_job());
    one.device.pass(40 * MINUTE);
    assert!(one.proved() && one.at_job().contains("runs out"), "half an hour before: {}", one.at_job());
    one.device.pass(30 * MINUTE);
    assert!(!one.proved(), "{}", banner(&one));
    one.device.pass(3 * DAY);
    assert!(tries(&one, MARA, Fact::WorkBegan { run }).is_err());
    assert!(!one.proved(), "{}", banner(&one));
}

/// Work began in time; twenty days later it is still under way.
#[test]
fn a_proof_that_is_too_old_stops_the_work() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE, BEGIN]);
    assert!(one.proved());
    one.device.pass(20 * DAY);
    let shown = one.at_job();
    assert!(!one.proved() && shown.contains("[Treat as live]"), "{shown}");
    assert!(main_button(&one).starts_with("Stop work"), "{shown}");
}

/// A test is spread over more than an hour, and its second proof comes when nobody knows any more since when the indicator is broken.
#[test]
fn between_two_proofs_of_the_indicator_lies_an_hour_at_most() {
    for passed in [61 * MINUTE, 7 * DAY, 400 * DAY] {
        let one = opened_up();
        let run = begins(&one, MARA);
        reads(&one, MARA, run, &pairs(&one), Reading::None);
        one.device.pass(passed);
        let _ = tries(&one, MARA, second_proof(&one, run, true));
        assert!(!one.proved(), "{passed} ms: {}", banner(&one));
    }
    let one = opened_up();
    let run = begins(&one, MARA);
    reads(&one, MARA, run, &pairs(&one), Reading::None);
    one.device.pass(58 * MINUTE);
    keeps(&one, MARA, second_proof(&one, run, true));
    assert!(one.proved(), "{}", banner(&one));
}

/// A long test goes on after a proof in between: pairs between two good proofs count, and those whose second proof is late do not.
#[test]
fn a_long_test_goes_on_after_a_proof_in_between() {
    for (second, stands) in [(50, true), (70, false)] {
        let one = opened_up();
        let run = begins(&one, MARA);
        let all = pairs(&one);
        reads(&one, MARA, run, &all[..6], Reading::None);
        one.device.pass(50 * MINUTE);
        keeps(&one, MARA, second_proof(&one, run, true));
        assert!(!one.proved());
        reads(&one, MARA, run, &all[6..], Reading::None);
        one.device.pass(second * MINUTE);
        let _ = tries(&one, MARA, second_proof(&one, run, true));
        assert_eq!(one.proved(), stands, "{second} min: {}", banner(&one));
    }
}

/// The clock is set 20 minutes forward right after the opening: the label's 15 minutes are not over by that.
#[test]
fn a_clock_set_forward_passes_no_waiting_time() {
    let plan = PLAN.replacen(
        "fill Where you looked = Feeders of DB4 and the nameplates of the washers\ntap No stored energy found",
        "fill Or what you found = Drive of washer 4\nfill Where its terminals are = X5 plus and minus\nfill Waiting time on its label, in minutes = \
         15\ntap Stored energy found",
        1,
    );
    assert_ne!(plan, PLAN);
    let one = Phone::begun(&[PEOPLE, &plan, ISOLATE]);
    let cover = || Fact::CoverOff { what: "Front plate of DB4".into() };
    assert!(tries(&one, MARA, cover()).unwrap_err().contains("Drive of washer 4"));
    one.device.set_clock(20 * MINUTE);
    assert!(tries(&one, MARA, cover()).unwrap_err().contains("Drive of washer 4"), "the wall clock only");
    one.device.pass(16 * MINUTE);
    keeps(&one, MARA, cover());
}
