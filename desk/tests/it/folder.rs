//! Data folders: private, and the demo never over anything else.

use std::fs;

use stillbar_desk::folder::{self, Demo};

#[test]
fn made_for_its_owner_only() {
    let dir = tempfile::tempdir().expect("a folder to test in");
    let data = dir.path().join("a/b");
    folder::make(&data).expect("made");
    folder::make(&data).expect("there already");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        assert_eq!(fs::metadata(&data).expect("it is there").permissions().mode() & 0o777, 0o700);
    }
}

#[test]
fn a_file_is_no_folder() {
    let dir = tempfile::tempdir().expect("a folder to test in");
    let file = dir.path().join("notes.txt");
    fs::write(&file, "mine").expect("written");
    let why = folder::make(&file).expect_err("a file").to_string();
    assert!(why.contains("notes.txt") && why.contains("--data"), "{why}");
    let why = folder::make(&file.join("below")).expect_err("below a file").to_string();
    assert!(why.contains("notes.txt") && !why.contains("os error"), "{why}");
    assert_eq!(fs::read_to_string(&file).expect("still there"), "mine");
}

#[test]
fn the_demo_knows_its_own() {
    let dir = tempfile::tempdir().expect("a folder to test in");
    let data = dir.path();
    let is = |expected| assert_eq!(folder::demo(data).expect("read"), expected);
    assert_eq!(folder::demo(&data.join("none")).expect("read"), Demo::Empty);
    is(Demo::Empty);
    fs::write(data.join("journal.db"), "a person's own").expect("written");
    is(Demo::Other);
    folder::mark(data, false).expect("marked");
    is(Demo::Begun);
    folder::mark(data, true).expect("marked");
    is(Demo::Whole);
}

#[test]
fn emptying_follows_no_link_and_keeps_the_mark() {
    let dir = tempfile::tempdir().expect("a folder to test in");
    let (data, other) = (dir.path().join("demo"), dir.path().join("other"));
    fs::create_dir_all(data.join("photos/ab")).expect("made");
    fs::create_dir(&other).expect("made");
    fs::write(other.join("mine"), "mine").expect("written");
    fs::write(data.join("photos/ab/cd"), "x").expect("written");
    fs::write(data.join("journal.db"), "x").expect("written");
    #[cfg(unix)]
    std::os::unix::fs::symlink(&other, data.join("link")).expect("linked");
    folder::mark(&data, true).expect("marked");

    folder::empty(&data).expect("emptied");
    let left: Vec<_> =
        fs::read_dir(&data).expect("still there").filter_map(Result::ok).map(|e| e.file_name()).collect();
    assert_eq!(left, ["demo.txt"]);
    assert_eq!(folder::demo(&data).expect("read"), Demo::Begun, "a half-emptied demo is still known as one");
    assert_eq!(fs::read_to_string(other.join("mine")).expect("untouched"), "mine");
}
