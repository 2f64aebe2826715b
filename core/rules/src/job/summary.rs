//! What an entry tells, with the values of its job that a sentence of it needs: so it can be told where the job is not at hand.

use super::Job;
use super::asked::Subject;
use super::steps::{Step, StepOf};
use crate::journal::{Entry, EntryId, Fact, Newer};

/// An entry, told of a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Summary {
    /// What it records.
    pub fact: Fact,
    /// Whether a newer version wrote more in it than this one can read.
    pub more: bool,
    /// The part of the job that it names by an id.
    pub part: Part,
}

/// A part of a job as it is called there; `None`: it is not known, or withdrawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Part {
    /// The entry names none.
    Nothing,
    /// A point, by its label.
    Point(Option<String>),
    /// A circuit, by its label.
    Circuit(Option<String>),
    /// What a lock is on.
    Place(Option<String>),
    /// A lock.
    Lock(Option<NamedLock>),
    /// What may still hold a direct voltage.
    Direct(Option<String>),
    /// A source that is known at the site.
    Source(Option<String>),
    /// A cover.
    Cover(Option<String>),
    /// A temporary earth, by its number.
    Earth(Option<String>),
    /// The point or source that a question is asked of, or the company's own point.
    Asked(Option<String>),
    /// A step.
    Step(Option<StepOf>),
}

/// A lock as sentences name it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NamedLock {
    /// What is written on it.
    pub label: String,
    /// Its owner.
    pub owner: EntryId,
    /// What it is on; `None` if that is not known here.
    pub place: Option<String>,
}

impl Summary {
    /// What `entry` tells of `job`.
    pub fn of(job: &Job, entry: &Entry) -> Summary {
        let fact = entry.body.fact.clone();
        Summary { part: part(job, &fact), more: entry.newer == Some(Newer::Beside), fact }
    }
}

fn part(job: &Job, fact: &Fact) -> Part {
    match fact {
        Fact::CircuitOff { circuit, .. } | Fact::CircuitOn { circuit } => {
            let found = job.circuits.iter().find(|c| c.stamp.id == *circuit);
            Part::Circuit(found.map(|c| c.label.clone()))
        }
        Fact::PointOpened { point, .. }
        | Fact::SignPosted { point }
        | Fact::TagBound { point, .. }
        | Fact::TagGone { point, .. }
        | Fact::TagRead { point, .. }
        | Fact::PhotoTaken { of: point, .. }
        | Fact::PointsParted { point, .. }
        | Fact::SignRemoved { point }
        | Fact::PointClosed { point, .. }
        | Fact::PointDrawn { point, .. } => Part::Point(job.point(*point).map(|p| p.label.clone())),
        Fact::LockFitted { on, .. } => Part::Place(job.lock_label(*on)),
        Fact::KeyOffered { lock, .. }
        | Fact::LockRemoved { lock, .. }
        | Fact::ForcedBegun { lock, .. }
        | Fact::LockForced { lock, .. } => Part::Lock(named_lock(job, *lock)),
        Fact::DischargeRead { of, .. } => {
            Part::Direct(job.direct().into_iter().find(|(id, ..)| id == of).map(|(_, what, _)| what))
        }
        Fact::SourceElsewhere { source, .. } => {
            let known = job.known.iter().flat_map(|k| &k.sources).find(|s| s.source == *source);
            Part::Source(known.map(|s| s.what.clone()))
        }
        Fact::CoverBack { cover } => {
            Part::Cover(job.covers.iter().find(|(s, ..)| s.id == *cover).map(|(_, what, _)| what.clone()))
        }
        Fact::EarthRemoved { earth } => {
            Part::Earth(job.earths.iter().find(|e| e.stamp.id == *earth).map(|e| e.label.clone()))
        }
        Fact::Answered { .. } => Part::Asked(job.called(&Subject::of(fact))),
        Fact::Deviated { step, .. } => Part::Step(Step::named(step).map(|step| step.of_job(job))),
        _ => Part::Nothing,
    }
}

fn named_lock(job: &Job, lock: EntryId) -> Option<NamedLock> {
    let lock = job.lock(lock)?;
    Some(NamedLock { label: lock.label.clone(), owner: lock.owner, place: job.lock_label(lock.on) })
}
