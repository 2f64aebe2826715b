//! The tables worked out from a job.

use rusqlite::{Connection, params};

use super::StoreError;
use stillbar_journal::EntryId;
use stillbar_rules::job::steps::{Step, StepOf};
use stillbar_rules::job::{Job, LockListed, ProofState, TagListed};

/// A job in the list of jobs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobRow {
    /// The job.
    pub id: EntryId,
    /// What it is.
    pub title: String,
    /// Where.
    pub place: String,
    /// The step whose turn it is; `None` once nothing is left to do.
    pub next: Option<StepOf>,
    /// What stands proved by the job's own entries; a list holds it against what is known beside them.
    pub proof: ProofState,
    /// Whether it is handed back.
    pub done: bool,
}

/// A point that a tag hangs or hung at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TagRow {
    /// The point.
    pub point: EntryId,
    /// Its job.
    pub job: EntryId,
    /// Its job's title.
    pub job_title: String,
    /// The point's name.
    pub label: String,
    /// Where it is.
    pub place: String,
    /// Since when the tag hangs there, milliseconds since 1970-01-01T00:00Z.
    pub since_ms: i64,
    /// Minutes ahead of UTC at that time.
    pub zone: i32,
    /// Why it no longer hangs there.
    pub gone: Option<String>,
    /// Whether a lock of that job is on, or an owner is not told yet.
    pub locked: bool,
}

/// The step whose turn it is, from its columns; one that this version does not know is none.
pub fn read_next(code: Option<String>, point: Option<String>, turns: bool) -> Option<StepOf> {
    Step::named(&code?).map(|step| StepOf { step, point, turns })
}

/// Writes the rows of one job; rows that are already so are left alone.
pub fn write(db: &Connection, job: &Job) -> Result<(), StoreError> {
    let alone = job.alone();
    let next = alone.next_listed();
    db.prepare_cached(
        "INSERT INTO job VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9) ON CONFLICT DO UPDATE SET title = excluded.title, \
         place = excluded.place, next = excluded.next, next_at = excluded.next_at, turns = excluded.turns, proof = excluded.proof, \
         done = excluded.done",
    )?
    .execute(params![
        job.id().0,
        job.title,
        job.place,
        next.as_ref().map(|next| next.step.name()),
        next.as_ref().and_then(|next| next.point.as_ref()),
        next.as_ref().is_none_or(|next| next.turns),
        ProofState::of(&alone).code(),
        job.handed.is_some(),
        job.stamp.clock.0
    ])?;
    for LockListed { lock, owed, point, switch } in job.locks_listed() {
        db.prepare_cached(
            "INSERT INTO lock VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13) ON CONFLICT DO UPDATE SET place = excluded.place, \
             owner = excluded.owner, since_ms = excluded.since_ms, zone = excluded.zone, is_on = excluded.is_on, \
             owed = excluded.owed, no_pin = excluded.no_pin WHERE (place, owner, since_ms, is_on, owed) IS NOT \
             (excluded.place, excluded.owner, excluded.since_ms, excluded.is_on, excluded.owed)",
        )?
        .execute(params![
            lock.stamp.id.0,
            job.id().0,
            job.lock_label(lock.on).unwrap_or_default(),
            lock.label,
            lock.owner.0,
            lock.since.wall,
            lock.since.zone,
            lock.is_on(),
            owed,
            switch,
            job.site.map(|site| site.0),
            point.map(|point| point.0),
            lock.since.no_pin()
        ])?;
    }
    for TagListed { point, hung } in job.tags_listed() {
        db.prepare_cached(
            "INSERT INTO tag VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8) ON CONFLICT DO UPDATE SET since_ms = excluded.since_ms, \
             zone = excluded.zone, gone = excluded.gone",
        )?
        .execute(params![
            hung.tag.as_str(),
            point.stamp.id.0,
            job.id().0,
            point.label,
            point.at,
            hung.stamp.wall,
            hung.stamp.zone,
            hung.gone.as_ref().map(|(_, why)| why)
        ])?;
    }
    Ok(())
}

/// The tables as text, one row a line.
pub fn dump(db: &Connection) -> Result<String, StoreError> {
    let mut out = String::new();
    for (sql, columns) in [
        (
            "SELECT hex(id), title, place, coalesce(next, ''), coalesce(next_at, ''), CAST(turns AS TEXT), proof, CAST(done AS TEXT), \
             CAST(opened_ms AS TEXT) FROM job ORDER BY id",
            9,
        ),
        (
            "SELECT hex(fit), hex(job), place, label, hex(owner), CAST(since_ms AS TEXT), CAST(zone AS TEXT), \
             CAST(is_on AS TEXT), CAST(owed AS TEXT), coalesce(switch, ''), coalesce(hex(site), ''), coalesce(hex(point), ''), CAST(no_pin AS TEXT) FROM lock ORDER BY fit",
            13,
        ),
        (
            "SELECT tag, hex(point), hex(job), label, place, CAST(since_ms AS TEXT), CAST(zone AS TEXT), \
             coalesce(gone, '') FROM tag ORDER BY tag, point",
            8,
        ),
        ("SELECT hex(site), hex(device), CAST(seq AS TEXT), hex(id) FROM site_entry ORDER BY site, device, seq", 4),
    ] {
        let mut query = db.prepare(sql)?;
        let mut rows = query.query([])?;
        while let Some(row) = rows.next()? {
            let cells: Vec<String> = (0..columns).map(|i| row.get(i)).collect::<Result<_, _>>()?;
            out.push_str(&cells.join(" | "));
            out.push('\n');
        }
    }
    Ok(out)
}
