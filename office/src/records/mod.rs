//! What people see: the tables worked out from the feeds, by the core's own fold.
//!
//! They are worked out when somebody looks, and only for jobs that got entries since: taking entries in stays quick, and any process
//! may do it. Promises: a page shows what the feeds held when it was asked for; the same entries show the same here and on a phone.
//! Start at [`refresh`] and [`board`].

mod board;
mod company;
mod erase;
mod job;
mod network;
mod plan;
mod record;
mod site;

pub(crate) use board::named;
pub use board::{Board, HeldLock, LockOn, board};
pub use company::{CompanyVersion, SiteCompany, company, take_company};
pub use erase::{NamedPerson, erase, names};
pub use job::{JobTold, job, sentences};
pub use network::{SiteSupply, supply, take_network};
pub use plan::{NewJob, NewPoint, plan_job, plan_site};
pub use record::record;
pub use site::{JobOf, PointTagged, SiteOf, jobs, last_rules, search, sites, tags};

use std::collections::BTreeSet;

use stillbar_core::job::{Job, LockListed, ProofState, TagListed};
use stillbar_core::journal::fact::{KeyAt, On};
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::site::is_shared;
use stillbar_core::supply::Drawn;
use stillbar_core::world::World;

use crate::error::OfficeError;
use crate::office::Office;
use crate::params;
use crate::store::{Database, SqlRow, SqlValue, Tx};

/// Jobs that are worked out in one transaction.
const AT_ONCE: usize = 50;
/// The note of which version of Stillbar worked the tables out.
const PROGRAM: &str = "program";

/// Entries of a feed from the database.
pub(crate) fn entry(row: &SqlRow) -> Result<Entry, OfficeError> {
    Entry::trusted(row.bytes(0)?, row.signature(1)?)
        .map_err(|e| OfficeError::broken(&format!("an entry in the database is damaged: {e}")))
}

/// Works out every job of these sites that got entries since it was worked out last.
pub fn refresh(office: &Office, sites: &BTreeSet<EntryId>) -> Result<(), OfficeError> {
    let ids: Vec<[u8; 32]> = sites.iter().map(|s| s.0).collect();
    loop {
        let sql = "SELECT site, id FROM job WHERE seen < have AND site IN (@) LIMIT 50";
        let stale = office.read(|tx| {
            let rows = tx.among(sql, &[], &ids)?;
            rows.iter().map(|row| Ok((row.id(0)?, row.id(1)?))).collect::<Result<Vec<_>, OfficeError>>()
        })?;
        office.change(|tx| stale.iter().try_for_each(|(site, job)| work_out(tx, *site, *job)))?;
        if stale.len() < AT_ONCE {
            return Ok(());
        }
    }
}

/// Works out every table again from nothing.
pub fn replay(office: &Office) -> Result<(), OfficeError> {
    let sites = office.change(|tx| {
        forget(tx)?;
        tx.rows("SELECT id FROM site", &[])?.iter().map(|row| row.id(0)).collect::<Result<BTreeSet<_>, _>>()
    })?;
    refresh(office, &sites)
}

/// The tables are worked out again, each job when somebody looks.
fn forget(tx: &mut dyn Tx) -> Result<(), OfficeError> {
    for table in ["DELETE FROM lock_on", "DELETE FROM tag", "UPDATE job SET seen = 0"] {
        tx.run(table, &[])?;
    }
    Ok(())
}

/// Where `program`, a version of Stillbar, worked the tables out, nothing is done; where another did, they are worked out again: what that
/// one could not read may be known now.
pub fn taken_up(store: &dyn Database, program: &str) -> Result<(), OfficeError> {
    crate::store::change(store, |tx| {
        let by = tx.rows("SELECT value FROM office WHERE name = $1", params![PROGRAM])?;
        if by.first().map(|row| row.text(0)).transpose()?.as_deref() == Some(program) {
            return Ok(());
        }
        forget(tx)?;
        tx.run(
            "INSERT INTO office (name, value) VALUES ($1, $2) ON CONFLICT (name) DO UPDATE SET value = excluded.value",
            params![PROGRAM, program],
        )?;
        Ok(())
    })
}

/// The entries of a job, as far as they are in the feed of its site.
pub(crate) fn entries_of(tx: &mut dyn Tx, site: EntryId, job: EntryId) -> Result<Vec<Entry>, OfficeError> {
    let sql = "SELECT body, sig FROM feed WHERE site = $1 AND job = $2 ORDER BY number";
    let rows = tx.rows(sql, params![site, job])?;
    rows.iter().filter(|row| row.bytes(0).is_ok_and(|body| !body.is_empty())).map(entry).collect()
}

/// What a site's feed tells of no single job, as a phone reads it.
fn shared(tx: &mut dyn Tx, site: EntryId) -> Result<Vec<Entry>, OfficeError> {
    let sql = "SELECT body, sig FROM feed WHERE site = $1 AND job IS NULL ORDER BY number";
    let mut entries = Vec::new();
    for row in tx.rows(sql, params![site])? {
        if !row.bytes(0)?.is_empty() {
            entries.push(entry(&row)?);
        }
    }
    // As a phone reads them: in the journal's order, not in that of arrival.
    entries.sort_by_key(Entry::order);
    Ok(entries)
}

/// What jobs of a site tell each other, in the journal's order.
fn across(tx: &mut dyn Tx, site: EntryId) -> Result<Vec<Entry>, OfficeError> {
    let sql = "SELECT body, sig FROM feed WHERE site = $1 ORDER BY number";
    let mut entries = Vec::new();
    for row in tx.rows(sql, params![site])? {
        if !row.bytes(0)?.is_empty() {
            entries.push(entry(&row)?);
        }
    }
    entries.retain(|e: &Entry| is_shared(&e.body.fact));
    entries.sort_by_key(Entry::order);
    Ok(entries)
}

/// The people, sites and instruments of a site.
pub(crate) fn world(tx: &mut dyn Tx, site: EntryId) -> Result<World, OfficeError> {
    let mut world = World::default();
    shared(tx, site)?.iter().for_each(|e| world.extend(e));
    Ok(world)
}

/// A site's supply network, and where its links were last seen.
pub(crate) fn drawn(tx: &mut dyn Tx, site: EntryId) -> Result<Drawn, OfficeError> {
    let mut drawn = Drawn::default();
    shared(tx, site)?.iter().filter(|e| e.body.site == Some(site)).for_each(|e| drawn.extend(e));
    Ok(drawn)
}

fn work_out(tx: &mut dyn Tx, site: EntryId, id: EntryId) -> Result<(), OfficeError> {
    let held = tx.rows("SELECT have FROM job WHERE site = $1 AND id = $2 FOR UPDATE", params![site, id])?;
    let Some(have) = held.first().map(|row| row.int(0)).transpose()? else { return Ok(()) };
    let entries = entries_of(tx, site, id)?;
    match Job::fold(&entries) {
        Some(job) => write(tx, site, &job, &entries)?,
        None => write_unopened(tx, site, id, &entries)?,
    }
    tx.run("UPDATE job SET seen = $1 WHERE site = $2 AND id = $3", params![have, site, id])?;
    Ok(())
}

/// Entries of a job whose opening is not here yet. Its locks are on the board all the same: hiding one is the dangerous mistake. What took
/// one off counts only with its owner's name on it, as in the fold.
fn write_unopened(tx: &mut dyn Tx, site: EntryId, id: EntryId, entries: &[Entry]) -> Result<(), OfficeError> {
    tx.run("DELETE FROM lock_on WHERE site = $1 AND job = $2", params![site, id])?;
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
            SqlValue::from(None::<String>),
            label.clone().into(),
            (*owner).into(),
            false.into(),
            SqlValue::from(None::<String>),
            entry.body.device.into(),
            entry.body.wall.into(),
            entry.body.zone.into(),
            true.into(),
            entry.stamp().no_pin().into(),
        ]);
    }
    tx.insert("lock_on", &LOCK, "", &rows)
}

/// The columns of a lock.
const LOCK: [&str; 13] = [
    "site", "fit", "job", "place", "label", "owner", "boxed", "key_box", "device", "since_ms", "zone", "is_on",
    "no_pin",
];

fn write(tx: &mut dyn Tx, site: EntryId, job: &Job, entries: &[Entry]) -> Result<(), OfficeError> {
    let alone = job.alone();
    let next = alone.next_listed();
    tx.run(
        "UPDATE job SET title = $1, place = $2, next = $3, next_at = $4, turns = $5, proof = $6, done = $7, opened_ms = $8 \
         WHERE site = $9 AND id = $10",
        params![
            job.title.as_str(),
            job.place.as_str(),
            next.as_ref().map(|next| next.step.name().to_owned()),
            next.as_ref().and_then(|next| next.point.clone()),
            next.as_ref().is_none_or(|next| next.turns),
            ProofState::of(&alone).code(),
            job.handed.is_some(),
            job.stamp.wall,
            site,
            job.id()
        ],
    )?;
    tx.run("DELETE FROM lock_on WHERE site = $1 AND job = $2", params![site, job.id()])?;
    let mut rows = Vec::new();
    for LockListed { lock, owed, .. } in job.locks_listed() {
        if !lock.is_on() && !owed {
            continue;
        }
        let device = entries.iter().find(|e| e.id == lock.since.id || e.id == lock.stamp.id).map(|e| e.body.device);
        let Some(device) = device else { continue };
        let (boxed, key_box) = match lock.key {
            KeyAt::Owner => (false, None),
            KeyAt::Box(id) => (true, job.lock_label(On::Box(id))),
        };
        rows.push(vec![
            site.into(),
            lock.stamp.id.into(),
            job.id().into(),
            job.lock_label(lock.on).into(),
            lock.label.clone().into(),
            lock.owner.into(),
            boxed.into(),
            key_box.into(),
            device.into(),
            lock.since.wall.into(),
            lock.since.zone.into(),
            lock.is_on().into(),
            lock.since.no_pin().into(),
        ]);
    }
    tx.insert("lock_on", &LOCK, "", &rows)?;
    tx.run("DELETE FROM tag WHERE site = $1 AND job = $2", params![site, job.id()])?;
    let rows = job.tags_listed().map(|TagListed { point, hung }| {
        vec![
            site.into(),
            hung.tag.as_str().into(),
            point.stamp.id.into(),
            job.id().into(),
            point.label.clone().into(),
            point.at.clone().into(),
            hung.stamp.wall.into(),
            hung.stamp.zone.into(),
            hung.gone.as_ref().map(|(_, why)| why.clone()).into(),
        ]
    });
    let columns = ["site", "tag", "point", "job", "label", "place", "since_ms", "zone", "gone"];
    tx.insert("tag", &columns, "", &rows.collect::<Vec<_>>())
}
