//! Restoring: what goes back on and in which order, the rotation, readings that stand out, and an isolation that is given up.

use std::sync::Arc;

use stillbar_core::Field;
use stillbar_core::journal::fact::{Rotation, SupplyAnswer};
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::screens::as_text;

use crate::desk::*;

/// Restoring, up to the closing of points.
fn unlocked() -> &'static str {
    &RESTORE[..RESTORE.find("tap Q4 feeder switch is closed").unwrap()]
}

/// Restoring, up to the readings with the supply back.
fn supplied() -> &'static str {
    &RESTORE[..RESTORE.find("read L1 – N").unwrap()]
}

/// Both points found on.
fn both_on() -> String {
    ISOLATE.replace("How you found it = Off already", "How you found it = On: I switched it off")
}

pub fn find(field: &Field, wanted: impl Fn(&Fact) -> bool) -> EntryId {
    field.entries().unwrap().iter().find(|e| wanted(&e.body.fact)).unwrap().id
}

fn point(field: &Field, name: &str) -> EntryId {
    find(field, |f| matches!(f, Fact::PointAdded { label, .. } if label == name))
}

fn person(field: &Field, wanted: &str) -> EntryId {
    find(field, |f| matches!(f, Fact::PersonNoted { name, .. } if name == wanted))
}

/// What the gate says to a fact of the first job, kept by Mara Lind.
pub fn keep(field: &Field, fact: Fact) -> Result<EntryId, String> {
    let job = find(field, |f| matches!(f, Fact::JobOpened { .. }));
    field.keep(person(field, "Mara Lind"), Some(job), fact).map_err(|why| why.to_string())
}

fn close(field: &Field, name: &str, beside: Option<&str>) -> Result<EntryId, String> {
    let point = point(field, name);
    keep(field, Fact::PointClosed { point, beside: beside.map(str::to_owned) })
}

fn reads(pairs: &[(&str, &str)]) -> String {
    let lines = pairs.iter().map(|(pair, volts)| format!("read {pair} = {volts}\n")).collect::<String>();
    format!("{lines}tap Save the readings\n")
}

/// The six readings of a good supply.
fn good() -> String {
    let pairs = ["L1 – N", "L2 – N", "L3 – N"].map(|p| (p, "230"));
    let lines = ["L1 – L2", "L2 – L3", "L3 – L1"].map(|p| (p, "399"));
    reads(&[pairs, lines].concat())
}

const ANSWER: &str = "Accepted by somebody who was told";

fn answer(which: &str, answer: &str, who: &str, how: &str) -> String {
    format!(
        "choose Which readings = {which}\nchoose Answer = {answer}\nfill Who accepts it, what is left off, or what was wrong = {who}\n\
         fill How = {how}\ntap Save this answer\n"
    )
}

fn supplied_job() -> (tempfile::TempDir, Arc<Device>, Arc<Field>) {
    begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, supplied()])
}

#[test]
fn what_was_found_off_is_never_asked_for() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, unlocked()]);
    device.play(
        &field,
        "see Q9 changeover switch [done]\nsee Found off: it stays off.\nunseen Q9 changeover switch is closed\n\
         see Brings back the normal supply\ntap Q4 feeder switch is closed\nsee Supply back: voltage and rotation",
    );
    assert!(close(&field, "Q9 changeover switch", Some("It always was")).unwrap_err().contains("found off"));
}

/// Both sources were found on: the normal supply first, and the other only with a reason, never as the main button.
#[test]
fn two_supplies_go_on_together_only_with_a_reason() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, &both_on(), PROVE, WORK, unlocked()]);
    let main = |field: &Field| field.screen().main.map(|m| m.label).unwrap_or_default();
    assert_eq!(main(&field), "Q4 feeder switch is closed");
    device.play(
        &field,
        "see Forbid: Do not close Q9 changeover switch: Standby generator set and the normal supply\n\
         unseen Q9 changeover switch is closed",
    );
    // Also before the normal supply is back: it is going to be.
    let refused = close(&field, "Q9 changeover switch", None).unwrap_err();
    assert!(refused.contains("brings Standby generator set beside the normal supply"), "{refused}");
    device.play(&field, "tap Q4 feeder switch is closed\nsee # Switch the isolators back on");
    assert_eq!(main(&field), "Leave Q9 changeover switch open, give a reason");
    device.play(
        &field,
        "tap Close Q9 changeover switch beside the normal supply\nsee Write why both supplies go on together\n\
         fill Why both go on together = .....\ntap Close Q9 changeover switch beside the normal supply\nsee Give the reason in words\n\
         fill Why both go on together = The set runs in step with the mains, by its own relay\n\
         tap Close Q9 changeover switch beside the normal supply\nsee # Supply back: voltage and rotation\ntap The job\ntap Time line\n\
         see Q9 changeover switch closed beside another source: The set runs in step",
    );
}

/// The board ran on the generator: it goes back on alone, and nobody is asked why.
#[test]
fn the_supply_that_was_on_goes_back_alone() {
    let swapped = ISOLATE.replace("Off already", "?").replace("On: I switched it off", "Off already");
    let swapped = swapped.replace('?', "On: I switched it off");
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, &swapped, PROVE, WORK, unlocked()]);
    device.play(
        &field,
        "unseen Q4 feeder switch is closed\nsee Brings back Standby generator set\ntap Q9 changeover switch is closed\n\
         see # Supply back: voltage and rotation",
    );
}

/// A job with a roof inverter behind a switch of its own, listed before the supply's.
fn with_pv() -> (tempfile::TempDir, Arc<Device>, Arc<Field>) {
    let found = "choose Kind of source = PV\nfill What you found = Roof inverter\nfill Where it comes in = QP in DB4\ntap Save this source\n";
    let plan = PLAN.replace("fill Where you looked = Roof and meter room\nchoose Looked for and NOT found: tap each = PV\ntap Save: not found\n", found);
    let at = plan.find("fill Point, as it is labelled = Q4").unwrap();
    let qp = "fill Point, as it is labelled = QP\nfill Where the point is = DB4\nchoose What it is = Switch-disconnector\n\
              choose Can it be locked open? = It takes a lock\nchoose Conductors that it opens = L1\nchoose Conductors that it opens = L2\n\
              choose Conductors that it opens = L3\nchoose Conductors that it opens = N\n\
              choose What it cuts off = PV: Roof inverter, at QP in DB4\ntap Add this point\n";
    let plan = format!("{}{qp}{}", &plan[..at], &plan[at..]);
    let isolate = "see Isolate QP\ntap It cannot\nfill How that is known = Waits for the mains, by its manual\ntap Save: It cannot\n\
                   fill What shows that it is open = Inverter dark\nchoose How you found it = On: I switched it off\n\
                   tap QP is open, off load\nfill What is written on the lock = ML 6\nchoose How it is locked = Padlock on a hasp\n\
                   tap Save lock, fitted by Mara Lind\ntap The caution sign hangs at QP\nphoto Photo of QP\n";
    let at = ISOLATE.find("see Isolate Q4").unwrap();
    let isolate = format!("{}{isolate}{}", &ISOLATE[..at], &ISOLATE[at..]);
    let at = PROVE.find("read N – L1").unwrap();
    let dc = "fill Direct voltage at Roof inverter, in volts = 0\ntap Save the reading at Roof inverter\n";
    let prove = format!("{}{dc}{}", &PROVE[..at], &PROVE[at..]);
    let off = unlocked().replace(
        "tap Take my lock off Q4 feeder switch\n",
        "tap Take my lock off QP\ntap Take my lock off Q4 feeder switch\n",
    );
    let off = off.replace(
        "tap Caution sign taken off Q4 feeder switch\n",
        "tap Caution sign taken off QP\ntap Caution sign taken off Q4 feeder switch\n",
    );
    begun(&[PEOPLE, &plan, &isolate, &prove, WORK, &off])
}

#[test]
fn what_follows_the_mains_goes_back_on_after_them() {
    let (_folder, device, field) = with_pv();
    device.play(&field, "see Close it after Q4 feeder switch: it only follows the supply.\nunseen QP is closed");
    let refused = close(&field, "QP", None).unwrap_err();
    assert!(refused.contains("QP goes back on after the supply: first Q4 feeder switch"), "{refused}");
    device.play(&field, "tap Q4 feeder switch is closed\ntap QP is closed\nsee # Supply back: voltage and rotation");
}

/// What another job's lock holds stays open, says so, and holds nobody up; the other job puts it back on, though it found it off.
#[test]
fn what_others_hold_stays_open_and_holds_nobody_up() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let job = field.screen().route.split("/step").next().unwrap().to_owned();
    let plan = include_str!("../../journeys/plan.journey")
        .replace("Replace the outgoing breaker of washer 4", "Tighten the tails");
    let found = "choose Kind of source = Generator\nfill What you found = Standby generator set\nfill Where it comes in = Changeover switch Q9 in DB1\ntap Save this source\n";
    let plan = plan.replace(found, "").replacen(
        "fill Where you looked = DB4",
        "tap It is a source here too\nfill Where you looked = DB4",
        1,
    );
    let check = include_str!("../../journeys/check-instruments.journey");
    let circuits = include_str!("../../journeys/circuits.journey");
    let isolate = ISOLATE.replace("How you found it = On: I switched it off", "How you found it = Off already");
    let isolate = isolate.replace("ML 7", "TB 1").replace("ML 8", "TB 2").replace("Mara Lind", "Tomas Brandt");
    // The work lasts longer than a shared device knows its hand.
    let work = format!("{WORK}\ntap Go on without PIN");
    field.act(None, "go /".into(), vec![]);
    device.play(
        &field,
        &format!(
            "tap Signed on: Mara Lind\ntap Tomas Brandt\ntap Go on without PIN\n{plan}{check}{circuits}{isolate}{PROVE}"
        ),
    );
    let other = field.screen().route.split("/step").next().unwrap().to_owned();
    field.act(None, "go /people".into(), vec![]);
    device.play(&field, "tap Mara Lind\ntap Go on without PIN");
    field.act(None, format!("go {job}/step/work"), vec![]);
    device.play(&field, &work);
    device.play(&field, unlocked());
    device.play(
        &field,
        "tap The job\ntap Switch the isolators back on\nsee Q4 feeder switch [stays open]\nsee Stays open: held by lock TB 1 of Tomas Brandt, for Tighten the tails.\n\
         unseen Q4 feeder switch is closed\ntap Next: Circuits on, in order\ntap F1 washers is on\ntap F2 lighting is on\n\
         see Stays open: held by lock TB 1 of Tomas Brandt\n\
         tap None fitted\ntap Back to automatic\nfill Who was told = Joel Aras\ntap Save: Back to automatic\nfill Who takes the installation back = Joel Aras, site manager\n\
         sign Signature of the person who takes it back = Joel Aras\ntap Hand back\nsee [Handed back]",
    );
    field.act(None, "go /people".into(), vec![]);
    device.play(&field, "tap Tomas Brandt\ntap Go on without PIN");
    field.act(None, format!("go {other}/step/work"), vec![]);
    device.play(&field, &work);
    device.play(&field, unlocked());
    device.play(&field, "tap Q4 feeder switch is closed\nsee # Supply back: voltage and rotation");
}

/// Right is as found, whichever way that was.
#[test]
fn rotation_is_right_as_found() {
    let plan = PLAN.replace("tap Clockwise: L1, L2, L3", "tap Anticlockwise: L1, L3, L2");
    assert_ne!(plan, PLAN);
    let restore =
        RESTORE.replace("Which way it turns = Clockwise: L1, L2, L3", "Which way it turns = Anticlockwise: L1, L3, L2");
    let (_folder, _device, field) = begun(&[PEOPLE, &plan, ISOLATE, PROVE, WORK, &restore]);
    assert!(as_text(&field.screen()).contains("[Handed back]"));
}

#[test]
fn rotation_that_changed_is_answered_for() {
    let (_folder, device, field) = supplied_job();
    device.play(&field, &good());
    device.play(
        &field,
        &format!(
            "see Before isolating: clockwise: that is right.\nchoose Which way it turns = Anticlockwise: L1, L3, L2\nfill How you know = Outlet\n\
             tap Save the rotation\nsee The rotation is anticlockwise, and was clockwise before: motors run backwards.\n\
             unseen Skip this step, give a reason\n{}see # Circuits on, in order",
            answer(
                "The rotation is anticlockwise, and was clockwise before: motors run backwards. Isolate again, then change two lines over.",
                ANSWER,
                "Joel Aras",
                "Told at the board; washer 4 ran backwards before, and this is what was wanted"
            )
        ),
    );
}

/// Nobody knows which way is right: motors are kept from harm before anything is read.
#[test]
fn rotation_that_was_not_read_before_asks_for_a_guard() {
    let read = "fill Where you read it = Outlet beside the board\ntap Clockwise: L1, L2, L3\n";
    let plan = PLAN.replace(read, "fill Or why it was not read = No outlet on this board\ntap Not read before\n");
    assert_ne!(plan, PLAN);
    let (_folder, device, field) = begun(&[PEOPLE, &plan, ISOLATE, PROVE, WORK, supplied(), &good()]);
    let rotation = |rotation| Fact::RotationRead { rotation, how: "Outlet".into(), guard: None };
    for turned in [Rotation::Clockwise, Rotation::Anticlockwise] {
        assert!(keep(&field, rotation(turned)).unwrap_err().contains("uncouple what turns, or watch a short bump"));
    }
    let late = Fact::RotationFound { rotation: Some(Rotation::Clockwise), how: "Outlet".into() };
    assert!(keep(&field, late).unwrap_err().contains("cannot be read now"));
    device.play(
        &field,
        "see Must: Rotation was not read before (No outlet on this board). First uncouple what turns, or watch a short bump.\n\
         choose Which way it turns = Anticlockwise: L1, L3, L2\nfill How you know = Bump of washer 1\ntap Save the rotation\n\
         see Choose which you did\nchoose How motors are kept from harm = A short bump, watched\n\
         tap Save the rotation\nsee # Circuits on, in order",
    );
}

/// A step that was passed over before anything was read does not pass over what is read later.
#[test]
fn what_is_read_after_a_step_was_passed_over_is_answered_for() {
    let (_folder, device, field) = supplied_job();
    device.play(
        &field,
        "tap Skip this step, give a reason\nfill Why, and what is done instead = Readings follow later\ntap Skip it, signed by Mara Lind\n\
         see # Circuits on, in order\ntap The job\nsee Supply back: voltage and rotation [skipped]\ntap Supply back: voltage and rotation",
    );
    device.play(&field, &reads(&[("L2 – N", "400"), ("L3 – N", "0")]));
    device.play(&field, "tap The job\nsee Supply back: voltage and rotation [now]\nunseen [skipped]");
    let back = Fact::HandedBack { to: "Joel Aras".into(), note: String::new(), mark: "typed:Joel Aras".into() };
    let refused = keep(&field, back).unwrap_err();
    assert!(refused.contains("L2 – N: 400.0 V. N is missing"), "{refused}");
    device.play(&field, "tap Supply back: voltage and rotation\nunseen Skip this step, give a reason");
    // Nobody accepts a missing line or neutral; what it feeds is left off, or it is mended.
    let missing = "L2 – N: 400.0 V. N is missing, or changed with a line: isolate again, then find out.";
    let line = "L3 – N: 0.0 V. A line is missing: isolate again, then find out.";
    device.play(&field, &format!("unseen {ANSWER}\n{}", answer(missing, "Left off", "...", "Locked off at F1")));
    device.play(&field, "see Write what is left off");
    let of: Vec<EntryId> = field
        .entries()
        .unwrap()
        .iter()
        .filter(|e| matches!(e.body.fact, Fact::PresenceRead { .. }))
        .map(|e| e.id)
        .collect();
    let accepted =
        Fact::SupplyAnswered { of, answer: SupplyAnswer::Accepted, who: "Joel Aras".into(), how: "Told".into() };
    assert!(keep(&field, accepted).unwrap_err().contains("Nobody accepts a missing line or neutral"));
    device.play(&field, &answer(missing, "Left off", "All of DB4", "F1 and F2 stay off, locked"));
    device.play(&field, &format!("unseen Forbid: {missing}\nsee Forbid: {line}"));
    // Nor is a reading that stands out withdrawn.
    let entry = find(&field, |f| matches!(f, Fact::PresenceRead { then, first, .. } if then == "N" && first == "L3"));
    assert!(keep(&field, Fact::Withdrawn { entry, why: "Slipped".into() }).unwrap_err().contains("it stays"));
    // That it is mended only a new reading shows.
    device.play(&field, &answer(line, "Mended, to be read again", "Loose tail of L3", "Tightened"));
    device.play(&field, "see Said to be mended: read again.");
    device.play(&field, &reads(&[("L2 – N", "230"), ("L3 – N", "230")]));
    device.play(&field, "unseen Forbid: L\nsee # Circuits on, in order");
}

/// A named person accepts the readings that stand there; a later one asks again.
#[test]
fn a_reading_out_of_tolerance_is_accepted_until_it_is_read_again() {
    let (_folder, device, field) = supplied_job();
    let low = |volts: &str| good().replace("L2 – N = 230", &format!("L2 – N = {volts}"));
    let turn = "choose Which way it turns = Clockwise: L1, L2, L3\nfill How you know = Outlet\ntap Save the rotation\n";
    device.play(&field, &format!("{}{turn}", low("204")));
    let says = "L2 – N: 204.0 V, outside 207.0 to 253.0 V (IEC 60038: 10 % either way). Find out why.";
    device.play(
        &field,
        &format!("see {says}\nunseen Skip this step, give a reason\nsee # Supply back: voltage and rotation"),
    );
    device.play(&field, &answer(says, ANSWER, "Joel Aras", "By telephone; the network operator is told"));
    device.play(&field, "see # Circuits on, in order\ntap The job\ntap Supply back: voltage and rotation");
    let again = reads(&[("L2 – N", "203")]).replace("tap Save the readings", "tap Read again and save");
    device.play(&field, &again);
    device.play(
        &field,
        "see L2 – N: 203.0 V, outside\nsee # Supply back: voltage and rotation\nsee Still to do: L2 – N: 203.0 V",
    );
    let again = reads(&[("L2 – N", "229")]).replace("tap Save the readings", "tap Read again and save");
    device.play(&field, &again);
    device.play(&field, "see # Circuits on, in order");
}

/// An isolation that is given up after an indication is restored like any other, and the standing says what was met.
#[test]
fn an_isolation_is_given_up_after_an_indication() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, INDICATION]);
    device.play(
        &field,
        "tap Give up this isolation\nfill Why it is given up = .....\nfill How you saw that everybody is clear = Counted two of two\n\
         tap Give up this isolation\nsee Give the reason\nfill Why it is given up = L2 stays live and nobody knows from where\n\
         tap Give up this isolation\n\
         see [Stop, treat as live] The isolation was given up, and the supply is being restored. L2 stays live\n\
         see Indication: N – L2 lit\nunseen Proved dead\ntap Next: Covers back",
    );
    device.play(&field, RESTORE);
    assert!(as_text(&field.screen()).contains("[Handed back]"));
}

/// Given up with one of two points open: it closes, and that nobody knows how the other one stands is answered for.
#[test]
fn an_isolation_is_given_up_half_way() {
    let half = &ISOLATE[..ISOLATE.find("wait 4").unwrap()];
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, half]);
    device.play(
        &field,
        "tap The job\ntap Something changed\ntap Give up this isolation\nfill Why it is given up = Called away\n\
         fill How you saw that everybody is clear = Alone here\ntap Give up this isolation\nsee [Treat as live] The isolation was given up\n\
         tap Next: Warn before energising\nfill Who was warned = Shift leader\nfill How they were warned = In person\ntap Save this warning\n\
         tap Next: Locks and signs off\ntap Take my lock off Q4 feeder switch\ntap Caution sign taken off Q4 feeder switch\n\
         see It was never opened.\nsee Forbid: Do not close Q4 feeder switch: the normal supply and Standby generator set\n\
         fill Why both go on together = Q9 is at 0, seen\ntap Q4 feeder switch is closed, for this reason\nsee # Supply back: voltage and rotation",
    );
    let again = keep(
        &field,
        Fact::PointClosed { point: point(&field, "Q9 changeover switch"), beside: Some("It is off".into()) },
    );
    assert!(again.unwrap_err().contains("not open in this job"));
}

/// Until the points are locked no screen asks for a cover off.
#[test]
fn no_screen_asks_for_a_cover_off_before_the_locks() {
    let (_folder, device, field) = begun(&[]);
    let script = [PEOPLE, PLAN, ISOLATE].concat();
    let script = &script[..script.rfind("photo Photo of Q9").unwrap()];
    let denials = ["no cover has to come off", "covers stay on", "treat every conductor behind a cover as live"];
    let mut form = String::new();
    for line in script.lines() {
        form.push_str(line);
        form.push('\n');
        if line.starts_with("tap") || line.starts_with("photo") {
            device.play(&field, &form);
            form.clear();
            let text = as_text(&field.screen()).to_lowercase();
            let asks = denials.iter().fold(text, |text, denial| text.replace(denial, ""));
            assert!(!asks.contains("cover"), "{asks}");
        }
    }
}
