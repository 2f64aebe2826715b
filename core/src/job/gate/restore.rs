//! Restoring: what goes back on, the rotation, and what becomes of readings that do not look as they should.

use super::{Gate, Verdict, no, reason};
use crate::job::{Back, Job, SupplyFinding};
use crate::journal::fact::{Rotation, RotationGuard, SupplyAnswer};
use crate::journal::{EntryId, Fact};
use crate::names::says_something;
use crate::point::Point;

impl Gate<'_> {
    pub(super) fn restore(&self, job: &Job, fact: &Fact) -> Verdict {
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
    pub(super) fn closes(&self, job: &Job, point: &Point, beside: Option<&str>) -> Verdict {
        let at = &point.label;
        match job.back(point) {
            Back::NotOpen => no(format!("{at} is not open in this job: there is nothing to close.")),
            Back::FoundOff => no(format!("{at} was found off: it stays off.")),
            Back::Held(lock) => no(format!(
                "{at} stays open: lock {} of {} is on it, for {}.",
                lock.label,
                self.name(lock.owner),
                lock.job_title
            )),
            Back::After(first) => {
                let first: Vec<&str> = first.iter().map(|p| p.label.as_str()).collect();
                no(format!("{at} goes back on after the supply: first {}.", first.join(", ")))
            }
            Back::Beside(own, others) => match beside {
                Some(why) => reason(why),
                None => no(format!(
                    "{at} brings {own} beside {}. Write why both go on together, or leave it open.",
                    others.join(" and ")
                )),
            },
            Back::On => Ok(()),
        }
    }
}

/// What was read before the isolation cannot be read after it.
fn before(job: &Job) -> Verdict {
    let back = |p: &Point| p.closed.as_ref().is_some_and(|closed| job.this_round(closed));
    if job.points.iter().any(|p| p.opened.is_some() || back(p)) {
        return no(
            "A point was opened already: the rotation before that stays as it was noted, and cannot be read now.",
        );
    }
    Ok(())
}

/// Where nobody knows which way is right, what turns is kept from harm before anything is read.
fn guarded(job: &Job, rotation: Rotation, guard: Option<RotationGuard>) -> Verdict {
    if rotation.is_direction() && guard.is_none() && job.rotation_before().is_none() {
        return no(
            "The rotation was not read before: uncouple what turns, or watch a short bump, then say which you did.",
        );
    }
    Ok(())
}

fn answered(job: &Job, of: &[EntryId], answer: SupplyAnswer, who: &str, how: &str) -> Verdict {
    let named = |f: &&SupplyFinding| f.of.iter().all(|id| of.contains(id));
    let findings = job.supply_findings();
    let named: Vec<&SupplyFinding> = findings.iter().filter(named).collect();
    if named.is_empty() || of.iter().any(|id| !named.iter().any(|f| f.of.contains(id))) {
        return no("Choose which of the readings that stand out this is about.");
    }
    let (ask_who, ask_how) = match answer {
        SupplyAnswer::Mended => ("Write what was wrong.", "Write what was mended."),
        SupplyAnswer::LeftOff => ("Write what is left off.", "Write how it is kept off."),
        SupplyAnswer::Accepted => {
            ("Write who was told and accepts it.", "Write how they were told, and why they accept it.")
        }
    };
    if !says_something(who) {
        return no(ask_who);
    }
    if !says_something(how) {
        return no(ask_how);
    }
    match named.iter().find(|f| f.is_missing()) {
        Some(_) if answer == SupplyAnswer::Accepted => {
            no("Nobody accepts a missing line or neutral: have it mended, or leave off what it feeds.")
        }
        _ => Ok(()),
    }
}
