//! One run of a dead test: the indicator proved, readings, the indicator proved again, and again where the test is long.
//!
//! What a run shows on its own is worked out here; what stands proved in a job, from all its runs and all that is known beside them, by
//! the fold of the job (`Job::standing`).

use std::collections::BTreeMap;

use super::{Reading, Test};
use crate::names::says_something;
use stillbar_journal::fact::{EarthProof, ProvedOn};
use stillbar_journal::{DeviceId, EntryId, Stamp};

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
    /// In the range for direct voltage.
    pub dc: bool,
    /// The latest proof of the indicator that whoever read it knew of: its place in [`Run::proofs`].
    pub since: Option<usize>,
    /// The first proof after it that was made by somebody who knew of the reading.
    pub until: Option<usize>,
}

/// A proof of the indicator.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proof {
    /// When and by whom.
    pub stamp: Stamp,
    /// On what.
    pub on: ProvedOn,
    /// Whether it responded as it should.
    pub works: bool,
}

/// A proof that the protective conductor is earth, or that it is not.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Earth {
    /// When and by whom.
    pub stamp: Stamp,
    /// In which way.
    pub way: EarthProof,
    /// Where, in words.
    pub how: String,
    /// Whether it is earth.
    pub holds: bool,
}

/// One run. Begins with the first proof of the indicator.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// The first proof; its id names the run.
    pub before: Stamp,
    /// What whoever began it had of each device's entries in this job.
    pub saw: BTreeMap<DeviceId, u64>,
    /// The indicator.
    pub indicator: EntryId,
    /// Every proof of it, the first one first.
    pub proofs: Vec<Proof>,
    /// The readings, in the journal's order.
    pub readings: Vec<Taken>,
    /// The proofs of earth.
    pub earth: Vec<Earth>,
    /// Readings of direct voltage: of what, and what was read.
    pub discharge: Vec<(Stamp, EntryId, Reading)>,
    /// Whether somebody who works under supervision began it or read anything in it.
    pub by_learner: bool,
    /// Who stood by a learner's run, and how many proofs they had seen.
    pub signed: Option<(Stamp, usize)>,
}

/// A voltage that was met.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Met {
    /// When and by whom.
    pub stamp: Stamp,
    /// Where; `None` where it was a pair, or direct voltage at something that is not listed any more.
    pub at: Option<String>,
    /// The conductors, where it was a pair.
    pub pair: Option<[String; 2]>,
    /// What was read.
    pub reading: Reading,
}

impl Run {
    /// The run's name.
    pub fn id(&self) -> EntryId {
        self.before.id
    }

    /// Whether whoever began this run had that entry of the job.
    pub fn knew(&self, earlier: &Stamp) -> bool {
        let seq =
            if earlier.device == self.before.device { Some(&self.before.seq) } else { self.saw.get(&earlier.device) };
        seq.is_some_and(|seq| earlier.seq <= *seq)
    }

    /// The proof of the indicator after the readings: the last one, if there is one beside the first.
    pub fn after(&self) -> Option<&Proof> {
        self.proofs.get(1..)?.last()
    }

    /// What the indicator was proved on first.
    pub fn on(&self) -> Option<&ProvedOn> {
        self.proofs.first().map(|p| &p.on)
    }

    /// Whether every proof of the indicator was good.
    pub fn indicator_works(&self) -> bool {
        self.proofs.iter().all(|p| p.works)
    }

    /// Whether the protective conductor was shown to be earth in this run, before the last proof of the indicator, and never shown not to be.
    pub fn reference_holds(&self) -> bool {
        let last = self.after().map(|p| p.stamp.clock);
        !self.earth.is_empty()
            && self.earth.iter().all(|e| e.holds)
            && self.earth.iter().any(|e| last.is_none_or(|last| e.stamp.clock < last))
    }

    /// The latest proof of earth; one that failed goes before any that holds.
    pub fn reference(&self) -> Option<&Earth> {
        self.earth.iter().find(|e| !e.holds).or(self.earth.last())
    }

    /// The readings of one pair, whichever way round it was probed.
    pub fn of<'a>(&'a self, test: &'a Test) -> impl Iterator<Item = &'a Taken> {
        self.readings.iter().filter(|t| t.is_of(&test.first, &test.then))
    }

    /// The tests of `plan` that have no reading yet.
    pub fn missing<'a>(&'a self, plan: &'a [Test]) -> Vec<&'a Test> {
        plan.iter().filter(|t| self.of(t).next().is_none()).collect()
    }
}

impl Proof {
    /// The proving unit that the indicator was proved on; `None` if it was a source known to be live.
    pub fn unit(&self) -> Option<EntryId> {
        match self.on {
            ProvedOn::ProvingUnit(unit) => Some(unit),
            ProvedOn::KnownSource(_) => None,
        }
    }

    /// Whether it says what the indicator was proved on, as far as this entry alone can tell.
    pub fn is_named(&self) -> bool {
        match &self.on {
            ProvedOn::ProvingUnit(_) => true,
            ProvedOn::KnownSource(what) => says_something(what),
        }
    }
}

impl Taken {
    /// A reading that belongs to no run.
    pub fn alone(stamp: Stamp, first: String, then: String, reading: Reading) -> Taken {
        Taken { stamp, first, then, reading, dc: false, since: None, until: None }
    }

    /// Whether it is of these two conductors, whichever way round.
    pub fn is_of(&self, one: &str, other: &str) -> bool {
        (self.first == one && self.then == other) || (self.first == other && self.then == one)
    }
}
