//! The proof and what rests on it: instruments, readings, reference, work; and what is switched.

use super::{Gate, Verdict, no, reason};
use crate::job::Job;
use crate::journal::fact::{EarthProof, InstrumentKind, On, ProvedOn};
use crate::journal::{EntryId, Fact};
use crate::names::says_something;
use crate::point::Off;
use crate::prove::{Earthing, Standing, volts};

impl Gate<'_> {
    fn fit_for_use(&self, job: &Job, id: EntryId, kind: InstrumentKind) -> Verdict {
        let known = self.world.instruments.get(&id).is_some_and(|i| i.kind == kind);
        let Some(checked) = job.instruments.iter().find(|c| c.instrument == id).filter(|_| known) else {
            return no("This instrument is not checked for this job: check it under Indicator and proving unit.");
        };
        if let Some(fault) = checked.faults.first() {
            return no(format!("Do not use {}: {fault}.", self.world.instrument(id)));
        }
        let failures = self.across.failures_of(id);
        if failures.iter().any(|failure| !job.checked_since(id, *failure, &self.now, &|_| true)) {
            return no(format!(
                "{} failed. Check it again first, under Indicator and proving unit, or take another.",
                self.world.instrument(id)
            ));
        }
        if !job.checked_this_shift(id, &self.now) {
            return no(format!(
                "{} was not checked in this shift: check it under Indicator and proving unit.",
                self.world.instrument(id)
            ));
        }
        Ok(())
    }

    pub(super) fn proof(&self, job: &Job, fact: &Fact) -> Verdict {
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
                    return no("This test is over. Prove the indicator and begin again.");
                };
                if run.indicator != *indicator {
                    return no("Prove the same indicator that took the readings.");
                }
                // That it failed is taken in whenever it is seen.
                match job.standing() {
                    _ if !works => Ok(()),
                    Standing::UnderWay { .. } if job.run().is_some_and(|r| r.id() == run.id()) => Ok(()),
                    _ => no("This test is over. Prove the indicator and begin again."),
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
                    return no("This test is over. Prove the indicator and begin again.");
                }
                let pair = |a: &str, b: &str| (a == first && b == then) || (a == then && b == first);
                if job.plan().iter().any(|t| pair(&t.first, &t.then)) {
                    Ok(())
                } else {
                    no(format!("{first} – {then} is not a pair of this test."))
                }
            }
            Fact::ReferenceProved { holds: false, run, .. } if job.runs.iter().any(|r| r.id() == *run) => Ok(()),
            Fact::ReferenceProved { way: EarthProof::LiveLine, .. }
                if matches!(job.earthing, Earthing::It | Earthing::Unknown) =>
            {
                no(
                    "Without an earthed point, or where nobody knows of one, a live line to PE shows nothing. Measure to the main earthing terminal.",
                )
            }
            Fact::ReferenceProved { run, .. } | Fact::DischargeRead { run, .. }
                if job.run().is_none_or(|r| r.id() != *run)
                    || !matches!(job.standing(), Standing::UnderWay { .. } | Standing::Indication { .. }) =>
            {
                no("This test is over. Prove the indicator and begin again.")
            }
            Fact::DischargeRead { of, .. } if !job.direct().iter().any(|(id, ..)| id == of) => {
                no("This job has no such stored energy.")
            }
            Fact::CauseNoted { of, cause, .. } => {
                reason(cause)?;
                if of.is_empty() || of.iter().any(|id| !job.troubles.iter().any(|t| t.stamp.id == *id)) {
                    return no("Say which indication this is the cause of.");
                }
                Ok(())
            }
            Fact::RunSigned { run, .. } => {
                let person = self.person()?;
                match job.run().filter(|r| r.id() == *run) {
                    None => no("This test is over. Prove the indicator and begin again."),
                    Some(_) if job.learns(Some(person)) => {
                        no("Somebody on the job who is not under supervision signs this test.")
                    }
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
                    return no(
                        "Who works under supervision does not begin work alone: the person in charge begins it.",
                    );
                }
                match job.standing() {
                    _ if job.working() => no("Work is under way already."),
                    Standing::Proved { .. } if job.run().is_some_and(|r| r.id() == *run) => Ok(()),
                    _ => no("Treat as live: no proof stands, so work may not begin."),
                }
            }
            Fact::WorkStopped {} if !job.at_work() => no("Work is not under way."),
            Fact::WorkLeft { .. } | Fact::WorkFinished { .. } if !job.working() => no("Work is not under way."),
            Fact::WorkLeft { why } => reason(why),
            Fact::WorkFinished { clear } => reason(clear),
            Fact::GivenUp { why, clear } => {
                reason(why)?;
                reason(clear)?;
                if job.finished.is_some() {
                    return no("The work is finished already.");
                }
                if job.at_work() {
                    return no("Stop work first, and get everybody clear.");
                }
                if job.points.iter().any(|p| p.opened.is_some()) {
                    Ok(())
                } else {
                    no("Nothing is open yet: there is nothing to give up.")
                }
            }
            _ => Ok(()),
        }
    }

    /// A run is begun by somebody who knows of everything that was met, and its causes; nobody is at work under an earlier one.
    fn begins(&self, job: &Job, indicator: EntryId) -> Verdict {
        if job.unexplained().next().is_some() {
            return no("A voltage or a failure was met. Say first what the cause was, and what was done about it.");
        }
        if job.at_work() {
            return no("Work is under way. Stop work first, and get everybody clear.");
        }
        let from = self.world.instruments.get(&indicator).and_then(|i| i.lights_from);
        if !job.lights_in_time(from.as_ref()) {
            let bound = job.bound();
            return no(format!(
                "{} shows nothing on this job: it has to light at {} V AC and {} V DC or before.",
                self.world.instrument(indicator),
                volts(bound.ac_mv),
                volts(bound.dc_mv)
            ));
        }
        Ok(())
    }

    /// What proves an indicator is named, and is not the indicator itself.
    fn proved_on(&self, job: &Job, indicator: EntryId, on: &ProvedOn) -> Verdict {
        match on {
            ProvedOn::ProvingUnit(unit) => {
                if self.across.is_one(*unit, indicator) {
                    return no(
                        "An indicator is not proved on itself: name another unit, or a source known to be live.",
                    );
                }
                self.fit_for_use(job, *unit, InstrumentKind::ProvingUnit)
            }
            ProvedOn::KnownSource(what) if !says_something(what) => no("Name the live source that it was proved on."),
            ProvedOn::KnownSource(_) => Ok(()),
        }
    }

    pub(super) fn switching(&self, job: &Job, fact: &Fact) -> Verdict {
        let point = |id: &EntryId| job.point(*id).ok_or_else(|| "This job has no such point.".to_owned());
        match fact {
            // What stores energy is waited for with the covers on.
            Fact::CoverOff { .. } | Fact::NoCovers { .. } => match job.still_charged(&self.now).first() {
                Some(why) => no(why.clone()),
                None => Ok(()),
            },
            Fact::CircuitOff { circuit, .. } => match job.circuits.iter().find(|c| c.stamp.id == *circuit) {
                None => no("This job has no such circuit."),
                Some(c) if c.off.is_some() && c.on.is_none() => no(format!("{} is off already.", c.label)),
                Some(_) => Ok(()),
            },
            Fact::PointOpened { point: id, .. } if point(id)?.opened.is_some() && job.closed_beside(*id).is_none() => {
                no("This point is open already.")
            }
            Fact::SignPosted { point: id } => {
                let point = point(id)?;
                if job.locks_on().any(|l| l.on == On::Point(*id)) {
                    Ok(())
                } else {
                    no(format!("No lock is on {}: the lock comes before the sign.", point.label))
                }
            }
            Fact::SignRemoved { point: id } if job.locks_on().any(|l| l.on == On::Point(*id)) => {
                no("A lock is still on this point: the sign comes down after it.")
            }
            Fact::PointClosed { point: id, .. } if job.locks_on().any(|l| l.on == On::Point(*id)) => {
                no("A lock is still on this point.")
            }
            Fact::PointClosed { point: id, beside } => {
                let point = point(id)?;
                // A lock that an entry put aside tells of may be on.
                if let Some((label, owner)) = job.aside_at(*id) {
                    return no(format!(
                        "{} stays open: lock {label} of {} is on it, by an entry put aside. Look at the point, then answer that entry.",
                        point.label,
                        self.name(owner)
                    ));
                }
                self.closes(job, point, beside.as_deref())
            }
            Fact::CircuitOn { circuit } => match job.circuits.iter().find(|c| c.off.is_some() && c.on.is_none()) {
                Some(next) if next.stamp.id == *circuit => Ok(()),
                Some(next) => no(format!("In order: {} comes next.", next.label)),
                None => no("Every circuit is on already."),
            },
            Fact::CoverBack { cover } => match job.covers.iter().find(|(s, ..)| s.id == *cover) {
                Some((_, _, None)) => Ok(()),
                Some(_) => no("This cover is back already."),
                None => no("This job has no such cover."),
            },
            Fact::PresenceRead { first, then, .. }
                if !job.presence_pairs().iter().any(|(a, b)| a == first && b == then) =>
            {
                no(format!("{first} – {then} is not a pair to read here."))
            }
            _ => Ok(()),
        }
    }
}
