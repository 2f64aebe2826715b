//! The locks that are on, as last heard.
//!
//! Hiding a lock is the dangerous mistake. So a lock in an entry that is aside or in quarantine is shown too, as not taken in; and a
//! lock stays on the board until an entry that took it off is in the feed.

use std::collections::{BTreeMap, BTreeSet};

use stillbar_core::journal::{DeviceId, EntryId, Fact};
use stillbar_core::world::World;

use super::{entry, refresh, world};
use crate::error::OfficeError;
use crate::exchange::{self, Why};
use crate::office::Office;
use crate::params;
use crate::store::{SqlRow, Tx};

/// Locks that are shown at most.
const MAX: usize = 5_000;

/// A lock that is on, as last heard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LockOn {
    /// Its site.
    pub site: EntryId,
    /// What the site is called.
    pub site_name: String,
    /// Its job.
    pub job: EntryId,
    /// What the job is.
    pub job_title: String,
    /// The entry that fitted it.
    pub fit: EntryId,
    /// What it is on.
    pub place: String,
    /// What is written on it.
    pub label: String,
    /// Whose it is.
    pub owner: String,
    /// Their telephone; empty if none is kept.
    pub telephone: String,
    /// Where its key is.
    pub key_at: String,
    /// Since when, milliseconds since 1970-01-01T00:00Z.
    pub since_ms: i64,
    /// Minutes ahead of UTC at that time.
    pub zone: i32,
    /// Whoever fitted it went on without their PIN.
    pub no_pin: bool,
    /// The phone that told of it, and when that phone was last heard.
    pub phone: String,
    /// Milliseconds since 1970-01-01T00:00Z.
    pub heard_ms: i64,
}

/// The board.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Board {
    /// Locks that are on.
    pub on: Vec<LockOn>,
    /// Locks that were forced off and whose owners are not told yet.
    pub owed: Vec<LockOn>,
    /// Locks in entries that are not taken in.
    pub held: Vec<HeldLock>,
}

/// A lock in an entry that is not taken in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeldLock {
    /// What is written on it.
    pub label: String,
    /// The phone that told of it.
    pub phone: String,
    /// When, by that phone's clock.
    pub since_ms: i64,
    /// Minutes ahead of UTC at that time.
    pub zone: i32,
    /// Why it is not taken in.
    pub why: String,
}

/// What the lock of a row is on, from this column.
pub(super) fn place(row: &SqlRow, at: usize) -> Result<String, OfficeError> {
    Ok(row.maybe_text(at)?.unwrap_or_else(|| "a point that is not known here yet".into()))
}

/// The locks of these sites that are on; those forced off whose owner is not told; and those that are not taken in.
pub fn board(office: &Office, sites: &BTreeSet<EntryId>) -> Result<Board, OfficeError> {
    refresh(office, sites)?;
    office.read(|tx| {
        let ids: Vec<[u8; 32]> = sites.iter().map(|s| s.0).collect();
        let sql = "SELECT lock_on.site, site.name, lock_on.job, job.title, lock_on.fit, lock_on.place, lock_on.label, \
                   lock_on.owner, lock_on.key_box, lock_on.since_ms, lock_on.zone, device.label, device.heard_ms, lock_on.is_on, \
                   lock_on.device, lock_on.boxed, job.proof, lock_on.no_pin \
                   FROM lock_on JOIN site ON site.id = lock_on.site \
                   JOIN job ON job.site = lock_on.site AND job.id = lock_on.job \
                   JOIN device ON device.id = lock_on.device \
                   WHERE lock_on.site IN (@) ORDER BY lock_on.since_ms, lock_on.fit";
        let mut worlds: BTreeMap<EntryId, World> = BTreeMap::new();
        let (mut on, mut owed) = (Vec::new(), Vec::new());
        for row in tx.among(sql, &[], &ids)?.iter().take(MAX) {
            let site = row.id(0)?;
            if let std::collections::btree_map::Entry::Vacant(slot) = worlds.entry(site) {
                slot.insert(world(tx, site)?);
            }
            let names = worlds.get(&site);
            let owner = row.id(7)?;
            let key = row.maybe_text(8)?.unwrap_or_else(|| "a lock box".into());
            let begun = !row.text(16)?.is_empty();
            let lock = LockOn {
                site,
                site_name: row.text(1)?,
                job: row.id(2)?,
                job_title: if begun { row.text(3)? } else { "a job whose beginning is not here yet".into() },
                fit: row.id(4)?,
                place: place(row, 5)?,
                label: row.text(6)?,
                owner: names.map(|w| w.name(owner)).unwrap_or_default(),
                telephone: names.map(|w| w.telephone(owner).to_owned()).unwrap_or_default(),
                key_at: if row.yes(15)? { format!("in {key}") } else { "with the owner".into() },
                since_ms: row.int(9)?,
                zone: i32::try_from(row.int(10)?).unwrap_or(0),
                no_pin: row.yes(17)?,
                phone: named(&row.text(11)?, row.device(14)?),
                heard_ms: row.int(12)?,
            };
            if row.yes(13)? { on.push(lock) } else { owed.push(lock) }
        }
        Ok(Board { on, owed, held: held(tx, sites)? })
    })
}

/// What a phone is called; by its key if it has no name.
pub(crate) fn named(label: &str, device: DeviceId) -> String {
    if label.is_empty() { format!("phone {:.8}", device.to_string()) } else { label.to_owned() }
}

fn held(tx: &mut dyn Tx, sites: &BTreeSet<EntryId>) -> Result<Vec<HeldLock>, OfficeError> {
    let mut found = Vec::new();
    for sql in [
        "SELECT aside.body, aside.sig, aside.reason, device.label FROM aside JOIN device ON device.id = aside.device \
         ORDER BY aside.device, aside.seq LIMIT $1",
        "SELECT quarantine.body, quarantine.sig, quarantine.reason, device.label FROM quarantine \
         JOIN device ON device.id = quarantine.device WHERE looked_ms IS NULL \
         ORDER BY quarantine.device, quarantine.seq LIMIT $1",
    ] {
        for row in tx.rows(sql, params![MAX])? {
            let entry = entry(&row)?;
            let Fact::LockFitted { label, .. } = &entry.body.fact else { continue };
            // What stands on a site that nobody here looks after is shown to everybody rather than to nobody.
            let known = match entry.body.site {
                Some(site) => !tx.rows("SELECT 1 FROM site WHERE id = $1", params![site])?.is_empty(),
                None => false,
            };
            if known && !entry.body.site.is_some_and(|s| sites.contains(&s)) {
                continue;
            }
            found.push(HeldLock {
                label: label.clone(),
                phone: named(&row.text(3)?, entry.body.device),
                since_ms: entry.body.wall,
                zone: entry.body.zone,
                why: exchange::say(Why::named(&row.text(2)?)).to_owned(),
            });
        }
    }
    Ok(found)
}
