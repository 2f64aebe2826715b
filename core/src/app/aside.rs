//! Entries that are put aside: not in the journal, and not forgotten either. Until somebody has looked at the spot each counts as the more
//! cautious reading: it keeps a proof from standing, and a lock that it tells of is on.

use super::session::Session;
use crate::job::known::Aside;
use crate::job::{Job, Summary};
use crate::journal::fact::On;
use crate::journal::{Entry, EntryId, Fact};
use crate::store::{LockRow, StoreError};
use crate::sync::rules::AHEAD;
use crate::text;
use crate::text::screens::app as said;

/// Entries that are looked at again in one go.
const AT_ONCE: usize = 1_000;

impl Session {
    /// Reads again what is put aside.
    pub(super) fn load_asides(&mut self) -> Result<(), StoreError> {
        self.asides = self.store.aside_entries()?;
        Ok(())
    }

    /// What is put aside about a job.
    pub(super) fn asides_of(&self, job: &Job) -> Vec<Aside> {
        let about = self.asides.iter().filter(|(entry, _)| entry.job() == Some(job.id()));
        about
            .map(|(entry, why)| {
                let (lock, on) = match &entry.body.fact {
                    Fact::LockFitted { on, owner, label, .. } => (Some((label.clone(), *owner)), Some(*on)),
                    _ => (None, None),
                };
                let says = Box::new(Summary::of(job, entry));
                Aside { entry: entry.id, stamp: entry.stamp(), says, lock, on, why: why.clone() }
            })
            .collect()
    }

    /// The locks that are on by the word of an entry that is put aside and that nobody has answered, of all jobs.
    pub(super) fn aside_locks(&mut self) -> Vec<LockRow> {
        let mut rows = Vec::new();
        for (entry, why) in std::mem::take(&mut self.asides) {
            rows.extend(self.aside_lock(&entry, &why));
            self.asides.push((entry, why));
        }
        rows
    }

    fn aside_lock(&mut self, entry: &Entry, why: &str) -> Option<LockRow> {
        let Fact::LockFitted { on, owner, label, .. } = &entry.body.fact else { return None };
        let id = entry.job()?;
        let telephone = self.world.telephone(*owner).to_owned();
        // A job that is not here itself: its lock is all that is known of it.
        let job = self.job(id).ok();
        if job.is_some_and(|job| job.aside_answer(entry.id).is_some()) {
            return None;
        }
        Some(LockRow {
            fit: entry.id,
            job: id,
            job_title: job.map_or_else(said::job_elsewhere, |job| job.title.clone()),
            place: job.map_or_else(said::place_elsewhere, |job| text::place(job, *on)),
            label: label.clone(),
            owner: *owner,
            since_ms: entry.body.wall,
            zone: entry.body.zone,
            point: match on {
                On::Point(point) => Some(*point),
                On::Box(_) => None,
            },
            switch: job.and_then(|job| job.switch_of(*on).cloned()),
            site: entry.body.site,
            telephone,
            on: true,
            owed: false,
            no_pin: false,
            aside: Some(why.to_owned()),
        })
    }

    /// The jobs of points that have such a lock: their tags show it.
    pub(super) fn aside_jobs(&self) -> Vec<EntryId> {
        let fitted = self.asides.iter().filter(|(entry, _)| matches!(entry.body.fact, Fact::LockFitted { .. }));
        fitted.filter_map(|(entry, _)| entry.job()).collect()
    }

    /// Takes in by itself what was put aside for its clock, once the clocks no longer contradict. What fails is tried again.
    pub(super) fn take_in_due(&mut self) {
        let wall = self.now().0;
        let due = |(entry, why): &&(Entry, String)| why == AHEAD && !self.is_ahead(entry, wall);
        let entries: Vec<Entry> =
            self.asides.iter().filter(due).take(AT_ONCE).map(|(entry, _)| entry.clone()).collect();
        if !entries.is_empty() {
            let _ = self.take_in_checked(entries);
        }
    }
}
