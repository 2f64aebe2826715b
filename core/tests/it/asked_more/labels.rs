//! The labels of point and equipment, from docs/questions.md: asked once a photo is there, of a point that is apart from the equipment.

use stillbar_core::journal::Fact;
use stillbar_core::screens::as_text;

use super::bench::{Bench, Case, Stage, WORDS, answered_of, answered_with};
use crate::desk::*;
use crate::holes::by_hand::MARA;
use crate::restoring::{find, keep};

const PHOTO: &str = "photo Photo of Q4 feeder switch";
const ASKS: &str = "Can the labels of Q4 feeder switch and of the equipment both be read";

fn before_the_photo() -> &'static str {
    &ISOLATE[..ISOLATE.find(PHOTO).unwrap()]
}

/// Not before a photo is there, which keeps anybody from saying what is in none; one photo is enough where both can be read in it.
#[test]
fn they_are_asked_for_once_a_photo_is_there() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, before_the_photo()]);
    assert!(!as_text(&field.screen()).contains(ASKS));
    let point = find(&field, |f| matches!(f, Fact::PointAdded { label, .. } if label == "Q4 feeder switch"));
    assert!(keep(&field, answered_of("labels", "in-photo", "", Some(point))).is_err(), "there is no photo");
    device.play(&field, &format!("{PHOTO}\nsee # Isolate Q4 feeder switch\nsee {ASKS}"));
    device.play(&field, "tap Both can be read, and match\nsee Isolate Q9 changeover switch");
}

/// Where it could not be shown, that stands on every screen, with the reason.
#[test]
fn what_could_not_be_shown_stands() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, before_the_photo(), PHOTO]);
    let kept = field.entries().unwrap().len();
    device.play(&field, "tap Could not be shown\ntap Save: Could not be shown\nsee Say how, what or where");
    assert_eq!(field.entries().unwrap().len(), kept);
    device.play(
        &field,
        "fill Which label, and why not = The board has none, painted over\ntap Save: Could not be shown\nsee Isolate Q9 changeover switch",
    );
    let beside = field.screen().standing.unwrap().deviations;
    assert!(beside.iter().any(|d| d.contains("Both labels") && d.contains("painted over")), "{beside:?}");
}

/// Labels that do not belong together stop everything behind, until somebody answers otherwise.
#[test]
fn labels_that_do_not_match_stop_everything() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let point = find(&field, |f| matches!(f, Fact::PointAdded { label, .. } if label == "Q4 feeder switch"));
    keep(&field, answered_of("labels", "do-not-match", "", Some(point))).unwrap();
    let job = field.screen().route.split("/step").next().unwrap().to_owned();
    field.act(None, format!("go {job}/step/work"), vec![]);
    device.play(&field, "see [Treat as live]\nsee They do not match\nunseen Begin work");
    keep(&field, answered_of("labels", "in-photo", "", Some(point))).unwrap();
    field.act(None, format!("go {job}/step/work"), vec![]);
    device.play(&field, "see [Treat as live] The proof is void");
    // Nothing is read with an instrument here: a figure is no part of it.
    let Fact::Answered { question, answer, point: own, words, who, read, .. } =
        answered_with("labels", "in-photo", "", Some(stillbar_core::prove::Measured::Millivolts(0)))
    else {
        unreachable!()
    };
    assert!(keep(&field, Fact::Answered { question, answer, of: Some(point), point: own, words, who, read }).is_err());
}

/// "With a photo there": an answer that says what is in none lifts nothing, also from a phone that asks no gate.
#[test]
fn what_is_in_no_photo_lifts_no_stop() {
    let bench = Bench::at(Case::house_socket(), Stage::Proved);
    let of = Some(bench.points()[0]);
    bench.ungated(71, MARA, answered_of("labels", "do-not-match", "", of));
    bench.ungated(72, MARA, answered_of("labels", "in-photo", "", of));
    let _ = bench.tests();
    assert!(!bench.proved(), "{}", bench.banner());
    bench.ungated(73, MARA, answered_of("labels", "not-shown", WORDS, of));
    bench.tests().unwrap();
    assert!(bench.proved(), "{}", bench.banner());
}

/// An isolator that has the equipment's name, where the equipment is, has one label: nothing more is asked.
#[test]
fn one_label_is_not_asked_about() {
    let (name, place) = ("Distribution board DB4", "Plant room 2, ground floor");
    let at = PLAN.find("fill Where the point is = ").unwrap();
    let end = at + PLAN[at..].find('\n').unwrap();
    for (place, asked) in [(place, false), ("Yard", true)] {
        let plan = format!("{}fill Where the point is = {place}{}", &PLAN[..at], &PLAN[end..]);
        let plan = plan.replace("Q4 feeder switch", name);
        let isolate = before_the_photo().replace("Q4 feeder switch", name);
        let (_folder, device, field) = begun(&[PEOPLE, &plan, &isolate]);
        device.play(&field, &PHOTO.replace("Q4 feeder switch", name));
        assert_eq!(as_text(&field.screen()).contains("Can the labels of"), asked, "{place}");
    }
}
