//! The device's secret in its file, and the clock.

use std::fs;

use stillbar_core::Platform;
use stillbar_desk::platform::System;

fn system() -> (tempfile::TempDir, System) {
    let dir = tempfile::tempdir().expect("a folder to test in");
    let system = System::new(dir.path()).expect("this system has random bytes");
    (dir, system)
}

#[test]
fn the_secret_comes_back_and_is_never_replaced() {
    let (dir, system) = system();
    assert_eq!(system.load_secret(), Ok(None));
    // What a process that was killed while it wrote leaves behind.
    fs::write(dir.path().join("device.key.new"), "half").expect("written");
    system.store_secret(vec![7; 32]).expect("stored");
    assert_eq!(system.load_secret(), Ok(Some(vec![7; 32])));
    let why = system.store_secret(vec![8; 32]).expect_err("there is one").to_string();
    assert!(why.contains("device.key") && !why.contains("os error"), "{why}");
    assert_eq!(system.load_secret(), Ok(Some(vec![7; 32])));
    assert!(!dir.path().join("device.key.new").exists());
}

#[cfg(unix)]
#[test]
fn others_cannot_read_the_secret() {
    use std::os::unix::fs::PermissionsExt;
    let (dir, system) = system();
    let file = dir.path().join("device.key");
    let mode = || fs::metadata(&file).expect("it is there").permissions().mode() & 0o777;
    system.store_secret(vec![7; 32]).expect("stored");
    assert_eq!(mode(), 0o600);
    fs::set_permissions(&file, fs::Permissions::from_mode(0o644)).expect("loosened");
    system.load_secret().expect("read all the same");
    assert_eq!(mode(), 0o600);
}

#[test]
fn what_is_too_large_is_no_key() {
    let (dir, system) = system();
    fs::write(dir.path().join("device.key"), vec![0; 5000]).expect("written");
    let why = system.load_secret().expect_err("5000 bytes").to_string();
    assert!(why.contains("device.key"), "{why}");
}

#[test]
fn clock_and_chance() {
    let (_dir, system) = system();
    // 2024-01-01 and 2200-01-01.
    assert!((1_704_067_200_000..7_258_118_400_000).contains(&system.now_ms()));
    for at in [0, system.now_ms(), i64::MAX, i64::MIN] {
        // From Baker Island to Kiribati, with room for the local mean times before zones.
        assert!(system.offset_minutes(at).abs() <= 16 * 60);
    }
    let (a, b) = (system.random(32), system.random(32));
    assert!(a.len() == 32 && a != b);
    assert!(system.random(0).is_empty());
}
