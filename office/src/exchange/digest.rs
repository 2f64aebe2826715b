//! Counts and rolling hashes, to compare at the end of an exchange.
//!
//! Of one device in one feed: the ids of its entries in the order of their numbers, h0 = 32 zero bytes, h = SHA-256(h || id).

use std::collections::BTreeMap;

use stillbar_core::journal::{DeviceId, EntryId};
use stillbar_protocol::{DeviceSum, Digest, SiteSum};

use super::push::sites_of;
use super::rolled::chained;
use crate::error::OfficeError;
use crate::params;
use crate::store::Tx;

/// The sums of all sites of `device`. Where an entry came in behind a later one the hash is worked out again, and kept.
pub fn digest(tx: &mut dyn Tx, device: DeviceId) -> Result<Digest, OfficeError> {
    let mut sites = Vec::new();
    for site in sites_of(tx, device)? {
        let sql = "SELECT device, count, last_seq, hash, stale FROM rolled WHERE site = $1 ORDER BY device";
        let mut devices = BTreeMap::new();
        for row in tx.rows(sql, params![site])? {
            let device = row.device(0)?;
            let hash = if row.yes(4)? { again(tx, site, device)? } else { row.hash(3)? };
            let sum = DeviceSum { device, count: row.count(1)?, last_seq: row.count(2)?, hash: EntryId(hash) };
            devices.insert(device, sum);
        }
        sites.push(SiteSum { site, devices: devices.into_values().collect() });
    }
    Ok(Digest { sites })
}

fn again(tx: &mut dyn Tx, site: EntryId, device: DeviceId) -> Result<[u8; 32], OfficeError> {
    let sql = "SELECT id FROM feed WHERE site = $1 AND device = $2 ORDER BY seq";
    tx.rows(sql, params![site, device])?.iter().try_fold([0; 32], |hash, row| Ok(chained(&hash, row.id(0)?)))
}
