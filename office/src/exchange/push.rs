//! Taking in entries of one device's chain.

use std::collections::{BTreeMap, BTreeSet};

use axum::http::StatusCode;
use stillbar_core::journal::{DeviceId, Entry, EntryId, Fact};
use stillbar_protocol::{self as wire, Answered, Last, Pushed};

use super::answer::{Answer, ChainPlace, DeviceStanding, Ground, Offer, OfferShape, Time, Why, Writer, answer};
use super::feeds::Feeds;
use super::kept::FeedEntry;
use super::{AHEAD_MS, MAX_QUARANTINE, MAX_STRANGERS};
use crate::error::{Code, OfficeError};
use crate::params;
use crate::store::{SqlRow, SqlValue, Tx};

/// What a call brings: an entry whose length, encoding and signature hold, or the hash of something else.
#[derive(Debug, Clone)]
pub struct Offered {
    /// SHA-256 of the bytes.
    pub id: EntryId,
    /// The entry, if it is one.
    pub entry: Option<Entry>,
}

struct DeviceChain {
    enrolled: bool,
    withdrawn: bool,
    held: bool,
    last: Last,
}

/// The sites of a device: those that it was given, and those that are the same place as one of them.
pub fn sites_of(tx: &mut dyn Tx, device: DeviceId) -> Result<BTreeSet<EntryId>, OfficeError> {
    let sql = "SELECT id FROM site WHERE main IN (SELECT site FROM device_site WHERE device = $1)";
    tx.rows(sql, params![device])?.iter().map(|row| row.id(0)).collect()
}

/// Takes in `offered`, all of the chain of `of`, brought by `caller`, in one transaction.
pub fn push(
    tx: &mut dyn Tx,
    now: i64,
    caller: DeviceId,
    of: DeviceId,
    offered: &[Offered],
) -> Result<Pushed, OfficeError> {
    let mut chain = chain(tx, now, of)?;
    let known = known(tx, of, offered)?;
    let mut quarantined = quarantined(tx, of, offered)?;
    // Counted when the first one comes: a chain that goes on as it should costs nothing.
    let mut room: Option<u64> = None;
    let mut ours = sites_of(tx, of)?;
    let mut began: Vec<EntryId> = Vec::new();
    let mut here: BTreeMap<u64, EntryId> = BTreeMap::new();
    let (mut answers, mut accepted, mut aside, mut forks) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    let mut refused = false;

    for one in offered {
        let entry = one.entry.as_ref();
        let case = Offer {
            shape: if entry.is_some() { OfferShape::Entry } else { OfferShape::Foreign },
            writer: match entry {
                Some(e) if e.body.device != of => Writer::Other,
                _ if chain.enrolled => Writer::Named,
                _ => Writer::Stranger,
            },
            place: entry.map_or(ChainPlace::Gap, |e| place(e, &chain.last, &known, &here, &quarantined)),
            standing: match (chain.withdrawn, chain.held) {
                (true, _) => DeviceStanding::Withdrawn,
                (false, true) => DeviceStanding::Held,
                (false, false) => DeviceStanding::Trusted,
            },
            time: entry.map_or(Time::Near, |e| {
                let latest = e.body.wall.max(e.body.clock.0);
                if latest > now.saturating_add(AHEAD_MS) { Time::Ahead } else { Time::Near }
            }),
            ground: entry.map_or(Ground::None, |e| ground(e, &ours)),
        };
        let mut said = answer(&case);
        // The other branch of a fork is kept to its end; anything else after a refusal would leave a gap.
        if refused && !matches!(said, Answer::Refused(Why::Fork)) {
            said = Answer::Refused(Why::AfterARefusal);
        }
        if said == Answer::Refused(Why::Fork) && !quarantined.contains(&one.id) {
            let left = match room {
                Some(left) => left,
                None => MAX_QUARANTINE.saturating_sub(count_quarantine(tx, of)?),
            };
            room = Some(left.saturating_sub(1));
            if left == 0 {
                said = Answer::Refused(Why::QuarantineFull);
            } else if let Some(entry) = entry {
                quarantined.insert(one.id);
                forks.push(entry);
            }
        }
        match (said, entry) {
            (Answer::Accepted, Some(entry)) => {
                if matches!(entry.body.fact, Fact::SiteNoted { .. }) {
                    ours.insert(entry.id);
                    began.push(entry.id);
                }
                accepted.push(entry);
            }
            (Answer::Aside(why), Some(entry)) => {
                chain.held |= why == Why::Ahead;
                aside.push((entry, why));
            }
            (Answer::Refused(_), _) => refused = true,
            _ => {}
        }
        if let (Answer::Accepted | Answer::Aside(_), Some(entry)) = (said, entry) {
            chain.last = Last { seq: entry.body.seq, id: entry.id };
            here.insert(entry.body.seq, entry.id);
        }
        let reason = match said {
            Answer::Refused(why) | Answer::Aside(why) => Some(why),
            Answer::StillAside => known.get(&one.id).and_then(|k| k.reason),
            _ => None,
        };
        let answer = match said {
            Answer::Accepted => wire::Answer::Accepted,
            Answer::Duplicate => wire::Answer::Duplicate,
            Answer::Refused(_) => wire::Answer::Refused,
            Answer::Aside(_) | Answer::StillAside => wire::Answer::Aside,
        };
        answers.push(Answered { id: one.id, answer, reason });
    }

    keep_aside(tx, now, &aside)?;
    keep_forks(tx, now, &forks)?;
    let mut feeds = Feeds::new(tx, now);
    for site in &began {
        feeds.begin_site(*site, &accepted, &[caller, of])?;
    }
    feeds.take(&accepted.iter().map(|e| FeedEntry::of(e)).collect::<Vec<_>>(), true)?;
    feeds.finish()?;
    if !accepted.is_empty() || !aside.is_empty() {
        tx.run(
            "UPDATE device SET last_seq = $1, last_id = $2, held = $3 WHERE id = $4",
            params![seq(chain.last.seq)?, chain.last.id, chain.held, of],
        )?;
    }
    tx.run("UPDATE device SET heard_ms = $1 WHERE id = $2 AND heard_ms < $1", params![now, caller])?;
    // It has its token: whoever sends its enrolment once more is not it.
    tx.run("UPDATE code SET expires_ms = 0 WHERE used_by = $1 AND expires_ms > 0", params![caller])?;
    Ok(Pushed { answers, last: chain.last })
}

/// A number of a chain as the database keeps it; one that does not fit is never next in a chain.
fn seq(seq: u64) -> Result<i64, OfficeError> {
    i64::try_from(seq).map_err(|_| OfficeError::broken("a chain of more entries than can be counted"))
}

/// The device's row, held to the end of the transaction; made for a stranger whose entries are handed on.
fn chain(tx: &mut dyn Tx, now: i64, of: DeviceId) -> Result<DeviceChain, OfficeError> {
    let sql = "SELECT enrolled_ms, withdrawn_ms, held, last_seq, last_id FROM device WHERE id = $1 FOR UPDATE";
    let read = |row: &SqlRow| -> Result<DeviceChain, OfficeError> {
        Ok(DeviceChain {
            enrolled: row.maybe_int(0)?.is_some(),
            withdrawn: row.maybe_int(1)?.is_some(),
            held: row.yes(2)?,
            last: Last { seq: row.count(3)?, id: row.id(4)? },
        })
    };
    if let Some(row) = tx.rows(sql, params![of])?.first() {
        return read(row);
    }
    let strangers = tx.rows("SELECT count(*) FROM device WHERE enrolled_ms IS NULL", &[])?;
    if strangers.first().map_or(Ok(0), |row| row.count(0))? >= MAX_STRANGERS {
        let say =
            "More unknown devices are kept aside than the office looks after: release or enrol some of them first.";
        return Err(OfficeError::refused(StatusCode::CONFLICT, Code::TooManyStrangers, say));
    }
    tx.run(
        "INSERT INTO device (id, label, token, enrolled_ms, withdrawn_ms, held, last_seq, last_id, heard_ms) \
         VALUES ($1, $2, NULL, NULL, NULL, 0, 0, $3, $4) ON CONFLICT (id) DO NOTHING",
        params![of, "", EntryId::NONE, now],
    )?;
    let rows = tx.rows(sql, params![of])?;
    rows.first().map_or_else(|| Err(OfficeError::broken("a device that was just kept is not there")), read)
}

struct KnownEntry {
    seq: u64,
    aside: bool,
    reason: Option<Why>,
}

/// What of the chain is here already, among the numbers that are offered.
fn known(tx: &mut dyn Tx, of: DeviceId, offered: &[Offered]) -> Result<BTreeMap<EntryId, KnownEntry>, OfficeError> {
    let Some((low, high)) = span(offered) else { return Ok(BTreeMap::new()) };
    let sql = "SELECT link.id, link.seq, link.place, aside.reason FROM link LEFT JOIN aside ON aside.id = link.id \
               WHERE link.device = $1 AND link.seq BETWEEN $2 AND $3";
    let mut known = BTreeMap::new();
    for row in tx.rows(sql, params![of, low, high])? {
        let reason = row.maybe_text(3)?.map(|word| Why::named(&word)).filter(|why| *why != Why::Unknown);
        known.insert(row.id(0)?, KnownEntry { seq: row.count(1)?, aside: row.int(2)? == 2, reason });
    }
    Ok(known)
}

/// The lowest and highest number that is offered. Numbers that no chain can reach are left out.
fn span(offered: &[Offered]) -> Option<(i64, i64)> {
    let numbers = offered.iter().filter_map(|o| i64::try_from(o.entry.as_ref()?.body.seq).ok());
    numbers.fold(None, |span, n| match span {
        None => Some((n, n)),
        Some((low, high)) => Some((n.min(low), n.max(high))),
    })
}

/// Which of the offered entries, and of those that they name as the one before, are in quarantine.
fn quarantined(tx: &mut dyn Tx, of: DeviceId, offered: &[Offered]) -> Result<BTreeSet<EntryId>, OfficeError> {
    let ids = offered.iter().filter_map(|o| o.entry.as_ref()).flat_map(|e| [e.id.0, e.body.prev.0]);
    let ids: Vec<[u8; 32]> = ids.collect::<BTreeSet<_>>().into_iter().collect();
    let rows = tx.among("SELECT id FROM quarantine WHERE device = $1 AND id IN (@)", params![of], &ids)?;
    rows.iter().map(|row| row.id(0)).collect()
}

fn count_quarantine(tx: &mut dyn Tx, of: DeviceId) -> Result<u64, OfficeError> {
    let rows = tx.rows("SELECT count(*) FROM quarantine WHERE device = $1", params![of])?;
    rows.first().map_or(Ok(0), |row| row.count(0))
}

fn place(
    entry: &Entry,
    last: &Last,
    known: &BTreeMap<EntryId, KnownEntry>,
    here: &BTreeMap<u64, EntryId>,
    quarantined: &BTreeSet<EntryId>,
) -> ChainPlace {
    let at = entry.body.seq;
    if let Some(found) = known.get(&entry.id) {
        return if found.aside { ChainPlace::HereAside } else { ChainPlace::Here };
    }
    if here.get(&at) == Some(&entry.id) {
        return ChainPlace::Here;
    }
    if at == 0 {
        return ChainPlace::Gap;
    }
    if here.contains_key(&at) || known.values().any(|k| k.seq == at) {
        return ChainPlace::Fork;
    }
    if quarantined.contains(&entry.body.prev) {
        return ChainPlace::OnFork;
    }
    if at == last.seq + 1 {
        // The number is free, but what it follows is not what is here: the chain went another way before it.
        return if entry.body.prev == last.id { ChainPlace::Next } else { ChainPlace::Gap };
    }
    ChainPlace::Gap
}

fn ground(entry: &Entry, ours: &BTreeSet<EntryId>) -> Ground {
    match (&entry.body.fact, entry.body.site) {
        (Fact::SiteNoted { .. }, None) => Ground::Begins,
        (_, Some(site)) if ours.contains(&site) => Ground::Own,
        (_, Some(_)) => Ground::Foreign,
        // An entry of a job stands on a site; without one nobody could be given it.
        (_, None) if entry.job().is_some() => Ground::Foreign,
        (_, None) => Ground::None,
    }
}

fn keep_aside(tx: &mut dyn Tx, now: i64, aside: &[(&Entry, Why)]) -> Result<(), OfficeError> {
    let (mut links, mut rows, mut photos) = (Vec::new(), Vec::new(), Vec::new());
    for (entry, why) in aside {
        let (device, at) = (entry.body.device, seq(entry.body.seq)?);
        links.push(vec![device.into(), at.into(), entry.id.into(), 2i64.into()]);
        rows.push(vec![
            entry.id.into(),
            device.into(),
            at.into(),
            entry.body.site.into(),
            why.word().into(),
            now.into(),
            entry.bytes.clone().into(),
            entry.signature.into(),
        ]);
        if let Some(sha256) = super::kept::photo(entry) {
            photos.push(vec![sha256.into(), EntryId::NONE.into(), device.into()]);
        }
    }
    tx.insert("link", &["device", "seq", "id", "place"], "", &links)?;
    tx.insert("aside", &["id", "device", "seq", "site", "reason", "came_ms", "body", "sig"], "", &rows)?;
    tx.insert("photo_named", &["sha256", "site", "device"], "ON CONFLICT DO NOTHING", &distinct(photos))
}

fn keep_forks(tx: &mut dyn Tx, now: i64, forks: &[&Entry]) -> Result<(), OfficeError> {
    let mut rows = Vec::new();
    for entry in forks {
        rows.push(vec![
            entry.id.into(),
            entry.body.device.into(),
            seq(entry.body.seq)?.into(),
            Why::Fork.word().into(),
            now.into(),
            entry.bytes.clone().into(),
            entry.signature.into(),
        ]);
    }
    let columns = ["id", "device", "seq", "reason", "came_ms", "body", "sig"];
    tx.insert("quarantine", &columns, "ON CONFLICT DO NOTHING", &rows)
}

/// One statement may not meet the same row twice.
pub(super) fn distinct(mut rows: Vec<Vec<SqlValue>>) -> Vec<Vec<SqlValue>> {
    let mut seen: Vec<Vec<SqlValue>> = Vec::new();
    rows.retain(|row| {
        let new = !seen.contains(row);
        if new {
            seen.push(row.clone());
        }
        new
    });
    rows
}
