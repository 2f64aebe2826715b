//! The feeds of sites: what a site's phones get, numbered 1, 2, 3, ...
//!
//! An entry of a site goes into that site's feed. What belongs to no site (a person, an instrument, the device) comes in just before
//! the first entry of the site that names it, so that a phone never reads of somebody it does not know, and a phone of one site
//! never gets a name that only another site uses. The site's row is held while numbers are given, to the end of the transaction: a
//! reader never passes a number that is committed later.

use std::collections::{BTreeMap, BTreeSet};

use stillbar_core::journal::{DeviceId, Entry, EntryId, Fact, Hlc};

use super::kept::FeedEntry;
use super::push::distinct;
use super::rolled::Rolled;
use crate::error::OfficeError;
use crate::params;
use crate::store::{SqlValue, Tx};

struct Site {
    last: i64,
    clock: Hlc,
}

/// The feeds that a transaction adds to. Nothing is written before [`Feeds::finish`].
pub struct Feeds<'a> {
    tx: &'a mut dyn Tx,
    now: i64,
    sites: BTreeMap<EntryId, Site>,
    rolled: BTreeMap<(EntryId, DeviceId), Rolled>,
    jobs: BTreeMap<(EntryId, EntryId), i64>,
    rows: Vec<Vec<SqlValue>>,
    photos: Vec<Vec<SqlValue>>,
    /// What is known to be in a feed: what this transaction put there, and what it looked up.
    inside: BTreeSet<(EntryId, EntryId)>,
    /// What is known to belong to no site.
    loose: BTreeSet<EntryId>,
    /// First entries of devices, looked up once.
    first: BTreeMap<DeviceId, Option<EntryId>>,
    /// Whether [`Feeds::meet`] was called.
    met: bool,
}

impl<'a> Feeds<'a> {
    /// Begins.
    pub fn new(tx: &'a mut dyn Tx, now: i64) -> Feeds<'a> {
        Feeds {
            tx,
            now,
            sites: BTreeMap::new(),
            rolled: BTreeMap::new(),
            jobs: BTreeMap::new(),
            rows: Vec::new(),
            photos: Vec::new(),
            inside: BTreeSet::new(),
            loose: BTreeSet::new(),
            first: BTreeMap::new(),
            met: false,
        }
    }

    /// A site that one of `entries` notes; the devices get it.
    pub fn begin_site(&mut self, site: EntryId, entries: &[&Entry], devices: &[DeviceId]) -> Result<(), OfficeError> {
        let name = entries.iter().find(|e| e.id == site).map_or("", |e| match &e.body.fact {
            Fact::SiteNoted { name } => name.as_str(),
            _ => "",
        });
        self.tx.run(
            "INSERT INTO site (id, name, main, taken, last, ms, count, made_ms) VALUES ($1, $2, $1, 0, 0, 0, 0, $3) \
             ON CONFLICT (id) DO NOTHING",
            params![site, name, self.now],
        )?;
        for device in devices {
            self.tx.run(
                "INSERT INTO device_site (device, site) VALUES ($1, $2) ON CONFLICT DO NOTHING",
                params![*device, site],
            )?;
        }
        Ok(())
    }

    /// Puts `entries`, in their order, where they belong. `new`: they get their place in the chain now; otherwise they have one and were
    /// aside.
    pub fn take(&mut self, entries: &[FeedEntry], new: bool) -> Result<(), OfficeError> {
        if entries.iter().any(|k| k.target().is_none()) {
            self.meet()?;
        }
        let places = |kept: &FeedEntry| i64::from(kept.target().is_none());
        if new {
            let links = entries.iter().map(|k| vec![k.device.into(), k.seq.into(), k.id.into(), places(k).into()]);
            self.tx.insert("link", &["device", "seq", "id", "place"], "", &links.collect::<Vec<_>>())?;
        } else {
            for kept in entries {
                self.tx.run("UPDATE link SET place = $1 WHERE id = $2", params![places(kept), kept.id])?;
            }
        }
        self.keep_loose(entries)?;
        self.look_up(entries)?;
        for kept in entries {
            match kept.target() {
                Some(site) => {
                    self.introduce(site, kept)?;
                    self.append(site, kept)?;
                }
                None => self.called_for(kept)?,
            }
        }
        Ok(())
    }

    /// Writes all of it.
    pub fn finish(self) -> Result<(), OfficeError> {
        let columns = ["site", "number", "id", "device", "seq", "job", "came_ms", "body", "sig"];
        self.tx.insert("feed", &columns, "", &self.rows)?;
        self.tx.insert(
            "photo_named",
            &["sha256", "site", "device"],
            "ON CONFLICT DO NOTHING",
            &distinct(self.photos),
        )?;
        for (id, site) in &self.sites {
            self.tx.run(
                "UPDATE site SET last = $1, ms = $2, count = $3 WHERE id = $4",
                params![site.last, site.clock.0, site.clock.1, *id],
            )?;
        }
        Rolled::write(self.tx, &self.rolled)?;
        let now = self.now;
        let jobs = self.jobs.iter().map(|((site, job), more)| {
            let mut row = vec![(*site).into(), (*job).into(), (*more).into(), 0i64.into()];
            row.extend([""; 3].map(SqlValue::from));
            row.extend([0i64, 0, now].map(SqlValue::from));
            row
        });
        let columns = ["site", "id", "have", "seen", "title", "place", "proof", "done", "opened_ms", "changed_ms"];
        self.tx.insert(
            "job",
            &columns,
            "ON CONFLICT (site, id) DO UPDATE SET have = job.have + excluded.have, changed_ms = excluded.changed_ms",
            &jobs.collect::<Vec<_>>(),
        )
    }

    /// What belongs to no site keeps its body beside the chain: any site may come to name it.
    fn keep_loose(&mut self, entries: &[FeedEntry]) -> Result<(), OfficeError> {
        let (mut rows, mut corrections) = (Vec::new(), Vec::new());
        for kept in entries.iter().filter(|k| k.target().is_none()) {
            self.loose.insert(kept.id);
            rows.push(vec![
                kept.id.into(),
                kept.device.into(),
                kept.seq.into(),
                self.now.into(),
                kept.body.clone().into(),
                kept.sig.into(),
            ]);
            if let Some(corrects) = kept.corrects {
                corrections.push(vec![corrects.into(), kept.id.into()]);
            }
        }
        let columns = ["id", "device", "seq", "came_ms", "body", "sig"];
        self.tx.insert("loose", &columns, "ON CONFLICT DO NOTHING", &rows)?;
        self.tx.insert("correction", &["corrects", "id"], "ON CONFLICT DO NOTHING", &corrections)
    }

    /// Asks once for all that `entries` name: what belongs to no site, what is in their feeds already, and what is not here yet.
    fn look_up(&mut self, entries: &[FeedEntry]) -> Result<(), OfficeError> {
        let mut named: BTreeMap<EntryId, BTreeSet<EntryId>> = BTreeMap::new();
        for kept in entries {
            let Some(site) = kept.target() else { continue };
            self.hold(site)?;
            let first = self.first_of(kept.device)?;
            named.entry(site).or_default().extend(kept.refers.iter().copied().chain(first));
        }
        let missed = self.find(&named)?;
        // Some of it is to be handed out, or is not here yet: asked again once nobody else is doing the same.
        let lacks = |(site, ids): (&EntryId, &BTreeSet<EntryId>)| {
            ids.iter().any(|id| self.loose.contains(id) && !self.inside.contains(&(*site, *id)))
        };
        if missed.is_empty() && !named.iter().any(lacks) {
            return Ok(());
        }
        self.meet()?;
        let missed = self.find(&named)?;
        self.tx.insert("missed", &["id", "site"], "ON CONFLICT DO NOTHING", &missed)
    }

    /// Looks up what is named: which of it belongs to no site, and which of that is in the feeds already. Returns what is not here.
    fn find(&mut self, named: &BTreeMap<EntryId, BTreeSet<EntryId>>) -> Result<Vec<Vec<SqlValue>>, OfficeError> {
        let all: BTreeSet<EntryId> = named.values().flatten().copied().collect();
        if all.is_empty() {
            return Ok(Vec::new());
        }
        let ids: Vec<[u8; 32]> = all.iter().map(|id| id.0).collect();
        let mut here: BTreeSet<EntryId> = BTreeSet::new();
        for row in self.tx.among("SELECT id, place FROM link WHERE id IN (@)", &[], &ids)? {
            let id = row.id(0)?;
            here.insert(id);
            if row.int(1)? == 1 {
                self.loose.insert(id);
            }
        }
        let mut missed = Vec::new();
        for (site, ids) in named {
            missed.extend(ids.difference(&here).map(|id| vec![(*id).into(), (*site).into()]));
            let loose: Vec<[u8; 32]> = ids.intersection(&self.loose).map(|id| id.0).collect();
            if loose.is_empty() {
                continue;
            }
            for row in self.tx.among("SELECT id FROM shared WHERE site = $1 AND id IN (@)", params![*site], &loose)? {
                self.inside.insert((*site, row.id(0)?));
            }
        }
        Ok(missed)
    }

    /// Waits until no other transaction hands out, or takes in, what belongs to no site: who names an entry and who brings it must not
    /// miss each other. Rare: a person is handed to a site once.
    fn meet(&mut self) -> Result<(), OfficeError> {
        if !self.met {
            self.tx.rows("SELECT value FROM office WHERE name = $1 FOR UPDATE", params!["meeting"])?;
            self.met = true;
        }
        Ok(())
    }

    /// The device's first entry, if it belongs to no site: what the device is called.
    fn first_of(&mut self, device: DeviceId) -> Result<Option<EntryId>, OfficeError> {
        if let Some(found) = self.first.get(&device) {
            return Ok(*found);
        }
        let rows = self.tx.rows("SELECT id, place FROM link WHERE device = $1 AND seq = 1", params![device])?;
        let found = match rows.first() {
            Some(row) if row.int(1)? == 1 => Some(row.id(0)?),
            _ => None,
        };
        self.first.insert(device, found);
        Ok(found)
    }

    /// Brings what `kept` names into the feed before it.
    fn introduce(&mut self, site: EntryId, kept: &FeedEntry) -> Result<(), OfficeError> {
        let first = self.first_of(kept.device)?;
        for id in first.iter().chain(&kept.refers) {
            self.ensure(site, *id)?;
        }
        Ok(())
    }

    /// Puts an entry that belongs to no site into a feed, after what it names itself and before what corrects it.
    fn ensure(&mut self, site: EntryId, id: EntryId) -> Result<(), OfficeError> {
        if !self.loose.contains(&id) || !self.inside.insert((site, id)) {
            return Ok(());
        }
        self.meet()?;
        let there = self.tx.rows("SELECT 1 FROM shared WHERE site = $1 AND id = $2", params![site, id])?;
        let rows = self.tx.rows("SELECT body, sig FROM loose WHERE id = $1", params![id])?;
        let (true, Some(row)) = (there.is_empty(), rows.first()) else { return Ok(()) };
        let body = row.bytes(0)?;
        if body.is_empty() {
            return Ok(()); // Erased: there is nothing left to hand out.
        }
        let entry = Entry::trusted(body, row.signature(1)?)
            .map_err(|e| OfficeError::broken(&format!("an entry in the database is damaged: {e}")))?;
        let kept = FeedEntry::of(&entry);
        for named in &kept.refers {
            self.know(*named)?;
            self.ensure(site, *named)?;
        }
        self.tx.run("INSERT INTO shared (id, site) VALUES ($1, $2)", params![id, site])?;
        self.append(site, &kept)?;
        for row in self.tx.rows("SELECT id FROM correction WHERE corrects = $1 ORDER BY id", params![id])? {
            let correction = row.id(0)?;
            self.know(correction)?;
            self.ensure(site, correction)?;
        }
        Ok(())
    }

    /// Whether an entry belongs to no site.
    fn know(&mut self, id: EntryId) -> Result<(), OfficeError> {
        if !self.loose.contains(&id) {
            let rows = self.tx.rows("SELECT place FROM link WHERE id = $1", params![id])?;
            if rows.first().map(|row| row.int(0)).transpose()? == Some(1) {
                self.loose.insert(id);
            }
        }
        Ok(())
    }

    /// An entry of no site goes where it was named before it came, and where what it corrects is.
    fn called_for(&mut self, kept: &FeedEntry) -> Result<(), OfficeError> {
        let mut sites: BTreeSet<EntryId> = BTreeSet::new();
        for row in self.tx.rows("SELECT site FROM missed WHERE id = $1", params![kept.id])? {
            sites.insert(row.id(0)?);
        }
        if !sites.is_empty() {
            self.tx.run("DELETE FROM missed WHERE id = $1", params![kept.id])?;
        }
        if let Some(corrects) = kept.corrects {
            for row in self.tx.rows("SELECT site FROM shared WHERE id = $1", params![corrects])? {
                sites.insert(row.id(0)?);
            }
        }
        for site in sites {
            self.ensure(site, kept.id)?;
        }
        Ok(())
    }

    /// Holds a site's row to the end of the transaction.
    fn hold(&mut self, id: EntryId) -> Result<&mut Site, OfficeError> {
        if !self.sites.contains_key(&id) {
            let rows = self.tx.rows("SELECT last, ms, count FROM site WHERE id = $1 FOR UPDATE", params![id])?;
            let row = rows.first().ok_or_else(|| OfficeError::broken("an entry of a site that is not there"))?;
            let clock = Hlc(row.int(1)?, u32::try_from(row.int(2)?).unwrap_or(u32::MAX));
            self.sites.insert(id, Site { last: row.int(0)?, clock });
        }
        self.sites.get_mut(&id).ok_or_else(|| OfficeError::broken("a site that was just held is not there"))
    }

    fn append(&mut self, site: EntryId, kept: &FeedEntry) -> Result<(), OfficeError> {
        let now = self.now;
        let row = self.hold(site)?;
        row.last += 1;
        row.clock = row.clock.max(kept.clock);
        let number = row.last;
        self.inside.insert((site, kept.id));
        self.rows.push(vec![
            site.into(),
            number.into(),
            kept.id.into(),
            kept.device.into(),
            kept.seq.into(),
            kept.job.into(),
            now.into(),
            kept.body.clone().into(),
            kept.sig.into(),
        ]);
        if let Some(job) = kept.job {
            *self.jobs.entry((site, job)).or_default() += 1;
        }
        if let Some(sha256) = kept.photo {
            self.photos.push(vec![sha256.into(), site.into(), kept.device.into()]);
        }
        self.roll(site, kept)
    }

    /// Goes on with the hash of this device's entries in this feed (see [`super::digest()`]).
    fn roll(&mut self, site: EntryId, kept: &FeedEntry) -> Result<(), OfficeError> {
        let key = (site, kept.device);
        if !self.rolled.contains_key(&key) {
            self.rolled.insert(key, Rolled::read(self.tx, site, kept.device)?);
        }
        if let Some(rolled) = self.rolled.get_mut(&key) {
            rolled.add(kept.seq, kept.id);
        }
        Ok(())
    }
}
