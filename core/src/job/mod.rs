//! A job: what the journal says of it, and what it still lacks.
//!
//! Promises: a [`Job`] is nothing but a fold over the job's entries, so the same entries give the same job on every device and
//! in any order of arrival; no step is ticked, [`steps`] works out what each one lacks; nothing is appended that [`gate`]
//! refuses. Start at [`Job::fold`].

mod case;
mod fold;
pub mod gate;
mod heard;
mod lacks;
mod presence;
pub use heard::Heard;
pub(crate) use lacks::waiting;

pub mod steps;

use crate::journal::fact::{About, Duty, Found, On, ProvedOn, Rotation, SourceKind};
use crate::journal::{EntryId, Hlc, Stamp};
use crate::point::{Lock, LockBox, Point, uncovered};
use crate::prove::judge::energised::Tolerance;
use crate::prove::{Conductor, Earthing, Order, Reading, Run, Standing, System, Taken, Test, Voided};
use crate::tag::TagId;

/// A job as the journal tells it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Job {
    /// The entry that opened it; its id is the job's.
    pub stamp: Stamp,
    /// The site.
    pub site: Option<EntryId>,
    /// What the job is.
    pub title: String,
    /// Where on the site.
    pub place: String,
    /// What is isolated.
    pub equipment: String,
    /// What will be worked on.
    pub scope: String,
    /// The conductors.
    pub system: System,
    /// The earthing arrangement.
    pub earthing: Earthing,
    /// The order of the dead test.
    pub order: Order,
    /// Line to neutral (three-wire: line to line), millivolts.
    pub nominal: u32,
    /// Greatest reading that counts as dead, millivolts.
    pub dead_limit: u32,
    /// What the supply is held against when it is back.
    pub tolerance: Tolerance,
    /// What is worked on in the site's network: ids of nodes or links; empty if nobody said.
    pub zone: Vec<String>,
    /// Ways that the network shows and for which a person answers.
    pub differs: Vec<Differs>,
    /// The permit: its reference, or why there is none.
    pub permit: Option<(Stamp, Result<String, String>)>,
    /// Who takes part.
    pub workers: Vec<Worker>,
    /// Who was told what.
    pub told: Vec<Told>,
    /// Barriers and danger signs.
    pub barriers: Vec<(Stamp, String, String)>,
    /// Answers to the question for other sources.
    pub sources: Vec<Source>,
    /// Answers to the question for stored energy.
    pub stored: Vec<Stored>,
    /// Points of isolation.
    pub points: Vec<Point>,
    /// Lock boxes.
    pub boxes: Vec<LockBox>,
    /// Locks, on and off.
    pub locks: Vec<Lock>,
    /// Circuits.
    pub circuits: Vec<Circuit>,
    /// Why no circuit needs shedding.
    pub no_circuits: Option<(Stamp, String)>,
    /// Instruments as they were checked for this job; the latest check of each counts.
    pub instruments: Vec<Checked>,
    /// Photos.
    pub photos: Vec<Photo>,
    /// Covers that came off, and when they came back.
    pub covers: Vec<(Stamp, String, Option<Stamp>)>,
    /// Why no cover comes off.
    pub no_covers: Option<(Stamp, String)>,
    /// Runs of the dead test, first to last.
    pub runs: Vec<Run>,
    /// Everything that ended the proofs before it.
    pub voided: Vec<Voided>,
    /// Causes of indications.
    pub causes: Vec<(Stamp, String)>,
    /// When work began or went on, and ended.
    pub work: Vec<(Stamp, WorkTurn)>,
    /// The work is finished: when, and how it was seen that people and tools are clear.
    pub finished: Option<(Stamp, String)>,
    /// Readings with the supply back.
    pub presence: Vec<Taken>,
    /// The rotation.
    pub rotation: Option<(Stamp, Rotation, String)>,
    /// An offer of the shift that was not answered yet: the entry, by whom, to whom, what was told.
    pub shift: Option<(EntryId, EntryId, EntryId, String)>,
    /// The hand-back: when, to whom, note, drawn signature.
    pub handed: Option<(Stamp, String, String, String)>,
    /// Deviations.
    pub deviations: Vec<Deviation>,
    /// When the scope last changed: what was done before belongs to an earlier round.
    pub round: Hlc,
    /// What each device had of the others' entries.
    pub heard: Heard,
    /// Entries that were withdrawn, and why.
    pub withdrawn: Vec<(Stamp, EntryId, String)>,
}

/// A person in a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Worker {
    /// Who.
    pub person: EntryId,
    /// As what.
    pub duty: Duty,
    /// Since when.
    pub joined: Stamp,
    /// When they left.
    pub left: Option<Stamp>,
}

/// Ways and doubts of the network that do not count.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Differs {
    /// When and by whom.
    pub stamp: Stamp,
    /// Which: the parts on the way.
    pub ways: Vec<String>,
    /// Why they do not count.
    pub why: String,
}

/// Somebody was told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    /// When.
    pub stamp: Stamp,
    /// Who.
    pub who: String,
    /// How.
    pub how: String,
    /// About what.
    pub about: About,
}

/// An answer to the question for one kind of source.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// When and by whom.
    pub stamp: Stamp,
    /// Which kind.
    pub kind: SourceKind,
    /// What was found, or `None`.
    pub found: Option<Found>,
    /// Where they looked.
    pub looked: String,
}

/// An answer to the question for stored energy.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stored {
    /// When and by whom.
    pub stamp: Stamp,
    /// What was found, or `None`.
    pub found: Option<Found>,
    /// The waiting time on its label, in seconds.
    pub seconds: u32,
    /// Where they looked.
    pub looked: String,
}

/// A circuit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Circuit {
    /// The entry that listed it.
    pub stamp: Stamp,
    /// Its name on the board.
    pub label: String,
    /// What it serves.
    pub serves: String,
    /// When it was switched off, and how it was seen to go off.
    pub off: Option<(Stamp, String)>,
    /// When it was switched on again.
    pub on: Option<Stamp>,
}

/// An instrument as it was checked before use.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Checked {
    /// When and by whom.
    pub stamp: Stamp,
    /// Which.
    pub instrument: EntryId,
    /// What is wrong with it, in words; empty if nothing is.
    pub faults: Vec<&'static str>,
    /// Anything else.
    pub note: String,
}

/// A photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    /// When and by whom.
    pub stamp: Stamp,
    /// SHA-256 of the file, hex.
    pub sha256: String,
    /// Bytes of the file.
    pub length: u64,
    /// Its media type.
    pub media: String,
    /// SHA-256 of its copies, hex.
    pub copies: Vec<String>,
    /// The entry of the thing that it shows.
    pub of: EntryId,
    /// A note.
    pub note: String,
    /// The tags that were read in it.
    pub tags: Vec<TagId>,
    /// What was said about it when it was taken.
    pub doubts: Vec<String>,
}

/// A turn of the work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WorkTurn {
    /// Began or went on, under this run.
    Began(EntryId),
    /// Was left.
    Left(String),
    /// Was finished.
    Finished,
}

/// A deviation.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Deviation {
    /// When and by whom.
    pub stamp: Stamp,
    /// The step's name.
    pub step: String,
    /// Why.
    pub why: String,
}

impl Job {
    /// The job's name.
    pub fn id(&self) -> EntryId {
        self.stamp.id
    }

    /// The conductors to test.
    pub fn conductors(&self) -> Vec<Conductor> {
        self.system.conductors()
    }

    /// The dead test.
    pub fn plan(&self) -> Vec<Test> {
        crate::prove::plan(&self.conductors(), self.order)
    }

    /// The run that counts: the latest.
    pub fn run(&self) -> Option<&Run> {
        self.runs.last()
    }

    /// What stands proved.
    pub fn standing(&self) -> Standing {
        let shown = match self.run() {
            None => return Standing::NotBegun,
            Some(run) => run.standing(&self.plan(), self.dead_limit, &self.voided),
        };
        // A test at conductors that anybody can make live again proves nothing, whatever the readings were.
        match (shown, self.open_way()) {
            (Standing::Proved { .. }, Some(why)) => Standing::Void { why },
            (shown, _) => shown,
        }
    }

    /// Where the isolation does not hold now: a point that is not open, has no lock, or lacks the lock of somebody on the job.
    pub fn open_way(&self) -> Option<String> {
        if self.points.is_empty() {
            return Some("There is no point of isolation.".into());
        }
        let mut charged = Vec::new();
        self.discharge_lacks(&mut |why| charged.push(why));
        if let Some(why) = charged.pop() {
            return Some(why);
        }
        let people = self.people();
        self.points.iter().find_map(|p| {
            let at = &p.label;
            if p.opened.is_none() {
                Some(format!("{at} is not open."))
            } else if !self.locks_on().any(|l| l.on == On::Point(p.stamp.id)) {
                Some(format!("No lock is on {at}."))
            } else if !uncovered(p, &people, &self.locks).is_empty() {
                Some(format!("Somebody on the job has no lock of their own on {at}."))
            } else {
                None
            }
        })
    }

    /// What needs a reading of direct voltage: stored energy, and every UPS, PV or battery that was found. Its entry, its name, and
    /// the waiting time on its label in seconds.
    pub fn direct(&self) -> Vec<(EntryId, String, u32)> {
        let stored = self.stored.iter();
        let stored = stored.filter_map(|s| s.found.as_ref().map(|found| (s.stamp.id, found.what.clone(), s.seconds)));
        let sources =
            self.sources.iter().filter(|s| matches!(s.kind, SourceKind::Ups | SourceKind::Pv | SourceKind::Battery));
        let sources = sources.filter_map(|s| s.found.as_ref().map(|f| (s.stamp.id, f.what.clone(), 0)));
        stored.chain(sources).collect()
    }

    /// Whether a cause was noted after the latest indication of the latest run.
    pub fn cause_known(&self) -> bool {
        let Some(run) = self.run() else { return true };
        let lit = run.readings.iter().filter(|t| t.reading.indicates(self.dead_limit)).map(|t| t.stamp.clock).max();
        lit.is_none_or(|lit| self.causes.iter().any(|(stamp, _)| stamp.clock > lit))
    }

    /// Whether something was done in the round that is under way.
    pub fn this_round(&self, stamp: &Stamp) -> bool {
        stamp.clock > self.round
    }

    /// Those who take part now.
    pub fn present(&self) -> impl Iterator<Item = &Worker> {
        self.workers.iter().filter(|w| w.left.is_none())
    }

    /// Those who take part now, by name.
    pub fn people(&self) -> Vec<EntryId> {
        self.present().map(|w| w.person).collect()
    }

    /// Who answers for the isolation.
    pub fn in_charge(&self) -> Option<EntryId> {
        self.present().find(|w| w.duty == Duty::InCharge).map(|w| w.person)
    }

    /// Whether people are at work now.
    pub fn working(&self) -> bool {
        // Work that began under an earlier run does not go on by itself under a new one.
        matches!(self.work.last(), Some((_, WorkTurn::Began(run))) if self.run().is_some_and(|r| r.id() == *run))
    }

    /// The locks that are on.
    pub fn locks_on(&self) -> impl Iterator<Item = &Lock> {
        self.locks.iter().filter(|l| l.is_on())
    }

    /// A lock by name.
    pub fn lock(&self, id: EntryId) -> Option<&Lock> {
        self.locks.iter().find(|l| l.stamp.id == id)
    }

    /// A point by name.
    pub fn point(&self, id: EntryId) -> Option<&Point> {
        self.points.iter().find(|p| p.stamp.id == id)
    }

    /// The link of the site's network that a lock is on.
    pub fn switch_of(&self, on: On) -> Option<&String> {
        match on {
            On::Point(point) => self.point(point)?.switch.as_ref(),
            On::Box(_) => None,
        }
    }

    /// The photos of a thing.
    pub fn photos_of(&self, id: EntryId) -> impl Iterator<Item = &Photo> {
        self.photos.iter().filter(move |p| p.of == id)
    }

    /// The latest answer for each kind of source, and every source that was found.
    pub fn found(&self) -> impl Iterator<Item = &Source> {
        self.sources.iter().filter(|s| s.found.is_some())
    }

    /// The locks that hold a point now: on it, or on a box that holds the key of one on it.
    pub fn locks_at(&self, point: EntryId) -> Vec<&Lock> {
        let boxes = self.boxes_of(point);
        let here = |l: &&Lock| match l.on {
            On::Point(id) => id == point,
            On::Box(id) => boxes.iter().any(|b| b.stamp.id == id),
        };
        self.locks_on().filter(here).collect()
    }

    /// Whether a point of the normal supply opens this conductor.
    pub fn opens(&self, conductor: &str) -> bool {
        self.points.iter().any(|p| p.cuts.is_none() && p.poles.iter().any(|pole| pole == conductor))
    }

    /// The boxes that hold the key of a lock on a point.
    pub fn boxes_of(&self, point: EntryId) -> Vec<&LockBox> {
        let holds = |b: &&LockBox| b.keys(&self.locks).iter().any(|l| l.on == On::Point(point));
        self.boxes.iter().filter(holds).collect()
    }

    /// The latest presence reading of a pair.
    pub fn presence_of(&self, first: &str, then: &str) -> Option<Reading> {
        let of_pair = |t: &&Taken| t.first == first && t.then == then && self.this_round(&t.stamp);
        self.presence.iter().rev().find(of_pair).map(|t| t.reading)
    }

    /// What the indicator of the latest run was proved on first.
    pub fn proved_on(&self) -> Option<ProvedOn> {
        self.run().map(|r| r.on)
    }
}
