//! What a device's sites have, page by page.

use std::collections::BTreeMap;

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use stillbar_core::journal::{DeviceId, EntryId};
use stillbar_protocol::{Erased, Page, WireEntry};

use super::push::sites_of;
use super::{MAX_ENTRIES, PAGE_BYTES};
use crate::error::OfficeError;
use crate::params;
use crate::store::Tx;

/// How far a reader is, site by site. On the wire a text that only the office reads: per site 32 bytes of its id and 8 of a number.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Cursor(pub BTreeMap<EntryId, u64>);

/// Bytes of one site in a cursor.
const STEP: usize = 40;
/// Sites in a cursor at most.
const MAX_SITES: usize = 500;

impl Cursor {
    /// From the wire; an empty text is the beginning.
    pub fn read(text: &str) -> Result<Cursor, OfficeError> {
        let bad = || {
            OfficeError::unreadable("`after` is not a cursor of this office: leave it out to begin from the beginning.")
        };
        let bytes = URL_SAFE_NO_PAD.decode(text).map_err(|_| bad())?;
        if bytes.len() % STEP != 0 || bytes.len() > STEP * MAX_SITES {
            return Err(bad());
        }
        let step = |step: &[u8]| {
            let (site, number) = step.split_at(32);
            let number = u64::from_be_bytes(number.try_into().ok()?);
            Some((EntryId(site.try_into().ok()?), i64::try_from(number).ok()?.unsigned_abs()))
        };
        bytes.chunks(STEP).map(step).collect::<Option<_>>().map(Cursor).ok_or_else(bad)
    }

    /// For the wire.
    pub fn text(&self) -> String {
        let bytes = self.0.iter().flat_map(|(site, number)| site.0.into_iter().chain(number.to_be_bytes()));
        URL_SAFE_NO_PAD.encode(bytes.collect::<Vec<u8>>())
    }
}

/// The page after `after`, for a device. `own`: with the device's own entries, for one that lost its data.
pub fn pull(tx: &mut dyn Tx, device: DeviceId, own: bool, after: &Cursor, limit: usize) -> Result<Page, OfficeError> {
    let limit = limit.clamp(1, MAX_ENTRIES);
    let sites = sites_of(tx, device)?;
    // Sites that the device no longer has lose their place: it begins again if it gets one back.
    let mut next = Cursor(after.0.iter().filter(|(site, _)| sites.contains(site)).map(|(s, n)| (*s, *n)).collect());
    let (mut entries, mut erased, mut bytes, mut more) = (Vec::new(), Vec::new(), 0, false);
    for site in sites {
        let from = next.0.get(&site).copied().unwrap_or(0);
        let last = tx.rows("SELECT last FROM site WHERE id = $1", params![site])?;
        let last = last.first().map_or(Ok(0), |row| row.count(0))?;
        if from >= last {
            continue;
        }
        let room = limit.saturating_sub(entries.len() + erased.len());
        if room == 0 || bytes >= PAGE_BYTES {
            more = true;
            break;
        }
        let sql = "SELECT number, id, device, seq, body, sig FROM feed WHERE site = $1 AND number > $2 AND number <= $3 \
                   AND (device <> $4 OR $5 = 1) ORDER BY number LIMIT $6";
        let found = tx.rows(sql, params![site, from as i64, last as i64, device, i64::from(own), room])?;
        let whole = found.len() < room;
        let mut at = from;
        let mut cut = false;
        for row in &found {
            let body = row.bytes(4)?;
            if !entries.is_empty() && bytes + body.len() > PAGE_BYTES {
                cut = true;
                break;
            }
            at = row.count(0)?;
            bytes += body.len();
            if body.is_empty() {
                erased.push(Erased { id: row.id(1)?, device: row.device(2)?, seq: row.count(3)?, site: Some(site) });
            } else {
                entries.push(WireEntry::from_bytes(&body, &row.signature(5)?));
            }
        }
        if whole && !cut {
            at = last;
        }
        next.0.insert(site, at);
        if at < last {
            more = true;
            break;
        }
    }
    Ok(Page { entries, erased, next: next.text(), more })
}
