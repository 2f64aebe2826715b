//! What comes from other devices: looked at, taken into the journal in one transaction, or kept aside.

use std::collections::BTreeMap;

use super::inner::Inner;
use crate::job::Job;
use crate::journal::{DeviceId, Entry, EntryId};
use crate::sync::rules::{FUTURE_MS, Met, Taken, take};

/// What became of a delivery.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct TakenIn {
    /// Entries that are new here.
    pub new: usize,
    /// Entries that are kept aside.
    pub aside: usize,
}

impl Inner {
    /// Takes in entries of others, whose signatures hold. Those of one device come in the order of their numbers. All of it or nothing.
    pub(crate) fn take_in(&mut self, entries: Vec<Entry>) -> Result<TakenIn, String> {
        if self.stale || !self.pending.is_empty() {
            self.reload()?;
        }
        let said = |e: crate::store::StoreError| e.to_string();
        let (mut done, mut new) = (TakenIn::default(), Vec::new());
        // By device and number, because a delivery may be a year's work of several phones.
        let mut fresh: BTreeMap<(DeviceId, u64), EntryId> = BTreeMap::new();
        let wall = self.platform.now_ms();
        for entry in entries {
            let (device, seq) = (entry.body.device, entry.body.seq);
            let there = self.store.id_at(device, seq).map_err(said)?;
            let met = Met {
                holds: true,
                known: there == Some(entry.id) || fresh.get(&(device, seq)) == Some(&entry.id),
                number_taken: there.is_some() || fresh.contains_key(&(device, seq)),
                of_this_device: device == self.key.device(),
                from_the_future: entry.body.wall.max(entry.body.clock.0) > wall.saturating_add(FUTURE_MS),
            };
            match take(met) {
                Taken::Known => self.store.keep_opened(&entry).map_err(said)?,
                Taken::Refused(_) => {}
                Taken::Aside(why) => {
                    self.store.keep_aside(&entry, why).map_err(said)?;
                    done.aside += 1;
                }
                Taken::In => {
                    fresh.insert((device, seq), entry.id);
                    new.push(entry);
                }
            }
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
            let mut all = self.store.entries_of(*id).map_err(said)?;
            all.extend(entries.iter().map(|e| (*e).clone()));
            // Without its opening a job is not shown yet; its entries wait in the journal for it.
            jobs.extend(Job::fold(&all));
        }
        self.store.append(&new, &jobs.iter().collect::<Vec<_>>()).map_err(said)?;
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
