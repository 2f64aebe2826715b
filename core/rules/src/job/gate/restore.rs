//! Restoring: what goes back on, the rotation, and what becomes of readings that do not look as they should.

use super::{Gate, GateVerdict, no, reason};
use crate::job::refusal::{RestoreRefusal, Unsaid};
use crate::job::{Back, Job, SupplyFinding};
use crate::journal::fact::{Rotation, RotationGuard, SupplyAnswer};
use crate::journal::{EntryId, Fact};
use crate::names::says_something;
use crate::point::Point;

impl Gate<'_> {
    pub(super) fn restore(&self, job: &Job, fact: &Fact) -> GateVerdict {
        match fact {
            Fact::RotationFound { rotation, .. }
                if rotation.is_some_and(Rotation::is_direction) || job.rotation_before().is_some() =>
            {
                before(job)
            }
            Fact::RotationRead { rotation, guard, .. } => guarded(job, *rotation, *guard),
            Fact::SupplyAnswered { of, answer, who, how } => answered(job, of, *answer, who, how),
            _ => Ok(()),
        }
    }

    /// Whether this point may be closed now.
    pub(super) fn closes(&self, job: &Job, point: &Point, beside: Option<&str>) -> GateVerdict {
        let at = point.label.clone();
        match job.back(point) {
            Back::NotOpen => no(RestoreRefusal::NotOpen { at }),
            Back::FoundOff => no(RestoreRefusal::FoundOff { at }),
            Back::Held(lock) => {
                let (owner, job) = (lock.owner, lock.job_title.clone());
                no(RestoreRefusal::Held { at, lock: lock.label.clone(), owner, job })
            }
            Back::After(first) => {
                no(RestoreRefusal::After { at, first: first.iter().map(|p| p.label.clone()).collect() })
            }
            Back::Beside(own, others) => match beside {
                Some(why) => reason(why),
                None => no(RestoreRefusal::Beside { at, own, others }),
            },
            Back::On => Ok(()),
        }
    }
}

/// What was read before the isolation cannot be read after it.
fn before(job: &Job) -> GateVerdict {
    let back = |p: &Point| p.closed.as_ref().is_some_and(|closed| job.this_round(closed));
    if job.points.iter().any(|p| p.opened.is_some() || back(p)) {
        return no(RestoreRefusal::RotationBeforeLate);
    }
    Ok(())
}

/// Where nobody knows which way is right, what turns is kept from harm before anything is read.
fn guarded(job: &Job, rotation: Rotation, guard: Option<RotationGuard>) -> GateVerdict {
    if rotation.is_direction() && guard.is_none() && job.rotation_before().is_none() {
        return no(RestoreRefusal::Unguarded);
    }
    Ok(())
}

fn answered(job: &Job, of: &[EntryId], answer: SupplyAnswer, who: &str, how: &str) -> GateVerdict {
    let named = |f: &&SupplyFinding| f.of.iter().all(|id| of.contains(id));
    let findings = job.supply_findings();
    let named: Vec<&SupplyFinding> = findings.iter().filter(named).collect();
    if named.is_empty() || of.iter().any(|id| !named.iter().any(|f| f.of.contains(id))) {
        return no(RestoreRefusal::AnswerOfNothing);
    }
    let (ask_who, ask_how) = match answer {
        SupplyAnswer::Mended => (Unsaid::WasWrong, Unsaid::Mended),
        SupplyAnswer::LeftOff => (Unsaid::LeftOff, Unsaid::KeptOff),
        SupplyAnswer::Accepted => (Unsaid::Accepts, Unsaid::AcceptsWhy),
    };
    if !says_something(who) {
        return no(RestoreRefusal::AnswerUnsaid(ask_who));
    }
    if !says_something(how) {
        return no(RestoreRefusal::AnswerUnsaid(ask_how));
    }
    match named.iter().find(|f| f.is_missing()) {
        Some(_) if answer == SupplyAnswer::Accepted => no(RestoreRefusal::MissingAccepted),
        _ => Ok(()),
    }
}
