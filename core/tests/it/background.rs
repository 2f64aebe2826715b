//! The app in the background: nothing held open, nothing lost, nothing done by a tap that came too late.

use std::fs;
use std::path::Path;

use stillbar_core::screens::as_text;
use stillbar_core::screens::parts::{Errand, Filled, Outcome, Tone};
use stillbar_core::store::{DATABASE, LOCK, Store};
use stillbar_core::{OpenError, demo};

use crate::desk::*;

/// The files in `folder` that this process has open, as the kernel tells it (proc(5), `/proc/self/fd`).
#[cfg(target_os = "linux")]
fn held(folder: &Path) -> Vec<String> {
    let links = fs::read_dir("/proc/self/fd").unwrap().filter_map(|fd| fs::read_link(fd.ok()?.path()).ok());
    let mut names: Vec<_> = links.filter_map(|to| Some(to.strip_prefix(folder).ok()?.display().to_string())).collect();
    names.sort();
    names.dedup();
    names
}

#[test]
#[cfg(target_os = "linux")]
fn no_file_is_held_open() {
    let (folder, _device, field) = begun(&[PEOPLE, PLAN]);
    let path = folder.path().canonicalize().unwrap();
    assert!(held(&path).contains(&LOCK.to_owned()) && held(&path).contains(&DATABASE.to_owned()), "{:?}", held(&path));
    field.suspend();
    assert_eq!(held(&path), Vec::<String>::new());
    assert_eq!(fs::metadata(path.join(format!("{DATABASE}-wal"))).map_or(0, |m| m.len()), 0);
    field.resume().unwrap();
    assert!(held(&path).contains(&LOCK.to_owned()));
}

#[test]
fn the_folder_is_free_meanwhile() {
    let (folder, device, field) = begun(&[PEOPLE]);
    assert!(matches!(device.open(folder.path()), Err(OpenError::InUse { .. })));
    field.suspend();
    let other = device.open(folder.path()).unwrap();
    assert!(matches!(field.resume(), Err(OpenError::InUse { .. })));
    drop(other);
    field.resume().unwrap();
    assert!(matches!(device.open(folder.path()), Err(OpenError::InUse { .. })));
}

/// A whole job with the app sent to the background before every line: each screen is the same as before.
#[test]
fn away_before_every_line() {
    let script = [PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE].concat();
    let (folder, device) = (tempfile::tempdir().unwrap(), Device::standing(1));
    let field = device.open(folder.path()).unwrap();
    let mut form = String::new();
    for line in script.lines().map(str::trim).filter(|l| !l.is_empty() && !l.starts_with('#')) {
        form.push_str(line);
        form.push('\n');
        let before = field.screen();
        field.suspend();
        field.suspend();
        assert_eq!(field.screen(), before);
        field.resume().unwrap();
        field.resume().unwrap();
        assert_eq!(field.screen(), before);
        // What is typed and not sent yet is in the shell's form; a tap sends it.
        if !["fill", "choose", "read", "sign"].contains(&line.split(' ').next().unwrap()) {
            device.play(&field, &form);
            form.clear();
        }
    }
    assert!(as_text(&field.screen()).contains("[Handed back]"));
}

#[test]
fn a_late_tap_does_nothing_and_what_was_typed_stays() {
    let (folder, _device, field) = begun(&[PEOPLE, "tap New job"]);
    field.edit("place".into(), "Plant r".into());
    field.suspend();
    let before = fs::read(folder.path().join(DATABASE)).unwrap();
    // The keyboard hands over its last word, and a tap that was under way comes with the whole form.
    field.edit("place".into(), "Plant room 2".into());
    let shown = field.screen();
    let input = vec![Filled { field: "title".into(), value: "Replace a breaker".into() }];
    assert_eq!(field.act(Some(shown.turn), shown.main.unwrap().action, input), vec![]);
    let notice = field.screen().notice.unwrap();
    assert!(notice.tone == Tone::Warn && notice.text.contains("Nothing was done"), "{notice:?}");
    assert!(!field.tend());
    assert!(field.entries().is_err() && field.take_in(Vec::new()).is_err());
    assert_eq!(fs::read(folder.path().join(DATABASE)).unwrap(), before);
    field.resume().unwrap();
    let text = as_text(&field.screen());
    for part in ["! Stillbar was in the background", "_ What the job is: Replace a breaker", "Plant room 2"] {
        assert!(text.contains(part), "{part}:\n{text}");
    }
}

/// A photo that was asked for before is kept after, under the same token; one that comes in between is asked for again.
#[test]
fn an_errand_outlives_it() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE.split("\nphoto").next().unwrap()]);
    let photo = || Outcome::Photo { media_type: "image/png".into(), bytes: demo::PHOTO.to_vec() };
    let shown = field.screen();
    let asked = field.act(Some(shown.turn), shown.main.unwrap().action, vec![]);
    let [Errand::TakePhoto { token, .. }] = &asked[..] else { panic!("{asked:?}") };
    field.suspend();
    assert_eq!(field.deliver(token.clone(), photo()), asked);
    assert_eq!(field.deliver("another".into(), photo()), vec![]);
    field.resume().unwrap();
    assert_eq!(field.deliver(token.clone(), photo()), vec![]);
    assert!(as_text(&field.screen()).contains("The photo is saved"), "{}", as_text(&field.screen()));

    device.play(&field, "tap The job\ntap All jobs");
    let asked = field.act(None, "scan".into(), vec![]);
    let [Errand::ScanTag { token, .. }] = &asked[..] else { panic!("{asked:?}") };
    let frame = || Outcome::Frame { width: 64, height: 64, luma: vec![90; 64 * 64] };
    field.suspend();
    assert_eq!(field.deliver(token.clone(), frame()), asked);
    field.resume().unwrap();
    assert_eq!(field.deliver(token.clone(), frame()), asked);
}

#[test]
fn photos_are_shown_meanwhile() {
    let (_folder, _device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let name = format!("{}.320.jpg", stillbar_core::evidence::sha256(demo::PHOTO));
    let before = field.photo(name.clone());
    assert!(before.is_some());
    field.suspend();
    assert_eq!(field.photo(name), before);
}

/// Another journal in the same place, or none, is refused and left as it is; the right one is taken up again.
#[test]
fn another_journal_is_refused() {
    let (folder, device, field) = begun(&[PEOPLE, PLAN]);
    let other = tempfile::tempdir().unwrap();
    let foreign = Device::new(2);
    let other_field = foreign.open(other.path()).unwrap();
    foreign.play(&other_field, PEOPLE);
    drop(other_field);
    let before = field.screen();
    field.suspend();
    let (place, aside) = (folder.path().join(DATABASE), folder.path().join("aside"));
    fs::rename(&place, &aside).unwrap();
    let refused = |why: &str| match field.resume() {
        Err(OpenError::Other { what }) => assert!(what.contains("is not the one that was open before"), "{what}"),
        other => panic!("{why}: {other:?}"),
    };
    refused("there is none");
    assert!(!place.exists());
    let foreign = fs::read(other.path().join(DATABASE)).unwrap();
    fs::write(&place, &foreign).unwrap();
    refused("another");
    assert_eq!(
        Store::open(other.path()).unwrap().all_entries().unwrap(),
        Store::open(folder.path()).unwrap().all_entries().unwrap()
    );
    assert_eq!(field.screen(), before);
    fs::rename(&aside, &place).unwrap();
    field.resume().unwrap();
    device.play(&field, ISOLATE);
}

#[test]
fn a_journal_that_went_on_is_read_again() {
    let (folder, device, field) = begun(&[PEOPLE]);
    field.suspend();
    let old = field.screen();
    let other = device.open(folder.path()).unwrap();
    device.play(&other, "tap Signed on: Mara Lind\nfill Name = Otto Reis\ntap Add this person\ntap All jobs");
    drop(other);
    field.resume().unwrap();
    field.act(Some(old.turn), "person".into(), vec![]);
    assert!(as_text(&field.screen()).contains("The screen changed before that tap"));
    // Where a row leads is the same whatever came in meanwhile.
    field.act(Some(old.turn), "go /people".into(), vec![]);
    assert!(as_text(&field.screen()).contains("Otto Reis"));
    device.play(&field, "tap All jobs");
    device.play(
        &field,
        "tap Signed on: Mara Lind\nsee Otto Reis\nfill Name = Ada Moor\ntap Add this person\nsee Ada Moor",
    );
}

/// An office that could not be reached yet is still to be joined.
#[test]
fn an_office_is_joined_all_the_same() {
    let (_folder, _device, field) = begun(&[PEOPLE]);
    // Nothing listens there.
    field.join("stillbar-enrol:1:http://127.0.0.1:9:0123456789").unwrap();
    field.suspend();
    assert!(field.exchange().is_none());
    field.resume().unwrap();
    assert!(matches!(field.exchange(), Some(Err(_))));
}
