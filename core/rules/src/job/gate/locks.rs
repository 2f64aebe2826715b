//! Locks and keys: who may fit, take off, hand over and force.

use super::{Gate, GateVerdict, no};
use crate::job::Job;
use crate::job::refusal::{LockRefusal, Refusal};
use crate::journal::fact::{KeyAt, On};
use crate::journal::{EntryId, Fact};
use crate::names::says_something;
use crate::point::{Lock, Means, Off, forced_lacks, gap, may_remove};
use crate::site::padlocks;

impl Gate<'_> {
    pub(super) fn owed(&self, owner: EntryId) -> GateVerdict {
        match self.locks.iter().find(|l| l.owed && l.owner == owner) {
            Some(lock) => no(LockRefusal::Owed { owner, place: lock.on_what() }),
            None => Ok(()),
        }
    }

    pub(super) fn locks(&self, job: &Job, fact: &Fact, person: EntryId) -> GateVerdict {
        let find = |id: EntryId| job.lock(id).ok_or(Refusal::Lock(LockRefusal::NoSuchLock));
        match fact {
            Fact::LockFitted { on, owner, label, key, means, through } => {
                self.owed(*owner)?;
                self.padlock(*owner, label, means, *through)?;
                self.fit(job, *on, *owner, label, *key, means)
            }
            // Who cuts their own lock has no key to find: where it is does not matter any more.
            Fact::LockRemoved { lock, cut: Some(why) } => {
                super::reason(why)?;
                match find(*lock)? {
                    l if !l.is_on() => no(LockRefusal::Off),
                    l if l.owner != person => no(LockRefusal::NotTheirsToCut { owner: l.owner }),
                    l => self.box_is_free(job, l),
                }
            }
            Fact::LockRemoved { lock, cut: None } => match may_remove(find(*lock)?, person, &job.locks) {
                Some(stays) => no(LockRefusal::Stays(stays)),
                None => Ok(()),
            },
            Fact::KeyOffered { lock, to } => {
                let lock = find(*lock)?;
                match lock {
                    _ if !lock.is_on() => no(LockRefusal::Off),
                    _ if lock.owner != person => no(LockRefusal::NotTheirsToGive { owner: lock.owner }),
                    _ if matches!(lock.key, KeyAt::Box(id) if !job.locks_on().any(|l| l.on == On::Box(id) && l.owner == *to)) => {
                        no(LockRefusal::KeyInBox)
                    }
                    _ if *to == lock.owner => no(LockRefusal::TheirsAlready),
                    _ if !job.people().contains(to) => no(LockRefusal::NotOnJobYet),
                    _ => Ok(()),
                }
            }
            Fact::KeyTaken { offer, .. } => {
                match job.locks_on().filter_map(|l| l.offered).find(|(id, _)| id == offer) {
                    Some((_, to)) if to == person => self.owed(person),
                    Some((_, to)) => no(LockRefusal::Confirms { person: to }),
                    None => no(LockRefusal::OfferGone),
                }
            }
            Fact::ShiftOffered { to, .. } => {
                if job.in_charge() != Some(person) {
                    return no(LockRefusal::ShiftNotTheirs);
                }
                if *to == person || !job.people().contains(to) { no(LockRefusal::ShiftToNobody) } else { Ok(()) }
            }
            Fact::ShiftTaken { offer, .. } => match &job.shift {
                Some((id, _, to, _)) if id == offer && *to == person => {
                    self.owed(person)?;
                    match gap(&job.points, person, &job.locks).first() {
                        Some(point) => no(LockRefusal::Gap { person, at: point.label.clone() }),
                        None => Ok(()),
                    }
                }
                Some((_, _, to, _)) => no(LockRefusal::Confirms { person: *to }),
                None => no(LockRefusal::OfferGone),
            },
            Fact::ForcedBegun { function, reached, .. } if !says_something(function) || !says_something(reached) => {
                no(LockRefusal::AuthorityUnsaid)
            }
            Fact::ForcedBegun { authority, .. } if job.learns(Some(*authority)) || self.across.learns(*authority) => {
                no(LockRefusal::AuthorityLearns)
            }
            Fact::ForcedBegun { lock, authority, why, .. } => match find(*lock)? {
                l if !l.is_on() => no(LockRefusal::Off),
                l if l.owner == *authority => no(LockRefusal::AuthorityOwns),
                l if l.owner == person => no(LockRefusal::OwnLock),
                _ if !says_something(why) => no(LockRefusal::CannotWaitUnsaid),
                _ => Ok(()),
            },
            Fact::OwnerNotOnSite { lock, .. } | Fact::OwnerSought { lock, .. } if find(*lock)?.forced.is_none() => {
                no(LockRefusal::NoAuthority)
            }
            Fact::OwnerNotOnSite { how, .. } | Fact::OwnerTold { how, .. } if !says_something(how) => {
                no(Refusal::NoReason)
            }
            Fact::OwnerSought { how, outcome, .. } if !says_something(how) || !says_something(outcome) => {
                no(Refusal::NoReason)
            }
            Fact::LockForced { lock, .. } => {
                let lock = find(*lock)?;
                if !lock.is_on() {
                    return no(LockRefusal::Off);
                }
                if let Some(lack) = forced_lacks(lock.forced.as_ref()).first() {
                    return no(LockRefusal::Forced(*lack));
                }
                self.box_is_free(job, lock)?;
                match &lock.forced {
                    Some(forced) if forced.authority == person => Ok(()),
                    Some(forced) => no(LockRefusal::Confirms { person: forced.authority }),
                    None => no(LockRefusal::NoAuthority),
                }
            }
            Fact::OwnerTold { lock, .. } if !matches!(find(*lock)?.off, Some(Off::Forced(_))) => {
                no(LockRefusal::NotForced)
            }
            _ => Ok(()),
        }
    }

    /// A key in a box is nobody's as long as another person's lock is on the box.
    fn box_is_free(&self, job: &Job, lock: &Lock) -> GateVerdict {
        let KeyAt::Box(lockbox) = lock.key else { return Ok(()) };
        match job.locks_on().find(|l| l.on == On::Box(lockbox) && l.owner != lock.owner) {
            Some(other) => no(LockRefusal::BoxHeld { place: job.lock_label(other.on), owner: other.owner }),
            None => Ok(()),
        }
    }

    /// A padlock is known by its owner and its label: one that is on elsewhere was moved, goes through both, or is another one.
    fn padlock(&self, owner: EntryId, label: &str, means: &Means, through: Option<EntryId>) -> GateVerdict {
        if matches!(means, Means::Other(_)) {
            return Ok(());
        }
        let there = padlocks(self.locks, owner, label);
        match (there.first(), through) {
            (None, None) => Ok(()),
            (None, Some(_)) => no(LockRefusal::PadlockGone),
            (Some(_), Some(through)) if there.iter().any(|l| l.fit == through) => Ok(()),
            (Some(_), Some(_)) => no(LockRefusal::PadlockOther),
            (Some(other), None) => {
                let (place, job) = (other.on_what(), other.job_title.clone());
                no(LockRefusal::PadlockOn { label: label.to_owned(), owner, place, job })
            }
        }
    }

    fn fit(&self, job: &Job, on: On, owner: EntryId, label: &str, key: KeyAt, means: &Means) -> GateVerdict {
        if !job.people().contains(&owner) {
            return no(LockRefusal::OwnerNotOnJob { owner });
        }
        if label.trim().is_empty() {
            return no(LockRefusal::NoLabel);
        }
        if let KeyAt::Box(id) = key
            && (!job.boxes.iter().any(|b| b.stamp.id == id) || on == On::Box(id))
        {
            return no(LockRefusal::KeyInNoBox);
        }
        match on {
            On::Box(_) if key != KeyAt::Owner => no(LockRefusal::BoxKeyNotKept),
            On::Box(_) if matches!(means, Means::Other(_)) => no(LockRefusal::BoxTakesLocks),
            On::Box(id) if job.boxes.iter().any(|b| b.stamp.id == id) => Ok(()),
            On::Box(_) => no(LockRefusal::NoSuchBox),
            On::Point(id) => {
                let point = job.point(id).ok_or(Refusal::NoSuchPoint)?;
                if point.opened.is_none() {
                    return no(LockRefusal::NotOpen { at: point.label.clone() });
                }
                let mut there = job.locks_on().filter(|l| l.on == on);
                match means {
                    Means::Other(how) if point.lockable || !says_something(how) => no(LockRefusal::TakesLock),
                    Means::Padlock | Means::Hasp if !point.lockable => no(LockRefusal::TakesNoLock),
                    Means::Padlock if there.next().is_some() => no(LockRefusal::OneOnly),
                    Means::Hasp if there.any(|l| l.means == Means::Padlock) => no(LockRefusal::NotOnHasp),
                    _ => Ok(()),
                }
            }
        }
    }
}
