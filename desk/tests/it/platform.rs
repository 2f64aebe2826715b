//! The device's secret in its file, and the clock.

use std::fs;

use std::path::Path;

use stillbar_core::Platform;
use stillbar_desk::platform::DesktopPlatform;

fn system() -> (tempfile::TempDir, DesktopPlatform) {
    let dir = tempfile::tempdir().expect("a folder to test in");
    let system = DesktopPlatform::new(dir.path()).expect("this system has random bytes");
    (dir, system)
}

#[test]
fn the_secret_comes_back_and_is_never_destroyed() {
    let (dir, system) = system();
    assert_eq!(system.load_secret(), Ok(None));
    // What a process that was killed while it wrote leaves behind.
    fs::write(dir.path().join("device.key.new"), "half").expect("written");
    system.store_secret(vec![7; 32]).expect("stored");
    assert_eq!(system.load_secret(), Ok(Some(vec![7; 32])));
    // A journal that goes on under a new key: the former ones are set aside, for their owner only.
    for (number, key) in [(1, 8), (2, 9)] {
        system.store_secret(vec![key; 32]).expect("stored in place of the former");
        assert_eq!(system.load_secret(), Ok(Some(vec![key; 32])));
        let former = dir.path().join(format!("device.key.former-{number}"));
        assert_eq!(fs::read(&former).expect("it is set aside"), [key - 1; 32]);
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            assert_eq!(fs::metadata(&former).expect("it is there").permissions().mode() & 0o777, 0o600);
        }
    }
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

/// Running goes on and belongs to one start; two look at the same one.
#[cfg(target_os = "linux")]
#[test]
fn the_running_clock_is_that_of_this_start() {
    let (_dir, system) = system();
    let (one, two) = (system.running().expect("Linux has one"), system.running().expect("Linux has one"));
    assert_eq!(one.start, two.start);
    assert!(two.ms >= one.ms && i64::try_from(one.start).is_ok());
    let up = fs::read_to_string("/proc/uptime").expect("Linux says it");
    let up: f64 = up.split(' ').next().and_then(|s| s.parse().ok()).expect("seconds");
    // /proc/uptime counts the time asleep as well (proc_uptime(5)).
    assert!((up - two.ms as f64 / 1000.0).abs() < 60.0, "{up} {two:?}");
}

#[test]
fn the_end_of_the_chain_is_kept_outside_the_data() {
    let dir = tempfile::tempdir().expect("a folder to test in");
    let (data, heads) = (dir.path().join("data"), dir.path().join("state/stillbar/heads"));
    fs::create_dir(&data).expect("made");
    let at = |folder: &Path| DesktopPlatform::with_heads(folder, Some(&heads)).expect("this system has random bytes");
    assert_eq!(at(&data).load_head(), Ok(None));
    at(&data).store_head(vec![1; 40]).expect("stored");
    at(&data).store_head(vec![2; 40]).expect("stored in place of the first");
    // By another way to the same folder, and after the folder was put back from a copy.
    fs::remove_dir(&data).and_then(|()| fs::create_dir(&data)).expect("put back");
    assert_eq!(at(&data.join("../data")).load_head(), Ok(Some(vec![2; 40])));
    assert_eq!(at(dir.path()).load_head(), Ok(None), "another folder has another end");
    assert!(fs::read_dir(&data).expect("it is there").next().is_none(), "nothing of it is in the data folder");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let mode = |path: &Path| fs::metadata(path).expect("it is there").permissions().mode() & 0o777;
        assert_eq!(mode(&heads), 0o700);
        let files: Vec<_> = fs::read_dir(&heads).expect("it is there").flatten().map(|f| f.path()).collect();
        assert_eq!(files.len(), 1, "nothing half written is left: {files:?}");
        assert_eq!(mode(&files[0]), 0o600);
    }
}

#[test]
fn a_folder_that_takes_no_end_is_told() {
    let dir = tempfile::tempdir().expect("a folder to test in");
    fs::write(dir.path().join("heads"), "a file").expect("written");
    let system = DesktopPlatform::with_heads(dir.path(), Some(&dir.path().join("heads"))).expect("random bytes");
    let why = system.store_head(vec![1]).expect_err("it is a file").to_string();
    assert!(why.contains("end of the journal") && !why.contains("os error"), "{why}");
}
