//! The tables worked out from a job.

use rusqlite::{Connection, params};

use super::StoreError;
use crate::job::steps::{Step, StepOf};
use crate::job::{Job, Standing};
use crate::journal::EntryId;
use crate::journal::fact::On;
use crate::point::Off;

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

/// What stands proved, for a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ProofState {
    /// Proved dead.
    Proved,
    /// A voltage was met.
    Stop,
    /// Anything else.
    Live,
    /// The job is over.
    HandedBack,
}

impl ProofState {
    /// Of a job, as far as it is held against anything.
    pub fn of(job: &Job) -> ProofState {
        if job.handed.is_some() {
            return ProofState::HandedBack;
        }
        match job.standing() {
            Standing::Proved { .. } => ProofState::Proved,
            Standing::Indication { .. } => ProofState::Stop,
            _ => ProofState::Live,
        }
    }

    /// In two or three words.
    pub fn word(self) -> &'static str {
        match self {
            ProofState::Proved => "Proved dead",
            ProofState::Stop => "Stop, treat as live",
            ProofState::Live => "Treat as live",
            ProofState::HandedBack => "Handed back",
        }
    }

    /// Its name in the tables.
    pub fn code(self) -> &'static str {
        match self {
            ProofState::Proved => "proved",
            ProofState::Stop => "stop",
            ProofState::Live => "live",
            ProofState::HandedBack => "handed-back",
        }
    }

    /// The state of this name; anything else is to be treated as live.
    pub fn of_code(code: &str) -> ProofState {
        let all = [ProofState::Proved, ProofState::Stop, ProofState::HandedBack];
        all.into_iter().find(|s| s.code() == code).unwrap_or(ProofState::Live)
    }
}

/// The step whose turn it is, as a list shows it.
pub fn next_of(job: &Job) -> Option<StepOf> {
    job.current().map(|step| step.of_job(job))
}

/// The same from its columns; a step that this version does not know is none.
pub fn read_next(code: Option<String>, point: Option<String>, turns: bool) -> Option<StepOf> {
    Step::named(&code?).map(|step| StepOf { step, point, turns })
}

/// Writes the rows of one job; rows that are already so are left alone.
pub fn write(db: &Connection, job: &Job) -> Result<(), StoreError> {
    // Names of people do not enter here: a corrected name must not change a job's row. Nor does any sentence.
    let alone = job.alone();
    let next = next_of(&alone);
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
    for lock in &job.locks {
        let owed = matches!(lock.off, Some(Off::Forced(_))) && lock.forced.as_ref().is_none_or(|f| f.told.is_none());
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
            job.switch_of(lock.on),
            job.site.map(|site| site.0),
            match lock.on {
                On::Point(point) => Some(point.0),
                On::Box(_) => None,
            },
            lock.since.no_pin()
        ])?;
    }
    for point in &job.points {
        for hung in &point.tags {
            // A tag that came off and hangs again at the same point has one row: how it is now.
            let later = point.tags.iter().any(|t| t.tag == hung.tag && t.stamp.clock > hung.stamp.clock);
            if later {
                continue;
            }
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
