//! Temporary earths: on only after dead was proved, listed like locks with place and person, none left in before a cover or a supply is back
//! (EN 50110-1, the fourth of its five rules; NFPA 70E 120.6; order on and off from the trade: earth end first on, last off).

use super::gate::GateVerdict;
use super::refusal::{EarthRefusal, Refusal};
use super::{Blocker, Job, Standing};
use crate::journal::{EntryId, Fact, Stamp};
use crate::names::{alike, says_something};

/// A temporary earth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TemporaryEarth {
    /// When it was fitted, and by whom.
    pub stamp: Stamp,
    /// What is written on it.
    pub label: String,
    /// Where it is.
    pub at: String,
    /// When it was taken off.
    pub off: Option<Stamp>,
}

impl Job {
    /// The temporary earths that are in.
    pub fn earths_in(&self) -> impl Iterator<Item = &TemporaryEarth> {
        self.earths.iter().filter(|e| e.off.is_none())
    }

    /// What an entry does to the earths.
    pub(super) fn note_earth(&mut self, stamp: Stamp, fact: &Fact) {
        match fact {
            Fact::EarthFitted { label, at } => {
                self.earths.push(TemporaryEarth { stamp, label: label.clone(), at: at.clone(), off: None });
            }
            Fact::EarthRemoved { earth } => {
                if let Some(earth) = self.earths.iter_mut().find(|e| e.stamp.id == *earth) {
                    earth.off.get_or_insert(stamp);
                }
            }
            _ => {}
        }
    }

    /// Whether what is done to earths may be done, and whether none is left in where there may be none.
    pub(super) fn earth_gate(&self, fact: &Fact) -> GateVerdict {
        let no = |why: EarthRefusal| Err(Refusal::Earth(why));
        match fact {
            Fact::EarthFitted { label, at } => {
                if label.trim().is_empty() || !says_something(at) {
                    return no(EarthRefusal::Unsaid);
                }
                if let Some(other) = self.earths_in().find(|e| alike(&e.label, label)) {
                    return no(EarthRefusal::Alike { label: other.label.clone(), at: other.at.clone() });
                }
                // An earth on a live conductor is a short circuit in somebody's hands.
                if matches!(self.standing(), Standing::Proved { .. }) { Ok(()) } else { no(EarthRefusal::NotProved) }
            }
            Fact::EarthRemoved { earth } if !self.earths_in().any(|e| e.stamp.id == *earth) => no(EarthRefusal::NotIn),
            Fact::CoverBack { .. } | Fact::PointClosed { .. } => match self.earths_in().next() {
                Some(earth) => no(EarthRefusal::LeftIn { label: earth.label.clone(), at: earth.at.clone() }),
                None => Ok(()),
            },
            _ => Ok(()),
        }
    }

    pub(super) fn earth_blockers(&self, blockers: &mut Vec<Blocker>) {
        let left = self.earths_in().map(|e| Blocker::EarthIn { label: e.label.clone(), at: e.at.clone() });
        blockers.extend(left);
    }

    /// The label of an earth whose removal ends the proof: people work under it.
    pub(super) fn earth_over(&self, earth: EntryId) -> Option<String> {
        let over = self.finished.is_some() || self.given_up.is_some();
        self.earths.iter().find(|e| e.stamp.id == earth && !over).map(|e| e.label.clone())
    }
}
