//! What is known somewhere, who knew of what when they wrote, and how long ago something was: all that the promises are told by.
//!
//! Who knew of what follows from the entries alone: a device knew its own earlier entries, those that it said it had (`seen`), and those
//! that it named. Nothing here orders two entries by their clocks where a promise turns on it.

use std::collections::{BTreeMap, HashMap};

use stillbar_core::journal::fact::InstrumentKind;
use stillbar_core::journal::{DeviceId, Entry, EntryId, Fact, Running};

use super::alike::alike;

pub const MINUTE: i64 = 60_000;
pub const HOUR: i64 = 60 * MINUTE;

/// Where and when the question is asked.
#[derive(Clone, Copy)]
pub struct Moment<'a> {
    pub device: DeviceId,
    pub wall: i64,
    pub running: Option<Running>,
    /// The folder was put back, what was written since is not here, and nobody has gone on under a new key.
    pub forgotten: bool,
    /// How long ago an entry came to this phone, by the clock on the wall of the test: more than any phone knows.
    pub since: &'a dyn Fn(EntryId) -> i64,
}

/// Entries that exist somewhere.
pub struct Known<'a> {
    /// In the order of the journal.
    pub entries: Vec<&'a Entry>,
    /// Kept aside, wherever the question is asked.
    pub aside: Vec<&'a Entry>,
    at: HashMap<EntryId, usize>,
    /// What the device of each entry had of other devices in the entry's job: number of the last.
    heard: Vec<BTreeMap<DeviceId, u64>>,
    /// The first entry of a device, by number, that names an entry.
    named: HashMap<(DeviceId, EntryId), u64>,
    /// Entries whose wall clock was ahead, by more than five minutes, of another device's that already had them.
    ahead: Vec<usize>,
    withdrawn: HashMap<EntryId, usize>,
}

/// A place on a device's clocks.
#[derive(Clone, Copy)]
pub struct Tick {
    pub device: DeviceId,
    pub wall: i64,
    pub running: Option<Running>,
    /// The entry, if it is one, and not the moment of the question.
    entry: Option<EntryId>,
}

impl<'a> Known<'a> {
    pub fn new(entries: &'a [Entry], aside: &'a [Entry]) -> Known<'a> {
        let mut entries: Vec<&Entry> = entries.iter().collect();
        entries.sort_by_key(|e| e.order());
        let at: HashMap<EntryId, usize> = entries.iter().enumerate().map(|(n, e)| (e.id, n)).collect();
        let mut known = Known {
            heard: vec![BTreeMap::new(); entries.len()],
            aside: aside.iter().collect(),
            entries,
            at,
            named: HashMap::new(),
            ahead: Vec::new(),
            withdrawn: HashMap::new(),
        };
        known.hear();
        known
    }

    fn hear(&mut self) {
        let mut chains: BTreeMap<DeviceId, Vec<usize>> = BTreeMap::new();
        for (n, e) in self.entries.iter().enumerate() {
            chains.entry(e.body.device).or_default().push(n);
            if let Fact::Withdrawn { entry, .. } = e.body.fact {
                self.withdrawn.entry(entry).or_insert(n);
            }
        }
        let mut by_number: HashMap<(DeviceId, EntryId), Vec<usize>> = HashMap::new();
        for chain in chains.values_mut() {
            chain.sort_by_key(|n| self.entries[*n].body.seq);
            for n in chain.iter() {
                if let Some(job) = self.entries[*n].job() {
                    by_number.entry((self.entries[*n].body.device, job)).or_default().push(*n);
                }
            }
        }
        for chain in chains.values() {
            let mut told: HashMap<EntryId, BTreeMap<DeviceId, u64>> = HashMap::new();
            for n in chain {
                let e = self.entries[*n];
                for id in e.refers() {
                    self.named.entry((e.body.device, id)).or_insert(e.body.seq);
                }
                let Some(job) = e.job() else { continue };
                let told = told.entry(job).or_default();
                for seen in &e.body.seen {
                    let before = told.insert(seen.0, seen.1).unwrap_or(0);
                    let new = by_number.get(&(seen.0, job)).into_iter().flatten();
                    for other in new {
                        let body = &self.entries[*other].body;
                        if body.seq > before && body.seq <= seen.1 && body.wall > e.body.wall + 5 * MINUTE {
                            self.ahead.push(*other);
                        }
                    }
                }
                self.heard[*n] = told.clone();
            }
        }
    }

    pub fn get(&self, id: EntryId) -> Option<&'a Entry> {
        self.at.get(&id).map(|n| self.entries[*n])
    }

    /// Of a job, in the order of the journal.
    pub fn of(&self, job: EntryId) -> impl Iterator<Item = &'a Entry> + '_ {
        self.entries.iter().copied().filter(move |e| e.job() == Some(job))
    }

    /// Of a site, whatever its job.
    pub fn at_site(&self, site: Option<EntryId>) -> impl Iterator<Item = &'a Entry> + '_ {
        self.entries.iter().copied().filter(move |e| site.is_some() && e.body.site == site)
    }

    pub fn site_of(&self, job: EntryId) -> Option<EntryId> {
        self.get(job).and_then(|e| e.body.site)
    }

    /// Who wrote `later` had `earlier`.
    pub fn knew(&self, later: &Entry, earlier: &Entry) -> bool {
        let (l, e) = (&later.body, &earlier.body);
        if l.device == e.device {
            return e.seq < l.seq;
        }
        let heard = self.at.get(&later.id).map(|n| &self.heard[*n]);
        (later.job().is_some()
            && later.job() == earlier.job()
            && heard.and_then(|h| h.get(&e.device)).is_some_and(|last| *last >= e.seq))
            || self.named.get(&(l.device, earlier.id)).is_some_and(|first| *first <= l.seq)
    }

    /// Somebody said that it was a mistake.
    pub fn is_withdrawn(&self, id: EntryId) -> bool {
        self.withdrawn.contains_key(&id)
    }

    pub fn withdrawal(&self, id: EntryId) -> Option<&'a Entry> {
        self.withdrawn.get(&id).map(|n| self.entries[*n])
    }

    /// The person behind a correction.
    pub fn person(&self, mut id: EntryId) -> EntryId {
        for _ in 0..20 {
            match self.get(id).map(|e| &e.body.fact) {
                Some(Fact::PersonNoted { corrects: Some(before), .. }) => id = *before,
                _ => break,
            }
        }
        id
    }

    pub fn instrument(&self, id: EntryId) -> Option<(InstrumentKind, &'a str, &'a str)> {
        match &self.get(id)?.body.fact {
            Fact::InstrumentNoted { kind, name, serial, .. } => Some((*kind, name, serial)),
            _ => None,
        }
    }

    /// The same thing in the hand: one entry, or one maker and serial number, whatever kind somebody called it.
    pub fn same_instrument(&self, one: EntryId, other: EntryId) -> bool {
        one == other
            || match (self.instrument(one), self.instrument(other)) {
                (Some(a), Some(b)) => alike(a.1, b.1) && alike(a.2, b.2),
                _ => false,
            }
    }

    /// How long it was from `a` to `b`, the longer where it is not known; `None`: it may be any time.
    pub fn longest(&self, a: &Entry, b: Tick) -> Option<i64> {
        let from = tick(a);
        // "counted by a clock that runs while the device sleeps"
        if let Some(ms) = by_running(from, b) {
            return Some(ms);
        }
        // "the wall clock counts": "one that went back, or ahead by more than 5 min against another witness, means 'prove again'".
        // Only the clock behind the earlier reading: where the later one is ahead, the age comes out longer, and that is the cautious side.
        // Two clocks that are five minutes apart are right enough.
        let apart = if from.device == b.device { 0 } else { 5 * MINUTE };
        if b.wall < from.wall - apart || self.went_back(a, b) || self.was_ahead(a, b) {
            return None;
        }
        // "taken as the longer age for a proof": no clock takes away what ran on either device in between.
        let mut age = (b.wall - from.wall).max(0);
        for e in &self.entries {
            let e_tick = tick(e);
            if e.body.device == from.device && e.body.seq > a.body.seq && self.is_before(e, b) {
                age = age.max(by_running(from, e_tick).unwrap_or(0));
            }
            if e.body.device == b.device && self.is_before(e, b) && self.knew(e, a) {
                age = age.max(by_running(e_tick, b).unwrap_or(0));
            }
        }
        Some(age)
    }

    /// How long it was from `a` to `b`, the shorter where it is not known; a clock that is known to be ahead tells nothing.
    pub fn shortest(&self, a: &Entry, b: Tick) -> Option<i64> {
        let from = tick(a);
        if let Some(ms) = by_running(from, b) {
            return Some(ms);
        }
        if b.wall < from.wall || self.is_ahead(b) {
            return None;
        }
        let mut wait = b.wall - from.wall;
        for e in &self.entries {
            // What `a` already knew of the other device was there before `a`.
            if e.body.device == b.device && self.knew(a, e) {
                wait = wait.min(by_running(tick(e), b).unwrap_or(i64::MAX));
            }
        }
        Some(wait)
    }

    pub fn is_before(&self, e: &Entry, b: Tick) -> bool {
        match b.entry.and_then(|id| self.get(id)) {
            Some(b) => b.id == e.id || self.knew(b, e),
            None => true,
        }
    }

    fn went_back(&self, a: &Entry, b: Tick) -> bool {
        // On either device, once the one had happened there or was known there.
        let mut last: Option<(u64, i64)> = None;
        for e in &self.entries {
            if !self.is_before(e, b) {
                continue;
            }
            if e.body.device == a.body.device && e.body.seq > a.body.seq && e.body.wall < a.body.wall {
                return true;
            }
            if e.body.device == b.device
                && (e.body.device == a.body.device && e.body.seq >= a.body.seq || self.knew(e, a))
            {
                if e.body.wall > b.wall || last.is_some_and(|(seq, wall)| e.body.seq > seq && e.body.wall < wall) {
                    return true;
                }
                last = Some((e.body.seq, e.body.wall));
            }
        }
        false
    }

    /// The clock that reads `b` was ahead of another device's.
    fn is_ahead(&self, b: Tick) -> bool {
        let set = |e: &Entry| e.body.device == b.device && (Some(e.id) == b.entry || same_setting(tick(e), b));
        self.ahead.iter().any(|n| set(self.entries[*n]))
    }

    /// The clock that read `a` was ahead of another device's, of the one that is at `b` for example.
    fn was_ahead(&self, a: &Entry, b: Tick) -> bool {
        let from = tick(a);
        let set = |e: &Entry| e.body.device == from.device && (e.body.seq >= a.body.seq || same_setting(tick(e), from));
        let late = |e: &Entry| e.body.device != b.device && self.is_before(e, b) && e.body.wall > b.wall + 5 * MINUTE;
        self.ahead.iter().any(|n| set(self.entries[*n])) || self.entries.iter().any(|e| set(e) && late(e))
    }
}

/// On the clocks of the device that wrote it.
pub fn tick(e: &Entry) -> Tick {
    Tick { device: e.body.device, wall: e.body.wall, running: e.body.running, entry: Some(e.id) }
}

/// On the clocks of the device that is asked.
pub fn now(moment: &Moment) -> Tick {
    Tick { device: moment.device, wall: moment.wall, running: moment.running, entry: None }
}

fn by_running(a: Tick, b: Tick) -> Option<i64> {
    match (a.running, b.running) {
        (Some(from), Some(to)) if a.device == b.device && from.start == to.start => {
            Some(i64::try_from(to.ms).ok()? - i64::try_from(from.ms).ok()?)
        }
        _ => None,
    }
}

/// The wall clock was not moved between the two.
fn same_setting(a: Tick, b: Tick) -> bool {
    by_running(a, b).is_some_and(|ms| (b.wall - a.wall - ms).abs() <= 1000)
}
