//! A job that is like an earlier one: quicker, and no word of the record is missing for it.

use std::collections::BTreeMap;

use crate::desk::*;
use stillbar_core::app::Field;
use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::Duty;
use stillbar_core::screens::as_text;
use stillbar_core::screens::parts::Filled;

const HOUSE: &str = concat!(
    include_str!("../../journeys/people.journey"),
    include_str!("../../journeys/house.journey"),
    include_str!("../../journeys/add-instruments.journey"),
    include_str!("../../journeys/house-done.journey"),
);
const AGAIN: &str = include_str!("../../journeys/house-again.journey");
const LIKE: &str = "tap New job\ntap Like: Replace the socket by the sink\nfill What the job is = Socket by window\n";

/// How often each kind of fact stands in the journal from `from` on, up to what proves dead.
fn kinds(field: &Field, from: usize) -> BTreeMap<String, usize> {
    let mut kinds = BTreeMap::new();
    for entry in field.entries().unwrap().into_iter().skip(from) {
        let fact = entry.body.fact.clone();
        // Known once for all jobs.
        if !matches!(fact.kind().as_str(), "device-began" | "person-noted" | "site-noted" | "instrument-noted") {
            *kinds.entry(fact.kind().to_string()).or_default() += 1;
        }
        if matches!(fact, Fact::WorkBegan { .. }) {
            break;
        }
    }
    kinds
}

/// What the quick way leaves out would be missing in the journal: it holds the same facts, each as often, as the long way.
#[test]
fn the_quick_way_keeps_every_fact_of_the_long_way() {
    let (_folder, device, field) = begun(&[HOUSE]);
    let long = kinds(&field, 0);
    let from = field.entries().unwrap().len();
    device.play(&field, AGAIN);
    device.play(&field, "tap Nothing within reach\ntap Begin work");
    assert_eq!(kinds(&field, from), long);
}

/// Taken along is what stays the same; whatever a life rests on is asked anew.
#[test]
fn nothing_that_a_life_rests_on_is_taken_along() {
    let (_folder, device, field) = begun(&[HOUSE]);
    let from = field.entries().unwrap().len();
    device.play(&field, &format!("{LIKE}tap Open this job"));
    for entry in &field.entries().unwrap()[from..] {
        let may = matches!(
            entry.body.fact,
            Fact::JobOpened { .. }
                | Fact::WorkerJoined { .. }
                | Fact::PermitNoted { reference: None, .. }
                | Fact::PointAdded { .. }
                | Fact::CircuitListed { .. }
                | Fact::NoCircuits { .. }
        );
        assert!(may, "{:?}", entry.body.fact);
    }
    device.play(&field, "see Every source, reading and lock is asked anew\nsee [Treat as live]\ntap The job\ntap Look for other sources");
    // One answer each: where somebody looked is no answer for any kind.
    device.play(&field, "choose Where you looked: as before = Hall, meter cupboard, roof");
    assert!(device.try_play(&field, "tap Save: not found\nsee Look for stored energy").is_err());
    device.play(
        &field,
        "see Tap each kind that you looked for and did not find\nsee 6 questions about sources are not answered",
    );
}

/// What is not so is left out or changed before anything is kept.
#[test]
fn what_is_not_so_is_not_taken_along() {
    let (_folder, device, field) = begun(&[HOUSE]);
    let from = field.entries().unwrap().len();
    device.play(
        &field,
        &format!(
            "{LIKE}untap Take along: untap what is not so = Point: C4 kitchen sockets, Consumer unit, hall\ntap Change these\nfill Equipment to \
             isolate = Socket circuit C5\ntap Open this job"
        ),
    );
    let facts: Vec<Fact> = field.entries().unwrap()[from..].iter().map(|e| e.body.fact.clone()).collect();
    assert!(facts.iter().any(|f| matches!(f, Fact::JobOpened { equipment, title, place, .. }
        if equipment == "Socket circuit C5" && title == "Socket by window" && place == "Flat 3, kitchen")));
    assert!(!facts.iter().any(|f| matches!(f, Fact::PointAdded { .. })), "{facts:?}");
    assert!(facts.iter().any(|f| matches!(f, Fact::NoCircuits { .. })));
    // Let go, nothing of it stays: the form asks for everything.
    device.play(&field, "tap The job\ntap All jobs");
    device.play(&field, &format!("{LIKE}tap Not like it\ntap Open this job\nsee Site"));
    assert!(as_text(&field.screen()).contains("# New job"));
}

/// A look at the instruments counts for a shift of the same person, and only as long as nothing was wrong with them.
#[test]
fn instruments_are_looked_over_again_in_the_same_shift_only() {
    let sources = AGAIN.split("tap Looked over again").next().unwrap();
    let shown = |wait_hours: i64, before: &str| {
        let (_folder, device, field) = begun(&[HOUSE]);
        device.pass(wait_hours * 3_600_000);
        device.play(&field, before);
        device.play(&field, sources);
        device.play(&field, "see # Indicator and proving unit");
        as_text(&field.screen()).contains("Looked over again")
    };
    assert!(shown(1, ""));
    assert!(!shown(13, ""));
    assert!(!shown(1, "tap Signed on: Mara Lind\ntap Tomas Brandt\ntap Go on without PIN"));
}

/// A padlock that hangs somewhere is not offered for another point.
#[test]
fn a_lock_that_is_on_is_not_offered() {
    let (_folder, device, field) = begun(&[HOUSE]);
    let until = AGAIN.split("choose What is written on the lock").next().unwrap();
    device.play(&field, until);
    assert!(as_text(&field.screen()).contains("ML 7"));
    device.play(&field, "fill What is written on the lock = ML 7\nchoose How it is locked = Padlock through the device or box\ntap Save lock, fitted by Mara Lind");
    assert!(
        !as_text(&field.screen()).contains("What is written on the lock: as before"),
        "{}",
        as_text(&field.screen())
    );
}

/// A row of a board is typed once; each circuit is switched off and seen to go off by itself.
#[test]
fn a_row_of_circuits_is_typed_once() {
    let (_folder, device, field) =
        begun(&[PEOPLE, include_str!("../../journeys/house.journey"), "tap The job\ntap Loads to switch off"]);
    let list = |label: &str| {
        format!("fill Circuit, as it is labelled = {label}\nfill What it serves = Sockets\ntap List this circuit")
    };
    let labels = || {
        let all = field.entries().unwrap().into_iter();
        let listed = all.filter_map(|e| match e.body.fact {
            Fact::CircuitListed { label, .. } => Some(label),
            _ => None,
        });
        listed.collect::<Vec<_>>()
    };
    device.play(&field, &list("F1 to F3"));
    assert_eq!(labels(), ["F1", "F2", "F3"]);
    device.play(&field, &list("7 to 8"));
    device.play(&field, &list("Feed to pump 3"));
    device.play(&field, &list("K1 to L2"));
    assert_eq!(labels()[3..], ["7", "8", "Feed to pump 3", "K1 to L2"]);
    // One that is listed already, a row the wrong way round and one without end list nothing.
    for bad in ["F3 to F5", "F9 to F4", "G1 to G4000000000", "G1 to G99999999999999999999"] {
        let before = labels();
        let _ = device.try_play(&field, &list(bad));
        let after = labels();
        assert!(after == before || after[before.len()..] == [bad], "{bad}: {after:?}");
    }
    assert_eq!(labels().len(), 8);
    // As German and Spanish say it, whatever the phone speaks.
    device.play(&field, &list("N1 bis N2"));
    device.play(&field, &list("M3 a M4"));
    assert_eq!(labels()[8..], ["N1", "N2", "M3", "M4"]);
}

/// Who had several duties comes along once, as what they were last.
#[test]
fn who_had_several_duties_comes_along_once() {
    let join =
        |duty: &str| format!("tap The job\ntap People on the job\nchoose Person = {duty}\ntap Save person and duty\n");
    let (_folder, device, field) = begun(&[PEOPLE, include_str!("../../journeys/house.journey")]);
    device.play(&field, &join("Tomas Brandt\nchoose Duty = Under supervision"));
    device.play(&field, &join("Tomas Brandt (on the job already)\nchoose Duty = Working on it"));
    device.play(&field, "tap The job\ntap All jobs");
    let from = field.entries().unwrap().len();
    device.play(&field, &format!("{LIKE}tap Open this job"));
    let joined: Vec<Fact> = field.entries().unwrap()[from..]
        .iter()
        .map(|e| e.body.fact.clone())
        .filter(|f| matches!(f, Fact::WorkerJoined { .. }))
        .collect();
    assert_eq!(joined.len(), 2, "{joined:?}");
    assert!(matches!(joined[1], Fact::WorkerJoined { duty: Duty::Working, .. }), "{joined:?}");
}

/// What stands in an action is bounded like what is typed, whoever sends it.
#[test]
fn words_in_an_action_are_bounded() {
    let (_folder, device, field) =
        begun(&[PEOPLE, include_str!("../../journeys/house.journey"), "tap The job\ntap Tell the people affected"]);
    let before = field.entries().unwrap().len();
    field.act(None, format!("again {}\tIn person", "x".repeat(2_001)), vec![]);
    assert_eq!(field.entries().unwrap().len(), before);
    field.act(None, "again Caretaker\tIn person".into(), vec![]);
    assert_eq!(field.entries().unwrap().len(), before + 1);
    drop(device);
}

/// Words that part the texts of an action are not offered: a tap would say something else than the button.
#[test]
fn words_that_part_texts_are_not_offered() {
    let (_folder, device, field) = begun(&[HOUSE]);
    let said = |field: &Field, who: &str| {
        let input = [("who", who), ("how", "In person")]
            .map(|(field, value)| Filled { field: field.into(), value: value.into() });
        field.act(None, "told".into(), input.into());
    };
    device.play(&field, &format!("{LIKE}tap Open this job\nsee # Tell the people affected"));
    said(&field, "Tenant\tand nobody else");
    said(&field, "Tenant\nand nobody else");
    device.play(&field, "tap The job\ntap All jobs");
    device.play(&field, "tap New job\ntap Like: Socket by window\nfill What the job is = Hall light\ntap Open this job\nsee # Tell the people affected");
    let shown = as_text(&field.screen());
    assert!(shown.contains("Told now: Tenant, In person") && !shown.contains("nobody else"), "{shown}");
}
