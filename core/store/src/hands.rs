//! Who has had this device in hand, and their PINs: of this device alone, in no record, no exchange and no rescue.

use std::collections::BTreeMap;

use rusqlite::params;

use super::{Store, StoreError};
use stillbar_journal::{EntryId, Running};

/// A moment by this device's own clocks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tick {
    /// Its running clock, if it has one.
    pub running: Option<Running>,
    /// Its wall clock.
    pub wall: i64,
}

impl Tick {
    /// Milliseconds from here to `now`; `None` where a clock went back.
    pub fn until(&self, now: &Tick) -> Option<i64> {
        let ms = match (self.running, now.running) {
            (Some(a), Some(b)) if a.start == b.start => i64::try_from(b.ms.checked_sub(a.ms)?).unwrap_or(i64::MAX),
            _ => now.wall.saturating_sub(self.wall),
        };
        (ms >= 0).then_some(ms)
    }
}

/// Somebody who has had this device in hand.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Hand {
    /// argon2id in the PHC format, if they have a PIN.
    pub hash: Option<String>,
    /// Wrong tries since the last right one, and when the last was.
    pub wrong: u32,
    /// When the last wrong try was.
    pub tried: Option<Tick>,
    /// When their PIN was set anew, and who was the witness.
    pub anew: Option<(i64, String)>,
}

impl Store {
    /// Everybody who has had this device in hand.
    pub fn hands(&self) -> Result<BTreeMap<EntryId, Hand>, StoreError> {
        let sql = "SELECT person, hash, wrong, wall, start, ms, anew_ms, witness FROM pin LIMIT 1000";
        let mut query = self.db.prepare_cached(sql)?;
        let rows = query.query_map([], |row| {
            let (start, ms): (Option<u64>, Option<u64>) = (row.get(4)?, row.get(5)?);
            let running = start.zip(ms).map(|(start, ms)| Running { start, ms });
            let tried = row.get::<_, Option<i64>>(3)?.map(|wall| Tick { running, wall });
            let anew = row.get::<_, Option<i64>>(6)?.zip(row.get(7)?);
            Ok((EntryId(row.get(0)?), Hand { hash: row.get(1)?, wrong: row.get(2)?, tried, anew }))
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Keeps what is known of one of them.
    pub fn keep_hand(&self, person: EntryId, hand: &Hand) -> Result<(), StoreError> {
        let sql = "INSERT OR REPLACE INTO pin VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
        // What SQLite's whole numbers do not hold is no clock of this device: the wall clock counts then.
        let running = hand
            .tried
            .and_then(|t| t.running)
            .and_then(|r| Some((i64::try_from(r.start).ok()?, i64::try_from(r.ms).ok()?)));
        self.db.prepare_cached(sql)?.execute(params![
            person.0,
            hand.hash,
            hand.wrong,
            hand.tried.map(|t| t.wall),
            running.map(|r| r.0),
            running.map(|r| r.1),
            hand.anew.as_ref().map(|a| a.0),
            hand.anew.as_ref().map(|a| &a.1),
        ])?;
        Ok(())
    }
}
