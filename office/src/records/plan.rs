//! What the office writes itself: sites, and jobs that are planned here. They reach the phones by the feed, signed with the office's key.

use axum::http::StatusCode;
use stillbar_core::journal::{Body, Clock, Entry, EntryId, Fact, Hlc, VERSION};
use stillbar_core::point::PointKind;
use stillbar_core::prove::judge::energised::Tolerance;
use stillbar_core::prove::{Earthing, Order, RuleSet, System};

use super::world;
use crate::error::{Code, OfficeError};
use crate::exchange::{FeedEntry, Feeds};
use crate::office::Office;
use crate::people::Account;
use crate::store::Tx;
use crate::{audit, params};

/// A job that is planned.
#[derive(Debug, Clone)]
pub struct NewJob {
    /// What the job is.
    pub title: String,
    /// Where on the site.
    pub place: String,
    /// What is isolated.
    pub equipment: String,
    /// What will be worked on.
    pub scope: String,
    /// By whose rules it is done, if somebody named them.
    pub rules: Option<RuleSet>,
    /// The conductors.
    pub system: System,
    /// The earthing arrangement.
    pub earthing: Earthing,
    /// The order of the dead test.
    pub order: Order,
    /// Line to neutral (three-wire: line to line), millivolts.
    pub nominal_millivolts: u32,
    /// Points of isolation.
    pub points: Vec<NewPoint>,
}

/// A point of isolation that is planned.
#[derive(Debug, Clone)]
pub struct NewPoint {
    /// Its name on the device.
    pub label: String,
    /// Where it is.
    pub at: String,
    /// What it is.
    pub kind: PointKind,
    /// Whether it takes a lock.
    pub lockable: bool,
    /// The conductors that it opens, as the planner says: nothing is assumed.
    pub poles: Vec<String>,
}

/// The office's chain while it grows.
pub(super) struct OfficeChain {
    seq: u64,
    prev: EntryId,
    clock: Clock,
    /// The last entry of the job that is planned.
    after: Option<EntryId>,
}

fn chain(office: &Office, tx: &mut dyn Tx) -> Result<OfficeChain, OfficeError> {
    let sql = "SELECT last_seq, last_id FROM device WHERE id = $1 FOR UPDATE";
    let rows = tx.rows(sql, params![office.key.device()])?;
    let row = rows.first().ok_or_else(|| OfficeError::broken("the office is not a device of its own"))?;
    let (seq, prev) = (row.count(0)?, row.id(1)?);
    let last = tx.rows("SELECT value FROM office WHERE name = $1", params!["clock"])?;
    let last = last.first().map_or(Ok(String::new()), |row| row.text(0))?;
    let last = last.split_once(' ').and_then(|(ms, count)| Some(Hlc(ms.parse().ok()?, count.parse().ok()?)));
    Ok(OfficeChain { seq, prev, clock: Clock::resume(last.unwrap_or_default()), after: None })
}

/// The chain, after all that the site's feed holds: nothing written here seems older than what it is written upon.
pub(super) fn chain_on(office: &Office, tx: &mut dyn Tx, site: EntryId) -> Result<OfficeChain, OfficeError> {
    let mut chain = chain(office, tx)?;
    let rows = tx.rows("SELECT ms, count FROM site WHERE id = $1 FOR UPDATE", params![site])?;
    let row = rows.first().ok_or_else(|| OfficeError::nothing("There is no such site here."))?;
    chain.clock.receive(Hlc(row.int(0)?, u32::try_from(row.int(1)?).unwrap_or(u32::MAX)), office.now());
    Ok(chain)
}

/// The next entry of the office's own.
pub(super) fn write(
    office: &Office,
    chain: &mut OfficeChain,
    site: Option<EntryId>,
    job: Option<EntryId>,
    by: Option<EntryId>,
    fact: Fact,
) -> Result<Entry, OfficeError> {
    let wall = office.now();
    chain.seq += 1;
    let body = Body {
        version: VERSION,
        device: office.key.device(),
        seq: chain.seq,
        clock: chain.clock.tick(wall),
        wall,
        running: None,
        zone: 0,
        prev: chain.prev,
        after: chain.after.filter(|_| job.is_some()),
        site,
        job,
        by,
        signed_on: None,
        practice: false,
        seen: Vec::new(),
        fact,
    };
    let too_long =
        |e| OfficeError::refused(StatusCode::BAD_REQUEST, Code::TooLong, format!("This does not fit an entry: {e}."));
    // No bytes where there is no chance: then nothing is sealed.
    let random = |count: u32| {
        let mut bytes = vec![0; count as usize];
        (office.lent.random)(&mut bytes).map_or(Vec::new(), |()| bytes)
    };
    let entry = Entry::seal(body, &office.key, &random).map_err(too_long)?;
    chain.prev = entry.id;
    chain.after = entry.job().map(|_| entry.id);
    Ok(entry)
}

/// Puts what the office wrote into its chain and the feeds.
pub(super) fn keep(
    office: &Office,
    tx: &mut dyn Tx,
    chain: &OfficeChain,
    entries: &[Entry],
) -> Result<(), OfficeError> {
    let now = office.now();
    let all: Vec<&Entry> = entries.iter().collect();
    let begun = entries.iter().filter(|e| matches!(e.body.fact, Fact::SiteNoted { .. })).map(|e| e.id);
    let mut feeds = Feeds::new(tx, now);
    for site in begun {
        feeds.begin_site(site, &all, &[])?;
    }
    feeds.take(&all.iter().map(|e| FeedEntry::of(e)).collect::<Vec<_>>(), true)?;
    feeds.finish()?;
    let seq = i64::try_from(chain.seq).map_err(|_| OfficeError::broken("the office's chain is too long"))?;
    tx.run(
        "UPDATE device SET last_seq = $1, last_id = $2, heard_ms = $3 WHERE id = $4",
        params![seq, chain.prev, now, office.key.device()],
    )?;
    let last = chain.clock.last();
    tx.run(
        "INSERT INTO office (name, value) VALUES ($1, $2) ON CONFLICT (name) DO UPDATE SET value = excluded.value",
        params!["clock", format!("{} {}", last.0, last.1)],
    )?;
    Ok(())
}

/// The person of the journal who is this person of the office; noted now if they are not there yet.
pub(super) fn noted(
    office: &Office,
    tx: &mut dyn Tx,
    chain: &mut OfficeChain,
    person: &Account,
    into: &mut Vec<Entry>,
) -> Result<EntryId, OfficeError> {
    let rows = tx.rows("SELECT entry FROM person WHERE id = $1 FOR UPDATE", params![person.id.as_str()])?;
    if let Some(entry) = rows.first().map(|row| row.maybe_id(0)).transpose()?.flatten() {
        return Ok(entry);
    }
    let fact = Fact::PersonNoted {
        name: person.name.clone(),
        qualification: format!("{} at the office", person.role.word()),
        telephone: String::new(),
        corrects: None,
    };
    let entry = write(office, chain, None, None, None, fact)?;
    let id = entry.id;
    into.push(entry);
    tx.run("UPDATE person SET entry = $1 WHERE id = $2", params![id, person.id.as_str()])?;
    Ok(id)
}

/// Notes a site.
pub fn plan_site(office: &Office, person: &Account, name: &str, origin: &str) -> Result<EntryId, OfficeError> {
    let name = name.trim();
    if name.is_empty() || name.chars().count() > 120 {
        return Err(OfficeError::unreadable("A site has a name of at most 120 characters."));
    }
    office.change(|tx| {
        let mut chain = chain(office, tx)?;
        let mut entries = Vec::new();
        let by = noted(office, tx, &mut chain, person, &mut entries)?;
        let site = write(office, &mut chain, None, None, Some(by), Fact::SiteNoted { name: name.into() })?;
        let id = site.id;
        entries.push(site);
        keep(office, tx, &chain, &entries)?;
        tx.run("UPDATE site SET taken = 1 WHERE id = $1", params![id])?;
        audit::note(tx, office.now(), &person.login, "site added", name, origin)?;
        Ok(id)
    })
}

/// Opens a job on a site, with its points of isolation.
pub fn plan_job(
    office: &Office,
    person: &Account,
    site: EntryId,
    new: &NewJob,
    origin: &str,
) -> Result<EntryId, OfficeError> {
    for (text, what) in [
        (&new.title, "what the job is"),
        (&new.place, "where on the site it is"),
        (&new.equipment, "what is isolated"),
        (&new.scope, "what will be worked on"),
    ] {
        if text.is_empty() || text.chars().count() > 600 {
            return Err(OfficeError::unreadable(format!("Write {what}, in at most 600 characters.")));
        }
    }
    office.change(|tx| {
        let mut chain = chain_on(office, tx, site)?;
        let mut entries = Vec::new();
        let by = noted(office, tx, &mut chain, person, &mut entries)?;
        let held = world(tx, site)?.company.remove(&site);
        let limit = held.as_ref().and_then(|held| held.opens_with(None, new.rules, new.system, new.nominal_millivolts));
        let fact = Fact::JobOpened {
            title: new.title.clone(),
            place: new.place.clone(),
            equipment: new.equipment.clone(),
            scope: new.scope.clone(),
            system: new.system,
            earthing: new.earthing,
            order: new.order,
            nominal_millivolts: new.nominal_millivolts,
            own: Vec::new(),
            rules: new.rules,
            limit,
            tolerance: new.rules.map_or_else(Tolerance::default, |rules| rules.figures().tolerance),
            company: held.map(|held| Box::new((*held.rules).clone())),
        };
        let opened = write(office, &mut chain, Some(site), None, Some(by), fact)?;
        let job = opened.id;
        entries.push(opened);
        for point in &new.points {
            let fact = Fact::PointAdded {
                label: point.label.clone(),
                at: point.at.clone(),
                kind: point.kind,
                lockable: point.lockable,
                poles: point.poles.clone(),
                cuts: None,
                switch: None,
                stays_open: false,
                same_as: None,
            };
            entries.push(write(office, &mut chain, Some(site), Some(job), Some(by), fact)?);
        }
        keep(office, tx, &chain, &entries)?;
        audit::note(tx, office.now(), &person.login, "job planned", &new.title, origin)?;
        Ok(job)
    })
}
