//! Locks and keys: who may fit, take off, hand over and force.

use super::{Gate, Verdict, no};
use crate::job::Job;
use crate::journal::fact::{KeyAt, On};
use crate::journal::{EntryId, Fact};
use crate::names::says_something;
use crate::point::{Lock, Means, Off, forced_lacks, gap, may_remove};
use crate::site::padlocks;

impl Gate<'_> {
    pub(super) fn owed(&self, owner: EntryId) -> Verdict {
        match self.locks.iter().find(|l| l.owed && l.owner == owner) {
            Some(lock) => no(format!(
                "The lock of {} on {} was taken off in their absence. They have to be told, and that has to be recorded, before \
                 they resume.",
                self.name(owner),
                lock.place
            )),
            None => Ok(()),
        }
    }

    pub(super) fn locks(&self, job: &Job, fact: &Fact, person: EntryId) -> Verdict {
        let find = |id: EntryId| job.lock(id).ok_or_else(|| "This job has no such lock.".to_owned());
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
                    l if !l.is_on() => no("This lock is already off."),
                    l if l.owner != person => no(format!("Only {} cuts their own lock.", self.name(l.owner))),
                    l => self.box_is_free(job, l),
                }
            }
            Fact::LockRemoved { lock, cut: None } => {
                match may_remove(find(*lock)?, person, &job.locks, |id| self.name(id)) {
                    Some(why) => no(why),
                    None => Ok(()),
                }
            }
            Fact::KeyOffered { lock, to } => {
                let lock = find(*lock)?;
                match lock {
                    _ if !lock.is_on() => no("This lock is already off."),
                    _ if lock.owner != person => no(format!("Only {} may hand this lock over.", self.name(lock.owner))),
                    _ if matches!(lock.key, KeyAt::Box(id) if !job.locks_on().any(|l| l.on == On::Box(id) && l.owner == *to)) => {
                        no(
                            "The key is in a lock box. Only a person with a lock of their own on that box can take this lock over.",
                        )
                    }
                    _ if *to == lock.owner => no("It is theirs already."),
                    _ if !job.people().contains(to) => no("Put the person on the job first."),
                    _ => Ok(()),
                }
            }
            Fact::KeyTaken { offer, .. } => {
                match job.locks_on().filter_map(|l| l.offered).find(|(id, _)| id == offer) {
                    Some((_, to)) if to == person => self.owed(person),
                    Some((_, to)) => no(format!("{} has to confirm this.", self.name(to))),
                    None => no("This offer does not stand any more."),
                }
            }
            Fact::ShiftOffered { to, .. } => {
                if job.in_charge() != Some(person) {
                    return no("Only the person who answers for the isolation can hand over the shift.");
                }
                if *to == person || !job.people().contains(to) {
                    no("Choose another person on the job.")
                } else {
                    Ok(())
                }
            }
            Fact::ShiftTaken { offer, .. } => match &job.shift {
                Some((id, _, to, _)) if id == offer && *to == person => {
                    self.owed(person)?;
                    match gap(&job.points, person, &job.locks).first() {
                        Some(point) => no(format!(
                            "There would be a gap: {} has no lock of their own on {} yet.",
                            self.name(person),
                            point.label
                        )),
                        None => Ok(()),
                    }
                }
                Some((_, _, to, _)) => no(format!("{} has to confirm this.", self.name(*to))),
                None => no("This offer does not stand any more."),
            },
            Fact::ForcedBegun { function, reached, .. } if !says_something(function) || !says_something(reached) => {
                no("Write what the authority is at this site, and how they were reached.")
            }
            Fact::ForcedBegun { authority, .. } if job.learns(Some(*authority)) || self.across.learns(*authority) => {
                no("Who works under supervision answers for no forced removal.")
            }
            Fact::ForcedBegun { lock, authority, why, .. } => match find(*lock)? {
                l if !l.is_on() => no("This lock is already off."),
                l if l.owner == *authority => no("The authority has to be somebody other than the owner."),
                l if l.owner == person => no("This is your own lock: take it off yourself, or say that you cut it."),
                _ if !says_something(why) => no("Say why it cannot wait for the owner."),
                _ => Ok(()),
            },
            Fact::OwnerNotOnSite { lock, .. } | Fact::OwnerSought { lock, .. } if find(*lock)?.forced.is_none() => {
                no("Name the authority first.")
            }
            Fact::OwnerNotOnSite { how, .. } | Fact::OwnerTold { how, .. } if !says_something(how) => no(super::REASON),
            Fact::OwnerSought { how, outcome, .. } if !says_something(how) || !says_something(outcome) => {
                no(super::REASON)
            }
            Fact::LockForced { lock, .. } => {
                let lock = find(*lock)?;
                if !lock.is_on() {
                    return no("This lock is already off.");
                }
                if let Some(lack) = forced_lacks(lock.forced.as_ref()).first() {
                    return no(lack.clone());
                }
                self.box_is_free(job, lock)?;
                match &lock.forced {
                    Some(forced) if forced.authority == person => Ok(()),
                    Some(forced) => no(format!("{} has to confirm this.", self.name(forced.authority))),
                    None => no("Name the authority first."),
                }
            }
            Fact::OwnerTold { lock, .. } if !matches!(find(*lock)?.off, Some(Off::Forced(_))) => {
                no("This lock was not taken off in the owner's absence.")
            }
            _ => Ok(()),
        }
    }

    /// A key in a box is nobody's as long as another person's lock is on the box.
    fn box_is_free(&self, job: &Job, lock: &Lock) -> Verdict {
        let KeyAt::Box(lockbox) = lock.key else { return Ok(()) };
        match job.locks_on().find(|l| l.on == On::Box(lockbox) && l.owner != lock.owner) {
            Some(other) => no(format!(
                "The key of this lock is in {}, and the lock of {} is on it: that one comes off first.",
                job.lock_place(other.on),
                self.name(other.owner)
            )),
            None => Ok(()),
        }
    }

    /// A padlock is known by its owner and its label: one that is on elsewhere was moved, goes through both, or is another one.
    fn padlock(&self, owner: EntryId, label: &str, means: &Means, through: Option<EntryId>) -> Verdict {
        if matches!(means, Means::Other(_)) {
            return Ok(());
        }
        let there = padlocks(self.locks, owner, label);
        match (there.first(), through) {
            (None, None) => Ok(()),
            (None, Some(_)) => no("That padlock is not on anywhere else any more."),
            (Some(_), Some(through)) if there.iter().any(|l| l.fit == through) => Ok(()),
            (Some(_), Some(_)) => no("That is not the padlock of this label and owner."),
            (Some(other), None) => no(format!(
                "{label} of {} is on already: {}, {}. Say whether it was moved, goes through both, or is another one.",
                self.name(owner),
                other.place,
                other.job_title
            )),
        }
    }

    fn fit(&self, job: &Job, on: On, owner: EntryId, label: &str, key: KeyAt, means: &Means) -> Verdict {
        if !job.people().contains(&owner) {
            return no(format!("{} is not on this job: put them on it first.", self.name(owner)));
        }
        if label.trim().is_empty() {
            return no("Write what is on the lock: its number or name tells it from every other.");
        }
        if let KeyAt::Box(id) = key
            && (!job.boxes.iter().any(|b| b.stamp.id == id) || on == On::Box(id))
        {
            return no("Choose a lock box of this job for the key.");
        }
        match on {
            On::Box(_) if key != KeyAt::Owner => no("The key of a personal lock on a box stays with its owner."),
            On::Box(_) if matches!(means, Means::Other(_)) => no("A lock box takes a lock and nothing else."),
            On::Box(id) if job.boxes.iter().any(|b| b.stamp.id == id) => Ok(()),
            On::Box(_) => no("This job has no such lock box."),
            On::Point(id) => {
                let point = job.point(id).ok_or("This job has no such point.")?;
                if point.opened.is_none() {
                    return no(format!("{} is not open: a lock on a closed point secures nothing.", point.label));
                }
                let mut there = job.locks_on().filter(|l| l.on == on);
                match means {
                    Means::Other(how) if point.lockable || !says_something(how) => no(
                        "This point takes a lock: fit one. Anything else is for points that cannot be locked, and says how.",
                    ),
                    Means::Padlock | Means::Hasp if !point.lockable => {
                        no("This point takes no lock. Say by what other means it is secured.")
                    }
                    Means::Padlock if there.next().is_some() => {
                        no("A lock is on already. Only a hasp or a lock box takes several.")
                    }
                    Means::Hasp if there.any(|l| l.means == Means::Padlock) => no(
                        "The lock that is on goes straight through the device. Its owner has to move it to the hasp first: take it \
                         off and fit it again.",
                    ),
                    _ => Ok(()),
                }
            }
        }
    }
}
