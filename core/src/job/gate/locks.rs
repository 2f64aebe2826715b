//! Locks and keys: who may fit, take off, hand over and force.

use super::{Gate, Verdict, no};
use crate::job::Job;
use crate::journal::fact::{KeyAt, On};
use crate::journal::{EntryId, Fact};
use crate::point::{Means, Off, forced_lacks, gap, may_remove};

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
            Fact::LockFitted { on, owner, label, key, means } => {
                self.owed(*owner)?;
                self.fit(job, *on, *owner, label, *key, means)
            }
            Fact::LockRemoved { lock } => match may_remove(find(*lock)?, person, &job.locks, |id| self.name(id)) {
                Some(why) => no(why),
                None => Ok(()),
            },
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
            Fact::ForcedBegun { lock, authority, why } => match find(*lock)? {
                l if !l.is_on() => no("This lock is already off."),
                l if l.owner == *authority => no("The authority has to be somebody other than the owner."),
                l if l.owner == person => no("This is your own lock: take it off yourself."),
                _ if why.trim().is_empty() => no("Say why it cannot wait for the owner."),
                _ => Ok(()),
            },
            Fact::OwnerNotOnSite { lock, .. } | Fact::OwnerSought { lock, .. } if find(*lock)?.forced.is_none() => {
                no("Name the authority first.")
            }
            Fact::LockForced { lock, .. } => {
                let lock = find(*lock)?;
                if !lock.is_on() {
                    return no("This lock is already off.");
                }
                if let Some(lack) = forced_lacks(lock.forced.as_ref()).first() {
                    return no(lack.clone());
                }
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

    fn fit(&self, job: &Job, on: On, owner: EntryId, label: &str, key: KeyAt, means: &Means) -> Verdict {
        if !job.people().contains(&owner) {
            return no(format!("{} is not on this job: put them on it first.", self.name(owner)));
        }
        if label.trim().is_empty() {
            return no("Write what is on the lock: its number or name tells it from every other.");
        }
        if let Some(other) = self.locks.iter().find(|l| l.on && l.label == label && !matches!(means, Means::Other(_))) {
            return no(format!(
                "A lock labelled {label} is on already: {}, {}. Two locks with one label cannot be told apart.",
                other.place,
                self.name(other.owner)
            ));
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
                    Means::Other(how) if point.lockable || how.trim().is_empty() => no(
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
