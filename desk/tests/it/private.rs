//! What the desk writes is for its owner only, and what an earlier version left open is closed.
#![cfg(unix)]

use std::fs::{self, Permissions};
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use stillbar_core::{Field, demo};
use stillbar_desk::{calls, folder};

use crate::field::{open, play, system};

/// Everything in `folder`, itself among it, but what links lead to.
fn all(folder: &Path) -> Vec<PathBuf> {
    let mut found = vec![folder.to_owned()];
    for entry in fs::read_dir(folder).unwrap().map(Result::unwrap) {
        match entry.file_type().unwrap() {
            kind if kind.is_dir() => found.extend(all(&entry.path())),
            kind if kind.is_file() => found.push(entry.path()),
            _ => {}
        }
    }
    found
}

fn mode(path: &Path) -> u32 {
    fs::metadata(path).unwrap().permissions().mode() & 0o777
}

fn set(path: &Path, mode: u32) {
    fs::set_permissions(path, Permissions::from_mode(mode)).unwrap();
}

fn assert_private(folder: &Path) {
    let open: Vec<_> = all(folder).into_iter().filter(|p| mode(p) & 0o077 != 0).collect();
    assert!(open.is_empty(), "{:?}", open.iter().map(|p| (p, format!("{:o}", mode(p)))).collect::<Vec<_>>());
}

/// As version 0.1 left it under a umask of 022.
fn loosen(folder: &Path) {
    for path in all(folder) {
        set(&path, if path.is_dir() { 0o755 } else { 0o644 });
    }
}

/// Journal, log, index, lock, key, photos, and a record that was shared.
fn written(data: &Path) -> Arc<Field> {
    folder::make(data).unwrap();
    demo::seed(data.to_str().unwrap(), system(data)).unwrap();
    let field = open(data);
    play(&field, "tap Change the contactor of extractor fan 2\ntap Record of this job\ntap Share the record");
    let names: Vec<String> = all(data).iter().map(|p| p.strip_prefix(data).unwrap().display().to_string()).collect();
    for part in ["journal.db", "journal.db-wal", "journal.db-shm", "in-use", "device.key", "photos/", "shared/"] {
        assert!(names.iter().any(|n| n.starts_with(part)), "{part} is not in {names:?}");
    }
    field
}

#[test]
fn all_that_is_written_is_for_its_owner() {
    let dir = tempfile::tempdir().unwrap();
    let data = dir.path().join("data");
    let field = written(&data);
    assert_private(&data);
    drop(field);
    // A folder that somebody else made.
    let made = dir.path().join("made");
    fs::create_dir(&made).unwrap();
    set(&made, 0o755);
    let _field = written(&made);
    assert_private(&made);
}

#[test]
fn what_was_open_before_is_closed() {
    let dir = tempfile::tempdir().unwrap();
    let data = dir.path().join("data");
    let field = written(&data);
    field.suspend();
    loosen(&data);
    // The log and the index of a process that was killed.
    for name in ["journal.db-wal", "journal.db-shm"] {
        let left = data.join(name);
        fs::write(&left, "").unwrap();
        set(&left, 0o644);
    }
    let photo = all(&data.join("photos")).into_iter().find(|p| p.extension().is_none() && p.is_file()).unwrap();
    set(&photo, 0o444);
    field.resume().unwrap();
    assert_private(&data);
    assert_eq!(mode(&photo), 0o400, "an original stays sealed");
}

#[test]
fn a_rescue_leaves_nothing_open() {
    let dir = tempfile::tempdir().unwrap();
    let data = dir.path().join("data");
    drop(written(&data));
    loosen(&data);
    let file = data.join("journal.db");
    let whole = fs::read(&file).unwrap();
    fs::write(&file, &whole[..whole.len() / 2]).unwrap();
    calls::rescue(&data, false).unwrap();
    assert!(data.join("damaged-1/journal.db").is_file());
    assert_private(&data);
}

/// A person's own folder may serve others too: what is ours in it is closed, and nothing else is touched.
#[test]
fn what_is_not_ours_stays_as_it_is() {
    let dir = tempfile::tempdir().unwrap();
    let (data, beside) = (dir.path().join("data"), dir.path().join("beside"));
    drop(written(&data));
    loosen(&data);
    fs::write(data.join("notes.txt"), "mine").unwrap();
    fs::write(&beside, "mine").unwrap();
    for mine in [data.join("notes.txt"), beside.clone()] {
        set(&mine, 0o644);
    }
    symlink(&beside, data.join("journal.db-old")).unwrap();
    drop(open(&data));
    assert_eq!((mode(&data), mode(&data.join("notes.txt")), mode(&beside)), (0o755, 0o644, 0o644));
    fs::remove_file(data.join("notes.txt")).unwrap();
    drop(open(&data));
    assert_private(&data);
    assert_eq!(mode(&beside), 0o644, "a link is not followed");
}
