//! What may be done with a lock, and whether everybody's lock is on.
//!
//! Source of the forced removal's conditions: 29 CFR 1910.147(e)(3); of the group's: (f)(3); of the shift change's: (f)(4).

use std::collections::BTreeSet;

use super::{Forced, Lock, LockBox, Means, Point};
use stillbar_journal::EntryId;
use stillbar_journal::fact::{KeyAt, On};

/// Why a lock is not taken off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Stays {
    /// It is off already.
    Off,
    /// Only its owner takes it off.
    NotTheirs {
        /// The owner.
        owner: EntryId,
    },
    /// Its key is in a box, and locks are on the box.
    Boxed {
        /// Their owners, each once.
        owners: Vec<EntryId>,
    },
}

/// What a forced removal lacks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ForcedLack {
    /// Nobody who answers for it is named.
    Authority,
    /// How it was found that the owner is not on site.
    NotOnSite,
    /// An attempt to reach the owner.
    Sought,
}

/// Why `person` may not take `lock` off; `None` if they may.
pub fn may_remove(lock: &Lock, person: EntryId, locks: &[Lock]) -> Option<Stays> {
    if !lock.is_on() {
        return Some(Stays::Off);
    }
    if lock.owner != person {
        return Some(Stays::NotTheirs { owner: lock.owner });
    }
    // The key of this lock lies in a box: as long as anybody's lock is on the box, nobody can have it.
    if let KeyAt::Box(lockbox) = lock.key {
        let on_box = locks.iter().filter(|l| l.is_on() && l.on == On::Box(lockbox));
        let owners: BTreeSet<EntryId> = on_box.map(|l| l.owner).collect();
        if !owners.is_empty() {
            return Some(Stays::Boxed { owners: owners.into_iter().collect() });
        }
    }
    None
}

/// Whether `person` has a lock of their own between them and `point`: on the point, or on a box that holds the key of a lock
/// on the point.
pub fn covered(point: &Point, person: EntryId, locks: &[Lock]) -> bool {
    let on_point = || locks.iter().filter(|l| l.is_on() && l.on == On::Point(point.stamp.id));
    // What is secured by other means than a lock is held by one person for all; it is shown wherever the proof is shown.
    on_point().any(|l| matches!(l.means, Means::Other(_)))
        || on_point().any(|l| l.owner == person && l.key == KeyAt::Owner)
        || on_point().any(|l| match l.key {
            KeyAt::Box(lockbox) => locks
                .iter()
                .any(|own| own.is_on() && own.on == On::Box(lockbox) && own.owner == person && own.key == KeyAt::Owner),
            KeyAt::Owner => false,
        })
}

/// Those of `people` who have no lock of their own at `point`.
pub fn uncovered(point: &Point, people: &[EntryId], locks: &[Lock]) -> Vec<EntryId> {
    people.iter().copied().filter(|p| !covered(point, *p, locks)).collect()
}

/// The points at which `person` has no lock yet: a shift may not be taken while there is one.
pub fn gap<'a>(points: &'a [Point], person: EntryId, locks: &[Lock]) -> Vec<&'a Point> {
    points.iter().filter(|p| !covered(p, person, locks)).collect()
}

/// What a forced removal still lacks before the lock may come off.
pub fn forced_lacks(forced: Option<&Forced>) -> Vec<ForcedLack> {
    let Some(forced) = forced else {
        return vec![ForcedLack::Authority];
    };
    let mut lacks = Vec::new();
    if forced.not_on_site.is_empty() {
        lacks.push(ForcedLack::NotOnSite);
    }
    if forced.sought.is_empty() {
        lacks.push(ForcedLack::Sought);
    }
    lacks
}

impl LockBox {
    /// The locks whose keys are in this box.
    pub fn keys<'a>(&self, locks: &'a [Lock]) -> Vec<&'a Lock> {
        locks.iter().filter(|l| l.is_on() && l.key == KeyAt::Box(self.stamp.id)).collect()
    }
}
