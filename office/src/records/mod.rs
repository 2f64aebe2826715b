//! What people see: the tables worked out from the feeds, by the core's own fold.
//!
//! They are worked out when somebody looks, and only for jobs that got entries since: taking entries in stays quick, and any process
//! may do it. Promises: a page shows what the feeds held when it was asked for; the same entries show the same here and on a phone.
//! Start at [`refresh`] and [`board`].

mod board;
mod erase;
mod job;
mod network;
mod plan;
mod record;
mod site;

pub(crate) use board::named;
pub use board::{Board, Held, LockOn, board};
pub use erase::{Named, erase, names};
pub use job::{Told, job, sentences};
pub use network::{Supply, supply, take_network};
pub use plan::{NewJob, NewPoint, plan_job, plan_site};
pub use record::record;
pub use site::{JobOf, PointTagged, SiteOf, jobs, search, sites, tags};

use std::collections::BTreeSet;

use stillbar_core::job::Job;
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::point::Off;
use stillbar_core::site::is_shared;
use stillbar_core::store::ProofState;
use stillbar_core::supply::Drawn;
use stillbar_core::text;
use stillbar_core::world::World;

use crate::fault::Fault;
use crate::office::Office;
use crate::store::{Row, Tx};
use crate::with;

/// Jobs that are worked out in one transaction.
const AT_ONCE: usize = 50;

/// Entries of a feed from the database.
pub(crate) fn entry(row: &Row) -> Result<Entry, Fault> {
    Entry::trusted(row.bytes(0)?, row.signature(1)?)
        .map_err(|e| Fault::broken(&format!("an entry in the database is damaged: {e}")))
}

/// Works out every job of these sites that got entries since it was worked out last.
pub fn refresh(office: &Office, sites: &BTreeSet<EntryId>) -> Result<(), Fault> {
    let ids: Vec<[u8; 32]> = sites.iter().map(|s| s.0).collect();
    loop {
        let sql = "SELECT site, id FROM job WHERE seen < have AND site IN (@) LIMIT 50";
        let stale = office.read(|tx| {
            let rows = tx.among(sql, &[], &ids)?;
            rows.iter().map(|row| Ok((row.id(0)?, row.id(1)?))).collect::<Result<Vec<_>, Fault>>()
        })?;
        office.change(|tx| stale.iter().try_for_each(|(site, job)| work_out(tx, *site, *job)))?;
        if stale.len() < AT_ONCE {
            return Ok(());
        }
    }
}

/// Works out every table again from nothing.
pub fn replay(office: &Office) -> Result<(), Fault> {
    let sites = office.change(|tx| {
        for table in ["DELETE FROM lock_on", "DELETE FROM tag", "UPDATE job SET seen = 0"] {
            tx.run(table, &[])?;
        }
        tx.rows("SELECT id FROM site", &[])?.iter().map(|row| row.id(0)).collect::<Result<BTreeSet<_>, _>>()
    })?;
    refresh(office, &sites)
}

/// The entries of a job, as far as they are in the feed of its site.
pub(crate) fn entries_of(tx: &mut dyn Tx, site: EntryId, job: EntryId) -> Result<Vec<Entry>, Fault> {
    let sql = "SELECT body, sig FROM feed WHERE site = $1 AND job = $2 ORDER BY number";
    let rows = tx.rows(sql, with![site, job])?;
    rows.iter().filter(|row| row.bytes(0).is_ok_and(|body| !body.is_empty())).map(entry).collect()
}

/// What a site's feed tells of no single job, as a phone reads it.
fn shared(tx: &mut dyn Tx, site: EntryId) -> Result<Vec<Entry>, Fault> {
    let sql = "SELECT body, sig FROM feed WHERE site = $1 AND job IS NULL ORDER BY number";
    let mut entries = Vec::new();
    for row in tx.rows(sql, with![site])? {
        if !row.bytes(0)?.is_empty() {
            entries.push(entry(&row)?);
        }
    }
    // As a phone reads them: in the journal's order, not in that of arrival.
    entries.sort_by_key(Entry::order);
    Ok(entries)
}

/// What jobs of a site tell each other, in the journal's order.
fn across(tx: &mut dyn Tx, site: EntryId) -> Result<Vec<Entry>, Fault> {
    let sql = "SELECT body, sig FROM feed WHERE site = $1 ORDER BY number";
    let mut entries = Vec::new();
    for row in tx.rows(sql, with![site])? {
        if !row.bytes(0)?.is_empty() {
            entries.push(entry(&row)?);
        }
    }
    entries.retain(|e: &Entry| is_shared(&e.body.fact));
    entries.sort_by_key(Entry::order);
    Ok(entries)
}

/// What stands proved in a list. A proof has an age and a list has not: it says when it knew so.
fn proof(job: &Job) -> &'static str {
    match ProofState::of(&job.alone()) {
        ProofState::Proved => "Proved dead when last heard",
        other => other.word(),
    }
}

/// The people, sites and instruments of a site.
pub(crate) fn world(tx: &mut dyn Tx, site: EntryId) -> Result<World, Fault> {
    let mut world = World::default();
    shared(tx, site)?.iter().for_each(|e| world.extend(e));
    Ok(world)
}

/// A site's supply network, and where its links were last seen.
pub(crate) fn drawn(tx: &mut dyn Tx, site: EntryId) -> Result<Drawn, Fault> {
    let mut drawn = Drawn::default();
    shared(tx, site)?.iter().filter(|e| e.body.site == Some(site)).for_each(|e| drawn.extend(e));
    Ok(drawn)
}

fn work_out(tx: &mut dyn Tx, site: EntryId, id: EntryId) -> Result<(), Fault> {
    let held = tx.rows("SELECT have FROM job WHERE site = $1 AND id = $2 FOR UPDATE", with![site, id])?;
    let Some(have) = held.first().map(|row| row.int(0)).transpose()? else { return Ok(()) };
    let entries = entries_of(tx, site, id)?;
    match Job::fold(&entries) {
        Some(job) => write(tx, site, &job, &entries)?,
        None => write_unopened(tx, site, id, &entries)?,
    }
    tx.run("UPDATE job SET seen = $1 WHERE site = $2 AND id = $3", with![have, site, id])?;
    Ok(())
}

/// Entries of a job whose opening is not here yet. Its locks are on the board all the same: hiding one is the dangerous mistake. What took
/// one off counts only with its owner's name on it, as in the fold.
fn write_unopened(tx: &mut dyn Tx, site: EntryId, id: EntryId, entries: &[Entry]) -> Result<(), Fault> {
    let sql = "UPDATE job SET title = $1 WHERE site = $2 AND id = $3";
    tx.run(sql, with!["a job whose beginning is not here yet", site, id])?;
    tx.run("DELETE FROM lock_on WHERE site = $1 AND job = $2", with![site, id])?;
    let mut rows = Vec::new();
    for entry in entries {
        let Fact::LockFitted { owner, label, .. } = &entry.body.fact else { continue };
        let gone = entries.iter().any(|e| {
            matches!(e.body.fact, Fact::LockRemoved { lock, .. } if lock == entry.id) && e.body.by == Some(*owner)
        });
        if gone {
            continue;
        }
        rows.push(vec![
            site.into(),
            entry.id.into(),
            id.into(),
            "a point that is not known here yet".into(),
            label.clone().into(),
            (*owner).into(),
            "".into(),
            entry.body.device.into(),
            entry.body.wall.into(),
            entry.body.zone.into(),
            true.into(),
        ]);
    }
    tx.insert("lock_on", &LOCK, "", &rows)
}

/// The columns of a lock.
const LOCK: [&str; 11] =
    ["site", "fit", "job", "place", "label", "owner", "key_at", "device", "since_ms", "zone", "is_on"];

fn write(tx: &mut dyn Tx, site: EntryId, job: &Job, entries: &[Entry]) -> Result<(), Fault> {
    // Names of people do not enter here: a corrected name must not change a job's row.
    let current = job.current();
    let stage = current.map_or_else(text::stage_over, |s| text::stage(s.stage()));
    let next = current.map_or_else(String::new, |s| text::title(s, job));
    tx.run(
        "UPDATE job SET title = $1, place = $2, stage = $3, next = $4, proof = $5, done = $6, opened_ms = $7 \
         WHERE site = $8 AND id = $9",
        with![
            job.title.as_str(),
            job.place.as_str(),
            stage.as_str(),
            next.as_str(),
            proof(job),
            job.handed.is_some(),
            job.stamp.wall,
            site,
            job.id()
        ],
    )?;
    tx.run("DELETE FROM lock_on WHERE site = $1 AND job = $2", with![site, job.id()])?;
    let mut rows = Vec::new();
    for lock in &job.locks {
        let owed = matches!(lock.off, Some(Off::Forced(_))) && lock.forced.as_ref().is_none_or(|f| f.told.is_none());
        if !lock.is_on() && !owed {
            continue;
        }
        let device = entries.iter().find(|e| e.id == lock.since.id || e.id == lock.stamp.id).map(|e| e.body.device);
        let Some(device) = device else { continue };
        rows.push(vec![
            site.into(),
            lock.stamp.id.into(),
            job.id().into(),
            text::place(job, lock.on).into(),
            lock.label.clone().into(),
            lock.owner.into(),
            board::key_at(job, lock).into(),
            device.into(),
            lock.since.wall.into(),
            lock.since.zone.into(),
            lock.is_on().into(),
        ]);
    }
    tx.insert("lock_on", &LOCK, "", &rows)?;
    tx.run("DELETE FROM tag WHERE site = $1 AND job = $2", with![site, job.id()])?;
    let mut rows = Vec::new();
    for point in &job.points {
        for hung in &point.tags {
            // A tag that came off and hangs again at the same point has one row: how it is now.
            if point.tags.iter().any(|t| t.tag == hung.tag && t.stamp.clock > hung.stamp.clock) {
                continue;
            }
            rows.push(vec![
                site.into(),
                hung.tag.as_str().into(),
                point.stamp.id.into(),
                job.id().into(),
                point.label.clone().into(),
                point.at.clone().into(),
                hung.stamp.wall.into(),
                hung.stamp.zone.into(),
                hung.gone.as_ref().map(|(_, why)| why.clone()).into(),
            ]);
        }
    }
    let columns = ["site", "tag", "point", "job", "label", "place", "since_ms", "zone", "gone"];
    tx.insert("tag", &columns, "", &rows)
}
