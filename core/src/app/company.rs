//! Rules of a company that come to be known after a job was opened: this device writes them into every job under way that was opened without.
//!
//! Who opened it had no way of knowing them, and a phone that has no signal may go on for days. So each device that knows the rules and finds
//! such a job says so in it, once; whoever hears of the job hears of its rules with it.

use super::NotDone;
use super::session::Session;
use crate::journal::{EntryId, Fact};

impl Session {
    /// After something was taken in: jobs under way take up the rules that are known by now. What cannot be written here is written with the
    /// next act in the job.
    pub(super) fn spread_company(&mut self) {
        if self.world.company.is_empty() || self.forgot {
            return;
        }
        let before = self.head.seq;
        let spread = self.take_up_everywhere().and_then(|()| self.commit());
        if spread.is_err() && self.reload().is_err() {
            self.stale = true;
        }
        if self.head.seq != before {
            self.turn += 1;
            self.stirred += 1;
        }
    }

    /// Every job under way takes up the rules that are known by now.
    pub(super) fn take_up_everywhere(&mut self) -> Result<(), NotDone> {
        let jobs: Vec<EntryId> = self.store.jobs()?.into_iter().filter(|row| !row.done).map(|row| row.id).collect();
        for job in jobs {
            // By its opening alone most jobs need not be read whole.
            let opening = self.store.entry(job)?;
            if opening.is_some_and(|entry| matches!(entry.body.fact, Fact::JobOpened { company: None, .. })) {
                self.take_up_company(job)?;
            }
        }
        Ok(())
    }

    /// The job takes up the rules of its site, where it was opened without any and has not heard of some yet.
    pub(super) fn take_up_company(&mut self, id: EntryId) -> Result<(), NotDone> {
        if self.world.company.is_empty() {
            return Ok(());
        }
        let job = self.job(id)?;
        if job.company.is_some() || !job.takes_up_company() || job.practice {
            return Ok(());
        }
        let Some(site) = job.site else { return Ok(()) };
        let Some(held) = self.world.company.get(&site) else { return Ok(()) };
        let rules = Box::new((*held.rules).clone());
        // Nobody's deed, whoever has the device in hand.
        let acting = self.acting.take();
        let kept = self.seal(Some(site), Some(id), Fact::CompanyHeard { rules });
        self.acting = acting;
        kept.map(drop)
    }
}
