//! The rolling hash of one device's entries in one feed, kept while entries come in.

use std::collections::BTreeMap;

use sha2::{Digest, Sha256};
use stillbar_core::journal::{DeviceId, EntryId};

use crate::error::OfficeError;
use crate::params;
use crate::store::Tx;

pub(super) struct Rolled {
    count: i64,
    last_seq: i64,
    hash: [u8; 32],
    stale: bool,
}

impl Rolled {
    pub(super) fn read(tx: &mut dyn Tx, site: EntryId, device: DeviceId) -> Result<Rolled, OfficeError> {
        let sql = "SELECT count, last_seq, hash, stale FROM rolled WHERE site = $1 AND device = $2";
        let found = tx.rows(sql, params![site, device])?;
        let Some(row) = found.first() else {
            return Ok(Rolled { count: 0, last_seq: 0, hash: [0; 32], stale: false });
        };
        Ok(Rolled { count: row.int(0)?, last_seq: row.int(1)?, hash: row.hash(2)?, stale: row.yes(3)? })
    }

    /// One more entry. One that comes in behind a later one leaves the hash to be worked out again when it is asked for.
    pub(super) fn add(&mut self, seq: i64, id: EntryId) {
        self.count += 1;
        if seq > self.last_seq {
            self.last_seq = seq;
            self.hash = chained(&self.hash, id);
        } else {
            self.stale = true;
        }
    }

    pub(super) fn write(tx: &mut dyn Tx, all: &BTreeMap<(EntryId, DeviceId), Rolled>) -> Result<(), OfficeError> {
        let rows = all.iter().map(|((site, device), r)| {
            let sums = [r.count, r.last_seq].map(Into::into);
            let mut row = vec![(*site).into(), (*device).into()];
            row.extend(sums);
            row.extend([r.hash.into(), r.stale.into()]);
            row
        });
        tx.insert(
            "rolled",
            &["site", "device", "count", "last_seq", "hash", "stale"],
            "ON CONFLICT (site, device) DO UPDATE SET count = excluded.count, last_seq = excluded.last_seq, \
             hash = excluded.hash, stale = excluded.stale",
            &rows.collect::<Vec<_>>(),
        )
    }
}

/// One step of the rolling hash: SHA-256 over the hash so far and the next id.
pub(super) fn chained(hash: &[u8; 32], id: EntryId) -> [u8; 32] {
    Sha256::new().chain_update(hash).chain_update(id.0).finalize().into()
}
