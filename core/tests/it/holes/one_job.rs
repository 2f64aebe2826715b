//! Ways to a false "proved dead" within one job, most of them on one phone.

use stillbar_core::Filled;
use stillbar_core::job::Job;
use stillbar_core::job::steps::Step;
use stillbar_core::journal::fact::{InstrumentKind, ProvedOn, SourceKind};
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::screens::as_text;

use super::by_hand::{MARA, answers};
use crate::desk::*;
use crate::forgotten::Phone;

fn job(field: &stillbar_core::Field) -> String {
    field.screen().route.split("/step").next().unwrap().to_owned()
}

/// Does an action on a step by hand, as a shell could, and returns the screen.
fn force(field: &stillbar_core::Field, job: &str, step: &str, action: &str, input: &[(&str, &str)]) -> String {
    field.act(None, format!("go {job}/step/{step}"), vec![]);
    let input = input.iter().map(|(f, v)| Filled { field: (*f).into(), value: (*v).into() }).collect();
    field.act(None, action.into(), input);
    as_text(&field.screen())
}

#[test]
fn nothing_is_proved_once_the_work_is_finished() {
    let cut = RESTORE.find("read L1").unwrap();
    let (_folder, _device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, &RESTORE[..cut]]);
    let job = job(&field);
    for (step, action) in [("prove-before", "before works"), ("open-up", "cover"), ("work", "begin")] {
        let screen = force(&field, &job, step, action, &[("on", "source"), ("what", "x")]);
        assert!(!screen.contains("[Proved dead]"), "{screen}");
        assert!(screen.contains("The work is finished") || screen.contains("Choose the voltage indicator"), "{screen}");
    }
}

#[test]
fn who_is_not_on_the_job_does_not_begin_work() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let job = job(&field);
    device.play(&field, "tap The job\ntap All jobs\ntap Signed on: Mara Lind\ntap Joel Aras\ntap Go on without PIN");
    let screen = force(&field, &job, "work", "begin", &[]);
    assert!(screen.contains("Joel Aras is not on this job"), "{screen}");
}

#[test]
fn a_lock_handed_over_leaves_a_gap_that_the_banner_shows() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    device.play(
        &field,
        "see [Proved dead]\ntap The job\ntap People on the job\nchoose Person = Tomas Brandt\nchoose Duty = Working on it\ntap Save person and duty\nsee \
         [Treat as live] The proof is void. Somebody on the job has no lock of their own on Q4 feeder switch.",
    );
}

#[test]
fn another_round_asks_for_everything_again() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK]);
    let cut = RESTORE.find("sign Signature").unwrap();
    let cut = RESTORE[..cut].rfind("fill Who takes").unwrap();
    device.play(&field, &RESTORE[..cut]);
    device.play(
        &field,
        "tap The job\ntap Something changed\nfill What will be worked on now = Breaker 5\nfill Why the scope changes = It is cracked\ntap Save \
         the new scope\nsee Look for other sources [now]\nsee [Treat as live]",
    );
    device.play(&field, &format!("tap Next: Look for other sources\n{}", looked_again()));
    let restore = RESTORE.replace("tap Front plate of DB4 is back", "tap Front plate of DB4 (2) is back");
    let again = locked_again(&ISOLATE.replace("ML 7", "ML 17").replace("ML 8", "ML 18"));
    device.play(&field, &format!("tap Next: Switch off the loads\n{again}{PROVE}{WORK}{restore}see [Handed back]"));
}

#[test]
fn work_under_a_new_proof_is_begun_anew() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, BEGIN]);
    device.play(
        &field,
        "tap Something changed\nfill Which neutral, and where = N of way 3\ntap Save: neutral disconnected\ntap Stop work: treat as live\ntap Stop work: everybody is clear\ntap Next: Prove the indicator",
    );
    let from = PROVE.find("choose Proved on").unwrap();
    device.play(&field, &PROVE[from..]);
    device.play(
        &field,
        "unseen Work is finished\ntap Whoever tested lets it start\ntap Begin work\nsee Work is finished",
    );
}

#[test]
fn an_indication_seen_after_the_proof_counts() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    device.play(
        &field,
        "tap The job\ntap Test every pair\nchoose An indication seen since = PE – L2\ntap This pair gave an indication\nsee [Stop, treat as live]",
    );
}

#[test]
fn a_point_has_to_open_every_line_and_no_protective_conductor() {
    let first_point = PLAN.find("tap Add this point").unwrap() + "tap Add this point\n".len();
    let line = "choose Conductors that it opens = L3\n";
    for (instead, says) in [
        ("choose Conductors that it opens = PE\n", "no point of isolation opens it"),
        ("", "L3 of the normal supply is opened by no point"),
    ] {
        let (_folder, device, field) = begun(&[PEOPLE, &PLAN[..first_point].replace(line, instead)]);
        device.play(&field, &format!("see {says}"));
    }
}

#[test]
fn readings_typed_under_one_run_are_not_offered_in_the_next() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let cut = PROVE.find("read N").unwrap();
    device.play(&field, &PROVE[..cut]);
    for row in ["N-L1", "N-L2"] {
        let field_name = match &field.screen().blocks.iter().find_map(|b| match b {
            stillbar_core::parts::Block::Pad { pad, .. } => {
                pad.rows.iter().find(|r| r.field.ends_with(row)).map(|r| r.field.clone())
            }
            _ => None,
        }) {
            Some(name) => name.clone(),
            None => panic!("no row {row}"),
        };
        field.edit(field_name, "none".into());
    }
    assert!(as_text(&field.screen()).contains("N – L1: none"));
    device.play(
        &field,
        "tap The job\ntap Something changed\nfill Which neutral, and where = N of way 3\ntap Save: neutral disconnected\ntap Next: Prove \
         the indicator\nchoose Proved on = Proving unit, battery, serial 9083\ntap It responds as it should\nunseen N – L1: none",
    );
}

#[test]
fn an_indication_needs_its_cause_before_another_test() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, INDICATION]);
    let job = job(&field);
    let screen = force(&field, &job, "prove-before", "before works", &[("on", "source")]);
    assert!(!screen.contains("[Treat as live] 10 pairs"), "{screen}");
    field.act(None, format!("go {job}/step/dead-test"), vec![]);
    device.play(
        &field,
        "fill What the cause was, and what was done about it = Lighting of bay 3 shared the neutral; parted and locked at DB1\ntap Save the cause, \
         then prove again\ntap Another cause, noted\nfill What showed that cause = Gone with DB1 locked\ntap Save: Another cause, noted\n",
    );
    let from = PROVE.find("choose Proved on").unwrap();
    device.play(&field, &format!("{}see Earlier: PE – L2 lit\nsee Lighting of bay 3", &PROVE[from..]));
}

#[test]
fn zero_on_every_pair_without_a_proved_reference_proves_nothing() {
    let without = PROVE.replace("tap Earth proved", "tap Earth not proved");
    let cut = without.find("tap Earth not proved\n").unwrap() + "tap Earth not proved\n".len();
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, &without[..cut]]);
    device.play(&field, "see [Treat as live] The proof is void. The reference is not earth");
    let job = job(&field);
    let screen = force(&field, &job, "dead-test", "readings 1", &[]);
    assert!(!screen.contains("Saved."), "{screen}");
}

/// Stored energy is never passed on time alone, nor on a reading alone: the label's time, and then nothing on the instrument.
#[test]
fn stored_energy_needs_the_time_and_the_reading() {
    let plan = PLAN.replacen(
        "fill Where you looked = Feeders of DB4 and the nameplates of the washers\ntap No stored energy found",
        "fill Or what you found = Drive of washer 4\nfill Where its terminals are = X5 plus and minus\nfill Waiting time on its label, in minutes = \
         15\ntap Stored energy found",
        1,
    );
    let cut = PROVE.find("tap Earth proved\n").unwrap() + "tap Earth proved\n".len();
    let (_folder, device, field) = begun(&[PEOPLE, &plan, ISOLATE]);
    // Covers stay on until the label's time is over, counted from the opening.
    device.play(
        &field,
        "see Drive of washer 4: wait 15 min from opening\nfill Cover that comes off = Front plate of DB4\ntap This cover is off\nsee Covers stay \
         on.\nunseen Cover off\nwait 20",
    );
    device.play(&field, &PROVE[..cut]);
    // A voltage that is left then is an indication: its cause is noted, and a whole test follows.
    device.play(
        &field,
        "see Stored energy and direct voltage\nfill Direct voltage at Drive of washer 4, in volts = 48\ntap Save the reading at Drive of washer 4\n\
         see [Stop, treat as live] Indication: Drive of washer 4 48 V",
    );
    device.play(
        &field,
        "tap The job\ntap Test every pair\nfill What the cause was, and what was done about it = Bleed resistor slow, waited on\ntap Save the cause, \
         then prove again",
    );
    let again = PROVE.find("choose Proved on").unwrap();
    device.play(&field, &PROVE[again..cut]);
    device.play(
        &field,
        "see Stored energy and direct voltage\nfill Direct voltage at Drive of washer 4, in volts = 0\ntap Save the reading at Drive of washer 4\nsee \
         # Test every pair",
    );
}

/// One tester that two phones noted, each for itself, is one tester: where one phone finds it broken, what the other proved with it ends.
#[test]
fn an_instrument_noted_twice_fails_as_one() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let other = Phone::beside(&one, 2, "Mara Lind");
    let (mara, job) = (one.person("Mara Lind"), one.job());
    let known = |serial: &str| {
        let of = |e: &Entry| matches!(&e.body.fact, Fact::InstrumentNoted { serial: s, .. } if s == serial);
        one.entries().into_iter().find(of).unwrap().id
    };
    let (tester, unit) = (known("40771"), known("9083"));
    let check = |instrument: EntryId, leads_sound: bool| Fact::InstrumentChecked {
        instrument,
        leads_sound,
        tips_sound: true,
        body_sound: true,
        in_date: true,
        note: String::new(),
        knowing: Vec::new(),
    };
    let noted = Fact::InstrumentNoted {
        kind: InstrumentKind::Indicator,
        name: "TWO-POLE indicator,yellow case".into(),
        serial: "４0771".into(),
        lights_from: None,
    };
    let twin = other.field().keep(mara, None, noted).unwrap();
    other.field().keep(mara, Some(job), check(twin, false)).unwrap();
    assert!(one.proved());
    one.hear(&other);
    assert!(!one.proved() && one.at_job().contains("not fit for use"), "{}", one.at_job());
    answers(&one, MARA, Step::Instruments);
    let proof = || Fact::IndicatorProved { run: None, indicator: tester, on: ProvedOn::ProvingUnit(unit), works: true };
    let refused = one.field().keep(mara, Some(job), proof()).unwrap_err().to_string();
    assert!(refused.contains("Check it again first"), "{refused}");
    one.field().keep(mara, Some(job), check(tester, true)).unwrap();
    one.at_job();
    one.play(&PROVE[PROVE.find("tap Next: Prove the indicator").unwrap()..]);
    assert!(one.proved(), "{}", one.at_job());
}

/// "None found" of somebody who did not know that the scope had changed is no answer for the new one, whatever their clock says.
#[test]
fn none_found_holds_for_the_scope_that_was_known() {
    let one = Phone::begun(&[PEOPLE, PLAN]);
    let other = Phone::beside(&one, 2, "Mara Lind");
    let (mara, job) = (one.person("Mara Lind"), one.job());
    let scope = Fact::ScopeChanged { scope: "Breaker 5 too".into(), why: "It is cracked".into() };
    one.field().keep(mara, Some(job), scope).unwrap();
    other.device.pass(3_600_000);
    let none = || Fact::SourceAnswered {
        kind: SourceKind::Ups,
        found: None,
        looked: "The whole board".into(),
        terminals: Vec::new(),
        millivolts: None,
    };
    let answered = || {
        let entries: Vec<Entry> = one.field().entries().unwrap().into_iter().filter(|e| e.job() == Some(job)).collect();
        Job::fold(&entries).unwrap().answered(SourceKind::Ups)
    };
    other.field().keep(mara, Some(job), none()).unwrap();
    one.hear(&other);
    assert!(!answered());
    other.hear(&one);
    other.field().keep(mara, Some(job), none()).unwrap();
    one.hear(&other);
    assert!(answered());
}
