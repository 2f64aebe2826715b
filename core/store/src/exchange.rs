//! What the exchange with others needs of the database: how far each device is, what is kept aside, where an upload goes on.

use rusqlite::{Connection, OptionalExtension, params};
use sha2::{Digest, Sha256};

use super::{Store, StoreError, bytes, decode};
use stillbar_journal::{DeviceId, Entry, EntryId, Fact, Running};

/// What one device wrote for one site, as far as it is here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sum {
    /// The site.
    pub site: EntryId,
    /// The device.
    pub device: DeviceId,
    /// How many entries.
    pub count: u64,
    /// The highest number.
    pub last_seq: u64,
    /// SHA-256 chained over the ids in the order of their numbers, from 32 zero bytes.
    pub hash: EntryId,
}

/// An entry that is not believed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AsideRow {
    /// Who is said to have written it.
    pub device: DeviceId,
    /// Its number.
    pub seq: u64,
    /// Why it is not in the journal.
    pub why: String,
}

/// Most entries that are kept aside: what a broken or hostile device can take of the disk is bounded.
const MAX_ASIDE: u64 = 10_000;

impl Store {
    /// The entries of `device` after number `after`, at most `most`.
    pub fn entries_after(&self, device: DeviceId, after: u64, most: usize) -> Result<Vec<Entry>, StoreError> {
        let sql = "SELECT id, body, sig FROM entry WHERE device = ?1 AND seq > ?2 ORDER BY seq LIMIT ?3";
        self.entries(sql, params![device.0, after, most])
    }

    /// Which entry of `device` has this number.
    pub fn id_at(&self, device: DeviceId, seq: u64) -> Result<Option<EntryId>, StoreError> {
        let mut query = self.db.prepare_cached("SELECT id FROM entry WHERE device = ?1 AND seq = ?2")?;
        Ok(query.query_row(params![device.0, seq], |row| row.get(0).map(EntryId)).optional()?)
    }

    /// What there is of every site, by device.
    pub fn sums(&self) -> Result<Vec<Sum>, StoreError> {
        let sql = "SELECT site, device, seq, id FROM site_entry ORDER BY site, device, seq";
        let mut query = self.db.prepare_cached(sql)?;
        let mut rows = query.query([])?;
        let mut sums: Vec<Sum> = Vec::new();
        while let Some(row) = rows.next()? {
            let (site, device) = (EntryId(row.get(0)?), DeviceId(row.get(1)?));
            if sums.last().is_none_or(|s| (s.site, s.device) != (site, device)) {
                sums.push(Sum { site, device, count: 0, last_seq: 0, hash: EntryId::NONE });
            }
            let Some(sum) = sums.last_mut() else { continue };
            let id: [u8; 32] = row.get(3)?;
            (sum.count, sum.last_seq) = (sum.count + 1, row.get(2)?);
            sum.hash = EntryId(Sha256::new().chain_update(sum.hash.0).chain_update(id).finalize().into());
        }
        Ok(sums)
    }

    /// Keeps the name of an entry whose content was erased at the office.
    pub fn note_erased(&self, site: EntryId, device: DeviceId, seq: u64, id: EntryId) -> Result<(), StoreError> {
        note_site(&self.db, site, device, seq, id)
    }

    /// Keeps what opens an entry that is here without it: the same entry came from somebody who withholds less.
    pub fn keep_opened(&self, entry: &Entry) -> Result<(), StoreError> {
        if entry.opens() {
            let sql = "UPDATE entry SET body = ?2 WHERE id = ?1 AND length(body) < length(?2)";
            self.db.prepare_cached(sql)?.execute(params![entry.id.0, entry.bytes])?;
        }
        Ok(())
    }

    /// Keeps an entry that is not believed, beside the journal.
    pub fn keep_aside(&self, entry: &Entry, why: &str) -> Result<(), StoreError> {
        if !self.aside_is_full()? {
            let sql = "INSERT OR IGNORE INTO aside VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
            let Entry { id, body, bytes, signature, .. } = entry;
            self.db.prepare_cached(sql)?.execute(params![id.0, body.device.0, body.seq, why, bytes, signature])?;
        }
        Ok(())
    }

    /// Whether as much is put aside as this device keeps: more that comes is not kept.
    pub fn aside_is_full(&self) -> Result<bool, StoreError> {
        let count: u64 = self.db.query_row("SELECT count(*) FROM aside", [], |row| row.get(0))?;
        Ok(count >= MAX_ASIDE)
    }

    /// What is kept aside, at most a hundred.
    pub fn aside(&self) -> Result<Vec<AsideRow>, StoreError> {
        let mut query = self.db.prepare_cached("SELECT device, seq, why FROM aside ORDER BY device, seq LIMIT 100")?;
        let rows = query
            .query_map([], |row| Ok(AsideRow { device: DeviceId(row.get(0)?), seq: row.get(1)?, why: row.get(2)? }))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Every entry that is put aside, and why, in chains.
    pub fn aside_entries(&self) -> Result<Vec<(Entry, String)>, StoreError> {
        let mut query = self.db.prepare_cached("SELECT id, body, sig, why FROM aside ORDER BY device, seq, id")?;
        let rows = query.query_map([], |row| Ok((bytes(row)?, row.get(3)?)))?;
        rows.map(|row| row.map_err(StoreError::from).and_then(|(stored, why)| Ok((decode(stored)?, why)))).collect()
    }

    /// Keeps when an entry of another device came here first.
    pub fn keep_arrival(&self, id: EntryId, wall: i64, running: Option<Running>) -> Result<(), StoreError> {
        let (start, ms) = (running.map(|r| signed(r.start)), running.map(|r| signed(r.ms)));
        let sql = "INSERT OR IGNORE INTO arrival VALUES (?1, ?2, ?3, ?4)";
        self.db.prepare_cached(sql)?.execute(params![id.0, wall, start, ms])?;
        Ok(())
    }

    /// When an entry of another device came here first.
    pub fn arrival(&self, id: EntryId) -> Result<Option<(i64, Option<Running>)>, StoreError> {
        let mut query = self.db.prepare_cached("SELECT wall, start, ms FROM arrival WHERE id = ?1")?;
        let found = query.query_row([id.0], |row| {
            let (start, ms): (Option<i64>, Option<i64>) = (row.get(1)?, row.get(2)?);
            let running = start.zip(ms).map(|(start, ms)| Running { start: unsigned(start), ms: unsigned(ms) });
            Ok((row.get(0)?, running))
        });
        Ok(found.optional()?)
    }

    /// Where the upload of a photo goes on.
    pub fn upload(&self, sha256: &str, size: &str) -> Result<Option<String>, StoreError> {
        let mut query = self.db.prepare_cached("SELECT place FROM upload WHERE sha256 = ?1 AND size = ?2")?;
        Ok(query.query_row([sha256, size], |row| row.get(0)).optional()?)
    }

    /// Keeps where the upload of a photo goes on; `None` when it is done or begins again.
    pub fn keep_upload(&self, sha256: &str, size: &str, place: Option<&str>) -> Result<(), StoreError> {
        match place {
            Some(place) => {
                let sql = "INSERT INTO upload VALUES (?1, ?2, ?3) ON CONFLICT DO UPDATE SET place = excluded.place";
                self.db.prepare_cached(sql)?.execute([sha256, size, place])?;
            }
            None => {
                self.db
                    .prepare_cached("DELETE FROM upload WHERE sha256 = ?1 AND size = ?2")?
                    .execute([sha256, size])?;
            }
        }
        Ok(())
    }
}

/// What is in the journal is put aside no longer.
pub(super) fn no_longer_aside(db: &Connection, id: EntryId) -> Result<(), StoreError> {
    db.prepare_cached("DELETE FROM aside WHERE id = ?1")?.execute([id.0])?;
    Ok(())
}

/// SQLite's whole numbers have a sign; which start of a device it was is any number.
fn signed(n: u64) -> i64 {
    i64::from_be_bytes(n.to_be_bytes())
}

fn unsigned(n: i64) -> u64 {
    u64::from_be_bytes(n.to_be_bytes())
}

/// Notes which sites have this entry, as the feeds of an office do (docs/exchange.md): its own; and what belongs to no site, a person, an
/// instrument, the device's beginning, belongs to every site in which an entry names it.
pub(super) fn place(db: &Connection, entry: &Entry) -> Result<(), StoreError> {
    let Entry { id, body, .. } = entry;
    if let Some(site) = target(entry) {
        note_site(db, site, body.device, body.seq, *id)?;
        let first = db
            .prepare_cached("SELECT id FROM entry WHERE device = ?1 AND seq = 1")?
            .query_row([body.device.0], |row| row.get(0).map(EntryId))
            .optional()?;
        for named in first.into_iter().chain(entry.refers()) {
            bring(db, site, named)?;
        }
    } else if let Fact::PersonNoted { corrects: Some(corrected), .. } = &body.fact {
        let mut query = db.prepare_cached("SELECT site FROM site_entry WHERE id = ?1")?;
        let sites: Vec<[u8; 32]> = query.query_map([corrected.0], |row| row.get(0))?.collect::<Result<_, _>>()?;
        for site in sites {
            note_site(db, EntryId(site), body.device, body.seq, *id)?;
        }
    }
    Ok(())
}

/// The site that an entry belongs to by itself; the entry that notes a site is that site.
fn target(entry: &Entry) -> Option<EntryId> {
    if matches!(entry.body.fact, Fact::SiteNoted { .. }) { Some(entry.id) } else { entry.body.site }
}

/// Notes that a site has this entry, if it belongs to none, and whatever it names and whatever corrects it.
fn bring(db: &Connection, site: EntryId, id: EntryId) -> Result<(), StoreError> {
    let there = db.prepare_cached("SELECT 1 FROM site_entry WHERE site = ?1 AND id = ?2")?.exists([site.0, id.0])?;
    if there {
        return Ok(());
    }
    let sql = "SELECT id, body, sig FROM entry WHERE id = ?1 AND job IS NULL";
    let Some(entry) = db.prepare_cached(sql)?.query_row([id.0], bytes).optional()?.map(decode).transpose()? else {
        return Ok(());
    };
    if target(&entry).is_some() {
        return Ok(());
    }
    note_site(db, site, entry.body.device, entry.body.seq, id)?;
    for named in entry.refers() {
        bring(db, site, named)?;
    }
    if matches!(entry.body.fact, Fact::PersonNoted { .. }) {
        let mut query = db.prepare_cached("SELECT id, body, sig FROM entry WHERE job IS NULL")?;
        let rows = query.query_map([], bytes)?.collect::<Result<Vec<_>, _>>()?;
        for other in rows.into_iter().map(decode).collect::<Result<Vec<_>, _>>()? {
            if matches!(other.body.fact, Fact::PersonNoted { corrects: Some(person), .. } if person == id) {
                bring(db, site, other.id)?;
            }
        }
    }
    Ok(())
}

/// Notes that a site has this entry.
fn note_site(db: &Connection, site: EntryId, device: DeviceId, seq: u64, id: EntryId) -> Result<(), StoreError> {
    let sql = "INSERT OR IGNORE INTO site_entry VALUES (?1, ?2, ?3, ?4)";
    db.prepare_cached(sql)?.execute(params![site.0, device.0, seq, id.0])?;
    Ok(())
}
