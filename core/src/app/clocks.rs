//! Other witnesses of the time: the office, and phones beside. Where they contradict this device's clock, no age that it tells is believed.

use std::collections::BTreeMap;

use super::inner::Inner;
use super::known::CLOCK_DOUBT;
use crate::job::age::CLOCK_DOUBT_MS;
use crate::journal::{DeviceId, Entry, EntryId, Hlc, Running, Stamp};
use crate::store::StoreError;
use crate::words;

/// How the office's contradiction is noted: how far its clock is ahead of this one, in milliseconds.
const OFFICE: &str = "office";
/// How an entry's contradiction is noted: what its writer's clock read, how far that was ahead of this one, and how this one was set then.
const PEER: &str = "peer";
/// The note of how this device's clock was set when somebody who had compared it said that it is right.
const RIGHT: &str = "clock-right";
/// The note of entries that came here from clocks ahead of this one: the latest of each such device.
const AHEAD: &str = "clocks-ahead";
/// Before such an entry: it was ahead of another's clock than this one.
const BESIDE: &str = "~";
/// Most devices whose clocks are noted as ahead.
const MOST_AHEAD: usize = 64;

/// The note of the journal's moment at which this device's clock had been set back.
const SET_BACK: &str = "clock-set-back";

/// How far a clock goes back without having been set: a network corrects it by a little. Our rule, no source.
const BACK_MS: i64 = 1_000;

/// How a clock is set: the start of the device, and what the clock read at that start.
type Setting = (u64, i64);

impl Inner {
    /// The office says what time it is. It is the better witness: where it agrees, no other one counts.
    pub(crate) fn hear_office_clock(&mut self, theirs: i64) {
        let ahead = theirs.saturating_sub(self.now().0);
        let was = self.clock_says().is_some();
        // What the disk does not take is heard again with the next exchange.
        if ahead.abs() > CLOCK_DOUBT_MS {
            let _ = self.store.keep_local(CLOCK_DOUBT, &format!("{OFFICE} {ahead}"));
        } else {
            let _ = self.store.drop_local(CLOCK_DOUBT);
        }
        if was != self.clock_says().is_some() {
            self.stir();
        }
    }

    /// An entry came in: was its writer's clock ahead of this one?
    pub(super) fn hear_peer_clock(&self, entry: &Entry) {
        let (wall, ahead) = (entry.body.wall, entry.body.wall.saturating_sub(self.now().0));
        if ahead > CLOCK_DOUBT_MS {
            // What the disk does not take is heard again with the next entry from that clock.
            let _ = self.note_ahead(entry, "");
            let _ = self.note_doubt(wall, ahead);
        }
    }

    /// New entries of a job came in: whose clock was ahead of that of a writer who already had what it wrote? `all`: the job's entries.
    pub(super) fn hear_clocks_beside(&self, all: &[Entry], new: &[&Entry]) {
        let mut latest: BTreeMap<DeviceId, Vec<&Entry>> = BTreeMap::new();
        for entry in all {
            latest.entry(entry.body.device).or_default().push(entry);
        }
        let mut set_back: Vec<&Entry> = Vec::new();
        // Of each device, what its clock had read at most when it wrote its entries up to a number.
        for chain in latest.values_mut() {
            chain.sort_by_key(|e| e.body.seq);
            for at in 1..chain.len() {
                let clocks = |e: &Entry| (e.body.wall, e.body.running);
                if lost(clocks(chain[at - 1]), clocks(chain[at])) > CLOCK_DOUBT_MS {
                    set_back.push(chain[at - 1]);
                }
                if chain[at].body.wall < chain[at - 1].body.wall {
                    set_back.push(chain[at - 1]);
                    chain[at] = chain[at - 1];
                }
            }
        }
        let own = self.key.device();
        // A clock that was set back was ahead before, for all that anybody knows.
        for before in set_back.into_iter().filter(|e| e.body.device != own) {
            let _ = self.note_ahead(before, BESIDE);
        }
        let mut noted: BTreeMap<DeviceId, (&Entry, &Entry)> = BTreeMap::new();
        for entry in new {
            for seen in &entry.body.seen {
                let Some(chain) = latest.get(&seen.0) else { continue };
                let had = chain.partition_point(|e| e.body.seq <= seen.1);
                let Some(before) = had.checked_sub(1).map(|at| chain[at]) else { continue };
                if before.body.wall.saturating_sub(entry.body.wall) > CLOCK_DOUBT_MS {
                    noted.insert(seen.0, (before, entry));
                }
            }
        }
        for (device, (ahead, behind)) in noted {
            // As above.
            let _ = if device == own {
                self.note_doubt(behind.body.wall, behind.body.wall.saturating_sub(ahead.body.wall))
            } else {
                self.note_ahead(ahead, BESIDE)
            };
        }
    }

    /// Notes that an entry's writer's clock was ahead of this one's, or of another's: `mark`.
    fn note_ahead(&self, entry: &Entry, mark: &str) -> Result<(), StoreError> {
        if !mark.is_empty() && self.is_said_right() {
            return Ok(());
        }
        let of_device =
            |id: EntryId| self.store.entry(id).ok().flatten().is_some_and(|e| e.body.device == entry.body.device);
        let mut all = self.ahead_ids();
        // What was ahead of this very clock says more.
        if !mark.is_empty() && all.iter().any(|(beside, id)| !beside && of_device(*id)) {
            return Ok(());
        }
        all.retain(|(_, id)| !of_device(*id));
        all.push((!mark.is_empty(), entry.id));
        self.keep_ahead(&all[all.len().saturating_sub(MOST_AHEAD)..])
    }

    /// Notes that another phone's clock read `wall` and was ahead of this one by `ahead`, or behind it.
    fn note_doubt(&self, wall: i64, ahead: i64) -> Result<(), StoreError> {
        if self.is_said_right() {
            return Ok(());
        }
        let noted = self.store.local(CLOCK_DOUBT)?;
        let stronger =
            |noted: &str| peer(noted).is_some_and(|(_, before, was)| self.left(before, was).abs() < ahead.abs());
        if noted.as_deref().is_none_or(stronger) {
            let (start, zero) = match self.setting() {
                Some((start, zero)) => (start.to_string(), zero.to_string()),
                None => ("-".into(), "-".into()),
            };
            self.store.keep_local(CLOCK_DOUBT, &format!("{PEER} {wall} {ahead} {start} {zero}"))?;
        }
        Ok(())
    }

    /// Somebody compared this clock with a third one: it is right, and what was ahead of it was wrong and stays in doubt.
    pub(crate) fn say_clock_right(&mut self) -> Result<(), String> {
        let said = |e: StoreError| e.to_string();
        if !self.clock_may_be_right() {
            return Err("No other phone contradicts this clock now.".into());
        }
        if let Some((start, zero)) = self.setting() {
            self.store.keep_local(RIGHT, &format!("{start} {zero}")).map_err(said)?;
        }
        // What two others say of each other is told by this clock now.
        let mut all = self.ahead_ids();
        all.retain(|(beside, _)| !beside);
        self.keep_ahead(&all).map_err(said)?;
        if self.contradicted_by_peer() { self.store.drop_local(CLOCK_DOUBT).map_err(said) } else { Ok(()) }
    }

    /// Entries that showed that their writer's clock was ahead of this one, or of another's: the latest of each device.
    pub(super) fn ahead(&self) -> Vec<Stamp> {
        self.ahead_ids().into_iter().filter_map(|(_, id)| Some(self.store.entry(id).ok()??.stamp())).collect()
    }

    /// Those, and whether it was another's clock than this one that they were ahead of.
    fn ahead_ids(&self) -> Vec<(bool, EntryId)> {
        let noted = self.store.local(AHEAD).ok().flatten().unwrap_or_default();
        let one = |word: &str| Some((word.starts_with(BESIDE), word.trim_start_matches(BESIDE).parse().ok()?));
        noted.split_whitespace().filter_map(one).collect()
    }

    fn keep_ahead(&self, all: &[(bool, EntryId)]) -> Result<(), StoreError> {
        let words: Vec<String> =
            all.iter().map(|(beside, id)| format!("{}{id}", if *beside { BESIDE } else { "" })).collect();
        self.store.keep_local(AHEAD, &words.join(" "))
    }

    /// How this clock is set, where something runs that nobody sets.
    fn setting(&self) -> Option<Setting> {
        let running = self.platform.running()?;
        Some((running.start, self.now().0.saturating_sub(i64::try_from(running.ms).ok()?)))
    }

    /// Somebody said that this clock is right, and it was not set since.
    fn is_said_right(&self) -> bool {
        let noted = self.store.local(RIGHT).ok().flatten();
        let Some(((start, zero), setting)) = noted.as_deref().and_then(|n| n.split_once(' ')).zip(self.setting())
        else {
            return false;
        };
        // Clocks are read one after the other, and a network may correct one by a little.
        start.parse() == Ok(setting.0) && zero.parse().is_ok_and(|zero: i64| (setting.1 - zero).abs() < CLOCK_DOUBT_MS)
    }

    /// How far another clock is still ahead of this one that was ahead by `ahead` when this one was set so: to go on for hours does not mend
    /// a clock, to set it does.
    fn left(&self, ahead: i64, was: Option<Setting>) -> i64 {
        match (was, self.setting()) {
            (Some((start, zero)), Some((now, new))) if start == now => ahead.saturating_sub(new.saturating_sub(zero)),
            _ => ahead,
        }
    }

    /// This device wrote an entry: its clock may have been set back since the one before.
    pub(super) fn note_written(&mut self, entry: &Entry) {
        let before = (self.wrote_at, self.wrote_ran);
        if self.went_back(entry.body.wall) || lost(before, (entry.body.wall, entry.body.running)) > CLOCK_DOUBT_MS {
            let Hlc(ms, count) = entry.body.clock;
            // What the disk does not take is lost with the entry: they go the same way.
            let _ = self.store.keep_local(SET_BACK, &format!("{ms} {count}"));
        }
        (self.wrote_at, self.wrote_ran) = (entry.body.wall, entry.body.running);
        // What was heard before this clock was set may be ahead of it now.
        let ahead = |wall: i64| wall.saturating_sub(entry.body.wall) > CLOCK_DOUBT_MS;
        let Some(job) = entry.job().filter(|_| ahead(entry.body.clock.0)) else { return };
        let mut latest: BTreeMap<DeviceId, Entry> = BTreeMap::new();
        let others = self.store.entries_of(job).unwrap_or_default().into_iter();
        for other in others.filter(|e| e.body.device != entry.body.device && ahead(e.body.wall)) {
            latest.insert(other.body.device, other);
        }
        for other in latest.values() {
            let _ = self.note_ahead(other, "");
            let _ = self.note_doubt(other.body.wall, other.body.wall.saturating_sub(entry.body.wall));
        }
    }

    /// Since when this device's clock is as it is, if it was set back: what is older has no age by it.
    pub(super) fn set_back(&self) -> Option<Hlc> {
        let noted = self.store.local(SET_BACK).ok().flatten()?;
        let (ms, count) = noted.split_once(' ')?;
        Some(Hlc(ms.parse().ok()?, count.parse().ok()?))
    }

    /// Whether this device's clock reads less than when it last wrote an entry itself.
    pub(super) fn went_back(&self, now: i64) -> bool {
        self.wrote_at.saturating_sub(now) > BACK_MS
    }

    /// What contradicts this device's clock now, and what to do; a sentence.
    pub(super) fn clock_says(&self) -> Option<String> {
        let (now, zone) = self.now();
        let noted = self.store.local(CLOCK_DOUBT).ok().flatten()?;
        let mut words = noted.split(' ');
        let (who, at) = (words.next()?, words.next()?.parse::<i64>().ok()?);
        let clock = |ms: i64| words::exact(ms, zone);
        if who == OFFICE {
            return Some(format!(
                "This phone's clock reads {}, the office's {}. Set the phone's clock, then exchange with the office.",
                clock(now),
                clock(now.saturating_add(at))
            ));
        }
        let (_, ahead, was) = peer(&noted)?;
        (self.left(ahead, was).abs() > CLOCK_DOUBT_MS).then(|| {
            format!(
                "This phone's clock was {} {} another phone's, which wrote at {}. Compare both with a third clock. Set this one, or say under \
                 All jobs that it is right. Until then nobody knows how old a proof is.",
                words::long(ahead.abs()),
                if ahead > 0 { "behind" } else { "ahead of" },
                clock(at)
            )
        })
    }

    fn contradicted_by_peer(&self) -> bool {
        self.store.local(CLOCK_DOUBT).ok().flatten().is_some_and(|noted| peer(&noted).is_some())
    }

    /// Whether somebody may say that this clock is right: other phones contradict it or each other, and no office does.
    pub(super) fn clock_may_be_right(&self) -> bool {
        let doubted = self.clock_says().is_some();
        doubted && self.contradicted_by_peer() || !doubted && self.ahead_ids().iter().any(|(beside, _)| *beside)
    }
}

/// By how much a wall clock was set back between two of a device's entries, as its running clock tells.
fn lost(from: (i64, Option<Running>), to: (i64, Option<Running>)) -> i64 {
    match (from.1, to.1) {
        (Some(a), Some(b)) if a.start == b.start => {
            let ran = i64::try_from(b.ms).unwrap_or(i64::MAX).saturating_sub(i64::try_from(a.ms).unwrap_or(i64::MAX));
            ran.saturating_sub(to.0.saturating_sub(from.0))
        }
        _ => 0,
    }
}

/// What a note of another phone's clock says: what it read, how far it was ahead, and how this clock was set.
fn peer(noted: &str) -> Option<(i64, i64, Option<Setting>)> {
    let mut words = noted.strip_prefix(PEER)?.split_whitespace();
    let (wall, ahead) = (words.next()?.parse().ok()?, words.next()?.parse().ok()?);
    let setting = words.next().and_then(|w| w.parse().ok()).zip(words.next().and_then(|w| w.parse().ok()));
    Some((wall, ahead, setting))
}
