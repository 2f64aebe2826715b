//! The proof and what rests on it: instruments, readings, reference, work; and what is switched.

use super::{Gate, GateVerdict, no, reason};
use crate::job::refusal::{ProofRefusal, Refusal, SwitchRefusal};
use crate::job::{Job, Standing};
use crate::journal::fact::{EarthProof, InstrumentKind, On, ProvedOn};
use crate::journal::{EntryId, Fact};
use crate::names::says_something;
use crate::point::Off;

impl Gate<'_> {
    fn fit_for_use(&self, job: &Job, id: EntryId, kind: InstrumentKind) -> GateVerdict {
        let known = self.world.instruments.get(&id).is_some_and(|i| i.kind == kind);
        let Some(checked) = job.instruments.iter().find(|c| c.instrument == id).filter(|_| known) else {
            return no(ProofRefusal::NotChecked);
        };
        if let Some(fault) = checked.faults.first() {
            return no(ProofRefusal::Faulty { instrument: id, fault: *fault });
        }
        let failures = self.across.failures_of(id);
        if failures.iter().any(|failure| !job.checked_since(id, *failure, &self.now, &|_| true)) {
            return no(ProofRefusal::Failed { instrument: id });
        }
        if !job.checked_this_shift(id, &self.now) {
            return no(ProofRefusal::NotThisShift { instrument: id });
        }
        Ok(())
    }

    pub(super) fn proof(&self, job: &Job, fact: &Fact) -> GateVerdict {
        match fact {
            Fact::IndicatorProved { run, indicator, on, works } => {
                if *works {
                    self.fit_for_use(job, *indicator, InstrumentKind::Indicator)?;
                    self.proved_on(job, *indicator, on)?;
                }
                let Some(run) = run else {
                    return self.begins(job, *indicator);
                };
                let Some(run) = job.runs.iter().find(|r| r.id() == *run) else {
                    return no(ProofRefusal::Over);
                };
                if run.indicator != *indicator {
                    return no(ProofRefusal::OtherIndicator);
                }
                // That it failed is taken in whenever it is seen.
                match job.standing() {
                    _ if !works => Ok(()),
                    Standing::UnderWay { .. } if job.run().is_some_and(|r| r.id() == run.id()) => Ok(()),
                    _ => no(ProofRefusal::Over),
                }
            }
            Fact::ReadingTaken { run, first, then, reading, dc } => {
                let seen = job.shows_voltage(*reading, *dc);
                let latest = job.run().filter(|r| r.id() == *run);
                if !seen
                    && (latest.is_none()
                        || !matches!(job.standing(), Standing::UnderWay { .. } | Standing::Indication { .. }))
                    || seen && !job.runs.iter().any(|r| r.id() == *run)
                {
                    return no(ProofRefusal::Over);
                }
                let pair = |a: &str, b: &str| (a == first && b == then) || (a == then && b == first);
                if job.plan().iter().any(|t| pair(&t.first, &t.then)) {
                    Ok(())
                } else {
                    no(ProofRefusal::NotAPair { first: first.clone(), then: then.clone() })
                }
            }
            Fact::ReferenceProved { holds: false, run, .. } if job.runs.iter().any(|r| r.id() == *run) => Ok(()),
            Fact::ReferenceProved { way: EarthProof::LiveLine, .. } if !job.live_line_shows_earth() => {
                no(ProofRefusal::LiveLineShowsNothing)
            }
            Fact::ReferenceProved { run, .. } | Fact::DischargeRead { run, .. }
                if job.run().is_none_or(|r| r.id() != *run)
                    || !matches!(job.standing(), Standing::UnderWay { .. } | Standing::Indication { .. }) =>
            {
                no(ProofRefusal::Over)
            }
            Fact::DischargeRead { of, .. } if !job.direct().iter().any(|(id, ..)| id == of) => {
                no(ProofRefusal::NoSuchStored)
            }
            Fact::CauseNoted { of, cause, .. } => {
                reason(cause)?;
                if of.is_empty() || of.iter().any(|id| !job.troubles.iter().any(|t| t.stamp.id == *id)) {
                    return no(ProofRefusal::CauseOfNothing);
                }
                Ok(())
            }
            Fact::RunSigned { run, .. } => {
                let person = self.person()?;
                match job.run().filter(|r| r.id() == *run) {
                    None => no(ProofRefusal::Over),
                    Some(_) if job.learns(Some(person)) => no(ProofRefusal::LearnerSigns),
                    Some(_) => Ok(()),
                }
            }
            Fact::WorkBegan { run } => {
                for person in job.people() {
                    self.owed(person)?;
                }
                // Who was taken off the job has to know as well.
                for lock in job.locks.iter().filter(|l| matches!(l.off, Some(Off::Forced(_)))) {
                    self.owed(lock.owner)?;
                }
                if job.learns(Some(self.person()?)) {
                    return no(ProofRefusal::LearnerBegins);
                }
                match job.standing() {
                    _ if job.working() => no(ProofRefusal::AtWork),
                    Standing::Proved { .. } if job.run().is_some_and(|r| r.id() == *run) => Ok(()),
                    _ => no(ProofRefusal::NothingStands),
                }
            }
            Fact::WorkStopped {} if !job.at_work() => no(ProofRefusal::NotAtWork),
            Fact::WorkLeft { .. } | Fact::WorkFinished { .. } if !job.working() => no(ProofRefusal::NotAtWork),
            Fact::WorkLeft { why } => reason(why),
            Fact::WorkFinished { clear } => reason(clear),
            Fact::GivenUp { why, clear } => {
                reason(why)?;
                reason(clear)?;
                if job.finished.is_some() {
                    return no(ProofRefusal::FinishedAlready);
                }
                if job.at_work() {
                    return no(ProofRefusal::StopFirst);
                }
                if job.points.iter().any(|p| p.opened.is_some()) { Ok(()) } else { no(ProofRefusal::NothingOpen) }
            }
            _ => Ok(()),
        }
    }

    /// A run is begun by somebody who knows of everything that was met, and its causes; nobody is at work under an earlier one.
    fn begins(&self, job: &Job, indicator: EntryId) -> GateVerdict {
        if job.unexplained().next().is_some() {
            return no(ProofRefusal::Unexplained);
        }
        if job.at_work() {
            return no(ProofRefusal::StopWorkFirst);
        }
        let from = self.world.instruments.get(&indicator).and_then(|i| i.lights_from);
        if !job.lights_in_time(from.as_ref()) {
            return no(ProofRefusal::LightsLate { instrument: indicator, bound: job.bound() });
        }
        Ok(())
    }

    /// What proves an indicator is named, and is not the indicator itself.
    fn proved_on(&self, job: &Job, indicator: EntryId, on: &ProvedOn) -> GateVerdict {
        match on {
            ProvedOn::ProvingUnit(unit) => {
                if self.across.is_one(*unit, indicator) {
                    return no(ProofRefusal::OnItself);
                }
                self.fit_for_use(job, *unit, InstrumentKind::ProvingUnit)
            }
            ProvedOn::KnownSource(what) if !says_something(what) => no(ProofRefusal::NoLiveSource),
            ProvedOn::KnownSource(_) => Ok(()),
        }
    }

    pub(super) fn switching(&self, job: &Job, fact: &Fact) -> GateVerdict {
        let point = |id: &EntryId| job.point(*id).ok_or(Refusal::NoSuchPoint);
        match fact {
            // What stores energy is waited for with the covers on.
            Fact::CoverOff { .. } | Fact::NoCovers { .. } => match job.still_charged(&self.now).first() {
                Some(charged) => no(SwitchRefusal::Charged(charged.clone())),
                None => Ok(()),
            },
            Fact::CircuitOff { circuit, .. } => match job.circuits.iter().find(|c| c.stamp.id == *circuit) {
                None => no(SwitchRefusal::NoSuchCircuit),
                Some(c) if c.off.is_some() && c.on.is_none() => {
                    no(SwitchRefusal::CircuitOff { label: c.label.clone() })
                }
                Some(_) => Ok(()),
            },
            Fact::PointOpened { point: id, .. } if point(id)?.opened.is_some() && job.closed_beside(*id).is_none() => {
                no(SwitchRefusal::OpenAlready)
            }
            Fact::SignPosted { point: id } => {
                let point = point(id)?;
                if job.locks_on().any(|l| l.on == On::Point(*id)) {
                    Ok(())
                } else {
                    no(SwitchRefusal::SignBeforeLock { at: point.label.clone() })
                }
            }
            Fact::SignRemoved { point: id } if job.locks_on().any(|l| l.on == On::Point(*id)) => {
                no(SwitchRefusal::SignUnderLock)
            }
            Fact::PointClosed { point: id, .. } if job.locks_on().any(|l| l.on == On::Point(*id)) => {
                no(SwitchRefusal::Locked)
            }
            Fact::PointClosed { point: id, beside } => {
                let point = point(id)?;
                // A lock that an entry put aside tells of may be on.
                if let Some((lock, owner)) = job.aside_at(*id) {
                    return no(SwitchRefusal::LockedAside { at: point.label.clone(), lock: lock.to_owned(), owner });
                }
                self.closes(job, point, beside.as_deref())
            }
            Fact::CircuitOn { circuit } => match job.circuits.iter().find(|c| c.off.is_some() && c.on.is_none()) {
                Some(next) if next.stamp.id == *circuit => Ok(()),
                Some(next) => no(SwitchRefusal::CircuitNext { label: next.label.clone() }),
                None => no(SwitchRefusal::CircuitsOn),
            },
            Fact::CoverBack { cover } => match job.covers.iter().find(|(s, ..)| s.id == *cover) {
                Some((_, _, None)) => Ok(()),
                Some(_) => no(SwitchRefusal::CoverBack),
                None => no(SwitchRefusal::NoSuchCover),
            },
            Fact::PresenceRead { first, then, .. }
                if !job.presence_pairs().iter().any(|(a, b)| a == first && b == then) =>
            {
                no(SwitchRefusal::NotAPair { first: first.clone(), then: then.clone() })
            }
            _ => Ok(()),
        }
    }
}
