//! What comes from other devices: looked at, taken into the journal in one transaction, or kept aside.

use std::collections::BTreeMap;

use super::NotDone;
use super::session::Session;
use crate::job::Job;
use crate::journal::{DeviceId, Entry, EntryId, Fact};
use crate::sync::rules::{EntryMet, EntryTaken, FUTURE_MS, take};

/// What became of a delivery.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct TakenIn {
    /// Entries that are new here.
    pub new: usize,
    /// Entries that are kept aside.
    pub aside: usize,
}

impl Session {
    /// Takes in entries of others, whose signatures hold. Those of one device come in the order of their numbers. All of it or nothing.
    pub(crate) fn take_in(&mut self, entries: Vec<Entry>) -> Result<TakenIn, NotDone> {
        let done = self.take_in_checked(entries)?;
        self.take_in_due();
        if done.new > 0 {
            self.spread_company();
        }
        Ok(done)
    }

    /// Whether an entry's clock is more than a day ahead.
    pub(super) fn is_ahead(&self, entry: &Entry, wall: i64) -> bool {
        entry.body.wall.max(entry.body.clock.0) > wall.saturating_add(FUTURE_MS)
    }

    /// Notes when an entry of another device came, and what its clock says about this one's.
    fn came(&mut self, entry: &Entry, wall: i64) -> Result<(), NotDone> {
        self.hear_peer_clock(entry);
        // The wait of stored energy counts from no earlier than an opening is known here.
        if matches!(entry.body.fact, Fact::PointOpened { .. }) {
            self.store.keep_arrival(entry.id, wall, self.platform.running())?;
        }
        Ok(())
    }

    pub(super) fn take_in_checked(&mut self, entries: Vec<Entry>) -> Result<TakenIn, NotDone> {
        if self.stale || !self.pending.is_empty() {
            self.reload()?;
        }
        let (mut done, mut new) = (TakenIn::default(), Vec::new());
        // By device and number, because a delivery may be a year's work of several phones.
        let mut fresh: BTreeMap<(DeviceId, u64), EntryId> = BTreeMap::new();
        let wall = self.platform.now_ms();
        let mut forgot = false;
        for entry in entries {
            let (device, seq) = (entry.body.device, entry.body.seq);
            let there = self.store.id_at(device, seq)?;
            let own = device == self.key.device();
            let of_this_device = own || self.formers.contains(&device);
            let met = EntryMet {
                holds: true,
                known: there == Some(entry.id) || fresh.get(&(device, seq)) == Some(&entry.id),
                number_taken: there.is_some() || fresh.contains_key(&(device, seq)),
                of_this_device,
                follows_on: !of_this_device || self.follows_on(&entry, &|d, s| fresh.get(&(d, s)).copied())?,
                from_the_future: self.is_ahead(&entry, wall),
            };
            let taken = take(met);
            // Nobody else can sign so: whatever of it is not here was forgotten, or written by a copy of this device.
            forgot |= own && taken != EntryTaken::Known;
            if taken != EntryTaken::Known && !of_this_device {
                self.came(&entry, wall)?;
            }
            match taken {
                EntryTaken::Known => self.store.keep_opened(&entry)?,
                EntryTaken::Refused(_) => {}
                EntryTaken::Aside(why) => {
                    self.store.keep_aside(&entry, why)?;
                    done.aside += 1;
                }
                EntryTaken::In | EntryTaken::Back => {
                    fresh.insert((device, seq), entry.id);
                    new.push(entry);
                }
            }
        }
        if forgot {
            self.note_forgot();
        }
        if done.aside > 0 {
            self.load_asides()?;
            self.turn += 1;
            self.stirred += 1;
        }
        if new.is_empty() {
            return Ok(done);
        }
        done.new = new.len();
        let mut by_job: BTreeMap<EntryId, Vec<&Entry>> = BTreeMap::new();
        for entry in &new {
            if let Some(job) = entry.job() {
                by_job.entry(job).or_default().push(entry);
            }
        }
        let mut jobs = Vec::new();
        for (id, entries) in &by_job {
            let mut all = self.store.entries_of(*id)?;
            all.extend(entries.iter().map(|e| (*e).clone()));
            // Without its opening a job is not shown yet; its entries wait in the journal for it.
            jobs.extend(Job::fold(&all));
            self.hear_clocks_beside(&all, entries);
        }
        self.store.append(&new, &jobs.iter().collect::<Vec<_>>())?;
        for entry in &new {
            self.clock.receive(entry.body.clock, wall);
        }
        // The person's screen moved on if it shows anything of this: a tap on what was there before does nothing.
        let shown = self.route.job().is_none_or(|job| by_job.contains_key(&job));
        if shown {
            self.turn += 1;
        }
        self.stirred += 1;
        self.reload()?;
        Ok(done)
    }
}
