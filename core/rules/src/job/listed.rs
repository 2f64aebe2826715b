//! What a list of jobs, locks and tags holds of a job, on a phone and in an office: codes and values, no sentence, and no name of a person,
//! so that neither a word nor a corrected name changes a row.

use super::steps::StepOf;
use super::{Job, Standing};
use crate::journal::EntryId;
use crate::journal::fact::On;
use crate::point::{Lock, Off, Point, PointTag};

/// What stands proved, for a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ProofState {
    /// Proved dead.
    Proved,
    /// A voltage was met.
    Stop,
    /// Anything else.
    Live,
    /// The job is over.
    HandedBack,
}

impl ProofState {
    /// Of a job, as far as it is held against anything.
    pub fn of(job: &Job) -> ProofState {
        if job.handed.is_some() {
            return ProofState::HandedBack;
        }
        match job.standing() {
            Standing::Proved { .. } => ProofState::Proved,
            Standing::Indication { .. } => ProofState::Stop,
            _ => ProofState::Live,
        }
    }

    /// Its name in the tables.
    pub fn code(self) -> &'static str {
        match self {
            ProofState::Proved => "proved",
            ProofState::Stop => "stop",
            ProofState::Live => "live",
            ProofState::HandedBack => "handed-back",
        }
    }

    /// The state of this name; anything else is to be treated as live.
    pub fn of_code(code: &str) -> ProofState {
        let all = [ProofState::Proved, ProofState::Stop, ProofState::HandedBack];
        all.into_iter().find(|s| s.code() == code).unwrap_or(ProofState::Live)
    }
}

/// A lock in a list.
#[derive(Debug, Clone, Copy)]
pub struct LockListed<'a> {
    /// The lock.
    pub lock: &'a Lock,
    /// Whether it was forced off and its owner is not told yet.
    pub owed: bool,
    /// The point that it is on; `None` on a box.
    pub point: Option<EntryId>,
    /// The link of the network that it is on.
    pub switch: Option<&'a String>,
}

/// A tag that hangs or hung at a point.
#[derive(Debug, Clone, Copy)]
pub struct TagListed<'a> {
    /// The point.
    pub point: &'a Point,
    /// How it hangs there.
    pub hung: &'a PointTag,
}

impl Job {
    /// The step whose turn it is, as a list shows it.
    pub fn next_listed(&self) -> Option<StepOf> {
        self.current().map(|step| step.of_job(self))
    }

    /// Every lock of the job, also what is off.
    pub fn locks_listed(&self) -> impl Iterator<Item = LockListed<'_>> {
        self.locks.iter().map(|lock| {
            let owed =
                matches!(lock.off, Some(Off::Forced(_))) && lock.forced.as_ref().is_none_or(|f| f.told.is_none());
            let point = match lock.on {
                On::Point(point) => Some(point),
                On::Box(_) => None,
            };
            LockListed { lock, owed, point, switch: self.switch_of(lock.on) }
        })
    }

    /// Every tag, once for each point: one that came off and hangs there again is as it is now.
    pub fn tags_listed(&self) -> impl Iterator<Item = TagListed<'_>> {
        self.points.iter().flat_map(|point| {
            let later =
                |hung: &PointTag| point.tags.iter().any(|t| t.tag == hung.tag && t.stamp.clock > hung.stamp.clock);
            point.tags.iter().filter(move |hung| !later(hung)).map(move |hung| TagListed { point, hung })
        })
    }
}
