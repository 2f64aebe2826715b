//! A week of work in fast time: whole jobs with photos, an office beside, exchanges, the app put away and taken out, now and then started
//! again. `cargo run --release --example soak -- [JOBS]` prints a line of JSON for each job: what the process holds by then.
//!
//! A week is 40 jobs (an assumption). The clock is the core's to ask for, so the minutes that a job waits cost nothing here.

use std::fs;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};
use std::time::Instant;

use stillbar_core::journal::Running;
use stillbar_core::journey::{Props, planned_again, play, story};
use stillbar_core::sync::Done;
use stillbar_core::{Field, Platform, PlatformError, demo};
use stillbar_desk::platform::DesktopPlatform;
use stillbar_office::start::beside;

/// Behind by what the jobs will take, so that no entry is from the future.
const BEHIND_MS: i64 = -7 * 24 * 3_600_000;

/// This machine, with a clock that can be moved on.
struct Fast {
    system: DesktopPlatform,
    ahead: AtomicI64,
}

impl Platform for Fast {
    /// Moved on with the other clock: both say how long a job took.
    fn running(&self) -> Option<Running> {
        let Running { start, ms } = self.system.running()?;
        let moved = self.ahead.load(Ordering::Relaxed) - BEHIND_MS;
        Some(Running { start, ms: ms + u64::try_from(moved).ok()? })
    }
    fn load_head(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(None)
    }
    fn store_head(&self, _: Vec<u8>) -> Result<(), PlatformError> {
        Ok(())
    }
    fn now_ms(&self) -> i64 {
        self.system.now_ms() + self.ahead.load(Ordering::Relaxed)
    }
    fn offset_minutes(&self, at_ms: i64) -> i32 {
        self.system.offset_minutes(at_ms)
    }
    fn random(&self, count: u32) -> Vec<u8> {
        self.system.random(count)
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        self.system.load_secret()
    }
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        self.system.store_secret(secret)
    }
}

/// Of what proc(5) tells of this process: resident memory in KiB, and how many files and threads it has.
fn held() -> (u64, usize, usize) {
    let status = fs::read_to_string("/proc/self/status").expect("proc(5)");
    let of = |name: &str| status.lines().find_map(|l| l.strip_prefix(name)?.split_whitespace().next()?.parse().ok());
    let files = fs::read_dir("/proc/self/fd").expect("proc(5)").count();
    (of("VmRSS:").expect("proc(5)"), files, of("Threads:").expect("proc(5)") as usize)
}

fn main() {
    let jobs: usize = std::env::args().nth(1).map_or(40, |n| n.parse().expect("a number of jobs"));
    let folder = tempfile::tempdir().expect("a folder");
    let data = folder.path().join("phone");
    fs::create_dir_all(&data).expect("can be made");
    let office = beside(folder.path().join("office"), "The office").expect("it starts");
    let system = DesktopPlatform::new(&data).expect("it has chance");
    let platform = Arc::new(Fast { system, ahead: AtomicI64::new(BEHIND_MS) });
    let open = || Field::open(data.to_string_lossy().into_owned(), platform.clone()).expect("opens");
    let wait = |ms: i64| {
        platform.ahead.fetch_add(ms, Ordering::Relaxed);
    };
    let props = Props { photo: demo::PHOTO, wait: &wait };
    let journeys = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/journeys");
    let first = story(&journeys, "whole-job").expect("is in the list");
    let read = |name: &str| fs::read_to_string(journeys.join(format!("{name}.journey"))).expect("is there");
    // From the second job on, the people and the instruments are known.
    let rest = ["check-instruments", "circuits", "isolate", "prove", "work", "restore"].map(read).concat();
    let again = format!("{}{rest}", planned_again(&read("plan")));

    let mut field = open();
    field.good_time(true);
    for job in 0..jobs {
        let start = Instant::now();
        field.act(None, "go /".into(), vec![]);
        let script = if job == 0 { first.clone() } else { again.clone() };
        for line in Chunks(script.lines()) {
            play(&field, &line, &props).unwrap_or_else(|why| panic!("job {job}: {why}"));
            // In and out of the pocket.
            if line.len() % 7 == 0 {
                field.suspend();
                field.resume().expect("opens again");
            }
        }
        if job == 0 {
            field.join(&office.code).expect("it is a code");
        }
        let all = (0..100).find(|_| matches!(field.exchange(), Some(Ok(done)) if done == Done::default()));
        all.expect("the office has everything after a while");
        if job % 5 == 4 {
            drop(field);
            field = open();
            field.good_time(true);
        }
        field.tend();
        let (kib, files, threads) = held();
        let entries = field.entries().expect("reads").len();
        println!(
            r#"{{"job":{job},"entries":{entries},"resident_kib":{kib},"files":{files},"threads":{threads},"ms":{}}}"#,
            start.elapsed().as_millis()
        );
    }
}

/// Lines up to the one that acts, since what is typed goes with the tap that follows it.
struct Chunks<'a>(std::str::Lines<'a>);

impl Iterator for Chunks<'_> {
    type Item = String;
    fn next(&mut self) -> Option<String> {
        let mut chunk = String::new();
        for line in self.0.by_ref() {
            chunk.push_str(line);
            chunk.push('\n');
            if ["tap", "photo", "scan"].iter().any(|verb| line.starts_with(verb)) {
                break;
            }
        }
        (!chunk.is_empty()).then_some(chunk)
    }
}
