//! Whole journeys through the screens.

use crate::desk::*;
use stillbar_core::journey::{stories, story};
use stillbar_core::screens::as_text;

#[test]
fn from_plan_to_hand_back() {
    let (_folder, _device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE]);
    let screen = as_text(&field.screen());
    assert!(screen.contains("[Handed back]"), "{screen}");
}

/// The app is closed and opened again before every single line: nothing that was given is lost, half-filled forms included.
#[test]
fn closed_and_opened_at_every_line() {
    let folder = tempfile::tempdir().unwrap();
    let device = Device::new(2);
    let script = [PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE].concat();
    let mut form: Vec<&str> = Vec::new();
    for line in script.lines().map(str::trim).filter(|l| !l.is_empty() && !l.starts_with('#')) {
        form.push(line);
        // What is typed and not sent yet is in the shell's form; a tap sends it.
        if !["fill", "choose", "read", "sign"].contains(&line.split(' ').next().unwrap()) {
            let field = device.open(folder.path()).unwrap();
            device.play(&field, &form.join("\n"));
            form.clear();
        }
    }
    let field = device.open(folder.path()).unwrap();
    assert!(as_text(&field.screen()).contains("[Handed back]"));
}

#[test]
fn what_was_typed_survives_a_kill() {
    let (folder, device, field) = begun(&[PEOPLE, "tap New job"]);
    field.edit("title".into(), "Half a ti".into());
    drop(field);
    let field = device.open(folder.path()).unwrap();
    assert!(as_text(&field.screen()).contains("_ What the job is: Half a ti"));
}

#[test]
fn an_indication_stops_the_job() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, INDICATION]);
    // Going to the work step by hand does not help either.
    let work = field.screen().route.replace("dead-test", "work");
    field.act(None, format!("go {work}"), vec![]);
    assert!(!as_text(&field.screen()).contains("> Begin work"));
    field.act(None, "begin".into(), vec![]);
    let screen = as_text(&field.screen());
    assert!(screen.contains("Treat as live") || screen.contains("First: "), "{screen}");
    assert!(screen.contains("[Stop, treat as live]"), "{screen}");
    // Nor does the second proof, nor passing it over.
    assert!(device.try_play(&field, "tap Skip this step, give a reason").is_err());
}

/// Beside a cause that gives every reading none of them is doubted: that would send somebody to a live board once more.
#[test]
fn a_cause_that_explains_all_leaves_no_reading_to_doubt() {
    let plan = PLAN.replace("Three phase with neutral: L1, L2, L3, N, PE", "Three phase, no neutral: L1, L2, L3, PE");
    let plan = plan.replace("choose Conductors that it opens = N\n", "");
    let proved = "tap Earth proved\n";
    let begin = &INDICATION[..INDICATION.find(proved).unwrap() + proved.len()];
    let (_folder, device, field) = begun(&[PEOPLE, &plan, ISOLATE, begin]);
    device.play(
        &field,
        "read PE – L1 = Nothing\nread PE – L2 = Nothing\nread PE – L3 = 231\ntap Save these readings\nsee [Stop, treat as live]\n\
         see Likeliest\nunseen (fits\nsee L3 is live\nunseen test this pair again\nunseen does not fit the others",
    );
}

#[test]
fn a_failed_second_proof_voids_every_test() {
    let cut = PROVE.rfind("tap It responds as it should").unwrap();
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, &PROVE[..cut]]);
    device
        .play(&field, "choose Proved on = Proving unit, battery, serial 9083\ntap It does not respond as it should\n");
    let screen = as_text(&field.screen());
    assert!(screen.contains("[Treat as live] The proof is void. The indicator failed its second proof"), "{screen}");
}

/// After a change of scope nobody has looked for its sources yet; what was found stands, and a cover that stayed off is no second one.
#[test]
fn another_scope_is_looked_at_anew_and_comes_to_its_hand_back() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    device.play(
        &field,
        &format!(
            "tap Something changed\nfill What will be worked on now = Breaker 5 too\nfill Why the scope changes = It is cracked\n\
             tap Save the new scope\nsee look again\ntap Next: Look for other sources\nsee Second feeder or changeover\n{}\n\
             unseen not answered\ntap Next: Prove the indicator\n{}{WORK}{RESTORE}\nsee [Handed back]",
            looked_again(),
            &PROVE[PROVE.find("choose Proved on").unwrap()..]
        ),
    );
}

/// A voltage that was there is not taken back: the work stays stopped until its cause is noted and all is proved again.
#[test]
fn a_reading_that_showed_a_voltage_stays() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, INDICATION]);
    let line = "tap The job\ntap Time line";
    device.play(&field, line);
    let screen = field.screen();
    let lit = screen.blocks.iter().find_map(|b| match b {
        stillbar_core::parts::Block::Step { step, .. } if step.title.contains(": lit") => Some(step.action.clone()),
        _ => None,
    });
    field.act(None, lit.unwrap(), vec![]);
    device.play(&field, "see Withdraw entry\nfill What was wrong with it = Slipped\ntap Withdraw this entry\nsee it stays\nsee [Stop, treat as live]");
    // Who walks away is not asked again.
    device.play(&field, &format!("{line}\nunseen Withdraw this entry"));
}

#[test]
fn whatever_changes_ends_the_proof() {
    let cases = [
        (
            "tap Not asked for\nfill By whose rule = Site rule 4\ntap Save: Not asked for\ntap Nothing within reach\ntap None in there\ntap Whoever tested lets it start\ntap Begin work\nfill Why the work is left = Break\ntap Leave the work",
            "The work was left.",
        ),
        (
            "tap Something changed\nfill What it is = Heater from DB2\nfill Where it comes in = X9\nchoose What kind of source = \
             Control or auxiliary supply\nfill Its terminals at the work, with commas = X9:1, X9:2\nfill Its voltage in volts = 230\ntap Save the source that was found",
            "Another source was found: Heater from DB2.",
        ),
        (
            "tap Something changed\nfill What will be worked on now = Breaker 5 too\nfill Why the scope changes = It is cracked\ntap \
             Save the new scope",
            "The scope of the job changed.",
        ),
        (
            "tap Something changed\nfill Which neutral, and where = N of way 3\ntap Save: neutral disconnected",
            "A neutral was disconnected",
        ),
        (
            "tap The job\ntap Indicator and proving unit\nchoose Instrument = Two-pole voltage indicator: Two-pole indicator, yellow case, \
             serial 40771 (checked)\nchoose Mark what you looked at and found sound = Leads are sound\ntap Save this check\nsee Not marked: tips, case, date of its check.\nfill What is not sound, \
             or anything else about it = Bent tips\ntap Save this check",
            "The indicator of this test was found not fit for use.",
        ),
        ("tap Locks and keys\ntap ML 7\ntap Take my lock off", "A lock came off Q4 feeder switch."),
        (
            "tap The job\ntap Covers off: treat as live\nfill Cover that comes off = Rear plate\ntap This cover is off",
            "A cover came off: Rear plate.",
        ),
    ];
    for (script, why) in cases {
        let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, "see [Proved dead]"]);
        device.play(&field, script);
        let screen = as_text(&field.screen());
        assert!(screen.contains("[Treat as live] The proof is void."), "{script}\n{screen}");
        assert!(screen.contains(why), "{script}\n{screen}");
    }
}

#[test]
fn a_person_who_joins_later_ends_the_proof_until_their_lock_is_on() {
    let (_folder, device, field) =
        begun(&[PEOPLE, PLAN, ISOLATE, PROVE, include_str!("../../journeys/tomas-joins.journey")]);
    let work = format!("{}/step/work", field.screen().route.split("/step").next().unwrap());
    field.act(None, format!("go {work}"), vec![]);
    field.act(None, "begin".into(), vec![]);
    let screen = as_text(&field.screen());
    assert!(screen.contains("! First: Isolate Q4 feeder switch. Tomas Brandt has no lock of their own"), "{screen}");
    assert!(device.try_play(&field, "tap Begin work\nunseen !").is_err());
}

#[test]
fn an_old_screen_does_nothing() {
    let (_folder, _device, field) = begun(&[PEOPLE]);
    let screen = field.screen();
    let main = screen.main.unwrap().action;
    field.act(Some(screen.turn), main.clone(), vec![]);
    let moved = field.screen().route;
    let kept = field.entries().unwrap().len();
    field.act(Some(screen.turn), "person".into(), vec![]);
    assert_eq!((field.screen().route, field.entries().unwrap().len()), (moved, kept));
    assert!(field.screen().notice.unwrap().text.contains("Nothing was done"));
    // A place is named whole: the row that leads there means the same whatever came in meanwhile.
    field.act(Some(screen.turn), "go /people".into(), vec![]);
    assert_eq!(field.screen().route, "/people");
}

#[test]
fn no_screen_says_safe() {
    let (_folder, device, field) = begun(&[]);
    let script = [PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE].concat();
    let mut form = String::new();
    for line in script.lines() {
        form.push_str(line);
        form.push('\n');
        if line.starts_with("tap") || line.starts_with("photo") {
            device.play(&field, &form);
            form.clear();
            let text = as_text(&field.screen()).to_lowercase();
            assert!(!text.contains("safe"), "{text}");
        }
    }
}

/// Every story of `stories.txt`; the other shells play the same.
#[test]
fn every_story_plays() {
    let journeys = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("journeys");
    let names = stories(&journeys).unwrap();
    assert!(names.len() > 10, "{names:?}");
    for name in names {
        let folder = tempfile::tempdir().unwrap();
        let device = Device::standing(1);
        let field = device.open(folder.path()).unwrap();
        if let Err(why) = device.try_play(&field, &story(&journeys, &name).unwrap()) {
            panic!("{name}: {why}");
        }
    }
}
