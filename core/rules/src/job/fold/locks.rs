//! Locks and keys, from entries.

use std::collections::BTreeSet;

use crate::job::Job;
use crate::journal::fact::On;
use crate::journal::{Entry, EntryId, Fact, Stamp};
use crate::point::{Forced, Lock, Off, forced_lacks};

impl Job {
    pub(super) fn apply_lock(&mut self, entry: &Entry, stamp: Stamp) {
        let lock_of = |locks: &mut Vec<Lock>, id: EntryId| locks.iter().position(|l| l.stamp.id == id);
        match &entry.body.fact {
            Fact::LockFitted { on, owner, label, key, means, through } => self.locks.push(Lock {
                stamp,
                on: *on,
                owner: *owner,
                since: stamp,
                label: label.clone(),
                key: *key,
                means: means.clone(),
                through: *through,
                offered: None,
                off: None,
                forced: None,
            }),
            Fact::KeyOffered { lock, to } => {
                // Who hands a lock over is on site: a removal in their absence that had begun is over. One padlock has one key, whatever
                // it goes through.
                let one = self.one_padlock(*lock);
                for lock in self.locks.iter_mut().filter(|l| l.is_on() && one.contains(&l.stamp.id)) {
                    (lock.offered, lock.forced) = (Some((stamp.id, *to)), None);
                }
            }
            Fact::KeyTaken { offer, .. } => {
                let heard = &self.heard;
                for lock in &mut self.locks {
                    // Who takes a lock over stands at it: that somebody else had it off, unknown to them, is in doubt, and it stays on.
                    let here = match &lock.off {
                        None => true,
                        Some(Off::Owner(off) | Off::Cut(off) | Off::Forced(off)) => !heard.saw(&stamp, off),
                    };
                    if let Some((id, to)) = lock.offered
                        && id == *offer
                        && here
                    {
                        (lock.forced, lock.off) = (None, None);
                        (lock.owner, lock.since, lock.offered) = (to, stamp, None);
                    }
                }
            }
            Fact::LockRemoved { lock, cut } => {
                // Only a release by the owner takes a lock off; a release by anybody else, however it came here, does not.
                if let Some(i) = lock_of(&mut self.locks, *lock)
                    && self.locks[i].is_on()
                    && stamp.by == Some(self.locks[i].owner)
                {
                    self.take_off(*lock, if cut.is_some() { Off::Cut(stamp) } else { Off::Owner(stamp) });
                }
            }
            Fact::ForcedBegun { lock, authority, function, reached, why } => {
                if let Some(i) = lock_of(&mut self.locks, *lock) {
                    self.locks[i].forced = Some(Forced {
                        begun: stamp,
                        authority: *authority,
                        function: function.clone(),
                        reached: reached.clone(),
                        why: why.clone(),
                        not_on_site: Vec::new(),
                        sought: Vec::new(),
                        told: None,
                    });
                }
            }
            Fact::OwnerNotOnSite { lock, how } => {
                if let Some(forced) = self.forced(*lock) {
                    forced.not_on_site.push((stamp, how.clone()));
                }
            }
            Fact::OwnerSought { lock, how, outcome } => {
                if let Some(forced) = self.forced(*lock) {
                    forced.sought.push((stamp, how.clone(), outcome.clone()));
                }
            }
            Fact::LockForced { lock, .. } => {
                if let Some(i) = lock_of(&mut self.locks, *lock)
                    && self.locks[i].is_on()
                    && forced_lacks(self.locks[i].forced.as_ref()).is_empty()
                {
                    self.take_off(*lock, Off::Forced(stamp));
                }
            }
            Fact::OwnerTold { lock, how } => {
                if let Some(forced) = self.forced(*lock) {
                    forced.told = Some((stamp, how.clone()));
                }
            }
            _ => {}
        }
    }

    /// A padlock that goes through several points of this job comes off all of them.
    fn take_off(&mut self, lock: EntryId, off: Off) {
        let one = self.one_padlock(lock);
        for lock in self.locks.iter_mut().filter(|l| l.is_on() && one.contains(&l.stamp.id)) {
            lock.off = Some(off);
        }
    }

    /// The locks of this job that are one padlock with this one.
    pub fn one_padlock(&self, lock: EntryId) -> BTreeSet<EntryId> {
        let mut one = BTreeSet::from([lock]);
        loop {
            let more = self.locks.iter().flat_map(|l| match l.through {
                Some(through) if one.contains(&through) => Some(l.stamp.id),
                through if one.contains(&l.stamp.id) => through,
                _ => None,
            });
            let more: Vec<EntryId> = more.filter(|id| !one.contains(id)).collect();
            if more.is_empty() {
                return one;
            }
            one.extend(more);
        }
    }

    /// What else a lock's one cable or bar goes through: the other things of this job, and whether any is of another job.
    pub fn goes_through(&self, lock: &Lock) -> (Vec<On>, bool) {
        let one = self.one_padlock(lock.stamp.id);
        let others = self.locks.iter().filter(|l| l.stamp.id != lock.stamp.id && one.contains(&l.stamp.id));
        let elsewhere = one.iter().any(|id| self.locks.iter().all(|l| l.stamp.id != *id));
        (others.map(|l| l.on).collect(), elsewhere)
    }

    fn forced(&mut self, lock: EntryId) -> Option<&mut Forced> {
        self.locks.iter_mut().find(|l| l.stamp.id == lock)?.forced.as_mut()
    }
}
