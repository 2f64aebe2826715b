//! Other witnesses of the time: the office, and phones beside. Where they contradict this device's clock, no age that it tells is believed.

use std::collections::BTreeMap;
use std::fmt::{self, Display, Formatter};
use std::str::FromStr;

use super::NotDone;
use super::known::CLOCK_DOUBT;
use super::session::Session;
use crate::job::age::{CLOCK_DOUBT_MS, moved};
use crate::journal::{DeviceId, Entry, EntryId, Hlc, Stamp};
use crate::store::StoreError;
use crate::text::AskDevice;
use crate::text::screens::app as said;
use crate::text::times;

/// The note of how this device's clock was set when somebody who had compared it said that it is right.
const RIGHT: &str = "clock-right";
/// The note of entries that came here from clocks ahead of this one: the latest of each such device.
const AHEAD: &str = "clocks-ahead";
/// Before such an entry: it was ahead of another's clock than this one.
const BESIDE: char = '~';
/// Most devices whose clocks are noted as ahead.
const MAX_AHEAD: usize = 64;

/// The note of the journal's moment at which this device's clock had been set back.
const SET_BACK: &str = "clock-set-back";

/// How far a clock goes back without having been set: a network corrects it by a little. Our rule, no source.
const BACK_MS: i64 = 1_000;

/// How a clock is set: the start of the device, and what the clock read at that start.
#[derive(Clone, Copy)]
struct Setting {
    start: u64,
    zero: i64,
}

/// What contradicts this device's clock, as it is noted.
#[derive(Clone, Copy)]
enum ClockDoubt {
    /// The office's clock, by how much it is ahead of this one, in milliseconds.
    Office(i64),
    /// Another phone's.
    Peer {
        /// What it read.
        wall: i64,
        /// How far it was ahead of this one, in milliseconds.
        ahead: i64,
        /// How this one was set then, where something runs that nobody sets.
        set: Option<Setting>,
    },
}

/// An entry that showed that its writer's clock was ahead.
struct ClockWitness {
    entry: EntryId,
    /// Of another's clock than this one.
    beside: bool,
}

impl Session {
    /// The office says what time it is. It is the better witness: where it agrees, no other one counts.
    pub(crate) fn hear_office_clock(&mut self, theirs: i64) {
        let ahead = theirs.saturating_sub(self.now().0);
        let was = self.clock_says().is_some();
        // What the disk does not take is heard again with the next exchange.
        if ahead.abs() > CLOCK_DOUBT_MS {
            let _ = self.store.keep_local(CLOCK_DOUBT, &ClockDoubt::Office(ahead).to_string());
        } else {
            let _ = self.store.drop_local(CLOCK_DOUBT);
        }
        if was != self.clock_says().is_some() {
            self.stir();
        }
    }

    /// An entry came in: was its writer's clock ahead of this one?
    pub(super) fn hear_peer_clock(&self, entry: &Entry) {
        let ahead = entry.body.wall.saturating_sub(self.now().0);
        if ahead > CLOCK_DOUBT_MS {
            // What the disk does not take is heard again with the next entry from that clock.
            let _ = self.note_ahead(entry, false);
            let _ = self.note_doubt(entry.body.wall, ahead);
        }
    }

    /// New entries of a job came in: whose clock was ahead of that of a writer who already had what it wrote? `all`: the job's entries.
    pub(super) fn hear_clocks_beside(&self, all: &[Entry], new: &[&Entry]) {
        let own = self.key.device();
        let mut chains: BTreeMap<DeviceId, Vec<&Entry>> = BTreeMap::new();
        for entry in all {
            chains.entry(entry.body.device).or_default().push(entry);
        }
        // A clock that was set back was ahead before, for all that anybody knows.
        let mut ahead: BTreeMap<DeviceId, &Entry> = BTreeMap::new();
        // Of each device, what its clock had read at most when it wrote its entries up to a number.
        for (device, chain) in &mut chains {
            chain.sort_by_key(|e| e.body.seq);
            for at in 1..chain.len() {
                let (before, now) = (chain[at - 1], chain[at]);
                if now.body.wall < before.body.wall || is_set_back(&before.stamp(), &now.stamp()) {
                    ahead.insert(*device, before);
                }
                if now.body.wall < before.body.wall {
                    chain[at] = before;
                }
            }
        }
        ahead.remove(&own);
        let mut behind_own: Option<(&Entry, &Entry)> = None;
        for entry in new {
            for seen in &entry.body.seen {
                let Some(chain) = chains.get(&seen.0) else { continue };
                let had = chain.partition_point(|e| e.body.seq <= seen.1);
                let Some(before) = had.checked_sub(1).map(|at| chain[at]) else { continue };
                if before.body.wall.saturating_sub(entry.body.wall) <= CLOCK_DOUBT_MS {
                    continue;
                }
                if seen.0 == own {
                    behind_own = Some((before, entry));
                } else {
                    ahead.insert(seen.0, before);
                }
            }
        }
        // As above.
        for entry in ahead.values() {
            let _ = self.note_ahead(entry, true);
        }
        if let Some((own, theirs)) = behind_own {
            let _ = self.note_doubt(theirs.body.wall, theirs.body.wall.saturating_sub(own.body.wall));
        }
    }

    /// Notes that an entry's writer's clock was ahead of this one's, or `beside` it, of another's.
    fn note_ahead(&self, entry: &Entry, beside: bool) -> Result<(), StoreError> {
        if beside && self.is_said_right() {
            return Ok(());
        }
        let mut all = self.witnesses();
        let of_device = |w: &ClockWitness| {
            w.entry == entry.id
                || self.store.entry(w.entry).ok().flatten().is_some_and(|e| e.body.device == entry.body.device)
        };
        if let Some(at) = all.iter().position(of_device) {
            // What was ahead of this very clock says more, and what is noted needs no writing.
            if beside && !all[at].beside || beside == all[at].beside && all[at].entry == entry.id {
                return Ok(());
            }
            all.remove(at);
        }
        all.push(ClockWitness { entry: entry.id, beside });
        self.keep_witnesses(&all[all.len().saturating_sub(MAX_AHEAD)..])
    }

    /// Notes that another phone's clock read `wall` and was ahead of this one by `ahead`, or behind it.
    fn note_doubt(&self, wall: i64, ahead: i64) -> Result<(), StoreError> {
        let weaker = match self.doubt() {
            None => true,
            Some(ClockDoubt::Office(_)) => false,
            Some(ClockDoubt::Peer { ahead: before, set, .. }) => self.left(before, set).abs() < ahead.abs(),
        };
        if !weaker || self.is_said_right() {
            return Ok(());
        }
        self.store.keep_local(CLOCK_DOUBT, &ClockDoubt::Peer { wall, ahead, set: self.setting() }.to_string())
    }

    /// Somebody compared this clock with a third one: it is right, and what was ahead of it was wrong and stays in doubt.
    pub(crate) fn say_clock_right(&mut self) -> Result<(), NotDone> {
        if !self.clock_may_be_right() {
            return Err(AskDevice::ClockUncontradicted.into());
        }
        if let Some(setting) = self.setting() {
            self.store.keep_local(RIGHT, &setting.to_string())?;
        }
        // What two others say of each other is told by this clock now.
        let mut all = self.witnesses();
        all.retain(|w| !w.beside);
        self.keep_witnesses(&all)?;
        match self.doubt() {
            Some(ClockDoubt::Peer { .. }) => Ok(self.store.drop_local(CLOCK_DOUBT)?),
            _ => Ok(()),
        }
    }

    /// Entries that showed that their writer's clock was ahead of this one, or of another's: the latest of each device.
    pub(super) fn ahead(&self) -> Vec<Stamp> {
        self.witnesses().into_iter().filter_map(|w| Some(self.store.entry(w.entry).ok()??.stamp())).collect()
    }

    fn witnesses(&self) -> Vec<ClockWitness> {
        let noted = self.store.local(AHEAD).ok().flatten().unwrap_or_default();
        let one = |word: &str| {
            Some(ClockWitness {
                entry: word.trim_start_matches(BESIDE).parse().ok()?,
                beside: word.starts_with(BESIDE),
            })
        };
        noted.split_whitespace().filter_map(one).collect()
    }

    fn keep_witnesses(&self, all: &[ClockWitness]) -> Result<(), StoreError> {
        let one = |w: &ClockWitness| if w.beside { format!("{BESIDE}{}", w.entry) } else { w.entry.to_string() };
        self.store.keep_local(AHEAD, &all.iter().map(one).collect::<Vec<_>>().join(" "))
    }

    /// How this clock is set, where something runs that nobody sets.
    fn setting(&self) -> Option<Setting> {
        let running = self.platform.running()?;
        let ms = i64::try_from(running.ms).ok()?;
        Some(Setting { start: running.start, zero: self.now().0.saturating_sub(ms) })
    }

    /// Somebody said that this clock is right, and it was not set since.
    fn is_said_right(&self) -> bool {
        let noted = self.store.local(RIGHT).ok().flatten().and_then(|text| text.parse::<Setting>().ok());
        // Clocks are read one after the other, and a network may correct one by a little.
        noted
            .zip(self.setting())
            .is_some_and(|(then, now)| then.start == now.start && (now.zero - then.zero).abs() < CLOCK_DOUBT_MS)
    }

    /// How far another clock is still ahead of this one that was ahead by `ahead` when this one was set so: to go on for hours does not mend
    /// a clock, to set it does.
    fn left(&self, ahead: i64, set: Option<Setting>) -> i64 {
        match set.zip(self.setting()) {
            Some((then, now)) if then.start == now.start => ahead.saturating_sub(now.zero.saturating_sub(then.zero)),
            _ => ahead,
        }
    }

    /// This device wrote an entry: its clock may have been set back since the one before.
    pub(super) fn note_written(&mut self, entry: &Entry) {
        let (before, now) = (self.wrote, entry.stamp());
        if self.went_back(now.wall) || before.is_some_and(|before| is_set_back(&before, &now)) {
            // What the disk does not take is lost with the entry: they go the same way.
            let _ = self.store.keep_local_moment(SET_BACK, now.clock);
        }
        self.wrote = Some(now);
        // What was heard before this clock was set may be ahead of it now.
        let ahead = |wall: i64| wall.saturating_sub(now.wall) > CLOCK_DOUBT_MS;
        let Some(job) = entry.job().filter(|_| ahead(now.clock.0)) else { return };
        let mut latest: BTreeMap<DeviceId, Entry> = BTreeMap::new();
        let others = self.store.entries_of(job).unwrap_or_default().into_iter();
        for other in others.filter(|e| e.body.device != now.device && ahead(e.body.wall)) {
            latest.insert(other.body.device, other);
        }
        for other in latest.values() {
            let _ = self.note_ahead(other, false);
            let _ = self.note_doubt(other.body.wall, other.body.wall.saturating_sub(now.wall));
        }
    }

    /// Since when this device's clock is as it is, if it was set back: what is older has no age by it.
    pub(super) fn set_back(&self) -> Option<Hlc> {
        self.store.local_moment(SET_BACK).ok().flatten()
    }

    /// Whether this device's clock reads less than when it last wrote an entry itself.
    pub(super) fn went_back(&self, now: i64) -> bool {
        self.wrote.is_some_and(|wrote| wrote.wall.saturating_sub(now) > BACK_MS)
    }

    fn doubt(&self) -> Option<ClockDoubt> {
        self.store.local(CLOCK_DOUBT).ok().flatten()?.parse().ok()
    }

    /// What contradicts this device's clock now, and what to do; a sentence.
    pub(super) fn clock_says(&self) -> Option<String> {
        let (now, zone) = self.now();
        let clock = |ms: i64| times::exact(ms, zone);
        match self.doubt()? {
            ClockDoubt::Office(ahead) => Some(said::clock_office(clock(now), clock(now.saturating_add(ahead)))),
            ClockDoubt::Peer { wall, ahead, set } => (self.left(ahead, set).abs() > CLOCK_DOUBT_MS).then(|| {
                let (long, when) = (times::long(ahead.abs()), clock(wall));
                if ahead > 0 { said::clock_behind(long, when) } else { said::clock_ahead(long, when) }
            }),
        }
    }

    /// Whether somebody may say that this clock is right: other phones contradict it or each other, and no office does.
    pub(super) fn clock_may_be_right(&self) -> bool {
        match self.doubt().filter(|_| self.clock_says().is_some()) {
            Some(doubt) => matches!(doubt, ClockDoubt::Peer { .. }),
            None => self.witnesses().iter().any(|w| w.beside),
        }
    }
}

/// Whether a device's clock was set back between two of its entries, as its running clock tells.
fn is_set_back(from: &Stamp, to: &Stamp) -> bool {
    moved(from, to).is_some_and(|ms| ms < -CLOCK_DOUBT_MS)
}

impl Display for Setting {
    fn fmt(&self, f: &mut Formatter) -> fmt::Result {
        write!(f, "{} {}", self.start, self.zero)
    }
}

impl FromStr for Setting {
    type Err = ();
    fn from_str(text: &str) -> Result<Setting, ()> {
        let (start, zero) = text.split_once(' ').ok_or(())?;
        Ok(Setting { start: start.parse().map_err(drop)?, zero: zero.parse().map_err(drop)? })
    }
}

impl Display for ClockDoubt {
    fn fmt(&self, f: &mut Formatter) -> fmt::Result {
        match self {
            ClockDoubt::Office(ahead) => write!(f, "office {ahead}"),
            ClockDoubt::Peer { wall, ahead, set: None } => write!(f, "peer {wall} {ahead}"),
            ClockDoubt::Peer { wall, ahead, set: Some(set) } => write!(f, "peer {wall} {ahead} {set}"),
        }
    }
}

impl FromStr for ClockDoubt {
    type Err = ();
    fn from_str(text: &str) -> Result<ClockDoubt, ()> {
        let mut words = text.splitn(4, ' ');
        let who = words.next().ok_or(())?;
        let mut number = || words.next().and_then(|word| word.parse().ok()).ok_or(());
        match who {
            "office" => Ok(ClockDoubt::Office(number()?)),
            "peer" => {
                let (wall, ahead) = (number()?, number()?);
                Ok(ClockDoubt::Peer { wall, ahead, set: words.next().and_then(|set| set.parse().ok()) })
            }
            _ => Err(()),
        }
    }
}
