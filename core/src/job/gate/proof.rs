//! The proof and what rests on it: instruments, readings, reference, work; and what is switched.

use super::{Gate, Verdict, no};
use crate::job::Job;
use crate::journal::fact::{InstrumentKind, On, ProvedOn};
use crate::journal::{EntryId, Fact};
use crate::prove::Standing;

impl Gate<'_> {
    fn fit_for_use(&self, job: &Job, id: EntryId, kind: InstrumentKind) -> Verdict {
        let known = self.world.instruments.get(&id).is_some_and(|i| i.kind == kind);
        let Some(checked) = job.instruments.iter().find(|c| c.instrument == id).filter(|_| known) else {
            return no("This instrument is not checked for this job: check it under Indicator and proving unit.");
        };
        match checked.faults.first() {
            Some(fault) => no(format!("Do not use {}: {fault}.", self.world.instrument(id))),
            None => Ok(()),
        }
    }

    pub(super) fn proof(&self, job: &Job, fact: &Fact) -> Verdict {
        match fact {
            Fact::IndicatorProved { run, indicator, on, works } => {
                self.fit_for_use(job, *indicator, InstrumentKind::Indicator)?;
                if let ProvedOn::ProvingUnit(unit) = on {
                    self.fit_for_use(job, *unit, InstrumentKind::ProvingUnit)?;
                }
                let Some(run) = run else {
                    return if job.cause_known() {
                        Ok(())
                    } else {
                        no("A pair gave an indication. Say first what the cause was, and what was done about it.")
                    };
                };
                let Some(latest) = job.run().filter(|r| r.id() == *run && r.after.is_none()) else {
                    return no("This test is over. Prove the indicator and begin again.");
                };
                if latest.indicator != *indicator {
                    return no("Prove the same indicator that took the readings.");
                }
                match job.standing() {
                    Standing::UnderWay { missing: 0 } => Ok(()),
                    Standing::UnderWay { missing } if *works => {
                        no(format!("{missing} pairs are not tested yet. The second proof comes after them."))
                    }
                    Standing::UnderWay { .. } => Ok(()),
                    _ => no("This test is over. Prove the indicator and begin again."),
                }
            }
            Fact::ReadingTaken { run, first, then, reading } => {
                let seen = reading.indicates(job.dead_limit);
                let latest = job.run().filter(|r| r.id() == *run);
                if latest.is_none_or(|r| r.after.is_some() && !seen)
                    || !seen && !matches!(job.standing(), Standing::UnderWay { .. } | Standing::Indication { .. })
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
            Fact::ReferenceProved { run, .. } | Fact::DischargeRead { run, .. }
                if job.run().is_none_or(|r| r.id() != *run || r.after.is_some()) =>
            {
                no("This test is over. Prove the indicator and begin again.")
            }
            Fact::DischargeRead { of, .. } if !job.direct().iter().any(|(id, ..)| id == of) => {
                no("This job has no such stored energy.")
            }
            Fact::WorkBegan { run } => {
                for person in job.people() {
                    self.owed(person)?;
                }
                match job.standing() {
                    _ if job.working() => no("Work is under way already."),
                    Standing::Proved { .. } if job.run().is_some_and(|r| r.id() == *run) => Ok(()),
                    _ => no("Treat as live: no proof stands, so work may not begin."),
                }
            }
            Fact::WorkLeft { .. } | Fact::WorkFinished { .. } if !job.working() => no("Work is not under way."),
            _ => Ok(()),
        }
    }

    pub(super) fn switching(&self, job: &Job, fact: &Fact) -> Verdict {
        let point = |id: &EntryId| job.point(*id).ok_or_else(|| "This job has no such point.".to_owned());
        match fact {
            Fact::CircuitOff { circuit, .. } => match job.circuits.iter().find(|c| c.stamp.id == *circuit) {
                None => no("This job has no such circuit."),
                Some(c) if c.off.is_some() && c.on.is_none() => no(format!("{} is off already.", c.label)),
                Some(_) => Ok(()),
            },
            Fact::PointOpened { point: id, .. } if point(id)?.opened.is_some() => no("This point is open already."),
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
            Fact::PointClosed { point: id } if job.locks_on().any(|l| l.on == On::Point(*id)) => {
                no("A lock is still on this point.")
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
