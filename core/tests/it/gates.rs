//! What the gate refuses, in the person's words.

use stillbar_core::screens::as_text;

use crate::desk::*;

#[test]
fn steps_cannot_be_skipped() {
    let (_folder, _device, field) = begun(&[PEOPLE, PLAN]);
    let job = field.screen().route.replace("/step/shed", "");
    for (step, action) in
        [("open-up", "cover"), ("work", "begin"), ("hand-back", "hand-back"), ("dead-test", "readings 1")]
    {
        field.act(None, format!("go {job}/step/{step}"), vec![]);
        let input =
            ["what", "to", "mark"].map(|f| stillbar_core::Filled { field: f.into(), value: "x".into() }).to_vec();
        field.act(None, action.into(), input);
        let screen = field.screen();
        let notice = screen.notice.unwrap_or_else(|| panic!("{step} was accepted")).text;
        let why = ["First: ", "Prove the indicator first", "Nothing is proved dead yet"];
        assert!(why.iter().any(|w| notice.starts_with(w)), "{step}: {notice}");
    }
}

#[test]
fn a_deviation_needs_a_reason_and_follows_the_job() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, "tap Skip this step, give a reason"]);
    device.play(
        &field,
        "fill Why, and what is done instead = no\ntap Skip it, signed by Mara Lind\nsee Give the reason in words",
    );
    device.play(
        &field,
        "fill Why, and what is done instead = One circuit feeds the alarm\ntap Skip it, signed by Mara Lind",
    );
    let screen = as_text(&field.screen());
    assert!(screen.contains("[deviation] Deviation at Switch off the loads: One circuit feeds the alarm"), "{screen}");
}

#[test]
fn only_the_owner_takes_a_lock_off() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let job = field.screen().route.split("/step").next().unwrap().to_owned();
    device.play(&field, "tap The job\ntap All jobs\ntap Signed on: Mara Lind\ntap Tomas Brandt\ntap Go on without PIN");
    field.act(None, format!("go {job}/locks"), vec![]);
    device.play(&field, "tap Mara Lind on Q4 feeder switch: ML 7\nunseen > Take my lock off");
    field.act(None, "remove".into(), vec![]);
    let notice = field.screen().notice.unwrap().text;
    assert!(notice.contains("Only Mara Lind may take this lock off"), "{notice}");
}

/// A correction is an entry: the old one stays in the time line, and what it held is lacking again.
#[test]
fn a_withdrawn_entry_stays_and_ends_the_proof() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    device.play(
        &field,
        "tap The job\ntap Time line\ntap Permit BL-2231\nfill What was wrong with it = Wrong permit\ntap Withdraw this entry\nsee Permit \
         BL-2231 [withdrawn]\nsee Withdrawn: Wrong permit\nsee [Treat as live] The proof is void. An entry of this job was withdrawn.\ntap The \
         job\nsee Permit reference [now]",
    );
    // What was done cannot be withdrawn.
    device.play(&field, "tap Time line\ntap Lock ML 7\nfill What was wrong with it = Wrong\ntap Withdraw this entry\nsee it cannot be withdrawn");
}
