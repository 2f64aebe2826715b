//! Who has the device in hand, and how it knows: PINs where several people use one device.

use stillbar_core::Field;
use stillbar_core::app::of_folder;
use stillbar_core::journal::SignedOn;
use stillbar_core::parts::{Errand, Filled, Outcome};
use stillbar_core::screens::as_text;

use crate::desk::*;

const MIN: i64 = 60_000;
const SECOND: i64 = 1000;

/// From the first screen: the device is handed on.
fn hand_on(from: &str, to: &str) -> String {
    format!("tap Signed on: {from}\ntap {to}\n")
}

fn add(name: &str) -> String {
    format!("fill Name = {name}\ntap Add this person\n")
}

fn set(pin: &str) -> String {
    format!("fill New PIN = {pin}\nfill New PIN again = {pin}\ntap Set this PIN\n")
}

/// How the last entry knows its person.
fn last(field: &Field) -> Option<SignedOn> {
    field.entries().unwrap().last().unwrap().body.signed_on
}

/// Mara went on without, then Tomas set 4821; he has the device, on the screen of people.
fn tomas() -> (tempfile::TempDir, std::sync::Arc<Device>, std::sync::Arc<Field>) {
    let (folder, device, field) = begun(&[PEOPLE]);
    device.play(
        &field,
        &format!("tap Signed on: Mara Lind\ntap Tomas Brandt\n{}tap Signed on: Tomas Brandt", set("4821")),
    );
    (folder, device, field)
}

#[test]
fn a_device_of_one_person_asks_for_none() {
    let (folder, device, field) = begun(&[PEOPLE, PLAN]);
    device.pass(60 * MIN);
    device.play(&field, ISOLATE);
    assert!(!as_text(&field.screen()).contains("PIN"));
    drop(field);
    let field = device.open(folder.path()).unwrap();
    device.play(&field, PROVE);
    let entries = field.entries().unwrap();
    let by = entries.iter().filter(|e| e.body.by.is_some());
    assert!(by.clone().count() > 40);
    by.for_each(|e| assert_eq!(e.body.signed_on, Some(SignedOn::OnlyUser)));
}

#[test]
fn a_second_person_is_asked_and_so_is_the_first_from_then_on() {
    let (_folder, device, field) = begun(&[PEOPLE]);
    device.play(
        &field,
        "tap Signed on: Mara Lind\ntap Tomas Brandt\nsee PIN of Tomas Brandt\nfill New PIN = 4821\nfill New PIN again = 4822\ntap Set this PIN\nsee \
         not the same\nfill New PIN = 48a1\nfill New PIN again = 48a1\ntap Set this PIN\nsee 4 to 12 digits\nfill New PIN = 482\nfill New PIN again = \
         482\ntap Set this PIN\nsee 4 to 12 digits",
    );
    // Whoever walks away from the question has taken nothing in hand.
    device.play(&field, "tap Back\ntap All jobs\nsee Signed on: Mara Lind\ntap Signed on: Mara Lind");
    device.play(&field, &add("Otto Reis"));
    assert_eq!(last(&field), Some(SignedOn::OnlyUser));
    device.play(
        &field,
        &format!(
            "tap Tomas Brandt\n{}see Signed on: Tomas Brandt\ntap Signed on: Tomas Brandt\n{}",
            set("4821"),
            add("Ada Moor")
        ),
    );
    assert_eq!(last(&field), Some(SignedOn::Pin));
    device.play(
        &field,
        &format!(
            "tap All jobs\n{}tap Go on without PIN\ntap Signed on: Mara Lind\n{}",
            hand_on("Tomas Brandt", "Mara Lind"),
            add("Ben Orr")
        ),
    );
    assert_eq!(last(&field), Some(SignedOn::WithoutPin));
    device.play(
        &field,
        &format!(
            "tap All jobs\n{}fill PIN = 4821\ntap Sign on\ntap Signed on: Tomas Brandt\n{}",
            hand_on("Mara Lind", "Tomas Brandt"),
            add("Cid Ray")
        ),
    );
    assert_eq!(last(&field), Some(SignedOn::Pin));
}

#[test]
fn after_a_pause_it_is_asked_before_anything_is_kept_and_never_for_looking() {
    let (folder, device, field) = tomas();
    for _ in 0..3 {
        device.pass(9 * MIN);
        device.play(&field, "tap All jobs\ntap Signed on: Tomas Brandt\nunseen Sign on");
    }
    let before = field.entries().unwrap().len();
    device.pass(11 * MIN);
    device.play(&field, "tap All jobs\ntap Locks on now\ntap All jobs\ntap Signed on: Tomas Brandt\nunseen Sign on");
    device.play(&field, &format!("{}see PIN of Tomas Brandt", add("Otto Reis")));
    assert_eq!(field.entries().unwrap().len(), before);
    // Nothing typed is lost meanwhile, and the act goes on after the PIN.
    device.play(&field, "tap Back, and do it later\nsee _ Name: Otto Reis\ntap Add this person\nfill PIN = 1111\ntap Sign on\nsee not the PIN");
    device.pass(SECOND);
    device.play(&field, "fill PIN = 4821\ntap Sign on\nsee Otto Reis is on the list");
    assert_eq!((field.entries().unwrap().len(), last(&field)), (before + 1, Some(SignedOn::Pin)));
    // Put aside and back it is the same hand; started again it is anybody's.
    field.suspend();
    field.resume().unwrap();
    device.play(&field, &format!("{}unseen Sign on", add("Ada Moor")));
    drop(field);
    let field = device.open(folder.path()).unwrap();
    device.play(
        &field,
        &format!("{}see PIN of Tomas Brandt\ntap Go on without PIN\nsee Ben Orr is on the list", add("Ben Orr")),
    );
    assert_eq!(last(&field), Some(SignedOn::WithoutPin));
}

#[test]
fn wrong_tries_wait_longer_and_lock_nobody_out() {
    let (folder, device, mut field) = tomas();
    device.play(
        &field,
        &format!(
            "tap All jobs\n{}tap Go on without PIN\n{}",
            hand_on("Tomas Brandt", "Mara Lind"),
            hand_on("Mara Lind", "Tomas Brandt")
        ),
    );
    for wait in [1, 2, 4, 8, 16, 32, 60, 60, 60] {
        device.play(&field, &format!("fill PIN = 1234\ntap Sign on\nsee Wait {wait} s, then try again."));
        // The right one has to wait as well, and a start does not shorten it.
        device.pass(wait * SECOND - 500);
        if wait == 16 {
            drop(field);
            field = device.open(folder.path()).unwrap();
        }
        device.play(&field, "fill PIN = 4821\ntap Sign on\nsee Wait 1 s, then try again.");
        device.pass(500);
    }
    device.play(&field, "fill PIN = 4821\ntap Sign on\nsee Signed on: Tomas Brandt");
    // From the beginning again.
    device.play(
        &field,
        &format!(
            "{}tap Go on without PIN\n{}",
            hand_on("Tomas Brandt", "Mara Lind"),
            hand_on("Mara Lind", "Tomas Brandt")
        ),
    );
    device.play(&field, "fill PIN = 1234\ntap Sign on\nsee Wait 1 s, then try again.");
}

#[test]
fn a_forgotten_one_is_set_anew_with_a_witness() {
    let (_folder, device, field) = tomas();
    let back = hand_on("Tomas Brandt", "Mara Lind");
    device.play(
        &field,
        &format!(
            "tap All jobs\n{back}tap Go on without PIN\n{}see Nobody else has a PIN here",
            hand_on("Mara Lind", "Tomas Brandt")
        ),
    );
    device.play(&field, &format!("fill PIN = 4821\ntap Sign on\n{back}{}", set("7777")));
    device.play(
        &field,
        &format!(
            "{}unseen Code from the office\nchoose Witness beside you = Mara Lind\nfill PIN of the witness = 7770\nfill New PIN = 9090\nfill New PIN again = \
             9090\ntap Set the new PIN with this witness\nsee not the PIN of Mara Lind",
            hand_on("Mara Lind", "Tomas Brandt")
        ),
    );
    device.pass(SECOND);
    device.play(
        &field,
        "choose Witness beside you = Mara Lind\nfill PIN of the witness = 7777\nfill New PIN = 9090\nfill New PIN again = 9090\ntap Set the new PIN with this \
         witness\nsee Signed on: Tomas Brandt\ntap Signed on: Tomas Brandt\nsee witness: Mara Lind",
    );
    device.play(&field, &add("Otto Reis"));
    assert_eq!(last(&field), Some(SignedOn::Pin));
    device.play(
        &field,
        &format!(
            "tap All jobs\n{back}fill PIN = 7777\ntap Sign on\n{}fill PIN = 4821\ntap Sign on\nsee not the PIN",
            hand_on("Mara Lind", "Tomas Brandt")
        ),
    );
    device.pass(SECOND);
    device.play(&field, "fill PIN = 9090\ntap Sign on\nsee Signed on: Tomas Brandt");
    // Nobody else's is set by an action from outside.
    let filled = |field: &str| Filled { field: field.into(), value: "1212".into() };
    device.play(&field, &back);
    field.act(None, "set".into(), vec![filled("pin-new"), filled("pin-again")]);
    assert!(as_text(&field.screen()).contains("You have a PIN here"), "{}", as_text(&field.screen()));
    field.act(None, "anew-office".into(), vec![filled("pin-new"), filled("pin-again")]);
    assert!(as_text(&field.screen()).contains("PIN of Mara Lind"));
}

/// Neither the PIN nor its hash is in an entry, a draft, a table or on a screen, and the PIN is nowhere on the disk.
#[test]
fn nothing_of_it_leaves_its_table() {
    let (folder, device, field) = begun(&[PEOPLE]);
    device.play(&field, "tap Signed on: Mara Lind\ntap Tomas Brandt");
    for name in ["pin", "pin-new", "pin-again", "pin-witness"] {
        field.edit(name.into(), "48213706".into());
    }
    assert!(!as_text(&field.screen()).contains("48213706"));
    device.play(&field, "fill New PIN = 48213706\nfill New PIN again = 48213707\ntap Set this PIN\nunseen 4821370");
    device.play(&field, &format!("{}tap Signed on: Tomas Brandt\n{}", set("48213706"), add("Otto Reis")));
    for entry in field.entries().unwrap() {
        let bytes = String::from_utf8_lossy(&entry.bytes).into_owned();
        assert!(!bytes.contains("argon2") && !bytes.contains("48213706"));
    }
    drop(field);
    let store = stillbar_core::store::Store::open(folder.path()).unwrap();
    assert!(!store.tables().unwrap().contains("argon2"));
    drop(store);
    let mut hashed = false;
    for file in std::fs::read_dir(folder.path()).unwrap().flatten().filter(|f| f.path().is_file()) {
        let bytes = std::fs::read(file.path()).unwrap();
        let holds = |what: &[u8]| bytes.windows(what.len()).any(|w| w == what);
        assert!(!holds(b"48213706"), "{:?}", file.path());
        // OWASP's least: 19 MiB, two passes, one lane.
        hashed |= holds(b"$argon2id$v=19$m=19456,t=2,p=1$");
    }
    assert!(hashed, "it is kept as argon2id");
}

/// Who signs on another's device is known by their PIN, or the entry, the board and the record say that they are not.
#[test]
fn who_signs_here_types_their_pin_or_it_is_said() {
    const JOINS: &str = include_str!("../../journeys/tomas-joins.journey");
    let offer = "tap The job\ntap Locks and keys\ntap Mara Lind on Q4 feeder switch: ML 7\nchoose To whom = Tomas Brandt\ntap Offer lock and key\n";
    let takes = "sign Tomas Brandt signs for lock and key = Tomas Brandt\n";
    // He has none here: it goes on, and says so.
    let (folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, JOINS, offer]);
    device.play(&field, &format!("unseen PIN\n{takes}tap Tomas Brandt takes lock and key\nsee Lock of Tomas Brandt"));
    assert_eq!(last(&field), Some(SignedOn::WithoutPin));
    device.play(
        &field,
        "tap Locks and keys\ntap The job\ntap Time line\nsee Tomas Brandt (no PIN)\nunseen Mara Lind (no PIN)",
    );
    device.play(&field, "tap The job\ntap All jobs\ntap Locks on now\nsee (no PIN)");
    drop(field);
    let title = "Replace the outgoing breaker of washer 4";
    let made = of_folder(folder.path(), &*device, title, false).unwrap();
    let by: Vec<_> = made.report().time_line.iter().filter_map(|l| l.when.named()).collect();
    assert!(by.iter().any(|b| b == "Tomas Brandt (no PIN)") && !by.iter().any(|b| b == "Mara Lind (no PIN)"), "{by:?}");
    let locks: Vec<_> = made.report().points.iter().flat_map(|p| &p.locks).map(|l| l.since.named()).collect();
    assert!(locks.contains(&Some("Tomas Brandt (no PIN)".into())), "{locks:?}");

    // He has one: a wrong one is refused with all that was typed, an empty one is said, the right one counts.
    for (pin, known) in [("fill PIN of Tomas Brandt = 4821\n", SignedOn::Pin), ("", SignedOn::WithoutPin)] {
        let script = format!(
            "tap Signed on: Mara Lind\ntap Tomas Brandt\n{}{}tap Go on without PIN",
            set("4821"),
            hand_on("Tomas Brandt", "Mara Lind")
        );
        let (_folder, device, field) = begun(&[PEOPLE, &script, PLAN, ISOLATE, JOINS, offer]);
        assert_eq!(last(&field), Some(SignedOn::WithoutPin), "Mara went on without");
        device.play(
            &field,
            &format!("{takes}fill PIN of Tomas Brandt = 1234\ntap Tomas Brandt takes lock and key\nsee not the PIN of Tomas Brandt\nsee Lock of Mara Lind"),
        );
        device.pass(SECOND);
        device.play(&field, &format!("{takes}{pin}tap Tomas Brandt takes lock and key\nsee Lock of Tomas Brandt"));
        assert_eq!(last(&field), Some(known));
    }
}

/// A photo is kept in a name too: it is asked for after the PIN.
#[test]
fn a_photo_after_a_pause_waits_for_the_pin() {
    let script = format!(
        "{}tap Go on without PIN\n{}{}",
        hand_on("Mara Lind", "Tomas Brandt"),
        hand_on("Tomas Brandt", "Mara Lind"),
        set("4821")
    );
    let cut = ISOLATE.find("photo ").unwrap();
    let (_folder, device, field) = begun(&[PEOPLE, &script, PLAN, &ISOLATE[..cut]]);
    device.pass(11 * MIN);
    let slot = field.screen().blocks.iter().find_map(|b| match b {
        stillbar_core::parts::Block::Photo { photo, .. } => Some(photo.action.clone()),
        _ => None,
    });
    assert!(field.act(None, slot.unwrap(), vec![]).is_empty());
    assert!(as_text(&field.screen()).contains("PIN of Mara Lind"));
    let main = field.screen().main.unwrap().action;
    let errands = field.act(None, main, vec![Filled { field: "pin".into(), value: "4821".into() }]);
    let [Errand::TakePhoto { token, .. }] = &errands[..] else { panic!("{errands:?}") };
    let before = field.entries().unwrap().len();
    field.deliver(
        token.clone(),
        Outcome::Photo { media_type: "image/png".into(), bytes: stillbar_core::demo::PHOTO.to_vec() },
    );
    assert_eq!((field.entries().unwrap().len(), last(&field)), (before + 1, Some(SignedOn::Pin)));
}
