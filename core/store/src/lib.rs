//! SQLite: the journal on disk, and the tables worked out from it.
//!
//! Promises: one act of a person is one IMMEDIATE transaction (entries and tables together), on disk before the screen moves on
//! (`synchronous=FULL`); replaying the journal from nothing gives the same tables; a database that is damaged or newer is left
//! exactly as it is. Start at [`Store::open`] and [`Store::append`].

mod errors;
mod exchange;
mod hands;
mod open;
pub mod photos;
pub mod private;
mod project;
mod rescue;
mod whole;

use std::collections::{BTreeMap, BTreeSet};
use std::fs::File;
use std::path::PathBuf;

use rusqlite::{Connection, OptionalExtension, Row, TransactionBehavior, params};

use stillbar_journal::{DeviceId, Entry, EntryId, Hlc};
use stillbar_rules::job::{Job, ProofState};
use stillbar_rules::site::is_shared;
use stillbar_values::TagId;

pub use errors::OpenError;
pub use exchange::{AsideRow, Sum};
pub use hands::{Hand, Tick};
pub use open::{DATABASE, LOCK, StoreError};
pub use project::{JobRow, TagRow, read_next};
pub use rescue::NEW_KEY;
pub use rescue::{Rescued, rescue};
pub use stillbar_rules::point::LockRow;
pub use whole::{plain, write_private, write_whole};

/// The note of when the office was last reached.
const OFFICE_REACHED: &str = "office-reached";
/// Keeps a note: its name and its value.
const KEEP: &str = "INSERT INTO local VALUES (?1, ?2) ON CONFLICT DO UPDATE SET value = excluded.value";

/// The open data folder.
pub struct Store {
    db: Connection,
    /// The folder.
    pub folder: PathBuf,
    /// Held for as long as the store is open: a second process is turned away. None for one that only looks.
    _lock: Option<File>,
}

/// The end of a device's chain: the last number and id, or 0 and [`EntryId::NONE`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Head {
    /// The last sequence number.
    pub seq: u64,
    /// The last id.
    pub id: EntryId,
}

impl Store {
    /// Keeps `entries` and the tables that follow from `jobs`, in one transaction.
    pub fn append(&mut self, entries: &[Entry], jobs: &[&Job]) -> Result<(), StoreError> {
        let tx = self.db.transaction_with_behavior(TransactionBehavior::Immediate)?;
        for entry in entries {
            insert(&tx, entry)?;
            exchange::no_longer_aside(&tx, entry.id)?;
        }
        for job in jobs {
            project::write(&tx, job)?;
        }
        tx.commit()?;
        Ok(())
    }

    /// Puts what was appended where it stays, so that the next start is quick. What fails is done again another time.
    pub fn tidy(&self) {
        let _ = self.db.execute_batch("PRAGMA wal_checkpoint(TRUNCATE); PRAGMA optimize;");
    }

    /// The end of `device`'s chain.
    pub fn head(&self, device: DeviceId) -> Result<Head, StoreError> {
        let found = self
            .db
            .prepare_cached("SELECT seq, id FROM entry WHERE device = ?1 ORDER BY seq DESC LIMIT 1")?
            .query_row([device.0], |row| Ok(Head { seq: row.get(0)?, id: EntryId(row.get(1)?) }))
            .optional()?;
        Ok(found.unwrap_or(Head { seq: 0, id: EntryId::NONE }))
    }

    /// The latest moment in the journal.
    pub fn last_clock(&self) -> Result<Hlc, StoreError> {
        let sql = "SELECT ms, count FROM entry ORDER BY ms DESC, count DESC LIMIT 1";
        let found = self.db.query_row(sql, [], |row| Ok(Hlc(row.get(0)?, row.get(1)?))).optional()?;
        Ok(found.unwrap_or_default())
    }

    /// One entry.
    pub fn entry(&self, id: EntryId) -> Result<Option<Entry>, StoreError> {
        let found = self
            .db
            .prepare_cached("SELECT id, body, sig FROM entry WHERE id = ?1")?
            .query_row([id.0], bytes)
            .optional()?;
        found.map(decode).transpose()
    }

    /// The entries of a job, in the journal's order.
    pub fn entries_of(&self, job: EntryId) -> Result<Vec<Entry>, StoreError> {
        self.entries("SELECT id, body, sig FROM entry WHERE job = ?1 ORDER BY ms, count, device", [job.0])
    }

    /// The entries of no job, in the journal's order: people, sites, instruments.
    pub fn shared_entries(&self) -> Result<Vec<Entry>, StoreError> {
        self.entries("SELECT id, body, sig FROM entry WHERE job IS NULL ORDER BY ms, count, device", [])
    }

    /// The entries of jobs that other jobs have to know, in the journal's order.
    pub fn entries_across(&self) -> Result<Vec<Entry>, StoreError> {
        self.entries("SELECT id, body, sig FROM entry WHERE shared = 1 ORDER BY ms, count, device", [])
    }

    /// Every entry, in the journal's order.
    pub fn all_entries(&self) -> Result<Vec<Entry>, StoreError> {
        self.entries("SELECT id, body, sig FROM entry ORDER BY ms, count, device", [])
    }

    fn entries(&self, sql: &str, with: impl rusqlite::Params) -> Result<Vec<Entry>, StoreError> {
        let mut query = self.db.prepare_cached(sql)?;
        let rows = query.query_map(with, bytes)?;
        rows.map(|row| decode(row?)).collect()
    }

    /// All jobs, open ones first, latest first.
    pub fn jobs(&self) -> Result<Vec<JobRow>, StoreError> {
        let sql = "SELECT id, title, place, next, next_at, turns, proof, done FROM job ORDER BY done, opened_ms DESC, id LIMIT 500";
        let mut query = self.db.prepare_cached(sql)?;
        let rows = query.query_map([], |row| {
            Ok(JobRow {
                id: EntryId(row.get(0)?),
                title: row.get(1)?,
                place: row.get(2)?,
                next: read_next(row.get(3)?, row.get(4)?, row.get(5)?),
                proof: ProofState::of_code(&row.get::<_, String>(6)?),
                done: row.get(7)?,
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The jobs that were opened last, latest first, at most `most`.
    pub fn latest_jobs(&self, most: usize) -> Result<Vec<EntryId>, StoreError> {
        let mut query = self.db.prepare_cached("SELECT id FROM job ORDER BY opened_ms DESC, id LIMIT ?1")?;
        let rows = query.query_map([most], |row| row.get(0).map(EntryId))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The locks of all jobs that are on, and those forced off whose owner is not told; oldest first.
    pub fn open_locks(&self) -> Result<Vec<LockRow>, StoreError> {
        let sql = "SELECT fit, lock.job, title, lock.place, label, owner, since_ms, zone, is_on, owed, switch, site, point, no_pin FROM lock \
                   JOIN job ON job.id = lock.job WHERE is_on = 1 OR owed = 1 ORDER BY since_ms, fit LIMIT 2000";
        let mut query = self.db.prepare_cached(sql)?;
        let rows = query.query_map([], |row| {
            Ok(LockRow {
                fit: EntryId(row.get(0)?),
                job: EntryId(row.get(1)?),
                job_title: row.get(2)?,
                place: row.get(3)?,
                label: row.get(4)?,
                owner: EntryId(row.get(5)?),
                since_ms: row.get(6)?,
                zone: row.get(7)?,
                telephone: String::new(),
                on: row.get(8)?,
                owed: row.get(9)?,
                switch: row.get(10)?,
                site: row.get::<_, Option<[u8; 32]>>(11)?.map(EntryId),
                point: row.get::<_, Option<[u8; 32]>>(12)?.map(EntryId),
                no_pin: row.get(13)?,
                aside: None,
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Where a tag hangs or hung, latest first, at most twenty.
    pub fn places_of(&self, tag: TagId) -> Result<Vec<TagRow>, StoreError> {
        let sql = "SELECT point, tag.job, title, label, tag.place, since_ms, zone, gone, \
                   EXISTS (SELECT 1 FROM lock WHERE lock.job = tag.job AND (is_on = 1 OR owed = 1)) \
                   FROM tag JOIN job ON job.id = tag.job WHERE tag = ?1 ORDER BY since_ms DESC, point LIMIT 20";
        let mut query = self.db.prepare_cached(sql)?;
        let rows = query.query_map([tag.as_str()], |row| {
            Ok(TagRow {
                point: EntryId(row.get(0)?),
                job: EntryId(row.get(1)?),
                job_title: row.get(2)?,
                label: row.get(3)?,
                place: row.get(4)?,
                since_ms: row.get(5)?,
                zone: row.get(6)?,
                gone: row.get(7)?,
                locked: row.get(8)?,
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// What this person typed on a screen and did not keep yet.
    pub fn drafts(&self, route: &str, person: &str) -> Result<BTreeMap<String, String>, StoreError> {
        let mut query = self.db.prepare_cached("SELECT field, value FROM draft WHERE route = ?1 AND person = ?2")?;
        let rows = query.query_map([route, person], |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Keeps what this person typed.
    pub fn keep_draft(&self, route: &str, person: &str, field: &str, value: &str) -> Result<(), StoreError> {
        let sql = "INSERT INTO draft VALUES (?1, ?2, ?3, ?4) ON CONFLICT DO UPDATE SET value = excluded.value";
        self.db.prepare_cached(sql)?.execute(params![route, person, field, value])?;
        Ok(())
    }

    /// Forgets what this person typed on a screen: it has been kept.
    pub fn clear_drafts(&self, route: &str, person: &str) -> Result<(), StoreError> {
        self.db.prepare_cached("DELETE FROM draft WHERE route = ?1 AND person = ?2")?.execute([route, person])?;
        Ok(())
    }

    /// Forgets what anybody left in a field of this name, on any screen.
    pub fn drop_drafts_of(&self, field: &str) -> Result<(), StoreError> {
        self.db.prepare_cached("DELETE FROM draft WHERE field = ?1")?.execute([field])?;
        Ok(())
    }

    /// A note of this device to itself.
    pub fn local(&self, name: &str) -> Result<Option<String>, StoreError> {
        let mut query = self.db.prepare_cached("SELECT value FROM local WHERE name = ?1")?;
        Ok(query.query_row([name], |row| row.get(0)).optional()?)
    }

    /// Keeps a note of this device to itself.
    pub fn keep_local(&self, name: &str, value: &str) -> Result<(), StoreError> {
        self.db.prepare_cached(KEEP)?.execute([name, value])?;
        Ok(())
    }

    /// A note that is a moment of the journal's clock.
    pub fn local_moment(&self, name: &str) -> Result<Option<Hlc>, StoreError> {
        let noted = self.local(name)?;
        Ok(noted
            .as_deref()
            .and_then(|text| text.split_once(' '))
            .and_then(|(ms, count)| Some(Hlc(ms.parse().ok()?, count.parse().ok()?))))
    }

    /// Keeps a moment of the journal's clock as a note.
    pub fn keep_local_moment(&self, name: &str, at: Hlc) -> Result<(), StoreError> {
        self.keep_local(name, &format!("{} {}", at.0, at.1))
    }

    /// When the office last had and gave everything, milliseconds since 1970-01-01T00:00Z.
    pub fn office_reached(&self) -> Option<i64> {
        self.local(OFFICE_REACHED).ok().flatten()?.parse().ok()
    }

    /// Keeps that the office had and gave everything at this moment.
    pub fn keep_office_reached(&self, at_ms: i64) -> Result<(), StoreError> {
        self.keep_local(OFFICE_REACHED, &at_ms.to_string())
    }

    /// Forgets a note.
    pub fn drop_local(&self, name: &str) -> Result<(), StoreError> {
        self.db.prepare_cached("DELETE FROM local WHERE name = ?1")?.execute([name])?;
        Ok(())
    }

    /// The tables that are worked out from the journal, as text: for comparing.
    pub fn tables(&self) -> Result<String, StoreError> {
        project::dump(&self.db)
    }

    /// Works out every table again from nothing.
    pub fn replay(&mut self) -> Result<(), StoreError> {
        let tx = self.db.transaction_with_behavior(TransactionBehavior::Immediate)?;
        replay(&tx)?;
        Ok(tx.commit()?)
    }
}

/// Works out again all that follows from the journal, for a program that may read more in an entry than the one before it did: which job an
/// entry opens, whether other jobs have to know it, and the tables. An entry that is damaged is an error: a job must not drop out of a list.
fn replay(db: &Connection) -> Result<(), StoreError> {
    db.execute_batch("DELETE FROM job; DELETE FROM lock; DELETE FROM tag;")?;
    let mut query = db.prepare("SELECT id, body, sig FROM entry ORDER BY ms, count, device")?;
    let mut said =
        db.prepare("UPDATE entry SET job = ?2, shared = ?3 WHERE id = ?1 AND (job, shared) IS NOT (?2, ?3)")?;
    let mut jobs = BTreeSet::new();
    for row in query.query_map([], bytes)? {
        let entry = decode(row?)?;
        jobs.extend(entry.job());
        said.execute(params![entry.id.0, entry.job().map(|id| id.0), is_shared(&entry.body.fact)])?;
        // Names of erased entries stay: no entry here tells them.
        exchange::place(db, &entry)?;
    }
    let mut query = db.prepare("SELECT id, body, sig FROM entry WHERE job = ?1 ORDER BY ms, count, device")?;
    for job in jobs {
        let entries: Vec<Entry> = query.query_map([job.0], bytes)?.map(|row| decode(row?)).collect::<Result<_, _>>()?;
        if let Some(job) = Job::fold(&entries) {
            project::write(db, &job)?;
        }
    }
    Ok(())
}

fn insert(db: &Connection, entry: &Entry) -> Result<(), StoreError> {
    let sql = "INSERT INTO entry (id, device, seq, ms, count, job, shared, body, sig) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)";
    db.prepare_cached(sql)?.execute(params![
        entry.id.0,
        entry.body.device.0,
        entry.body.seq,
        entry.body.clock.0,
        entry.body.clock.1,
        entry.job().map(|id| id.0),
        is_shared(&entry.body.fact),
        entry.bytes,
        entry.signature,
    ])?;
    exchange::place(db, entry)
}

/// A row of the journal: id, body, signature.
type StoredRow = ([u8; 32], Vec<u8>, [u8; 64]);

fn bytes(row: &Row) -> rusqlite::Result<StoredRow> {
    Ok((row.get(0)?, row.get(1)?, row.get(2)?))
}

/// A bit that turned on the disk shows here: the body's hash is worked out anyway, and has to be the id it was kept under.
fn decode((id, body, sig): StoredRow) -> Result<Entry, StoreError> {
    match Entry::trusted(body, sig) {
        Ok(entry) if entry.id.0 == id => Ok(entry),
        Ok(_) => Err(StoreError::Damaged("an entry is not what was kept".into())),
        Err(e) => Err(StoreError::Damaged(e.to_string())),
    }
}
