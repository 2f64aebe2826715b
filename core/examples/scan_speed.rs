//! How long a scan takes to its answer on a large journal, beside the raw SQLite query for the same tag:
//! `cargo run --release -p stillbar-core --example scan_speed [tags [entries]]`.

use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant, SystemTime};

use rusqlite::{Connection, params};
use stillbar_core::screens::parts::Filled;
use stillbar_core::store::DATABASE;
use stillbar_core::tag::TagId;
use stillbar_core::{Field, Platform, PlatformError, demo};

/// A device with the system's clock and no randomness worth the name: nothing here is kept.
#[derive(Default)]
struct Bench(Mutex<(u64, Option<Vec<u8>>)>);

impl Platform for Bench {
    fn running(&self) -> Option<stillbar_core::journal::Running> {
        None
    }
    fn load_head(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(None)
    }
    fn store_head(&self, _: Vec<u8>) -> Result<(), PlatformError> {
        Ok(())
    }
    fn now_ms(&self) -> i64 {
        SystemTime::UNIX_EPOCH.elapsed().map_or(0, |d| d.as_millis() as i64)
    }
    fn offset_minutes(&self, _: i64) -> i32 {
        0
    }
    fn random(&self, count: u32) -> Vec<u8> {
        let mut state = self.0.lock().expect("no panic holds it");
        (0..count)
            .map(|_| {
                state.0 = state.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                (state.0 >> 56) as u8
            })
            .collect()
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        Ok(self.0.lock().expect("no panic holds it").1.clone())
    }
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        self.0.lock().expect("no panic holds it").1 = Some(secret);
        Ok(())
    }
}

fn main() {
    let mut numbers = std::env::args().skip(1).map(|n| n.parse::<u32>().expect("a number"));
    let (tags, entries) = (numbers.next().unwrap_or(100_000), numbers.next().unwrap_or(1_000_000));
    let folder = std::env::temp_dir().join(format!("scan-speed-{}", std::process::id()));
    let shown = folder.to_string_lossy().into_owned();
    let device = Arc::new(Bench::default());
    demo::seed(&shown, device.clone()).expect("the demo plays");
    let known = grow(&folder, tags, entries);

    let field = Field::open(shown, device).expect("opens");
    let db = Connection::open(folder.join(DATABASE)).expect("opens");
    let mut raw = db.prepare("SELECT label, place FROM tag WHERE tag = ?1").expect("the table is there");
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for tag in known.iter().cycle().take(1000) {
        let start = Instant::now();
        let found: String = raw.query_row([tag.as_str()], |row| row.get(0)).expect("the tag is there");
        theirs.push(start.elapsed());
        field.act(None, "go /scan".into(), vec![]);
        let typed = vec![Filled { field: "tag".into(), value: tag.to_string() }];
        let start = Instant::now();
        field.act(None, "look".into(), typed);
        let screen = field.screen();
        ours.push(start.elapsed());
        assert!(screen.route.starts_with("/tag/") && !found.is_empty());
    }
    print(&format!("scan to answer, {tags} tags, {entries} entries"), &mut ours);
    print("the raw query for the tag alone", &mut theirs);
    drop(raw);
    let _ = std::fs::remove_dir_all(folder);
}

/// Rows as a large site would have them: the demo's points get the tags, and the journal is filled with other devices' entries.
fn grow(folder: &std::path::Path, tags: u32, entries: u32) -> Vec<TagId> {
    let mut db = Connection::open(folder.join(DATABASE)).expect("opens");
    let tx = db.transaction().expect("begins");
    let jobs: Vec<Vec<u8>> = tx
        .prepare("SELECT id FROM job")
        .and_then(|mut q| q.query_map([], |row| row.get(0))?.collect())
        .expect("the demo has jobs");
    let mut known = Vec::new();
    for n in 0..tags {
        // Five bits of each byte count: all but the last reach 25 bits of the seed, so that no two tags are the same.
        let seed = n.wrapping_mul(2_654_435_761);
        let tag = TagId::from_random(std::array::from_fn(|k| (seed >> (2 * k)) as u8));
        let point: Vec<u8> = n.to_le_bytes().repeat(8);
        let job = &jobs[n as usize % jobs.len()];
        tx.execute(
            "INSERT OR IGNORE INTO tag VALUES (?1, ?2, ?3, 'Q7 feeder switch', 'Board 7', ?4, 0, NULL)",
            params![tag.as_str(), point, job, n],
        )
        .expect("written");
        if n % (tags / 500).max(1) == 0 {
            known.push(tag);
        }
    }
    let mut insert = tx
        .prepare(
            "INSERT INTO entry (id, device, seq, ms, count, job, body, sig) VALUES (?1, ?2, ?3, ?4, 0, ?5, ?6, ?7)",
        )
        .expect("the table is there");
    for n in 0..entries {
        let id: Vec<u8> = (n + 1).to_be_bytes().repeat(8);
        let job: Vec<u8> = (n / 150 + 1).to_le_bytes().repeat(8);
        let body = vec![0u8; 300];
        insert.execute(params![id, [7u8; 32], n, n, job, body, [0u8; 64]]).expect("written");
    }
    drop(insert);
    tx.commit().expect("committed");
    known
}

fn print(what: &str, took: &mut [Duration]) {
    took.sort_unstable();
    let at = |share: usize| took[took.len() * share / 100];
    println!("{what}: median {:.2?}, 99 % within {:.2?}, of {}", at(50), at(99), took.len());
}
