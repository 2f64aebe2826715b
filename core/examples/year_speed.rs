//! A year of one electrician's work: the start, an act to its screen, keeping an entry beside the bare SQLite transaction, and a scan.
//! `cargo run --release -p stillbar-core --example year_speed [ENTRIES ...]` prints a row for each size; by default 1,000 to 1,000,000.

#[path = "year/mod.rs"]
mod year;

use std::path::Path;
use std::time::{Duration, Instant};

use rusqlite::{Connection, params};
use stillbar_core::job::Job;
use stillbar_core::journal::{Body, Entry};
use stillbar_core::journey::planned_again;
use stillbar_core::screens::parts::{Block, Filled};
use stillbar_core::store::{DATABASE, Store};
use stillbar_core::{Field, Platform};

fn main() {
    let told: Vec<usize> = std::env::args().skip(1).map(|n| n.parse().expect("a number of entries")).collect();
    let sizes = if told.is_empty() { vec![1_000, 10_000, 100_000, 1_000_000] } else { told };
    println!(
        "| entries | file | start | act to screen | keep an entry | SQLite alone | scan to answer | the raw queries |"
    );
    println!("|---|---|---|---|---|---|---|---|");
    for size in sizes {
        let folder = tempfile::tempdir().expect("a folder");
        let entries = year::write(folder.path(), 0, size);
        let bytes = std::fs::metadata(folder.path().join(DATABASE)).map_or(0, |m| m.len());
        let start = starts(folder.path());
        let acts = acts(folder.path());
        let (keeps, alone) = keeps(folder.path());
        let (scans, raw) = scans(folder.path());
        println!(
            "| {entries} | {} MB | {} | {} | {} | {} | {} | {} |",
            bytes >> 20,
            told_of(start),
            told_of(acts),
            told_of(keeps),
            told_of(alone),
            told_of(scans),
            told_of(raw)
        );
    }
}

/// Opening the journal and drawing the first screen.
fn starts(folder: &Path) -> Vec<Duration> {
    let open = || {
        let start = Instant::now();
        let field = Field::open(folder.to_string_lossy().into_owned(), year::Device::new(0)).expect("opens");
        assert!(!field.screen().blocks.is_empty());
        start.elapsed()
    };
    open();
    (0..11).map(|_| open()).collect()
}

/// One more circuit on the list of a job under way: signed, on disk, and the next screen.
fn acts(folder: &Path) -> Vec<Duration> {
    let field = Field::open(folder.to_string_lossy().into_owned(), year::Device::new(0)).expect("opens");
    field.act(None, "go /".into(), vec![]);
    year::act(&field, "tap Sign on\ntap Mara Lind\ntap New job");
    let plan = planned_again(include_str!("../journeys/plan.journey"));
    year::act(&field, plan.split_once("tap New job").expect("it begins so").1);
    let mut took = Vec::new();
    year::act(&field, "tap The job\ntap Barriers and danger signs");
    let route = field.screen().route;
    for number in 0..300 {
        field.act(None, format!("go {route}"), vec![]);
        let screen = field.screen();
        let fill = |field: &str, value: String| Filled { field: field.into(), value };
        let input = vec![fill("what", format!("Sign {number}")), fill("at", "Stair".into())];
        let buttons =
            screen.blocks.iter().filter_map(|b| if let Block::Button { button, .. } = b { Some(button) } else { None });
        let keep = buttons.chain(&screen.main).find(|b| b.label == "Save this barrier or sign");
        let action = keep.expect("there is a button for it").action.clone();
        let start = Instant::now();
        field.act(Some(screen.turn), action, input);
        let after = field.screen();
        took.push(start.elapsed());
        assert!(after.notice.is_some_and(|n| n.text == "Kept."), "nothing was kept");
    }
    took
}

/// One entry and its tables by the store; and the same rows by bare SQLite into a copy of the same file, in turns.
fn keeps(folder: &Path) -> (Vec<Duration>, Vec<Duration>) {
    let beside = tempfile::tempdir().expect("a folder");
    std::fs::copy(folder.join(DATABASE), beside.path().join(DATABASE)).expect("there is room");
    let mut store = Store::open(folder).expect("opens");
    let mut bare = Connection::open(beside.path().join(DATABASE)).expect("opens");
    bare.pragma_update(None, "synchronous", "FULL").expect("is set");
    let row = store.jobs().expect("reads").remove(0);
    let mut entries = store.entries_of(row.id).expect("reads");
    let model = entries.iter().rfind(|e| e.body.job.is_some()).expect("a job has entries").clone();
    let key = stillbar_core::journal::DeviceKey::from_secret(
        &year::Device::new(0).load_secret().expect("has one").expect("has one"),
    );
    let key = key.expect("32 bytes");
    let mut head = store.head(key.device()).expect("reads");
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    let mut last = model.body.clock;
    for _ in 0..300 {
        last.0 = last.0.max(store.last_clock().expect("reads").0) + 1000;
        let body = Body { seq: head.seq + 1, prev: head.id, clock: last, ..model.body.clone() };
        let entry = Entry::seal(body, &key, &|count| vec![7; count as usize]).expect("fits");
        (head.seq, head.id) = (entry.body.seq, entry.id);
        entries.push(entry.clone());
        let job = Job::fold(&entries).expect("it has its opening");
        let start = Instant::now();
        store.append(std::slice::from_ref(&entry), &[&job]).expect("there is room");
        ours.push(start.elapsed());
        let start = Instant::now();
        alone(&mut bare, &entry, &row.id.0);
        theirs.push(start.elapsed());
    }
    (ours, theirs)
}

/// What SQLite has to do for an entry however it is asked: the row, its line of the site, and the job's row.
fn alone(db: &mut Connection, entry: &Entry, job: &[u8; 32]) {
    let tx = db.transaction_with_behavior(rusqlite::TransactionBehavior::Immediate).expect("begins");
    let body = &entry.body;
    let run = |sql: &str, with: &[&dyn rusqlite::ToSql]| {
        tx.prepare_cached(sql).and_then(|mut q| q.execute(with)).expect("is written");
    };
    run(
        "INSERT INTO entry (id, device, seq, ms, count, job, body, sig) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
        params![entry.id.0, body.device.0, body.seq, body.clock.0, body.clock.1, job, entry.bytes, entry.signature],
    );
    if let Some(site) = body.site {
        run("INSERT INTO site_entry VALUES (?1, ?2, ?3, ?4)", params![site.0, body.device.0, body.seq, entry.id.0]);
    }
    run("UPDATE job SET next = next || '' WHERE id = ?1", params![job]);
    tx.commit().expect("is on disk");
}

/// A tag that is typed, to the answer's screen; and the queries that it stands on by bare SQLite.
fn scans(folder: &Path) -> (Vec<Duration>, Vec<Duration>) {
    let field = Field::open(folder.to_string_lossy().into_owned(), year::Device::new(0)).expect("opens");
    let db = Connection::open(folder.join(DATABASE)).expect("opens");
    db.pragma_update(None, "synchronous", "FULL").expect("is set");
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for time in 0..300 {
        field.act(None, "go /scan".into(), vec![]);
        let typed = vec![Filled { field: "tag".into(), value: stillbar_core::demo::TAG.into() }];
        let start = Instant::now();
        field.act(None, "look".into(), typed);
        let screen = field.screen();
        ours.push(start.elapsed());
        assert!(screen.route.starts_with("/tag/"), "{}", screen.route);
        let start = Instant::now();
        let sql = "SELECT point, tag.job, title, label, tag.place FROM tag JOIN job ON job.id = tag.job WHERE tag = ?1 LIMIT 20";
        let found = db.prepare_cached(sql).and_then(|mut q| {
            q.query_map([stillbar_core::demo::TAG], |r| r.get::<_, String>(2))?
                .count()
                .try_into()
                .map_err(|_| rusqlite::Error::InvalidQuery)
        });
        let _: u32 = found.expect("reads");
        // Where the person is now is kept as well, so that a killed app goes on there.
        let sql = "INSERT INTO local VALUES ('bench', ?1) ON CONFLICT DO UPDATE SET value = excluded.value";
        let route = format!("{} {time}", screen.route);
        db.prepare_cached(sql).and_then(|mut q| q.execute([&route])).expect("is on disk");
        theirs.push(start.elapsed());
    }
    (ours, theirs)
}

fn told_of(mut took: Vec<Duration>) -> String {
    took.sort_unstable();
    let at = |share: usize| took[(took.len() - 1) * share / 100].as_secs_f64() * 1000.0;
    format!("{:.2} ms, p99 {:.2}", at(50), at(99))
}
