//! One run of a dead test: the indicator proved, readings, the indicator proved again. What stands proved is worked out here.

use serde::{Deserialize, Serialize};

use super::Test;
use super::figures::volts;
use crate::journal::fact::ProvedOn;
use crate::journal::{EntryId, Hlc, Stamp};

/// What an instrument said between two conductors.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reading {
    /// No indication.
    None,
    /// A low-resistance path, and no voltage indicated.
    Continuity,
    /// Lit. The level in volts if it was read.
    Lit(Option<u16>),
    /// A number, in millivolts.
    Millivolts(u32),
}

impl Reading {
    /// Whether this counts as an indication of voltage. `dead_limit` in millivolts: the greatest number that counts as dead, that
    /// for AC or for DC as the reading is ([`super::limit::Limits`]).
    pub fn indicates(self, dead_limit: u32) -> bool {
        match self {
            Reading::None | Reading::Continuity => false,
            Reading::Lit(_) => true,
            Reading::Millivolts(mv) => mv > dead_limit,
        }
    }

    /// In words.
    pub fn word(self) -> String {
        match self {
            Reading::None => "no indication".into(),
            Reading::Continuity => "continuity".into(),
            Reading::Lit(None) => "lit".into(),
            Reading::Lit(Some(volts)) => format!("lit to {volts} V"),
            Reading::Millivolts(mv) => format!("{} V", volts(mv)),
        }
    }
}

/// A reading that was taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// When and by whom.
    pub stamp: Stamp,
    /// Where the first probe went.
    pub first: String,
    /// Where the second probe went.
    pub then: String,
    /// What was read.
    pub reading: Reading,
}

/// One run. Begins with the first proof of the indicator.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// The first proof; its id names the run.
    pub before: Stamp,
    /// What ended the proofs before it on another device, unknown to the one that began this run.
    pub unseen: Option<String>,
    /// The indicator.
    pub indicator: EntryId,
    /// What it was proved on first.
    pub on: ProvedOn,
    /// The readings, in the order in which they were taken.
    pub readings: Vec<Taken>,
    /// The proof of the reference: when, how, and whether it holds. Once it failed it stays failed.
    pub reference: Option<(Stamp, String, bool)>,
    /// Readings of direct voltage: of what, and what was read.
    pub discharge: Vec<(Stamp, EntryId, Reading)>,
    /// The second proof: when, on what, and whether it worked. Once it is written it is never replaced.
    pub after: Option<(Stamp, ProvedOn, bool)>,
}

/// Something that ended every proof before it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Voided {
    /// When, and by which device.
    pub stamp: Stamp,
    /// What, as a sentence.
    pub why: String,
}

/// What stands proved. Only `Proved` allows work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Standing {
    /// No run has begun.
    NotBegun,
    /// A run is under way; so many pairs are missing. With none missing, the reference or the second proof is.
    UnderWay {
        /// Pairs without a reading.
        missing: usize,
    },
    /// A pair gave an indication.
    Indication {
        /// The readings that indicate.
        readings: Vec<Taken>,
    },
    /// A run is worth nothing any more.
    Void {
        /// A sentence.
        why: String,
    },
    /// Every pair was read without indication and the indicator worked before and after.
    Proved {
        /// The second proof of the indicator.
        since: Stamp,
    },
}

impl Run {
    /// The run's name.
    pub fn id(&self) -> EntryId {
        self.before.id
    }

    /// Whether the reference was proved in this run, before the second proof of the indicator.
    pub fn reference_holds(&self) -> bool {
        let in_time = |at: Hlc| self.after.as_ref().is_none_or(|(after, ..)| at < after.clock);
        matches!(&self.reference, Some((stamp, _, true)) if in_time(stamp.clock))
    }

    /// The readings of one pair, whichever way round it was probed.
    pub fn of<'a>(&'a self, test: &'a Test) -> impl Iterator<Item = &'a Taken> {
        self.readings.iter().filter(|t| {
            (&t.first, &t.then) == (&test.first, &test.then) || (&t.first, &t.then) == (&test.then, &test.first)
        })
    }

    /// The tests of `plan` that have no reading yet.
    pub fn missing<'a>(&'a self, plan: &'a [Test]) -> Vec<&'a Test> {
        plan.iter().filter(|t| self.of(t).next().is_none()).collect()
    }

    /// What this run shows, against `plan`, with everything in `voided` that may have ended it.
    ///
    /// Order of the cases: whatever voids it wins over what was read, an indication wins over the second proof, and a pair that is
    /// missing wins over "proved".
    pub fn standing(&self, plan: &[Test], dead_limit: u32, voided: &[Voided]) -> Standing {
        if let Some(void) = voided.iter().find(|v| v.stamp.clock >= self.before.clock) {
            return Standing::Void { why: void.why.clone() };
        }
        if let Some(why) = &self.unseen {
            return Standing::Void { why: why.clone() };
        }
        if let Some((_, _, false)) = self.reference {
            return Standing::Void {
                why: "The reference is not earth: readings against it show nothing. Find the break first.".into(),
            };
        }
        if let Some((_, _, false)) = self.after {
            return Standing::Void {
                why: "The indicator failed its second proof: every test since the first proof is void.".into(),
            };
        }
        let lit: Vec<Taken> = self.readings.iter().filter(|t| t.reading.indicates(dead_limit)).cloned().collect();
        if !lit.is_empty() {
            return Standing::Indication { readings: lit };
        }
        // What was read after the second proof was read with an indicator that nobody proved afterwards.
        let in_time = |t: &Taken| self.after.as_ref().is_none_or(|(after, ..)| t.stamp.clock < after.clock);
        let missing = plan.iter().filter(|test| !self.of(test).any(in_time)).count();
        match self.after {
            Some((since, _, true)) if missing == 0 && self.reference_holds() => Standing::Proved { since },
            _ => Standing::UnderWay { missing },
        }
    }
}
