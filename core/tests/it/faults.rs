//! What can go wrong with disk and clock.

use std::sync::atomic::Ordering;

use stillbar_core::screens::as_text;
use stillbar_core::store::{DATABASE, Store, rescue};
use stillbar_core::{OpenError, demo};

use crate::desk::*;

#[test]
fn a_second_process_is_turned_away() {
    let (folder, device, _field) = begun(&[PEOPLE]);
    assert!(matches!(device.open(folder.path()), Err(OpenError::InUse { .. })));
}

#[test]
fn a_clock_turned_back_keeps_the_order_and_says_so() {
    let (folder, device, field) = begun(&[PEOPLE]);
    device.now.fetch_sub(3 * 3_600_000, Ordering::Relaxed);
    device.play(&field, "tap Signed on: Mara Lind\nfill Name = Otto Reis\ntap Add this person\ntap All jobs");
    assert!(as_text(&field.screen()).contains("Set the clock"), "{}", as_text(&field.screen()));
    drop(field);
    let entries = Store::open(folder.path()).unwrap().all_entries().unwrap();
    assert!(entries.windows(2).all(|w| w[0].body.clock < w[1].body.clock && w[0].body.seq + 1 == w[1].body.seq));
    let last = entries.last().unwrap();
    assert!(last.body.wall < last.body.clock.0, "the entry itself shows that the clock was behind");
}

#[test]
fn a_newer_or_foreign_database_is_left_alone() {
    let (folder, device, field) = begun(&[PEOPLE]);
    drop(field);
    let path = folder.path().join(DATABASE);
    rusqlite::Connection::open(&path).unwrap().pragma_update(None, "user_version", 9999).unwrap();
    let before = std::fs::read(&path).unwrap();
    match device.open(folder.path()) {
        Err(OpenError::Newer { what }) => assert!(what.contains("newer")),
        other => panic!("{:?}", other.err()),
    }
    assert_eq!(before, std::fs::read(&path).unwrap());
    std::fs::write(&path, b"this is a letter to somebody").unwrap();
    match device.open(folder.path()) {
        Err(OpenError::Damaged { what }) => assert!(what.contains("stillbar rescue")),
        other => panic!("{:?}", other.err()),
    }
    assert_eq!(std::fs::read(&path).unwrap(), b"this is a letter to somebody");
}

/// The database's first page is gone, so SQLite can read nothing: every entry is still found by its signature.
#[test]
fn rescue_finds_entries_in_a_ruined_file() {
    let (folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    drop(field);
    let path = folder.path().join(DATABASE);
    let all = Store::open(folder.path()).unwrap().all_entries().unwrap().len();
    let mut bytes = std::fs::read(&path).unwrap();
    bytes[..4096].fill(0);
    std::fs::write(&path, &bytes).unwrap();
    assert!(matches!(device.open(folder.path()), Err(OpenError::Damaged { .. })));
    let rescued = rescue(folder.path()).unwrap();
    assert_eq!((rescued.entries, rescued.missing), (all, vec![]));
    assert_eq!(std::fs::read(rescued.kept.join(DATABASE)).unwrap(), bytes, "the damaged file is kept as it was");
    let field = device.open(folder.path()).unwrap();
    device.play(&field, "see Replace the outgoing breaker of washer 4");
}

/// Noise in place of each page of the database in turn: the app opens with all there is, or says that it is damaged; then the rescue
/// keeps every entry that still stands in the file, and the app goes on.
#[test]
fn every_page_damaged_in_turn() {
    use stillbar_core::Platform;
    let (folder, device, field) = begun(&[PEOPLE]);
    drop(field);
    let entries = Store::open(folder.path()).unwrap().all_entries().unwrap();
    let whole = std::fs::read(folder.path().join(DATABASE)).unwrap();
    // https://www.sqlite.org/fileformat2.html section 1.3.2: the page size is at offset 16.
    let page = usize::from(u16::from_be_bytes([whole[16], whole[17]]));
    let (mut refused, mut lost) = (0, 0);
    for start in (0..whole.len()).step_by(page) {
        let (folder, again) = (tempfile::tempdir().unwrap(), Device::new(1));
        again.store_secret(device.load_secret().unwrap().unwrap()).unwrap();
        let mut damaged = whole.clone();
        damaged[start..start + page]
            .iter_mut()
            .enumerate()
            .for_each(|(n, byte)| *byte = (n * 151 + start / page * 37) as u8 | 1);
        std::fs::write(folder.path().join(DATABASE), &damaged).unwrap();
        match again.open(folder.path()) {
            Ok(field) => assert_eq!(field.entries().unwrap().len(), entries.len(), "page {}", start / page),
            Err(OpenError::Damaged { what }) => {
                refused += 1;
                assert!(what.contains("stillbar rescue"));
                assert_eq!(std::fs::read(folder.path().join(DATABASE)).unwrap(), damaged, "looked at and left alone");
                rescue(folder.path()).unwrap();
                let kept = again.open(folder.path()).unwrap().entries().unwrap();
                for entry in &entries {
                    let stands = [&entry.bytes[..], &entry.signature].concat();
                    let readable = damaged.windows(stands.len()).any(|w| w == stands);
                    assert!(kept.contains(entry) || !readable, "entry {} on page {}", entry.body.seq, start / page);
                    lost += usize::from(!readable);
                }
            }
            Err(other) => panic!("page {}: {other}", start / page),
        }
    }
    assert!(refused > 10 && lost > 0, "the damage hit nothing: {refused} refused, {lost} lost");
}

/// A rescue broken off after its new database was finished: refused, and finished by the next rescue; nothing is opened empty.
#[test]
fn a_rescue_broken_off_is_finished_by_the_next() {
    let (folder, device, field) = begun(&[PEOPLE, PLAN]);
    drop(field);
    let path = folder.path().join(DATABASE);
    std::fs::write(&path, vec![0; 8192]).unwrap();
    let rescued = rescue(folder.path()).unwrap();
    // As it stands between the two moves: the damaged file is aside, the new one not in place yet.
    let fresh = rescued.kept.join("new");
    std::fs::create_dir_all(&fresh).unwrap();
    std::fs::rename(&path, fresh.join(DATABASE)).unwrap();
    std::fs::write(fresh.join("ready"), b"").unwrap();
    match device.open(folder.path()) {
        Err(OpenError::Damaged { what }) => assert!(what.contains("broken off")),
        other => panic!("{:?}", other.err()),
    }
    assert!(!path.exists());
    assert_eq!(rescue(folder.path()).unwrap().entries, rescued.entries);
    assert!(device.open(folder.path()).is_ok());
}

/// One bit of a reading turned on the disk, where SQLite's own check sees nothing.
#[test]
fn a_bit_that_turned_on_the_disk_is_found() {
    let (folder, device, field) = begun(&[PEOPLE]);
    drop(field);
    let db = rusqlite::Connection::open(folder.path().join(DATABASE)).unwrap();
    let body: Vec<u8> = db.query_row("SELECT body FROM entry WHERE number = 2", [], |r| r.get(0)).unwrap();
    let at = body.windows(4).position(|w| w == b"Mara").unwrap();
    let mut turned = body;
    turned[at] ^= 1;
    db.execute("UPDATE entry SET body = ?1 WHERE number = 2", [turned]).unwrap();
    drop(db);
    let why = device.open(folder.path()).err().unwrap().to_string();
    assert!(why.contains("damaged"), "{why}");
}

#[test]
fn a_lost_key_is_refused() {
    let (folder, _device, field) = begun(&[PEOPLE]);
    drop(field);
    match Device::new(99).open(folder.path()) {
        Err(OpenError::Secret { what }) => assert!(what.contains("device.key")),
        other => panic!("{:?}", other.err()),
    }
}

#[test]
fn photos_of_the_wrong_kind_are_refused_with_advice() {
    use stillbar_core::{Errand, Outcome};
    let (_folder, _device, field) = begun(&[PEOPLE, PLAN, &ISOLATE[..ISOLATE.find("\nphoto").unwrap()]]);
    let slot = |field: &stillbar_core::Field| {
        let action = field.screen().main.unwrap().action;
        match field.act(None, action, vec![]).pop() {
            Some(Errand::TakePhoto { token, .. }) => token,
            other => panic!("{other:?}"),
        }
    };
    let heic = b"\0\0\0\x18ftypheic\0\0\0\0mif1heic".to_vec();
    for (bytes, says) in [(vec![], "empty"), (b"%PDF-1.7".to_vec(), "not a JPEG"), (heic, "HEIC")] {
        let token = slot(&field);
        field.deliver(token, Outcome::Photo { media_type: String::new(), bytes });
        let text = field.screen().notice.unwrap().text;
        assert!(text.contains(says), "{text}");
    }
    let token = slot(&field);
    field.deliver("another".into(), Outcome::Photo { media_type: String::new(), bytes: demo::PHOTO.to_vec() });
    assert!(field.screen().notice.unwrap().text.contains("not asked for"));
    field.deliver(token, Outcome::Refused { why: "The camera is covered.".into() });
    assert_eq!(field.screen().notice.unwrap().text, "The camera is covered.");
    let token = slot(&field);
    field.deliver(token, Outcome::Photo { media_type: "image/png".into(), bytes: demo::PHOTO.to_vec() });
    assert_eq!(field.screen().notice.unwrap().text, "The photo is saved.");
}

#[test]
fn a_photo_is_kept_with_copies_and_without_its_copies_too() {
    use stillbar_core::evidence::check;
    let (folder, _device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let photo = check(demo::PHOTO).unwrap();
    let name = |suffix: &str| format!("{}{suffix}", photo.sha256);
    for (suffix, bytes) in
        [("", demo::PHOTO), (".320.jpg", &photo.thumbnail), (".960.jpg", &photo.print), (".1600.jpg", &photo.working)]
    {
        assert_eq!(field.photo(name(suffix)).as_deref(), Some(bytes), "{suffix:?}");
    }
    for wrong in [name(".640.jpg"), name(".part"), format!("../photos/{}", photo.sha256), "aa.320.jpg".into()] {
        assert_eq!(field.photo(wrong), None);
    }
    // As a version without copies left it.
    std::fs::remove_file(folder.path().join("photos").join(name(".320.jpg"))).unwrap();
    assert_eq!(field.photo(name(".320.jpg")).as_deref(), Some(demo::PHOTO));
}

#[test]
fn the_demo_plays() {
    let folder = tempfile::tempdir().unwrap();
    demo::seed(&folder.path().to_string_lossy(), Device::new(5)).unwrap();
}

/// The original is given out as it was kept or not at all, and taking the same photo again mends it.
#[test]
fn an_original_that_was_changed_is_not_given_out() {
    let (folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let sha256 = stillbar_core::evidence::sha256(demo::PHOTO);
    let path = folder.path().join("photos").join(&sha256);
    assert!(std::fs::metadata(&path).unwrap().permissions().readonly());
    std::fs::remove_file(&path).unwrap();
    let mut changed = demo::PHOTO.to_vec();
    *changed.last_mut().unwrap() ^= 1;
    std::fs::write(&path, &changed).unwrap();
    assert_eq!(field.photo(sha256.clone()), None);
    device.play(&field, "tap The job\ntap Isolate Q4 feeder switch\nphoto Photo of Q4 feeder switch");
    assert_eq!(field.photo(sha256).as_deref(), Some(demo::PHOTO));
    assert!(std::fs::metadata(&path).unwrap().permissions().readonly());
}

/// Copies that a full disk or an older version left out come back in a quiet moment; a damaged original is left alone.
#[test]
fn missing_copies_are_made_again() {
    let (folder, _device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    let sha256 = stillbar_core::evidence::sha256(demo::PHOTO);
    let photos = folder.path().join("photos");
    let small = photos.join(format!("{sha256}.320.jpg"));
    let before = std::fs::read(&small).unwrap();
    std::fs::remove_file(&small).unwrap();
    let half = photos.join(format!("{sha256}.part"));
    std::fs::write(&half, b"the beginning of it").unwrap();
    for no_photo in ["0".repeat(64), "1".repeat(64), "2".repeat(64)] {
        std::fs::write(photos.join(no_photo), b"not what its name says").unwrap();
    }
    assert!(!field.tend());
    assert_eq!(std::fs::read(&small).unwrap(), before);
    assert!(!half.exists(), "what a write that broke off has left is taken away");
}

/// Bad news is felt, and a tag that was found; what is shared is words, and says so.
#[test]
fn the_device_is_asked_to_buzz_and_to_share() {
    use stillbar_core::Errand;
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    device.play(&field, "tap The job\ntap Time line");
    let share = field.act(None, "share".into(), vec![]);
    let [Errand::Share { title, text }] = &share[..] else { panic!("{share:?}") };
    assert_eq!(title, "Time line");
    for said in
        ["Replace the outgoing breaker", "Treat as live", "not the signed record", "F1 washers off. Washers stopped"]
    {
        assert!(text.contains(said), "{said}\n{text}");
    }
    assert!(!text.contains("Share this"), "{text}");
    device.play(&field, "tap The job\ntap All jobs\ntap Locks on now");
    let share = field.act(None, "share".into(), vec![]);
    let [Errand::Share { text, .. }] = &share[..] else { panic!("{share:?}") };
    assert!(text.contains("\nMara Lind, lock ML 7, on Q4 feeder switch\n"), "{text}");
    assert_eq!(field.act(None, "nonsense".into(), vec![]), [Errand::Buzz]);
    let scan = field.act(None, "scan".into(), vec![]);
    let [Errand::ScanTag { token, .. }] = &scan[..] else { panic!("{scan:?}") };
    let (side, luma) = stillbar_core::tag::Symbol::of_text(demo::TAG).luma(8);
    let found = field.deliver(token.clone(), stillbar_core::Outcome::Frame { width: side, height: side, luma });
    assert_eq!(found, [Errand::Buzz]);
    assert!(field.screen().title.contains("STB7 K2M9"), "{}", field.screen().title);
}
