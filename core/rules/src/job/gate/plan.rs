//! The plan and what is said beside it: people, points, tags, sources, limits, systems, deviations, corrections.

use super::{Gate, GateVerdict, limit_of, low_voltage, no, reason};
use crate::job::Job;
use crate::job::refusal::{PlanRefusal, Refusal, WithdrawRefusal};
use crate::job::waits::least;
use crate::journal::fact::{Duty, On, SourceKind};
use crate::journal::{EntryId, Fact};
use crate::names::{alike, says_something};
use crate::point::PointKind;
use crate::prove::conductors;

/// Most conductors that a control supply brings to the point of work.
const MAX_TERMINALS: usize = 12;
/// Most tags that a point has had in one job.
const MAX_TAGS: usize = 20;
/// Whether what was found of a control supply says what has to be tested.
fn control(job: &Job, kind: SourceKind, terminals: &[String], millivolts: Option<u32>) -> GateVerdict {
    if kind != SourceKind::Control {
        return if terminals.is_empty() { Ok(()) } else { no(PlanRefusal::OnlyControl) };
    }
    if terminals.is_empty() {
        return no(PlanRefusal::NoTerminals);
    }
    let fits = |t: &String| !t.trim().is_empty() && t.chars().count() <= conductors::NAME;
    let all = job.conductors();
    match terminals.iter().find(|t| !fits(t) || all.iter().any(|c| alike(&c.name, t))) {
        Some(name) => no(PlanRefusal::TerminalName { name: name.clone() }),
        None if terminals.len() > MAX_TERMINALS => no(PlanRefusal::TerminalsMost { most: MAX_TERMINALS }),
        None if all.len() + terminals.len() > conductors::MAX => no(PlanRefusal::ConductorsMost),
        None if millivolts == Some(0) => no(PlanRefusal::NoControlVoltage),
        None => Ok(()),
    }
}

impl Gate<'_> {
    pub(super) fn plan(&self, job: &Job, fact: &Fact) -> GateVerdict {
        match fact {
            Fact::WorkerJoined { person, duty: Duty::InCharge }
                if job.in_charge() != Some(*person) && job.locks_on().next().is_some() =>
            {
                no(PlanRefusal::ChargeWithLocks)
            }
            Fact::WorkerJoined { person, duty }
                if *duty != Duty::InCharge && job.in_charge() == Some(*person) && job.locks_on().next().is_some() =>
            {
                no(PlanRefusal::ChargeLeftWithLocks)
            }
            Fact::WorkerLeft { person } => self.leave(job, *person),
            Fact::PointAdded { kind: PointKind::ControlDevice, .. } => no(PlanRefusal::ControlDevice),
            Fact::PointAdded { label, at, poles, same_as, .. } => {
                if let Some(other) = job.points.iter().find(|p| alike(&p.label, label) && alike(&p.at, at)) {
                    return no(PlanRefusal::PointAlike { label: other.label.clone() });
                }
                if same_as.is_some_and(|id| !self.across.knows(id, job.site)) {
                    return no(PlanRefusal::PointNotOfSite);
                }
                if poles.is_empty() {
                    return no(PlanRefusal::NoPoles);
                }
                let protective =
                    job.conductors().into_iter().find(|c| c.role.is_reference() && poles.contains(&c.name));
                match protective {
                    Some(pe) => no(PlanRefusal::OpensProtective { conductor: pe.name }),
                    None => Ok(()),
                }
            }
            Fact::TagBound { tag, point, .. } | Fact::TagGone { tag, point, .. } | Fact::TagRead { tag, point } => {
                let Some(at) = job.point(*point) else { return no(PlanRefusal::NoPointForTag) };
                let hangs = at.tags_now().any(|t| t.tag == *tag);
                let label = || at.label.clone();
                match &fact {
                    Fact::TagBound { .. } if hangs => no(PlanRefusal::TagHangs { at: label() }),
                    Fact::TagBound { .. } if at.tags.len() >= MAX_TAGS => {
                        no(PlanRefusal::TagsMost { at: label(), most: MAX_TAGS })
                    }
                    Fact::TagGone { why, .. } if why.trim().is_empty() => no(PlanRefusal::TagGoneUnsaid),
                    Fact::TagGone { .. } | Fact::TagRead { .. } if !hangs => {
                        no(PlanRefusal::TagNotThere { at: label() })
                    }
                    _ => Ok(()),
                }
            }
            Fact::Deviated { step, why } => {
                if why.trim().chars().count() < 5 {
                    return no(Refusal::NoReason);
                }
                reason(why)?;
                let state = job.steps().into_iter().find(|s| s.step.name() == *step);
                match state {
                    Some(state) if state.may_deviate() => self.turn_or_plan(job, state.step),
                    Some(state) if state.blockers.is_empty() => no(PlanRefusal::NothingToPass),
                    _ => no(PlanRefusal::CannotPass),
                }
            }
            Fact::Withdrawn { entry, why } => self.withdraw(job, *entry, why),
            Fact::LimitSet { limit } => {
                if job.in_charge() != Some(self.person()?) {
                    return no(PlanRefusal::LimitNotInCharge);
                }
                let Some(set) = limit else { return Ok(()) };
                let mut company = job.company_all().filter_map(|company| company.limit.as_ref());
                match company.find(|own| set.ac > own.ac || set.dc > own.dc) {
                    Some(own) => no(PlanRefusal::LimitAboveCompany { limit: own.clone() }),
                    None => limit_of(set, job.bound()),
                }
            }
            Fact::SourceAnswered { found: None, looked, .. } | Fact::StoredAnswered { found: None, looked, .. }
                if !says_something(looked) =>
            {
                no(PlanRefusal::LookedUnsaid)
            }
            Fact::StoredAnswered { found: Some(_), seconds, kind, label, .. } => match least(*kind, *label) {
                _ if *label == Some(0) || *seconds == 0 => no(PlanRefusal::WaitShort { least: 60 }),
                least if *seconds < least => no(PlanRefusal::WaitShort { least }),
                _ => Ok(()),
            },
            Fact::SourceAnswered { kind, found: Some(_), terminals, millivolts, .. } => {
                control(job, *kind, terminals, *millivolts)
            }
            Fact::SystemCorrected { system, nominal_millivolts, own, why, .. } => {
                reason(why)?;
                low_voltage(*system, *nominal_millivolts, own)
            }
            Fact::StaysLive { what, at, screened, conductors } => {
                if ![what, at, screened].into_iter().all(|said| says_something(said)) {
                    return no(PlanRefusal::StaysLiveUnsaid);
                }
                // Each by itself may be one of them, and all of them together the whole set.
                let whole = conductors.first().filter(|_| !job.leaves_a_pair(conductors));
                match conductors.iter().find(|name| !job.may_stay_live(name)).or(whole) {
                    Some(name) => no(PlanRefusal::MayNotStayLive { conductor: name.clone() }),
                    None => Ok(()),
                }
            }
            Fact::SourceElsewhere { source, why } => {
                reason(why)?;
                if job.known.iter().any(|k| k.sources.iter().any(|s| s.source == *source)) {
                    Ok(())
                } else {
                    no(PlanRefusal::SourceNotKnown)
                }
            }
            Fact::PointsParted { point, other, apart } => {
                reason(apart)?;
                if job.point(*point).is_none() || !self.across.knows(*other, job.site) || point == other {
                    return no(PlanRefusal::NotTwoPoints);
                }
                Ok(())
            }
            Fact::AsideAnswered { entry, why } => {
                reason(why)?;
                if job.known.iter().any(|k| k.aside.iter().any(|a| a.entry == *entry)) {
                    Ok(())
                } else {
                    no(PlanRefusal::NotAside)
                }
            }
            Fact::PermitNoted { why_none: Some(why), .. }
            | Fact::NoCircuits { why }
            | Fact::NoCovers { why }
            | Fact::ScopeChanged { why, .. }
            | Fact::RotationFound { rotation: None, how: why } => reason(why),
            _ => Ok(()),
        }
    }

    fn leave(&self, job: &Job, person: EntryId) -> GateVerdict {
        if let Some(lock) = job.locks_on().find(|l| l.owner == person) {
            return no(PlanRefusal::LeavesLock { person, place: job.lock_label(lock.on) });
        }
        if job.in_charge() == Some(person) {
            return no(PlanRefusal::LeavesCharge { person });
        }
        Ok(())
    }

    fn withdraw(&self, job: &Job, entry: EntryId, why: &str) -> GateVerdict {
        reason(why)?;
        if job.withdrawn.iter().any(|(_, id, _)| *id == entry) {
            return no(WithdrawRefusal::Already);
        }
        let Some(named) = self.named.filter(|e| e.body.job == Some(job.id())) else {
            return no(WithdrawRefusal::NoSuchEntry);
        };
        match &named.body.fact {
            Fact::PermitNoted { .. }
            | Fact::Told { .. }
            | Fact::BarrierPlaced { .. }
            | Fact::SourceAnswered { .. }
            | Fact::StoredAnswered { .. }
            | Fact::InstrumentChecked { .. }
            | Fact::NoCircuits { .. }
            | Fact::NoCovers { .. }
            | Fact::CoverOff { .. }
            | Fact::PhotoTaken { .. }
            | Fact::StaysLive { .. }
            | Fact::Deviated { .. } => Ok(()),
            Fact::PresenceRead { .. } | Fact::RotationRead { .. }
                if job.supply_findings().iter().any(|f| f.of.contains(&entry)) =>
            {
                no(WithdrawRefusal::StandsOut)
            }
            Fact::PresenceRead { .. } | Fact::RotationRead { .. } => Ok(()),
            // A slip of the finger costs a test; a voltage that was there and is taken back may cost a life.
            Fact::ReadingTaken { .. } if job.troubles.iter().any(|t| t.stamp.id == entry) => {
                no(WithdrawRefusal::ShowedVoltage)
            }
            Fact::ReadingTaken { .. } => Ok(()),
            Fact::PointAdded { .. } if job.locks_on().any(|l| l.on == On::Point(entry)) => {
                no(WithdrawRefusal::PointLocked)
            }
            Fact::PointAdded { .. } => Ok(()),
            Fact::CircuitListed { .. } if job.circuits.iter().any(|c| c.stamp.id == entry && c.off.is_none()) => Ok(()),
            _ => no(WithdrawRefusal::Done),
        }
    }
}
