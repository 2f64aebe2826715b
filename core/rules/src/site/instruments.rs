//! Which instruments are one: two phones may note the same tester, each for itself. An instrument is known by its name and serial number,
//! as people tell them apart, whatever kind somebody called it; nobody parts two of them, because a tester that was failed by mistake is
//! only looked over again.

use std::collections::BTreeMap;

use crate::journal::EntryId;
use crate::names::looks;

/// Instruments by what they look like, and the first entry of those that are one.
#[derive(Debug, Clone, Default)]
pub(super) struct Instruments {
    looks: Vec<(EntryId, [String; 2], [String; 2])>,
    first: BTreeMap<EntryId, EntryId>,
}

impl Instruments {
    /// Takes in an instrument that was noted.
    pub(super) fn note(&mut self, id: EntryId, name: &str, serial: &str) {
        let (name, serial) = (looks(name), looks(serial));
        let like = |a: &[String; 2], b: &[String; 2]| a.iter().zip(b).any(|(a, b)| a == b);
        let same = self.looks.iter().filter(|(_, n, s)| like(n, &name) && like(s, &serial));
        let groups: Vec<EntryId> = same.map(|(id, ..)| self.first_of(*id)).collect();
        self.looks.push((id, name, serial));
        // Alike in capitals with one, in small letters with another: then all three are one.
        if let Some(root) = groups.iter().min().copied() {
            self.first.values_mut().filter(|first| groups.contains(first)).for_each(|first| *first = root);
            self.first.extend(groups.iter().map(|group| (*group, root)));
            self.first.insert(id, root);
        }
    }

    /// The entry that stands for this instrument and all that are one with it.
    pub(super) fn first_of(&self, id: EntryId) -> EntryId {
        self.first.get(&id).copied().unwrap_or(id)
    }

    /// What [`Instruments::first_of`] answers, for those that are one with another.
    pub(super) fn twins(&self) -> &BTreeMap<EntryId, EntryId> {
        &self.first
    }
}
