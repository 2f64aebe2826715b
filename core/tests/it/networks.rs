//! Jobs beside the supply network of their site: what a job rests on, whom a change touches, in which order points close.

use stillbar_core::app::of_folder;
use stillbar_core::screens::as_text;
use stillbar_core::store::Store;

use crate::desk::*;

const FORGOTTEN: &str = include_str!("../../journeys/forgotten.journey");
const NETWORK: &str = include_str!("../../journeys/network.journey");
const INSTRUMENTS: &str = include_str!("../../journeys/add-instruments.journey");
const CIRCUITS: &str = include_str!("../../journeys/circuits.journey");

/// A job with its network, proved dead.
const PROVED: [&str; 7] = [PEOPLE, FORGOTTEN, NETWORK, INSTRUMENTS, CIRCUITS, ISOLATE, PROVE];

/// A second job on the board beside it, which needs the same Q4, planned by Tomas Brandt.
fn second_job() -> String {
    let plan = FORGOTTEN
        .replace("Replace the outgoing breaker of washer 4", "Tighten the tails of washer 2")
        .replace("see Permit reference", "")
        // The generator is known from the first job, and comes in here too.
        .replace("fill Where you looked = DB4", "tap It is a source here too\nfill Where you looked = DB4")
        .replace("fill Where you looked = The board and its labels\nchoose Looked for and NOT found: tap each = Generator\ntap Save: not found\n", "");
    let check = include_str!("../../journeys/check-instruments.journey");
    format!(
        "tap Signed on: Mara Lind\ntap Tomas Brandt\ntap Go on without PIN\n{plan}tap Supply network\nchoose Parts of the network that are worked on = DB4\n\
         tap Save the work zone\ntap Plan Q4, Q9\ntap Next: Indicator and proving unit\n{check}{CIRCUITS}"
    )
}

/// The generator's way into a board is the generator's, also where the grid could come round through another board's changeover: the plan
/// says so, and the source counts as found.
#[test]
fn a_changeover_way_is_the_generators_also_where_the_grid_can_come_round() {
    let beside = "tap Add a source, board or load\nfill Name, as it is labelled = DB5\nchoose What it is = Board\nchoose From = MB1\nfill Name of \
                  the switch or cable = Q5\nchoose Kind of link = Switch, breaker or fuses\nchoose Can it be locked open? = It takes a lock\n\
                  tap Save this part\ntap Add a switch or cable\nchoose From = G1\nchoose To = DB5\nfill Name of the switch or cable = Q14\n\
                  choose Kind of link = Way of a changeover switch\nchoose Can it be locked open? = It takes a lock\nchoose In normal service it \
                  is = Open\ntap Save this part\ntap All jobs\n";
    let network = NETWORK.replacen("tap All jobs\n", beside, 1);
    assert_ne!(network, NETWORK);
    // The journey itself looks for "Cuts off Standby generator set".
    let (_folder, device, field) = begun(&[PEOPLE, FORGOTTEN, &network]);
    device.play(&field, "tap The job\ntap Look for other sources\nsee Standby generator set");
}

fn home(field: &stillbar_core::Field) {
    field.act(None, "go /".into(), vec![]);
}

#[test]
fn a_generator_that_is_found_ends_what_was_proved_and_says_whom_it_touches() {
    let (folder, device, field) = begun(&PROVED);
    device.play(&field, "see [Proved dead]");
    // A record says of it what the phone says.
    let recorded = || {
        let made = of_folder(folder.path(), &*device, "Replace the outgoing breaker of washer 4", false).unwrap();
        let state = &made.report().state;
        (state.word.code().clone(), state.text.code().get("why").cloned())
    };
    assert_eq!(recorded(), ("proved".into(), None));
    home(&field);
    device.play(
        &field,
        "tap Supply of Brook Lane dye works\ntap Add a source, board or load\nfill Name, as it is labelled = PV1\nchoose What it is = \
         Source: PV\ntap Save this part\ntap Add a switch or cable\nchoose From = PV1\nchoose To = DB4\nfill Name of the switch or cable = \
         Q20\nchoose Kind of link = Switch, breaker or fuses\nchoose Can it be locked open? = It takes a lock\ntap Save this part\n\
         see This touches other work. Replace the outgoing breaker of washer 4, Plant room 2, ground floor: DB4 is no longer cut.\n\
         tap All jobs\nunseen Proved dead\ntap Replace the outgoing breaker of washer 4\n\
         see [Treat as live] The proof is void. The supply network shows a way that no lock cuts. PV1\n",
    );
    assert_eq!(recorded(), ("void".into(), Some("network".into())));
    // Nor does work begin on it, by whatever way.
    let route = format!("{}/step/work", field.screen().route);
    field.act(None, format!("go {route}"), vec![]);
    field.act(None, "begin".into(), vec![]);
    assert!(
        as_text(&field.screen()).contains("The supply network shows a way that no lock cuts"),
        "{}",
        as_text(&field.screen())
    );
    // A person answers for it, in their name, and that is shown wherever the proof is.
    device.play(&field, "tap The job\ntap Supply network\nsee Not cut: one source reaches DB4. Treat as live.");
    device.play(
        &field,
        "choose Which of them = PV1 (PV) reaches DB4 (Finishing hall) through Q20 (normally closed, not locked).\ntap Answer for it in my \
         name\nsee Write why it does not count\nfill Why it does not count = Modules taken down, string ends seen and insulated\ntap Answer for \
         it in my name\nsee [Treat as live] The proof is void. A way that the supply network shows was answered for.\nsee [deviation] A way that the supply network shows does not count: Modules taken down\n\
         see A person answers for each of these ways\ntap The job\ntap Next: Prove the indicator",
    );
    device.play(&field, &PROVE[PROVE.find("choose Proved on").unwrap()..]);
    device.play(&field, "see [Proved dead]");
    // Another way of the same source is another question.
    home(&field);
    device.play(
        &field,
        "tap Supply of Brook Lane dye works\ntap Q20\ntap I see it open\ntap Add a switch or cable\nchoose From = PV1\nchoose To = \
         DB4\nfill Name of the switch or cable = w9\nchoose Kind of link = Cable\ntap Save this part\ntap All jobs\n\
         tap Replace the outgoing breaker of washer 4\nsee [Treat as live] The proof is void. The supply network shows a way",
    );
    drop(field);
    // The tables hold what the journal says, the network included.
    let mut store = Store::open(folder.path()).unwrap();
    let tables = store.tables().unwrap();
    store.replay().unwrap();
    assert_eq!(store.tables().unwrap(), tables);
}

/// Two jobs at one point: each has a lock of its own there, each counts on the other's, and neither closes what the other holds.
#[test]
fn two_jobs_share_a_point_and_its_locks() {
    let (_folder, device, field) = begun(&PROVED);
    home(&field);
    device.play(&field, &second_job());
    device.play(
        &field,
        "tap The job\ntap Supply network\nsee Q4 is shared: Lock ML 7 of Mara Lind is on it, for Replace the outgoing breaker of washer 4.\ntap \
         The job\ntap Next: Switch off the loads",
    );
    device.play(&field, &ISOLATE.replace("ML 7", "TB 1").replace("ML 8", "TB 2").replace("Mara Lind", "Tomas Brandt"));
    // Mara's work ends; her locks come off, and what the second job rests on stays cut by Tomas's own.
    home(&field);
    device.play(
        &field,
        "tap Signed on: Tomas Brandt\ntap Mara Lind\ntap Go on without PIN\ntap Replace the outgoing breaker of washer 4\ntap Next: Work",
    );
    // The work lasts longer than a shared device knows its hand.
    device.play(&field, &format!("{WORK}\ntap Go on without PIN"));
    let close = RESTORE.find("tap Q4 feeder switch is closed").unwrap();
    device.play(&field, &RESTORE[..close]);
    device.play(
        &field,
        "tap The job\ntap Switch the isolators back on\nsee Q9 changeover switch\nsee Q4 feeder switch [stays open]\n\
         see Stays open: held by lock TB 1 of Tomas Brandt, for Tighten the tails of washer 2.\nunseen Q4 feeder switch is closed",
    );
    // The supply of Mara's board waits for the second job, which goes on.
    home(&field);
    device.play(
        &field,
        "tap Signed on: Mara Lind\ntap Tomas Brandt\ntap Go on without PIN\ntap Tighten the tails of washer 2\ntap Supply network\nunseen is shared\n\
         see No path in this network reaches DB4",
    );
}

/// A job that plans a point, and relies on the lock that another job has there: it is told when that lock comes off.
#[test]
fn who_counts_on_a_lock_is_told_when_it_comes_off() {
    let (_folder, device, field) = begun(&PROVED);
    home(&field);
    device.play(&field, &second_job());
    // The second job has a lock on Q9 only; of Q4 it has nothing yet but Mara's lock.
    let from = ISOLATE.find("see Isolate Q9 changeover switch").unwrap();
    let shed = ISOLATE.find("see Isolate Q4 feeder switch").unwrap();
    let isolate = format!("{}tap The job\ntap Isolate Q9 changeover switch\n{}", &ISOLATE[..shed], &ISOLATE[from..]);
    device.play(&field, &isolate.replace("ML 8", "TB 2").replace("Mara Lind", "Tomas Brandt"));
    home(&field);
    device.play(
        &field,
        "tap Signed on: Tomas Brandt\ntap Mara Lind\ntap Go on without PIN\ntap Replace the outgoing breaker of washer 4\ntap Locks and keys\ntap ML 7\ntap Take my lock \
         off\nsee This touches other work. Tighten the tails of washer 2, Plant room 2, ground floor: DB4 is no longer cut.",
    );
}

/// Names that are taken, parts that do not fit, what carries a lock: refused with what to do.
#[test]
fn what_does_not_fit_is_refused() {
    let (_folder, device, field) = begun(&PROVED);
    home(&field);
    let add = "tap Supply of Brook Lane dye works\ntap Add a source, board or load\n";
    device.play(
        &field,
        &format!(
            "{add}fill Name, as it is labelled = DB4\nchoose What it is = Board\ntap Save this part\nsee DB4 is in the network already\n\
             tap Back\ntap Add a switch or cable\nchoose From = MB1\nchoose To = MB1\nfill Name of the switch or cable = w7\nchoose Kind of \
             link = Cable\ntap Save this part\nsee !\ntap Back\ntap Q4\nfill How you know = It was not traced\ntap Cross it out\n\
             see A lock of Mara Lind is on Q4"
        ),
    );
}
