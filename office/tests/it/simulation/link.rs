//! The air between phones and the office, and the office: calls that are lost on the way there or back, doubled, or late.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, MutexGuard};

use serde_json::Value;
use stillbar_core::journal::{DeviceId, DeviceKey, EntryId};
use stillbar_core::sync::{Call, HeardAnswer, OfficeLink};
use stillbar_office::params;
use tempfile::TempDir;

use super::{Caller, Chance};
use crate::rig::Rig;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weather {
    Fine,
    Bad,
    Down,
}

/// Calls that are kept to arrive later, at most.
const MAX_LATE: usize = 20;

/// See the module.
pub struct Air {
    rig: Mutex<Option<Rig>>,
    weather: Mutex<(Weather, Chance)>,
    late: Mutex<Vec<Call>>,
    /// Entries that the office said it has, as a phone heard it.
    told: Mutex<BTreeSet<EntryId>>,
    /// How often the office was started.
    lives: AtomicU64,
}

/// The air as one phone has it.
pub struct Reach(pub Arc<Air>);

fn held<T>(what: &Mutex<T>) -> MutexGuard<'_, T> {
    what.lock().unwrap_or_else(|poisoned| poisoned.into_inner())
}

impl OfficeLink for Reach {
    fn call(&self, call: &Call) -> Result<HeardAnswer, String> {
        let lot = {
            let mut weather = held(&self.0.weather);
            match weather.0 {
                Weather::Fine => 99,
                Weather::Down => return Err("no signal".into()),
                Weather::Bad => weather.1.of(20),
            }
        };
        match lot {
            0 | 1 => return Err("lost on the way there".into()),
            2 => {
                let mut late = held(&self.0.late);
                if late.len() < MAX_LATE {
                    late.push(call.clone());
                }
                return Err("late".into());
            }
            3 => {
                self.0.carry(call);
                held(&self.0.late).push(call.clone());
            }
            4 => drop(self.0.carry(call)),
            _ => {}
        }
        let heard = self.0.carry(call);
        if lot == 5 || lot == 6 {
            return Err("lost on the way back".into());
        }
        if call.path.starts_with("/entries") && call.method == "POST" && heard.status == 200 {
            let said: Value = serde_json::from_slice(&heard.body).expect("JSON");
            let taken = said["answers"].as_array().expect("a list").iter().filter(|a| a["answer"] != "refused");
            held(&self.0.told)
                .extend(taken.map(|a| -> EntryId { a["id"].as_str().expect("text").parse().expect("an id") }));
        }
        Ok(heard)
    }
}

impl Air {
    pub fn new(rig: Rig) -> Air {
        let weather = Mutex::new((Weather::Fine, Chance(0)));
        Air {
            rig: Mutex::new(Some(rig)),
            weather,
            late: Mutex::default(),
            told: Mutex::default(),
            lives: AtomicU64::new(2),
        }
    }

    fn with<T>(&self, look: impl FnOnce(&Rig) -> T) -> T {
        look(held(&self.rig).as_ref().expect("there is an office"))
    }

    fn carry(&self, call: &Call) -> HeardAnswer {
        let headers: Vec<(&str, &str)> = call.headers.iter().map(|(n, v)| (*n, v.as_str())).collect();
        let answer = self.with(|rig| rig.ask(call.method, &call.path, &headers, call.body.clone()));
        assert!(answer.status.as_u16() < 500, "a fault at the office: {}", answer.text());
        let headers = answer.headers.iter().map(|(n, v)| (n.to_string(), v.to_str().unwrap_or_default().to_owned()));
        HeardAnswer { status: answer.status.as_u16(), headers: headers.collect(), body: answer.bytes }
    }

    pub fn turn(&self, weather: Weather, seed: u64) {
        *held(&self.weather) = (weather, Chance(seed));
    }

    /// Everything that was late arrives, the last first; nobody waits for the answers any more.
    pub fn late(&self) {
        let calls = std::mem::take(&mut *held(&self.late));
        calls.iter().rev().for_each(|call| drop(self.carry(call)));
    }

    /// The office ends and starts again on the same folder.
    pub fn restart(&self) {
        let mut rig = held(&self.rig);
        let before = rig.take().expect("there is an office");
        let now = before.now();
        let after = Rig::again(closed(before), None, life(self.lives.fetch_add(1, Ordering::Relaxed)));
        after.clock.store(now, Ordering::Relaxed);
        *rig = Some(after);
    }

    pub fn into_folder(self) -> TempDir {
        closed(held(&self.rig).take().expect("there is an office"))
    }

    pub fn now(&self) -> i64 {
        self.with(Rig::now)
    }

    pub fn set(&self, now: i64) {
        self.with(|rig| rig.clock.store(now, Ordering::Relaxed));
    }

    pub fn pass(&self, ms: i64) {
        self.with(|rig| rig.wait(ms));
    }

    /// A token for a phone.
    pub fn enrol(&self, key: DeviceKey, sites: &[EntryId]) -> String {
        self.with(|rig| {
            let mut caller = Caller::of(key);
            caller.enrol(rig, &rig.code(sites)).is(201);
            caller.token
        })
    }

    /// A person at the office withdraws a phone, or takes it in again.
    pub fn standing(&self, device: DeviceId, withdrawn: bool) {
        let sql = "UPDATE device SET withdrawn_ms = $1 WHERE id = $2";
        let since = withdrawn.then(|| self.now());
        self.with(|rig| rig.office.change(|tx| tx.run(sql, params![since, device])).expect("it is noted"));
    }

    /// A person at the office lets in what is held of a phone.
    pub fn release(&self, device: DeviceId) {
        self.with(|rig| {
            let now = rig.now();
            rig.office.change(|tx| stillbar_office::exchange::release(tx, now, device)).expect("released");
        });
    }

    /// The chains that the office has; each is checked to have no gap.
    pub fn links(&self) -> BTreeMap<DeviceId, Vec<EntryId>> {
        let sql = "SELECT device, seq, id FROM link ORDER BY device, seq";
        let rows = self.with(|rig| rig.office.read(|tx| tx.rows(sql, &[])).expect("it reads"));
        let mut chains: BTreeMap<DeviceId, Vec<EntryId>> = BTreeMap::new();
        for row in rows {
            let chain = chains.entry(row.device(0).expect("a device")).or_default();
            chain.push(row.id(2).expect("an id"));
            assert_eq!(row.int(1).expect("a number"), chain.len() as i64, "a gap in a chain at the office");
        }
        chains
    }

    pub fn told(&self) -> MutexGuard<'_, BTreeSet<EntryId>> {
        held(&self.told)
    }
}

/// Where an office begins to draw in its nth life.
pub fn life(nth: u64) -> u64 {
    1 + nth * 1_000_000
}

/// Ends an office and keeps its folder.
fn closed(rig: Rig) -> TempDir {
    let Rig { office, router, runtime, folder, .. } = rig;
    drop((router, office, runtime));
    folder
}
