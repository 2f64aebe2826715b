//! Who had seen what: the part of "before" and "after" that no clock can tell.
//!
//! Two devices that do not hear of each other write entries whose clocks say nothing about which happened with knowledge of the other.
//! Each entry of a job says what its device had of the others' (`Body::seen`), so that what was done in ignorance is known as such. Of what
//! was done in ignorance, the more cautious reading counts: docs/conflicts.md lists the cases.

use std::collections::BTreeMap;

use crate::journal::{DeviceId, Entry, EntryId, Seen, Stamp};

/// What each device has written in a job, and what it said that it had of the others'.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Heard {
    heads: BTreeMap<DeviceId, u64>,
    last: BTreeMap<DeviceId, EntryId>,
    said: BTreeMap<DeviceId, BTreeMap<DeviceId, u64>>,
    latest: Option<Stamp>,
}

impl Heard {
    /// Takes in an entry; those of one device come in the order of their numbers.
    pub fn note(&mut self, entry: &Entry) {
        let body = &entry.body;
        if self.latest.is_none_or(|latest| latest.clock < body.clock) {
            self.latest = Some(entry.stamp());
        }
        self.heads.insert(body.device, body.seq);
        self.last.insert(body.device, entry.id);
        for Seen(device, seq, _) in &body.seen {
            let said = self.said.entry(body.device).or_default().entry(*device).or_default();
            *said = (*said).max(*seq);
        }
    }

    /// The entry with the latest clock.
    pub fn latest(&self) -> Option<&Stamp> {
        self.latest.as_ref()
    }

    /// The last entry of each device.
    pub fn heads(&self) -> impl Iterator<Item = (&DeviceId, &u64)> {
        self.heads.iter()
    }

    /// The last entry of a device.
    pub fn last_of(&self, device: DeviceId) -> Option<EntryId> {
        self.last.get(&device).copied()
    }

    /// What `device` has to say with its next entry: what it has of others and has not said yet.
    pub fn to_say(&self, device: DeviceId) -> Vec<Seen> {
        let said = |other: &DeviceId| self.said.get(&device).and_then(|s| s.get(other)).copied().unwrap_or(0);
        let news = self.heads.iter().filter(|(other, seq)| **other != device && **seq > said(other));
        news.filter_map(|(other, seq)| Some(Seen(*other, *seq, self.last_of(*other)?))).collect()
    }

    /// What a device has said so far that it has of the others.
    pub fn had(&self, device: DeviceId) -> BTreeMap<DeviceId, u64> {
        self.said.get(&device).cloned().unwrap_or_default()
    }

    /// Whether the device that wrote the entry taken in last had `earlier` when it wrote it.
    pub fn saw(&self, now: &Stamp, earlier: &Stamp) -> bool {
        if now.device == earlier.device {
            return earlier.seq <= now.seq;
        }
        self.said.get(&now.device).and_then(|s| s.get(&earlier.device)).is_some_and(|seq| *seq >= earlier.seq)
    }
}
