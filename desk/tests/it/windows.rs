//! Two windows on one device, over the real core: each can tell that its screen is old, and what was typed in one never lands where the
//! other went.

use std::sync::Arc;

use stillbar_core::parts::{Block, Screen};
use stillbar_core::{Errand, Field, Outcome, demo};

use crate::field::{open, play};

fn begun() -> (tempfile::TempDir, Arc<Field>) {
    let dir = tempfile::tempdir().unwrap();
    let field = open(dir.path());
    play(&field, include_str!("../../../core/journeys/people.journey"));
    (dir, field)
}

/// Somebody else takes the device.
fn hand_on(field: &Field, name: &str) {
    field.act(None, "go /people".into(), vec![]);
    play(field, &format!("tap {name}\ntap Go on without PIN"));
}

/// What stands in a field of the screen.
fn value(screen: &Screen, field: &str) -> Option<String> {
    screen.blocks.iter().find_map(|b| match b {
        Block::Entry { entry, .. } if entry.field == field => Some(entry.value.clone()),
        _ => None,
    })
}

fn type_on(field: &Field, shown: &Screen, value: &str) -> Result<(), String> {
    field.edit_on(&shown.route, &shown.hand, "title", value).map_err(|why| why.to_string())
}

#[test]
fn every_act_is_a_change_and_nothing_else_is() {
    let (_dir, field) = begun();
    let mut before = field.changes();
    assert_eq!(field.changes(), before, "asking changes nothing");
    for line in ["tap New job", "tap All jobs", "tap New job"] {
        play(&field, line);
        let now = field.changes();
        assert!(now > before, "{line}: {now} after {before}");
        before = now;
    }
    // A refusal is shown too.
    let shown = field.screen();
    field.act(Some(shown.turn), shown.main.unwrap().action, vec![]);
    let refused = field.changes();
    assert!(refused > before);
    // What is typed is on the screen of who types it, and no reason to draw it anew under their finger.
    type_on(&field, &field.screen(), "Replace a breaker").unwrap();
    assert_eq!(field.changes(), refused);
    field.suspend();
    field.resume().unwrap();
    assert!(field.changes() >= refused, "it never goes back");
}

#[test]
fn a_draft_stays_on_the_screen_that_it_was_typed_on() {
    let (_dir, field) = begun();
    play(&field, "tap New job");
    let old = field.screen();
    type_on(&field, &old, "Replace a bre").unwrap();
    // The other window goes elsewhere, to a screen with a field of the same name among others.
    play(&field, "tap All jobs");
    let elsewhere = field.screen();
    type_on(&field, &old, "Replace a breaker").unwrap();
    assert_eq!(field.screen(), elsewhere);
    play(&field, "tap New job");
    assert_eq!(value(&field.screen(), "title").as_deref(), Some("Replace a breaker"));
}

#[test]
fn a_draft_of_one_person_is_not_given_to_the_next() {
    let (dir, field) = begun();
    play(&field, "tap New job");
    let old = field.screen();
    assert!(!old.hand.is_empty());
    type_on(&field, &old, "Half a title").unwrap();
    hand_on(&field, "Tomas Brandt");
    assert_ne!(field.screen().hand, old.hand);
    let why = type_on(&field, &old, "Mara's title").unwrap_err();
    assert!(why.contains("not saved"), "{why}");
    field.act(None, "go /new".into(), vec![]);
    assert_eq!(value(&field.screen(), "title").as_deref(), Some(""));
    // Nor by leaving out who it was, or for a place that does not exist.
    for (route, hand) in [("/new", ""), ("/nowhere", &*field.screen().hand), ("", &*field.screen().hand)] {
        assert!(field.edit_on(route, hand, "title", "x").is_err(), "{route:?} {hand:?}");
    }
    let unknown = format!("/job/{}/locks", "ab".repeat(16));
    assert!(field.edit_on(&unknown, &field.screen().hand, "label", "x").is_err(), "a job that is not here");
    type_on(&field, &field.screen(), "Tomas's title").unwrap();
    // Each has their own, also after a restart.
    hand_on(&field, "Mara Lind");
    field.act(None, "go /new".into(), vec![]);
    assert_eq!(value(&field.screen(), "title").as_deref(), Some("Half a title"));
    drop(field);
    let field = open(dir.path());
    assert_eq!(value(&field.screen(), "title").as_deref(), Some("Half a title"));
    hand_on(&field, "Tomas Brandt");
    field.act(None, "go /new".into(), vec![]);
    assert_eq!(value(&field.screen(), "title").as_deref(), Some("Tomas's title"));
}

/// A photo that one person asked for is not signed by the next.
#[test]
fn what_was_asked_for_ends_when_the_device_is_handed_on() {
    let (_dir, field) = begun();
    for journey in [
        include_str!("../../../core/journeys/plan.journey"),
        include_str!("../../../core/journeys/add-instruments.journey"),
        include_str!("../../../core/journeys/circuits.journey"),
        include_str!("../../../core/journeys/isolate.journey").split("\nphoto").next().unwrap(),
    ] {
        play(&field, journey);
    }
    let shown = field.screen();
    let asked = field.act(Some(shown.turn), shown.main.unwrap().action, vec![]);
    let [Errand::TakePhoto { token, .. }] = &asked[..] else { panic!("{asked:?}") };
    hand_on(&field, "Tomas Brandt");
    let before = field.entries().unwrap().len();
    let photo = Outcome::Photo { media_type: "image/png".into(), bytes: demo::PHOTO.to_vec() };
    field.deliver(token.clone(), photo);
    let notice = field.screen().notice.unwrap();
    assert!(notice.text.contains("was not asked for any more"), "{}", notice.text);
    assert_eq!(field.entries().unwrap().len(), before);
}
